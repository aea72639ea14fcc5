package pages

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// wallBoard is the page of a wall, or of a piece of one, while its drawing is tried at one scale.
type wallBoard struct {
	*crewBoard
	w       *crewWall
	p       *piece
	v       draft.View
	area    scene.Box // what the drawing may take
	g       *scene.Group
	space   *draft.Space
	settled bool            // what finds no place over the ceiling stands beside the drawing
	above   bool            // something found no place over the ceiling
	below   bool            // or under the floor
	beside  []string        // words that stand beside the drawing
	outside []string        // how openings are cut whose white has no room for it
	cuts    []*layout.Sheet // whose cut length has no room in them
}

// note is some lines under a heading that stand beside the drawing, or on a page of their own.
type note struct {
	head  string
	lines []string
}

// air is what words keep clear of lines and of each other: 1 mm and half a line.
const crewAir = 1.2

// wallPage draws one piece of a wall, and the page after it where its lists are long.
func (c *crewSet) wallPage(w *crewWall, p *piece, n int) []*scene.Page {
	title := w.w.Name
	if len(w.pieces) > 1 {
		title += ", piece " + strconv.Itoa(p.index+1)
	}
	way := "left to right"
	if w.run.Up {
		way = "bottom to top"
	}
	lines := [2]string{c.place(), c.flitchWords(p.hangs) + ", " + way}
	var first []*scene.Page
	var kept *fit
	from, to := 0, mostMore
	if p.fits != nil { // known from the first time round
		from, to = p.fits.more, p.fits.more
	}
	for more := from; more <= to; more++ {
		b := c.open(n, "install-"+pad(n), title, false, lines)
		b.page.Title = title
		b.grow(more)
		d := c.fit(b, p, b.bar(b.field))
		b.page.Add(d.g)
		rest := b.tapeList(d, b.footStrip(d))
		out := []*scene.Page{b.page}
		if len(rest) == 0 {
			return out
		}
		if first == nil {
			first, kept = append(out, c.notesPages(title, n+1, rest)...), p.fits
		}
		p.fits = nil
	}
	p.fits = kept
	return first
}

// fit draws the wall as large as it goes with everything in its place. Where it would come out much smaller than it could,
// what finds no place stands beside the drawing instead.
func (c *crewSet) fit(b *crewBoard, p *piece, area scene.Box) *wallBoard {
	try := func(keep [2]float64, settled bool) *wallBoard {
		d := &wallBoard{crewBoard: b, w: p.wall, p: p, area: area, settled: settled}
		d.try(keep[0]*c.u, keep[1]*c.u)
		return d
	}
	if p.fits != nil {
		return try(p.fits.keep, p.fits.settled)
	}
	var d *wallBoard
	largest := int64(0)
	for _, settled := range []bool{false, true} {
		overLacks, underLacks := 0.0, 0.0
		for _, keep := range keeps(area.H() / c.u) {
			if keep[0] <= overLacks || keep[1] <= underLacks {
				continue // a smaller drawing with no more room about it has no better chance
			}
			d = try(keep, settled)
			if largest == 0 {
				largest = d.v.Scale
			}
			if !d.above && !d.below {
				p.fits = &fit{keep, settled, b.more}
				return d
			}
			if d.above {
				overLacks = max(overLacks, keep[0])
			}
			if d.below {
				underLacks = max(underLacks, keep[1])
			}
			if !settled && d.v.Scale*10 > largest*13 {
				break
			}
		}
	}
	return d
}

// keeps are the heights over and under a wall to try, those that leave the most for the wall first.
func keeps(high float64) [][2]float64 {
	var list [][2]float64
	for bottom := 24.5; bottom < high*0.42; bottom += 4 {
		for top := 21.0; top < high*0.48; top += 3 {
			list = append(list, [2]float64{top, bottom})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i][0]+list[i][1] < list[j][0]+list[j][1] })
	return list
}

// place names the room and the finish.
func (c *crewSet) place() string {
	p := c.room.Project
	s := ""
	for _, part := range []struct{ word, text string }{{"room ", p.Room}, {"", p.Tag}, {"", p.Title}} {
		switch {
		case part.text == "":
		case s == "":
			s = part.word + part.text
		default:
			s += ", " + part.word + part.text
		}
	}
	return s
}

