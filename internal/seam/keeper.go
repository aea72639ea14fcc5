package seam

// Keeper finds whether pins can be kept in a span, which the musts alone decide. What breaks them it looks at once. A Keeper
// serves one caller at a time.
type Keeper struct {
	p     *problem
	rows  *rows // nil where they do not serve; with dues where no layout does without a broken must, once they are asked
	bound bool  // rows say that no layout does without a broken must
	asked bool  // that rows with dues have been looked for
	known bool  // that the musts have been asked without pins: low and none are what came of it
	low   least
	none  error
	ways  map[Pin]way     // by rows
	freed map[object]free // what is without one object
	left  *Allowance      // nil where there is no end to it
}

// Allowance is how much may still be asked, of one Keeper or of several: lines that questions go over, by a count that is the same
// whatever is known already. A question once begun is answered; none should be put once nothing is left.
type Allowance int64

// What a question takes where sweeps answer it, in times that rows would go over all lines meanwhile: in a closed span it has to be
// found as well which seam closes.
const (
	sweepsOpen   = 12
	sweepsClosed = 40
)

// Spent reports whether nothing is left.
func (a *Allowance) Spent() bool { return a != nil && *a <= 0 }

func (a *Allowance) take(lines int) {
	if a != nil {
		*a -= Allowance(lines)
	}
}

// From says what the Keeper's questions are taken from, until another is given.
func (v *Keeper) From(a *Allowance) { v.left = a }

// sweeps takes what a question takes that sweeps answer.
func (v *Keeper) sweeps() {
	times := sweepsOpen
	if v.p.s.Closed {
		times = sweepsClosed
	}
	v.left.take(times * v.p.g.lines)
}

// object is a corner or an opening of a span.
type object struct {
	what  Cause
	index int
}

// free is the lines that break a must of one object alone, and where it changes rows that they are free.
type free struct {
	lines   []int
	touched []bool
}

// NewKeeper makes a Keeper of a span. The span's lists must stay as they are.
//
// Errors: a span that says nothing sensible.
func NewKeeper(span Span) (*Keeper, error) {
	if err := span.check(Steady); err != nil {
		return nil, err
	}
	v := &Keeper{p: &problem{s: &span, g: newBareGrid(&span), tables: map[tableKey]*table{}}}
	if v.rows = newRows(v.p.g, true); v.rows != nil && !v.rows.any() {
		v.rows, v.bound = nil, true
	}
	return v, nil
}

// way is the one way to keep a pin by rows; false where there are several, or none.
func (v *Keeper) way(pin Pin) (way, bool) {
	if v.bound && !v.asked {
		v.askDues()
	}
	if v.rows == nil {
		return way{}, false
	}
	known, ok := v.ways[pin]
	if !ok {
		ways := v.p.g.ways(pin)
		if len(ways) != 1 {
			return way{}, false
		}
		if v.ways == nil {
			v.ways = map[Pin]way{}
		}
		known = v.p.g.asRows(ways[0])
		v.ways[pin] = known
	}
	return known, true
}

// askDues looks for rows that break no more than need be.
func (v *Keeper) askDues() {
	v.asked = true
	v.p.store = stores.Get().(*store)
	defer stores.Put(v.p.store)
	if low, err := v.least(); err == nil && (low != least{}) {
		v.rows = v.p.newDues(low)
	}
}

// without finds what is without one object.
func (v *Keeper) without(x object) free {
	known, ok := v.freed[x]
	if !ok {
		if v.freed == nil {
			v.freed = map[object]free{}
		}
		known.lines = v.p.g.frees(x.what, x.index)
		known.touched = v.rows.touches(known.lines)
		v.freed[x] = known
	}
	return known
}

