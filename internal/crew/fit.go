package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Fit draws the wall as large as it goes with everything in its place. Where it would come out much smaller than it could,
// what finds no place stands beside the drawing instead.
func (c *Set) Fit(b *Board, p *Piece, area scene.Box) *WallBoard {
	try := func(keep [2]float64, settled bool) *WallBoard {
		d := &WallBoard{Board: b, W: p.Wall, P: p, Area: area, Settled: settled}
		d.Try(keep[0]*c.U, keep[1]*c.U)
		return d
	}
	if p.Fits != nil {
		return try(p.Fits.Keep, p.Fits.Settled)
	}
	var d *WallBoard
	largest := int64(0)
	for _, settled := range []bool{false, true} {
		overLacks, underLacks := 0.0, 0.0
		for _, keep := range Keeps(area.H() / c.U) {
			if keep[0] <= overLacks || keep[1] <= underLacks {
				continue // a smaller drawing with no more room about it has no better chance
			}
			d = try(keep, settled)
			if largest == 0 {
				largest = d.V.Scale
			}
			if !d.Above && !d.Below {
				p.Fits = &Fit{keep, settled, b.More}
				return d
			}
			if d.Above {
				overLacks = max(overLacks, keep[0])
			}
			if d.Below {
				underLacks = max(underLacks, keep[1])
			}
			if !settled && d.V.Scale*10 > largest*13 {
				break
			}
		}
	}
	return d
}

// Keeps are the heights over and under a wall to try, those that leave the most for the wall first.
func Keeps(high float64) [][2]float64 {
	var list [][2]float64
	for bottom := 24.5; bottom < high*0.42; bottom += 4 {
		for top := 21.0; top < high*0.48; top += 3 {
			list = append(list, [2]float64{top, bottom})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i][0]+list[i][1] < list[j][0]+list[j][1] })
	return list
}

// Place names the room and the finish.
func (c *Set) Place() string {
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

func Pad(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// Try draws the wall with heights kept free over it and under it, and notes where they do not suffice.
func (d *WallBoard) Try(top, bottom float64) {
	u := d.U
	margin, beside := d.MarginWide(), d.RightWide()
	if d.W.Run.Up {
		margin, beside = d.MarginUp(), 30*u
	}
	low, high := d.Extremes()
	wide := d.Area.W() - margin - beside
	tall := d.Area.H() - top - bottom
	length := (d.P.To - d.P.From).MM()
	scale := int64(max(math.Ceil(length/wide-1e-9), math.Ceil((high-low).MM()/tall-1e-9), 5))
	d.V = draft.View{Scale: scale}
	d.V.Origin.X = d.Area.X0 + margin - d.V.MM(d.P.From) + (wide-length/float64(scale))/2
	// What height is left goes below and above in equal parts, but little above.
	rest := tall - d.V.MM(high-low)
	d.V.Origin.Y = d.Area.Y0 + top + d.V.MM(high) + min(rest/2, 14*u)
	d.Space = draft.NewSpace(d.Area.Inset(1 * u))
	name := d.W.W.Name
	view := scene.View{Box: scene.Box{X0: d.V.X(d.P.From), Y0: d.V.Y(high), X1: d.V.X(d.P.To), Y1: d.V.Y(low)}, Scale: float64(scale), Metric: d.Metric(), Name: name, Ratio: draft.Ratio(scale, d.Metric())}
	d.G = &scene.Group{}
	inner := d.G.Viewed(view, folio.Datum("scale", strconv.FormatInt(scale, 10)), folio.Datum("wall", name))
	outer := d.G
	d.G = inner
	if d.W.Run.Up {
		d.TryUp()
		d.G = outer
		return
	}
	d.Outlines()
	d.Openings()
	d.Seams()
	d.Covering()
	d.Joints()
	d.LevelLine()
	for _, draw := range []func(){d.Flags, d.Margins, d.Boxes, d.SheetNumbers, d.Heads, d.OpeningWords, d.ScaleBar} {
		if draw(); d.Above || d.Below {
			break
		}
	}
	d.G = outer
}

// Extremes are the lowest and the highest point of the piece's outline.
func (d *WallBoard) Extremes() (low, high L) {
	w := d.W.W
	low, high = room.AtRight(w.Floor, d.P.From), room.AtRight(w.Ceiling, d.P.From)
	take := func(profile []room.Point) {
		for _, p := range profile {
			if p.X >= d.P.From && p.X <= d.P.To {
				low, high = min(low, p.Z), max(high, p.Z)
			}
		}
		for _, x := range []L{d.P.From, d.P.To} {
			for _, z := range []L{room.At(profile, x), room.AtRight(profile, x)} {
				low, high = min(low, z), max(high, z)
			}
		}
	}
	take(w.Floor)
	take(w.Ceiling)
	return low, high
}
