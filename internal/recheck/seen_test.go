package recheck

import (
	"math/big"
	"sort"

	"flitchlay/internal/room"
)

// height is the height of a profile at x, its ends carried on level. At a step the side decides: left of it for side < 0
// and 0, right of it for side > 0.
func height(profile []room.Point, x int64, side int) *big.Rat {
	n := len(profile)
	if x < int64(profile[0].X) || x == int64(profile[0].X) && side <= 0 {
		return big.NewRat(int64(profile[0].Z), 1)
	}
	if x > int64(profile[n-1].X) || x == int64(profile[n-1].X) && side > 0 {
		return big.NewRat(int64(profile[n-1].Z), 1)
	}
	for i := 1; i < n; i++ {
		a, b := profile[i-1], profile[i]
		if a.X == b.X || x > int64(b.X) || x == int64(b.X) && side > 0 {
			continue
		}
		part := big.NewRat(x-int64(a.X), int64(b.X-a.X))
		return part.Mul(part, big.NewRat(int64(b.Z-a.Z), 1)).Add(part, big.NewRat(int64(a.Z), 1))
	}
	return big.NewRat(int64(profile[n-1].Z), 1)
}

// round is the nearest whole number, halves away from zero.
func round(r *big.Rat) int64 {
	n, d := new(big.Int).Abs(r.Num()), r.Denom()
	n.Lsh(n, 1).Add(n, d).Quo(n, new(big.Int).Lsh(d, 1))
	if r.Sign() < 0 {
		return -n.Int64()
	}
	return n.Int64()
}

// seenWall is the wall whose heights count at s, and x on it, which may lie past its end: in the strip that a leaning
// corner sweeps, and on the corner itself, the wall on the left.
func (l *line) seenWall(s int64) (*room.Wall, int64) {
	for _, c := range l.corners {
		if off := s - c.at; l.closed || off >= 0 {
			if off = l.round(off); off >= 0 && off <= max(0, c.lean) {
				for _, st := range l.walls {
					if st.wall == c.wall {
						x := s - st.shift
						if x < 0 { // past the run's end, which is its start
							x += l.length
						}
						return l.wall(st), x
					}
				}
			}
		}
	}
	for i, st := range l.walls {
		if s <= st.right && (s > st.left || i == 0 && !l.closed) {
			return l.wall(st), s - st.shift
		}
	}
	last := l.walls[len(l.walls)-1]
	if l.closed && s <= l.walls[0].left { // the place where the last wall meets the first without a bend
		s += l.length
	}
	return l.wall(last), s - last.shift
}

// seen is how much of a place shows on the wall: from floor + base to ceiling - crown, less openings, less what is hidden.
func (l *line) seen(s int64) *big.Rat {
	s = l.round(s)
	w, x := l.seenWall(s)
	low, high := height(w.Floor, x, 0), height(w.Ceiling, x, 0)
	low.Add(low, big.NewRat(int64(w.Base), 1))
	high.Sub(high, big.NewRat(int64(w.Crown), 1))
	if hidden := big.NewRat(int64(w.HiddenBelow), 1); w.HiddenBelow > 0 && low.Cmp(hidden) < 0 {
		low = hidden
	}
	type cut struct{ low, high *big.Rat }
	var cuts []cut
	for _, o := range l.openings {
		if !l.inside(s, o.left, o.right) {
			continue
		}
		c := cut{big.NewRat(o.sill, 1), big.NewRat(o.head, 1)}
		if !o.SillGiven || c.low.Cmp(low) < 0 {
			c.low = low
		}
		if c.high.Cmp(high) > 0 {
			c.high = high
		}
		cuts = append(cuts, c)
	}
	sort.Slice(cuts, func(i, j int) bool { return cuts[i].low.Cmp(cuts[j].low) < 0 })
	sum, at := new(big.Rat), low
	for _, c := range cuts {
		if c.low.Cmp(at) > 0 {
			sum.Add(sum, new(big.Rat).Sub(c.low, at))
			at = c.low
		}
		if c.high.Cmp(at) > 0 {
			at = c.high
		}
	}
	if high.Cmp(at) > 0 {
		sum.Add(sum, new(big.Rat).Sub(high, at))
	}
	return sum
}

// level reports whether no wall of the run slopes, so that nothing is rounded.
func (l *line) level() bool {
	for _, st := range l.walls {
		for _, profile := range [][]room.Point{l.wall(st).Floor, l.wall(st).Ceiling} {
			for i := 1; i < len(profile); i++ {
				if profile[i].X != profile[i-1].X && profile[i].Z != profile[i-1].Z {
					return false
				}
			}
		}
	}
	return true
}
