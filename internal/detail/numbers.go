package detail

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Names letters the bends of a chain, each on its outer side, with its angle where it is not square and its radius; and
// the mark of the detail at a raw end.
func (p *ChainPlan) Names() {
	k := p.Look
	for v, x := range p.Verts {
		if len(p.Bends) == 1 {
			continue
		}
		lines := []string{x.Name}
		if a := math.Abs(x.Turn); a != 90 {
			lines = append(lines, Angle(a))
		}
		if x.C == nil {
			lines = append(lines, "cut")
		} else if x.C.Radius > 0 {
			lines = append(lines, "R "+p.Style.Format(x.C.Radius))
		}
		w := 0.0
		for i, line := range lines {
			w = math.Max(w, scene.Width(line, k.Small, i == 0))
		}
		pitch := k.Small * 1.6
		h := k.Small + pitch*float64(len(lines)-1)
		out := math.Copysign(1, -x.Turn)
		at := p.Round(v, 0)[len(p.Round(v, 0))/2]
		far := p.Corner(v, out*10)
		dx, dy := far.X-p.Corner(v, 0).X, far.Y-p.Corner(v, 0).Y
		l := math.Hypot(dx, dy)
		dx, dy = dx/l, dy/l
		box, ok := p.Beside(at, dx, dy, w, h)
		if !ok {
			p.Lost++
		}
		in := p.G.Part(scene.Tag{Class: "corner", Title: "corner " + x.Name, Data: []scene.Datum{folio.Datum("name", x.Name)}})
		for i, line := range lines {
			in.Text(scene.Text{At: scene.Pt(box.Centre().X, box.Y0+k.Small+pitch*float64(i)), String: line, Height: k.Small, Bold: i == 0, Anchor: scene.Middle, Layer: scene.Notes})
		}
		p.Space.Take(box)
	}
}

// Beside finds a free box near a place: straight out in a direction, then turned away from it.
func (p *ChainPlan) Beside(at scene.Point, dx, dy, w, h float64) (scene.Box, bool) {
	k := p.Look
	for _, turns := range [][]float64{{0, 20, -20, 35, -35}, {60, -60, 90, -90, 130, -130, 180}} {
		for out := 3.0; out < 26; out += 0.6 {
			for _, turn := range turns {
				sin, cos := scene.SinCos(turn)
				c := at.Add((dx*cos-dy*sin)*k.Of(out), (dx*sin+dy*cos)*k.Of(out))
				box := scene.Box{X0: c.X - w/2, Y0: c.Y - h/2, X1: c.X + w/2, Y1: c.Y + h/2}
				if p.Space.Free(box, k.Of(0.9)) {
					return box, true
				}
			}
		}
	}
	return scene.BoxAt(at.X, at.Y, w, h), false
}

// MarkSize is how large the marks round the sheet numbers of a set are: circles of the least diameter or as much as the
// longest number needs; where that is too much, as high as asked for and so much longer, with round ends.
func MarkSize(s *folio.Set, least float64) (w, h float64) {
	const air = 0.65
	k := s.Look
	w, h = k.Of(least), k.Of(least)
	for i := range s.Plan.Runs {
		for j := range s.Plan.Runs[i].Sheets {
			word := scene.Width(elevation.NumberOf(&s.Plan.Runs[i].Sheets[j]), k.Medium, true)
			d := math.Ceil(4*(math.Hypot(word, k.Medium)+2*air+k.Seam)) / 4
			if d > k.Of(11) { // the corners of the number clear the round ends
				r := h/2 - air - k.Seam/2
				d = math.Ceil(4*(word+h-2*math.Sqrt(r*r-k.Medium*k.Medium/4))) / 4
			}
			w = math.Max(w, d)
		}
	}
	if w <= k.Of(11) {
		h = w
	}
	return w, h
}

