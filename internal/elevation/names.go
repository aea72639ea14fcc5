package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/scene"
)

// OpeningNames letters the name of each opening in its white.
func (e *View) OpeningNames() {
	k := e.Look
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		if o.Right() <= e.From || o.FromLeft >= e.To {
			continue
		}
		key := "opening " + o.Name
		if e.elsewhere(key) {
			continue
		}
		x0, z0, x1, z1 := e.F.Hole(o)
		box := e.V.Box(max(x0, e.From), z0, min(x1, e.To), z1)
		if e.Detail && (box.W() < k.Of(8) || !e.Box().Meets(box)) {
			continue // a neighbour broken off: its own enlargement names it
		}
		c := box.Centre()
		t := scene.Text{At: c, String: o.Name, Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
		if !e.Space.Free(t.Bounds(), k.Of(0.9)) {
			t.Height = k.Small
		}
		if !e.Space.Free(t.Bounds(), k.Of(0.9)) {
			if !e.outside(t, box, key) {
				e.dropAt(key, e.inHole(o), "%s, %s to %s", e.openingWords(i), e.Style.Format(o.FromLeft), e.Style.Format(o.Right()))
			}
			continue
		}
		e.Group.Part(scene.Tag{Class: "opening-name", Data: []scene.Datum{item(key)}}).Text(t)
		e.Space.Take(t.Bounds().Inset(-k.Of(0.5)))
		if !o.Kind.Traits().Abbreviated {
			kind := scene.Text{At: c.Add(0, -k.Medium/2-k.Of(2.2)), String: string(o.Kind), Height: k.Small, Anchor: scene.Middle, Layer: scene.Openings}
			if box.Inset(k.Of(2.2)).Contains(kind.Bounds()) && e.Space.Free(kind.Bounds(), k.Of(0.5)) {
				e.Group.Text(kind)
				e.Space.Take(kind.Bounds())
			}
		}
		if page := e.PageOf(OpeningKey(e.F.Wall, i)); page != "" {
			ref := scene.Text{At: c.Add(0, k.Medium/2+k.Of(2)), String: page, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Openings, Field: 0.5}
			if box.Inset(k.Of(2.2)).Contains(ref.Bounds()) && e.Space.Free(ref.Bounds(), ref.Field+k.Of(0.6)) {
				e.Group.Text(ref)
				e.Space.Take(ref.Bounds().Inset(-ref.Field))
				e.Page.Link(ref.Bounds(), page)
			}
		}
	}
}

// openingWords name an opening with the page on which it is drawn large.
func (e *View) openingWords(i int) string {
	o := &e.F.W.Openings[i]
	words := o.Kind.Named(o.Name)
	if page := e.PageOf(OpeningKey(e.F.Wall, i)); page != "" {
		words += " (" + page + ")"
	}
	return words
}

// Rings round a box in which its name may stand.
const (
	nameStep  = 3  // from one ring to the next, mm on the office page
	nameRings = 29 // rings that are tried: further off nobody would look for the name
)

// outside letters a name beside the box it belongs to, on a leader, in the first free place, and reports whether there is one:
//
//  1. ring by ring, the nearest first;
//  2. in each ring over the box, right of it, left of it, under it: straight leaders before slanted ones;
//  3. then at its upper corners, then at its lower ones.
func (e *View) outside(t scene.Text, box scene.Box, key string) bool {
	k := e.Look
	c := box.Centre()
	t.Height, t.Bold, t.Field = k.Small, true, 0.4
	w := t.Width() / 2
	for ring := 1; ring <= nameRings; ring++ {
		d := k.Of(nameStep) * float64(ring)
		for _, at := range []scene.Point{scene.Pt(c.X, box.Y0-d), scene.Pt(box.X1+d+w, c.Y), scene.Pt(box.X0-d-w, c.Y), scene.Pt(c.X, box.Y1+d),
			scene.Pt(box.X1+d+w, box.Y0-d), scene.Pt(box.X0-d-w, box.Y0-d), scene.Pt(box.X1+d+w, box.Y1+d), scene.Pt(box.X0-d-w, box.Y1+d)} {
			t.At = at
			if !e.Space.Free(t.Bounds(), t.Field+k.Of(0.9)) {
				continue
			}
			b := t.Bounds()
			end := scene.Pt(math.Min(math.Max(c.X, b.X0), b.X1), b.Y1+k.Of(0.6))
			if at.Y > box.Y1 {
				end.Y = b.Y0 - k.Of(0.6)
			}
			if at.Y == c.Y {
				end = scene.Pt(b.X0-k.Of(0.6), c.Y)
				if at.X < box.X0 {
					end.X = b.X1 + k.Of(0.6)
				}
			}
			if !e.Space.FreeFrom(box, c, end, k.Of(0.65)) || e.crossesLeader(c, end) {
				continue
			}
			in := e.Group.Part(scene.Tag{Class: "name", Data: []scene.Datum{item(key)}})
			e.leader(in, c, end)
			in.Text(t)
			e.Space.Take(t.Bounds().Inset(-t.Field))
			return true
		}
	}
	return false
}

