package submittal

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// roomKeyPages are the plan of the room: where every wall, corner and range of sheets is, where hanging starts and where
// the grain breaks.
func roomKeyPages(s *folio.Set) []*folio.Leaf {
	l := &folio.Leaf{Title: "ROOM KEY", Wall: -1, About: "room key"}
	r := newRoomKey(s)
	l.Scale = draft.Ratio(r.scale, s.Metric())
	l.Draw = func(b *folio.Board) {
		r := newRoomKey(b.Set)
		r.Board = b
		r.draw()
	}
	return []*folio.Leaf{l}
}

// roomKey is the plan with what stands on it.
type roomKey struct {
	*folio.Board
	outline folio.OutlinePlan
	scale   int64
	box     scene.Box // of the plan with its labels
	side    scene.Box // of the table
	g       *scene.Group
}

// The scales of the key, the largest first, in an inch room and in a metric one.
//
// Source: scales of a US architect's rule and their halves; ISO 5455:1979 clause 5.1.
var (
	keyScales       = []int64{48, 64, 96, 128, 192, 384, 768, 1536}
	keyScalesMetric = []int64{50, 100, 200, 500, 1000, 2000}
)

// newRoomKey chooses the scale: the largest standard one at which the plan stands in its part of the field with its labels.
func newRoomKey(s *folio.Set) *roomKey {
	k, f := s.Look, folio.BoxOf(s.Paper.Field)
	r := &roomKey{}
	r.box = scene.Box{X0: f.X0 + k.Of(8), Y0: f.Y0 + k.Of(10), X1: f.X0 + f.W()*0.7, Y1: f.Y1 - k.Of(26)}
	r.side = scene.Box{X0: f.X0 + f.W()*0.7 + k.Of(6), Y0: f.Y0 + k.Of(8), X1: f.X1 - k.Of(7), Y1: f.Y1 - k.Of(6)}
	if s.Unfit() {
		r.side.Y0 += k.Of(11)
	}
	if f.W() < k.Of(260) { // upright paper: the table under the plan
		cut := f.Y0 + f.H()*0.6
		r.box = scene.Box{X0: f.X0 + k.Of(8), Y0: f.Y0 + k.Of(10), X1: f.X1 - k.Of(8), Y1: cut - k.Of(24)}
		r.side = scene.Box{X0: f.X0 + k.Of(8), Y0: cut, X1: f.X1 - k.Of(8), Y1: f.Y1 - k.Of(5)}
	}
	scales := keyScales
	if s.Metric() {
		scales = keyScalesMetric
	}
	inner := r.box
	inner.X0, inner.X1 = inner.X0+k.Of(38), inner.X1-k.Of(38)
	inner.Y0, inner.Y1 = inner.Y0+k.Of(16), inner.Y1-k.Of(16)
	for _, scale := range scales {
		r.scale = scale
		r.outline = folio.PlanAt(s.Room, inner, 1/(float64(length.Millimetre)*float64(scale)))
		b := r.outline.Box()
		if b.W() <= inner.W() && b.H() <= inner.H() {
			break
		}
	}
	return r
}

func (r *roomKey) draw() {
	k := r.Look
	b := r.outline.Box()
	view := scene.View{Box: b.Inset(-k.Of(2)), Scale: float64(r.scale), Metric: r.Metric(), Name: "ROOM KEY", Ratio: draft.Ratio(r.scale, r.Metric())}
	r.g = r.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(r.scale)))
	r.title()
	r.table()
	for i := range r.Room.Walls {
		r.wall(i)
	}
	// marks that have one place, then the words beside them
	for _, letter := range append(r.starts(), r.changes()...) {
		letter()
	}
	for i := range r.Room.Walls {
		r.corner(i)
	}
	for i := range r.Room.Walls {
		r.mark(i)
	}
	for i := range r.Room.Walls {
		r.label(i)
	}
	r.direction()
}

// title draws title and scale bar under the plan.
func (r *roomKey) title() {
	k := r.Look
	second := "SCALE " + draft.Ratio(r.scale, r.Metric()) + "   walls as measured, seen from above"
	x, y := r.box.X0, r.box.Y1+k.Of(12)
	t := draft.Title{Mark: "1", Page: r.Leaf.Number, Name: "ROOM KEY", Under: []string{second}, Width: k.Of(60), Most: r.box.W()}
	tb := t.Draw(&r.Page.Group, k, scene.Pt(x, y))
	r.Space.Take(tb)
	bar := draft.Bar{Scale: r.scale, Metric: r.Metric()}
	most := math.Min(k.Of(104), r.box.X1-tb.X1-k.Of(30))
	if most > k.Of(20) {
		r.Space.Take(bar.Draw(&r.Page.Group, k, scene.Pt(tb.X1+k.Of(14), y+k.Of(1.5)), most))
	}
}

