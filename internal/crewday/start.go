package crewday

import (
	"math"

	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// startRest is what has still to be lettered on the pages of the room's start.
type startRest struct {
	checks []string // what the site has to give
	tight  float64  // how close its lines stand, from 0 to 1
	stock  []string // what is delivered, and of it hangs
	leans  []leanRow
}

func (r *startRest) none() bool { return len(r.checks)+len(r.stock)+len(r.leans) == 0 }

// StartPage draws what is done in the room before the first cut: what the site owes, what is measured, and the dry
// lay-out on the floor; what has no room goes on on further pages; then the heights to read, wall by wall.
func (c *Set) StartPage(n int) []*scene.Page {
	b := c.startBoard(n, folio.OverFoot)
	u := b.Unit
	left, right := b.startHalves()
	rest := startRest{checks: b.checksFor(left), leans: c.leanRows()}
	rest.tight = b.checksTight(left, rest.checks)
	y := b.siteChecks(left, &rest, b.Words.Both("start.checks"))
	split := b.startSplit(right, &rest)
	b.startPlan(scene.Box{X0: right.X0, Y0: right.Y0, X1: right.X1, Y1: split}, &rest)
	if len(rest.checks) == 0 {
		b.stockOn(scene.Box{X0: left.X0, Y0: y + 2*u, X1: left.X1, Y1: left.Y1}, &rest)
	}
	right.Y0 = b.limitTable(scene.Box{X0: right.X0, Y0: split, X1: right.X1, Y1: right.Y1}) + 1*u
	rest.leans = b.leanTable(right, rest.leans)
	b.holdZero()
	out := []*scene.Page{b.Page}
	c.First("start", n)
	for read := 1; !rest.none(); {
		if len(rest.leans) > 0 {
			c.First(readKey("start", read), n+len(out))
			read++
		}
		out = append(out, c.startOn(n+len(out), &rest))
	}
	heights := c.heightPages(n + len(out))
	for i := range heights {
		c.First(readKey(heightsKey, i), n+len(out)+i)
	}
	return append(out, heights...)
}

// startSplit is the y down to which the plan of the room reaches with what is delivered beside it; what follows has room under it,
// where it takes no more than a page. Where there is none for all that is said of the start, its page says the rest.
func (b *Board) startSplit(right scene.Box, rest *startRest) float64 {
	u := b.Unit
	most := right.Y1 - limitHigh*u - 1*u - b.leanHigh(right.W(), leanRowHigh, rest.leans)
	usual := right.Y0 + math.Min(60*u, right.H()*0.42)
	least := 0.0
	for _, short := range []bool{false, true} {
		rest.stock = b.stockWords(short)
		least = right.Y0 + math.Max(planLeast*u, b.stockHigh(right.W()*planShare, rest.stock))
		if least <= most {
			return math.Min(most, math.Max(usual, least))
		}
	}
	return math.Min(usual, math.Max(most, least))
}

// startOn draws a further page of the room's start.
func (c *Set) startOn(n int, rest *startRest) *scene.Page {
	b := c.startBoard(n, folio.Whole)
	left, right := b.startHalves()
	y := left.Y0
	if len(rest.checks)+len(rest.stock) == 0 {
		right.X0 = left.X0
	}
	if len(rest.checks) > 0 {
		y = b.siteChecks(left, rest, b.Words.Say("start.checks_on")) + 2*b.Unit
	}
	if len(rest.checks) == 0 {
		b.stockOn(scene.Box{X0: left.X0, Y0: y, X1: left.X1, Y1: left.Y1 - 2*b.Unit}, rest)
	}
	if len(rest.leans) > 0 {
		rest.leans = b.leanTable(right, rest.leans)
	}
	return b.Page
}

// planLeast is what the plan of the room keeps where the table of leans is long, in mm on letter paper.
const planLeast = 40.0

// planShare is how much of its column the plan leaves to what is delivered.
const planShare = 0.55

func (c *Set) startBoard(n int, form folio.Form) *Board {
	about := c.Words.Say("start.before")
	if n+1 < c.Page(heightsKey) {
		about += "; " + c.Words.Say("page.goes_on", n+1)
	}
	b := c.Open(n, folio.Sheet{Title: c.Words.Both("start.title"), Lines: [2]string{c.Place(), about}, Form: form})
	b.Page.Title = c.Words.Say("start.title")
	return b
}

// startHalves are the two columns of a page.
func (b *Board) startHalves() (left, right scene.Box) {
	u, area := b.Unit, b.Area
	left = scene.Box{X0: area.X0 + 3*u, Y0: area.Y0, X1: area.X0 + area.W()*0.385, Y1: area.Y1}
	return left, scene.Box{X0: left.X1 + 5*u, Y0: area.Y0, X1: area.X1 - 3*u, Y1: area.Y1}
}

// Heights in the list of what the site has to give, in mm on letter paper.
const (
	checkFirst = 6.2 // from the last line of one to the first of the next
	checkPitch = 5.3
)

// checkLines are the lines of a check beside its box.
func (b *Board) checkLines(text string, wide float64) []string {
	return scene.Wrap(text, folio.TapedText*b.Unit, false, wide-6.4*b.Unit)
}

// checkLess is by how much less the first is where the list would go on on another page for a line or two.
const checkLess = checkFirst - checkPitch

// checksHigh is how high checks come out together, where their lines stand so close.
func (b *Board) checksHigh(texts []string, wide, tight float64) float64 {
	all := 0.0
	for _, text := range texts {
		all += checkFirst - tight*checkLess + checkPitch*float64(len(b.checkLines(text, wide))-1)
	}
	return all * b.Unit
}

// checksTight is how close the lines of checks stand: as close as it takes to have all on one page, where that helps.
func (b *Board) checksTight(box scene.Box, texts []string) float64 {
	room := box.H() - (0.5+1.2+6)*b.Unit
	loose, close := b.checksHigh(texts, box.W(), 0), b.checksHigh(texts, box.W(), 1)
	if loose <= room || close > room {
		return 0
	}
	return (loose - room) / (loose - close)
}

// goesOn says under what has no room on which page it goes on, and gives the y of that.
func (b *Board) goesOn(g *scene.Group, x, y float64) float64 {
	b.Word(g, scene.Pt(x, y), b.Words.Say("page.goes_on", b.n+1), folio.TapedText*b.Unit, true, scene.Start)
	return y
}

// checksFor are the checks in both languages, or in the first where the column has no room for two.
func (b *Board) checksFor(box scene.Box) []string {
	texts := b.checkWords(b.Words.Both)
	if box.Y0+6*b.Unit+b.checksHigh(texts, box.W(), 1) > box.Y1-0.5*b.Unit {
		return b.checkWords(b.Words.Say)
	}
	return texts
}

// siteChecks letters what the site has to give, with a box to tick before each, as far as there is room. It gives the y under it.
func (b *Board) siteChecks(box scene.Box, rest *startRest, head string) float64 {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "checks"})
	y := box.Y0 + 6*u
	b.Word(g, scene.Pt(box.X0, y), head, size, true, scene.Start)
	first, pitch := (checkFirst-rest.tight*checkLess)*u, checkPitch*u
	foot := box.Y1 - 0.5*u
	if y+b.checksHigh(rest.checks, box.W(), rest.tight)+1.2*u > foot {
		foot -= first // to say where it goes on
	}
	for len(rest.checks) > 0 {
		lines := b.checkLines(rest.checks[0], box.W())
		if y+1.2*u+first+pitch*float64(len(lines)-1) > foot {
			y = b.goesOn(g, box.X0, y+first)
			break
		}
		rest.checks = rest.checks[1:]
		y += first
		g.Rect(scene.BoxAt(box.X0, y-size, size, size), scene.Pen(scene.Frame, folio.TapedFine))
		for i, line := range lines {
			if i > 0 {
				y += pitch
			}
			b.Word(g, scene.Pt(box.X0+6.2*u, y), line, size, false, scene.Start)
		}
	}
	return y
}

