package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// wallGrey is the ground of a covered wall's thickness: light, for the face is what is measured.
const wallGrey = 0.84

// share is a place on a wall as a share of its length.
func (r *roomKey) share(wall int, x L) float64 {
	return float64(x) / float64(r.Room.Walls[wall].Length)
}

// behind is a place on the back of a wall; at its ends the mitre.
func (r *roomKey) behind(wall int, share float64) scene.Point {
	switch {
	case share <= 0:
		return r.backs[wall][0]
	case share >= 1:
		return r.backs[wall][1]
	}
	return r.outline.Along(wall, share, r.thick)
}

// wall draws a wall in its thickness: its face heavy where it is covered, thin where it is bare; openings break it, and seams are
// ticks across it.
func (r *roomKey) wall(i int) {
	k, w := r.Look, &r.Room.Walls[i]
	a, b := r.outline.Ends(i)
	r.Space.Stroke(a, b)
	r.Space.Stroke(r.backs[i][0], r.backs[i][1])
	in := r.g.Part(scene.Tag{Class: "wall", Title: w.Name, Data: []scene.Datum{folio.Datum("name", w.Name)}})
	width := k.Wide
	if !w.Cover {
		width = k.Seam
	}
	var holes, bare []draft.Part
	for j := range w.Openings {
		o := &w.Openings[j]
		holes = append(holes, draft.Part{From: r.share(i, o.FromLeft), To: r.share(i, o.Right())})
	}
	for _, s := range w.Bare {
		bare = append(bare, draft.Part{From: r.share(i, s.From), To: r.share(i, s.To)})
	}
	for _, p := range draft.Rest(holes...) {
		r.solid(in, i, p, w.Cover)
	}
	for j := range w.Openings {
		r.opening(in, i, &w.Openings[j])
	}
	pen := scene.Pen(scene.Walls, width)
	for _, p := range draft.Rest(append(holes, bare...)...) {
		in.Line(r.outline.Along(i, p.From, 0), r.outline.Along(i, p.To, 0), pen)
	}
	for _, p := range bare {
		in.Line(r.outline.Along(i, p.From, 0), r.outline.Along(i, p.To, 0), scene.Pen(scene.Walls, k.Seam))
	}
	r.seams(in, i)
	r.matchLines(r.g, i)
}

// solid draws a part of a wall between its openings: its ground, its back, and where it ends.
func (r *roomKey) solid(g *scene.Group, i int, p draft.Part, covered bool) {
	if r.thick == 0 {
		return
	}
	k := r.Look
	ground := scene.White
	if covered {
		ground = scene.Grey(wallGrey)
	}
	a, b, c, d := r.outline.Along(i, p.From, 0), r.outline.Along(i, p.To, 0), r.behind(i, p.To), r.behind(i, p.From)
	g.Polygon(scene.Style{Layer: scene.Walls, Fill: scene.Solid(ground)}, a, b, c, d)
	pen := scene.Pen(scene.Walls, k.Thin)
	g.Line(d, c, pen)
	if p.From > 0 || r.openEnd(i, 0) {
		g.Line(a, d, pen)
		r.Space.Stroke(a, d)
	}
	if p.To < 1 || r.openEnd(i, 1) {
		g.Line(b, c, pen)
		r.Space.Stroke(b, c)
	}
}

// openEnd reports whether no other wall meets an end of a wall.
func (r *roomKey) openEnd(i, end int) bool {
	a, b := r.outline.Ends(i)
	at := []scene.Point{a, b}[end]
	for j := range r.Room.Walls {
		x, y := r.outline.Ends(j)
		if other := []scene.Point{y, x}[end]; j != i && math.Hypot(other.X-at.X, other.Y-at.Y) <= r.thick {
			return false
		}
	}
	return true
}

// opening draws what stands in the break of a wall: the lines of the glass and of the sill for a window; for the rest broken lines where
// the covering goes on over it, else nothing.
func (r *roomKey) opening(g *scene.Group, i int, o *room.Opening) {
	k := r.Look
	f, t := r.share(i, o.FromLeft), r.share(i, o.Right())
	d := math.Max(r.thick, k.Of(1.2))
	pen := scene.Pen(scene.Openings, k.Thin)
	if r.thick == 0 {
		for _, s := range []float64{f, t} {
			g.Line(r.outline.Along(i, s, 0), r.outline.Along(i, s, d), pen)
		}
	}
	r.Space.Stroke(r.outline.Along(i, f, d), r.outline.Along(i, t, d))
	if !o.Kind.Traits().Glazed {
		if w := &r.Room.Walls[i]; w.Cover && !w.FullHeight(o) { // the covering goes on over it
			over := scene.Pen(scene.Openings, k.Extension).As(scene.Dashed(k.Of(0.1)))
			g.Line(r.outline.Along(i, f, 0), r.outline.Along(i, t, 0), over)
			g.Line(r.outline.Along(i, f, d), r.outline.Along(i, t, d), over)
		}
		return
	}
	for _, out := range []float64{0, d / 2, d} {
		g.Line(r.outline.Along(i, f, out), r.outline.Along(i, t, out), pen)
	}
}

// seams draws a tick across the wall at each of its seams.
func (r *roomKey) seams(g *scene.Group, i int) {
	f := r.Face(i)
	if f == nil || f.Run.Up {
		return
	}
	k := r.Look
	for _, s := range f.Seams {
		at := r.share(i, s.X)
		if at <= 0 || at >= 1 || len(f.Shown(s.X)) == 0 {
			continue
		}
		in := g.Part(scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("x", folio.Mm(s.X))}})
		face, back := r.outline.Along(i, at, 0), r.outline.Along(i, at, math.Max(r.thick, k.Of(1.2)))
		in.Line(face, back, scene.Pen(scene.Seams, k.Thin))
		r.Space.Stroke(face, back)
	}
}

// matchReach is how far the line between two pages of a wall reaches into the room, in mm on the office page.
const matchReach = 5

// matchLines marks inside the room where one page of a wall ends and the next begins.
func (r *roomKey) matchLines(g *scene.Group, i int) {
	k := r.Look
	for n, v := range r.shown(i) {
		if n == 0 {
			continue
		}
		at := r.share(i, v.From)
		a, b := r.outline.Along(i, at, -k.Of(1)), r.outline.Along(i, at, -k.Of(matchReach))
		g.Part(scene.Tag{Class: "match", Title: "match line"}).Line(a, b, scene.Pen(scene.Marks, k.Seam).As(scene.Dashed(k.Of(0.08))))
		r.Space.Stroke(a, b)
	}
}

// shownOn is a view of a wall and its page.
type shownOn struct {
	folio.Stretch
	page string
}

// shown are the views of a wall, from left to right.
func (r *roomKey) shown(wall int) (list []shownOn) {
	for _, l := range r.List {
		for _, s := range l.Shown {
			if s.Wall == wall {
				list = append(list, shownOn{s, l.Number})
			}
		}
	}
	return list
}
