// Package templates holds the page templates and starter rooms that come with the program.
//
// Coordinates and units: none, the files are text.
//
// Order: none.
//
// Not here: reading them (packages paper and cli).
package templates

import "embed"

// Files are the templates: pages/NAME.toml and rooms/NAME.toml.
//
//go:embed pages rooms
var Files embed.FS
