// Package oracletest says what the layout rules say, plainly: a scorer and a brute force to hold the solver against.
//
// Coordinates and units: those of package seam. Places in a closed run are compared the shorter way round it.
//
// Order: nothing here is fast; every sum is taken over one whole layout at a time.
//
// Not here: any code or idea of the solver. Only tests import this package.
package oracletest

import (
	"math/bits"
	"slices"

	"flitchlay/internal/seam"
)

// Score scores the layout of span with these seams, ascending; closing is the index of the closing seam in seams, -1
// in an open span. The result is false where the layout breaks a hard limit: the grid, or the width of a sheet.
func Score(span seam.Span, seams []int64, closing int) (seam.Score, bool) {
	grid := Grid(span)
	for i, s := range seams {
		if _, on := slices.BinarySearch(grid, s); !on || i > 0 && seams[i-1] >= s {
			return seam.Score{}, false
		}
	}
	if span.Closed != (closing >= 0) || closing >= len(seams) {
		return seam.Score{}, false
	}
	places := map[int64]Place{}
	for _, s := range seams {
		places[s] = PlaceAt(span, s)
	}
	return scoreSheets(span, Sheets(span, seams, closing), closing, func(s int64) Place { return places[s] })
}

// Grid lists every line a seam may lie on, ascending.
func Grid(span seam.Span) []int64 {
	var lines []int64
	if span.Closed {
		for s := int64(0); s < span.Period; s += span.Snap {
			lines = append(lines, s)
		}
		return lines
	}
	for s := span.L + span.Snap; s < span.R; s += span.Snap {
		lines = append(lines, s)
	}
	return lines
}

// NetWidth is W: what an inner sheet covers at most.
func NetWidth(span *seam.Span) int64 {
	return (span.Gross - span.Overlap) / span.Snap * span.Snap
}

// Sheet is one sheet of a layout. Right - Left is its width; in a closed span places grow past Period.
type Sheet struct {
	Left, Right       int64
	LeftRaw, RightRaw bool // a raw end, not a seam
	End               bool // an end sheet: no jump, never narrow
	RightCounts       bool // its right side is a seam that counts: neither a raw end nor the end of a rest
}

// Sheets lists the sheets that the seams make, from left to right, in a closed span from the closing seam round to it.
func Sheets(span seam.Span, seams []int64, closing int) []Sheet {
	return appendSheets(nil, span, seams, closing)
}

// appendSheets appends them to a list.
func appendSheets(list []Sheet, span seam.Span, seams []int64, closing int) []Sheet {
	n := len(seams)
	edge := func(i int) int64 { // of a closed span
		at := closing + i
		if at >= n {
			return seams[at-n] + span.Period
		}
		return seams[at]
	}
	if !span.Closed {
		n++
		edge = func(i int) int64 {
			switch i {
			case 0:
				return span.L
			case n:
				return span.R
			}
			return seams[i-1]
		}
	}
	for i := range n {
		first, last := i == 0, i == n-1
		sheet := Sheet{Left: edge(i), Right: edge(i + 1)}
		if span.Closed {
			sheet.End = first || last
			sheet.RightCounts = true
		} else {
			sheet.LeftRaw = first && !span.LeftSeam
			sheet.RightRaw = last && !span.RightSeam
			sheet.End = sheet.LeftRaw || last // beside a hung seam the sheet is inner, but the last one never is
			sheet.RightCounts = !last
		}
		list = append(list, sheet)
	}
	return list
}

// widthAllowed tells whether a sheet keeps the widths that no layout breaks.
func widthAllowed(span *seam.Span, sheet Sheet) bool {
	width := sheet.Right - sheet.Left
	switch {
	case sheet.LeftRaw && sheet.RightRaw:
		return width <= span.Gross-span.TrimLeft-span.TrimRight
	case sheet.LeftRaw:
		return width <= span.Gross-span.Overlap/2-span.TrimLeft
	case sheet.RightRaw:
		return width <= span.Gross-span.Overlap/2-span.TrimRight
	}
	return width <= NetWidth(span)
}

// scoreSheets adds up a whole layout. placeOf gives what a seam at s, with 0 <= s < Period in a closed span, owes.
func scoreSheets(span seam.Span, sheets []Sheet, closing int, placeOf func(int64) Place) (seam.Score, bool) {
	var score seam.Score
	for i, sheet := range sheets {
		if !widthAllowed(&span, sheet) {
			return seam.Score{}, false
		}
		place := placeRight(span, sheet, placeOf)
		var left Place
		if i > 0 {
			left = placeOf(sheet.Left % max(span.Period, sheet.Left+1))
		}
		score = add(score, scoreSheet(&span, sheet, left, place))
		if closing >= 0 && i == len(sheets)-1 {
			score.Closing = place.Feet
		}
	}
	score.Difference = difference(span, sheets[0], sheets[len(sheets)-1])
	return score, true
}

