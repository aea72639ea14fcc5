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
			if found[need].ok && (!best[need].ok || CompareScores(found[need].score, best[need].score, aim) <= 0) {
				best[need] = found[need]
			}
		}
	}
	switch {
	case span.Closed:
		for i, s := range grid {
			edges := slices.Concat(grid[i:], grid[:i+1])
			for k := len(grid) - i; k < len(edges); k++ {
				edges[k] += span.Period
			}
			better((&sweep{span: span, aim: aim, places: places, edges: edges}).fromLeft(s))
		}
	case span.OneWall && !span.LeftSeam && !span.RightSeam:
		edges := slices.Concat([]int64{span.L}, grid, []int64{span.R})
		for first := 1; first < len(edges); first++ {
			better((&sweep{span: span, aim: aim, places: places, edges: edges, first: first}).fromLeft(-1))
		}
	default:
		edges := slices.Concat([]int64{span.L}, grid, []int64{span.R})
		better((&sweep{span: span, aim: aim, places: places, edges: edges}).fromLeft(-1))
	}
	return best[0].layout(span, best)
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
		if !with.ok || compareMusts(with.score, best[kept].score) > 0 {
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
	span   seam.Span
	aim    seam.Aim
	places map[int64]Place
	edges  []int64
	first  int // the right edge of the first sheet, 0 where it is free
	ways   [][]route
}

// fromLeft gives the best route from the left end for every set of pins to keep.
func (w *sweep) fromLeft(closing int64) []route {
	n := len(w.edges) - 1
	w.ways = make([][]route, n+1)
	for i := n - 1; i >= 0; i-- {
		w.ways[i] = make([]route, 1<<len(w.span.Pins))
		for j := i + 1; j <= n && w.edges[j]-w.edges[i] <= w.span.Gross; j++ { // no sheet is wider
			if i == 0 && w.first > 0 && j != w.first {
				continue
			}
			w.goOn(i, j)
		}
	}
	found := w.ways[0]
	for need := range found {
		found[need].closing = closing
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
	if !widthAllowed(w.span, sheet) {
		return
	}
	var place Place
	if at := sheet.Right; sheet.RightCounts && w.span.Closed {
		place = w.places[at%w.span.Period]
	} else if sheet.RightCounts {
		place = w.places[at]
	}
	score := scoreSheet(w.span, sheet, place)
	if j == n && w.span.Closed {
		score.Closing = place.Feet
	}
	if j == n && w.first > 0 {
		score.Difference = difference(w.span, Sheet{Left: w.edges[0], Right: w.edges[w.first], LeftRaw: true}, sheet)
	}
	kept := 0
	for k, pin := range w.span.Pins {
		closes := pin.Put == seam.PutClose && w.span.Closed && j == n && near(w.span, sheet.Right, pin)
		if closes || keptByEnds(w.span, pin) || keptBySheet(w.span, sheet, pin) || sheet.RightCounts && keptBySeam(w.span, sheet.Right, pin) {
			kept |= 1 << k
		}
	}
	for need := range w.ways[i] {
		way := route{ok: true, score: score, next: j, then: need &^ kept}
		if j == n && way.then != 0 {
			continue
		}
		if j < n {
			if !w.ways[j][way.then].ok {
				continue
			}
			way.score = add(score, w.ways[j][way.then].score)
		}
		old := w.ways[i][need]
		if !old.ok || CompareScores(way.score, old.score, w.aim) <= 0 {
			w.ways[i][need] = way
		}
	}
}
