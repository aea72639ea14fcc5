package tally

import (
	"fmt"
	"math/big"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
)

// Names are the names of the tables of a job, in their order. What a job costs is there only where it has prices.
func Names() []string { return []string{"stock", "laid", "rooms", "price"} }

// Sums are the job's totals as package count has them, with the crew's hours, and with what is told of flitches seen whole.
func (t *Job) Sums() *count.Job {
	sums := t.all
	var n [6]int
	for _, s := range t.stocks() {
		for i, x := range []int{len(s.delivered), len(s.damaged), len(s.spare), len(s.left), s.want, s.order} {
			n[i] += x
		}
	}
	if len(t.flitches) > 0 {
		sums.Stock(n[0], n[1], n[2], n[3], n[4], n[5])
	}
	sums.Minutes, sums.Beside = t.minutes, t.object()
	return &sums
}

// Unit is the unit of the job's lengths, that of its first room.
func (t *Job) Unit() string { return t.style.Unit.String() }

// Tables are the tables of a job.
func (t *Job) Tables() []*report.Table {
	list := []*report.Table{t.stock(), t.laid(), t.roomTable()}
	if p := t.price(); p != nil {
		list = append(list, p)
	}
	return list
}

// stock tells of each flitch what became of its sheets.
func (t *Job) stock() *report.Table {
	out := &report.Table{Name: "stock", Title: "Flitches of the job", Total: true, Columns: []report.Column{{Head: "flitch"}, {Head: "delivered", Right: true},
		{Head: "laid", Right: true}, {Head: "in gaps", Right: true}, {Head: "damaged", Right: true}, {Head: "spare", Right: true}, {Head: "left", Right: true},
		{Head: "short", Right: true}, {Head: "spares wanted", Right: true}, {Head: "to order", Right: true}, {Head: "left, by number", Long: true},
		{Head: "damaged, by number", Long: true}}}
	var sum [9]int
	for _, s := range t.stocks() {
		row := []report.Cell{report.Text(s.number)}
		for i, n := range []int{len(s.delivered), len(s.laid), len(s.gaps), len(s.damaged), len(s.spare), len(s.left), s.short, s.want, s.order} {
			row = append(row, report.Whole(n))
			sum[i] += n
		}
		out.Rows = append(out.Rows, append(row, report.Text(layout.Numbers(s.left)), report.Text(layout.Numbers(s.damaged))))
	}
	row := []report.Cell{report.Text("all")}
	for _, n := range sum {
		row = append(row, report.Whole(n))
	}
	out.Rows = append(out.Rows, append(row, report.Text(""), report.Text("")))
	return out
}

// laid tells which room lays what of each flitch.
func (t *Job) laid() *report.Table {
	out := &report.Table{Name: "laid", Title: "Sheets of each flitch, by room", Columns: []report.Column{{Head: "flitch"}, {Head: "laid in", Long: true},
		{Head: "sheets", Right: true}, {Head: "numbers", Long: true}}}
	for _, f := range t.flitches {
		for _, r := range f.rooms {
			out.Rows = append(out.Rows, []report.Cell{report.Text(f.number), report.Text(r.room), report.Whole(len(r.numbers)), report.Text(layout.Numbers(r.numbers))})
		}
	}
	return out
}

// roomTable tells what each room takes.
func (t *Job) roomTable() *report.Table {
	unit := t.style.Unit
	out := &report.Table{Name: "rooms", Title: "Rooms of the job", Total: true, Columns: []report.Column{{Head: "file"}, {Head: "title", Long: true},
		{Head: "sheets", Right: true}, {Head: "short", Right: true}, {Head: "covering, " + report.AreaHead(unit), Right: true}, {Head: "hours", Right: true},
		{Head: "days", Right: true}, {Head: "numbers", Long: true}, {Head: "musts"}}}
	// equal rooms have equal figures; so what is printed of all is rounded by itself, and may not be their sum
	rounded := report.Decimals(unit, report.AreaDecimals(unit))
	var all report.Sum
	sheets, short, printed := 0, 0, new(big.Rat)
	for _, r := range t.rooms {
		state := "met"
		if r.broken {
			state = "broken"
		}
		sheets, short = sheets+r.sheets, short+r.short
		var area report.Sum
		area.Plus(r.net)
		all.Plus(r.net)
		share := rounded(&area)
		printed.Add(printed, share)
		out.Rows = append(out.Rows, []report.Cell{report.Text(r.name), report.Text(r.title), report.Whole(r.sheets), report.Whole(r.short), report.Squares(share, unit),
			hundredths(hoursOf(r.minutes)), report.Whole(r.days), report.Text(r.flitches), report.Text(state)})
	}
	area := rounded(&all)
	if area.Cmp(printed) != 0 {
		out.Title += "; areas are rounded one by one, that of all by itself"
	}
	out.Rows = append(out.Rows, []report.Cell{report.Text("all"), report.Text(""), report.Whole(sheets), report.Whole(short), report.Squares(area, unit),
		hundredths(hoursOf(t.minutes)), report.Text(""), report.Text(""), report.Text("")})
	return out
}

