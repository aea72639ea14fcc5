package face

import (
	"sort"

	"flitchlay/internal/layout"
)

// Hang is one place of the run on this wall as it is hung: a sheet, or a column of courses. With horizontal grain it is a
// band, its courses pieces along it, and what is said of left and right holds for lower and upper: Start, X and Line are
// heights.
//
// A Part is what of a place is drawn. A hang holds also the courses that an opening takes whole: they have a number, and
// go back to stock.
type Hang struct {
	Place         int
	Sheets        []*layout.Sheet // from the lowest course up
	From, To      L               // x of what it covers here, to the wall's ends
	Before, After bool            // it goes on round the corner at the left, at the right
	Start         L               // x of its raw left edge as hung
	Turn          L               // what a place of the run is moved by to come to this wall, less the wall's shift
	Seam          *layout.Seam    // at its right, where it stands on this wall
	X             L               // of the seam, or of the end of the covering
	Line          L               // x of its plumb line, half an overlap right of the seam; of a sheet that came narrower less
	Lined         bool            // there is a line to strike or to check
	Closes        bool            // its right edge closes the room
	Ends          bool            // the covering ends at its right, on this wall
	Begins        bool            // it is the first of a span, and its left edge is on this wall
	Opens         bool            // begins, at the closing seam
}

// Sheet is the lowest of its courses.
func (h *Hang) Sheet() *layout.Sheet { return h.Sheets[0] }

// Hung reports whether it hangs already.
func (h *Hang) Hung() bool { return h.Sheet().Hung }

// Stock are the courses that an opening takes whole: they go back to stock.
func (h *Hang) Stock() []*layout.Sheet {
	var list []*layout.Sheet
	for _, s := range h.Sheets {
		if s.InGap {
			list = append(list, s)
		}
	}
	return list
}

// Gone reports whether all of its courses go back to stock, so that nothing hangs at the place.
func (h *Hang) Gone() bool { return len(h.Stock()) == len(h.Sheets) }

// Middle is the x of the middle of what it covers here.
func (h *Hang) Middle() L { return (h.From + h.To) / 2 }

// Check reports whether the line is only to check by: the sheet is hung on the wall before.
func (h *Hang) Check() bool { return h.Before && h.Lined }

// Called are the sheets by whose numbers the place is called: those that have a piece of any wall, all of them where none
// has.
func (h *Hang) Called() []*layout.Sheet {
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

// Holds reports whether a sheet is one of the place.
func (h *Hang) Holds(s *layout.Sheet) bool {
	for _, t := range h.Sheets {
		if t == s {
			return true
		}
	}
	return false
}

// hangs lists what hangs on the wall, in hanging order. A sheet that goes all round a room can come to a wall twice.
func (f *Face) hangs(half L) []*Hang {
	var list []*Hang
	turns := []L{0}
	if f.Run.Closed {
		turns = []L{-f.Run.Length, 0, f.Run.Length}
	}
	for _, sheets := range places(f.Run) {
		if f.Run.Up {
			list = append(list, f.band(sheets))
			continue
		}
		for _, turn := range turns {
			if h := f.hang(sheets, turn, half); h != nil {
				list = append(list, h)
			}
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Place < list[j].Place })
	return list
}

// places are the sheets of a run by their places, each from the lowest course up.
func places(r *layout.Run) [][]*layout.Sheet {
	var list [][]*layout.Sheet
	for i := range r.Sheets {
		s := &r.Sheets[i]
		if n := len(list); n > 0 && list[n-1][0].Place == s.Place {
			list[n-1] = append(list[n-1], s)
			continue
		}
		list = append(list, []*layout.Sheet{s})
	}
	return list
}

// hang is what the sheets of a place are on this wall, nil where they are not on it.
func (f *Face) hang(sheets []*layout.Sheet, turn, half L) *Hang {
	s, r, st := sheets[0], f.Run, f.St
	span, ends := &r.Spans[s.Span], &r.Line.Spans[s.Span]
	first, last := s.Place == span.FirstSheet, s.Place == span.LastSheet
	a, b := s.Left+turn, s.Right+turn
	if b <= st.Left || a >= st.Right {
		return nil
	}
	h := &Hang{Place: s.Place, Sheets: sheets, Turn: turn - st.Shift}
	h.Before = a < st.Left && !(first && !span.Closed && ends.LeftEnd.Wall == f.Wall)
	h.After = b > st.Right && !(last && !span.Closed && ends.RightEnd.Wall == f.Wall)
	h.From, h.To = max(a, st.Left)-st.Shift, min(b, st.Right)-st.Shift
	h.Start = s.StartLine + h.Turn
	h.X = b - st.Shift
	h.Closes = span.Closed && last
	h.Ends = last && !span.Closed && !h.After
	h.Begins = first && !h.Before
	h.Opens = h.Begins && span.Closed
	if h.After {
		return h
	}
	if h.Seam = r.SeamAfter(s.Place); h.Seam != nil {
		h.Line = h.X + half - r.Hanging(s.Place).Short.HalfDown()
		h.Lined = !h.Closes && !h.Gone() && !f.inGap(h.Line)
	}
	return h
}

// band is what the sheets of a place are where the grain runs level.
func (f *Face) band(sheets []*layout.Sheet) *Hang {
	s := sheets[0]
	span := &f.Run.Spans[s.Span]
	h := &Hang{Place: s.Place, Sheets: sheets, From: f.Left, To: f.Right, Start: s.StartLine, Turn: -f.St.Shift, X: s.Right}
	h.Begins, h.Ends = s.Place == span.FirstSheet, s.Place == span.LastSheet
	if h.Seam = f.Run.SeamAfter(s.Place); h.Seam != nil {
		h.Line, h.Lined = h.Seam.PlumbLine, true
	}
	return h
}

// Began is where the raw left edge of a place stands along the run, rounded as the run's lines are.
func (f *Face) Began(h *Hang) L { return f.Run.Line.Round(h.Start - h.Turn) }

// inGap reports whether a place lies strictly inside a full-height gap, where nothing can be struck.
func (f *Face) inGap(x L) bool {
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; o.FromLeft < x && x < o.Right() && f.W.FullHeight(o) {
			return true
		}
	}
	for _, b := range f.W.Bare {
		if b.From < x && x < b.To {
			return true
		}
	}
	return false
}

// Open reports whether an opening stands at x, with a side of it left and right of there.
func (f *Face) Open(x L) bool {
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; o.FromLeft < x && x < o.Right() {
			return true
		}
	}
	return false
}
