package elevation

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// sheetTable lists the sheets of the wall.
func (e *View) sheetTable() *draft.Table {
	t := &draft.Table{Columns: []draft.Column{
		{Head: "SHEET", Align: scene.Start, Bold: true}, {Head: "FLITCH"}, {Head: "COVERS", Align: scene.End}, {Head: "RIGHT SEAM AT", Align: scene.End},
		{Head: "PLUMB LINE", Align: scene.End}, {Head: "CUT LENGTH", Align: scene.End}, {Head: "NOTE"}}}
	for _, p := range e.F.Parts {
		if p.To <= e.From || p.From >= e.To {
			continue
		}
		for _, s := range p.Sheets {
			seam, line := "", ""
			if e.seamAt(p.To) && s.Lowest {
				seam = e.Style.Format(p.To)
				line = e.Style.Format(p.To + e.Room.Veneer.Overlap.HalfDown())
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{NumberOf(s), s.Flitch, e.Style.Format(s.Width), seam, line, e.Style.Format(s.CutLength), e.sheetNote(p, s)}})
		}
	}
	for i := range e.F.Slivers {
		s := &e.F.Slivers[i]
		if !e.sliverHere(s) {
			continue
		}
		for _, sheet := range s.Sheets {
			t.Rows = append(t.Rows, draft.Row{Cells: []string{NumberOf(sheet), sheet.Flitch, e.Style.Format((s.Far - s.X).Abs()), "", "", e.Style.Format(sheet.CutLength), "past the joint"}})
		}
	}
	return t
}

// sheetNote says what is special about a sheet.
func (e *View) sheetNote(p face.Part, s *layout.Sheet) string {
	var list []string
	if s.Ripped != "" {
		list = append(list, fmt.Sprintf("ripped to %s at its %s edge", e.Style.Words(s.RipTo), e.F.Run.Side(s.Ripped)))
	}
	for _, c := range s.Corners {
		list = append(list, "wraps "+c)
	}
	if s.Turned {
		list = append(list, "hangs turned")
	}
	if s.Lost > 0 {
		list = append(list, "the grain jumps "+e.Style.Words(s.Lost))
	}
	if s.Hung {
		list = append(list, "hung")
	}
	return strings.Join(list, ", ")
}

// tableHigh is how high the table under the view comes out.
func (e *View) tableHigh() float64 {
	t := e.sheetTable()
	if n := len(t.Rows); n > 10 {
		t.Rows = t.Rows[:(n+1)/2]
	}
	t.Fit(e.Look, 0)
	return t.High(e.Look)
}

// table draws the sheets of the wall under the view, in two columns where there are many, if all of them find room.
func (e *View) table(y float64) {
	k := e.Look
	t := e.sheetTable()
	wide := e.Field.W() - k.Of(12)
	room := e.Field.Y1 - k.Of(4) - y
	t.Fit(k, 0)
	half := (len(t.Rows) + 1) / 2
	natural := t.Width()
	switch {
	case t.High(k) <= room && natural <= wide:
		t.Fit(k, math.Min(wide, math.Max(natural, e.Box().W())))
		x := math.Min(math.Max(e.Box().X0, e.Field.X0+k.Of(6)), e.Field.X1-k.Of(6)-t.Width())
		_, taken := t.Draw(&e.Page.Group, k, scene.Pt(x, y), 0, room)
		e.Space.Take(taken)
	case 2*natural+k.Of(8) <= wide && len(t.Rows) > 1:
		top := *t
		top.Rows = t.Rows[:half]
		if top.High(k) > room {
			return
		}
		x := e.Field.X0 + (e.Field.W()-2*natural-k.Of(8))/2
		_, left := top.Draw(&e.Page.Group, k, scene.Pt(x, y), 0, room)
		top.Rows = t.Rows[half:]
		_, right := top.Draw(&e.Page.Group, k, scene.Pt(x+natural+k.Of(8), y), 0, room)
		e.Space.Take(left, right)
	}
}
