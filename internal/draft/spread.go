package draft

// Spread moves things along a line so far that each keeps its distance from the one before, in their order and all of them
// together as little as can be: the sum of the squares of the ways is least.
//
// Shape: gaps[i] is the least distance from at[i-1] to at[i]; gaps[0] does not count.
//
// Source: isotonic regression by pooling of adjacent violators (Ayer, Brunk, Ewing, Reid and Silverman 1955), after each
// thing is moved back by the distances before it.
func Spread(at, gaps []float64) []float64 {
	type pool struct {
		mean float64
		n    int
	}
	var pools []pool
	back := make([]float64, len(at))
	sum := 0.0
	for i, x := range at {
		if i > 0 {
			sum += gaps[i]
		}
		back[i] = sum
		pools = append(pools, pool{x - sum, 1})
		for n := len(pools); n > 1 && pools[n-2].mean > pools[n-1].mean; n = len(pools) {
			a, b := pools[n-2], pools[n-1]
			pools = append(pools[:n-2], pool{(a.mean*float64(a.n) + b.mean*float64(b.n)) / float64(a.n+b.n), a.n + b.n})
		}
	}
	out := make([]float64, 0, len(at))
	for _, p := range pools {
		for range p.n {
			out = append(out, p.mean+back[len(out)])
		}
	}
	return out
}
