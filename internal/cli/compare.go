package cli

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/layout"
)

// compare prints what the three aims make of a room, side by side.
func (c *call) compare() *cobra.Command {
	cmd := &cobra.Command{
		Use:                   "compare ROOM",
		DisableFlagsInUseLine: true,
		Short:                 "Set the three aims side by side: sheets, narrow sheets, closing, ends, waste",
		Long: `compare lays the room out three times: steady looks for unbroken grain, fewest for the fewest sheets, even
for sheets of one width. It prints what each costs, and says so where two of them give the same layout.

The exit status is that of the room's own aim. ROOM is a room file, a PDF set drawn from one, or - for standard input.`,
		Example: `  flitchlay compare dining.toml`,
		RunE: func(_ *cobra.Command, args []string) error {
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			both, err := layout.Compare(p.Room)
			if err != nil {
				return err
			}
			var out bytes.Buffer
			comparison(&out, both)
			c.out.Write(out.Bytes())
			return nil
		},
	}
	roomArgument(cmd)
	return cmd
}

// comparison prints a column for each aim.
func comparison(to io.Writer, both *layout.Comparison) {
	t := table(to)
	row := func(name string, of func(*layout.AimPlan) string) {
		fmt.Fprint(t, name)
		for i := range both.Aims {
			fmt.Fprint(t, "\t", of(&both.Aims[i]))
		}
		fmt.Fprintln(t)
	}
	style := both.Aims[0].Plan.Style
	row("", func(a *layout.AimPlan) string { return strings.ToUpper(layout.AimWord(a.Plan.Aim)) })
	row("sheets", func(a *layout.AimPlan) string { return strconv.Itoa(a.Plan.Totals.Sheets) })
	row("short of the flitch", func(a *layout.AimPlan) string { return strconv.Itoa(a.Plan.Totals.Short) })
	row("must findings", func(a *layout.AimPlan) string { return strconv.Itoa(a.Musts) })
	row("narrow sheets", func(a *layout.AimPlan) string { return strconv.Itoa(len(a.Narrow)) })
	row("grain lost", func(a *layout.AimPlan) string { return style.Words(a.Lost) })
	row("closing seam seen", func(a *layout.AimPlan) string {
		var out []string
		for _, s := range a.Close {
			out = append(out, style.Words(s.Seen))
		}
		return dash(out)
	})
	row("end widths", func(a *layout.AimPlan) string {
		var out []string
		for _, e := range a.Ends {
			out = append(out, style.Words(e.First)+" / "+style.Words(e.Last))
		}
		return dash(out)
	})
	row("waste", func(a *layout.AimPlan) string { return style.FormatArea(a.Waste) })
	row("of", func(a *layout.AimPlan) string { return style.FormatArea(a.Plan.Totals.GrossArea) })
	t.Flush()
	for i := range both.Aims {
		a := &both.Aims[i]
		name := layout.AimWord(a.Plan.Aim)
		if a.Same != "" {
			fmt.Fprintf(to, "\n%s gives the same layout as %s\n", name, a.Same)
			continue
		}
		fmt.Fprintf(to, "\n%s: %s\n", name, jumps(a))
	}
}

// jumps says where the narrow sheets of an aim show.
func jumps(a *layout.AimPlan) string {
	if len(a.Narrow) == 0 {
		return "no narrow sheet"
	}
	style := a.Plan.Style
	var out []string
	for _, j := range a.Narrow {
		text := fmt.Sprintf("sheet %s loses %s of grain on wall %s, seen for %s", layout.SheetWords(j.Sheet), style.Words(j.Sheet.Lost),
			a.Plan.Room.Walls[j.Seam.Wall].Name, style.Words(j.Seam.Seen))
		if j.Over != "" {
			text += " over or under " + j.Over
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func dash(list []string) string {
	if len(list) == 0 {
		return "-"
	}
	return strings.Join(list, ", ")
}
