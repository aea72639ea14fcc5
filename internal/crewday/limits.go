package crewday

import (
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

// LimitLine says the limits of what is read at every wall in one line, for a strip that has blanks for them.
func (c *Set) LimitLine() string {
	var parts []string
	for _, l := range climate.Limits(c.Room) {
		if l.What != climate.WallFace {
			parts = append(parts, c.Words.Say(limitNames[l.What])+" "+c.limitWords(l))
		}
	}
	return c.Words.Say("limits.line", strings.Join(parts, ", "))
}

// limitHigh is how high it comes out, in mm on letter paper.
const limitHigh = 34.0

// limitTable is a blank for every reading with its limit over it and who sets that, and a box for go and one for no go. It gives
// the y under it.
func (b *Board) limitTable(box scene.Box) float64 {
	u, size, small := b.Unit, folio.TapedText*b.Unit, folio.TapedSmall*b.Unit
	g := b.Page.Part(scene.Tag{Class: "limits"})
	b.Word(g, scene.Pt(box.X0, box.Y0+5*u), b.Words.Say("limits.head"), size, true, scene.Start)
	limits := climate.Limits(b.Room)
	top, rows := box.Y0+7.4*u, [3]float64{7 * u, 11.6 * u, 8 * u}
	foot := top + rows[0] + rows[1] + rows[2]
	last := 20 * u // go and no go
	wide := (box.W() - last) / float64(len(limits))
	pen := scene.Pen(scene.Frame, folio.TapedFine)
	for i, l := range limits {
		x := box.X0 + wide*float64(i)
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
		word(top+rows[0]+8.4*u, b.limitSource(l), small, false)
		if i > 0 {
			g.VLine(x, top, foot, pen)
		}
	}
	x := box.X1 - last
	for i, word := range []string{b.Words.Say("limits.go"), b.Words.Say("limits.no_go")} {
		y := top + rows[0] + 3.4*u + float64(i)*8.4*u
		g.Rect(scene.BoxAt(x+1.6*u, y-size/2, size, size), pen)
		g.Text(scene.Text{At: scene.Pt(x+6.4*u, y), String: word, Height: size, Seat: scene.Centred, Layer: scene.Notes})
	}
	g.VLine(x, top, foot, pen)
	g.HLine(box.X0, box.X1, top+rows[0], pen)
	g.HLine(box.X0, x, top+rows[0]+rows[1], pen)
	g.Rect(scene.Box{X0: box.X0, Y0: top, X1: box.X1, Y1: foot}, scene.Pen(scene.Frame, 0.5))
	return foot
}

// logLimits is the row of the day's log over its blanks.
func (c *Set) logLimits() []string {
	l := climate.Limits(c.Room)
	short := func(l climate.Limit) string {
		switch {
		case l.Over:
			return c.Words.Say("limits.dew", l.Low)
		case l.High == "":
			return c.Words.Say("limits.least", l.Low)
		}
		return c.Words.Say("limits.between", l.Low, l.High)
	}
	return []string{c.Words.Say("limits.go"), short(l[climate.Air]), short(l[climate.Humidity]), short(l[climate.WallFace]), ""}
}
