package elevation

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// onPage is what of a part is shown, on paper.
func (e *View) onPage(p face.Part) (x0, x1 float64, ok bool) {
	a, b := max(p.From, e.From), min(p.To, e.To)
	return e.V.X(a), e.V.X(b), a < b
}

// Numbers letters the number of every sheet that has none in a row outside the wall in a circle, all at one height where
// that is free; a narrow strip has its circle beside it, on a leader.
func (e *View) Numbers() {
	courses := 0
	var rest []func() // of an enlargement: what stands beside its sheet comes last
	for _, p := range e.F.Parts {
		courses = max(courses, len(p.Sheets))
	}
	for course := range courses {
		row, ok := 0.0, false
		if !e.F.Run.Up {
			row, ok = e.numberRow(course)
		}
		for _, p := range e.F.Parts {
			if course < len(p.Sheets) {
				p = e.seen(p, course)
			}
			if x0, x1, shown := e.onPage(p); shown && course < len(p.Sheets) && !e.ballooned(p.Place, course) {
				s := p.Sheets[course]
				if e.Detail {
					if _, low, _, high, ok := e.F.Extent(s); ok && (high <= e.F.Low || low >= e.F.High) {
						continue // broken off
					}
					if !e.numberIn(p, course, x0, x1, row, ok) {
						rest = append(rest, func() {
							e.strict = true
							drawn := e.number(p, course, x0, x1, row, ok)
							if e.strict = false; !drawn {
								e.number(p, course, x0, x1, row, ok)
							}
						})
					}
				} else if !e.elsewhere(sheetKey(s)) {
					q := e.widest(p, course)
					if x0, x1, _ = e.onPage(q); !e.number(q, course, x0, x1, row, ok) {
						e.dropAt(sheetKey(s), e.inSheet(q, course), "%s, %s to %s", SheetWords(e.Board.Set, s), e.Style.Format(max(p.From, e.From)), e.Style.Format(min(p.To, e.To)))
					}
				}
			}
		}
	}
	for _, draw := range rest {
		draw()
	}
}

// inSheet are places in what is seen of a sheet.
func (e *View) inSheet(p face.Part, course int) (list []scene.Point) {
	from, to := max(p.From, e.From), min(p.To, e.To)
	for _, share := range bandShares {
		x := from + L(share*float64(to-from))
		for _, v := range e.visibleAt(p, course, x) {
			list = append(list, scene.Pt(e.V.X(x), (v[0]+v[1])/2))
		}
	}
	return list
}

// seen narrows a part to what its pieces cover: the rest of the sheet may lie in a gap.
func (e *View) seen(p face.Part, course int) face.Part {
	a, b := p.To, p.From
	for _, q := range p.Sheets[course].Pieces {
		for _, pt := range q.Outline {
			if q.Wall == e.F.Wall && pt.X >= p.From && pt.X <= p.To {
				a, b = min(a, pt.X), max(b, pt.X)
			}
		}
	}
	if a < b {
		p.From, p.To = a, b
	}
	return p
}

// widestSteps is in how many steps a sheet is gone over for where it is seen.
const widestSteps = 40

// widest narrows a part to the widest stretch in which its sheet is seen: an opening may take its middle.
func (e *View) widest(p face.Part, course int) face.Part {
	from, to := max(p.From, e.From), min(p.To, e.To)
	at := func(i int) L { return from + (to-from)*L(i)/widestSteps }
	best := [2]int{}
	for i := 0; i < widestSteps; i++ {
		j := i
		for j < widestSteps && len(e.visibleAt(p, course, (at(j)+at(j+1))/2)) > 0 {
			j++
		}
		if j-i > best[1]-best[0] {
			best = [2]int{i, j}
		}
		i = max(i, j-1)
	}
	if best[1] > best[0] {
		p.From, p.To = at(best[0]), at(best[1])
	}
	return p
}

// disc is the diameter of the circles with numbers, one for the whole wall: a little more where there are three figures. A
// number of more figures is lettered smaller.
func (e *View) disc() float64 {
	k := e.Look
	d := k.Of(9)
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			need := draft.DiscAround(NumberOf(s), k.Medium, true, k.Seam)
			if need > k.Of(11.5) {
				need = draft.DiscAround(NumberOf(s), k.Small, true, k.Seam)
			}
			d = math.Max(d, need)
		}
	}
	return d
}

// visible are the stretches of a sheet's column, on paper from the top down, in which a circle can stand.
func (e *View) visible(p face.Part, course int) [][2]float64 {
	return e.visibleAt(p, course, (max(p.From, e.From)+min(p.To, e.To))/2)
}

