package form

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Heights of the parts of a wall's page, in mm on letter paper; the sketch takes what is left.
const (
	whoHigh    = 17
	openHigh   = 57
	boxesHigh  = 43
	trimsHigh  = 19
	sideWide   = 45.0
	endHigh    = 23.5
	cornerHigh = 18
	betweens   = 4 // places between the ends at which heights are read
)

// wallPage is the page of one wall.
func wallPage(s *folio.TapedSet, n, wall int) *scene.Page {
	w := s.Words
	b := open(s, n, w.Say("form.wall", wall), [2]string{w.Say("form.wall_how"), w.Say("form.heights_how")})
	u := b.u
	area := b.Area.Inset(gap * u)
	who := scene.Box{X0: area.X0, Y0: area.Y0, X1: area.X1, Y1: area.Y0 + whoHigh*u}
	b.row(who, append(keysOf("wall", "name", "ref"), blank{key: "room", word: "project_room"}, blank{key: "measured", word: "project_measured"},
		blank{word: "who"}, blank{key: "units", word: "project_units"})...)
	trims := scene.Box{X0: area.X0, Y0: area.Y1 - trimsHigh*u, X1: area.X1, Y1: area.Y1}
	b.row(trims, append(keysOf("wall", "hidden_below", "base", "crown", "behind", "radius", "angle"), blank{word: "notes", wide: 2})...)
	boxes := scene.Box{X0: area.X0, Y0: trims.Y0 - (boxesHigh+gap)*u, X1: area.X1, Y1: trims.Y0 - gap*u}
	b.grid(boxes, "[[wall.box]]", keysOf("wall.box", "kind", "x", "z", "gang", "plate"), 4)
	openings := scene.Box{X0: area.X0, Y0: boxes.Y0 - (openHigh+gap)*u, X1: area.X1, Y1: boxes.Y0 - gap*u}
	b.grid(openings, "[[wall.opening]]", keysOf("wall.opening", "name", "kind", "from_left", "width", "sill", "height", "casing", "reveal", "clearance"), 4)
	b.elevation(scene.Box{X0: area.X0, Y0: who.Y1 + gap*u, X1: area.X1, Y1: openings.Y0 - gap*u})
	return b.Page
}

// elevation is the wall as seen from inside the room: its ends at the sides, its widths in it, its heights between under it.
func (b *board) elevation(box scene.Box) {
	u := b.u
	left := scene.Box{X0: box.X0, Y0: box.Y0, X1: box.X0 + sideWide*u, Y1: box.Y1}
	right := scene.Box{X0: box.X1 - sideWide*u, Y0: box.Y0, X1: box.X1, Y1: box.Y1}
	b.side(left, "left")
	b.side(right, "right")
	middle := scene.Box{X0: left.X1 + gap*u, Y0: box.Y0, X1: right.X0 - gap*u, Y1: box.Y1}
	rows := scene.Box{X0: middle.X0, Y0: middle.Y1 - 3*8*u, X1: middle.X1, Y1: middle.Y1}
	b.between(rows)
	wall := scene.Box{X0: middle.X0, Y0: middle.Y0, X1: middle.X1, Y1: rows.Y0 - gap*u}
	b.squares(wall, 5*u)
	level := wall.Y0 + wall.H()*0.56
	for _, at := range []struct {
		y    float64
		word string
	}{{wall.Y0 + 1.2*u, "at_head"}, {level - widthHigh*u/2, "at_level"}, {wall.Y1 - (widthHigh+1.2)*u, "at_foot"}} {
		b.width(wall, at.y, at.word)
	}
}

// Size of a box for a width of the wall.
const widthHigh, widthWide = 11.5, 52.0

// width draws a dimension across the wall with the box for its figure in it.
func (b *board) width(wall scene.Box, y float64, word string) {
	u, pen := b.u, scene.Pen(scene.Frame, fine)
	mid := y + widthHigh*u/2
	if word == "at_level" {
		pen = scene.Pen(scene.Frame, heavy)
		pen.Dash = scene.Dashed(heavy)
	}
	box := scene.BoxAt(wall.Centre().X-widthWide*u/2, y, widthWide*u, widthHigh*u)
	b.g.Line(scene.Pt(wall.X0, mid), scene.Pt(box.X0, mid), pen)
	b.g.Line(scene.Pt(box.X1, mid), scene.Pt(wall.X1, mid), pen)
	draft.Triangle(b.g, scene.Frame, scene.Pt(wall.X0, mid), 180, 3*u, 1.4*u, fine, false)
	draft.Triangle(b.g, scene.Frame, scene.Pt(wall.X1, mid), 0, 3*u, 1.4*u, fine, false)
	b.g.Rect(box, scene.Pen(scene.Frame, fine).Filled(scene.White))
	b.ask(box, blank{key: "length", word: word})
}

// side is what is read at one end of the wall, in the order of the file.
func (b *board) side(box scene.Box, end string) {
	u := b.u
	ends := scene.Box{X0: box.X0, Y0: box.Y1 - endHigh*u, X1: box.X1, Y1: box.Y1}
	foot := ends.Y0
	b.choices(ends, "wall", end+"_end")
	if end == "right" { // the corner of the left end is that of the wall before
		foot -= cornerHigh * u
		b.choices(scene.Box{X0: box.X0, Y0: foot, X1: box.X1, Y1: ends.Y0}, "wall", "corner")
	}
	list := []blank{{"height", "ceiling_up", 0}, {"floor", "floor_down", 0}, {"lean", "wall_lean", 0}}
	for i, x := range list {
		high := (foot - box.Y0) / float64(len(list))
		one := scene.Box{X0: box.X0, Y0: box.Y0 + high*float64(i), X1: box.X1, Y1: box.Y0 + high*float64(i+1)}
		b.g.Rect(one, scene.Pen(scene.Frame, fine))
		b.ask(one, x)
	}
	b.g.Rect(box, scene.Pen(scene.Frame, heavy))
}

// between are the heights read between the ends of the wall: where, and up and down from the level line.
func (b *board) between(box scene.Box) {
	u := b.u
	lead := box.X0 + 42*u
	for i, x := range []blank{{"x", "between_at", 0}, {"height", "between_up", 0}, {"floor", "between_down", 0}} {
		y := box.Y0 + box.H()*float64(i)/3
		row := scene.Box{X0: box.X0, Y0: y, X1: lead, Y1: y + box.H()/3}
		b.ask(scene.Box{X0: row.X0, Y0: row.Y0 + 1*u, X1: row.X1, Y1: row.Y1}, x)
		if i > 0 {
			b.g.Line(scene.Pt(box.X0, y), scene.Pt(box.X1, y), scene.Pen(scene.Frame, fine))
		}
	}
	for k := range betweens {
		x := lead + (box.X1-lead)*float64(k)/betweens
		b.g.Line(scene.Pt(x, box.Y0), scene.Pt(x, box.Y1), scene.Pen(scene.Frame, fine))
	}
	b.g.Rect(box, scene.Pen(scene.Frame, heavy))
}
