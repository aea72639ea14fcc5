package cli

import (
	"fmt"

	"flitchlay/internal/layout"
)

// arrivals prints the word for every wall that was read, and for those that follow from it, with the lines that are struck from
// other figures than the pages print.
func arrivals(to screen, p *layout.Plan) {
	if len(p.Arrivals) == 0 {
		return
	}
	fmt.Fprintf(to, "\nWalls as read\n")
	t := table(to)
	fmt.Fprintf(t, "WALL\tWORD\tLINE OF\tPLANNED\tSTRIKE AT\n")
	for i := range p.Arrivals {
		a := &p.Arrivals[i]
		name, word := p.Room.Walls[a.Wall].Name, a.Word.String()
		if len(a.Lines) == 0 {
			fmt.Fprintf(t, "%s\t%s\t-\t-\t-\n", name, word)
		}
		for k := range a.Lines {
			x := &a.Lines[k]
			planned, now := p.Style.Format(x.Planned), p.Style.Format(x.Now)
			if x.Askew {
				planned, now = layout.Leaning(p.Style.Words, x.Planned), layout.Leaning(p.Style.Words, x.Now)
			}
			fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\n", name, word, x.Sheet, planned, now)
			name, word = "", ""
		}
	}
	t.Flush()
	to.prose("figures run at the level line, from where the wall's left corner crosses it; those to a side are from foot to head\n")
}
