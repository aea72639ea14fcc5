package seam

import "slices"

// before is what of rows a trial changes: the words that are logged, and what a wish forbids about its place.
type before struct {
	words, wishes int // how many there were
	alone         bool
	spans         []lines
}

// lines are a stretch of the lists that wishes are spread over.
type lines struct {
	at           int
	limit, from  []int32
	passes, free []bool
}

// trying begins a trial that changes no more than some stretches of lines.
func (r *rows) trying(w way) *before {
	b := &before{words: len(r.taken), wishes: len(r.wishes), alone: r.alone}
	r.logs++
	for i := range w.wishes {
		b.save(r, w.wishes[i].high-r.base-r.g.net-1, w.wishes[i].low-r.base+r.g.net+1)
	}
	return b
}

// save keeps a stretch from one index to before another.
func (b *before) save(r *rows, from, to int) {
	if from, to = max(from, 0), min(to, len(r.free)); from < to {
		b.spans = append(b.spans, lines{from, slices.Clone(r.limit[from:to]), slices.Clone(r.from[from:to]),
			slices.Clone(r.passes[from:to]), slices.Clone(r.free[from:to])})
	}
}

// undo ends a trial: all is as it was.
func (r *rows) undo(b *before) {
	for _, x := range slices.Backward(r.taken[b.words:]) {
		if x.back {
			r.back[x.at] = x.old
		} else {
			r.forth[x.at] = x.old
		}
	}
	for _, x := range slices.Backward(b.spans) {
		copy(r.limit[x.at:], x.limit)
		copy(r.from[x.at:], x.from)
		copy(r.passes[x.at:], x.passes)
		copy(r.free[x.at:], x.free)
	}
	r.taken, r.wishes, r.alone = r.taken[:b.words], r.wishes[:b.wishes], b.alone
	r.logs--
}

// meetsWithout reports whether a way to keep a pin that cannot be had could be had if some lines held a seam that now break a
// must.
func (r *rows) meetsWithout(w way, freed []int) bool {
	if len(freed) == 0 {
		return false
	}
	b := r.freeing(freed)
	defer r.undo(b)
	return r.meets(w)
}

// freeing begins a trial with some lines freed.
func (r *rows) freeing(freed []int) *before {
	n := len(r.free)
	b := r.trying(way{})
	low, high := slices.Min(freed), slices.Max(freed)
	for turn := 0; low+turn-r.base < n; turn += r.g.lines {
		from, to := low+turn-r.base, high+turn-r.base+1
		if b.save(r, from, to); to <= 0 {
			continue
		}
		for _, line := range freed {
			if i := line + turn - r.base; i >= 0 && i < n {
				r.free[i] = true
			}
		}
	}
	for turn := 0; low+turn-r.base < n; turn += r.g.lines {
		if from, to := low+turn-r.base, high+turn-r.base; to >= 0 {
			r.goForth(max(from, 0), min(to, n))
			r.goBack(min(to, n-1), max(from, 0))
		}
	}
	return b
}

// touches lists the net widths in which lines freed change what leads where.
func (r *rows) touches(freed []int) []bool {
	out := make([]bool, len(r.free)/r.g.net+1)
	if len(freed) == 0 {
		return out
	}
	b := r.freeing(freed)
	for _, x := range r.taken[b.words:] {
		out[int(x.at)/r.words/r.g.net] = true
	}
	r.undo(b)
	return out
}

// near reports whether a way to keep a pin looks at one of some net widths.
func (r *rows) near(w way, touched []bool) bool {
	for i := range w.wishes {
		v := &w.wishes[i]
		from, to := min(v.low, v.high)-r.base-r.g.net-1, max(v.low, v.high)-r.base+r.g.net+1
		for k := max(from, 0) / r.g.net; k <= to/r.g.net && k < len(touched) && to >= 0; k++ {
			if touched[k] {
				return true
			}
		}
	}
	for _, pair := range w.ends() {
		if i := pair - r.base; i >= 0 && i < len(r.free) && touched[i/r.g.net] {
			return true
		}
	}
	return false
}

// ends lists the lines on which sheets begin and end that a way names.
func (w *way) ends() []int {
	var out []int
	for i := range w.wishes {
		for _, pair := range w.wishes[i].but {
			out = append(out, pair[0], pair[1])
		}
	}
	return out
}
