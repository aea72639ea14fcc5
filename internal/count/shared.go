package count

import (
	"cmp"
	"slices"

	"flitchlay/internal/layout"
)

// sharedFlitch is what the rooms of a job say of one flitch: a sheet that several of them name was delivered once.
type sharedFlitch struct {
	number                    string
	rooms, laid, count, left  int
	delivered, damaged, spare []stretch
	taken                     []stretch // damaged, kept back, laid or fallen into a gap
}

// stock adds what is delivered, damaged, kept back and left of each flitch, every number once.
func (j *Job) stock(c *Count) {
	for i := range c.Flitches {
		f := &c.Flitches[i]
		s := j.sharing(f.Number)
		if s == nil { // over the bound: told of as if no other room had them
			j.Delivered, j.Damaged, j.Spare, j.Left = j.Delivered+len(f.Delivered), j.Damaged+len(f.Damaged), j.Spare+len(f.Spare), j.Left+len(f.Left)
			continue
		}
		s.rooms++
		s.laid += len(f.Laid)
		delivered, damaged, spare := fresh(&s.delivered, f.Delivered), fresh(&s.damaged, f.Damaged), fresh(&s.spare, f.Spare)
		j.Delivered, j.Damaged, j.Spare = j.Delivered+delivered, j.Damaged+damaged, j.Spare+spare
		j.Left -= s.left
		s.count, s.left = s.count+delivered, s.left+delivered
		for _, list := range [][]int{f.Damaged, f.Spare, f.Laid, f.Gaps} {
			s.left -= fresh(&s.taken, list)
		}
		j.Left += s.left
	}
}

// sharing finds what is kept of a flitch, nil where there is no room to keep more.
func (j *Job) sharing(number string) *sharedFlitch {
	i := slices.IndexFunc(j.shared, func(s *sharedFlitch) bool { return s.number == number })
	switch {
	case i >= 0:
		return j.shared[i]
	case len(j.shared) >= mostShared:
		return nil
	}
	j.shared = append(j.shared, &sharedFlitch{number: number})
	return j.shared[len(j.shared)-1]
}

// mostShared bounds the flitches of which is kept what several rooms say of them.
const mostShared = 500

// fresh counts the numbers that are not yet in a list of stretches, and puts them in.
func fresh(list *[]stretch, numbers []int) (n int) {
	var add []stretch
	for _, number := range numbers {
		if slices.ContainsFunc(*list, func(s stretch) bool { return s.from <= number && number <= s.to }) {
			continue
		}
		n++
		if k := len(add); k > 0 && add[k-1].to+1 == number {
			add[k-1].to = number
		} else {
			add = append(add, stretch{number, number})
		}
	}
	*list = append(*list, add...)
	slices.SortFunc(*list, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	return n
}

// numbers are all numbers of a flitch that some room names.
func (s *sharedFlitch) numbers() string {
	var all []int
	for _, x := range s.delivered {
		for n := x.from; n <= x.to; n++ {
			all = append(all, n)
		}
	}
	return layout.Numbers(all)
}
