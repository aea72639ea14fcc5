package aims

import (
	"fmt"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
)

// stacked is how many other layouts stand one over the other: as many as there are aims, so that they are drawn as large.
const stacked = 3

// otherPages draw what else the room's own aim could choose, and set it beside the best; none where there is nothing.
func otherPages(s *folio.Set, all *layout.Comparison) []*folio.Leaf {
	if len(all.Others) == 0 {
		return nil
	}
	var pages []*folio.Leaf
	aim := ", AIM " + strings.ToUpper(layout.AimWord(all.Aims[all.Own].Plan.Aim))
	var first *comparing
	for from := 0; from < len(all.Others); from += stacked {
		list := all.Others[from:min(from+stacked, len(all.Others))]
		c := &comparing{Set: s, all: all, title: fmt.Sprintf("LAYOUT %d", list[0].Number) + aim}
		if n := len(list); n > 1 {
			c.title = fmt.Sprintf("LAYOUTS %d TO %d", list[0].Number, list[n-1].Number) + aim
		}
		for i := range list {
			c.rows = append(c.rows, rowOf(s, &list[i].AimPlan, fmt.Sprintf("layout %d", list[i].Number)))
		}
		if first == nil {
			c.arrange()
			first = c
		}
		c.scale, c.under, c.walls = first.scale, true, first.walls
		pages = append(pages, c.pages()...)
	}
	return append(pages, s.FlowPages("OTHER LAYOUTS"+aim+": FIGURES", "others", 1, func() []folio.Block { return otherBlocks(all) })...)
}

// otherBlocks set them beside the best, and say of each what is other and what it costs.
func otherBlocks(all *layout.Comparison) []folio.Block {
	blocks := []folio.Block{{Table: tableOf("THE BEST, AND OTHERS TO CHOOSE FROM", OtherRows(all))}}
	for i := range all.Others {
		w := Against(all, &all.Others[i])
		block := folio.Block{Title: fmt.Sprintf("LAYOUT %d", all.Others[i].Number), Items: []draft.Item{{Text: w.Other}}}
		for k, cost := range w.Costs {
			it := draft.Item{Text: cost}
			if k == 0 {
				it.Mark = "costs"
			}
			block.Items = append(block.Items, it)
		}
		blocks = append(blocks, block)
	}
	return blocks
}

// OtherRows are the figures of the best layout of the room's own aim and of those to choose from, their numbers first.
func OtherRows(c *layout.Comparison) []row {
	best := &c.Aims[c.Own]
	head := row{Cells: []string{"1, THE BEST"}}
	all := []*layout.AimPlan{best}
	chosen := best.Plan.Room.Space.Choose
	for i := range c.Others {
		o := &c.Others[i]
		number := fmt.Sprint(o.Number)
		if o.Number == chosen {
			number += ", CHOSEN"
		}
		head.Cells = append(head.Cells, number)
		all = append(all, &o.AimPlan)
	}
	return append([]row{head}, figures(all)...)
}

// Words say of a layout what is other than in the best, and what that costs.
type Words struct {
	Other string
	Costs []string
}

// Against words a layout against the best.
func Against(c *layout.Comparison, o *layout.Other) Words {
	best := &c.Aims[c.Own]
	name := func(wall int) string { return best.Plan.Room.Walls[wall].Name }
	return Words{Other: lookWords(best.Plan, o, name), Costs: costWords(best, o, name)}
}

// lookWords tell by what a person knows the layout: where it closes, or how wide it begins and ends.
func lookWords(best *layout.Plan, o *layout.Other, name func(wall int) string) string {
	style := best.Style
	mine, theirs := endsOf(o.Plan, o), endsOf(best, o)
	if mine.closing == nil {
		first := "first sheet"
		if o.Plan.Runs[o.Run].Spans[o.Span].LeftSeam {
			first = "first sheet to hang"
		}
		return fmt.Sprintf("the %s, on wall %s, takes %s and the last one %s; in the best they take %s and %s", first, name(o.Wall), style.Words(mine.first),
			style.Words(mine.last), style.Words(theirs.first), style.Words(theirs.last))
	}
	place := func(s *layout.Seam) string {
		return fmt.Sprintf("%s from the left end of wall %s", style.Words(s.X), name(s.Wall))
	}
	return fmt.Sprintf("it closes %s, seen for %s, and the first sheet takes %s; the best closes %s, seen for %s, and its first sheet takes %s", place(mine.closing),
		style.Words(mine.closing.Seen), style.Words(mine.first), place(theirs.closing), style.Words(theirs.closing.Seen), style.Words(theirs.first))
}

// spanEnds are what a span is known by.
type spanEnds struct {
	first, last L
	closing     *layout.Seam // of a closed span
}

func endsOf(p *layout.Plan, o *layout.Other) spanEnds {
	r := &p.Runs[o.Run]
	span := &r.Spans[o.Span]
	var out spanEnds
	for i := range r.Sheets {
		s := &r.Sheets[i]
		if s.Place == span.LastSheet {
			out.last = s.Width
		}
		if s.Span == o.Span && !s.Hung && out.first == 0 {
			out.first = s.Width
		}
	}
	if span.Closed {
		for i := range r.Seams {
			if r.Seams[i].Closing && r.Seams[i].Span == o.Span {
				out.closing = &r.Seams[i]
			}
		}
	}
	return out
}

// costWords tell what the layout has more than the best, or less.
func costWords(best *layout.AimPlan, o *layout.Other, name func(wall int) string) []string {
	var out []string
	differs := func(what string, n int) {
		switch {
		case n > 0:
			out = append(out, plural(n, what)+" more")
		case n < 0:
			out = append(out, plural(-n, what)+" fewer")
		}
	}
	differs("sheet", o.Plan.Totals.Sheets-best.Plan.Totals.Sheets)
	differs("narrow sheet", len(o.Narrow)-len(best.Narrow))
	if lost := GrainLost(&o.AimPlan, name); len(lost) > 0 && strings.Join(lost, "") != strings.Join(GrainLost(best, name), "") {
		out = append(out, lost...)
	}
	if more := o.Waste - best.Waste; more != 0 {
		word := " more waste"
		if more < 0 {
			more, word = -more, " less waste"
		}
		out = append(out, o.Plan.Style.FormatArea(more)+word)
	}
	for i, f := range o.Shoulds {
		if i == few {
			out = append(out, plural(len(o.Shoulds)-few, "preference")+" more missed")
			break
		}
		out = append(out, f.Message)
	}
	if len(out) == 0 {
		return []string{"nothing that is counted in sheets, narrow sheets, preferences or waste"}
	}
	return out
}
