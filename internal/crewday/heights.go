package crewday

import (
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// heightsKey is where other pages find the heights to read.
const heightsKey = "heights"

// readKey is the key of one of the pages on which lengths, leans and heights are read: "start", "start1", ..., and the same of heights.
func readKey(of string, i int) string {
	if i == 0 {
		return of
	}
	return of + strconv.Itoa(i)
}

// readPages names all of them, as far as they are known.
func (c *Set) readPages() string {
	var keys []string
	for _, of := range []string{"start", heightsKey} {
		for i := 0; i == 0 || c.Page(readKey(of, i)) > 0; i++ {
			keys = append(keys, readKey(of, i))
		}
	}
	return c.PagesWord(keys)
}

// heightPages give the heights of floor and ceiling from the level line to be read along every wall, spread evenly over as
// few pages as take them.
func (c *Set) heightPages(n int) []*scene.Page {
	u, size := c.Unit, folio.TapedText*c.Unit
	const row = 7.2
	least := 29 * u // of a column: its figures, and a blank beside each for what is read
	for _, w := range c.Faces {
		for _, x := range c.heightPlaces(w.W) {
			for i, s := range c.heightCells(w.W, x) {
				least = max(least, scene.Width(s, size, i == 0)+(2.4+writeHeight)*u)
			}
		}
	}
	b := c.Open(n, folio.Sheet{Title: c.Words.Both("start.title")}) // to measure
	area := b.Area
	columns := b.Page.Frame.W() - 33*u
	across := max(2, int(columns/least))
	type grid struct {
		w      *room.Wall
		name   string
		places []L
		trims  string   // beside its name
		notes  []string // under it
	}
	var grids []grid
	most := 0 // lines under any
	for _, w := range c.Faces {
		places := c.heightPlaces(w.W)
		rows := (len(places) + across - 1) / across
		var notes []string
		trims := c.trimWords(w.W)
		under := c.stairWords(w)
		if scene.Width(w.W.Name, size, true)+4*u+scene.Width(trims, size, false) > b.Page.Frame.W()-6*u {
			trims, under = "", append([]string{trims}, under...)
		}
		for _, line := range under {
			notes = append(notes, scene.Wrap(line, size, false, b.Page.Frame.W()-6*u)...)
		}
		most = max(most, len(notes))
		for i := range rows {
			name := w.W.Name
			if i > 0 {
				name = c.Words.Say("start.wall_on", name)
			}
			grids = append(grids, grid{w.W, name, places[i*len(places)/rows : (i+1)*len(places)/rows], trims, nil})
			trims = ""
		}
		grids[len(grids)-1].notes = notes
	}
	high := (9.3 + 3*row + notePitch*float64(most)) * u
	words := scene.Box{X0: b.Page.Frame.X0 + 3*u, Y0: area.Y1 - c.arrivalHigh(b.Page.Frame.W()-6*u), X1: b.Page.Frame.X1 - 3*u, Y1: area.Y1}
	fit := max(1, int((words.Y0-area.Y0-5*u)/high))
	sheets := (len(grids) + fit - 1) / fit
	var out []*scene.Page
	for i := range sheets {
		b := c.Open(n+i, folio.Sheet{Title: c.Words.Both("start.title"), Lines: [2]string{c.Place(), c.Words.Say("start.heights", c.PageWord("start"))}})
		b.Page.Title = c.Words.Say("start.heights_title")
		area := b.Area
		g := b.Page.Part(scene.Tag{Class: "heights"})
		x, y := b.Page.Frame.X0+3*u, area.Y0+2*u
		for _, o := range grids[i*len(grids)/sheets : (i+1)*len(grids)/sheets] {
			b.Word(g, scene.Pt(x, y+6*u), scene.Shorten(o.name, size, true, b.Page.Frame.W()-6*u), size, true, scene.Start)
			b.Word(g, scene.Pt(x+scene.Width(o.name, size, true)+4*u, y+6*u), o.trims, size, false, scene.Start)
			b.heightGrid(g, o.w, o.places, scene.Pt(x, y+7.8*u), columns/float64(across), row*u)
			for i, line := range o.notes {
				b.Word(g, scene.Pt(x, y+(7.8+3*row+notePitch*float64(i+1))*u), line, size, false, scene.Start)
			}
			y += high
		}
		b.arrivalWords(words)
		out = append(out, b.Page)
	}
	return out
}

// notePitch is from one line under a grid to the next, in mm on letter paper.
const notePitch = 5.4

// writeHeight is the blank beside a height for the hand that reads it, in mm on letter paper.
const writeHeight = 16.0

// pastLevel reports whether the floor of a wall climbs over the level line where it is read, and whether the ceiling comes
// under it: then every figure of theirs says its side.
func (c *Set) pastLevel(w *room.Wall) (floor, ceiling bool) {
	for _, x := range c.heightPlaces(w) {
		floor = floor || room.At(w.Floor, x) > c.Level
		ceiling = ceiling || room.At(w.Ceiling, x) < c.Level
	}
	return floor, ceiling
}

// heightCells are a place along a wall, and how far floor and ceiling are from the level line there.
func (c *Set) heightCells(w *room.Wall, x L) []string {
	floor, ceiling := room.At(w.Floor, x)-c.Level, room.At(w.Ceiling, x)-c.Level
	cells := []string{c.Say(x), c.Say(floor.Abs()), c.Say(ceiling.Abs())}
	over, under := c.pastLevel(w)
	if over {
		cells[1] = count.UpDown(c.Words, c.Say, floor)
	}
	if under {
		cells[2] = count.UpDown(c.Words, c.Say, ceiling)
	}
	return cells
}

// heightPlaces are the places along a wall at which heights are read: its ends, every four feet between, and where floor or ceiling
// begins to slope, for the place every four feet that is near.
func (c *Set) heightPlaces(w *room.Wall) []L {
	step := 4 * length.Foot
	if c.Metric() {
		step = 1200 * length.Millimetre
	}
	list := knees(w)
	near := func(x L) bool { return slices.ContainsFunc(list, func(k L) bool { return (k - x).Abs() < step/4 }) }
	var even []L
	for x := L(0); x < w.Length-step/4; x += step {
		if x == 0 || !near(x) {
			even = append(even, x)
		}
	}
	list = append(append(list, even...), w.Length)
	slices.Sort(list)
	return slices.Compact(list)
}

// trimWords say of a wall where the covering is cut at its foot and at its head.
func (c *Set) trimWords(w *room.Wall) string {
	var parts []string
	for _, x := range []struct {
		name   string
		high   L
		behind bool
	}{{"base", w.Base, w.Behind.Base}, {"crown", w.Crown, w.Behind.Crown}} {
		switch {
		case x.high == 0:
			parts = append(parts, c.Words.Of("trim", "no "+x.name))
		case x.behind:
			parts = append(parts, c.Words.Of("trim", x.name+" behind", c.Inches(x.high)))
		default:
			parts = append(parts, c.Words.Of("trim", x.name, c.Inches(x.high)))
		}
	}
	return strings.Join(parts, "; ")
}

// heightGrid draws three rows: where, down to the floor, up to the ceiling, with what the room file says and room to
// write beside it.
func (b *Board) heightGrid(g *scene.Group, w *room.Wall, places []L, at scene.Point, wide, row float64) {
	u, size := b.Unit, folio.TapedText*b.Unit
	head := 27 * u
	pen := scene.Pen(scene.Frame, 0.25)
	right := at.X + head + wide*float64(len(places))
	words := []string{b.Words.Say("start.at"), b.Words.Say("start.floor_down"), b.Words.Say("start.ceiling_up")}
	floor, ceiling := b.pastLevel(w)
	if floor {
		words[1] = b.Words.Say("start.floor")
	}
	if ceiling {
		words[2] = b.Words.Say("start.ceiling")
	}
	for i, word := range words {
		b.Word(g, scene.Pt(at.X+1*u, at.Y+(float64(i)+0.5)*row+size/2), word, size, false, scene.Start)
		g.HLine(at.X, right, at.Y+float64(i+1)*row, pen)
	}
	for k, x := range places {
		x0 := at.X + head + wide*float64(k)
		g.VLine(x0, at.Y, at.Y+3*row, scene.Pen(scene.Frame, folio.TapedFine))
		blank := x0 + wide - writeHeight*u
		g.VLine(blank, at.Y, at.Y+3*row, pen)
		b.Word(g, scene.Pt(blank+1.2*u, at.Y+0.5*row+size/2), b.Words.Say("start.as_read"), size, false, scene.Start)
		cells := b.heightCells(w, x)
		for i, s := range cells {
			b.Word(g, scene.Pt(x0+1.2*u, at.Y+(float64(i)+0.5)*row+size/2), s, size, i == 0, scene.Start)
		}
	}
	g.Rect(scene.Box{X0: at.X, Y0: at.Y, X1: right, Y1: at.Y + 3*row}, scene.Pen(scene.Frame, folio.TapedFine))
}
