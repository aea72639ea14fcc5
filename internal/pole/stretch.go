package pole

import "flitchlay/internal/length"

// stretch is what one strip carries of a pole.
type stretch struct {
	from   L
	joined bool // its left end is where the one before it ends; else what lies between carries nothing, and is left out
}

// stretches part a pole into strips so long. Only what carries a mark is drawn: each strip begins at a whole step from 0 at which it is
// set, from the same 0 as all others, so that no two figures are added and no joint moves the next; one that would begin before the last
// one ends is joined to it.
func (p pole) stretches(long, step L) []stretch {
	var list []stretch
	end := L(0)
	for _, at := range p.places() {
		if len(list) > 0 && at <= end {
			continue
		}
		from := max(floorTo(at-stretchAir, step), floorTo(p.from, step))
		joined := len(list) > 0 && from <= end
		if joined {
			from = end
		}
		list, end = append(list, stretch{from, joined}), from+long
	}
	return list
}

// stretchAir is what a strip keeps before its first mark, so that its own figure has a place there and the name of the mark one too.
const stretchAir = 52 * length.Millimetre

// places are what strips have to carry, from left to right: all marks, and 0.
func (p pole) places() []L {
	var list []L
	zero := p.from <= 0 && p.to >= 0
	for _, m := range p.marks {
		if zero && m.at > 0 {
			list, zero = append(list, 0), false
		}
		list = append(list, m.at)
	}
	if zero {
		list = append(list, 0)
	}
	return list
}

// floorTo is the last whole step at a place or before it.
func floorTo(at, step L) L {
	down := at / step * step
	if down > at {
		down -= step
	}
	return down
}
