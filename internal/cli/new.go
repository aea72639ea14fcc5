package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/source"
	"flitchlay/templates"
)

// usual is the starter that comes without a name.
const usual = "four-wall"

// newRoom writes a starter room.
func (c *call) newRoom() *cobra.Command {
	var to string
	var list bool
	cmd := &cobra.Command{
		Use:                   "new [-o FILE] [NAME]",
		DisableFlagsInUseLine: true,
		Short:                 "Write a starter room",
		Long: `new writes a room file to start from, with a comment on every figure. Without a name it is the room of
four walls. A file that is there already is left as it is.

Starter rooms:
` + starterList(),
		Example: `  flitchlay new -o dining.toml four-wall`,
		Args:    cobra.MaximumNArgs(1),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return starters(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if list {
				fmt.Fprint(c.out, starterList())
				return nil
			}
			name := usual
			if len(args) == 1 {
				name = args[0]
			}
			text, err := starter(name)
			if err != nil {
				return err
			}
			return c.start(to, text)
		},
	}
	cmd.Flags().StringVarP(&to, "output", "o", "", "the file to write; without it the room goes to standard output")
	cmd.Flags().BoolVar(&list, "list", false, "list the starter rooms")
	return cmd
}

// start writes a starter room to a file that is not there yet, or to standard output.
func (c *call) start(to string, text []byte) error {
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
	c.say("wrote %s; put your own figures in, then: flitchlay check %s", to, to)
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
