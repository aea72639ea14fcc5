package crew

import (
	"flitchlay/internal/count"
	"slices"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// tapeWords say what the list measures, and what of the drawing has no room in it.
func (d *wallBoard) tapeWords() []string {
	if d.w.Run.Up {
		return append(append(d.jointWords(), d.markWordsUp()...), d.beside...)
	}
	lines := append(append(d.jointWords(), d.stockWords()...), append(d.edgeWords(), d.sliverWords()...)...)
	lines = append(lines, "seam "+d.Inches(d.half)+" left of raw edge")
	lines = append(append(lines, d.secondWords()...), append(d.slantWords(), d.witnessWords()...)...)
	return append(lines, d.beside...)
}

// secondWords say where a second level line is struck, how far from the first, and how the figures of sheets run from it.
func (d *wallBoard) secondWords() []string {
	var lines []string
	for _, s := range d.w.Seconds() {
		if from, to := max(s.From, d.p.From), min(s.To, d.p.To); from < to {
			more, less := "over", "less up, more down"
			if s.By < 0 {
				more, less = "under", "more up, less down"
			}
			by := d.Say(s.By.Abs())
			lines = append(lines, "LINE 2: "+by+" "+more+" the level line, from "+d.Along(d.w.Face, from)+" to "+d.Along(d.w.Face, to)+
				"; from it figures are "+by+" "+less)
		}
	}
	return lines
}

// stockWords name the courses that an opening takes whole, at places where another course hangs.
func (d *wallBoard) stockWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		if stock := h.Stock(); len(stock) > 0 && !h.Gone() && d.p.Here(h) {
			lines = append(lines, d.numbersOf(stock)+" in the gap: to stock")
		}
	}
	return lines
}

// jointWords say where courses meet: how far from the level line; where the grain is level, how far from the left end.
func (d *wallBoard) jointWords() []string {
	var lines []string
	for _, at := range d.w.Joints() {
		if d.w.Run.Up {
			lines = append(lines, "end match at "+d.Along(d.w.Face, at))
		} else {
			lines = append(lines, "courses meet at: "+count.UpDown(d.Say, at-d.Level)+d.endWord())
		}
	}
	return lines
}

// cutsBeside give the cut lengths that have no room in their sheets, those alike together.
func (d *wallBoard) cutsBeside() []string {
	var order []string
	numbers := map[string][]int{}
	for _, s := range d.cuts {
		cut := d.Say(s.CutLength)
		if s.Hung {
			cut = "hung"
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
	return []string{"cut " + strings.Join(parts, "; ")}
}

// known leaves out the zeros that stand for sheets without a number.
func known(numbers []int) []int {
	return slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return n == 0 })
}

// markWords say how long the sheets are cut, and how much of that is above and below the level mark, those alike together.
func (d *wallBoard) markWords() []string {
	type mark struct{ cut, above, below L }
	var order []mark
	numbers := map[mark][]int{}
	for _, h := range d.p.rows {
		for _, s := range h.Sheets {
			if s.Hung || s.InGap || h.Before || !d.p.StartsHere(h) || s.CutLength == 0 {
				continue
			}
			m := mark{s.CutLength, s.Above, s.Below}
			if numbers[m] == nil {
				order = append(order, m)
			}
			numbers[m] = append(numbers[m], s.Number)
		}
	}
	switch {
	case len(order) == 0:
		return nil
	case len(order) > 3:
		return append(d.cutsBeside(), "up, down of the level mark: cut list, "+d.rowsWord())
	}
	var lines []string
	for _, m := range order {
		who := ""
		if list := known(numbers[m]); len(order) > 1 && len(list) > 0 {
			who = layout.Numbers(list) + ": "
		}
		where := "up " + d.Say(m.above) + " + down " + d.Say(m.below)
		if m.below < 0 || m.above < 0 { // the level line is not on it
			where = "from " + count.UpDown(d.Say, -m.below) + " to " + count.UpDown(d.Say, m.above)
		}
		lines = append(lines, who+d.Say(m.cut)+" with trims = "+where)
	}
	return lines
}

// besides letters notes under the tape list as far as there is room, and gives back the others.
func (b *board) besides(g *scene.Group, notes []note, y float64) []note {
	u := b.Unit
	var rest []note
	for _, n := range notes {
		wrap := func(list []string) (lines []string) {
			for _, line := range list {
				lines = append(lines, scene.Wrap(line, folio.TapedText*u, false, b.List.W()-1*u)...)
			}
			return lines
		}
		lines, cut := wrap(n.lines), false
		for n.listed && len(n.lines) > 0 && y+(7.4+5.6*float64(len(lines)))*u > b.List.Y1-2.4*u {
			last := len(n.lines) - 1 // whole entries as far as they go
			n.lines = n.lines[:last]
			if lines = nil; last > 0 {
				lines = wrap(append(slices.Clone(n.lines), "the others: "+b.rows))
			}
			cut = true
		}
		if cut {
			rest = append(rest, n)
		}
		if len(lines) == 0 || y+(7.4+5.6*float64(len(lines)))*u > b.List.Y1-2.4*u {
			if !cut {
				rest = append(rest, n)
			}
			continue
		}
		y += 7.4 * u
		b.Word(g, scene.Pt(b.List.X0, y), n.head, folio.TapedText*u, true, scene.Start)
		for _, line := range lines {
			y += 5.6 * u
			b.Word(g, scene.Pt(b.List.X0, y), line, folio.TapedText*u, false, scene.Start)
		}
	}
	return rest
}
