package seam

// Keeper finds whether pins can be kept in a span, which the musts alone decide. What breaks them it looks at once. A Keeper
// serves one caller at a time.
type Keeper struct{ p *problem }

// NewKeeper makes a Keeper of a span. The span's lists must stay as they are.
//
// Errors: a span that says nothing sensible.
func NewKeeper(span Span) (*Keeper, error) {
	if err := span.check(Steady); err != nil {
		return nil, err
	}
	return &Keeper{&problem{s: &span, g: newBareGrid(&span), tables: map[tableKey]*table{}}}, nil
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
	kept, _, err := p.keep()
	return len(kept) == len(pins), err
}
