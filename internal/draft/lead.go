package draft

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/scene"
)

// outward lists the figures that have to go out, those at the ends of a row of neighbours first.
func (t *Tier) outward(done []bool) []int {
	var order []int
	t.out = make([]bool, len(done))
	for i := range done {
		t.out[i] = !done[i]
	}
	for i := 0; i < len(done); {
		if done[i] {
			i++
			continue
		}
		j := i
		for j < len(done) && !done[j] {
			j++
		}
		if j-i > 2 {
			for a := i; a < j; a++ {
				order = append(order, a)
			}
			i = j
			continue
		}
		for a, b := i, j-1; a <= b; a, b = a+1, b-1 {
			order = append(order, a)
			if b != a {
				order = append(order, b)
			}
		}
		i = j
	}
	return order
}

// rows is how many rows of figures stand out of a line before all of them are fanned.
const rows = 4

// leaderSlopes are the ways of a leader in the order in which they are tried, as its run along the line to the way out;
// more than 0 is away from the neighbours. At 45 degrees it reads best, to the free side before the other; then straight
// out; then flatter and steeper ones, a little first.
var leaderSlopes = []float64{1, -1, 0, 0.5, -0.5, 1.6, -1.6, 0.25, -0.25}

// lead takes a figure out on a leader, to the first place where both are clear:
//
//  1. Of more than two neighbours that go out together, straight out, row by row: a row of equal narrow parts reads best
//     with its figures under them, in rows by turns.
//  2. Row by row, the nearest first, at each of the slopes: a figure near its part is found sooner than one on a better
//     slope.
func (t *Tier) lead(k Look, i int, upright bool, places []place, done []bool) (place, bool) {
	side, air := t.side(i, done), k.Of(figureAir)
	try := func(level int, slope float64) (place, bool) {
		p := t.perch(k, i, upright, level, slope*side)
		return p, t.clear(p, air, places, done)
	}
	if t.crowd(i) > 2 {
		for level := 1; level <= rows; level++ {
			if p, ok := try(level, 0); ok {
				return p, true
			}
		}
	}
	for level := 1; level <= rows; level++ {
		for _, slope := range leaderSlopes {
			if p, ok := try(level, slope); ok {
				return p, true
			}
		}
	}
	return place{}, false
}

// perch is the place of a figure in a row outside the line, its leader at a slope.
func (t *Tier) perch(k Look, i int, upright bool, level int, slope float64) place {
	h, air := t.height(k), k.Of(figureAir)
	w := scene.Width(t.Figures[i], h, t.Bold)
	mid := t.middle(i)
	d := t.firstRow(k) + k.Of(nextOut)*float64(level-1)
	run := slope * d
	p := place{level: level, lead: [2]spot{{mid, 0}, {mid + run, d}}}
	if upright {
		p.from, p.to = mid+run-h/2-h*drop, mid+run+h/2+h*drop
		p.in, p.far = d+air, d+air+w
	} else {
		switch {
		case run > 0:
			p.from, p.to = mid+run+air, mid+run+air+w
		case run < 0:
			p.from, p.to = mid+run-air-w, mid+run-air
		default:
			p.from, p.to = mid-w/2, mid+w/2
			p.lead[1].out = d - h/2 - h*drop - air
		}
		p.in, p.far = d-h/2-h*drop, d+h/2+h*drop
	}
	p.along, p.out = (p.from+p.to)/2, (p.in+p.far)/2
	return p
}

// fan takes the figures that have no place out to one row, side by side in their order, each on a leader of its own slope. It
// always succeeds: leaders of one order at both ends do not cross. Figures on the line stay where they are on its other side; where
// all look out, all go.
func (t *Tier) fan(k Look, upright bool, inline []place, on []bool) []place {
	h, air := t.height(k), k.Of(figureAir)
	places := make([]place, len(t.Figures))
	stays := func(i int) bool { return !t.outside && on[i] && t.Figures[i] != "" }
	for i := range places {
		if stays(i) {
			places[i] = inline[i]
		}
	}
	half := func(i int) float64 {
		if upright {
			return h/2 + h*drop
		}
		return scene.Width(t.Figures[i], h, t.Bold) / 2
	}
	var list []int
	for i, text := range t.Figures {
		if text != "" && !stays(i) {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(t.middle(a), t.middle(b)) })
	at := make([]float64, len(t.Figures))
	end, shift := math.Inf(-1), 0.0
	for _, i := range list {
		at[i] = math.Max(t.middle(i), end+half(i))
		end = at[i] + half(i) + 2*air
		shift = math.Max(shift, at[i]-t.middle(i))
	}
	// back to the left by half of what the row was pushed to the right, then clear of lines that pass
	end = math.Inf(-1)
	far := t.firstRow(k)
	for _, i := range list {
		at[i] = math.Max(at[i]-shift/2, end+half(i))
		for moved := true; moved; {
			moved = false
			for _, x := range t.through {
				if at[i]-half(i)-air < x && x < at[i]+half(i)+air {
					at[i], moved = x+half(i)+air+1e-6, true
				}
			}
		}
		end = at[i] + half(i) + 2*air
		far = math.Max(far, math.Abs(at[i]-t.middle(i))/2)
	}
	for _, i := range list {
		p := place{level: 1, along: at[i], from: at[i] - half(i), to: at[i] + half(i), lead: [2]spot{{t.middle(i), 0}, {at[i], far}}}
		p.in, p.far = far+air, far+air+h+2*h*drop
		if upright {
			p.far = far + air + scene.Width(t.Figures[i], h, t.Bold)
		}
		p.out = (p.in + p.far) / 2
		places[i] = p
	}
	return places
}

