package elevation

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Pages are the pages with the views of all walls. Walls in a row that stand side by side on a page at the scale
// that each would have alone share it.
func Pages(s *folio.Set) []*folio.Leaf {
	var list []*folio.Leaf
	for _, row := range folio.Planned(s, "rows", func() [][]wallView { return planRows(s) }) {
		l := viewPage(s, row)
		if list = append(list, l); row[0].more != "" {
			list = append(list, morePage(row, l))
		}
	}
	return list
}

// planRows are the views of each page, whatever the numbers of the pages.
func planRows(s *folio.Set) [][]wallView {
	cuts := CutWalls(s)
	var rows [][]wallView
	var row []wallView
	flush := func() {
		if len(row) > 0 {
			rows = append(rows, row)
		}
		row = nil
	}
	for _, f := range s.Faces {
		pieces := cuts[f.Wall]
		if len(pieces) > 1 {
			flush()
			for i, p := range pieces {
				rows = append(rows, []wallView{{f: f, cut: p, piece: i, of: len(pieces)}})
			}
			continue
		}
		v := wallView{f: f, cut: pieces[0], of: 1}
		v.wide = viewWide(s, v)
		sum := v.wide
		for _, o := range row {
			sum += o.wide
		}
		if len(row) > 0 && (row[0].cut.Scale != v.cut.Scale || row[0].cut.unnoted != v.cut.unnoted || sum > s.Paper.Field.W-s.Look.Of(6) || !standTogether(s, append(slices.Clone(row), v))) {
			flush()
		}
		row = append(row, v)
	}
	flush()
	level(s, rows)
	for i, row := range rows {
		if row[0].cut.unnoted || crowded(s, row) {
			row[0].more = fmt.Sprintf("list %d", i)
			row[0].cut.unnoted = true // its notes go with its list
		}
	}
	return rows
}

// level brings the floor lines of all pages to one height, that of the page whose drawings reach highest over theirs: walls are
// then compared by turning a page. A page whose drawings have no room for it keeps its own, and so does one at another scale.
func level(s *folio.Set, rows [][]wallView) {
	floors := map[int64]float64{}
	for _, row := range rows {
		_, floor := together(s, row)
		scale := row[0].cut.Scale
		floors[scale] = math.Max(floors[scale], floor)
	}
	for _, row := range rows {
		if floor := floors[row[0].cut.Scale]; standOn(s, row, floor) {
			row[0].floor = floor
		}
	}
}

// together composes the views of a row on a page that is thrown away, and gives the height of their common floor line.
func together(s *folio.Set, row []wallView) (list []*View, floor float64) {
	for _, v := range row {
		e := trial(s, v)
		e.shared = len(row) > 1
		list = append(list, e)
	}
	notes := headNotes(list[0].Board, list)
	for _, e := range list {
		e.compose(notes)
		floor = math.Max(floor, e.V.Origin.Y)
	}
	return list, floor
}

// standTogether reports whether the views of a row have room over the foot of a page with their floors in line.
func standTogether(s *folio.Set, row []wallView) bool { return standOn(s, row, 0) }

// standOn reports the same of a floor line no higher on the page than one given.
func standOn(s *folio.Set, row []wallView, least float64) bool {
	list, floor := together(s, row)
	for _, e := range list {
		e.V.Origin.Y = math.Max(floor, least)
		if e.spare(e.around()) < 0 {
			return false
		}
	}
	return true
}

// thrownAway is a page as large as any other that nobody gets.
func thrownAway(s *folio.Set) *folio.Board {
	return s.Open(&folio.Leaf{Number: s.Paper.PageNumber(int(folio.Elevations), 1)})
}

// mostListed is more than what a list at the head of a page ever takes of its height, in mm on the office page.
const mostListed = 40

// linesSpare is left over in that, since numbers of pages are not known yet and lines with them are longer.
const linesSpare = 4.5

// crowded reports whether a list at the head of a page would push its views off it: it then stands on a page of its own.
func crowded(s *folio.Set, row []wallView) bool {
	list, _ := together(s, row)
	for _, e := range list {
		if e.spare(e.around()) < e.Look.Of(mostListed) {
			return !listsFit(s, row)
		}
	}
	return false
}

// morePage is the page of the notes and the list of another.
func morePage(row []wallView, first *folio.Leaf) *folio.Leaf {
	l := &folio.Leaf{Title: first.Title + ": NOTES", Scale: "none", Wall: row[0].f.Wall, Abouts: []string{row[0].more}}
	l.Draw = func(b *folio.Board) {
		p := thrownAway(b.Set)
		p.Leaf = first
		k := b.Look
		drawn := views(p, row)
		list := listingOf(k, drawn, b.Field.W()-k.Of(16))
		at := scene.Pt(b.Field.X0+k.Of(6), Notes(b, pageNotes(drawn))+k.Of(4))
		if len(list.list) > 0 {
			list.draw(b, at, 1, b.Field.W()-k.Of(16))
		}
	}
	return l
}

// listsFit reports whether the views of a row have room on a page also with what stands in a list at its head, which is known only
// once they are drawn: so they are, on a page that is thrown away.
func listsFit(s *folio.Set, row []wallView) bool {
	plan := *s
	plan.List = nil
	b := thrownAway(&plan)
	b.Leaf.Wall = row[0].f.Wall
	list := views(b, row)
	if !slices.ContainsFunc(list, func(e *View) bool { return len(e.listed) > 0 }) {
		return true // a full page, and nothing to list
	}
	for _, e := range list {
		if e.spare(e.around()) < e.Look.Of(linesSpare) {
			return false
		}
	}
	return true
}

// spare is what is left under a view, its dimensions and its title; negative where they have no room.
func (e *View) spare(all scene.Box) float64 {
	return e.Field.Y1 - e.Look.Of(1) - all.Y1 - e.titleHigh() - e.titleLow()
}

