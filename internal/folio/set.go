package folio

import (
	"fmt"
	"strconv"
	"time"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/words"
)

// EndMark is the mark of a termination, "" where the room has none of the kind.
func (s *Set) EndMark(kind string) string {
	for _, t := range s.Ends {
		if t.Kind == kind {
			return t.Mark
		}
	}
	return ""
}

// SheetName is what a sheet is called: its number in its flitch.
type SheetName struct {
	Flitch string
	Number int
}

// Photographs are the photographs of sheets, each of a whole sheet as it is delivered, upright, its head up. A sheet
// that has none is left as a plain field.
type Photographs map[SheetName]scene.Picture

// Set is a set of pages while it is made.
type Set struct {
	Plan   *layout.Plan
	Room   *room.Room
	Style  length.Style
	Paper  *paper.Template
	Look   draft.Look
	logo   *scene.Picture
	Name   string       // of the set: "Submittal"
	Words  *words.Table // of the crew's pages; nil, as for the architect: English
	List   []*Leaf      // all pages, in order
	Others []string     // names of its pages that are made elsewhere: those of the rooms behind the cover of a job
	Marks  map[int]string
	Faces  []*face.Face       // all covered walls, in room order; pages read them
	Ends   []face.Termination // kinds of raw end, in the order of their marks

	Photos Photographs // of the sheets; nil: none are asked for

	kept    map[string]any // what several sections ask for while pages are made once
	planned map[string]any // the same of what is as it is whatever pages there are
}

// Leaf is one page of a set before and while it is drawn.
type Leaf struct {
	Number string // Z-201
	count  int    // from 1
	Kind   Kind
	Title  string
	Scale  string // as the title block says it; "" for as noted
	Wall   int    // that the key shows heavy; -1 for none
	Walls  []int  // that the key shows heavy besides
	About  string // what other pages look it up by: "wall 0", "opening 0 1", "corner C1"
	Abouts []string
	Shown  []Stretch // of the walls that the page is the elevation of
	Listed bool      // it has nothing but lists: where the template gives key and reviews a band of their own, the lists have it
	Draw   func(*Board)
}

// Stretch is what of a wall a page shows.
type Stretch struct {
	Wall     int
	From, To L
}

// Kind is the first figure of a page number.
//
// Source: sheet types of the US National CAD Standard: 0 general, 1 plans, 2 elevations, 4 large-scale views, 5 details,
// 6 schedules.
type Kind int

const (
	General    Kind = 0
	Plans      Kind = 1
	Elevations Kind = 2
	Enlarged   Kind = 4
	Details    Kind = 5
	Schedules  Kind = 6
)

// Section makes the pages of one kind, without drawing them.
type Section struct {
	Kind  Kind
	Pages func(*Set) []*Leaf
}

// Board is a page being drawn: the scene's page, what is taken on it, and the set it belongs to.
type Board struct {
	*Set
	Leaf  *Leaf
	Page  *scene.Page
	Space *draft.Space
	Field scene.Box // where drawings stand
}

// NewSet prepares a set on a paper.
func NewSet(p *layout.Plan, t *paper.Template, logo *scene.Picture, name string) *Set {
	return &Set{Plan: p, Room: p.Room, Style: p.Style, Paper: t, Look: LookOf(t), logo: logo, Name: name, Marks: WallMarks(p), Faces: face.All(p), Ends: face.Terminations(p)}
}

// Face is a covered wall, nil where no run holds it.
func (s *Set) Face(wall int) *face.Face {
	for _, f := range s.Faces {
		if f.Wall == wall {
			return f
		}
	}
	return nil
}

// LookOf brings an office's template to the terms of draft.
func LookOf(t *paper.Template) draft.Look {
	x, l := t.Text, t.Lines
	return draft.Look{Unit: t.Unit(), Small: x.Small, Medium: x.Medium, Large: x.Large, Huge: x.Huge,
		Wide: l.Wide, Outline: l.Outline, Seam: l.Seam, Thin: l.Thin, Dimension: l.Dimension, Extension: l.Extension, Grain: l.Grain}
}

// Number gives every page its number and count. What a page says of the others can make it longer, so pages are made
// again, knowing those of the time before, until their number stays.
func (s *Set) Number(sections []Section) {
	s.planned = map[string]any{}
	defer func() { s.planned = nil }()
	for range 6 {
		s.kept = map[string]any{}
		var list []*Leaf
		counts := map[Kind]int{} // sections of one kind count on
		for _, sec := range sections {
			for _, l := range sec.Pages(s) {
				counts[sec.Kind]++
				l.Kind = sec.Kind
				l.Number = s.Paper.PageNumber(int(sec.Kind), counts[sec.Kind])
				list = append(list, l)
				l.count = len(list)
			}
		}
		same := len(list) == len(s.List)
		s.List, s.kept = list, nil
		if same {
			return
		}
	}
}

