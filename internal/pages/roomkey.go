package pages

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// roomKeyPages are the plan of the room: where every wall, corner and range of sheets is, where hanging starts and where
// the grain breaks.
func roomKeyPages(s *set) []*leaf {
	l := &leaf{title: "ROOM KEY", wall: -1, about: "room key"}
	r := s.roomKey()
	l.scale = draft.Ratio(r.scale, s.metric())
	l.draw = func(b *board) {
		r := b.roomKey()
		r.board = b
		r.draw()
	}
	return []*leaf{l}
}

// roomKey is the plan with what stands on it.
type roomKey struct {
	*board
	outline outlinePlan
	scale   int64
	box     scene.Box // of the plan with its labels
	side    scene.Box // of the table
	g       *scene.Group
}

// roomKey chooses the scale: the largest standard one at which the plan stands in its part of the field with its labels.
func (s *set) roomKey() *roomKey {
	k, f := s.look, boxOf(s.paper.Field)
	r := &roomKey{}
	r.box = scene.Box{X0: f.X0 + k.Of(8), Y0: f.Y0 + k.Of(10), X1: f.X0 + f.W()*0.7, Y1: f.Y1 - k.Of(26)}
	r.side = scene.Box{X0: f.X0 + f.W()*0.7 + k.Of(6), Y0: f.Y0 + k.Of(8), X1: f.X1 - k.Of(7), Y1: f.Y1 - k.Of(6)}
	if s.unfit() {
		r.side.Y0 += k.Of(11)
	}
	if f.W() < k.Of(260) { // upright paper: the table under the plan
		cut := f.Y0 + f.H()*0.6
		r.box = scene.Box{X0: f.X0 + k.Of(8), Y0: f.Y0 + k.Of(10), X1: f.X1 - k.Of(8), Y1: cut - k.Of(24)}
		r.side = scene.Box{X0: f.X0 + k.Of(8), Y0: cut, X1: f.X1 - k.Of(8), Y1: f.Y1 - k.Of(5)}
	}
	scales := []int64{48, 64, 96, 128, 192, 384, 768, 1536}
	if s.metric() {
		scales = []int64{50, 100, 200, 500, 1000, 2000}
	}
	inner := r.box
	inner.X0, inner.X1 = inner.X0+k.Of(38), inner.X1-k.Of(38)
	inner.Y0, inner.Y1 = inner.Y0+k.Of(16), inner.Y1-k.Of(16)
	for _, scale := range scales {
		r.scale = scale
		r.outline = planAt(s.room, inner, 1/(millimetre*float64(scale)))
		b := r.outline.bounds()
		if b.W() <= inner.W() && b.H() <= inner.H() {
			break
		}
	}
	return r
}

// bounds is the box of a plan.
func (p outlinePlan) bounds() scene.Box {
	b := scene.Box{X0: p.points[0].X, Y0: p.points[0].Y, X1: p.points[0].X, Y1: p.points[0].Y}
	for _, q := range p.points {
		b = scene.Box{X0: math.Min(b.X0, q.X), Y0: math.Min(b.Y0, q.Y), X1: math.Max(b.X1, q.X), Y1: math.Max(b.Y1, q.Y)}
	}
	return b
}

func (r *roomKey) draw() {
	k := r.look
	b := r.outline.bounds()
	view := scene.View{Box: b.Inset(-k.Of(2)), Scale: float64(r.scale), Metric: r.metric(), Name: "ROOM KEY", Ratio: draft.Ratio(r.scale, r.metric())}
	r.g = r.page.Viewed(view, datum("scale", fmt.Sprint(r.scale)))
	r.title()
	r.table()
	for i := range r.room.Walls {
		r.wall(i)
	}
	// marks that have one place, then the words beside them
	for _, letter := range append(r.starts(), r.changes()...) {
		letter()
	}
	for i := range r.room.Walls {
		r.corner(i)
	}
	for i := range r.room.Walls {
		r.mark(i)
	}
	for i := range r.room.Walls {
		r.label(i)
	}
	r.direction()
}

