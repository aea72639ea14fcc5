// Package form draws a blank form on which a room is measured: a page for the room, then a page for each wall, with a box for every
// key that the room file asks of it, in the file's own words and order.
//
// Coordinates and units: paper in millimetres, y down; sizes are for letter paper and grow with an office's text.
//
// Order: the tables of the room file as they stand in it, walls from left to right.
//
// Not here: what keys mean and which words they take (package room); the words of the page (package words).
package form

import (
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/source"
)

// Draw draws the form for a number of walls on a paper, in the words of its template.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Draw(t *paper.Template, walls int) (*scene.Document, error) {
	r := &room.Room{Project: room.Project{Title: t.Words.Say("form.title")}}
	p := &layout.Plan{Room: r, Style: length.StyleOf(length.Inches)}
	s := folio.NewTapedSet(p, t, "form")
	list := []folio.TapedPage{{Key: "room", Draw: func(n int) []*scene.Page { return []*scene.Page{roomPage(s, n)} }}}
	for i := range walls {
		list = append(list, folio.TapedPage{Draw: func(n int) []*scene.Page { return []*scene.Page{wallPage(s, n, i+1)} }})
	}
	return s.Document(list)
}

// board is a page of the form while it is drawn.
type board struct {
	*folio.Taped
	s *folio.TapedSet
	g *scene.Group
	u float64
}

// open makes a page ready.
func open(s *folio.TapedSet, n int, title string, lines [2]string) *board {
	b := &board{Taped: s.Tape(n, folio.Sheet{Name: "form", Title: title, Lines: lines, Portrait: true, Unissued: true}), s: s, u: s.Unit}
	b.g = b.Page.Part(scene.Tag{Class: "form"})
	return b
}

// Widths of lines, heights of letters and air, in mm on letter paper.
const (
	fine    = 0.25
	heavy   = 0.5
	letters = folio.TapedSmall
	leading = 4.2 // from one line of a caption to the next
	air     = 1.4 // from the edge of a box to its caption
	gap     = 3   // between boxes
)

// blank is one box to fill in: the key of the room file, and what is said of it under a word of the form's section of the tables.
type blank struct {
	key, word string
	wide      float64 // its share of a row, 0: 1
}

// ask letters what a box asks for at its head: the key, then what it means, beside it or under it.
func (b *board) ask(box scene.Box, x blank) {
	u, y := b.u, box.Y0+(air+letters)*b.u
	left, wide := box.X0+air*u, box.W()-2*air*u
	words := b.s.Words.Of("form", x.word)
	if x.key != "" {
		b.g.Text(scene.Text{At: scene.Pt(left, y), String: x.key, Height: draft.Squeeze(x.key, letters*u, 2*u, true, wide), Bold: true, Layer: scene.Notes})
		w := scene.Width(x.key, letters*u, true) + 1.6*u
		if w+scene.Width(words, letters*u, false) <= wide {
			left += w
		} else {
			y += leading * u
		}
	}
	for _, line := range scene.Wrap(words, letters*u, false, wide) {
		b.g.Text(scene.Text{At: scene.Pt(left, y), String: line, Height: letters * u, Layer: scene.Notes})
		y += leading * u
	}
}

// row draws boxes side by side, as wide as their shares.
func (b *board) row(box scene.Box, list ...blank) {
	all := 0.0
	for _, x := range list {
		all += max(x.wide, 1)
	}
	at := box.X0
	for _, x := range list {
		w := box.W() * max(x.wide, 1) / all
		one := scene.Box{X0: at, Y0: box.Y0, X1: at + w, Y1: box.Y1}
		b.g.Rect(one, scene.Pen(scene.Frame, fine))
		b.ask(one, x)
		at += w
	}
	b.g.Rect(box, scene.Pen(scene.Frame, heavy))
}

// choices are the words that a key of the room file takes, to be ringed.
func (b *board) choices(box scene.Box, table, key string) {
	b.g.Rect(box, scene.Pen(scene.Frame, fine))
	b.ask(box, blank{key: key, word: "ring"})
	u, y := b.u, box.Y0+(air+letters+leading+1.2)*b.u
	if scene.Width(key, letters*u, true)+1.6*u+scene.Width(b.s.Words.Of("form", "ring"), letters*u, false) > box.W()-2*air*u {
		y += leading * u
	}
	x := box.X0 + air*u
	for _, word := range wordsOf(table, key) {
		w := scene.Width(word, letters*u, false)
		if x > box.X0+air*u && x+w > box.X1-air*u {
			x, y = box.X0+air*u, y+(leading+1.2)*u
		}
		b.g.Text(scene.Text{At: scene.Pt(x, y), String: word, Height: letters * u, Layer: scene.Notes})
		x += w + 4.5*u
	}
}