// placeRight is what the seam at the right side of a sheet owes.
func placeRight(span seam.Span, sheet Sheet, placeOf func(int64) Place) Place {
	switch {
	case !sheet.RightCounts:
		return Place{}
	case span.Closed:
		return placeOf(sheet.Right % span.Period)
	}
	return placeOf(sheet.Right)
}

// mustsOf adds up the musts of a layout alone; the result is false where a sheet is too wide.
func mustsOf(span seam.Span, sheets []Sheet, placeOf func(int64) Place) (score seam.Score, ok bool) {
	for _, sheet := range sheets {
		if !widthAllowed(&span, sheet) {
			return seam.Score{}, false
		}
		bends, _ := SheetOwes(&span, sheet.Right-sheet.Left)
		place := placeRight(span, sheet, placeOf)
		score.Bends += bends + place.Bends
		score.Edges += place.Edges
	}
	return score, true
}

// scoreSheet is the part of one sheet and of the seam at its right side; left and place are the places of the seams at its
// sides, nought at an end.
func scoreSheet(span *seam.Span, sheet Sheet, left, place Place) seam.Score {
	width := sheet.Right - sheet.Left
	bends, should := SheetOwes(span, width)
	score := seam.Score{
		Bends: bends + place.Bends, Edges: place.Edges, Should: should + place.Should,
		Sheets: 1, Seen: place.Feet, Unevenness: square(width),
	}
	if !sheet.End && NetWidth(span)-width >= span.Snap {
		score.Jump = place.Feet
		if place.Tall {
			score.Narrow = 1
		}
		if place.Tall && !span.Closed && (!span.LeftSeam || !span.RightSeam) {
			score.NarrowJump = place.Feet
		}
		if place.Tall && place.Main {
			score.NarrowMain = 1
		}
	}
	if sheet.LeftRaw && place.Tall || sheet.RightRaw && left.Tall {
		score.Sliver = SliverLacks(span, width)
	}
	return score
}

// SliverLacks gives what an end sheet of this width lacks of the middle between least_width and prefer_width.
func SliverLacks(span *seam.Span, width int64) int64 {
	if prefer(span.PreferWidth, span.LeastWidth) == 0 {
		return 0
	}
	return lack((span.LeastWidth+span.PreferWidth)/2, width)
}

// difference is that of the widths of the first and the last sheet, where it counts.
func difference(span seam.Span, first, last Sheet) int64 {
	if !span.OneWall || !first.LeftRaw || !last.RightRaw {
		return 0
	}
	d := (first.Right - first.Left) - (last.Right - last.Left)
	return max(d, -d)
}

// SheetOwes gives what a sheet of this width owes to the sums of bends and of should.
func SheetOwes(span *seam.Span, width int64) (bends, should int64) {
	whole := span.R - span.L
	if span.Closed {
		whole = span.Period
	}
	if whole >= span.LeastWidth {
		bends = lack(span.LeastWidth, width)
	}
	return bends, lack(prefer(span.PreferWidth, span.LeastWidth), width)
}

// lack is by how much have falls short of want.
func lack(want, have int64) int64 { return max(0, want-have) }

// prefer is a preference, or nought where it is less than its must.
func prefer(preference, must int64) int64 {
	if preference < must {
		return 0
	}
	return preference
}

func square(width int64) seam.Square {
	hi, lo := bits.Mul64(uint64(width), uint64(width))
	return seam.Square{Hi: hi, Lo: lo}
}

// add adds two scores item by item.
func add(a, b seam.Score) seam.Score {
	lo, carry := bits.Add64(a.Unevenness.Lo, b.Unevenness.Lo, 0)
	hi, _ := bits.Add64(a.Unevenness.Hi, b.Unevenness.Hi, carry)
	return seam.Score{
		Bends: a.Bends + b.Bends, Edges: a.Edges + b.Edges, Closing: a.Closing + b.Closing,
		NarrowMain: a.NarrowMain + b.NarrowMain, Narrow: a.Narrow + b.Narrow, Sheets: a.Sheets + b.Sheets,
		NarrowJump: a.NarrowJump + b.NarrowJump, Sliver: a.Sliver + b.Sliver, Jump: a.Jump + b.Jump, Should: a.Should + b.Should, Seen: a.Seen + b.Seen,
		Difference: a.Difference + b.Difference, Unevenness: seam.Square{Hi: hi, Lo: lo},
	}
}