// PlateNames letters the name of each box beside its plate: at its right or left, where it is read with the plate, else
// over or under it, else further off on a leader.
func (e *View) PlateNames() {
	k := e.Look
	for i := range e.F.W.Boxes {
		b := &e.F.W.Boxes[i]
		if b.X < e.From || b.X > e.To || b.Z < e.F.Low || b.Z > e.F.High {
			continue
		}
		key := fmt.Sprintf("box %d", i)
		if e.elsewhere(key) {
			continue
		}
		box := e.V.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
		c := box.Centre()
		t := scene.Text{String: b.Name, Height: k.Small, Seat: scene.Centred, Layer: scene.Boxes, Field: 0.5}
		done := false
		for _, p := range []struct {
			at     scene.Point
			anchor scene.Anchor
		}{{scene.Pt(box.X1+k.Of(1.2), c.Y), scene.Start}, {scene.Pt(box.X0-k.Of(1.2), c.Y), scene.End},
			{scene.Pt(c.X, box.Y0-k.Of(2.6)), scene.Middle}, {scene.Pt(c.X, box.Y1+k.Of(2.6)), scene.Middle}} {
			t.At, t.Anchor = p.at, p.anchor
			if e.Space.Free(t.Bounds(), t.Field+k.Of(0.9)) {
				done = true
				break
			}
		}
		if !done {
			t.Anchor = scene.Middle
			if !e.outside(t, box, key) {
				e.dropAt(key, []scene.Point{c}, "%s at %s, %s up", b.Kind.Named(b.Name), e.Style.Format(b.X), e.Style.Format(b.Z))
			}
			continue
		}
		e.Group.Part(scene.Tag{Class: "name", Data: []scene.Datum{item(key)}}).Text(t)
		e.Space.Take(t.Bounds().Inset(-t.Field))
	}
}

// lost letters beside the right seam of a sheet how much grain is lost there.
func (e *View) lost() {
	k := e.Look
	for _, p := range e.F.Parts {
		s := p.Sheet()
		key := fmt.Sprintf("lost %d", p.Place)
		if s.Lost == 0 || p.To > e.To || p.To <= e.From || !e.seamAt(p.To) || len(e.F.Shown(p.To)) == 0 || e.elsewhere(key) {
			continue
		}
		done := false
		t := scene.Text{String: "lost " + e.Style.Format(s.Lost), Height: k.Small, Angle: 90, Anchor: scene.Middle, Layer: scene.Seams, Field: 0.4}
		for _, h := range e.F.Shown(p.To) {
			y0, y1 := e.V.Y(h[1]), e.V.Y(h[0])
			if y1-y0 < t.Width()+k.Of(2) {
				continue
			}
			if done = e.tryAlong(&t, e.V.X(p.To), y0, y1, scene.Tag{Class: "lost", Data: []scene.Datum{item(key)}}, -k.Of(1.4), k.Of(1.4)+t.Height); done {
				break
			}
		}
		if !done {
			e.dropAt(key, e.midAt(p.To), "%s of grain lost at %s, right of sheet %s", e.Style.Words(s.Lost), e.Style.Format(p.To), NumberOf(s))
		}
	}
}

// alongShares are the places of a text along an upright line, as shares of its length from the top: in the middle, then by
// turns down and up.
var alongShares = []float64{0.5, 0.62, 0.38, 0.74, 0.26, 0.86, 0.14}

// tryAlong puts an upright text beside a line, as far to its right as one of some distances says, in the first place that is free:
// near the middle of the line sooner than at its better distance.
func (e *View) tryAlong(t *scene.Text, x, y0, y1 float64, tag scene.Tag, asides ...float64) bool {
	k := e.Look
	for _, share := range alongShares {
		for _, dx := range asides {
			t.At = scene.Pt(x+dx, y0+(y1-y0)*share)
			b := t.Bounds()
			if b.Y0 > y0+k.Of(0.5) && b.Y1 < y1-k.Of(0.5) && e.Space.Free(b, t.Field+k.Of(0.9)) {
				e.Group.Part(tag).Text(*t)
				e.Space.Take(b.Inset(-t.Field))
				return true
			}
		}
	}
	return false
}
