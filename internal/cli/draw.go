package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/layout"
)

// draw draws the sets.
func (c *call) draw() *cobra.Command {
	var to string
	var words []string
	var asPage bool
	var how jobDrawing
	cmd := &cobra.Command{
		Use:                   "draw ROOM... [-o DIR] [--set SET]",
		DisableFlagsInUseLine: true,
		Short:                 "Draw the sets for the architect and for the crew",
		Long: `draw writes the drawings of a room: a PDF for each set, and beside them in a folder svg one SVG for each page,
named by the page's number. Without -o they go into a folder beside the room file that is named after it. Pages
that an earlier run drew there and that are no longer wanted are removed; nothing else in the folder is touched.
A file that the program did not write, or that was changed since, is not written over without --force, and
what was read never is.

Sets: ` + strings.Join(setWords(), ", ") + `. Without --set all are drawn.

--page writes the room as one HTML file in their place, page.html: the room unrolled, its walls and the crew's pages with the
cards, to tap and to zoom, for a phone on the wall or for a mail. It needs no server and no network, and no script to be read.

Of a job file it writes one submittal.pdf, with one cover and the rooms one after the other, and for each room the
crew's sets in a folder of its own, named by its number or its file; SVG pages only with --svg.
A room that cannot be drawn does not stop the rest. Of several rooms or of a folder it draws one after the other.
--part 3/16 takes every sixteenth room, from the third on, for several machines: their set for the architect goes
into a folder part-03-of-16.

` + roomIs,
		Example: `  flitchlay draw dining.toml -o drawings --set install`,
		RunE: func(cmd *cobra.Command, args []string) error {
			sets, err := chosen(words)
			if err != nil {
				return err
			}
			if cmd.Flags().Changed("output") && to == "" {
				return fmt.Errorf("-o takes the name of a folder")
			}
			j, err := c.several(args)
			if err != nil {
				return err
			}
			if !cmd.Flags().Changed("svg") {
				how.svg = j == nil || j.Plain()
			}
			if asPage && (j != nil || len(words) > 0) {
				return fmt.Errorf("--page takes a single room, and no --set")
			}
			if j != nil {
				if to == "" && !j.Plain() {
					to = beside(args[0])
				}
				return c.drawJob(to, j, sets, &how)
			}
			if how.part != "" {
				return fmt.Errorf("--part goes with a job or with several rooms")
			}
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			if to == "" {
				to = beside(args[0])
			}
			if asPage {
				return c.drawPage(to, p, folder(args[0]))
			}
			return c.drawInto(to, p, sets, folder(args[0]), how.svg)
		},
	}
	roomArguments(cmd)
	cmd.Flags().StringVar(&how.part, "part", "", "draw one part of the rooms, such as 3/16")
	cmd.Flags().BoolVar(&how.svg, "svg", false, "also one SVG for each page, in a folder svg (of rooms, unless it is --svg=false)")
	cmd.Flags().StringVarP(&to, "output", "o", "", "the folder to write into")
	cmd.Flags().StringSliceVar(&words, "set", nil, "the sets to draw: "+strings.Join(setWords(), ", "))
	cmd.Flags().BoolVar(&asPage, "page", false, "write the room as one HTML file, page.html")
	cmd.RegisterFlagCompletionFunc("set", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return setWords(), cobra.ShellCompDirectiveNoFileComp
	})
	cmd.MarkFlagDirname("output")
	c.forcing(cmd)
	return cmd
}

// beside is the folder for the drawings of a room where none is named.
func beside(room string) string {
	if room == stdin {
		return "room"
	}
	name := strings.TrimSuffix(room, filepath.Ext(room))
	if name == room || filepath.Base(name) == "." || strings.HasSuffix(name, string(filepath.Separator)) {
		return room + "-drawings"
	}
	return name
}

// drawInto draws sets into a folder, clears what an earlier run left there, and says what it did.
func (c *call) drawInto(to string, p *layout.Plan, sets []drawnSet, from string, single bool) error {
	with, err := c.pictures(p, sets, from)
	if err != nil {
		return err
	}
	carried := c.attachments(p.Room, from)
	var files []file
	drawing, count := map[string]bool{}, map[string]int{}
	for _, s := range sets {
		t, err := s.template(c, p.Room, from)
		if err != nil {
			return err
		}
		list, pages, err := s.files(p, t, with, carried, single)
		if err != nil {
			return &lostError{filepath.Join(to, s.word+".pdf"), err}
		}
		drawing[s.word], count[s.word] = true, pages
		files = append(files, list...)
	}
	said, err := c.renewed(to, files, drawing)
	if err != nil {
		return err
	}
	for _, line := range said {
		c.say("%s", line)
	}
	c.wrote(to, sets, files, count)
	if c.must {
		c.say("%s", fitForNothing)
	}
	return nil
}

