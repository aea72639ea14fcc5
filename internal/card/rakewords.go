package card

import (
	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/words"
	"strings"
)

// height says how far a height is from the corner that figures are measured from.
func (w speech) height(c *Card, z L) string {
	switch {
	case c.Cut.FromFoot():
		return w.Words.Say("height.over_foot", w.Say((z - c.Zero.Z).Abs()))
	case c.Cut.FromHead():
		return w.Words.Say("height.under_head", w.Say((z - c.Zero.Z).Abs()))
	}
	return count.UpDown(w.Words, w.Say, z-c.Cut.Line.By)
}

// rake says how a head or a foot slopes, at every point where it turns.
func (w speech) rake(c *Card, r *Rake) string {
	end := "foot"
	if r.Head {
		end = "head"
	}
	cuts := w.cuts(c)
	var list []string
	for _, p := range r.Points {
		if c.Level {
			list = append(list, w.Words.Say("card.rake_at", w.Inches(p.Z), w.Say((p.X-c.Zero.X).Abs())+" "+count.FromEnd(cuts)))
			continue
		}
		at := c.fromEdge(p.X)
		place := w.Inches(at) + " " + c.Cut.FromEdge(cuts)
		switch at {
		case 0:
			place = c.Cut.EdgeName(cuts)
		case c.Cut.Width:
			place = w.Words.Say("card.other_edge")
		}
		list = append(list, w.Words.Say("card.rake_at", w.height(c, p.Z), place))
	}
	if c.Level {
		end = "lower"
		if r.Head {
			end = "upper"
		}
	}
	text := w.Words.Of("slopes", end, strings.Join(list, ", "))
	if len(c.Cut.Walls) > 1 && !c.Level {
		text = w.Words.Of("slopes", end+" on", w.Room.Walls[r.Wall].Name, strings.Join(list, ", "))
	}
	if line := c.Cut.Line; line.Second() && !line.Off {
		text = w.Words.Say("slopes.line", text, line.No)
	}
	text += w.bevel(r)
	if c.Level {
		return text
	}
	if past := c.past(r); past > 0 {
		return w.Words.Say("card.rake_trim", text, w.Inches(past))
	}
	return text
}

// past is the least that stands past a slope of a sheet that is cut square, at the point of it that comes nearest to the cut.
func (c *Card) past(r *Rake) L {
	least := c.Kept.Top - c.Kept.Bottom
	for _, p := range r.Points {
		if r.Head {
			least = min(least, c.Kept.Top-p.Z)
		} else {
			least = min(least, p.Z-c.Kept.Bottom)
		}
	}
	return least
}

// bevel says a slope as what a bevel square is set to: how much it rises or falls, going right, over how much of the sheet.
func (w speech) bevel(r *Rake) string {
	if list := BevelWords(w.TapedSet, r); len(list) > 0 {
		return w.Words.Say("slopes.bevel", strings.Join(list, ", "))
	}
	return ""
}

// BevelWords say each straight part of a slope that is not level, going right: "15 3/8" up in 24 1/2"".
func BevelWords(set *folio.TapedSet, r *Rake) []string {
	var list []string
	for _, x := range r.Bevels() {
		way := "slopes.bevel_up"
		if x.Rise < 0 {
			way = "slopes.bevel_down"
		}
		list = append(list, set.Words.Say(way, set.Inches(x.Rise.Abs()), set.Inches(x.Over)))
	}
	return list
}

// RakeWords say the slopes of a card's head and foot in a language, for a list beside the cards.
func RakeWords(set *folio.TapedSet, t *words.Table, c *Card) []string {
	in := *set
	in.Words = t
	var list []string
	for i := range c.Rakes {
		list = append(list, speech{TapedSet: &in}.rake(c, &c.Rakes[i]))
	}
	return list
}
