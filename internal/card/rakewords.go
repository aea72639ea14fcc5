package card

import (
	"slices"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/shape"
	"flitchlay/internal/words"
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
	text += w.bevel(c, r)
	if c.Level {
		return text
	}
	if past := w.past(c, r); past > 0 {
		return w.Words.Say("card.rake_trim", text, w.Inches(past))
	}
	return text
}

// past is the least that stands past a slope of a sheet that is cut square, at the point of it that comes nearest to the cut: what the
// printed figures of both leave.
func (w speech) past(c *Card, r *Rake) L {
	at := func(z L) L { return w.Style.Round(z - c.Zero.Z) }
	least := at(c.Kept.Top) - at(c.Kept.Bottom)
	for _, p := range r.Points {
		if r.Head {
			least = min(least, at(c.Kept.Top)-at(p.Z))
		} else {
			least = min(least, at(p.Z)-at(c.Kept.Bottom))
		}
	}
	return least
}

// bevel says a slope as what a bevel square is set to: how much it rises or falls, going right, over how much of the sheet.
func (w speech) bevel(c *Card, r *Rake) string {
	if list := BevelWords(w.TapedSet, c, r); len(list) > 0 {
		return w.Words.Say("slopes.bevel", strings.Join(list, ", "))
	}
	return ""
}

// BevelWords say each straight part of a slope that is not level, going right: "15 3/8" up in 24 1/2"". They are what the printed
// figures of its ends come to.
func BevelWords(set *folio.TapedSet, c *Card, r *Rake) []string {
	q := Rake{Points: slices.Clone(r.Points)}
	for i, p := range q.Points {
		x := p.X - c.Kept.Left
		if c.Level {
			x = p.X - c.Zero.X
		}
		q.Points[i] = shape.Point{X: set.Style.Round(x), Z: set.Style.Round(p.Z - c.Zero.Z)}
	}
	var list []string
	for _, x := range q.Bevels() {
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
