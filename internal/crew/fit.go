package crew

import (
	"math"
	"slices"
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
func (c *Set) fit(b *board, p *strip, area scene.Box) *wallBoard {
	try := func(keep [2]float64, settled bool) *wallBoard {
		d := c.boards(b, p)
		d.area, d.settled = area, settled
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
	low, high := d.extremes()
	wide := d.area.W() - margin - beside
	tall := d.area.H() - top - bottom
	lefts, whole := d.lefts()
	length := whole.MM()
	scale := int64(max(math.Ceil(length/wide-1e-9), math.Ceil((high-low).MM()/tall-1e-9), largestScale))
	// What height is left goes below and above in equal parts, but little above.
	rest := tall - draft.View{Scale: scale}.MM(high-low)
	d.space = draft.NewSpace(d.area.Inset(1 * u))
	outer := &scene.Group{}
	for i, f := range d.faces {
		f.v = draft.View{Scale: scale}
		f.v.Origin.X = d.area.X0 + margin + f.v.MM(lefts[i]-f.p.From) + (wide-length/float64(scale))/2
		f.v.Origin.Y = d.area.Y0 + top + f.v.MM(high) + min(rest/2, mostOver*u)
		name := f.w.W.Name
		view := scene.View{Box: scene.Box{X0: f.v.X(f.p.From), Y0: f.v.Y(high), X1: f.v.X(f.p.To), Y1: f.v.Y(low)}, Scale: float64(scale), Metric: d.Metric(), Name: name, Ratio: draft.Ratio(scale, d.Metric())}
		f.g = outer.Viewed(view, folio.Datum("scale", strconv.FormatInt(scale, 10)), folio.Datum("wall", name))
	}
	d.draw()
	d.g = outer
}

// draw draws the walls, and stops at what finds no place.
func (d *wallBoard) draw() {
	if d.w.Run.Up {
		d.tryUp()
		return
	}
	for _, each := range []func(*wallBoard){(*wallBoard).outlines, (*wallBoard).openings, (*wallBoard).seams, (*wallBoard).slivers, (*wallBoard).covering, (*wallBoard).joints} {
		d.each(each)
	}
	d.levelLine()
	d.each((*wallBoard).secondLines)
	for _, draw := range []func(){d.flags, d.margins, d.boxes, d.sheetNumbers, d.bevels, d.heads, func() { d.each((*wallBoard).secondNames) }, func() { d.each((*wallBoard).openingWords) }, d.scaleBar, d.bevelBlocks, d.trims} {
		if draw(); d.above || d.below {
			return
		}
	}
}

// each draws something of every wall of the page, from left to right.
func (d *drawing) each(draw func(*wallBoard)) {
	for _, f := range d.faces {
		draw(f)
	}
}

// lefts are where the left ends of the walls stand, from that of the first, and how long all are. Walls whose corner leans
// differently at its two sides stand so far apart that neither reaches into the other.
func (d *drawing) lefts() (lefts []L, whole L) {
	for i, f := range d.faces {
		if i > 0 {
			whole += max(0, d.faces[i-1].w.W.LeanRight-f.w.W.LeanLeft)
		}
		lefts = append(lefts, whole)
		whole += f.p.To - f.p.From
	}
	return lefts, whole
}

// joined reports whether a wall stands close to the one at its left on the page, so that their corner is one line.
func (d *wallBoard) joined() bool {
	if d.first() {
		return false
	}
	lefts, _ := d.lefts()
	i := slices.Index(d.faces, d)
	before := d.faces[i-1]
	return lefts[i]-lefts[i-1] == before.p.To-before.p.From && before.w.W.LeanRight == d.w.W.LeanLeft
}
