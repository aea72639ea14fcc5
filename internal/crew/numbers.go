package crew

import (
	"math"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// SheetNumbers letters the numbers of the sheets and their cut lengths, each inside its own sheet and clear of everything.
func (d *WallBoard) SheetNumbers() {
	start := *d.Space
	solid := start // what is open is no part of a sheet
	for i := range d.W.W.Openings {
		if box, ok := d.Hole(&d.W.W.Openings[i]); ok {
			solid.Take(box)
		}
	}
	var best []Numbered
	fewest := math.MaxInt
	for size := d.NumberSize(); size >= CrewLarge*d.U-1e-9; size -= 1 * d.U {
		*d.Space = solid
		list, out := d.Place(size)
		if out < fewest {
			best, fewest = list, out
		}
		if out == 0 {
			break
		}
	}
	*d.Space = start
	for i := range best {
		d.Take(&best[i])
	}
	for i := range best {
		d.Number(&best[i])
	}
}

// Numbered is where the number and the cut length of one sheet stand; what has no place inside is called out.
type Numbered struct {
	Sheet    *layout.Sheet
	From, To L
	Box      scene.Box
	Number   scene.Text
	Cut      *scene.Text // nil where it has no room in the sheet
	Words    string      // the cut length
	In       bool
	Ring     float64 // from the number to the frame of a sheet that is ripped
	Frame    scene.Box
}

// Place finds a place for everything with numbers of a height at the most, and counts what finds none.
func (d *WallBoard) Place(size float64) (list []Numbered, out int) {
	for _, h := range d.P.Hangs {
		for _, s := range h.Sheets {
			if len(s.Pieces) == 0 {
				continue
			}
			n := Numbered{Sheet: s, From: h.From, To: h.To, Box: d.SheetBox(h, s), Words: d.CutWords(h, s)}
			n.Number, n.In = d.FindNumber(&n, d.Set.Number(s), size, s.Ripped != "")
			if n.In {
				n.Frame = n.Number.Bounds().Inset(-max(n.Ring, 0.8*d.U))
				d.Space.Take(n.Frame)
			} else {
				out += 100
			}
			if n.In && n.Words != "" {
				var ok bool
				if n.Cut, ok = d.FindCut(&n, n.Number.Bounds(), n.Words); ok {
					d.Space.Take(n.Cut.Bounds())
				} else {
					out++
				}
			}
			list = append(list, n)
		}
	}
	return list, out
}

func (d *WallBoard) Take(n *Numbered) {
	if n.In {
		d.Space.Take(n.Frame)
	}
	if n.Cut != nil {
		d.Space.Take(n.Cut.Bounds())
	}
}

// NumberSize is the height at which the numbers of most sheets fit between their seams.
func (d *WallBoard) NumberSize() float64 {
	u, size := d.U, CrewNumber*d.U
	whole := d.Room.Veneer.GrossWidth - d.Room.Veneer.Overlap
	for _, h := range d.P.Hangs {
		a, b := d.Span(h)
		if b-a < whole*6/10 {
			continue
		}
		for _, s := range h.Sheets {
			w := scene.Width(d.Set.Number(s), CrewNumber*u, true)
			have := d.V.MM(b-a) - 2*CrewAir*u
			if s.Ripped != "" {
				have -= 2.6 * u
			}
			size = math.Min(size, math.Max(6*u, CrewNumber*u*have/w))
		}
	}
	return size
}

// Span is the width of a sheet on this piece.
func (d *WallBoard) Span(h *Hang) (a, b L) { return max(h.From, d.P.From), min(h.To, d.P.To) }

// SheetBox is the box of the page in which the words of a sheet may stand.
func (d *WallBoard) SheetBox(h *Hang, s *layout.Sheet) scene.Box {
	if x0, z0, x1, z1, ok := Stretch(s, d.W.Wall); ok && d.W.Run.Up {
		return d.V.Box(x0, z0, x1, z1)
	}
	a, b := d.Span(h)
	w := d.W.W
	top, bottom := room.At(w.CoverCeiling(), a), room.At(w.CoverFloor(), a)
	first := true
	for _, p := range s.Pieces {
		if p.Wall != d.W.Wall {
			continue
		}
		for _, q := range p.Outline {
			if q.X < a || q.X > b {
				continue
			}
			if first {
				top, bottom, first = q.Z, q.Z, false
			}
			top, bottom = max(top, q.Z), min(bottom, q.Z)
		}
	}
	return d.V.Box(a, bottom, b, top)
}

// Number letters one sheet's number and cut length; what finds no place inside goes over the ceiling on a leader.
func (d *WallBoard) Number(n *Numbered) {
	s, text := n.Sheet, d.Set.Number(n.Sheet)
	g := d.G.Part(scene.Tag{Class: "sheet", Title: "sheet " + text, Data: d.SheetData(s)})
	if n.In {
		g.Text(n.Number)
		if s.Ripped != "" {
			g.Rect(n.Frame, scene.Pen(scene.Numbers, CrewFine))
		}
		if s.Turned {
			d.Turned(g, n.Box, n.Frame)
		}
	}
	switch {
	case n.Cut != nil:
		g.Add(n.Cut)
	case n.Words != "":
		d.Cuts = append(d.Cuts, s)
	}
	if !n.In {
		words := "sheet " + text + ", from " + d.Say(n.From) + " to " + d.Say(n.To)
		if s.Ripped != "" {
			words += ", ripped"
		}
		d.Callout(g, d.Target(n), text, words, s.Ripped != "")
	}
}

// Target is where a leader meets a sheet: midway between the flags of its two lines, which stand half an overlap right of
// its seams, a little under the sheet's upper edge there.
func (d *WallBoard) Target(n *Numbered) scene.Point {
	u := d.U
	x := math.Min((n.Box.X0+n.Box.X1)/2+d.V.MM(d.Half), n.Box.X1-0.6*u)
	for _, at := range []float64{x, (n.Box.X0 + n.Box.X1) / 2, n.Box.X0 + n.Box.W()/4, n.Box.X1 - n.Box.W()/4} {
		for y := n.Box.Y0 + 1.6*u; y < n.Box.Y1; y += 0.5 * u {
			if d.Within(n.Sheet, scene.Pt(at, y-1*u)) && d.Within(n.Sheet, scene.Pt(at, y)) {
				return scene.Pt(at, y)
			}
		}
	}
	return scene.Pt(x, n.Box.Y0+1.6*u)
}

// Within reports whether a point of the page lies in a sheet's pieces on this wall.
func (d *WallBoard) Within(s *layout.Sheet, p scene.Point) bool {
	for i := range s.Pieces {
		if q := &s.Pieces[i]; q.Wall == d.W.Wall && d.Inside(q.Outline, p) {
			hole := false
			for _, o := range q.Holes {
				hole = hole || d.Inside(o, p)
			}
			if !hole {
				return true
			}
		}
	}
	return false
}

// Inside reports whether a point of the page lies in an outline of the wall, by counting the sides to its right.
func (d *WallBoard) Inside(o shape.Outline, p scene.Point) bool {
	in := false
	for i := range o {
		a, b := d.V.Pt(o[i].X, o[i].Z), d.V.Pt(o[(i+1)%len(o)].X, o[(i+1)%len(o)].Z)
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func (d *WallBoard) SheetData(s *layout.Sheet) []scene.Datum {
	return []scene.Datum{folio.Datum("place", Itoa(s.Place)), folio.Datum("flitch", s.Flitch), folio.Datum("number", Itoa(s.Number)), folio.Datum("cut", folio.Mm(s.CutLength))}
}

// CutWords is the cut length of a sheet, on the page where it is hung first; where it hangs, that it does.
func (d *WallBoard) CutWords(h *Hang, s *layout.Sheet) string {
	switch {
	case s.Hung:
		return "hung"
	case h.Before:
		return ""
	case !d.P.StartsHere(h):
		return ""
	}
	return d.Say(s.CutLength)
}

// FindNumber finds the largest number that stands inside a sheet, as high up as it goes: level, else upright, else
// closer to the sheet's edges.
func (d *WallBoard) FindNumber(n *Numbered, text string, most float64, framed bool) (scene.Text, bool) {
	u := d.U
	for _, try := range []struct{ angle, most, air, ring float64 }{{0, most, CrewAir, 1.2}, {90, most, CrewAir, 1.2}, {0, 6 * u, 0.92, 0.8}, {90, 6 * u, 0.92, 0.8}} {
		n.Ring = 0
		if framed {
			n.Ring = try.ring * u
		}
		for size := try.most; size >= CrewLarge*u-1e-9; size -= 0.5 * u {
			wide, high := scene.Width(text, size, true), size
			if try.angle == 90 {
				wide, high = high, wide
			}
			if wide+2*(try.air*u+n.Ring) > n.Box.W()+1e-9 {
				continue
			}
			t := scene.Text{String: text, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Angle: try.angle, Layer: scene.Numbers}
			ink := t.Bounds()
			for _, y := range Rows(n.Box.Y0, n.Box.Y1-high, u) {
				for _, x := range d.Columns(n.Box, wide, n.Ring) {
					t.At = scene.Pt(x, y+high/2)
					if at := Moved(ink, t.At); d.Within(n.Sheet, at.Centre()) && d.Space.Free(at.Inset(-n.Ring), try.air*u) {
						return t, true
					}
				}
			}
		}
	}
	return scene.Text{}, false
}

// Moved is a box taken along by as much as its point of reference.
func Moved(b scene.Box, by scene.Point) scene.Box {
	return scene.Box{X0: b.X0 + by.X, Y0: b.Y0 + by.Y, X1: b.X1 + by.X, Y1: b.Y1 + by.Y}
}

// Rows are the heights at which words may begin: 3 mm under the top, then further down, then close to the top.
func Rows(top, end, u float64) []float64 {
	var list []float64
	for y := top + 3*u; y < end; y += 1 * u {
		list = append(list, y)
	}
	return append(list, top+2.2*u, top+1.6*u)
}

// Columns are the places across a sheet at which words of a width may stand: the middle, then to its sides.
func (d *WallBoard) Columns(box scene.Box, wide, ring float64) []float64 {
	mid := (box.X0 + box.X1) / 2
	list := []float64{mid}
	side := wide/2 + CrewAir*d.U + ring
	for k := 1; k <= 3; k++ {
		off := (box.W()/2 - side) * float64(k) / 3
		if off > 0.5*d.U {
			list = append(list, mid+off, mid-off)
		}
	}
	return list
}

// FindCut finds a place for the cut length: level under the number where it clears the seams, else upright, else level
// anywhere in the sheet.
func (d *WallBoard) FindCut(n *Numbered, number scene.Box, text string) (*scene.Text, bool) {
	u, size, box := d.U, CrewText*d.U, n.Box
	wide := scene.Width(text, size, false)
	at := func(x, y, angle float64) *scene.Text {
		return &scene.Text{At: scene.Pt(x, y), String: text, Height: size, Anchor: scene.Middle, Seat: scene.Centred, Angle: angle, Layer: scene.Numbers}
	}
	try := func(angle, w, h, y0, y1 float64) (*scene.Text, bool) {
		if w+2*CrewAir*u > box.W() {
			return nil, false
		}
		ink := at(0, 0, angle).Bounds()
		for y := y0; y+h < y1; y += 1 * u {
			for _, x := range d.Columns(box, w, 0) {
				if b := Moved(ink, scene.Pt(x, y+h/2)); d.Within(n.Sheet, b.Centre()) && d.Space.Free(b, CrewAir*u) {
					return at(x, y+h/2, angle), true
				}
			}
		}
		return nil, false
	}
	y := number.Y1 + 2.6*u
	if t := at(number.Centre().X, y+size/2, 0); wide+2*CrewAir*u <= box.W() && d.Within(n.Sheet, t.Bounds().Centre()) && d.Space.Free(t.Bounds(), CrewAir*u) {
		return t, true
	}
	if t, ok := try(90, size*1.25, wide, y, box.Y1); ok {
		return t, true
	}
	if t, ok := try(0, wide, size*1.2, box.Y0+2*u, box.Y1); ok {
		return t, true
	}
	return try(90, size*1.25, wide, box.Y0+2*u, box.Y1)
}

// Turned draws the arrow of a sheet that hangs with its head down.
func (d *WallBoard) Turned(g *scene.Group, box, number scene.Box) {
	u := d.U
	const long, wide = 7, 2.2
	for y := number.Y0; y+long*u < box.Y1; y += 1 * u {
		for _, x := range append([]float64{number.X1 + 2.5*u, number.X0 - 2.5*u}, d.Columns(box, wide*u, 0)...) {
			b := scene.Box{X0: x - wide/2*u, Y0: y, X1: x + wide/2*u, Y1: y + long*u}
			if d.Space.Free(b, 0.8*u) {
				g.VLine(x, b.Y0, b.Y1-FlagLong*u, scene.Pen(scene.Numbers, 0.5))
				d.Head(g, scene.Pt(x, b.Y1), 270, false)
				d.Space.Take(b)
				return
			}
		}
	}
}
