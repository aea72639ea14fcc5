package cli

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/job"
	"flitchlay/internal/source"
)

// workers is how many rooms are under way at a time: the bytes are the same for any.
func workers() int { return runtime.GOMAXPROCS(0) }

// jobOf reads the job file that a path stands for; nil where it stands for a room.
//
// Errors: a roomError with every mistake of the job, or what cannot be read.
func (c *call) jobOf(path string) (*job.Job, error) {
	if path == stdin || strings.ToLower(filepath.Ext(path)) != ".toml" {
		return nil, nil
	}
	_, text, err := c.bytes(path)
	if err != nil {
		return nil, err
	}
	return c.jobIn(path, text)
}

// jobIn is jobOf of a text that was read.
func (c *call) jobIn(path string, text []byte) (*job.Job, error) {
	root, err := source.Parse(path, text)
	if err != nil || !job.Is(root) {
		return nil, nil // a room says better what is wrong with it
	}
	j, err := job.Read(path, text, func(file string) (string, []byte, error) {
		if !filepath.IsAbs(file) {
			file = filepath.Join(folder(path), file)
		}
		return c.bytes(file)
	})
	if err == nil {
		err = j.Run(workers())
	}
	if err != nil {
		return nil, &roomError{err}
	}
	return j, nil
}

// roomsIn finds the room files of folders among paths, in the order of their names; other paths stay. Files of a folder that are no
// rooms are passed over.
func (c *call) roomsIn(paths []string) (list []string, err error) {
	for _, path := range paths {
		if !isFolder(path) {
			list = append(list, path)
			continue
		}
		found, err := filepath.Glob(filepath.Join(escaped(path), "*.toml"))
		if err != nil {
			return nil, err
		}
		slices.Sort(found)
		n := len(list)
		for _, file := range found {
			_, text, err := c.bytes(file)
			if err != nil {
				return nil, err
			}
			// what cannot be parsed is taken, so that it is told
			if root, err := source.Parse(file, text); err != nil || root.Get("wall").Given() {
				list = append(list, file)
			}
		}
		if len(list) == n {
			return nil, fmt.Errorf("there is no room file in %s", path)
		}
	}
	return list, nil
}

// escaped is a path as Glob takes it.
func escaped(path string) string {
	return strings.NewReplacer("*", `\*`, "?", `\?`, "[", `\[`).Replace(path)
}

// roomArguments asks for room files, a job file or folders, and lets the shell complete them.
func roomArguments(cmd *cobra.Command) {
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return fmt.Errorf("%s takes a room file, a job file, or several room files; see %s --help", cmd.Name(), cmd.CommandPath())
		}
		return nil
	}
	cmd.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return []string{"toml", "pdf"}, cobra.ShellCompDirectiveFilterFileExt
	}
}

// jobFindings prints what there is to say of a job, and the lines to paste.
func jobFindings(to io.Writer, b *job.Book) {
	if len(b.Findings) == 0 {
		return
	}
	fmt.Fprintf(to, "\nThe job\n")
	t := table(to)
	for _, f := range b.Findings {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s (mend: %s)\n", f.Level, f.Code, f.Place, f.Message, f.Mend)
	}
	t.Flush()
	for i, u := range b.Unsaid {
		if i == 0 {
			fmt.Fprintf(to, "\nWhat hangs, to paste into the [[room]] of each, one text for each room that hangs:\n")
		}
		fmt.Fprintf(to, "laid = %q  # %s\n", u.Laid, u.Room.Name())
	}
}

// isFolder reports whether a path is a folder.
func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}