// stockOn goes on with what is delivered, where the plan of the room left no room for it beside it.
func (b *Board) stockOn(box scene.Box, rest *startRest) {
	u := b.Unit
	if len(rest.stock) == 0 || box.Y0+16*u > box.Y1 {
		return
	}
	g := b.Page.Part(scene.Tag{Class: "stock"})
	b.Word(g, scene.Pt(box.X0, box.Y0+6*u), b.Words.Say("start.sheets_on"), folio.TapedText*u, true, scene.Start)
	b.stockLines(g, scene.Box{X0: box.X0, Y0: box.Y0 + 6*u, X1: box.X1, Y1: box.Y1}, rest)
}

// stockHigh is how high all of it comes out beside the plan of the room.
func (b *Board) stockHigh(wide float64, lines []string) float64 {
	high := 6 + 1.2
	for _, line := range lines {
		high += stockPitch * float64(len(scene.Wrap(line, folio.TapedText*b.Unit, false, wide-3*b.Unit)))
	}
	return high * b.Unit
}

// stockPitch is from one line of what is delivered to the next, in mm on letter paper.
const stockPitch = 5.4

// stockLines letters what is delivered as far as there is room.
func (b *Board) stockLines(g *scene.Group, box scene.Box, rest *startRest) {
	u, size := b.Unit, folio.TapedText*b.Unit
	y, foot, all := box.Y0, box.Y1-1*u, 0
	for _, line := range rest.stock {
		all += len(scene.Wrap(line, size, false, box.W()))
	}
	if y+stockPitch*u*float64(all) > foot {
		foot -= stockPitch * u // to say where it goes on
	}
	for len(rest.stock) > 0 {
		parts := scene.Wrap(rest.stock[0], size, false, box.W())
		if y+stockPitch*u*float64(len(parts)) > foot {
			b.goesOn(g, box.X0, y+stockPitch*u)
			return
		}
		for _, part := range parts {
			y += stockPitch * u
			b.Word(g, scene.Pt(box.X0, y), part, size, false, scene.Start)
		}
		rest.stock = rest.stock[1:]
	}
}

