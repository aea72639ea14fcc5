package seam

import "slices"

// way is one way to keep a pin: wishes to be met together. In a closed span a pin of the closing seam names lines.
type way struct {
	wishes   []wish
	closings []int
}

// ways lists how a pin can be kept; more than one only where a span lies twice over the pin's place, and where two end sheets meet
// there on a grid so coarse that a sheet is one step.
func (g *grid) ways(pin Pin) []way {
	var all []way
	for _, at := range g.copies(pin.At) {
		seams, pairs := g.seamsBy(at), [][2]int(nil)
		if pin.Put == PutMiddle || pin.Put == PutEither {
			pairs = g.middlesBy(at)
		}
		switch pin.Put {
		case PutClose:
			all = append(all, g.closeBy(seams)...)
			continue
		case PutMiddle:
			seams = nil
		}
		if g.hungAmong(seams) {
			return []way{{}}
		}
		all = append(all, g.keep(at, seams, pairs)...)
	}
	return all
}

// copies lists where a place lies as the span is laid.
func (g *grid) copies(at int64) []int64 {
	s := g.s
	switch {
	case s.Closed:
		return []int64{s.after(0, at)}
	case !s.RunClosed:
		return []int64{at}
	}
	var all []int64
	for at = s.L - s.Snap + s.after(s.L-s.Snap, at); at <= s.R+s.Snap; at += s.Period {
		all = append(all, at)
	}
	return all
}

// seamsBy lists the lines within half a snap of a place, hung seams among them.
func (g *grid) seamsBy(at int64) []int {
	s := g.s
	low, high := g.first(), g.lines-1
	if s.Closed {
		low, high = -g.lines, 2*g.lines
	}
	if s.LeftSeam && !s.Closed {
		low = 0
	}
	if s.RightSeam && !s.Closed {
		high = g.lines
	}
	near := int(floorDiv(at-g.at(0), s.Snap))
	var lines []int
	for i := max(low, min(near, g.lines)-2); i <= min(high, near+3); i++ {
		if d := g.at(i) - at; 2*max(d, -d) <= s.Snap {
			lines = append(lines, i)
		}
	}
	return lines
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// hungAmong says whether a hung seam is among lines.
func (g *grid) hungAmong(lines []int) bool {
	if g.s.Closed {
		return false
	}
	return slices.ContainsFunc(lines, func(i int) bool { return i == 0 || i == g.lines })
}

// closeBy keeps a pin of the closing seam on one of the lines.
func (g *grid) closeBy(lines []int) []way {
	if !g.s.Closed {
		if g.s.RightSeam && len(lines) > 0 && lines[len(lines)-1] == g.lines {
			return []way{{}}
		}
		return nil
	}
	if len(lines) == 0 {
		return nil
	}
	closings := []int{}
	for _, i := range lines {
		closings = append(closings, (i+g.lines)%g.lines)
	}
	return []way{{closings: closings}}
}

// middlesBy lists the sheets less than one snap under the net width, or wider, whose middle is within half a snap of
// a place.
func (g *grid) middlesBy(at int64) [][2]int {
	s := g.s
	var pairs [][2]int
	try := func(a, b int) {
		left, right := g.at(a), g.at(b)
		d := floorDiv(left+right, 2) - at
		if !s.Loses(right-left) && 2*max(d, -d) <= s.Snap && left <= at && at <= right {
			pairs = append(pairs, [2]int{a, b})
		}
	}
	near := int(floorDiv(at-s.NetWidth()/2-g.at(0), s.Snap))
	for a := near - 3; a <= near+4; a++ {
		b := a + g.net
		if s.Closed || (a > 0 || a == 0 && s.LeftSeam) && b < g.lines {
			try(a, b)
		}
	}
	if s.Closed {
		return pairs
	}
	if !s.LeftSeam {
		for b := g.firstReach(); b > 0; b-- {
			try(0, b)
		}
	}
	for a := g.lines - 1; a > 0 && s.R-g.at(a) <= s.lastReach(); a-- {
		try(a, g.lines)
	}
	if s.R-s.L <= s.onlyReach() {
		try(0, g.lines)
	}
	return pairs
}

// keep lists the ways to have a seam on one of the lines or a sheet that is one of the pairs.
func (g *grid) keep(at int64, seams []int, pairs [][2]int) []way {
	// One way wherever that can be, for the choices of ways for many pins are more than can be solved one by one:
	// 1. nothing can keep the pin;
	if len(seams) == 0 && len(pairs) == 0 {
		return nil
	}
	// 2. seams are a window that no sheet may pass but those named;
	if len(seams) > 0 {
		return []way{g.turned(wish{low: seams[0], high: seams[len(seams)-1], but: pairs})}
	}
	// 3. sheets alone: the sheet over the place itself has to be one of the pairs, and no seam may fall there.
	line := int(floorDiv(at-g.at(0), g.s.Snap))
	line = min(line, g.lines-1)
	over := func(cell int) []way { // the sheet over one step
		return []way{g.turned(wish{low: cell + 1, high: cell, but: pairs})}
	}
	if g.at(line) != at || line == 0 && !g.s.Closed {
		return over(line)
	}
	// 4. On a coarse grid a sheet beside a seam on the place can be named too, and then each of one step on that side is.
	left := slices.ContainsFunc(pairs, func(pair [2]int) bool { return pair[1] == line })
	right := slices.ContainsFunc(pairs, func(pair [2]int) bool { return pair[0] == line })
	switch {
	case !left && !right:
		return []way{g.turned(wish{low: line, high: line, but: pairs, bar: []int{line}})}
	case !left:
		return over(line)
	case !right:
		return over(line - 1)
	}
	// 5. On both sides: of two sheets at a seam one is of one step, unless both are end sheets, and then each sheet is a way.
	if g.twoEnds(line, pairs) {
		return g.forced(pairs)
	}
	return []way{g.turned(wish{low: line, high: line, but: pairs})}
}

// twoEnds reports whether two end sheets that are not among pairs can meet on a line.
func (g *grid) twoEnds(line int, pairs [][2]int) bool {
	return !g.s.Closed && line <= g.firstReach() && g.s.R-g.at(line) <= g.s.lastReach() &&
		!slices.Contains(pairs, [2]int{0, line}) && !slices.Contains(pairs, [2]int{line, g.lines})
}

// forced lists a way for each pair, with seams on its lines and none between.
func (g *grid) forced(pairs [][2]int) []way {
	var all []way
	for _, pair := range pairs {
		v := way{}
		for _, i := range pair {
			if i > 0 && i < g.lines {
				v.wishes = append(v.wishes, wish{low: i, high: i})
			}
		}
		bar := wish{low: -nowhere, high: nowhere}
		for i := pair[0] + 1; i < pair[1]; i++ {
			bar.bar = append(bar.bar, i)
		}
		v.wishes = append(v.wishes, bar)
		all = append(all, v)
	}
	return all
}

// turned repeats a wish for each turn of a closed span.
func (g *grid) turned(v wish) way {
	if !g.s.Closed {
		return way{wishes: []wish{v}}
	}
	var all way
	for turn := -g.lines; turn <= g.lines; turn += g.lines {
		next := wish{low: v.low + turn, high: v.high + turn}
		for _, pair := range v.but {
			next.but = append(next.but, [2]int{pair[0] + turn, pair[1] + turn})
		}
		for _, i := range v.bar {
			next.bar = append(next.bar, i+turn)
		}
		all.wishes = append(all.wishes, next)
	}
	return all
}
