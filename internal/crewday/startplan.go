package crewday

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// startPlan draws the room from above with a letter for each wall and the way of hanging, and beside it what is delivered.
func (b *Board) startPlan(box scene.Box, rest *startRest) {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "key", Title: b.Words.Say("start.plan")})
	view := scene.Box{X0: box.X0, Y0: box.Y0 + 2*u, X1: box.X0 + box.W()*(1-planShare), Y1: box.Y1 - 2*u}
	p := planBoard{Board: b, g: g, plan: folio.PlanIn(b.Room, view.Inset(8*u)), view: view}
	for i := range b.Room.Walls {
		a, z := p.plan.Ends(i)
		pen := scene.Pen(scene.Walls, 1)
		if !b.Room.Walls[i].Cover {
			pen = scene.Pen(scene.Walls, 0.25).As(scene.Dashed(0.5))
		}
		pen.Cap = scene.Square
		g.Line(a, z, pen)
	}
	where := p.startArrow()
	marks := folio.WallMarks(b.Plan)
	for i := range b.Room.Walls {
		if mark, ok := marks[i]; ok {
			p.letter(i, mark)
		}
	}
	if where != nil {
		p.startWord(where)
	}
	x, y := view.X1+3*u, box.Y0+6*u
	b.Word(g, scene.Pt(x, y), b.Words.Both("start.sheets"), size, true, scene.Start)
	b.stockLines(g, scene.Box{X0: x, Y0: y, X1: box.X1, Y1: box.Y1}, rest)
}

// planBoard is the plan of the room while it is drawn.
type planBoard struct {
	*Board
	g       *scene.Group
	plan    folio.OutlinePlan
	view    scene.Box
	taken   []scene.Box // no words may stand there
	solid   []scene.Box // no leader may run there: the words, and the arrow without its air
	leaders [][2]scene.Point
}

// free reports whether something may stand in a box, and takes it then.
func (p *planBoard) free(b scene.Box) bool {
	if !p.view.Contains(b) || folio.MeetsAny(b, p.taken) || p.plan.Touches(b) {
		return false
	}
	if slices.ContainsFunc(p.leaders, func(l [2]scene.Point) bool { return draft.Crosses(l[0], l[1], b) }) {
		return false
	}
	p.taken, p.solid = append(p.taken, b), append(p.solid, b)
	return true
}

// markOuts are how far outside a wall of the plan its letter may stand, in mm on letter paper: near it, further out where a
// neighbour's stands there, else inside the room.
var markOuts = []float64{4.4, 6.4, 8.4, -4.4, -6.4}

// leaderOuts and leaderSlides are how far from the middle of a short wall its letter may stand on a leader, in mm on letter paper: out of the
// room before into it, the nearest first; right beside the wall where the plan has no room further out. leaderShares are where on the wall it begins, as shares: its middle, else nearer to its ends.
var (
	leaderShares = []float64{0.5, 0.75, 0.25, 0.9, 0.1}
	leaderOuts   = []float64{7, 10, 13, 16, -7, -10, -13, -16, 5, -5}
	leaderSlides = []float64{0, 4, -4, 8, -8, 12, -12}
)

