package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/aims"
	"flitchlay/internal/layout"
)

// compare prints what the three aims make of a room, side by side.
func (c *call) compare() *cobra.Command {
	var to string
	cmd := &cobra.Command{
		Use:                   "compare ROOM... [-o FILE]",
		DisableFlagsInUseLine: true,
		Short:                 "Set the three aims and other layouts side by side: sheets, narrow sheets, closing, ends, waste",
		Long: `compare lays the room out three times: steady looks for unbroken grain, fewest for the fewest sheets, even
for sheets of one width. It prints what each costs, and says so where two of them give the same layout. Then it
lists up to five other layouts of the room's own aim, the best first, that close, begin or end elsewhere and are
nearly as good, with what each costs; choose in [room] takes one of them.
With -o it also draws the walls of the three aims one over the other, and those of the other layouts: a PDF
file, or where FILE ends in .svg an SVG file for each page.

The exit status is that of the room's own aim.

Of a job file or of several rooms it compares one room after the other.

` + roomIs,
		Example: `  flitchlay compare dining.toml -o aims.pdf`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if j, err := c.several(args); j != nil || err != nil {
				if err == nil && cmd.Flags().Changed("output") {
					err = fmt.Errorf("-o draws the comparison of one room: name its file")
				}
				return c.compareJob(j, err)
			}
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			both, err := layout.Compare(p.Room)
			if err != nil {
				return err
			}
			var out bytes.Buffer
			comparison(c.screen().onto(&out), both)
			c.out.Write(out.Bytes())
			if !cmd.Flags().Changed("output") {
				return nil
			}
			return c.drawComparison(to, both, p, folder(args[0]))
		},
	}
	roomArguments(cmd)
	c.forcing(cmd)
	cmd.Flags().StringVarP(&to, "output", "o", "", "also draw the comparison into this file, .pdf or .svg")
	return cmd
}

// comparison prints a column for each aim.
func comparison(to screen, both *layout.Comparison) {
	t := table(to)
	for _, r := range aims.Rows(both) {
		fmt.Fprintf(t, "%s\t%s\n", r.Name, strings.Join(r.Cells, "\t"))
	}
	t.Flush()
	for i := range both.Aims {
		a := &both.Aims[i]
		name := layout.AimWord(a.Plan.Aim)
		if a.Same != "" {
			to.prose("\n%s gives the same layout as %s\n", name, a.Same)
			continue
		}
		jumps := strings.Join(aims.GrainLost(a, func(wall int) string { return a.Plan.Room.Walls[wall].Name }), "; ")
		if jumps == "" {
			jumps = "no narrow sheet"
		}
		to.prose("\n%s: %s\n", name, jumps)
	}
	others(to, both)
}

// others prints a column for each other layout of the room's own aim.
func others(to screen, both *layout.Comparison) {
	name := layout.AimWord(both.Aims[both.Own].Plan.Aim)
	if len(both.Others) == 0 {
		to.prose("\nNo other layout is nearly as good by the aim %s\n", name)
		return
	}
	to.prose("\nOther layouts, nearly as good by the aim %s; choose in [room] takes one\n", name)
	t := table(to)
	for _, r := range aims.OtherRows(both) {
		fmt.Fprintf(t, "%s\t%s\n", r.Name, strings.Join(r.Cells, "\t"))
	}
	t.Flush()
	for i := range both.Others {
		o := &both.Others[i]
		w := aims.Against(both, o)
		to.prose("\n%d: %s\n   costs %s\n", o.Number, w.Other, strings.Join(w.Costs, "; "))
	}
}

// drawComparison writes the drawn comparison: a PDF file, or where the name ends so an SVG file of each page.
func (c *call) drawComparison(to string, both *layout.Comparison, own *layout.Plan, from string) error {
	end := filepath.Ext(to)
	b, ok := backendOf(strings.ToLower(end))
	if !ok {
		return fmt.Errorf("-o takes a file whose name ends in %s, not %q", strings.Join(backendEnds(), " or "), to)
	}
	b.end = end // as it was typed
	mark, err := c.logo(own.Room, from)
	if err != nil {
		return err
	}
	t, err := drawnSets[0].template(c, own.Room, from)
	if err != nil {
		return err
	}
	d, err := aims.Draw(both, own, t, mark)
	if err != nil {
		return &lostError{to, err}
	}
	d.Attachments = append(d.Attachments, c.attachments(own.Room, from)...)
	name := strings.TrimSuffix(filepath.Base(to), end)
	files, err := b.files(d, name, func(i int) string {
		if i == 0 {
			return name
		}
		return fmt.Sprintf("%s-%d", name, i+1) // name.svg, name-2.svg, ...
	})
	if err != nil {
		return &lostError{to, err}
	}
	if err := c.put(filepath.Dir(to), "compare", files); err != nil {
		return err
	}
	for _, f := range files {
		c.say("wrote %s", filepath.Join(filepath.Dir(to), f.name))
	}
	return nil
}
