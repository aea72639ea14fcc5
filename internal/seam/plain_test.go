package seam

// This file is the plain programme the fast one is held against: one pass over all sheets for each first seam of an
// open span and for each closing seam of a closed one, whole score vectors, seams compared one by one. It shares
// nothing with the fast code but the types of span.go.

// Places of the items in a plain score.
const (
	plainBends = iota
	plainEdges
	plainClosing
	plainNarrowMain
	plainNarrow
	plainSheets
	plainNarrowJump
	plainSliver
	plainJump
	plainShould
	plainSeen
	plainDifference
	plainUneven
	plainItems
)

type plainScore [plainItems]int64

func (a plainScore) plus(b plainScore) plainScore {
	for i := range a {
		a[i] += b[i]
	}
	return a
}

// plainOrders holds what counts, first things first.
var plainOrders = map[Aim][]int{
	Steady: {plainBends, plainEdges, plainClosing, plainNarrowMain, plainNarrow, plainSheets, plainNarrowJump, plainSliver, plainJump, plainShould, plainSeen, plainDifference},
	Fewest: {plainBends, plainEdges, plainClosing, plainSheets, plainNarrowMain, plainNarrow, plainNarrowJump, plainSliver, plainJump, plainShould, plainSeen, plainDifference},
	Even:   {plainBends, plainEdges, plainClosing, plainSheets, plainShould, plainUneven, plainSeen},
}

func plainCompare(a, b plainScore, order []int) int {
	for _, item := range order {
		if a[item] != b[item] {
			if a[item] < b[item] {
				return -1
			}
			return 1
		}
	}
	return 0
}

// plainAnswer is a layout on its way: seams from left to right, in a closed span from the closing seam round.
type plainAnswer struct {
	ok    bool
	score plainScore
	seams []int64
}

// plainBetter says that a goes before b: the lesser score, then the larger first seam, then the larger second.
func plainBetter(a, b plainAnswer, order []int) bool {
	if !a.ok || !b.ok {
		return a.ok && !b.ok
	}
	if c := plainCompare(a.score, b.score, order); c != 0 {
		return c < 0
	}
	for i := range min(len(a.seams), len(b.seams)) {
		if a.seams[i] != b.seams[i] {
			return a.seams[i] > b.seams[i]
		}
	}
	return false
}

func plainSolve(s Span, aim Aim) (Layout, bool) {
	must := []int{plainBends, plainEdges}
	kept := []int{}
	base := plainBest(s, kept, must)
	if !base.ok {
		return Layout{}, false
	}
	dropped := []int{}
	for i := range s.Pins {
		with := plainBest(s, append(append([]int{}, kept...), i), must)
		if with.ok && plainCompare(with.score, base.score, must) <= 0 {
			kept = append(kept, i)
		} else {
			dropped = append(dropped, i)
		}
	}
	best := plainBest(s, kept, plainOrders[aim])
	out := Layout{Closing: -1, Dropped: dropped}
	if s.Closed {
		for i, at := range best.seams {
			at %= s.Period
			place := 0
			for place < len(out.Seams) && out.Seams[place] < at {
				place++
			}
			out.Seams = append(out.Seams[:place], append([]int64{at}, out.Seams[place:]...)...)
			if i > 0 && out.Seams[out.Closing] >= at && place <= out.Closing {
				out.Closing++
			}
			if i == 0 {
				out.Closing = place
			}
		}
	} else {
		out.Seams = best.seams
	}
	e := best.score
	out.Score = Score{
		Bends: e[plainBends], Edges: e[plainEdges], Closing: e[plainClosing], NarrowMain: e[plainNarrowMain],
		Narrow: e[plainNarrow], Sheets: e[plainSheets], NarrowJump: e[plainNarrowJump], Sliver: e[plainSliver], Jump: e[plainJump], Should: e[plainShould], Seen: e[plainSeen],
		Difference: e[plainDifference], Unevenness: Square{Lo: uint64(e[plainUneven])},
	}
	return out, true
}

func plainBest(s Span, pins []int, order []int) plainAnswer {
	p := &plainPass{s: s, pins: pins, order: order}
	if !s.Closed {
		p.at = []int64{s.L}
		for at := s.L + s.Snap; at < s.R; at += s.Snap {
			p.at = append(p.at, at)
		}
		p.at = append(p.at, s.R)
		p.measure()
		if !s.OneWall || s.LeftSeam || s.RightSeam {
			return p.run(0)
		}
		var best plainAnswer
		for first := 1; first < len(p.at); first++ {
			if found := p.run(first); plainBetter(found, best, order) {
				best = found
			}
		}
		return best
	}
	var lines []int64
	for at := int64(0); at < s.Period; at += s.Snap {
		lines = append(lines, at)
	}
	var best plainAnswer
	for c := range lines {
		p.at = append([]int64{}, lines[c:]...)
		for _, at := range lines[:c+1] {
			p.at = append(p.at, at+s.Period)
		}
		p.measure()
		found := p.run(0)
		if found.ok {
			found.seams = append([]int64{lines[c]}, found.seams...)
			if plainBetter(found, best, order) {
				best = found
			}
		}
	}
	return best
}