// pagesFolder holds the pages of sets one by one, beside the sets.
const pagesFolder = "svg"

// renewed is replace of a folder and of the folder of pages in it. Nothing is written where something is in the way in either.
func (c *call) renewed(to string, files []file, drawing map[string]bool) (said []string, err error) {
	own := slices.DeleteFunc(slices.Clone(files), func(f file) bool { return f.page })
	pages := slices.DeleteFunc(slices.Clone(files), func(f file) bool { return !f.page })
	inner := filepath.Join(to, pagesFolder)
	if len(pages) > 0 && isFolder(to) {
		earlier, err := readRecord(inner)
		if err != nil {
			return nil, &lostError{inner, err}
		}
		if err := c.mayWrite(inner, earlier, pages); err != nil {
			return nil, err
		}
	}
	if len(own) > 0 || isFolder(to) {
		if said, err = c.replace(to, own, drawing); err != nil {
			return said, err
		}
	}
	if len(pages) == 0 && !isFolder(inner) {
		return said, nil
	}
	more, err := c.replace(inner, pages, drawing)
	if list, e := readRecord(inner); err == nil && e == nil && len(list) == 0 {
		os.Remove(filepath.Join(inner, recordName))
		os.Remove(inner) // where somebody has put something into it, it stays
	}
	return append(said, more...), err
}

// replace writes files into a folder in place of those that an earlier run left there of the sets that are drawn now, and says which
// are removed.
func (c *call) replace(to string, files []file, drawing map[string]bool) (said []string, err error) {
	earlier, err := readRecord(to)
	if err != nil {
		return nil, &lostError{to, err}
	}
	if err := c.mayWrite(to, earlier, files); err != nil {
		return nil, err
	}
	stay, stale := renew(earlier, files, drawing)
	var kept []drawn
	for _, f := range files {
		kept = append(kept, drawn{f.name, f.set, sum(f.data)})
	}
	// what is no longer wanted stays on record until it is gone
	if err := write(to, append(files, record(append(append(kept, stay...), stale...)))); err != nil {
		return nil, err
	}
	for _, d := range stale {
		switch removed, err := clear(to, d); {
		case err != nil:
			said = append(said, fmt.Sprintf("%s is no longer wanted, but left: %v", filepath.Join(to, d.name), plain(err)))
		case removed:
			said = append(said, fmt.Sprintf("removed %s, which is no longer wanted", filepath.Join(to, d.name)))
		}
	}
	if len(stale) > 0 {
		if err := write(to, []file{record(append(kept, stay...))}); err != nil {
			return nil, err
		}
	}
	return said, nil
}

// wrote says what was written.
func (c *call) wrote(to string, sets []drawnSet, files []file, count map[string]int) {
	for _, s := range sets {
		var pages []string
		for _, f := range files {
			if f.set == s.word {
				pages = append(pages, f.name)
			}
		}
		many := "pages"
		if count[s.word] == 1 {
			many = "page"
		}
		if len(pages) == 1 {
			c.say("wrote %s (%d %s)", filepath.Join(to, pages[0]), count[s.word], many)
			continue
		}
		c.say("wrote %s (%d %s) and in %s %s", filepath.Join(to, pages[0]), count[s.word], many, filepath.Join(to, pagesFolder), strings.Join(ranges(pages[1:]), ", "))
	}
}

// ranges shortens a list of names: three and more that count up become "a to b".
func ranges(names []string) []string {
	var out []string
	for i := 0; i < len(names); {
		k := i + 1
		for k < len(names) && names[k] == after(names[k-1]) {
			k++
		}
		if k-i > 2 {
			out = append(out, names[i]+" to "+names[k-1])
			i = k
			continue
		}
		out = append(out, names[i])
		i++
	}
	return out
}

// after is the next name of a row of numbered files, "" where the name has no number.
func after(name string) string {
	stem := strings.TrimSuffix(name, filepath.Ext(name))
	digits := len(stem) - len(strings.TrimRight(stem, "0123456789"))
	n, err := strconv.Atoi(stem[len(stem)-digits:])
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%s%0*d%s", stem[:len(stem)-digits], digits, n+1, filepath.Ext(name))
}
