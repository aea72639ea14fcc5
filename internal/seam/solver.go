package seam

import "slices"

// Solver solves a span again and again while its pins and the aim change, as when a pin is dragged. What the lines cost is
// found out once. A Solver serves one caller at a time.
type Solver struct {
	p       *problem
	answers map[Aim]answered
}

// answered is what was answered for some pins.
type answered struct {
	pins   []Pin
	layout Layout
}

// NewSolver makes a Solver of a span. The span's lists must stay as they are.
//
// Errors: a span that says nothing sensible.
func NewSolver(span Span) (*Solver, error) {
	if err := span.check(Steady); err != nil {
		return nil, err
	}
	p := &problem{s: &span, g: newGrid(&span), tables: map[tableKey]*table{}}
	return &Solver{p: p, answers: map[Aim]answered{}}, nil
}

// Solve finds the best layout of the span with these pins in place of its own: what the function Solve finds.
//
// Errors: no aim, and a span that no layout can cover.
func (v *Solver) Solve(pins []Pin, aim Aim) (Layout, error) {
	if err := v.p.s.check(aim); err != nil {
		return Layout{}, err
	}
	if known, ok := v.answers[aim]; ok && slices.Equal(known.pins, pins) {
		return known.layout.clone(), nil
	}
	v.p.s.Pins, v.p.aim = slices.Clone(pins), aim
	found, err := v.p.solve()
	if err == nil {
		v.answers[aim] = answered{v.p.s.Pins, found.clone()}
	}
	return found, err
}

// clone returns a layout whose lists are its own.
func (l Layout) clone() Layout {
	l.Seams, l.Dropped = slices.Clone(l.Seams), slices.Clone(l.Dropped)
	return l
}
