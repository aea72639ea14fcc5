package seam

// Keeper finds whether pins can be kept in a span, which the musts alone decide. What breaks them it looks at once. A Keeper
// serves one caller at a time.
type Keeper struct {
	p     *problem
	rows  *rows // nil where they do not serve, and where no layout does without a broken must
	known bool  // that the musts have been asked without pins: low and none are what came of it
	low   least
	none  error
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
		v.rows = nil
	}
	return v, nil
}

// way is the one way to keep a pin by rows; false where there are several, or none.
func (v *Keeper) way(pin Pin) (way, bool) {
	if v.rows == nil {
		return way{}, false
	}
	ways := v.p.g.ways(pin)
	if len(ways) != 1 {
		return way{}, false
	}
	return v.p.g.asRows(ways[0]), true
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
	p := v.p
	p.s.Pins = pins
	p.store = stores.Get().(*store)
	defer stores.Put(p.store)
	p.findWays()
	all := len(p.can) == len(pins)
	if _, ok, err := p.best(musts, true, least{}, p.can); ok || err != nil {
		return all, err
	}
	if !v.known {
		var ok bool
		if v.low, ok, v.none = p.musts(nil, false); v.none == nil && !ok {
			v.none = p.noLayout()
		}
		v.known = true
	}
	if v.none != nil || !all || (v.low == least{}) {
		return false, v.none
	}
	return p.meets(p.can, v.low)
}

// Against returns the first of some pins with which another one cannot be kept, each by itself with that one; -1 where there is
// none.
//
// Errors: as Solve's.
func (v *Keeper) Against(pin Pin, others []Pin) (int, error) {
	w, ok := v.way(pin)
	if !ok || pin.Put == PutClose {
		return v.against(pin, others)
	}
	begun := v.rows.trying(w)
	defer func() { v.rows.undo(begun) }()
	v.rows.take(w)
	for i, other := range others {
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
		if kept, err := v.Keeps(other, pin); err != nil || !kept {
			return i, err
		}
	}
	return -1, nil
}

// Without reports whether a pin could be kept if one of the corners were not there, or one of the openings.
//
// Errors: as Solve's.
func (v *Keeper) Without(pin Pin, what Cause, index int) (bool, error) {
	s := v.p.s
	if w, ok := v.way(pin); ok {
		return v.rows.meetsWithout(w, v.p.g.frees(what, index)), nil
	}
	less := *s
	if what == Return {
		less.Corners = append(append([]Strip{}, s.Corners[:index]...), s.Corners[index+1:]...)
	} else {
		less.Openings = append(append([]Opening{}, s.Openings[:index]...), s.Openings[index+1:]...)
	}
	k, err := NewKeeper(less)
	if err != nil {
		return false, err
	}
	return k.Keeps(pin)
}
