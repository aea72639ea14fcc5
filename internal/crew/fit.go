package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// fit draws the wall as large as it goes with everything in its place. Where it would come out much smaller than it could,
// what finds no place stands beside the drawing instead.
func (c *Set) fit(b *board, p *piece, area scene.Box) *wallBoard {
	try := func(keep [2]float64, settled bool) *wallBoard {
		d := &wallBoard{board: b, w: p.wall, p: p, area: area, settled: settled}
		d.try(keep[0]*c.Unit, keep[1]*c.Unit)
		return d
	}
	if p.fits != nil {
		return try(p.fits.keep, p.fits.settled)
	}
	var d *wallBoard
	largest := int64(0)
	for _, settled := range []bool{false, true} {
		overLacks, underLacks := 0.0, 0.0
		for _, keep := range keeps(area.H() / c.Unit) {
			if keep[0] <= overLacks || keep[1] <= underLacks {
				continue // a smaller drawing with no more room about it has no better chance
			}
			d = try(keep, settled)
			if largest == 0 {
				largest = d.v.Scale
			}
			if !d.above && !d.below {
				p.fits = &fit{keep, settled, b.more}
				return d
			}
			if d.above {
				overLacks = max(overLacks, keep[0])
			}
			if d.below {
				underLacks = max(underLacks, keep[1])
			}
			if !settled && d.v.Scale*10 > largest*13 {
				break
			}
		}
	}
	return d
}

// keeps are the heights over and under a wall to try, those that leave the most for the wall first.
func keeps(high float64) [][2]float64 {
	var list [][2]float64
	for bottom := 24.5; bottom < high*0.42; bottom += 4 {
		for top := 21.0; top < high*0.48; top += 3 {
			list = append(list, [2]float64{top, bottom})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i][0]+list[i][1] < list[j][0]+list[j][1] })
	return list
}

// place names the room and the finish.
func (c *Set) place() string {
	p := c.Room.Project
	s := ""
	for _, part := range []struct{ word, text string }{{"room ", p.Room}, {"", p.Tag}, {"", p.Title}} {
		switch {
		case part.text == "":
		case s == "":
			s = part.word + part.text
		default:
			s += ", " + part.word + part.text
		}
	}
	return s
}

// try draws the wall with heights kept free over it and under it, and notes where they do not suffice.
func (d *wallBoard) try(top, bottom float64) {
	u := d.Unit
	margin, beside := d.marginWide(), d.rightWide()
	if d.w.Run.Up {
		margin, beside = d.marginUp(), 30*u
	}
	low, high := d.p.Extremes()
	wide := d.area.W() - margin - beside
	tall := d.area.H() - top - bottom
	length := (d.p.To - d.p.From).MM()
	scale := int64(max(math.Ceil(length/wide-1e-9), math.Ceil((high-low).MM()/tall-1e-9), 5))
	d.v = draft.View{Scale: scale}
	d.v.Origin.X = d.area.X0 + margin - d.v.MM(d.p.From) + (wide-length/float64(scale))/2
	// What height is left goes below and above in equal parts, but little above.
	rest := tall - d.v.MM(high-low)
	d.v.Origin.Y = d.area.Y0 + top + d.v.MM(high) + min(rest/2, 14*u)
	d.space = draft.NewSpace(d.area.Inset(1 * u))
	name := d.w.W.Name
	view := scene.View{Box: scene.Box{X0: d.v.X(d.p.From), Y0: d.v.Y(high), X1: d.v.X(d.p.To), Y1: d.v.Y(low)}, Scale: float64(scale), Metric: d.Metric(), Name: name, Ratio: draft.Ratio(scale, d.Metric())}
	d.g = &scene.Group{}
	inner := d.g.Viewed(view, folio.Datum("scale", strconv.FormatInt(scale, 10)), folio.Datum("wall", name))
	outer := d.g
	d.g = inner
	if d.w.Run.Up {
		d.tryUp()
		d.g = outer
		return
	}
	d.outlines()
	d.openings()
	d.seams()
	d.covering()
	d.joints()
	d.levelLine()
	for _, draw := range []func(){d.flags, d.margins, d.boxes, d.sheetNumbers, d.heads, d.openingWords, d.scaleBar} {
		if draw(); d.above || d.below {
			break
		}
	}
	d.g = outer
}