// Kept is what make gives, made once for all sections that ask for it by a name while the pages of a set are made: it may depend on
// which pages there were the time before.
func Kept[T any](s *Set, name string, make func() T) T { return kept(s.kept, name, make) }

// Planned is the same of what depends on no pages: it is made once however often the pages of a set are.
func Planned[T any](s *Set, name string, make func() T) T { return kept(s.planned, name, make) }

func kept[T any](in map[string]any, name string, make func() T) T {
	if v, ok := in[name].(T); ok {
		return v
	}
	v := make()
	if in != nil {
		in[name] = v
	}
	return v
}

// PageOf is the number of the page that shows something, "" where none does.
func (s *Set) PageOf(about string) string {
	for _, l := range s.List {
		if l.About == about {
			return l.Number
		}
		for _, a := range l.Abouts {
			if a == about {
				return l.Number
			}
		}
	}
	return ""
}

// PageAt is the number of the elevation that shows a place of a wall, "" where none does.
func (s *Set) PageAt(wall int, x L) string {
	for _, l := range s.List {
		for _, p := range l.Shown {
			if p.Wall == wall && p.From <= x && x <= p.To {
				return l.Number
			}
		}
	}
	return ""
}

// Document draws all pages.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func (s *Set) Document(sections []Section) (*scene.Document, error) {
	s.Number(sections)
	p := s.Room.Project
	d := &scene.Document{Title: p.Title, Author: p.By, Subject: s.Name, Date: Date(s.Issued()), Elsewhere: s.Others}
	var entries []Entry
	for _, l := range s.List {
		b := s.Open(l)
		l.Draw(b)
		s.Describe(b.Page, l.count, len(s.List)+len(s.Others))
		d.Pages = append(d.Pages, b.Page)
		e := Entry{Page: b.Page, Title: l.Number + "  " + l.Title}
		if l.Wall >= 0 {
			e.Wall = s.Room.Walls[l.Wall].Name
		}
		entries = append(entries, e)
	}
	d.Outline = s.outline(entries)
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("%s set: %w", s.Name, err)
	}
	return d, nil
}

// Date is a day of the room file as a time, the zero time where none is given.
func Date(day string) time.Time {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return time.Time{}
	}
	return t
}

// Issue is the mark of the last revision, a dash for the first issue.
func (s *Set) Issue() string {
	if n := len(s.Room.Project.Revisions); n > 0 {
		return s.Room.Project.Revisions[n-1].Mark
	}
	return "-"
}

// Issued is the date of the last revision, or the date drawn.
func (s *Set) Issued() string {
	if n := len(s.Room.Project.Revisions); n > 0 && s.Room.Project.Revisions[n-1].Date != "" {
		return s.Room.Project.Revisions[n-1].Date
	}
	return s.Room.Project.Drawn
}

// Unfit reports whether no page of the plan may be hung from.
func (s *Set) Unfit() bool { return finding.Any(s.Plan.Findings, finding.Must) }

// Metric reports whether the room is in millimetres.
func (s *Set) Metric() bool { return s.Room.Project.Units == length.Millimetres }

// WallMarks letters the covered walls A, B, C, ... without I and O.
//
// Source: a letter marks an elevation, a number a section or a detail: government drawing guides; I and O are left out
// as in the fields of ISO 5457.
func WallMarks(p *layout.Plan) map[int]string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	marks := map[int]string{}
	n := 0
	for i := range p.Room.Walls {
		if !p.Room.Walls[i].Cover {
			continue
		}
		mark := string(letters[n%len(letters)])
		if n >= len(letters) {
			mark = string(letters[n/len(letters)-1]) + mark
		}
		marks[i] = mark
		n++
	}
	return marks
}

// WallKey is what the first page of a wall's elevation is looked up by.
func WallKey(wall int) string { return "wall " + strconv.Itoa(wall) }

// Mm is a length as the data of a drawn item: exact millimetres.
func Mm(l L) string { return l.Decimal() }

// Datum is one fact about a drawn item.
func Datum(key, value string) scene.Datum { return scene.Datum{Key: key, Value: value} }
