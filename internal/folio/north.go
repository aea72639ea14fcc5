package folio

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// North draws the arrow to the north on a plan whose first wall lies at its head: a circle, the arrow in it with its right half
// black, and the letter at its point.
//
// Units: north in degrees to the right of the head of the page.
//
// Shape: the box it takes.
func North(g *scene.Group, k draft.Look, c scene.Point, radius, north float64) scene.Box {
	in := g.Part(scene.Tag{Class: "north", Data: []scene.Datum{Datum("north", scene.Num(north))}})
	at := func(degrees, out float64) scene.Point {
		sin, cos := scene.SinCos(north + degrees)
		return c.Add(out*sin, -out*cos)
	}
	in.Circle(c, radius, scene.Pen(scene.Marks, k.Thin))
	tip, foot := at(0, radius), at(180, radius*0.25)
	right, left := at(145, radius), at(-145, radius)
	in.Polygon(scene.Pen(scene.Marks, k.Thin).Filled(scene.White), tip, foot, left)
	in.Polygon(scene.Pen(scene.Marks, k.Thin).Filled(scene.Black), tip, right, foot)
	full := radius + k.Of(1.2) + k.Small
	in.Text(scene.Text{At: at(0, full-k.Small/2), String: "N", Height: k.Small, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks})
	return scene.BoxRound(c, 2*full, 2*full)
}
