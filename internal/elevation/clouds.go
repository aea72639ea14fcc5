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
		cloud, ok := e.cloudFor(e.moved(rev))
		if ok {
			e.cloud(cloud, rev)
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

// cloudFor finds the sides of a cloud round the first of some things that have room for one: clear of words, of the edges of openings
// and of the rows of dimensions, and only where that is nowhere clear of words alone.
func (e *View) cloudFor(boxes []scene.Box) (scene.Box, bool) {
	for _, free := range []func(scene.Box) bool{e.cloudClear, e.cloudFree} {
		for _, box := range boxes {
			if cloud, ok := e.cloudRound(box, free); ok {
				return cloud, true
			}
		}
	}
	return scene.Box{}, false
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
	for _, aside := range stretchAsides {
		for _, high := range []float64{stretchHigh, stretchLow} {
			for _, share := range stretchShares {
				c := e.V.Pt(x, bottom+L(share*float64(top-bottom))).Add(e.Look.Of(aside), 0)
				list = append(list, scene.BoxRound(c, e.Look.Of(stretchWide), math.Min(e.Look.Of(high), e.V.MM(top-bottom)/2)))
			}
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
	cloudOff    = 6 // off the wall, clear of the first row of dimensions
	cloudStep   = 3 // from one place of the triangle to the next
)

// stretchShares are the heights of such a stretch, as shares of the covering from its foot.
var stretchShares = []float64{0.4, 0.5, 0.3, 0.6, 0.7, 0.2, 0.8, 0.1, 0.9}

// stretchAsides are how far its middle stands beside the place, which it still holds.
var stretchAsides = []float64{0, 3, -3}

// cloudMargins are how far the sides of a cloud stand off what it is round: a little, then further, then inside it, as of a door that
// stands on the floor.
var cloudMargins = []float64{1.5, 3, 4.5, 6.5, 9, 12, -3, 16, -6}

// cloudRound finds the sides of a cloud round something: those that keep nearest to it and are free.
func (e *View) cloudRound(box scene.Box, free func(scene.Box) bool) (scene.Box, bool) {
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
					if cloud.W() >= k.Of(cloudLeast) && cloud.H() >= k.Of(cloudLeast) && free(cloud) {
						return cloud, true
					}
				}
			}
		}
	}
	return scene.Box{}, false
}

// cloudLines are the strips that the sides of a cloud take: over, under, left, right.
func (e *View) cloudLines(c scene.Box) (outer scene.Box, strips [4]scene.Box) {
	k := e.Look
	out, in := k.Of(cloudArc)*cloudBulge*0.8, k.Of(0.3)
	outer = c.Inset(-out)
	inner := c.Inset(in)
	return outer, [4]scene.Box{
		{X0: outer.X0, Y0: outer.Y0, X1: outer.X1, Y1: inner.Y0}, {X0: outer.X0, Y0: inner.Y1, X1: outer.X1, Y1: outer.Y1},
		{X0: outer.X0, Y0: outer.Y0, X1: inner.X0, Y1: outer.Y1}, {X0: inner.X1, Y0: outer.Y0, X1: outer.X1, Y1: outer.Y1},
	}
}

// cloudFree reports whether the line of a cloud runs clear of words and stays on the page.
func (e *View) cloudFree(c scene.Box) bool {
	outer, strips := e.cloudLines(c)
	if b := e.Space.Bounds; !b.IsZero() && !b.Contains(outer) {
		return false
	}
	for _, strip := range strips {
		if !e.Space.FreeOfWords(strip, e.Look.Of(0.6)) {
			return false
		}
	}
	return true
}

// cloudClear reports whether it runs clear of the rows of dimensions and of the edges of openings too: along none, and across none
// but those of an opening that stands on the floor, for a cloud round it has to cross them there.
func (e *View) cloudClear(c scene.Box) bool {
	k := e.Look
	outer, strips := e.cloudLines(c)
	if !e.Box().Inset(-k.Of(cloudOff)).Contains(outer) {
		return false
	}
	for i := range e.F.W.Openings {
		hole := e.V.Box(e.F.Hole(&e.F.W.Openings[i]))
		round := c.X0 < hole.X0 && c.X1 > hole.X1 && c.Y0 < hole.Y0
		for j, edge := range edgesOf(hole, k.Of(0.4), k.Of(2.2)) {
			for l, strip := range strips {
				if strip.Meets(edge) && !(round && j > 1 && l == 1) {
					return false
				}
			}
		}
	}
	return e.cloudFree(c)
}

// edgesOf are the strips along the edges of a box, so far outside and inside it: over, under, left, right.
func edgesOf(b scene.Box, out, in float64) [4]scene.Box {
	o, i := b.Inset(-out), b.Inset(in)
	return [4]scene.Box{{X0: o.X0, Y0: o.Y0, X1: o.X1, Y1: i.Y0}, {X0: o.X0, Y0: i.Y1, X1: o.X1, Y1: o.Y1}, {X0: o.X0, Y0: o.Y0, X1: i.X0, Y1: o.Y1}, {X0: i.X1, Y0: o.Y0, X1: o.X1, Y1: o.Y1}}
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
