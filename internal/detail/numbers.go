package detail

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// names letters the bends of a chain, each on its outer side, with its angle where it is not square and its radius; and
// the mark of the detail at a raw end.
func (p *chainPlan) names() {
	k := p.Look
	for v, x := range p.verts {
		if len(p.bends) == 1 {
			continue
		}
		lines := []string{x.name}
		if a := math.Abs(x.turn); a != 90 {
			lines = append(lines, angle(a))
		}
		if x.c == nil {
			lines = append(lines, "cut")
		} else if x.c.Radius > 0 {
			lines = append(lines, "R "+p.Style.Format(x.c.Radius))
		}
		w := 0.0
		for i, line := range lines {
			w = math.Max(w, scene.Width(line, k.Small, i == 0))
		}
		pitch := k.Small * 1.6
		h := k.Small + pitch*float64(len(lines)-1)
		out := math.Copysign(1, -x.turn)
		at := p.round(v, 0)[len(p.round(v, 0))/2]
		far := p.corner(v, out*10)
		dx, dy := far.X-p.corner(v, 0).X, far.Y-p.corner(v, 0).Y
		l := math.Hypot(dx, dy)
		dx, dy = dx/l, dy/l
		box, ok := p.beside(at, dx, dy, w, h)
		if !ok {
			p.lost++
		}
		in := p.g.Part(scene.Tag{Class: "corner", Title: "corner " + x.name, Data: []scene.Datum{folio.Datum("name", x.name)}})
		for i, line := range lines {
			in.Text(scene.Text{At: scene.Pt(box.Centre().X, box.Y0+k.Small+pitch*float64(i)), String: line, Height: k.Small, Bold: i == 0, Anchor: scene.Middle, Layer: scene.Notes})
		}
		p.space.Take(box)
	}
}

// Places for a box beside something: how far from it, in mm on the office page, and how far turned from straight out, in
// degrees.
const (
	besideFirst = 3.0
	besideReach = 26.0
	besideStep  = 0.6
)

var (
	nearTurns = []float64{0, 20, -20, 35, -35}
	wideTurns = []float64{60, -60, 90, -90, 130, -130, 180}
)

// beside finds a free box near a place:
//
//  1. as near as can be out in its direction, turned from it no more than still reads as that direction;
//  2. as near as can be to any side.
func (p *chainPlan) beside(at scene.Point, dx, dy, w, h float64) (scene.Box, bool) {
	k := p.Look
	for _, turns := range [][]float64{nearTurns, wideTurns} {
		for out := besideFirst; out < besideReach; out += besideStep {
			for _, turn := range turns {
				sin, cos := scene.SinCos(turn)
				c := at.Add((dx*cos-dy*sin)*k.Of(out), (dx*sin+dy*cos)*k.Of(out))
				box := scene.BoxRound(c, w, h)
				if p.space.Free(box, k.Of(0.9)) {
					return box, true
				}
			}
		}
	}
	return scene.BoxAt(at.X, at.Y, w, h), false
}

// markSize is how large the marks round the sheet numbers of a set are: circles of the least diameter or as much as the
// longest number needs; where that is too much, as high as asked for and so much longer, with round ends.
func markSize(s *folio.Set, least float64) (w, h float64) {
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

// mark letters the number of a sheet in its circle, or in a mark with round ends.
func (p *chainPlan) mark(g *scene.Group, c scene.Point, w, h float64, word string) {
	k := p.Look
	if w == h {
		p.space.Take(draft.Disc(g, k, scene.Numbers, c, w, k.Seam, word, k.Medium, true))
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
	p.space.Take(scene.BoxRound(c, w, h).Inset(-k.Seam / 2))
}

// numbers letters the sheets: first those that go round a bend, at the bend where there is one alone, then the others.
func (p *chainPlan) numbers() {
	list := p.sheets()
	for _, r := range list {
		if len(r.bends) > 0 {
			p.number(r, 9)
		}
	}
	for _, r := range list {
		if len(r.bends) == 0 && !r.stub {
			p.number(r, 7.5)
		}
	}
	for _, r := range list {
		if r.stub {
			p.number(r, 7.5)
		}
	}
	k := p.Look
	for _, x := range p.stops {
		mark := p.EndMark(x.kind)
		if !x.raw || x.beyond || mark == "" || p.inner(x.seg) {
			continue
		}
		d := math.Max(k.Of(6.4), math.Hypot(scene.Width(mark, k.Small, true), k.Small)+1.3+k.Thin)
		sg := &p.segs[x.seg]
		side := -p.sides[x.seg]
		box, ok := p.beside(p.on(x.seg, x.along, side*math.Max(p.bt, p.vo)), sg.r.X*side, sg.r.Y*side, d, d)
		if !ok {
			p.lost++
			continue
		}
		in := p.g.Part(scene.Tag{Class: "termination-mark", Title: x.end})
		p.space.Take(draft.Disc(in, k, scene.Marks, box.Centre(), d, k.Thin, mark, k.Small, true))
	}
}

// number letters one sheet.
func (p *chainPlan) number(r sheetRun, least float64) {
	k := p.Look
	w, h := markSize(p.Set, least)
	sh := elevation.SheetAt(p.Set, r.place)
	if sh == nil || len(p.path(r, p.vo)) < 2 {
		return
	}
	c, foot, ok := p.numberPlace(r, w, h)
	if !ok {
		p.lost++
		return
	}
	in := p.g.Part(scene.Tag{Class: "sheet-number", Data: []scene.Datum{folio.Datum("place", fmt.Sprint(r.place))}})
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
		draft.Leader(in, k, p.space, foot, end)
	}
	p.mark(in, c, w, h, elevation.NumberOf(sh))
}

// facePart is what of a sheet lies on one segment.
type facePart struct {
	seg      int
	from, to float64
}

// long is how long the part is.
func (f facePart) long() float64 { return f.to - f.from }

// parts are the parts of a sheet on its segments.
func (p *chainPlan) parts(r sheetRun) []facePart {
	n := len(p.segs)
	if len(r.bends) == 0 {
		return []facePart{{r.from.seg, r.from.along, r.to.along}}
	}
	list := []facePart{{r.from.seg, r.from.along, p.segs[r.from.seg].long}}
	for j := 1; j < len(r.bends); j++ {
		i := (r.from.seg + j) % n
		list = append(list, facePart{i, 0, p.segs[i].long})
	}
	return append(list, facePart{r.to.seg, 0, r.to.along})
}
