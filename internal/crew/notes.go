package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// tapeWords say what the list measures, and what of the drawing has no room in it: what spoils a sheet comes first, as what has no room under
// the list stands on a page behind.
func (d *wallBoard) tapeWords() []string {
	if d.w.Run.Up {
		return slices.Concat(d.jointWords(), d.places, d.beside, []string{d.Words.Say("tape.seam_under", d.Inches(d.half))}, d.boxPlaces())
	}
	if d.unrolled() {
		return slices.Concat(d.unrolledWords(), d.places, d.beside, d.revealWords())
	}
	seam := []string{d.Words.Say("tape.seam_left", d.Inches(d.half))}
	return slices.Concat(d.jointWords(), d.witnessWords(), d.secondWords(), d.narrowWords(), d.places, d.beside, d.goneWords(), d.stockWords(), d.edgeWords(),
		d.slantWords(), d.sliverWords(), seam, d.revealWords(), d.rawEndWords(), d.endsWords(), d.lengthWords(), d.boxPlaces())
}

// lengthWords say how long a wall is whose end is figured otherwise than it is long at the floor, on the page that has its end.
func (d *wallBoard) lengthWords() []string {
	floor, end, level := d.w.Lengths()
	switch {
	case floor == end || d.p.RightCut():
		return nil
	case level:
		return []string{d.Words.Say("tape.lengths", d.Say(floor), d.Say(end))}
	}
	return []string{d.Words.Say("tape.lengths_zero", d.Say(floor), d.Say(end))}
}

// endsWords say where a sheet begins that has no line, since it goes on to the end of the covering.
func (d *wallBoard) endsWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		if h.Hung() || !h.Ends || !d.p.Here(h) || h.Gone() || h.Sheet().Short != 0 {
			continue
		}
		end := d.w.Run.Line.Spans[h.Sheet().Span].RightEnd
		lines = append(lines, d.Words.Say("tape.end_begins", strings.Join(d.stacked(h), "+"), d.at(h.Start), d.EndWords(end), d.Inches(d.Room.Rules.LeastOverlap)))
	}
	return lines
}

// narrowWords name the sheets that came narrower than the others and hang by a line of their own, with both their raw edges.
func (d *wallBoard) narrowWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		if h.Hung() || !d.p.Here(h) || !h.Lined && !h.Ends {
			continue
		}
		for _, s := range h.Called() {
			if s.Short == 0 || s.Gross >= d.Room.Veneer.GrossWidth {
				continue
			}
			who, wide, left := d.SheetNumber(s), d.Inches(s.Gross), d.at(s.StartLine+h.Turn)
			if h.Ends {
				lines = append(lines, d.Words.Say("receive.came_last", who, wide, left))
			} else {
				lines = append(lines, d.Words.Say("receive.came", who, wide, d.Inches(d.half-s.Short.HalfDown()), left))
			}
		}
	}
	return lines
}

// secondWords say where a second level line is struck, how far from the first, and how the figures of sheets run from it.
func (d *wallBoard) secondWords() []string {
	var lines []string
	for _, s := range d.w.Seconds() {
		if from, to := max(s.From, d.p.From), min(s.To, d.p.To); from < to {
			way := "tape.second_over"
			if s.By < 0 {
				way = "tape.second_under"
			}
			lines = append(lines, d.Words.Say(way, d.Say(s.By.Abs()), d.Along(d.w.Face, from), d.Along(d.w.Face, to), s.No))
			if list := d.figuredFrom(s); list != nil {
				lines = append(lines, d.Words.Say("tape.from_second", layout.Numbers(list), s.No))
			}
			lines = append(lines, d.setFrom(s)...)
		}
	}
	return lines
}

// figuredFrom are the numbers of the sheets of this wall whose heights are from a second line.
func (d *wallBoard) figuredFrom(second face.Second) []int {
	var list []int
	for _, x := range d.cutsHere() {
		if x.Line == (face.Line{No: second.No, By: second.By}) && x.Number > 0 && !x.Hung {
			list = append(list, x.Number)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// setFrom say of the sheets that a second line runs past how far from it one of their ends hangs, those alike together.
func (d *wallBoard) setFrom(second face.Second) []string {
	var order, lines []string
	numbers := map[string][]int{}
	for _, s := range d.begun() {
		if x := d.Count.CutOf(s); x != nil && x.Line == (face.Line{No: second.No, By: second.By, Off: true}) && x.Number > 0 {
			words := card.SetWords(d.TapedSet, d.cards[s])
			if numbers[words] == nil {
				order = append(order, words)
			}
			numbers[words] = append(numbers[words], x.Number)
		}
	}
	for _, words := range order {
		lines = append(lines, d.Words.Say("tape.set", layout.Numbers(numbers[words]), words))
	}
	return lines
}

// stockWords name the courses that an opening takes whole, at places where another course hangs.
func (d *wallBoard) stockWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		if stock := h.Stock(); len(stock) > 0 && !h.Gone() && d.p.Here(h) {
			lines = append(lines, d.Words.Say("tape.stock", d.numbersOf(stock)))
		}
	}
	return lines
}

// cutsBeside give the cut lengths that have no room in their sheets, those alike together.
func (d *wallBoard) cutsBeside() []string {
	var order []string
	numbers := map[string][]int{}
	for _, s := range d.cuts {
		cut := d.Words.Say("tape.hung")
		if !s.Hung {
			cut = d.Say(d.Count.CutOf(s).Long(s, d.Style))
		}
		if numbers[cut] == nil {
			order = append(order, cut)
		}
		numbers[cut] = append(numbers[cut], s.Number)
	}
	var parts []string
	for _, cut := range order {
		who := "?"
		if list := known(numbers[cut]); len(list) > 0 {
			who = layout.Numbers(list)
		}
		parts = append(parts, who+": "+cut)
	}
	if parts == nil {
		return nil
	}
	return []string{d.Words.Say("tape.cut", strings.Join(parts, "; "))}
}

// known leaves out the zeros that stand for sheets without a number.
func known(numbers []int) []int {
	return slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return n == 0 })
}

