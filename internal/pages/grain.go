package pages

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// Grain is a picture, not a measurement: lines that are computed from where in the flitch a place of the wall comes
// from, so that they go on across a seam where the wood does, and break where it does not: at a narrow sheet, at a
// change of flitch, at the closing seam.
//
// Coordinates: u runs across the flitch, in inches of net width from the first sheet on; what a rip takes away is
// skipped.

// warm is the colour of grain: pale enough that every line and figure stands out from it.
var warm = scene.Colour{R: 205, G: 193, B: 172}

// wood is the colour that grain is drawn in: warm, or the grey that is as bright in a set without colours.
func (s *set) wood() scene.Colour {
	if s.paper.Wood.Colour {
		return warm
	}
	return scene.Grey(warm.Light())
}

// woods are how grain is drawn by cut.
type woods struct {
	plain bool    // cathedrals in the middle of each leaf; else straight
	leaf  float64 // width of a leaf, inches
	book  bool    // every second leaf turned over
	loose bool    // random match: leaves have nothing to do with each other
}

func (s *set) woods() woods {
	v := s.room.Veneer
	w := woods{plain: v.Cut == "plain", book: v.Match == "book", loose: v.Match == "random"}
	w.leaf = float64(v.LeafWidth) / float64(inch)
	if w.leaf <= 0 {
		// Common leaf widths, from memory: plain-sliced 6 to 18 in, quartered 3 to 10 in.
		w.leaf = 6
		if w.plain {
			w.leaf = 12
		}
	}
	return w
}

const inch = 203200

// sources tells for every place of a run where in the flitch its left edge comes from, and how the flitch is seeded.
func (s *set) sources(r *layout.Run) map[int]source {
	out := map[int]source{}
	u, flitch := 0.0, ""
	for i := range r.Sheets {
		sh := &r.Sheets[i]
		if sh.Course > 1 {
			continue
		}
		if i == 0 || sh.Flitch != flitch {
			flitch, u = sh.Flitch, 0
		}
		left := u
		if sh.Ripped == "left" { // the right part of the sheet hangs
			left += inches(s.net() - sh.Width)
		}
		out[sh.Place] = source{left, seedOf(flitch)}
		if sh.Ripped == "" && !sh.End {
			u += inches(sh.Width)
		} else {
			u += inches(s.net())
		}
	}
	return out
}

type source struct {
	u    float64
	seed uint64
}

// net is what an inner sheet covers.
func (s *set) net() L {
	v := s.room.Veneer
	return (v.GrossWidth - v.Overlap) / s.room.Rules.Snap * s.room.Rules.Snap
}

func inches(l L) float64 { return float64(l) / inch }

func seedOf(text string) uint64 {
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(text) {
		h = (h ^ uint64(text[i])) * 1099511628211
	}
	return h
}

// noise is an even number from 0 to 1 that depends on nothing but its arguments.
//
// Source: the finalizer of MurmurHash3.
func noise(seed uint64, n ...int) float64 {
	h := seed
	for _, v := range n {
		h ^= uint64(int64(v)) * 0x9e3779b97f4a7c15
		h ^= h >> 33
		h *= 0xff51afd7ed558ccd
		h ^= h >> 33
		h *= 0xc4ceb9fe1a85ec53
		h ^= h >> 33
	}
	return float64(h>>11) / (1 << 53)
}

// strand is one grain line of a leaf: where it stands across the leaf at a height, both as shares, and how strong.
type strand struct {
	points []scene.Point // x across the leaf 0..1, y up the wall in feet
	weight float64
}

// strands are the lines of one leaf of a flitch from the floor to a height in feet.
func (w woods) strands(seed uint64, leaf int, height float64) []strand {
	if w.loose {
		seed += uint64(leaf) * 7919
		leaf = 0
	}
	if w.plain {
		return w.cathedrals(seed, leaf, height)
	}
	return w.straight(seed, leaf, height)
}

// straight are lines up the leaf that hardly waver, close in one part and wide in another. From leaf to leaf they
// drift a little, as slices of one log do.
func (w woods) straight(seed uint64, leaf int, height float64) []strand {
	n := int(w.leaf*2.2) + 3
	var out []strand
	x := 0.0
	for i := range n {
		x += (0.45 + 1.1*noise(seed, 1, i)) / float64(n)
		drift := 0.05 * (noise(seed, 2, i, leaf/3) - 0.5)
		lean := 0.05 * (noise(seed, 3, i) - 0.5)
		at := x + drift
		s := strand{weight: 0.7 + 0.6*noise(seed, 4, i)}
		const steps = 4
		for j := range steps + 1 {
			t := float64(j) / steps
			bend := 0.012 * math.Sin(6.3*(t+noise(seed, 5, i)))
			s.points = append(s.points, scene.Pt(at+lean*(t-0.5)+bend, t*height))
		}
		out = append(out, s)
	}
	return out
}

