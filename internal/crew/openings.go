package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/card"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// openingCut is one thing that is done to a sheet at an opening.
type openingCut struct {
	number, words string
	whole         string // all of it with its heights, where it stands beside the drawing
	from          string // the edge that the figures run from; "" where the words say it
	sheets        []*layout.Sheet
}

// openingCuts say where each sheet is cut at an opening, from its left edge; where it is folded in too, where it is bent.
func (d *wallBoard) openingCuts(o *room.Opening) []openingCut {
	var list []openingCut
	for _, h := range d.p.Hangs {
		if stock := h.Stock(); !d.w.Run.Up && h.Meets(o) && !h.Hung() && len(stock) > 0 {
			list = append(list, openingCut{number: d.numbersOf(stock), words: d.Words.Say("wall.to_stock"), whole: d.Words.Say("wall.to_stock"), sheets: stock})
		}
	}
	for _, x := range d.cutsHere() {
		for _, h := range x.Holes {
			if h.Kind.Traits().Box || h.Wall != d.w.Wall || &d.w.W.Openings[h.Index] != o || x.Hung {
				continue
			}
			c := openingCut{number: d.numberOf(x), words: h.Across(d.cutSpeech()), from: x.FromEdge(d.cutSpeech()), sheets: []*layout.Sheet{x.Sheet()}}
			c.whole = x.HoleWords(d.cutSpeech(), h)
			if s := x.Sheet(); d.cards[s] != nil {
				c.whole = card.HoleWords(d.TapedSet, d.Words, d.cards[s], &h, d.cutSpeech())
			}
			if !x.Marked() || x.Line.Second() { // the heights of the opening are from a mark that is not on the sheet
				c.words, c.from = c.whole, ""
			}
			for _, b := range x.Bends {
				if b.Of == o {
					c.words, c.whole = d.Words.Say("wall.fold_cut", d.bare(b.At), c.words), d.Words.Say("wall.fold_cut", d.bare(b.At), c.whole)
				}
			}
			list = append(list, c)
		}
	}
	return list
}

// gapAt is the opening that a place lies strictly in where that leaves no covering over or under it, nil where none does.
func (d *wallBoard) gapAt(x L) *room.Opening {
	for i := range d.w.W.Openings {
		if o := &d.w.W.Openings[i]; !d.w.Run.Up && o.FromLeft < x && x < o.Right() && d.w.W.FullHeight(o) {
			return o
		}
	}
	return nil
}

// gapWords say where a sheet ends that has no line: at the jamb of an opening, else at its seam.
func (d *wallBoard) gapWords(h *face.Hang) (words, at string) {
	if o := d.gapAt(h.X); o != nil {
		return d.Words.Say("tape.ends_at", o.Name), d.at(o.FromLeft)
	}
	return d.Words.Say("tape.no_line_gap"), d.at(h.X)
}

// startsIn is the opening in which the left edge of a sheet hangs free, so that the sheet begins at the jamb; nil where there is
// none.
func (d *wallBoard) startsIn(h *face.Hang) *room.Opening {
	if o := d.gapAt(h.From); o != nil && !h.Gone() && !h.Before && d.p.StartsHere(h) {
		return o
	}
	return nil
}

// edgeWords say where the raw edges of sheets hang free in an opening: no line can be struck for them.
func (d *wallBoard) edgeWords() []string {
	var lines []string
	for _, h := range d.p.rows {
		if h.Gone() || h.Hung() {
			continue
		}
		if o := d.startsIn(h); o != nil {
			lines = append(lines, d.Words.Say("tape.raw_left", o.Name, d.SheetNumbers(h), d.at(h.Start)))
		}
		if o := d.gapAt(h.X); o != nil && !h.After && !h.Lined && h.Seam != nil && d.p.Here(h) {
			lines = append(lines, d.Words.Say("tape.raw_right", o.Name, d.SheetNumbers(h), d.at(h.Line)))
		}
	}
	return lines
}

// numbersOf are the numbers of sheets from the lowest course up.
func (c *Set) numbersOf(sheets []*layout.Sheet) string {
	var list []string
	for _, s := range sheets {
		list = append(list, c.SheetNumber(s))
	}
	return strings.Join(list, "+")
}