// wall draws the face of a wall: heavy where it is covered, thin where it is bare; openings break it.
func (r *roomKey) wall(i int) {
	k, w := r.Look, &r.Room.Walls[i]
	a, b := r.outline.Ends(i)
	r.Space.Stroke(a, b)
	in := r.g.Part(scene.Tag{Class: "wall", Title: w.Name, Data: []scene.Datum{folio.Datum("name", w.Name)}})
	width := 1.0 * k.Unit
	if !w.Cover {
		width = k.Seam
	}
	share := func(x L) float64 { return float64(x) / float64(w.Length) }
	line := func(p draft.Part, width float64) {
		in.Line(r.outline.Along(i, p.From, 0), r.outline.Along(i, p.To, 0), scene.Pen(scene.Walls, width))
	}
	var cuts []draft.Part
	for j := range w.Openings {
		o := &w.Openings[j]
		cuts = append(cuts, draft.Part{From: share(o.FromLeft), To: share(o.Right())})
		r.opening(in, i, o)
	}
	for _, s := range w.Bare {
		bare := draft.Part{From: share(s.From), To: share(s.To)}
		cuts = append(cuts, bare)
		line(bare, k.Seam)
	}
	for _, p := range draft.Rest(cuts...) {
		line(p, width)
	}
}

// opening draws the break of a wall: its jambs, and two thin lines across for a window, one for the rest.
func (r *roomKey) opening(g *scene.Group, i int, o *room.Opening) {
	k, w := r.Look, &r.Room.Walls[i]
	f, t := float64(o.FromLeft)/float64(w.Length), float64(o.Right())/float64(w.Length)
	d := k.Of(1.6)
	pen := scene.Pen(scene.Openings, k.Thin)
	for _, s := range []float64{f, t} {
		a, b := r.outline.Along(i, s, -d/2), r.outline.Along(i, s, d)
		g.Line(a, b, pen)
		r.Space.Stroke(a, b)
	}
	if o.Kind.Traits().Glazed {
		g.Line(r.outline.Along(i, f, d), r.outline.Along(i, t, d), pen)
		g.Line(r.outline.Along(i, f, d/2), r.outline.Along(i, t, d/2), scene.Pen(scene.Openings, k.Extension))
	}
	r.Space.Stroke(r.outline.Along(i, f, d), r.outline.Along(i, t, d))
}

// Places for the circle of a corner.
var (
	cornerOuts  = []float64{-5.6, 5.6, -9, 9, -13, 13, -18, 18, -24, 24, 30, -30, 38, -38, 46, 54} // out of the room, mm on the office page
	cornerTurns = []float64{0, 35, -35, 70, -70}                                                   // from the middle of the angle, degrees
)

// corner marks a wrapped corner: its name in a circle, in the first place that is free:
//
//  1. close to the corner inside the room, where the covering is, then as close outside;
//  2. at each distance in the middle of the angle, then turned to both sides;
//  3. further off by turns, from far off on outside first, for the middle of the room is full of marks.
func (r *roomKey) corner(i int) {
	k := r.Look
	var c *layout.Corner
	for j := range r.Plan.Runs {
		for n := range r.Plan.Runs[j].Corners {
			if k := &r.Plan.Runs[j].Corners[n]; k.LeftWall == i {
				c = k
			}
		}
	}
	if c == nil {
		return
	}
	_, at := r.outline.Ends(i)
	nx, ny := r.outline.Outward(i)
	mx, my := r.outline.Outward((i + 1) % len(r.Room.Walls))
	dx, dy := nx+mx, ny+my
	l := math.Hypot(dx, dy)
	if l < 1e-6 {
		dx, dy, l = nx, ny, 1
	}
	dx, dy = dx/l, dy/l
	d := elevation.CornerDisc(r.Board.Set, c.Name)
	for _, out := range cornerOuts {
		for _, turn := range cornerTurns {
			sin, cos := scene.SinCos(turn)
			ux, uy := dx*cos-dy*sin, dx*sin+dy*cos
			m := at.Add(ux*k.Of(out), uy*k.Of(out))
			box := scene.BoxRound(m, d, d)
			if !r.Space.Free(box, k.Of(0.9)) || !r.Space.FreeLine(at, m, k.Of(0.65)) {
				continue
			}
			in := r.g.Part(scene.Tag{Class: "corner", Title: "corner " + c.Name, Data: []scene.Datum{folio.Datum("name", c.Name)}})
			edge := m.Add(-ux*math.Copysign(d/2, out), -uy*math.Copysign(d/2, out))
			in.Line(at, edge, scene.Pen(scene.Marks, k.Dimension))
			r.Space.Stroke(at.Add(ux*k.Of(math.Copysign(1, out)), uy*k.Of(math.Copysign(1, out))), edge)
			r.Space.Take(draft.Disc(in, k, scene.Marks, m, d, k.Thin, c.Name, k.Small, true))
			if page := r.PageOf("corner " + c.Name); page != "" {
				r.Page.Link(box, page)
			}
			return
		}
	}
}

