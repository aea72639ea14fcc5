package cli

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// forcing adds the option to write over what the program did not write.
func (c *call) forcing(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&c.force, "force", false, "write over files that flitchlay did not write")
}

// ending holds that the name of an output ends as its kind of file does, so that nothing else is taken for it.
func ending(option, name, end string) error {
	if !strings.EqualFold(filepath.Ext(name), end) || strings.EqualFold(filepath.Base(name), end) {
		return fmt.Errorf("%s takes the name of a file that ends in %s, not %q", option, end, name)
	}
	return nil
}

// put writes files into a folder, where none is in the way, and keeps on record that they are ours.
func (c *call) put(folder, set string, files []file) error {
	earlier, err := readRecord(folder)
	if err != nil {
		return &lostError{folder, err}
	}
	if err := c.mayWrite(folder, earlier, files); err != nil {
		return err
	}
	list := slices.DeleteFunc(earlier, func(d drawn) bool {
		return slices.ContainsFunc(files, func(f file) bool { return f.name == d.name })
	})
	for _, f := range files {
		list = append(list, drawn{f.name, set, sum(f.data)})
	}
	return write(folder, append(files, record(list)))
}

// mayWrite holds that no file that was read is written over, by whatever path or link it is reached, and none that an earlier run
// did not leave as it is now.
//
// Errors: a lostError that names the file.
func (c *call) mayWrite(folder string, earlier []drawn, files []file) error {
	for _, f := range files {
		path := filepath.Join(folder, f.name)
		link, err := os.Lstat(path)
		if missing(err) {
			continue
		}
		if err != nil {
			return &lostError{path, err}
		}
		info, err := os.Stat(path)
		if err == nil && c.wasRead(info) {
			return &lostError{path, errors.New("it was read from: name another file")}
		}
		if err == nil && !info.Mode().IsRegular() {
			return &lostError{path, errors.New("something that is no file is in its place")}
		}
		if c.force || link.Mode().IsRegular() && isOurs(path, earlier, f) {
			continue
		}
		return &lostError{path, errors.New("a file is there that flitchlay did not write, or that was changed since: name another one, or say --force")}
	}
	return nil
}

// wasRead reports whether a file is one of those that were read.
func (c *call) wasRead(info os.FileInfo) bool {
	c.reading.Lock()
	defer c.reading.Unlock()
	return slices.ContainsFunc(c.inputs, func(path string) bool {
		input, err := os.Stat(path)
		return err == nil && os.SameFile(info, input)
	})
}

// isOurs reports whether a file is as an earlier run left it, or as this one would.
func isOurs(path string, earlier []drawn, f file) bool {
	data, err := os.ReadFile(path)
	if err != nil {
		return false
	}
	return bytes.Equal(data, f.data) || slices.ContainsFunc(earlier, func(d drawn) bool { return d.name == f.name && d.sum == sum(data) })
}
