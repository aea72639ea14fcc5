package seam

import "math/bits"

// slide holds the least of a window of keys both of whose ends go left: the part from lane `from` on as the least of
// each beginning of it, the part before as one number. Keys are kept in a ring as long as a window can be.
type slide struct {
	key, pre  []cost
	low, high int // lanes of the window
	from      int
	back      cost
}

const nowhere = int(^uint(0) >> 1)

// newSlide makes a slide over windows of at most so many lanes.
func newSlide(s *store, lanes int) slide {
	size := 1 << bits.Len(uint(lanes)) // more than lanes, so that ends of a window differ
	return slide{key: s.costs.take(size), pre: s.costs.take(size)}
}

// reset begins anew left of lane top.
func (s *slide) reset(top int) { s.low, s.high, s.from = top+1, top, nowhere }

// set gives a lane its key.
func (s *slide) set(lane int, key cost) { s.key[lane&(len(s.key)-1)] = key }

// least returns the least key of the lanes whose lines are from `from` to `to`, both no more than at the call before.
// All lanes of such lines that are no higher than at the reset must have their keys.
func (s *slide) least(lines []int, from, to int) cost {
	mask := len(s.key) - 1
	for s.high >= 0 && lines[s.high] > to {
		s.high--
	}
	if s.high < s.from {
		for s.low > 0 && lines[s.low-1] >= from {
			s.low--
		}
		return s.turn(mask)
	}
	back := s.back
	for s.low > 0 && lines[s.low-1] >= from {
		s.low--
		if key := &s.key[s.low&mask]; key.less(back) {
			back = *key
		}
	}
	s.back = back
	if pre := &s.pre[s.high&mask]; pre.less(back) {
		return *pre
	}
	return back
}

// turn takes the whole window as the part that is kept by its beginnings.
func (s *slide) turn(mask int) cost {
	if s.high < s.low {
		s.from = nowhere
		return never
	}
	least := never
	for i := s.low; i <= s.high; i++ {
		if key := &s.key[i&mask]; key.less(least) {
			least = *key
		}
		s.pre[i&mask] = least
	}
	s.from, s.back = s.low, never
	return least
}
