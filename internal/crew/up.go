package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// With horizontal grain sheets lie on their sides in bands from the floor up: lines to strike are level, figures are
// heights, a course is a piece along its band. The page is the same but for that.

// GatherUp lists the bands of a wall from the floor up.
func (w *Wall) GatherUp() {
	r := w.Run
	w.Left, w.Right = 0, w.W.Length
	for i := 0; i < len(r.Sheets); {
		s := &r.Sheets[i]
		span := &r.Spans[s.Span]
		h := &Hang{Place: s.Place, From: 0, To: w.W.Length, Start: s.StartLine, Raw: s.RightLine, X: s.Right}
		h.Begins, h.Ends = s.Place == span.FirstSheet, s.Place == span.LastSheet
		for ; i < len(r.Sheets) && r.Sheets[i].Place == h.Place; i++ {
			h.Sheets = append(h.Sheets, &r.Sheets[i])
		}
		for k := range r.Seams {
			if m := &r.Seams[k]; m.LeftSheet == h.Place {
				h.Seam, h.Line, h.Lined = m, m.PlumbLine, true
			}
		}
		w.Hangs = append(w.Hangs, h)
	}
	p := &Piece{Wall: w, To: w.Right, Hangs: w.Hangs, Rows: w.Hangs}
	w.Pieces = []*Piece{p}
}

// TryUp draws a wall of bands.
func (d *WallBoard) TryUp() {
	d.Outlines()
	d.Openings()
	d.SeamsUp()
	d.Covering()
	d.JointsUp()
	for _, draw := range []func(){d.FlagsUp, d.Boxes, d.SheetNumbers, d.HeadsUp, d.OpeningWords, d.ScaleBar} {
		if draw(); d.Above || d.Below {
			return
		}
	}
}

