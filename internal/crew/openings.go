package crew

import (
	"strings"

	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// OpeningCut is one thing that is done to a sheet at an opening.
type OpeningCut struct {
	Number, Words string
	Whole         bool // the opening is wider than the sheet
}

// OpeningCuts say where each sheet is cut at an opening, from its raw left edge.
func (d *WallBoard) OpeningCuts(o *room.Opening) []OpeningCut {
	if d.W.Run.Up {
		return d.OpeningCutsUp(o)
	}
	var list []OpeningCut
	word := ""
	if o.WrapReveal {
		word = "fold "
	}
	for _, h := range d.P.Hangs {
		if h.To <= o.FromLeft || h.From >= o.Right() || h.Sheet().Hung {
			continue
		}
		c := OpeningCut{Number: d.Numbers(h)}
		from, to := d.Bare(o.FromLeft-h.Start)+" +", d.Bare(o.Right()-h.Start)+" +"
		switch starts, ends := h.From < o.FromLeft, h.To > o.Right(); {
		case h.Sheet().InGap:
			c.Words = "to stock"
		case starts && ends:
			c.Words = word + from + " to " + to
		case starts:
			c.Words = word + "from " + from
		case ends:
			c.Words = word + "to " + to
		default:
			c.Words, c.Whole = "all of it", true
		}
		list = append(list, c)
	}
	return list
}

// OpeningHeights say how far head and sill are from the level line, and how deep jambs are folded in.
func (d *WallBoard) OpeningHeights(o *room.Opening) []string {
	var lines []string
	if d.W.Run.Up {
		return nil
	}
	if o.WrapReveal {
		lines = append(lines, "fold in "+d.Inches(o.Reveal))
	}
	if d.W.W.FullHeight(o) {
		return lines
	}
	lines = append(lines, "head "+d.Updown(o.Head))
	if o.SillGiven {
		lines = append(lines, "sill "+d.Updown(o.Sill))
	}
	return lines
}

// OpeningWords letters in the white of each opening its name and how it is cut; where that has no room, it stands beside
// the drawing.
func (d *WallBoard) OpeningWords() {
	for i := range d.W.W.Openings {
		o := &d.W.W.Openings[i]
		box, ok := d.Hole(o)
		if !ok {
			continue
		}
		var lines, short []string
		for _, c := range d.OpeningCuts(o) {
			lines = append(lines, c.Number+": "+c.Words)
			if !c.Whole {
				short = append(short, c.Number+" "+c.Words)
			}
		}
		heights := d.OpeningHeights(o)
		lines, short = append(lines, heights...), append(short, heights...)
		if d.OpeningBlock(box, o.Name, lines) {
			continue
		}
		if !d.OpeningBlock(box, o.Name, nil) && !d.OpeningName(box, o.Name) {
			d.Callout(d.G, scene.Pt(box.Centre().X, box.Y0+1*d.U), o.Name, o.Name+" at "+d.Say(o.FromLeft)+" to "+d.Say(o.Right()), false)
		}
		if len(short) > 0 {
			d.Outside = append(d.Outside, o.Name+": "+strings.Join(short, ", "))
		}
	}
}

// OpeningBlock letters a name and lines in the middle of a box where they fit.
func (d *WallBoard) OpeningBlock(box scene.Box, name string, lines []string) bool {
	u, size := d.U, CrewText*d.U
	const pitch = 5.8
	high := size + float64(len(lines))*pitch*u
	var list []scene.Text
	place := func(y float64) bool {
		list = list[:0]
		for i, s := range append([]string{name}, lines...) {
			t := scene.Text{At: scene.Pt(box.Centre().X, y+float64(i)*pitch*u), String: s, Height: size, Bold: i == 0, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Openings}
			if !d.Space.Free(t.Bounds(), CrewAir*u) {
				return false
			}
			list = append(list, t)
		}
		return true
	}
	mid := box.Centre().Y - high/2
	for off := 0.0; off <= box.H()/2; off += 1 * u {
		for _, y := range []float64{mid - off, mid + off} {
			if place(y) {
				for _, t := range list {
					d.G.Text(t)
					d.Space.Take(t.Bounds())
				}
				return true
			}
		}
	}
	return false
}

// OpeningName letters a name upright in a narrow opening, or near it on a leader.
func (d *WallBoard) OpeningName(box scene.Box, name string) bool {
	u, size := d.U, CrewText*d.U
	c := box.Centre()
	t := scene.Text{At: c, String: name, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Angle: 90, Layer: scene.Openings}
	if d.Space.Free(t.Bounds(), CrewAir*u) {
		d.G.Text(t)
		d.Space.Take(t.Bounds())
		return true
	}
	t.Angle = 0
	for ring := 1.0; ring < 12; ring++ {
		o := box.Inset(-(3 + 3*ring) * u)
		for _, k := range [][2]float64{{0, -1}, {0, 1}, {1, 0}, {-1, 0}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0.5, 1}, {-0.5, 1}, {0.5, -1}, {-0.5, -1}} {
			t.At = scene.Pt(c.X+k[0]*o.W()/2, c.Y+k[1]*o.H()/2)
			if !d.Space.Free(t.Bounds(), CrewAir*u) {
				continue
			}
			from, to := LeaderEnds(box.Inset(0.8*u), t.Bounds().Inset(-0.6*u))
			if !d.Space.FreeLine(from, to, 0.3*u) {
				continue
			}
			d.G.Line(from, to, scene.Pen(scene.Openings, 0.25))
			d.Space.Stroke(from, to)
			d.G.Text(t)
			d.Space.Take(t.Bounds())
			return true
		}
	}
	return false
}
