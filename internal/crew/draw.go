package crew

import (
	"slices"
	"strconv"

	"flitchlay/internal/crewday"
	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// wallBoard is a wall, or a piece of one, on its page while the drawing is tried at one scale. What is said of the whole page is
// asked of the one at its left.
type wallBoard struct {
	*board
	*drawing
	w      *Wall
	p      *piece
	v      draft.View
	g      *scene.Group
	pieces map[*layout.Sheet][]cover
}

// drawing is what the walls of one page share while they are drawn.
type drawing struct {
	faces    []*wallBoard // from left to right
	area     scene.Box    // what the drawing may take
	space    *draft.Space
	settled  bool                       // what finds no place over the ceiling stands beside the drawing
	above    bool                       // something found no place over the ceiling
	below    bool                       // or under the floor
	beside   []string                   // words that stand beside the drawing
	places   []string                   // where openings stand whose white has no room for it
	unseen   map[string]string          // what is said of a base or a crown that has no figure in the drawing, and its name with that
	kept     []string                   // what of both has no room in the list either: it comes first under the drawing
	outside  []string                   // how openings are cut whose white has no room for it
	cuts     []*layout.Sheet            // whose cut length has no room in them
	bevelled []bevelled                 // bevels that have no room in their sheets
	about    map[string][]*layout.Sheet // whose sheets a line under the drawing is of
	notes    string                     // where the page finds what it has no room for
}

// boards are the walls of a page, ready to be drawn; the one at its left.
func (c *Set) boards(b *board, s *strip) *wallBoard {
	in := &drawing{notes: s.notesKey()}
	for _, p := range s.pieces {
		in.faces = append(in.faces, &wallBoard{board: b, drawing: in, w: p.wall, p: p})
	}
	return in.faces[0]
}

// unrolled reports whether several walls stand on the page side by side.
func (d *drawing) unrolled() bool { return len(d.faces) > 1 }

// first reports whether a wall is the one at the left of its page.
func (d *wallBoard) first() bool { return d == d.faces[0] }

// last is the wall at the right of the page.
func (d *drawing) last() *wallBoard { return d.faces[len(d.faces)-1] }

// extremes are the lowest and the highest point of what stands on the page.
func (d *drawing) extremes() (low, high L) {
	low, high = d.faces[0].p.Extremes()
	for _, f := range d.faces[1:] {
		a, b := f.p.Extremes()
		low, high = min(low, a), max(high, b)
	}
	return low, high
}

// note is some lines under a heading that stand beside the drawing, or on a page of their own; what the cut list says too is
// left to it where the drawing's page has no room.
type note struct {
	head   string
	lines  []string
	listed bool
}

// air is what words keep clear of lines and of each other: 1 mm and half a line.
const crewAir = 1.2

// wallPage draws one piece of a wall, or walls unrolled. What has to be said and has no room on its page stands at the end of the
// cut list.
func (c *Set) wallPage(p *strip, n int) []*scene.Page {
	title := p.title()
	way := "left to right"
	if p.lead().wall.Run.Up {
		way = "bottom to top"
	}
	for _, q := range p.pieces {
		c.First(q.key(), n)
		if slices.ContainsFunc(q.Hangs, func(h *face.Hang) bool { return c.StartsWith(q.wall.Face, h) && q.StartsHere(h) }) {
			c.First(crewday.StartKey, n)
		}
	}
	lines := [2]string{c.Place(), c.flitchWords(p.hangs()) + ", " + c.Words.Of("wall", way)}
	var first []*scene.Page
	var kept *fit
	var over []note
	least := 0
	from, to := 0, mostMore
	if p.fits != nil { // known from the first time round
		from, to = p.fits.more, p.fits.more
	}
	for more := from; more <= to; more++ {
		b := c.open(n, folio.Sheet{Title: title, Lines: lines, Form: folio.Beside})
		b.Page.Title = title
		b.grow(more)
		area := b.Area
		area.Y1 = b.Field.Y1 // the foot has grown
		d := c.fit(b, p, area)
		b.Page.Add(d.g)
		d.keepUnder(b.tapeList(&scene.Group{}, d, nil))
		wanted := b.footStrip(&scene.Group{}, d, nil) // what the foot has no room for is known before it is drawn
		all := b.tapeList(b.Page.Part(scene.Tag{Class: "tape-list"}), d, wanted)
		b.footStrip(b.Page.Part(scene.Tag{Class: "frame"}), d, besideAny(wanted, all))
		p.over = nil
		if len(all) == 0 {
			return []*scene.Page{b.Page}
		}
		if left := leftOver(all) + ownNote*len(d.bevelled); first == nil || left < least {
			first, kept, least = []*scene.Page{b.Page}, p.fits, left
			over = slices.DeleteFunc(slices.Clone(all), func(n note) bool { return n.listed })
		}
		p.fits = nil
	}
	p.fits, p.over = kept, over
	return first
}

// besideAny are the heads of the notes of which something stands beside the drawing: of those that wanted room, all but what is left
// whole.
func besideAny(wanted, left []note) map[string]bool {
	beside := map[string]bool{}
	for _, n := range wanted {
		beside[n.head] = !slices.ContainsFunc(left, func(m note) bool { return m.head == n.head && len(m.lines) == len(n.lines) })
	}
	return beside
}

// ownNote is what a line weighs that would go over to a page of its own, or that the drawing should have.
const ownNote = 100

// leftOver weighs what a page has no room for: what would go over to a page of its own, then what the cut list says too.
func leftOver(notes []note) int {
	n := 0
	for _, x := range notes {
		if x.listed {
			n += len(x.lines)
		} else {
			n += ownNote * len(x.lines)
		}
	}
	return n
}

// scaleBar says at what scale the wall is drawn, where there is room under it.
func (d *wallBoard) scaleBar() {
	u := d.Unit
	bar := draft.Bar{Scale: d.v.Scale, Metric: d.Metric()}
	ratio := "1:" + strconv.FormatInt(d.v.Scale, 10)
	k := d.Look
	most := 42 * u
	words := scene.Width(ratio, folio.TapedSmall*u, false) + 4*u
	wide := bar.Wide(k, most) + words + 2*u
	if box, ok := d.under(wide, 6*u); ok {
		d.Word(d.g, scene.Pt(box.X0, box.Y1-0.6*u), ratio, folio.TapedSmall*u, false, scene.Start)
		bar.Draw(d.g, k, scene.Pt(box.X0+words, box.Y1-0.6*u), most)
	}
}

// Places at the foot of a drawing, in mm on letter paper: how far over the edge of the field the lowest is and the highest
// may be, and the steps up and along.
const (
	lowestUnder  = 1.8
	highestUnder = 24.0
	underUp      = 2.0
	underAlong   = 4.0
)

// under finds a free place at the foot of the drawing, as low and as far left as it goes, and takes it: rows from below,
// each from the left.
func (d *wallBoard) under(wide, high float64) (scene.Box, bool) {
	u := d.Unit
	for y := d.area.Y1 - lowestUnder*u; y > d.area.Y1-highestUnder*u; y -= underUp * u {
		for x := d.area.X0 + underAlong*u; x+wide < d.area.X1; x += underAlong * u {
			box := scene.Box{X0: x, Y0: y - high, X1: x + wide, Y1: y}
			if d.space.Free(box, crewAir*u) {
				d.space.Take(box)
				return box, true
			}
		}
	}
	d.lack(&d.below)
	return scene.Box{}, false
}

// openings draws what is open: its white and its edges.
func (d *wallBoard) openings() {
	for i := range d.w.W.Openings {
		o := &d.w.W.Openings[i]
		if box, ok := d.hole(o); ok {
			g := d.g.Part(scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name), folio.Datum("left", folio.Mm(o.FromLeft)), folio.Datum("right", folio.Mm(o.Right()))}})
			pen := scene.Pen(scene.Openings, 0.5)
			pen.Fill = scene.Solid(scene.White)
			g.Rect(box, pen)
			d.space.Outline(box)
		}
	}
	for _, x := range d.w.W.Bare {
		from, to := max(x.From, d.p.From), min(x.To, d.p.To)
		if from >= to {
			continue
		}
		low, high := room.At(d.w.W.Floor, from), room.At(d.w.W.Ceiling, from)
		box := d.v.Box(from, low, to, high)
		draft.Hatch(d.g, scene.Pen(scene.Hatch, 0.18), box, 3*d.Unit, true)
		d.space.Take(box)
	}
}

