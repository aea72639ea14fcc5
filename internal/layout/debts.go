package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// objects are what a run has in the way of seams: for each in the lists of its spans, in their order, what it is.
type objects struct {
	corners  []run.Corner
	openings []object
	keeps    []object
	boxes    []object
}

// object is a thing on a wall.
type object struct {
	stretch int // of the wall, in Run.Walls
	wall    int
	index   int // in the wall's list of its kind
}

// debt is what the solver charges a seam with, and the words for it.
type debt struct {
	seam.Charge
	object        // without meaning where a corner asks
	what   string // "corner C2", "window W1"
	side   string // left, right: the edge of an opening
}

// said are the findings of what is charged: where a must is broken, and where only the preference is.
var said = map[seam.Cause]struct{ broken, close finding.Code }{
	seam.Return: {finding.ReturnShort, finding.ReturnClose},
	seam.Reveal: {finding.RevealShort, finding.ClearClose},
	seam.Clear:  {finding.ClearShort, finding.ClearClose},
	seam.Leg:    {finding.LegThin, finding.LegClose},
	seam.Kept:   {broken: finding.KeptClear},
	seam.Plate:  {close: finding.PlateClose},
	seam.Width:  {finding.SheetThin, finding.SheetSlim},
}

// debts lists what a seam at s owes: to corners, then wall by wall to openings, boxes and stretches kept clear.
func (b *builder) debts(q *question, s L) []debt {
	charges := q.Owed(int64(s))
	out := make([]debt, len(charges))
	for i, c := range charges {
		out[i] = b.debt(q, c)
	}
	slices.SortStableFunc(out, func(x, y debt) int {
		return cmp.Or(cmp.Compare(x.stretch, y.stretch), cmp.Compare(x.rank(), y.rank()))
	})
	return out
}

// rank is the place of a debt's kind among those of a wall.
func (d debt) rank() int {
	switch d.Cause {
	case seam.Plate:
		return 1
	case seam.Kept:
		return 2
	}
	return 0
}

// debt finds the words for a charge.
func (b *builder) debt(q *question, c seam.Charge) debt {
	d := debt{Charge: c}
	switch {
	case c.Edge != seam.NoEdge:
		d.object = q.openings[c.Object]
		d.what = b.openingWords(d.wall, d.index)
		d.side = edgeWord(q.line, c.Edge)
		if c.Cause == seam.Return {
			d.what = "the " + d.side + " jamb of " + d.what
		}
	case c.Cause == seam.Return:
		d.object = object{stretch: -1}
		d.what = "corner " + q.corners[c.Object].Name
	case c.Cause == seam.Kept:
		d.object = q.keeps[c.Object]
		d.what = "the stretch kept clear"
	case c.Cause == seam.Plate:
		d.object = q.boxes[c.Object]
		box := &b.room.Walls[d.wall].Boxes[d.index]
		d.what = box.Kind.Named(box.Name)
	}
	return d
}

// edgeWord names an edge of an opening.
func edgeWord(line *run.Run, e seam.Edge) string {
	switch {
	case line.Up && e == seam.EdgeA:
		return "lower"
	case line.Up:
		return "upper"
	case e == seam.EdgeA:
		return "left"
	}
	return "right"
}

// short words the debt inside a sentence about a broken must.
func (d debt) short(b *builder) string {
	measured, required := b.style.Apart(L(d.D), L(d.Must))
	switch d.Cause {
	case seam.Leg:
		return measured + " outside " + d.what + " (" + required + " must stand)"
	case seam.Clear, seam.Reveal:
		return measured + " inside the " + d.side + " edge of " + d.what + " (" + required + " must be)"
	case seam.Kept:
		return measured + " inside " + d.what
	}
	return measured + " from " + d.what + " (" + required + " must wrap)"
}

// sayDue adds the finding of what is lacking of a due, if anything is.
func (b *builder) sayDue(due seam.Due, f finding.Finding, slots finding.Slots) {
	codes := said[due.Cause]
	f.Measured = ptr(L(due.D))
	switch {
	case due.Cause == seam.Kept:
		b.say(codes.broken, f, slots) // nothing is required: no seam may be there at all
	case due.D < due.Must:
		f.Required = ptr(L(due.Must))
		b.say(codes.broken, f, slots)
	case due.D < due.Prefer:
		f.Required = ptr(L(due.Prefer))
		b.say(codes.close, f, slots)
	}
}
