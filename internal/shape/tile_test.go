package shape

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTileCutsALeaningWallRoundAWindowAndADoor(t *testing.T) {
	wall := Wall{
		Floor:   []Point{{0, 0}, {10, 0}},
		Ceiling: []Point{{0, 8}, {10, 11}},
		Left:    Leaning(0, 1, 0, 8),
		Right:   Leaning(10, 2, 0, 11),
		Holes:   []Rect{{3, 2, 5, 6}, {7, 0, 9, 9}},
	}
	seams := []L{4, 8}
	tiles := Tile(wall, seams)
	require.Equal(t, [][]Polygon{
		{{Outline: Outline{{0, 0}, {4, 0}, {4, 2}, {3, 2}, {3, 6}, {4, 6}, {4, 9}, {1, 8}}}},
		{{Outline: Outline{{4, 0}, {7, 0}, {7, 9}, {8, 9}, {8, 10}, {4, 9}, {4, 6}, {5, 6}, {5, 2}, {4, 2}}}},
		{{Outline: Outline{{9, 0}, {10, 0}, {12, 11}, {10, 11}, {8, 10}, {8, 9}, {9, 9}}}},
	}, tiles)
	require.Equal(t, CoveringArea(wall, seams, nil), Twice(tiles[0])+Twice(tiles[1])+Twice(tiles[2]))
}
