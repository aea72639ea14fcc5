package layout

import (
	"fmt"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// Layer lays a room out again and again while a person changes it, and says what Lay and LayAim say. What it has found of spans
// that a change leaves as they are it does not look for again: while a pin is moved a span's lines cost what they did, and where
// a number is lost no seam moves at all. It serves one caller at a time. A room that it was given must not be changed; give it
// another one.
type Layer struct {
	spans   map[string]*spanKnown
	answers map[string]*answerKnown
	shapes  *shapes
	tried   int // lines of the spans that this turn has tried and keeps
	turn    int
}

// spanKnown is what is known of a span whatever its pins are.
type spanKnown struct {
	solver *seam.Solver
	keeper *seam.Keeper
	turn   int // when it was asked last
}

// answerKnown is what a span that was only tried came to.
type answerKnown struct {
	found seam.Layout
	turn  int
}

// mostTried is how many lines the spans may have together that a turn tries and keeps: while a pin is dragged the same changes
// are tried again and again, but a line takes some hundred bytes.
const mostTried = 1 << 16

// turnsKept is how many rooms back what is known may have been asked last: more is memory for rooms that nobody comes back to.
const turnsKept = 2

// NewLayer makes a Layer that knows nothing yet.
func NewLayer() *Layer {
	return &Layer{spans: map[string]*spanKnown{}, answers: map[string]*answerKnown{}, shapes: newShapes()}
}

// Lay does what the function Lay does.
//
// Errors: as Lay.
func (y *Layer) Lay(r *room.Room) (*Plan, error) {
	defer y.next()
	return layBy(r, y)
}

// LayAim does what the function LayAim does.
//
// Errors: as Lay.
func (y *Layer) LayAim(r *room.Room, aim seam.Aim) (*Plan, error) {
	defer y.next()
	b, err := chosen(r, aim, y)
	if err != nil {
		return nil, err
	}
	finding.Sort(b.plan.Findings)
	return b.plan, nil
}

// LayOwn does what the function LayOwn does.
//
// Errors: as Lay.
func (y *Layer) LayOwn(r *room.Room) (*Plan, error) { return y.LayAim(r, aims[r.Rules.Aim]) }

// next forgets what was not asked of late.
func (y *Layer) next() {
	y.turn++
	y.shapes.next()
	y.tried = 0
	for key, x := range y.spans {
		if y.turn-x.turn > turnsKept {
			delete(y.spans, key)
		}
	}
	for key, x := range y.answers {
		if y.turn-x.turn > turnsKept {
			delete(y.answers, key)
		}
	}
}

// of is what is known of a question's span, with figures of it changed or not.
func (y *Layer) of(q *question, s seam.Span) (*spanKnown, error) {
	key := spanKey(q, s)
	known := y.spans[key]
	if known == nil {
		solver, err := seam.NewSolver(s)
		if err != nil {
			return nil, err
		}
		known = &spanKnown{solver: solver}
		y.spans[key] = known
	}
	known.turn = y.turn
	return known, nil
}

// solve finds the best layout of a question.
func (y *Layer) solve(q *question, aim seam.Aim) (seam.Layout, error) {
	if y == nil {
		return seam.Solve(q.Span, aim)
	}
	known, err := y.of(q, q.Span)
	if err != nil {
		return seam.Layout{}, err
	}
	return known.solver.Solve(q.Span.Pins, aim)
}

// try finds the best layout of a span that is a question's with a figure changed. Of long spans it keeps no more than that.
func (y *Layer) try(q *question, s seam.Span, aim seam.Aim) (seam.Layout, error) {
	if y == nil {
		return seam.Solve(s, aim)
	}
	key := spanKey(q, s) + fmt.Sprint(s.Pins, aim)
	known := y.answers[key]
	if known == nil {
		solve := func() (seam.Layout, error) { return seam.Solve(s, aim) }
		if y.tried += int((s.R - s.L) / s.Snap); y.tried <= mostTried {
			solve = func() (seam.Layout, error) {
				known, err := y.of(q, s)
				if err != nil {
					return seam.Layout{}, err
				}
				return known.solver.Solve(s.Pins, aim)
			}
		}
		found, err := solve()
		if err != nil {
			return found, err
		}
		known = &answerKnown{found: found}
		y.answers[key] = known
	}
	known.turn = y.turn
	return known.found, nil
}

// keeper finds whether pins can be kept in a question's span.
func (y *Layer) keeper(q *question, s seam.Span) (*seam.Keeper, error) {
	if y == nil {
		return seam.NewKeeper(s)
	}
	known, err := y.of(q, s)
	if err == nil && known.keeper == nil {
		known.keeper, err = seam.NewKeeper(s)
	}
	if err != nil {
		return nil, err
	}
	return known.keeper, nil
}

// spanKey says all that a solver is told of a span but its pins, and all that the height depends on to which a seam shows.
func spanKey(q *question, s seam.Span) string {
	if q.shows == "" {
		q.shows = showsKey(q.line)
	}
	s.Pins, s.Seen = nil, nil
	return fmt.Sprintf("%v", s) + q.shows
}

// showsKey is all of a run that a sight looks at.
func showsKey(line *run.Run) string {
	var key []byte
	key = fmt.Appendln(key, line.Up, line.Closed, line.Length)
	for _, c := range line.Corners {
		key = fmt.Appendln(key, c.At, c.From, c.To, c.Lean, c.LeftWall)
	}
	for _, st := range line.Walls {
		w := &line.Room.Walls[st.Wall]
		key = fmt.Appendln(key, st, w.Length, w.Floor, w.Ceiling, w.Base, w.Crown, w.HiddenBelow)
		for i := range w.Openings {
			o := &w.Openings[i]
			key = fmt.Appendln(key, "o", o.FromLeft, o.Width, o.SillGiven, o.Sill, o.Head)
		}
		for _, bare := range w.Bare {
			key = fmt.Appendln(key, "b", bare.From, bare.To)
		}
	}
	return string(key)
}
