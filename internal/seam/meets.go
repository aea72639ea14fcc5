package seam

// Meets reports whether a span can be laid out without breaking a must. Its pins are left aside.
//
// Errors: as Solve's.
func Meets(span Span) (bool, error) {
	span.Pins = nil
	if err := span.check(Steady); err != nil {
		return false, err
	}
	p := &problem{s: &span, g: newGrid(&span), aim: Steady, store: stores.Get().(*store)}
	defer stores.Put(p.store)
	_, ok, err := p.best(Steady, true, least{}, nil)
	return ok, err
}
