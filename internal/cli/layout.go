package cli

import "github.com/spf13/cobra"

// layout prints the layout as JSON.
func (c *call) layout() *cobra.Command {
	cmd := &cobra.Command{
		Use:                   "layout ROOM...",
		DisableFlagsInUseLine: true,
		Short:                 "Print the layout as JSON",
		Long: `layout prints every seam, sheet, piece and finding of a room as JSON on standard output. Lengths are
in millimetres, exact to 1/8 micrometre, areas in square metres, heights above the room's level.

Of a job file or of several rooms it is one object with a list of rooms, each with its layout.

` + roomIs,
		Example: `  flitchlay layout dining.toml > dining.json`,
		RunE: func(_ *cobra.Command, args []string) error {
			if j, err := c.several(args); j != nil || err != nil {
				return c.layoutJob(j, err)
			}
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			c.out.Write(p.JSON())
			return nil
		},
	}
	roomArguments(cmd)
	return cmd
}