// cathedrals are nested arches in the middle of the leaf, and straight lines along its sides.
func (w woods) cathedrals(seed uint64, leaf int, height float64) []strand {
	var out []strand
	mid := 0.5 + 0.14*(noise(seed, 11)-0.5)
	for i := range 5 { // sides
		for side := range 2 {
			at := 0.02 + 0.045*float64(i) + 0.02*noise(seed, 12, i, side)
			if side == 1 {
				at = 1 - at
			}
			s := strand{weight: 0.7 + 0.6*noise(seed, 13, i, side)}
			for j := range 7 {
				t := float64(j) / 6
				s.points = append(s.points, scene.Pt(at+0.012*math.Sin(6.3*(t*1.3+noise(seed, 14, i))), t*height))
			}
			out = append(out, s)
		}
	}
	// arches: each a parabola that opens downward, one above the other, climbing with the leaf
	pitch := 1.15
	shift := pitch * (noise(seed, 15) + 0.11*float64(leaf%9))
	for i := -8; float64(i)*pitch+shift < height+1; i++ {
		tip := float64(i)*pitch + shift + 0.5*noise(seed, 16, i)
		if tip <= 0 {
			continue
		}
		spread := 0.24 + 0.05*noise(seed, 17, i)
		reach := 5.5 + 3*noise(seed, 18, i) // feet from the tip to where the arch runs along the side
		var s strand
		s.weight = 0.8 + 0.5*noise(seed, 19, i)
		for j := -12; j <= 12; j++ {
			t := float64(j) / 12
			y := tip - reach*t*t*(0.35+0.65*math.Abs(t))
			s.points = append(s.points, scene.Pt(mid+spread*t+0.01*math.Sin(y*2.1+float64(i)), y))
		}
		out = append(out, s)
	}
	return out
}

// heavier is the next pen of the series, in mm.
//
// Source: ISO 128-2, each width the one before times the root of two.
func heavier(pen float64) float64 {
	for _, w := range []float64{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1} {
		if w > pen+1e-9 {
			return w
		}
	}
	return pen
}

// grain draws the grain of the parts of a wall, clear of openings and of what else must stay white.
func (e *elevation) grain(g *scene.Group, clear []scene.Box) {
	if !e.paper.Wood.Grain {
		return
	}
	w, sources := e.woods(), e.sources(e.f.run)
	if e.f.run.Up {
		e.levelGrain(g, w, sources, clear)
		return
	}
	feet := inches(e.f.high-e.f.low)/12 + 1
	pen := scene.Pen(scene.Grain, e.look.Grain).In(e.wood())
	lines := [2][]scene.Point{}
	for _, p := range e.f.parts {
		src, ok := sources[p.place]
		if !ok {
			continue
		}
		from, to := max(p.from, e.from), min(p.to, e.to)
		if from >= to {
			continue
		}
		box := scene.Box{X0: e.v.X(from), Y0: -1e5, X1: e.v.X(to), Y1: 1e5}
		start := src.u + inches(e.partStart(p))
		end := start + inches(p.to-p.from)
		for leaf := int(math.Floor(start / w.leaf)); float64(leaf)*w.leaf < end; leaf++ {
			strands := w.strands(src.seed, leaf, feet)
			// lines that would run together on paper are thinned out
			keep := w.leaf * 25.4 / float64(e.v.Scale) / float64(len(strands)) / 0.38
			for i, s := range strands {
				if noise(src.seed, 6, i) > keep {
					continue
				}
				var row []scene.Point
				for _, q := range s.points {
					across := q.X
					if w.book && leaf%2 != 0 {
						across = 1 - across
					}
					x := (float64(leaf)+across)*w.leaf - start // inches from the part's left edge
					row = append(row, scene.Pt(e.v.X(p.from)+x*25.4/float64(e.v.Scale), e.v.Y(e.f.low)-q.Y*304.8/float64(e.v.Scale)))
				}
				kind := 0
				if s.weight > 1 {
					kind = 1
				}
				lines[kind] = append(lines[kind], clipped(row, box, clear)...)
			}
		}
		e.leafJoints(g, w, p, start, end, box, clear)
	}
	for i, width := range []float64{pen.Width, heavier(pen.Width)} {
		if len(lines[i]) > 0 {
			style := pen
			style.Width = width
			g.Path(style, chained(lines[i])...)
		}
	}
}

