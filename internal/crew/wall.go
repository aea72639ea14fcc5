package crew

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// Wall is one covered wall as the crew hangs it.
type Wall struct {
	*Set
	wall        int
	W           *room.Wall
	Run         *layout.Run
	st          layout.Stretch
	left, right L // x of its ends
	Hangs       []*hang
	pieces      []*piece
	cover       shape.Wall
}

// hang is one place on a wall: a sheet, or a column of courses.
type hang struct {
	place         int
	sheets        []*layout.Sheet // from the lowest course up
	from, to      L               // x of what it covers here, to the wall's ends
	before, after bool            // it goes on round the corner at the left, at the right
	Start, raw    L               // x of its raw edges as hung
	Turn          L               // what a place of the run is moved by to come to this wall, less the wall's shift
	Seam          *layout.Seam    // at its right, where it stands on this wall
	X             L               // of the seam, or of the end of the covering
	Line          L               // x of its plumb line
	Lined         bool            // there is a line to strike or to check
	closes        bool            // its right edge closes the room
	ends          bool            // the covering ends at its right, on this wall
	begins        bool            // it is the first of a span, and its left edge is on this wall
	Opens         bool            // begins, at the closing seam
}

// Sheet is the lowest of its courses.
func (h *hang) Sheet() *layout.Sheet { return h.sheets[0] }

// hanging are the sheets of a place that have a piece of the wall; all of them where none has. A course can fall wholly
// into an opening.
func (h *hang) hanging() []*layout.Sheet {
	var list []*layout.Sheet
	for _, s := range h.sheets {
		if len(s.Pieces) > 0 {
			list = append(list, s)
		}
	}
	if list == nil {
		return h.sheets
	}
	return list
}

// Check reports whether the line is only to check by: the sheet is hung on the wall before.
func (h *hang) Check() bool { return h.before && h.Lined }

// wallsOf are the ways in which a wall is hung: one where it is covered, none where it is bare.
func (c *Set) wallsOf(wall int) []*Wall {
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for _, st := range r.Walls {
			if st.Wall == wall {
				w := &Wall{Set: c, wall: wall, W: &c.Room.Walls[wall], Run: r, st: st, left: st.Left - st.Shift, right: st.Right - st.Shift}
				if r.Up {
					w.gatherUp()
					w.cover = layout.Covering(c.Room, layout.Stretch{Wall: wall, Right: w.W.Length})
					return []*Wall{w}
				}
				w.cover = layout.Covering(c.Room, st)
				w.gather()
				w.split()
				return []*Wall{w}
			}
		}
	}
	return nil
}

// gather lists what hangs on the wall, in hanging order.
func (w *Wall) gather() {
	r, turns := w.Run, []L{0}
	if r.Closed {
		turns = []L{-r.Length, 0, r.Length}
	}
	for i := 0; i < len(r.Sheets); {
		k := i + 1
		for k < len(r.Sheets) && r.Sheets[k].Place == r.Sheets[i].Place {
			k++
		}
		for _, turn := range turns {
			if h := w.hang(r.Sheets[i:k], turn); h != nil {
				w.Hangs = append(w.Hangs, h)
			}
		}
		i = k
	}
	sort.SliceStable(w.Hangs, func(i, j int) bool { return w.Hangs[i].place < w.Hangs[j].place })
}

// hang is what the sheets of a place are on this wall, nil where they are not on it.
func (w *Wall) hang(sheets []layout.Sheet, turn L) *hang {
	s, r := &sheets[0], w.Run
	first := s.Place == r.Spans[s.Span].FirstSheet
	last := s.Place == r.Spans[s.Span].LastSheet
	span := &r.Spans[s.Span]
	a, b := s.Left+turn, s.Right+turn
	if b <= w.st.Left || a >= w.st.Right {
		return nil
	}
	ends := r.Line.Spans[s.Span]
	h := &hang{place: s.Place, Turn: turn - w.st.Shift}
	for i := range sheets {
		h.sheets = append(h.sheets, &sheets[i])
	}
	h.before = a < w.st.Left && !(first && !span.Closed && ends.LeftEnd.Wall == w.wall)
	h.after = b > w.st.Right && !(last && !span.Closed && ends.RightEnd.Wall == w.wall)
	h.from, h.to = max(a, w.st.Left)-w.st.Shift, min(b, w.st.Right)-w.st.Shift
	h.Start, h.raw = s.StartLine+h.Turn, s.RightLine+h.Turn
	h.X = b - w.st.Shift
	h.closes = span.Closed && last
	h.ends = last && !span.Closed && !h.after
	h.begins = first && !h.before
	h.Opens = h.begins && span.Closed
	if h.after {
		return h
	}
	for i := range r.Seams {
		if m := &r.Seams[i]; m.LeftSheet == s.Place {
			h.Seam = m
		}
	}
	if h.Seam != nil {
		h.Line = h.X + w.half
		h.Lined = !h.closes && !h.Sheet().InGap && !w.inGap(h.Line)
	}
	return h
}

// inGap reports whether a place lies strictly inside a full-height gap, where nothing can be struck.
func (w *Wall) inGap(x L) bool {
	for i := range w.W.Openings {
		if o := &w.W.Openings[i]; o.FromLeft < x && x < o.Right() && w.W.FullHeight(o) {
			return true
		}
	}
	for _, b := range w.W.Bare {
		if b.From < x && x < b.To {
			return true
		}
	}
	return false
}

