package folio

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

func TestGlyphsNamesTextsThatTheFaceCannotShow(t *testing.T) {
	text := `[project]
title = "Larkspur House: study 🌲"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[wall]]
name = "Ost 漢"
length = "60"
height = "96"
`
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	found := Glyphs(r)
	require.Len(t, found, 2)
	for _, f := range found {
		assert.Equal(t, finding.Glyph, f.Code)
		assert.Equal(t, finding.Note, f.Level)
	}
	assert.Equal(t, "the title holds characters that the drawings cannot show: 🌲 (U+1F332)", found[0].Message)
	assert.Equal(t, "the name of wall 1 holds characters that the drawings cannot show: 漢 (U+6F22)", found[1].Message)
	assert.Equal(t, 0, found[1].Wall)
	r.Project.Title, r.Walls[0].Name = "Größe ½", "Østre"
	assert.Empty(t, Glyphs(r), "what the face has is no finding")
}
