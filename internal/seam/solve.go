package seam

import (
	"fmt"
	"slices"
)

// Solve finds the best layout of a span: no layout on its grid scores less in the order of the aim, and of those that
// score the same none has a seam further right.
//
// Errors: a span that says nothing sensible, and one that no layout can cover.
func Solve(span Span, aim Aim) (Layout, error) {
	if err := span.check(aim); err != nil {
		return Layout{}, err
	}
	lent := stores.Get().(*store)
	defer stores.Put(lent)
	p := &problem{s: &span, g: newLentGrid(&span, lent), aim: aim}
	defer p.free()
	return p.solve()
}

// free gives back the lists that a store has lent.
func (p *problem) free() {
	for _, t := range p.lent {
		p.g.store.costs.give(t.seams)
		p.g.store.kinds.give(t.kind)
	}
	p.g.free()
}

// solve is Solve for a span that was checked.
func (p *problem) solve() (Layout, error) {
	if p.store = p.g.store; p.store == nil {
		p.store = stores.Get().(*store)
		defer stores.Put(p.store)
	}
	aim := p.aim
	p.fell = false
	p.findWays()
	// 1. Mostly all pins can be kept and no must is broken: then there is no less to find.
	kept, unbroken, known := p.keepByRows()
	if unbroken || !known {
		if found, ok, err := p.best(aim, true, least{}, kept); err != nil {
			return Layout{}, err
		} else if ok {
			return p.layout(found, kept), nil
		}
		if unbroken {
			panic("seam: rows lead where no layout does")
		}
		p.fell = true
		if kept, unbroken, known = p.keepByRows(); unbroken {
			return p.bestOf(kept, least{})
		}
	}
	// 2. Else what the musts cannot do without is found first: it says which pins fall.
	kept, low, err := p.keep(known)
	if err != nil {
		return Layout{}, err
	}
	return p.bestOf(kept, low)
}

// bestOf finds the best of the layouts that keep some pins and break no more than the least of the musts.
func (p *problem) bestOf(kept []int, low least) (Layout, error) {
	found, ok, err := p.best(p.aim, low == least{}, low, kept)
	if err != nil {
		return Layout{}, err
	}
	if !ok {
		panic("seam: the least of the musts is met by no layout")
	}
	return p.layout(found, kept), nil
}

// findWays finds how each pin can be kept.
func (p *problem) findWays() {
	p.ways, p.can = nil, nil
	for i, pin := range p.s.Pins {
		ways := p.g.ways(pin)
		p.ways = append(p.ways, ways)
		if len(ways) > 0 {
			p.can = append(p.can, i)
		}
	}
}

// check says what is wrong with a span.
func (s *Span) check(aim Aim) error {
	switch {
	case aim < Steady || aim > Even:
		return fmt.Errorf("no aim %d", aim)
	case s.Snap <= 0:
		return fmt.Errorf("snap %d is not above nought", s.Snap)
	case s.Foot <= 0:
		return fmt.Errorf("foot %d is not above nought", s.Foot)
	case s.Seen == nil:
		return fmt.Errorf("no seen heights")
	case s.round() && s.Period <= 0:
		return fmt.Errorf("closed run %d long", s.Period)
	case !s.Closed && s.R <= s.L:
		return fmt.Errorf("span from %d to %d", s.L, s.R)
	case s.NetWidth() <= 0:
		return fmt.Errorf("net width %d is not above nought", s.NetWidth())
	}
	return nil
}

// least is the least of the musts.
type least struct{ bends, edges int64 }

func (a least) over(b least) bool {
	return a.bends > b.bends || a.bends == b.bends && a.edges > b.edges
}

// problem is a span being solved.
type problem struct {
	s     *Span
	g     *grid
	aim   Aim
	store *store
	ways  [][]way // of each pin
	can   []int   // pins that can be kept at all
	// tables are kept where the span is to be solved again, else nil.
	tables map[tableKey]*table
	// counting says that only the number of sheets is asked; other is a table for that of the same lines, or nil.
	counting bool
	other    *table
	lent     []*table   // whose lists are a store's
	rows     *rows      // with no wish taken, where the span is to be solved again
	bare     *bareMusts // the same
	fell     bool       // that all pins cannot be kept without a broken must
}

// tableKey names a table of a problem.
type tableKey struct {
	aim    Aim
	strict bool
	low    least
	pins   int
}

// table returns the table for an aim, the one of the solving before where there is one.
func (p *problem) table(aim Aim, strict bool, low least) (*table, error) {
	key := tableKey{aim, strict, low, len(p.s.Pins)}
	if t := p.tables[key]; t != nil {
		t.gists.over = false
		return t, nil
	}
	if p.counting && aim != musts {
		t := &table{g: p.g, s: p.s, aim: aim, strict: strict, counting: true, kept: &keptLanes{}}
		err := t.fill(low, p.other)
		p.other = t
		return t, err
	}
	t, err := newTable(p.g, aim, strict, low)
	if p.g.store != nil {
		p.lent = append(p.lent, t)
	}
	if err == nil && p.tables != nil {
		t.kept, t.past = &keptLanes{}, &past{place: -1}
		p.tables[key] = t
	}
	return t, err
}

