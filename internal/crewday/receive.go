package crewday

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
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
	limit := c.LeastGross()
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
	var items []draft.Item
	for _, text := range []string{c.Words.Say("receive.measure"), c.Words.Say("receive.under", limit), c.Words.Say("receive.between", limit, c.Inches(v.GrossWidth)), c.Words.Say("receive.torn"), c.RoundingWords()} {
		items = append(items, draft.Item{Text: text})
	}
	return c.sided(n, c.Words.Both("receive.title"), c.Words.Say("receive.about"), blocks, items, "receive.side", func(width float64) *draft.Table {
		t := &draft.Table{Row: k.Of(5.6), Columns: []draft.Column{{Wrap: true}, {Align: scene.End, Bold: true}}}
		rows := [][2]string{{c.Words.Say("receive.gross"), c.Inches(v.GrossWidth)}, {c.Words.Say("receive.overlap"), c.Inches(v.Overlap)}, {c.Words.Say("receive.refuse"), limit}}
		for _, x := range append(rows, c.leastLongs(width)...) {
			t.Rows = append(t.Rows, draft.Row{Cells: x[:]})
		}
		t.Fit(k, width)
		return t
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
	if slices.Contains(f.Damaged, number) {
		damage = c.Words.Say("receive.damaged")
	}
	for _, w := range f.Widths {
		if w.Number == number {
			width = c.Inches(w.Width)
			if c.tooNarrow(f, w) {
				damage = c.Words.Say("receive.narrow")
			}
		}
	}
	return width, damage
}

// Refused are the sheets of a flitch that came too narrow to hang, with what they measured, in the order of their numbers.
func (c *Set) Refused(flitch string) []room.SheetWidth {
	var list []room.SheetWidth
	for i := range c.Room.Flitches {
		f := &c.Room.Flitches[i]
		if f.Number != flitch {
			continue
		}
		for _, w := range f.Widths {
			if c.tooNarrow(f, w) {
				list = append(list, w)
			}
		}
		slices.SortFunc(list, func(a, b room.SheetWidth) int { return cmp.Compare(a.Number, b.Number) })
	}
	return list
}

// tooNarrow reports whether a sheet came too narrow to hang, one that is damaged besides among them.
func (c *Set) tooNarrow(f *room.Flitch, w room.SheetWidth) bool {
	return slices.Contains(f.Refused, w.Number) || slices.Contains(f.Damaged, w.Number) && w.Width < c.Room.LeastGross()
}

// LeastGross is the width under which a sheet is refused, as it is printed: never less than it is.
func (c *Set) LeastGross() string {
	step := c.Style.Least()
	return c.Inches((c.Room.LeastGross() + step - 1) / step * step)
}

// leastLong is how long the sheets of one course of a flitch have to come.
type leastLong struct {
	flitch  string
	course  int
	numbers []int
	long    L
}

// leastLongs say how long sheets have to come that are still to hang: as long as the longest is cut, and past that for its mark; of each
// course of a flitch, where these differ and the grain runs up, with the numbers of its sheets as far as these have room in a column.
func (c *Set) leastLongs(wide float64) [][2]string {
	list := c.longByCourse()
	if c.Room.Veneer.Horizontal || len(list) == 0 || !slices.ContainsFunc(list, func(x leastLong) bool { return x.long != list[0].long }) {
		long := L(0)
		for _, x := range list {
			long = max(long, x.long)
		}
		return [][2]string{{c.Words.Say("receive.long"), c.Say(long)}}
	}
	var rows [][2]string
	whole, each := true, []string{} // whether the numbers have room, and the words without them
	for _, x := range list {
		var who []string
		if len(c.Plan.Left) > 1 {
			who = append(who, c.Words.Say("tape.flitch", x.flitch))
		}
		if slices.ContainsFunc(list, func(o leastLong) bool { return o.course > 1 }) {
			who = append(who, c.Words.Say("list.course", x.course))
		}
		name := strings.Join(who, ", ")
		words := c.Words.Say("receive.long_sheets", name, layout.Numbers(x.numbers))
		whole = whole && !slices.Contains(x.numbers, 0) && len(scene.Wrap(words, c.readable().Small, false, wide*longNumbersShare)) <= longNumbersLines
		rows, each = append(rows, [2]string{words, c.Say(x.long)}), append(each, c.Words.Say("receive.long_of", name))
	}
	for i := range rows {
		if !whole {
			rows[i][0] = each[i]
		}
	}
	return rows
}

// The numbers of the sheets of a course stand beside their length where they take no more lines, of such a share of the column.
const (
	longNumbersLines = 3
	longNumbersShare = 0.6
)

// longByCourse is the least length of every course of a flitch, courses from below.
func (c *Set) longByCourse() []leastLong {
	var list []leastLong
	for i := range c.Plan.Runs {
		for k := range c.Plan.Runs[i].Sheets {
			s := &c.Plan.Runs[i].Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			at := slices.IndexFunc(list, func(x leastLong) bool { return x.flitch == s.Flitch && x.course == s.Course })
			if at < 0 {
				at, list = len(list), append(list, leastLong{flitch: s.Flitch, course: s.Course})
			}
			list[at].numbers, list[at].long = append(list[at].numbers, s.Number), max(list[at].long, c.Plan.LeastLong(s))
		}
	}
	for i := range list {
		slices.Sort(list[i].numbers)
	}
	return list
}
