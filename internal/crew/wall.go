package crew

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
)

// Wall is one covered wall as the crew hangs it.
type Wall struct {
	*Set
	*face.Face
	pieces []*piece
}

// piece is what of a wall stands on one page.
type piece struct {
	*face.Piece
	wall *Wall
	rows []*face.Hang // of the tape list, in hanging order
}

// What stands on one page: sheets, and rows of its tape list, which has more of them where a run starts, or closes.
const (
	mostSheets = 12
	mostRows   = 12
	least      = 6 // sheets, however many rows they take
)

// hung is a wall with its pieces, one to a page: as few as hold every piece's sheets and its rows.
func (c *Set) hung(f *face.Face) *Wall {
	w := &Wall{Set: c, Face: f}
	for most := mostSheets; ; most-- {
		w.pieces = nil
		fits := true
		for _, part := range f.Split(most) {
			p := &piece{Piece: part, wall: w, rows: slices.Clone(part.Hangs)}
			sort.SliceStable(p.rows, func(a, b int) bool { return p.rows[a].Place < p.rows[b].Place })
			w.pieces = append(w.pieces, p)
		}
		for _, p := range w.pieces {
			fits = fits && inList(c.boards(&board{Set: c}, &strip{pieces: []*piece{p}}).tapeRows())
		}
		if fits || f.Run.Up || most == least {
			return w
		}
	}
}

// fit is how much is kept free over and under a wall for everything to find its place, and whether some of it does not.
type fit struct {
	keep    [2]float64
	settled bool
	more    int // lines by which boxes and rips reach up into the drawing
}

// title is what the piece's page is called.
func (p *piece) title() string {
	if len(p.wall.pieces) > 1 {
		return p.wall.Words.Say("wall.piece", p.wall.W.Name, p.Index+1)
	}
	return p.wall.W.Name
}

// key is what other pages find the piece by.
func (p *piece) key() string { return fmt.Sprintf("wall %d piece %d", p.Face.Wall, p.Index) }

// hangs is what hangs on its walls, from left to right, what stands on two of them once.
func (s *strip) hangs() []*face.Hang {
	var list []*face.Hang
	for _, p := range s.pieces {
		for _, h := range p.Hangs {
			if !slices.ContainsFunc(list, func(x *face.Hang) bool { return len(s.pieces) > 1 && x.Place == h.Place }) {
				list = append(list, h)
			}
		}
	}
	return list
}

// flitchWords names flitches with the numbers of their sheets that hang there, in the order of hanging: "flitch F-311 sheets 1 to 9".
func (c *Set) flitchWords(hangs []*face.Hang) string {
	var names []string
	var sheets [][]int
	hangs = slices.Clone(hangs)
	slices.SortStableFunc(hangs, func(a, b *face.Hang) int { return a.Place - b.Place })
	for _, h := range hangs {
		for _, s := range h.Sheets {
			if s.InGap {
				continue
			}
			if n := len(names); n == 0 || names[n-1] != s.Flitch {
				names, sheets = append(names, s.Flitch), append(sheets, nil)
			}
			sheets[len(sheets)-1] = append(sheets[len(sheets)-1], s.Number)
		}
	}
	var parts []string
	for i, name := range names {
		list := slices.Compact(slices.DeleteFunc(slices.Clone(sheets[i]), func(n int) bool { return n == 0 }))
		words := ""
		switch n := len(list); {
		case n == 0:
			words = c.Words.Say("wall.numberless", len(sheets[i]))
		case n == 1:
			words = c.Words.Say("wall.one_sheet", list[0])
		case inOneRow(list):
			words = c.Words.Say("wall.sheets_to", list[0], list[n-1])
		default:
			words = c.Words.Say("wall.sheets", layout.Numbers(list))
		}
		if name != "" && len(list) > 0 {
			words = c.Words.Say("wall.flitch_of", name, words)
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

// inOneRow reports whether numbers go up one by one, or down.
func inOneRow(list []int) bool {
	for i := 1; i < len(list); i++ {
		if step := list[i] - list[i-1]; step*step != 1 || step != list[1]-list[0] {
			return false
		}
	}
	return true
}
