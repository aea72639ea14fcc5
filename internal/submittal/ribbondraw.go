package submittal

import (
	"fmt"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// headLines are the lines of the heading over the cover: what the set is of, in the greatest letters that hold it in a line, and of
// what wood it is.
func (r *ribbon) headLines() (titles []string, height float64, words []string) {
	k, w := r.Look, r.NoteColumns().Box.W()
	height = draft.FitHeight(r.Room.Project.Title, k.Huge, k.Medium, true, w)
	titles = scene.Wrap(r.Room.Project.Title, height, true, w)
	hang, _ := hanging(r.Plan)
	says := fmt.Sprintf("%s, %s of wall", sheetCount(hang), r.Style.FormatArea(r.Plan.Totals.NetArea))
	if v := r.Room.Veneer; v.Species != "" {
		wood := v.Species
		if v.Cut != "" {
			wood += ", " + v.Cut + " cut"
		}
		says = elevation.Capital(wood) + ": " + says
	}
	return titles, height, scene.Wrap(says, k.Medium, false, w)
}

// linePitch is from a line of the heading to the next, in heights of its letters.
const linePitch = 1.5

// headHigh is the height of the heading, with what parts it from the ribbon.
func (r *ribbon) headHigh() float64 {
	k := r.Look
	titles, height, words := r.headLines()
	return height*(1+linePitch*float64(len(titles)-1)) + k.Of(3) + k.Medium*(1+linePitch*float64(len(words)-1)) + k.Of(5)
}

// footHigh is that of the title under the ribbon, with what parts it from the lists.
func (r *ribbon) footHigh() float64 {
	high := r.Look.Of(16.5+titleDrop-4.5) + r.Look.Of(4.2)*float64(max(0, len(r.under())-1))
	if r.barWide() == 0 {
		high += r.Look.Of(barHigh)
	}
	return high
}

// under are the lines under the title: the scale, what the marks on the ribbon mean, those that it has, and what has no place on it.
func (r *ribbon) under() []string {
	words := []string{"SCALE " + draft.Ratio(r.scale, r.Metric()), "seen from inside"}
	starts, closing, change, broken := false, false, false, false
	for i := range r.Plan.Runs {
		starts = starts || len(r.Plan.Runs[i].Sheets) > 0
		for _, m := range r.Plan.Runs[i].Seams {
			closing, change = closing || m.Closing, change || m.FlitchChange
		}
	}
	for _, row := range r.rows {
		for i, p := range row.parts {
			broken = broken || p.broken && i > 0 || !p.first() || !p.last()
		}
	}
	for _, mark := range []struct {
		has  bool
		says string
	}{{starts, "triangle: hanging starts"}, {closing, "diamond: closing seam"}, {change, "hexagon: the flitch changes"}, {broken, "zigzag: the ribbon is broken"}} {
		if mark.has {
			words = append(words, mark.says)
		}
	}
	if r.Room.Veneer.Horizontal {
		words = append(words, "bands hang from the foot up")
	}
	for _, row := range r.rows {
		words = append(words, row.plan.lost...)
	}
	words = append(words, r.unnamed()...)
	return scene.Wrap(strings.Join(words, "; "), r.Look.Small, false, r.box.W()-r.Look.Of(22)-r.barWide())
}

// titleDrop is how far the line of the title stands under the words of the lowest row, in mm on the office page: its letters stand up
// from it.
const titleDrop = 8.5

// ribbonName is the title of the ribbon.
const ribbonName = "THE ROOM UNROLLED"

// barHigh is what the scale bar takes under the title, where there is no room beside it.
const barHigh = 8.0

// barWide is what the title leaves the scale bar at its right; 0: nothing.
func (r *ribbon) barWide() float64 {
	name := r.Look.Of(34) + scene.Width(ribbonName, r.Look.Large, true) // with its circle, and what parts it from the bar
	if r.box.W() < max(r.Look.Of(130), name+r.Look.Of(50)) {
		return 0
	}
	if r.box.W() < r.Look.Of(220) {
		return r.Look.Of(50)
	}
	return r.Look.Of(110)
}

// draw draws rows and title from a height of the page on.
func (r *ribbon) draw(b *folio.Board, y float64) {
	k := b.Look
	for i := range r.rows {
		row := &r.rows[i]
		r.row(b, row, scene.Pt(r.box.Centre().X-row.wide/2, y+row.plan.over+r.mm(row.high-row.low)))
		y += row.plan.high
	}
	at := scene.Pt(r.box.X0, y+k.Of(titleDrop))
	t := draft.Title{Mark: "1", Page: b.Leaf.Number, Name: ribbonName, Width: min(k.Of(60), r.box.W()-k.Of(16)), Most: r.box.W(),
		Under: r.under()}
	t.Draw(&b.Page.Group, k, at)
	bar, most := draft.Bar{Scale: r.scale, Metric: b.Metric()}, r.barWide()-k.Of(18)
	if most <= 0 {
		bar.Draw(&b.Page.Group, k, at.Add(k.Of(17), k.Of(8)+k.Of(4.2)*float64(len(t.Under))), r.box.W()-k.Of(36))
	} else if w := bar.Wide(k, most); w <= most {
		bar.Draw(&b.Page.Group, k, scene.Pt(r.box.X1-k.Of(9)-w, at.Y+k.Of(1.5)), most)
	}
}

// heading letters what the set is of, and what hangs there.
func (r *ribbon) heading(b *folio.Board) {
	k := b.Look
	g := b.Page.Part(scene.Tag{Class: "heading"})
	titles, height, words := r.headLines()
	y := r.box.Y0
	line := func(text string, size float64, bold bool) {
		g.Text(scene.Text{At: scene.Pt(r.box.X0, y), String: text, Height: size, Bold: bold, Seat: scene.Hanging, Layer: scene.Notes})
		y += size * linePitch
	}
	for _, text := range titles {
		line(text, height, true)
	}
	y += height*(1-linePitch) + k.Of(3)
	for _, text := range words {
		line(text, k.Medium, false)
	}
}

// row draws a row with the left end of its lowest floor at a place.
func (r *ribbon) row(b *folio.Board, row *ribbonRow, at scene.Point) {
	k := r.fine()
	set := *b.Set
	set.Look = k
	small := *b
	small.Set, small.Space = &set, draft.NewSpace(scene.Box{})
	ratio := draft.Ratio(r.scale, b.Metric())
	box := scene.Box{X0: at.X, Y0: at.Y - r.mm(row.high-row.low), X1: at.X + row.wide, Y1: at.Y}
	view := scene.View{Box: box.Inset(-k.Of(0.5)), Scale: float64(r.scale), Metric: b.Metric(), Name: ribbonName, Ratio: ratio}
	g := b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(r.scale)), folio.Datum("ribbon", "row"))
	for i := range row.parts {
		p := &row.parts[i]
		e := &elevation.View{Board: &small, F: p.f, From: p.from, To: p.to, Of: 1, Detail: true, Small: true}
		e.V = draft.View{Scale: r.scale}
		e.V.Origin = scene.Pt(at.X+p.x-e.V.MM(p.from), at.Y+e.V.MM(row.low))
		in := g.Part(scene.Tag{Class: "ribbon-wall", Title: p.f.W.Name, Data: []scene.Datum{folio.Datum("name", p.f.W.Name), folio.Datum("from", folio.Mm(p.from)), folio.Datum("to", folio.Mm(p.to))}})
		r.part(e, in, row, i)
		if p.broken && i > 0 {
			x := at.X + p.x - p.gap/2
			draft.Break(g, r.Look, scene.Walls, scene.Pt(x, box.Y0-k.Of(1)), scene.Pt(x, box.Y1+k.Of(1)))
		}
	}
	r.words(b, g, row, at, box)
}