// title draws title and scale bar under the plan.
func (r *roomKey) title() {
	k := r.look
	second := "SCALE " + draft.Ratio(r.scale, r.metric()) + "   walls as measured, seen from above"
	x, y := r.box.X0, r.box.Y1+k.Of(12)
	t := draft.Title{Mark: "1", Page: r.leaf.number, Name: "ROOM KEY", Under: []string{second}, Width: k.Of(60), Most: r.box.W()}
	tb := t.Draw(&r.page.Group, k, scene.Pt(x, y))
	r.space.Take(tb)
	bar := draft.Bar{Scale: r.scale, Metric: r.metric()}
	most := math.Min(k.Of(104), r.box.X1-tb.X1-k.Of(30))
	if most > k.Of(20) {
		r.space.Take(bar.Draw(&r.page.Group, k, scene.Pt(tb.X1+k.Of(14), y+k.Of(1.5)), most))
	}
}

// wall draws the face of a wall: heavy where it is covered, thin where it is bare; openings break it.
func (r *roomKey) wall(i int) {
	k, w := r.look, &r.room.Walls[i]
	a, b := r.outline.ends(i)
	r.space.Stroke(a, b)
	in := r.g.Part(scene.Tag{Class: "wall", Title: w.Name, Data: []scene.Datum{datum("name", w.Name)}})
	width := 1.0 * k.Unit
	if !w.Cover {
		width = k.Seam
	}
	type stretch struct{ from, to float64 }
	parts := []stretch{{0, 1}}
	cut := func(from, to L) {
		f, t := float64(from)/float64(w.Length), float64(to)/float64(w.Length)
		var next []stretch
		for _, p := range parts {
			if f > p.from {
				next = append(next, stretch{p.from, math.Min(p.to, f)})
			}
			if t < p.to {
				next = append(next, stretch{math.Max(p.from, t), p.to})
			}
		}
		parts = next
	}
	for j := range w.Openings {
		o := &w.Openings[j]
		cut(o.FromLeft, o.Right())
		r.opening(in, i, o)
	}
	for _, s := range w.Bare {
		cut(s.From, s.To)
		in.Line(r.outline.along(i, float64(s.From)/float64(w.Length), 0), r.outline.along(i, float64(s.To)/float64(w.Length), 0), scene.Pen(scene.Walls, k.Seam))
	}
	for _, p := range parts {
		if p.to-p.from > 1e-9 {
			pen := scene.Pen(scene.Walls, width)
			in.Line(r.outline.along(i, p.from, 0), r.outline.along(i, p.to, 0), pen)
		}
	}
}

// opening draws the break of a wall: its jambs, and two thin lines across for a window, one for the rest.
func (r *roomKey) opening(g *scene.Group, i int, o *room.Opening) {
	k, w := r.look, &r.room.Walls[i]
	f, t := float64(o.FromLeft)/float64(w.Length), float64(o.Right())/float64(w.Length)
	d := k.Of(1.6)
	pen := scene.Pen(scene.Openings, k.Thin)
	for _, s := range []float64{f, t} {
		a, b := r.outline.along(i, s, -d/2), r.outline.along(i, s, d)
		g.Line(a, b, pen)
		r.space.Stroke(a, b)
	}
	if o.Kind == "window" {
		g.Line(r.outline.along(i, f, d), r.outline.along(i, t, d), pen)
		g.Line(r.outline.along(i, f, d/2), r.outline.along(i, t, d/2), scene.Pen(scene.Openings, k.Extension))
	}
	r.space.Stroke(r.outline.along(i, f, d), r.outline.along(i, t, d))
}

