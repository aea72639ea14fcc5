package oracletest

import (
	"math/rand/v2"

	"flitchlay/internal/seam"
)

// Case is a span to solve, with the profile behind its seen heights so that it can be written down.
type Case struct {
	Span    seam.Span
	Profile Profile
	Aim     seam.Aim
}

// Options bound the spans that Random makes.
type Options struct {
	OpenLines   int // most grid lines of an open span
	ClosedLines int // most grid lines of a closed one, where each may also be the closing seam
	NetSteps    int // most snaps in W; 0: up to 6. Rules and objects grow with W
}

// Small keeps spans inside the quick reach of Best and Largest inside what it can do at all, Middling inside the reach
// of Sweep.
var (
	Small    = Options{OpenLines: 13, ClosedLines: 10}
	Largest  = Options{OpenLines: 16, ClosedLines: 13}
	Middling = Options{OpenLines: 240, ClosedLines: 70, NetSteps: 24}
)

// Random makes a span as a room could ask for it: widths, trims and rules that pass the checks of a room file, and any
// mix of ends, objects, pins and heights. What is put on the grid and what beside it is left to chance everywhere.
func Random(rng *rand.Rand, opts Options) Case {
	g := &generator{rng: rng, unit: 1, stride: 1}
	g.snap = 1 + g.below(6)
	switch {
	case g.chance(15):
		g.snap = 7 + g.below(40)
	case g.chance(15): // the program's own unit: 1/16 in, 1 mm, 1/4 in
		g.snap, g.unit = []int64{12_700, 8_000, 50_800}[g.below(3)], 203_200
	}
	g.makeSheets(opts)
	g.makeEnds(opts)
	g.makeRules()
	g.makeObjects()
	g.makePins()
	g.makeHeights()
	return Case{Span: g.span, Profile: g.profile, Aim: seam.Aim(g.below(3))}
}

type generator struct {
	rng     *rand.Rand
	snap    int64
	unit    int64 // of heights
	stride  int64 // snaps to a step of rules and objects
	crowded bool  // rules so long and objects so many that musts collide
	span    seam.Span
	profile Profile
}

func (g *generator) below(n int64) int64        { return g.rng.Int64N(n) }
func (g *generator) chance(percent int64) bool  { return g.below(100) < percent }
func (g *generator) between(lo, hi int64) int64 { return lo + g.below(hi-lo+1) }

// steps is a length from lo to hi strides, whole snaps as often as not.
func (g *generator) steps(lo, hi int64) int64 {
	lo, hi = lo*g.stride, hi*g.stride
	if g.chance(50) {
		return g.between(lo, hi) * g.snap
	}
	return g.between(lo*g.snap, hi*g.snap)
}

// makeSheets sets widths: W of 2 to 6 snaps, more often than not no whole number of them, and an end of one at least.
func (g *generator) makeSheets(opts Options) {
	s := &g.span
	s.Snap = g.snap
	net := g.between(2, 4) * g.snap
	if g.chance(30) {
		net += 2 * g.snap
	}
	if opts.NetSteps > 0 {
		net = g.between(2, int64(opts.NetSteps)) * g.snap
		g.stride = max(1, net/g.snap/4)
	}
	s.Overlap = g.between(1, max(2, 2*g.snap*g.stride))
	s.Gross = net + s.Overlap + g.below(g.snap)
	room := s.Gross - s.Overlap/2 - g.snap // the most trim that leaves an end sheet of one snap
	s.TrimLeft = min(room, g.steps(0, 1))
	s.TrimRight = min(room, g.steps(0, 1))
}

// endWidth is E for the lesser of the two ends.
func (g *generator) endWidth() int64 {
	return g.span.Gross - g.span.Overlap/2 - max(g.span.TrimLeft, g.span.TrimRight)
}

// makeEnds lays the span on a run: a closed span, the whole of an open run or a part of it, a part of a closed run that
// may go over its start, or the rest beside hung sheets.
func (g *generator) makeEnds(opts Options) {
	s := &g.span
	lines := max(g.between(3, int64(opts.OpenLines)), g.between(3, int64(opts.OpenLines))) // seldom few
	if g.chance(12) {
		lines = g.below(4)
	}
	last := g.snap // of the last step
	if g.chance(60) {
		last = g.between(1, g.snap)
	}
	length := lines*g.snap + last

	if g.chance(40) {
		lines = min(max(lines, 1), int64(opts.ClosedLines))
		s.Closed, s.RunClosed = true, true
		s.Period = (lines-1)*g.snap + last
		if s.Period < g.snap {
			s.Period = g.snap
		}
		s.R = s.Period
		return
	}
	s.LeftSeam = g.chance(25)
	s.OneWall = g.chance(50)
	if g.chance(55) { // an open run
		switch {
		case s.LeftSeam || g.chance(30):
			s.L = g.steps(1, 12)
		case g.chance(40):
			s.L = -min(g.steps(0, 1), length-1) // leans out
		}
		s.R = s.L + length
		s.Period = s.R
		if g.chance(40) {
			s.Period += g.steps(0, 6)
		}
		return
	}
	s.RunClosed = true
	s.RightSeam = g.chance(40)
	gap := g.steps(0, 4) // from R on to L again
	if g.chance(15) && length > gap && !s.LeftSeam {
		gap = -g.below(g.snap) // a cut corner that leans
	}
	s.Period = max(g.snap, length+gap)
	s.L = g.below(s.Period)
	if g.chance(30) {
		s.L = max(0, gap)
	}
	s.R = s.L + length
}