// letter letters a wall: 1. at its middle; 2. at a quarter of it, where something stands there; 3. on a leader; 4. behind another wall, where
// nothing else is left.
func (p *planBoard) letter(wall int, mark string) {
	text := scene.Text{String: mark, Height: folio.TapedText * p.Unit, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
	if p.beside(wall, text, false) {
		return
	}
	for _, share := range leaderShares {
		if p.led(wall, share, text) {
			return
		}
	}
	p.beside(wall, text, true)
}

// beside letters a wall beside it, and reports whether there is a place; behind says that another wall may stand between them.
func (p *planBoard) beside(wall int, text scene.Text, behind bool) bool {
	for _, share := range []float64{0.5, 0.25, 0.75} {
		for _, out := range markOuts {
			text.At = p.plan.Along(wall, share, out*p.Unit)
			if (behind || p.sees(wall, share, text.At)) && p.free(text.Bounds().Inset(-1.3*p.Unit)) {
				p.g.Text(text)
				return true
			}
		}
	}
	return false
}

// led letters a wall on a leader from a share of its length, and reports whether there is a place.
func (p *planBoard) led(wall int, share float64, text scene.Text) bool {
	u, long := p.Unit, math.Max(p.long(wall), 0.1)
	for _, out := range leaderOuts {
		for _, slide := range leaderSlides {
			text.At = p.plan.Along(wall, share+slide*u/long, out*u)
			line, ok := p.leader(wall, share, text.At)
			if ok && p.free(text.Bounds().Inset(-0.9*u)) {
				p.g.Line(line[0], line[1], scene.Pen(scene.Marks, 0.25))
				p.g.Text(text)
				p.leaders = append(p.leaders, line)
				return true
			}
		}
	}
	return false
}

// leader is a line from beside a share of a wall to under a letter, where it goes through nothing: no letter, no other wall, no other
// leader.
func (p *planBoard) leader(wall int, share float64, at scene.Point) (line [2]scene.Point, ok bool) {
	const foot, letter, least, air = 1.1, 3.0, 0.8, 0.3 // what it keeps clear at its ends, its least length, what it keeps clear beside it
	const step = 0.4                                    // of how it is walked: short enough that no wall lies between two steps
	u, tip := p.Unit, p.plan.Along(wall, share, 0)
	dx, dy := at.X-tip.X, at.Y-tip.Y
	l := math.Hypot(dx, dy)
	if l < (foot+letter+least)*u {
		return line, false
	}
	on := func(d float64) scene.Point { return scene.Pt(tip.X+dx*d/l, tip.Y+dy*d/l) }
	line = [2]scene.Point{on(foot * u), on(l - letter*u)}
	if slices.ContainsFunc(p.solid, func(b scene.Box) bool { return draft.Crosses(line[0], line[1], b.Inset(-air*u)) }) {
		return line, false
	}
	if slices.ContainsFunc(p.leaders, func(o [2]scene.Point) bool { return folio.Parted(line, o) }) {
		return line, false
	}
	if !p.sees(wall, share, line[1]) {
		return line, false
	}
	for d := (foot + air) * u; d < l-letter*u; d += step * u {
		if p.plan.Touches(scene.BoxRound(on(d), 2*air*u, 2*air*u)) {
			return line, false
		}
	}
	return line, true
}

// sees reports whether no other wall stands between a share of a wall and a place: that would be taken for the one meant.
func (p *planBoard) sees(wall int, share float64, at scene.Point) bool {
	way := [2]scene.Point{p.plan.Along(wall, share, 0), at}
	for i := range p.Room.Walls {
		a, b := p.plan.Ends(i)
		if i != wall && folio.Parted(way, [2]scene.Point{a, b}) {
			return false
		}
	}
	return true
}

// startPlaces are where the word START may stand without a leader, in mm on letter paper along the wall from where the first sheet
// begins, and out of the room: inside it behind the arrow's foot, further in; to the arrow's sides; out of the room beside its tip.
var startPlaces = [][2]float64{{0, -9}, {0, -12}, {8, -9}, {-8, -9}, {14, -7}, {-14, -7}, {16, -4}, {-16, -4}, {0, 5}, {5, 5}, {-5, 5}, {0, 7}}

// Where it stands on a leader: so far out of the room, or into it, and so far along the wall, the nearest first.
var (
	startOuts   = []float64{6, 9, -12, -16, 12, -20, 16, -24, 20, -28}
	startSlides = []float64{0, 4, -4, 8, -8, 12, -12, 16, -16, 20, -20, 24, -24, 28, -28}
)

// starting is where the first sheet begins: a wall, and a share of its length.
type starting struct {
	wall  int
	share float64
}

// startArrow draws where the first sheet begins, inside the room; nothing where no sheet is left to hang. Where the grain runs level that
// is the lowest band, at the wall's left end.
func (p *planBoard) startArrow() *starting {
	u := p.Unit
	for _, w := range p.Faces {
		for _, h := range w.Hangs {
			if !p.StartsWith(w, h) {
				continue
			}
			at := &starting{w.Wall, p.share(w, h)}
			tip, foot := p.plan.Along(at.wall, at.share, -0.8*u), p.plan.Along(at.wall, at.share, -5.5*u)
			dx, dy := tip.X-foot.X, tip.Y-foot.Y
			l := math.Hypot(dx, dy)
			nx, ny := -dy/l*1.9*u, dx/l*1.9*u
			p.g.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)}, tip, foot.Add(nx, ny), foot.Add(-nx, -ny))
			p.solid = append(p.solid, scene.Around(tip, foot.Add(nx, ny), foot.Add(-nx, -ny)))
			p.taken = append(p.taken, scene.Box{X0: math.Min(tip.X, foot.X) - 2*u, Y0: math.Min(tip.Y, foot.Y) - 2*u, X1: math.Max(tip.X, foot.X) + 2*u, Y1: math.Max(tip.Y, foot.Y) + 2*u})
			return at
		}
	}
	return nil
}

