package card

import (
	"flitchlay/internal/count"
	"flitchlay/internal/shape"
)

// Overhang is a strip of a sheet's trim at a joint of courses that hangs over an opening which ends at the joint: no other course lies
// under it there to be cut through with it.
type Overhang struct {
	Name string
	Foot bool // at the sheet's foot, over the head of the opening; else at its head
	shape.Rect
}

// overhangs finds them: the strips of trim at the joints of an upright sheet that lie in an opening, of which the cut list says nothing.
func (m *maker) overhangs(c *Card) {
	if c.Level {
		return
	}
	s, x, level := c.Sheet, c.Cut, m.plan.Room.Space.LevelLine
	last := true
	for i := range c.Run.Sheets {
		if o := &c.Run.Sheets[i]; o.Place == s.Place && o.Course > s.Course && o.CutLength > 0 {
			last = false
		}
	}
	for i := range c.Run.Openings {
		o := &c.Run.Openings[i]
		if o.Gap && !o.Through {
			continue
		}
		head, sill := o.Head-level, o.Sill-level
		foot := !s.Lowest && -x.Below < head && head <= x.BottomTrim-x.Below
		top := !last && x.Above-x.TopTrim <= sill && sill < x.Above
		if !foot && !top {
			continue
		}
		count.Turns(c.Run, func(turn L) {
			from, to := max(o.Left+turn-s.StartLine, 0), min(o.Right+turn-s.StartLine, x.Width)
			if from >= to {
				return
			}
			at := Overhang{o.Name, foot, shape.Rect{Left: from, Right: to, Bottom: -x.Below, Top: head}}
			if !foot {
				at.Bottom, at.Top = sill, x.Above
			}
			c.Overhangs = append(c.Overhangs, at)
		})
	}
}

// overhang says where a trim that hangs over an opening is cut off on the wall.
func (w speech) overhang(c *Card, o *Overhang) string {
	key, at := "through.top", o.Bottom
	if o.Foot {
		key, at = "through.foot", o.Top
	}
	from, to := o.Left, o.Right
	if c.Back {
		from, to = c.Cut.Width-o.Right, c.Cut.Width-o.Left
	}
	cuts := w.cuts(c)
	return w.Words.Say(key, o.Name, c.Cut.EndWords(w.Words, cuts.Inches, at), w.Words.Say("cut.span", cuts.Inches(from), cuts.Inches(to)), c.Cut.FromEdge(cuts))
}
