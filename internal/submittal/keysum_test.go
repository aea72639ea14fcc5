package submittal

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/roomtest"
)

// What the walls cover, as printed beside the plan, adds up to what the cover prints of the room.
func TestCoversOfTheWallsAddUp(t *testing.T) {
	rooms, rounded := roomtest.Samples(t), 0
	for why, text := range roomtest.AllRooms(t) {
		rooms[why] = text
	}
	number := func(text string) *big.Rat {
		figure, _, _ := strings.Cut(strings.Replace(text, ",", ".", 1), " ")
		r, ok := new(big.Rat).SetString(figure)
		require.True(t, ok, text)
		return r
	}
	for why, text := range rooms {
		p := roomtest.Laid(t, "room.toml", text)
		s := folio.NewSet(p, roomtest.Template(t, "ansi-d"), nil, "")
		table := newRoomKey(elevation.Scratch(s), keyLayout{scale: 96}).wallTable()
		covers := slices.IndexFunc(table.Columns, func(c draft.Column) bool { return c.Head == "COVERS" })
		sum := new(big.Rat)
		for _, row := range table.Rows {
			if cell := row.Cells[covers]; cell != "bare" {
				sum.Add(sum, number(cell))
			}
		}
		assert.Equal(t, number(s.Style.FormatArea(p.Totals.NetArea)).FloatString(1), sum.FloatString(1), why)
		alone := new(big.Rat)
		for i := range p.Room.Walls {
			alone.Add(alone, number(s.Style.FormatArea(areaOn(s, i))))
		}
		if alone.Cmp(sum) != 0 {
			rounded++
		}
	}
	assert.Positive(t, rounded, "in some rooms each wall rounded by itself would not add up")
}
