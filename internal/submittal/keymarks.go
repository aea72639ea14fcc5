package submittal

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Places for an elevation mark, in mm on the office page from its wall into the room.
const (
	markClear = 3.5   // between the wall and the arrow
	markClose = 1.5   // the same where the room is narrow
	markFar   = 30.0  // from here on a line leads to the wall
	markReach = 120.0 // so far it may stand away
	markStep  = 2.0
)

// markShares are the places of a mark along what its view shows of the wall, as shares of that: in the middle, then by turns to both
// sides.
var markShares = []float64{0.5, 0.42, 0.58, 0.36, 0.64, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9}

// elevationMark is the mark of a view: what stands in it, and where along the wall it may stand.
type elevationMark struct {
	wall         int
	letter, page string
	from, to     float64 // shares of the wall
	name         string  // of a short wall, which has no room for a label; "" for none
}

// marks draws the elevation marks of a wall, one for each of its views: the letter that the title of the view has. Off a short wall
// those come first that need little room.
func (r *roomKey) marks(i int, short bool) {
	letter, ok := r.Marks[i]
	if !ok {
		return
	}
	views := r.shown(i)
	if len(views) == 0 { // before there are pages
		views = []shownOn{{folio.Stretch{Wall: i, To: r.Room.Walls[i].Length}, r.PageOf(folio.WallKey(i))}}
	}
	for n, v := range views {
		m := elevationMark{wall: i, letter: letter, page: v.page, from: math.Max(r.share(i, v.From), 0), to: math.Min(r.share(i, v.To), 1)}
		if len(views) > 1 {
			m.letter = elevation.PieceMark(letter, n)
		}
		named := m
		named.name = r.Room.Walls[i].Name
		switch {
		case short && (r.flatMark(named) || r.ledMark(named)):
			r.named[i] = true
		case short && (r.flatMark(m) || r.ledMark(m)):
		case r.mark(m):
		case r.flatMark(m), r.ledMark(m):
			r.squeezed++
		default:
			r.missed.marks = append(r.missed.marks, missedMark{m, n})
		}
	}
}

// line is the mark in one line, and how much of it the letter and the page take before the name of the wall.
func (m elevationMark) line(k draft.Look) (words string, width, before float64) {
	words = m.letter + "  " + m.page
	width = scene.Width(words, k.Small, true)
	before = width + k.Of(1.6)
	if m.name != "" {
		width = before + scene.Width(m.name, k.Small, false)
	}
	return words, width, before
}

// lineAt letters the mark in one line from a place on.
func (m elevationMark) lineAt(g *scene.Group, k draft.Look, at scene.Point) {
	words, _, before := m.line(k)
	g.Text(scene.Text{At: at, String: words, Height: k.Small, Bold: true, Seat: scene.Centred, Layer: scene.Marks})
	if m.name != "" {
		g.Text(scene.Text{At: at.Add(before, 0), String: m.name, Height: k.Small, Seat: scene.Centred, Layer: scene.Marks})
	}
}

// mark draws an elevation mark in the room that it looks from, its arrow towards the wall, in the first place that is free: as near to
// the wall as can be, at each distance near the middle of its view.
func (r *roomKey) mark(m elevationMark) bool {
	k := r.Look
	R := draft.ElevationRadius(k, m.page)
	near := R*draft.ElevationTip + k.Of(markClear)
	outs := []float64{near, near - k.Of(markClear-markClose)}
	for out := near + k.Of(markStep); out < k.Of(markReach); out += k.Of(markStep) {
		outs = append(outs, out)
	}
	nx, ny := r.outline.Outward(m.wall)
	direction := math.Round(math.Atan2(-ny, nx)*180/math.Pi*1e6) / 1e6
	for _, at := range r.markPlaces(m, outs) {
		out, share := at[0], at[1]
		c, foot := r.outline.Along(m.wall, share, -out), r.outline.Along(m.wall, share, -k.Of(1.2))
		tip := c.Add(nx*R*draft.ElevationTip, ny*R*draft.ElevationTip)
		box := scene.BoxRound(c, 2*R, 2*R).Union(scene.BoxRound(tip, 0.02, 0.02))
		led := out > k.Of(markFar)
		if !r.Space.Free(box, k.Of(0.8)) || !r.outline.Sees(foot, c) || led && !r.Space.FreeLine(tip, foot, k.Of(0.7)) {
			continue
		}
		in := r.markGroup(m)
		in.Data = append(in.Data, folio.Datum("at", folio.Mm(L(share*float64(r.Room.Walls[m.wall].Length)))))
		r.Space.Take(draft.Elevation(in, k, c, direction, m.letter, m.page))
		if led { // far from its wall: a line leads to it
			in.Line(tip, foot, scene.Pen(scene.Marks, k.Dimension))
			r.Space.Stroke(tip, foot)
		}
		if m.page != "" {
			r.Page.Link(box, m.page)
		}
		return true
	}
	return false
}

