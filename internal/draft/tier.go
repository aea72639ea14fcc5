package draft

import (
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
	Running bool      // figures count from one mark, both ways, where the origin circle stands
	Zero    int       // of a running tier: which mark that is
	Starts  []float64 // where extension lines begin, across the line; nil: at the object's edge
	Height  float64   // of figures; 0: small
	Bold    bool
	Data    func(i int) []scene.Datum // facts about the i-th figure
	Inner   []float64                 // places along the line that have a stroke and no figure: where equal parts meet that share one
	Upright bool                      // running figures that do not all stand on a level line are turned, each along its own extension line
	Least   float64                   // figures stay between Least and Most along the line, where Most is the greater
	Most    float64
	Bars    []float64 // places along the line at which something else runs across it: no figure stands there

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
	turned     bool    // it reads up the page on a level line
}

// besideAir is how many times the air round a figure stands between two of a row.
const besideAir = 1.8

type spot struct{ along, out float64 }

func (p place) meets(q place, air float64) bool {
	if p.level > 0 && p.level == q.level && !p.turned && !q.turned { // side by side in a row: two figures, not one
		air *= besideAir
	}
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
	if t.Upright && t.Running && !upright && slices.Contains(done, false) {
		return t.turn(k)
	}
	on := slices.Clone(done)
	for _, i := range t.outward(done) {
		p, ok := t.lead(k, i, upright, places, done)
		if !ok {
			return t.fan(k, upright, places, on)
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
	air, gap := k.Of(figureAir), k.Of(figureGap)
	if t.Running || len(t.Inner) > 0 { // it stands over its own stroke, or over those of its parts
		gap += k.Of(tick) / 2
	}
	p := place{in: gap, far: gap + h}
	if !outward {
		p.in, p.far = -p.far, -p.in
	}
	lo, mid, hi, ok := t.stretch(k, i, w)
	if !ok {
		return p, false
	}
	at, ok := t.inGap(k, w, lo, mid, hi)
	if !ok {
		return p, false
	}
	p.along, p.out = at, (p.in+p.far)/2
	p.from, p.to = at-w/2, at+w/2
	p.far += h * drop
	for j, q := range others {
		if done[j] && t.Figures[j] != "" && p.meets(q, air) {
			return p, false
		}
	}
	return p, true
}

// stretch is where on the line a figure may stand, and where its middle would best be. False where the origin circle or
// another mark is in its way.
func (t *Tier) stretch(k Look, i int, w float64) (lo, mid, hi float64, ok bool) {
	if !t.Running {
		lo, hi = t.Marks[i], t.Marks[i+1]
		return lo, (lo + hi) / 2, hi, true
	}
	air, stroke := k.Of(figureAir), k.Of(tick)/3
	mid = t.Marks[i]
	if i == t.Zero {
		mid += k.Of(originSize)/2 + air + w/2 // beside the origin circle
		for j, m := range t.Marks {
			if j > t.Zero && m < mid+w/2+2*air+stroke {
				return 0, 0, 0, false
			}
		}
	} else if math.Abs(mid-t.Marks[t.Zero]) < w/2+air+k.Of(originSize)/2 {
		return 0, 0, 0, false
	}
	return mid - w/2 - air - stroke, mid, mid + w/2 + air, true
}

// inGap finds the middle of a figure on a stretch: the stretch falls into gaps between lines that pass, and the one that
// lets the figure nearest to the middle wins.
func (t *Tier) inGap(k Look, w, lo, mid, hi float64) (best float64, found bool) {
	air := k.Of(figureAir)
	edges := []float64{lo}
	for _, x := range slices.Concat(t.through, t.Bars) {
		if x > lo && x < hi {
			edges = append(edges, x)
		}
	}
	slices.Sort(edges)
	edges = append(edges, hi)
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
	return best, found
}

// middle is the place along the line that a figure belongs to.
func (t *Tier) middle(i int) float64 {
	if t.Running {
		return t.Marks[i]
	}
	return (t.Marks[i] + t.Marks[i+1]) / 2
}

// depth is how far figures reach out from the line.
func depth(places []place) float64 {
	d := 0.0
	for _, p := range places {
		d = math.Max(d, p.far)
	}
	return d
}
