package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// The list of what has no place on a drawing counts by small letters, each in a square on the drawing too, where what it says belongs:
// circles are sheets, walls and corners, pentagons deviations, triangles revisions.

// letterOf is the letter of the i-th thing of a list: a to z, then aa.
func letterOf(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return letterOf(i/26-1) + letterOf(i%26)
}

// Of the square round a letter, in mm on the office page.
const (
	letterSquare = 4.2
	letterSide   = 1.4 // between a letter and the square, at its sides
	letterNear   = 3.6 // of a leader, at the least
)

// letters puts the letter of each thing in the list to its place on the drawing: on it, where that is free, else on a leader as near as
// can be. What has room for neither is found by the figures in the list.
func (e *View) letters() {
	k := e.Look
	for i, s := range e.listed {
		text := letterOf(e.before + i)
		w, h := math.Max(k.Of(letterSquare), scene.Width(text, k.Small, true)+2*k.Of(letterSide)), k.Of(letterSquare)
		c, dot, ok := e.letterPlace(s.at, w, h)
		if !ok {
			continue
		}
		box := scene.BoxRound(c, w, h)
		if enter, _, out := draft.Clip(dot, c, box); out && enter > 0 {
			e.leader(e.Group, dot, dot.Add((c.X-dot.X)*enter, (c.Y-dot.Y)*enter))
		}
		in := e.Group.Part(scene.Tag{Class: "list-letter", Title: s.words, Data: []scene.Datum{folio.Datum("letter", text)}})
		in.Rect(box, scene.Pen(scene.Marks, k.Thin).Filled(scene.White))
		in.Text(scene.Text{At: c, String: text, Height: k.Small, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks})
		e.Space.Take(box)
	}
}

// letterPlace is the first free place of a square that stands on one of some points; else beside one, on a leader that begins there.
func (e *View) letterPlace(points []scene.Point, w, h float64) (c, dot scene.Point, ok bool) {
	k := e.Look
	for _, p := range points {
		p = e.V.Origin.Add(p.X, p.Y)
		if e.Space.Free(scene.BoxRound(p, w, h), k.Of(0.8)) {
			return p, p, true
		}
	}
	for _, p := range points {
		p = e.V.Origin.Add(p.X, p.Y)
		if !e.Space.FreeOfWords(scene.BoxRound(p, 1, 1), 0) {
			continue
		}
		if c, ok := e.callOut(p, w, h, w/2+k.Of(letterNear)); ok {
			return c, p, true
		}
	}
	return scene.Point{}, scene.Point{}, false
}

// letterShares are the heights at which something is pointed to that goes up the wall, as shares of the covering from its foot.
var letterShares = []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9}

// midAt are places up the covering at a place along the wall, the middle first.
func (e *View) midAt(x L) (list []scene.Point) {
	bottom, top := e.F.Cover(x)
	for _, share := range letterShares {
		list = append(list, e.V.Pt(x, bottom+L(share*float64(top-bottom))))
	}
	return list
}

// inHole are places in what is shown of an opening, the middle first.
func (e *View) inHole(o *room.Opening) (list []scene.Point) {
	x0, z0, x1, z1 := e.F.Hole(o)
	box := e.V.Box(max(x0, e.From), z0, min(x1, e.To), z1)
	for _, y := range letterShares {
		for _, x := range []float64{0.5, 0.2, 0.8} {
			list = append(list, scene.Pt(box.X0+box.W()*x, box.Y0+box.H()*y))
		}
	}
	return list
}
