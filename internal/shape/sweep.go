package shape

import (
	"cmp"
	"slices"
)

// trapezoid is a part of a piece inside one slab: its upright sides lie on the slab's.
type trapezoid struct {
	column, row int
	bottom, top line
}

// sweep goes over the wall in slabs, inside which no line ends and no lines cross, and gathers the edges of every piece.
//
//	       ____--|          upper   each slab holds trapezoids; where two of one piece
//	____---|      |                 meet, the common part of their upright sides is no
//	|  ____|      |                 edge, the rest is
//	| |hole|______|
//	|_|____|______|         lower
//
// Columns that cut does not name, where it is given, are left in one piece from bottom to top: their row 0.
func (w bent) sweep(uprights, levels []L, cut func(column int) bool) [][][]Polygon {
	pieces := make([][]piece, len(uprights)+1)
	for i := range pieces {
		pieces[i] = make([]piece, len(levels)+1)
	}
	walk := walker{bent: w, levels: levels, next: make([]int, len(w.lower)+len(w.upper))}
	var before []trapezoid
	stops := w.stops(uprights)
	column := 0
	for i, x := range stops {
		for column < len(uprights) && uprights[column] <= x {
			column++
		}
		var after []trapezoid
		if i+1 < len(stops) {
			walk.levels = levels
			if cut != nil && !cut(column) {
				walk.levels = nil
			}
			after = walk.slab(x, stops[i+1], column)
		}
		for _, t := range before {
			p := &pieces[t.column][t.row]
			p.end(x, t.bottom, false)
			p.end(x, t.top, true)
		}
		for _, t := range after {
			p := &pieces[t.column][t.row]
			p.start(x, t.bottom, false)
			p.start(x, t.top, true)
		}
		sides(x, before, after, pieces)
		before = after
	}
	result := make([][][]Polygon, len(pieces))
	for i, rows := range pieces {
		for j := range rows {
			result[i] = append(result[i], trace(rows[j].edges))
		}
	}
	return result
}

// extent is the lowest and the highest point of what sweep makes of one row between two cuts. No outline is traced for it:
// every point of one is a whole point at the side of a slab, and those that are left out of it lie between others.
func (w bent) extent(cuts [2]L, levels []L, row int) (low, high L, ok bool) {
	walk := walker{bent: w, levels: levels, next: make([]int, len(w.lower)+len(w.upper))}
	stops := w.stops(cuts[:])
	for i := range len(stops) - 1 {
		x, end := stops[i], stops[i+1]
		if x < cuts[0] || x >= cuts[1] {
			continue
		}
		for _, t := range walk.slab(x, end, 1) {
			if t.row != row {
				continue
			}
			for _, m := range [4]mark{t.bottom.markAt(x), t.bottom.markAt(end), t.top.markAt(x), t.top.markAt(end)} {
				switch {
				case m.between:
				case !ok:
					low, high, ok = m.z, m.z, true
				default:
					low, high = min(low, m.z), max(high, m.z)
				}
			}
		}
	}
	return low, high, ok
}