// plainPass finds the best layout between at[0] and at[last].
type plainPass struct {
	s     Span
	pins  []int
	order []int
	at    []int64
	node  []plainScore
	keeps []int
	first int
	memo  map[[2]int]plainAnswer
}

func (p *plainPass) measure() {
	p.node = make([]plainScore, len(p.at))
	p.keeps = make([]int, len(p.at))
	last := len(p.at) - 1
	for i, at := range p.at {
		seam := i > 0 && i < last || i == 0 && (p.s.Closed || p.s.LeftSeam) || i == last && p.s.RightSeam
		if !seam {
			continue
		}
		if !(i == last || i == 0 && !p.s.Closed) {
			p.node[i] = p.s.plainSeam(at)
			if i == 0 {
				p.node[i][plainClosing] = p.node[i][plainSeen]
			}
		}
		for bit, pin := range p.pins {
			put, close := p.s.Pins[pin].Put, p.s.plainWay(at, p.s.Pins[pin].At)*2 <= p.s.Snap
			closing := i == 0 && p.s.Closed || i == last && p.s.RightSeam
			if close && (put == PutSeam || put == PutEither || put == PutClose && closing) {
				p.keeps[i] |= 1 << bit
			}
		}
	}
}

// run takes first as the first seam, or as the end of the only sheet; with nought any will do.
func (p *plainPass) run(first int) plainAnswer {
	p.first = first
	p.memo = map[[2]int]plainAnswer{}
	all := 1<<len(p.pins) - 1
	found := p.from(0, all&^p.keeps[0])
	if found.ok {
		found.score = found.score.plus(p.node[0])
	}
	return found
}

// from is the best way on from a seam at place i, where the pins in need are still to be kept.
func (p *plainPass) from(i, need int) plainAnswer {
	last := len(p.at) - 1
	if i == last {
		return plainAnswer{ok: need == 0}
	}
	if found, done := p.memo[[2]int{i, need}]; done {
		return found
	}
	var best plainAnswer
	for j := i + 1; j <= last; j++ {
		width := p.at[j] - p.at[i]
		if width > p.s.Gross {
			break
		}
		if i == 0 && p.first != 0 && j != p.first {
			continue
		}
		sheet, kept, ok := p.sheet(i, j)
		if !ok {
			continue
		}
		rest := p.from(j, need&^kept&^p.keeps[j])
		if !rest.ok {
			continue
		}
		here := plainAnswer{ok: true, score: rest.score.plus(sheet)}
		if j < last {
			here.score = here.score.plus(p.node[j])
			here.seams = append([]int64{p.at[j]}, rest.seams...)
		}
		if plainBetter(here, best, p.order) {
			best = here
		}
	}
	p.memo[[2]int{i, need}] = best
	return best
}

// sheet is what the sheet from place i to place j costs, and which pins it keeps.
func (p *plainPass) sheet(i, j int) (score plainScore, kept int, ok bool) {
	s, last := p.s, len(p.at)-1
	width := p.at[j] - p.at[i]
	net := (s.Gross - s.Overlap) / s.Snap * s.Snap
	leftRaw := i == 0 && !s.Closed && !s.LeftSeam
	rightRaw := j == last && !s.Closed && !s.RightSeam
	limit := net
	switch {
	case leftRaw && rightRaw:
		limit = s.Gross - s.TrimLeft - s.TrimRight
	case leftRaw:
		limit = s.Gross - s.Overlap/2 - s.TrimLeft
	case rightRaw:
		limit = s.Gross - s.Overlap/2 - s.TrimRight
	}
	if width <= 0 || width > limit {
		return score, 0, false
	}
	whole := s.R - s.L
	if s.Closed {
		whole = s.Period
	}
	if whole >= s.LeastWidth && width < s.LeastWidth {
		score[plainBends] += s.LeastWidth - width
	}
	if width < s.PreferWidth && s.PreferWidth >= s.LeastWidth {
		score[plainShould] += s.PreferWidth - width
	}
	score[plainSheets] = 1
	score[plainUneven] = width * width
	end := i == 0 && !(s.LeftSeam && !s.Closed) || j == last
	if !end && net-width >= s.Snap {
		seen := s.Seen(s.plainHome(p.at[j]))
		score[plainJump] = plainFeet(seen, s.Foot)
		if seen > s.ShortSeam {
			score[plainNarrow] = 1
			if !s.Closed && !(s.LeftSeam && s.RightSeam) {
				score[plainNarrowJump] = score[plainJump]
			}
			for _, main := range s.Main {
				if s.plainOn(p.at[j], main) {
					score[plainNarrowMain] = 1
				}
			}
		}
	}
	if slim := (s.LeastWidth + s.PreferWidth) / 2; s.PreferWidth >= s.LeastWidth && width < slim && leftRaw != rightRaw && j-i < last {
		inner := p.at[i]
		if leftRaw {
			inner = p.at[j]
		}
		if s.Seen(inner) > s.ShortSeam {
			score[plainSliver] = slim - width
		}
	}
	if s.OneWall && leftRaw && !rightRaw {
		// The difference is brought in by the last sheet; the first one is fixed.
		score[plainDifference] = 0
	}
	if s.OneWall && rightRaw && !leftRaw && p.first != 0 {
		d := width - (p.at[p.first] - p.at[0])
		score[plainDifference] = max(d, -d)
	}
	for bit, pin := range p.pins {
		put, at := s.Pins[pin].Put, s.Pins[pin].At
		if put != PutMiddle && put != PutEither {
			continue
		}
		sum := p.at[i] + p.at[j]
		middle := sum / 2
		if sum < 0 && sum%2 != 0 {
			middle--
		}
		if net-width < s.Snap && s.plainWay(middle, at)*2 <= s.Snap && s.plainWithin(at, p.at[i], p.at[j]) {
			kept |= 1 << bit
		}
	}
	return score, kept, true
}

