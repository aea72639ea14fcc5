package card

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// What is cut is drawn heavy, what is not cut thin: the raw sheet, what shows of it on the wall, folds dashed.

// Widths of lines and gaps of hatches in mm.
const (
	rawLine   = 0.25
	showLine  = 0.18
	foldLine  = 0.5
	foldField = 1.4 // of white under a fold
	zeroSize  = 3.0
	neverGap  = 0.8
	markLong  = 4.0 // of a mark beside what is cut out
	trimPitch = 2.4
	smallHole = 5.0 // drawn with lighter lines: less would be a black spot
)

// place puts the sheet's lower left corner on paper.
func (s *sketch) place(x, y float64) {
	e := s.c.Extent()
	s.view.Origin = scene.Pt(x-s.view.MM(e.Left), y+s.view.MM(e.Bottom))
	s.sheet = s.view.Box(e.Left, e.Bottom, e.Right, e.Top)
}

// rect is where a rectangle of the sheet comes to lie.
func (s *sketch) rect(r shape.Rect) scene.Box { return s.view.Box(r.Left, r.Bottom, r.Right, r.Top) }

// drawSheet draws the sheet to scale: trims hatched, cuts heavy.
func (s *sketch) drawSheet(g *scene.Group) {
	c, v := s.c, s.view
	raw := g.Part(scene.Tag{Class: "raw", Data: rectData(c.Raw)})
	for _, t := range c.Trims() {
		draft.Hatch(raw, scene.Pen(scene.Hatch, showLine), s.rect(t), trimPitch*s.u, true)
	}
	raw.Rect(s.rect(c.Raw), scene.Pen(scene.Covering, rawLine))
	show := g.Part(scene.Tag{Class: "shows"})
	pen := scene.Pen(scene.Covering, showLine).As(scene.Dashed(showLine))
	for _, p := range c.Pieces {
		for _, o := range append([]shape.Outline{p.Outline}, p.Holes...) {
			var points []scene.Point
			for _, q := range o {
				points = append(points, v.Pt(q.X, q.Z))
			}
			show.Polygon(pen, points...)
		}
	}
	s.drawHoles(g)
	s.drawCuts(g)
	for _, f := range c.Folds {
		fold := g.Part(scene.Tag{Class: "fold", Title: f.Bend.Name, Data: []scene.Datum{folio.Datum("foot", folio.Mm(c.fromEdge(f.Foot.X))), folio.Datum("head", folio.Mm(c.fromEdge(f.Head.X)))}})
		fold.Line(v.Pt(f.Foot.X, f.Foot.Z), v.Pt(f.Head.X, f.Head.Z), scene.Pen(scene.Hatch, foldField).In(scene.White)) // over the edges of pieces
		fold.Line(v.Pt(f.Foot.X, f.Foot.Z), v.Pt(f.Head.X, f.Head.Z), scene.Pen(scene.Covering, foldLine).As(scene.Dashed(foldLine)))
	}
	if z, ok := s.mark(); ok {
		s.levelMark(g.Part(scene.Tag{Class: "level-line"}), z)
	}
	way := 0.0 // from outside, so that it hides nothing of the sheet
	if c.Back {
		way = 180
	}
	draft.Triangle(g.Part(scene.Tag{Class: "zero", Data: []scene.Datum{folio.Datum("x", folio.Mm(c.Zero.X)), folio.Datum("z", folio.Mm(c.Zero.Z))}}), scene.Marks, v.Pt(c.Zero.X, c.Zero.Z), way, zeroSize*s.u, zeroSize*s.u, rawLine, false)
}

// drawHoles draws what is cut out, crossed; what is never covered is hatched close.
func (s *sketch) drawHoles(g *scene.Group) {
	for i := range s.c.Holes {
		h := &s.c.Holes[i]
		b := s.rect(h.Rect)
		part := g.Part(scene.Tag{Class: "cut-out", Title: h.Name, Data: append(rectData(h.Rect), folio.Datum("kind", string(h.Hole.Kind)))})
		outline := folio.TapedHeavy
		if min(b.W(), b.H()) < smallHole*s.u {
			outline = folio.TapedFine
		}
		part.Rect(b, scene.Pen(scene.Openings, outline).Filled(scene.White))
		part.Line(scene.Pt(b.X0, b.Y0), scene.Pt(b.X1, b.Y1), scene.Pen(scene.Openings, showLine))
		part.Line(scene.Pt(b.X0, b.Y1), scene.Pt(b.X1, b.Y0), scene.Pen(scene.Openings, showLine))
		if h.Hole.Kind.Traits().NeverCovered {
			part.Rect(s.holeBox(i), scene.Pen(scene.Openings, rawLine))
		}
	}
}

