package pages

import (
	"fmt"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// Install draws the install set, to tape on the wall: the room start page, one wall or piece of one per page, the cut
// list. Black and white, to be read at arm's length.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Install(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := newCrew(p, t, "Install")
	return c.document(c.installPages())
}

// crewSet is the install set while it is made: what every page of it needs to know.
type crewSet struct {
	set
	u     float64 // 1 on letter paper, more where an office's text is larger
	level L
	half  L // half an overlap
	total int
	walls []*crewWall
	first map[string]int // page on which something is first shown
}

// newCrew prepares a set for the crew.
func newCrew(p *layout.Plan, t *paper.Template, name string) *crewSet {
	c := &crewSet{set: set{plan: p, room: p.Room, style: p.Style, paper: t, look: draft.Office(), name: name}, u: max(t.Unit(), 1),
		level: p.Room.Space.LevelLine, half: p.Room.Veneer.Overlap.HalfDown(), first: map[string]int{}}
	c.look.Unit = c.u
	for i := range p.Room.Walls {
		c.walls = append(c.walls, c.wallsOf(i)...)
	}
	return c
}

// crewPage is one page of the set before it is drawn; what it draws can run on to further pages.
type crewPage struct {
	key  string // what other pages find it by
	draw func(n int) []*scene.Page
}

// installPages lists the pages in their order.
func (c *crewSet) installPages() []crewPage {
	list := []crewPage{{"start", c.startPage}, {"days", c.dayPages}}
	for _, w := range c.walls {
		for _, piece := range w.pieces {
			list = append(list, crewPage{piece.key(), func(n int) []*scene.Page { return c.wallPage(w, piece, n) }})
		}
	}
	return append(list, crewPage{"cuts", c.cutPages})
}

// document draws all pages: once to learn how many they come to and where things stand, and once more with that.
func (c *crewSet) document(list []crewPage) (*scene.Document, error) {
	p := c.room.Project
	var pages []*scene.Page
	for range 2 {
		pages = pages[:0]
		for _, l := range list {
			c.first[l.key] = len(pages) + 1
			pages = append(pages, l.draw(len(pages)+1)...)
		}
		c.total = len(pages)
	}
	d := &scene.Document{Title: p.Title, Author: p.By, Subject: c.name, Date: date(c.issued()), Pages: pages}
	var entries []entry
	for i, page := range pages {
		c.describe(page, i+1, len(pages))
		entries = append(entries, entry{page, strconv.Itoa(i+1) + "  " + page.Title, wallOn(page)})
	}
	d.Outline = outlineOf(c.name, entries)
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("%s set: %w", c.name, err)
	}
	return d, nil
}

// say prints a length as on drawings, bare one in inches alone or millimetres.
func (c *crewSet) say(l L) string { return c.style.Format(l) }

func (c *crewSet) bare(l L) string { return c.style.Inches(l) }

// inches is a short length with its mark: 17 1/2", 445.
func (c *crewSet) inches(l L) string {
	if c.metric() {
		return c.style.Inches(l)
	}
	return c.style.Inches(l) + `"`
}

// updown says how far something is from the level line.
func (c *crewSet) updown(z L) string {
	if z >= c.level {
		return "up " + c.inches(z-c.level)
	}
	return "down " + c.inches(c.level-z)
}

// page is where something is shown, as "page 3".
func (c *crewSet) page(key string) string { return "page " + strconv.Itoa(c.first[key]) }
