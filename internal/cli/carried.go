package cli

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"flitchlay/internal/paper"
	"flitchlay/internal/pdf"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/words"
)

// carriedName is what the room file is called inside every PDF set, whatever the file itself was called: the same room
// gives the same bytes.
const carriedName = "room.toml"

// attached is the room file as a set carries it.
func attached(text []byte) scene.Attachment {
	return scene.Attachment{Name: carriedName, About: "the room file that this set was drawn from", Type: "application/toml", Data: text}
}

// companion is a file that [page] of a room file names, and what it is called inside a set.
type companion struct {
	role, about, path string
}

// What the files that [page] names are called inside every PDF set, whatever they are called themselves.
const (
	logoRole  = "logo"
	wordsRole = "words.toml"
	otherRole = "words-beside.toml"
)

// templateRole is what a set's page template is called inside every PDF set.
func templateRole(key string) string { return "page-" + key + ".toml" }

// companions are the files that [page] names, in the order in which sets carry them.
func companions(p room.Page) []companion {
	var list []companion
	for _, x := range []struct{ key, word string }{{"submittal", p.Submittal}, {"install", p.Install}} {
		if x.word != "" && !paper.IsName(x.word) {
			list = append(list, companion{templateRole(x.key), "the page template of this set, or of one beside it", x.word})
		}
	}
	for i, name := range strings.Split(p.Language, "+") {
		if name != "" && !words.IsName(name) {
			list = append(list, companion{[]string{wordsRole, otherRole}[min(i, 1)], "the words of the crew's pages", name})
		}
	}
	if p.Logo != "" {
		list = append(list, companion{logoRole, "the picture for the title block", p.Logo})
	}
	return list
}

// attachments are what a set carries: the room file, and what it names under [page], so that the set alone draws the same again. What
// cannot be read is not needed by the sets that are drawn, or they would not be.
func (c *call) attachments(r *room.Room, folder string) []scene.Attachment {
	list := []scene.Attachment{attached(c.text)}
	for _, x := range companions(r.Page) {
		kind := "application/toml"
		if x.role == logoRole {
			kind = ""
		}
		if _, data, err := c.beside(x.role, x.path, folder); err == nil {
			list = append(list, scene.Attachment{Name: x.role, About: x.about, Type: kind, Data: data})
		}
	}
	return list
}

// beside reads a file that [page] names: out of the set where the room came in one that carries it, else by its path from the room
// file's folder. It gives the name by which messages call the file.
func (c *call) beside(role, path, folder string) (name string, data []byte, err error) {
	if c.set != nil {
		if data, err = pdf.Attached(c.set, role); !errors.Is(err, pdf.ErrNothing) {
			return c.setName + ": " + role, data, err
		}
	}
	if !filepath.IsAbs(path) {
		path = filepath.Join(folder, path)
	}
	data, err = c.open(path)
	return path, data, err
}

// unpacked gives the text of a room: that of the file, or that of the room file which a PDF set of ours carries.
//
// Errors: one sentence that says what is wrong with the PDF file and what to give instead.
func unpacked(name string, data []byte) (string, []byte, error) {
	if !pdf.IsPDF(data) {
		return name, data, nil
	}
	text, err := pdf.Attached(data, carriedName)
	switch {
	case errors.Is(err, pdf.ErrForeign):
		return "", nil, fmt.Errorf("%s is %w: give the room file itself", name, err)
	case errors.Is(err, pdf.ErrNothing):
		return "", nil, fmt.Errorf("%s carries no room file: give the room file itself", name)
	case err != nil:
		return "", nil, fmt.Errorf("%s cannot be used: %w", name, err)
	}
	return name + ": " + carriedName, text, nil
}
