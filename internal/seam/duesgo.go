package seam

// dueWindow keeps of a stretch of positions, whose both ends go on, the least that is broken and the words that lead there by that.
type dueWindow struct {
	words, lo, hi, turn int    // lo to hi are in it; from lo to before turn part says what is true of each and all after it
	part                []gist // and the words of it
	bits                []uint64
	acc                 gist // of the positions from turn on
	accBits             []uint64
	key                 func(p int) gist // of a position
	word                func(p, k int) uint64
}

func (w *dueWindow) begin(words, size, at int) {
	if w.words != words || len(w.part) != size {
		w.part, w.bits, w.accBits = make([]gist, size), make([]uint64, size*words), make([]uint64, words)
	}
	w.words, w.lo, w.hi, w.turn = words, at, at-1, at
	w.clear()
}

func (w *dueWindow) clear() {
	w.acc = gistNever
	clear(w.accBits)
}

// take puts a position to those from turn on.
func (w *dueWindow) take(p int) {
	x := w.key(p)
	if x > w.acc || x >= gistNever {
		return
	}
	if x < w.acc {
		w.acc = x
		clear(w.accBits)
	}
	for k := range w.accBits {
		w.accBits[k] |= w.word(p, k)
	}
}

// slide takes in positions up to one, and leaves out those before another.
func (w *dueWindow) slide(lo, hi int) {
	for ; w.hi < hi; w.hi++ {
		w.take(w.hi + 1)
	}
	if w.lo = max(w.lo, lo); w.lo < w.turn {
		return
	}
	w.clear()
	w.turn = max(w.hi+1, w.lo)
	for p := w.hi; p >= w.lo; p-- {
		w.take(p)
		w.part[p] = w.acc
		copy(w.bits[p*w.words:], w.accBits)
	}
	w.clear()
}

func (w *dueWindow) least() gist {
	if w.lo < w.turn {
		return min(w.acc, w.part[w.lo])
	}
	return w.acc
}

// by is a word of what leads there by no more than a gist.
func (w *dueWindow) by(x gist, k int) uint64 {
	var out uint64
	if w.acc == x {
		out = w.accBits[k]
	}
	if w.lo < w.turn && w.part[w.lo] == x {
		out |= w.bits[w.lo*w.words+k]
	}
	return out
}

// dueWindows are the sheets to a line that lack nothing of least_width, and those that do, of which what they lack is counted from
// the first position.
type dueWindows struct{ flat, thin dueWindow }

func (w *dueWindows) begin(words, size, at int, key func(p int) gist, far func(p int) gist, word func(p, k int) uint64) {
	w.flat.key, w.flat.word = key, word
	w.thin.key = func(p int) gist {
		x := key(p)
		if x >= gistNever {
			return gistNever
		}
		return x + far(p)
	}
	w.thin.word = word
	w.flat.begin(words, size, at)
	w.thin.begin(words, size, at)
}

// forthTo readies the windows for the sheets to an index, and backTo for those from one.
func (d *dues) forthTo(r *rows, i int) {
	to := i - d.flat
	if d.lacks(r, max(to, 0), i) > 0 {
		to-- // it goes over the short step
	}
	low := max(0, int(r.from[i]))
	d.forth.flat.slide(low, min(to, i-1))
	d.forth.thin.slide(max(low, to+1), i-1)
}

func (d *dues) backTo(r *rows, i int) {
	n, to := len(r.free), i+d.flat
	if to < n && d.lacks(r, i, to) > 0 {
		to++
	}
	high := min(n-1, int(r.limit[i]))
	d.back.flat.slide(n-1-high, n-1-max(to, i+1))
	d.back.thin.slide(n-1-min(high, to-1), n-1-(i+1))
}

// beginForth readies the windows to go on from an index; beginBack the other way, where positions count from the right.
func (d *dues) beginForth(r *rows, words, at int) {
	d.forth.begin(words, len(r.free), at, func(a int) gist {
		if words > 0 && !r.leads(r.forth, a) {
			return gistNever
		}
		return d.level[a]
	}, func(a int) gist { return d.place(r, a) * d.by }, func(a, k int) uint64 { return r.forth[a*words+k] })
}

func (d *dues) beginBack(r *rows, words, at int) {
	last := len(r.free) - 1
	far := d.place(r, last)
	d.back.begin(words, last+1, last-at, func(p int) gist {
		b := last - p
		if words > 0 && !r.leads(r.back, b) || d.rest[b] >= gistNever {
			return gistNever
		}
		return d.nodes[b] + d.rest[b]
	}, func(p int) gist { return (far - d.place(r, last-p)) * d.by }, func(p, k int) uint64 { return r.back[(last-p)*words+k] })
}

