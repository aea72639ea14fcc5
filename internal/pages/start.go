package pages

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// startPage draws what is done in the room before the first cut: what the site owes, what is measured, and the dry
// lay-out on the floor; then the heights to read, wall by wall.
func (c *crewSet) startPage(n int) []*scene.Page {
	var out []*scene.Page
	rows := c.leanRows()
	for first := true; first || len(rows) > 0; first = false {
		b := c.open(n+len(out), "install-"+pad(n+len(out)), "Room start", false, [2]string{c.place(), "before the first cut"})
		b.page.Title = "Room start"
		area := b.bar(scene.Box{X0: b.page.Frame.X0, Y0: b.head.Y1, X1: b.page.Frame.X1, Y1: b.foot.Y0})
		u := b.u
		left := scene.Box{X0: area.X0 + 3*u, Y0: area.Y0, X1: area.X0 + area.W()*0.385, Y1: area.Y1}
		right := scene.Box{X0: left.X1 + 5*u, Y0: area.Y0, X1: area.X1 - 3*u, Y1: area.Y1}
		if first {
			b.siteChecks(left)
			split := right.Y0 + math.Min(60*u, right.H()*0.42)
			b.startPlan(scene.Box{X0: right.X0, Y0: right.Y0, X1: right.X1, Y1: split})
			right.Y0 = split
		} else {
			right.X0 = left.X0
		}
		rows = b.leanTable(right, rows)
		b.holdZero()
		out = append(out, b.page)
	}
	return append(out, c.heightPages(n+len(out))...)
}

// siteChecks letters what the site has to give, with a box to tick before each.
func (b *crewBoard) siteChecks(box scene.Box) {
	u, size := b.u, crewText*b.u
	g := b.page.Part(scene.Tag{Class: "checks"})
	y := box.Y0 + 6*u
	b.word(g, scene.Pt(box.X0, y), "SITE CHECKS", size, true, scene.Start)
	for _, text := range b.checkWords() {
		lines := scene.Wrap(text, size, false, box.W()-6.4*u)
		if y+(1.2+5.3*float64(len(lines)))*u > box.Y1-0.5*u {
			break
		}
		y += 6.2 * u
		g.Rect(scene.BoxAt(box.X0, y-size, size, size), scene.Pen(scene.Frame, crewFine))
		for i, line := range lines {
			if i > 0 {
				y += 5.3 * u
			}
			b.word(g, scene.Pt(box.X0+6.2*u, y), line, size, false, scene.Start)
		}
	}
}

// checkWords are the checks: common practice, no source.
func (b *crewBoard) checkWords() []string {
	near, wide := "1/8 in", "10 ft"
	if b.metric() {
		near, wide = "3 mm", "3 m"
	}
	list := []string{
		"level line struck at " + b.say(b.level) + " round the room, closing on itself",
		"leans and heights read (tables on this page and the next)",
		"board finished and sanded; looked at in raking light; no hollow over " + near + " in " + wide,
		"primer on and dry: name, date",
		"heat and air on for 72 h and left on",
		"power off, plates off, boxes and extenders ready",
		"alarm devices and sprinklers marked: never covered",
		"frames and casings masked, backing for brackets in",
		"trims: which go on before, which after",
		"flat dry place for the sheets; they have rested 72 h",
		"all sheets counted by number, laid face up in order",
		"who releases the walls: name, time",
	}
	return list
}

