package count

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Diff is what changed from one plan to another.
type Diff struct {
	Old, New *View
	Style    length.Style
	Room     []string // what is different in the room, a sentence each
	Seams    []SeamChange
	Sheets   []SheetChange
}

// SeamChange is a seam that is not where it was. Old or New is nil where there is none.
type SeamChange struct{ Old, New *ViewSeam }

// Moved is how far right the seam moved.
func (s SeamChange) Moved() L { return s.New.X - s.Old.X }

// SheetChange is a sheet, known by its number, that hangs elsewhere or is cut otherwise. Old or New is nil where it is not
// laid.
type SheetChange struct{ Old, New *ViewSheet }

// Compare finds what changed.
func Compare(old, new *View, style length.Style) *Diff {
	d := &Diff{Old: old, New: new, Style: style}
	d.walls()
	d.openings()
	d.rest()
	d.seams()
	d.sheets()
	return d
}

// Same reports whether nothing changed.
func (d *Diff) Same() bool {
	return len(d.Room) == 0 && len(d.Seams) == 0 && len(d.Sheets) == 0 && d.Old.Total.NetArea == d.New.Total.NetArea &&
		d.Old.Total.GrossArea == d.New.Total.GrossArea
}

func (d *Diff) say(format string, args ...any) { d.Room = append(d.Room, fmt.Sprintf(format, args...)) }

// measured reports whether both plans know what was measured.
func (d *Diff) measured() bool { return d.Old.Room != nil && d.New.Room != nil }

