package elevation

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// revisionMarks draws a cloud round what each revision moved on the wall, and beside it the mark of the revision in a triangle, the
// shape that it has in the revision block. It comes after all other words: the cloud goes round them.
//
// Source: mark in a triangle near the change, the same shape in the block, the change in a cloud: drawing practice of public works,
// see the revision letters of package room.
func (e *View) revisionMarks() {
	for i, rev := range e.Room.Project.Revisions {
		if rev.Wall != e.F.Wall || rev.At < e.From || rev.At > e.To || rev.At == e.From && !e.First() {
			continue
		}
		key, r := fmt.Sprintf("revision %d", i), draft.DeltaSize(e.Look, rev.Mark, e.Look.Seam)
		var cloud scene.Box
		ok := false
		for _, box := range e.moved(rev) {
			if cloud, ok = e.cloudRound(box); ok {
				e.cloud(cloud, rev)
				break
			}
		}
		if e.elsewhere(key) {
			continue
		}
		draw := func(c scene.Point) {
			in := e.Group.Part(scene.Tag{Class: "revision", Title: rev.Note, Data: []scene.Datum{item(key), folio.Datum("mark", rev.Mark), folio.Datum("x", folio.Mm(rev.At))}})
			e.Space.Take(draft.Delta(in, e.Look, scene.Marks, c, rev.Mark, e.Look.Seam))
		}
		if ok && e.besideCloud(cloud, r, draw) {
			continue
		}
		if !e.flag(rev.At, r, draw) {
			e.dropAt(key, e.midAt(rev.At), "revision %s at %s", rev.Mark, e.Style.Format(rev.At))
		}
	}
}

