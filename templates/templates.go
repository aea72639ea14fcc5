// Package templates holds the page templates, starter rooms and tables of words that come with the program.
//
// Coordinates and units: none, the files are text.
//
// Order: none.
//
// Not here: reading them (packages paper, words and cli).
package templates

import "embed"

// Files are the templates: pages/NAME.toml, rooms/NAME.toml and words/NAME.toml.
//
//go:embed pages rooms words
var Files embed.FS