// at is where a place of a run comes to lie on the plan, moved out of the room.
func (r *roomKey) at(run *layout.Run, wall int, x L, out float64) scene.Point {
	return r.outline.Along(wall, float64(x)/float64(r.Room.Walls[wall].Length), out)
}

// starts draws the triangle at which the hanging of each run starts. What letters them comes back.
func (r *roomKey) starts() (words []func()) {
	k := r.Look
	for i := range r.Plan.Runs {
		run := &r.Plan.Runs[i]
		if len(run.Sheets) == 0 || run.Up {
			continue
		}
		first := &run.Sheets[0]
		s := first.Left
		for j := range run.Walls {
			st := run.Walls[j]
			x := s - st.Shift
			if run.Closed {
				for x < 0 {
					x += run.Length
				}
				for x >= run.Length {
					x -= run.Length
				}
			}
			w := &r.Room.Walls[st.Wall]
			if x > w.Length || x < -w.Length/50 {
				continue
			}
			x = max(x, 0)
			tip := r.at(run, st.Wall, x, -k.Of(1.4))
			nx, ny := r.outline.Outward(st.Wall)
			direction := math.Atan2(-ny, nx) * 180 / math.Pi
			in := r.g.Part(scene.Tag{Class: "start", Title: "hanging starts with sheet " + elevation.NumberOf(first)})
			draft.Triangle(in, scene.Marks, tip, direction, k.Of(5), k.Of(5), 0, false)
			back := r.at(run, st.Wall, x, -k.Of(6.4))
			r.Space.Take(scene.Box{X0: math.Min(tip.X, back.X) - k.Of(2.5), Y0: math.Min(tip.Y, back.Y) - k.Of(2.5), X1: math.Max(tip.X, back.X) + k.Of(2.5), Y1: math.Max(tip.Y, back.Y) + k.Of(2.5)})
			words = append(words, func() { r.wordNear("START", r.at(run, st.Wall, x, -k.Of(11.4)), -nx, -ny, true) })
			break
		}
	}
	return words
}

// Places for a word of the key, in mm on the office page.
const (
	wordStep  = 1.5 // from one place along its direction to the next
	wordSteps = 40
	wordAside = 7 // from one place across its direction to the next
)

// wordSides are how many places a word stands to the side, in the order in which they are tried.
var wordSides = []float64{0, 1, -1, 2, -2}

// wordNear letters a word at a place or further along a direction, the nearest first; at each distance straight on, then
// aside.
func (r *roomKey) wordNear(text string, at scene.Point, dx, dy float64, bold bool) {
	k := r.Look
	for step := range wordSteps {
		for _, side := range wordSides {
			t := scene.Text{At: at.Add(dx*k.Of(wordStep)*float64(step)-dy*k.Of(wordAside)*side, dy*k.Of(wordStep)*float64(step)+dx*k.Of(wordAside)*side), String: text, Height: k.Small, Bold: bold,
				Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			if r.Space.Free(t.Bounds(), k.Of(1.15)) {
				r.g.Text(t)
				r.Space.Take(t.Bounds())
				return
			}
		}
	}
}

// changes marks the closing seam and every change of flitch. What letters them comes back.
func (r *roomKey) changes() (list []func()) {
	k := r.Look
	for i := range r.Plan.Runs {
		run := &r.Plan.Runs[i]
		for _, m := range run.Seams {
			if !m.Closing && !m.FlitchChange || run.Up {
				continue
			}
			at := r.at(run, m.Wall, m.X, 0)
			nx, ny := r.outline.Outward(m.Wall)
			if m.Closing {
				draft.Diamond(r.g.Part(scene.Tag{Class: "closing", Title: "closing seam"}), k, scene.Marks, at, k.Of(5), k.Seam, scene.White)
			} else {
				draft.Hexagon(r.g.Part(scene.Tag{Class: "flitch-change", Title: "change of flitch"}), k, scene.Marks, at, k.Of(5.6), k.Seam)
			}
			r.Space.Take(scene.BoxRound(at, 2*k.Of(3), 2*k.Of(3)))
			words := elevation.NumberOf(elevation.SheetAt(r.Board.Set, m.LeftSheet)) + " | " + elevation.NumberOf(elevation.SheetAt(r.Board.Set, m.RightSheet))
			list = append(list, func() { r.wordNear(words, at.Add(nx*k.Of(6), ny*k.Of(6)), nx, ny, true) })
		}
	}
	return list
}