// checkWords are the checks: common practice, no source.
func (b *Board) checkWords(say func(key string, given ...any) string) []string {
	near, wide := b.Words.Say("unit.near"), b.Words.Say("unit.wide")
	if b.Metric() {
		near, wide = b.Words.Say("unit.near_metric"), b.Words.Say("unit.wide_metric")
	}
	list := []string{say("check.level", b.levelWords()), say("check.leans", b.readPages())}
	if len(b.leansMuch()) > 0 {
		list = append(list, say("check.leans_much"))
	}
	primer := say("check.primer")
	if name := b.Room.PrimerName; name != "" {
		primer = say("check.primer_named", name)
	}
	return append(list, say("check.board", near, wide), primer, say("check.heat"), say("check.power"), say("check.alarms"), say("check.frames"), say("check.trims", b.PageWord(heightsKey)),
		say("check.rested"), say("check.counted"), say("check.release"))
}

// holdZero is the first hold point: all sheets lie on the floor in order, and somebody signs that they may be cut. Where
// some hang it is over, and what is left lies there.
func (b *Board) holdZero() {
	u, size, f := b.Unit, folio.TapedText*b.Unit, b.Foot
	g := b.Page.Part(scene.Tag{Class: "hold"})
	g.HLine(f.X0, f.X1, f.Y0, scene.Pen(scene.Frame, folio.TapedFine))
	x, right := f.X0+3*u, f.X1-3*u
	head, text := b.Words.Both("start.zero"), b.Words.Say("start.zero_how", len(b.Days.Tasks))
	if b.courses() {
		text = b.Words.Say("start.zero_courses", len(b.Days.Tasks))
	}
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
	b.Blanks(g, x, right-4*u, f.Y1-2.8*u, []string{b.Words.Say("limits.meter"), b.Words.Say("limits.by"), b.Words.Say("start.call")})
}
