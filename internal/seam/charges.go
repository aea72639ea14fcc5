package seam

// Cause is why something is charged.
type Cause int

// The causes. Those up to Width are distances or widths that something asks for; what is lacking of them is charged. The
// others are counted.
const (
	Return  Cause = iota // CornerReturn and PreferReturn: past a wrapped corner, or outside a wrapped jamb
	Reveal               // the jamb and OpeningClear or PreferClear: inside a wrapped jamb
	Clear                // OpeningClear and PreferClear: inside an edge of an opening, or on a wrapped jamb
	Leg                  // Leg and PreferLeg: outside an edge of an opening
	Kept                 // the way out of a stretch kept clear
	Plate                // BoxClear, to a plate
	Width                // LeastWidth and PreferWidth of a sheet
	Sheet                // a sheet, and its width squared
	Jump                 // the jump of an inner sheet, and whether that makes it a narrow one
	Sliver               // what an end sheet at a raw end lacks of being no sliver
	Shows                // what shows of a seam
	Closes               // what shows of the closing seam, once more
	Differs              // the first sheet from the last
)

// Edge is one of the two edges of an opening.
type Edge int

// The edges; what is asked by no opening has none.
const (
	NoEdge Edge = iota
	EdgeA
	EdgeB
)

// Due is a distance that something asks of a seam, or a width that is asked of a sheet.
type Due struct {
	Cause  Cause
	Object int   // index of what asks in Span.Openings where Edge is given, else in Corners, Keep or Boxes
	Edge   Edge  // the edge or the jamb that it is measured from
	D      int64 // what there is
	Must   int64 // what there must be
	Prefer int64 // what there should be: nought where a preference is less than its must
	bend   bool  // what lacks of Must would break or come loose
}

// debt returns what is owed of it.
func (d *Due) debt() debt {
	owed := debt{should: lacks(d.Prefer, d.D)}
	switch {
	case d.Cause == Kept:
		owed.edges = d.D
	case d.bend:
		owed.bends = lacks(d.Must, d.D)
	default:
		owed.edges = lacks(d.Must, d.D)
	}
	return owed
}

// Charge is one entry of a score: a cause, and how much it adds to which items. Added up, the charges of a layout are its
// score.
type Charge struct {
	Due
	At   int64 // where the seam is; of a sheet, where its right edge is
	Adds Score
}

// Owed returns what a seam at a place owes to the objects of the span: corners first, then openings, stretches kept clear
// and plates, each in the order of its list.
func (s Span) Owed(at int64) []Charge {
	var list []Charge
	s.owed(at, func(c Charge) { list = append(list, c) })
	return list
}

// Charges returns all that the score of a layout adds up: seams as in a Layout, closing as in Score. What adds nothing is
// left out.
func (s Span) Charges(seams []int64, closing int) []Charge {
	var list []Charge
	s.charges(seams, closing, func(c Charge) { list = append(list, c) })
	return list
}

// charges goes through all that the score of a layout adds up.
func (s *Span) charges(seams []int64, closing int, each func(Charge)) {
	say := func(cause Cause, at int64, adds Score) {
		if adds != (Score{}) {
			each(Charge{Due{Cause: cause}, s.home(at), adds})
		}
	}
	edges, scored := s.lay(seams, closing)
	for i, at := range scored {
		s.owed(s.home(at), each)
		seen := s.feet(s.Seen(s.home(at)))
		say(Shows, at, Score{Seen: seen})
		if s.Closed && i == 0 {
			say(Closes, at, Score{Closing: seen})
		}
	}
	last := len(edges) - 2
	for i, right := range edges[1:] {
		width := right - edges[i]
		say(Sheet, right, Score{Sheets: 1, Unevenness: squareOf(width)})
		due := s.WidthDue(width)
		s.owe(&due, s.home(right), each)
		if inner := i < last && (i > 0 || s.LeftSeam && !s.Closed); inner && s.Loses(width) {
			say(Jump, right, s.jump(s.home(right)))
		}
	}
	if left, right := s.rawEnds(); last > 0 {
		if left {
			say(Sliver, edges[1], Score{Sliver: s.sliver(edges[1]-edges[0], edges[1])})
		}
		if right {
			say(Sliver, edges[last+1], Score{Sliver: s.sliver(edges[last+1]-edges[last], edges[last])})
		}
	}
	if s.evened() && last > 0 {
		first, last := edges[1]-edges[0], edges[last+1]-edges[last]
		say(Differs, s.R, Score{Difference: max(first-last, last-first)})
	}
}

// owed goes through what a seam at a place owes.
func (s *Span) owed(at int64, each func(Charge)) {
	say := func(due *Due, object int) {
		due.Object = object
		s.owe(due, at, each)
	}
	for i, corner := range s.Corners {
		due := s.cornerDue(at, corner)
		say(&due, i)
	}
	var list [4]Due
	for i := range s.Openings {
		dues := s.openingDues(list[:0], at, &s.Openings[i])
		for j := range dues {
			say(&dues[j], i)
		}
	}
	for i, keep := range s.Keep {
		due := s.keepDue(at, keep)
		say(&due, i)
	}
	for i, box := range s.Boxes {
		due := s.boxDue(at, box)
		say(&due, i)
	}
}

// owe charges what is owed of a due, if anything is.
func (s *Span) owe(due *Due, at int64, each func(Charge)) {
	if owed := due.debt(); owed != (debt{}) {
		each(Charge{*due, at, Score{Bends: owed.bends, Edges: owed.edges, Should: owed.should}})
	}
}

// WidthDue returns what the rules ask of a sheet's width. In a span that is shorter than LeastWidth no sheet could have it,
// and none owes it.
func (s Span) WidthDue(width int64) Due {
	due := Due{Cause: Width, D: width, Prefer: prefer(s.PreferWidth, s.LeastWidth), bend: true}
	if s.whole() >= s.LeastWidth {
		due.Must = s.LeastWidth
	}
	return due
}

// Loses says whether an inner sheet of a width has lost a strip of its figure, so that the grain jumps at its right seam.
func (s Span) Loses(width int64) bool { return s.NetWidth()-width >= s.Snap }

// jump returns what a jump at a place adds.
func (s *Span) jump(at int64) Score {
	seen := s.Seen(at)
	adds := Score{Jump: s.feet(seen)}
	if seen > s.ShortSeam {
		adds.Narrow = 1
		if s.raw() {
			adds.NarrowJump = adds.Jump
		}
		if s.onMain(at) {
			adds.NarrowMain = 1
		}
	}
	return adds
}

// sliver returns what a sheet between a raw end and a seam lacks of being no sliver; nought where the seam is short.
func (s *Span) sliver(width, at int64) int64 {
	if lack := lacks(s.sliverWidth(), width); lack > 0 && s.Seen(at) > s.ShortSeam {
		return lack
	}
	return 0
}

// add adds one score to another.
func (a *Score) add(b *Score) {
	a.Bends += b.Bends
	a.Edges += b.Edges
	a.Closing += b.Closing
	a.NarrowMain += b.NarrowMain
	a.Narrow += b.Narrow
	a.Sheets += b.Sheets
	a.NarrowJump += b.NarrowJump
	a.Sliver += b.Sliver
	a.Jump += b.Jump
	a.Should += b.Should
	a.Seen += b.Seen
	a.Difference += b.Difference
	a.Unevenness = a.Unevenness.Plus(b.Unevenness)
}
