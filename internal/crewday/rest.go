package crewday

import (
	"slices"

	"flitchlay/internal/face"
)

// What of a room hangs already, and where the work goes on.

// SomeHang reports whether a sheet hangs already.
func (c *Set) SomeHang() bool {
	for i := range c.Count.Cuts {
		if c.Count.Cuts[i].Hung {
			return true
		}
	}
	return false
}

// hungOf are the numbers of the sheets of a flitch that hang.
func (c *Set) hungOf(flitch string) []int {
	var list []int
	for i := range c.Count.Cuts {
		if x := &c.Count.Cuts[i]; x.Hung && x.Flitch == flitch {
			list = append(list, x.Number)
		}
	}
	slices.Sort(list)
	return list
}

// gapsOf are the numbers of the sheets of a flitch that an opening takes whole.
func (c *Set) gapsOf(flitch string) []int {
	for i := range c.Count.Flitches {
		if f := &c.Count.Flitches[i]; f.Number == flitch {
			return f.Gaps
		}
	}
	return nil
}

// without are numbers less some of them.
func without(list, less []int) []int {
	return slices.DeleteFunc(slices.Clone(list), func(n int) bool { return slices.Contains(less, n) })
}

// StartsWith reports whether a place of a wall is where the work begins: the first of the room, or the first still to hang.
func (c *Set) StartsWith(w *face.Face, h *face.Hang) bool {
	if len(c.Days.Tasks) == 0 {
		return false
	}
	t := &c.Days.Tasks[0]
	return t.Run == w.Run.Name && t.Place == h.Place && !h.Before
}
