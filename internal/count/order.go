package count

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
)

// Line is one line of the order.
type Line struct {
	Item     string
	Quantity string // empty: nothing to order
	From     string // the flitch; empty where it does not matter
	Sheets   int    // of veneer
	Why      string
}

// order says what to order and why.
func (c *Count) order() []Line {
	var out []Line
	if len(c.Flitches) == 0 {
		out = append(out, c.newFlitch())
	}
	for i := range c.Flitches {
		out = append(out, c.more(&c.Flitches[i]))
	}
	if l := c.lengthLine(); l.Item != "" {
		out = append(out, l)
	}
	return append(out, c.sundries()...)
}

// sheetWords describes a sheet as it is ordered.
func (c *Count) sheetWords() string {
	v := c.room().Veneer
	words := report.WidthWords(c.Style, v.GrossWidth) + " x " + c.Style.Format(v.Length)
	if v.Species != "" {
		words = v.Species + ", " + words
		if v.Cut != "" {
			words = v.Cut + " " + words
		}
	}
	return words
}

// newFlitch orders a whole flitch, where the room names none.
func (c *Count) newFlitch() Line {
	laid := len(c.All.Laid) + len(c.All.Gaps)
	return Line{Item: "veneer, " + c.sheetWords(), Quantity: report.Plural(laid+c.Spares, "sheet"), From: "one flitch", Sheets: laid + c.Spares,
		Why: fmt.Sprintf("%d laid and %s%s; numbered in order and of one flitch: once the flitch is sold no sheet can be bought again",
			laid, c.spareWhy(laid, c.Spares), c.gapWhy(len(c.All.Gaps)))}
}

// more orders what a flitch lacks.
func (c *Count) more(f *Flitch) Line {
	l := Line{Item: "veneer, " + c.sheetWords(), From: f.Number}
	laid := len(f.Laid) + len(f.Gaps)
	usable := len(f.Delivered) - len(f.Damaged)
	stock := fmt.Sprintf("%d delivered", len(f.Delivered))
	if len(f.Damaged) > 0 {
		stock += fmt.Sprintf(" less %d damaged (%s) makes %d", len(f.Damaged), layout.Numbers(f.Damaged), usable)
	}
	if laid == 0 && f.Short == 0 {
		l.Why = stock + "; none of it is laid here"
		return l
	}
	need := laid + f.Short
	want := layout.Spares(c.room(), need)
	l.Sheets = max(0, need+want-usable)
	l.Why = fmt.Sprintf("%d laid and %s%s need %d; %s", need, c.spareWhy(need, want), c.gapWhy(len(f.Gaps)), need+want, stock)
	if f.Short > 0 {
		l.Why = fmt.Sprintf("%d laid and %d more needed, which no number is left for; with %s they need %d; %s", laid, f.Short,
			c.spareWhy(need, want), need+want, stock)
	}
	if l.Sheets == 0 {
		l.Why += fmt.Sprintf(": %d over", usable-need)
		return l
	}
	l.Quantity = report.Plural(l.Sheets, "sheet")
	last := f.Delivered[len(f.Delivered)-1]
	l.Why += fmt.Sprintf("; ask for what follows number %d before the first cut: if the flitch is sold, a sister flitch, and look at both side by side", last)
	return l
}

// spareWhy says how the spares are reckoned: "4 spare (10 % of 33 is 3.3)".
func (c *Count) spareWhy(laid, spares int) string {
	parts := c.room().Rules.SpareShareParts
	share := float64(laid) * float64(parts) / 1e6
	why := fmt.Sprintf("%d spare (%s %% of %d is %s", spares, report.Number(float64(parts)/1e4), laid, report.Number(share))
	if share <= 2 && spares == 2 {
		why += ", and at least 2"
	}
	return why + ")"
}

func (c *Count) gapWhy(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", of which %d hang nowhere and come back", n)
}

