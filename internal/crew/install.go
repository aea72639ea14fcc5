package crew

import (
	"fmt"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// Install draws the install set, to tape on the wall: the room start page, one wall or piece of one per page, the cut
// list. Black and white, to be read at arm's length.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Install(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := NewSet(p, t, "Install")
	return c.Document(c.installPages())
}

// Set is the install set while it is made: what every page of it needs to know.
type Set struct {
	folio.Set
	u     float64 // 1 on letter paper, more where an office's text is larger
	Level L
	half  L // half an overlap
	Total int
	Walls []*Wall
	first map[string]int // page on which something is first shown
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	c := &Set{Set: folio.Set{Plan: p, Room: p.Room, Style: p.Style, Paper: t, Look: draft.Office(), Name: name}, u: max(t.Unit(), 1),
		Level: p.Room.Space.LevelLine, half: p.Room.Veneer.Overlap.HalfDown(), first: map[string]int{}}
	c.Look.Unit = c.u
	for i := range p.Room.Walls {
		c.Walls = append(c.Walls, c.wallsOf(i)...)
	}
	return c
}

// Page is one page of the set before it is drawn; what it draws can run on to further pages.
type Page struct {
	Key  string // what other pages find it by
	Draw func(n int) []*scene.Page
}

// installPages lists the pages in their order.
func (c *Set) installPages() []Page {
	list := []Page{{"start", c.startPage}, {"days", c.dayPages}}
	for _, w := range c.Walls {
		for _, piece := range w.pieces {
			list = append(list, Page{piece.key(), func(n int) []*scene.Page { return c.wallPage(w, piece, n) }})
		}
	}
	return append(list, Page{"cuts", c.cutPages})
}

// Document draws all pages: once to learn how many they come to and where things stand, and once more with that.
func (c *Set) Document(list []Page) (*scene.Document, error) {
	p := c.Room.Project
	var pages []*scene.Page
	for range 2 {
		pages = pages[:0]
		for _, l := range list {
			c.first[l.Key] = len(pages) + 1
			pages = append(pages, l.Draw(len(pages)+1)...)
		}
		c.Total = len(pages)
	}
	d := &scene.Document{Title: p.Title, Author: p.By, Subject: c.Name, Date: folio.Date(c.Issued()), Pages: pages}
	var entries []folio.Entry
	for i, page := range pages {
		c.Describe(page, i+1, len(pages))
		entries = append(entries, folio.Entry{Page: page, Title: strconv.Itoa(i+1) + "  " + page.Title, Wall: folio.WallOn(page)})
	}
	d.Outline = folio.OutlineOf(c.Name, entries)
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("%s set: %w", c.Name, err)
	}
	return d, nil
}

// Say prints a length as on drawings, bare one in inches alone or millimetres.
func (c *Set) Say(l L) string { return c.Style.Format(l) }

func (c *Set) bare(l L) string { return c.Style.Inches(l) }

// inches is a short length with its mark: 17 1/2", 445.
func (c *Set) inches(l L) string {
	if c.Metric() {
		return c.Style.Inches(l)
	}
	return c.Style.Inches(l) + `"`
}

// Updown says how far something is from the level line.
func (c *Set) Updown(z L) string {
	if z >= c.Level {
		return "up " + c.inches(z-c.Level)
	}
	return "down " + c.inches(c.Level-z)
}

// pageWord is where something is shown, as "page 3".
func (c *Set) pageWord(key string) string { return "page " + strconv.Itoa(c.first[key]) }