// corner marks a wrapped corner: its name in a circle, inside the room or out, where it is free.
func (r *roomKey) corner(i int) {
	k := r.look
	var c *layout.Corner
	for j := range r.plan.Runs {
		for n := range r.plan.Runs[j].Corners {
			if k := &r.plan.Runs[j].Corners[n]; k.LeftWall == i {
				c = k
			}
		}
	}
	if c == nil {
		return
	}
	at := r.outline.points[i+1]
	nx, ny := r.outline.outward(i)
	mx, my := r.outline.outward((i + 1) % len(r.room.Walls))
	dx, dy := nx+mx, ny+my
	l := math.Hypot(dx, dy)
	if l < 1e-6 {
		dx, dy, l = nx, ny, 1
	}
	dx, dy = dx/l, dy/l
	d := r.cornerDisc(c.Name)
	for _, out := range []float64{-5.6, 5.6, -9, 9, -13, 13, -18, 18, -24, 24, 30, -30, 38, -38, 46, 54} {
		for _, turn := range []float64{0, 35, -35, 70, -70} {
			sin, cos := scene.SinCos(turn)
			ux, uy := dx*cos-dy*sin, dx*sin+dy*cos
			m := at.Add(ux*k.Of(out), uy*k.Of(out))
			box := scene.Box{X0: m.X - d/2, Y0: m.Y - d/2, X1: m.X + d/2, Y1: m.Y + d/2}
			if !r.space.Free(box, k.Of(0.9)) || !r.space.FreeLine(at, m, k.Of(0.65)) {
				continue
			}
			in := r.g.Part(scene.Tag{Class: "corner", Title: "corner " + c.Name, Data: []scene.Datum{datum("name", c.Name)}})
			edge := m.Add(-ux*math.Copysign(d/2, out), -uy*math.Copysign(d/2, out))
			in.Line(at, edge, scene.Pen(scene.Marks, k.Dimension))
			r.space.Stroke(at.Add(ux*k.Of(math.Copysign(1, out)), uy*k.Of(math.Copysign(1, out))), edge)
			r.space.Take(draft.Disc(in, k, scene.Marks, m, d, k.Thin, c.Name, k.Small, true))
			if page := r.pageOf("corner " + c.Name); page != "" {
				r.page.Link(box, page)
			}
			return
		}
	}
}

// at is where a place of a run comes to lie on the plan, moved out of the room.
func (r *roomKey) at(run *layout.Run, wall int, x L, out float64) scene.Point {
	return r.outline.along(wall, float64(x)/float64(r.room.Walls[wall].Length), out)
}

// starts draws the triangle at which the hanging of each run starts. What letters them comes back.
func (r *roomKey) starts() (words []func()) {
	k := r.look
	for i := range r.plan.Runs {
		run := &r.plan.Runs[i]
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
			w := &r.room.Walls[st.Wall]
			if x > w.Length || x < -w.Length/50 {
				continue
			}
			x = max(x, 0)
			tip := r.at(run, st.Wall, x, -k.Of(1.4))
			nx, ny := r.outline.outward(st.Wall)
			direction := math.Atan2(-ny, nx) * 180 / math.Pi
			in := r.g.Part(scene.Tag{Class: "start", Title: "hanging starts with sheet " + numberOf(first)})
			draft.Triangle(in, scene.Marks, tip, direction, k.Of(5), k.Of(5), 0, false)
			back := r.at(run, st.Wall, x, -k.Of(6.4))
			r.space.Take(scene.Box{X0: math.Min(tip.X, back.X) - k.Of(2.5), Y0: math.Min(tip.Y, back.Y) - k.Of(2.5), X1: math.Max(tip.X, back.X) + k.Of(2.5), Y1: math.Max(tip.Y, back.Y) + k.Of(2.5)})
			words = append(words, func() { r.wordNear("START", r.at(run, st.Wall, x, -k.Of(11.4)), -nx, -ny, true) })
			break
		}
	}
	return words
}