// holeBox is what the drawing of a cut-out takes: round what is never covered a second line stands.
func (s *sketch) holeBox(i int) scene.Box {
	h := &s.c.Holes[i]
	b := s.rect(h.Rect)
	if h.Hole.Kind.Traits().NeverCovered {
		return b.Inset(-neverGap * s.u)
	}
	return b
}

// drawCuts draws the cuts at head and foot and along a rip, each a heavy line; an edge that stays raw has none.
func (s *sketch) drawCuts(g *scene.Group) {
	r, k, v := s.c.Raw, s.c.Kept, s.view
	part := g.Part(scene.Tag{Class: "kept", Data: rectData(k)})
	pen := scene.Pen(scene.Covering, folio.TapedHeavy)
	for _, z := range [][2]L{{k.Top, r.Top}, {k.Bottom, r.Bottom}} {
		if (z[0] - z[1]).Abs() > s.c.Step {
			part.Line(v.Pt(min(r.Left, k.Left), z[0]), v.Pt(max(r.Right, k.Right), z[0]), pen)
		}
	}
	for _, x := range [][2]L{{k.Left, r.Left}, {k.Right, r.Right}} {
		if x[0] != x[1] {
			part.Line(v.Pt(x[0], k.Bottom), v.Pt(x[0], k.Top), pen)
		}
	}
	for _, x := range s.c.Slits {
		slit := part.Part(scene.Tag{Class: "slit", Title: x.Name})
		for _, z := range x.At {
			slit.Line(v.Pt(s.c.across(x.From), z), v.Pt(s.c.across(x.To), z), pen)
		}
	}
}

// levelMark draws the level line where the sheet stays; on a sheet that stands each such stretch begins with a heavy line where less
// than the whole width stays: there the mark is made.
func (s *sketch) levelMark(g *scene.Group, z L) {
	y, pen := s.view.Y(z), scene.Pen(scene.Covering, folio.TapedFine).As(scene.Chain(showLine))
	var clear []scene.Box
	for i := range s.c.Holes {
		clear = append(clear, s.rect(s.c.Holes[i].Rect))
	}
	points := draft.Outside(scene.Pt(s.sheet.X0-1.4*s.u, y), scene.Pt(s.sheet.X1+1.4*s.u, y), clear...)
	for i := 0; i+1 < len(points); i += 2 {
		g.Line(points[i], points[i+1], pen)
	}
	if s.c.Level {
		return
	}
	stays := s.c.stayingAt(z)
	if len(stays) == 1 && stays[0] == [2]L{s.c.Kept.Left, s.c.Kept.Right} {
		return
	}
	for _, x := range stays {
		from, to := s.view.X(x[0]), s.view.X(x[1])
		g.HLine(from, math.Min(to, from+markLong*s.u), y, scene.Pen(scene.Covering, folio.TapedHeavy))
	}
}

// mark is where its level line crosses the raw sheet, false where it does not.
func (s *sketch) mark() (z L, on bool) {
	z = s.c.Cut.Line.By
	if s.c.Level {
		z = s.levelLine()
	}
	return z, s.c.Raw.Bottom <= z && z <= s.c.Raw.Top && (s.c.Level || s.c.Cut.Marked())
}

// levelLine is how high the level line is over the lower edge of a sheet that lies.
func (s *sketch) levelLine() L { return s.Level - s.c.Sheet.StartLine }

// rectData are the edges of a rectangle of the sheet, in mm.
func rectData(r shape.Rect) []scene.Datum {
	return []scene.Datum{folio.Datum("left", folio.Mm(r.Left)), folio.Datum("bottom", folio.Mm(r.Bottom)), folio.Datum("right", folio.Mm(r.Right)), folio.Datum("top", folio.Mm(r.Top))}
}
