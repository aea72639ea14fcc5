package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// mostPasses is how often a page is drawn for the sake of its list: a list at the head pushes the drawing down, and another mark
// can lose its place by that. After the last of them nothing is taken away any more.
const mostPasses = 6

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
	list   []listed
	lines  int     // that all of it takes
	number float64 // width of the letters
	column float64 // width of a column, the gap beside it included
}

// listed is one thing of the list, on as many lines as it takes.
type listed struct {
	said
	lines []string
}

// listingOf gathers the list of some views, no column wider than so much.
func listingOf(k draft.Look, views []*View, most float64) listing {
	var l listing
	var all []said
	for _, e := range views {
		for _, s := range e.listed {
			if len(views) > 1 {
				s.words = e.Marks[e.F.Wall] + ": " + s.words
			}
			all = append(all, s)
		}
	}
	for i := range all {
		l.number = math.Max(l.number, scene.Width(letterOf(i), k.Small, true)+k.Of(2))
	}
	for _, s := range all {
		lines := draft.Folded(s.words, k.Small, false, most-l.number)
		l.list = append(l.list, listed{s, lines})
		l.lines += len(lines)
		for _, line := range lines {
			l.column = math.Max(l.column, l.number+scene.Width(line, k.Small, false)+k.Of(listGap))
		}
	}
	return l
}

// rows is how many lines the list has in so many columns: what takes several lines stands in one column.
func (l *listing) rows(columns int) int {
	rows := (l.lines + columns - 1) / columns
	for !l.stands(rows, columns) {
		rows++
	}
	return rows
}

// stands reports whether the list stands in columns of so many lines.
func (l *listing) stands(rows, columns int) bool {
	column, row := 0, 0
	for _, s := range l.list {
		if row+len(s.lines) > rows {
			column, row = column+1, 0
		}
		row += len(s.lines)
	}
	return column < columns && (len(l.list) == 0 || rows >= longest(l.list))
}

// longest is the most lines that one thing takes.
func longest(list []listed) int {
	n := 0
	for _, s := range list {
		n = max(n, len(s.lines))
	}
	return n
}

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
	column, row := 0, 0
	for i, s := range l.list {
		if row+len(s.lines) > rows {
			column, row = column+1, 0
		}
		in := b.Page.Part(scene.Tag{Class: "listed", Data: []scene.Datum{item(s.key), folio.Datum("wall", s.wall), folio.Datum("letter", letterOf(i))}})
		for j, line := range s.lines {
			at := head.At.Add(l.column*float64(column), k.Of(listLine)*float64(row+j+1))
			if j == 0 {
				in.Text(scene.Text{At: at, String: letterOf(i), Height: k.Small, Bold: true, Layer: scene.Notes})
			}
			t := scene.Text{At: at.Add(l.number, 0), String: line, Height: k.Small, Layer: scene.Notes}
			in.Text(t)
			b.Space.Take(t.Bounds().Union(scene.BoxRound(at, 1, 1)))
		}
		row += len(s.lines)
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
	for columns := 1; columns <= l.lines; columns++ {
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
