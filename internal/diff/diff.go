// Package diff compares two plans of a room, or layouts that were kept as JSON: what is different in the room, which seams
// moved, which sheets hang elsewhere or are cut otherwise, what that costs, and the revision note that says so.
//
// Coordinates and units: exact lengths; x of seams and openings from the left end of their wall. What was kept as JSON is
// read back exactly, areas to the nearest unit.
//
// Order: walls, openings, seams and sheets as the new plan has them, then what only the old one has.
//
// Not here: why the plan is as it is (package layout).
package diff

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Changes are what changed from one plan to another.
type Changes struct {
	Old, New *View
	Style    length.Style
	Room     []string // what is different in the room, a sentence each
	Seams    []SeamChange
	Sheets   []SheetChange
}

// SeamChange is a seam that is not where it was. Old or New is nil where there is none.
type SeamChange struct{ Old, New *Seam }

// Moved is how far right the seam moved.
func (s SeamChange) Moved() L { return s.New.X - s.Old.X }

// SheetChange is a sheet, known by its number, that hangs elsewhere or is cut otherwise. Old or New is nil where it is not
// laid.
type SheetChange struct{ Old, New *Sheet }

// Compare finds what changed.
func Compare(old, new *View, style length.Style) *Changes {
	d := &Changes{Old: old, New: new, Style: style}
	d.walls()
	d.openings()
	d.rest()
	d.seams()
	d.sheets()
	return d
}

// Same reports whether nothing changed.
func (d *Changes) Same() bool {
	return len(d.Room) == 0 && len(d.Seams) == 0 && len(d.Sheets) == 0 && d.Old.Total.NetArea == d.New.Total.NetArea &&
		d.Old.Total.GrossArea == d.New.Total.GrossArea
}

func (d *Changes) say(format string, args ...any) {
	d.Room = append(d.Room, fmt.Sprintf(format, args...))
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

// seams pairs the seams of each wall so that they move least in all, and keeps those that moved, came or went.
func (d *Changes) seams() {
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
func pair(old, new []Seam, apart L) []SeamChange {
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
func (d *Changes) sheets() {
	type key struct {
		flitch string
		number int
	}
	was := map[key]*Sheet{}
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
func (d *Changes) Renumbered() [][2]*Sheet {
	var out [][2]*Sheet
	for i := range d.New.Sheets {
		n := &d.New.Sheets[i]
		var best *Sheet
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
			out = append(out, [2]*Sheet{best, n})
		}
	}
	return out
}

// common is the width that two sheets cover both.
func common(a, b *Sheet) L {
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
func (d *Changes) Note() string {
	if d.Same() {
		return "No change"
	}
	parts := slices.Clone(d.Room)
	if len(parts) > 3 {
		parts = append(parts[:3], "and "+report.Plural(len(d.Room)-3, "more change"))
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
			slices.Sort(x.list)
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
		parts = append(parts, report.Plural(recut, "sheet")+" cut otherwise")
	}
	if n := len(d.Renumbered()); n > 0 {
		parts = append(parts, report.Plural(n, "sheet")+" renumbered")
	}
	if a, b := d.Old.Total.Sheets, d.New.Total.Sheets; a != b {
		parts = append(parts, fmt.Sprintf("%s, were %d", report.Plural(b, "sheet"), a))
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
func (d *Changes) Mark() string {
	old, new := d.Old.Revisions, d.New.Revisions
	if len(new) > len(old) {
		return new[len(new)-1].Mark
	}
	return Next(slices.Concat(old, new))
}

// Next is the mark after the last of some revisions.
func Next(list []room.Revision) string {
	last := ""
	for _, r := range list {
		if len(r.Mark) == 1 && r.Mark >= "A" && r.Mark < "Z" && r.Mark > last {
			last = r.Mark
		}
	}
	if last == "" {
		return "A"
	}
	return string(last[0] + 1)
}
