package crew

import (
	"math"
	"slices"

	"flitchlay/internal/crewday"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// off is how far the line at the right of a place may be off, as the tape list has it; of the left edge of a first sheet, where
// the room closes.
func (d *wallBoard) off(h *face.Hang, opens bool) string {
	play, ok := d.play(h, opens)
	if !ok {
		return ""
	}
	return offArrows(d.Off(play.Left), d.Off(play.Right), d.w.Run.Up)
}

// noRoom says in plain words that the line of a row may not be off at all to one side, or to both; "" where it may.
func (d *wallBoard) noRoom(h *face.Hang, opens bool) string {
	play, ok := d.play(h, opens)
	left := ok && play.Left.Must != layout.NoMust && play.Left.By < d.Style.Least()
	right := ok && play.Right.Must != layout.NoMust && play.Right.By < d.Style.Least()
	key := ""
	switch up := d.w.Run.Up; {
	case left && right:
		key = "tape.no_way"
	case left && up:
		key = "tape.no_down"
	case left:
		key = "tape.no_left"
	case right && up:
		key = "tape.no_up"
	case right:
		key = "tape.no_right"
	default:
		return ""
	}
	return d.Words.Say(key)
}

// saidOver puts over the figures of lines that they have no room to be off, beside what else stands there: as far as the column is
// wide enough. What is left out stands in figures under the seam.
func (b *board) saidOver(rows []tapeRow, column float64) []tapeRow {
	rows = slices.Clone(rows)
	for i := range rows {
		r := &rows[i]
		if r.edge != "" && scene.Width(r.edge, folio.TapedSmall*b.Unit, false)+2.4*b.Unit <= column {
			r.words = r.edge
		}
		r.edge = ""
		both := r.none
		if r.none != "" && r.words != "" {
			both = b.Words.Say("tape.and", r.words, r.none)
		}
		if r.none != "" && scene.Width(both, folio.TapedSmall*b.Unit, false)+2.4*b.Unit <= column {
			r.words = both
		}
		r.none = ""
	}
	return rows
}

// play is how far the line at the right of a place may be off, or the left edge of a first sheet; false where it may be off by any
// length.
func (d *wallBoard) play(h *face.Hang, opens bool) (layout.Play, bool) {
	place := h.Place
	if opens {
		for i := range d.w.Run.Seams {
			if s := &d.w.Run.Seams[i]; s.Closing && s.RightSheet == h.Place {
				place = s.LeftSheet
			}
		}
	}
	play, ok := d.Plays(d.w.Run)[place]
	return play, ok
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
// strike: in one line where it goes in one. Where the rows have no room for how far that is, it says on which page it stands. Under
// a long list that line says too where all the remarks stand, if they have no room. It gives the y under it, and whether it did.
func (b *board) offRule(g *scene.Group, d *wallBoard, shown bool, y float64, remarks []string, more string) (float64, bool) {
	u, size, wide := b.Unit, folio.TapedText*b.Unit, b.List.W()-0.6*b.Unit
	if !d.hasPlay() {
		return y, false
	}
	keys := []string{"off.more_long", "off.more_fair", "off.more_short"}
	if !shown {
		keys = []string{"off.page_long", "off.page_short"}
	}
	page, pointed := d.offPages(), len(remarks) > 0 && y+2*offPitch*u > b.List.Y1-1.9*u
	room := b.List.Y1 - 1.9*u - y
	for i, key := range keys {
		words := b.Words.Say(key, page)
		if pointed {
			words += "; " + more
		}
		last := i == len(keys)-1
		for _, letters := range []float64{folio.TapedText * u, folio.TapedSmall * u} {
			if size = letters; scene.Width(words, size, true) <= wide {
				break
			}
			if !pointed && !last {
				break
			}
		}
		if !last && scene.Width(words, size, true) > wide {
			continue
		}
		lines := scene.Wrap(words, size, true, wide)
		pitch := math.Min(offPitch*u, room/float64(len(lines)))
		for _, line := range lines {
			y += pitch
			b.Word(g, scene.Pt(b.List.X0, y), line, size, true, scene.Start)
		}
		break
	}
	return y, pointed
}

// offPitch is from one line of it to the next, in mm on letter paper.
const offPitch = 5.6

// hasPlay reports whether a line of the page may be off by so much and no more.
func (d *wallBoard) hasPlay() bool {
	return slices.ContainsFunc(d.tapeRows(), func(r tapeRow) bool { return r.off != "" })
}

// plainRows are rows without words over the figures of lines that say what stands under their seams.
func plainRows(rows []tapeRow) []tapeRow {
	plain := slices.Clone(rows)
	for i := range plain {
		plain[i].none, plain[i].edge = "", ""
	}
	return plain
}

// bareRows are rows without how far their lines may be off.
func bareRows(rows []tapeRow) []tapeRow {
	bare := slices.Clone(rows)
	for i := range bare {
		bare[i].off = ""
	}
	return bare
}
