package count

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Material is everything but veneer, of what is still to hang: paste, primer, strips and blades, the ends of the covering and the
// boxes in it that no sheet hangs at yet.
type Material struct {
	Paste, Primer     *layout.Amount // nil where the label's coverage is not given
	PasteOn, PrimerOn length.Area    // twice the area it goes on, without loss
	Ends              []End
	Extenders         []Extender
	Strip             Strip
	Blades            Blades
	Alarms            int // stay bare, plates and all
}

// Ends of one kind.
type End struct {
	Kind    string // what the covering ends against
	Takes   string // end bead, edge trim, or nothing
	Count   int
	Length  L
	Longest L
}

// Extender is how many boxes of a size need an extension ring.
type Extender struct{ Gang, Count int }

// Strip is the strip that is put under a double cut, to keep the knife off the wall.
type Strip struct {
	Count  int
	Length L
}

// Blades: a new one for every seam, every end match and every edge of an opening that is still to cut.
type Blades struct{ Seams, Matches, Edges int }

// Total is all blades.
func (b Blades) Total() int { return b.Seams + b.Matches + b.Edges }

// stripOver is what a cutting strip has over the seam's seen length.
func stripOver(unit length.Unit) L {
	if unit == length.Millimetres {
		return 100 * length.Millimetre
	}
	return 4 * length.Inch
}

func (c *Count) material() {
	r, m := c.room(), &c.Material
	m.PasteOn = c.Areas.Of[Net] - c.hangs()
	m.PrimerOn = m.PasteOn
	extra := stripOver(r.Project.Units)
	for i := range c.Plan.Runs {
		run := &c.Plan.Runs[i]
		for _, s := range run.Seams {
			if isCut(run, &s) {
				continue
			}
			m.PasteOn += 2 * r.Veneer.Overlap.Times(s.Seen)
			if InGap(run, s.At) {
				continue
			}
			m.Strip.Count++
			m.Strip.Length += s.Seen + extra
			m.Blades.Seams++
		}
		for _, s := range run.Spans {
			m.PrimerOn += 8 * length.Inch.Times(s.Right-s.Left)
		}
		for k := range run.Sheets {
			if s := &run.Sheets[k]; !s.Lowest && s.CutLength > 0 && !s.Hung {
				m.Strip.Count++
				m.Strip.Length += s.Width + extra
				m.Blades.Matches++
			}
		}
		for _, o := range run.Openings {
			m.Blades.Edges += edges(r, &o) - cutEdges(run, &o, &r.Walls[o.Wall].Openings[o.Index])
		}
		c.ends(run)
		for _, st := range run.Walls {
			c.boxes(run, st)
		}
	}
	slices.SortStableFunc(m.Ends, func(a, b End) int { return cmp.Compare(a.Kind, b.Kind) })
	slices.SortFunc(m.Extenders, func(a, b Extender) int { return cmp.Compare(a.Gang, b.Gang) })
	m.Paste, m.Primer = layout.PasteOn(r, m.PasteOn), layout.PrimerOn(r, m.PrimerOn)
	c.longest()
}

// hangs is twice the area of the pieces that hang already.
func (c *Count) hangs() length.Area {
	var twice length.Area
	c.each(func(_ *layout.Run, s *layout.Sheet) {
		for _, p := range s.Pieces {
			if s.Hung {
				twice += p.Twice()
			}
		}
	})
	return twice
}

// isCut reports whether a seam is behind the crew: both its sheets hang.
func isCut(run *layout.Run, seam *layout.Seam) bool {
	hung := 0
	for k := range run.Sheets {
		if s := &run.Sheets[k]; s.Hung && s.Lowest && (s.Place == seam.LeftSheet || s.Place == seam.RightSheet) {
			hung++
		}
	}
	return hung == 2 || hung == 1 && seam.LeftSheet == seam.RightSheet
}

// InGap reports whether a seam stands strictly in a gap behind which the grain counts on: nothing is cut there.
func InGap(run *layout.Run, at L) bool {
	for _, o := range run.Openings {
		for turn := -run.Length; turn <= run.Length; turn += run.Length {
			if o.Through && o.Left < at+turn && at+turn < o.Right && (turn == 0 || run.Closed) {
				return true
			}
		}
	}
	return false
}

// takes says what closes a raw end (common practice, no source).
var takes = map[string]string{"outside edge": "edge trim", "trim": "edge trim", "free": "end bead", "bare": "end bead", "": "end bead"}

// endWords name kinds of raw ends that the room file has no word for.
var endWords = map[string]string{"": "end of the run", "bare": "bare strip", "opening": "full-height opening"}

