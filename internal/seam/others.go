package seam

import "slices"

// Others gives the layouts of a span one after another, the best first, each another than all before it: its closing seam,
// the end of its first sheet or, in an open span, the beginning of its last one stands further than a distance from where
// theirs does. In a closed span these are the closing seam and the first one after it.
//
// All of them keep the pins that the best keeps, and break no more musts than it.
type Others struct {
	span  Span // with those pins
	aim   Aim
	apart int64
	known []Layout
	open  []corner // what is left to look at, but for what the last known one leaves of its corner
	last  corner
}

// corner is what of all layouts is left by some seams that may not stand everywhere, and the best of it.
type corner struct {
	Apart
	best Layout
}

// NewOthers readies what is other than the best layout of a span, as Solve finds it; apart is how far off a seam stands
// elsewhere.
func NewOthers(span Span, aim Aim, best Layout, apart int64) *Others {
	o := &Others{span: span, aim: aim, apart: apart, known: []Layout{best}, last: corner{span.Apart, best}}
	o.span.Pins = nil
	for i, pin := range span.Pins {
		if !slices.Contains(best.Dropped, i) {
			o.span.Pins = append(o.span.Pins, pin)
		}
	}
	return o
}

// Next returns the best layout that is another than the best and than those that Next returned before; false where there is
// none.
func (o *Others) Next() (Layout, bool) {
	// All that is left lies in corners: a layout taken leaves of its own corner what closes, begins or ends elsewhere, so that
	// the best of all corners is the best there is. It may look like a known one, when it is worse than that: then its corner
	// is parted by that one.
	o.part(o.last, o.known[len(o.known)-1])
	for len(o.open) > 0 {
		at := 0
		for i := range o.open {
			if o.before(o.open[i].best, o.open[at].best) {
				at = i
			}
		}
		next := o.open[at]
		o.open = slices.Delete(o.open, at, at+1)
		like := slices.IndexFunc(o.known, func(l Layout) bool { return o.alike(l, next.best) })
		if like < 0 {
			o.known, o.last = append(o.known, next.best), next
			return next.best, true
		}
		o.part(next, o.known[like])
	}
	o.last = corner{}
	return Layout{}, false
}

// part opens what a layout leaves of a corner: each part holds what differs from it in one seam.
func (o *Others) part(c corner, by Layout) {
	if c.best.Seams == nil && c.best.Score == (Score{}) {
		return // Next was asked for more than there is
	}
	near := func(at int64) Strip { return Strip{at - o.apart, at + o.apart} }
	with := func(list []Strip, more ...Strip) []Strip { return append(slices.Clone(list), more...) }
	first := near(o.span.First(by))
	if !o.span.Closed {
		o.try(Apart{NotFirst: with(c.NotFirst, first), NotLast: c.NotLast})
		o.try(Apart{NotFirst: c.NotFirst, NotLast: with(c.NotLast, near(o.span.Last(by)))})
		return
	}
	closing := near(by.Seams[by.Closing])
	o.try(Apart{NotClosing: with(c.NotClosing, closing), NotFirst: c.NotFirst, NotLast: c.NotLast})
	// What closes elsewhere is in the other part: here only the places about the closing seam are left to try.
	here := with(c.NotClosing)
	if rest := (Strip{closing.To + 1, closing.From - 1 + o.span.Period}); rest.From <= rest.To {
		here = append(here, rest)
	}
	o.try(Apart{NotClosing: here, NotFirst: with(c.NotFirst, first), NotLast: c.NotLast})
}

// try opens a corner that holds a layout.
func (o *Others) try(a Apart) {
	span := o.span
	span.Apart = a
	if best, ok := solveAsGood(span, o.aim, o.known[0]); ok {
		o.open = append(o.open, corner{a, best})
	}
}

// solveAsGood finds the best layout of a span that keeps all its pins and breaks no more musts than a known one, which
// breaks the least there is.
func solveAsGood(span Span, aim Aim, known Layout) (Layout, bool) {
	if span.check(aim) != nil {
		return Layout{}, false
	}
	p := &problem{s: &span, g: newGrid(&span), aim: aim, store: stores.Get().(*store)}
	defer stores.Put(p.store)
	var pins []int
	for i, pin := range span.Pins {
		p.ways = append(p.ways, p.g.ways(pin))
		pins = append(pins, i)
	}
	low := least{known.Score.Bends, known.Score.Edges}
	found, ok, err := p.best(aim, low == least{}, low, pins)
	if err != nil || !ok {
		return Layout{}, false // the costs of a part of a span fit where those of all of it did
	}
	out := p.layout(found, pins)
	out.Dropped = slices.Clone(known.Dropped)
	return out, true
}

// alike says whether nobody would tell two layouts apart.
func (o *Others) alike(a, b Layout) bool {
	s := &o.span
	if s.Closed {
		return s.way(a.Seams[a.Closing], b.Seams[b.Closing]) <= o.apart && s.way(s.First(a), s.First(b)) <= o.apart
	}
	near := func(x, y int64) bool { return max(x-y, y-x) <= o.apart }
	return near(s.First(a), s.First(b)) && near(s.Last(a), s.Last(b))
}

// before says whether one layout goes before another.
func (o *Others) before(a, b Layout) bool {
	if c := a.Score.Compare(b.Score, o.aim); c != 0 {
		return c < 0
	}
	x, _ := o.span.lay(a.Seams, a.Closing)
	y, _ := o.span.lay(b.Seams, b.Closing)
	return slices.Compare(x, y) > 0
}

// Plus returns the sum of two scores.
func (a Score) Plus(b Score) Score {
	a.add(&b)
	return a
}
