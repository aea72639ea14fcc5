package oracletest

import "slices"

// Profile is a run's seen height as steps: from each step's place to the next one's. Before the first its own height
// holds. With a Period the place is taken round it first.
type Profile struct {
	Period int64
	Steps  []Step
}

// Step is one stretch of a Profile, level or sloped: Height at From, and Rise more for every Per along s.
type Step struct{ From, Height, Rise, Per int64 }

// Seen gives the seen height at s, never under 0.
func (p Profile) Seen(s int64) int64 {
	if p.Period > 0 {
		s = (s%p.Period + p.Period) % p.Period
	}
	step := p.Steps[0]
	for _, next := range p.Steps {
		if next.From <= s {
			step = next
		}
	}
	height := step.Height
	if step.Per > 0 {
		height += max(0, s-step.From) * step.Rise / step.Per
	}
	return max(0, height)
}

// Ascending sorts the steps by their place, which Seen relies on.
func (p Profile) Ascending() Profile {
	slices.SortStableFunc(p.Steps, func(a, b Step) int { return int(a.From - b.From) })
	return p
}
