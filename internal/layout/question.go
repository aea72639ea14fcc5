package layout

import (
	"fmt"
	"slices"

	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// pin is a wish as the solver and the findings need it.
type pin struct {
	seam.Pin
	wall  int
	x     L
	put   string
	where room.Place
}

// question is one span put to the solver, with the seams that already hang.
type question struct {
	seam.Span
	*objects
	from  run.Span
	line  *run.Run
	hung  []hungSheet // sheets already on the wall, of this span
	left  L           // left boundary of the whole span: raw end, or the closing seam while sheets hang in a closed run
	done  bool        // every sheet of the span hangs already
	pins  []pin       // those of this span, in file order
	found seam.Layout // what the solver makes of it
	// keeper says whether pins can be kept, where one was not, and bare the same with nothing in the way of seams; nil until they
	// are asked.
	keeper, bare *seam.Keeper
	why          map[int]string // what each pin that fell collides with, once that was asked
	shows        string         // what the seen heights depend on, once a Layer has asked
}

// hungSheet is a sheet already on the wall.
type hungSheet struct {
	right  L // finished seam, or the raw end it closes the span with
	number int
	flitch int // index in Room.Flitches; 0 where none is given
	top    L   // reading at the top, as s
	where  room.Place
}

// questions puts every span of a run to words the solver knows.
func (b *builder) questions(line *run.Run) []*question {
	base, things := b.inTheWay(line)
	pins := b.pins(line)
	hung := b.hung(line)
	var out []*question
	for _, s := range line.Spans {
		q := &question{Span: base, objects: things, from: s, line: line, left: s.L}
		q.L, q.R, q.Closed = int64(s.L), int64(s.R), s.Closed
		if !s.Closed {
			q.TrimLeft, q.TrimRight = int64(s.LeftEnd.Trim), int64(s.RightEnd.Trim)
			q.OneWall = s.LeftEnd.Wall == s.RightEnd.Wall && !line.Up || line.Up
		}
		for i := range pins {
			p := pins[i]
			if s := L(p.At); !q.Closed && line.Closed && s < L(q.L) {
				p.At += int64(line.Length)
			}
			if p.Put == seam.PutClose && !q.Closed || !q.Closed && (p.At < q.L || p.At > q.R) {
				continue
			}
			q.pins = append(q.pins, p)
		}
		hung = q.hang(b, line, hung)
		for _, p := range q.pins {
			q.Span.Pins = append(q.Span.Pins, p.Pin)
		}
		out = append(out, q)
	}
	b.strayPins(line, pins, out)
	return out
}

// inTheWay is what a whole run has in the way of seams, as every span of it is told, and what each of it is.
func (b *builder) inTheWay(line *run.Run) (seam.Span, *objects) {
	r := b.room
	v := newSight(line)
	s := seam.Span{
		Period: int64(line.Length), RunClosed: line.Closed, Snap: int64(r.Rules.Snap),
		Gross: int64(r.Veneer.GrossWidth), Overlap: int64(r.Veneer.Overlap),
		Rules: rulesOf(&r.Rules),
		Foot:  int64(r.Project.Units.Grain()),
		Seen:  func(s int64) int64 { return int64(v.seen(L(s))) },
	}
	things := &objects{}
	for _, c := range line.Corners {
		if c.Bends() {
			things.corners = append(things.corners, c)
			s.Corners = append(s.Corners, seam.Strip{From: int64(c.From), To: int64(c.To)})
		}
	}
	for at, st := range line.Walls {
		w := &r.Walls[st.Wall]
		for i := range w.Openings {
			things.openings = append(things.openings, object{at, st.Wall, i})
			s.Openings = append(s.Openings, openingQuestion(line, st, w, &w.Openings[i]))
		}
		for i := range w.Boxes {
			things.boxes = append(things.boxes, object{at, st.Wall, i})
			from, to := plateStretch(line, st, &w.Boxes[i])
			s.Boxes = append(s.Boxes, seam.Strip{From: int64(from), To: int64(to)})
		}
		if line.Up {
			if w.Main {
				s.Main = append(s.Main, seam.Strip{From: int64(st.Left - far), To: int64(st.Right + far)})
			}
			continue
		}
		for i, k := range w.KeepClear {
			things.keeps = append(things.keeps, object{at, st.Wall, i})
			s.Keep = append(s.Keep, seam.Strip{From: int64(st.Shift + k.From), To: int64(st.Shift + k.To)})
		}
		if w.Main {
			s.Main = append(s.Main, seam.Strip{From: int64(st.Left), To: int64(st.Right)})
		}
	}
	return s, things
}

// openingQuestion is an opening's edges along s: its sides, or its sill and head where the grain is horizontal.
func openingQuestion(line *run.Run, st run.Stretch, w *room.Wall, o *room.Opening) seam.Opening {
	if line.Up {
		return seam.Opening{A: int64(foot(w, o)), B: int64(o.Head)}
	}
	return seam.Opening{A: int64(st.Shift + o.FromLeft), B: int64(st.Shift + o.Right()), Gap: w.FullHeight(o),
		Wrap: o.WrapReveal, Reveal: int64(o.Reveal)}
}

// foot is the lower edge of an opening: its sill, or the floor at its left.
func foot(w *room.Wall, o *room.Opening) L {
	if o.SillGiven {
		return o.Sill
	}
	return room.At(w.Floor, o.FromLeft)
}

// plateStretch is what a box's plate takes along s.
func plateStretch(line *run.Run, st run.Stretch, box *room.Box) (from, to L) {
	if line.Up {
		from = box.Z - box.PlateHigh.HalfDown()
		return from, from + box.PlateHigh
	}
	from = st.Shift + box.X - box.PlateWidth.HalfDown()
	return from, from + box.PlateWidth
}

// pins lists the wishes of a run in file order, close_at among them.
func (b *builder) pins(line *run.Run) []pin {
	var out []pin
	if line.Up {
		return nil
	}
	for _, st := range line.Walls {
		for _, p := range b.room.Walls[st.Wall].Pins {
			put := map[string]seam.Put{"seam": seam.PutSeam, "middle": seam.PutMiddle, "either": seam.PutEither}[p.Put]
			out = append(out, pin{Pin: seam.Pin{At: int64(st.Shift + p.X), Put: put}, wall: st.Wall, x: p.X, put: p.Put, where: p.Where})
		}
	}
	if c := b.room.Space.CloseAt; c != nil && c.Corner < 0 {
		if st, ok := line.Of(c.Wall); ok {
			out = append(out, pin{Pin: seam.Pin{At: int64(line.Round(st.Shift + c.At)), Put: seam.PutClose},
				wall: c.Wall, x: c.At, put: "close", where: c.Where})
		}
	}
	slices.SortStableFunc(out, func(p, q pin) int { return p.where.Compare(q.where) })
	return out
}

// strayPins drops the pins that stand in no span.
func (b *builder) strayPins(line *run.Run, pins []pin, asked []*question) {
	for _, p := range pins {
		same := func(other pin) bool { return other.where == p.where && other.wall == p.wall && other.x == p.x }
		stands := func(q *question) bool { return q.passed(p) || slices.ContainsFunc(q.pins, same) }
		if !slices.ContainsFunc(asked, stands) {
			b.dropped(p, "no covering is there")
		}
	}
}

// hang takes the sheets that hang already into the span, and leaves the rest of it to solve.
func (q *question) hang(b *builder, line *run.Run, hung []room.Hung) []room.Hung {
	if len(hung) == 0 || q.done {
		return hung
	}
	right := q.from.R
	at := q.from.L
	if q.Closed {
		st, _ := line.Of(hung[0].Wall)
		at = q.began(b, line, &hung[0], st)
		q.left, right = at, at+line.Length
	}
	snap := b.room.Rules.Snap
	for len(hung) > 0 {
		h := hung[0]
		st, ok := line.Of(h.Wall)
		if !ok {
			break
		}
		s, top := st.Shift+h.Seam, st.Shift+h.Top
		for line.Closed && s <= at {
			s, top = s+line.Length, top+line.Length
		}
		if h.Edge {
			short := q.shortage(b, &h, at, s, len(q.hung) == 0 && !q.Closed)
			s, top = s+short.HalfDown(), top+short.HalfDown()
		}
		reach, most := s, right+snap
		if h.Edge && !q.Closed { // at a raw end no seam is cut: the edge hangs there, trim and all
			reach, most = s+b.room.Veneer.Overlap.HalfDown(), right+L(q.TrimRight)+snap
		}
		if reach > most {
			break // it hangs in the next span
		}
		if reach > right-snap {
			s, q.done = right, true
		}
		q.hung = append(q.hung, hungSheet{right: s, number: h.Sheet, flitch: max(0, h.Flitch), top: top, where: h.Where})
		at, hung = s, hung[1:]
		if q.done {
			break
		}
	}
	if len(q.hung) == 0 {
		return hung
	}
	if q.Closed {
		q.RightSeam, q.R = true, int64(right)
		q.TrimRight = 0
	}
	q.Closed, q.LeftSeam, q.OneWall = false, true, false
	q.L, q.TrimLeft = int64(at), 0
	q.keepPins(line, at)
	return hung
}

// hungInOrder finds the mistakes of hung sheets that only spans show: one that stands where no covering is, and one in a span
// before which sheets are still to hang.
func (b *builder) hungInOrder(asked []*question) error {
	waits := false
	for _, q := range asked {
		at := q.left
		for _, h := range q.hung {
			if h.right <= at {
				return b.room.Mistake(h.where, fmt.Sprintf("the seam of hung sheet %d stands where no covering is", h.number),
					"measure from the left end of the wall that is named to the finished seam")
			}
			if waits {
				return b.room.Mistake(h.where, fmt.Sprintf("sheet %d hangs, but sheets left of it on its run do not", h.number),
					"name every hung sheet from the run's first, also the last one before a gap: its seam is the gap's edge")
			}
			at = h.right
		}
		waits = waits || !q.done
	}
	return nil
}

// keepPins drops the pins left of the last hung seam, which no longer count.
func (q *question) keepPins(line *run.Run, at L) {
	var kept []pin
	for _, p := range q.pins {
		if p.Put == seam.PutClose {
			continue // the closing seam hangs
		}
		for line.Closed && p.At < int64(q.left) {
			p.At += int64(line.Length)
		}
		if p.At >= int64(at) {
			kept = append(kept, p)
		}
	}
	q.pins = kept
}

// passed reports whether a pin stands in the part of the span that hangs already.
func (q *question) passed(p pin) bool {
	return len(q.hung) > 0 && (p.Put == seam.PutClose || q.RightSeam || p.At >= int64(q.from.L) && p.At < q.L)
}
