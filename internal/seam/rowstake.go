package seam

// take takes a way to keep a pin.
func (r *rows) take(w way) {
	n := len(r.free)
	r.wishes = append(r.wishes, w.wishes...)
	for i := range w.wishes {
		r.spread(&w.wishes[i])
	}
	for i := range w.wishes {
		v := &w.wishes[i]
		low, high := v.low-r.base, v.high-r.base
		if max(low, high) < 0 || min(low, high) >= n {
			continue // it stands beside the lines that rows go over
		}
		r.goForth(max(min(low, high), 0), min(low+r.g.net+1, n))
		r.goBack(min(max(low, high), n-1), max(high-r.g.net-1, -1))
	}
}

// spread notes what a wish forbids.
func (r *rows) spread(v *wish) {
	net, n := r.g.net, len(r.free)
	low, high := v.low-r.base, v.high-r.base
	if r.alone && !v.allows(0, r.g.lines) {
		r.alone = false
	}
	for a := max(0, high-net-1); a < min(low, n); a++ {
		r.limit[a] = min(r.limit[a], int32(high))
		if r.passes[a] && !v.allows(a+r.base, a+r.base+net) {
			r.passes[a] = false
		}
	}
	for b := max(0, high+1); b < min(low+net+1, n); b++ {
		r.from[b] = max(r.from[b], int32(low))
	}
	for _, pair := range v.but {
		if a := pair[0] - r.base; a >= 0 && a+net < n && pair[1]-pair[0] == net && r.allows(pair[0], pair[1]) {
			r.passes[a] = true
		}
	}
	for _, line := range v.bar {
		if i := line - r.base; i >= 0 && i < n {
			r.free[i] = false
		}
	}
}

// set changes a word of forth, or of back, and says whether it was another.
func (r *rows) set(back bool, at int, word uint64) bool {
	in := r.forth
	if back {
		in = r.back
	}
	old := in[at]
	if old == word {
		return false
	}
	if r.logs > 0 {
		r.taken = append(r.taken, undo{old, int32(at), back})
	}
	in[at] = word
	return true
}

// goForth finds anew which rows lead to the lines from an index on: at least before another, then until as many lines as a
// sheet covers are reached as before.
func (r *rows) goForth(begin, most int) {
	if r.dues != nil {
		r.dues.goForth(r, begin, most)
		return
	}
	words, net, n := r.words, r.g.net, len(r.free)
	lo, hi := begin, begin-1 // the lines that a sheet to the line at hand may begin on
	if begin > 0 {
		lo = max(0, int(r.from[begin]))
		hi = lo - 1
	}
	turn := lo // from lo to before it part says what leads to lines from each on
	acc := make([]uint64, words)
	same := 0
	for i := begin; i < n; i++ {
		r.gone += words
		last := i - r.least
		if last < r.g.lines-r.base && r.crosses(last, i) {
			last = i - r.wrapped
		}
		for ; hi < last; hi++ {
			for k := range words {
				acc[k] |= r.forth[(hi+1)*words+k]
			}
		}
		lo = max(lo, int(r.from[i]))
		if lo >= turn {
			turn = max(hi+1, lo)
			r.gather(acc, r.forth, hi, lo, -1)
		}
		changed, starts := false, r.free[i] && r.first(i)
		for k := range words {
			word := uint64(0)
			if r.free[i] {
				word = acc[k]
				if lo < turn {
					word |= r.part[lo*words+k]
				}
				if a := i - net; a >= 0 && a < lo && r.passes[a] && r.whole(a) {
					word |= r.forth[a*words+k]
				}
			}
			if starts {
				word |= 1
			}
			changed = r.set(false, i*words+k, word|r.start(i, k)) || changed
		}
		if same++; changed {
			same = 0
		}
		if i >= most && same > net {
			return
		}
	}
}

// gather puts into part, for each line from one to another, what all lines from the first up to it say. It leaves acc empty.
func (r *rows) gather(acc, of []uint64, from, to, step int) {
	clear(acc)
	for a := from; (to-a)*step >= 0; a += step {
		for k := range acc {
			acc[k] |= of[a*r.words+k]
			r.part[a*r.words+k] = acc[k]
		}
	}
	clear(acc)
}

