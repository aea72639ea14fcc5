package crew

import (
	"math"
	"slices"

	"flitchlay/internal/crewday"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// off is how far the line at the right of a place may be off, as the tape list has it; of the left edge of a first sheet, where
// the room closes.
func (d *wallBoard) off(h *face.Hang, opens bool) string {
	place := h.Place
	if opens {
		for i := range d.w.Run.Seams {
			if s := &d.w.Run.Seams[i]; s.Closing && s.RightSheet == h.Place {
				place = s.LeftSheet
			}
		}
	}
	play, ok := d.Plays(d.w.Run)[place]
	if !ok {
		return ""
	}
	return offArrows(d.Off(play.Left), d.Off(play.Right), d.w.Run.Up)
}

// offPages names the pages that say how far the lines of this page may be off, and what breaks then.
func (d *wallBoard) offPages() string {
	var keys []string
	for _, f := range d.faces {
		for _, h := range f.p.rows {
			if h.Lined && f.p.Here(h) && !h.Hung() && f.off(h, false) != "" {
				keys = append(keys, crewday.OffKeyOf(f.w.Run, h.Place))
			}
			for i := range f.w.Run.Seams {
				if s := &f.w.Run.Seams[i]; h.Opens && s.Closing && s.RightSheet == h.Place && f.off(h, true) != "" {
					keys = append(keys, crewday.OffKeyOf(f.w.Run, s.LeftSheet))
				}
			}
		}
	}
	if words := d.PagesWord(keys); words != "" {
		return words
	}
	return d.PageWord(crewday.OffKey)
}

// offArrows are two limits with the ways to which they are; where the grain runs level these are down and up.
func offArrows(left, right string, up bool) string {
	if up {
		return "↓ " + left + "  ↑ " + right
	}
	return "← " + left + "  → " + right
}

// offHead heads what stands under the seams, where the rows have it: the first that has room.
func (b *board) offHead(rows []tapeRow, page string) []string {
	if !hasOff(rows) {
		return nil
	}
	return []string{b.Words.Say("off.head_long", page), b.Words.Say("off.head_fair", page), b.Words.Say("off.head_short")}
}

func hasOff(rows []tapeRow) bool {
	return slices.ContainsFunc(rows, func(r tapeRow) bool { return r.off != "" })
}

// offsFit leaves out how far lines may be off where the list is too narrow for it beside what is read from a ladder: the page of all
// lines has it.
func (b *board) offsFit(rows []tapeRow) []tapeRow {
	with := b.tapeColumns(rows)
	bare := bareRows(rows)
	without := b.tapeColumns(bare)
	for i, r := range rows {
		need := math.Max(scene.Width(r.line, folio.TapedText*b.Unit, true), scene.Width(r.words, folio.TapedSmall*b.Unit, false)) + 2.4*b.Unit
		if r.line != "" && with[1] < need && without[1] >= need-1e-9 {
			return bare
		}
		if scene.Width(rows[i].off, folio.TapedSmall*b.Unit, false)+2.4*b.Unit > with[2] {
			return bare
		}
	}
	return rows
}

// offWords letters how far a line may be off, under its seam.
func (b *board) offWords(g *scene.Group, words string, at scene.Point) {
	g.Text(scene.Text{At: at, String: words, Height: folio.TapedSmall * b.Unit, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Notes})
}

// offRule letters right under the list what is done when a line is further off than it may be, on every page that has lines to
// strike: in one line where it goes in one. Where the rows have no room for how far that is, it says on which page it stands. It
// gives the y under it.
func (b *board) offRule(g *scene.Group, d *wallBoard, shown bool, y float64) float64 {
	u, size := b.Unit, folio.TapedText*b.Unit
	if !d.hasPlay() {
		return y
	}
	keys := []string{"off.more_long", "off.more_fair", "off.more_short"}
	if !shown {
		keys = []string{"off.page_long", "off.page_short"}
	}
	page, wide := d.offPages(), b.List.W()-0.6*u
	for i, key := range keys {
		words := b.Words.Say(key, page)
		if i == len(keys)-1 || scene.Width(words, size, true) <= wide {
			pitch := offPitch * u
			if y+pitch > b.List.Y1-1.9*u { // between a long list and the foot
				size, pitch = folio.TapedSmall*u, 3.4*u
			}
			for _, line := range scene.Wrap(words, size, true, wide) {
				if y+pitch > b.List.Y1-1.9*u {
					return y
				}
				y += pitch
				b.Word(g, scene.Pt(b.List.X0, y), line, size, true, scene.Start)
			}
			break
		}
	}
	return y
}

// offPitch is from one line of it to the next, in mm on letter paper.
const offPitch = 5.6

// hasPlay reports whether a line of the page may be off by so much and no more.
func (d *wallBoard) hasPlay() bool {
	return slices.ContainsFunc(d.tapeRows(), func(r tapeRow) bool { return r.off != "" })
}

// bareRows are rows without how far their lines may be off.
func bareRows(rows []tapeRow) []tapeRow {
	bare := slices.Clone(rows)
	for i := range bare {
		bare[i].off = ""
	}
	return bare
}
