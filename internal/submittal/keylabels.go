package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// Places for an elevation mark, in mm on the office page from its wall into the room.
const (
	markClear = 3.5   // between the wall and the arrow
	markFar   = 30.0  // from here on a line leads to the wall
	markReach = 120.0 // so far it may stand away
	markStep  = 2.0
)

// markShares are the places of a mark along its wall, as shares of the wall's length: in the middle, then by turns to both
// sides.
var markShares = []float64{0.5, 0.42, 0.58, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}

// mark draws the elevation mark of a wall inside the room, its arrow towards the wall, in the first place that is free:
// as near to the wall as can be, at each distance near its middle.
func (r *roomKey) mark(i int) {
	k := r.Look
	letter, ok := r.Marks[i]
	if !ok {
		return
	}
	page := r.PageOf(folio.WallKey(i))
	nx, ny := r.outline.Outward(i)
	direction := math.Atan2(-ny, nx) * 180 / math.Pi
	R := k.Of(7)
	for out := -R*1.5 - k.Of(markClear); out > -k.Of(markReach); out -= k.Of(markStep) {
		for _, share := range markShares {
			c := r.outline.Along(i, share, out)
			box := scene.BoxRound(c, 2*R, 2*R)
			tip := c.Add(nx*R*1.6, ny*R*1.6)
			box = box.Union(scene.BoxRound(tip, 0.02, 0.02))
			if !r.Space.Free(box, k.Of(0.8)) || out < -k.Of(markFar) && !r.Space.FreeLine(tip, r.outline.Along(i, share, -k.Of(1.2)), k.Of(0.7)) {
				continue
			}
			in := r.g.Part(scene.Tag{Class: "elevation-mark", Title: "elevation of " + r.Room.Walls[i].Name + ", page " + page, Data: []scene.Datum{folio.Datum("mark", letter), folio.Datum("page", page)}})
			r.Space.Take(draft.Elevation(in, k, c, direction, letter, page))
			if out < -k.Of(markFar) { // far from its wall: a line leads to it
				in.Line(tip, r.outline.Along(i, share, -k.Of(1.2)), scene.Pen(scene.Marks, k.Dimension))
				r.Space.Stroke(tip, r.outline.Along(i, share, -k.Of(1.2)))
			}
			if page != "" {
				r.Page.Link(box, page)
			}
			return
		}
	}
}

// Places for the label of a wall, in mm on the office page.
const (
	labelClear  = 5.0 // between the wall and the half of the label that lies across
	labelStep   = 1.6 // from one distance from the wall to the next
	labelSteps  = 90
	labelLeader = 5 // from this step on a leader leads to the wall

	asideFirst = 8.0 // from the wall of a label that stands to any side
	asideReach = 60.0
	asideStep  = 2.0
	asideTurns = 24 // places on a ring
)

// labelShares are the places of a label along its wall, as shares of the wall's length.
var labelShares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.15, 0.85}

// label letters a wall's name and sheets in the first place that is free:
//
//  1. outside the room as near to the wall as can be, at each distance near its middle; far from it on a leader;
//  2. to any side, see labelAside.
func (r *roomKey) label(i int) {
	k, w := r.Look, &r.Room.Walls[i]
	f := face.On(r.Plan, i)
	lines := draft.Folded(w.Name, k.Medium, false, k.Of(60))
	named := len(lines) // these are not bold
	if f != nil {
		var sheets []*layout.Sheet
		for _, p := range f.Parts {
			sheets = append(sheets, p.Sheets...)
		}
		lines = append(lines, short(sheets)...)
	} else {
		lines = append(lines, "bare")
		named++
	}
	wide := 0.0
	for j, line := range lines {
		wide = math.Max(wide, scene.Width(line, k.Medium, j >= named))
	}
	high := k.Medium*float64(len(lines)) + k.Of(2)*float64(len(lines)-1)
	nx, ny := r.outline.Outward(i)
	for step := range labelSteps {
		for _, share := range labelShares {
			off := k.Of(labelClear) + math.Abs(nx)*wide/2 + math.Abs(ny)*high/2 + k.Of(labelStep)*float64(step)
			c := r.outline.Along(i, share, off)
			box := scene.BoxRound(c, wide, high)
			if !r.Space.Free(box, k.Of(1.2)) || !r.box.Inset(-k.Of(4)).Contains(box) {
				continue
			}
			near := scene.Pt(math.Min(math.Max(r.outline.Along(i, share, 0).X, box.X0), box.X1), math.Min(math.Max(r.outline.Along(i, share, 0).Y, box.Y0), box.Y1))
			if step >= labelLeader {
				from := r.outline.Along(i, share, k.Of(0.8))
				if !r.Space.FreeLine(from, near, k.Of(0.6)) {
					continue
				}
				end := near.Add(-nx*k.Of(1), -ny*k.Of(1))
				draft.Leader(r.g, k, r.Space, from, end)
			}
			r.lettered(lines, named, box, nx)
			return
		}
	}
	r.labelAside(i, lines, named, wide, high)
}

