package seam

// slide holds the least of a window of keys both of whose ends go left: the part from lane `from` on as the least of
// each beginning of it, the part before as one number.
type slide struct {
	key, pre  []cost
	low, high int // lanes of the window
	from      int
	back      cost
}

const nowhere = int(^uint(0) >> 1)

// reset begins anew left of lane top.
func (s *slide) reset(top int) { s.low, s.high, s.from = top+1, top, nowhere }

// least returns the least key of the lanes whose lines are from `from` to `to`, both no more than at the call before.
// All lanes of such lines that are no higher than at the reset must have their keys.
func (s *slide) least(lines []int, from, to int) cost {
	for s.high >= 0 && lines[s.high] > to {
		s.high--
	}
	if s.high < s.from {
		for s.low > 0 && lines[s.low-1] >= from {
			s.low--
		}
		if s.high < s.low {
			s.from = nowhere
			return never
		}
		least := s.key[s.low]
		s.pre[s.low] = least
		for i := s.low + 1; i <= s.high; i++ {
			if s.key[i].less(least) {
				least = s.key[i]
			}
			s.pre[i] = least
		}
		s.from, s.back = s.low, never
		return least
	}
	for s.low > 0 && lines[s.low-1] >= from {
		s.low--
		if s.key[s.low].less(s.back) {
			s.back = s.key[s.low]
		}
	}
	if s.pre[s.high].less(s.back) {
		return s.pre[s.high]
	}
	return s.back
}
