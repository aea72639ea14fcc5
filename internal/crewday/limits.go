package crewday

import (
	"math"
	"strings"

	"flitchlay/internal/climate"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// What may be written into a blank for a reading: beside each stands its limit, and the work goes on within all of them.

// limitNames are the keys of what is read, by climate.Quantity.
var limitNames = [...]string{"limits.air", "limits.humidity", "limits.wall", "limits.board"}

// limitWords say a limit: "60 to 90 F", "min 54 F", "max 1"; a line to write it on where it is not given.
func (c *Set) limitWords(l climate.Limit) string {
	unit := ""
	if l.Unit != "" && l.What != climate.Board {
		unit = " " + l.Unit
	}
	switch {
	case l.Over:
		return c.Words.Say("limits.dew", l.Low+unit)
	case l.Low != "" && l.High != "":
		return c.Words.Say("limits.between", l.Low, l.High+unit)
	case l.Low != "":
		return c.Words.Say("limits.least", l.Low+unit)
	case l.High != "":
		return c.Words.Say("limits.most", l.High)
	}
	return c.Words.Say("limits.most", "____")
}

// limitSource says who sets a limit.
func (c *Set) limitSource(l climate.Limit) string {
	switch {
	case l.What == climate.Board && l.Unit != "":
		return l.Unit
	case l.What == climate.Board:
		return c.Words.Say("limits.maker")
	case l.Source == "":
		return c.Words.Say("limits.practice")
	}
	return l.Source
}

// airWords say from which air the limit of the wall was worked out.
func (c *Set) airWords(l climate.Limit) string {
	if l.At[0] == "" {
		return ""
	}
	return c.Words.Say("limits.at", l.At[0]+" "+l.Unit, l.At[1])
}

// wallWords say what becomes of the wall's limit in other air; nothing where it is given over the dew point.
func (c *Set) wallWords() string {
	l := climate.Limits(c.Room)[climate.WallFace]
	if l.At[0] == "" {
		return ""
	}
	return " " + c.Words.Say("limits.other_air", l.Low+" "+l.Unit, c.airWords(l), c.Words.Say("limits.dew", l.Dew+" "+l.Unit))
}

// LimitLine says the limits of what is read at every wall in one line, for a strip that has blanks for them.
func (c *Set) LimitLine() string {
	var parts []string
	for _, l := range climate.Limits(c.Room) {
		parts = append(parts, c.Words.Say(limitNames[l.What])+" "+c.limitWords(l))
	}
	return c.Words.Say("limits.line", strings.Join(parts, ", "))
}

// limitColumns share a width among the limits: as much as their words take, and what is left in equal parts.
func (b *Board) limitColumns(limits []climate.Limit, wide float64) []float64 {
	u := b.Unit
	widths, all := make([]float64, len(limits)), 0.0
	for i, l := range limits {
		for _, words := range []string{b.limitSource(l), b.airWords(l)} {
			widths[i] = math.Max(widths[i], scene.Width(words, folio.TapedSmall*u, false))
		}
		widths[i] = math.Min(math.Max(widths[i], scene.Width(b.limitWords(l), folio.TapedText*u, true))+2.6*u, wide/2)
		all += widths[i]
	}
	for i := range widths {
		widths[i] += (wide - all) / float64(len(limits))
	}
	return widths
}

// limitHigh is how high it comes out, in mm on letter paper.
const limitHigh = 37.6

// limitTable is a blank for every reading with its limit over it and who sets that, and a box for go and one for no go. It gives
// the y under it.
func (b *Board) limitTable(box scene.Box) float64 {
	u, size, small := b.Unit, folio.TapedText*b.Unit, folio.TapedSmall*b.Unit
	g := b.Page.Part(scene.Tag{Class: "limits"})
	b.Word(g, scene.Pt(box.X0, box.Y0+5*u), b.Words.Say("limits.head"), size, true, scene.Start)
	limits := climate.Limits(b.Room)
	top, rows := box.Y0+7.4*u, [3]float64{7 * u, 15.2 * u, 8 * u}
	foot := top + rows[0] + rows[1] + rows[2]
	last := 20 * u // go and no go
	widths := b.limitColumns(limits, box.W()-last)
	pen := scene.Pen(scene.Frame, folio.TapedFine)
	x := box.X0
	for i, l := range limits {
		wide := widths[i]
		word := func(y float64, text string, high float64, bold bool) {
			g.Text(scene.Text{At: scene.Pt(x+1.2*u, y), String: scene.Shorten(text, high, bold, wide-2*u), Height: high, Bold: bold, Seat: scene.Centred, Layer: scene.Notes})
		}
		word(top+rows[0]/2, b.Words.Say(limitNames[l.What]), size, false)
		limit := b.limitWords(l)
		high := size
		if scene.Width(limit, size, true) > wide-2*u {
			high = small
		}
		word(top+rows[0]+3.2*u, limit, high, true)
		y := top + rows[0] + 8.4*u
		if words := b.airWords(l); words != "" {
			word(y, words, small, false)
			y += 4 * u
		}
		word(y, b.limitSource(l), small, false)
		if i > 0 {
			g.VLine(x, top, foot, pen)
		}
		x += wide
	}
	x = box.X1 - last
	for i, word := range []string{b.Words.Say("limits.go"), b.Words.Say("limits.no_go")} {
		y := top + rows[0] + 4*u + float64(i)*8.4*u
		g.Rect(scene.BoxAt(x+1.6*u, y-size/2, size, size), pen)
		g.Text(scene.Text{At: scene.Pt(x+6.4*u, y), String: word, Height: size, Seat: scene.Centred, Layer: scene.Notes})
	}
	g.VLine(x, top, foot, pen)
	g.HLine(box.X0, box.X1, top+rows[0], pen)
	g.HLine(box.X0, x, top+rows[0]+rows[1], pen)
	g.Rect(scene.Box{X0: box.X0, Y0: top, X1: box.X1, Y1: foot}, scene.Pen(scene.Frame, 0.5))
	return foot
}

// logLimits are the rows of the day's log: what is read, and its limit.
func (c *Set) logLimits() [][2]string {
	rows := [][2]string{{c.Words.Say("sign.time"), ""}}
	for _, l := range climate.Limits(c.Room) {
		name := c.Words.Say(limitNames[l.What])
		if l.What != climate.Board {
			name += " " + l.Unit
		}
		l.Unit = ""
		rows = append(rows, [2]string{name, c.limitWords(l)})
	}
	return append(rows, [2]string{c.Words.Say("limits.go"), ""})
}
