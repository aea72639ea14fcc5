package pages

import (
	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
	"flitchlay/internal/wood"
)

// generalPages are those with numbers from 001 on: the cover, then the site.
func generalPages(s *set) []*leaf { return append(coverPages(s), sitePages(s)...) }

// sitePages are what the site has to be like before sheets are hung, what is measured there, and who says so.
func sitePages(s *set) []*leaf {
	return s.flowed("SITE AND CAUTIONS", "site", s.noteColumns(), func() []block { return s.siteBlocks() }, func(b *board, blocks []block, parts []placed, c columns) {
		for _, p := range parts {
			if t := blocks[p.block].table; t == nil || t.Title != chartTitle {
				continue
			}
			k := b.look
			box := scene.Box{X0: p.x, Y0: p.y + k.Medium + k.Of(4.2), X1: p.x + c.width(), Y1: p.y + p.height - k.Of(2)}
			MoistureChart(b.page.Part(scene.Tag{Class: "chart"}), box, k, s.states())
		}
	})
}

const chartTitle = "MOISTURE OVER HUMIDITY"

// chartHigh is the height of the chart, on the office page.
const chartHigh = 92

// siteBlocks are the parts of the pages: what is known, what is to be held, what is measured, what is minded.
func (s *set) siteBlocks() []block {
	blocks := []block{
		{title: "WHO DECIDES", items: s.listed(deferring)},
		{table: s.climateTable()},
	}
	if len(s.states()) > 0 {
		blocks = append(blocks, block{table: &draft.Table{Title: chartTitle, Columns: []draft.Column{{}}, Rows: []draft.Row{{}}, Row: s.look.Of(chartHigh)}, whole: true})
	}
	if items := s.siteItems(); len(items) > 0 {
		blocks = append(blocks, block{title: "FINDINGS OF THE SITE", items: items})
	}
	return append(blocks,
		block{table: s.holdTable()},
		block{title: "WATER, LIGHT AND AIR", items: s.listed(waterNotes)},
		block{table: s.wallChecks()},
		block{title: "THE WALL AND WHAT IS ON IT", items: s.listed(wallNotes)},
		block{table: s.moistureLog(), whole: true},
		block{table: s.airLog(), whole: true},
		block{table: s.release(), whole: true},
		block{title: "CAUTIONS", items: s.listed(cautions)},
		block{title: "FIRE", items: s.listed(s.fireNotes())},
	)
}

// listed numbers notes.
func (s *set) listed(texts []string) []draft.Item {
	var list []draft.Item
	for i, t := range texts {
		list = append(list, draft.Item{Mark: ordinal(i + 1), Text: t})
	}
	return list
}

// states are the climates that the room file gives.
func (s *set) states() []State {
	var list []State
	site := s.room.Site
	if site.ShopGiven {
		list = append(list, State{Name: "shop", Climate: wood.Climate(site.Shop), Metric: s.metric()})
	}
	if site.Given {
		list = append(list, State{Name: "site", Climate: wood.Climate{Temperature: site.Temperature, Humidity: site.Humidity}, Metric: s.metric()})
	}
	return list
}

// siteItems are the findings of the site.
func (s *set) siteItems() []draft.Item {
	var list []draft.Item
	for _, f := range climate.Findings(s.room) {
		list = append(list, draft.Item{Mark: f.Level.String(), Text: capital(f.Message) + "."})
	}
	return list
}

