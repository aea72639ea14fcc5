package card

import (
	"flitchlay/internal/count"
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/run"
	"flitchlay/internal/shape"
)

// Card is one sheet as it lies on the table.
type Card struct {
	Sheet     *layout.Sheet
	Run       *layout.Run
	Cut       *count.Cut
	Level     bool             // grain is level: the sheet lies on its side
	Courses   int              // of its place
	Raw       shape.Rect       // as it is delivered
	Kept      shape.Rect       // what head, foot and rip leave
	Register  *layout.Register // where its level mark is; nil where the grain is level
	Zero      shape.Point      // the corner that all figures are measured from
	Folds     []Fold
	Holes     []Hole
	Parts     []shape.Rect // round each piece that openings leave of what is kept
	Overhangs []Overhang
	Slits     []count.Slit
	Step      L // the least that figures tell: nothing is cut off an end that is no longer
	Rakes     []Rake
	Pieces    []layout.Piece // what shows when it hangs, laid out flat on the sheet
	Next      Next
	Back      bool // mirrored: seen from the back
}

// Fold is a line along which the sheet is folded, from its foot to its head, or over the height of a jamb.
type Fold struct {
	Bend       *count.Bend
	Corner     *layout.Corner // nil at a jamb
	Foot, Head shape.Point
}

// Hole is what is cut out of the sheet.
type Hole struct {
	Name string // a box's letter, as on the page of its wall, or the name of an opening
	Hole *count.Hole
	shape.Rect
}

// Next is what the sheet meets: sheets, or ends of the covering.
type Next struct{ Left, Right, Under, Over Neighbour }

// Neighbour is what hangs at one side of the sheet, or how the covering ends there: also against an opening, of whose kind
// the end is then, or at a gap.
type Neighbour struct {
	Sheet *layout.Sheet // nil where none does
	End   *run.End      // how the covering ends there, nil beside a sheet
}

// Of makes the cards of a plan: one for every sheet that is still to hang. Sheets that hang and sheets that go back to stock
// have none.
func Of(c *count.Count) []*Card {
	m := maker{count: c, plan: c.Plan, faces: face.All(c.Plan), registers: c.Plan.Registers()}
	var list []*Card
	for i := range m.plan.Runs {
		r := &m.plan.Runs[i]
		for k := range r.Sheets {
			if s := &r.Sheets[k]; !s.Hung && len(s.Pieces) > 0 {
				list = append(list, m.card(r, s))
			}
		}
	}
	return list
}

// maker makes cards of one plan.
type maker struct {
	count     *count.Count
	plan      *layout.Plan
	faces     []*face.Face
	registers []layout.Register
}

func (m *maker) card(r *layout.Run, s *layout.Sheet) *Card {
	c := &Card{Sheet: s, Run: r, Cut: m.count.CutOf(s), Level: r.Up, Step: m.count.Style.Least()}
	for i := range r.Sheets {
		if r.Sheets[i].Place == s.Place {
			c.Courses++
		}
	}
	m.edges(c)
	m.holes(c)
	c.findParts()
	m.overhangs(c)
	m.folds(c)
	c.Slits = c.Cut.Slits(m.plan)
	m.onWalls(c)
	c.Next = next(r, s)
	return c
}

// edges are the raw sheet, what is kept of it, and the corner to measure from.
//
//	raw left edge    ripped edge             raw right edge
//	     |<- ripped ->|<------ what stays ------>|
//	                  0
func (m *maker) edges(c *Card) {
	v, s, x := &m.plan.Room.Veneer, c.Sheet, c.Cut
	lost := L(0) // ripped off where figures begin
	if s.Ripped == "left" {
		lost = s.Gross - x.Width
	}
	if c.Level {
		c.Kept = shape.Rect{Left: -s.Below, Right: s.Above, Top: x.Width}
		c.Raw = shape.Rect{Left: -s.Below, Right: v.Length - s.Below, Bottom: -lost, Top: s.Gross - lost}
		c.Zero = shape.Point{X: c.Kept.Left}
		return
	}
	c.Kept = shape.Rect{Bottom: -s.Below, Right: x.Width, Top: s.Above}
	c.Raw = shape.Rect{Left: -lost, Right: s.Gross - lost}
	for i := range m.registers {
		if g := &m.registers[i]; g.Flitch == s.Flitch && g.Course == s.Course && g.Turned == s.Turned {
			c.Register = g
		}
	}
	if c.Raw.Top = c.Register.At; c.Register.Foot {
		c.Raw.Top += v.Length
	}
	c.Raw.Bottom = c.Raw.Top - v.Length
	switch {
	case x.FromFoot():
		c.Zero.Z = c.Kept.Bottom
	case x.FromHead():
		c.Zero.Z = c.Kept.Top
	default:
		c.Zero.Z = x.Line.By
	}
}

// holes are the cut-outs of the cut list as rectangles of the sheet.
func (m *maker) holes(c *Card) {
	for i := range c.Cut.Holes {
		h := &c.Cut.Holes[i]
		at := shape.Rect{Left: h.From, Right: h.To, Bottom: h.Low, Top: h.High}
		if c.Level {
			at = shape.Rect{Left: h.Low, Right: h.High, Bottom: h.From, Top: h.To}
		}
		c.Holes = append(c.Holes, Hole{m.nameOf(h), h, at})
	}
}

// nameOf is what something cut out is called on the page of its wall.
func (m *maker) nameOf(h *count.Hole) string {
	if h.Kind.Traits().Box {
		for _, f := range m.faces {
			for _, b := range f.Boxes() {
				if f.Wall == h.Wall && b.Box == &f.W.Boxes[h.Index] {
					return b.Letter
				}
			}
		}
	}
	return h.Name
}

// MarkedAt is how far the mark of a sheet's level line is from the raw end that its register is measured from.
func (c *Card) MarkedAt() L { return c.Cut.RegisterMark(c.Register) }

// Trims are what is cut off the raw sheet over, under, left and right of what is kept; each only where there is some.
func (c *Card) Trims() []shape.Rect {
	r, k := c.Raw, c.Kept
	list := []shape.Rect{
		{Left: r.Left, Right: r.Right, Bottom: k.Top, Top: r.Top},
		{Left: r.Left, Right: r.Right, Bottom: r.Bottom, Top: k.Bottom},
		{Left: r.Left, Right: k.Left, Bottom: k.Bottom, Top: k.Top},
		{Left: k.Right, Right: r.Right, Bottom: k.Bottom, Top: k.Top},
	}
	var out []shape.Rect
	for _, x := range list {
		if x.Left < x.Right && x.Bottom < x.Top {
			out = append(out, x)
		}
	}
	return out
}

// stays reports whether an end of an upright sheet as it hangs is a raw end that nothing is cut off.
func (c *Card) stays(head bool) bool {
	if head {
		return c.Raw.Top-c.Kept.Top <= c.Step
	}
	return c.Kept.Bottom-c.Raw.Bottom <= c.Step
}

// Short is how far the cut goes past the raw sheet, 0 where the sheet is long enough.
func (c *Card) Short() L {
	if c.Level {
		return max(0, c.Kept.Right-c.Raw.Right)
	}
	return max(0, c.Raw.Bottom-c.Kept.Bottom, c.Kept.Top-c.Raw.Top)
}

// Extent is the least rectangle round the raw sheet and all that is kept.
func (c *Card) Extent() shape.Rect {
	r, k := c.Raw, c.Kept
	return shape.Rect{Left: min(r.Left, k.Left), Bottom: min(r.Bottom, k.Bottom), Right: max(r.Right, k.Right), Top: max(r.Top, k.Top)}
}
