package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
	"flitchlay/internal/words"
	"flitchlay/templates"
)

// usual is the starter that comes without a name.
const usual = "four-wall"

// newRoom writes a starter room, or a copy of a page template.
func (c *call) newRoom() *cobra.Command {
	var n newAsked
	cmd := &cobra.Command{
		Use:                   "new [-o FILE] [NAME | --page PAPER | --words LANGUAGE | --form [--walls N]]",
		DisableFlagsInUseLine: true,
		Short:                 "Write a starter room, or a page template or table of words to make your own",
		Long: `new writes a room file to start from, with a comment on every figure and every other key as a comment. Without a name it is the room of
four walls. With --page it writes a page template: paper, frame, title block, logo, page numbers, notes, scales,
line widths, for you to change. With --words it writes all words of the crew's pages in a language: en or es.
With --form it writes a blank form to measure a room with, a page for each wall, on the paper of --page and in the
language of --words. A file that is there already is left as it is.

Starter rooms:
` + starterList() + `
Page templates:
` + paperList(),
		Example: `  flitchlay new -o dining.toml four-wall
  flitchlay new -o our-page.toml --page ansi-b
  flitchlay new -o our-words.toml --words es
  flitchlay new --form --walls 6 -o measure.pdf`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return starters(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error { return c.writeNew(cmd, args, n) },
	}
	cmd.Flags().StringVarP(&n.to, "output", "o", "", "the file to write; without it the text goes to standard output")
	cmd.Flags().StringVar(&n.page, "page", "", "write this page template in place of a room")
	cmd.Flags().StringVar(&n.language, "words", "", "write the table of words of this language in place of a room")
	cmd.Flags().BoolVar(&n.list, "list", false, "list the starter rooms")
	cmd.Flags().BoolVar(&n.form, "form", false, "write a blank form to measure a room with, a PDF file")
	cmd.Flags().IntVar(&n.walls, "walls", 4, "how many walls the form has pages for")
	c.forcing(cmd)
	cmd.RegisterFlagCompletionFunc("page", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return paper.Names(), cobra.ShellCompDirectiveNoFileComp
	})
	cmd.RegisterFlagCompletionFunc("words", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return words.Names(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

// newAsked is what new is asked for: where to, and which page template or language in place of a room.
type newAsked struct {
	to, page, language string
	list, form         bool
	walls              int
}

// writeNew writes what new is asked for.
func (c *call) writeNew(cmd *cobra.Command, args []string, n newAsked) error {
	if n.list {
		fmt.Fprint(c.out, starterList())
		return nil
	}
	if n.form {
		return c.writeForm(args, n)
	}
	if cmd.Flags().Changed("walls") {
		return fmt.Errorf("--walls goes with --form")
	}
	if cmd.Flags().Changed("page") {
		if len(args) > 0 {
			return fmt.Errorf("new writes a room or a page template, not both")
		}
		text, err := pageTemplate(n.page)
		if err != nil {
			return err
		}
		text = append([]byte(editorLine("page")), text...)
		return c.start(n.to, text, fmt.Sprintf("change what your office does otherwise, then name it under [page] in a room file: submittal = %q", filepath.Base(n.to)))
	}
	if cmd.Flags().Changed("words") {
		if len(args) > 0 {
			return fmt.Errorf("new writes a room or a table of words, not both")
		}
		text, err := words.Text(n.language)
		if err != nil {
			return err
		}
		return c.start(n.to, text, fmt.Sprintf("say it as your crew does, then name it under [page] in a room file: language = %q", filepath.Base(n.to)))
	}
	name := usual
	if len(args) == 1 {
		name = args[0]
	}
	text, err := starter(name)
	if err != nil {
		return err
	}
	text = []byte(editorLine("room") + room.Schema.Complete(string(text)))
	return c.start(n.to, text, "put your own figures in, then: flitchlay check "+n.to)
}

// start writes a text to start from to a file that is not there yet, or to standard output, and says what comes next.
func (c *call) start(to string, text []byte, next string) error {
	if to == "" || to == stdin {
		c.out.Write(text)
		return nil
	}
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return &lostError{to, errors.New("it is there already, and is left as it is")}
	}
	if err != nil {
		return &lostError{to, err}
	}
	_, err = f.Write(text)
	if shut := f.Close(); err == nil {
		err = shut
	}
	if err != nil {
		os.Remove(to)
		return &lostError{to, err}
	}
	c.say("wrote %s; %s", to, next)
	return nil
}

// starters are the names of the starter rooms.
func starters() []string {
	files, err := fs.Glob(templates.Files, "rooms/*.toml")
	if err != nil {
		panic(err) // the pattern is sound
	}
	for i, f := range files {
		files[i] = strings.TrimSuffix(strings.TrimPrefix(f, "rooms/"), ".toml")
	}
	return files
}

// starter is the text of a starter room.
//
// Errors: one sentence that names the nearest.
func starter(name string) ([]byte, error) {
	text, err := templates.Files.ReadFile("rooms/" + name + ".toml")
	if err == nil {
		return text, nil
	}
	if near := source.Nearest(name, starters()); near != "" {
		return nil, fmt.Errorf("there is no starter room %q; the nearest is %s", name, near)
	}
	return nil, fmt.Errorf("there is no starter room %q; there are %s", name, strings.Join(starters(), ", "))
}

// pageTemplate is the text of a page template.
//
// Errors: one sentence that names the nearest.
func pageTemplate(name string) ([]byte, error) {
	text, err := templates.Files.ReadFile("pages/" + name + ".toml")
	if err == nil {
		return text, nil
	}
	if near := source.Nearest(name, paper.Names()); near != "" {
		return nil, fmt.Errorf("there is no page template %q; the nearest is %s", name, near)
	}
	return nil, fmt.Errorf("there is no page template %q; there are %s", name, strings.Join(paper.Names(), ", "))
}

// paperList names every page template and says what it is.
func paperList() string {
	var b strings.Builder
	for _, name := range paper.Names() {
		text, err := pageTemplate(name)
		if err != nil {
			panic(err) // it was just listed
		}
		fmt.Fprintf(&b, "  %-14s %s\n", name, first(string(text)))
	}
	return b.String()
}

// starterList names every starter room and says what it is: the first sentence of the comment at its top.
func starterList() string {
	var b strings.Builder
	for _, name := range starters() {
		text, err := starter(name)
		if err != nil {
			panic(err) // it was just listed
		}
		fmt.Fprintf(&b, "  %-14s %s\n", name, first(string(text)))
	}
	return b.String()
}

// first is the first sentence of the comment at the top of a room file.
func first(text string) string {
	var words []string
	for _, line := range strings.Split(text, "\n") {
		if !strings.HasPrefix(line, "#") {
			break
		}
		words = append(words, strings.Fields(strings.TrimPrefix(line, "#"))...)
	}
	sentence, _, _ := strings.Cut(strings.Join(words, " "), ". ")
	return strings.TrimSuffix(sentence, ".")
}
