package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
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
func wood(s *folio.Set) scene.Colour {
	if s.Paper.Wood.Colour {
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

func woodsOf(s *folio.Set) woods {
	v := s.Room.Veneer
	w := woods{plain: v.Cut == "plain", book: v.Match == "book", loose: v.Match == "random"}
	w.leaf = float64(v.LeafWidth) / float64(length.Inch)
	if w.leaf <= 0 {
		// Common leaf widths, from memory: plain-sliced 6 to 18 in, quartered 3 to 10 in.
		w.leaf = 6
		if w.plain {
			w.leaf = 12
		}
	}
	return w
}

// sources tells for every place of a run where in the flitch its left edge comes from, and how the flitch is seeded.
func sources(s *folio.Set, r *layout.Run) map[int]source {
	out := map[int]source{}
	u, flitch := 0.0, ""
	for i := range r.Sheets {
		sh := &r.Sheets[i]
		if !sh.Lowest {
			continue
		}
		if i == 0 || sh.Flitch != flitch {
			flitch, u = sh.Flitch, 0
		}
		left := u
		if sh.Ripped == "left" { // the right part of the sheet hangs
			left += Inches(s.Room.NetWidth() - sh.Width)
		}
		out[sh.Place] = source{left, seedOf(flitch)}
		if sh.Ripped == "" && !sh.End {
			u += Inches(sh.Width)
		} else {
			u += Inches(s.Room.NetWidth())
		}
	}
	return out
}

type source struct {
	u    float64
	seed uint64
}

// Inches is a length as a number of inches.
func Inches(l L) float64 { return float64(l) / float64(length.Inch) }

// grain draws the grain of the parts of a wall, clear of openings and of what else must stay white.
func (e *View) grain(g *scene.Group, clear []scene.Box) {
	if !e.Paper.Wood.Grain {
		return
	}
	w, sources := woodsOf(e.Board.Set), sources(e.Board.Set, e.F.Run)
	if e.F.Run.Up {
		e.levelGrain(g, w, sources, clear)
		return
	}
	feet := Inches(e.F.High-e.F.Low)/12 + 1
	pen := scene.Pen(scene.Grain, e.Look.Grain).In(wood(e.Board.Set))
	lines := [2][]scene.Point{}
	for _, p := range e.strips() {
		src, ok := sources[p.place]
		if !ok || p.from >= p.to {
			continue
		}
		box := scene.Box{X0: e.V.X(p.from), Y0: -1e5, X1: e.V.X(p.to), Y1: 1e5}
		start := src.u + Inches(p.start)
		end := start + Inches(p.to-p.from)
		e.leaves(w, src, 0, start, end, feet, func(leaf int, t strand) {
			var row []scene.Point
			for _, q := range t.points {
				across := q.X
				if w.book && leaf%2 != 0 {
					across = 1 - across
				}
				x := (float64(leaf)+across)*w.leaf - start // inches from the strip's left edge
				row = append(row, scene.Pt(e.V.X(p.from)+x*perInch/float64(e.V.Scale), e.V.Y(e.F.Low)-q.Y*perFoot/float64(e.V.Scale)))
			}
			kind := 0
			if t.weight > 1 {
				kind = 1
			}
			lines[kind] = append(lines[kind], clipped(row, box, clear)...)
		})
		e.leafJoints(g, w, p.from, start, end, box, clear)
	}
	for i, width := range []float64{pen.Width, heavier(pen.Width)} {
		if len(lines[i]) > 0 {
			style := pen
			style.Width = width
			g.Path(style, chained(lines[i])...)
		}
	}
}

// strip is what shows of one sheet between two lines of the wall; start is how far into the sheet's net width it begins.
type strip struct {
	place           int
	from, to, start L
}

// strips are the strips of the view, from left to right as the parts of the wall, then what comes onto it from sheets of the walls
// beside. At an end of the wall that leans outwards a strip goes on past the wall's foot: to its head, or to the seam of what comes
// from beside.
func (e *View) strips() []strip {
	left, right := e.From, e.To
	for _, p := range e.F.Outline(e.F.W.CoverFloor(), e.F.W.CoverCeiling(), e.From, e.To) {
		left, right = min(left, p.X), max(right, p.X)
	}
	var beside []strip
	for i := range e.F.Slivers {
		switch s := &e.F.Slivers[i]; {
		case !e.sliverHere(s):
		case s.Right:
			right = min(right, s.X)
			beside = append(beside, strip{s.Place, s.X, s.Far, 0})
		default:
			left = max(left, s.X)
			beside = append(beside, strip{s.Place, s.Far, s.X, s.Sheets[0].Width - (s.X - s.Far)})
		}
	}
	var list []strip
	for _, p := range e.F.Parts {
		from, to := max(p.From, e.From), min(p.To, e.To)
		if p.From == e.F.Left {
			from = min(from, left)
		}
		if p.To == e.F.Right {
			to = max(to, right)
		}
		list = append(list, strip{p.Place, from, to, e.partStart(p) + from - p.From})
	}
	return append(list, beside...)
}

// Millimetres in the units in which grain is computed.
const (
	perInch = 25.4
	perFoot = 12 * perInch
)

// grainPitch is how far apart lines of grain stand on paper on the average, in mm, at every scale: closer ones would run together,
// and a large drawing with wide ones would look of another wood than a small one.
const grainPitch = 0.42

// leaves calls draw with the strands of every leaf between two places of a flitch, in inches, as high as given in feet: as many as
// stand at their pitch on paper.
func (e *View) leaves(w woods, src source, course int, start, end, feet float64, draw func(leaf int, t strand)) {
	for leaf := int(math.Floor(start / w.leaf)); float64(leaf)*w.leaf < end; leaf++ {
		for _, t := range w.strands(src.seed+uint64(course), leaf, feet, w.leaf*perInch/float64(e.V.Scale)/grainPitch) {
			draw(leaf, t)
		}
	}
}

// levelGrain draws the grain of bands: as that of a wall laid on its side, with one pen and no leaf turned over.
func (e *View) levelGrain(g *scene.Group, w woods, sources map[int]source, clear []scene.Box) {
	feet := Inches(e.To-e.From)/12 + 1
	var lines []scene.Point
	for _, p := range e.F.Parts {
		s := p.Sheet()
		src, ok := sources[p.Place]
		if !ok {
			continue
		}
		box := scene.Box{X0: e.V.X(max(p.From, e.From)), Y0: e.V.Y(s.Right), X1: e.V.X(min(p.To, e.To)), Y1: e.V.Y(s.Left)}
		start := src.u
		e.leaves(w, src, s.Course, start, start+Inches(s.Right-s.Left), feet, func(leaf int, t strand) {
			var row []scene.Point
			for _, q := range t.points {
				up := (float64(leaf)+q.X)*w.leaf - start
				row = append(row, scene.Pt(e.V.X(e.From)+q.Y*perFoot/float64(e.V.Scale), e.V.Y(s.Left)-up*perInch/float64(e.V.Scale)))
			}
			lines = append(lines, clipped(row, box, clear)...)
		})
	}
	if len(lines) > 0 {
		g.Path(scene.Pen(scene.Grain, e.Look.Grain).In(wood(e.Board.Set)), chained(lines)...)
	}
}

// partStart is how far into its sheet's net width a part of a wall begins: the rest of the sheet lies round the corner.
func (e *View) partStart(p face.Part) L {
	s := p.Sheet()
	at := e.F.St.Shift + p.From - s.Left
	if e.F.Run.Closed {
		for at >= e.F.Run.Length {
			at -= e.F.Run.Length
		}
		for at < 0 {
			at += e.F.Run.Length
		}
		if at > s.Width { // a leaning edge just left of the sheet
			at = 0
		}
	}
	return max(at, 0)
}

// leafJoints draws the joints between leaves inside a sheet, dotted, where the room file gives their width.
func (e *View) leafJoints(g *scene.Group, w woods, from L, start, end float64, box scene.Box, clear []scene.Box) {
	if e.Room.Veneer.LeafWidth == 0 || w.leaf*perInch/float64(e.V.Scale) < 2.5 {
		return
	}
	net := Inches(e.Room.NetWidth())
	pen := scene.Pen(scene.Grain, e.Look.Dimension).In(scene.Grey(0.55)).As(scene.Dotted(2 * e.Look.Dimension))
	first := math.Floor(start/w.leaf) + 1
	for u := first * w.leaf; u < end-1e-6; u += w.leaf {
		if math.Mod(u+1e-6, net) < 1e-3 {
			continue
		}
		x := e.V.X(from) + (u-start)*perInch/float64(e.V.Scale)
		if x <= box.X0+0.4 || x >= box.X1-0.4 {
			continue
		}
		points := clipped([]scene.Point{scene.Pt(x, e.V.Y(e.F.Low)), scene.Pt(x, e.V.Y(e.F.High))}, box, clear)
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
