package crew

import (
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

func Itoa(n int) string { return strconv.Itoa(n) }

// Heads letters what stands over the ceiling: the names of the ends, HOLD, START inside a wall, what is only to check.
func (d *WallBoard) Heads() {
	d.Hold()
	d.EndNames()
	d.Starts()
	d.Checks()
	d.Changes()
}

// Roof is the highest place of the ceiling over a stretch of the page.
func (d *WallBoard) Roof(x0, x1 float64) float64 {
	w := d.W.W
	y := math.Inf(1)
	take := func(x L) {
		x = min(max(x, d.P.From), d.P.To)
		y = min(y, d.V.Y(room.At(w.Ceiling, x)), d.V.Y(room.AtRight(w.Ceiling, x)))
	}
	at := func(px float64) L { return d.P.From + L(math.Round((px-d.V.X(d.P.From))*float64(d.V.Scale)*8000)) }
	a, b := at(x0), at(x1)
	take(a)
	take(b)
	for _, p := range w.Ceiling {
		if p.X >= a && p.X <= b {
			take(p.X)
		}
	}
	return y
}

// RowHigh is from one row of labels over the ceiling to the next.
const RowHigh = 2.9

// Overhead finds a place over the ceiling for a label: as low as it goes, and of the left edges wanted the first.
//
// Shape: the box of the label, taken, and which of the left edges it got. A label that finds no place is noted: its words
// stand beside the drawing where no larger drawing could be had.
func (d *WallBoard) Overhead(words string, wide, high float64, wanted ...float64) (scene.Box, int, bool) {
	u := d.U
	lo, hi := d.Space.Bounds.X0+0.5*u, d.Space.Bounds.X1-0.5*u
	best, which, least := scene.Box{}, -1, math.Inf(1)
	for i, x := range wanted {
		x = math.Max(math.Min(x, hi-wide), lo)
		first := 0
		if x+wide < d.V.X(d.P.From)-2*u || x > d.V.X(d.P.To)+2*u {
			first = -5 // beside the wall it may stand lower than the ceiling
		}
		for row := first; row < 16; row++ {
			y := d.Roof(x-2*u, x+wide+2*u) - (FlagStem+2.6+RowHigh*float64(row))*u
			box := scene.Box{X0: x, Y0: y - high, X1: x + wide, Y1: y + 0.9*u}
			if !d.Space.Free(box, CrewAir*u) {
				continue
			}
			cost := -y + 1.5*float64(i)*u
			if row < 0 {
				cost += 30 * u
			}
			if cost < least {
				best, which, least = box, i, cost
			}
			if row >= 0 {
				break
			}
		}
	}
	if which < 0 {
		d.Aside(words)
		return best, 0, false
	}
	d.Space.Take(best)
	return best, which, true
}

// Label letters a label over the ceiling, with its left edge, its middle or its right edge at x, or near it.
func (d *WallBoard) Label(x float64, text string, bold bool, anchor scene.Anchor) {
	size := CrewText * d.U
	text = scene.Shorten(text, size, bold, d.Area.W()-8*d.U)
	w := scene.Width(text, size, bold)
	inset := math.Min(w/2, 8*d.U)
	var wanted []float64
	switch anchor {
	case scene.Start: // from the left end to the right; else out to the left
		wanted = []float64{x, x - inset, x - w/2, x - w + inset, x - w - 3*d.U}
	case scene.Middle:
		wanted = []float64{x - w/2, x - w/3, x - w*2/3, x - w + inset/2, x - inset/2, x - w - 3*d.U, x + 3*d.U}
	case scene.End:
		wanted = []float64{x - w, x - w + inset, x - w/2, x - inset, x + 3*d.U}
	}
	if box, _, ok := d.Overhead(text, w, size*1.1, wanted...); ok {
		d.Word(d.G, scene.Pt(box.X0, box.Y1-0.9*d.U), text, size, bold, scene.Start)
	}
}

// EndNames says over each corner what the covering does there.
func (d *WallBoard) EndNames() {
	outer := d.G
	for _, right := range []bool{false, true} {
		name := d.EndName(right)
		if name == "" {
			continue
		}
		d.G = outer.Part(scene.Tag{Class: "corner", Data: []scene.Datum{folio.Datum("name", name)}})
		if right {
			d.Label(d.V.X(d.P.To), name, false, scene.End)
		} else {
			d.Label(d.V.X(d.P.From), name, false, scene.Start)
		}
	}
	d.G = outer
}

// EndName is the name of an end of the piece.
func (d *WallBoard) EndName(right bool) string {
	w, p := d.W, d.P
	if right && p.RightCut() {
		return "MATCH LINE: " + d.PageWord(w.Pieces[p.Index+1].Key())
	}
	if !right && p.LeftCut() {
		return "MATCH LINE: " + d.PageWord(w.Pieces[p.Index-1].Key())
	}
	for i := range w.Run.Corners {
		c := &w.Run.Corners[i]
		if right && c.LeftWall != w.Wall || !right && c.RightWall != w.Wall {
			continue
		}
		kind := "in"
		if c.Kind == room.Outside {
			kind = "out"
		}
		name := c.Name + " " + kind
		for _, h := range p.Hangs {
			if right && h.After && h.Place == c.Sheet {
				return name + ": " + d.Numbers(h) + " goes on " + d.Inches(c.RightReturn)
			}
			if !right && h.Before && h.Place == c.Sheet {
				return name + ": " + d.Numbers(h) + " comes from " + d.Room.Walls[c.LeftWall].Name
			}
		}
		return name
	}
	for i := range w.Run.Line.Spans {
		s := &w.Run.Line.Spans[i]
		if s.Closed {
			continue
		}
		if right && s.RightEnd.Wall == w.Wall && w.W.Corner != room.Straight && d.Near(s.R, w.Right, w.W.LeanRight) {
			return strings.TrimPrefix(s.RightEnd.Words(), "the ")
		}
		if !right && s.LeftEnd.Wall == w.Wall && d.Near(s.L, w.Left, w.W.LeanLeft) {
			return strings.TrimPrefix(s.LeftEnd.Words(), "the ")
		}
	}
	return ""
}

// Near reports whether a place of the run is at an end of the wall.
func (d *WallBoard) Near(s, end, lean L) bool {
	x := s - d.W.St.Shift
	if n := d.W.Run.Length; d.W.Run.Closed && n > 0 {
		for x > end+n/2 {
			x -= n
		}
		for x < end-n/2 {
			x += n
		}
	}
	return x >= end-lean.Abs() && x <= end+lean.Abs()
}

// ThirdRow is the row of the tape list after which the work stops: the third, or the last where there are fewer.
func (p *Piece) ThirdRow() int { return min(len(p.Rows), 3) - 1 }

// Hold marks the seam after which the work stops for a look.
func (d *WallBoard) Hold() {
	if len(d.P.Rows) == 0 {
		return
	}
	u, size := d.U, CrewText*d.U
	h := d.P.Rows[d.P.ThirdRow()]
	at := d.V.X(min(h.To, d.P.To))
	text := "HOLD after " + d.Numbers(h)
	w := scene.Width(text, size, true)
	const sign = 5.2
	// the triangle stands over the seam, the words to its right or its left
	wide := sign*u + 1.6*u + w
	box, which, ok := d.Overhead("", wide, size*1.15, at-sign/2*u, at+sign/2*u-wide)
	if !ok {
		return
	}
	left := which == 1
	tip := box.X0 + sign/2*u
	if left {
		tip = box.X1 - sign/2*u
	}
	g := d.G.Part(scene.Tag{Class: "hold"})
	draft.Triangle(g, scene.Marks, scene.Pt(tip, box.Y1), 270, 4.4*u, sign*u, 0.7, true)
	if left {
		d.Word(g, scene.Pt(box.X0, box.Y1-0.9*u), text, size, true, scene.Start)
		return
	}
	d.Word(g, scene.Pt(box.X1, box.Y1-0.9*u), text, size, true, scene.End)
}

// Starts marks where a first sheet begins inside a wall, and where the room closes.
func (d *WallBoard) Starts() {
	for _, h := range d.P.Hangs {
		if h.Begins && d.P.StartsHere(h) && !d.StartsAtEnd(h) && !h.Sheet().Hung {
			d.StartLabel(h)
		}
		if h.Closes && d.P.Here(h) && h.Seam != nil {
			first := d.FirstOf(h)
			d.Label(d.V.X(h.X), "closing "+d.Numbers(h)+" | "+first, true, scene.End)
		}
	}
}

// FirstOf is the number of the sheet that the last one closes on.
func (d *WallBoard) FirstOf(h *Hang) string {
	place := d.W.Run.Spans[h.Sheet().Span].FirstSheet
	for i := range d.W.Run.Sheets {
		if s := &d.W.Run.Sheets[i]; s.Place == place {
			return d.Set.Number(s)
		}
	}
	return ""
}

// StartsAtEnd reports whether a first sheet begins at the wall's left end, where START stands in the margin.
func (d *WallBoard) StartsAtEnd(h *Hang) bool {
	return !h.Opens && h.From <= d.W.Left+max(0, d.W.W.LeanLeft)
}

func (d *WallBoard) StartLabel(h *Hang) {
	u, size := d.U, CrewText*d.U
	const arrow = 6
	text := "START " + d.Numbers(h)
	w := scene.Width(text, size, true) + (arrow+1.6)*u
	x := d.V.X(h.From)
	box, _, ok := d.Overhead(text+" at "+d.Say(h.From), w, size*1.1, x, x-w/3, x-w/2)
	if ok {
		d.Block(d.G, scene.Pt(box.X0, box.Y1-0.9*u-size/2), arrow*u, 4.4*u)
		d.Word(d.G, scene.Pt(box.X1, box.Y1-0.9*u), text, size, true, scene.End)
	}
}

// Block draws a block arrow to the right from its left end.
func (d *WallBoard) Block(g *scene.Group, at scene.Point, long, high float64) {
	neck, shaft := long*0.5, high*0.2
	g.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)},
		at.Add(0, -shaft), at.Add(neck, -shaft), at.Add(neck, -high/2), at.Add(long, 0), at.Add(neck, high/2), at.Add(neck, shaft), at.Add(0, shaft))
}

