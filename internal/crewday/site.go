package crewday

import (
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// SiteKey is where other pages find the readings of the site and the cautions.
const SiteKey = "site"

// SitePages draw what is read in the room before and after hanging, who gave the walls free, and what who works on them minds.
func (c *Set) SitePages(n int) []*scene.Page {
	if c.Plan.Totals.Sheets == 0 {
		return nil
	}
	said := func(keys []string) (items []draft.Item) {
		for _, key := range keys {
			items = append(items, draft.Item{Text: c.Words.Say(key)})
		}
		return items
	}
	blocks := []folio.Block{{Table: c.moistureLog()}, {Title: c.Words.Both("caution.work"), Items: said(works), Whole: true}, {Table: c.airLog(), Whole: true}, {Table: c.release(), Whole: true}}
	return c.sided(n, c.Words.Both("site.title"), c.Words.Say("site.about"), blocks, said(c.cautions()), "caution.title", nil)
}

// cautions are for who works on the wall, in the order in which they come up.
//
// Source: as each names it. 73 FR 21692 and 40 CFR 745; 29 CFR 1926 and 1910.1000; NIOSH; rules from memory are named
// without a paragraph; what names nobody is common practice.
var cautions = []string{"caution.defer", "caution.lead", "caution.power", "caution.alarms", "caution.ladders", "caution.blades", "caution.dust", "caution.paste",
	"caution.fire"}

// cautions are those of a room: with what a stair asks, where a floor is one.
func (c *Set) cautions() []string {
	list := slices.Clone(cautions)
	if c.onStairs() {
		list = slices.Insert(list, slices.Index(list, "caution.ladders")+1, "caution.stairs")
	}
	return list
}

// works are what spoils sheets and not people.
//
// Source: common practice, no source.
var works = []string{"caution.raking", "caution.beads", "caution.fillets", "caution.flat", "caution.swells"}

// moistureLog has a blank row for every covered wall, and one for a dry spot to compare with.
func (c *Set) moistureLog() *draft.Table {
	t := c.logTable("site.moisture", "site.where", "site.reading", "site.warm", "site.when_by")
	rows := []string{c.Words.Say("site.dry")}
	for _, f := range c.Faces {
		rows = append(rows, f.W.Name)
	}
	return c.filled(t, rows)
}

// airLog has rows from three days before hanging to two days after.
func (c *Set) airLog() *draft.Table {
	t := c.logTable("site.air", "site.time", "site.degrees", "site.humidity", "site.when_by")
	var rows []string
	for _, hours := range []int{72, 48, 24} {
		rows = append(rows, c.Words.Say("site.before", hours))
	}
	rows = append(rows, c.Words.Say("site.morning"), c.Words.Say("site.evening"), c.Words.Say("site.day"), c.Words.Say("site.day"), c.Words.Say("site.last"))
	for _, hours := range []int{24, 48} {
		rows = append(rows, c.Words.Say("site.after", hours))
	}
	return c.filled(t, rows)
}

// release is who gives the walls free for hanging.
func (c *Set) release() *draft.Table {
	t := c.logTable("site.release", "site.by", "sign.name", "sign.date")
	return c.filled(t, []string{c.Words.Say("site.builder"), c.Words.Say("site.painter"), c.Words.Say("site.electrician"), c.Words.Say("sign.hanger")})
}

// logTable is a form with heads over its columns.
func (c *Set) logTable(title string, heads ...string) *draft.Table {
	t := &draft.Table{Title: c.Words.Say(title), Lines: true, Row: c.readable().Of(5.6)}
	for _, head := range heads {
		t.Columns = append(t.Columns, draft.Column{Head: c.Words.Say(head), Wrap: true})
	}
	return t
}

// filled are the rows of a form, lettered at their beginning, the blanks as wide as the page leaves them.
func (c *Set) filled(t *draft.Table, rows []string) *draft.Table {
	for _, text := range rows {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{text}})
	}
	return t
}
