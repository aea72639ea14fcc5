package layout

import (
	"cmp"
	"fmt"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// Lay lays a room out by its own aim, and says which small change of the room would save something.
//
// Errors: mistakes of the room file that only its runs and spans show.
func Lay(r *room.Room) (*Plan, error) { return layBy(r, nil) }

// layBy is Lay with what a Layer knows, which may be nil.
func layBy(r *room.Room, y *Layer) (*Plan, error) {
	b, err := chosen(r, aims[r.Rules.Aim], y)
	if err != nil {
		return nil, err
	}
	b.nearly()
	b.arrive()
	finding.Sort(b.plan.Findings)
	return b.plan, nil
}

var aims = map[string]seam.Aim{"steady": seam.Steady, "fewest": seam.Fewest, "even": seam.Even}

// AimWord is the key word of an aim.
func AimWord(a seam.Aim) string { return [...]string{"steady", "fewest", "even"}[a] }

// LayOwn lays a room out by its own aim, as LayAim does.
//
// Errors: as Lay.
func LayOwn(r *room.Room) (*Plan, error) { return LayAim(r, aims[r.Rules.Aim]) }

// LayAim lays a room out by an aim of the caller's. What a small change would save is not looked for.
//
// Errors: as Lay.
func LayAim(r *room.Room, aim seam.Aim) (*Plan, error) {
	b, err := chosen(r, aim, nil)
	if err != nil {
		return nil, err
	}
	finding.Sort(b.plan.Findings)
	return b.plan, nil
}

// build makes a plan and judges it; the seams of a run may be known already, and a Layer may know of spans.
func build(r *room.Room, aim seam.Aim, known func(run int) []*question, y *Layer) (*builder, error) {
	cut := newShapes()
	if y != nil {
		cut = y.shapes
	}
	b, err := solve(r, aim, known, y, cut)
	if err != nil {
		return nil, err
	}
	b.tile()
	if err := b.number(); err != nil {
		return nil, err
	}
	b.measured()
	b.measureCorners()
	b.judge()
	b.drift()
	b.total()
	return b, nil
}

// builder carries a plan while it is made.
type builder struct {
	room  *room.Room
	aim   seam.Aim
	plan  *Plan
	style length.Style
	net   L // W
	asked [][]*question
	trial bool // laid out only to see what a change of the room would save
	layer *Layer
	// shapes is what is known of coverings; never nil where walls are cut.
	shapes *shapes
	ends   []flitchEnd // of flitches that run out in the field
	begins []flitchEnd // of those that begin where an other place was found for it
	// whyLeft is what may still be spent on why pins fall.
	whyLeft seam.Allowance
}

// solve unrolls the room and finds every seam, as build.
func solve(r *room.Room, aim seam.Aim, known func(run int) []*question, y *Layer, cut *shapes) (*builder, error) {
	b := begin(r, aim, y, cut)
	return b, b.solve(known, nil)
}

// begin makes a builder that has no plan yet.
func begin(r *room.Room, aim seam.Aim, y *Layer, cut *shapes) *builder {
	style := length.StyleOf(r.Project.Units)
	return &builder{room: r, aim: aim, style: style, plan: &Plan{Room: r, Aim: aim, Style: style}, net: r.NetWidth(), layer: y, shapes: cut, whyLeft: mostWhy}
}

// solve is solve of a builder's room, with the courses and the joints of a plan, where one is given.
func (b *builder) solve(known func(run int) []*question, plan *Plan) error {
	r := b.room
	lines, err := run.Unroll(r)
	if err != nil {
		return err
	}
	place := 1
	for i, line := range lines {
		out := Run{Name: line.Name, Up: line.Up, Length: line.Length, Closed: line.Closed, Walls: slices.Clone(line.Walls), Line: line}
		out.Openings = b.openings(line)
		asked := b.questions(line)
		if err = b.hungInOrder(asked); err != nil {
			return err
		}
		var solved []*question
		if known != nil {
			solved = known(i)
		}
		for k, q := range asked {
			var found seam.Layout
			switch {
			case q.done:
			case solved != nil:
				found = solved[k].found
			default:
				by := b.layer.solve
				if known != nil { // the room with a change, of which no more may be asked
					by = func(q *question, aim seam.Aim) (seam.Layout, error) { return b.layer.try(q, q.Span, aim) }
				}
				if found, err = by(q, b.aim); err != nil {
					return r.Mistake(r.Walls[line.Walls[0].Wall].At, fmt.Sprintf("the run that begins with this wall cannot be laid out: %v", err),
						"give a greater least_width or snap, or part the run")
				}
			}
			q.found = found
			if solved != nil {
				q.why = solved[k].why
			}
			for _, i := range found.Dropped {
				b.dropped(q.pins[i], b.why(q, i))
			}
			place = b.addSpan(&out, q, found, place)
		}
		sortSeams(out.Seams)
		b.joints(&out, i, plan)
		b.piles(&out)
		b.asked = append(b.asked, asked)
		b.plan.Runs = append(b.plan.Runs, out)
	}
	return nil
}

// joints finds the courses of a run, and the joints of its bands where the grain runs level; those of a plan where one is given.
func (b *builder) joints(out *Run, i int, plan *Plan) {
	switch {
	case plan != nil:
		out.courses, out.Joints = plan.Runs[i].courses, plan.Runs[i].Joints
	default:
		out.courses = b.stack(out)
		out.Joints = out.courses.joints
		if out.Up {
			out.Joints = b.bands(out)
		}
	}
}

// openings lists the openings of a run in order of s.
func (b *builder) openings(line *run.Run) []Opening {
	var out []Opening
	for _, st := range line.Walls {
		w := &b.room.Walls[st.Wall]
		first := len(out)
		for i := range w.Openings {
			o := &w.Openings[i]
			item := Opening{Name: o.Name, Kind: o.Kind, Wall: st.Wall, Index: i,
				Left: st.Shift + o.FromLeft, Right: st.Shift + o.Right(), Sill: foot(w, o), Head: o.Head, Wrap: o.WrapReveal}
			switch {
			case line.Up:
				item.Left, item.Right = item.Sill, item.Head
			case w.FullHeight(o):
				item.Gap, item.Through = true, o.Grain == "through"
			}
			out = append(out, item)
		}
		slices.SortStableFunc(out[first:], func(o, p Opening) int { return cmp.Compare(o.Left, p.Left) })
	}
	return out
}

func ptr(l L) *L { return &l }
