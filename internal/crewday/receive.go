package crewday

import (
	"slices"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// ReceiveKey is where other pages find the widths of sheets as they came.
const ReceiveKey = "receiving"

// receiveGroups is how many sheets stand side by side in the table.
const receiveGroups = 2

// ReceivePages draws where the width of every sheet is written as it comes, and under which it is refused. There are none once
// sheets hang.
func (c *Set) ReceivePages(n int) []*scene.Page {
	if c.SomeHang() || c.Plan.Totals.Sheets == 0 {
		return nil
	}
	k, v := c.readable(), &c.Room.Veneer
	step := c.Style.Least()
	limit := c.Inches((c.Room.LeastGross() + step - 1) / step * step)
	var blocks []folio.Block
	for i := range c.Room.Flitches {
		f := &c.Room.Flitches[i]
		blocks = append(blocks, folio.Block{Table: c.receiveTable(c.Words.Say("receive.flitch", f.Number), f.Sheets, f)})
	}
	if blocks == nil {
		var list []int
		for i := range c.Plan.Totals.Sheets {
			list = append(list, i+1)
		}
		blocks = []folio.Block{{Table: c.receiveTable(c.Words.Say("receive.head"), list, nil)}}
	}
	return c.sided(n, c.Words.Both("receive.title"), c.Words.Say("receive.about"), blocks, func(b *folio.Board, box scene.Box) {
		y := draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, box.Y0), c.Words.Say("receive.side"), k.Medium, true, box.W()) + k.Of(2)
		t := &draft.Table{Row: k.Of(5.6), Columns: []draft.Column{{Wrap: true}, {Align: scene.End, Bold: true}}}
		for _, x := range [][2]string{{c.Words.Say("receive.gross"), c.Inches(v.GrossWidth)}, {c.Words.Say("receive.overlap"), c.Inches(v.Overlap)}, {c.Words.Say("receive.refuse"), limit}} {
			t.Rows = append(t.Rows, draft.Row{Cells: x[:]})
		}
		t.Fit(k, box.W())
		_, taken := t.Draw(&b.Page.Group, k, scene.Pt(box.X0, y), 0, box.Y1-y)
		y = taken.Y1 + k.Of(3)
		var items []draft.Item
		for _, text := range []string{c.Words.Say("receive.measure"), c.Words.Say("receive.under", limit), c.Words.Say("receive.between", limit, c.Inches(v.GrossWidth)), c.Words.Say("receive.torn")} {
			items = append(items, draft.Item{Text: text})
		}
		draft.List(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), items, k.Small, 0, box.W(), box.Y1-y)
	})
}

// receiveTable has a box for the width and one for the damage of each sheet, in the order of their numbers, row by
// row; what the room file says of a sheet stands in them.
func (c *Set) receiveTable(title string, numbers []int, f *room.Flitch) *draft.Table {
	k := c.readable()
	t := &draft.Table{Title: title, Lines: true, Row: k.Of(5.4)}
	for range receiveGroups {
		for i, head := range []string{c.Words.Say("receive.number"), c.Words.Say("receive.width"), c.Words.Say("receive.damage")} {
			t.Columns = append(t.Columns, draft.Column{Head: head, Bold: i == 0})
		}
	}
	rows := (len(numbers) + receiveGroups - 1) / receiveGroups
	for r := range rows {
		var cells []string
		for g := range receiveGroups {
			if at := r*receiveGroups + g; at < len(numbers) {
				width, damage := c.received(f, numbers[at])
				cells = append(cells, strconv.Itoa(numbers[at]), width, damage)
			} else {
				cells = append(cells, "", "", "")
			}
		}
		t.Rows = append(t.Rows, draft.Row{Cells: cells})
	}
	return t
}

// received is what the room file says of a sheet: its width, where it was measured, and its damage.
func (c *Set) received(f *room.Flitch, number int) (width, damage string) {
	if f == nil {
		return "", ""
	}
	for _, w := range f.Widths {
		if w.Number == number {
			width = c.Inches(w.Width)
		}
	}
	switch {
	case slices.Contains(f.Refused, number):
		damage = c.Words.Say("receive.narrow")
	case slices.Contains(f.Damaged, number):
		damage = c.Words.Say("receive.damaged")
	}
	return width, damage
}
