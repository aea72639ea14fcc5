package room

import (
	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// What is asked about on a wall.
//
// Source: common practice, no source.
const (
	shortest = 2 * length.Inch  // a wall wherever it stands
	longWall = 25 * length.Foot // one whose ceiling is not straight by itself
	nearBox  = 2 * length.Inch  // from an opening's edge
)

// ofWall asks about the size of a wall.
func (a *asker) ofWall(v source.Value, i int) {
	w := &a.room.Walls[i]
	on, slots := finding.Finding{Place: "wall " + w.Name, Wall: i}, func() finding.Slots { return finding.Slots{"wall": w.Name} }
	odd := (w.Length > limitOf(finding.WallOdd, "").least || w.Length < shortest || !a.stub(i)) &&
		a.odd(finding.WallOdd, v.Get("length"), w.Name, w.Length, on, slots())
	if !w.Cover {
		return
	}
	_, high := extent(w.Ceiling)
	low, _ := extent(w.Floor)
	a.odd(finding.CeilingOdd, v.Get("height"), w.Name, high-low, on, slots())
	if !odd && w.Length > longWall && len(w.Ceiling) == 2 {
		f := on
		f.Measured = &w.Length
		a.ask(finding.HeightsFew, v.Get("height"), w.Name, "height = [[x, z], ...]", f, slots())
	}
}

// stub reports whether a wall is as short as walls are only where something stands out of the room's walls or is let into them: a
// pilaster, a recess, a column, a facet of a curve.
func (a *asker) stub(i int) bool {
	bends := []Bend{a.room.Walls[i].Corner}
	if k := a.room.before(i); k >= 0 {
		bends = append(bends, a.room.Walls[k].Corner)
	}
	for _, b := range bends {
		if b == Outside || b == Straight {
			return true
		}
	}
	return false
}

// ofEnds asks what the covering runs against at an end where no wall follows.
func (a *asker) ofEnds(v source.Value, i int) {
	w := &a.room.Walls[i]
	if !w.Cover || a.room.Veneer.Horizontal {
		return
	}
	on, slots := finding.Finding{Place: "wall " + w.Name, Wall: i}, finding.Slots{"wall": w.Name}
	if w.LeftEnd == "" && a.room.before(i) < 0 {
		a.ask(finding.LeftEndUnsaid, v, w.Name, `left_end = "inside corner", "trim", ...`, on, slots)
	}
	if w.RightEnd == "" && w.Corner == None {
		on.At = w.Length
		a.ask(finding.RightEndUnsaid, v, w.Name, `right_end = "inside corner", "trim", ...`, on, slots)
	}
}

// ofOpening asks about the size of an opening, its sides and its casing.
func (a *asker) ofOpening(v source.Value, w *Wall, k int) {
	o := &w.Openings[k]
	traits := o.Kind.Traits()
	on := finding.Finding{Place: "opening " + o.Name, Wall: a.indexOf(w), At: o.FromLeft}
	slots := func() finding.Slots { return finding.Slots{"opening": o.Kind.Named(o.Name)} }
	a.odd(finding.OpeningNarrow, v.Get("width"), o.Name, o.Width, on, slots())
	if traits.Doorway {
		a.odd(finding.DoorLow, v.Get("height"), o.Name, o.Height, on, slots())
		if o.Width > o.Height {
			f := on
			f.Measured, f.Required = &o.Width, &o.Height
			a.ask(finding.DoorWide, v.Get("width"), o.Name, "width and height", f, slots())
		}
	}
	if o.SillGiven {
		a.odd(finding.SillHigh, v.Get("sill"), o.Name, o.Sill-At(w.Floor, o.FromLeft), on, slots())
	}
	if o.Reveal > 0 && !v.Get("wrap_reveal").Given() {
		f := on
		f.Measured = &o.Reveal
		a.ask(finding.WrapUnsaid, v.Get("reveal"), o.Name, "wrap_reveal = true or false", f, slots())
	}
	if traits.Burns && w.Cover && !o.Cleared {
		a.ask(finding.ClearanceUnsaid, v, o.Name, "clearance", on, finding.Slots{"opening": o.Kind.Named(o.Name), "wall": w.Name})
	}
	if traits.Cased && o.Casing == nil && !o.WrapReveal && w.Base > 0 && w.Cover {
		a.uncased = append(a.uncased, v)
		a.cased = append(a.cased, o.Kind.Named(o.Name))
	}
}

// indexOf is the index of a wall.
func (a *asker) indexOf(w *Wall) int {
	for i := range a.room.Walls {
		if &a.room.Walls[i] == w {
			return i
		}
	}
	return -1
}

// ofBox asks about the size of a plate, and about one that stands so near to an opening that it may have been measured from
// somewhere else.
func (a *asker) ofBox(v source.Value, w *Wall, k int) {
	b := &w.Boxes[k]
	on := finding.Finding{Place: "box " + b.Name, Wall: a.indexOf(w), At: b.X}
	name := b.Kind.Named(b.Name)
	for i, size := range []L{b.PlateWidth, b.PlateHigh} {
		if at := v.Get("plate"); at.Given() {
			a.odd(finding.PlateOdd, at.Items()[i], b.Name, size, on, finding.Slots{"box": name, "way": []string{"wide", "high"}[i]})
		}
	}
	x0, z0 := b.X-b.PlateWidth.HalfDown(), b.Z-b.PlateHigh.HalfDown()
	for i := range w.Openings {
		o := &w.Openings[i]
		aside := max(o.FromLeft-x0-b.PlateWidth, x0-o.Right())
		over := max(o.Sill-z0-b.PlateHigh, z0-o.Head)
		if gap := max(aside, over); gap >= 0 && gap < nearBox {
			f := on
			f.Measured = &gap
			a.ask(finding.BoxNear, v, b.Name, "x or z", f, finding.Slots{"box": name, "opening": o.Kind.Named(o.Name)})
			return
		}
	}
}

// ofPins asks of two pins of one kind that are nearer than a sheet to each other, where they are no whole number of sheets apart.
func (a *asker) ofPins(v source.Value, i int) {
	w, net := &a.room.Walls[i], a.room.NetWidth()
	tables := v.Get("pin").Tables()
	for k := range w.Pins {
		for j := range w.Pins[:k] {
			p, q := &w.Pins[j], &w.Pins[k]
			if gap := (p.X - q.X).Abs(); p.Put == q.Put && gap < net {
				at := func(x L) string { return length.StyleOf(a.unit()).Words(x) }
				a.ask(finding.PinsClose, tables[k].Get("at"), w.Name, "at", finding.Finding{Place: "wall " + w.Name, Wall: i, At: q.X, Measured: &gap, Required: &net},
					finding.Slots{"put": q.Put, "from": at(p.X), "to": at(q.X), "wall": w.Name})
				return
			}
		}
	}
}