// piece is what of a wall stands on one page.
type piece struct {
	wall     *Wall
	index    int
	from, to L       // x; the wall's ends, or match lines
	rows     []*hang // of the tape list, in hanging order
	hangs    []*hang // what is drawn, from left to right
	fits     *fit
}

// fit is how much is kept free over and under a wall for everything to find its place, and whether some of it does not.
type fit struct {
	keep    [2]float64
	settled bool
	more    int // lines by which boxes and rips reach up into the drawing
}

// key is what other pages find the piece by.
func (p *piece) key() string { return fmt.Sprintf("wall %d piece %d", p.wall.wall, p.index) }

// mostSheets stand on one page.
const mostSheets = 12

// split parts a wall into pieces of at most mostSheets, at match lines through the middle of a sheet, over an opening
// where one is near.
func (w *Wall) split() {
	order := slices.Clone(w.Hangs)
	sort.SliceStable(order, func(i, j int) bool { return order[i].from < order[j].from })
	n := len(order)
	count := 1
	for n+count-1 > mostSheets*count {
		count++
	}
	var cuts []int // indices of the sheets that are cut through
	for k := 1; k < count; k++ {
		low := 1
		if len(cuts) > 0 {
			low = cuts[len(cuts)-1] + 1
		}
		// what is left has to stand on the pieces that are left
		least, most := n-1-(mostSheets-1)*(count-k), low+mostSheets-2
		if k == 1 {
			most = mostSheets - 1
		}
		cuts = append(cuts, w.cut(order, n*k/count, max(low, least), min(most, n-2)))
	}
	from, start := w.left, 0
	for i := 0; i <= len(cuts); i++ {
		p := &piece{wall: w, index: i, from: from, to: w.right}
		end := n
		if i < len(cuts) {
			h := order[cuts[i]]
			p.to, end = (h.from+h.to)/2, cuts[i]+1
		}
		p.hangs = order[start:end]
		p.rows = slices.Clone(p.hangs)
		sort.SliceStable(p.rows, func(a, b int) bool { return p.rows[a].place < p.rows[b].place })
		w.pieces = append(w.pieces, p)
		from, start = p.to, end-1
	}
}

// cut chooses the sheet from low to high through whose middle a match line runs: over an opening, near to where it was
// wanted.
func (w *Wall) cut(order []*hang, want, low, high int) int {
	best, cost := min(max(want, low), high), 1<<30
	for i := low; i <= high; i++ {
		d := want - i
		if d < 0 {
			d = -d
		}
		x := (order[i].from + order[i].to) / 2
		over := false
		for k := range w.W.Openings {
			if o := &w.W.Openings[k]; o.FromLeft < x && x < o.Right() {
				over = true
			}
		}
		if !over {
			d += 3
		}
		if d < cost {
			best, cost = i, d
		}
	}
	return best
}

// leftCut and rightCut report whether the piece ends at a match line.
func (p *piece) leftCut() bool { return p.index > 0 }

func (p *piece) rightCut() bool { return p.index < len(p.wall.pieces)-1 }

// here reports whether the right edge of a sheet is on this piece.
func (p *piece) here(h *hang) bool { return !p.rightCut() || h.X <= p.to }

// startsHere reports whether the left edge of a sheet is on this piece.
func (p *piece) startsHere(h *hang) bool { return !p.leftCut() || h.from >= p.from }

// number is what stands on the back of a sheet.
func (c *Set) number(s *layout.Sheet) string {
	if s.Number == 0 {
		return "?"
	}
	return strconv.Itoa(s.Number)
}

// Numbers are those of a column, from the lowest course up.
func (c *Set) Numbers(h *hang) string {
	var list []string
	for _, s := range h.hanging() {
		list = append(list, c.number(s))
	}
	return strings.Join(list, "/")
}

// flitchWords names flitches with their numbers: "flitch F-311 sheets 1 to 9".
func (c *Set) flitchWords(hangs []*hang) string {
	var names []string
	var sheets [][]int
	for _, h := range hangs {
		for _, s := range h.sheets {
			if n := len(names); n == 0 || names[n-1] != s.Flitch {
				names, sheets = append(names, s.Flitch), append(sheets, nil)
			}
			sheets[len(sheets)-1] = append(sheets[len(sheets)-1], s.Number)
		}
	}
	var parts []string
	for i, name := range names {
		slices.Sort(sheets[i])
		list := slices.Compact(sheets[i])
		words := "flitch " + name + " "
		if name == "" {
			words = ""
		}
		switch n := len(list); {
		case list[n-1] == 0:
			words = strconv.Itoa(len(sheets[i])) + " without a number"
		case n == 1:
			words += "sheet " + strconv.Itoa(list[0])
		case list[n-1]-list[0] == n-1:
			words += fmt.Sprintf("sheets %d to %d", list[0], list[n-1])
		default:
			words += "sheets " + layout.Numbers(list)
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

// Joints are where courses meet: heights, or in a wall whose sheets lie level, places along it.
func (w *Wall) Joints() []L {
	var list []L
	for _, h := range w.Hangs {
		for _, s := range h.sheets[1:] {
			for _, p := range s.Pieces {
				if p.Wall != w.wall || len(p.Outline) == 0 {
					continue
				}
				at := p.Outline[0].Z
				if w.Run.Up {
					at = p.Outline[0].X
					for _, q := range p.Outline {
						at = min(at, q.X)
					}
				}
				if !slices.Contains(list, at) {
					list = append(list, at)
				}
			}
		}
	}
	slices.Sort(list)
	return list
}
