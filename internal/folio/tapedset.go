package folio

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// TapedSet is a set of pages for the crew while it is made: their number, where on them things are first shown, and how
// figures are said on them.
type TapedSet struct {
	Set
	Unit  float64 // 1 on letter paper, more where an office's text is larger
	Level L       // of the level line, from which heights are read
	total int     // pages; 0 while it is not known
	first map[string]int
}

// NewTapedSet prepares a set for the crew on a paper, in the words of its template. Its name stands in their table, in section
// set.
func NewTapedSet(p *layout.Plan, t *paper.Template, name string) *TapedSet {
	s := &TapedSet{Set: Set{Plan: p, Room: p.Room, Style: p.Style, Paper: t, Look: draft.Office(), Name: t.Words.Of("set", name), Words: t.Words, Faces: face.All(p)}, Unit: max(t.Unit(), 1),
		Level: p.Room.Space.LevelLine, first: map[string]int{}}
	s.Look.Unit = s.Unit
	return s
}

// TapedPage is one page of a taped set before it is drawn; what it draws can run on to further pages.
type TapedPage struct {
	Key  string // what other pages find it by
	Draw func(n int) []*scene.Page
}

// mostRounds is how often pages are drawn at most until what they say of each other is true.
const mostRounds = 5

// Document draws all pages: once to learn how many they come to and where things stand, and once more with that; again, as long as
// the words that name pages have moved what they point to.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func (s *TapedSet) Document(list []TapedPage) (*scene.Document, error) {
	p := s.Room.Project
	var pages []*scene.Page
	for round := range mostRounds {
		before, total := maps.Clone(s.first), s.total
		pages = pages[:0]
		for _, l := range list {
			s.first[l.Key] = len(pages) + 1
			pages = append(pages, l.Draw(len(pages)+1)...)
		}
		s.total = len(pages)
		if round > 0 && s.total == total && maps.Equal(before, s.first) {
			break
		}
	}
	d := &scene.Document{Title: p.Title, Author: p.By, Subject: s.Name, Date: Date(s.Issued()), Pages: pages}
	var entries []Entry
	for i, page := range pages {
		s.Describe(page, i+1, len(pages))
		entries = append(entries, Entry{Page: page, Title: strconv.Itoa(i+1) + "  " + page.Title, Wall: strings.Join(wallsOn(page), ", ")})
	}
	d.Outline = s.outline(entries)
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("%s set: %w", s.Name, err)
	}
	return d, nil
}

// First notes on which page something stands that begins on the way down a list of pages.
func (s *TapedSet) First(key string, page int) { s.first[key] = page }

// Page is on which page something is shown; 0 while it is not known.
func (s *TapedSet) Page(key string) int { return s.first[key] }

// PageWord is where something is shown, as "page 3".
func (s *TapedSet) PageWord(key string) string { return s.Words.Say("page.number", s.first[key]) }

// PagesWord is where several things are shown, as "pages 3, 4"; those not known yet are left out.
func (s *TapedSet) PagesWord(keys []string) string {
	var pages []int
	for _, k := range keys {
		if n := s.first[k]; n > 0 {
			pages = append(pages, n)
		}
	}
	slices.Sort(pages)
	switch pages = slices.Compact(pages); len(pages) {
	case 0:
		return ""
	case 1:
		return s.Words.Say("page.number", pages[0])
	}
	return s.Words.Say("page.numbers", layout.Numbers(pages))
}

// SheetNumber is what stands on the back of a sheet, "?" where no sheet is left for its place: somebody on a ladder has to
// ask for one. Drawings have a dash there.
func (s *TapedSet) SheetNumber(sheet *layout.Sheet) string {
	if sheet.Number == 0 {
		return "?"
	}
	return strconv.Itoa(sheet.Number)
}

// SheetNumbers are those of a place, from the lowest course up.
func (s *TapedSet) SheetNumbers(h *face.Hang) string {
	var list []string
	for _, sheet := range h.Called() {
		list = append(list, s.SheetNumber(sheet))
	}
	return strings.Join(list, "+")
}

// Say prints a length as on drawings.
func (s *TapedSet) Say(l L) string { return s.Style.Format(l) }

// Seam is a seam's name on a page of its own wall: "11 | 12".
func (s *TapedSet) Seam(r *layout.Run, seam *layout.Seam) string {
	return s.Plan.PlaceName(r, seam.LeftSheet) + " | " + s.Plan.PlaceName(r, seam.RightSheet)
}

// Along is where a place of a wall stands: at the level line, from the wall's datum.
func (s *TapedSet) Along(f *face.Face, x L) string {
	if at := f.At(x); at < 0 {
		return s.Words.Say("place.left_of_0", s.Say(-at))
	}
	return s.Say(f.At(x))
}

// Inches is a short length with its mark: 17 1/2", 445.
func (s *TapedSet) Inches(l L) string {
	if s.Metric() {
		return s.Style.Inches(l)
	}
	return s.Style.Inches(l) + `"`
}

// Updown says how far something is from the level line.
func (s *TapedSet) Updown(z L) string {
	if z >= s.Level {
		return s.Words.Say("place.up", s.Inches(z-s.Level))
	}
	return s.Words.Say("place.down", s.Inches(s.Level-z))
}

// fileNumber is a page's number in the name of its file.
func fileNumber(n int) string { return fmt.Sprintf("%02d", n) }