// startPlan draws the room from above with the way of hanging, and beside it what is delivered.
func (b *crewBoard) startPlan(box scene.Box) {
	u, size := b.u, crewText*b.u
	g := b.page.Part(scene.Tag{Class: "key", Title: "plan of the room"})
	view := scene.Box{X0: box.X0, Y0: box.Y0 + 2*u, X1: box.X0 + box.W()*0.5, Y1: box.Y1 - 2*u}
	p := planIn(b.room, view.Inset(8*u))
	for i := range b.room.Walls {
		a, z := p.ends(i)
		pen := scene.Pen(scene.Walls, 1)
		if !b.room.Walls[i].Cover {
			pen = scene.Pen(scene.Walls, 0.25).As(scene.Dashed(0.5))
		}
		pen.Cap = scene.Square
		g.Line(a, z, pen)
	}
	var taken []scene.Box
	b.startMark(g, p, view, &taken)
	marks := wallMarks(b.plan)
	for i := range b.room.Walls {
		mark, ok := marks[i]
		if !ok {
			continue
		}
		for _, out := range []float64{4.4, 6.4, 8.4, -4.4, -6.4} {
			t := scene.Text{At: p.along(i, 0.5, out*u), String: mark, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			if k := t.Bounds().Inset(-1.3 * u); view.Contains(k) && !meetsAny(k, taken) && !p.touches(k) {
				taken = append(taken, k)
				g.Text(t)
				break
			}
		}
	}
	x, y := view.X1+3*u, box.Y0+6*u
	b.word(g, scene.Pt(x, y), "SHEETS", size, true, scene.Start)
	for _, line := range b.stockWords() {
		for _, part := range scene.Wrap(line, size, false, box.X1-x) {
			if y += 5.4 * u; y > box.Y1-2*u {
				return
			}
			b.word(g, scene.Pt(x, y), part, size, false, scene.Start)
		}
	}
}

// startMark draws where the first sheet begins, inside the room, and letters START beside it.
func (b *crewBoard) startMark(g *scene.Group, p outlinePlan, view scene.Box, taken *[]scene.Box) {
	u := b.u
	for _, w := range b.walls {
		for _, h := range w.hangs {
			if h.place != 1 || !h.begins {
				continue
			}
			share := float64(h.from) / math.Max(float64(w.w.Length), 1)
			tip, foot := p.along(w.wall, share, -0.8*u), p.along(w.wall, share, -5.5*u)
			dx, dy := tip.X-foot.X, tip.Y-foot.Y
			l := math.Hypot(dx, dy)
			nx, ny := -dy/l*1.9*u, dx/l*1.9*u
			g.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)}, tip, foot.Add(nx, ny), foot.Add(-nx, -ny))
			*taken = append(*taken, scene.Box{X0: math.Min(tip.X, foot.X) - 2*u, Y0: math.Min(tip.Y, foot.Y) - 2*u, X1: math.Max(tip.X, foot.X) + 2*u, Y1: math.Max(tip.Y, foot.Y) + 2*u})
			for _, k := range [][2]float64{{0, -9}, {0, -12}, {8, -9}, {-8, -9}, {14, -7}, {-14, -7}, {16, -4}, {-16, -4}, {0, -16}, {0, 12}, {10, 9}, {-10, 9}} {
				along := share + k[0]*u/math.Max(lengthOf(p, w.wall), 1)
				t := scene.Text{At: p.along(w.wall, along, k[1]*u), String: "START", Height: crewText * u, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
				if box := t.Bounds().Inset(-1.3 * u); view.Contains(box) && !meetsAny(box, *taken) && !p.touches(box) {
					*taken = append(*taken, box)
					g.Text(t)
					return
				}
			}
			return
		}
	}
}

// lengthOf is how long a wall of the plan is on paper.
func lengthOf(p outlinePlan, wall int) float64 {
	a, z := p.ends(wall)
	return math.Hypot(z.X-a.X, z.Y-a.Y)
}

// stockWords say what is delivered, what of it hangs, and where it begins.
func (b *crewBoard) stockWords() []string {
	var lines []string
	for _, s := range b.plan.Left {
		lines = append(lines, fmt.Sprintf("flitch %s: %s delivered", s.Flitch, layout.Numbers(s.Delivered)))
		for _, k := range []struct {
			word string
			list []int
		}{{"hang", s.Laid}, {"spare", s.Spare}, {"damaged", s.Damaged}, {"left", s.Left}} {
			if len(k.list) > 0 {
				lines = append(lines, k.word+": "+layout.Numbers(k.list))
			}
		}
	}
	if len(b.plan.Left) == 0 {
		lines = append(lines, fmt.Sprintf("%d sheets, numbered from 1", b.plan.Totals.Sheets))
	}
	return append(lines, "hung left to right, to the numbers")
}

// leanRow is one wall of the table of leans.
type leanRow struct{ name, length, left, right string }

// leanRows lists all covered walls with what the room file says of them.
func (c *crewSet) leanRows() []leanRow {
	var list []leanRow
	marks := wallMarks(c.plan)
	for _, w := range c.walls {
		list = append(list, leanRow{marks[w.wall] + "  " + w.w.Name, c.say(w.w.Length), c.leanWords(w.w.LeanLeft), c.leanWords(w.w.LeanRight)})
	}
	return list
}

