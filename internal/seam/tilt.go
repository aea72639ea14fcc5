package seam

// tilt is a pull that rises by as much for each line, to the left or to the right: it holds back a way that ends elsewhere than
// it began where each line that it is longer or shorter by gains it the same. Nil where no such pull is of use.
func (t *table) tilt(places []int, sheets int, left bool) []cost {
	if len(places) < 2 {
		return nil
	}
	what, rise := itemShould, int64(0)
	switch {
	case t.aim == Even:
		what, rise = itemUnevenness, t.evenRise(sheets)
	case t.prefer > 0: // a sheet under prefer_width gains what it lacks
		rise = t.step
	}
	if rise == 0 {
		return nil
	}
	pull := make([]cost, len(places))
	for i, c := range places {
		far := c - places[0]
		if left {
			far = places[len(places)-1] - c
		}
		pull[i] = t.of(what, rise*int64(far))
	}
	return pull
}

// evenRise is what a line more costs at most or saves at least a way of so many sheets that are as alike as can be: all are one
// of two widths a line apart, and it makes a sheet of the one width one of the other.
func (t *table) evenRise(sheets int) int64 {
	narrow := t.s.whole() / t.unit / (int64(max(1, sheets)) * t.step) * t.step
	rise := t.step * (t.step + 2*(narrow-t.mean/t.unit))
	return max(rise, -rise)
}

// lowest returns the least bound of a group.
func (g *group) lowest() cost {
	low := never
	for _, x := range g.least {
		low = lesser(low, x)
	}
	return low
}
