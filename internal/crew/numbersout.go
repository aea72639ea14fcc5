package crew

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Numbers that have no room in their sheets at the size of numbers.

// smallAir is what a number that is as small as text keeps clear of all else, in mm on letter paper.
const smallAir = 0.9

// smallest is how high the number of a sheet is at the least, in mm on letter paper: before it stands outside its sheet.
const smallest = 2.8

// elsewhere letters such a number, first as it is read most surely:
//
//  1. large over the ceiling, on a line down to its sheet; not where a sheet of another course hangs over it, which the line
//     would cross;
//  2. as small as text in its sheet: a sheet without its number is worse than one whose number is small;
//  3. in what is no sheet near it, on a line: the white of an opening, under the floor, beside the wall;
//  4. large over the ceiling after all.
//
// Where none has a place its words stand beside the drawing.
func (d *wallBoard) elsewhere(g *scene.Group, n *numbered, text string) {
	over := func() bool { return d.calledOut(g, d.target(n), text, n.sheet.Ripped != "") }
	if !d.overlaid(n) && over() || d.small(g, n, text) || d.near(g, n, text) || over() {
		return
	}
	key := "wall.sheet"
	if n.sheet.Ripped != "" {
		key = "wall.sheet_ripped"
	}
	d.aside(d.Words.Say(key, text, d.where(n.from), d.where(n.to)))
}

// overlaid reports whether a sheet of another course hangs over a sheet on this page.
func (d *wallBoard) overlaid(n *numbered) bool {
	for _, h := range d.p.Hangs {
		for _, s := range h.Sheets {
			if s.Place == n.sheet.Place && s.Course > n.sheet.Course && len(s.Pieces) > 0 && !d.w.Run.Up {
				return true
			}
		}
	}
	return false
}

// small letters a number in its sheet as small as text is read: 1. level; 2. upright.
func (d *wallBoard) small(g *scene.Group, n *numbered, text string) bool {
	u := d.Unit
	for _, size := range []float64{folio.TapedText, smallest} {
		for _, angle := range []float64{0, 90} {
			t := scene.Text{String: text, Height: size * u, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Angle: angle, Layer: scene.Numbers}
			if t, ok := d.fits(n, t, numberTry{angle, size, smallAir, 0}, false); ok {
				d.lettered(g, n, t)
				return true
			}
		}
	}
	return false
}

// lettered letters a small number, in a thin frame where the sheet is ripped.
func (d *wallBoard) lettered(g *scene.Group, n *numbered, t scene.Text) {
	frame := t.Bounds()
	if g.Text(t); n.sheet.Ripped != "" {
		frame = frame.Inset(-smallAir * d.Unit)
		g.Rect(frame, scene.Pen(scene.Numbers, 0.25))
	}
	d.space.Take(frame)
}

// Rings of places round the point of a sheet at which a line ends, in mm on letter paper.
const (
	nearRing  = 5.0
	nearMore  = 2.0
	nearRings = 16
)

// dotHalf is half of the dot at which a line to a sheet ends, dotAir what it keeps clear of words, in mm on letter paper.
const (
	dotHalf = 0.6
	dotAir  = 0.2
)

// dotted is the box of the dot at a place.
func (d *wallBoard) dotted(at scene.Point) scene.Box {
	return scene.BoxRound(at, 2*dotHalf*d.Unit, 2*dotHalf*d.Unit)
}

// dot draws the dot at which a line ends; words that come later keep clear of it.
func (d *wallBoard) dot(g *scene.Group, at scene.Point) {
	g.Circle(at, dotHalf*d.Unit, scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)})
	d.space.Take(d.dotted(at))
}

// mostTargets are tried in one sheet.
const mostTargets = 6

// near letters a number in what is no sheet, with a line to its own: in rings further and further out, under it before over
// it, as what is over it is more often a sheet.
func (d *wallBoard) near(g *scene.Group, n *numbered, text string) bool {
	u := d.Unit
	for _, target := range d.targets(n) {
		for ring := range nearRings {
			out := (nearRing + nearMore*float64(ring)) * u
			for _, k := range aroundOpening {
				t := scene.Text{At: target.Add(k[0]*out, -k[1]*out), String: text, Height: folio.TapedText * u, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
				box := t.Bounds()
				if !d.space.Free(box.Inset(-smallAir*u), crewAir*u) || d.onSheet(box) {
					continue
				}
				frame := box.Inset(-2 * smallAir * u)
				_, leave, _ := draft.Clip(frame.Centre(), target, frame)
				from := scene.Pt(frame.Centre().X+(target.X-frame.Centre().X)*leave, frame.Centre().Y+(target.Y-frame.Centre().Y)*leave)
				if !d.space.FreeLine(from, target, 0.3*u) || d.crosses(n, from, target) {
					continue
				}
				d.lettered(g, n, t)
				d.alone(frame)
				d.line(g, from, target, scene.Pen(scene.Marks, 0.25))
				d.dot(g, target)
				return true
			}
		}
	}
	return false
}

// alone keeps what is level with a number in an opening free of other words, from jamb to jamb: 10 D1 would be taken for one name.
func (d *wallBoard) alone(number scene.Box) {
	for _, f := range d.faces {
		for i := range f.w.W.Openings {
			if box, ok := f.hole(&f.w.W.Openings[i]); ok && box.Contains(number) {
				d.space.Take(scene.Box{X0: box.X0, Y0: number.Y0, X1: box.X1, Y1: number.Y1})
			}
		}
	}
}

// crosses reports whether a line runs over another sheet than its own.
func (d *wallBoard) crosses(n *numbered, from, to scene.Point) bool {
	const steps = 24
	for i := range steps {
		at := scene.Pt(from.X+(to.X-from.X)*float64(i)/steps, from.Y+(to.Y-from.Y)*float64(i)/steps)
		if !d.within(n.sheet, at) && d.onSheet(scene.Box{X0: at.X, Y0: at.Y, X1: at.X, Y1: at.Y}) {
			return true
		}
	}
	return false
}

// targets are points in a sheet at which a line to it may end: its middle first, then others spread over it.
func (d *wallBoard) targets(n *numbered) []scene.Point {
	var list []scene.Point
	box := n.box
	if x0, z0, x1, z1, ok := d.w.Extent(n.sheet); ok {
		box = d.v.Box(max(x0, d.p.From), z0, min(x1, d.p.To), z1)
	}
	for _, fy := range []float64{0.5, 0.25, 0.75, 0.1, 0.9} {
		for _, fx := range []float64{0.5, 0.25, 0.75, 0.1, 0.9} {
			p := scene.Pt(box.X0+fx*box.W(), box.Y0+fy*box.H())
			if len(list) < mostTargets && d.within(n.sheet, p) && d.space.Free(scene.Box{X0: p.X, Y0: p.Y, X1: p.X, Y1: p.Y}, 0.5*d.Unit) && d.space.FreeOfWords(d.dotted(p), dotAir*d.Unit) {
				list = append(list, p)
			}
		}
	}
	return list
}

// onSheet reports whether any corner of a box, or its middle, lies on a sheet of the page.
func (d *wallBoard) onSheet(b scene.Box) bool {
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			for _, s := range h.Sheets {
				for _, p := range []scene.Point{b.Centre(), scene.Pt(b.X0, b.Y0), scene.Pt(b.X1, b.Y0), scene.Pt(b.X0, b.Y1), scene.Pt(b.X1, b.Y1)} {
					if f.within(s, p) {
						return true
					}
				}
			}
		}
	}
	return false
}