// Mark letters the number of a sheet in its circle, or in a mark with round ends.
func (p *ChainPlan) Mark(g *scene.Group, c scene.Point, w, h float64, word string) {
	k := p.Look
	if w == h {
		p.Space.Take(draft.Disc(g, k, scene.Numbers, c, w, k.Seam, word, k.Medium, true))
		return
	}
	var points []scene.Point
	for i := range 26 {
		a := float64(i%13)*15 - 90
		if i >= 13 {
			a += 180
		}
		sin, cos := scene.SinCos(a)
		x := math.Copysign((w-h)/2, 12.5-float64(i))
		points = append(points, c.Add(x+h/2*cos, -h/2*sin))
	}
	g.Polygon(scene.Pen(scene.Numbers, k.Seam).Filled(scene.White), points...)
	g.Text(scene.Text{At: c, String: word, Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers})
	p.Space.Take(scene.Box{X0: c.X - w/2, Y0: c.Y - h/2, X1: c.X + w/2, Y1: c.Y + h/2}.Inset(-k.Seam / 2))
}

// Numbers letters the sheets: first those that go round a bend, at the bend where there is one alone, then the others.
func (p *ChainPlan) Numbers() {
	list := p.Sheets()
	for _, r := range list {
		if len(r.Bends) > 0 {
			p.Number(r, 9)
		}
	}
	for _, r := range list {
		if len(r.Bends) == 0 && !r.Stub {
			p.Number(r, 7.5)
		}
	}
	for _, r := range list {
		if r.Stub {
			p.Number(r, 7.5)
		}
	}
	k := p.Look
	for _, x := range p.Stops {
		mark := p.EndMark(x.Kind)
		if !x.Raw || x.Beyond || mark == "" || p.Inner(x.Seg) {
			continue
		}
		d := math.Max(k.Of(6.4), math.Hypot(scene.Width(mark, k.Small, true), k.Small)+1.3+k.Thin)
		sg := &p.Segs[x.Seg]
		side := -p.Sides[x.Seg]
		box, ok := p.Beside(p.On(x.Seg, x.Along, side*math.Max(p.Bt, p.Vo)), sg.R.X*side, sg.R.Y*side, d, d)
		if !ok {
			p.Lost++
			continue
		}
		in := p.G.Part(scene.Tag{Class: "termination-mark", Title: x.End})
		p.Space.Take(draft.Disc(in, k, scene.Marks, box.Centre(), d, k.Thin, mark, k.Small, true))
	}
}

// Number letters one sheet.
func (p *ChainPlan) Number(r SheetRun, least float64) {
	k := p.Look
	w, h := MarkSize(p.Set, least)
	sh := elevation.SheetAt(p.Set, r.Place)
	if sh == nil || len(p.Path(r, p.Vo)) < 2 {
		return
	}
	c, foot, ok := p.NumberPlace(r, w, h)
	if !ok {
		p.Lost++
		return
	}
	in := p.G.Part(scene.Tag{Class: "sheet-number", Data: []scene.Datum{folio.Datum("place", fmt.Sprint(r.Place))}})
	if foot != (scene.Point{}) {
		dx, dy := foot.X-c.X, foot.Y-c.Y
		l := math.Hypot(dx, dy)
		near := h / 2 // the leader ends on the rim: of the middle circle, or of the longer one at that end
		end := c.Add(dx/l*near, dy/l*near)
		if w > h {
			m := c.Add(math.Copysign((w-h)/2, dx), 0)
			ex, ey := foot.X-m.X, foot.Y-m.Y
			e := math.Hypot(ex, ey)
			end = m.Add(ex/e*near, ey/e*near)
		}
		draft.Leader(in, k, p.Space, foot, end)
	}
	p.Mark(in, c, w, h, elevation.NumberOf(sh))
}

// FacePart is what of a sheet lies on one segment.
type FacePart struct {
	Seg      int
	From, To float64
}