// makeRules sets the rules so that a room file with them would be taken: least width within W and E, snap within it.
func (g *generator) makeRules() {
	s := &g.span
	g.crowded = g.chance(45)
	long := int64(2)
	if g.crowded {
		long = 4
	}
	s.LeastWidth = g.snap
	most := min(NetWidth(s), g.endWidth())
	if whole := s.R - s.L; whole < most && g.chance(50) {
		s.LeastWidth = g.between(max(whole, g.snap), most) // about the length of the span itself
	} else if g.chance(70) {
		s.LeastWidth = min(most, g.steps(1, 2+long/2))
	}
	s.PreferWidth = s.LeastWidth + g.steps(0, 2)
	s.CornerReturn = g.steps(0, long)
	s.PreferReturn = s.CornerReturn + g.steps(0, 2)
	s.Leg = g.steps(0, long)
	s.PreferLeg = s.Leg + g.steps(0, 2)
	s.OpeningClear = g.steps(0, long-1)
	s.PreferClear = s.OpeningClear + g.steps(0, 2)
	s.BoxClear = g.steps(0, 2)
	for _, preference := range []*int64{&s.PreferWidth, &s.PreferReturn, &s.PreferLeg, &s.PreferClear} {
		if g.chance(12) {
			*preference = g.below(*preference + 1) // maybe under its must
		}
	}
}

// somewhere is a place on the run, a little past its ends too.
func (g *generator) somewhere() int64 {
	s := &g.span
	lo, hi := min(s.L, 0), max(s.R, s.Period)
	if s.RunClosed {
		lo, hi = 0, s.Period-1
	}
	if g.chance(50) {
		k := (hi - lo) / g.snap
		return min(hi, lo+g.between(0, k)*g.snap)
	}
	return g.between(lo, hi)
}

func (g *generator) strip(hi int64) seam.Strip {
	from := g.somewhere()
	return seam.Strip{From: from, To: from + g.steps(0, hi)}
}

func (g *generator) makeObjects() {
	s := &g.span
	if g.chance(8) { // a bare span: nothing but ties
		return
	}
	many := 1 + (s.R-s.L)/(25*g.stride*g.snap)
	if g.crowded {
		many *= 3
	}
	for range g.below(2 + many) {
		corner := g.strip(1)
		if g.chance(60) {
			corner.To = corner.From
		}
		s.Corners = append(s.Corners, corner)
	}
	for range g.below(1 + many) {
		a := g.somewhere()
		opening := seam.Opening{A: a, B: a + max(1, g.steps(1, 5))}
		if s.RunClosed && opening.B > s.Period { // an opening stands on one wall
			opening.A, opening.B = max(0, opening.A-(opening.B-s.Period)), s.Period
		}
		opening.Gap = g.chance(25)
		if g.chance(30) {
			opening.Wrap = true
			opening.Reveal = g.steps(0, 2)
		}
		s.Openings = append(s.Openings, opening)
	}
	if !s.Closed && g.chance(40) { // gaps at which the run was cut into spans
		if !s.LeftSeam && s.L > 0 {
			s.Openings = append(s.Openings, seam.Opening{A: max(0, s.L-g.steps(1, 4)), B: s.L, Gap: true})
		}
		from, to := s.R, s.R+g.steps(1, 4)
		if s.RunClosed {
			from %= s.Period
			to = min(from+to-s.R, s.Period)
		}
		if !s.RightSeam {
			s.Openings = append(s.Openings, seam.Opening{A: from, B: to, Gap: true, Wrap: g.chance(10)})
		}
	}
	for range g.below(1 + many) {
		if g.chance(50) {
			s.Boxes = append(s.Boxes, g.strip(2))
		}
		if g.chance(50) {
			s.Keep = append(s.Keep, g.strip(5))
		}
	}
	for range g.below(3 + many/2) {
		s.Main = append(s.Main, g.strip(12))
	}
}

func (g *generator) makePins() {
	s := &g.span
	if g.chance(45) {
		return
	}
	puts := []seam.Put{seam.PutSeam, seam.PutMiddle, seam.PutEither}
	if s.Closed || g.chance(15) {
		puts = append(puts, seam.PutClose)
	}
	for range g.between(1, 3) {
		at := g.somewhere()
		if g.chance(30) { // halfway between two lines
			at = s.L + g.between(0, 2*(s.R-s.L)/g.snap)*g.snap/2
		}
		if s.LeftSeam && g.chance(50) && (at < s.L-g.snap/2 || at > s.R) { // what is hung asks for nothing any more
			at = g.between(s.L, s.R)
		}
		s.Pins = append(s.Pins, seam.Pin{At: at, Put: puts[g.below(int64(len(puts)))]})
	}
}

// makeHeights makes seen heights of few values, so that ties are common, with slopes between some of them.
func (g *generator) makeHeights() {
	s := &g.span
	s.Foot = g.between(1, 12) * g.unit
	levels := []int64{0, g.between(1, 20) * g.unit, g.between(1, 99) * g.unit, g.between(60, 99) * g.unit}
	s.ShortSeam = levels[g.below(4)]
	if g.chance(40) {
		s.ShortSeam = g.between(0, 60) * g.unit
	}
	if s.RunClosed {
		g.profile.Period = s.Period
	}
	for range g.between(1, 5) + (s.R-s.L)/(10*g.stride*g.snap) {
		step := Step{From: g.somewhere(), Height: levels[g.below(4)]}
		if g.chance(25) {
			step.Rise, step.Per = (g.below(21)-10)*g.unit, g.snap
		}
		g.profile.Steps = append(g.profile.Steps, step)
	}
	g.profile = g.profile.Ascending()
	s.Seen = g.profile.Seen
}