// markPlaces are the places of a mark, out from its wall and along it: at each distance those before the wall itself, then, where nothing
// but openings is in sight, those before an opening, for an arrow into a door seems to be a mark of the door.
func (r *roomKey) markPlaces(m elevationMark, outs []float64) (list [][2]float64) {
	var before [][2]float64
	w := &r.Room.Walls[m.wall]
	for _, out := range outs {
		for _, s := range markShares {
			share := m.from + (m.to-m.from)*s
			if slices.ContainsFunc(w.Openings, func(o room.Opening) bool {
				return share > r.share(m.wall, o.FromLeft) && share < r.share(m.wall, o.Right())
			}) {
				before = append(before, [2]float64{out, share})
			} else {
				list = append(list, [2]float64{out, share})
			}
		}
	}
	near := 0
	for near < len(list) && list[near][0] <= r.Look.Of(markFar) {
		near++
	}
	return slices.Concat(list[:near], before, list[near:])
}

// markGroup is the group that a mark is drawn into.
func (r *roomKey) markGroup(m elevationMark) *scene.Group {
	name := r.Room.Walls[m.wall].Name
	return r.g.Part(scene.Tag{Class: "elevation-mark", Title: "elevation of " + name + ", page " + m.page,
		Data: []scene.Datum{folio.Datum("mark", m.letter), folio.Datum("page", m.page), folio.Datum("wall", name)}})
}

// The mark of a view where the room is too narrow for a circle, in mm on the office page.
const (
	flatArrow = 2.8 // how long its arrow is
	flatClear = 1.3 // between the wall and the arrow
	flatReach = 60.0
	flatStep  = 1.5
)

// flatMark draws the mark of a view without its circle: an arrow to the wall, letter and page in one line beside it.
func (r *roomKey) flatMark(m elevationMark) bool {
	k := r.Look
	nx, ny := r.outline.Outward(m.wall)
	direction := math.Round(math.Atan2(-ny, nx)*180/math.Pi*1e6) / 1e6
	_, wide, _ := m.line(k)
	for out := k.Of(flatClear); out < k.Of(flatReach); out += k.Of(flatStep) {
		for _, s := range markShares {
			share := m.from + (m.to-m.from)*s
			tip, foot := r.outline.Along(m.wall, share, -out), r.outline.Along(m.wall, share, -k.Of(0.6))
			back := tip.Add(-nx*k.Of(flatArrow), -ny*k.Of(flatArrow))
			at := tip.Add(-nx*k.Of(flatArrow/2)+k.Of(2.4), -ny*k.Of(flatArrow/2))
			switch { // off an upright wall the words stand behind the arrow
			case nx > 0.5:
				at = back.Add(-k.Of(0.9)-wide, 0)
			case nx < -0.5:
				at = back.Add(k.Of(0.9), 0)
			}
			words := scene.Box{X0: at.X, Y0: at.Y - k.Small*0.7, X1: at.X + wide, Y1: at.Y + k.Small*0.8} // letters reach over and under capitals
			box := scene.Around(tip, back).Inset(-k.Of(1.4)).Union(words)
			if math.Abs(ny) > 0.999 { // its point may come near to the wall
				box.Y0, box.Y1 = math.Min(math.Min(tip.Y, back.Y), words.Y0), math.Max(math.Max(tip.Y, back.Y), words.Y1)
			}
			led := out > 3*k.Of(flatClear)
			if !r.Space.Free(box, k.Of(0.75)) || !r.outline.Sees(foot, back) || !r.outline.Sees(foot, words.Centre()) || led && !r.Space.FreeLine(tip, foot, k.Of(0.7)) {
				continue
			}
			in := r.markGroup(m)
			draft.Triangle(in, scene.Marks, tip, direction, k.Of(flatArrow), k.Of(flatArrow), 0, false)
			m.lineAt(in, k, at)
			r.Space.Take(box)
			if led {
				in.Line(tip, foot, scene.Pen(scene.Marks, k.Dimension))
				r.Space.Stroke(tip, foot)
			}
			if m.page != "" {
				r.Page.Link(box, m.page)
			}
			return true
		}
	}
	return false
}

// ledMark draws the mark of a view off a wall that leaves no room before it: letter and page in one line, and an arrow from there to
// the wall, ring by ring round the middle of the view, on each from the right anticlockwise.
func (r *roomKey) ledMark(m elevationMark) bool {
	k := r.Look
	foot := r.outline.Along(m.wall, (m.from+m.to)/2, -k.Of(0.7))
	_, wide, _ := m.line(k)
	place := r.ring(foot, wide, 1.5*k.Small, asideFirst, func(c scene.Point) bool { return r.outline.Sees(foot, c) })
	if place.IsZero() {
		return false
	}
	in := r.markGroup(m)
	from := ringEnd(k, foot, place)
	draft.Arrow(in, k, scene.Marks, from, foot, k.Thin, false)
	m.lineAt(in, k, scene.Pt(place.X0, place.Centre().Y))
	r.took(place, from, foot)
	if m.page != "" {
		r.Page.Link(place, m.page)
	}
	return true
}
