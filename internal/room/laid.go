package room

import "slices"

// The ends from which the sheets of a flitch are laid.
const (
	FromFirst = "first" // the lowest number first
	FromLast  = "last"  // the highest first
)

// Laid are sheet numbers of the flitch, ascending as they come, in the order in which they are laid.
func (f *Flitch) Laid(numbers []int) []int {
	out := slices.Clone(numbers)
	if f.From == FromLast {
		slices.Reverse(out)
	}
	return out
}

// Before reports whether a sheet of the flitch is laid before another one of it.
func (f *Flitch) Before(a, b int) bool {
	if f.From == FromLast {
		return a > b
	}
	return a < b
}

// Falling reports whether all flitches of the room are laid from the highest number down, so that numbers fall from left to right;
// Rising, whether none is. A room without a flitch is numbered up.
func (r *Room) Falling() bool { return len(r.Flitches) > 0 && !r.laid(FromFirst) }

// Rising is explained at Falling.
func (r *Room) Rising() bool { return !r.laid(FromLast) }

// laid reports whether a flitch is laid from an end.
func (r *Room) laid(from string) bool {
	return slices.ContainsFunc(r.Flitches, func(f Flitch) bool { return (f.From == FromLast) == (from == FromLast) })
}

// LaidFrom is the end from which the flitch of a number is laid.
func (r *Room) LaidFrom(flitch string) string {
	for i := range r.Flitches {
		if r.Flitches[i].Number == flitch {
			return r.Flitches[i].From
		}
	}
	return FromFirst
}

// Order is how numbers go in the order of hanging, in words that may stand before "from left to right".
func (r *Room) Order() string {
	switch {
	case r.Rising():
		return "number order"
	case r.Falling():
		return "falling number order"
	}
	return "number order, rising or falling by the flitch,"
}
