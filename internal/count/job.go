package count

import (
	"cmp"
	"fmt"
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
)

// Job adds up rooms as they come. What it keeps does not grow with their number.
type Job struct {
	Rooms, Broken                          int // Broken: rooms with a must finding
	Sheets, Delivered, Damaged, Spare      int
	Laid, Headers, Gaps, Left, Short, Want int
	Order                                  int // sheets of veneer to order
	Gross, Delivery                        report.Sum
	Of                                     [parts]report.Sum
	PasteOn, PrimerOn                      report.Sum
	Paste, Primer                          []layout.Amount // by unit
	NoPaste, NoPrimer                      int             // rooms whose label is not given
	Lengths                                []Stock         // without numbers
	Ends                                   []End
	Extenders                              []Extender
	Strip                                  Strip
	Blades                                 Blades
	Alarms                                 int
	Minutes                                int      // of the crew; 0: not reckoned
	Beside                                 any      // what a job knows beside the sums, as JSON takes it; nil where there is no job
	Twice                                  []string // sheets that two rooms lay: the first of them, in words
	Style                                  length.Style
	laid                                   map[string][]stretch
	stretches                              int
	shared                                 []*sharedFlitch // those that may stand in several rooms, as they come
}

// Stock takes what is told of sheets from who has seen each flitch whole: rooms know only what they take of it.
func (j *Job) Stock(delivered, damaged, spare, left, want, order int) {
	j.Delivered, j.Damaged, j.Spare, j.Left, j.Want, j.Order, j.shared = delivered, damaged, spare, left, want, order, nil
}

// stretch is a row of sheet numbers that are laid.
type stretch struct{ from, to int }

// Bounds on what is kept to find sheets that two rooms lay.
const (
	mostStretches = 20_000
	mostTwice     = 20
)

// Add adds a room.
func (j *Job) Add(c *Count) {
	if j.Rooms == 0 {
		j.Style = c.Style
	}
	j.Rooms++
	if c.Broken {
		j.Broken++
	}
	all := &c.All
	j.Sheets += c.Sheets
	j.stock(c)
	j.Laid += len(all.Laid)
	j.Headers += all.Headers
	j.Gaps += len(all.Gaps)
	j.Short += all.Short
	j.Want += all.Want
	for _, l := range c.Order {
		j.Order += l.Sheets
	}
	j.Gross.Plus(c.Areas.Gross)
	j.Delivery.Plus(c.Areas.Delivered)
	for i, a := range c.Areas.Of {
		j.Of[i].Plus(a)
	}
	j.material(&c.Material)
	for _, s := range c.Lengths {
		i, found := slices.BinarySearchFunc(j.Lengths, s.Length, func(s Stock, l L) int { return cmp.Compare(s.Length, l) })
		if !found {
			j.Lengths = slices.Insert(j.Lengths, i, Stock{Length: s.Length})
		}
		j.Lengths[i].Sheets += s.Sheets
	}
	j.ledger(c)
}

func (j *Job) material(m *Material) {
	j.PasteOn.Plus(m.PasteOn)
	j.PrimerOn.Plus(m.PrimerOn)
	wet := func(list []layout.Amount, a *layout.Amount, unknown *int) []layout.Amount {
		if a == nil {
			*unknown++
			return list
		}
		i := slices.IndexFunc(list, func(x layout.Amount) bool { return x.Unit == a.Unit })
		if i < 0 {
			i, list = len(list), append(list, layout.Amount{Unit: a.Unit})
		}
		list[i].Amount += a.Amount
		return list
	}
	j.Paste = wet(j.Paste, m.Paste, &j.NoPaste)
	j.Primer = wet(j.Primer, m.Primer, &j.NoPrimer)
	for _, e := range m.Ends {
		i := slices.IndexFunc(j.Ends, func(x End) bool { return x.Kind == e.Kind })
		if i < 0 {
			i, j.Ends = len(j.Ends), append(j.Ends, End{Kind: e.Kind, Takes: e.Takes})
		}
		j.Ends[i].Count += e.Count
		j.Ends[i].Length += e.Length
		j.Ends[i].Longest = max(j.Ends[i].Longest, e.Longest)
	}
	for _, e := range m.Extenders {
		i, found := slices.BinarySearchFunc(j.Extenders, e.Gang, func(x Extender, g int) int { return cmp.Compare(x.Gang, g) })
		if !found {
			j.Extenders = slices.Insert(j.Extenders, i, Extender{Gang: e.Gang})
		}
		j.Extenders[i].Count += e.Count
	}
	j.Strip.Count += m.Strip.Count
	j.Strip.Length += m.Strip.Length
	j.Blades.Seams += m.Blades.Seams
	j.Blades.Matches += m.Blades.Matches
	j.Blades.Edges += m.Blades.Edges
	j.Alarms += m.Alarms
}

// ledger looks for sheets that an earlier room lays too: a flitch that goes over several rooms has to be parted between
// them. It forgets what is over its bound.
func (j *Job) ledger(c *Count) {
	if j.laid == nil {
		j.laid = map[string][]stretch{}
	}
	for i := range c.Flitches {
		f := &c.Flitches[i]
		var mine []stretch
		for _, n := range f.Laid {
			if k := len(mine); k > 0 && mine[k-1].to+1 == n {
				mine[k-1].to = n
			} else {
				mine = append(mine, stretch{n, n})
			}
		}
		var again []int
		for _, a := range mine {
			for _, b := range j.laid[f.Number] {
				for n := max(a.from, b.from); n <= min(a.to, b.to); n++ {
					again = append(again, n)
				}
			}
		}
		slices.Sort(again)
		if again = slices.Compact(again); len(again) > 0 && len(j.Twice) < mostTwice {
			j.Twice = append(j.Twice, fmt.Sprintf("of flitch %s, %s lays %s again: a room before it lays the same", f.Number, c.Room, layout.Numbers(again)))
		}
		if j.stretches+len(mine) <= mostStretches {
			j.stretches += len(mine)
			j.laid[f.Number] = append(j.laid[f.Number], mine...)
		}
	}
}