// begun are the sheets to cut whose left edge is on the page, in the order of its list.
func (d *drawing) begun() []*layout.Sheet {
	var list []*layout.Sheet
	for _, f := range d.faces {
		for _, h := range f.p.rows {
			for _, s := range h.Sheets {
				if !s.Hung && !s.InGap && !h.Before && f.p.StartsHere(h) && s.CutLength != 0 {
					list = append(list, s)
				}
			}
		}
	}
	return list
}

// markWords say how long the sheets are cut, and how much of that is above and below the level mark, those alike together.
func (d *wallBoard) markWords() []string {
	type mark struct {
		cut, above, below L
		line              int
	}
	var order []mark
	numbers := map[mark][]int{}
	for _, s := range d.begun() {
		x := d.Count.CutOf(s)
		m := mark{x.Long(s, d.Style), s.Above, s.Below, 0}
		if x.Line.Second() && !x.Line.Off {
			m = mark{x.Long(s, d.Style), s.Above - x.Line.By, s.Below + x.Line.By, x.Line.No}
		}
		if numbers[m] == nil {
			order = append(order, m)
		}
		numbers[m] = append(numbers[m], s.Number)
	}
	switch {
	case len(order) == 0:
		return nil
	case len(order) > 3:
		key := "tape.marks_on"
		if len(d.bevelled) > 0 {
			key = "tape.marks_bevels_on"
		}
		return append(d.cutsBeside(), d.Words.Say(key, d.rowsWord(d.begun())))
	}
	var lines []string
	for _, m := range order {
		who := ""
		if list := known(numbers[m]); len(order) > 1 && len(list) > 0 {
			who = layout.Numbers(list) + ": "
		}
		where := d.Words.Say("tape.up_down_of", d.Say(m.above), d.Say(m.below))
		if m.below < 0 || m.above < 0 { // the level line is not on it
			where = d.Words.Say("tape.from_to", count.UpDown(d.Words, d.Say, -m.below), count.UpDown(d.Words, d.Say, m.above))
		}
		if m.line > 0 {
			where = d.Words.Say("tape.up_down_line", d.Say(m.above), d.Say(m.below), m.line)
		}
		lines = append(lines, who+d.Words.Say("tape.with_trims", d.Say(d.Style.Round(m.above)+d.Style.Round(m.below)), where))
	}
	return lines
}

// besides letters notes under the tape list as far as there is room, and gives back the others, and where it came to.
func (b *board) besides(g *scene.Group, d *wallBoard, notes []note, y float64) ([]note, float64) {
	u := b.Unit
	var rest []note
	for _, n := range notes {
		wrap := func(list []string) (lines []string) {
			for _, line := range list {
				lines = append(lines, scene.Wrap(line, folio.TapedText*u, false, b.List.W()-1.4*u)...)
			}
			return lines
		}
		lines, entries := wrap(n.lines), len(n.lines)
		for n.listed && entries > 0 && y+(7.4+5.6*float64(len(lines)))*u > b.List.Y1-2.4*u {
			entries-- // whole entries as far as they go
			if lines = nil; entries > 0 {
				lines = wrap(append(slices.Clone(n.lines[:entries]), b.Words.Say("tape.others", d.rowsOf(n.lines[entries:]))))
			}
		}
		if len(lines) == 0 || y+(7.4+5.6*float64(len(lines)))*u > b.List.Y1-2.4*u {
			rest = append(rest, n)
			continue
		}
		if entries < len(n.lines) {
			rest = append(rest, note{n.head, n.lines[entries:], n.listed})
		}
		y += 7.4 * u
		head := n.head
		if n.listed { // begun at the foot
			head = b.Words.Say("tape.goes_on", head)
		}
		b.Word(g, scene.Pt(b.List.X0, y), head, folio.TapedText*u, true, scene.Start)
		for _, line := range lines {
			y += 5.6 * u
			b.Word(g, scene.Pt(b.List.X0, y), line, folio.TapedText*u, false, scene.Start)
		}
	}
	return rest, y
}
