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
	Wall        int
	W           *room.Wall
	Run         *layout.Run
	St          layout.Stretch
	Left, Right L // x of its ends
	Hangs       []*Hang
	Pieces      []*Piece
	Cover       shape.Wall
}

// Hang is one place on a wall: a sheet, or a column of courses.
type Hang struct {
	Place         int
	Sheets        []*layout.Sheet // from the lowest course up
	From, To      L               // x of what it covers here, to the wall's ends
	Before, After bool            // it goes on round the corner at the left, at the right
	Start, Raw    L               // x of its raw edges as hung
	Turn          L               // what a place of the run is moved by to come to this wall, less the wall's shift
	Seam          *layout.Seam    // at its right, where it stands on this wall
	X             L               // of the seam, or of the end of the covering
	Line          L               // x of its plumb line
	Lined         bool            // there is a line to strike or to check
	Closes        bool            // its right edge closes the room
	Ends          bool            // the covering ends at its right, on this wall
	Begins        bool            // it is the first of a span, and its left edge is on this wall
	Opens         bool            // begins, at the closing seam
}

func (h *Hang) Sheet() *layout.Sheet { return h.Sheets[0] }

// Hanging are the sheets of a place that have a piece of the wall; all of them where none has. A course can fall wholly
// into an opening.
func (h *Hang) Hanging() []*layout.Sheet {
	var list []*layout.Sheet
	for _, s := range h.Sheets {
		if len(s.Pieces) > 0 {
			list = append(list, s)
		}
	}
	if list == nil {
		return h.Sheets
	}
	return list
}

// Check reports whether the line is only to check by: the sheet is hung on the wall before.
func (h *Hang) Check() bool { return h.Before && h.Lined }

// WallsOf are the ways in which a wall is hung: one where it is covered, none where it is bare.
func (c *Set) WallsOf(wall int) []*Wall {
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for _, st := range r.Walls {
			if st.Wall == wall {
				w := &Wall{Set: c, Wall: wall, W: &c.Room.Walls[wall], Run: r, St: st, Left: st.Left - st.Shift, Right: st.Right - st.Shift}
				if r.Up {
					w.GatherUp()
					w.Cover = layout.Covering(c.Room, layout.Stretch{Wall: wall, Right: w.W.Length})
					return []*Wall{w}
				}
				w.Cover = layout.Covering(c.Room, st)
				w.Gather()
				w.Split()
				return []*Wall{w}
			}
		}
	}
	return nil
}

// Gather lists what hangs on the wall, in hanging order.
func (w *Wall) Gather() {
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
			if h := w.Hang(r.Sheets[i:k], turn); h != nil {
				w.Hangs = append(w.Hangs, h)
			}
		}
		i = k
	}
	sort.SliceStable(w.Hangs, func(i, j int) bool { return w.Hangs[i].Place < w.Hangs[j].Place })
}

// Hang is what the sheets of a place are on this wall, nil where they are not on it.
func (w *Wall) Hang(sheets []layout.Sheet, turn L) *Hang {
	s, r := &sheets[0], w.Run
	first := s.Place == r.Spans[s.Span].FirstSheet
	last := s.Place == r.Spans[s.Span].LastSheet
	span := &r.Spans[s.Span]
	a, b := s.Left+turn, s.Right+turn
	if b <= w.St.Left || a >= w.St.Right {
		return nil
	}
	ends := r.Line.Spans[s.Span]
	h := &Hang{Place: s.Place, Turn: turn - w.St.Shift}
	for i := range sheets {
		h.Sheets = append(h.Sheets, &sheets[i])
	}
	h.Before = a < w.St.Left && !(first && !span.Closed && ends.LeftEnd.Wall == w.Wall)
	h.After = b > w.St.Right && !(last && !span.Closed && ends.RightEnd.Wall == w.Wall)
	h.From, h.To = max(a, w.St.Left)-w.St.Shift, min(b, w.St.Right)-w.St.Shift
	h.Start, h.Raw = s.StartLine+h.Turn, s.RightLine+h.Turn
	h.X = b - w.St.Shift
	h.Closes = span.Closed && last
	h.Ends = last && !span.Closed && !h.After
	h.Begins = first && !h.Before
	h.Opens = h.Begins && span.Closed
	if h.After {
		return h
	}
	for i := range r.Seams {
		if m := &r.Seams[i]; m.LeftSheet == s.Place {
			h.Seam = m
		}
	}
	if h.Seam != nil {
		h.Line = h.X + w.Half
		h.Lined = !h.Closes && !h.Sheet().InGap && !w.InGap(h.Line)
	}
	return h
}

