package crew

import (
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// openingCut is one thing that is done to a sheet at an opening.
type openingCut struct {
	number, words string
	whole         bool // the opening is wider than the sheet
}

// openingCuts say where each sheet is cut at an opening, from its raw left edge.
func (d *wallBoard) openingCuts(o *room.Opening) []openingCut {
	if d.w.Run.Up {
		return d.openingCutsUp(o)
	}
	var list []openingCut
	word := ""
	if o.WrapReveal {
		word = "fold "
	}
	for _, h := range d.p.Hangs {
		if !h.Meets(o) || h.Hung() {
			continue
		}
		c := openingCut{number: d.SheetNumbers(h)}
		from, to := d.bare(o.FromLeft-h.Start)+" +", d.bare(o.Right()-h.Start)+" +"
		switch starts, ends := h.From < o.FromLeft, h.To > o.Right(); {
		case h.Sheet().InGap:
			c.words = "to stock"
		case starts && ends:
			c.words = word + from + " to " + to
		case starts:
			c.words = word + "from " + from
		case ends:
			c.words = word + "to " + to
		default:
			c.words, c.whole = "all of it", true
		}
		list = append(list, c)
	}
	return list
}

// openingHeights say how far head and sill are from the level line, and how deep jambs are folded in.
func (d *wallBoard) openingHeights(o *room.Opening) []string {
	var lines []string
	if d.w.Run.Up {
		return nil
	}
	if o.WrapReveal {
		lines = append(lines, "fold in "+d.Inches(o.Reveal))
	}
	if d.w.W.FullHeight(o) {
		return lines
	}
	lines = append(lines, "head "+d.Updown(o.Head))
	if o.SillGiven {
		lines = append(lines, "sill "+d.Updown(o.Sill))
	}
	return lines
}

// openingWords letters in the white of each opening its name and how it is cut; where that has no room, it stands beside
// the drawing.
func (d *wallBoard) openingWords() {
	for i := range d.w.W.Openings {
		o := &d.w.W.Openings[i]
		box, ok := d.hole(o)
		if !ok {
			continue
		}
		var lines, short []string
		for _, c := range d.openingCuts(o) {
			lines = append(lines, c.number+": "+c.words)
			if !c.whole {
				short = append(short, c.number+" "+c.words)
			}
		}
		heights := d.openingHeights(o)
		lines, short = append(lines, heights...), append(short, heights...)
		if d.openingBlock(box, o.Name, lines) {
			continue
		}
		if !d.openingBlock(box, o.Name, nil) && !d.openingName(box, o.Name) {
			d.callout(d.g, scene.Pt(box.Centre().X, box.Y0+1*d.Unit), o.Name, o.Name+" at "+d.Say(o.FromLeft)+" to "+d.Say(o.Right()), false)
		}
		if len(short) > 0 {
			d.outside = append(d.outside, o.Name+": "+strings.Join(short, ", "))
		}
	}
}

// Lines in an opening and a name beside one, in mm on letter paper.
const (
	openingPitch = 5.8 // from line to line
	nameRing     = 6.0 // how far from the opening the nearest places are
	nameMore     = 3.0 // how much further each ring of places is
	nameRings    = 11
)

// openingBlock letters a name and lines in a box where they fit: in its middle, else further and further over and under
// it, as seams and the level line leave off at what is open but boxes may stand in it.
func (d *wallBoard) openingBlock(box scene.Box, name string, lines []string) bool {
	u, size := d.Unit, folio.TapedText*d.Unit
	high := size + float64(len(lines))*openingPitch*u
	var list []scene.Text
	place := func(y float64) bool {
		list = list[:0]
		for i, s := range append([]string{name}, lines...) {
			t := scene.Text{At: scene.Pt(box.Centre().X, y+float64(i)*openingPitch*u), String: s, Height: size, Bold: i == 0, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Openings}
			if !d.space.Free(t.Bounds(), crewAir*u) {
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
					d.g.Text(t)
					d.space.Take(t.Bounds())
				}
				return true
			}
		}
	}
	return false
}

// aroundOpening are the places of a ring round an opening, in halves of its width and height: over and under it, where
// walls have the most room, right and left, its corners, and between them.
var aroundOpening = [][2]float64{{0, -1}, {0, 1}, {1, 0}, {-1, 0}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0.5, 1}, {-0.5, 1}, {0.5, -1}, {-0.5, -1}}

// openingName letters a name where it has no room level in its opening: 1. upright in it; 2. near it on a leader, in rings
// further and further out.
func (d *wallBoard) openingName(box scene.Box, name string) bool {
	u, size := d.Unit, folio.TapedText*d.Unit
	c := box.Centre()
	t := scene.Text{At: c, String: name, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Angle: 90, Layer: scene.Openings}
	if d.space.Free(t.Bounds(), crewAir*u) {
		d.g.Text(t)
		d.space.Take(t.Bounds())
		return true
	}
	t.Angle = 0
	for ring := range nameRings {
		o := box.Inset(-(nameRing + nameMore*float64(ring)) * u)
		for _, k := range aroundOpening {
			t.At = scene.Pt(c.X+k[0]*o.W()/2, c.Y+k[1]*o.H()/2)
			if !d.space.Free(t.Bounds(), crewAir*u) {
				continue
			}
			from, to := leaderEnds(box.Inset(0.8*u), t.Bounds().Inset(-0.6*u))
			if !d.space.FreeLine(from, to, 0.3*u) {
				continue
			}
			d.line(d.g, from, to, scene.Pen(scene.Openings, 0.25))
			d.g.Text(t)
			d.space.Take(t.Bounds())
			return true
		}
	}
	return false
}
