package seam

import (
	"math/bits"
	"sync"
)

// store keeps lists for use again: a long span needs many, none for long. What it hands out is not cleared.
type store struct {
	costs shelf[cost]
	gists shelf[gist]
	lines shelf[int]
	kinds shelf[uint16]
	debts shelf[debt]
	longs shelf[int64]
	flags shelf[bool]
}

var stores = sync.Pool{New: func() any { return new(store) }}

// shelf keeps lists of one kind by the power of two that their capacity reaches.
type shelf[T any] struct{ free [48][][]T }

// take hands out a list of n.
func (s *shelf[T]) take(n int) []T {
	class := bits.Len(uint(max(n, 1) - 1))
	if last := len(s.free[class]) - 1; last >= 0 {
		list := s.free[class][last]
		s.free[class] = s.free[class][:last]
		return list[:n]
	}
	return make([]T, n, 1<<class)
}

// cleared is take, all of it nought.
func (s *shelf[T]) cleared(n int) []T {
	list := s.take(n)
	clear(list)
	return list
}

// give takes lists back.
func (s *shelf[T]) give(lists ...[]T) {
	for _, list := range lists {
		if cap(list) > 0 {
			class := bits.Len(uint(cap(list))) - 1
			s.free[class] = append(s.free[class], list[:0])
		}
	}
}