func (d *Diff) walls() {
	long := func(w ViewWall) L {
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

func (d *Diff) openings() {
	find := func(v *View, name string) *ViewOpening {
		i := slices.IndexFunc(v.Openings, func(o ViewOpening) bool { return o.Name == name })
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
		name := o.Kind + " " + o.Name
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

// small prints how far something moved, as fine as that takes.
func small(s length.Style, by L) string {
	_, text := s.Apart(0, by.Abs())
	return text
}

func side(by L) string {
	if by < 0 {
		return "left"
	}
	return "right"
}

// rest compares what only room files say: boxes, material, flitches, rules.
func (d *Diff) rest() {
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
	for _, x := range []struct {
		what    string
		was, is L
	}{{"corner_return", a.Rules.CornerReturn, b.Rules.CornerReturn}, {"prefer_return", a.Rules.PreferReturn, b.Rules.PreferReturn},
		{"leg", a.Rules.Leg, b.Rules.Leg}, {"prefer_leg", a.Rules.PreferLeg, b.Rules.PreferLeg},
		{"opening_clear", a.Rules.OpeningClear, b.Rules.OpeningClear}, {"prefer_clear", a.Rules.PreferClear, b.Rules.PreferClear},
		{"box_clear", a.Rules.BoxClear, b.Rules.BoxClear}, {"least_width", a.Rules.LeastWidth, b.Rules.LeastWidth},
		{"prefer_width", a.Rules.PreferWidth, b.Rules.PreferWidth}, {"short_seam", a.Rules.ShortSeam, b.Rules.ShortSeam},
		{"least_overlap", a.Rules.LeastOverlap, b.Rules.LeastOverlap}, {"edge_trim", a.Rules.EdgeTrim, b.Rules.EdgeTrim},
		{"top_trim", a.Rules.TopTrim, b.Rules.TopTrim}, {"bottom_trim", a.Rules.BottomTrim, b.Rules.BottomTrim},
		{"snap", a.Rules.Snap, b.Rules.Snap}, {"level line", a.Space.LevelLine, b.Space.LevelLine},
		{"base", a.Space.Base, b.Space.Base}, {"crown", a.Space.Crown, b.Space.Crown}} {
		length(x.what, x.was, x.is)
	}
	d.faces(a, b)
	d.flitches(a, b)
	d.boxes(a, b)
	if len(b.Hung) > len(a.Hung) {
		d.say("%s more on the wall", plural(len(b.Hung)-len(a.Hung), "sheet"))
	}
}

// faces compares ceilings, floors and leans of walls that both rooms have.
func (d *Diff) faces(a, b *room.Room) {
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
	}
}

func orNone(s string) string {
	if s == "" {
		return "not given"
	}
	return s
}

func (d *Diff) flitches(a, b *room.Room) {
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

func (d *Diff) boxes(a, b *room.Room) {
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
		what := n.box.Kind + " " + name
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

// seams pairs the seams of each wall so that they move least in all, and keeps those that moved, came or went.
func (d *Diff) seams() {
	var names []string
	for _, w := range slices.Concat(d.New.Walls, d.Old.Walls) {
		if !slices.Contains(names, w.Name) {
			names = append(names, w.Name)
		}
	}
	apart := max(d.Old.widest(), d.New.widest())
	for _, wall := range names {
		for _, p := range pair(d.Old.on(wall), d.New.on(wall), apart) {
			if p.Old == nil || p.New == nil || p.Old.X != p.New.X || p.Old.Closing != p.New.Closing {
				d.Seams = append(d.Seams, p)
			}
		}
	}
}

// pair pairs two rows of seams in their order: a pair costs what it moves, a seam without a partner half of apart.
func pair(old, new []ViewSeam, apart L) []SeamChange {
	n, m := len(old), len(new)
	cost := make([][]L, n+1)
	for i := n; i >= 0; i-- {
		cost[i] = make([]L, m+1)
		for j := m; j >= 0; j-- {
			switch {
			case i == n:
				cost[i][j] = L(m-j) * apart / 2
			case j == m:
				cost[i][j] = L(n-i) * apart / 2
			default:
				cost[i][j] = min(cost[i+1][j+1]+(old[i].X-new[j].X).Abs(), cost[i+1][j]+apart/2, cost[i][j+1]+apart/2)
			}
		}
	}
	var out []SeamChange
	i, j := 0, 0
	for i < n || j < m {
		switch {
		case i < n && j < m && cost[i][j] == cost[i+1][j+1]+(old[i].X-new[j].X).Abs():
			out = append(out, SeamChange{&old[i], &new[j]})
			i, j = i+1, j+1
		case i < n && cost[i][j] == cost[i+1][j]+apart/2:
			out = append(out, SeamChange{Old: &old[i]})
			i++
		default:
			out = append(out, SeamChange{New: &new[j]})
			j++
		}
	}
	return out
}

// sheets compares sheets by their number: it stands on their backs.
func (d *Diff) sheets() {
	type key struct {
		flitch string
		number int
	}
	was := map[key]*ViewSheet{}
	for i := range d.Old.Sheets {
		if s := &d.Old.Sheets[i]; s.Number > 0 {
			was[key{s.Flitch, s.Number}] = s
		}
	}
	seen := map[key]bool{}
	for i := range d.New.Sheets {
		s := &d.New.Sheets[i]
		if s.Number == 0 {
			continue
		}
		k := key{s.Flitch, s.Number}
		seen[k] = true
		o := was[k]
		if o == nil || o.Cut != s.Cut || o.Width != s.Width || o.Ripped != s.Ripped || o.Shape != s.Shape || !slices.Equal(o.Spots, s.Spots) {
			d.Sheets = append(d.Sheets, SheetChange{o, s})
		}
	}
	for i := range d.Old.Sheets {
		if s := &d.Old.Sheets[i]; s.Number > 0 && !seen[key{s.Flitch, s.Number}] {
			d.Sheets = append(d.Sheets, SheetChange{s, nil})
		}
	}
}

// Renumbered lists the places where another number hangs than before: of each sheet that covers the most of what another
// one covered.
func (d *Diff) Renumbered() [][2]*ViewSheet {
	var out [][2]*ViewSheet
	for i := range d.New.Sheets {
		n := &d.New.Sheets[i]
		var best *ViewSheet
		most := L(0)
		for k := range d.Old.Sheets {
			o := &d.Old.Sheets[k]
			if o.Course != n.Course {
				continue
			}
			if c := common(o, n); c > most {
				best, most = o, c
			}
		}
		if best != nil && (best.Number != n.Number || best.Flitch != n.Flitch) {
			out = append(out, [2]*ViewSheet{best, n})
		}
	}
	return out
}

// common is the width that two sheets cover both.
func common(a, b *ViewSheet) L {
	sum := L(0)
	for _, x := range a.Spots {
		for _, y := range b.Spots {
			if x.Wall == y.Wall {
				sum += max(0, min(x.To, y.To)-max(x.From, y.From))
			}
		}
	}
	return sum
}

// Note is the revision note in one sentence, as it goes into the block.
func (d *Diff) Note() string {
	if d.Same() {
		return "No change"
	}
	parts := slices.Clone(d.Room)
	if len(parts) > 3 {
		parts = append(parts[:3], "and "+plural(len(d.Room)-3, "more change"))
	}
	var moved, come, gone []int
	for _, s := range d.Seams {
		switch {
		case s.Old == nil:
			come = append(come, s.New.Number)
		case s.New == nil:
			gone = append(gone, s.Old.Number)
		case s.Old.X != s.New.X:
			moved = append(moved, s.New.Number)
		}
	}
	for _, x := range []struct {
		list []int
		what string
	}{{moved, "moved"}, {come, "new"}, {gone, "gone"}} {
		if len(x.list) > 0 {
			slices.SortFunc(x.list, cmp.Compare[int])
			parts = append(parts, seamsWord(len(x.list))+" "+layout.Numbers(x.list)+" "+x.what)
		}
	}
	recut := 0
	for _, s := range d.Sheets {
		if s.Old != nil && s.New != nil && (s.Old.Cut != s.New.Cut || s.Old.Width != s.New.Width || s.Old.Shape != s.New.Shape && slices.Equal(s.Old.Spots, s.New.Spots)) {
			recut++
		}
	}
	if recut > 0 {
		parts = append(parts, plural(recut, "sheet")+" cut otherwise")
	}
	if n := len(d.Renumbered()); n > 0 {
		parts = append(parts, plural(n, "sheet")+" renumbered")
	}
	if a, b := d.Old.Total.Sheets, d.New.Total.Sheets; a != b {
		parts = append(parts, fmt.Sprintf("%s, were %d", plural(b, "sheet"), a))
	}
	if len(parts) == 0 {
		return "Areas changed"
	}
	text := strings.Join(parts, "; ")
	return strings.ToUpper(text[:1]) + text[1:]
}

func seamsWord(n int) string {
	if n == 1 {
		return "seam"
	}
	return "seams"
}

// Mark is the mark of the revision that the note is for: the new plan's last one where the old plan does not have it, else
// the next.
func (d *Diff) Mark() string {
	old, new := d.Old.Revisions, d.New.Revisions
	if len(new) > len(old) {
		return new[len(new)-1].Mark
	}
	last := ""
	for _, r := range slices.Concat(old, new) {
		if len(r.Mark) == 1 && r.Mark >= "A" && r.Mark < "Z" && r.Mark > last {
			last = r.Mark
		}
	}
	if last == "" {
		return "A"
	}
	return string(last[0] + 1)
}