// start is the bit of a row that begins on an index.
func (r *rows) start(i, k int) uint64 {
	switch {
	case !r.g.s.Closed:
		if i == 0 && r.g.s.LeftSeam {
			return 1
		}
	case i < r.g.net && r.free[i]:
		if at := search(r.starts, i+r.base); at < len(r.starts) && at/64 == k && r.starts[at] == i+r.base {
			return 1 << (at % 64)
		}
	}
	return 0
}

// goBack finds anew from which lines rows lead on, from an index leftwards, as goForth does the other way.
func (r *rows) goBack(begin, most int) {
	if r.dues != nil {
		r.dues.goBack(r, begin, most)
		return
	}
	words, net := r.words, r.g.net
	hi := min(begin+net, len(r.free)-1)
	lo := hi + 1
	turn := hi // from behind it to hi part says what leads on from the lines up to each
	acc := make([]uint64, words)
	same := 0
	for i := begin; i >= 0; i-- {
		r.gone += words
		first := i + r.least
		if r.crosses(i, first) {
			first = i + r.wrapped
		}
		for ; lo > first; lo-- {
			if lo-1 < len(r.free) {
				for k := range words {
					acc[k] |= r.back[(lo-1)*words+k]
				}
			}
		}
		hi = min(hi, int(r.limit[i]))
		if hi <= turn {
			turn = min(lo-1, hi)
			r.gather(acc, r.back, lo, hi, 1)
		}
		changed := false
		ends := r.free[i] && r.last(i)
		for k := range words {
			word := uint64(0)
			if r.free[i] {
				word = acc[k]
				if hi > turn {
					word |= r.part[hi*words+k]
				}
				if b := i + net; b < len(r.free) && b > hi && r.passes[i] && r.whole(i) {
					word |= r.back[b*words+k]
				}
				if ends {
					word |= 1
				}
				if a := i - r.g.lines; r.g.s.Closed && a >= 0 {
					word |= r.start(a, k)
				}
			}
			changed = r.set(true, i*words+k, word) || changed
		}
		if same++; changed {
			same = 0
		}
		if i <= most && same > net {
			return
		}
	}
}

// asRows gives a way the form that rows take: which seam closes makes no difference to the musts, so that a closing seam is
// any seam there.
func (g *grid) asRows(w way) way {
	if w.closings == nil {
		return w
	}
	low := w.closings[0]
	return g.turned(wish{low: low, high: low + len(w.closings) - 1})
}

// manyPins is from how many pins on it is worth while to find which can be kept before all of them are tried.
const manyPins = 3

// keepByRows finds which pins can be kept by rows, where there are pins and rows serve, and whether any layout does without a
// broken must: without one nothing is known of pins.
func (p *problem) keepByRows() (kept []int, unbroken, known bool) {
	if !p.oneWay() {
		return p.can, false, false
	}
	r := p.rows
	if len(p.can) == 0 || r == nil && len(p.can) < manyPins && !p.fell {
		return p.can, false, false
	}
	if r == nil {
		if r = newRows(p.g, false); r == nil {
			return p.can, false, false
		}
		if p.tables != nil {
			p.rows = r
		}
	}
	if !r.any() {
		return p.can, false, true
	}
	return p.keepBy(r), true, true
}

// oneWay reports whether each pin can be kept in one way, and no two of them name the closing seam.
func (p *problem) oneWay() bool {
	closing := 0
	for _, i := range p.can {
		if p.s.Pins[i].Put == PutClose {
			closing++
		}
		if len(p.ways[i]) != 1 || closing > 1 {
			return false
		}
	}
	return true
}

// keepBy finds which pins can be kept by rows, in order. Where the span is to be solved again they are left as they were.
func (p *problem) keepBy(r *rows) (kept []int) {
	for _, i := range p.can {
		w := p.g.asRows(p.ways[i][0])
		if !r.meets(w) {
			continue
		}
		if kept = append(kept, i); len(w.wishes) > 0 {
			if p.tables != nil {
				begun := r.trying(w)
				defer r.undo(begun)
			}
			r.take(w)
		}
	}
	return kept
}
