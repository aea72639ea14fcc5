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

// Heads and feet that the walls do not cut square: the bevel stands in the sheet, at the end that slopes; all that the card says of
// it under the list, as far as there is room, since the cut list has it too.

// raked reports whether any sheet that stands has a head or a foot that slopes.
func (c *Set) raked() bool {
	for _, x := range c.cards {
		if !x.Level && len(x.Rakes) > 0 {
			return true
		}
	}
	return false
}

// bevelled is a bevel that has no room in its sheet.
type bevelled struct {
	head   bool
	number string
	words  string
}

// bevels letters the bevels of every sheet in it, small, where they have a place; the others stand in one block.
func (d *wallBoard) bevels() {
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			for _, s := range h.Sheets {
				c := d.cards[s]
				if c == nil || !f.p.StartsHere(h) {
					continue
				}
				for i := range c.Rakes {
					r := &c.Rakes[i]
					words := strings.Join(card.BevelWords(d.TapedSet, c, r), ", ")
					if r.Wall == f.w.Wall && words != "" && !f.bevel(h, s, r.Head, words) {
						d.bevelled = append(d.bevelled, bevelled{r.Head, d.SheetNumber(s), words})
					}
				}
			}
		}
	}
}

// bevelLines are the bevels of heads or of feet that have no room in their sheets, those alike together.
func (d *drawing) bevelLines(head bool) []string {
	var lines, order []string
	numbers := map[string][]string{}
	for _, b := range d.bevelled {
		if b.head != head {
			continue
		}
		if numbers[b.words] == nil {
			order = append(order, b.words)
		}
		numbers[b.words] = append(numbers[b.words], b.number)
	}
	for _, words := range order {
		lines = append(lines, strings.Join(numbers[words], ", ")+": "+words)
	}
	return lines
}

// bevelHead heads the bevels of heads or of feet.
func (d *wallBoard) bevelHead(head bool) string {
	if head {
		return d.Words.Say("slopes.heads")
	}
	return d.Words.Say("slopes.feet")
}

// bevelWords are the bevels that have found no place in the drawing.
func (d *wallBoard) bevelWords() []string {
	var lines []string
	for _, head := range []bool{true, false} {
		for _, line := range d.bevelLines(head) {
			lines = append(lines, d.bevelHead(head)+" "+line)
		}
	}
	return lines
}

// Where a block of bevels is tried, and from line to line of it in its heights, in mm on letter paper.
const (
	blockStep  = 1.5
	blockPitch = 1.55
)

// bevelBlocks letters the bevels that have no room in their sheets, heads and feet in a block each, where the drawing leaves a place:
// heads as high as it goes, feet as low; else they stand under the list.
func (d *wallBoard) bevelBlocks() {
	for _, head := range []bool{true, false} {
		if lines := d.bevelLines(head); lines != nil && d.bevelBlock(head, append([]string{d.bevelHead(head)}, lines...)) {
			d.bevelled = slices.DeleteFunc(d.bevelled, func(b bevelled) bool { return b.head == head })
		}
	}
}

func (d *wallBoard) bevelBlock(head bool, lines []string) bool {
	u := d.Unit
	for _, size := range []float64{folio.TapedText * u, folio.TapedSmall * u} {
		wide, pitch := 0.0, size*blockPitch
		for i, line := range lines {
			wide = max(wide, scene.Width(line, size, i == 0))
		}
		high := pitch*float64(len(lines)-1) + size*1.3
		for down := 2 * u; down+high < d.area.H()-2*u; down += blockStep * u {
			y := d.area.Y0 + down
			if !head {
				y = d.area.Y1 - down - high
			}
			for x := d.area.X0 + 2*u; x+wide < d.area.X1-2*u; x += blockStep * u {
				box := scene.Box{X0: x, Y0: y, X1: x + wide, Y1: y + high}
				if !d.space.Free(box, crewAir*u) || d.overWall(box) {
					continue
				}
				d.space.Take(box)
				g := d.g.Part(scene.Tag{Class: "bevels"})
				for i, line := range lines {
					d.Word(g, scene.Pt(x, y+size+pitch*float64(i)), line, size, i == 0, scene.Start)
				}
				return true
			}
		}
	}
	return false
}