// Keeps reports whether the best layout of the span with these pins in place of its own keeps all of them.
//
// Errors: as Solve's.
func (v *Keeper) Keeps(pins ...Pin) (bool, error) {
	if len(pins) == 1 {
		if w, ok := v.way(pins[0]); ok {
			return v.rows.meets(w), nil
		}
	}
	v.sweeps()
	p := v.p
	p.s.Pins = pins
	p.store = stores.Get().(*store)
	defer stores.Put(p.store)
	p.findWays()
	all := len(p.can) == len(pins)
	if !v.bound {
		if _, ok, err := p.best(musts, true, least{}, p.can); ok || err != nil {
			return all, err
		}
	}
	low, err := v.least()
	if err != nil || !all || (low == least{}) {
		return false, err
	}
	return p.meets(p.can, low)
}

// least is the least of the musts without pins; the problem has its store.
func (v *Keeper) least() (least, error) {
	if !v.known {
		var ok bool
		if v.low, ok, v.none = v.p.musts(nil, v.bound); v.none == nil && !ok {
			v.none = v.p.noLayout()
		}
		v.known = true
	}
	return v.low, v.none
}

// atMost reports whether a pin can be kept with musts no worse than low.
func (v *Keeper) atMost(pin Pin, low least) (bool, error) {
	p := v.p
	p.s.Pins = []Pin{pin}
	p.store = stores.Get().(*store)
	defer stores.Put(p.store)
	if p.findWays(); len(p.can) == 0 {
		return false, nil
	}
	return p.meets(p.can, low)
}

// Against returns the first of some pins with which another one cannot be kept, each by itself with that one; -1 where there is
// none, or where the allowance was spent before one was found.
//
// Errors: as Solve's.
func (v *Keeper) Against(pin Pin, others []Pin) (int, error) {
	w, ok := v.way(pin)
	if !ok || pin.Put == PutClose {
		return v.against(pin, others)
	}
	begun := v.rows.trying(w)
	defer func() { v.rows.undo(begun) }()
	gone := v.rows.gone
	v.rows.take(w)
	v.left.take(v.rows.gone - gone + len(others))
	for i, other := range others {
		if v.left.Spent() {
			break
		}
		kept := false
		if x, ok := v.way(other); ok {
			kept = v.rows.meets(x)
		} else {
			v.rows.undo(begun)
			both, err := v.Keeps(other, pin)
			if err != nil {
				return -1, err
			}
			kept = both
			begun = v.rows.trying(w)
			v.rows.take(w)
		}
		if !kept {
			return i, nil
		}
	}
	return -1, nil
}

// against asks of one pin after the other.
func (v *Keeper) against(pin Pin, others []Pin) (int, error) {
	for i, other := range others {
		if v.left.Spent() {
			break
		}
		if kept, err := v.Keeps(other, pin); err != nil || !kept {
			return i, err
		}
	}
	return -1, nil
}

// Without reports whether a pin that cannot be kept could be if one of the corners were not there, or one of the openings.
//
// Errors: as Solve's.
func (v *Keeper) Without(pin Pin, what Cause, index int) (bool, error) {
	s := v.p.s
	if w, ok := v.way(pin); ok && !v.bound {
		x := v.without(object{what, index})
		if !v.rows.near(w, x.touched) {
			return false, nil
		}
		gone := v.rows.gone
		kept := v.rows.meetsWithout(w, x.lines)
		v.left.take(v.rows.gone - gone)
		return kept, nil
	}
	less := *s
	if what == Return {
		less.Corners = append(append([]Strip{}, s.Corners[:index]...), s.Corners[index+1:]...)
	} else {
		less.Openings = append(append([]Opening{}, s.Openings[:index]...), s.Openings[index+1:]...)
	}
	v.sweeps()
	k, err := NewKeeper(less)
	if err != nil {
		return false, err
	}
	// Without an object no more is broken than with it: where the pin would break more even so, that is all there is to know.
	if v.bound && k.bound {
		v.p.store = stores.Get().(*store)
		defer stores.Put(v.p.store)
		low, err := v.least()
		if err != nil {
			return false, err
		}
		if kept, err := k.atMost(pin, low); err != nil || !kept {
			return false, err
		}
	}
	return k.Keeps(pin)
}
