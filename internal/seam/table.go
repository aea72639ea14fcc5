package seam

import (
	"math/bits"
	"slices"
)

// table holds the packed costs of a grid for one aim.
type table struct {
	g      *grid
	s      *Span
	aim    Aim
	strict bool   // lines and widths that break a must are out
	low    *least // and those that break more than the musts add up to; nil where that is not known
	ledger
	least, prefer int64    // least_width and prefer_width as they bind here, nought where they do not
	seams         []cost   // what each line costs as the place of a seam, never where it cannot be one
	kind          []uint16 // of the jump of a narrow sheet that ends on a line
	kinds         []cost   // what a narrow sheet costs more, by kind
	// mean is the width that squares are taken from: with as many sheets on the same length the order is that of the
	// squares of the whole widths, but a way that is a little short or long gains nothing by it.
	mean       int64
	unit       int64 // divides all lengths that are scored
	step       int64 // a snap in units
	short      int64 // what the last step of a closed span lacks of it
	sheets     [2][]cost
	reversed   bool // lines count from right to left: line i is line 2*lines-i of the grid
	fall, drop cost // what ramp and steep are taken against
	one        cost
	gists      *gists
	kept       *keptLanes // where the span is to be solved again
	past       *past      // the same
	// counting says that only the number of sheets is asked, and so what counts after it is left out.
	counting bool
}

// size is how many lines the unrolled arrays hold: a closed span twice round.
func (g *grid) size() int {
	if g.s.Closed {
		return 2*g.lines + 1
	}
	return g.lines + 1
}

// newTable packs costs so that no layout whose musts add up to low, where they count behind others, overflows an item.
func newTable(g *grid, aim Aim, strict bool, low least) (*table, error) {
	t := &table{g: g, s: g.s, aim: aim, strict: strict}
	return t, t.fill(low, nil)
}

// fill packs the costs; what lines cost it takes from a table of the same lines where that has them packed alike.
func (t *table) fill(low least, other *table) error {
	g := t.g
	if !t.strict && t.aim != musts {
		g.look(true)
		t.low = &low
	}
	t.mean = g.s.whole() / ((g.s.whole() + g.s.NetWidth() - 1) / g.s.NetWidth())
	if g.s.whole() >= g.s.LeastWidth {
		t.least = g.s.LeastWidth
	}
	if t.aim != musts && !t.counting {
		t.prefer = prefer(g.s.PreferWidth, g.s.LeastWidth)
	}
	t.unit = t.measure()
	t.mean -= t.mean % t.unit
	t.step, t.short = t.s.Snap/t.unit, g.short/t.unit
	if err := t.account(); err != nil {
		return err
	}
	t.one = t.of(itemSheets, 1)
	if other != nil && other.strict == t.strict && other.unit == t.unit && other.ledger == t.ledger {
		t.seams, t.kind, t.kinds, t.kept = other.seams, other.kind, other.kinds, other.kept
	} else {
		t.price()
	}
	t.widths()
	t.fall = t.of(itemShould, t.prefer/t.unit)
	t.drop = t.of(itemBends, t.least/t.unit).plus(t.fall)
	t.gists = t.newGists()
	return nil
}

// account makes the ledger.
func (t *table) account() (err error) {
	most := t.most()
	var left []item
	if t.counting {
		left = []item{itemNarrowJump, itemSliver, itemJump, itemShould, itemUnevenness, itemSeen}
		if !t.jumps() {
			left = append(left, itemNarrow, itemNarrowMain)
		}
	}
	for _, i := range left {
		most[i] = Square{}
	}
	t.ledger, err = newLedger(t.aim, most)
	for _, i := range left {
		t.at[i] = -1
	}
	return err
}

// measure returns the greatest length that divides all lengths that are scored: counted in it they take fewer bits.
func (t *table) measure() int64 {
	unit := greatest(greatest(t.s.Snap, t.s.whole()), greatest(t.least, t.prefer))
	if t.slivers() {
		unit = greatest(unit, t.s.sliverWidth())
	}
	for i := t.g.first(); i < t.g.lines && unit > 1; i++ {
		owed := &t.g.owed[i]
		if *owed == (debt{}) || t.barred(owed) {
			continue
		}
		unit = greatest(unit, owed.should)
		if !t.strict {
			unit = greatest(greatest(unit, owed.bends), owed.edges)
		}
	}
	return unit
}

