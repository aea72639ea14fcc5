package submittal

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// ribbon is the covering of the whole room unrolled, wall after wall as they follow each other, in one row or in several.
type ribbon struct {
	*folio.Set
	box   scene.Box // where it stands: its upper edge, and the width that it may take
	scale int64
	rows  []ribbonRow
	high  float64 // of all rows with the title under them
	// where it stands if not over the lists
	alone  bool // on a page that has no room for them
	column bool // in the first column
}

// ribbonRow is what stands side by side.
type ribbonRow struct {
	parts     []ribbonPart
	wide      float64 // on paper, with the gaps
	low, high L       // of the lowest floor and the highest ceiling
	plan      rowPlan
}

// ribbonPart is a wall of a row, or a piece of one.
type ribbonPart struct {
	f        *face.Face
	from, to L
	gap      float64        // left of it, on paper
	corner   *layout.Corner // round which the covering comes from the wall at its left
	broken   bool           // the run before ends at its left
	x        float64        // of its left end, from that of the row
}

// first reports whether the part holds the wall's left end, last whether its right end.
func (p *ribbonPart) first() bool { return p.from == p.f.Left }
func (p *ribbonPart) last() bool  { return p.to == p.f.Right }

// The scales of a ribbon, the largest first, in an inch room and in a metric one.
//
// Source: scales of a US architect's rule and their halves; ISO 5455:1979 clause 5.1.
var (
	ribbonScales       = []int64{16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536, 3072}
	ribbonScalesMetric = []int64{10, 20, 50, 100, 200, 500, 1000, 2000, 5000}
)

// Distances of a ribbon on the office page.
const (
	breakGap = 9.0 // between two runs
	cutGap   = 2.5 // at a corner round which no sheet goes
)

// How the ribbon shares the cover with the lists.
const (
	ribbonShare = 0.62 // of the height, over the lists, at the most
	ribbonFull  = 0.72 // of the height: so much is a page of its own
	ribbonSlim  = 0.45 // of the width: where it takes less it stands in the first column, among the lists
	columnShare = 0.8  // of the height, there, at the most
	rowLeast    = 14   // height of walls in several rows on the office page, where there is room
	ribbonLeast = 34   // height of walls in one row on the office page: smaller ones would save a few lines of the lists, and show nothing
)

// newRibbon chooses the scale and the place. Over the lists the ribbon stands at the largest scale
//
//  1. at which it leaves them their share of the page, with lists in every column under it, or takes the page to itself;
//  2. with which they take no page more than with the smallest ribbon that is still read.
//
// Where white would stand beside it there, it stands in the first column at the largest scale with which the same holds. Where it has
// no room on the cover with lists it has the page alone.
func newRibbon(s *folio.Set, blocks func() []folio.Block) *ribbon {
	c := s.NoteColumns()
	var over, in []*ribbon
	for _, scale := range ribbonScalesOf(s) {
		r := ribbonAt(s, c.Box, c.Box.W(), scale)
		if high := r.headHigh() + r.high; high <= c.Box.H()*ribbonShare || len(r.rows) == 1 && high <= c.Box.H() && high > c.Box.H()*ribbonFull {
			over = append(over, r)
		}
		if col := ribbonAt(s, c.Box, c.Width(), scale); len(col.rows) == 1 && col.headHigh()+col.high <= c.Box.H()*columnShare {
			col.column = true
			in = append(in, col)
		}
		high := r.mm(r.rows[0].high - r.rows[0].low)
		if small := len(r.rows) == 1 && high < s.Look.Of(ribbonLeast) || high < s.Look.Of(rowLeast); small && len(over) > 0 {
			break
		}
	}
	if len(over) == 0 && len(in) == 0 {
		return aloneRibbon(s, c.Box)
	}
	best := bestRibbon(s, over, blocks)
	if len(in) == 0 || best != nil && best.rows[0].wide >= c.Box.W()*ribbonSlim {
		return best
	}
	if col := bestRibbon(s, in, blocks); col != nil {
		return col
	}
	return best
}

func ribbonScalesOf(s *folio.Set) []int64 {
	if s.Metric() {
		return ribbonScalesMetric
	}
	return ribbonScales
}

// bestRibbon is the largest of some ribbons that costs no page.
func bestRibbon(s *folio.Set, list []*ribbon, blocks func() []folio.Block) *ribbon {
	if len(list) == 0 {
		return nil
	}
	flow := func(r *ribbon) [][]folio.Placed { return folio.Flow(s.Look, r.blocks(blocks()), generalColumns(s, r)) }
	last := list[len(list)-1]
	least := len(flow(last))
	for _, r := range list[:len(list)-1] {
		pages := flow(r)
		columns := map[float64]bool{}
		for _, p := range pages[0] {
			columns[p.X] = true
		}
		c := s.NoteColumns()
		full := len(columns) == c.Count || len(columns) == 0 && r.headHigh()+r.high > c.Box.H()*ribbonFull
		if len(pages) <= least && full {
			return r
		}
	}
	return last
}

