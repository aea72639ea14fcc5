package seam

// jumps says whether narrow sheets count.
func (t *table) jumps() bool { return t.aim == Steady || t.aim == Fewest && !t.counting }

// anyOf says that of the layouts that cost the least any one will do.
func (t *table) anyOf() bool { return t.aim == musts || t.counting }

// slivers says whether slivers at raw ends count, and before jumps what shows of those of narrow sheets.
func (t *table) slivers() bool { return t.jumps() && t.s.raw() && !t.counting }

// sliver returns what a sheet between a raw end and a line costs by being a sliver.
func (t *table) sliver(width int64, line int) cost {
	lack := lacks(t.s.sliverWidth(), width)
	if lack == 0 || !t.slivers() || t.g.seen[line] <= t.s.ShortSeam {
		return cost{}
	}
	return t.of(itemSliver, lack/t.unit)
}

// sheet returns what a sheet of a width costs but for its jump.
func (t *table) sheet(width int64) cost {
	if width <= 0 || t.strict && width < t.least {
		return never
	}
	x := t.one
	if width < t.prefer {
		x = x.plus(t.of(itemShould, (t.prefer-width)/t.unit))
	}
	if width < t.least {
		x = x.plus(t.of(itemBends, (t.least-width)/t.unit))
	}
	if t.at[itemUnevenness] >= 0 {
		x = x.plus(t.square(itemUnevenness, squareOf((width-t.mean)/t.unit)))
	}
	return x
}

// widths packs what sheets of whole steps cost, and those that hold the short step of a closed span.
func (t *table) widths() {
	for cross := range t.sheets {
		t.sheets[cross] = make([]cost, t.g.net+1)
		for k := range t.sheets[cross] {
			t.sheets[cross][k] = t.sheet(int64(k)*t.s.Snap - int64(cross)*t.g.short)
		}
	}
}

// crosses says, as an index of sheets, whether the sheet from line a to line b holds the short step.
func (t *table) crosses(a, b int) int {
	turn := t.g.lines
	if t.reversed {
		a, b = 2*turn-b, 2*turn-a
	}
	if a < turn && b >= turn && t.s.Closed {
		return 1
	}
	return 0
}

// steps returns the least number of steps that is no less than a width.
func (t *table) steps(width int64) int { return int((width + t.s.Snap - 1) / t.s.Snap) }

// leftOf returns how far it is from a line to one right of all, in units.
func (t *table) leftOf(line int) int64 {
	left := int64(t.g.size()-line) * t.step
	if t.s.Closed && (line < t.g.lines || t.reversed && line <= t.g.lines) {
		left -= t.short
	}
	return left
}

// ramp falls as a line goes right, by as much as a sheet that ends there lacks less of prefer_width. What counts after
// the sum of shoulds is short enough to share its word.
func (t *table) ramp(left int64) cost {
	at := uint(t.at[itemShould])
	return cost{b: uint64(left) >> (64 - at), c: uint64(left) << at}
}

// steep is ramp for widths that lack of least_width as well.
func (t *table) steep(left int64) cost {
	x := t.of(itemBends, left)
	if t.prefer > 0 {
		x = x.plus(t.ramp(left))
	}
	return x
}
