package draft

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/scene"
)

// Distances of dimensions on the office page.
//
// Source: figure about 1 mm above the line, extension lines about 2 mm past it, oblique strokes at 45 degrees: ISO 129-1
// as textbooks restate it. Tiers 9 and 7 apart: ISO 129-1 asks for about 10 and about 7.
const (
	figureGap  = 1.0  // between line and figure
	overshoot  = 2.0  // of extension lines past the dimension line
	objectGap  = 1.0  // between object and extension line
	tick       = 2.4  // length of the stroke at 45 degrees
	figureAir  = 0.7  // between a figure and what stands beside it
	firstOut   = 5.0  // of a figure that goes out on a leader
	nextOut    = 4.5  // from one such row to the next
	tierPitch  = 7.0  // from one tier to the next
	drop       = 0.14 // how far the stroke of a fraction reaches under the line of capitals, share of their height
	originSize = 3.0  // diameter of the origin circle, about 3 mm: ISO 129:1985
)

// Tier is one row of dimensions on one line: a chain between marks, or running ones from an origin.
type Tier struct {
	Name    string    // what it measures, at its left or upper end
	Marks   []float64 // along the line, ascending
	Figures []string  // of a chain: one between each two marks, "" for none; of a running tier: one for each mark
	Running bool      // figures count from the first mark, where the origin circle stands
	Starts  []float64 // where extension lines begin, across the line; nil: at the object's edge
	Height  float64   // of figures; 0: small
	Bold    bool
	Data    func(i int) []scene.Datum // facts about the i-th figure
	Least   float64                   // figures stay between Least and Most along the line, where Most is the greater
	Most    float64

	line    float64   // where the dimension line lies, across
	through []float64 // where extension lines of tiers further out pass
	out     []bool    // figures that do not fit on the line
	outside bool      // figures on the line stand out from it
}

// place is where a figure of a tier stands, in coordinates along the line and out from it.
type place struct {
	along, out float64 // middle of the figure
	level      int     // 0: on the line
	lead       [2]spot // leader, where level > 0
	from, to   float64 // box along
	in, far    float64 // box out
}

type spot struct{ along, out float64 }

func (p place) meets(q place, air float64) bool {
	return p.from-air < q.to && q.from-air < p.to && p.in-air < q.far && q.in-air < p.far
}

// struck reports whether a line between two spots passes through the figure.
func (p place) struck(a, b spot, air float64) bool {
	return Crosses(scene.Pt(a.along, a.out), scene.Pt(b.along, b.out), scene.Box{X0: p.from - air, Y0: p.in - air, X1: p.to + air, Y1: p.far + air})
}

// lay finds a place for every figure: on the line where it fits, else out on a leader, as near as it stays clear.
//
// Shape: one place for each figure; those of empty figures are zero.
func (t *Tier) lay(k Look, upright bool, out float64) []place {
	h := t.height(k)
	places := make([]place, len(t.Figures))
	done := make([]bool, len(t.Figures))
	outward := out < 0 || t.Running // figures stand out from the line, else between it and the object
	t.outside = outward
	for i, text := range t.Figures {
		if text == "" {
			done[i] = true
			continue
		}
		w := scene.Width(text, h, t.Bold)
		if p, ok := t.inline(k, i, w, h, outward, places[:i], done[:i]); ok {
			places[i], done[i] = p, true
		}
	}
	for _, i := range t.outward(done) {
		p, ok := t.lead(k, i, upright, places, done)
		if !ok {
			return t.fan(k, upright)
		}
		places[i], done[i] = p, true
	}
	return places
}

// firstRow is how far out the first row of figures on leaders stands: clear of those on the line where they look out too.
func (t *Tier) firstRow(k Look) float64 {
	h := t.height(k)
	if !t.outside {
		return k.Of(firstOut)
	}
	gap := k.Of(figureGap)
	if t.Running {
		gap += k.Of(tick) / 2
	}
	return math.Max(k.Of(firstOut), gap+h+h*drop+k.Of(figureAir)+h/2+h*drop)
}

func (t *Tier) height(k Look) float64 {
	if t.Height > 0 {
		return t.Height
	}
	return k.Small
}

