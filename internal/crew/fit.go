package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// The heights kept free over and under a wall, in mm on letter paper: the least that labels and rows of figures take, by
// how much more is tried each time, and the share of the field that they have at most.
const (
	keepOver      = 21.0
	keepOverMore  = 3.0 // a row of labels
	keepOverMost  = 0.48
	keepUnder     = 24.5
	keepUnderMore = 4.0 // less than a row of figures: what stands there is of all heights
	keepUnderMost = 0.5
)

// smaller is by how many tenths a drawing's scale may grow over that of the largest before what finds no place has to
// stand beside it instead.
const smaller = 13

// fit draws the wall as large as it goes with everything in its place. Drawings are tried until one has it all:
//
//  1. with the least heights kept free over and under the wall, which leave the most for it;
//  2. with more and more of them, but none that is no higher over (under) it than one in which something over (under) it
//     found no place;
//  3. where the drawing has come out by three tenths smaller than it could, again from the first, what finds no place over
//     the ceiling standing beside the drawing: a wall that cannot be read is worse than a label that is not at its place.
//
// The second time round a page is drawn as it was found to fit the first time.
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
			if !settled && d.v.Scale*10 > largest*smaller {
				break
			}
		}
	}
	return d
}

// keeps are the heights over and under a wall to try, those that leave the most for the wall first.
func keeps(high float64) [][2]float64 {
	var list [][2]float64
	for bottom := keepUnder; bottom < high*keepUnderMost; bottom += keepUnderMore {
		for top := keepOver; top < high*keepOverMost; top += keepOverMore {
			list = append(list, [2]float64{top, bottom})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i][0]+list[i][1] < list[j][0]+list[j][1] })
	return list
}

// The largest scale at which a wall is drawn, 1:5, and the most of the height left over that stands over it, in mm on
// letter paper.
const (
	largestScale = 5
	mostOver     = 14
)

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
	scale := int64(max(math.Ceil(length/wide-1e-9), math.Ceil((high-low).MM()/tall-1e-9), largestScale))
	d.v = draft.View{Scale: scale}
	d.v.Origin.X = d.area.X0 + margin - d.v.MM(d.p.From) + (wide-length/float64(scale))/2
	// What height is left goes below and above in equal parts, but little above.
	rest := tall - d.v.MM(high-low)
	d.v.Origin.Y = d.area.Y0 + top + d.v.MM(high) + min(rest/2, mostOver*u)
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
	d.slivers()
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
