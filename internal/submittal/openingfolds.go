package submittal

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// reveal draws the reveals unfolded at their jambs: of wrapped ones the fold, dashed, and the free edge of the flap that is
// bent in; of others, dashed, how deep they are.
func reveal(e *elevation.View, h hole) {
	k, o := e.Look, h.o
	if o.Reveal == 0 {
		return
	}
	box := e.V.Box(e.F.Hole(o))
	d := e.V.MM(o.Reveal)
	wrapped := h.f.Wraps(h.index)
	least := k.Of(16)
	if wrapped {
		least = k.Of(1)
	}
	if 2*d > box.W()-least {
		return
	}
	words := "reveal " + e.Style.Format(o.Reveal)
	pen := scene.Pen(scene.Openings, k.Thin).As(scene.Dashed(k.Thin))
	g := e.Group
	if wrapped {
		words = "flap " + e.Style.Format(o.Reveal)
		g = e.Group.Part(scene.Tag{Class: "flap", Title: words})
		for _, x := range []float64{box.X0, box.X1} { // over the edge of the opening, which is no cut here
			g.VLine(x, box.Y0+k.Outline, box.Y1-k.Outline, scene.Pen(scene.Openings, k.Wide).In(scene.White))
			g.VLine(x, box.Y0, box.Y1, scene.Pen(scene.Openings, k.Seam).As(scene.Dashed(k.Seam)))
		}
		pen = scene.Pen(scene.Openings, k.Seam)
	}
	edges := []float64{box.X0 + d, box.X1 - d}
	for _, x := range edges {
		g.VLine(x, box.Y0, box.Y1, pen)
		e.Space.Stroke(scene.Pt(x, box.Y0), scene.Pt(x, box.Y1))
	}
	for i, x := range edges {
		t := scene.Text{At: scene.Pt(x+k.Of(1.4)+k.Small, box.Centre().Y), String: words, Height: k.Small, Anchor: scene.Middle, Angle: 90, Layer: scene.Openings}
		if i == 1 {
			t.At.X = x - k.Of(1.4)
		}
		if box.H() > t.Width()+k.Of(4) && e.Space.Free(t.Bounds(), k.Of(0.7)) {
			g.Text(t)
			e.Space.Take(t.Bounds())
		}
	}
}

// wrapWords say under an enlargement how its jambs are wrapped, and where the end of that is drawn; nothing where they are not.
func wrapWords(e *elevation.View, h hole) []string {
	if !h.f.Wraps(h.index) {
		return nil
	}
	return []string{"jambs wrapped " + e.Style.Format(h.o.Reveal) + ": fold dashed,", "end of the flap " + e.EndMark("reveal") + ", page " + e.PageOf("end "+e.EndMark("reveal"))}
}

// holeTable says for every sheet that the opening cuts what is taken out of it: along from its left edge as hung, and up and
// down from its level mark. Of a wrapped opening the flaps stay on the sheets, and the folds are said before.
func holeTable(e *elevation.View, h hole) *draft.Table {
	t := &draft.Table{Columns: []draft.Column{{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "CUT-OUT, FROM LEFT EDGE"}, {Head: "FROM LEVEL"}}}
	wrapped := h.f.Wraps(h.index)
	if wrapped {
		t.Columns = []draft.Column{{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "FOLD"}, {Head: "FLAP"}, {Head: "TAKEN OUT, FROM LEFT EDGE"}, {Head: "FROM LEVEL"}}
	}
	if h.f.Run.Up {
		return bandTable(e, h)
	}
	_, z0, _, z1 := e.F.Hole(h.o)
	level := e.Room.Space.LevelLine
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			a, b := p.Raw(s)
			if b <= h.o.FromLeft || a >= h.o.Right() || s.Above <= z0-level || -s.Below >= z1-level {
				continue // beside it, or of a course that does not come to it
			}
			in := L(0)
			if wrapped {
				in = h.o.Reveal
			}
			cells := []string{elevation.NumberOf(s), taken(e, h.o, s, a, b, in)}
			if wrapped {
				fold, flap := folds(e, h.o, a, b)
				cells = []string{cells[0], fold, flap, cells[1]}
			}
			up := "foot"
			if h.o.SillGiven {
				up = upDown(e.Set, z0-level)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: append(cells, up+" to "+upDown(e.Set, z1-level))})
		}
	}
	return t
}

// bandTable says the same of level bands: along from the left end of each as cut, and up and down from the level line.
func bandTable(e *elevation.View, h hole) *draft.Table {
	t := &draft.Table{Columns: []draft.Column{{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "CUT-OUT, FROM LEFT END AS CUT"}, {Head: "FROM LEVEL LINE"}}}
	_, z0, _, z1 := e.F.Hole(h.o)
	level := e.Room.Space.LevelLine
	for _, p := range e.F.Parts {
		s := p.Sheet()
		x0, low, x1, high, ok := e.F.Extent(s)
		if !ok || x1 < h.o.FromLeft || x0 > h.o.Right() || high <= z0 || low >= z1 {
			continue
		}
		left, right := -s.Below, s.Above // with what it has for the joint or for trimming
		along := "all of it"
		switch {
		case x1 == h.o.FromLeft: // nothing of it goes on over the opening or under it
			along = "ends at the opening, " + e.Style.Format(x1-x0)
		case x0 == h.o.Right():
			along = "begins at the opening"
		case x0 < h.o.FromLeft || x1 > h.o.Right():
			along = e.Style.Format(max(h.o.FromLeft, left)-left) + " to " + e.Style.Format(min(h.o.Right(), right)-left)
		}
		t.Rows = append(t.Rows, draft.Row{Cells: []string{elevation.NumberOf(s), along, upDown(e.Set, max(z0, low)-level) + " to " + upDown(e.Set, min(z1, high)-level)}})
	}
	return t
}

// taken says what is cut out along a sheet that reaches from a to b: between the edges of the opening, or between the flaps, that
// far in from them.
func taken(e *elevation.View, o *room.Opening, s *layout.Sheet, a, b, in L) string {
	from, to := o.FromLeft+in, o.Right()-in
	if a >= to || b <= from {
		return "nothing"
	}
	along := "left edge to "
	if from > a {
		along = e.Style.Format(from-a) + " to "
	}
	if to < b {
		along += e.Style.Format(to - a)
	} else {
		along += "right edge"
	}
	if s.Ripped == "left" {
		along += ", from ripped edge"
	}
	return along
}

// folds say where a sheet that reaches from a to b is folded round the jambs, and how wide the flaps are that it has there.
func folds(e *elevation.View, o *room.Opening, a, b L) (fold, flap string) {
	f := e.Style.Format
	if a < o.FromLeft && o.FromLeft < b {
		fold, flap = f(o.FromLeft-a), f(min(o.Reveal, b-o.FromLeft))+" right"
	}
	if a < o.Right() && o.Right() < b {
		if fold != "" {
			return fold + " and " + f(o.Right()-a), f(o.Reveal) + " each"
		}
		fold, flap = f(o.Right()-a), f(min(o.Reveal, o.Right()-a))+" left"
	}
	return fold, flap
}