// part draws a wall of a row, the folds at its corners and the marks on its seams.
func (r *ribbon) part(e *elevation.View, g *scene.Group, row *ribbonRow, i int) {
	p := &row.parts[i]
	c, _, _ := p.f.Neighbour(true)
	joined := row.joined(i)
	e.Plain(g, p.first() && p.corner == nil, p.last() && c == nil)
	k := r.Look
	line := func(x L) (a, b scene.Point) {
		return e.V.Pt(x, room.At(p.f.W.Ceiling, x)), e.V.Pt(x, room.At(p.f.W.Floor, x))
	}
	fold := scene.Pen(scene.Walls, k.Thin).As(scene.Dashed(k.Thin))
	if p.first() && p.corner != nil {
		a, b := line(p.from)
		g.Part(scene.Tag{Class: "fold", Title: "corner " + p.corner.Name}).Line(a, b, fold)
	}
	if p.last() && c != nil && !joined {
		a, b := line(p.to)
		g.Part(scene.Tag{Class: "fold", Title: "corner " + c.Name}).Line(a, b, fold)
	}
	for i := range p.f.W.Openings {
		if o := &p.f.W.Openings[i]; o.FromLeft >= e.From && o.Right() <= e.To {
			if t, ok := r.openingName(e.V.Box(e.F.Hole(o)), o.Name); ok {
				g.Part(scene.Tag{Class: "opening-name", Data: []scene.Datum{folio.Datum("name", o.Name), folio.Datum("wall", p.f.W.Name)}}).Text(t)
			}
		}
	}
	r.bandNumbers(e, g)
	for _, goes := range []struct {
		x  L
		on bool
	}{{p.from, !p.first()}, {p.to, !p.last()}} {
		if goes.on {
			a, b := line(goes.x)
			draft.Break(g, k, scene.Walls, a.Add(0, -k.Of(1)), b.Add(0, k.Of(1)))
		}
	}
	for _, m := range p.f.Seams {
		if m.X < p.from || m.X > p.to || m.X == p.to && !p.last() || p.f.Run.Up || !m.Closing && !m.FlitchChange {
			continue
		}
		at := r.markAt(e, m)
		if m.Closing {
			draft.Diamond(g.Part(scene.Tag{Class: "closing", Title: "closing seam"}), k, scene.Marks, at, k.Of(4), k.Thin, scene.White)
		} else {
			draft.Hexagon(g.Part(scene.Tag{Class: "flitch-change", Title: "change of flitch"}), k, scene.Marks, at, k.Of(4), k.Thin)
		}
	}
	if at, size, ok := r.start(e, p); ok {
		draft.Triangle(g.Part(scene.Tag{Class: "start", Title: "hanging starts"}), scene.Marks, at, 0, size, size, 0, false)
	}
}