// edgeOf is the edge that most of some cuts are measured from.
func edgeOf(cuts []openingCut) string {
	count := map[string]int{}
	best := ""
	for _, c := range cuts {
		if count[c.from]++; c.from != "" && count[c.from] > count[best] {
			best = c.from
		}
	}
	return best
}

// openingHeights say how far head and sill are from the level line.
func (d *wallBoard) openingHeights(o *room.Opening) []string {
	var lines []string
	if d.w.W.FullHeight(o) {
		return lines
	}
	lines = append(lines, d.Words.Say("wall.head", d.Updown(o.Head)))
	if o.SillGiven {
		lines = append(lines, d.Words.Say("wall.sill", d.Updown(o.Sill)))
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
		cuts := d.openingCuts(o)
		edge := edgeOf(cuts)
		for _, c := range cuts {
			words := c.words
			if c.from != "" && c.from != edge {
				words += " " + c.from
			}
			lines = append(lines, c.number+": "+words)
			short = append(short, d.of(o.Name+" "+d.Words.Say("wall.in_sheet", c.number, c.whole), c.sheets...))
		}
		if edge != "" {
			lines = append(lines, edge)
		}
		heights := append(d.openingHeights(o), d.casingWords(o)...)
		lines = append(lines, heights...)
		places, at := d.openingPlaces(o), d.Words.Say("wall.opening_at", o.Name, d.where(o.FromLeft), d.where(o.Right()))
		where := strings.Join(append([]string{at}, heights...), ", ")
		all, own := slices.Concat(places, lines), slices.Concat(places, heights)
		switch {
		case d.openingBlock(box, o.Name, all, folio.TapedText):
			continue
		case d.openingBlock(box, o.Name, own, folio.TapedText), d.openingBlock(box, o.Name, own, folio.TapedSmall):
		case !d.openingBlock(box, o.Name, nil, folio.TapedText) && !d.openingName(box, o.Name):
			d.callout(d.g, scene.Pt(box.Centre().X, box.Y0+1*d.Unit), o.Name, at, false)
			fallthrough
		default:
			d.places = append(d.places, where)
		}
		d.outside = append(d.outside, short...)
	}
}

// openingPlaces say where the edges of an opening stand along the wall, as the layout has it measured.
func (d *wallBoard) openingPlaces(o *room.Opening) []string {
	return []string{d.Words.Say("wall.left_at", d.Along(d.w.Face, o.FromLeft)), d.Words.Say("wall.right_at", d.Along(d.w.Face, o.Right()))}
}

// boxPlaces say where the plates of what is set in the wall begin and end along it.
func (d *wallBoard) boxPlaces() []string {
	var list []string
	for _, b := range d.p.Boxes() {
		list = append(list, d.Words.Say("tape.plate", b.Letter, d.Along(d.w.Face, b.X-b.PlateWidth/2), d.Along(d.w.Face, b.X+b.PlateWidth/2)))
	}
	if list == nil {
		return nil
	}
	return []string{d.Words.Say("tape.plates", strings.Join(list, "; "))}
}

// Lines in an opening and a name beside one, in mm on letter paper.
const (
	openingPitch = 1.66 // from line to line, in heights of the letters
	nameRing     = 6.0  // how far from the opening the nearest places are
	nameMore     = 3.0  // how much further each ring of places is
	nameRings    = 11
)

// openingBlock letters a name and lines in a box where they fit: in its middle, else further and further over and under
// it, as seams and the level line leave off at what is open but boxes may stand in it.
func (d *wallBoard) openingBlock(box scene.Box, name string, lines []string, letters float64) bool {
	u, size := d.Unit, letters*d.Unit
	high := size * (1 + float64(len(lines))*openingPitch)
	var list []scene.Text
	place := func(y float64) bool {
		list = list[:0]
		for i, s := range append([]string{name}, lines...) {
			t := scene.Text{At: scene.Pt(box.Centre().X, y+float64(i)*openingPitch*size), String: s, Height: size, Bold: i == 0, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Openings}
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
