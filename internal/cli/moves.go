package cli

import (
	"fmt"
	"io"

	"flitchlay/internal/layout"
)

// moves prints what stands elsewhere because of the sheets that hang already.
func moves(to io.Writer, p *layout.Plan) {
	if len(p.Moves) == 0 {
		return
	}
	fmt.Fprintf(to, "\nChanged by the sheets that hang\n")
	t := table(to)
	fmt.Fprintf(t, "SEAM\tWALL\tPLANNED\tNOW\tSTATE\n")
	for _, m := range p.Moves {
		was, now, state := p.Style.Words(m.From), p.Style.Words(m.To), "still to hang"
		if m.Hung {
			state = "hangs"
		}
		if m.New {
			was = "-"
		}
		if m.Gone {
			now, state = "-", "falls away"
		}
		fmt.Fprintf(t, "%d\t%s\t%s\t%s\t%s\n", m.Place, p.Room.Walls[m.Wall].Name, was, now, state)
	}
	t.Flush()
	fmt.Fprintln(to, "figures run along the run from its left end")
}
