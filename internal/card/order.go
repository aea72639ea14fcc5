package card

import (
	"cmp"
	"slices"
)

// byHeight sorts cut-outs from the highest down, by their middles.
func (s *sketch) byHeight(list []int) {
	mid := func(i int) L { return s.c.Holes[i].Bottom + s.c.Holes[i].Top }
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(mid(b), mid(a)) })
}

// byPlace sorts cut-outs from left to right as drawn, by their middles.
func (s *sketch) byPlace(list []int) {
	mid := func(i int) L { return s.c.Holes[i].Left + s.c.Holes[i].Right }
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(mid(a), mid(b)) })
}

// cornerFolds are the folds round corners, from left to right as drawn. Those along a jamb need no name: that of its opening
// stands beside them.
func (s *sketch) cornerFolds() []int {
	var list []int
	for i := range s.c.Folds {
		if s.c.Folds[i].Bend.Of == nil {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(s.c.Folds[a].Foot.X, s.c.Folds[b].Foot.X) })
	return list
}
