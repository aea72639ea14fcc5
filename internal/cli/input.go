package cli

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/pdf"
	"flitchlay/internal/room"
)

// stdin is what stands for standard input in place of a file.
const stdin = "-"

// plan reads a room and lays it out.
//
// Errors: a roomError with every mistake of the file.
func (c *call) plan(path string) (*layout.Plan, error) {
	r, err := c.read(path)
	if err != nil {
		return nil, err
	}
	p, err := layout.Lay(r)
	if err != nil {
		return nil, &roomError{err}
	}
	c.must = judged(p)
	return p, nil
}

// judged adds to the findings of a layout what the letters of its drawings lack and what is asked of its file, and reports whether a
// rule that must be met is broken.
func judged(p *layout.Plan) bool {
	p.Findings = append(append(p.Findings, folio.Glyphs(p.Room)...), p.Room.Asks...)
	finding.Sort(p.Findings)
	return finding.Any(p.Findings, finding.Must)
}

// read reads a room file, and keeps its text for the sets that carry it.
func (c *call) read(path string) (*room.Room, error) {
	name, data, err := c.raw(path)
	if err != nil {
		return nil, err
	}
	if pdf.IsPDF(data) {
		c.set, c.setName = data, name
	}
	r, text, err := decoded(name, data)
	c.text = text
	return r, err
}

// load reads a room file; several may be loaded at a time.
func (c *call) load(path string) (*room.Room, []byte, error) {
	name, data, err := c.raw(path)
	if err != nil {
		return nil, nil, err
	}
	return decoded(name, data)
}

// decoded reads a room out of a room file, or out of a PDF set that carries one.
func decoded(name string, data []byte) (*room.Room, []byte, error) {
	name, text, err := unpacked(name, data)
	if err != nil {
		return nil, nil, err
	}
	r, err := room.Decode(name, text)
	if err != nil {
		return nil, text, &roomError{err}
	}
	return r, text, nil
}

// bytes reads what a path stands for: a file, standard input, or the room file that a PDF set carries.
func (c *call) bytes(path string) (name string, text []byte, err error) {
	name, data, err := c.raw(path)
	if err != nil {
		return "", nil, err
	}
	return unpacked(name, data)
}

// raw reads a file or standard input as it is.
func (c *call) raw(path string) (name string, data []byte, err error) {
	if name = path; path == stdin {
		name = "standard input"
		data, err = io.ReadAll(c.in)
	} else {
		data, err = c.open(path)
	}
	if err != nil {
		return "", nil, fmt.Errorf("%s cannot be read: %w", name, plain(err))
	}
	return name, data, nil
}

// open reads a file, and keeps its name: what was read is not written over.
func (c *call) open(path string) ([]byte, error) {
	c.reading.Lock()
	c.inputs = append(c.inputs, path)
	c.reading.Unlock()
	return os.ReadFile(path)
}

// folder is where paths inside a room file start from.
func folder(path string) string {
	if path == stdin {
		return "."
	}
	return filepath.Dir(path)
}