// markHalf is half of what a mark on a seam takes, with its air, in mm on the office page.
const markHalf = 2.6

// markAt is the middle of the longest stretch in which a seam shows, moved so far that the mark stays on its wall.
func (r *ribbon) markAt(e *elevation.View, m *layout.Seam) scene.Point {
	low, high := L(0), L(0)
	for _, h := range e.F.Shown(m.X) {
		if h[1]-h[0] > high-low {
			low, high = h[0], h[1]
		}
	}
	at, half := e.V.Pt(m.X, (low+high)/2), r.Look.Of(markHalf)
	head, foot := e.V.Pt(m.X, room.At(e.F.W.Ceiling, m.X)).Y+half, e.V.Pt(m.X, room.At(e.F.W.Floor, m.X)).Y-half
	at.Y = min(max(at.Y, min(head, (head+foot)/2)), max(foot, (head+foot)/2))
	return at
}

// startAt are the places of the triangle up its sheet, as shares of what the sheet covers there.
var startAt = []float64{0.25, 0.1, 0.5, 0.75, 0.9}

// start is the point and the size of the triangle in the first sheet of a run, where the part shows it: low in what the sheet covers
// there, beside no opening, and no wider than a narrow sheet.
func (r *ribbon) start(e *elevation.View, p *ribbonPart) (at scene.Point, size float64, ok bool) {
	k := r.Look
	size = k.Of(3.4)
	if len(p.f.Run.Sheets) == 0 {
		return scene.Point{}, 0, false
	}
	if p.f.Run.Up { // at the left end of the lowest band
		left, low, _, high, ok := p.f.Extent(&p.f.Run.Sheets[0])
		return e.V.Pt(left, (low+high)/2).Add(k.Of(5.2), 0), size, ok && left >= p.from && left < p.to
	}
	for _, part := range p.f.Parts {
		if part.Place != p.f.Run.Sheets[0].Place || part.From < p.from || part.From >= p.to {
			continue
		}
		low, high := L(0), L(0)
		for _, h := range p.f.CoveredBy(part.Sheet(), part.From+(part.To-part.From)/8) {
			if h[1]-h[0] > high-low {
				low, high = h[0], h[1]
			}
		}
		in := k.Of(5.2)
		if wide := r.mm(part.To - part.From); wide < in+k.Of(0.4) {
			size = min(max(wide-k.Of(0.8), k.Of(1.6)), size)
			in = size + k.Of(0.4)
		}
		place := func(share float64) scene.Point {
			return e.V.Pt(part.From, low+L(float64(high-low)*share)).Add(in, 0)
		}
		at = place(startAt[0])
		for _, share := range startAt {
			if p := place(share); !r.onHole(e, scene.Box{X0: p.X - size, Y0: p.Y - size/2, X1: p.X + k.Of(0.4), Y1: p.Y + size/2}) {
				at = p
				break
			}
		}
		return at, size, true
	}
	return scene.Point{}, 0, false
}

