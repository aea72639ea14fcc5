// Package assign finds which flitch serves which room of a job: with as few sheets short as can be, then as few rooms in which the
// flitch changes, then as few left-over ends that are too short for any room, and of what is left the first in the order given. It
// knows no room and no sheet: rooms are counts of sheets by place, flitches are counts of sheets.
//
// Coordinates and units: whole sheets.
//
// Order: rooms in the order of hanging; of two flitches the one with which the room before stopped comes first, then those after it
// in file order, then those before it.
//
// Not here: which numbers a room gets (package job), where the flitch changes inside a room (package layout).
package assign

import (
	"math/big"
	"slices"
)

// Room is one room to serve.
type Room struct {
	Columns []int // sheets of each place, which are of one flitch
	Fixed   int   // the flitch with which it has to begin; -1: any
}

// Need is how many sheets the room takes.
func (r *Room) Need() (n int) {
	for _, c := range r.Columns {
		n += c
	}
	return n
}

// Cost is what is wrong with a choice, what matters most first.
type Cost struct{ Short, Changes, Ends int }

// Less reports whether a cost is less than another.
func (c Cost) Less(d Cost) bool {
	return slices.Compare([]int{c.Short, c.Changes, c.Ends}, []int{d.Short, d.Changes, d.Ends}) < 0
}

// Choice is which flitch each room begins with.
type Choice struct {
	Starts []int
	Cost   Cost
	Bound  Cost // no choice costs less
	Best   bool // none does: it was proven
}

// Find looks for the best choice, in no more than so many steps. With whole rooms a room begins with the first flitch from the one
// chosen on that has enough for all of it, and is parted only where none has.
func Find(rooms []Room, sheets []int, whole bool, steps int) Choice {
	s := &search{rooms: rooms, whole: whole, steps: steps, seen: map[string]Cost{}, at: make([]int, len(rooms)), needs: make([]int, len(rooms))}
	for i := range rooms {
		s.needs[i] = rooms[i].Need()
		if i == 0 || s.needs[i] < s.least {
			s.least = s.needs[i]
		}
	}
	s.reaches(sheets)
	bound := s.bound(0, sheets, Cost{})
	s.down(0, slices.Clone(sheets), 0, Cost{})
	out := Choice{Starts: s.best, Cost: s.cost, Bound: bound, Best: s.steps > 0 || s.cost == bound}
	if out.Best {
		out.Bound = out.Cost
	}
	return out
}

// search goes through the rooms in their order, one choice after the other.
type search struct {
	rooms []Room
	needs []int
	least int // sheets of the smallest room
	whole bool
	steps int
	reach []*big.Int // of the rooms from each on: which sums their sheets can come to, a bit each
	left  [][]int    // their sheets, the greatest first
	total []int      // and all of these
	seen  map[string]Cost
	at    []int
	best  []int
	cost  Cost
}

// reaches works out which sums the rooms from each on can come to.
func (s *search) reaches(sheets []int) {
	n := len(s.rooms)
	s.reach, s.left, s.total = make([]*big.Int, n+1), make([][]int, n+1), make([]int, n+1)
	most := uint(0)
	if len(sheets) > 0 {
		most = uint(slices.Max(sheets))
	}
	mask := new(big.Int).Sub(new(big.Int).Lsh(big.NewInt(1), most+1), big.NewInt(1))
	s.reach[n] = big.NewInt(1)
	for i := n - 1; i >= 0; i-- {
		s.reach[i] = new(big.Int).Or(s.reach[i+1], new(big.Int).And(mask, new(big.Int).Lsh(s.reach[i+1], uint(s.needs[i]))))
		s.left[i] = append(slices.Clone(s.left[i+1]), s.needs[i])
		slices.SortFunc(s.left[i], func(a, b int) int { return b - a })
		s.total[i] = s.total[i+1] + s.needs[i]
	}
}

