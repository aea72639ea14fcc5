package shape

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// sketch is a wall and its cuts, written as one line of text:
//
//	floor 0,0 10,0; ceiling 0,8 10,8; left 1; hole 3,2 5,6; seams 4 8; levels 5
//
// Left and right are leans, nought where they are not given; units are written as they are, without scale.
type sketch struct {
	wall             Wall
	uprights, levels []L
}

func readSketch(t *testing.T, text string) sketch {
	t.Helper()
	var s sketch
	var left, right L
	for part := range strings.SplitSeq(text, ";") {
		words := strings.Fields(part)
		require.NotEmpty(t, words, text)
		switch rest := words[1:]; words[0] {
		case "floor":
			s.wall.Floor = readPoints(t, rest)
		case "ceiling":
			s.wall.Ceiling = readPoints(t, rest)
		case "left":
			left = readLength(t, rest[0])
		case "right":
			right = readLength(t, rest[0])
		case "hole":
			p := readPoints(t, rest)
			s.wall.Holes = append(s.wall.Holes, Rect{p[0].X, p[0].Z, p[1].X, p[1].Z})
		case "seams":
			for _, word := range rest {
				s.uprights = append(s.uprights, readLength(t, word))
			}
		case "levels":
			for _, word := range rest {
				s.levels = append(s.levels, readLength(t, word))
			}
		default:
			require.Fail(t, "unknown word in sketch", words[0])
		}
	}
	floor, ceiling := s.wall.Floor, s.wall.Ceiling
	s.wall.Left = Leaning(floor[0].X, left, floor[0].Z, ceiling[0].Z)
	s.wall.Right = Leaning(last(floor).X, right, last(floor).Z, last(ceiling).Z)
	return s
}

func readPoints(t *testing.T, words []string) []Point {
	t.Helper()
	var points []Point
	for _, word := range words {
		x, z, ok := strings.Cut(word, ",")
		require.True(t, ok, word)
		points = append(points, Point{readLength(t, x), readLength(t, z)})
	}
	return points
}

func readLength(t *testing.T, word string) L {
	t.Helper()
	n, err := strconv.ParseInt(word, 10, 64)
	require.NoError(t, err)
	return L(n)
}

// write puts polygons on one line: points, "- " before each hole, "; " between polygons.
func write(polygons []Polygon) string {
	ring := func(o Outline) string {
		var words []string
		for _, p := range o {
			words = append(words, fmt.Sprintf("%d,%d", p.X, p.Z))
		}
		return strings.Join(words, " ")
	}
	var all []string
	for _, p := range polygons {
		text := ring(p.Outline)
		for _, h := range p.Holes {
			text += " - " + ring(h)
		}
		all = append(all, text)
	}
	return strings.Join(all, "; ")
}

// writeGrid puts the cells of a grid on one line: "/ " between rows, "| " between columns.
func writeGrid(grid [][][]Polygon) string {
	var columns []string
	for _, rows := range grid {
		var cells []string
		for _, cell := range rows {
			cells = append(cells, write(cell))
		}
		columns = append(columns, strings.Join(cells, " / "))
	}
	return strings.Join(columns, " | ")
}

// all lists the polygons of every cell.
func all(grid [][][]Polygon) []Polygon {
	return slices.Concat(slices.Concat(grid...)...)
}
