package oracletest

import (
	"slices"

	"flitchlay/internal/seam"
)

// Sweep finds the same layout as Best by the plainest sweep there is, for spans of some hundreds of grid lines: from
// every line, with every set of pins still to keep, the best way on to the right end is a next seam and the best way on
// from there. In a closed span this is done anew for every closing seam, and where the difference counts for every
// first seam.
func Sweep(span seam.Span, aim seam.Aim) (seam.Layout, bool) {
	grid := Grid(span)
	places := map[int64]Place{}
	for _, s := range grid {
		places[s] = PlaceAt(span, s)
	}
	best := make([]route, 1<<len(span.Pins))
	better := func(found []route) { // found later it is farther right, and wins where the scores are equal
		for need := range best {
			if found[need].ok && (!best[need].ok || compareScores(&found[need].score, &best[need].score, aim) <= 0) {
				best[need] = found[need]
			}
		}
	}
	switch {
	case span.Closed:
		for _, s := range grid {
			if inStrips(span, s, span.NotClosing) {
				continue
			}
			better(newSweep(span, aim, places, s).fromLeft(0))
		}
	case span.OneWall && !span.LeftSeam && !span.RightSeam:
		for first := range len(grid) + 1 {
			better(newSweep(span, aim, places, 0).fromLeft(first + 1))
		}
	default:
		better(newSweep(span, aim, places, 0).fromLeft(0))
	}
	return best[0].layout(span, best)
}

// SweepFrom finds the best layout of those that keep every pin and have s for their closing seam, in an open span for
// their first one: one sweep, and so in reach on spans of any length. Dropped is empty.
func SweepFrom(span seam.Span, aim seam.Aim, s int64) (seam.Layout, bool) {
	places := map[int64]Place{}
	for _, s := range Grid(span) {
		places[s] = PlaceAt(span, s)
	}
	w := newSweep(span, aim, places, s)
	first := 0
	if !span.Closed {
		first = slices.Index(w.edges, s)
	}
	found := w.fromLeft(first)
	kept := found[len(found)-1]
	if !kept.ok {
		return seam.Layout{}, false
	}
	span.Pins = nil
	return kept.layout(span, []route{kept})
}

// newSweep lays the edges out, in a closed span from the closing seam round to it.
func newSweep(span seam.Span, aim seam.Aim, places map[int64]Place, closing int64) *sweep {
	w := &sweep{span: span, aim: aim, closing: closing}
	grid := Grid(span)
	if span.Closed {
		i := slices.Index(grid, closing)
		w.edges = slices.Concat(grid[i:], grid[:i+1])
	} else {
		w.edges = slices.Concat([]int64{span.L}, grid, []int64{span.R})
	}
	for k, s := range w.edges {
		w.places = append(w.places, places[s])
		if k > 0 && s <= w.edges[0] {
			w.edges[k] += span.Period
		}
		atSeam := 0
		for i, pin := range span.Pins {
			if keptBySeam(span, w.edges[k], pin) {
				atSeam |= 1 << i
			}
		}
		w.atSeam = append(w.atSeam, atSeam)
	}
	for i, pin := range span.Pins {
		if keptByEnds(span, pin) {
			w.ends |= 1 << i
		}
	}
	return w
}

// route is the best way on from one edge to the right end: its score, the next edge, and the seams once it is whole.
type route struct {
	ok      bool
	score   seam.Score
	next    int
	then    int // pins still to keep from the next edge on
	closing int64
	seams   []int64
}

// layout takes the pins in order and gives the layout that keeps those which raise no must.
func (free route) layout(span seam.Span, best []route) (seam.Layout, bool) {
	if !free.ok {
		return seam.Layout{}, false
	}
	var dropped []int
	kept := 0
	for i := range span.Pins {
		with := best[kept|1<<i]
		if !with.ok || compareMusts(&with.score, &best[kept].score) > 0 {
			dropped = append(dropped, i)
			continue
		}
		kept |= 1 << i
	}
	seams := slices.Clone(best[kept].seams)
	for i := range seams {
		if span.Closed {
			seams[i] %= span.Period
		}
	}
	slices.Sort(seams)
	closing := -1
	if span.Closed {
		closing = slices.Index(seams, best[kept].closing)
	}
	return seam.Layout{Seams: seams, Closing: closing, Dropped: dropped, Score: best[kept].score}, true
}

