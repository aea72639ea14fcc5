package seam

// Keeper finds whether pins can be kept in a span, which the musts alone decide. What breaks them it looks at once. A Keeper
// serves one caller at a time.
type Keeper struct {
	p     *problem
	known bool // that the musts have been asked without pins: low and none are what came of it
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
	return &Keeper{p: &problem{s: &span, g: newBareGrid(&span), tables: map[tableKey]*table{}}}, nil
}

// Keeps reports whether the best layout of the span with these pins in place of its own keeps all of them.
//
// Errors: as Solve's.
func (v *Keeper) Keeps(pins ...Pin) (bool, error) {
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