// lengthLine says what lengths the sheets are needed in.
func (c *Count) lengthLine() Line {
	if len(c.Lengths) == 0 {
		return Line{}
	}
	var parts []string
	for i := len(c.Lengths) - 1; i >= 0; i-- {
		parts = append(parts, fmt.Sprintf("%d need %s", c.Lengths[i].Sheets, c.Style.Format(c.Lengths[i].Length)))
	}
	have := c.room().Veneer.Length
	need := c.Lengths[len(c.Lengths)-1].Length
	l := Line{Item: "length of the sheets", Quantity: c.Style.Format(have), Why: strings.Join(parts, ", ") +
		fmt.Sprintf("; the longest cut is %s, of sheets %s long", c.Style.Format(c.Longest.Printed), c.Style.Format(have))}
	switch {
	case c.Longest.Left < 0:
		l.Quantity = c.Style.Format(need)
		l.Why += fmt.Sprintf(": %s too short", c.Style.Words(c.Longest.Printed-have))
	case c.Longest.Figure < 0:
		l.Why += fmt.Sprintf("; for the figure to run on they would have to be %s longer", c.Style.Words(-c.Longest.Figure))
	}
	return l
}

// sundries orders everything but veneer.
func (c *Count) sundries() []Line {
	m, s := &c.Material, c.Style
	var out []Line
	wet := func(item string, a *layout.Amount, on length.Area, why, lacks string) {
		var sum report.Sum
		sum.Plus(on)
		l := Line{Item: item, Why: fmt.Sprintf("%s %s on %s", sum.Words(s.Unit), why, lacks)}
		if a == nil {
			l.Why += "; give the coverage on the pail's label to have it reckoned"
		} else {
			l.Quantity = PailWords(*a)
			l.Why += fmt.Sprintf(" comes to %s %s", report.Number(a.Amount), a.Unit)
		}
		out = append(out, l)
	}
	label := func(given string) string {
		if given == "" {
			return "the wall"
		}
		return "the wall at " + given
	}
	rest := ""
	if len(c.room().Hung) > 0 {
		rest = "still to hang, "
	}
	wet("paste", m.Paste, m.PasteOn, rest+"with both layers of every overlap, openings out, and a tenth for loss,", label(coverage(c.room().Paste)))
	wet("primer", m.Primer, m.PrimerOn, rest+"with "+s.Words(2*length.Inch)+" under the trims at floor and ceiling", label(coverage(c.room().Primer)))
	for _, e := range m.Ends {
		if e.Takes != "" {
			out = append(out, Line{Item: e.Takes, Quantity: s.Format(e.Length),
				Why: fmt.Sprintf("%s where the covering ends: %s; the longest %s", report.Plural(e.Count, "place"), e.Kind, s.Format(e.Longest))})
		}
	}
	for _, e := range m.Extenders {
		out = append(out, Line{Item: fmt.Sprintf("box extenders, %d gang", e.Gang), Quantity: strconv.Itoa(e.Count),
			Why: "boxes have to come out flush with a surface that can burn (NEC 314.20); whether thin veneer is one the authority says"})
	}
	if m.Strip.Count > 0 {
		out = append(out, Line{Item: "cutting strip", Quantity: s.Format(m.Strip.Length),
			Why: fmt.Sprintf("%s, each its seen length and %s", report.Plural(m.Strip.Count, "cut"), s.Words(stripOver(s.Unit)))})
	}
	b := m.Blades
	why := fmt.Sprintf("a new one for each of %s and %s of openings", report.Plural(b.Seams, "seam"), report.Plural(b.Edges, "edge"))
	if b.Matches > 0 {
		why = fmt.Sprintf("a new one for each of %s, %s and %s of openings", report.Plural(b.Seams, "seam"), report.Plural(b.Matches, "end match"), report.Plural(b.Edges, "edge"))
	}
	return append(out, Line{Item: "blades", Quantity: strconv.Itoa(b.Total()), Why: why})
}

// PailWords is an amount in whole pails: "2 pails of 1 gal".
func PailWords(a layout.Amount) string {
	var parts []string
	for _, p := range Pails(a) {
		parts = append(parts, fmt.Sprintf("%s of %d %s", report.Plural(p.Count, "pail"), p.Size, a.Unit))
	}
	return strings.Join(parts, ", ")
}

// coverage prints what the pail's label says; empty where the room does not say.
func coverage(c room.Coverage) string {
	if !c.Given {
		return ""
	}
	return fmt.Sprintf("%s %s/%s", report.Number(c.Amount), c.Area, c.Volume)
}