// leads reports whether any word of an index leads anywhere.
func (r *rows) leads(in []uint64, i int) bool {
	for _, word := range in[i*r.words : (i+1)*r.words] {
		if word != 0 {
			return true
		}
	}
	return false
}

// ramp is what a sheet to an index, or from one, that lacks of least_width takes less than is counted of it.
func (d *dues) ramp(place gist) gist { return place*d.by - gist(d.t.least/d.t.unit)*d.by }

// levels finds what is broken up to each index, and rests after it, over all lines.
func (d *dues) levels(r *rows) {
	d.beginForth(r, 0, 0)
	for i := range d.level {
		d.level[i] = gistNever
		d.forthTo(r, i)
		switch {
		case d.begins(r, i):
			d.level[i] = 0
			continue
		case !r.free[i]:
			continue
		}
		x := d.forth.flat.least()
		if y := d.forth.thin.least(); y < gistNever {
			x = min(x, y-d.ramp(d.place(r, i)))
		}
		if r.first(i) {
			x = min(x, d.lacks(r, 0, i))
		}
		if x < gistNever {
			d.level[i] = x + d.nodes[i]
		}
	}
}

func (d *dues) rests(r *rows) {
	last := len(d.rest) - 1
	far := d.place(r, last)
	d.beginBack(r, 0, last)
	for i := last; i >= 0; i-- {
		d.rest[i] = gistNever
		d.backTo(r, i)
		switch {
		case d.ends(r, i):
			d.rest[i] = 0
			continue
		case !r.free[i] && i > 0:
			continue
		}
		d.rest[i] = d.back.flat.least()
		if y := d.back.thin.least(); y < gistNever {
			d.rest[i] = min(d.rest[i], y-d.ramp(far-d.place(r, i)))
		}
		if r.last(i) {
			d.rest[i] = min(d.rest[i], d.lacks(r, i, r.g.lines))
		}
	}
}

// goForth is rows.goForth.
func (d *dues) goForth(r *rows, begin, most int) {
	words, net, n := r.words, r.g.net, len(r.free)
	from := 0
	if begin > 0 {
		from = max(0, int(r.from[begin]))
	}
	d.beginForth(r, words, from)
	same := 0
	for i := begin; i < n; i++ {
		r.gone += words
		d.forthTo(r, i)
		whole := i - net
		if whole < 0 || whole >= max(0, int(r.from[i])) || !r.passes[whole] || d.level[whole] >= gistNever || !d.tight(r, whole, i) {
			whole = -1
		}
		need, slack := d.level[i]-d.nodes[i], d.ramp(d.place(r, i))
		inner := r.free[i] && d.level[i] < gistNever && d.level[i] >= d.nodes[i]
		first := inner && r.first(i) && d.lacks(r, 0, i) == need
		changed := false
		for k := range words {
			word := uint64(0)
			if inner {
				word = d.forth.flat.by(need, k) | d.forth.thin.by(need+slack, k)
				if whole >= 0 {
					word |= r.forth[whole*words+k]
				}
			}
			if first {
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

// goBack is rows.goBack.
func (d *dues) goBack(r *rows, begin, most int) {
	words, net, n := r.words, r.g.net, len(r.free)
	d.beginBack(r, words, min(begin+net, n-1))
	far := d.place(r, n-1)
	same := 0
	for i := begin; i >= 0; i-- {
		r.gone += words
		d.backTo(r, i)
		whole := i + net
		if whole >= n || whole <= int(r.limit[i]) || !r.passes[i] || d.level[i] >= gistNever || !d.tight(r, i, whole) {
			whole = -1
		}
		need, slack := d.rest[i], d.ramp(far-d.place(r, i))
		inner := need < gistNever && (r.free[i] || i == 0)
		last := inner && r.last(i) && d.lacks(r, i, r.g.lines) == need
		changed := false
		for k := range words {
			word := uint64(0)
			if inner {
				word = d.back.flat.by(need, k) | d.back.thin.by(need+slack, k)
				if whole >= 0 {
					word |= r.back[whole*words+k]
				}
			}
			if last {
				word |= 1
			}
			if a := i - r.g.lines; r.g.s.Closed && a >= 0 {
				word |= r.start(a, k)
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