// wordNear letters a word at a place, or further along a direction, where it is free.
func (r *roomKey) wordNear(text string, at scene.Point, dx, dy float64, bold bool) {
	k := r.look
	for step := range 40 {
		for _, side := range []float64{0, 1, -1, 2, -2} {
			t := scene.Text{At: at.Add(dx*k.Of(1.5)*float64(step)-dy*k.Of(7)*side, dy*k.Of(1.5)*float64(step)+dx*k.Of(7)*side), String: text, Height: k.Small, Bold: bold,
				Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			if r.space.Free(t.Bounds(), k.Of(1.15)) {
				r.g.Text(t)
				r.space.Take(t.Bounds())
				return
			}
		}
	}
}

// changes marks the closing seam and every change of flitch. What letters them comes back.
func (r *roomKey) changes() (list []func()) {
	k := r.look
	for i := range r.plan.Runs {
		run := &r.plan.Runs[i]
		for _, m := range run.Seams {
			if !m.Closing && !m.FlitchChange || run.Up {
				continue
			}
			at := r.at(run, m.Wall, m.X, 0)
			nx, ny := r.outline.outward(m.Wall)
			if m.Closing {
				draft.Diamond(r.g.Part(scene.Tag{Class: "closing", Title: "closing seam"}), k, scene.Marks, at, k.Of(5), k.Seam, scene.White)
			} else {
				draft.Hexagon(r.g.Part(scene.Tag{Class: "flitch-change", Title: "change of flitch"}), k, scene.Marks, at, k.Of(5.6), k.Seam)
			}
			r.space.Take(scene.Box{X0: at.X - k.Of(3), Y0: at.Y - k.Of(3), X1: at.X + k.Of(3), Y1: at.Y + k.Of(3)})
			words := numberOf(r.sheetAt(m.LeftSheet)) + " | " + numberOf(r.sheetAt(m.RightSheet))
			list = append(list, func() { r.wordNear(words, at.Add(nx*k.Of(6), ny*k.Of(6)), nx, ny, true) })
		}
	}
	return list
}

// mark draws the elevation mark of a wall inside the room, its arrow towards the wall.
func (r *roomKey) mark(i int) {
	k := r.look
	letter, ok := r.marks[i]
	if !ok {
		return
	}
	page := r.pageOf(wallKey(i))
	nx, ny := r.outline.outward(i)
	direction := math.Atan2(-ny, nx) * 180 / math.Pi
	R := k.Of(7)
	for out := -R*1.5 - k.Of(3.5); out > -k.Of(120); out -= k.Of(2) {
		for _, share := range []float64{0.5, 0.42, 0.58, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
			c := r.outline.along(i, share, out)
			box := scene.Box{X0: c.X - R, Y0: c.Y - R, X1: c.X + R, Y1: c.Y + R}
			tip := c.Add(nx*R*1.6, ny*R*1.6)
			box = box.Union(scene.Box{X0: tip.X - 0.01, Y0: tip.Y - 0.01, X1: tip.X + 0.01, Y1: tip.Y + 0.01})
			if !r.space.Free(box, k.Of(0.8)) || out < -k.Of(30) && !r.space.FreeLine(tip, r.outline.along(i, share, -k.Of(1.2)), k.Of(0.7)) {
				continue
			}
			in := r.g.Part(scene.Tag{Class: "elevation-mark", Title: "elevation of " + r.room.Walls[i].Name + ", page " + page, Data: []scene.Datum{datum("mark", letter), datum("page", page)}})
			r.space.Take(draft.Elevation(in, k, c, direction, letter, page))
			if out < -k.Of(30) { // far from its wall: a line leads to it
				in.Line(tip, r.outline.along(i, share, -k.Of(1.2)), scene.Pen(scene.Marks, k.Dimension))
				r.space.Stroke(tip, r.outline.along(i, share, -k.Of(1.2)))
			}
			if page != "" {
				r.page.Link(box, page)
			}
			return
		}
	}
}

// label letters a wall's name and sheets outside the room.
func (r *roomKey) label(i int) {
	k, w := r.look, &r.room.Walls[i]
	f := faceOf(r.plan, i)
	lines := []string{scene.Shorten(w.Name, k.Medium, false, k.Of(60))}
	if f != nil {
		var sheets []*layout.Sheet
		for _, p := range f.parts {
			sheets = append(sheets, p.sheets...)
		}
		lines = append(lines, short(sheets)...)
	} else {
		lines = append(lines, "bare")
	}
	wide := 0.0
	for j, line := range lines {
		wide = math.Max(wide, scene.Width(line, k.Medium, j > 0 && f != nil))
	}
	high := k.Medium*float64(len(lines)) + k.Of(2)*float64(len(lines)-1)
	nx, ny := r.outline.outward(i)
	for step := range 90 {
		for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.15, 0.85} {
			// five off the wall, then the half of the label that lies across
			off := k.Of(5) + math.Abs(nx)*wide/2 + math.Abs(ny)*high/2 + k.Of(1.6)*float64(step)
			c := r.outline.along(i, share, off)
			box := scene.Box{X0: c.X - wide/2, Y0: c.Y - high/2, X1: c.X + wide/2, Y1: c.Y + high/2}
			if !r.space.Free(box, k.Of(1.2)) || !r.box.Inset(-k.Of(4)).Contains(box) {
				continue
			}
			near := scene.Pt(math.Min(math.Max(r.outline.along(i, share, 0).X, box.X0), box.X1), math.Min(math.Max(r.outline.along(i, share, 0).Y, box.Y0), box.Y1))
			if step > 4 {
				from := r.outline.along(i, share, k.Of(0.8))
				if !r.space.FreeLine(from, near, k.Of(0.6)) {
					continue
				}
				end := near.Add(-nx*k.Of(1), -ny*k.Of(1))
				draft.Leader(r.g, k, r.space, from, end)
			}
			r.lettered(lines, box, f != nil, nx)
			return
		}
	}
	r.labelAside(i, lines, wide, high, f != nil)
}

