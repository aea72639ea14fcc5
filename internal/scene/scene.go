// Package scene is a drawing on paper before it is a file: pages of lines, shapes, text and pictures.
//
// What it does: it records items in the order they are drawn, measures text, finds what overlaps, and writes a page as plain text for
// comparison. Backends read the same pages and draw the same picture.
//
// Coordinates and units: page space. Millimetres on paper from the upper left corner, x right, y down. Angles are degrees, anticlockwise
// as a reader sees the page. There is no scale and no transform: whoever records has already come to paper.
//
// Order: items are drawn in the order recorded; a later one covers an earlier one.
//
// Not here: rooms, walls, dimensions as such (package draft), files (packages svg and pdf).
package scene

import "time"

// Document is a set of pages and what a file says about them.
type Document struct {
	Title   string
	Author  string
	Subject string
	// Date is written into files in place of a clock. The zero time is written as 2000-01-01, so that a file is the same on every run.
	Date        time.Time
	Pages       []*Page
	Elsewhere   []string // names of pages that other parts of a joined file have: links may lead to them
	Outline     []Entry
	Attachments []Attachment
}

// Entry is one line of the outline that a reader shows beside the pages.
type Entry struct {
	Title string
	Level int     // 0 outermost; at most one more than the entry before
	Page  string  // the name of the page it leads to
	Y     float64 // how far down that page
}

// Attachment is a file carried inside a document.
type Attachment struct {
	Name  string
	About string
	Type  string // such as "text/csv"
	Data  []byte
}

// Page is one side of paper.
type Page struct {
	Name   string // its number, such as "Z-201": label, link target and file name
	Title  string
	Width  float64
	Height float64
	Frame  Box    // text stays inside; the zero Box means the paper's edge
	Keep   []Area // stays empty
	Group         // the items
}

// Area is a named part of a page where nothing is drawn, such as the space for a stamp.
type Area struct {
	Name string
	Box
}

// NewPage returns an empty page.
func NewPage(name, title string, width, height float64) *Page {
	return &Page{Name: name, Title: title, Width: width, Height: height}
}

// Paper is the box of the whole page.
func (p *Page) Paper() Box { return Box{0, 0, p.Width, p.Height} }

// Reserve keeps part of the page empty: Overlaps reports whatever is drawn there.
func (p *Page) Reserve(name string, b Box) { p.Keep = append(p.Keep, Area{name, b}) }
