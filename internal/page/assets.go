package page

import (
	"embed"
	"io/fs"

	"flitchlay/internal/font"
)

//go:embed assets
var assets embed.FS

// Asset is a file that pages in a browser load: a style sheet, a module, or one of the two faces.
//
// Errors: there is none of that name.
func Asset(name string) ([]byte, error) {
	switch name {
	case "regular.ttf":
		return font.Regular.Data(), nil
	case "bold.ttf":
		return font.Bold.Data(), nil
	}
	return fs.ReadFile(assets, "assets/"+name)
}
