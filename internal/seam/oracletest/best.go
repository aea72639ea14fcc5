package oracletest

import (
	"cmp"
	"slices"

	"flitchlay/internal/seam"
)

// candidate is one layout inside the hard limits.
type candidate struct {
	seams   []int64
	closing int
	score   seam.Score
}

// Best finds the best layout by trying all sets of grid lines, and in a closed span every closing seam of each. The
// result is false where no layout keeps the hard limits. Its time nearly doubles with every grid line.
//
// A pin is dropped where it would raise the least (bends, edges), so that the answer always has the least that there is
// without any pin: layouts above it need not be looked at, and a pin is kept where one of the others keeps it.
func Best(span seam.Span, aim seam.Aim) (seam.Layout, bool) {
	all, dropped := keeping(span)
	if len(all) == 0 {
		return seam.Layout{}, false
	}
	best := all[0]
	for _, c := range all[1:] {
		if compare(span, c, best, aim) < 0 {
			best = c
		}
	}
	return best.layout(dropped), true
}

func (c candidate) layout(dropped []int) seam.Layout {
	return seam.Layout{Seams: c.seams, Closing: c.closing, Dropped: dropped, Score: c.score}
}

// keeping lists every layout that has the least musts and keeps the pins that are kept, and the pins that are not.
func keeping(span seam.Span) (all []candidate, dropped []int) {
	all = leastMusts(span)
	if len(all) == 0 {
		return nil, nil
	}
	for i, pin := range span.Pins {
		var keeping []candidate
		for _, c := range all {
			if Keeps(span, c.seams, c.closing, pin) {
				keeping = append(keeping, c)
			}
		}
		if len(keeping) == 0 {
			dropped = append(dropped, i)
			continue
		}
		all = keeping
	}
	return all, dropped
}

// leastMusts lists every layout inside the hard limits that has the least (bends, edges).
func leastMusts(span seam.Span) []candidate {
	places := map[int64]Place{}
	for _, s := range Grid(span) {
		places[s] = PlaceAt(span, s)
	}
	placeOf := func(s int64) Place { return places[s] }
	var (
		least    []candidate
		sheets   []Sheet
		closings []int
	)
	forEachSet(span, nil, Grid(span), func(seams []int64) {
		closings = append(closings[:0], -1)
		if span.Closed {
			closings = closings[:0]
			for i := range seams {
				closings = append(closings, i)
			}
		}
		for _, closing := range closings {
			sheets = appendSheets(sheets[:0], span, seams, closing)
			owed, ok := mustsOf(span, sheets, placeOf)
			if !ok || len(least) > 0 && compareMusts(&owed, &least[0].score) > 0 || !standsApart(span, seams, closing) {
				continue // what is above the least need not be added up
			}
			score, _ := scoreSheets(span, sheets, closing, placeOf)
			if len(least) > 0 && compareMusts(&score, &least[0].score) < 0 {
				least = least[:0]
			}
			least = append(least, candidate{slices.Clone(seams), closing, score})
		}
	})
	return least
}

// forEachSet calls use with every set of grid lines that begins with chosen and goes on among rest, but leaves out
// those with a sheet that is already too wide.
func forEachSet(span seam.Span, chosen, rest []int64, use func([]int64)) {
	if !span.Closed || len(chosen) > 0 {
		use(chosen)
	}
	for i, s := range rest {
		sheet := Sheet{Left: span.L, Right: s, LeftRaw: !span.LeftSeam}
		if len(chosen) > 0 {
			sheet = Sheet{Left: chosen[len(chosen)-1], Right: s}
		} else if span.Closed {
			sheet = Sheet{Left: s, Right: s} // nothing is to the left of the first seam yet
		}
		if widthAllowed(&span, sheet) {
			forEachSet(span, append(chosen, s), rest[i+1:], use)
		}
	}
}

