package seam

import (
	"fmt"
	"slices"
)

// keep finds which pins can be kept, and the least of the musts; broken says that it is known not to be nought.
func (p *problem) keep(broken bool) (kept []int, low least, err error) {
	// That all pins cannot be kept without a broken must is known by now.
	low, ok, err := p.mustsBare(broken || len(p.can) == 0)
	if err != nil {
		return nil, low, err
	}
	if !ok {
		return nil, low, p.noLayout()
	}
	if len(p.can) == 0 {
		return nil, low, nil
	}
	// 1. All pins at once, which is what mostly can be had; 2. in file order, each with those kept before it.
	if (low != least{}) {
		if ok, err := p.meets(p.can, low); err != nil || ok {
			return p.can, low, err
		}
	}
	if r := p.dueRows(low); r != nil {
		return p.keepBy(r), low, nil
	}
	kept, err = p.keepInOrder(low)
	return kept, low, err
}

// dueRows finds the rows by which pins can be kept where each layout breaks a must; nil where they do not serve, or pins are few.
func (p *problem) dueRows(low least) *rows {
	if (low == least{}) || len(p.can) < manyPins || !p.oneWay() {
		return nil
	}
	return p.newDues(low)
}

// keepInOrder finds which pins can be kept, each with those kept before it. Where some can be kept together each of them can with
// those before it: so many are asked of at once, the more the more were kept of late, and where they cannot be kept half as many.
func (p *problem) keepInOrder(low least) (kept []int, err error) {
	if p.tables == nil { // the costs of lines are the same for all these questions
		p.tables = map[tableKey]*table{}
		defer func() { p.tables = nil }()
	}
	late := 0 // kept since the last one that fell
	for at, row := 0, 1; at < len(p.can); {
		row = min(row, len(p.can)-at)
		with := append(slices.Clone(kept), p.can[at:at+row]...)
		switch ok, err := p.meets(with, low); {
		case err != nil:
			return nil, err
		case ok:
			at, late = at+row, late+row
			kept, row = with, max(1, late/2)
		case row == 1:
			at, late = at+1, 0 // it falls
		default:
			row /= 2
		}
	}
	return kept, nil
}

// bareMusts is the least of the musts with no pin kept, as musts gave it.
type bareMusts struct {
	low least
	ok  bool
}

// mustsBare is musts with no pin kept, which stays what it is where the span is to be solved again.
func (p *problem) mustsBare(broken bool) (least, bool, error) {
	if p.bare != nil {
		return p.bare.low, p.bare.ok, nil
	}
	low, ok, err := p.musts(nil, broken)
	if err == nil && p.tables != nil {
		p.bare = &bareMusts{low, ok}
	}
	return low, ok, err
}

// noLayout is the error of a span that no sheets can cover.
func (p *problem) noLayout() error { return fmt.Errorf("no layout from %d to %d", p.s.L, p.s.R) }

// meets says whether some pins can be kept with the musts no worse than low, the least without them.
func (p *problem) meets(pins []int, low least) (bool, error) {
	if (low == least{}) {
		_, ok, err := p.best(musts, true, low, pins)
		return ok, err
	}
	t, err := p.table(musts, false, least{})
	if err != nil {
		return false, err
	}
	_, ok := p.bestBy(t, t.beyond(low), pins)
	return ok, nil
}

// musts finds the least of the musts with some pins kept; broken says that it is known not to be nought.
func (p *problem) musts(pins []int, broken bool) (least, bool, error) {
	// 1. Whether nothing need be broken, over the few lines that break nothing; 2. how little, over all lines.
	if !broken {
		if _, ok, err := p.best(musts, true, least{}, pins); ok || err != nil {
			return least{}, ok, err
		}
	}
	found, ok, err := p.best(musts, false, least{}, pins)
	if !ok || err != nil {
		return least{}, false, err
	}
	return found.musts, true, nil
}
