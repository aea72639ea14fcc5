package layout

import (
	"encoding/binary"

	"flitchlay/internal/shape"
)

// shapes keeps what cutting the coverings of walls has come to: within one lay their heights are asked twice, and a wall whose
// cuts stay where they are is cut as it was the time before. Nobody changes a polygon that was made.
type shapes struct {
	walls map[string]*wallShapes // by the covering
	turn  int
}

// wallShapes is what is known of one covering.
type wallShapes struct {
	extents map[extentKey]extent
	cells   map[string][][][]shape.Polygon // by the cuts
	turn    int                            // when it was asked last
}

// extentKey is a row of a covering between two places, cut along levels.
type extentKey struct {
	from, to L
	levels   string
	row      int
}

// extent is the lowest and the highest point of a row, and whether anything is there.
type extent struct {
	low, high L
	ok        bool
}

// mostShapes is how many extents and how many cuts of one covering are kept: while a pin is dragged new ones come all the time.
const mostShapes = 256

func newShapes() *shapes { return &shapes{walls: map[string]*wallShapes{}} }

// next forgets the coverings that were not asked of late.
func (y *shapes) next() {
	y.turn++
	for key, x := range y.walls {
		if y.turn-x.turn > turnsKept {
			delete(y.walls, key)
		}
	}
}

// of is what is known of a covering.
func (y *shapes) of(cover *shape.Wall) *wallShapes {
	key := make([]byte, 0, 256)
	number := func(list ...L) {
		for _, x := range list {
			key = binary.AppendVarint(key, int64(x))
		}
	}
	for _, profile := range [2][]shape.Point{cover.Floor, cover.Ceiling} {
		number(L(len(profile)))
		for _, p := range profile {
			number(p.X, p.Z)
		}
	}
	for _, e := range [2]shape.Edge{cover.Left, cover.Right} {
		number(e.Foot.X, e.Foot.Z, e.Head.X, e.Head.Z)
	}
	for _, h := range cover.Holes {
		number(h.Left, h.Bottom, h.Right, h.Top)
	}
	known := y.walls[string(key)]
	if known == nil {
		known = &wallShapes{extents: map[extentKey]extent{}, cells: map[string][][][]shape.Polygon{}}
		y.walls[string(key)] = known
	}
	known.turn = y.turn
	return known
}

// extent is the lowest and highest point of a part of the covering within one course, openings not taken out.
func (k *wallShapes) extent(cover shape.Wall, p part, levels []L, course int) (low, high L, ok bool) {
	key := extentKey{p.from, p.to, keyOf(levels), course - 1}
	if len(levels) == 0 {
		key.row = 0
	}
	known, found := k.extents[key]
	if !found {
		if len(k.extents) >= mostShapes {
			k.extents = map[extentKey]extent{}
		}
		known.low, known.high, known.ok = shape.RowExtent(cover, p.from, p.to, levels, key.row)
		k.extents[key] = known
	}
	return known.low, known.high, known.ok
}

// grid is the covering in pieces, those columns that are stacked in courses.
func (k *wallShapes) grid(cover shape.Wall, cuts, levels []L, stacked map[int]bool) [][][]shape.Polygon {
	key := keyOf(cuts) + keyOf(levels)
	for column := range len(cuts) + 1 {
		if stacked[column] {
			key += "s"
		} else {
			key += "-"
		}
	}
	known, found := k.cells[key]
	if !found {
		if len(k.cells) >= mostShapes {
			k.cells = map[string][][][]shape.Polygon{}
		}
		known = shape.GridBy(cover, cuts, levels, func(column int) bool { return stacked[column] })
		k.cells[key] = known
	}
	return known
}

// keyOf is a list of lengths as a key.
func keyOf(list []L) string {
	key := binary.AppendUvarint(make([]byte, 0, 1+8*len(list)), uint64(len(list)))
	for _, x := range list {
		key = binary.AppendVarint(key, int64(x))
	}
	return string(key)
}
