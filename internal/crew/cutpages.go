package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/card"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// rowsOnPage is how many sheets stand on one page of the cut list.
const rowsOnPage = 18

// Heights on the pages of the cut list, in mm on letter paper.
const (
	cutHigh    = 12.4 // a sheet to cut
	firstHigh  = 8.0  // the words over the first sheets
	thenHigh   = 9.4  // the words over the others
	struckHigh = 8.4  // what is not cut
	notCutHigh = 8.0  // the words over it
	stockPitch = 6.0  // from one line of stock lengths to the next
	stockUnder = 2.0  // under the last of them
	tailGap    = 1.0  // between the two
	notesOver  = 4.0  // over what the walls' pages have no room for
	cutHeavy   = 1.0  // width of the line under a group
)

// cutList is the cut list while it is drawn, page by page.
type cutList struct {
	set       *Set
	n         int // number of its first page
	out       []*scene.Page
	b         *board // the page being drawn, nil before the first
	g         *scene.Group
	y, bottom float64
	count     int             // sheets on this page
	first     int             // sheets that are cut before all others
	closes    map[string]bool // rows that end what goes up together
}

// cutPages draws the cut list: the first three on top, then all others, then what is not cut, then how many of which
// stock length.
func (c *Set) cutPages(n int) []*scene.Page {
	rows := c.cutRows()
	l := &cutList{set: c, n: n, closes: c.closesGroup(rows)}
	l.first = c.firstCut(rows)
	l.register(c.registerLines())
	for i, r := range rows {
		l.sheet(i, r, i == len(rows)-1)
	}
	if l.b == nil {
		l.fresh()
	}
	struck, stock := c.struckRows(), c.stockLengths(rows)
	l.whole(notCutHigh + float64(len(struck))*struckHigh + tailGap + float64(len(stock))*stockPitch + stockUnder)
	for i, r := range struck {
		l.struck(i, r)
	}
	l.y += tailGap * c.Unit
	for i, line := range stock {
		l.stock(i, line)
	}
	l.notes()
	return l.out
}

// notesKey is where a wall's page finds what it has no room for.
func (s *strip) notesKey() string { return "notes " + s.lead().key() }

// notes letters what the pages of the walls have no room for, wall by wall.
func (l *cutList) notes() {
	c := l.set
	type entry struct {
		line string
		bold bool
		key  string // of what begins with it
	}
	var list []entry
	for _, p := range c.inOrder() {
		for _, n := range p.over {
			list = append(list, entry{p.title() + ", " + strings.ToLower(n.head), true, p.notesKey()})
			for _, line := range n.lines {
				for _, part := range scene.Wrap(line, folio.TapedText*c.Unit, false, l.b.Page.Frame.W()-6*c.Unit) {
					list = append(list, entry{part, false, ""})
				}
			}
		}
	}
	if list == nil {
		return
	}
	l.whole(notesOver + float64(len(list))*stockPitch + stockUnder)
	l.y += notesOver * c.Unit
	for _, e := range list {
		l.more((stockPitch + stockUnder) * c.Unit)
		if e.key != "" {
			c.First(e.key, l.n+len(l.out)-1)
		}
		l.y += stockPitch * c.Unit
		l.words(l.y, e.line, e.bold)
	}
}

// cutKey is what other pages find the row of a sheet by.
func cutKey(s *layout.Sheet, run string) string { return card.RowKey(run, s.Place, s.Course) }

// rowsWord names the pages of the cut list on which the rows of some sheets stand.
func (c *Set) rowsWord(sheets []*layout.Sheet) string {
	var keys []string
	for _, s := range sheets {
		if x := c.Count.CutOf(s); x != nil {
			keys = append(keys, card.RowKey(x.Run, x.Place, x.Course))
		}
	}
	if words := c.PagesWord(keys); words != "" {
		return words
	}
	return c.PageWord("cuts")
}

// sloping are those of some sheets whose head or foot slopes.
func (c *Set) sloping(sheets []*layout.Sheet) []*layout.Sheet {
	return slices.DeleteFunc(slices.Clone(sheets), func(s *layout.Sheet) bool { return c.cards[s] == nil || len(c.cards[s].Rakes) == 0 })
}

// whole begins a page where what is so high has no room on this one but has it on a page of its own: the end of the list is
// read as one. What is higher goes on from page to page.
func (l *cutList) whole(high float64) {
	if high *= l.set.Unit; high <= l.b.Area.H() {
		l.more(high)
	}
}