// SeamsUp draws the finished joints between bands.
func (d *WallBoard) SeamsUp() {
	for _, h := range d.P.Hangs {
		if h.Seam == nil {
			continue
		}
		g := d.G.Part(scene.Tag{Class: "seam", Title: "seam " + strconv.Itoa(h.Seam.Number), Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		for _, s := range h.Sheets {
			for _, p := range s.Pieces {
				for i, a := range p.Outline {
					b := p.Outline[(i+1)%len(p.Outline)]
					if a.Z == h.X && b.Z == h.X && a.X != b.X {
						g.Line(d.V.Pt(a.X, a.Z), d.V.Pt(b.X, b.Z), scene.Pen(scene.Seams, CrewFine))
						d.Space.Stroke(d.V.Pt(a.X, a.Z), d.V.Pt(b.X, b.Z))
					}
				}
			}
		}
	}
}

// JointsUp draws the end matches along the bands.
func (d *WallBoard) JointsUp() {
	for _, x := range d.W.Run.Joints {
		for _, s := range d.Shows(x) {
			d.G.Line(d.V.Pt(x, s[0]), d.V.Pt(x, s[1]), scene.Pen(scene.Seams, CrewFine))
			d.Space.Stroke(d.V.Pt(x, s[0]), d.V.Pt(x, s[1]))
		}
	}
}

// FlagsUp draws the level lines as flags left and right of the wall, with their heights from the datum.
func (d *WallBoard) FlagsUp() {
	u, size := d.U, CrewText*d.U
	type mark struct {
		z    L
		hang *Hang
	}
	var list []mark
	for _, h := range d.P.Hangs {
		if h.Lined && !h.Hung() {
			list = append(list, mark{h.Line, h})
		}
	}
	_, high := d.Extremes()
	list = append(list, mark{z: high})
	sort.SliceStable(list, func(i, j int) bool { return list[i].z > list[j].z })
	at := make([]float64, len(list))
	for i, m := range list {
		at[i] = d.V.Y(m.z)
	}
	left, right := d.V.X(d.W.Left)-0.6*u, d.V.X(d.W.Right)+0.6*u
	slots := draft.Shelf(at, size+2*u, d.Area.Y0+2*u, d.Area.Y1-12*u)
	for i, m := range list {
		g := d.G
		if m.hang != nil {
			g = d.G.Part(scene.Tag{Class: "plumb-line", Title: "line of sheet " + d.Numbers(m.hang), Data: []scene.Datum{folio.Datum("at", folio.Mm(m.z))}})
			d.Head(g, scene.Pt(left, at[i]), 0, false)
			d.Head(g, scene.Pt(right, at[i]), 180, false)
			g.HLine(right+FlagLong*u, right+FlagStem*u, at[i], scene.Pen(scene.Plumb, CrewFine))
			d.Space.Take(scene.Box{X0: right, Y0: at[i] - FlagWide/2*u, X1: right + FlagStem*u, Y1: at[i] + FlagWide/2*u})
			g.HLine(left-FlagLong*u, left-FlagStem*u, at[i], scene.Pen(scene.Plumb, CrewFine))
			g.Line(scene.Pt(left-FlagStem*u, at[i]), scene.Pt(left-8*u, slots[i]), scene.Pen(scene.Plumb, CrewFine))
		}
		t := scene.Text{At: scene.Pt(left-8.8*u, slots[i]), String: d.Say(m.z), Height: size, Bold: m.hang != nil, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		d.Figure(g, LineFlag{X: m.z}, t)
		if m.hang == nil {
			g.Line(scene.Pt(left-1*u, at[i]), scene.Pt(left-8*u, slots[i]), scene.Pen(scene.Dimensions, 0.25))
		}
	}
	d.Space.Take(scene.Box{X0: left - 8.4*u, Y0: d.V.Y(high) - 2*u, X1: left, Y1: d.Area.Y1})
	c := scene.Pt(d.V.X(d.W.Left), d.V.Y(room.AtRight(d.W.W.Floor, d.W.Left)))
	d.G.Circle(c, 1.5*u, scene.Pen(scene.Plumb, 0.5).Filled(scene.White))
	t := scene.Text{At: scene.Pt(c.X-1.6*u, c.Y+7*u), String: "0 DATUM: floor, left end", Height: size, Bold: true, Layer: scene.Plumb}
	d.G.Text(t)
	d.Space.Take(t.Bounds(), scene.Box{X0: c.X - 2*u, Y0: c.Y - 2*u, X1: c.X + 2*u, Y1: c.Y + 2*u})
}

// HeadsUp letters the names of the ends over the wall, START, UP and HOLD beside it.
func (d *WallBoard) HeadsUp() {
	u, size := d.U, CrewText*d.U
	d.Label(d.V.X(d.W.Left), d.EndUp(false), false, scene.Start)
	d.Label(d.V.X(d.W.Right), d.EndUp(true), false, scene.End)
	x := d.V.X(d.W.Right) + 7*u
	if h := d.P.Rows[d.P.ThirdRow()]; true {
		y := d.V.Y(h.X)
		g := d.G.Part(scene.Tag{Class: "hold"})
		draft.Triangle(g, scene.Marks, scene.Pt(x, y), 180, 4.4*u, 5.2*u, 0.7, true)
		d.Word(g, scene.Pt(x+6*u, y+size/2), "HOLD", size, true, scene.Start)
		d.Space.Take(scene.Box{X0: x - 1*u, Y0: y - 3*u, X1: x + 20*u, Y1: y + 3*u})
	}
	if h := d.P.Rows[0]; h.Begins && !h.Hung() {
		if box, ok := d.Right(x, 16*u, 5*u, d.V.Y(d.ExtremesLow())-8*u); ok {
			d.Word(d.G, scene.Pt(box.X0, box.Y1-0.8*u), "START", size, true, scene.Start)
		}
	}
	if box, ok := d.Right(x, 7.6*u, 14*u, d.V.Y(d.ExtremesLow())-24*u); ok {
		at := box.X0 + 6*u
		d.G.VLine(at, box.Y0+FlagLong*u, box.Y1, scene.Pen(scene.Marks, 0.5))
		draft.Triangle(d.G, scene.Marks, scene.Pt(at, box.Y0), 90, 3*u, 2.8*u, 0, false)
		d.G.Text(scene.Text{At: scene.Pt(at-2.2*u, (box.Y0+box.Y1)/2+1*u), String: "UP", Height: size, Bold: true, Anchor: scene.Middle, Angle: 90, Layer: scene.Marks})
	}
}

func (d *WallBoard) ExtremesLow() L {
	low, _ := d.Extremes()
	return low
}

// Right finds a free place right of the wall, from y on upward.
func (d *WallBoard) Right(x, wide, high, y float64) (scene.Box, bool) {
	for ; y > d.Area.Y0; y -= 1 * d.U {
		b := scene.Box{X0: x, Y0: y, X1: x + wide, Y1: y + high}
		if d.Space.Free(b, CrewAir*d.U) {
			d.Space.Take(b)
			return b, true
		}
	}
	return scene.Box{}, false
}

// EndUp names an end of a wall of bands, where they are always cut.
func (d *WallBoard) EndUp(right bool) string {
	n := len(d.Room.Walls)
	corner, end := (d.W.Wall+n-1)%n, d.W.W.LeftEnd
	if right {
		corner, end = d.W.Wall, d.W.W.RightEnd
	}
	if end != "" {
		return end
	}
	name := "C" + strconv.Itoa(corner+1)
	switch d.Room.Walls[corner].Corner {
	case room.Inside:
		return name + " in: cut"
	case room.Outside:
		return name + " out: cut"
	}
	return "cut"
}

// Stretch is a sheet's extent on its wall.
func Stretch(s *layout.Sheet, wall int) (x0, z0, x1, z1 L, ok bool) {
	for _, p := range s.Pieces {
		if p.Wall != wall {
			continue
		}
		for _, q := range p.Outline {
			if !ok {
				x0, z0, x1, z1, ok = q.X, q.Z, q.X, q.Z, true
			}
			x0, z0, x1, z1 = min(x0, q.X), min(z0, q.Z), max(x1, q.X), max(z1, q.Z)
		}
	}
	return x0, z0, x1, z1, ok
}

// BoxLinesUp say where boxes are cut into bands: up from the raw lower edge, right of the cut left end.
func (d *WallBoard) BoxLinesUp() []string {
	var lines []string
	for _, b := range d.W.BoxesOf() {
		found := false
		for _, h := range d.P.Hangs {
			for _, s := range h.Sheets {
				x0, z0, x1, z1, ok := Stretch(s, d.W.Wall)
				if !ok || b.X+b.HoleWidth/2 <= x0 || b.X-b.HoleWidth/2 >= x1 || b.Z+b.HoleHigh/2 <= z0 || b.Z-b.HoleHigh/2 >= z1 {
					continue
				}
				found = true
				lines = append(lines, b.Letter+" in "+d.Set.Number(s)+": right "+d.Bare(b.X+s.Below)+", up "+d.Bare(b.Z-h.Start)+", "+d.Bare(b.HoleWidth)+" x "+d.Bare(b.HoleHigh))
			}
		}
		if !found {
			lines = append(lines, b.Letter+": stands where no covering is")
		}
	}
	return lines
}

// OpeningCutsUp say where an opening is cut into bands.
func (d *WallBoard) OpeningCutsUp(o *room.Opening) []OpeningCut {
	var list []OpeningCut
	for _, h := range d.P.Hangs {
		for _, s := range h.Sheets {
			x0, z0, x1, z1, ok := Stretch(s, d.W.Wall)
			if !ok || s.Hung || o.Right() <= x0 || o.FromLeft >= x1 || o.Head <= z0 || o.SillGiven && o.Sill >= z1 {
				continue
			}
			c := OpeningCut{Number: d.Set.Number(s)}
			c.Words = "right " + d.Bare(max(o.FromLeft, x0)+s.Below) + " to " + d.Bare(min(o.Right(), x1)+s.Below)
			switch {
			case o.SillGiven && o.Sill > z0:
				c.Words += ", from " + d.Bare(o.Sill-h.Start) + " up"
			case o.Head < z1:
				c.Words += ", up to " + d.Bare(o.Head-h.Start)
			}
			list = append(list, c)
		}
	}
	return list
}

// MarkWordsUp say how long the pieces of the bands are cut, and where they begin.
func (d *WallBoard) MarkWordsUp() []string {
	var lines []string
	seen := map[string]bool{}
	for _, h := range d.P.Rows {
		for _, s := range h.Sheets {
			if s.CutLength == 0 || s.Hung {
				continue
			}
			where := "from " + d.Say(-s.Below)
			if s.Below > 0 {
				where = "from " + d.Inches(s.Below) + " left of 0"
			}
			text := "cut " + d.Say(s.CutLength) + ", " + where
			if !seen[text] {
				seen[text] = true
				lines = append(lines, text)
			}
		}
	}
	if len(lines) > 4 {
		lines = []string{"cut lengths: in the cut list, " + d.PageWord("cuts")}
	}
	return append(lines, "trims in; line: upper edge; seam "+d.Inches(d.Half)+" under")
}

// MarginUp is what heights take left of a wall of bands.
func (d *WallBoard) MarginUp() float64 {
	w := 0.0
	for _, h := range d.P.Hangs {
		w = math.Max(w, scene.Width(d.Say(h.X), CrewText*d.U, true))
	}
	return w + 16*d.U
}