// Checks says which lines are only to check by.
func (d *WallBoard) Checks() {
	for _, h := range d.P.Hangs {
		if h.Check() && d.P.Here(h) && !h.Sheet().Hung {
			d.Label(d.V.X(h.Line), "check only", false, scene.Middle)
		}
	}
}

// Changes names the flitch where it changes inside the piece.
func (d *WallBoard) Changes() {
	for i, h := range d.P.Hangs {
		if i == 0 {
			continue
		}
		if a, b := d.P.Hangs[i-1].Sheet().Flitch, h.Sheet().Flitch; a != b && b != "" {
			d.Label(d.V.X(h.From), "flitch "+b+" from here", true, scene.Start)
		}
	}
}

// Callout letters over the ceiling what has no room where it belongs, with a line down to it.
func (d *WallBoard) Callout(g *scene.Group, target scene.Point, text, words string, boxed bool) {
	u, size := d.U, CrewLarge*d.U
	w, ring := scene.Width(text, size, true), 0.0
	if boxed {
		ring = 1.2 * u
	}
	lo, hi := d.Space.Bounds.X0+0.5*u+ring, d.Space.Bounds.X1-0.5*u-ring
	for row := 0; row < 12; row++ {
		for _, lean := range []float64{0, -0.3, 0.3, -0.6, 0.6, -0.9, 0.9, -1.3, 1.3} {
			x0 := math.Max(math.Min(target.X-w/2+lean*w, hi-w), lo)
			y := d.Roof(math.Min(x0, target.X)-2*u, math.Max(x0+w, target.X)+2*u) - (FlagStem+2.6+RowHigh*float64(row))*u
			box := scene.Box{X0: x0 - ring, Y0: y - size - ring, X1: x0 + w + ring, Y1: y + ring}
			from := scene.Pt(math.Max(math.Min(target.X, box.X1-0.5*u), box.X0+0.5*u), box.Y1+0.6*u)
			if d.Space.Free(box, CrewAir*u) && d.Space.FreeLine(from, target, 0.3*u) {
				d.Word(g, scene.Pt(x0, y), text, size, true, scene.Start)
				if boxed {
					g.Rect(box, scene.Pen(scene.Numbers, CrewFine))
				}
				g.Line(from, target, scene.Pen(scene.Marks, 0.25))
				g.Circle(target, 0.6*u, scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)})
				d.Space.Take(box)
				d.Space.Stroke(from, target)
				return
			}
		}
	}
	d.Aside(words)
}

// Aside notes words that find no place in the drawing: at first it is drawn smaller, in the end they stand beside it.
func (d *WallBoard) Aside(words string) {
	switch {
	case !d.Settled:
		d.Lack(&d.Above)
	case words != "":
		d.Beside = append(d.Beside, words)
	}
}
