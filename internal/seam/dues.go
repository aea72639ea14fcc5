package seam

// dues has rows lead also where each layout breaks a must: over those lines and by those sheets alone that are part of a layout
// which breaks the least. What is broken up to each line is known once and for all, so that what leads where is a matter of bits
// here too.
//
// In a closed span it is counted from any line of a stretch to any line of it met again. That is less than what a row breaks that
// comes back to its own line, or the same; only where it is the same do dues serve.
type dues struct {
	t     *table
	nodes []gist // what a seam on each index breaks
	level []gist // what is broken up to an index, that seam too; gistNever where no row leads that breaks the least
	rest  []gist // what is broken after it
	least gist   // in all
	flat  int    // steps that a sheet takes at least to lack nothing of least_width
	by    gist   // what a unit that it lacks costs
	forth dueWindows
	back  dueWindows
}

// newDues finds the rows of a span whose layouts break at least low; nil where they do not serve.
func (p *problem) newDues(low least) *rows {
	t, err := p.table(musts, false, least{})
	if err != nil || !t.gists.exact() || !rowsServe(p.g) {
		return nil
	}
	d := &dues{t: t, by: t.gists.bendsBy, flat: int((t.least + p.s.Snap - 1) / p.s.Snap)}
	far := Square{Lo: uint64(d.by)}.times((2*p.s.whole() + t.least) / t.unit)
	if far.Hi > 0 || gist(far.Lo) >= gistMost {
		return nil
	}
	d.least = t.gists.of(t.of(itemBends, low.bends/t.unit).plus(t.of(itemEdges, low.edges/t.unit)))
	r := &rows{g: p.g, words: 1, width: 1, dues: d}
	if !p.s.Closed {
		return d.found(r)
	}
	for _, r.base = range []int{d.stretch(), t.window()[0]} {
		r.starts = nil
		for i := r.base; i < r.base+p.g.net; i++ {
			if t.gists.of(t.seams[i]) <= d.least {
				r.starts = append(r.starts, i)
			}
		}
		if found := d.found(r); found != nil {
			return found
		}
	}
	return nil
}

// mayHold says whether a seam may stand on a line.
func (d *dues) mayHold(line int) bool { return d.t.gists.of(d.t.seams[line]) <= d.least }

// stretch chooses where rows of a closed span begin: where of as many lines as the net width all break most.
func (d *dues) stretch() (at int) {
	g := d.t.g
	best := gist(0)
	var last []int // lines of which each breaks less than those before it and behind the one before
	for i := range g.lines {
		x := d.t.gists.of(d.t.seams[i])
		for len(last) > 0 && d.t.gists.of(d.t.seams[last[len(last)-1]]) >= x {
			last = last[:len(last)-1]
		}
		last = append(last, i)
		if last[0] <= i-g.net {
			last = last[1:]
		}
		if low := d.t.gists.of(d.t.seams[last[0]]); i >= g.net-1 && low > best {
			best, at = low, i-g.net+1
		}
	}
	return at
}

// found finds the rows, nil where they do not serve or would take too much.
func (d *dues) found(r *rows) *rows {
	// 1. What is broken up to each line and after it;
	if r.words = 1; !r.lay(d.mayHold) {
		return nil
	}
	size := len(r.free)
	d.nodes = make([]gist, size)
	for i, free := range r.free {
		if free {
			d.nodes[i] = d.t.gists.of(d.t.seams[(r.base+i)%r.g.lines])
		}
	}
	d.level, d.rest = nil, nil
	level, rest := make([]gist, size), make([]gist, size)
	d.level = level
	d.levels(r)
	d.rest = rest
	d.rests(r)
	least := gistNever
	for i := range level {
		least = min(least, level[i]+rest[i])
	}
	if r.alone {
		least = min(least, d.lacks(r, 0, r.g.lines))
	}
	if least != d.least {
		return nil
	}
	// 2. the lines that are left, and from which of the starts.
	for i := range level {
		if level[i]+rest[i] != least {
			level[i], rest[i], r.free[i] = gistNever, gistNever, false
		}
	}
	starts := r.starts[:0:0]
	for _, c := range r.starts {
		if level[c-r.base] == 0 && level[c-r.base+r.g.lines] == least {
			starts = append(starts, c)
		}
	}
	free := r.free
	if r.starts, r.words = starts, max(1, (len(starts)+63)/64); !r.lay(d.mayHold) {
		return nil
	}
	copy(r.free, free)
	r.alone = r.alone && d.lacks(r, 0, r.g.lines) == least
	r.goForth(0, size)
	r.goBack(size-1, -1)
	return r
}

// place is where an index stands, from the first one.
func (d *dues) place(r *rows, i int) gist {
	return gist((r.g.at(r.base+i) - r.g.at(r.base)) / d.t.unit)
}

// lacks is what the sheet from one index to another breaks.
func (d *dues) lacks(r *rows, a, b int) gist {
	wide, least := d.place(r, b)-d.place(r, a), gist(d.t.least/d.t.unit)
	if wide >= least {
		return 0
	}
	return (least - wide) * d.by
}

// tight reports whether a sheet from one index to another is part of a row that breaks the least.
func (d *dues) tight(r *rows, a, b int) bool {
	s, end := r.g.s, r.g.lines
	switch lacks := d.lacks(r, a, b); {
	case s.Closed:
		return d.level[a]+lacks+d.nodes[b] == d.level[b]
	case a == 0 && b == end:
		return true // rows.alone says it
	case a == 0 && !s.LeftSeam:
		return lacks+d.nodes[b] == d.level[b]
	case b == end:
		return lacks == d.rest[a]
	default:
		return d.level[a]+lacks+d.nodes[b] == d.level[b]
	}
}

// begins reports whether rows begin on an index, and ends whether they end there.
func (d *dues) begins(r *rows, i int) bool {
	if !r.g.s.Closed {
		return i == 0 && r.g.s.LeftSeam
	}
	at := search(r.starts, i+r.base)
	return at < len(r.starts) && r.starts[at] == i+r.base
}

func (d *dues) ends(r *rows, i int) bool { return r.g.s.Closed && d.begins(r, i-r.g.lines) }
