package diff

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
)

// measured reports whether both plans know what was measured.
func (d *Changes) measured() bool { return d.Old.Room != nil && d.New.Room != nil }

func (d *Changes) walls() {
	long := func(w Wall) L {
		if d.measured() {
			return w.Length
		}
		return w.Along
	}
	old := map[string]L{}
	for _, w := range d.Old.Walls {
		old[w.Name] = long(w)
	}
	new := map[string]bool{}
	for _, w := range d.New.Walls {
		new[w.Name] = true
		was, ok := old[w.Name]
		switch {
		case !ok:
			d.say("wall %s is new", w.Name)
		case was != long(w):
			a, b := d.Style.Apart(was, long(w))
			d.say("wall %s is %s, was %s", w.Name, b, a)
		}
	}
	for _, w := range d.Old.Walls {
		if !new[w.Name] {
			d.say("wall %s is gone", w.Name)
		}
	}
}

func (d *Changes) openings() {
	find := func(v *View, name string) *Opening {
		i := slices.IndexFunc(v.Openings, func(o Opening) bool { return o.Name == name })
		if i < 0 {
			return nil
		}
		return &v.Openings[i]
	}
	s := d.Style
	for i := range d.New.Openings {
		o := &d.New.Openings[i]
		was := find(d.Old, o.Name)
		if was == nil {
			d.say("%s %s on wall %s is new", o.Kind, o.Name, o.Wall)
			continue
		}
		name := o.Kind.Named(o.Name)
		if o.Wall != was.Wall {
			d.say("%s is on wall %s, was on wall %s", name, o.Wall, was.Wall)
			continue
		}
		wide := (o.Right - o.Left) - (was.Right - was.Left)
		by := o.Left - was.Left
		if !d.measured() {
			wide, by = (o.To-o.From)-(was.To-was.From), o.From-was.From
		}
		if by != 0 {
			d.say("%s on wall %s moved %s %s", name, o.Wall, small(s, by), side(by))
		}
		switch {
		case wide > 0:
			d.say("%s is %s wider", name, small(s, wide))
		case wide < 0:
			d.say("%s is %s narrower", name, small(s, wide))
		}
		if o.Sill != was.Sill {
			d.say("%s: sill at %s, was at %s", name, s.Words(o.Sill), s.Words(was.Sill))
		}
		if o.Head != was.Head {
			d.say("%s: head at %s, was at %s", name, s.Words(o.Head), s.Words(was.Head))
		}
	}
	for i := range d.Old.Openings {
		if o := &d.Old.Openings[i]; find(d.New, o.Name) == nil {
			d.say("%s %s on wall %s is gone", o.Kind, o.Name, o.Wall)
		}
	}
}

// rest compares what only room files say: boxes, material, flitches, rules.
func (d *Changes) rest() {
	a, b := d.Old.Room, d.New.Room
	if d.Old.Aim != d.New.Aim {
		d.say("aim %s, was %s", d.New.Aim, d.Old.Aim)
	}
	if a == nil || b == nil {
		return
	}
	s := d.Style
	length := func(what string, was, is L) {
		if was != is {
			x, y := s.Apart(was, is)
			d.say("%s %s, was %s", what, y, x)
		}
	}
	word := func(what, was, is string) {
		if was != is {
			d.say("%s %s, was %s", what, orNone(is), orNone(was))
		}
	}
	word("species", a.Veneer.Species, b.Veneer.Species)
	word("cut", a.Veneer.Cut, b.Veneer.Cut)
	length("gross width", a.Veneer.GrossWidth, b.Veneer.GrossWidth)
	length("overlap", a.Veneer.Overlap, b.Veneer.Overlap)
	length("sheets' length", a.Veneer.Length, b.Veneer.Length)
	for _, x := range room.Distances() {
		length(x.Key, *x.Of(&a.Rules), *x.Of(&b.Rules))
	}
	for _, x := range []struct {
		what    string
		was, is L
	}{{"level line", a.Space.LevelLine, b.Space.LevelLine},
		{"base", a.Space.Base, b.Space.Base}, {"crown", a.Space.Crown, b.Space.Crown}} {
		length(x.what, x.was, x.is)
	}
	if a.Space.Choose != b.Space.Choose {
		d.say("layout %d is chosen, was %d", b.Space.Choose, a.Space.Choose)
	}
	d.onPlan(&a.Space, &b.Space)
	d.faces(a, b)
	d.flitches(a, b)
	d.boxes(a, b)
	if len(b.Hung) > len(a.Hung) {
		d.say("%s more on the wall", report.Plural(len(b.Hung)-len(a.Hung), "sheet"))
	}
}

// onPlan compares what only the plan of the room shows.
func (d *Changes) onPlan(a, b *room.Space) {
	if a.Name != b.Name {
		d.say("the room is called %s, was %s", orNone(b.Name), orNone(a.Name))
	}
	if (a.North == nil) != (b.North == nil) || a.North != nil && *a.North != *b.North {
		d.say("north is another")
	}
}

