package count

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
)

// Margins is how much may go wrong before the count changes or the layout falls.
type Margins struct {
	Narrower *Narrower // nil where a rule is broken already
	Lost     *Lost     // nil where the room names no flitch, or sheets are short already
}

// Narrower is how much narrower the sheets may come.
type Narrower struct {
	Holds  L      // least gross width down to which every step gives the same count
	Margin L      // gross width less that
	Step   L      // 1/16 in or 1 mm
	Next   string // what happens one step further
}

// Lost is how many sheets may be lost.
type Lost struct {
	Left   int // with the spares kept back
	Spares int // when these are laid too
}

// mostNarrower is how far the search goes.
func mostNarrower(unit length.Unit) (step L, steps int) {
	if unit == length.Millimetres {
		return length.Millimetre, 100
	}
	return length.Inch / 16, 64
}

// Solve finds the margins by laying the room out again.
func (c *Count) Solve() {
	c.Margins = &Margins{Narrower: c.narrower(), Lost: c.lost()}
}

// lay lays out a changed copy of the room.
func (c *Count) lay(change func(*room.Room)) (*layout.Plan, error) {
	r := *c.room()
	change(&r)
	return layout.LayAim(&r, c.Plan.Aim)
}

// narrower walks down from the gross width step by step: only so every width on the way is known to hold, since under
// some aims a narrower sheet may change the count and one narrower still change it back.
func (c *Count) narrower() *Narrower {
	unit := c.room().Project.Units
	step, steps := mostNarrower(unit)
	gross := c.room().Veneer.GrossWidth
	out := &Narrower{Holds: gross, Step: step, Next: "not tried"}
	bends, edges := broken(c.Plan)
	if bends+edges > 0 {
		return nil
	}
	widths := layout.NewWidths(c.Plan)
	for range steps {
		width := out.Holds - step
		if width-c.room().Veneer.Overlap < c.room().Rules.LeastWidth {
			out.Next = "sheets are under the least width"
			break
		}
		if c.atLeast(width) > c.places() {
			out.Next = "more than " + report.Plural(c.Sheets, "sheet")
			break
		}
		n, broken, err := widths.Sheets(width)
		if err != nil {
			out.Next = "no layout is left"
			break
		}
		if broken {
			out.Next = "a rule that must be met is broken"
			break
		}
		if n > c.Sheets {
			out.Next = "more than " + report.Plural(c.Sheets, "sheet")
			break
		} else if n < c.Sheets {
			out.Next = report.Plural(n, "sheet")
			break
		}
		out.Holds = width
	}
	out.Margin = gross - out.Holds
	return out
}

// places is how many places the plan has.
func (c *Count) places() int {
	n := 0
	for i := range c.Plan.Runs {
		for _, s := range c.Plan.Runs[i].Spans {
			n += s.LastSheet - s.FirstSheet + 1
		}
	}
	return n
}

// atLeast is how many places any layout with sheets of a width has: it saves laying out where more are needed anyhow.
func (c *Count) atLeast(gross L) int {
	r := c.room()
	net := r.Net(gross)
	n := 0
	for i := range c.Plan.Runs {
		for _, s := range c.Plan.Runs[i].Spans {
			long := s.Right - s.Left
			switch {
			case s.LeftSeam:
				n += s.LastSheet - s.FirstSheet + 1 // sheets that hang are as wide as they are
			case s.Closed:
				n += int(length.CeilDiv(long, net))
			case long <= gross-s.LeftTrim-s.RightTrim:
				n++
			default:
				n += 2
				if rest := long - 2*(gross-r.Veneer.Overlap.HalfDown()) + s.LeftTrim + s.RightTrim; rest > 0 {
					n += int(length.CeilDiv(rest, net))
				}
			}
		}
	}
	return n
}

// broken adds up the shortfalls of the rules that must be met.
func broken(p *layout.Plan) (bends, edges int64) {
	for i := range p.Runs {
		for _, s := range p.Runs[i].Spans {
			bends += s.Score.Bends
			edges += s.Score.Edges
		}
	}
	return bends, edges
}

// lost finds how many sheets may be lost, of whichever flitch hurts most.
func (c *Count) lost() *Lost {
	if len(c.Flitches) == 0 || c.All.Short > 0 {
		return nil
	}
	return &Lost{Left: c.mayLose(false), Spares: c.mayLose(true)}
}

// mayLose finds how many sheets of a flitch may be lost, of the flitch that stands it least. What numbers allow is
// counted; where several flitches change over, the room then is laid out without that many, and with one fewer lost until it
// holds.
func (c *Count) mayLose(spares bool) int {
	free := c.free(spares)
	columns := c.columns()
	worst, most := -1, 0
	for i := range free {
		n, less := -1, slices.Clone(free)
		for less[i] = free[i]; less[i] >= 0 && fits(columns, less); less[i]-- {
			n++
		}
		if free[i] > 0 && (worst < 0 || n < most) {
			worst, most = i, n
		}
	}
	if len(free) == 1 {
		return max(most, 0) // seams do not depend on numbers, and of one flitch any numbers do
	}
	for most > 0 && !c.holdsWithout(worst, most, spares) {
		most--
	}
	return max(most, 0)
}

// free is how many sheets each flitch has for what does not hang yet: numbers go up, so those before the last one that
// hangs are of no use.
func (c *Count) free(spares bool) []int {
	flitches := c.room().Flitches
	out := make([]int, len(flitches))
	last, at := 0, 0
	for _, cut := range c.Cuts {
		if i := slices.IndexFunc(flitches, func(f room.Flitch) bool { return f.Number == cut.Flitch }); cut.Hung && i >= 0 {
			last, at = cut.Number, i
		}
	}
	for i := range flitches {
		f := &flitches[i]
		for _, n := range f.Sheets {
			behind := i < at || i == at && n <= last
			if !behind && !slices.Contains(f.Damaged, n) && (spares || !slices.Contains(f.Spare, n)) {
				out[i]++
			}
		}
	}
	return out
}

// columns is how many sheets each place takes that does not hang yet: those of one place are of one flitch.
func (c *Count) columns() []int {
	var out []int
	last := 0
	c.each(func(_ *layout.Run, s *layout.Sheet) {
		switch {
		case s.Hung:
		case s.Place == last:
			out[len(out)-1]++
		default:
			out, last = append(out, 1), s.Place
		}
	})
	return out
}

// fits reports whether columns can be numbered from flitches that have so many sheets, one flitch after the other.
func fits(columns, free []int) bool {
	at := 0
	for _, have := range free {
		for at < len(columns) && columns[at] <= have {
			have -= columns[at]
			at++
		}
	}
	return at == len(columns)
}

// holdsWithout reports whether the room can be laid out without n sheets of a flitch, the last ones that are free.
func (c *Count) holdsWithout(flitch, n int, spares bool) bool {
	p, err := c.lay(func(r *room.Room) {
		r.Flitches = slices.Clone(r.Flitches)
		for i := range r.Flitches {
			if spares {
				r.Flitches[i].Spare = nil
			}
		}
		f := &r.Flitches[flitch]
		f.Damaged = slices.Clone(f.Damaged)
		for i := len(f.Sheets) - 1; i >= 0 && n > 0; i-- {
			if x := f.Sheets[i]; !slices.Contains(f.Damaged, x) && !slices.Contains(f.Spare, x) {
				f.Damaged = append(f.Damaged, x)
				n--
			}
		}
		slices.Sort(f.Damaged)
	})
	return err == nil && p.Totals.Short == 0
}
