package crewday

import (
	"math"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// StartPage draws what is done in the room before the first cut: what the site owes, what is measured, and the dry
// lay-out on the floor; then the heights to read, wall by wall.
func (c *Set) StartPage(n int) []*scene.Page {
	var out []*scene.Page
	rows := c.leanRows()
	for first := true; first || len(rows) > 0; first = false {
		b := c.Open(n+len(out), folio.Sheet{Title: c.Words.Both("start.title"), Lines: [2]string{c.Place(), c.Words.Say("start.before")}, Form: folio.OverFoot})
		b.Page.Title = c.Words.Say("start.title")
		area := b.Area
		u := b.Unit
		left := scene.Box{X0: area.X0 + 3*u, Y0: area.Y0, X1: area.X0 + area.W()*0.385, Y1: area.Y1}
		right := scene.Box{X0: left.X1 + 5*u, Y0: area.Y0, X1: area.X1 - 3*u, Y1: area.Y1}
		if first {
			b.siteChecks(left)
			split := right.Y0 + math.Min(60*u, right.H()*0.42)
			b.startPlan(scene.Box{X0: right.X0, Y0: right.Y0, X1: right.X1, Y1: split})
			right.Y0 = b.limitTable(scene.Box{X0: right.X0, Y0: split, X1: right.X1, Y1: right.Y1}) + 1*u
		} else {
			right.X0 = left.X0
		}
		rows = b.leanTable(right, rows)
		b.holdZero()
		out = append(out, b.Page)
	}
	return append(out, c.heightPages(n+len(out))...)
}

// siteChecks letters what the site has to give, with a box to tick before each.
func (b *Board) siteChecks(box scene.Box) {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "checks"})
	y := box.Y0 + 6*u
	b.Word(g, scene.Pt(box.X0, y), b.Words.Both("start.checks"), size, true, scene.Start)
	wrap := func(text string) []string { return scene.Wrap(text, size, false, box.W()-6.4*u) }
	high := func(lines []string) float64 { return (0.9 + 5.3*float64(len(lines))) * u }
	texts, all := b.checkWords(b.Words.Both), y
	for _, text := range texts {
		all += high(wrap(text))
	}
	if all > box.Y1-0.5*u { // no room for two languages
		texts = b.checkWords(b.Words.Say)
	}
	for _, text := range texts {
		lines := wrap(text)
		if y+(1.2+5.3*float64(len(lines)))*u > box.Y1-0.5*u {
			break
		}
		y += 6.2 * u
		g.Rect(scene.BoxAt(box.X0, y-size, size, size), scene.Pen(scene.Frame, folio.TapedFine))
		for i, line := range lines {
			if i > 0 {
				y += 5.3 * u
			}
			b.Word(g, scene.Pt(box.X0+6.2*u, y), line, size, false, scene.Start)
		}
	}
}

// checkWords are the checks: common practice, no source.
func (b *Board) checkWords(say func(key string, given ...any) string) []string {
	near, wide := b.Words.Say("unit.near"), b.Words.Say("unit.wide")
	if b.Metric() {
		near, wide = b.Words.Say("unit.near_metric"), b.Words.Say("unit.wide_metric")
	}
	return []string{say("check.level", b.levelWords()), say("check.leans"), say("check.board", near, wide), say("check.primer"),
		say("check.heat"), say("check.power"), say("check.alarms"), say("check.frames"), say("check.trims"),
		say("check.rested"), say("check.counted"), say("check.release")}
}

// markOuts are how far outside a wall of the plan its letter may stand, in mm on letter paper: near it, further out where a
// neighbour's stands there, else inside the room.
var markOuts = []float64{4.4, 6.4, 8.4, -4.4, -6.4}

// startPlaces are where the word START may stand, in mm on letter paper along the wall from where the first sheet begins,
// and out of the room: inside it behind the arrow's foot, further in; to the arrow's sides, further away; far inside; out
// of the room only where the wall leaves nothing else.
var startPlaces = [][2]float64{{0, -9}, {0, -12}, {8, -9}, {-8, -9}, {14, -7}, {-14, -7}, {16, -4}, {-16, -4}, {0, -16}, {0, 12}, {10, 9}, {-10, 9}}

