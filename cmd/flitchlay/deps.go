//go:build deps

package main

import (
	_ "github.com/BurntSushi/toml"
	_ "github.com/ajstarks/svgo/float"
	_ "github.com/go-fonts/dejavu/dejavusanscondensed"
	_ "github.com/go-fonts/dejavu/dejavusanscondensedbold"
	_ "github.com/go-pdf/fpdf"
	_ "github.com/peterstace/simplefeatures/geom"
	_ "github.com/rogpeppe/go-internal/testscript"
	_ "github.com/spf13/cobra"
	_ "github.com/stretchr/testify/assert"
	_ "github.com/stretchr/testify/require"
	_ "github.com/xuri/excelize/v2"
	_ "golang.org/x/image/font/sfnt"
	_ "pgregory.net/rapid"
)
