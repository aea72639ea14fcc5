package svg

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/scene"
)

// A page says what it is: a title always, a description where it has one, and the outermost element names both.
//
// Source: title and desc as first children, and aria-labelledby, aria-describedby: SVG 2, 5.8, and the SVG Accessibility
// API Mappings.
func TestPageSaysWhatItIs(t *testing.T) {
	p := scene.NewPage("Z-201", "Elevation", 100, 100)
	e := read(t, write(t, p, Options{Set: "Harbour"}))
	assert.Equal(t, "_title", e.attrs["aria-labelledby"])
	assert.NotContains(t, e.attrs, "aria-describedby")
	assert.Empty(t, e.all("desc"))
	p.Desc = `North & "East" at 1:48`
	e = read(t, write(t, p, Options{Set: "Harbour"}))
	assert.Equal(t, "_desc", e.attrs["aria-describedby"])
	require.Len(t, e.all("desc"), 1)
	assert.Equal(t, "_desc", e.all("desc")[0].attrs["id"])
	assert.Equal(t, p.Desc, e.all("desc")[0].text)
}