// bound is what any choice for the rooms from i on costs at least, with what the rooms before have cost.
//
// Of each flitch whole rooms use a sum that their sheets can come to; what is over that has to go to rooms that are parted, and the
// greatest rooms take most of it. While no room has to be parted any more, an end too short for any room stays one.
func (s *search) bound(i int, rest []int, so Cost) Cost {
	sum, fill, ends := 0, 0, 0
	for _, n := range rest {
		sum += n
		fill += filled(s.reach[i], n)
		if n > 0 && n < s.least {
			ends++
		}
	}
	if s.total[i] > sum { // who is short may be so of all its sheets, and then is not parted
		so.Short += s.total[i] - sum
		return so
	}
	over := s.total[i] - fill
	for k := 0; over > 0 && k < len(s.left[i]); k++ {
		over -= s.left[i][k]
		so.Changes++
		ends = 0
	}
	so.Ends = ends
	return so
}

// filled is the greatest sum that is reached and not over n.
func filled(reach *big.Int, n int) int {
	for ; n > 0; n-- {
		if reach.Bit(n) == 1 {
			return n
		}
	}
	return 0
}

// down serves the rooms from i on.
func (s *search) down(i int, rest []int, current int, so Cost) {
	if s.best != nil && s.steps <= 0 {
		return
	}
	s.steps--
	if i == len(s.rooms) {
		for _, n := range rest {
			if n > 0 && n < s.least {
				so.Ends++
			}
		}
		if s.best == nil || so.Less(s.cost) {
			s.best, s.cost = slices.Clone(s.at), so
		}
		return
	}
	if s.best != nil && !s.bound(i, rest, so).Less(s.cost) {
		return
	}
	key := keyOf(i, rest)
	if before, ok := s.seen[key]; ok && !so.Less(before) {
		return
	}
	if len(s.seen) < mostSeen {
		s.seen[key] = so
	}
	for _, f := range s.starts(i, rest, current) {
		next := slices.Clone(rest)
		short, last, changed := serve(&s.rooms[i], next, f, s.whole)
		c := so
		c.Short += short
		if changed {
			c.Changes++
		}
		s.at[i] = f
		s.down(i+1, next, last, c)
	}
}

// mostSeen bounds the states that are kept.
const mostSeen = 1 << 18

// keyOf tells one state from another.
func keyOf(i int, rest []int) string {
	key := []byte{byte(i), byte(i >> 8), byte(i >> 16)}
	for _, n := range rest {
		key = append(key, byte(n), byte(n>>8))
	}
	return string(key)
}

// starts are the flitches with which a room may begin, in their order; each way to serve it once.
func (s *search) starts(i int, rest []int, current int) (list []int) {
	if f := s.rooms[i].Fixed; f >= 0 {
		return []int{f}
	}
	add := func(f int) {
		if rest[f] > 0 && (!s.whole || rest[f] >= s.needs[i] || !slices.ContainsFunc(rest[f:], func(n int) bool { return n >= s.needs[i] })) {
			list = append(list, f)
		}
	}
	for f := current; f < len(rest); f++ {
		add(f)
	}
	for f := range current {
		add(f)
	}
	if len(list) == 0 {
		return []int{current}
	}
	return list
}

// serve takes a room's sheets from the flitches, beginning with f.
func serve(r *Room, rest []int, f int, whole bool) (short, last int, changed bool) {
	need := r.Need()
	if whole {
		for g := f; g < len(rest); g++ {
			if rest[g] >= need {
				rest[g] -= need
				return 0, g, false
			}
		}
	}
	at, from := 0, 0
	last = f
	for g := f; g < len(rest) && at < len(r.Columns); g++ {
		took := false
		for at < len(r.Columns) && rest[g] >= r.Columns[at] {
			rest[g] -= r.Columns[at]
			at++
			took = true
		}
		if took {
			from++
			last = g
		}
	}
	for ; at < len(r.Columns); at++ {
		short += r.Columns[at]
	}
	return short, last, from > 1
}
