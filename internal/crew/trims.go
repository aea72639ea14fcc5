package crew

import (
	"slices"

	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Base and crown: how high they are, and what the covering does at them, since on a wall page nothing else says from which height on
// it shows.

// edgeTrim is the base of a wall, or its crown.
type edgeTrim struct {
	crown bool
	high  L
	whole string // all that is said of it
	short string // its name and figure
}

// edgeTrims are those that a wall has, from below.
func (d *wallBoard) edgeTrims() []edgeTrim {
	var list []edgeTrim
	w := d.w.W
	for _, x := range []struct {
		high          L
		crown, behind bool
		name          string
	}{{w.Base, false, w.Behind.Base, "base"}, {w.Crown, true, w.Behind.Crown, "crown"}} {
		if x.high == 0 {
			continue
		}
		high, key := d.Inches(x.high), x.name
		if x.behind {
			key += " behind"
		}
		list = append(list, edgeTrim{x.crown, x.high, d.Words.Of("trim", key, high), d.Words.Of("trim", x.name+" short", high)})
	}
	return list
}

// trims says how high base and crown are: 1. in the strip that they take of the wall; 2. under the drawing; 3. beside it, where the
// strip has room for the figure alone that too.
func (d *wallBoard) trims() {
	var said []string
	d.unseen = map[string]string{}
	for _, f := range d.faces {
		for _, x := range f.edgeTrims() {
			if f.inStrip(x, x.whole) {
				said = append(said, x.whole)
			}
		}
	}
	for _, f := range d.faces {
		for _, x := range f.edgeTrims() {
			if slices.Contains(said, x.whole) {
				continue
			}
			said = append(said, x.whole)
			figured := f.inStrip(x, x.short)
			if d.underneath(x.whole) {
				continue
			}
			d.beside = append(d.beside, x.whole)
			if !figured {
				d.unseen[x.whole] = x.short
			}
		}
	}
}

// underneath letters words small at the foot of the drawing, where that leaves a place; it takes none from the wall.
func (d *wallBoard) underneath(words string) bool {
	lacks := d.below
	defer func() { d.below = lacks }()
	size := folio.TapedSmall * d.Unit
	box, ok := d.under(scene.Width(words, size, false), size*1.3)
	if ok {
		d.Word(d.g, scene.Pt(box.X0, box.Y1-size*0.3), words, size, false, scene.Start)
	}
	return ok
}

// Words in the strip of a trim, in mm on letter paper: what they keep clear of its edges, and from one place that is tried to the next.
const (
	stripAir  = 0.9
	stripNext = 1.0
)

// inStrip letters words between the floor and the covering, or the covering and the ceiling, at the first place from the left that has
// room; where the covering runs behind the trim, there is no strip.
func (d *wallBoard) inStrip(x edgeTrim, words string) bool {
	u, w := d.Unit, d.w.W
	lower, upper := w.Floor, w.CoverFloor()
	if x.crown {
		lower, upper = w.CoverCeiling(), w.Ceiling
	}
	for _, size := range []float64{folio.TapedText * u, folio.TapedSmall * u} {
		wide := scene.Width(words, size, false)
		for px := d.v.X(d.p.From) + stripNext*u; px+wide < d.v.X(d.p.To)-stripNext*u; px += stripNext * u {
			from, to := d.v.Y(d.p.Face.High), d.v.Y(d.p.Face.Low)
			for _, at := range []float64{px, px + wide/2, px + wide} {
				z := d.p.From + d.v.Length(at-d.v.X(d.p.From))
				from, to = max(from, d.v.Y(room.At(upper, z))), min(to, d.v.Y(room.At(lower, z)))
			}
			t := scene.Text{At: scene.Pt(px, (from+to)/2), String: words, Height: size, Seat: scene.Centred, Layer: scene.Marks}
			if b := t.Bounds(); b.Y0-stripAir*u > from && b.Y1+stripAir*u < to && d.space.Free(b, stripAir*u) {
				d.g.Part(scene.Tag{Class: "trim"}).Text(t)
				d.space.Take(b)
				return true
			}
		}
	}
	return false
}