// hoursOf are minutes in hours.
func hoursOf(minutes int) *big.Rat { return big.NewRat(int64(minutes), 60) }

// hundredths is a number to two decimals.
func hundredths(r *big.Rat) report.Cell {
	text := r.FloatString(2)
	return report.Cell{Text: text, Value: text, Number: true}
}

// line is a line of what the job costs.
type line struct {
	key, item, unit string
	quantity        *big.Rat
}

// lines are what has a price or may have one, with how much of it the job takes.
func (t *Job) lines() []line {
	sheets := 0
	for _, s := range t.stocks() {
		sheets += len(s.delivered) + s.order
	}
	if len(t.flitches) == 0 {
		sheets = t.all.Order
	}
	ends := map[string]length.Length{}
	for _, e := range t.all.Ends {
		ends[e.Takes] += e.Length
	}
	long, of := "ft", 12*length.Inch
	if t.style.Unit == length.Millimetres {
		long, of = "m", 1000*length.Millimetre
	}
	metres := func(l length.Length) *big.Rat { return big.NewRat(int64(l), int64(of)) }
	whole := func(n int) *big.Rat { return big.NewRat(int64(n), 1) }
	return []line{{"sheet", "veneer, delivered and to order", "sheets", whole(sheets)},
		{"pail", "paste", "large pails", whole(pails(t.all.Paste))},
		{"primer_pail", "primer", "large pails", whole(pails(t.all.Primer))},
		{"hour", "the crew", "h", hoursOf(t.minutes)},
		{"bead", "end bead", long, metres(ends["end bead"])},
		{"trim", "edge trim", long, metres(ends["edge trim"])},
		{"strip", "cutting strip", long, metres(t.all.Strip.Length)},
		{"blade", "blades", "blades", whole(t.all.Blades.Total())}}
}

// pails is how many large pails amounts take, those of each unit by themselves.
func pails(list []layout.Amount) (n int) {
	for _, a := range list {
		size := 5.0
		if a.Unit == "L" {
			size = 10
		}
		for left := a.Amount; left > 1e-9; left -= size {
			n++
		}
	}
	return n
}

// pricedLine is a line with its price.
type pricedLine struct {
	line
	price, amount *big.Rat
}

// priced are the lines that have a price, and what has none. Quantities are rounded to hundredths, then priced, so that who reckons
// with the printed figures comes to the printed sum.
func (t *Job) priced() (list []pricedLine, missing []string) {
	for i, l := range t.lines() {
		switch p := t.job.Prices; {
		case i < len(p) && p[i].Given:
			l.quantity = rounded(l.quantity)
			price := rounded(p[i].Of)
			list = append(list, pricedLine{l, price, rounded(new(big.Rat).Mul(l.quantity, price))})
		case l.quantity.Sign() > 0:
			missing = append(missing, l.item)
		}
	}
	return list, missing
}

// price is what the job costs, nil where it has no price.
func (t *Job) price() *report.Table {
	out := &report.Table{Name: "price", Total: true, Sum: true, Columns: []report.Column{{Head: "item", Long: true}, {Head: "quantity", Right: true}, {Head: "of"},
		{Head: strings.TrimSpace("price " + t.job.Currency), Right: true}, {Head: strings.TrimSpace("amount " + t.job.Currency), Right: true}}}
	lines, missing := t.priced()
	sum := new(big.Rat)
	for _, l := range lines {
		sum.Add(sum, l.amount)
		cell := hundredths(l.amount)
		cell.Formula = fmt.Sprintf("ROUND(%s{row}*%s{row},2)", column(1), column(3))
		out.Rows = append(out.Rows, []report.Cell{report.Text(l.item), hundredths(l.quantity), report.Text(l.unit), hundredths(l.price), cell})
	}
	if len(out.Rows) == 0 {
		return nil
	}
	out.Title = "What the job costs"
	if len(missing) > 0 {
		out.Title += "; without a price: " + strings.Join(missing, ", ")
	}
	total := hundredths(sum)
	total.Formula = fmt.Sprintf("SUM(%s2:%s{above})", column(4), column(4))
	out.Rows = append(out.Rows, []report.Cell{report.Text("sum"), report.Text(""), report.Text(""), report.Text(""), total})
	return out
}

// column is the letter of a column of a table in a workbook, in which the lead of two stands before it.
func column(i int) string { return string(rune('A' + 2 + i)) }

// rounded is a number to two decimals, halves away from zero.
func rounded(r *big.Rat) *big.Rat {
	out, _ := new(big.Rat).SetString(r.FloatString(2))
	return out
}
