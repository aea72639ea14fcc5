package crew

import (
	"math"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// WallBoard is the page of a wall, or of a piece of one, while its drawing is tried at one scale.
type WallBoard struct {
	*Board
	W       *Wall
	P       *Piece
	V       draft.View
	Area    scene.Box // what the drawing may take
	G       *scene.Group
	Space   *draft.Space
	Settled bool            // what finds no place over the ceiling stands beside the drawing
	Above   bool            // something found no place over the ceiling
	Below   bool            // or under the floor
	Beside  []string        // words that stand beside the drawing
	Outside []string        // how openings are cut whose white has no room for it
	Cuts    []*layout.Sheet // whose cut length has no room in them
}

// Note is some lines under a heading that stand beside the drawing, or on a page of their own.
type Note struct {
	Head  string
	Lines []string
}

// air is what words keep clear of lines and of each other: 1 mm and half a line.
const CrewAir = 1.2

// WallPage draws one piece of a wall, and the page after it where its lists are long.
func (c *Set) WallPage(w *Wall, p *Piece, n int) []*scene.Page {
	title := w.W.Name
	if len(w.Pieces) > 1 {
		title += ", piece " + strconv.Itoa(p.Index+1)
	}
	way := "left to right"
	if w.Run.Up {
		way = "bottom to top"
	}
	lines := [2]string{c.Place(), c.FlitchWords(p.Hangs) + ", " + way}
	var first []*scene.Page
	var kept *Fit
	from, to := 0, MostMore
	if p.Fits != nil { // known from the first time round
		from, to = p.Fits.More, p.Fits.More
	}
	for more := from; more <= to; more++ {
		b := c.Open(n, folio.Sheet{Title: title, Lines: lines, Form: folio.Beside})
		b.Page.Title = title
		b.Grow(more)
		area := b.Area
		area.Y1 = b.Field.Y1 // the foot has grown
		d := c.Fit(b, p, area)
		b.Page.Add(d.G)
		rest := b.TapeList(d, b.FootStrip(d))
		out := []*scene.Page{b.Page}
		if len(rest) == 0 {
			return out
		}
		if first == nil {
			first, kept = append(out, c.NotesPages(title, n+1, rest)...), p.Fits
		}
		p.Fits = nil
	}
	p.Fits = kept
	return first
}

// ScaleBar says at what scale the wall is drawn, where there is room under it.
func (d *WallBoard) ScaleBar() {
	u := d.U
	bar := draft.Bar{Scale: d.V.Scale, Metric: d.Metric()}
	ratio := "1:" + strconv.FormatInt(d.V.Scale, 10)
	k := d.Look
	most := 42 * u
	words := scene.Width(ratio, CrewSmall*u, false) + 4*u
	wide := bar.Wide(k, most) + words + 2*u
	if box, ok := d.Under(wide, 6*u); ok {
		d.Word(d.G, scene.Pt(box.X0, box.Y1-0.6*u), ratio, CrewSmall*u, false, scene.Start)
		bar.Draw(d.G, k, scene.Pt(box.X0+words, box.Y1-0.6*u), most)
	}
}

// Under finds a free place at the foot of the drawing, as low and as far left as it goes, and takes it.
func (d *WallBoard) Under(wide, high float64) (scene.Box, bool) {
	u := d.U
	for y := d.Area.Y1 - 1.8*u; y > d.Area.Y1-24*u; y -= 2 * u {
		for x := d.Area.X0 + 4*u; x+wide < d.Area.X1; x += 4 * u {
			box := scene.Box{X0: x, Y0: y - high, X1: x + wide, Y1: y}
			if d.Space.Free(box, CrewAir*u) {
				d.Space.Take(box)
				return box, true
			}
		}
	}
	d.Lack(&d.Below)
	return scene.Box{}, false
}

// Openings draws what is open: its white and its edges.
func (d *WallBoard) Openings() {
	for i := range d.W.W.Openings {
		o := &d.W.W.Openings[i]
		if box, ok := d.Hole(o); ok {
			g := d.G.Part(scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name), folio.Datum("left", folio.Mm(o.FromLeft)), folio.Datum("right", folio.Mm(o.Right()))}})
			pen := scene.Pen(scene.Openings, 0.5)
			pen.Fill = scene.Solid(scene.White)
			g.Rect(box, pen)
			d.Space.Outline(box)
		}
	}
	for _, x := range d.W.W.Bare {
		from, to := max(x.From, d.P.From), min(x.To, d.P.To)
		if from >= to {
			continue
		}
		low, high := room.At(d.W.W.Floor, from), room.At(d.W.W.Ceiling, from)
		box := d.V.Box(from, low, to, high)
		draft.Hatch(d.G, scene.Pen(scene.Hatch, 0.18), box, 3*d.U, true)
		d.Space.Take(box)
	}
}