// crowd counts the neighbours that go out together with a figure, itself among them.
func (t *Tier) crowd(i int) int {
	n := 1
	for j := i - 1; j >= 0 && t.out[j]; j-- {
		n++
	}
	for j := i + 1; j < len(t.out) && t.out[j]; j++ {
		n++
	}
	return n
}

// side is the way a leader turns: away from the middle of the row of neighbours that go out with it.
func (t *Tier) side(i int, done []bool) float64 {
	left, right := 0, 0
	for j := i - 1; j >= 0 && !done[j]; j-- {
		left++
	}
	for j := i + 1; j < len(done) && !done[j]; j++ {
		right++
	}
	switch {
	case left < right:
		return -1
	case left > right:
		return 1
	case i < len(t.Figures)/2 || i == 0:
		return -1
	}
	return 1
}

// clear reports whether a figure and its leader touch no other figure, leader or line that passes.
func (t *Tier) clear(p place, air float64, places []place, done []bool) bool {
	if t.Most > t.Least && (p.from < t.Least || p.to > t.Most) {
		return false
	}
	for _, x := range t.through {
		if p.from-air < x && x < p.to+air {
			return false
		}
	}
	for j, q := range places {
		if !done[j] || t.Figures[j] == "" {
			continue
		}
		if p.meets(q, air) || q.struck(p.lead[0], p.lead[1], air) {
			return false
		}
		if q.level > 0 && (p.struck(q.lead[0], q.lead[1], air) || cross(p.lead, q.lead)) {
			return false
		}
	}
	return true
}

// cross reports whether two leaders cross.
func cross(a, b [2]spot) bool {
	turn := func(p, q, r spot) float64 {
		return (q.along-p.along)*(r.out-p.out) - (q.out-p.out)*(r.along-p.along)
	}
	return turn(a[0], a[1], b[0])*turn(a[0], a[1], b[1]) < 0 && turn(b[0], b[1], a[0])*turn(b[0], b[1], a[1]) < 0
}

// turn sets all figures of a running tier upright, each over its own mark, or as near to it as its neighbours let it with a
// short bend of its line.
//
// Source: ordinate dimensions whose figures stand along their extension lines: ISO 129-1 as textbooks restate it.
func (t *Tier) turn(k Look) []place {
	h := t.height(k)
	across := h + 2*h*drop
	gaps := make([]float64, len(t.Marks))
	at := make([]float64, len(t.Marks))
	for i, m := range t.Marks {
		at[i], gaps[i] = m, across+2*k.Of(figureAir)*turnedAir
	}
	at = Spread(at, gaps)
	bent := false
	for i, m := range t.Marks {
		bent = bent || t.Figures[i] != "" && math.Abs(at[i]-m) > straight
	}
	in := k.Of(originSize)/2 + k.Of(figureAir)
	if bent {
		in += k.Of(turnedBend)
	}
	places := make([]place, len(t.Figures))
	for i, text := range t.Figures {
		if text == "" {
			continue
		}
		w := scene.Width(text, h, t.Bold)
		p := place{turned: true, along: at[i], out: in + w/2, from: at[i] - across/2, to: at[i] + across/2, in: in, far: in + w}
		if math.Abs(at[i]-t.Marks[i]) > straight {
			p.level, p.lead = 1, [2]spot{{t.Marks[i], 0}, {at[i], in - k.Of(figureAir)}}
		}
		places[i] = p
	}
	return places
}

// Of figures that are turned, in mm on the office page.
const (
	straight    = 0.05 // a way aside that nobody sees
	turnedAir   = 0.6  // of the air beside other figures: these are read up, line by line
	turnedBend  = 3.2  // height of the bends of their lines
	leastBehind = 1.2  // a shorter piece of a broken line says nothing
	behindAir   = 0.7  // between a balloon and the lines that pass behind it
)
