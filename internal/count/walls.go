package count

import (
	"cmp"
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// Wall is what hangs on one wall.
type Wall struct {
	Name    string
	Begin   int         // sheets whose left edge is on it; of all walls together every sheet is one
	Show    int         // sheets that show on it
	Numbers []int       // of these
	Seams   int         // joints on it
	Twice   length.Area // twice the covering
}

// walls counts by wall.
func (c *Count) walls() {
	r := c.room()
	list := make([]Wall, len(r.Walls))
	c.each(func(run *layout.Run, s *layout.Sheet) {
		list[run.Line.Find(s.Left).Wall].Begin++
		last := -1
		for _, p := range s.Pieces {
			w := &list[p.Wall]
			w.Twice += p.Twice()
			if p.Wall != last {
				if last = p.Wall; !slices.Contains(w.Numbers, s.Number) || s.Number == 0 {
					w.Show++
				}
				if s.Number > 0 && !slices.Contains(w.Numbers, s.Number) {
					w.Numbers = append(w.Numbers, s.Number)
				}
			}
		}
	})
	for i := range c.Plan.Runs {
		for _, s := range c.Plan.Runs[i].Seams {
			list[s.Wall].Seams++
		}
	}
	for i := range list {
		if r.Walls[i].Cover {
			list[i].Name = r.Walls[i].Name
			slices.Sort(list[i].Numbers)
			c.Walls = append(c.Walls, list[i])
		}
	}
}

// Stock is a length that sheets are ordered in: whole feet, or steps of 300 mm.
type Stock struct {
	Length  L
	Sheets  int
	Numbers []int
}

// lengths counts sheets by the least stock length that they can be cut from.
func (c *Count) lengths() {
	step := c.room().Project.Units.Grain()
	for _, cut := range c.Cuts {
		long := L(length.CeilDiv(cut.Length, step)) * step
		i, found := slices.BinarySearchFunc(c.Lengths, long, func(s Stock, l L) int { return cmp.Compare(s.Length, l) })
		if !found {
			c.Lengths = slices.Insert(c.Lengths, i, Stock{Length: long})
		}
		c.Lengths[i].Sheets++
		if cut.Number > 0 {
			c.Lengths[i].Numbers = append(c.Lengths[i].Numbers, cut.Number)
		}
	}
}

// Kept is a part of a sheet that is worth keeping.
type Kept struct {
	What   string // whole sheet, second half, strip, end, lower part
	Flitch string
	Number int
	Width  L
	Length L
}

// leastKept is how long a part is to be worth keeping (common practice, no source).
func leastKept(unit length.Unit) L {
	if unit == length.Millimetres {
		return 600 * length.Millimetre
	}
	return 2 * length.Foot
}

// kept lists what the cuts leave: whole sheets back from gaps; strips at least as wide as the narrowest sheet; ends and
// lower parts of headers at least 2 ft (600 mm) long. What is half a sheet or more is a second half.
func (c *Count) kept() {
	r := c.room()
	least := leastKept(r.Project.Units)
	nowhere := map[[2]int]bool{}
	c.each(func(_ *layout.Run, s *layout.Sheet) {
		if len(s.Pieces) == 0 {
			nowhere[[2]int{s.Place, s.Course}] = true
			c.Kept = append(c.Kept, Kept{"whole sheet", s.Flitch, s.Number, s.Gross, r.Veneer.Length})
		}
	})
	for _, cut := range c.Cuts {
		if nowhere[[2]int{cut.Place, cut.Course}] || cut.Hung {
			continue // a sheet that hangs was cut long ago
		}
		add := func(what string, width, long L, half bool) {
			if half {
				what = "second half"
			}
			c.Kept = append(c.Kept, Kept{what, cut.Flitch, cut.Number, width, long})
		}
		if strip := cut.sheet.Gross - cut.Width; strip >= r.Rules.LeastWidth {
			add("strip", strip, cut.Length, 2*strip >= cut.sheet.Gross)
		}
		if cut.keeps >= least {
			add("lower part", cut.Width, cut.keeps, false)
		}
		if cut.Stock >= least {
			add("end", cut.sheet.Gross, cut.Stock, 2*cut.Stock >= r.Veneer.Length)
		}
	}
}

// Longest is the sheet that the sheets' length is needed for.
type Longest struct {
	Cut     L
	Printed L // the longest as pages print it: see Cut.Long
	Left    L // of the sheet as delivered; negative where it is too short
	Flitch  string
	Number  int
	Place   int
	// Above and Below are the most that any sheet needs over and under the level line: for the figure to run on from
	// sheet to sheet both have to come out of one sheet. Figure is what then is left.
	Above, Below, Figure L
}