// faces compares ceilings, floors and leans of walls that both rooms have.
func (d *Changes) faces(a, b *room.Room) {
	s := d.Style
	flat := func(p []room.Point) bool {
		return !slices.ContainsFunc(p, func(q room.Point) bool { return q.Z != p[0].Z })
	}
	for i := range b.Walls {
		w := &b.Walls[i]
		k := slices.IndexFunc(a.Walls, func(x room.Wall) bool { return x.Name == w.Name })
		if k < 0 {
			continue
		}
		was := &a.Walls[k]
		switch {
		case slices.Equal(was.Ceiling, w.Ceiling):
		case flat(was.Ceiling) && flat(w.Ceiling):
			if was.Ceiling[0].Z != w.Ceiling[0].Z {
				x, y := s.Apart(was.Ceiling[0].Z, w.Ceiling[0].Z)
				d.say("ceiling of wall %s at %s, was at %s", w.Name, y, x)
			}
		default:
			d.say("ceiling of wall %s is measured otherwise", w.Name)
		}
		if !slices.Equal(was.Floor, w.Floor) && !(flat(was.Floor) && flat(w.Floor) && was.Floor[0].Z == w.Floor[0].Z) {
			d.say("floor of wall %s is measured otherwise", w.Name)
		}
		if was.LeanLeft != w.LeanLeft || was.LeanRight != w.LeanRight {
			d.say("wall %s leans %s left and %s right, did %s and %s", w.Name, s.Words(w.LeanLeft), s.Words(w.LeanRight), s.Words(was.LeanLeft),
				s.Words(was.LeanRight))
		}
		if was.Corner != w.Corner || was.Angle != w.Angle || was.Radius != w.Radius || was.Wrap != w.Wrap {
			d.say("corner at the right of wall %s is another", w.Name)
		}
		if was.Across != w.Across {
			x, y := s.Apart(was.Across, w.Across)
			d.say("across the open end after wall %s it is %s, was %s", w.Name, y, x)
		}
	}
}

func orNone(s string) string {
	if s == "" {
		return "not given"
	}
	return s
}

func (d *Changes) flitches(a, b *room.Room) {
	find := func(r *room.Room, number string) *room.Flitch {
		i := slices.IndexFunc(r.Flitches, func(f room.Flitch) bool { return f.Number == number })
		if i < 0 {
			return nil
		}
		return &r.Flitches[i]
	}
	for i := range b.Flitches {
		f := &b.Flitches[i]
		was := find(a, f.Number)
		if was == nil {
			d.say("flitch %s is new", f.Number)
			continue
		}
		if was.From != f.From {
			d.say("flitch %s is laid %s, was %s", f.Number, fromWords(f), fromWords(was))
		}
		for _, x := range []struct {
			what    string
			was, is []int
		}{{"delivered", was.Sheets, f.Sheets}, {"damaged", was.Damaged, f.Damaged}, {"spare", was.Spare, f.Spare}} {
			if !slices.Equal(x.was, x.is) {
				d.say("flitch %s: %s %s, was %s", f.Number, x.what, orNone(layout.Numbers(x.is)), orNone(layout.Numbers(x.was)))
			}
		}
	}
	for i := range a.Flitches {
		if f := &a.Flitches[i]; find(b, f.Number) == nil {
			d.say("flitch %s is gone", f.Number)
		}
	}
}

// fromWords say from which end a flitch is laid.
func fromWords(f *room.Flitch) string {
	if f.From == room.FromLast {
		return "from the highest number down"
	}
	return "from the lowest number up"
}

func (d *Changes) boxes(a, b *room.Room) {
	type at struct {
		box  *room.Box
		wall string
	}
	all := func(r *room.Room) (map[string]at, []string) {
		out, names := map[string]at{}, []string{}
		for i := range r.Walls {
			for k := range r.Walls[i].Boxes {
				box := &r.Walls[i].Boxes[k]
				out[box.Name] = at{box, r.Walls[i].Name}
				names = append(names, box.Name)
			}
		}
		return out, names
	}
	was, oldNames := all(a)
	is, newNames := all(b)
	for _, name := range newNames {
		n := is[name]
		o, ok := was[name]
		what := n.box.Kind.Named(name)
		switch {
		case !ok:
			d.say("%s on wall %s is new", what, n.wall)
		case o.wall != n.wall:
			d.say("%s is on wall %s, was on wall %s", what, n.wall, o.wall)
		default:
			if by := n.box.X - o.box.X; by != 0 {
				d.say("%s on wall %s moved %s %s", what, n.wall, small(d.Style, by), side(by))
			}
			if by := n.box.Z - o.box.Z; by > 0 {
				d.say("%s on wall %s moved %s up", what, n.wall, small(d.Style, by))
			} else if by < 0 {
				d.say("%s on wall %s moved %s down", what, n.wall, small(d.Style, by))
			}
		}
	}
	for _, name := range oldNames {
		if _, ok := is[name]; !ok {
			d.say("%s %s on wall %s is gone", was[name].box.Kind, name, was[name].wall)
		}
	}
}