// stops are the x of everything that ends or bends, ascending.
func (w bent) stops(uprights []L) []L {
	if w.left >= w.right {
		return nil
	}
	stops := append([]L{w.left, w.right}, uprights...)
	for _, way := range slices.Concat(w.lower, w.upper) {
		for _, s := range way {
			stops = append(stops, s.a.X, s.b.X)
		}
	}
	for _, h := range w.holes {
		stops = append(stops, h.Left, h.Right)
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	return slices.DeleteFunc(stops, func(x L) bool { return x < w.left || x > w.right })
}

// walker finds what lies in a slab, from left to right.
type walker struct {
	bent
	levels []L
	next   []int // by chain: the first line that does not end left of the slab
}

// slab is the covering from x to end, from the bottom.
func (w *walker) slab(x, end L, column int) []trapezoid {
	var lower, upper []line
	for i, way := range w.lower {
		if s, ok := w.over(i, way, x); ok {
			lower = append(lower, s)
		}
	}
	for i, way := range w.upper {
		if s, ok := w.over(len(w.lower)+i, way, x); ok {
			upper = append(upper, s)
		}
	}
	bottom, top := slices.MaxFunc(lower, line.compare), slices.MinFunc(upper, line.compare)

	var found []trapezoid
	add := func(bottom, top line, row int) {
		if bottom.compare(top) < 0 {
			found = append(found, trapezoid{column, row, bottom, top})
		}
	}
	level := func(z L) line { return line{Point{x, z}, Point{end, z}} }
	from, row := bottom, 0
	for _, h := range w.bands(x, end) {
		low, high := level(h.Bottom), level(h.Top)
		add(from, slices.MinFunc([]line{low, top}, line.compare), row)
		from = slices.MaxFunc([]line{high, bottom}, line.compare)
		for row < len(w.levels) && w.levels[row] <= h.Top {
			row++
		}
	}
	add(from, top, row)
	return found
}

// over is the line of the chain over the slab that starts at x.
func (w *walker) over(index int, way chain, x L) (line, bool) {
	i := w.next[index]
	for i < len(way) && way[i].b.X <= x {
		i++
	}
	w.next[index] = i
	if i < len(way) && way[i].a.X <= x {
		return way[i], true
	}
	return line{}, false
}

// bands are the holes over the slab and the level cuts, from the bottom, touching ones as one.
func (w *walker) bands(x, end L) []Rect {
	var all []Rect
	for _, h := range w.holes {
		if h.Left <= x && end <= h.Right {
			all = append(all, Rect{Bottom: h.Bottom, Top: h.Top})
		}
	}
	for _, z := range w.levels {
		all = append(all, Rect{Bottom: z, Top: z})
	}
	slices.SortFunc(all, func(g, h Rect) int { return cmp.Compare(g.Bottom, h.Bottom) })
	var merged []Rect
	for _, h := range all {
		if n := len(merged); n > 0 && h.Bottom <= merged[n-1].Top {
			merged[n-1].Top = max(merged[n-1].Top, h.Top)
		} else {
			merged = append(merged, h)
		}
	}
	return merged
}

// compare orders two lines that do not cross by height where both are.
//
// Errors: it panics where they cross: bending should have left none that do.
func (s line) compare(t line) int {
	over := func(s line, p Point) int { return turn(s.a, s.b, p) }
	left, right := 0, 0
	if s.a.X >= t.a.X {
		left = over(t, s.a)
	} else {
		left = -over(s, t.a)
	}
	if s.b.X <= t.b.X {
		right = over(t, s.b)
	} else {
		right = -over(s, t.b)
	}
	if left*right < 0 {
		panic("shape: lines cross after bending")
	}
	return cmp.Or(left, right)
}

// mark is a point of a line at a slab's side: a whole point, or one inside a slope that goes on to the next slab.
type mark struct {
	z       L
	between bool // over z, under z + 1, on the line
	on      line // where between
}

func (s line) markAt(x L) mark {
	whole, rest := s.heightAt(x)
	if rest == 0 {
		return mark{z: whole}
	}
	return mark{whole, true, s}
}

func (m mark) compare(n mark) int {
	switch {
	case m.z != n.z:
		return cmp.Compare(m.z, n.z)
	case m.between && n.between && m.on != n.on:
		return m.on.compare(n.on)
	case m.between == n.between:
		return 0
	case m.between:
		return 1
	}
	return -1
}

// sides gathers the upright edges at x: a side of a trapezoid, where none of the same piece lies behind it.
func sides(x L, before, after []trapezoid, pieces [][]piece) {
	type side struct{ bottom, top mark }
	type pair struct {
		column, row   int
		before, after []side
	}
	var found []pair
	at := func(t trapezoid) *pair {
		for i := range found {
			if p := &found[i]; p.column == t.column && p.row == t.row {
				return p
			}
		}
		found = append(found, pair{column: t.column, row: t.row})
		return &found[len(found)-1]
	}
	for _, t := range before {
		p := at(t)
		p.before = append(p.before, side{t.bottom.markAt(x), t.top.markAt(x)})
	}
	for _, t := range after {
		p := at(t)
		p.after = append(p.after, side{t.bottom.markAt(x), t.top.markAt(x)})
	}
	for i := range found {
		c := &found[i]
		marks := make([]mark, 0, 2*(len(c.before)+len(c.after)))
		for _, sides := range [2][]side{c.before, c.after} {
			for _, s := range sides {
				marks = append(marks, s.bottom, s.top)
			}
		}
		slices.SortFunc(marks, mark.compare)
		marks = slices.CompactFunc(marks, func(m, n mark) bool { return m.compare(n) == 0 })
		covers := func(sides []side, low, high mark) bool {
			return slices.ContainsFunc(sides, func(s side) bool {
				return s.bottom.compare(low) <= 0 && high.compare(s.top) <= 0
			})
		}
		for i := range len(marks) - 1 {
			low, high := marks[i], marks[i+1]
			left, right := covers(c.before, low, high), covers(c.after, low, high)
			if left == right {
				continue
			}
			if low.between || high.between {
				panic("shape: an upright edge ends inside a slope")
			}
			foot, head := Point{x, low.z}, Point{x, high.z}
			p := &pieces[c.column][c.row]
			if left {
				p.edges = append(p.edges, edge{foot, head})
			} else {
				p.edges = append(p.edges, edge{head, foot})
			}
		}
	}
}