// ends adds the raw ends of a run by kind.
func (c *Count) ends(run *layout.Run) {
	r := c.room()
	add := func(kind string, long L) {
		if long <= 0 {
			return
		}
		word, what := kind, takes[kind]
		if w, ok := endWords[kind]; ok {
			word = w
		}
		m := &c.Material
		i := slices.IndexFunc(m.Ends, func(e End) bool { return e.Kind == word })
		if i < 0 {
			i = len(m.Ends)
			m.Ends = append(m.Ends, End{Kind: word, Takes: what})
		}
		m.Ends[i].Count++
		m.Ends[i].Length += long
		m.Ends[i].Longest = max(m.Ends[i].Longest, long)
	}
	if run.Up {
		w := &r.Walls[run.Walls[0].Wall]
		low, high := w.CoverFloor(), w.CoverCeiling()
		add(w.LeftEnd, room.AtRight(high, 0)-room.AtRight(low, 0))
		add(w.RightEnd, room.At(high, w.Length)-room.At(low, w.Length))
		return
	}
	for i, s := range run.Line.Spans {
		if s.Closed {
			continue
		}
		end := func(kind string, wall int, s L, right bool) {
			w := &r.Walls[wall]
			for _, st := range run.Walls {
				if st.Wall != wall {
					continue
				}
				x := s - st.Shift
				for run.Closed && x > w.Length && x-run.Length >= 0 {
					x -= run.Length
				}
				at := room.AtRight
				if right {
					at = room.At
				}
				add(kind, at(w.CoverCeiling(), x)-at(w.CoverFloor(), x))
			}
		}
		if in := &run.Spans[i]; !run.Hanging(in.FirstSheet).Hung {
			end(s.LeftEnd.Kind, s.LeftEnd.Wall, s.L-min(0, s.LeftEnd.Lean), false)
		}
		if in := &run.Spans[i]; !run.Hanging(in.LastSheet).Hung {
			end(s.RightEnd.Kind, s.RightEnd.Wall, s.R-max(0, s.RightEnd.Lean), true)
		}
	}
}

// boxes counts the boxes of a wall that stand in the covering: thin wood counts as a surface that can burn until the
// authority says otherwise, so that every electrical box has to come out flush with it.
//
// Source: NEC 314.20, 2014 and 2017, as quoted in licence training.
func (c *Count) boxes(run *layout.Run, st layout.Stretch) {
	w := &c.room().Walls[st.Wall]
	for _, b := range w.Boxes {
		if stands(w, b) || behind(run, st, b) {
			continue
		}
		if b.Kind.Traits().NeverCovered {
			c.Material.Alarms++
		}
		if b.Kind.Traits().Electrical {
			m := &c.Material
			i := slices.IndexFunc(m.Extenders, func(e Extender) bool { return e.Gang == b.Gang })
			if i < 0 {
				i = len(m.Extenders)
				m.Extenders = append(m.Extenders, Extender{Gang: b.Gang})
			}
			m.Extenders[i].Count++
		}
	}
}

// behind reports whether a box is behind the crew: all sheets hang that come to its plate.
func behind(run *layout.Run, st layout.Stretch, b room.Box) bool {
	if run.Up {
		return false // no sheet hangs where the grain is level
	}
	hung := false
	for k := range run.Sheets {
		s, meets := &run.Sheets[k], false
		Turns(run, func(turn L) {
			x := st.Shift + b.X + turn
			meets = meets || s.Left < x+b.PlateWidth/2 && x-b.PlateWidth/2 < s.Right
		})
		if meets && !s.Hung && !s.InGap {
			return false
		}
		hung = hung || meets && s.Hung
	}
	return hung
}

// stands reports whether a box stands where there is no covering.
func stands(w *room.Wall, b room.Box) bool {
	for _, o := range w.Openings {
		if o.FromLeft < b.X && b.X < o.Right() && (!o.SillGiven || o.Sill < b.Z) && b.Z < o.Head {
			return true
		}
	}
	for _, s := range w.Bare {
		if s.From < b.X && b.X < s.To {
			return true
		}
	}
	x := min(max(b.X, 0), w.Length)
	return b.Z < room.At(w.CoverFloor(), x) || b.Z > room.At(w.CoverCeiling(), x)
}

// longest finds the sheet that takes the most.
func (c *Count) longest() {
	l := &c.Longest
	type register struct {
		flitch string
		course int
		turned bool
	}
	var order []register
	most := map[register][2]L{}
	for i := range c.Cuts {
		cut := &c.Cuts[i]
		l.Printed = max(l.Printed, c.printed(cut))
		if cut.Length > l.Cut {
			l.Cut, l.Flitch, l.Number, l.Place = cut.Length, cut.Flitch, cut.Number, cut.Place
		}
		k := register{cut.Flitch, cut.Course, cut.Turned}
		m, ok := most[k]
		if !ok {
			order, m = append(order, k), [2]L{cut.Above, cut.Below}
		}
		most[k] = [2]L{max(m[0], cut.Above), max(m[1], cut.Below)}
	}
	have := c.room().Veneer.Length
	l.Left, l.Figure = have-l.Cut, have
	for _, k := range order {
		if a, b := most[k][0], most[k][1]; have-a-b < l.Figure {
			l.Above, l.Below, l.Figure = a, b, have-a-b
		}
	}
}

// Pail is a number of pails of one size.
type Pail struct {
	Size  int `json:"size"`
	Count int `json:"count"`
}

// Pails is the fewest whole pails for an amount, large ones first: of 5 and 1 gal, or 10 and 1 L (common practice, no
// source; the label tells what there is).
func Pails(a layout.Amount) []Pail {
	large := 5
	if a.Unit == "L" {
		large = 10
	}
	whole := int(math.Ceil(a.Amount - 1e-9))
	var out []Pail
	for _, size := range []int{large, 1} {
		if n := whole / size; n > 0 {
			out = append(out, Pail{size, n})
			whole -= n * size
		}
	}
	return out
}