func (e *View) visibleAt(p face.Part, course int, x L) [][2]float64 {
	var list [][2]float64
	for _, h := range e.F.CoveredBy(p.Sheets[course], x) {
		if h[0], h[1] = max(h[0], e.F.Low), min(h[1], e.F.High); h[1] <= h[0] {
			continue // broken off
		}
		list = append(list, [2]float64{e.V.Y(h[1]), e.V.Y(h[0])})
	}
	slices.SortStableFunc(list, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	return list
}

// Heights of the row of numbers, in mm on the office page.
const (
	rowTop  = 4.5 // of the circles under the lowest upper edge
	rowStep = 1.5 // from one height to the next
)

// numberRow finds the height at which most circles are free, as near to the top as can be: from the top down, where a
// number is read first, and only a height with more of them free is better than one above it.
func (e *View) numberRow(course int) (y float64, ok bool) {
	top, bottom := 0.0, 0.0
	for _, p := range e.F.Parts {
		if course >= len(p.Sheets) {
			continue
		}
		for _, v := range e.visible(p, course) {
			top, bottom = math.Max(top, v[0]), math.Max(bottom, v[1])
			break
		}
	}
	d := e.disc()
	best, most := 0.0, -1
	for y := top + e.Look.Of(rowTop) + d/2; y < bottom; y += e.Look.Of(rowStep) {
		n := 0
		for _, p := range e.F.Parts {
			if course < len(p.Sheets) {
				p = e.seen(p, course)
			}
			x0, x1, shown := e.onPage(p)
			if course < len(p.Sheets) && shown && e.holds(p, course, y, d) && e.freeDisc((x0+x1)/2, y, math.Min(d, x1-x0-e.Look.Of(0.8))) {
				n++
			}
		}
		if n > most {
			best, most = y, n
		}
	}
	return best, most > 0
}

// holds reports whether a circle at a height lies in what is seen of the sheet.
func (e *View) holds(p face.Part, course int, y, d float64) bool {
	for _, v := range e.visible(p, course) {
		if v[0]+d/2+e.Look.Of(1) <= y && y <= v[1]-d/2-e.Look.Of(1) {
			return true
		}
	}
	return false
}

// bandShares are the places of a number along a band, as shares of its length: in the middle, then by turns to both sides.
var bandShares = []float64{0.5, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.05, 0.95}

// numberAlong letters a number in the first free place along a band.
func (e *View) numberAlong(p face.Part, course int, d float64) bool {
	k := e.Look
	from, to := max(p.From, e.From), min(p.To, e.To)
	for _, share := range bandShares {
		x := from + L(share*float64(to-from))
		for _, v := range e.visibleAt(p, course, x) {
			y := (v[0] + v[1]) / 2
			if v[1]-v[0] > d+k.Of(1) && e.freeDisc(e.V.X(x), y, d) {
				e.numberAt(p, course, scene.Pt(e.V.X(x), y), d)
				return true
			}
		}
	}
	return false
}

// leastDisc is the smallest circle that a sheet's number stands in.
func (e *View) leastDisc(s *layout.Sheet) float64 {
	k := e.Look
	d := draft.DiscAround(NumberOf(s), k.Small, true, k.Seam)
	if narrower(s) {
		d += k.Of(1.5)
	}
	return math.Max(d, k.Of(6.2))
}

func (e *View) freeDisc(x, y, d float64) bool {
	return e.Space.Free(scene.BoxRound(scene.Pt(x, y), d, d), e.Look.Of(0.35))
}

// narrower reports whether a sheet is ripped narrower, before it is hung or at its seam: between two seams, at the closing seam, at an
// end. It is what the schedule of sheets gives a width to rip to, or a jump of the grain.
func narrower(s *layout.Sheet) bool { return s.RipTo > 0 || s.Lost > 0 }

// numberAt draws the circle: double where the sheet is ripped narrower, with the flitch under it where the flitch begins, an
// arrow where the sheet hangs turned.
func (e *View) numberAt(p face.Part, course int, c scene.Point, d float64) {
	k := e.Look
	s := p.Sheets[course]
	in := e.Group.Part(scene.Tag{Class: "sheet-number", Title: SheetWords(e.Board.Set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place)), item(sheetKey(s))}})
	if narrower(s) {
		draft.Disc(in, k, scene.Numbers, c, d, k.Dimension, "", 0, false)
		d -= k.Of(1.5)
	}
	box := draft.Disc(in, k, scene.Numbers, c, d, k.Seam, NumberOf(s), k.Medium, true)
	e.Space.Take(box.Inset(-k.Of(0.4)))
	if s.Turned && !e.ballooned(p.Place, course) {
		at := c.Add(0, d/2+k.Of(1.5))
		if b := (scene.Box{X0: at.X - k.Of(1.5), Y0: at.Y, X1: at.X + k.Of(1.5), Y1: at.Y + k.Of(8)}); e.Space.Free(b, 0) {
			in.Rect(b, scene.Style{Layer: scene.Numbers, Fill: scene.Solid(scene.White)})
			draft.Arrow(in, k, scene.Numbers, at, at.Add(0, k.Of(8)), k.Thin, false)
			e.Space.Take(b)
		}
	}
	if e.Detail && e.changes(s.Place) && s.Flitch != "" && !e.ballooned(p.Place, course) {
		t := scene.Text{At: c.Add(0, d/2+k.Of(1.6)), String: s.Flitch, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Numbers, Field: 0.6}
		if e.Space.Free(t.Bounds(), k.Of(1.35)) {
			in.Text(t)
			e.Space.Take(t.Bounds().Inset(-t.Field))
		}
	}
}

// sheetKey is what a sheet's number is known by.
func sheetKey(s *layout.Sheet) string { return fmt.Sprintf("sheet %d %d", s.Place, s.Course) }

// changes reports whether a flitch begins with the sheet at a place.
func (e *View) changes(place int) bool {
	s := SheetAt(e.Board.Set, place)
	before := SheetAt(e.Board.Set, place-1)
	return s != nil && (before == nil || before.Flitch != s.Flitch)
}
