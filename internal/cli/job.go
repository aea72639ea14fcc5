package cli

import (
	"fmt"
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

// roomIs says at the end of a help what a command takes.
const roomIs = `ROOM is a room file, a PDF set drawn from one, or - for standard input; or a job file, or a folder of room files.`

// several reads what a command takes that goes through rooms: nil for a single room.
//
// Errors: as jobOf, and a job file beside others.
func (c *call) several(args []string) (*job.Job, error) {
	if len(args) == 1 {
		if j, err := c.jobOf(args[0]); j != nil || err != nil {
			return j, err
		}
	}
	list, err := c.roomsIn(args)
	if err != nil || len(list) == 1 && list[0] == args[0] {
		return nil, err
	}
	if i := slices.Index(list, stdin); i >= 0 && slices.Contains(list[i+1:], stdin) {
		return nil, fmt.Errorf("- can be read only once")
	}
	return c.roomsOf(list), nil
}

// roomsOf are rooms one after the other. A job file among them cannot be read as a room, and says so.
func (c *call) roomsOf(list []string) *job.Job {
	return job.Of(list, func(path string) (string, []byte, error) {
		name, text, err := c.bytes(path)
		if err != nil {
			return "", nil, err
		}
		if root, err := source.Parse(name, text); err == nil && job.Is(root) {
			return "", nil, fmt.Errorf("%s is a job file: it goes alone", name)
		}
		return name, text, nil
	})
}

// jobOf reads the job file that a path stands for; nil where it stands for a room.
//
// Errors: a roomError with every mistake of the job, or what cannot be read.
func (c *call) jobOf(path string) (*job.Job, error) {
	if path == stdin || strings.ToLower(filepath.Ext(path)) != ".toml" {
		return nil, nil
	}
	_, text, err := c.bytes(path)
	if err != nil {
		return nil, nil // a room says it
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
	if err != nil {
		return nil, &roomError{err}
	}
	j.Run(workers())
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

// isFolder reports whether a path is a folder.
func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}
