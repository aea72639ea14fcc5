package submittal

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
	"flitchlay/internal/wood"
)

// State is a climate that a chart of moisture marks.
type State struct {
	Name string // "shop", "site"
	wood.Climate
	Metric bool // print it in degrees C
}

// words says where the state stands.
func (s State) words() string {
	w := climate.Words{Metric: s.Metric}
	return w.Degrees(s.Temperature) + ", " + w.Percent(s.Humidity) + " relative humidity: wood comes to " + w.Moisture(s.Climate)
}

// moistureChart draws the moisture content that wood comes to over relative humidity: a curve for the temperature of
// each state, the state on it with a letter, the band that the room has to be held in, and under it what the letters
// mean.
//
// Units: box in millimetres on paper; the chart fills it. Under 80 by 70 mm its figures crowd.
func moistureChart(g *scene.Group, box scene.Box, k draft.Look, states []State) {
	row := 2 * k.Small
	legend := chartLegend(states, k, box.W())
	high := row * float64(len(legend))
	c := chart{look: k, plot: scene.Box{X0: box.X0 + k.Of(12), Y0: box.Y0 + k.Of(3), X1: box.X1 - k.Of(4), Y1: box.Y1 - high - k.Of(10)}, most: 24}
	c.space = draft.NewSpace(c.plot.Inset(k.Of(0.8)))
	g = g.Part(scene.Tag{Class: "moisture-chart"})
	c.axes(g)
	var drawn []float64
	for i, s := range states {
		if !nearAny(drawn, s.Temperature) {
			drawn = append(drawn, s.Temperature)
			pen := scene.Pen(scene.Seams, k.Seam)
			if i > 0 {
				pen = pen.As(scene.Dashed(k.Seam))
			}
			c.curve(g, s.Temperature, pen)
		}
	}
	c.marks(g, states)
	y := box.Y1 - high + row
	for _, line := range legend {
		g.Text(scene.Text{At: scene.Pt(box.X0, y), String: line, Height: k.Small, Layer: scene.Notes})
		y += row
	}
}

// chartLegend is what stands under a chart.
func chartLegend(states []State, k draft.Look, width float64) []string {
	var lines []string
	add := func(text string) { lines = append(lines, scene.Wrap(text, k.Small, false, width)...) }
	for i, s := range states {
		add(letter(i) + "  " + s.Name + ": " + s.words())
	}
	add(fmt.Sprintf("grey: hold the room from %s to %s %% (%s)", figure(wood.RoomHumidity.Low, 0), figure(wood.RoomHumidity.High, 0), wood.RoomHumidity.Source))
	add("equilibrium by equation 4-5, Wood Handbook, FPL-GTR-282")
	return lines
}

func letter(i int) string { return string(rune('A' + i)) }

// figure prints a number with at most so many decimals.
func figure(f float64, decimals int) string {
	scale := math.Pow(10, float64(decimals))
	return strconv.FormatFloat(math.Round(f*scale)/scale, 'f', -1, 64)
}

func nearAny(list []float64, t float64) bool {
	return slices.ContainsFunc(list, func(x float64) bool { return math.Abs(x-t) < 0.5 })
}

// chart is the frame of a chart: humidity across, moisture up.
type chart struct {
	look  draft.Look
	plot  scene.Box
	most  float64 // moisture at the top
	space *draft.Space
}

func (c *chart) at(humidity, moisture float64) scene.Point {
	return scene.Pt(c.plot.X0+(c.plot.X1-c.plot.X0)*humidity/100, c.plot.Y1-(c.plot.Y1-c.plot.Y0)*moisture/c.most)
}

// axes draws the band, the grid and the figures.
func (c *chart) axes(g *scene.Group) {
	k := c.look
	low, high := c.at(wood.RoomHumidity.Low, 0), c.at(wood.RoomHumidity.High, c.most)
	g.Rect(scene.Box{X0: low.X, Y0: high.Y, X1: high.X, Y1: low.Y}, scene.Style{Layer: scene.Hatch}.Filled(scene.Grey(0.9)))
	thin := scene.Pen(scene.Grain, k.Grain).In(scene.Grey(0.6))
	for h := 0.0; h <= 100; h += 10 {
		g.Line(c.at(h, 0), c.at(h, c.most), thin)
		g.Text(scene.Text{At: c.at(h, 0).Add(0, k.Of(1.5)), String: figure(h, 0), Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Notes})
	}
	for m := 0.0; m <= c.most; m += 4 {
		g.Line(c.at(0, m), c.at(100, m), thin)
		g.Text(scene.Text{At: c.at(0, m).Add(-k.Of(1.5), 0), String: figure(m, 0), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Notes})
	}
	g.Rect(c.plot, scene.Pen(scene.Notes, k.Thin))
	g.Text(scene.Text{At: scene.Pt((c.plot.X0+c.plot.X1)/2, c.plot.Y1+k.Of(2.5)+k.Small), String: "relative humidity, %", Height: k.Small, Anchor: scene.Middle,
		Seat: scene.Hanging, Layer: scene.Notes})
	g.Text(scene.Text{At: scene.Pt(c.plot.X0-k.Of(8), (c.plot.Y0+c.plot.Y1)/2), String: "moisture, %", Height: k.Small, Anchor: scene.Middle, Angle: 90,
		Layer: scene.Notes})
}