// leanWords say how an upright edge leans from floor to ceiling.
func (c *crewSet) leanWords(l L) string {
	switch {
	case l > 0:
		return c.inches(l) + " R"
	case l < 0:
		return c.inches(-l) + " L"
	}
	return "plumb"
}

// leanTable draws as many rows as have room, and gives back the others.
func (b *crewBoard) leanTable(box scene.Box, rows []leanRow) []leanRow {
	u, size := b.u, crewText*b.u
	g := b.page.Part(scene.Tag{Class: "leans"})
	b.word(g, scene.Pt(box.X0, box.Y0+5*u), "READ AT EVERY WALL; leans floor to ceiling, R right, L left", size, true, scene.Start)
	heads := []string{"wall", "length", "read", "left", "read", "right", "read"}
	widths := []float64{0, 22, 17, 14, 14, 14, 14}
	sum := 0.0
	for _, r := range rows {
		for k, s := range []string{r.length, r.left, r.right} {
			widths[1+2*k] = math.Max(widths[1+2*k], scene.Width(s, size, false)/u+2.6)
		}
	}
	for _, w := range widths {
		sum += w * u
	}
	widths[0] = (box.W() - sum) / u
	high := 7.4 * u
	top := box.Y0 + 7.4*u
	count := min(int((box.Y1-1.5*u-top-high)/high), len(rows))
	pen := scene.Pen(scene.Frame, crewFine)
	for r := -1; r < count; r++ {
		y := top + float64(r+1)*high
		x := box.X0
		cells := heads
		if r >= 0 {
			cells = []string{rows[r].name, rows[r].length, "", rows[r].left, "", rows[r].right, ""}
		}
		for i, s := range cells {
			w := widths[i] * u
			t := scene.Text{At: scene.Pt(x+1.2*u, y+high/2), String: scene.Shorten(s, size, false, w-2*u), Height: size, Seat: scene.Centred, Layer: scene.Notes}
			if s != "" {
				g.Text(t)
			}
			x += w
		}
		g.HLine(box.X0, box.X1, y+high, pen)
	}
	foot := top + float64(count+1)*high
	g.Rect(scene.Box{X0: box.X0, Y0: top, X1: box.X1, Y1: foot}, scene.Pen(scene.Frame, 0.5))
	x := box.X0
	for _, w := range widths[:len(widths)-1] {
		x += w * u
		g.VLine(x, top, foot, pen)
	}
	return rows[max(count, 0):]
}

// holdZero is the first hold point: all sheets lie on the floor in order, and somebody signs that they may be cut.
func (b *crewBoard) holdZero() {
	u, size, f := b.u, crewText*b.u, b.foot
	g := b.page.Part(scene.Tag{Class: "hold"})
	g.HLine(f.X0, f.X1, f.Y0, scene.Pen(scene.Frame, crewFine))
	x, right := f.X0+3*u, f.X1-3*u
	b.word(g, scene.Pt(x, f.Y0+7*u), "HOLD 0: dry lay-out", crewLarge*u, true, scene.Start)
	text := "all " + strconv.Itoa(b.plan.Totals.Sheets) + " sheets on the floor, face up, in the order of their numbers; no sheet is cut before this is signed"
	b.word(g, scene.Pt(x, f.Y0+13.4*u), scene.Shorten(text, size, false, right-x), size, false, scene.Start)
	y, pen := f.Y0+23.6*u, scene.Pen(scene.Frame, 0.25)
	w := (right - x) / 4
	for i, word := range []string{"architect or for the architect", "hanger", "remarks", "date, time"} {
		at := x + float64(i)*w
		g.HLine(at, at+w-4*u, y, pen)
		b.word(g, scene.Pt(at, y+3.9*u), word, crewSmall*u, false, scene.Start)
	}
	unit := "F"
	if b.metric() {
		unit = "C"
	}
	b.blanks(g, x, right-w, f.Y1-2.8*u, []string{"air", unit + "  RH", "%  board", "wall", unit + "  meter"})
}

