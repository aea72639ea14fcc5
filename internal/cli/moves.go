package cli

import (
	"fmt"

	"flitchlay/internal/layout"
)

// moves prints what stands elsewhere because of the sheets that hang already.
func moves(to screen, p *layout.Plan) {
	if len(p.Moves) == 0 {
		return
	}
	fmt.Fprintf(to, "\nChanged by the sheets that hang\n")
	t := table(to)
	fmt.Fprintf(t, "SEAM\tPLANNED\tNOW\tSTATE\n")
	for _, m := range p.Moves {
		name, from, to := movedSeam(p, &m)
		was, now, state := p.Style.Words(from), p.Style.Words(to), "still to hang"
		if m.Hung {
			state = "hangs"
		}
		if m.New {
			was = "-"
		}
		if m.Gone {
			now, state = "-", "falls away"
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\n", name, was, now, state)
	}
	t.Flush()
	to.prose("figures run at the level line, from where the left corner of the seam's wall crosses it\n")
}

// movedSeam is the name of a seam that has moved, and where it stood and stands on its wall as the wall's page figures it.
func movedSeam(p *layout.Plan, m *layout.Move) (name string, from, to layout.L) {
	for i := range p.Runs {
		r := &p.Runs[i]
		if r.Name != m.Run {
			continue
		}
		s := r.SeamAfter(m.Place)
		if s == nil { // it has fallen away
			s = &layout.Seam{LeftSheet: m.Place, RightSheet: m.Place + 1, Wall: m.Wall}
		}
		zero := p.Room.Datum(m.Wall)
		for _, st := range r.Walls {
			if st.Wall == m.Wall {
				zero += st.Shift
			}
		}
		return p.SeamName(r, s), near(r, m.From-zero), near(r, m.To-zero)
	}
	return "", m.From, m.To
}

// near is a place of a wall that a round of a closed run leads to, the nearest to the wall's left end.
func near(r *layout.Run, x layout.L) layout.L {
	if n := r.Length; r.Closed && n > 0 {
		for x > n/2 {
			x -= n
		}
		for x < -n/2 {
			x += n
		}
	}
	return x
}
