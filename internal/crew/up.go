package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// With horizontal grain sheets lie on their sides in bands from the floor up: lines to strike are level, figures are
// heights, a course is a piece along its band. The page is the same but for that.

// tryUp draws a wall of bands.
func (d *wallBoard) tryUp() {
	d.outlines()
	d.openings()
	d.seamsUp()
	d.covering()
	d.jointsUp()
	d.levelLine()
	for _, draw := range []func(){d.flagsUp, d.boxes, d.holdsUp, d.sheetNumbers, d.headsUp, d.openingWords, d.scaleBar, d.trims} {
		if draw(); d.above || d.below {
			return
		}
	}
}

// seamsUp draws the finished joints between bands.
func (d *wallBoard) seamsUp() {
	for _, h := range d.p.Hangs {
		if h.Seam == nil {
			continue
		}
		g := d.g.Part(scene.Tag{Class: "seam", Title: d.Words.Say("tip.seam", d.Plan.SeamName(d.w.Run, h.Seam)), Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		for _, e := range d.w.Heads(h) {
			d.line(g, d.v.Pt(e.From, e.Z), d.v.Pt(e.To, e.Z), scene.Pen(scene.Seams, folio.TapedFine))
		}
	}
}

// jointsUp draws the end matches along the bands.
func (d *wallBoard) jointsUp() {
	for _, x := range d.w.Run.Joints {
		for _, s := range d.w.Covered(x) {
			d.line(d.g, d.v.Pt(x, s[0]), d.v.Pt(x, s[1]), scene.Pen(scene.Seams, folio.TapedFine))
		}
	}
}

// flagsUp draws the level lines as flags left and right of the wall, with their heights from the datum.
func (d *wallBoard) flagsUp() {
	u, size := d.Unit, folio.TapedText*d.Unit
	type mark struct {
		z    L
		hang *face.Hang
	}
	var list []mark
	for _, h := range d.p.Hangs {
		if h.Lined && !h.Hung() {
			list = append(list, mark{h.Line, h})
		}
	}
	_, high := d.p.Extremes()
	list = append(list, mark{z: d.topAt(false)}) // at the end of the wall where it stands
	sort.SliceStable(list, func(i, j int) bool { return list[i].z > list[j].z })
	at := make([]float64, len(list))
	for i, m := range list {
		at[i] = d.v.Y(m.z)
	}
	left, right := d.v.X(d.w.Left)-0.6*u, d.v.X(d.w.Right)+0.6*u
	slots := draft.Shelf(at, size+2*u, d.area.Y0+2*u, d.area.Y1-12*u)
	for i, m := range list {
		g := d.g
		if m.hang != nil {
			g = d.g.Part(scene.Tag{Class: "plumb-line", Title: d.Words.Say("tip.line", d.SheetNumbers(m.hang)), Data: []scene.Datum{folio.Datum("at", folio.Mm(m.z))}})
			d.head(g, scene.Pt(left, at[i]), 0, false)
			d.head(g, scene.Pt(right, at[i]), 180, false)
			g.HLine(right+flagLong*u, right+flagStem*u, at[i], scene.Pen(scene.Plumb, folio.TapedFine))
			d.space.Take(scene.Box{X0: right, Y0: at[i] - flagWide/2*u, X1: right + flagStem*u, Y1: at[i] + flagWide/2*u})
			g.HLine(left-flagLong*u, left-flagStem*u, at[i], scene.Pen(scene.Plumb, folio.TapedFine))
			g.Line(scene.Pt(left-flagStem*u, at[i]), scene.Pt(left-8*u, slots[i]), scene.Pen(scene.Plumb, folio.TapedFine))
		}
		t := scene.Text{At: scene.Pt(left-flagGap*u, slots[i]), String: d.at(m.z), Height: size, Bold: m.hang != nil, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		d.figure(g, lineFlag{x: m.z, on: d}, t)
		if m.hang == nil {
			g.Line(scene.Pt(left-1*u, at[i]), scene.Pt(left-8*u, slots[i]), scene.Pen(scene.Dimensions, 0.25))
		}
	}
	d.space.Take(scene.Box{X0: left - 8.4*u, Y0: d.v.Y(high) - 2*u, X1: left, Y1: d.area.Y1})
	d.levelUp()
}

// topAt is the height of the ceiling at an end of a wall of bands.
func (d *wallBoard) topAt(right bool) L {
	if right {
		return room.At(d.w.W.Ceiling, d.w.Right)
	}
	return room.AtRight(d.w.W.Ceiling, d.w.Left)
}

// levelUp says at the left of a wall of bands where the level line is, from which its heights run.
func (d *wallBoard) levelUp() {
	u, size := d.Unit, folio.TapedText*d.Unit
	z, words := d.Level, d.Words.Say("wall.datum_level", d.Say(d.levelHere()))
	if !d.w.AtLevel() {
		z, words = room.AtRight(d.w.W.Floor, d.w.Left), d.Words.Say("wall.datum_floor")
	}
	d.zero(d.g.Part(scene.Tag{Class: "datum"}), z)
	low, _ := d.p.Extremes()
	x, y := d.v.X(d.w.Left)-1.6*u, d.v.Y(low)+7*u
	for _, line := range scene.Wrap(words, size, true, d.area.X1-1*u-x) {
		t := scene.Text{At: scene.Pt(x, y), String: line, Height: size, Bold: true, Layer: scene.Plumb}
		d.g.Text(t)
		d.space.Take(t.Bounds())
		y += size * 1.4
	}
}

// How far left of a wall of bands its figures end, and how high START is there, in mm on letter paper.
const (
	flagGap = 8.8
	upStart = 5.2
)

// startUp is how wide START is with its arrow.
func (d *wallBoard) startUp() float64 {
	return scene.Width(d.Words.Say("wall.start"), folio.TapedText*d.Unit, true) + 11*d.Unit
}

// rightUp is where what stands beside a wall of bands begins, in mm on letter paper.
const rightUp = 7

// holdsUp marks the joints after which the work stops, beside the wall.
func (d *wallBoard) holdsUp() {
	u, size := d.Unit, folio.TapedText*d.Unit
	x := d.v.X(d.w.Right) + rightUp*u
	for _, h := range d.p.holds() {
		y := d.v.Y(h.X)
		g := d.g.Part(scene.Tag{Class: "hold"})
		draft.Triangle(g, scene.Marks, scene.Pt(x, y), 180, 4.4*u, 5.2*u, folio.TapedHeavy, true)
		d.Word(g, scene.Pt(x+6*u, y+size/2), d.Words.Say("wall.hold", d.p.held(h).HoldNo), size, true, scene.Start)
		d.space.Take(scene.Box{X0: x - 1*u, Y0: y - 3*u, X1: x + 20*u, Y1: y + 3*u})
	}
}

// headsUp letters the names of the ends over the wall, START and UP beside it.
func (d *wallBoard) headsUp() {
	u, size := d.Unit, folio.TapedText*d.Unit
	d.label(d.v.X(d.w.Left), d.endUp(false), false, scene.Start)
	d.label(d.v.X(d.w.Right), d.endUp(true), false, scene.End)
	x := d.v.X(d.w.Right) + rightUp*u
	low, _ := d.p.Extremes()
	if h := d.p.rows[0]; h.Begins && !h.Hung() { // at the left end of the lowest band, where its first sheet lies
		wide, y := d.startUp(), d.v.Y(low)
		if box, ok := d.down(d.v.X(d.w.Left)-(flagGap+1.8)*u, wide, upStart*u, y-upStart*u, y); ok {
			d.Word(d.g, scene.Pt(box.X0, box.Y1-0.8*u), d.Words.Say("wall.start"), size, true, scene.Start)
			d.block(d.g, scene.Pt(box.X1-9*u, (box.Y0+box.Y1)/2), 9*u, 5*u)
		}
	}
	if box, ok := d.right(x, upWide*u, d.upHigh(), d.v.Y(low)-24*u); ok {
		d.arrowUp(box.X0+6*u, box)
	}
}

// right finds a free place right of the wall, the lowest from y on upward: the work begins at the floor.
func (d *wallBoard) right(x, wide, high, y float64) (scene.Box, bool) {
	for ; y > d.area.Y0; y -= sideStep * d.Unit {
		b := scene.Box{X0: x, Y0: y, X1: x + wide, Y1: y + high}
		if d.space.Free(b, crewAir*d.Unit) {
			d.space.Take(b)
			return b, true
		}
	}
	return scene.Box{}, false
}

// endUp names an end of a wall of bands, where they are always cut.
func (d *wallBoard) endUp(right bool) string {
	n := len(d.Room.Walls)
	corner, end := (d.w.Wall+n-1)%n, d.w.W.LeftEnd
	if right {
		corner, end = d.w.Wall, d.w.W.RightEnd
	}
	if end != "" {
		return d.Words.Of("end_label", end)
	}
	name := "C" + strconv.Itoa(corner+1)
	switch d.Room.Walls[corner].Corner {
	case room.Inside:
		return d.Words.Say("wall.cut_at", d.CornerWord(room.Inside, name))
	case room.Outside:
		return d.Words.Say("wall.cut_at", d.CornerWord(room.Outside, name))
	}
	return d.Words.Say("wall.cut")
}

// mostCutsUp is how many lines the lengths of the pieces of bands may take before the cut list alone has them.
const mostCutsUp = 4

// cutWordsUp say how long the pieces of the bands are cut, and where they begin, or where the cut list says it.
func (d *wallBoard) cutWordsUp() []string {
	var lines []string
	seen := map[string]bool{}
	for _, h := range d.p.rows {
		for _, s := range h.Sheets {
			if s.CutLength == 0 || s.Hung {
				continue
			}
			text := d.Words.Say("tape.cut_from", d.Say(d.Count.CutOf(s).Long(s, d.Style)), d.Along(d.w.Face, -s.Below))
			if !seen[text] {
				seen[text] = true
				lines = append(lines, text)
			}
		}
	}
	if len(lines) > mostCutsUp {
		lines = []string{d.Words.Say("tape.cuts_in_list", d.rowsWord(d.begun()))}
	}
	return lines
}

// marginUp is what heights take left of a wall of bands.
func (d *wallBoard) marginUp() float64 {
	w := 0.0
	for _, h := range d.p.Hangs {
		w = math.Max(w, scene.Width(d.at(h.X), folio.TapedText*d.Unit, true))
	}
	return math.Max(w, d.startUp()) + 13.5*d.Unit
}