// inline puts a figure on the line: in the middle of its stretch, or as near to it as the lines that pass allow.
func (t *Tier) inline(k Look, i int, w, h float64, outward bool, others []place, done []bool) (place, bool) {
	air := k.Of(figureAir)
	gap := k.Of(figureGap)
	if t.Running { // it stands over its own stroke
		gap += k.Of(tick) / 2
	}
	p := place{in: gap, far: gap + h}
	if !outward {
		p.in, p.far = -p.far, -p.in
	}
	lo, hi, mid := 0.0, 0.0, 0.0
	if t.Running {
		mid = t.Marks[i]
		if i == 0 {
			mid += k.Of(originSize)/2 + air + w/2 // beside the origin circle
			for _, m := range t.Marks[1:] {
				if m < mid+w/2+2*air+k.Of(tick)/3 {
					return p, false
				}
			}
		}
		lo, hi = mid-w/2-air-k.Of(tick)/3, mid+w/2+air
		if i > 0 && math.Abs(mid-t.Marks[0]) < w/2+air+k.Of(originSize)/2 {
			return p, false
		}
	} else {
		lo, hi = t.Marks[i], t.Marks[i+1]
		mid = (lo + hi) / 2
	}
	// the stretch falls into gaps between lines that pass; the one that lets the figure nearest to the middle wins
	edges := []float64{lo}
	for _, x := range t.through {
		if x > lo && x < hi {
			edges = append(edges, x)
		}
	}
	slices.Sort(edges)
	edges = append(edges, hi)
	best, found := 0.0, false
	for j := 0; j+1 < len(edges); j++ {
		// the stroke at the left mark rises towards the figure
		a, b := math.Max(edges[j], lo+k.Of(tick)/3)+air+w/2, edges[j+1]-air-w/2
		if t.Most > t.Least {
			a, b = math.Max(a, t.Least+w/2), math.Min(b, t.Most-w/2)
		}
		if a > b+1e-9 {
			continue
		}
		c := math.Min(math.Max(mid, a), b)
		if !found || math.Abs(c-mid) < math.Abs(best-mid) {
			best, found = c, true
		}
	}
	if !found {
		return p, false
	}
	p.along, p.out = best, (p.in+p.far)/2
	p.from, p.to = best-w/2, best+w/2
	p.far += h * drop
	for j, q := range others {
		if done[j] && t.Figures[j] != "" && p.meets(q, air) {
			return p, false
		}
	}
	return p, true
}

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

// lead takes a figure out on a leader: at 45 degrees to one side, to the other, straight, at other
// slopes, then a row further out.
func (t *Tier) lead(k Look, i int, upright bool, places []place, done []bool) (place, bool) {
	h, air := t.height(k), k.Of(figureAir)
	w := scene.Width(t.Figures[i], h, t.Bold)
	mid, side := t.middle(i), t.side(i, done)
	type try struct {
		level int
		slope float64
	}
	var tries []try
	if t.crowd(i) > 2 { // a row of equal narrow parts reads best with its figures straight under them, in rows by turns
		for level := 1; level <= rows; level++ {
			tries = append(tries, try{level, 0})
		}
	}
	for level := 1; level <= rows; level++ {
		for _, slope := range []float64{1, -1, 0, 0.5, -0.5, 1.6, -1.6, 0.25, -0.25} {
			tries = append(tries, try{level, slope})
		}
	}
	for _, c := range tries {
		level, d := c.level, t.firstRow(k)+k.Of(nextOut)*float64(c.level-1)
		{
			run := c.slope * side * d
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
			if t.clear(p, air, places, done) {
				return p, true
			}
		}
	}
	return place{}, false
}

// rows is how many rows of figures stand out of a line before all of them are fanned.
const rows = 4

// middle is the place along the line that a figure belongs to.
func (t *Tier) middle(i int) float64 {
	if t.Running {
		return t.Marks[i]
	}
	return (t.Marks[i] + t.Marks[i+1]) / 2
}

// fan takes all figures out to one row, side by side in their order, each on a leader of its own slope. It always
// succeeds: leaders of one order at both ends do not cross.
func (t *Tier) fan(k Look, upright bool) []place {
	h, air := t.height(k), k.Of(figureAir)
	places := make([]place, len(t.Figures))
	half := func(i int) float64 {
		if upright {
			return h/2 + h*drop
		}
		return scene.Width(t.Figures[i], h, t.Bold) / 2
	}
	var list []int
	for i, text := range t.Figures {
		if text != "" {
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

// depth is how far figures reach out from the line.
func depth(places []place) float64 {
	d := 0.0
	for _, p := range places {
		d = math.Max(d, p.far)
	}
	return d
}
