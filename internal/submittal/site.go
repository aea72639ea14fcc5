package submittal

import (
	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
	"flitchlay/internal/wood"
)

const chartTitle = "MOISTURE OVER HUMIDITY"

// putChart draws the chart where its block stands on a page.
func putChart(b *folio.Board, blocks []folio.Block, parts []folio.Placed, c folio.Columns) {
	for _, p := range parts {
		if t := blocks[p.Block].Table; t == nil || t.Title != chartTitle {
			continue
		}
		k := b.Look
		box := scene.Box{X0: p.X, Y0: p.Y + k.Medium + k.Of(4.2), X1: p.X + c.Width(), Y1: p.Y + p.Height - k.Of(2)}
		moistureChart(b.Page.Part(scene.Tag{Class: "chart"}), box, k, states(b.Set))
	}
}

// chartHigh is the height of the chart, on the office page.
const chartHigh = 92

// siteBlocks are what is said of the site: what is known, what is to be held, what a wall has to be, what the authority is asked. How the
// work is done, and what is minded then, stands in the set for the crew alone.
func siteBlocks(s *folio.Set) []folio.Block {
	blocks := []folio.Block{{Title: "WHO DECIDES", Items: listed(s, deferring)}}
	if !silent(s) { // else an open question asks for all of it
		blocks = append(blocks, folio.Block{Table: climateTable(s)})
	}
	if len(states(s)) > 0 {
		blocks = append(blocks, folio.Block{Table: &draft.Table{Title: chartTitle, Columns: []draft.Column{{}}, Rows: []draft.Row{{}}, Row: s.Look.Of(chartHigh)}, Whole: true})
	}
	if items := siteItems(s); len(items) > 0 {
		blocks = append(blocks, folio.Block{Title: "FINDINGS OF THE SITE", Items: items})
	}
	return append(blocks,
		figures(s, holdTable(s)),
		folio.Block{Title: "WATER, LIGHT AND AIR", Items: listed(s, waterNotes)},
		figures(s, wallChecks(s)),
		folio.Block{Title: "THE WALL", Items: listed(s, wallNotes)},
		folio.Block{Title: "FIRE", Items: listed(s, fireNotes(s))},
	)
}

// figures are a table of things with a figure each; where a column is too narrow for what stands beside the figures, a list of the same.
func figures(s *folio.Set, t *draft.Table) folio.Block {
	const least = 90 // width of a column on the office page
	if s.NoteColumns().Width() >= s.Look.Of(least) {
		return folio.Block{Table: t}
	}
	list := folio.Block{Title: t.Title}
	for _, r := range t.Rows {
		list.Items = append(list.Items, draft.Item{Mark: Ordinal(len(list.Items) + 1), Text: r.Cells[0] + ": " + r.Cells[1] + "."})
	}
	return list
}

// listed numbers notes.
func listed(s *folio.Set, texts []string) []draft.Item {
	var list []draft.Item
	for i, t := range texts {
		list = append(list, draft.Item{Mark: Ordinal(i + 1), Text: t})
	}
	return list
}

// states are the climates that the room file gives.
func states(s *folio.Set) []State {
	var list []State
	site := s.Room.Site
	if site.ShopGiven {
		list = append(list, State{Name: "shop", Climate: wood.Climate(site.Shop), Metric: s.Metric()})
	}
	if site.Given {
		list = append(list, State{Name: "site", Climate: wood.Climate{Temperature: site.Temperature, Humidity: site.Humidity}, Metric: s.Metric()})
	}
	return list
}

// siteItems are the findings of the site.
func siteItems(s *folio.Set) []draft.Item {
	var list []draft.Item
	for _, f := range climate.Findings(s.Room) {
		list = append(list, draft.Item{Mark: f.Level.String(), Text: elevation.Capital(f.Message) + "."})
	}
	return list
}

// silent reports whether the room file says nothing of shop and site.
func silent(s *folio.Set) bool {
	site := s.Room.Site
	return !site.ShopGiven && !site.Given && site.Wall == nil && site.Year == nil && site.Board == nil
}

// askSite asks for all that the table would have.
const askSite = "What are temperature and humidity of shop, site and wall, over the year the least and the greatest relative humidity, and of the board reading, limit and the meter's scale? Nothing is said of them: measure them."

// climateTitle is over what is known of shop and site.
const climateTitle = "SHOP AND SITE, AS GIVEN"

// climateTable is what is known of shop and site, with blanks for what is not.
func climateTable(s *folio.Set) *draft.Table {
	w, site := climate.WordsOf(s.Style), s.Room.Site
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
	return Pairs(climateTitle, [2]string{"Shop", shop}, [2]string{"Site", here}, [2]string{"Dew point", dew}, [2]string{"Wall", wall},
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
func holdTable(s *folio.Set) *draft.Table {
	w := climate.WordsOf(s.Style)
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
		t.Rows = append(t.Rows, draft.Row{Cells: []string{sourced(elevation.Capital(b.What), source), figure}})
	}
	return t
}

// sourced puts who says so behind what is said.
func sourced(what, source string) string { return what + " (" + source + ")" }
