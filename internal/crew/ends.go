package crew

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// ends draws how a sheet lies on the wall: the arrow of one that hangs with its head down, and the mark at the raw end from which
// the heights of one are that no level line comes to.
func (d *wallBoard) ends(n *numbered) {
	s := n.sheet
	if s.Hung || d.w.Run.Up {
		return
	}
	if s.Turned {
		d.turned(n)
	}
	if d.fromEnd(s) {
		d.endMark(n)
	}
}

// fromEnd reports whether the heights of a sheet are from its raw end, since the level mark is not on it.
func (d *wallBoard) fromEnd(s *layout.Sheet) bool {
	x := d.Count.CutOf(s)
	return x != nil && !s.InGap && x.FromRaw()
}

// rawEndWords say what the mark means, where the wall has one.
func (d *wallBoard) rawEndWords() []string {
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			for _, s := range h.Sheets {
				if !h.Hung() && len(s.Pieces) > 0 && d.fromEnd(s) {
					return []string{d.Words.Say("wall.raw_end")}
				}
			}
		}
	}
	return nil
}

func (d *wallBoard) endData(s *layout.Sheet) []scene.Datum {
	return []scene.Datum{folio.Datum("place", itoa(s.Place)), folio.Datum("course", itoa(s.Course))}
}

// arrows are the arrows of turned sheets, the longest first, in mm on letter paper.
var arrows = []struct{ long, wide, head, air float64 }{{7, 2.2, flagLong, 0.8}, {5, 2.2, flagLong, 0.8}, {4, 1.6, 1.8, 0.6}, {3.4, 1.2, 1.6, 0.3}}

// arrowAt finds the place of the arrow of a sheet that hangs with its head down: 1. right, 2. left of the number, 3. across the
// sheet, and so further and further down it; 4. the same with shorter and shorter arrows, in finer steps.
func (d *wallBoard) arrowAt(n *numbered) (at scene.Box, head float64, ok bool) {
	u, box, number := d.Unit, n.box, n.frame
	if !n.in {
		number = scene.Box{X0: box.X0, X1: box.X0, Y0: box.Y0 + 1*u, Y1: box.Y0 + 1*u}
	}
	for _, try := range arrows {
		long, wide := try.long*u, try.wide*u
		xs := []float64{number.X1 + 2.5*u, number.X0 - 2.5*u}
		for x := box.X0 + wide/2; x < box.X1-wide/2; x += wide / 4 {
			xs = append(xs, x)
		}
		for y := number.Y0; y+long < box.Y1; y += 1 * u {
			for _, x := range xs {
				b := scene.Box{X0: x - wide/2, Y0: y, X1: x + wide/2, Y1: y + long}
				if d.within(n.sheet, b.Centre()) && d.space.Free(b, try.air*u) {
					return b, try.head * u, true
				}
			}
		}
	}
	return scene.Box{}, 0, false
}

// turned draws the arrow of a sheet that hangs with its head down. Where it has no place the sheet is named over the ceiling.
func (d *wallBoard) turned(n *numbered) {
	b, head, ok := d.arrowAt(n)
	if !ok {
		text := d.Words.Say("wall.turned", d.SheetNumber(n.sheet))
		d.callout(d.g, d.target(n), text, d.Words.Say("wall.turned_over", d.SheetNumber(n.sheet)), false)
		return
	}
	x := (b.X0 + b.X1) / 2
	g := d.g.Part(scene.Tag{Class: "turned", Data: d.endData(n.sheet)})
	g.VLine(x, b.Y0, b.Y1-head, scene.Pen(scene.Numbers, 0.5))
	draft.Triangle(g, scene.Numbers, scene.Pt(x, b.Y1), 270, head, b.W(), 0, false)
	d.space.Take(b)
}

// endMarks are the sizes of the mark at a raw end, and how clear of all else it stands, in mm on letter paper.
var endMarks = []struct{ size, air float64 }{{2.4, 0.5}, {1.8, 0.4}, {1.4, 0.2}}

// markAt finds the place of the mark at the raw end, at the foot or at the head of what the sheet covers: the first from the left that
// is free.
func (d *wallBoard) markAt(n *numbered) (scene.Box, bool) {
	u, head := d.Unit, d.Count.CutOf(n.sheet).FromHead()
	for _, try := range endMarks {
		half := try.size / 2 * u
		for x := n.box.X0 + half + try.air*u; x < n.box.X1-half; x += half / 2 {
			at := d.endOf(n.sheet, n.box, x, head)
			b := scene.Box{X0: x - half, Y0: at - half*2, X1: x + half, Y1: at - 0.3*u}
			if head {
				b.Y0, b.Y1 = at+0.3*u, at+half*2
			}
			if (head && at < n.box.Y1 || !head && at > n.box.Y0) && d.within(n.sheet, b.Centre()) && d.space.Free(b, try.air*u) {
				return b, true
			}
		}
	}
	return scene.Box{}, false
}

func (d *wallBoard) endMark(n *numbered) {
	b, ok := d.markAt(n)
	if !ok {
		return
	}
	end, base, tip := "foot", b.Y1, b.Y0
	if d.Count.CutOf(n.sheet).FromHead() {
		end, base, tip = "head", b.Y0, b.Y1
	}
	g := d.g.Part(scene.Tag{Class: "raw-end", Title: d.Words.Say("tip.raw_end", d.SheetNumber(n.sheet)), Data: append(d.endData(n.sheet), folio.Datum("end", end))})
	g.Polygon(scene.Style{Layer: scene.Numbers, Fill: scene.Solid(scene.Black)}, scene.Pt(b.X0, base), scene.Pt(b.X1, base), scene.Pt((b.X0+b.X1)/2, tip))
	d.space.Take(b)
}

// leavesEnds reports whether the arrow and the mark of a sheet have a place beside its number.
func (d *wallBoard) leavesEnds(n *numbered, number scene.Text) bool {
	s := n.sheet
	if s.Hung || d.w.Run.Up || !s.Turned && !d.fromEnd(s) {
		return true
	}
	before := *d.space
	defer func() { *d.space = before }()
	m := *n
	m.in, m.frame = true, number.Bounds().Inset(-max(n.ring, tightRing*d.Unit))
	d.space.Take(m.frame)
	if s.Turned {
		b, _, ok := d.arrowAt(&m)
		if !ok {
			return false
		}
		d.space.Take(b)
	}
	if d.fromEnd(s) {
		_, ok := d.markAt(&m)
		return ok
	}
	return true
}

// endOf is where what a sheet covers ends on the page, going down at one place of it, or going up.
func (d *wallBoard) endOf(s *layout.Sheet, box scene.Box, x float64, head bool) float64 {
	from, step, far := box.Y1, -0.25*d.Unit, box.Y0
	if head {
		from, step, far = box.Y0, -step, box.Y1
	}
	for y := from; box.Y0 <= y && y <= box.Y1; y += step {
		if d.within(s, scene.Pt(x, y)) {
			return y
		}
	}
	return far
}