// wallView is one view of a page: a wall, or a piece of one.
type wallView struct {
	f         *face.Face
	cut       Cut
	piece, of int
	wide      float64 // that it takes with its dimensions and its title
	floor     float64 // of the first view of a page: the floor line of all pages; 0: of this one alone
	more      string  // of the first view of a page: what the page is looked up by that has its list; "" where it has it itself
}

// viewWide is how wide a view comes out with all that belongs to it.
func viewWide(s *folio.Set, v wallView) float64 {
	e := trial(s, v)
	e.compose(0)
	k := s.Look
	return math.Max(e.around().W()+k.Of(8), e.title().Wide(k)+k.Of(14))
}

// longestTitle is the longest title of a page that a title block has room for: of longer ones the marks of the walls stand for their
// names, which stand in full under the views.
const longestTitle = 44

// viewPage is the page of some views.
func viewPage(s *folio.Set, row []wallView) *folio.Leaf {
	first := row[0]
	l := &folio.Leaf{Scale: draft.Ratio(first.cut.Scale, s.Metric()), Wall: first.f.Wall, About: folio.WallKey(first.f.Wall)}
	var names []string
	for _, v := range row {
		names = append(names, strings.ToUpper(v.f.W.Name))
		l.Abouts = append(l.Abouts, folio.WallKey(v.f.Wall))
		l.Walls = append(l.Walls, v.f.Wall)
		l.Shown = append(l.Shown, folio.Stretch{Wall: v.f.Wall, From: v.cut.From, To: v.cut.To})
	}
	l.Title = "ELEVATION: " + names[0]
	switch {
	case first.of > 1:
		l.Title += fmt.Sprintf(", %d OF %d", first.piece+1, first.of)
		if len(l.Title) > longestTitle {
			l.Title = fmt.Sprintf("ELEVATION %s, %d OF %d", s.Marks[first.f.Wall], first.piece+1, first.of)
		}
	case len(row) > 1:
		l.Title = "ELEVATIONS: " + strings.Join(names, ", ")
		if len(l.Title) > longestTitle {
			var marks []string
			for _, v := range row {
				marks = append(marks, s.Marks[v.f.Wall])
			}
			l.Title = "ELEVATIONS " + strings.Join(marks, ", ")
		}
	case len(l.Title) > longestTitle:
		l.Title = "ELEVATION " + s.Marks[first.f.Wall]
	}
	l.Draw = func(b *folio.Board) { views(b, row) }
	return l
}

// views draws the views of a page. What finds no place on the drawings goes into a list, beside them where it has room, else at their
// head: the page is then drawn again with it. What chains have too is left out of it before it goes to the head, for the page was
// planned without that.
func views(b *folio.Board, row []wallView) []*View {
	listed, crowded, atHead := make([][]said, len(row)), false, false
	for pass := 1; ; pass++ {
		drawn, space := len(b.Page.Items), b.Space.Clone()
		more := false
		list := sideBySide(b, row, listed, crowded, atHead)
		for i, e := range list {
			more = more || len(e.dropped) > 0
			listed[i] = append(listed[i], e.dropped...)
		}
		if !more && row[0].more != "" {
			return list
		}
		if !more && !atHead {
			l := listingOf(b.Look, list, b.Field.W()-b.Look.Of(8))
			if more = !l.beside(b, list); more {
				crowded, atHead = true, !withoutTies(listed)
			}
		}
		if !more || pass == mostPasses {
			return list
		}
		b.Page.Items = b.Page.Items[:drawn]
		*b.Space = *space
	}
}

// withoutTies takes out of some lists what chains have too, and reports whether there was any.
func withoutTies(listed [][]said) (fewer bool) {
	for i := range listed {
		n := len(listed[i])
		listed[i] = slices.DeleteFunc(listed[i], func(s said) bool { return strings.HasPrefix(s.key, "ties ") })
		fewer = fewer || len(listed[i]) < n
	}
	return fewer
}

// sideBySide draws the views of a page side by side, their floors in line.
func sideBySide(b *folio.Board, row []wallView, listed [][]said, crowded, atHead bool) []*View {
	sum := 0.0
	for _, v := range row {
		sum += v.wide
	}
	var list []*View
	x := b.Field.X0
	for i, v := range row {
		at := *b
		if len(row) > 1 {
			w := v.wide + (b.Field.W()-sum)/float64(len(row))
			at.Field.X0, at.Field.X1 = x, x+w
			x += w
		}
		e := &View{Board: &at, F: v.f, From: v.cut.From, To: v.cut.To, Piece: v.piece, Of: v.of, middle: at.Field.Centre().X, shared: len(row) > 1, listed: listed[i]}
		e.crowded = crowded && row[0].more == ""
		if i == 0 {
			e.more = v.more
		} else {
			e.before = list[i-1].before + len(list[i-1].listed)
		}
		if len(row) == 1 {
			e.middle = b.Paper.Elevation.Middle
		}
		e.be(v.cut)
		list = append(list, e)
	}
	notes := headNotes(b, list)
	floor := row[0].floor
	if atHead {
		l := listingOf(b.Look, list, b.NoteWidth())
		notes = l.atHead(b, notes)
	}
	for _, e := range list {
		e.compose(notes)
		floor = math.Max(floor, e.V.Origin.Y)
	}
	line := 0.0
	for _, e := range list {
		e.V.Origin.Y = floor
		e.around()
		line = math.Max(line, e.titleY())
	}
	for _, e := range list {
		e.line = line
		e.draw()
	}
	if len(list) > 1 {
		list[0].sharedBar()
	}
	for _, e := range list {
		e.labels()
	}
	for _, e := range list {
		e.letters()
	}
	return list
}
