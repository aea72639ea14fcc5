package main

import (
	"encoding/xml"
	"io"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// trace goes through all that MuPDF draws of a PDF file, or of the pages named: the name of each step and its values.
func trace(t *testing.T, file string, do func(step string, at map[string]string), pages ...string) {
	t.Helper()
	text, err := exec.Command(tool(t, "mutool"), append([]string{"draw", "-F", "trace", file}, pages...)...).Output()
	require.NoError(t, err, file)
	d := xml.NewDecoder(strings.NewReader(string(text)))
	d.Strict = false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err)
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range start.Attr {
			at[a.Name.Local] = a.Value
		}
		do(start.Name.Local, at)
	}
}