// Parts are the parts of a sheet on its segments.
func (p *ChainPlan) Parts(r SheetRun) []FacePart {
	n := len(p.Segs)
	if len(r.Bends) == 0 {
		return []FacePart{{r.From.Seg, r.From.Along, r.To.Along}}
	}
	list := []FacePart{{r.From.Seg, r.From.Along, p.Segs[r.From.Seg].Long}}
	for j := 1; j < len(r.Bends); j++ {
		i := (r.From.Seg + j) % n
		list = append(list, FacePart{i, 0, p.Segs[i].Long})
	}
	return append(list, FacePart{r.To.Seg, 0, r.To.Along})
}

// NumberPlace finds where the number of a sheet stands: in the angle of a bend that stands alone, else beside its longest
// face, away from the dimensions, else beside another or on the other side, else further off on a leader, whose foot is
// given.
func (p *ChainPlan) NumberPlace(r SheetRun, w, h float64) (c, foot scene.Point, ok bool) {
	k := p.Look
	free := func(c scene.Point) bool {
		return p.Space.Free(scene.Box{X0: c.X - w/2, Y0: c.Y - h/2, X1: c.X + w/2, Y1: c.Y + h/2}, k.Of(0.7))
	}
	parts := p.Parts(r)
	if len(p.Bends) == 1 && len(r.Bends) == 1 {
		sign := math.Copysign(1, p.Verts[0].Turn)
		first := 15.1 // as far as it looks well; where the bend is sharp, further out
		if sign < 0 {
			first = 17.1
		}
		for more := first; more < first+16; more += 2 {
			if c := p.InAngle(0, sign, k.Of(more)+w/2-k.Of(4.5)); free(c) {
				return c, foot, true
			}
		}
	}
	SortParts(parts)
	clear := func(seg int, side float64) float64 { // of its middle from the face: half of what it takes across the face
		r := p.Segs[seg].R
		half := math.Abs(r.X)*(w-h)/2 + h/2
		if side > 0 {
			return p.Vo + k.Of(2.4) + half
		}
		return p.Bt + k.Of(1.9) + half
	}
	if r.Stub {
		near := r.To
		sign := -1.0
		if !r.Gap[1] {
			near, sign = r.From, 1
		}
		for _, side := range []float64{-p.Sides[near.Seg], p.Sides[near.Seg]} {
			for _, out := range []float64{6, 4.5, 8, 3, 10, 2, 1} {
				if c := p.On(near.Seg, near.Along+sign*k.Of(out), side*clear(near.Seg, side)); free(c) {
					return c, foot, true
				}
			}
		}
	}
	for _, other := range []float64{-1, 1} {
		for _, f := range parts {
			side := other * p.Sides[f.Seg]
			for _, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
				if c := p.On(f.Seg, f.From+t*(f.To-f.From), side*clear(f.Seg, side)); free(c) {
					return c, foot, true
				}
			}
		}
	}
	for out := 10.0; out < 34; out += 1.5 {
		for _, f := range parts {
			at := p.On(f.Seg, (f.From+f.To)/2, p.Vo)
			for _, side := range []float64{-p.Sides[f.Seg], p.Sides[f.Seg]} {
				for _, turn := range []float64{0, 25, -25, 50, -50} {
					sin, cos := scene.SinCos(turn)
					x, y := p.Segs[f.Seg].R.X*side, p.Segs[f.Seg].R.Y*side
					c := at.Add((x*cos-y*sin)*k.Of(out), (x*sin+y*cos)*k.Of(out))
					if free(c) && p.Space.FreeLine(at, c, k.Of(0.5)) {
						return c, at, true
					}
				}
			}
		}
	}
	return c, foot, false
}

// InAngle is a place in the angle of a bend, so far from it, on one side.
func (p *ChainPlan) InAngle(v int, side, far float64) scene.Point {
	at, q := p.Corner(v, 0), p.Corner(v, side*10)
	dx, dy := q.X-at.X, q.Y-at.Y
	l := math.Hypot(dx, dy)
	return at.Add(dx/l*far, dy/l*far)
}

// SortParts puts the longest part first; of equal ones the earlier.
func SortParts(list []FacePart) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j].To-list[j].From > list[j-1].To-list[j-1].From+1e-6; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}