// moved is what a revision moved, on the page: the opening or the box that its note names, else the one at its place, else stretches of
// the wall there, the best first.
func (e *View) moved(rev room.Revision) []scene.Box {
	words := strings.FieldsFunc(rev.Note, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' })
	hole := func(o *room.Opening) scene.Box {
		x0, z0, x1, z1 := e.F.Hole(o)
		return e.V.Box(max(x0, e.From), max(z0, e.F.Low), min(x1, e.To), min(z1, e.F.High))
	}
	plate := func(b *room.Box) scene.Box {
		return e.V.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
	}
	for _, named := range []bool{true, false} {
		for i := range e.F.W.Openings {
			o := &e.F.W.Openings[i]
			here := o.FromLeft <= rev.At && rev.At <= o.Right()
			if named && slices.Contains(words, o.Name) && o.Right() > e.From && o.FromLeft < e.To || !named && here {
				return append([]scene.Box{hole(o)}, e.stretches(rev.At)...)
			}
		}
		for i := range e.F.W.Boxes {
			b := &e.F.W.Boxes[i]
			here := (b.X - rev.At).Abs() <= b.PlateWidth
			if b.X >= e.From && b.X <= e.To && (named && slices.Contains(words, b.Name) || !named && here) {
				return append([]scene.Box{plate(b)}, e.stretches(b.X)...)
			}
		}
	}
	return e.stretches(rev.At)
}

// stretches are parts of the wall at a place, the best for a cloud first.
func (e *View) stretches(x L) []scene.Box {
	bottom, top := e.F.Cover(x)
	var list []scene.Box
	for _, high := range []float64{stretchHigh, stretchLow} {
		for _, share := range stretchShares {
			c := e.V.Pt(x, bottom+L(share*float64(top-bottom)))
			list = append(list, scene.BoxRound(c, e.Look.Of(stretchWide), math.Min(e.Look.Of(high), e.V.MM(top-bottom)/2)))
		}
	}
	return list
}

// Of clouds, in mm on the office page.
const (
	stretchWide = 8  // of what is clouded where nothing stands at the place of a revision
	stretchHigh = 24 // the same up the wall, and where that has no room
	stretchLow  = 9
	cloudArc    = 5.0 // from one tip of a cloud to the next, about
	cloudBulge  = 0.55
	cloudLeast  = 7 // each way
	cloudStep   = 3 // from one place of the triangle to the next
)

// stretchShares are the heights of such a stretch, as shares of the covering from its foot.
var stretchShares = []float64{0.4, 0.5, 0.3, 0.6, 0.7, 0.2, 0.8, 0.1, 0.9}

// cloudMargins are how far the sides of a cloud stand off what it is round: a little, then further, then inside it, as of a door that
// stands on the floor.
var cloudMargins = []float64{1.5, 3, 4.5, 6.5, 9, 12, -3, 16, -6}

// cloudRound finds the sides of a cloud round something: those that keep nearest to it and run clear of all words.
func (e *View) cloudRound(box scene.Box) (scene.Box, bool) {
	k, n := e.Look, len(cloudMargins)
	most := 4 * (n - 1)
	for sum := 0; sum <= most; sum++ {
		for a := 0; a < n && a <= sum; a++ {
			for b := 0; b < n && a+b <= sum; b++ {
				for c := 0; c < n && a+b+c <= sum; c++ {
					d := sum - a - b - c
					if d >= n {
						continue
					}
					m := func(i int) float64 { return k.Of(cloudMargins[i]) }
					cloud := scene.Box{X0: box.X0 - m(a), Y0: box.Y0 - m(b), X1: box.X1 + m(c), Y1: box.Y1 + m(d)}
					if cloud.W() >= k.Of(cloudLeast) && cloud.H() >= k.Of(cloudLeast) && e.cloudFree(cloud) {
						return cloud, true
					}
				}
			}
		}
	}
	return scene.Box{}, false
}

// cloudFree reports whether the line of a cloud runs clear of words and stays on the page.
func (e *View) cloudFree(c scene.Box) bool {
	k := e.Look
	out, in := k.Of(cloudArc)*cloudBulge*0.8, k.Of(0.3)
	outer, inner := c.Inset(-out), c.Inset(in)
	if b := e.Space.Bounds; !b.IsZero() && !b.Contains(outer) {
		return false
	}
	for _, strip := range []scene.Box{
		{X0: outer.X0, Y0: outer.Y0, X1: outer.X1, Y1: inner.Y0}, {X0: outer.X0, Y0: inner.Y1, X1: outer.X1, Y1: outer.Y1},
		{X0: outer.X0, Y0: outer.Y0, X1: inner.X0, Y1: outer.Y1}, {X0: inner.X1, Y0: outer.Y0, X1: outer.X1, Y1: outer.Y1},
	} {
		if !e.Space.FreeOfWords(strip, k.Of(0.6)) {
			return false
		}
	}
	return true
}

// cloud draws a cloud: arcs from tip to tip along the sides of a box, bulging outward.
func (e *View) cloud(c scene.Box, rev room.Revision) {
	k := e.Look
	in := e.Group.Part(scene.Tag{Class: "cloud", Title: "moved by revision " + rev.Mark, Data: []scene.Datum{folio.Datum("mark", rev.Mark), folio.Datum("x", folio.Mm(rev.At))}})
	corners := c.Corners()
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		n := max(1, int(long/k.Of(cloudArc)+0.5))
		chord := long / float64(n)
		radius := chord * cloudBulge
		deep := math.Sqrt(radius*radius - chord*chord/4)
		half := math.Asin(chord/2/radius) * 180 / math.Pi
		ux, uy := (b.X-a.X)/long, (b.Y-a.Y)/long
		nx, ny := uy, -ux // outward, for corners that go round as clocks do
		if mid := scene.Pt((a.X+b.X)/2+nx, (a.Y+b.Y)/2+ny); c.Contains(scene.BoxRound(mid, 0, 0)) {
			nx, ny = -nx, -ny
		}
		way := math.Round(math.Atan2(-ny, nx)*180/math.Pi*1e6) / 1e6
		for j := range n {
			t := (float64(j) + 0.5) * chord
			in.Arc(scene.Pt(a.X+ux*t-nx*deep, a.Y+uy*t-ny*deep), radius, way-half, way+half, scene.Pen(scene.Marks, k.Seam))
		}
		e.Space.Stroke(a, b)
		e.Space.Stroke(a.Add(nx*(radius-deep), ny*(radius-deep)), b.Add(nx*(radius-deep), ny*(radius-deep)))
	}
}

// besideCloud puts a triangle beside a cloud, in the first place that is free: at its right or left, over it or under it, from its
// upper right corner on; else inside it.
func (e *View) besideCloud(c scene.Box, r float64, draw func(scene.Point)) bool {
	k := e.Look
	air := k.Of(cloudArc)*cloudBulge*0.8 + k.Of(1)
	step := k.Of(cloudStep)
	var places []scene.Point
	for _, off := range []float64{air, air + step, air + 2*step} {
		for y := c.Y0 + r; y < c.Y1; y += step {
			places = append(places, scene.Pt(c.X1+off+0.9*r, y), scene.Pt(c.X0-off-0.9*r, y))
		}
		for x := c.X1 - 0.9*r; x > c.X0; x -= step {
			places = append(places, scene.Pt(x, c.Y0-off-0.6*r), scene.Pt(x, c.Y1+off+r))
		}
	}
	for y := c.Y0 + r + k.Of(1.5); y < c.Y1-0.6*r-k.Of(1.5); y += step {
		for x := c.X1 - 0.9*r - k.Of(1.5); x > c.X0+0.9*r+k.Of(1.5); x -= step {
			places = append(places, scene.Pt(x, y))
		}
	}
	for _, at := range places {
		if e.Space.Free(draft.DeltaBox(at, r), k.Of(0.8)) {
			draw(at)
			return true
		}
	}
	return false
}
