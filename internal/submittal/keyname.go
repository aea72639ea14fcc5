package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Places for what stands in the room as a whole, in mm on the office page.
const (
	nameStep  = 3.0
	nameReach = 150.0
	nameTurns = 16
	nameWide  = 70.0
	fromWall  = 24.0 // into a room that its walls do not go round
)

// name letters what the room is called, its number in a box under it, as near to its middle as there is room.
func (r *roomKey) name() {
	k, p := r.Look, &r.Room.Project
	if r.Room.Space.Name == "" && p.Room == "" {
		return
	}
	var lines []string
	if r.Room.Space.Name != "" {
		lines = scene.Wrap(r.Room.Space.Name, k.Medium, true, k.Of(nameWide))
	}
	pitch := k.Medium + k.Of(2)
	wide, high := 0.0, float64(len(lines))*pitch
	for _, line := range lines {
		wide = math.Max(wide, scene.Width(line, k.Medium, true))
	}
	tag := scene.Width(p.Room, k.Medium, false) + k.Of(3)
	if p.Room != "" {
		wide, high = math.Max(wide, tag), high+k.Medium+k.Of(2.4)
	}
	m := r.middle()
	for out := 0.0; out < k.Of(nameReach); out += k.Of(nameStep) {
		for turn := range nameTurns {
			sin, cos := scene.SinCos(float64(turn) * 360 / nameTurns)
			c := m.Add(out*cos, out*sin)
			box := scene.BoxRound(c, wide, high)
			if !r.Space.Free(box, k.Of(2)) || !r.outline.Sees(m, c) {
				continue
			}
			r.Space.Take(box)
			in := r.g.Part(scene.Tag{Class: "room-name"})
			y := box.Y0
			for _, line := range lines {
				in.Text(scene.Text{At: scene.Pt(c.X, y), String: line, Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Notes})
				y += pitch
			}
			if p.Room != "" {
				tagBox := scene.Box{X0: c.X - tag/2, Y0: y, X1: c.X + tag/2, Y1: box.Y1}
				in.Rect(tagBox, scene.Pen(scene.Marks, k.Thin))
				in.Text(scene.Text{At: tagBox.Centre(), String: p.Room, Height: k.Medium, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
			}
			return
		}
	}
}

// round is the area that the walls go round, twice and under 0 where one goes round them, and its middle.
func (r *roomKey) round() (area float64, m scene.Point) {
	var points []scene.Point
	for i := range r.Room.Walls {
		a, b := r.outline.Ends(i)
		points = append(points, a, b)
	}
	x, y := 0.0, 0.0
	for i, a := range points {
		b := points[(i+1)%len(points)]
		part := a.X*b.Y - b.X*a.Y
		area, x, y = area+part, x+(a.X+b.X)*part, y+(a.Y+b.Y)*part
	}
	if area == 0 {
		return 0, m
	}
	return area, scene.Pt(x/(3*area), y/(3*area))
}

// goneRound reports whether one goes round the walls, as round a column.
func (r *roomKey) goneRound() bool {
	area, _ := r.round()
	return r.Room.Space.Closed && area < 0
}

// middle is the middle of the room: of what its walls go round, else off the middle of the longest wall.
func (r *roomKey) middle() scene.Point {
	longest := 0
	for i := range r.Room.Walls {
		if r.Room.Walls[i].Length > r.Room.Walls[longest].Length {
			longest = i
		}
	}
	area, m := r.round()
	if least := 2 * r.Look.Of(10) * r.Look.Of(10); area > least && r.outline.Sees(r.outline.Along(longest, 0.5, -0.1), m) {
		return m
	}
	return r.outline.Along(longest, 0.5, -r.Look.Of(fromWall))
}

// Places for the arrow of the direction of hanging, in mm on the office page from the wall into the room.
const (
	arrowFirst = 4.0
	arrowReach = 90.0
	arrowStep  = 2.0
	arrowLong  = 18.0
)

// arrowShares are its places along the wall, as shares of the wall's length.
var arrowShares = []float64{0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85}

// direction draws the arrow of the direction of hanging inside the room, along the first wall, which runs from left to right: off the
// middle of the wall as near as it is free, then off a place aside. Of several runs, which go different ways on the plan, it names that
// wall, or says its letter where its name has no room.
func (r *roomKey) direction() {
	words := []string{"hung this way"}
	switch {
	case r.Room.Veneer.Horizontal: // no way along the walls
		words = []string{"hung from the foot up"}
	case len(r.Plan.Runs) > 1:
		words = []string{r.Room.Walls[0].Name + " is hung this way", r.Marks[0] + " is hung this way"}
	}
	for _, said := range words {
		if r.directed(said) {
			return
		}
	}
}

// directed draws the arrow with its words where they have room, and reports whether they have.
func (r *roomKey) directed(words string) bool {
	k := r.Look
	for out := k.Of(arrowFirst); out < k.Of(arrowReach); out += k.Of(arrowStep) {
		for _, share := range arrowShares {
			c := r.outline.Along(0, share, -out)
			t := scene.Text{String: words, Height: k.Small, Seat: scene.Centred, Layer: scene.Marks}
			wide := t.Width()
			if !r.Room.Veneer.Horizontal {
				wide += k.Of(2) + k.Of(arrowLong)
			}
			box := scene.BoxRound(c, wide, k.Small)
			if !r.Space.Free(box, k.Of(1.6)) || !r.outline.Sees(r.outline.Along(0, share, -0.1), c) {
				continue
			}
			t.At = scene.Pt(box.X0, c.Y)
			r.g.Text(t)
			r.Space.Take(box)
			if !r.Room.Veneer.Horizontal {
				draft.Arrow(r.g, k, scene.Marks, scene.Pt(box.X1-k.Of(arrowLong), c.Y), scene.Pt(box.X1, c.Y), k.Seam, false)
			}
			return true
		}
	}
	return false
}

// northSize is the radius of the circle round the arrow to the north, in mm on the office page.
const northSize = 6.0

// north draws the arrow to the north in a corner of the plan, the upper right one first, else where there is room further down and in.
func (r *roomKey) north() {
	if r.Room.Space.North == nil {
		return
	}
	k := r.Look
	R := k.Of(northSize)
	full := R + k.Of(1.5) + k.Small
	in := r.box.Inset(full)
	for off := 0.0; off < in.W(); off += full {
		for down := 0.0; down < in.H(); down += full / 2 {
			for _, x := range []float64{in.X1 - off, in.X0 + off} {
				c := scene.Pt(x, in.Y0+down)
				if r.Space.Free(scene.BoxRound(c, 2*full, 2*full), k.Of(1)) {
					r.Space.Take(folio.North(r.g, k, c, R, *r.Room.Space.North))
					return
				}
			}
		}
	}
}
