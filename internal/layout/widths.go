package layout

import (
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
	"flitchlay/internal/shape"
)

// Widths finds how many sheets a room takes when its sheets come of another gross width and none is numbered yet.
type Widths struct {
	room     room.Room
	aim      seam.Aim
	counters []*seam.Counter // of each span; nil where the room has to be laid out
}

// NewWidths makes Widths of a room that is laid out.
func NewWidths(p *Plan) *Widths {
	w := &Widths{room: *p.Room, aim: p.Aim}
	w.room.Flitches = nil
	if len(p.Room.Hung) > 0 || p.takesCourses() {
		return w
	}
	b := &builder{room: &w.room, aim: p.Aim, style: length.StyleOf(p.Room.Project.Units), plan: &Plan{}}
	for i := range p.Runs {
		for _, q := range b.questions(p.Runs[i].Line) {
			c, err := seam.NewCounter(q.Span, p.Aim)
			if err != nil {
				w.counters = nil
				return w
			}
			w.counters = append(w.counters, c)
		}
	}
	return w
}

// takesCourses reports whether some place of the room could take more than one sheet, wherever its seams stand.
func (p *Plan) takesCourses() bool {
	rules := p.Room.Rules
	for i := range p.Runs {
		r := &p.Runs[i]
		if r.Up {
			return true
		}
		for _, st := range r.Walls {
			bottom, top, ok := shape.Extent(Covering(p.Room, st), -far, far)
			if ok && top-bottom+rules.TopTrim+rules.BottomTrim > p.Room.Veneer.Length {
				return true
			}
		}
	}
	return false
}

// Sheets returns how many sheets the room takes at a gross width, and whether its layout breaks a must of seams: then the
// number says nothing.
//
// Errors: as Lay.
func (w *Widths) Sheets(gross L) (sheets int, broken bool, err error) {
	r := w.room
	r.Veneer.GrossWidth = gross
	if w.counters == nil {
		return sheetsOf(&r, w.aim)
	}
	if _, err := run.Unroll(&r); err != nil {
		return 0, false, err
	}
	for _, c := range w.counters {
		n, err := c.Sheets(int64(gross))
		if err != nil {
			return 0, false, err
		}
		sheets, broken = sheets+int(n), broken || n == 0
	}
	return sheets, broken, nil
}

// sheetsOf lays a room out to count its sheets.
func sheetsOf(r *room.Room, aim seam.Aim) (sheets int, broken bool, err error) {
	p, err := LayAim(r, aim)
	if err != nil {
		return 0, false, err
	}
	for i := range p.Runs {
		for _, s := range p.Runs[i].Spans {
			broken = broken || s.Score.Bends+s.Score.Edges > 0
		}
	}
	return p.Totals.Sheets, broken, nil
}