// labelAside letters a wall that has no room outside, as between two others, at the nearest free place, on a leader.
func (r *roomKey) labelAside(i int, lines []string, wide, high float64, covered bool) {
	k := r.look
	for _, side := range []float64{-1, 1} { // from inside the room, then from outside
		for out := k.Of(8); out < k.Of(60); out += k.Of(2) {
			from := r.outline.along(i, 0.5, side*k.Of(0.8))
			for turn := range 24 {
				sin, cos := scene.SinCos(float64(turn) * 15)
				c := from.Add(out*cos, -out*sin)
				box := scene.Box{X0: c.X - wide/2, Y0: c.Y - high/2, X1: c.X + wide/2, Y1: c.Y + high/2}
				enter, _, ok := draft.Clip(from, c, box.Inset(-k.Of(1)))
				end := from.Add((c.X-from.X)*enter, (c.Y-from.Y)*enter)
				if !ok || enter <= 0 || !r.space.Free(box, k.Of(1.2)) || !r.box.Inset(-k.Of(4)).Contains(box) || !r.space.FreeLine(from, end, k.Of(0.6)) {
					continue
				}
				draft.Leader(r.g, k, r.space, from, end)
				r.lettered(lines, box, covered, 0)
				return
			}
		}
	}
}

// lettered letters the lines of a label in their box: ranged to a wall at the right or left of it, else centred.
func (r *roomKey) lettered(lines []string, box scene.Box, covered bool, nx float64) {
	k := r.look
	for j, line := range lines {
		y := box.Y0 + k.Medium/2 + float64(j)*(k.Medium+k.Of(2))
		t := scene.Text{At: scene.Pt(box.Centre().X, y), String: line, Height: k.Medium, Bold: j > 0 && covered, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
		if nx < -0.7 { // left of an upright wall: ranged to it
			t.At.X, t.Anchor = box.X1, scene.End
		} else if nx > 0.7 {
			t.At.X, t.Anchor = box.X0, scene.Start
		}
		r.g.Text(t)
	}
	r.space.Take(box)
}

// short are a wall's sheets in as few signs as can be, one line for each flitch: "7 to 15".
func short(sheets []*layout.Sheet) []string {
	var lines []string
	for i := 0; i < len(sheets); {
		j := i + 1
		for j < len(sheets) && sheets[j].Flitch == sheets[i].Flitch && sheets[j].Number >= sheets[j-1].Number {
			j++
		}
		text := span(sheets[i].Number, sheets[j-1].Number)
		if sheets[i].Number == 0 {
			text = "-"
		}
		lines = append(lines, text)
		i = j
	}
	return lines
}

// direction draws the arrow of the direction of hanging inside the room, along the first wall.
func (r *roomKey) direction() {
	k := r.look
	for _, share := range []float64{0.5, 0.35, 0.65} {
		for out := k.Of(22); out < k.Of(90); out += k.Of(4) {
			c := r.outline.along(0, share, -out)
			a, b := r.outline.ends(0)
			l := math.Hypot(b.X-a.X, b.Y-a.Y)
			if l == 0 {
				return
			}
			ux, uy := (b.X-a.X)/l*k.Of(14), (b.Y-a.Y)/l*k.Of(14)
			t := scene.Text{At: c.Add(-uy/14*4.4, ux/14*4.4), String: "hung this way", Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			box := t.Bounds().Union(scene.Box{X0: c.X - math.Abs(ux) - 1.2, Y0: c.Y - math.Abs(uy) - 1.2, X1: c.X + math.Abs(ux) + 1.2, Y1: c.Y + math.Abs(uy) + 1.2})
			if !r.space.Free(box, k.Of(1)) {
				continue
			}
			draft.Arrow(r.g, k, scene.Marks, c.Add(-ux, -uy), c.Add(ux, uy), k.Seam, false)
			r.g.Text(t)
			r.space.Take(box)
			return
		}
	}
}