// climateTable is what is known of shop and site, with blanks for what is not.
func (s *set) climateTable() *draft.Table {
	w, site := climate.WordsOf(s.style), s.room.Site
	row := func(c wood.Climate) string {
		return w.Degrees(c.Temperature) + ", " + w.Percent(c.Humidity) + " relative humidity: wood comes to " + w.Moisture(c)
	}
	const blank = "not given: measure it"
	shop, here, dew, wall := blank, blank, "", blank
	if site.ShopGiven {
		shop = row(wood.Climate(site.Shop))
	}
	if site.Given {
		air := wood.Climate{Temperature: site.Temperature, Humidity: site.Humidity}
		here = row(air)
		if t, ok := air.DewPoint(); ok {
			dew = w.Degrees(t) + "; the wall itself has to be at " + w.Degrees(t+wood.WallOverDewPoint.Low) + " or more"
		}
	}
	if site.Wall != nil {
		wall = w.Degrees(*site.Wall)
	}
	year := "not given: ask for the least and the greatest relative humidity"
	if y := site.Year; y != nil {
		year = w.Percent(y.Low) + " to " + w.Percent(y.High) + " relative humidity"
	}
	board := "not given: reading, limit and the meter's scale"
	if b := site.Board; b != nil {
		board = ""
		if b.Reading != nil {
			board = "reads " + w.Decimal(*b.Reading, 3)
		}
		if b.Limit != nil {
			board = comma(board, "limit "+w.Decimal(*b.Limit, 3))
		}
		board = comma(board, b.Meter)
	}
	return pairs("SHOP AND SITE, AS GIVEN", [2]string{"Shop", shop}, [2]string{"Site", here}, [2]string{"Dew point", dew}, [2]string{"Wall", wall},
		[2]string{"Year", year}, [2]string{"Board", board})
}

// comma puts a comma between two parts that are there.
func comma(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// holdTable is what material and site are held to, with who says so.
func (s *set) holdTable() *draft.Table {
	w := climate.WordsOf(s.style)
	t := &draft.Table{Title: "TO HOLD, STEP BY STEP", Columns: []draft.Column{{Head: "WHAT", Wrap: true}, {Head: "FIGURE", Bold: true}}}
	for _, b := range wood.Bands() {
		low, high := b.Low, b.High
		print := func(f float64) string { return w.Decimal(f, 1) + " " + b.Unit }
		switch b.Unit {
		case "F":
			print = w.Degrees
			if b.What == wood.WallOverDewPoint.What {
				print = w.Spread
			}
		case "% moisture":
			print = w.Percent
		}
		figure := print(low) + " to " + print(high)
		switch {
		case high > 1e6:
			figure = "at least " + print(low)
		case low == 0:
			figure = "at most " + print(high)
		}
		source := b.Source
		if b.Status != wood.Read {
			source = comma(source, b.Status.String())
		}
		t.Rows = append(t.Rows, draft.Row{Cells: []string{sourced(capital(b.What), source), figure}})
	}
	return t
}

// sourced puts who says so behind what is said.
func sourced(what, source string) string { return what + " (" + source + ")" }

// moistureLog has a blank row for every covered wall, and two for a dry spot to compare with.
func (s *set) moistureLog() *draft.Table {
	t := &draft.Table{Title: "MOISTURE READINGS", Lines: true, Row: s.look.Of(7),
		Columns: []draft.Column{{Head: "WALL, HEIGHT", Width: s.look.Of(34), Wrap: true}, {Head: "READING", Width: s.look.Of(20)}, {Head: "WALL TEMP.", Width: s.look.Of(20)}, {Head: "DATE, BY", Width: s.look.Of(22)}}}
	t.Rows = append(t.Rows, draft.Row{Cells: []string{"one meter, one scale:"}}, draft.Row{Cells: []string{"dry spot to compare with"}})
	for _, f := range facesOf(s.plan) {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{f.w.Name}})
	}
	return t
}

// airLog has rows from three days before hanging to two days after.
func (s *set) airLog() *draft.Table {
	t := &draft.Table{Title: "TEMPERATURE AND HUMIDITY", Lines: true, Row: s.look.Of(7),
		Columns: []draft.Column{{Head: "WHEN", Width: s.look.Of(34)}, {Head: "AIR", Width: s.look.Of(16)}, {Head: "RH", Width: s.look.Of(16)}, {Head: "DATE, TIME, BY", Width: s.look.Of(30)}}}
	for _, when := range []string{"72 h before", "48 h before", "24 h before", "first day, morning", "first day, evening", "day", "day", "last sheet", "24 h after", "48 h after"} {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{when}})
	}
	return t
}

// release is who gives the walls free for hanging.
func (s *set) release() *draft.Table {
	t := &draft.Table{Title: "WALLS RELEASED FOR HANGING", Lines: true, Row: s.look.Of(9),
		Columns: []draft.Column{{Head: "BY", Width: s.look.Of(24)}, {Head: "NAME", Width: s.look.Of(36)}, {Head: "DATE, TIME", Width: s.look.Of(30)}}}
	for _, by := range []string{"builder", "painter", "electrician", "hanger"} {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{by}})
	}
	return t
}
