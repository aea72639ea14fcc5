package seam

import (
	"math/bits"
	"sync"
)

// store keeps lists of costs for use again: a long span needs many, none for long. What it hands out is not cleared.
type store struct{ free [48][][]cost }

var stores = sync.Pool{New: func() any { return new(store) }}

// take hands out a list of n costs.
func (s *store) take(n int) []cost {
	class := bits.Len(uint(max(n, 1) - 1))
	if last := len(s.free[class]) - 1; last >= 0 {
		list := s.free[class][last]
		s.free[class] = s.free[class][:last]
		return list[:n]
	}
	return make([]cost, n, 1<<class)
}

// give takes lists back.
func (s *store) give(lists ...[]cost) {
	for _, list := range lists {
		if cap(list) > 0 {
			class := bits.Len(uint(cap(list))) - 1
			s.free[class] = append(s.free[class], list[:0])
		}
	}
}