// words letters numbers, corners and labels round a row.
func (r *ribbon) words(b *folio.Board, g *scene.Group, row *ribbonRow, at scene.Point, box scene.Box) {
	k := r.Look
	for _, n := range row.plan.numbers {
		y := box.Y0 - k.Of(1.4) - k.Of(numberPitch)*float64(n.line)
		g.Part(scene.Tag{Class: "ribbon-number"}).Text(scene.Text{At: scene.Pt(at.X+n.x, y), String: n.text, Height: k.Small, Anchor: scene.Middle, Layer: scene.Numbers})
	}
	thin := scene.Pen(scene.Marks, k.Dimension)
	for _, d := range row.plan.discs {
		c, size := d.at.Add(at.X, at.Y), elevation.CornerDisc(b.Set, d.name)
		in := g.Part(scene.Tag{Class: "corner", Title: "corner " + d.name})
		in.Line(scene.Pt(at.X+d.x, at.Y+k.Of(0.6)), scene.Pt(c.X, c.Y-size/2), thin)
		box := draft.Disc(in, k, scene.Marks, c, size, k.Thin, d.name, k.Small, true)
		if page := b.PageOf("corner " + d.name); page != "" {
			b.Page.Link(box, page)
		}
	}
	for _, l := range row.plan.labels {
		in := g.Part(scene.Tag{Class: "ribbon-label", Data: []scene.Datum{folio.Datum("name", l.part.f.W.Name)}})
		if l.under {
			in.Polyline(thin, scene.Pt(at.X+l.mid, at.Y+k.Of(0.6)), scene.Pt(at.X+l.leg, at.Y+k.Of(legTop)), scene.Pt(at.X+l.leg, at.Y+l.box.Y0-k.Of(0.8)))
		}
		c := l.box.Centre().X + at.X
		for i, line := range l.lines {
			in.Text(scene.Text{At: scene.Pt(c, at.Y+l.box.Y0+k.Of(labelPitch)*float64(i)), String: line, Height: k.Small, Bold: i == 0, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Notes})
		}
		if pages := r.wallPages(l.part); len(pages) > 0 {
			b.Page.Link(scene.Box{X0: l.box.X0 + at.X, Y0: l.box.Y0 + at.Y, X1: l.box.X1 + at.X, Y1: l.box.Y1 + at.Y}, pages[0])
		}
	}
}
