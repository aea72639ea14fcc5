package cli

import (
	"bytes"
	"fmt"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"flitchlay/internal/diff"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// diff tells what changed between two plans.
func (c *call) diff() *cobra.Command {
	var mark, date string
	cmd := &cobra.Command{
		Use:                   "diff OLD NEW [--mark MARK [--date DATE]]",
		DisableFlagsInUseLine: true,
		Short:                 "Tell what changed between two rooms or kept layouts",
		Long: `diff lays out two rooms and tells what changed: the room, seams that moved, sheets that hang elsewhere or
are cut otherwise, totals that cost money, and the revision note for the block.

With --mark it prints the [[project.revision]] blocks of an issue under that mark, one for each wall that changed,
with the place of the change, to put into NEW as they are: its drawings then mark them. The date is that of --date,
else the drawn of NEW where that is another one than OLD's.

Of two job files it tells what changed in each room, which rooms came and went, and of the sets that were drawn
from OLD which pages are void: these are taken off the walls.

OLD and NEW are room files, PDF sets as drawn, or layouts kept with "flitchlay layout ROOM > FILE.json"; one
of them may be - for standard input. Both may be job files. The exit status is 1 where NEW breaks a rule that must be met.`,
		Example: `  flitchlay diff dining-issued.json dining.toml
  flitchlay diff submittal.pdf dining.toml --mark B --date 2026-06-02 >> dining.toml`,
		Args: cobra.ExactArgs(2),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 1 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"toml", "pdf", "json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if args[0] == stdin && args[1] == stdin {
				return fmt.Errorf("- can be read only once")
			}
			if done, err := c.diffJobs(args[0], args[1], cmd.Flags().Changed("mark")); done || err != nil {
				return err
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
			changes := diff.Compare(old, is, style)
			if cmd.Flags().Changed("mark") {
				day, err := issueDate(date, old, is)
				if err != nil {
					return err
				}
				if mark == "" {
					return fmt.Errorf("--mark takes the mark of the revision: --mark %s", changes.Mark())
				}
				if changes.Same() {
					return fmt.Errorf("nothing changed: there is nothing to mark")
				}
				if slices.ContainsFunc(is.Revisions, func(r room.Revision) bool { return r.Mark == mark }) {
					return fmt.Errorf("NEW has a revision %s already; the next mark is %s", mark, diff.Next(is.Revisions))
				}
				return changes.WriteRevisions(c.out, changes.Revisions(mark, day))
			}
			if err := changes.Write(c.screen().onto(&out)); err != nil {
				return err
			}
			c.out.Write(out.Bytes())
			return nil
		},
	}
	cmd.Flags().StringVar(&mark, "mark", "", "print the blocks of a revision with this mark")
	cmd.Flags().StringVar(&date, "date", "", "the day of the revision: 2026-06-02")
	return cmd
}

// issueDate is the day of a revision: as asked for, else the day of the drawing where it was set anew; "" where nobody said one.
func issueDate(asked string, old, is *diff.View) (string, error) {
	if asked != "" {
		if _, err := time.Parse(time.DateOnly, asked); err != nil {
			return "", fmt.Errorf("--date %q is no day; write 2026-06-02", asked)
		}
		return asked, nil
	}
	if is.Room == nil || old.Room != nil && old.Room.Project.Drawn == is.Room.Project.Drawn {
		return "", nil
	}
	return is.Room.Project.Drawn, nil
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
