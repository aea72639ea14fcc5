// Command flitchlay lays out and draws real-wood-veneer wallcovering.
package main

import (
	"os"

	"flitchlay/internal/cli"
)

func main() { os.Exit(cli.Main()) }