func pad(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// try draws the wall with heights kept free over it and under it, and notes where they do not suffice.
func (d *wallBoard) try(top, bottom float64) {
	u := d.u
	margin, beside := d.marginWide(), d.rightWide()
	if d.w.run.Up {
		margin, beside = d.marginUp(), 30*u
	}
	low, high := d.extremes()
	wide := d.area.W() - margin - beside
	tall := d.area.H() - top - bottom
	length := (d.p.to - d.p.from).MM()
	scale := int64(max(math.Ceil(length/wide-1e-9), math.Ceil((high-low).MM()/tall-1e-9), 5))
	d.v = draft.View{Scale: scale}
	d.v.Origin.X = d.area.X0 + margin - d.v.MM(d.p.from) + (wide-length/float64(scale))/2
	// What height is left goes below and above in equal parts, but little above.
	rest := tall - d.v.MM(high-low)
	d.v.Origin.Y = d.area.Y0 + top + d.v.MM(high) + min(rest/2, 14*u)
	d.space = draft.NewSpace(d.area.Inset(1 * u))
	name := d.w.w.Name
	view := scene.View{Box: scene.Box{X0: d.v.X(d.p.from), Y0: d.v.Y(high), X1: d.v.X(d.p.to), Y1: d.v.Y(low)}, Scale: float64(scale), Metric: d.metric(), Name: name, Ratio: draft.Ratio(scale, d.metric())}
	d.g = &scene.Group{}
	inner := d.g.Viewed(view, datum("scale", strconv.FormatInt(scale, 10)), datum("wall", name))
	outer := d.g
	d.g = inner
	if d.w.run.Up {
		d.tryUp()
		d.g = outer
		return
	}
	d.outlines()
	d.openings()
	d.seams()
	d.covering()
	d.joints()
	d.levelLine()
	for _, draw := range []func(){d.flags, d.margins, d.boxes, d.sheetNumbers, d.heads, d.openingWords, d.scaleBar} {
		if draw(); d.above || d.below {
			break
		}
	}
	d.g = outer
}

// extremes are the lowest and the highest point of the piece's outline.
func (d *wallBoard) extremes() (low, high L) {
	w := d.w.w
	low, high = room.AtRight(w.Floor, d.p.from), room.AtRight(w.Ceiling, d.p.from)
	take := func(profile []room.Point) {
		for _, p := range profile {
			if p.X >= d.p.from && p.X <= d.p.to {
				low, high = min(low, p.Z), max(high, p.Z)
			}
		}
		for _, x := range []L{d.p.from, d.p.to} {
			for _, z := range []L{room.At(profile, x), room.AtRight(profile, x)} {
				low, high = min(low, z), max(high, z)
			}
		}
	}
	take(w.Floor)
	take(w.Ceiling)
	return low, high
}

// polygons cuts a shape of the wall to the piece.
func (d *wallBoard) polygons(s shape.Wall) []shape.Polygon {
	var cuts []L
	column := 0
	if d.p.leftCut() {
		cuts, column = append(cuts, d.p.from), 1
	}
	if d.p.rightCut() {
		cuts = append(cuts, d.p.to)
	}
	return shape.Grid(s, cuts, nil)[column][0]
}

func (d *wallBoard) points(o shape.Outline) []scene.Point {
	out := make([]scene.Point, len(o))
	for i, p := range o {
		out[i] = d.v.Pt(p.X, p.Z)
	}
	return out
}

// outlines draws the wall from floor to ceiling, and the floor.
func (d *wallBoard) outlines() {
	w := d.w.w
	wall := d.w.cover
	wall.Holes = nil
	wall.Floor, wall.Ceiling = wallProfile(w.Floor), wallProfile(w.Ceiling)
	pen := scene.Pen(scene.Walls, crewFine)
	for _, polygon := range d.polygons(wall) {
		d.edges(polygon.Outline, pen, true)
	}
}

func wallProfile(points []room.Point) []shape.Point {
	out := make([]shape.Point, len(points))
	for i, p := range points {
		out[i] = shape.Point{X: p.X, Z: p.Z}
	}
	return out
}

// edges draws the sides of an outline one by one: at a match line none, where the covering goes on round a bend, dashed.
func (d *wallBoard) edges(o shape.Outline, pen scene.Style, plain bool) {
	pen.Cap = scene.Square
	for i, p := range o {
		q := o[(i+1)%len(o)]
		a, b := d.v.Pt(p.X, p.Z), d.v.Pt(q.X, q.Z)
		style := pen
		switch {
		case d.p.leftCut() && p.X == d.p.from && q.X == p.X, d.p.rightCut() && p.X == d.p.to && q.X == p.X:
			continue
		case !plain && p.Z != q.Z && d.bent(p.X) && d.bent(q.X):
			style.Cap = scene.Butt
			style = style.As(scene.Dashed(pen.Width))
		}
		d.g.Line(a, b, style)
		d.space.Stroke(a, b)
	}
}

// bent reports whether the covering goes on round a bend at x.
func (d *wallBoard) bent(x L) bool {
	w := d.w
	near := func(end, lean L) bool { return min(end, end+lean) <= x && x <= max(end, end+lean) }
	for _, h := range d.p.hangs {
		if h.before && near(w.left, w.w.LeanLeft) || h.after && near(w.right, w.w.LeanRight) {
			return true
		}
	}
	for i := range w.w.Openings {
		if o := &w.w.Openings[i]; o.WrapReveal && (x == o.FromLeft || x == o.Right()) {
			return true
		}
	}
	return false
}

// covering draws the outline of what is covered.
func (d *wallBoard) covering() {
	g := d.g
	d.g = g.Part(scene.Tag{Class: "covering"})
	pen := scene.Pen(scene.Covering, crewHeavy)
	for _, polygon := range d.polygons(d.w.cover) {
		d.edges(polygon.Outline, pen, false)
		for _, hole := range polygon.Holes {
			d.edges(hole, pen, false)
		}
	}
	d.g = g
	for _, x := range d.matchLines() {
		low, high := d.extremes()
		a, b := d.v.Pt(x, high).Add(0, -6*d.u), d.v.Pt(x, low).Add(0, 1.5*d.u)
		d.g.Line(a, b, scene.Pen(scene.Walls, crewHeavy).As(scene.Phantom(crewFine)))
		d.space.Stroke(a, b)
	}
}

// scaleBar says at what scale the wall is drawn, where there is room under it.
func (d *wallBoard) scaleBar() {
	u := d.u
	bar := draft.Bar{Scale: d.v.Scale, Metric: d.metric()}
	ratio := "1:" + strconv.FormatInt(d.v.Scale, 10)
	k := d.look
	most := 42 * u
	words := scene.Width(ratio, crewSmall*u, false) + 4*u
	wide := bar.Wide(k, most) + words + 2*u
	if box, ok := d.under(wide, 6*u); ok {
		d.word(d.g, scene.Pt(box.X0, box.Y1-0.6*u), ratio, crewSmall*u, false, scene.Start)
		bar.Draw(d.g, k, scene.Pt(box.X0+words, box.Y1-0.6*u), most)
	}
}

// under finds a free place at the foot of the drawing, as low and as far left as it goes, and takes it.
func (d *wallBoard) under(wide, high float64) (scene.Box, bool) {
	u := d.u
	for y := d.area.Y1 - 1.8*u; y > d.area.Y1-24*u; y -= 2 * u {
		for x := d.area.X0 + 4*u; x+wide < d.area.X1; x += 4 * u {
			box := scene.Box{X0: x, Y0: y - high, X1: x + wide, Y1: y}
			if d.space.Free(box, crewAir*u) {
				d.space.Take(box)
				return box, true
			}
		}
	}
	d.lack(&d.below)
	return scene.Box{}, false
}

// matchLines are the places at which the wall goes on on another page.
func (d *wallBoard) matchLines() []L {
	var list []L
	if d.p.leftCut() {
		list = append(list, d.p.from)
	}
	if d.p.rightCut() {
		list = append(list, d.p.to)
	}
	return list
}

// openings draws what is open: its white and its edges.
func (d *wallBoard) openings() {
	for i := range d.w.w.Openings {
		o := &d.w.w.Openings[i]
		if box, ok := d.hole(o); ok {
			g := d.g.Part(scene.Tag{Class: "opening", Data: []scene.Datum{datum("name", o.Name), datum("left", mm(o.FromLeft)), datum("right", mm(o.Right()))}})
			pen := scene.Pen(scene.Openings, 0.5)
			pen.Fill = scene.Solid(scene.White)
			g.Rect(box, pen)
			d.space.Outline(box)
		}
	}
	for _, x := range d.w.w.Bare {
		from, to := max(x.From, d.p.from), min(x.To, d.p.to)
		if from >= to {
			continue
		}
		low, high := room.At(d.w.w.Floor, from), room.At(d.w.w.Ceiling, from)
		box := d.v.Box(from, low, to, high)
		draft.Hatch(d.g, scene.Pen(scene.Hatch, 0.18), box, 3*d.u, true)
		d.space.Take(box)
	}
}

// hole is the white of an opening on the page, false where the piece does not show it.
func (d *wallBoard) hole(o *room.Opening) (scene.Box, bool) {
	x0, x1 := max(o.FromLeft, d.p.from), min(o.Right(), d.p.to)
	z0 := o.Sill
	if !o.SillGiven {
		z0 = min(room.At(d.w.w.Floor, o.FromLeft), room.At(d.w.w.Floor, o.Right()))
	}
	if x0 >= x1 {
		return scene.Box{}, false
	}
	return d.v.Box(x0, z0, x1, o.Head), true
}

// shows lists the heights between which a line straight up at x shows in the covering.
func (d *wallBoard) shows(x L) [][2]L {
	w := d.w.w
	list := [][2]L{{max(room.At(w.CoverFloor(), x), room.AtRight(w.CoverFloor(), x)), min(room.At(w.CoverCeiling(), x), room.AtRight(w.CoverCeiling(), x))}}
	cut := func(low, high L) {
		var next [][2]L
		for _, s := range list {
			if low > s[0] {
				next = append(next, [2]L{s[0], min(s[1], low)})
			}
			if high < s[1] {
				next = append(next, [2]L{max(s[0], high), s[1]})
			}
		}
		list = next
	}
	for i := range w.Openings {
		if o := &w.Openings[i]; o.FromLeft <= x && x <= o.Right() {
			low := L(math.MinInt64)
			if o.SillGiven {
				low = o.Sill
			}
			cut(low, o.Head)
		}
	}
	for _, b := range w.Bare {
		if b.From <= x && x <= b.To {
			cut(math.MinInt64, math.MaxInt64)
		}
	}
	var out [][2]L
	for _, s := range list {
		if s[0] < s[1] {
			out = append(out, s)
		}
	}
	return out
}

// seams draws the finished joints.
func (d *wallBoard) seams() {
	for _, h := range d.p.hangs {
		if h.seam == nil || !d.p.here(h) {
			continue
		}
		g := d.g.Part(scene.Tag{Class: "seam", Title: "seam " + strconv.Itoa(h.seam.Number), Data: []scene.Datum{datum("at", mm(h.seam.At))}})
		for _, s := range d.shows(h.x) {
			a, b := d.v.Pt(h.x, s[0]), d.v.Pt(h.x, s[1])
			g.Line(a, b, scene.Pen(scene.Seams, crewFine))
			d.space.Stroke(a, b)
		}
	}
}

// joints draws the end matches of courses.
func (d *wallBoard) joints() {
	for _, h := range d.p.hangs {
		for _, s := range h.sheets[1:] {
			for _, p := range s.Pieces {
				if p.Wall != d.w.wall {
					continue
				}
				for i, a := range p.Outline {
					b := p.Outline[(i+1)%len(p.Outline)]
					if a.Z == b.Z && a.Z == p.Outline[0].Z && a.X < b.X {
						x0, x1 := max(a.X, d.p.from), min(b.X, d.p.to)
						if x0 < x1 {
							d.g.Line(d.v.Pt(x0, a.Z), d.v.Pt(x1, a.Z), scene.Pen(scene.Seams, crewFine))
							d.space.Stroke(d.v.Pt(x0, a.Z), d.v.Pt(x1, a.Z))
						}
					}
				}
			}
		}
	}
}

// levelLine draws the line to which the marks are hung, but not over the white of openings.
func (d *wallBoard) levelLine() {
	var clear []scene.Box
	for i := range d.w.w.Openings {
		if box, ok := d.hole(&d.w.w.Openings[i]); ok {
			clear = append(clear, box)
		}
	}
	if low, high := d.extremes(); d.level <= low || d.level >= high {
		return
	}
	y := d.v.Y(d.level)
	a, b := scene.Pt(d.leftEdge()-2*d.u, y), scene.Pt(d.v.X(d.p.to)+2*d.u, y)
	points := draft.Outside(a, b, clear...)
	for i := 0; i+1 < len(points); i += 2 {
		d.g.Line(points[i], points[i+1], scene.Pen(scene.Plumb, crewFine).As(scene.Chain(crewFine)))
		d.space.Stroke(points[i], points[i+1])
	}
}

// lack notes that something found no place over the ceiling or under the floor.
func (d *wallBoard) lack(what *bool) { *what = true }
