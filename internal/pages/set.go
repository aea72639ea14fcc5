// Package pages says what is on each page of each set: one file per page, one list of pages per set.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres from the upper left corner, y
// down. draft.View turns one into the other, and nothing else does.
//
// Order: pages in the order of their list; inside a kind, walls, corners and openings in the order of the room.
//
// Not here: how parts are drafted (package draft), how a page becomes a file (packages svg and pdf).
package pages

import (
	"fmt"
	"strconv"
	"time"

	"flitchlay/internal/draft"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

// set is a set of pages while it is made.
type set struct {
	plan  *layout.Plan
	room  *room.Room
	style length.Style
	paper *paper.Template
	look  draft.Look
	logo  *scene.Picture
	name  string  // of the set: "Submittal"
	list  []*leaf // all pages, in order
	marks map[int]string
	ends  []termination // kinds of raw end, in the order of their marks

	photos Photographs // of the sheets; nil: none are asked for
}

// leaf is one page of a set before and while it is drawn.
type leaf struct {
	number string // Z-201
	count  int    // from 1
	kind   kind
	title  string
	scale  string // as the title block says it; "" for as noted
	wall   int    // that the key shows heavy; -1 for none
	walls  []int  // that the key shows heavy besides
	about  string // what other pages look it up by: "wall 0", "opening 0 1", "corner C1"
	abouts []string
	draw   func(*board)
}

// kind is the first figure of a page number.
//
// Source: sheet types of the US National CAD Standard: 0 general, 1 plans, 2 elevations, 4 large-scale views, 5 details,
// 6 schedules.
type kind int

const (
	general    kind = 0
	plans      kind = 1
	elevations kind = 2
	enlarged   kind = 4
	details    kind = 5
	schedules  kind = 6
)

// section makes the pages of one kind, without drawing them.
type section struct {
	kind  kind
	pages func(*set) []*leaf
}

// board is a page being drawn: the scene's page, what is taken on it, and the set it belongs to.
type board struct {
	*set
	leaf  *leaf
	page  *scene.Page
	space *draft.Space
	field scene.Box // where drawings stand
}

// newSet prepares a set on a paper.
func newSet(p *layout.Plan, t *paper.Template, logo *scene.Picture, name string) *set {
	return &set{plan: p, room: p.Room, style: p.Style, paper: t, look: lookOf(t), logo: logo, name: name, marks: wallMarks(p), ends: terminations(p)}
}

// lookOf brings an office's template to the terms of draft.
func lookOf(t *paper.Template) draft.Look {
	x, l := t.Text, t.Lines
	return draft.Look{Unit: t.Unit(), Small: x.Small, Medium: x.Medium, Large: x.Large, Huge: x.Huge,
		Wide: l.Wide, Outline: l.Outline, Seam: l.Seam, Thin: l.Thin, Dimension: l.Dimension, Extension: l.Extension, Grain: l.Grain}
}

// number gives every page its number and count. What a page says of the others can make it longer, so pages are made
// again, knowing those of the time before, until their number stays.
func (s *set) number(sections []section) {
	for range 6 {
		var list []*leaf
		for _, sec := range sections {
			for i, l := range sec.pages(s) {
				l.kind = sec.kind
				l.number = s.paper.PageNumber(int(sec.kind), i+1)
				list = append(list, l)
				l.count = len(list)
			}
		}
		same := len(list) == len(s.list)
		s.list = list
		if same {
			return
		}
	}
}

// pageOf is the number of the page that shows something, "" where none does.
func (s *set) pageOf(about string) string {
	for _, l := range s.list {
		if l.about == about {
			return l.number
		}
		for _, a := range l.abouts {
			if a == about {
				return l.number
			}
		}
	}
	return ""
}

// document draws all pages.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func (s *set) document(sections []section) (*scene.Document, error) {
	s.number(sections)
	p := s.room.Project
	d := &scene.Document{Title: p.Title, Author: p.By, Subject: s.name, Date: date(s.issued())}
	var entries []entry
	for _, l := range s.list {
		b := s.open(l)
		l.draw(b)
		s.describe(b.page, l.count, len(s.list))
		d.Pages = append(d.Pages, b.page)
		e := entry{page: b.page, title: l.number + "  " + l.title}
		if l.wall >= 0 {
			e.wall = s.room.Walls[l.wall].Name
		}
		entries = append(entries, e)
	}
	d.Outline = outlineOf(s.name, entries)
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("%s set: %w", s.name, err)
	}
	return d, nil
}

// date is a day of the room file as a time, the zero time where none is given.
func date(day string) time.Time {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return time.Time{}
	}
	return t
}

// issue is the mark of the last revision, a dash for the first issue.
func (s *set) issue() string {
	if n := len(s.room.Project.Revisions); n > 0 {
		return s.room.Project.Revisions[n-1].Mark
	}
	return "-"
}

// issued is the date of the last revision, or the date drawn.
func (s *set) issued() string {
	if n := len(s.room.Project.Revisions); n > 0 && s.room.Project.Revisions[n-1].Date != "" {
		return s.room.Project.Revisions[n-1].Date
	}
	return s.room.Project.Drawn
}

// unfit reports whether no page of the plan may be hung from.
func (s *set) unfit() bool { return finding.Any(s.plan.Findings, finding.Must) }

// metric reports whether the room is in millimetres.
func (s *set) metric() bool { return s.room.Project.Units == length.Millimetres }

// wallMarks letters the covered walls A, B, C, ... without I and O.
//
// Source: a letter marks an elevation, a number a section or a detail: government drawing guides; I and O are left out
// as in the fields of ISO 5457.
func wallMarks(p *layout.Plan) map[int]string {
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

// wallKey is what the first page of a wall's elevation is looked up by.
func wallKey(wall int) string { return "wall " + strconv.Itoa(wall) }

// mm is a length as the data of a drawn item: exact millimetres.
func mm(l L) string { return l.Decimal() }

// datum is one fact about a drawn item.
func datum(key, value string) scene.Datum { return scene.Datum{Key: key, Value: value} }
