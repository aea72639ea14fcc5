package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/run"
)

// inOrder sorts demands along the run, in a closed one from behind the widest stretch that has none; the least width last.
func inOrder(line *run.Run, list []demand) []demand {
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(x, y demand) int {
		if (x.kind == leastDemand) != (y.kind == leastDemand) {
			return cmp.Compare(y.kind, x.kind)
		}
		return cmp.Compare(x.from, y.from)
	})
	n := len(list)
	for n > 0 && list[n-1].kind == leastDemand {
		n--
	}
	if !line.Closed || n < 2 {
		return list
	}
	first, widest := 0, L(-1)
	for i := range n {
		if gap := line.Round(list[i].from - list[(i+n-1)%n].to); gap > widest {
			first, widest = i, gap
		}
	}
	return slices.Concat(list[first:n], list[:first], list[n:])
}

// stretch is what of the run a conflict is about: from its first demand to its last; all of the span where it names no place.
func (c *conflict) stretch() (from, to L) {
	n := len(c.demands)
	for n > 0 && c.demands[n-1].kind == leastDemand {
		n--
	}
	if n == 0 {
		return L(c.spot.q.L), L(c.spot.q.R)
	}
	from, to = c.demands[0].from, c.demands[0].to
	line := c.spot.q.line
	for _, d := range c.demands[1:n] {
		end := d.to
		for line.Closed && end < from {
			end += line.Length
		}
		to = max(to, end)
	}
	return from, to
}

// walls lists the walls that a conflict's stretch is on, in order; of a corner alone those on its both sides.
func (c *conflict) walls() []int {
	from, to := c.stretch()
	line := c.spot.q.line
	turns := []L{0}
	if line.Closed {
		turns = []L{-line.Length, 0, line.Length}
	}
	var out []int
	for _, turn := range turns {
		for _, st := range line.Walls {
			left, right := st.Left+turn, st.Right+turn
			over := min(right, to) - max(left, from)
			if line.Up || over > 0 || from == to && over == 0 {
				if !slices.Contains(out, st.Wall) {
					out = append(out, st.Wall)
				}
			}
		}
	}
	return out
}