func plainFeet(seen, foot int64) int64 {
	feet := int64(0)
	for feet*foot < seen {
		feet++
	}
	return feet
}

func (s Span) plainRound() bool { return s.Closed || s.RunClosed }

func (s Span) plainWay(a, b int64) int64 {
	d := max(a-b, b-a)
	if s.plainRound() {
		for d > s.Period {
			d -= s.Period
		}
		d = min(d, s.Period-d)
	}
	return d
}

// plainCopies are the places that at stands for.
func (s Span) plainCopies(at int64) []int64 {
	if !s.plainRound() {
		return []int64{at}
	}
	return []int64{at - 2*s.Period, at - s.Period, at, at + s.Period, at + 2*s.Period}
}

func (s Span) plainWithin(at, from, to int64) bool {
	for _, copy := range s.plainCopies(at) {
		if from <= copy && copy <= to {
			return true
		}
	}
	return false
}

func (s Span) plainOn(at int64, main Strip) bool {
	for _, copy := range s.plainCopies(at) {
		if main.From <= copy && copy < main.To {
			return true
		}
	}
	return false
}

// plainSeam is what a seam costs by its place.
func (s Span) plainSeam(at int64) plainScore {
	var e plainScore
	short := func(need, d int64) int64 { return max(0, need-d) }
	prefer := func(want, must int64) int64 {
		if want < must {
			return 0
		}
		return want
	}
	preferReturn := prefer(s.PreferReturn, s.CornerReturn)
	preferLeg := prefer(s.PreferLeg, s.Leg)
	preferClear := prefer(s.PreferClear, s.OpeningClear)
	for _, c := range s.Corners {
		d := min(s.plainWay(at, c.From), s.plainWay(at, c.To))
		if s.plainWithin(at, c.From, c.To) {
			d = 0
		}
		e[plainBends] += short(s.CornerReturn, d)
		e[plainShould] += short(preferReturn, d)
	}
	for _, o := range s.Openings {
		edges := [2]int64{s.plainWay(at, o.A), s.plainWay(at, o.B)}
		on := edges[0] == 0 || edges[1] == 0
		inside := s.plainWithin(at, o.A, o.B)
		if inside && !on && o.Gap {
			continue
		}
		if !inside {
			d := min(edges[0], edges[1])
			if o.Wrap {
				e[plainBends] += short(s.CornerReturn, d)
				e[plainShould] += short(preferReturn, d)
			} else {
				e[plainEdges] += short(s.Leg, d)
				e[plainShould] += short(preferLeg, d)
			}
			continue
		}
		for _, d := range edges {
			switch {
			case !o.Wrap:
				e[plainEdges] += short(s.OpeningClear, d)
				e[plainShould] += short(preferClear, d)
			case d == 0:
				e[plainBends] += s.CornerReturn + s.OpeningClear
				e[plainShould] += preferReturn + preferClear
			default:
				e[plainBends] += short(o.Reveal+s.OpeningClear, d)
				if s.PreferClear >= s.OpeningClear {
					e[plainShould] += short(o.Reveal+s.PreferClear, d)
				}
			}
		}
	}
	for _, k := range s.Keep {
		if s.plainWithin(at, k.From+1, k.To-1) {
			e[plainEdges] += min(s.plainWay(at, k.From), s.plainWay(at, k.To))
		}
	}
	for _, b := range s.Boxes {
		d := min(s.plainWay(at, b.From), s.plainWay(at, b.To))
		if s.plainWithin(at, b.From, b.To) {
			d = 0
		}
		e[plainShould] += short(s.BoxClear, d)
	}
	e[plainSeen] = plainFeet(s.Seen(s.plainHome(at)), s.Foot)
	return e
}

func (s Span) plainHome(at int64) int64 {
	if s.Closed {
		return at % s.Period
	}
	return at
}
