package seam

import "slices"

// way is one way to keep a pin: wishes to be met together. In a closed span a pin of the closing seam names lines.
type way struct {
	wishes   []wish
	closings []int
}

// ways lists how a pin can be kept; more than one only where a span lies twice over the pin's place, or where sheets
// are so few steps wide that its window says nothing of them.
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

// leastNet is the net width, in steps, under which the window of a pin says nothing of the sheets that keep it.
const leastNet = 3

// keep lists the ways to have a seam on one of the lines or a sheet that is one of the pairs.
func (g *grid) keep(at int64, seams []int, pairs [][2]int) []way {
	// As few ways as can be, for each is solved by itself:
	// 1. nothing can keep the pin; 2. seams alone are one window that no sheet may pass;
	if len(seams) == 0 && len(pairs) == 0 {
		return nil
	}
	if len(pairs) == 0 {
		return []way{g.turned(wish{low: seams[0], high: seams[len(seams)-1]})}
	}
	// 3. with sheets so few steps wide that windows say nothing of them, each seam and each sheet is a way;
	if g.net < leastNet {
		return g.forced(seams, pairs)
	}
	// 4. seams or sheets: the window, which the sheets named may pass;
	if len(seams) > 0 {
		return []way{g.turned(wish{low: seams[0], high: seams[len(seams)-1], but: pairs})}
	}
	// 5. sheets alone: the sheet over the place itself has to be one of the pairs.
	line := int(floorDiv(at-g.at(0), g.s.Snap))
	line = min(line, g.lines-1)
	if g.at(line) == at {
		return []way{g.turned(wish{low: line, high: line, but: pairs, bar: []int{line}})}
	}
	return []way{g.turned(wish{low: line + 1, high: line, but: pairs})}
}

// forced lists a way for each pair, with seams on its lines and none between, and one for the seams.
func (g *grid) forced(seams []int, pairs [][2]int) []way {
	var all []way
	if len(seams) > 0 {
		all = append(all, g.turned(wish{low: seams[0], high: seams[len(seams)-1]}))
	}
	for _, pair := range pairs {
		v := way{}
		for _, i := range pair {
			if g.s.Closed || i > 0 && i < g.lines {
				v.wishes = append(v.wishes, g.turned(wish{low: i, high: i}).wishes...)
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