// blocks are the lists with room for the ribbon among them, where it stands there.
func (r *ribbon) blocks(lists []folio.Block) []folio.Block {
	if !r.column {
		return lists
	}
	return append([]folio.Block{{Space: r.high, Whole: true}}, lists...)
}

// aloneRibbon is the largest ribbon that stands on a page of its own.
func aloneRibbon(s *folio.Set, box scene.Box) *ribbon {
	var r *ribbon
	for _, scale := range ribbonScalesOf(s) {
		if r = ribbonAt(s, box, box.W(), scale); r.headHigh()+r.high <= box.H() {
			break
		}
	}
	r.alone = true
	return r
}

// ribbonAt lays the ribbon out at a scale in a width.
func ribbonAt(s *folio.Set, box scene.Box, width float64, scale int64) *ribbon {
	r := &ribbon{Set: s, box: box, scale: scale}
	r.box.X1 = box.X0 + width
	box = r.box
	rows := r.fill(box.W())
	if len(rows) > 1 { // of as many rows the narrowest are the most even
		low, high := box.W()/2, box.W()
		for range 8 {
			m := (low + high) / 2
			if even := r.fill(m); len(even) <= len(rows) {
				high, rows = m, even
			} else {
				low = m
			}
		}
	}
	r.rows = rows
	for i := range r.rows {
		row := &r.rows[i]
		row.low, row.high = row.parts[0].f.Low, row.parts[0].f.High
		for _, p := range row.parts {
			row.low, row.high = min(row.low, p.f.Low), max(row.high, p.f.High)
		}
		row.plan = r.planRow(row)
		r.high += row.plan.high
	}
	r.high += r.footHigh()
	return r
}

// mm is how long a length is on paper.
func (r *ribbon) mm(l L) float64 { return l.MM() / float64(r.scale) }

// fill sets the walls side by side in rows of a width. A row ends at a corner, and inside a wall only where that is wider than a row:
// then at the last seam that the row holds.
func (r *ribbon) fill(width float64) []ribbonRow {
	k := r.Look
	var rows []ribbonRow
	var row ribbonRow
	flush := func() {
		if len(row.parts) > 0 {
			rows = append(rows, row)
		}
		row = ribbonRow{}
	}
	add := func(p ribbonPart) {
		if len(row.parts) == 0 {
			p.gap = 0
		}
		p.x = row.wide + p.gap
		row.wide = p.x + r.mm(p.to-p.from)
		row.parts = append(row.parts, p)
	}
	var before *face.Face
	for _, f := range r.Faces {
		p := ribbonPart{f: f, from: f.Left, to: f.Right}
		switch c, _, _ := f.Neighbour(false); {
		case before == nil || before.Run != f.Run:
			p.gap, p.broken = k.Of(breakGap), before != nil
		case c != nil && c.LeftWall == before.Wall:
			p.corner = c
		default:
			p.gap = k.Of(cutGap)
		}
		if before == nil || p.corner == nil {
			if c, _, _ := f.Neighbour(false); c != nil && p.corner == nil {
				p.corner = c // of a closed run: the first wall, round whose left corner the last sheet comes
			}
		}
		before = f
		if row.wide+p.gap+r.mm(p.to-p.from) > width+1e-6 {
			flush()
		}
		for r.mm(p.to-p.from) > width+1e-6 {
			cut := r.cutOf(f, p.from, width)
			part := p
			part.to = cut
			add(part)
			flush()
			p = ribbonPart{f: f, from: cut, to: f.Right}
		}
		add(p)
	}
	flush()
	return rows
}

// cutOf is the last seam of a wall that a row holds which begins at a place; the end of the row where there is none.
func (r *ribbon) cutOf(f *face.Face, from L, width float64) L {
	most := from + L(math.Floor(width*float64(r.scale)*float64(length.Millimetre)))
	cut := from
	for _, m := range f.Seams {
		if m.X > cut && m.X <= most && !f.Run.Up {
			cut = m.X
		}
	}
	if cut == from {
		return most
	}
	return cut
}

// wallPages are the elevations that show a part, in their order.
func (r *ribbon) wallPages(p *ribbonPart) []string {
	var list []string
	for _, l := range r.List {
		for _, at := range l.Shown {
			if at.Wall == p.f.Wall && at.From < p.to && at.To > p.from && !slices.Contains(list, l.Number) {
				list = append(list, l.Number)
			}
		}
	}
	if len(r.List) == 0 { // while pages are planned: one as long
		list = []string{r.Paper.PageNumber(int(folio.Elevations), 1)}
	}
	return list
}

// look is the manner of a small picture: lines a step finer.
func (r *ribbon) fine() draft.Look {
	k := r.Look
	k.Wide, k.Outline, k.Seam, k.Thin, k.Dimension = k.Outline, k.Seam, k.Dimension, k.Dimension, k.Extension
	return k
}