// best finds the best layout that keeps some pins: with strict one that breaks no must, else one whose musts add up
// to low, or for the aim musts to whatever they must.
func (p *problem) best(aim Aim, strict bool, low least, pins []int) (answer, bool, error) {
	t, err := p.table(aim, strict, low)
	if err != nil {
		return answer{}, false, err
	}
	under := never
	if !strict && aim != musts {
		under = t.beyond(low)
	}
	best, found := p.bestBy(t, under, pins)
	if aim == musts && !strict {
		bends, edges := t.mustsOf(best.total)
		best.musts = least{bends * t.unit, edges * t.unit}
	}
	return best, found, nil
}

// beyond is what no layout costs whose musts are no worse than low, and every other does.
func (t *table) beyond(low least) cost {
	return t.of(itemBends, low.bends/t.unit).plus(t.of(itemEdges, low.edges/t.unit+1))
}

// bestBy finds the best layout by a table that keeps some pins and costs less than under.
func (p *problem) bestBy(t *table, under cost, pins []int) (best answer, found bool) {
	pins = p.choices(pins)
	p.choose(pins, way{closings: p.g.closings()}, func(chosen way) {
		b := newBounds(p.g, chosen.wishes)
		got, ok := t.barring(chosen.wishes).solve(b, chosen.closings, under, p.store)
		if ok && (!found || p.before(t.aim, got, best)) {
			best, found = got, true
		}
	})
	return best, found
}

// choices leaves out pins that are the same as one before, where that can be kept in several ways: what keeps the one keeps both.
func (p *problem) choices(pins []int) []int {
	known := map[Pin]bool{}
	again := func(i int) bool {
		pin := p.s.Pins[i]
		was := known[pin]
		known[pin] = len(p.ways[i]) > 1
		return was
	}
	if !slices.ContainsFunc(pins, again) {
		return pins
	}
	clear(known)
	return slices.DeleteFunc(slices.Clone(pins), again)
}

// choose calls do for each choice of one way for each pin.
func (p *problem) choose(pins []int, chosen way, do func(way)) {
	if len(pins) == 0 {
		do(chosen)
		return
	}
	for _, v := range p.ways[pins[0]] {
		next := way{wishes: append(slices.Clone(chosen.wishes), v.wishes...), closings: chosen.closings}
		if v.closings != nil {
			next.closings = []int{}
			for _, c := range v.closings {
				if chosen.closings == nil || slices.Contains(chosen.closings, c) {
					next.closings = append(next.closings, c)
				}
			}
			slices.Sort(next.closings)
			next.closings = slices.Compact(next.closings)
		}
		p.choose(pins[1:], next, do)
	}
}

// barring returns the table with the lines that wishes bar taken out.
func (t *table) barring(wishes []wish) *table {
	var bar []int
	for _, v := range wishes {
		bar = append(bar, v.bar...)
	}
	if len(bar) == 0 {
		return t
	}
	out := *t
	out.kept = nil
	out.seams = slices.Clone(t.seams)
	for _, i := range bar {
		if !t.s.Closed {
			out.seams[i] = never
			continue
		}
		i = (i%t.g.lines + t.g.lines) % t.g.lines
		for ; i < len(out.seams); i += t.g.lines {
			out.seams[i] = never
		}
	}
	return &out
}

func (t *table) solve(b bounds, closings []int, under cost, s *store) (answer, bool) {
	if t.s.Closed && len(t.s.NotFirst)+len(t.s.NotLast) > 0 {
		return t.endsApart(b, closings, under, s)
	}
	if t.s.Closed {
		return t.closed(b, closings, under, s)
	}
	if t.aim == musts && t.strict && len(t.s.NotFirst)+len(t.s.NotLast) == 0 { // opens knows nothing of single seams
		return answer{}, t.opens(b, s)
	}
	found, ok := t.open(b, s)
	return found, ok && found.total.less(under)
}

// before says whether a goes before b, where pins can be kept in more ways than one.
func (p *problem) before(aim Aim, a, b answer) bool {
	if aim == musts {
		return a.total.less(b.total)
	}
	aSeams, aClosing := p.seams(a.lines)
	bSeams, bClosing := p.seams(b.lines)
	x, y := p.s.Score(aSeams, aClosing), p.s.Score(bSeams, bClosing)
	if c := x.Compare(y, aim); c != 0 {
		return c < 0
	}
	return slices.Compare(a.lines, b.lines) > 0
}

// seams turns lines into places of seams, ascending.
func (p *problem) seams(lines []int) (seams []int64, closing int) {
	if !p.s.Closed {
		for _, line := range lines {
			seams = append(seams, p.g.at(line))
		}
		return seams, -1
	}
	again := len(lines) // the first line of the next turn
	for again > 0 && lines[again-1] >= p.g.lines {
		again--
	}
	for _, line := range lines[again:] {
		seams = append(seams, p.g.at(line-p.g.lines))
	}
	closing = len(seams)
	for _, line := range lines[:again] {
		seams = append(seams, p.g.at(line))
	}
	return seams, closing
}

// layout turns an answer into a layout.
func (p *problem) layout(found answer, kept []int) Layout {
	seams, closing := p.seams(found.lines)
	out := Layout{Seams: seams, Closing: closing}
	for i := range p.s.Pins {
		if !slices.Contains(kept, i) {
			out.Dropped = append(out.Dropped, i)
		}
	}
	out.Score = p.s.Score(seams, closing)
	return out
}
