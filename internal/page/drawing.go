package page

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// Drawing is one drawing, and where the walls stand on it.
type Drawing struct {
	SVG    string  `json:"svg"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Scale  int64   `json:"scale"`
	Ratio  string  `json:"ratio"`
	Walls  []Stand `json:"walls"`
}

// Stand is where a wall stands on a drawing: the place of its left end at the room's level, and what is shown of it.
type Stand struct {
	Wall int     `json:"wall"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Drawer draws a plan.
type Drawer struct {
	set *folio.Set
}

// looks are the papers whose lines and letters the drawings have, by unit; each is read once.
var looks = map[length.Unit]func() (*paper.Template, error){
	length.Inches:      sync.OnceValues(func() (*paper.Template, error) { return paper.Named("ansi-b") }),
	length.Millimetres: sync.OnceValues(func() (*paper.Template, error) { return paper.Named("a3") }),
}

// NewDrawer prepares the drawings of a plan, walls with their grain or, where they are only to be seen for a moment, without.
//
// Errors: a fault of the program: a page template of its own that cannot be read.
func NewDrawer(p *layout.Plan, grain bool) (*Drawer, error) {
	t, err := looks[p.Room.Project.Units]()
	if err != nil {
		return nil, err
	}
	own := *t
	own.Wood.Grain = own.Wood.Grain && grain
	return &Drawer{folio.NewSet(p, &own, nil, "")}, nil
}

// Distances of a drawing, in mm on the office page.
const (
	edge     = 3.0  // round all
	headHigh = 8.0  // over a wall, for the numbers of its sheets
	footHigh = 11.0 // under a wall, for its name and what is marked at its foot
	runGap   = 8.0  // between two runs
	wallGap  = 2.5  // at a corner round which nothing goes
	leastRow = 13.0 // of a wall in the ribbon: where it is lower the ribbon is wider than asked for
	mostRow  = 46.0 // where it would be higher it is narrower
)

// part is a wall of a drawing while it is drawn.
type part struct {
	f   *face.Face
	gap float64
	x   float64
}

// Ribbon draws all covered walls side by side, in a width if they come out high enough to be read there.
//
// Errors: a fault of the program: something that cannot be drawn.
func (d *Drawer) Ribbon(wide float64) (*Drawing, error) {
	parts, scale, low, high := d.ribbonParts(wide)
	return d.draw(parts, scale, low, high, "ribbon", "The room unrolled")
}

// ribbonParts are the walls of the ribbon, its scale, its foot and its head.
func (d *Drawer) ribbonParts(wide float64) (parts []part, scale int64, low, high L) {
	k := d.set.Look
	long, gaps := L(0), 0.0
	var before *face.Face
	low, high = math.MaxInt64, 1
	for _, f := range d.set.Faces {
		p := part{f: f}
		switch c, _, _ := f.Neighbour(false); {
		case before == nil:
		case before.Run != f.Run:
			p.gap = k.Of(runGap)
		case c == nil || c.LeftWall != before.Wall:
			p.gap = k.Of(wallGap)
		}
		before = f
		gaps += p.gap
		long, high, low = long+f.Right-f.Left, max(high, f.High), min(low, f.Low)
		parts = append(parts, p)
	}
	fits := math.Ceil(long.MM() / max(wide-gaps-2*k.Of(edge), 1))
	fits = max(1, min(fits, math.Floor((high-low).MM()/k.Of(leastRow))), math.Ceil((high-low).MM()/k.Of(mostRow)))
	return parts, int64(fits), low, high
}

// Wall draws one covered wall as large as a width and a height hold it. Nil where the wall has no covering.
//
// Errors: as Ribbon.
func (d *Drawer) Wall(wall int, wide, high float64) (*Drawing, error) {
	f := d.set.Face(wall)
	if f == nil {
		return nil, nil
	}
	return d.draw([]part{{f: f}}, d.wallScale(f, wide, high), f.Low, f.High, fmt.Sprintf("wall%d", wall), f.W.Name)
}

// wallScale is the largest scale at which a wall stands in a width and a height.
func (d *Drawer) wallScale(f *face.Face, wide, high float64) int64 {
	k := d.set.Look
	return int64(max(1, math.Ceil((f.Right-f.Left).MM()/max(wide-2*k.Of(edge), 1)), math.Ceil((f.High-f.Low).MM()/max(high-k.Of(headHigh+footHigh), 1))))
}

// draw draws walls side by side at a scale.
func (d *Drawer) draw(parts []part, scale int64, low, high L, key, title string) (*Drawing, error) {
	p, out := d.compose(parts, scale, low, high, key, title)
	data, err := svg.Page(p, svg.Options{Inside: key})
	if err != nil {
		return nil, err
	}
	out.SVG = string(data)
	return out, nil
}

// compose draws walls onto a page as large as they are.
func (d *Drawer) compose(parts []part, scale int64, low, high L, key, title string) (*scene.Page, *Drawing) {
	k := d.set.Look
	if key == "ribbon" {
		k.Wide, k.Outline, k.Seam, k.Thin, k.Dimension = k.Outline, k.Seam, k.Dimension, k.Dimension, k.Extension
	}
	set := *d.set
	set.Look = k
	if key == "ribbon" && set.Paper.Wood.Grain { // at its scale grain is a grey that hides the seams
		plain := *set.Paper
		plain.Wood.Grain = false
		set.Paper = &plain
	}
	v := draft.View{Scale: scale}
	x := k.Of(edge)
	for i := range parts {
		x += parts[i].gap
		parts[i].x = x
		x += v.MM(parts[i].f.Right - parts[i].f.Left)
	}
	p := scene.NewPage("", title, x+k.Of(edge), k.Of(headHigh+footHigh)+v.MM(high-low))
	numbered := math.Inf(-1)
	out := &Drawing{Scale: scale, Ratio: draft.Ratio(scale, set.Metric()), Width: p.Width, Height: p.Height}
	for i := range parts {
		w := &parts[i]
		f := w.f
		e := &elevation.View{Board: &folio.Board{Set: &set, Page: p, Space: draft.NewSpace(scene.Box{})}, F: f, From: f.Left, To: f.Right, Of: 1, Detail: true, Small: key == "ribbon"}
		e.V = draft.View{Scale: scale}
		e.V.Origin = scene.Pt(w.x-v.MM(f.Left), k.Of(headHigh)+v.MM(high))
		out.Walls = append(out.Walls, Stand{f.Wall, e.V.Origin.X, e.V.Origin.Y, f.Left.MM(), f.Right.MM(), f.Low.MM(), f.High.MM()})
		d.wall(e, i, parts, key == "ribbon")
		numbered = d.numbers(e, numbered)
	}
	return p, out
}

// wall draws a wall, its folds and what is lettered on it.
func (d *Drawer) wall(e *elevation.View, i int, parts []part, small bool) {
	f, k := e.F, e.Look
	left, _, _ := f.Neighbour(false)
	right, _, _ := f.Neighbour(true)
	g := e.Page.Part(scene.Tag{Class: "wall", Title: f.W.Name, Data: []scene.Datum{folio.Datum("wall", fmt.Sprint(f.Wall))}})
	e.Plain(g, left == nil, right == nil)
	for _, end := range []struct {
		c  *layout.Corner
		x  L
		on bool
	}{{left, f.Left, i == 0 || left == nil || left.LeftWall != parts[i-1].f.Wall}, {right, f.Right, true}} {
		if end.c != nil && end.on {
			a, b := e.V.Pt(end.x, room.At(f.W.Ceiling, end.x)), e.V.Pt(end.x, room.At(f.W.Floor, end.x))
			g.Part(scene.Tag{Class: "fold", Title: "corner " + end.c.Name}).Line(a, b, scene.Pen(scene.Walls, k.Thin).As(scene.Dashed(k.Thin)))
		}
	}
	if !small {
		for i := range f.W.Boxes {
			e.Plate(g, &f.W.Boxes[i])
		}
		if z := d.set.Room.Space.LevelLine; z > f.Low && z < f.High {
			pen := scene.Pen(scene.Plumb, k.Dimension).As(scene.Chain(k.Dimension))
			in := g.Part(scene.Tag{Class: "level-line", Title: "level line"})
			for row := draft.Outside(e.V.Pt(f.Left, z), e.V.Pt(f.Right, z), holes(e)...); len(row) > 1; row = row[2:] {
				in.Line(row[0], row[1], pen)
			}
		}
	}
	d.names(e, g)
}

// holes are the openings on the drawing.
func holes(e *elevation.View) (list []scene.Box) {
	for i := range e.F.W.Openings {
		list = append(list, e.V.Box(e.F.Hole(&e.F.W.Openings[i])))
	}
	return list
}

// names letters the openings into them, and the wall under it.
func (d *Drawer) names(e *elevation.View, g *scene.Group) {
	k, f := e.Look, e.F
	for i := range f.W.Openings {
		o := &f.W.Openings[i]
		box := e.V.Box(f.Hole(o))
		t := scene.Text{At: box.Centre(), String: o.Name, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
		if t.Bounds().W() > box.W()-k.Of(1) {
			t.Angle = 90
		}
		if b := t.Bounds(); b.W() < box.W() && b.H() < box.H() {
			g.Part(scene.Tag{Class: "opening-name"}).Text(t)
		}
	}
	name := f.W.Name
	if mark := d.set.Marks[f.Wall]; mark != "" {
		name = mark + "  " + name
	}
	wide := e.V.MM(f.Right - f.Left)
	for _, text := range []string{name, d.set.Marks[f.Wall]} {
		t := scene.Text{At: scene.Pt(e.V.X(f.Left)+wide/2, e.Page.Height-k.Of(3.2)), String: text, Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes}
		if text != "" && t.Bounds().W() <= wide {
			g.Part(scene.Tag{Class: "wall-name"}).Text(t)
			return
		}
	}
}

// numbers letters the numbers of sheets over the wall, as many as have room beside each other and right of what is lettered already,
// and gives how far they go. Bands have theirs inside.
func (d *Drawer) numbers(e *elevation.View, right float64) float64 {
	k, f, g := e.Look, e.F, &e.Page.Group
	y := e.V.Y(d.set.Room.Space.LevelLine)
	taken := append(holes(e), scene.Box{X0: e.V.X(f.Left), Y0: y - k.Dimension, X1: e.V.X(f.Right), Y1: y + k.Dimension})
	for _, p := range f.Parts {
		for i, s := range p.Sheets {
			m := (p.From + p.To) / 2
			t := scene.Text{At: scene.Pt(e.V.X(m), e.V.Y(f.High)-k.Of(3.5)), String: elevation.NumberOf(s), Height: k.Small, Anchor: scene.Middle, Layer: scene.Numbers}
			if f.Run.Up || len(p.Sheets) > 1 && i < len(p.Sheets)-1 {
				a, z0, b, z1, ok := f.Extent(s)
				if !ok {
					continue
				}
				t.Seat, t.Field = scene.Centred, k.Of(0.4)
				if t, ok = within(t, e.V.Box(a, z0, b, z1), taken, k.Of(0.6)); !ok {
					continue
				}
			} else if t.Bounds().X0 < right+k.Of(0.8) {
				continue
			} else {
				right = t.Bounds().X1
			}
			g.Part(scene.Tag{Class: "sheet-number", Title: elevation.SheetWords(d.set, s)}).Text(t)
		}
	}
	return right
}

// within brings a text into a box, clear of what is open in it: to its middle, or as near to that as there is room.
func within(t scene.Text, box scene.Box, open []scene.Box, air float64) (scene.Text, bool) {
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		for _, across := range []float64{0.5, 0.3, 0.7} {
			t.At = scene.Pt(box.X0+box.W()*across, box.Y0+box.H()*share)
			b := t.Bounds().Inset(-air)
			if box.Contains(b) && !slices.ContainsFunc(open, b.Meets) {
				return t, true
			}
		}
	}
	return t, false
}