// levelGrain draws the grain of bands: as that of a wall laid on its side.
func (e *elevation) levelGrain(g *scene.Group, w woods, sources map[int]source, clear []scene.Box) {
	feet := inches(e.to-e.from)/12 + 1
	var lines []scene.Point
	for _, p := range e.f.parts {
		s := p.sheet()
		src, ok := sources[p.place]
		if !ok {
			continue
		}
		box := scene.Box{X0: e.v.X(max(p.from, e.from)), Y0: e.v.Y(s.Right), X1: e.v.X(min(p.to, e.to)), Y1: e.v.Y(s.Left)}
		start := src.u
		end := start + inches(s.Right-s.Left)
		for leaf := int(math.Floor(start / w.leaf)); float64(leaf)*w.leaf < end; leaf++ {
			strands := w.strands(src.seed+uint64(s.Course), leaf, feet)
			keep := w.leaf * 25.4 / float64(e.v.Scale) / float64(len(strands)) / 0.38
			for i, t := range strands {
				if noise(src.seed, 6, i) > keep {
					continue
				}
				var row []scene.Point
				for _, q := range t.points {
					up := (float64(leaf)+q.X)*w.leaf - start
					row = append(row, scene.Pt(e.v.X(e.from)+q.Y*304.8/float64(e.v.Scale), e.v.Y(s.Left)-up*25.4/float64(e.v.Scale)))
				}
				lines = append(lines, clipped(row, box, clear)...)
			}
		}
	}
	if len(lines) > 0 {
		g.Path(scene.Pen(scene.Grain, e.look.Grain).In(e.wood()), chained(lines)...)
	}
}

// partStart is how far into its sheet's net width a part of a wall begins: the rest of the sheet lies round the corner.
func (e *elevation) partStart(p part) L {
	s := p.sheet()
	at := e.f.st.Shift + p.from - s.Left
	if e.f.run.Closed {
		for at >= e.f.run.Length {
			at -= e.f.run.Length
		}
		for at < 0 {
			at += e.f.run.Length
		}
		if at > s.Width { // a leaning edge just left of the sheet
			at = 0
		}
	}
	return max(at, 0)
}

// leafJoints draws the joints between leaves inside a sheet, dotted, where the room file gives their width.
func (e *elevation) leafJoints(g *scene.Group, w woods, p part, start, end float64, box scene.Box, clear []scene.Box) {
	if e.room.Veneer.LeafWidth == 0 || w.leaf*25.4/float64(e.v.Scale) < 2.5 {
		return
	}
	net := inches(e.net())
	pen := scene.Pen(scene.Grain, e.look.Dimension).In(scene.Grey(0.55)).As(scene.Dotted(2 * e.look.Dimension))
	first := math.Floor(start/w.leaf) + 1
	for u := first * w.leaf; u < end-1e-6; u += w.leaf {
		if math.Mod(u+1e-6, net) < 1e-3 {
			continue
		}
		x := e.v.X(p.from) + (u-start)*25.4/float64(e.v.Scale)
		if x <= box.X0+0.4 || x >= box.X1-0.4 {
			continue
		}
		points := clipped([]scene.Point{scene.Pt(x, e.v.Y(e.f.low)), scene.Pt(x, e.v.Y(e.f.high))}, box, clear)
		for i := 0; i+1 < len(points); i += 2 {
			g.Line(points[i], points[i+1], pen)
		}
	}
}

// clipped gives the strokes of a row of points inside a box and outside others, as pairs.
func clipped(row []scene.Point, box scene.Box, clear []scene.Box) []scene.Point {
	var out []scene.Point
	for i := 0; i+1 < len(row); i++ {
		a, b := row[i], row[i+1]
		t0, t1, ok := draft.Clip(a, b, box)
		if !ok {
			continue
		}
		at := func(t float64) scene.Point { return scene.Pt(a.X+(b.X-a.X)*t, a.Y+(b.Y-a.Y)*t) }
		out = append(out, draft.Outside(at(t0), at(t1), clear...)...)
	}
	return out
}

// chained turns pairs into steps, going on without lifting the pen where one ends as the next begins.
func chained(pairs []scene.Point) []scene.Step {
	var steps []scene.Step
	for i := 0; i+1 < len(pairs); i += 2 {
		if i == 0 || pairs[i] != pairs[i-1] {
			steps = append(steps, scene.Step{Kind: scene.MoveTo, P: pairs[i]})
		}
		steps = append(steps, scene.Step{Kind: scene.LineTo, P: pairs[i+1]})
	}
	return steps
}