// hole is the white of an opening on the page, false where the piece does not show it.
func (d *wallBoard) hole(o *room.Opening) (scene.Box, bool) {
	x0, z0, x1, z1 := d.w.Hole(o)
	x0, x1 = max(x0, d.p.From), min(x1, d.p.To)
	if x0 >= x1 {
		return scene.Box{}, false
	}
	return d.v.Box(x0, z0, x1, z1), true
}

// seams draws the finished joints.
func (d *wallBoard) seams() {
	for _, h := range d.p.Hangs {
		if h.Seam == nil || !d.p.Here(h) {
			continue
		}
		g := d.g.Part(scene.Tag{Class: "seam", Title: d.Words.Say("tip.seam", d.Plan.SeamName(d.w.Run, h.Seam)), Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		for _, s := range d.w.Covered(h.X) {
			a, b := d.v.Pt(h.X, s[0]), d.v.Pt(h.X, s[1])
			d.line(g, a, b, scene.Pen(scene.Seams, folio.TapedFine))
		}
	}
}

// slivers draws the seams that cross a leaning joint onto the wall, and names their sheets over the joint.
func (d *wallBoard) slivers() {
	for i := range d.w.Slivers {
		s := &d.w.Slivers[i]
		if s.Seam == nil || s.Right && d.p.RightCut() || !s.Right && d.p.LeftCut() {
			continue
		}
		g := d.g.Part(scene.Tag{Class: "seam", Title: d.Words.Say("tip.seam", s.Seam.Number), Data: []scene.Datum{folio.Datum("at", folio.Mm(s.Seam.At))}})
		for _, h := range d.w.Heights(s) {
			d.line(g, d.v.Pt(s.X, h[0]), d.v.Pt(s.X, h[1]), scene.Pen(scene.Seams, folio.TapedFine))
		}
	}
}

// sliverWords say in the list which sheets come onto the wall past its leaning joint, and where their seam stands there.
func (d *wallBoard) sliverWords() []string {
	var lines []string
	for i := range d.w.Slivers {
		s := &d.w.Slivers[i]
		if s.Right && d.p.RightCut() || !s.Right && d.p.LeftCut() {
			continue
		}
		key := "sliver right"
		if !s.Right {
			key = "sliver left"
		}
		lines = append(lines, d.Words.Of("wall", key, d.SheetNumber(s.Sheets[0]), d.Along(d.w.Face, s.X), d.Say((s.Far-s.X).Abs())))
	}
	return lines
}

// joints draws the end matches of courses.
func (d *wallBoard) joints() {
	for _, h := range d.p.Hangs {
		for _, e := range d.w.Feet(h) {
			if x0, x1 := max(e.From, d.p.From), min(e.To, d.p.To); x0 < x1 {
				d.line(d.g, d.v.Pt(x0, e.Z), d.v.Pt(x1, e.Z), scene.Pen(scene.Seams, folio.TapedFine))
			}
		}
	}
}

// levelLine draws the line to which the marks are hung, across all walls of the page, but not over the white of openings.
func (d *wallBoard) levelLine() {
	var clear []scene.Box
	for _, f := range d.faces {
		for i := range f.w.W.Openings {
			if box, ok := f.hole(&f.w.W.Openings[i]); ok {
				clear = append(clear, box)
			}
		}
	}
	if low, high := d.extremes(); d.Level <= low || d.Level >= high {
		return
	}
	y := d.v.Y(d.Level)
	a, b := scene.Pt(d.leftEdge()-2*d.Unit, y), scene.Pt(d.last().v.X(d.last().p.To)+2*d.Unit, y)
	points := draft.Outside(a, b, clear...)
	for i := 0; i+1 < len(points); i += 2 {
		d.line(d.g, points[i], points[i+1], scene.Pen(scene.Plumb, folio.TapedFine).As(scene.Chain(folio.TapedFine)))
	}
}

// line draws a line that words have to keep clear of.
func (d *wallBoard) line(g *scene.Group, a, b scene.Point, pen scene.Style) {
	g.Line(a, b, pen)
	d.space.Stroke(a, b)
}

// lack notes that something found no place over the ceiling or under the floor.
func (d *wallBoard) lack(what *bool) { *what = true }