// InGap reports whether a place lies strictly inside a full-height gap, where nothing can be struck.
func (w *Wall) InGap(x L) bool {
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

// Piece is what of a wall stands on one page.
type Piece struct {
	Wall     *Wall
	Index    int
	From, To L       // x; the wall's ends, or match lines
	Rows     []*Hang // of the tape list, in hanging order
	Hangs    []*Hang // what is drawn, from left to right
	Fits     *Fit
}

// Fit is how much is kept free over and under a wall for everything to find its place, and whether some of it does not.
type Fit struct {
	Keep    [2]float64
	Settled bool
	More    int // lines by which boxes and rips reach up into the drawing
}

// Key is what other pages find the piece by.
func (p *Piece) Key() string { return fmt.Sprintf("wall %d piece %d", p.Wall.Wall, p.Index) }

// MostSheets stand on one page.
const MostSheets = 12

// Split parts a wall into pieces of at most mostSheets, at match lines through the middle of a sheet, over an opening
// where one is near.
func (w *Wall) Split() {
	order := slices.Clone(w.Hangs)
	sort.SliceStable(order, func(i, j int) bool { return order[i].From < order[j].From })
	n := len(order)
	count := 1
	for n+count-1 > MostSheets*count {
		count++
	}
	var cuts []int // indices of the sheets that are cut through
	for k := 1; k < count; k++ {
		low := 1
		if len(cuts) > 0 {
			low = cuts[len(cuts)-1] + 1
		}
		// what is left has to stand on the pieces that are left
		least, most := n-1-(MostSheets-1)*(count-k), low+MostSheets-2
		if k == 1 {
			most = MostSheets - 1
		}
		cuts = append(cuts, w.Cut(order, n*k/count, max(low, least), min(most, n-2)))
	}
	from, start := w.Left, 0
	for i := 0; i <= len(cuts); i++ {
		p := &Piece{Wall: w, Index: i, From: from, To: w.Right}
		end := n
		if i < len(cuts) {
			h := order[cuts[i]]
			p.To, end = (h.From+h.To)/2, cuts[i]+1
		}
		p.Hangs = order[start:end]
		p.Rows = slices.Clone(p.Hangs)
		sort.SliceStable(p.Rows, func(a, b int) bool { return p.Rows[a].Place < p.Rows[b].Place })
		w.Pieces = append(w.Pieces, p)
		from, start = p.To, end-1
	}
}

// Cut chooses the sheet from low to high through whose middle a match line runs: over an opening, near to where it was
// wanted.
func (w *Wall) Cut(order []*Hang, want, low, high int) int {
	best, cost := min(max(want, low), high), 1<<30
	for i := low; i <= high; i++ {
		d := want - i
		if d < 0 {
			d = -d
		}
		x := (order[i].From + order[i].To) / 2
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

// LeftCut and rightCut report whether the piece ends at a match line.
func (p *Piece) LeftCut() bool { return p.Index > 0 }

func (p *Piece) RightCut() bool { return p.Index < len(p.Wall.Pieces)-1 }

// Here reports whether the right edge of a sheet is on this piece.
func (p *Piece) Here(h *Hang) bool { return !p.RightCut() || h.X <= p.To }

// StartsHere reports whether the left edge of a sheet is on this piece.
func (p *Piece) StartsHere(h *Hang) bool { return !p.LeftCut() || h.From >= p.From }

// Number is what stands on the back of a sheet.
func (c *Set) Number(s *layout.Sheet) string {
	if s.Number == 0 {
		return "?"
	}
	return strconv.Itoa(s.Number)
}

// Numbers are those of a column, from the lowest course up.
func (c *Set) Numbers(h *Hang) string {
	var list []string
	for _, s := range h.Hanging() {
		list = append(list, c.Number(s))
	}
	return strings.Join(list, "/")
}

// FlitchWords names flitches with their numbers: "flitch F-311 sheets 1 to 9".
func (c *Set) FlitchWords(hangs []*Hang) string {
	var names []string
	var sheets [][]int
	for _, h := range hangs {
		for _, s := range h.Sheets {
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
		for _, s := range h.Sheets[1:] {
			for _, p := range s.Pieces {
				if p.Wall != w.Wall || len(p.Outline) == 0 {
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