// labelAside letters a wall that has no room outside, as between two others, on a leader: from inside the room, where the
// wall is seen, then from outside; ring by ring round its middle, on each from the right anticlockwise.
func (r *roomKey) labelAside(i int, lines []string, named int, wide, high float64) {
	k := r.Look
	for _, side := range []float64{-1, 1} {
		for out := k.Of(asideFirst); out < k.Of(asideReach); out += k.Of(asideStep) {
			from := r.outline.Along(i, 0.5, side*k.Of(0.8))
			for turn := range asideTurns {
				sin, cos := scene.SinCos(float64(turn) * 360 / asideTurns)
				c := from.Add(out*cos, -out*sin)
				box := scene.BoxRound(c, wide, high)
				enter, _, ok := draft.Clip(from, c, box.Inset(-k.Of(1)))
				end := from.Add((c.X-from.X)*enter, (c.Y-from.Y)*enter)
				if !ok || enter <= 0 || !r.Space.Free(box, k.Of(1.2)) || !r.box.Inset(-k.Of(4)).Contains(box) || !r.Space.FreeLine(from, end, k.Of(0.6)) {
					continue
				}
				draft.Leader(r.g, k, r.Space, from, end)
				r.lettered(lines, named, box, 0)
				return
			}
		}
	}
}

// lettered letters the lines of a label in their box: ranged to a wall at the right or left of it, else centred.
func (r *roomKey) lettered(lines []string, named int, box scene.Box, nx float64) {
	k := r.Look
	for j, line := range lines {
		y := box.Y0 + k.Medium/2 + float64(j)*(k.Medium+k.Of(2))
		t := scene.Text{At: scene.Pt(box.Centre().X, y), String: line, Height: k.Medium, Bold: j >= named, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
		if nx < -0.7 { // left of an upright wall: ranged to it
			t.At.X, t.Anchor = box.X1, scene.End
		} else if nx > 0.7 {
			t.At.X, t.Anchor = box.X0, scene.Start
		}
		r.g.Text(t)
	}
	r.Space.Take(box)
}

// short are a wall's sheets in as few signs as can be, one line for each flitch: "7 to 15".
func short(sheets []*layout.Sheet) []string {
	var lines []string
	for i := 0; i < len(sheets); {
		j := i + 1
		for j < len(sheets) && sheets[j].Flitch == sheets[i].Flitch && sheets[j].Number >= sheets[j-1].Number {
			j++
		}
		text := elevation.Span(sheets[i].Number, sheets[j-1].Number)
		if sheets[i].Number == 0 {
			text = "-"
		}
		lines = append(lines, text)
		i = j
	}
	return lines
}

// Places for the arrow of the direction of hanging, in mm on the office page from the wall into the room.
const (
	arrowFirst = 22.0 // clear of the elevation marks
	arrowReach = 90.0
	arrowStep  = 4.0
)

// arrowShares are its places along the wall, as shares of the wall's length.
var arrowShares = []float64{0.5, 0.35, 0.65}

// direction draws the arrow of the direction of hanging inside the room, along the first wall: off the middle of the wall
// as near as it is free, then off a place aside.
func (r *roomKey) direction() {
	k := r.Look
	for _, share := range arrowShares {
		for out := k.Of(arrowFirst); out < k.Of(arrowReach); out += k.Of(arrowStep) {
			c := r.outline.Along(0, share, -out)
			a, b := r.outline.Ends(0)
			l := math.Hypot(b.X-a.X, b.Y-a.Y)
			if l == 0 {
				return
			}
			ux, uy := (b.X-a.X)/l*k.Of(14), (b.Y-a.Y)/l*k.Of(14)
			t := scene.Text{At: c.Add(-uy/14*4.4, ux/14*4.4), String: "hung this way", Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			box := t.Bounds().Union(scene.Box{X0: c.X - math.Abs(ux) - 1.2, Y0: c.Y - math.Abs(uy) - 1.2, X1: c.X + math.Abs(ux) + 1.2, Y1: c.Y + math.Abs(uy) + 1.2})
			if !r.Space.Free(box, k.Of(1)) {
				continue
			}
			draft.Arrow(r.g, k, scene.Marks, c.Add(-ux, -uy), c.Add(ux, uy), k.Seam, false)
			r.g.Text(t)
			r.Space.Take(box)
			return
		}
	}
}
