package form

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// roomRows are the boxes of the room's page, row by row: the tables of the file from [project] to [site].
func roomRows() []struct {
	table string
	keys  []string
} {
	return []struct {
		table string
		keys  []string
	}{
		{"project", []string{"title", "number", "room"}},
		{"project", []string{"place", "for", "by"}},
		{"project", []string{"measured", "units", "tag"}},
		{"veneer", []string{"species", "cut", "match"}},
		{"veneer", []string{"gross_width", "overlap", "length"}},
		{"flitch", []string{"number", "sheets", "damaged"}},
		{"room", []string{"closed", "level_line", "casing"}},
		{"room", []string{"base", "crown", "behind"}},
		{"site", []string{"temperature", "humidity", "wall"}},
		{"site.board", []string{"meter", "reading", "limit"}},
	}
}

// tableWide is kept beside each row for the name of its table.
const tableWide = 25.0

// roomPage is the page of the room: what holds for all walls, and room for a plan.
func roomPage(s *folio.TapedSet, n int) *scene.Page {
	w := s.Words
	b := open(s, n, w.Say("form.title"), [2]string{w.Say("form.room_how"), w.Say("form.keys_how")})
	u := b.u
	area := b.Area.Inset(gap * u)
	left := scene.Box{X0: area.X0, Y0: area.Y0, X1: area.X1, Y1: area.Y0 + area.H()*0.66}
	rows := roomRows()
	last := ""
	for i, r := range rows {
		y := left.Y0 + left.H()*float64(i)/float64(len(rows))
		row := scene.Box{X0: left.X0 + tableWide*u, Y0: y, X1: left.X1, Y1: y + left.H()/float64(len(rows)) - 1.6*u}
		if r.table != last {
			b.g.Text(scene.Text{At: scene.Pt(left.X0, y+(air+letters)*u), String: header(r.table), Height: letters * u, Bold: true, Layer: scene.Notes})
		}
		last = r.table
		b.row(row, keysOf(r.table, r.keys...)...)
	}
	plan := scene.Box{X0: area.X0, Y0: left.Y1 + gap*u, X1: area.X1, Y1: area.Y1}
	y := plan.Y0
	for _, line := range scene.Wrap(w.Say("form.plan"), folio.TapedText*u, false, plan.W()) {
		y += folio.TapedText * 1.5 * u
		b.g.Text(scene.Text{At: scene.Pt(plan.X0, y-1*u), String: line, Height: folio.TapedText * u, Layer: scene.Notes})
	}
	plan.Y0 = y + 2*u
	b.squares(plan, 5*u)
	return b.Page
}

// header is how a table is opened in the file.
func header(table string) string {
	if table == "flitch" {
		return "[[flitch]]"
	}
	return "[" + table + "]"
}
