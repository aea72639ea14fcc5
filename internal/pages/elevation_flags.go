package pages

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/finding"
	"flitchlay/internal/scene"
)

// deviation is a finding that the reviewer has to know of, with its number on the drawings and in the list of the cover.
type deviation struct {
	number int
	finding.Finding
}

// deviations are all musts and shoulds, numbered.
func (s *set) deviations() []deviation {
	var list []deviation
	for _, f := range s.plan.Findings {
		if f.Level != finding.Note {
			list = append(list, deviation{len(list) + 1, f})
		}
	}
	return list
}

// deviationMarks puts the number of each deviation of the wall into a pentagon at its place, on a leader where that is not
// free.
func (e *elevation) deviationMarks() {
	k := e.look
	for _, d := range e.deviations() {
		if d.Wall != e.f.wall || d.At < e.from || d.At > e.to {
			continue
		}
		r := k.Of(4.2)
		if d.number > 99 {
			r = k.Of(5)
		}
		e.flag(d.At, r, func(c scene.Point) { e.deviationAt(d, c, r) })
	}
}

// revisionMarks puts the mark of each revision that has a place on the wall into a triangle there, the shape that it has in
// the revision block.
//
// Source: mark in a triangle near the change, the same shape in the block: drawing practice of public works, see the
// revision letters of package room.
func (e *elevation) revisionMarks() {
	for _, rev := range e.room.Project.Revisions {
		if rev.Wall != e.f.wall || rev.At < e.from || rev.At > e.to || rev.At == e.from && !e.first() {
			continue
		}
		e.flag(rev.At, draft.DeltaSize(e.look, rev.Mark, e.look.Seam), func(c scene.Point) {
			in := e.group.Part(scene.Tag{Class: "revision", Title: rev.Note, Data: []scene.Datum{datum("mark", rev.Mark), datum("x", mm(rev.At))}})
			e.space.Take(draft.Delta(in, e.look, scene.Marks, c, rev.Mark, e.look.Seam))
		})
	}
}

// flag finds a free place for a mark of size r at a place along the wall: beside it, else away from it on a leader.
func (e *elevation) flag(at L, r float64, draw func(scene.Point)) {
	k := e.look
	bottom, top := e.f.cover(at)
	x := e.v.X(at)
	y := func(share float64) float64 { return e.v.Y(bottom) + (e.v.Y(top)-e.v.Y(bottom))*share }
	for _, share := range []float64{0.16, 0.24, 0.32, 0.4, 0.48, 0.56, 0.64, 0.72} {
		for _, dx := range []float64{2.6, 6, 10} {
			for _, sign := range []float64{1, -1} {
				c := scene.Pt(x+sign*(r*0.5+k.Of(dx)), y(share))
				if e.insideCover(c) && e.space.Free(draft.DeltaBox(c, r), k.Of(0.8)) {
					draw(c)
					return
				}
			}
		}
	}
	for _, share := range []float64{0.2, 0.5, 0.8, 0.1, 0.9} {
		dot := scene.Pt(x, y(share))
		c, ok := e.callOut(dot, 1.8*r, 2*r, r+k.Of(1))
		if !ok {
			continue
		}
		l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
		draft.Leader(e.group, k, e.space, dot, c.Add((dot.X-c.X)/l*r*0.5, (dot.Y-c.Y)/l*r*0.5))
		draw(c)
		return
	}
}

// deviationAt draws the pentagon of a deviation.
func (e *elevation) deviationAt(d deviation, c scene.Point, r float64) {
	k := e.look
	in := e.group.Part(scene.Tag{Class: "deviation", Title: d.Message, Data: []scene.Datum{datum("number", fmt.Sprint(d.number)), datum("code", string(d.Code))}})
	in.Polygon(scene.Pen(scene.Marks, k.Seam).Filled(scene.White), c.Add(0, -r), c.Add(r*0.85, -r*0.3), c.Add(r*0.85, r*0.6), c.Add(-r*0.85, r*0.6), c.Add(-r*0.85, -r*0.3))
	in.Text(scene.Text{At: c.Add(0, r*0.06), String: fmt.Sprint(d.number), Height: k.Small, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks})
	e.space.Take(draft.DeltaBox(c, r))
}
