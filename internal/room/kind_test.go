package room

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ofKind is a room whose one wall has what a kind is, without a name of its own.
func ofKind(k Traits) string {
	const wall = `
[project]
title = "A wall"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[wall]]
length = "18'"
height = "9'"
corner = "none"
`
	if !k.Box {
		return wall + fmt.Sprintf("[[wall.opening]]\nkind = %q\nfrom_left = \"4'\"\nwidth = \"3'\"\nheight = \"7'\"\n", k.Word)
	}
	plate := ""
	if k.Plate == nil {
		plate = "plate = [\"7\", \"9\"]\n"
	}
	return wall + fmt.Sprintf("[[wall.box]]\nkind = %q\nx = \"4'\"\nz = \"4'\"\n%s", k.Word, plate)
}

// holdKind holds what each row has to say, and that a room file may use it.
func holdKind(t *testing.T, k Traits) {
	assert.NotEmpty(t, k.Word)
	assert.Regexp(t, `^[A-Z]+$`, k.Letter)
	assert.Equal(t, k.Letter, k.Word.Traits().Letter, "the row is found by its word")
	if k.Box {
		assert.False(t, k.Cased || k.Glazed || k.Doorway, "a box has nothing of an opening")
		assert.False(t, k.Electrical && k.NeverCovered, "what is never covered is not set out on an extender")
	} else {
		assert.True(t, k.Plate == nil && k.Called == "" && k.Sign == NoSign, "an opening has no plate")
		assert.False(t, k.Electrical || k.NeverCovered, "an opening has nothing of a box")
	}
	if k.Plate != nil {
		for gang := 1; gang <= 5; gang++ {
			width, high := k.Plate(gang)
			assert.Positive(t, width)
			assert.Positive(t, high)
		}
	}

	r, err := Decode("kind.toml", []byte(ofKind(k)))
	require.NoError(t, err)
	if !k.Box {
		require.Len(t, r.Walls[0].Openings, 1)
		o := r.Walls[0].Openings[0]
		assert.Equal(t, string(k.Word)+" "+k.Letter+"1", o.Kind.Named(o.Name))
		return
	}
	require.Len(t, r.Walls[0].Boxes, 1)
	b := r.Walls[0].Boxes[0]
	assert.Equal(t, string(k.Word)+" "+k.Letter+"1", b.Kind.Named(b.Name))
	want := [2]L{in("7"), in("9")}
	if k.Plate != nil {
		want[0], want[1] = k.Plate(1)
	}
	assert.Equal(t, want, [2]L{b.PlateWidth, b.PlateHigh})
}

func TestEveryKindHasItsRow(t *testing.T) {
	words, letters := map[Kind]bool{}, map[string]bool{}
	for i, k := range Kinds() {
		t.Run(string(k.Word), func(t *testing.T) {
			assert.False(t, words[k.Word], "the word of another kind")
			assert.False(t, letters[k.Letter], "the letter of another kind")
			words[k.Word], letters[k.Letter] = true, true
			assert.False(t, i > 0 && !k.Box && kinds[i-1].Box, "openings stand before boxes")
			holdKind(t, k)
		})
	}
	for _, k := range []Kind{withSill, withoutSill, anyBox} {
		assert.True(t, words[k], "%s is what is taken where a file names no kind", k)
	}
	assert.Zero(t, Kind("").Traits(), "no kind, no traits")
}

// A row is all that a new kind takes: the room file's words, the names, the plates and the messages follow from it.
func TestAKindIsAddedByItsRow(t *testing.T) {
	before := kinds
	defer func() { kinds = before }()
	hatch := Traits{Word: "hatch", Letter: "H", Cased: true}
	sensor := Traits{Word: "sensor", Letter: "SE", Box: true, Plate: square(in("3")), Sign: Dial}
	kinds = append(append([]Traits{hatch}, slices.Clone(before)...), sensor)
	holdKind(t, hatch)
	holdKind(t, sensor)

	_, err := Decode("kind.toml", []byte(strings.Replace(ofKind(sensor), `"sensor"`, `"sensr"`, 1)))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "sensor", "messages know the new word")
}