// wordsOf are the words that a key takes.
func wordsOf(table, key string) []string {
	t, _ := room.Schema.Table(table)
	for _, k := range t.Keys {
		if k.Name == key {
			return k.Words
		}
	}
	panic("form: no key " + key + " of " + table)
}

// keysOf are the boxes of a table's keys, each under its own word.
func keysOf(table string, keys ...string) []blank {
	t, _ := room.Schema.Table(table)
	var list []blank
	for _, k := range t.Keys { // in the order of the file
		for _, name := range keys {
			if k.Name == name {
				list = append(list, blank{key: name, word: word(table, k)})
			}
		}
	}
	if len(list) != len(keys) {
		panic("form: not all keys are of " + table)
	}
	return list
}

// word is what a key is said by in the tables: some keys mean another thing in another table.
func word(table string, k source.Key) string {
	return table[strings.LastIndexByte(table, '.')+1:] + "_" + k.Name
}

// squares draws a light grid to sketch on.
func (b *board) squares(box scene.Box, pitch float64) {
	pen := scene.Pen(scene.Frame, 0.13)
	pen.Colour = scene.Grey(0.78)
	for x := box.X0 + pitch; x < box.X1-pitch/4; x += pitch {
		b.g.Line(scene.Pt(x, box.Y0), scene.Pt(x, box.Y1), pen)
	}
	for y := box.Y0 + pitch; y < box.Y1-pitch/4; y += pitch {
		b.g.Line(scene.Pt(box.X0, y), scene.Pt(box.X1, y), pen)
	}
	b.g.Rect(box, scene.Pen(scene.Frame, heavy))
}

// grid draws a table to fill in, and gives the foot of its head.
func (b *board) grid(box scene.Box, title string, list []blank, rows int) {
	u := b.u
	b.g.Text(scene.Text{At: scene.Pt(box.X0, box.Y0+3.6*u), String: title, Height: folio.TapedText * u, Bold: true, Layer: scene.Notes})
	box.Y0 += 5.4 * u
	widths := make([]float64, len(list))
	rest := box.W()
	for i, x := range list {
		widths[i] = scene.Width(x.key, letters*u, true)
		for _, word := range strings.Fields(b.s.Words.Of("form", x.word)) {
			widths[i] = max(widths[i], scene.Width(word, letters*u, false))
		}
		widths[i] += 2 * air * u
		rest -= widths[i]
	}
	head := 0.0
	for i := range list {
		widths[i] += rest / float64(len(list))
		lines := scene.Wrap(b.s.Words.Of("form", list[i].word), letters*u, false, widths[i]-2*air*u)
		head = max(head, (2*air+letters+leading*float64(len(lines)))*u)
	}
	at := box.X0
	for i, x := range list {
		one := scene.Box{X0: at, Y0: box.Y0, X1: at + widths[i], Y1: box.Y0 + head}
		b.head(one, x)
		if at += widths[i]; i < len(list)-1 {
			b.g.Line(scene.Pt(at, box.Y0), scene.Pt(at, box.Y1), scene.Pen(scene.Frame, fine))
		}
	}
	for k := range rows {
		y := box.Y0 + head + (box.H()-head)*float64(k)/float64(rows)
		b.g.Line(scene.Pt(box.X0, y), scene.Pt(box.X1, y), scene.Pen(scene.Frame, fine))
	}
	b.g.Rect(box, scene.Pen(scene.Frame, heavy))
}

// head letters the head of a column: the key, and under it what it means.
func (b *board) head(box scene.Box, x blank) {
	u, y := b.u, box.Y0+(air+letters)*b.u
	b.g.Text(scene.Text{At: scene.Pt(box.X0+air*u, y), String: x.key, Height: letters * u, Bold: true, Layer: scene.Notes})
	for _, line := range scene.Wrap(b.s.Words.Of("form", x.word), letters*u, false, box.W()-2*air*u) {
		y += leading * u
		b.g.Text(scene.Text{At: scene.Pt(box.X0+air*u, y), String: line, Height: letters * u, Layer: scene.Notes})
	}
}