// startPlan draws the room from above with the way of hanging, and beside it what is delivered.
func (b *Board) startPlan(box scene.Box) {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "key", Title: b.Words.Say("start.plan")})
	view := scene.Box{X0: box.X0, Y0: box.Y0 + 2*u, X1: box.X0 + box.W()*0.5, Y1: box.Y1 - 2*u}
	p := folio.PlanIn(b.Room, view.Inset(8*u))
	for i := range b.Room.Walls {
		a, z := p.Ends(i)
		pen := scene.Pen(scene.Walls, 1)
		if !b.Room.Walls[i].Cover {
			pen = scene.Pen(scene.Walls, 0.25).As(scene.Dashed(0.5))
		}
		pen.Cap = scene.Square
		g.Line(a, z, pen)
	}
	var taken []scene.Box
	b.startMark(g, p, view, &taken)
	marks := folio.WallMarks(b.Plan)
	for i := range b.Room.Walls {
		mark, ok := marks[i]
		if !ok {
			continue
		}
		for _, out := range markOuts {
			t := scene.Text{At: p.Along(i, 0.5, out*u), String: mark, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			if k := t.Bounds().Inset(-1.3 * u); view.Contains(k) && !folio.MeetsAny(k, taken) && !p.Touches(k) {
				taken = append(taken, k)
				g.Text(t)
				break
			}
		}
	}
	x, y := view.X1+3*u, box.Y0+6*u
	b.Word(g, scene.Pt(x, y), b.Words.Both("start.sheets"), size, true, scene.Start)
	for _, line := range b.stockWords() {
		for _, part := range scene.Wrap(line, size, false, box.X1-x) {
			if y += 5.4 * u; y > box.Y1-2*u {
				return
			}
			b.Word(g, scene.Pt(x, y), part, size, false, scene.Start)
		}
	}
}