// greatest returns the greatest common divisor of a > 0 and b >= 0.
func greatest(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// barred says whether a line that owes so much is left out.
func (t *table) barred(owed *debt) bool {
	if t.low != nil {
		return least{owed.bends, owed.edges}.over(*t.low)
	}
	return t.strict && (owed.bends != 0 || owed.edges != 0)
}

// most returns the highest sum of each item that has to be told apart: those of the best layout, for an item that
// overflows makes a layout that is beaten no better.
func (t *table) most() [itemCount]Square {
	var high debt
	feet := int64(0)
	for i := t.g.first(); i < t.g.lines; i++ {
		owed := &t.g.owed[i]
		if t.barred(owed) {
			continue
		}
		high.bends = max(high.bends, owed.bends)
		high.edges = max(high.edges, owed.edges)
		high.should = max(high.should, owed.should)
		feet = max(feet, t.g.feet[i])
	}
	sheets := t.mostSheets()
	high.bends += t.least
	high.should += t.prefer
	times := func(a, b int64) Square {
		hi, lo := bits.Mul64(uint64(a), uint64(b))
		return Square{hi, lo}
	}
	most := [itemCount]Square{
		itemBends:      times(sheets, high.bends/t.unit).Plus(times(4, t.s.whole()/t.unit)),
		itemEdges:      times(sheets, high.edges/t.unit),
		itemNarrowMain: times(sheets, 1),
		itemNarrow:     times(sheets, 1),
		itemSheets:     times(sheets, 1),
		itemNarrowJump: times(sheets, feet),
		itemSliver:     times(2, t.s.sliverWidth()/t.unit),
		itemJump:       times(sheets, feet),
		itemShould:     times(sheets, high.should/t.unit),
		itemSeen:       times(sheets, feet),
	}
	far := max(t.mean, t.s.Gross) / t.unit
	most[itemUnevenness] = times(far, far).times(sheets)
	if t.strict {
		most[itemBends], most[itemEdges] = Square{}, Square{}
	}
	if len(t.s.Main) == 0 {
		most[itemNarrowMain] = Square{}
	}
	if !t.slivers() {
		most[itemNarrowJump], most[itemSliver] = Square{}, Square{}
	}
	return most
}

// mostSheets returns what the sheets of a best layout never exceed: two neighbours that one sheet could cover are one,
// but for those beside the ends, the closing seam and what a pin asks for.
func (t *table) mostSheets() int64 {
	sheets := int64(2*t.g.lines/(t.g.net+1) + 8 + 8*len(t.s.Pins))
	return min(sheets, int64(t.g.lines)+1)
}

// price packs what each line costs.
func (t *table) price() {
	g := t.g
	size := g.size()
	if g.store == nil {
		t.seams = make([]cost, size)
	} else {
		t.seams = g.store.costs.take(size)
	}
	for i := range t.seams {
		t.seams[i] = never
	}
	feet, shown := int64(-1), cost{}
	for i := g.first(); i < g.lines; i++ {
		owed := &g.owed[i]
		if t.barred(owed) {
			continue
		}
		if g.feet[i] != feet {
			feet = g.feet[i]
			shown = t.of(itemSeen, feet)
		}
		x := shown
		if owed.should != 0 {
			x = x.plus(t.of(itemShould, owed.should/t.unit))
		}
		if owed.bends != 0 || owed.edges != 0 {
			x = x.plus(t.of(itemBends, owed.bends/t.unit)).plus(t.of(itemEdges, owed.edges/t.unit))
		}
		t.seams[i] = x
	}
	if t.s.Closed {
		copy(t.seams[g.lines:], t.seams[:g.lines])
		t.seams[2*g.lines] = t.seams[0]
	}
	if t.jumps() {
		t.sortJumps()
	}
}

// sortJumps finds the kind of jump of each line.
func (t *table) sortJumps() {
	type jump struct {
		seen int64
		main bool
	}
	g := t.g
	if g.store == nil {
		t.kind = make([]uint16, g.size())
	} else {
		t.kind = g.store.kinds.cleared(g.size())
	}
	known := map[jump]uint16{}
	last, kind := jump{seen: -1}, uint16(0)
	for i := range t.kind {
		line := i % g.lines
		if t.seams[i].isNever() {
			continue
		}
		if next := (jump{g.seen[line], g.main[line]}); next != last {
			last = next
			var found bool
			if kind, found = known[last]; !found {
				kind = t.newKind(last.seen, last.main)
				known[last] = kind
			}
		}
		t.kind[i] = kind
	}
}

// newKind returns the kind of a jump that is seen so high, where there is none like it a new one.
func (t *table) newKind(seen int64, main bool) uint16 {
	x := t.of(itemJump, t.s.feet(seen))
	if seen > t.s.ShortSeam {
		x = x.plus(t.of(itemNarrow, 1))
		if t.slivers() {
			x = x.plus(t.of(itemNarrowJump, t.s.feet(seen)))
		}
		if main {
			x = x.plus(t.of(itemNarrowMain, 1))
		}
	}
	if i := slices.Index(t.kinds, x); i >= 0 {
		return uint16(i)
	}
	t.kinds = append(t.kinds, x)
	return uint16(len(t.kinds) - 1)
}
