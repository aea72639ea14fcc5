package count

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Part is what becomes of some of the veneer.
type Part int

// The parts that a sheet as cut to length falls into; they do not overlap, and add up to it.
const (
	Net      Part = iota // on the wall when all is done
	Reveals              // bent into reveals
	Openings             // cut out for openings
	Overlaps             // under the knife at seams
	Matches              // at end matches
	TopTrim
	BottomTrim
	EdgeTrim // at raw ends of runs
	Slopes   // past sloped, stepped and leaning edges; what corners that lean unequally take from an overlap counts against it
	Rest     // less than a step of the grid, trimmed with the overlap
	Ends     // ripped off first and last sheets
	Narrowed // ripped off inner sheets
	parts
)

var partWords = [parts]string{"on the wall", "bent into reveals", "cut out for openings", "overlaps at seams",
	"end matches", "top trim", "bottom trim", "edge trim at raw ends", "slopes, steps and leans", "rest off the grid",
	"ripped off end sheets", "ripped off narrow sheets"}

// String names a part.
func (p Part) String() string { return partWords[p] }

// Areas is twice the area of the sheets as cut to length, and where it goes.
type Areas struct {
	Gross     length.Area // gross width x cut length of every sheet laid
	Of        [parts]length.Area
	Delivered length.Area // the same sheets at their full length
	Lacking   length.Area // what sheets cut longer than they are have too little
}

// StockEnds is twice the area that is cut off the ends of the sheets laid.
func (a *Areas) StockEnds() length.Area { return a.Delivered + a.Lacking - a.Gross }

// add takes a sheet apart.
//
//	|<------------------ gross width ------------------>|
//	| ripped |<------------- as hung ------------------>|
//	         | overlap or edge trim | net | overlap ... |
func (a *Areas) add(r *room.Room, run *layout.Run, s *layout.Sheet, b bed) {
	if s.CutLength == 0 {
		return
	}
	gross, hung := s.Gross, asHung(s)
	twice := func(width, long L) length.Area { return 2 * width.Times(long) }
	a.Gross += twice(gross, s.CutLength)
	a.Delivered += twice(gross, r.Veneer.Length)
	a.Lacking += twice(gross, max(0, s.CutLength-r.Veneer.Length))

	ripped := Ends
	if !s.End {
		ripped = Narrowed
	}
	a.Of[ripped] += twice(gross-hung, s.CutLength)

	half := r.Veneer.Overlap.HalfDown()
	rawLeft, rawRight := raw(run, s)
	left, right := r.Veneer.Overlap-half, half
	if closes(run, s) {
		left = half // the closing seam's own line
	}
	rest := hung - s.Width
	side := func(isRaw bool, trim, nominal L) {
		part, width := Overlaps, nominal
		if isRaw {
			part, width = EdgeTrim, trim
		}
		width = min(width, rest) // a sheet that hangs already may have less
		a.Of[part] += twice(width, s.CutLength)
		rest -= width
	}
	span := &run.Spans[s.Span]
	side(rawLeft, span.LeftTrim, left)
	side(rawRight, span.RightTrim, right)
	a.Of[Rest] += twice(rest, s.CutLength)

	top, bottom := trims(run, s)
	a.Of[top] += twice(s.Width, b.top)
	a.Of[bottom] += twice(s.Width, b.bottom)
	a.Of[Slopes] += twice(s.Width, b.high-b.low) - b.solid

	var net length.Area
	for _, p := range s.Pieces {
		net += p.Twice()
	}
	a.Of[Net] += net
	reveals := max(0, min(b.solid-net, reveals(r, run, s)))
	a.Of[Reveals] += reveals
	a.Of[Openings] += b.solid - net - reveals
}

// trims says what goes at the top and at the foot of a sheet: a trim, or what an end match takes.
func trims(run *layout.Run, s *layout.Sheet) (top, bottom Part) {
	top, bottom = TopTrim, BottomTrim
	if run.Up {
		if len(run.Joints) > 0 && s.Course <= len(run.Joints) {
			top = Matches
		}
	} else if over(run, s) {
		top = Matches
	}
	if !s.Lowest {
		bottom = Matches
	}
	return top, bottom
}

// asHung is the width of a sheet when it goes on the wall.
func asHung(s *layout.Sheet) L {
	if s.RipTo > 0 {
		return s.RipTo
	}
	return s.Gross
}

// raw tells which sides of a sheet are raw ends of the run.
func raw(run *layout.Run, s *layout.Sheet) (left, right bool) {
	span := &run.Spans[s.Span]
	return s.Place == span.FirstSheet && !span.Closed, s.Place == span.LastSheet && !span.Closed
}

// closes reports whether the sheet's left edge is the closing seam.
func closes(run *layout.Run, s *layout.Sheet) bool {
	span := &run.Spans[s.Span]
	return s.Place == span.FirstSheet && span.Closed
}

// reveals is twice the area of a sheet that is bent into the jambs of openings.
func reveals(r *room.Room, run *layout.Run, s *layout.Sheet) length.Area {
	var sum length.Area
	for i := range run.Openings {
		o := &run.Openings[i]
		if !o.Wrap || run.Up || o.Gap {
			continue
		}
		depth := r.Walls[o.Wall].Openings[o.Index].Reveal
		foot, head := r.Space.LevelLine-s.Below, r.Space.LevelLine+s.Above
		high := min(o.Head, head) - max(o.Sill, foot)
		for turn := -run.Length; turn <= 2*run.Length; turn += run.Length {
			if turn != 0 && !run.Closed || high <= 0 {
				continue
			}
			for _, jamb := range [2][2]L{{o.Left, o.Left + depth}, {o.Right - depth, o.Right}} {
				if wide := min(s.Right, jamb[1]+turn) - max(s.Left, jamb[0]+turn); wide > 0 {
					sum += 2 * wide.Times(high)
				}
			}
		}
	}
	return sum
}
