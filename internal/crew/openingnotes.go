package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// What is said of openings beside the drawing: which sheets fall into pieces at them, what covers their edges, and what nobody has
// said yet.

// partedWords name the sheets that fall into pieces, as far as they begin on the page: the cut list says where each hangs.
func (d *wallBoard) partedWords() []string {
	var numbers []string
	var sheets []*layout.Sheet
	for _, s := range d.begun() {
		if x := d.cards[s]; x != nil && len(x.Parts) > 1 {
			numbers, sheets = append(numbers, d.SheetNumber(s)), append(sheets, s)
		}
	}
	if numbers == nil {
		return nil
	}
	return []string{d.Words.Say("tape.in_parts", strings.Join(numbers, ", "), d.rowsWord(sheets))}
}

// edgeless visits the sheets of a place whose raw right edge an opening takes over their whole length: they hang by the left one.
func (d *wallBoard) edgeless(h *face.Hang, do func(*layout.Sheet, string)) {
	for _, s := range h.Called() {
		x := d.Count.CutOf(s)
		if x == nil || x.Hung || !h.Lined || !d.p.Here(h) || h.Gone() {
			continue
		}
		for _, o := range x.Holes {
			if !o.Kind.Traits().Box && o.From > 0 && o.To == x.Width && o.Low == -x.Below && o.High == x.Above {
				do(s, o.Name)
			}
		}
	}
}

// goneWords name the sheets that have no raw right edge.
func (d *wallBoard) goneWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		d.edgeless(h, func(s *layout.Sheet, name string) {
			lines = append(lines, d.Words.Say("tape.edge_gone", d.SheetNumber(s), name, d.at(h.Start)))
		})
	}
	return lines
}

// byLeft says over the figure of a line where the left edge of a sheet goes that has no raw right edge for it.
func (d *wallBoard) byLeft(h *face.Hang) string {
	words := ""
	d.edgeless(h, func(s *layout.Sheet, _ string) {
		if len(h.Called()) > 1 {
			words = d.Words.Say("tape.by_left_of", d.SheetNumber(s), d.at(h.Start))
		} else {
			words = d.Words.Say("tape.by_left", d.at(h.Start))
		}
	})
	return words
}

// openingsBy names the openings that the page shows by a figure of each, those alike together; "" leaves one out.
func (d *wallBoard) openingsBy(figure func(*room.Opening) string) (order []string, names map[string][]string) {
	names = map[string][]string{}
	for _, f := range d.faces {
		for i := range f.w.W.Openings {
			o := &f.w.W.Openings[i]
			if _, shown := f.hole(o); !shown {
				continue
			}
			if what := figure(o); what != "" {
				if names[what] == nil {
					order = append(order, what)
				}
				names[what] = append(names[what], o.Name)
			}
		}
	}
	return order, names
}

// keepUnder moves under the drawing what the list has no room for of where openings stand, and puts the figures of base and crown there that
// stand in no strip: such a height is never on another page alone.
func (d *wallBoard) keepUnder(left []note) {
	for _, n := range left {
		for _, line := range n.lines {
			if short := d.unseen[line]; short != "" {
				d.kept = slices.Insert(d.kept, 0, short)
			}
			if slices.Contains(d.places, line) {
				d.kept = append(d.kept, line)
				d.places = slices.DeleteFunc(d.places, func(s string) bool { return s == line })
			}
		}
	}
}

// casingWords say how far inward from its edges the casing of an opening covers, where the room file has one.
func (d *wallBoard) casingWords(o *room.Opening) []string {
	if !o.Kind.Traits().Cased || o.WrapReveal || o.Casing == nil || *o.Casing == 0 {
		return nil
	}
	return []string{d.Words.Say("wall.casing", d.Inches(*o.Casing))}
}

// revealWords ask what covers head and sill of openings whose jambs are wrapped: sheets cover the jambs alone.
func (d *wallBoard) revealWords() []string {
	if d.w.Run.Up {
		return nil
	}
	var lines []string
	order, names := d.openingsBy(func(o *room.Opening) string {
		if !o.WrapReveal {
			return ""
		}
		key := "tape.reveal"
		if !o.SillGiven {
			key = "tape.reveal_head"
		}
		return d.Words.Say(key, "\x00", d.Inches(o.Reveal))
	})
	for _, words := range order {
		lines = append(lines, strings.Replace(words, "\x00", strings.Join(names[words], ", "), 1))
	}
	return lines
}

// joint is what the sheets at both sides of a joint of courses have over it: how far the upper ones hang down past it, or those right
// of it begin left of it, and how far the others go on: what the least of them has.
type joint struct{ from, to L }

// jointAt finds what laps at a joint on this wall, false where no sheet that is still to hang does.
func (d *wallBoard) jointAt(at L) (joint, bool) {
	under := slices.Index(d.w.Run.Joints, at) + 1 // the course
	zero := d.Level
	if d.w.Run.Up {
		zero = 0
	}
	var from, to []L
	for i := range d.w.Run.Sheets {
		s := &d.w.Run.Sheets[i]
		switch {
		case len(s.Pieces) == 0 || s.Hung || !slices.ContainsFunc(s.Pieces, func(p layout.Piece) bool { return p.Wall == d.w.Wall }):
		case s.Course == under && zero+s.Above > at:
			to = append(to, zero+s.Above)
		case s.Course == under+1 && zero-s.Below < at:
			from = append(from, zero-s.Below)
		}
	}
	if under == 0 || from == nil || to == nil {
		return joint{}, false
	}
	return joint{slices.Max(from), slices.Min(to)}, true
}

// jointWords say where courses meet and how they lap there, both cut in one: how far from the level line; where the grain is level,
// how far from the left end.
func (d *wallBoard) jointWords() []string {
	var lines []string
	for _, at := range d.w.Joints() {
		say := func(z L) string { return count.UpDown(d.Words, d.Say, z-d.Level) }
		line, lap, off := d.Words.Say("tape.courses", say(at)), "tape.courses_lap", "tape.courses_off"
		if d.w.Run.Up {
			say = func(x L) string { return d.Along(d.w.Face, x) }
			line, lap, off = d.Words.Say("tape.end_match", say(at)), "tape.end_lap", "tape.end_off"
		}
		if j, ok := d.jointAt(at); ok {
			more, less := d.Inches(d.atMost(j.to-at)), d.Inches(d.atMost(at-j.from))
			if more == less {
				line = d.Words.Say(lap, line, say(j.from), say(j.to), more)
			} else {
				line = d.Words.Say(off, line, say(j.from), say(j.to), more, less)
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// atMost is a limit as pages print it, never more than it is.
func (c *Set) atMost(l L) L { return l / c.Style.Least() * c.Style.Least() }
