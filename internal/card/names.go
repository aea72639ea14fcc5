package card

import (
	"maps"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// A cut-out is named where the eye finds it: 1. in the middle of an opening; 2. right beside a hole, on the sheet; 3. beside
// the sheet, on a leader.

// Gaps round the name of a cut-out, in mm on letter paper.
const (
	nameAir   = 1.0 // to whatever else is drawn
	nameGap   = 1.6 // to its own hole
	nameField = 0.5 // of white behind one that stands in its opening
)

// nameHoles letters the names of cut-outs. A leader from one may leave another no place on the sheet: then that gets a leader
// too.
func (s *sketch) nameHoles(g *scene.Group) {
	part := g.Part(scene.Tag{Class: "names"})
	beside := map[int]bool{}
	for {
		space, failed := s.taken(), false
		var list []scene.Text
		for i := range s.c.Holes {
			if beside[i] {
				space.Stroke(s.leader(i))
			}
		}
		for i := range s.c.Holes {
			if beside[i] {
				continue
			}
			t, ok := s.nameOn(i, space)
			if !ok {
				beside[i], failed = true, true
				continue
			}
			space.Take(s.whole(t))
			list = append(list, t)
		}
		if failed {
			continue
		}
		for _, t := range list {
			part.Text(t)
		}
		break
	}
	rest := slices.Sorted(maps.Keys(beside))
	if s.c.Level {
		s.nameOver(part, rest)
	} else {
		s.nameBeside(part, rest)
	}
}

// leader is the part of a leader that lies on the sheet: from a cut-out straight to where its name stands beside or over it.
func (s *sketch) leader(i int) (from, to scene.Point) {
	b := s.holeBox(i)
	switch c := b.Centre(); {
	case s.c.Level:
		return scene.Pt(c.X, b.Y0), scene.Pt(c.X, s.sheet.Y0)
	case s.c.Back:
		return scene.Pt(b.X0, c.Y), scene.Pt(s.sheet.X0, c.Y)
	default:
		return scene.Pt(b.X1, c.Y), scene.Pt(s.sheet.X1, c.Y)
	}
}

// taken is what of the sheet is drawn over, its cut-outs apart: what no name may touch.
func (s *sketch) taken() *draft.Space {
	c, v := s.c, s.view
	space := draft.NewSpace(s.rect(c.Kept).Inset(0.6 * s.u))
	for _, f := range c.Folds {
		space.Stroke(v.Pt(f.Foot.X, f.Foot.Z), v.Pt(f.Head.X, f.Head.Z))
	}
	for _, p := range c.Pieces {
		for _, o := range append([]shape.Outline{p.Outline}, p.Holes...) {
			for i, a := range o {
				b := o[(i+1)%len(o)]
				space.Stroke(v.Pt(a.X, a.Z), v.Pt(b.X, b.Z))
			}
		}
	}
	if z, ok := s.mark(); ok {
		space.Stroke(scene.Pt(s.sheet.X0, v.Y(z)), scene.Pt(s.sheet.X1, v.Y(z)))
	}
	return space
}

// nameOn finds a place on the sheet for the name of a cut-out.
func (s *sketch) nameOn(i int, space *draft.Space) (scene.Text, bool) {
	h := &s.c.Holes[i]
	b := s.holeBox(i)
	t := scene.Text{At: b.Centre(), String: h.Name, Height: s.text, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
	wide := scene.Width(h.Name, s.text, true)
	if r := s.rect(h.Rect); !h.Hole.Kind.Traits().Box && r.W() > wide+2*(nameField+nameAir)*s.u && r.H() > 3*s.text {
		t.Field = nameField * s.u
		within := s.text/2 + (nameField+nameAir)*s.u // as clear of its lines over and under it as beside it
		for _, share := range []float64{0.5, 0.25, 0.75} {
			t.At.Y = min(max(r.Y0+r.H()*share, r.Y0+within), r.Y1-within)
			if s.free(i, t.Bounds(), (nameField+nameAir)*s.u, space) {
				return t, true
			}
		}
		return t, false
	}
	c, across, along := b.Centre(), (b.W()+wide)/2+nameGap*s.u, (b.H()+s.text)/2+nameGap*s.u
	in := math.Max((wide-b.W())/2, 0) // over or under it, but flush with its left or its right side: at an edge of the sheet
	for _, at := range []scene.Point{c.Add(across, 0), c.Add(-across, 0), c.Add(0, -along), c.Add(0, along),
		c.Add(in+nameGap*s.u, -along), c.Add(in+nameGap*s.u, along), c.Add(-in-nameGap*s.u, -along), c.Add(-in-nameGap*s.u, along)} {
		if t.At = at; s.free(i, s.whole(t), nameAir*s.u, space) {
			return t, true
		}
	}
	return t, false
}

// free reports whether a name has room, clear of all cut-outs but its own.
func (s *sketch) free(own int, b scene.Box, air float64, space *draft.Space) bool {
	for i := range s.c.Holes {
		if i != own && s.holeBox(i).Meets(b.Inset(-air)) {
			return false
		}
	}
	return space.Free(b, air)
}

// whole is the box of a name as high as letters can be.
func (s *sketch) whole(t scene.Text) scene.Box {
	b := t.Bounds()
	return b.Union(scene.Box{X0: b.X0, Y0: t.At.Y - s.text*0.6, X1: b.X1, Y1: t.At.Y + s.text*0.8})
}

// nameBeside letters names beside a sheet that stands.
func (s *sketch) nameBeside(part *scene.Group, rest []int) {
	s.byHeight(rest)
	at := make([]float64, len(rest))
	for i, k := range rest {
		at[i] = s.rect(s.c.Holes[k].Rect).Centre().Y
	}
	hi := s.box.Y1
	if s.under {
		hi = s.list.Y0 - 1*s.u
	}
	for i, y := range draft.Shelf(at, s.text*1.7, s.sheet.Y0-s.text, hi) {
		h := &s.c.Holes[rest[i]]
		from, to := s.leader(rest[i])
		edge, anchor, out := s.sheet.X1, scene.Start, leaderLong*s.u
		if s.c.Back {
			edge, anchor, out = s.sheet.X0, scene.End, -leaderLong*s.u
		}
		part.Polyline(scene.Pen(scene.Marks, rawLine), from, to, scene.Pt(edge+out*0.82, y))
		part.Text(scene.Text{At: scene.Pt(edge+out, y), String: h.Name, Height: s.text, Bold: true, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
}

// nameOver letters names over a sheet that lies.
func (s *sketch) nameOver(part *scene.Group, rest []int) {
	s.byPlace(rest)
	at := make([]float64, len(rest))
	wide := s.nameWidth() + 1.6*s.u
	for i, k := range rest {
		at[i] = s.rect(s.c.Holes[k].Rect).Centre().X
	}
	for i, x := range draft.Shelf(at, wide, s.sheet.X0, math.Max(s.sheet.X1, s.sheet.X0+wide*float64(len(at)))) {
		h := &s.c.Holes[rest[i]]
		y := s.sheet.Y0
		from, to := s.leader(rest[i])
		part.Polyline(scene.Pen(scene.Marks, rawLine), from, to, scene.Pt(x, y-1.6*s.u))
		part.Text(scene.Text{At: scene.Pt(x, y-2.2*s.u-s.text/2), String: h.Name, Height: s.text, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	}
}