// heightPages give the heights of floor and ceiling from the level line to be read along every wall, spread evenly over as
// few pages as take them.
func (c *crewSet) heightPages(n int) []*scene.Page {
	u, size := c.u, crewText*c.u
	const row = 7.2
	least := 29 * u // of a column: room for its figures, and to write beside them
	for _, w := range c.walls {
		for _, x := range c.heightPlaces(w.w) {
			least = max(least, scene.Width(c.say(x), size, true)+3*u)
		}
	}
	b := c.open(n, "", "Room start", false, [2]string{})
	area := b.bar(scene.Box{X0: b.page.Frame.X0, Y0: b.head.Y1, X1: b.page.Frame.X1, Y1: b.page.Frame.Y1})
	wide := b.page.Frame.W() - 33*u
	across := max(2, int(wide/least))
	type grid struct {
		w      *room.Wall
		name   string
		places []L
	}
	var grids []grid
	for _, w := range c.walls {
		places := c.heightPlaces(w.w)
		rows := (len(places) + across - 1) / across
		for i := range rows {
			name := w.w.Name
			if i > 0 {
				name += " (on)"
			}
			grids = append(grids, grid{w.w, name, places[i*len(places)/rows : (i+1)*len(places)/rows]})
		}
	}
	high := (9.3 + 3*row) * u
	fit := max(1, int((area.H()-5*u)/high))
	sheets := (len(grids) + fit - 1) / fit
	var out []*scene.Page
	for i := range sheets {
		b := c.open(n+i, "install-"+pad(n+i), "Room start", false, [2]string{c.place(), "heights to read, from the level line at " + c.say(c.level)})
		b.page.Title = "Room start, heights"
		area := b.bar(scene.Box{X0: b.page.Frame.X0, Y0: b.head.Y1, X1: b.page.Frame.X1, Y1: b.page.Frame.Y1})
		g := b.page.Part(scene.Tag{Class: "heights"})
		x, y := b.page.Frame.X0+3*u, area.Y0+2*u
		for _, o := range grids[i*len(grids)/sheets : (i+1)*len(grids)/sheets] {
			b.word(g, scene.Pt(x, y+6*u), scene.Shorten(o.name, size, true, b.page.Frame.W()-6*u), size, true, scene.Start)
			b.heightGrid(g, o.w, o.places, scene.Pt(x, y+7.8*u), wide/float64(across), row*u)
			y += high
		}
		out = append(out, b.page)
	}
	return out
}

// heightPlaces are the places along a wall at which heights are read: its ends, and every four feet between.
func (c *crewSet) heightPlaces(w *room.Wall) []L {
	step := 4 * length.Foot
	if c.metric() {
		step = 1200 * length.Millimetre
	}
	var list []L
	for x := L(0); x < w.Length-step/4; x += step {
		list = append(list, x)
	}
	return append(list, w.Length)
}

// heightGrid draws three rows: where, down to the floor, up to the ceiling, with what the room file says and room to
// write beside it.
func (b *crewBoard) heightGrid(g *scene.Group, w *room.Wall, places []L, at scene.Point, wide, row float64) {
	u, size := b.u, crewText*b.u
	head := 27 * u
	pen := scene.Pen(scene.Frame, 0.25)
	right := at.X + head + wide*float64(len(places))
	for i, word := range []string{"at", "floor down", "ceiling up"} {
		b.word(g, scene.Pt(at.X+1*u, at.Y+(float64(i)+0.5)*row+size/2), word, size, false, scene.Start)
		g.HLine(at.X, right, at.Y+float64(i+1)*row, pen)
	}
	for k, x := range places {
		x0 := at.X + head + wide*float64(k)
		g.VLine(x0, at.Y, at.Y+3*row, pen)
		floor, ceiling := room.At(w.Floor, x), room.At(w.Ceiling, x)
		for i, s := range []string{b.say(x), strings.TrimPrefix(b.say(b.level-floor), "-"), b.say(ceiling - b.level)} {
			b.word(g, scene.Pt(x0+1.2*u, at.Y+(float64(i)+0.5)*row+size/2), s, size, i == 0, scene.Start)
		}
	}
	g.Rect(scene.Box{X0: at.X, Y0: at.Y, X1: right, Y1: at.Y + 3*row}, scene.Pen(scene.Frame, crewFine))
}
