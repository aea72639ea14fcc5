package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// file is one file to be written into a folder.
type file struct {
	name string
	set  string // the set it belongs to
	page bool   // one page of it: it goes into the folder of pages
	data []byte
}

// write writes files into a folder, all of them or none: first each beside its place, then each into its place.
//
// Errors: a lostError that names the file.
func write(folder string, files []file) (err error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return &lostError{folder, err}
	}
	var waiting []string
	defer func() {
		if err != nil {
			for _, w := range waiting {
				os.Remove(w)
			}
		}
	}()
	for _, f := range files {
		path := filepath.Join(folder, f.name)
		if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
			return &lostError{path, errors.New("something that is no file is in its place")}
		}
		beside := filepath.Join(folder, fmt.Sprintf(".%s.%d", f.name, os.Getpid()))
		if err := os.WriteFile(beside, f.data, 0o666); err != nil {
			os.Remove(beside)
			return &lostError{path, err}
		}
		waiting = append(waiting, beside)
	}
	for i, f := range files {
		path := filepath.Join(folder, f.name)
		if err := os.Rename(waiting[i], path); err != nil {
			return &lostError{path, err}
		}
	}
	return nil
}

// missing reports whether an error only says that a file is not there.
func missing(err error) bool { return errors.Is(err, fs.ErrNotExist) }
