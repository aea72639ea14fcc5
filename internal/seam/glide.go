package seam

import "math/bits"

// glide is slide for gists.
type glide struct {
	key, pre  []gist
	low, high int
	from      int
	back      gist
}

// widen makes room for windows of at most so many lanes.
func (s *glide) widen(st *store, lanes int) {
	size := 1 << bits.Len(uint(lanes))
	if size <= cap(s.key) {
		s.key, s.pre = s.key[:size], s.pre[:size]
		return
	}
	s.free(st)
	s.key, s.pre = st.gists.take(size), st.gists.take(size)
}

// free gives back what the glide holds.
func (s *glide) free(st *store) { st.gists.give(s.key, s.pre) }

func (s *glide) reset(top int) { s.low, s.high, s.from = top+1, top, nowhere }

func (s *glide) set(lane int, key gist) { s.key[lane&(len(s.key)-1)] = key }

func (s *glide) least(lines []int, from, to int) gist {
	key, mask := s.key, len(s.key)-1
	high, low := s.high, s.low
	for high >= 0 && lines[high] > to {
		high--
	}
	s.high = high
	if high < s.from {
		for low > 0 && lines[low-1] >= from {
			low--
		}
		s.low = low
		return s.turn(mask)
	}
	back := s.back
	for low > 0 && lines[low-1] >= from {
		low--
		back = min(back, key[low&mask])
	}
	s.low, s.back = low, back
	return min(back, s.pre[high&mask])
}

func (s *glide) turn(mask int) gist {
	if s.high < s.low {
		s.from = nowhere
		return gistNever
	}
	least := gistNever
	for i := s.low; i <= s.high; i++ {
		least = min(least, s.key[i&mask])
		s.pre[i&mask] = least
	}
	s.from, s.back = s.low, gistNever
	return least
}
