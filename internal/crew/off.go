package crew

import (
	"math"
	"slices"

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
	bare := slices.Clone(rows)
	for i := range bare {
		bare[i].off = ""
	}
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

// offRule letters under all else what is done further off, where there is room: the page of all lines says it too. It gives back where
// it came to.
func (b *board) offRule(g *scene.Group, rows []tapeRow, y float64, page string) float64 {
	u := b.Unit
	if !hasOff(rows) {
		return y
	}
	for _, words := range []string{b.Words.Say("off.more_long", page), b.Words.Say("off.more_fair", page), b.Words.Say("off.more_short", page)} {
		size := folio.TapedText * u
		if scene.Width(words, size, true) <= b.List.W()-0.6*u && y+5.6*u <= b.List.Y1-1.9*u {
			b.Word(g, scene.Pt(b.List.X0, y+5.6*u), words, size, true, scene.Start)
			return y + 5.6*u
		}
	}
	return y
}