// fresh begins a page.
func (l *cutList) fresh() {
	c := l.set
	l.b = c.open(l.n+len(l.out), folio.Sheet{Title: c.Words.Both("list.title"), Lines: [2]string{c.Place(), c.cutWords()}, Portrait: true})
	l.b.Page.Title = c.Words.Say("list.title")
	l.g = l.b.Page.Part(scene.Tag{Class: "cut-list"})
	l.y, l.bottom, l.count = l.b.Area.Y0, l.b.Area.Y1, 0
	l.out = append(l.out, l.b.Page)
}

// more begins a page where what is so high has no room on this one.
func (l *cutList) more(high float64) {
	if l.y+high > l.bottom {
		l.fresh()
		l.y += 2 * l.set.Unit
	}
}

// register letters at the head of the list where sheets are marked before they are cut, and what their lengths hold.
func (l *cutList) register(lines []string) {
	u := l.set.Unit
	l.fresh()
	if len(lines) > 0 {
		l.words(l.y+6*u, l.set.Words.Say("list.register"), true)
		l.y += 6 * u
	}
	for _, line := range append(slices.Clone(lines), l.set.trimmed()) {
		for _, part := range scene.Wrap(line, folio.TapedText*u, false, l.b.Page.Frame.W()-6*u) {
			l.y += stockPitch * u
			l.words(l.y, part, false)
		}
	}
	l.y += 2.4 * u
	l.rule(folio.TapedFine)
}

// words letters a line at the left of the page.
func (l *cutList) words(y float64, s string, bold bool) {
	l.b.Word(l.g, scene.Pt(l.b.Page.Frame.X0+3*l.set.Unit, y), s, folio.TapedText*l.set.Unit, bold, scene.Start)
}

// rule draws a line across the page.
func (l *cutList) rule(width float64) {
	l.g.HLine(l.b.Page.Frame.X0, l.b.Page.Frame.X1, l.y, scene.Pen(scene.Frame, width))
}

// sheet draws the i-th sheet to cut, with the words over the first ones and over the others.
func (l *cutList) sheet(i int, r cutRow, last bool) {
	u := l.set.Unit
	if l.b == nil {
		l.fresh()
	}
	high := l.b.rowHigh(r)
	over := 0.0 // what stands over the row
	switch {
	case i == 0:
		over = 2 * firstHigh * u
	case i == l.first && l.count > 0:
		over = thenHigh * u
	}
	if l.count == rowsOnPage || l.count > 0 && l.y+over+high > l.bottom {
		l.fresh()
		if i > 0 {
			l.y = l.b.cutHead(l.g, l.y)
		}
	}
	switch {
	case i == 0:
		l.words(l.y+6*u, l.set.Words.Both("list.first"), true)
		l.y = l.b.cutHead(l.g, l.y+firstHigh*u)
	case i == l.first && l.count > 0:
		l.words(l.y+7*u, l.set.Words.Both("list.then"), true)
		l.y += thenHigh * u
		l.rule(folio.TapedFine)
	}
	l.set.First(cutKey(r.sheet, r.run), l.n+len(l.out)-1)
	l.b.cutRow(l.g, r, l.y, cutHigh*u)
	l.y += high
	l.count++
	width := folio.TapedFine
	if i+1 == l.first || l.closes[cutKey(r.sheet, r.run)] || last {
		width = cutHeavy
	}
	if l.y < l.b.Page.Frame.Y1-0.5*u { // not on the frame
		l.rule(width)
	}
}

// struck draws the i-th row of what is not cut.
func (l *cutList) struck(i int, r cutRow) {
	u := l.set.Unit
	if i == 0 {
		l.more((notCutHigh + struckHigh) * u)
		l.words(l.y+6.4*u, l.set.Words.Both("list.not_cut"), true)
		l.y += notCutHigh * u
	}
	l.more(struckHigh * u)
	l.b.struckRow(l.g, r, l.y, struckHigh*u)
	l.y += struckHigh * u
}

// stock letters the i-th line of how many sheets come out of which stock length.
func (l *cutList) stock(i int, line string) {
	for _, part := range scene.Wrap(line, folio.TapedText*l.set.Unit, i == 0, l.b.Page.Frame.W()-6*l.set.Unit) {
		l.more((stockPitch + stockUnder) * l.set.Unit)
		l.y += stockPitch * l.set.Unit
		l.words(l.y, part, i == 0)
	}
}
