package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// mostPasses is how often a page is drawn for the sake of its list: a list at the head pushes the drawing down, and another mark
// can lose its place by that. After the last of them nothing is taken away any more.
const mostPasses = 5

// listHead is over the list of what has no place on the drawing.
const listHead = "Also here, from the left end of the wall and from the level of the room:"

// listHeadShort is the same where there is no room for it.
const listHeadShort = "Also here:"

// Of the list, in mm on the office page.
const (
	listLine = 4.5 // from line to line
	listGap  = 6   // between columns
	listStep = 3   // from one place that is tried to the next
	listAir  = 3
)

// listing is the list of what has no place on the drawings of a page.
type listing struct {
	list   []said
	number float64 // width of the numbers
	column float64 // width of a column, the gap beside it included
}

// listingOf gathers the list of some views.
func listingOf(k draft.Look, views []*View) listing {
	var l listing
	for _, e := range views {
		for _, s := range e.listed {
			if len(views) > 1 {
				s.words = e.Marks[e.F.Wall] + ": " + s.words
			}
			l.list = append(l.list, s)
		}
	}
	l.number = scene.Width(fmt.Sprint(len(l.list)), k.Small, true) + k.Of(2)
	for _, s := range l.list {
		l.column = math.Max(l.column, l.number+scene.Width(s.words, k.Small, false)+k.Of(listGap))
	}
	return l
}

// rows is how many lines the list has in so many columns.
func (l *listing) rows(columns int) int { return (len(l.list) + columns - 1) / columns }

// size is what the list takes in so many columns.
func (l *listing) size(k draft.Look, columns int) (w, h float64) {
	w = math.Max(l.column*float64(columns)-k.Of(listGap), scene.Width(listHeadShort, k.Small, true))
	return w, k.Small + k.Of(listLine)*float64(l.rows(columns)) + k.Of(0.8)
}

// draw letters the list in a box as wide as given, its heading at the upper left corner.
func (l *listing) draw(b *folio.Board, at scene.Point, columns int, wide float64) {
	k := b.Look
	head := scene.Text{At: at.Add(0, k.Small), String: listHead, Height: k.Small, Bold: true, Layer: scene.Notes}
	if scene.Width(listHead, k.Small, true) > wide {
		head.String = listHeadShort
	}
	b.Page.Text(head)
	b.Space.Take(head.Bounds())
	rows := l.rows(columns)
	for i, s := range l.list {
		at := head.At.Add(l.column*float64(i/rows), k.Of(listLine)*float64(i%rows+1))
		in := b.Page.Part(scene.Tag{Class: "listed", Data: []scene.Datum{item(s.key), folio.Datum("wall", s.wall)}})
		in.Text(scene.Text{At: at, String: fmt.Sprint(i + 1), Height: k.Small, Bold: true, Layer: scene.Notes})
		t := scene.Text{At: at.Add(l.number, 0), String: scene.Shorten(s.words, k.Small, false, math.Max(wide, l.column)-l.number), Height: k.Small, Layer: scene.Notes}
		in.Text(t)
		b.Space.Take(t.Bounds().Union(scene.BoxRound(at, 1, 1)))
	}
}

// atHead letters the list under the notes at the head of a page.
//
// Shape: the y under it.
func (l *listing) atHead(b *folio.Board, y float64) float64 {
	if len(l.list) == 0 {
		return y
	}
	k, wide := b.Look, b.NoteWidth()
	columns := max(int((wide+k.Of(listGap))/l.column), 1)
	at := scene.Pt(b.Field.X0+k.Of(6), y+k.Of(1.4))
	l.draw(b, at, columns, wide)
	_, h := l.size(k, columns)
	return at.Y + h
}

// beside letters the list in the first free place of a page that is drawn, and reports whether there is one: in as few columns as
// can be, from the foot of the field up, for under the drawings and beside their titles pages are emptiest, and from the left.
func (l *listing) beside(b *folio.Board, views []*View) bool {
	if len(l.list) == 0 {
		return true
	}
	k, space := b.Look, b.Space.Clone()
	for _, e := range views {
		box := e.Box()
		box.X0, box.X1 = box.X0-e.wide(e.ghostLeft), box.X1+e.wide(e.ghostRight)
		space.Take(box, e.left.Box(k), e.right.Box(k), e.above.Box(k), e.below.Box(k))
	}
	for columns := 1; columns <= len(l.list); columns++ {
		w, h := l.size(k, columns)
		if w > b.Field.W()-k.Of(8) {
			return false
		}
		for y := b.Field.Y1 - k.Of(3) - h; y > b.Field.Y0+k.Of(4); y -= k.Of(listStep) {
			for x := b.Field.X0 + k.Of(4); x+w < b.Field.X1-k.Of(4); x += k.Of(listStep) {
				if space.Free(scene.BoxAt(x, y, w, h), k.Of(listAir)) {
					l.draw(b, scene.Pt(x, y), columns, w)
					return true
				}
			}
		}
	}
	return false
}