// curve draws the moisture content at one temperature, as far up as the chart goes.
func (c *chart) curve(g *scene.Group, temperature float64, pen scene.Style) {
	var points []scene.Point
	for h := 0.0; h <= 98; h++ {
		m := wood.Climate{Temperature: temperature, Humidity: h}.Moisture()
		if m > c.most {
			break
		}
		points = append(points, c.at(h, m))
	}
	g.Polyline(pen, points...)
	for i := 1; i < len(points); i++ {
		c.space.Stroke(points[i-1], points[i])
	}
}

// marks sets a dot for every state, with lines to both axes, and its letter in the nearest free place, on a leader.
func (c *chart) marks(g *scene.Group, states []State) {
	k := c.look
	var dots []scene.Point
	for _, s := range states {
		p := c.at(s.Humidity, math.Min(s.Moisture(), c.most))
		dots = append(dots, p)
		drop := scene.Pen(scene.Dimensions, k.Extension).As(scene.Dashed(k.Extension))
		for _, to := range []scene.Point{scene.Pt(p.X, c.plot.Y1), scene.Pt(c.plot.X0, p.Y)} {
			g.Line(p, to, drop)
			c.space.Stroke(p, to)
		}
		g.Circle(p, k.Of(0.9), scene.Style{Layer: scene.Marks}.Filled(scene.Black))
		c.space.Take(scene.BoxAt(p.X-k.Of(1), p.Y-k.Of(1), k.Of(2), k.Of(2)))
	}
	for i, p := range dots {
		t := scene.Text{String: letter(i), Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Field: k.Of(0.5), Layer: scene.Marks}
		t.At = c.free(p, scene.Width(t.String, k.Medium, true), k.Medium)
		g.Text(t)
		if far := away(p, t.At); far > k.Of(5) {
			from, to := along(p, t.At, k.Of(1.4)/far), along(t.At, p, k.Of(3.1)/far)
			g.Line(from, to, scene.Pen(scene.Marks, k.Thin))
			c.space.Stroke(from, to)
		}
		c.space.Take(scene.BoxAt(t.At.X-k.Of(2), t.At.Y-k.Medium/2-k.Of(0.6), k.Of(4), k.Medium+k.Of(1.2)))
	}
}

// letterWays are the ways from a dot to its letter, about 1 long each. The curve rises to the right, so its upper left and
// lower right are free of it most often: these first, then what lies between them and the dot's other sides.
var letterWays = []scene.Point{{X: -0.7, Y: -0.7}, {X: 0, Y: -1}, {X: -0.4, Y: -0.9}, {X: 0.7, Y: 0.7}, {X: 0.9, Y: 0.4}, {X: 0.4, Y: 0.9}, {X: -0.7, Y: 0.7},
	{X: 0.4, Y: -0.9}, {X: 0.2, Y: -1}, {X: 0.7, Y: -0.7}, {X: 0.95, Y: -0.3}, {X: -0.4, Y: 0.9}, {X: -0.2, Y: 1}, {X: -0.95, Y: 0.3}, {X: 0, Y: 1}}

// Distances of a letter from its dot that are tried, in mm on the office page, one by one.
const (
	letterFirst = 4.0
	letterReach = 70.0
)

// free finds a place for a letter: the nearest to its dot to which a line runs clear, at each distance in the order of the
// ways.
func (c *chart) free(p scene.Point, w, h float64) scene.Point {
	k := c.look
	for out := letterFirst; out < letterReach; out++ {
		for _, way := range letterWays {
			at := p.Add(k.Of(out*way.X), k.Of(out*way.Y))
			if c.space.Free(scene.BoxAt(at.X-w/2, at.Y-h/2, w, h), k.Of(1.4)) && c.space.FreeLine(along(p, at, k.Of(1.4)/away(p, at)), at, 0) {
				return at
			}
		}
	}
	return p.Add(-k.Of(4), -k.Of(4))
}

// along is a share of the way from a to b.
func along(a, b scene.Point, share float64) scene.Point {
	return a.Add((b.X-a.X)*share, (b.Y-a.Y)*share)
}

func away(a, b scene.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// MoisturePage is the chart on a page of its own.
func MoisturePage(states []State) *scene.Page {
	p := scene.NewPage("moisture", "Moisture content of wood", 160, 120)
	moistureChart(&p.Group, p.Paper().Inset(5), draft.Office(), states)
	return p
}
