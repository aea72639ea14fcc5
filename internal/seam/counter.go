package seam

// Counter finds how many sheets a span takes as its sheets come of other widths. What stands in the way of its lines it looks
// at once, and of what a layout is judged by it asks no more than what says how many sheets the best one has. A Counter
// serves one caller at a time.
type Counter struct {
	g     *grid
	aim   Aim
	other *table
}

// NewCounter makes a Counter of a span. The span's lists must stay as they are.
//
// Errors: as Solve's of a span that says nothing sensible.
func NewCounter(span Span, aim Aim) (*Counter, error) {
	if err := span.check(aim); err != nil {
		return nil, err
	}
	if aim == Even {
		aim = Fewest // both count sheets next after the closing seam
	}
	return &Counter{g: newGrid(&span), aim: aim}, nil
}

// Sheets returns how many sheets the best layout has with sheets of a gross width; nought where that breaks a must.
//
// Errors: as Solve's.
func (v *Counter) Sheets(gross int64) (int64, error) {
	span, g := *v.g.s, *v.g
	span.Gross = gross
	if err := span.check(v.aim); err != nil {
		return 0, err
	}
	g.s, g.net = &span, int(span.NetWidth()/span.Snap)
	p := &problem{s: &span, g: &g, aim: v.aim, counting: true, other: v.other, store: stores.Get().(*store)}
	defer stores.Put(p.store)
	found, ok, err := p.count()
	v.other = p.other
	if !ok || err != nil {
		return 0, err
	}
	if span.Closed {
		return int64(len(found.lines)), nil
	}
	return int64(len(found.lines)) + 1, nil
}

// count finds a layout with as many sheets as the best one; false where the best one breaks a must.
func (p *problem) count() (answer, bool, error) {
	p.findWays()
	kept, unbroken, known := p.keepByRows()
	if unbroken || !known {
		if found, ok, err := p.best(p.aim, true, least{}, kept); ok || err != nil {
			return found, ok, err
		}
	}
	kept, low, err := p.keep(known)
	if err != nil || low != (least{}) {
		return answer{}, false, err
	}
	return p.best(p.aim, true, low, kept)
}
