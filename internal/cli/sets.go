package cli

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/crew"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/pole"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/source"
	"flitchlay/internal/submittal"
)

// drawnSet is one set of drawings.
type drawnSet struct {
	word  string // what --set takes, and the name of its PDF file
	key   string // of [page], which names its paper
	paper func(room.Page) string
	inch  string // paper in an inch room that names none
	mm    string // in a metric one
	pages func(*layout.Plan, *paper.Template, pictures) (*scene.Document, error)
	crew  bool // in the crew's language
}

// drawnSets are all sets, in the order in which they are drawn.
var drawnSets = []drawnSet{
	{"submittal", "submittal", func(p room.Page) string { return p.Submittal }, "ansi-b", "a3", pictured, false},
	{"install", "install", func(p room.Page) string { return p.Install }, "ansi-a", "a4", unmarked(crew.Install), true},
	{"pole", "install", func(p room.Page) string { return p.Install }, "ansi-a", "a4", unmarked(pole.Draw), true},
}

// pictured draws the set that takes the logo and the photographs of the sheets.
func pictured(p *layout.Plan, t *paper.Template, with pictures) (*scene.Document, error) {
	return submittal.Photographed(p, t, with.logo, with.sheets)
}

// unmarked draws a set that takes no pictures.
func unmarked(draw func(*layout.Plan, *paper.Template) (*scene.Document, error)) func(*layout.Plan, *paper.Template, pictures) (*scene.Document, error) {
	return func(p *layout.Plan, t *paper.Template, _ pictures) (*scene.Document, error) { return draw(p, t) }
}

// setWords are the words that --set takes.
func setWords() []string {
	var words []string
	for _, s := range drawnSets {
		words = append(words, s.word)
	}
	return words
}

// chosen finds the sets by their words, in the order in which they are drawn; all of them for no word.
//
// Errors: one sentence that names the nearest.
func chosen(words []string) ([]drawnSet, error) {
	if len(words) == 0 {
		return drawnSets, nil
	}
	for _, w := range words {
		if slices.Contains(setWords(), w) {
			continue
		}
		if near := source.Nearest(w, setWords()); near != "" {
			return nil, fmt.Errorf("there is no set %q; the nearest is %s", w, near)
		}
		return nil, fmt.Errorf("there is no set %q; there are %s", w, strings.Join(setWords(), ", "))
	}
	var sets []drawnSet
	for _, s := range drawnSets {
		if slices.Contains(words, s.word) {
			sets = append(sets, s)
		}
	}
	return sets, nil
}

// template gives the paper of a set: one of ours by name, or an office's own by its path from the room file's folder. With it come
// the words of a set for the crew.
//
// Errors: a roomError with every mistake of a template or a table of words of the office's own.
func (s drawnSet) template(c *call, r *room.Room, folder string) (*paper.Template, error) {
	t, err := s.paperOf(c, r, folder)
	if err != nil || !s.crew {
		return t, err
	}
	if t.Words, err = c.wordsOf(r.Page.Language, folder); err != nil {
		return nil, named(s.word, err)
	}
	return t, nil
}

// pageSound holds that everything [page] names can be used, so that check finds what draw would stumble over.
func (c *call) pageSound(r *room.Room, folder string) error {
	for _, s := range drawnSets {
		if _, err := s.template(c, r, folder); err != nil {
			return err
		}
	}
	_, err := c.logo(r, folder)
	return err
}

// named says of which set an error is, unless it has its place with it.
func named(set string, err error) error {
	if _, placed := errors.AsType[*roomError](err); placed {
		return err
	}
	return fmt.Errorf("%s set: %w", set, err)
}

func (s drawnSet) paperOf(c *call, r *room.Room, folder string) (*paper.Template, error) {
	word := s.paper(r.Page)
	switch {
	case word == "" && r.Project.Units == length.Millimetres:
		word = s.mm
	case word == "":
		word = s.inch
	}
	if paper.IsName(word) {
		t, err := paper.Named(word)
		if err != nil {
			return nil, fmt.Errorf("%s set: %w", s.word, err)
		}
		return t, nil
	}
	path, text, err := c.beside(templateRole(s.key), word, folder)
	if err != nil {
		return nil, fmt.Errorf("%s set: page template %s cannot be read: %w", s.word, path, plain(err))
	}
	t, err := paper.Decode(path, text)
	if err != nil {
		return nil, &roomError{err}
	}
	return t, nil
}

// logo reads the picture for the title block, nil where the room names none.
func (c *call) logo(r *room.Room, folder string) (*scene.Picture, error) {
	if r.Page.Logo == "" {
		return nil, nil
	}
	path, data, err := c.beside(logoRole, r.Page.Logo, folder)
	if err != nil {
		return nil, fmt.Errorf("logo %s cannot be read: %w", path, plain(err))
	}
	picture, err := scene.ReadPicture(data)
	if err != nil {
		return nil, fmt.Errorf("logo %s: %w", path, err)
	}
	return &picture, nil
}

// files draws a set: what each backend makes of it, a page by its number, where single pages are wanted. The file of the whole set carries the room file and what it
// names under [page].
func (s drawnSet) files(p *layout.Plan, t *paper.Template, with pictures, carried []scene.Attachment, single bool) (files []file, pages int, err error) {
	d, err := s.pages(p, t, with)
	if err != nil {
		return nil, 0, err
	}
	d.Attachments = append(d.Attachments, carried...)
	for _, b := range backends {
		if b.set == nil && !single {
			continue
		}
		list, err := b.files(d, s.word, func(i int) string { return d.Pages[i].Name })
		if err != nil {
			return nil, 0, err
		}
		for _, f := range list {
			f.set, f.page = s.word, b.set == nil
			files = append(files, f)
		}
	}
	return files, len(d.Pages), nil
}