// Hole is the white of an opening on the page, false where the piece does not show it.
func (d *WallBoard) Hole(o *room.Opening) (scene.Box, bool) {
	x0, x1 := max(o.FromLeft, d.P.From), min(o.Right(), d.P.To)
	z0 := o.Sill
	if !o.SillGiven {
		z0 = min(room.At(d.W.W.Floor, o.FromLeft), room.At(d.W.W.Floor, o.Right()))
	}
	if x0 >= x1 {
		return scene.Box{}, false
	}
	return d.V.Box(x0, z0, x1, o.Head), true
}

// Shows lists the heights between which a line straight up at x shows in the covering.
func (d *WallBoard) Shows(x L) [][2]L {
	w := d.W.W
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

// Seams draws the finished joints.
func (d *WallBoard) Seams() {
	for _, h := range d.P.Hangs {
		if h.Seam == nil || !d.P.Here(h) {
			continue
		}
		g := d.G.Part(scene.Tag{Class: "seam", Title: "seam " + strconv.Itoa(h.Seam.Number), Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		for _, s := range d.Shows(h.X) {
			a, b := d.V.Pt(h.X, s[0]), d.V.Pt(h.X, s[1])
			g.Line(a, b, scene.Pen(scene.Seams, CrewFine))
			d.Space.Stroke(a, b)
		}
	}
}

// Joints draws the end matches of courses.
func (d *WallBoard) Joints() {
	for _, h := range d.P.Hangs {
		for _, s := range h.Sheets[1:] {
			for _, p := range s.Pieces {
				if p.Wall != d.W.Wall {
					continue
				}
				for i, a := range p.Outline {
					b := p.Outline[(i+1)%len(p.Outline)]
					if a.Z == b.Z && a.Z == p.Outline[0].Z && a.X < b.X {
						x0, x1 := max(a.X, d.P.From), min(b.X, d.P.To)
						if x0 < x1 {
							d.G.Line(d.V.Pt(x0, a.Z), d.V.Pt(x1, a.Z), scene.Pen(scene.Seams, CrewFine))
							d.Space.Stroke(d.V.Pt(x0, a.Z), d.V.Pt(x1, a.Z))
						}
					}
				}
			}
		}
	}
}

// LevelLine draws the line to which the marks are hung, but not over the white of openings.
func (d *WallBoard) LevelLine() {
	var clear []scene.Box
	for i := range d.W.W.Openings {
		if box, ok := d.Hole(&d.W.W.Openings[i]); ok {
			clear = append(clear, box)
		}
	}
	if low, high := d.Extremes(); d.Level <= low || d.Level >= high {
		return
	}
	y := d.V.Y(d.Level)
	a, b := scene.Pt(d.LeftEdge()-2*d.U, y), scene.Pt(d.V.X(d.P.To)+2*d.U, y)
	points := draft.Outside(a, b, clear...)
	for i := 0; i+1 < len(points); i += 2 {
		d.G.Line(points[i], points[i+1], scene.Pen(scene.Plumb, CrewFine).As(scene.Chain(CrewFine)))
		d.Space.Stroke(points[i], points[i+1])
	}
}

// Lack notes that something found no place over the ceiling or under the floor.
func (d *WallBoard) Lack(what *bool) { *what = true }
