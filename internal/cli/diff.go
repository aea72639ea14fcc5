package cli

import (
	"bytes"
	"fmt"

	"github.com/spf13/cobra"

	"flitchlay/internal/diff"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// diff tells what changed between two plans.
func (c *call) diff() *cobra.Command {
	cmd := &cobra.Command{
		Use:                   "diff OLD NEW",
		DisableFlagsInUseLine: true,
		Short:                 "Tell what changed between two rooms or kept layouts",
		Long: `diff lays out two rooms and tells what changed: the room, seams that moved, sheets that hang elsewhere or
are cut otherwise, totals that cost money, and the revision note for the block.

OLD and NEW are room files, PDF sets as drawn, or layouts kept with "flitchlay layout ROOM > FILE.json"; one
of them may be - for standard input. The exit status is 1 where NEW breaks a rule that must be met.`,
		Example: `  flitchlay diff dining-issued.json dining.toml`,
		Args:    cobra.ExactArgs(2),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 1 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"toml", "pdf", "json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if args[0] == stdin && args[1] == stdin {
				return fmt.Errorf("- can be read only once")
			}
			old, err := c.view(args[0])
			if err != nil {
				return err
			}
			is, err := c.view(args[1])
			if err != nil {
				return err
			}
			c.must = is.Musts > 0
			style := length.StyleOf(length.Millimetres)
			for _, v := range []*diff.View{old, is} {
				if v.Room != nil {
					style = length.StyleOf(v.Room.Project.Units)
				}
			}
			var out bytes.Buffer
			if err := diff.Compare(old, is, style).Write(&out); err != nil {
				return err
			}
			c.out.Write(out.Bytes())
			return nil
		},
	}
	return cmd
}

// view reads a room and lays it out, or reads a layout.
func (c *call) view(path string) (*diff.View, error) {
	name, text, err := c.bytes(path)
	if err != nil {
		return nil, err
	}
	if diff.IsKept(text) {
		v, err := diff.ReadKept(text)
		if err != nil {
			return nil, fmt.Errorf("%s cannot be used: %w", name, err)
		}
		return v, nil
	}
	r, err := room.Decode(name, text)
	if err != nil {
		return nil, &roomError{err}
	}
	p, err := layout.Lay(r)
	if err != nil {
		return nil, &roomError{err}
	}
	return diff.ViewOf(p), nil
}
