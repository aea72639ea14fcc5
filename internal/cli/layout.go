package cli

import "github.com/spf13/cobra"

// layout prints the layout as JSON.
func (c *call) layout() *cobra.Command {
	cmd := &cobra.Command{
		Use:                   "layout ROOM",
		DisableFlagsInUseLine: true,
		Short:                 "Print the layout as JSON",
		Long: `layout prints every seam, sheet, piece and finding of a room as JSON on standard output. Lengths are
in millimetres, exact to 1/8 micrometre, areas in square metres, heights above the room's level.

ROOM is a room file, a PDF set drawn from one, or - for standard input.`,
		Example: `  flitchlay layout dining.toml > dining.json`,
		RunE: func(_ *cobra.Command, args []string) error {
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			c.out.Write(p.JSON())
			return nil
		},
	}
	roomArgument(cmd)
	return cmd
}