// overWall reports whether a box comes over any wall of the page.
func (d *drawing) overWall(b scene.Box) bool {
	const steps = 8
	for i := range steps + 1 {
		x := b.X0 + b.W()*float64(i)/steps
		for _, f := range d.faces {
			at := f.p.From + f.v.Length(x-f.v.X(f.p.From))
			if at < f.p.From || at > f.p.To {
				continue
			}
			if b.Y1 > f.v.Y(room.At(f.w.W.Ceiling, at)) && b.Y0 < f.v.Y(room.At(f.w.W.Floor, at)) {
				return true
			}
		}
	}
	return false
}

// How far in a sheet a bevel is tried from the end that slopes, in mm on letter paper.
const bevelStep = 1.0

// bevel letters the bevel of one end, as near to it as it goes: 1. level; 2. upright. It reports whether there is a place.
func (d *wallBoard) bevel(h *face.Hang, s *layout.Sheet, head bool, text string) bool {
	u, box := d.Unit, d.sheetBox(h, s)
	for _, angle := range []float64{0, 90} {
		t := scene.Text{String: text, Height: folio.TapedSmall * u, Anchor: scene.Middle, Seat: scene.Centred, Angle: angle, Layer: scene.Numbers}
		ink := t.Bounds()
		for in := bevelStep * u; in+ink.H() < box.H(); in += bevelStep * u {
			y := box.Y1 - in - ink.H()/2
			if head {
				y = box.Y0 + in + ink.H()/2
			}
			for _, x := range d.columns(box, ink.W(), 0) {
				t.At = scene.Pt(x, y)
				if b := moved(ink, t.At); d.holds(s, b) && d.space.Free(b, smallAir*u) {
					end := "foot"
					if head {
						end = "head"
					}
					g := d.g.Part(scene.Tag{Class: "bevel", Data: append(d.endData(s), folio.Datum("end", end))})
					g.Text(t)
					d.space.Take(b)
					return true
				}
			}
		}
	}
	return false
}

// holds reports whether a box lies in a sheet with all its corners.
func (d *wallBoard) holds(s *layout.Sheet, b scene.Box) bool {
	for _, p := range b.Corners() {
		if !d.within(s, p) {
			return false
		}
	}
	return d.within(s, b.Centre())
}

// slopeWords say of every sheet that begins on the page how its ends slope, in the words of its card.
func (d *wallBoard) slopeWords() []string {
	var lines []string
	for _, s := range d.begun() {
		if c := d.cards[s]; c != nil {
			for _, words := range card.RakeWords(d.TapedSet, d.Words, c) {
				lines = append(lines, d.SheetNumber(s)+": "+words)
			}
		}
	}
	return lines
}

// slopes letters under all else that stands beside the drawing the bevels that have no place in it, then how sheets slope, as far as
// there is room; the rest stands in the cut list, to which the last line points.
func (b *board) slopes(g *scene.Group, words []string, y float64, rows string) {
	u := b.Unit
	wrap := func(line string) []string { return scene.Wrap(line, folio.TapedText*u, false, b.List.W()-1.4*u) }
	room := int((b.List.Y1 - 1.9*u - y - 7.4*u) / (footPitch * u))
	all := 0
	for _, line := range words {
		all += len(wrap(line))
	}
	var shown []string
	for _, line := range words {
		if parts := wrap(line); all <= room || len(shown)+len(parts)+1 <= room {
			shown = append(shown, parts...)
			continue
		}
		shown = append(shown, wrap(b.Words.Say("slopes.in_list", rows))...)
		break
	}
	if shown == nil || len(shown) > room {
		return
	}
	y += 7.4 * u
	b.Word(g, scene.Pt(b.List.X0, y), b.Words.Say("slopes.title"), folio.TapedText*u, true, scene.Start)
	for _, line := range shown {
		y += footPitch * u
		b.Word(g, scene.Pt(b.List.X0, y), line, folio.TapedText*u, false, scene.Start)
	}
}