// sweep goes over the edges from right to left: edges[0] is the left end or the closing seam, the last one the right
// end or the closing seam again.
type sweep struct {
	span    seam.Span
	aim     seam.Aim
	places  []Place // of the edges; a raw end owes nothing
	edges   []int64
	closing int64
	first   int
	ends    int   // the pins that the ends keep, a bit each
	atSeam  []int // and a seam on each edge
	ways    [][]route
}

// fromLeft gives the best route from the left end for every set of pins to keep; first is the right edge of the first
// sheet, 0 where it is free.
func (w *sweep) fromLeft(first int) []route {
	w.first = first
	n := len(w.edges) - 1
	w.ways = make([][]route, n+1)
	for i := n - 1; i >= 0; i-- {
		w.ways[i] = make([]route, 1<<len(w.span.Pins))
		far := i + 1
		for far < n && w.edges[far+1]-w.edges[i] <= w.span.Gross { // no sheet is wider
			far++
		}
		for j := far; j > i; j-- { // the farthest first: it wins where the scores are equal
			if i == 0 && w.first > 0 && j != w.first {
				continue
			}
			w.goOn(i, j)
		}
	}
	found := w.ways[0]
	for need := range found {
		found[need].closing = w.closing
		for i, at := 0, found[need]; at.ok && i < n; {
			if i = at.next; i < n || w.span.Closed {
				found[need].seams = append(found[need].seams, w.edges[i])
			}
			if i < n {
				at = w.ways[i][at.then]
			}
		}
	}
	return found
}

// goOn tries the sheet from edge i to edge j for every set of pins to keep.
func (w *sweep) goOn(i, j int) {
	n := len(w.edges) - 1
	sheet := Sheet{Left: w.edges[i], Right: w.edges[j], RightCounts: j < n || w.span.Closed}
	sheet.LeftRaw = i == 0 && !w.span.Closed && !w.span.LeftSeam
	sheet.RightRaw = j == n && !w.span.Closed && !w.span.RightSeam
	sheet.End = sheet.LeftRaw || j == n || i == 0 && w.span.Closed
	kept := w.keeps(sheet, j)
	var score seam.Score
	for need := range w.ways[i] {
		then, old := need&^kept, &w.ways[i][need]
		var on *route
		if j == n && then != 0 || j < n && !w.ways[j][then].ok {
			continue
		}
		if j < n { // a sheet takes nothing off a score: where the way on alone costs what is known, it need not be looked at
			on = &w.ways[j][then]
			if old.ok && compareScores(&on.score, &old.score, w.aim) >= 0 {
				continue
			}
		}
		if score.Sheets == 0 {
			if !widthAllowed(&w.span, sheet) || i == 0 && inStrips(w.span, sheet.Right, w.span.NotFirst) || j == n && inStrips(w.span, sheet.Left, w.span.NotLast) {
				return
			}
			score = w.scoreOf(sheet, i, j)
		}
		way := score
		if on != nil {
			way = add(score, on.score)
		}
		if !old.ok || compareScores(&way, &old.score, w.aim) < 0 {
			*old = route{ok: true, score: way, next: j, then: then}
		}
	}
}

// scoreOf is the score of the sheet from edge i to edge j, and of what only the last sheet tells.
func (w *sweep) scoreOf(sheet Sheet, i, j int) seam.Score {
	score := scoreSheet(&w.span, sheet, w.places[i], w.places[j])
	if j < len(w.edges)-1 {
		return score
	}
	if w.span.Closed {
		score.Closing = w.places[j].Feet
	}
	if w.first > 0 {
		score.Difference = difference(w.span, Sheet{Left: w.edges[0], Right: w.edges[w.first], LeftRaw: true}, sheet)
	}
	return score
}

// keeps is the set of pins that a sheet keeps whose right edge is j.
func (w *sweep) keeps(sheet Sheet, j int) int {
	kept := w.ends
	if sheet.RightCounts {
		kept |= w.atSeam[j]
	}
	for k, pin := range w.span.Pins {
		switch {
		case pin.Put == seam.PutClose && w.span.Closed && j == len(w.edges)-1 && near(&w.span, sheet.Right, pin),
			pin.Put != seam.PutClose && pin.Put != seam.PutSeam && keptBySheet(&w.span, sheet, pin):
			kept |= 1 << k
		}
	}
	return kept
}