// share is where along a wall a first sheet begins.
func (p *planBoard) share(w *face.Face, h *face.Hang) float64 {
	if w.Run.Up {
		return math.Min(4*p.Unit/math.Max(p.long(w.Wall), 1), 0.5)
	}
	return float64(h.From) / math.Max(float64(w.W.Length), 1)
}

// startWord letters START: 1. beside the arrow; 2. on a leader to its tip, from out of the room, or to its foot; 3. where there is room
// for it, with less air.
func (p *planBoard) startWord(at *starting) {
	u := p.Unit
	for _, air := range []float64{1.3, 0.8} {
		for _, k := range startPlaces {
			if t := p.startText(at, k[0], k[1]); p.byArrow(t.Bounds()) && p.free(t.Bounds().Inset(-air*u)) {
				p.g.Text(t)
				return
			}
		}
		for _, out := range startOuts {
			for _, slide := range startSlides {
				t := p.startText(at, slide, out)
				line, ok := p.startLeader(at, t.Bounds().Inset(-0.9*u), out < 0)
				if ok && p.free(t.Bounds().Inset(-air*u)) {
					p.g.Line(line[0], line[1], scene.Pen(scene.Marks, 0.25))
					p.g.Text(t)
					p.leaders = append(p.leaders, line)
					return
				}
			}
		}
	}
	for _, k := range []float64{24, -24, 30, -30} {
		for _, out := range startOuts {
			if t := p.startText(at, k, out); p.free(t.Bounds().Inset(-0.8 * u)) {
				p.g.Text(t)
				return
			}
		}
	}
}

// nearArrow is how far from the arrow the word may stand without a leader, in mm on letter paper.
const nearArrow = 7.5

// byArrow reports whether a box is near the arrow, whose box is the first that is taken.
func (p *planBoard) byArrow(b scene.Box) bool {
	a := p.solid[0]
	return math.Hypot(math.Max(0, math.Max(a.X0-b.X1, b.X0-a.X1)), math.Max(0, math.Max(a.Y0-b.Y1, b.Y0-a.Y1))) < nearArrow*p.Unit
}

// startText is START so far along the wall from where the first sheet begins, and out of the room.
func (p *planBoard) startText(at *starting, slide, out float64) scene.Text {
	along := at.share + slide*p.Unit/math.Max(p.long(at.wall), 1)
	return scene.Text{At: p.plan.Along(at.wall, along, out*p.Unit), String: p.Words.Say("wall.start"), Height: folio.TapedText * p.Unit, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
}

// startLeader is a line from the word START in its box to the tip of the arrow, from out of the room, or to its foot, where it goes through
// nothing.
func (p *planBoard) startLeader(at *starting, box scene.Box, inside bool) (line [2]scene.Point, ok bool) {
	const tip, foot, air, least = 1.1, -6.3, 0.3, 1.0
	u, to := p.Unit, p.plan.Along(at.wall, at.share, tip*p.Unit)
	if inside {
		to = p.plan.Along(at.wall, at.share, foot*u)
	}
	from := scene.Pt(math.Min(math.Max(to.X, box.X0), box.X1), math.Min(math.Max(to.Y, box.Y0), box.Y1)) // the nearest of the box
	if math.Hypot(to.X-from.X, to.Y-from.Y) < least*u {
		return line, false
	}
	line = [2]scene.Point{to, from}
	if slices.ContainsFunc(p.solid, func(b scene.Box) bool { return draft.Crosses(to, from, b.Inset(-air*u)) }) ||
		slices.ContainsFunc(p.leaders, func(o [2]scene.Point) bool { return folio.Parted(line, o) }) {
		return line, false
	}
	for i := range p.Room.Walls {
		a, z := p.plan.Ends(i)
		if folio.Parted(line, [2]scene.Point{a, z}) {
			return line, false
		}
	}
	return line, true
}

// long is how long a wall of the plan is on paper.
func (p *planBoard) long(wall int) float64 {
	a, z := p.plan.Ends(wall)
	return math.Hypot(z.X-a.X, z.Y-a.Y)
}