// Keeps tells whether a layout keeps a pin.
func Keeps(span seam.Span, seams []int64, closing int, pin seam.Pin) bool {
	if pin.Put == seam.PutClose && span.Closed {
		return near(&span, seams[closing], pin)
	}
	return keptByEnds(span, pin) ||
		slices.ContainsFunc(seams, func(s int64) bool { return keptBySeam(span, s, pin) }) ||
		slices.ContainsFunc(Sheets(span, seams, closing), func(sheet Sheet) bool { return keptBySheet(&span, sheet, pin) })
}

// near tells whether s lies within half a snap of a pin.
func near(span *seam.Span, s int64, pin seam.Pin) bool {
	return 2*distance(span, s, pin.At) <= span.Snap
}

// keptByEnds tells whether the hung seam, or the closing seam beside the first hung sheet, keeps a pin.
func keptByEnds(span seam.Span, pin seam.Pin) bool {
	if pin.Put == seam.PutClose {
		return span.RightSeam && near(&span, span.R, pin)
	}
	return span.LeftSeam && keptBySeam(span, span.L, pin) || span.RightSeam && keptBySeam(span, span.R, pin)
}

func keptBySeam(span seam.Span, s int64, pin seam.Pin) bool {
	return (pin.Put == seam.PutSeam || pin.Put == seam.PutEither) && near(&span, s, pin)
}

// keptBySheet tells whether the pin lies in the middle of the sheet and the sheet is a whole one.
func keptBySheet(span *seam.Span, sheet Sheet, pin seam.Pin) bool {
	width := sheet.Right - sheet.Left
	middle := sheet.Left + width/2
	return (pin.Put == seam.PutMiddle || pin.Put == seam.PutEither) && NetWidth(span)-width < span.Snap &&
		near(span, middle, pin) && covers(span, sheet.Left, sheet.Right, pin.At)
}

// compareMusts compares bends, then edges.
func compareMusts(a, b *seam.Score) int {
	return cmp.Or(cmp.Compare(a.Bends, b.Bends), cmp.Compare(a.Edges, b.Edges))
}

// compare is negative where a is the better layout, by the order of the aim and then the far right.
func compare(span seam.Span, a, b candidate, aim seam.Aim) int {
	if order := compareScores(&a.score, &b.score, aim); order != 0 {
		return order
	}
	return slices.Compare(goingRound(span, b), goingRound(span, a))
}

// goingRound lists a layout's seams in the order in which the far right counts them.
func goingRound(span seam.Span, c candidate) []int64 {
	if !span.Closed {
		return c.seams
	}
	round := slices.Clone(c.seams[c.closing:])
	for _, s := range c.seams[:c.closing] {
		round = append(round, s+span.Period)
	}
	return round
}

// CompareScores is negative where a is the better score by the order of the aim.
func CompareScores(a, b seam.Score, aim seam.Aim) int { return compareScores(&a, &b, aim) }

// compareScores goes down the items of the aim to the first that differs.
func compareScores(a, b *seam.Score, aim seam.Aim) int {
	if order := cmp.Or(compareMusts(a, b), cmp.Compare(a.Closing, b.Closing)); order != 0 {
		return order
	}
	sheets := cmp.Compare(a.Sheets, b.Sheets)
	if aim == seam.Even {
		return cmp.Or(sheets, cmp.Compare(a.Should, b.Should),
			cmp.Compare(a.Unevenness.Hi, b.Unevenness.Hi), cmp.Compare(a.Unevenness.Lo, b.Unevenness.Lo), cmp.Compare(a.Seen, b.Seen))
	}
	narrow := cmp.Or(cmp.Compare(a.NarrowMain, b.NarrowMain), cmp.Compare(a.Narrow, b.Narrow))
	first, second := narrow, sheets
	if aim == seam.Fewest {
		first, second = sheets, narrow
	}
	if order := cmp.Or(first, second); order != 0 {
		return order
	}
	return cmp.Or(cmp.Compare(a.NarrowJump, b.NarrowJump), cmp.Compare(a.Sliver, b.Sliver), cmp.Compare(a.Jump, b.Jump),
		cmp.Compare(a.Should, b.Should), cmp.Compare(a.Seen, b.Seen), cmp.Compare(a.Difference, b.Difference))
}