// startMark draws where the first sheet begins, inside the room, and letters START beside it.
func (b *Board) startMark(g *scene.Group, p folio.OutlinePlan, view scene.Box, taken *[]scene.Box) {
	u := b.Unit
	for _, w := range b.Faces {
		for _, h := range w.Hangs {
			if !b.StartsWith(w, h) {
				continue
			}
			share := float64(h.From) / math.Max(float64(w.W.Length), 1)
			tip, foot := p.Along(w.Wall, share, -0.8*u), p.Along(w.Wall, share, -5.5*u)
			dx, dy := tip.X-foot.X, tip.Y-foot.Y
			l := math.Hypot(dx, dy)
			nx, ny := -dy/l*1.9*u, dx/l*1.9*u
			g.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)}, tip, foot.Add(nx, ny), foot.Add(-nx, -ny))
			*taken = append(*taken, scene.Box{X0: math.Min(tip.X, foot.X) - 2*u, Y0: math.Min(tip.Y, foot.Y) - 2*u, X1: math.Max(tip.X, foot.X) + 2*u, Y1: math.Max(tip.Y, foot.Y) + 2*u})
			for _, k := range startPlaces {
				along := share + k[0]*u/math.Max(lengthOf(p, w.Wall), 1)
				t := scene.Text{At: p.Along(w.Wall, along, k[1]*u), String: b.Words.Say("wall.start"), Height: folio.TapedText * u, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
				if box := t.Bounds().Inset(-1.3 * u); view.Contains(box) && !folio.MeetsAny(box, *taken) && !p.Touches(box) {
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
func lengthOf(p folio.OutlinePlan, wall int) float64 {
	a, z := p.Ends(wall)
	return math.Hypot(z.X-a.X, z.Y-a.Y)
}

// stockWords say what is delivered, what of it hangs, and where it begins.
func (b *Board) stockWords() []string {
	var lines []string
	for _, s := range b.Plan.Left {
		lines = append(lines, b.Words.Say("start.delivered", s.Flitch, layout.Numbers(s.Delivered)))
		for _, k := range []struct {
			word string
			list []int
		}{{"hangs", b.hungOf(s.Flitch)}, {"to_hang", without(without(s.Laid, b.hungOf(s.Flitch)), b.gapsOf(s.Flitch))}, {"in_a_gap", b.gapsOf(s.Flitch)},
			{"spare", s.Spare}, {"damaged", s.Damaged}, {"not_used", s.Left}} {
			if len(k.list) > 0 {
				lines = append(lines, b.Words.Of("stock", k.word)+": "+layout.Numbers(k.list))
			}
		}
	}
	if len(b.Plan.Left) == 0 {
		lines = append(lines, b.Words.Say("start.numbered", b.Plan.Totals.Sheets))
	}
	return append(lines, b.Words.Say("start.order"))
}

// leanRow is one wall of the table of leans.
type leanRow struct{ name, length, left, right string }

// leanRows lists all covered walls with what the room file says of them.
func (c *Set) leanRows() []leanRow {
	var list []leanRow
	marks := folio.WallMarks(c.Plan)
	for _, w := range c.Faces {
		list = append(list, leanRow{marks[w.Wall] + "  " + w.W.Name, c.Say(w.W.Length), c.leanWords(w.W.LeanLeft), c.leanWords(w.W.LeanRight)})
	}
	return list
}

// leanWords say how an upright edge leans from floor to ceiling.
func (c *Set) leanWords(l L) string {
	switch {
	case l > 0:
		return c.Words.Say("start.lean_right", c.Inches(l))
	case l < 0:
		return c.Words.Say("start.lean_left", c.Inches(-l))
	}
	return c.Words.Say("start.plumb")
}

// leanTable draws as many rows as have room, and gives back the others.
func (b *Board) leanTable(box scene.Box, rows []leanRow) []leanRow {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "leans"})
	b.Word(g, scene.Pt(box.X0, box.Y0+5*u), b.Words.Say("start.read"), size, true, scene.Start)
	read := b.Words.Say("start.as_read")
	heads := []string{b.Words.Say("start.wall"), b.Words.Say("start.length"), read, b.Words.Say("start.left"), read, b.Words.Say("start.right"), read}
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
	pen := scene.Pen(scene.Frame, folio.TapedFine)
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

// holdZero is the first hold point: all sheets lie on the floor in order, and somebody signs that they may be cut. Where
// some hang it is over, and what is left lies there.
func (b *Board) holdZero() {
	u, size, f := b.Unit, folio.TapedText*b.Unit, b.Foot
	g := b.Page.Part(scene.Tag{Class: "hold"})
	g.HLine(f.X0, f.X1, f.Y0, scene.Pen(scene.Frame, folio.TapedFine))
	x, right := f.X0+3*u, f.X1-3*u
	head, text := b.Words.Both("start.zero"), b.Words.Say("start.zero_how", len(b.Days.Tasks))
	if b.SomeHang() {
		head, text = b.Words.Say("start.rest", len(b.Days.Tasks)), b.Words.Say("start.rest_how")
	}
	b.Word(g, scene.Pt(x, f.Y0+7*u), head, folio.TapedLarge*u, true, scene.Start)
	b.Word(g, scene.Pt(x, f.Y0+13.4*u), scene.Shorten(text, size, false, right-x), size, false, scene.Start)
	y, pen := f.Y0+23.6*u, scene.Pen(scene.Frame, 0.25)
	w := (right - x) / 4
	for i, word := range []string{b.Words.Say("sign.architect"), b.Words.Say("sign.hanger"), b.Words.Say("sign.remarks"), b.Words.Say("sign.date")} {
		at := x + float64(i)*w
		g.HLine(at, at+w-4*u, y, pen)
		b.Word(g, scene.Pt(at, y+3.9*u), word, folio.TapedSmall*u, false, scene.Start)
	}
	b.Blanks(g, x, right-w, f.Y1-2.8*u, []string{b.Words.Say("limits.meter"), b.Words.Say("limits.by")})
}
