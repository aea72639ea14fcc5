package page

import (
	"fmt"
	"math"

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

// papers whose lines and letters the drawings have, by unit.
var papers = map[length.Unit]string{length.Inches: "ansi-b", length.Millimetres: "a3"}

// NewDrawer prepares the drawings of a plan, walls with their grain or, where they are only to be seen for a moment, without.
//
// Errors: a fault of the program: a page template of its own that cannot be read.
func NewDrawer(p *layout.Plan, grain bool) (*Drawer, error) {
	t, err := paper.Named(papers[p.Room.Project.Units])
	if err != nil {
		return nil, err
	}
	t.Wood.Grain = t.Wood.Grain && grain
	return &Drawer{folio.NewSet(p, t, nil, "")}, nil
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
	k := d.set.Look
	var parts []part
	long, high, gaps := L(0), L(1), 0.0
	var before *face.Face
	low := L(math.MaxInt64)
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
	scale := math.Ceil(long.MM() / max(wide-gaps-2*k.Of(edge), 1))
	scale = max(1, min(scale, math.Floor((high-low).MM()/k.Of(leastRow))), math.Ceil((high-low).MM()/k.Of(mostRow)))
	return d.draw(parts, int64(scale), low, high, "ribbon", "The room unrolled")
}

// Wall draws one covered wall as large as a width and a height hold it. Nil where the wall has no covering.
//
// Errors: as Ribbon.
func (d *Drawer) Wall(wall int, wide, high float64) (*Drawing, error) {
	k, f := d.set.Look, d.set.Face(wall)
	if f == nil {
		return nil, nil
	}
	scale := max(1, math.Ceil((f.Right-f.Left).MM()/max(wide-2*k.Of(edge), 1)), math.Ceil((f.High-f.Low).MM()/max(high-k.Of(headHigh+footHigh), 1)))
	return d.draw([]part{{f: f}}, int64(scale), f.Low, f.High, fmt.Sprintf("wall%d", wall), f.W.Name)
}

// draw draws walls side by side at a scale.
func (d *Drawer) draw(parts []part, scale int64, low, high L, key, title string) (*Drawing, error) {
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
	data, err := svg.Page(p, svg.Options{Inside: key})
	if err != nil {
		return nil, err
	}
	out.SVG = string(data)
	return out, nil
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
			g.Part(scene.Tag{Class: "level-line", Title: "level line"}).Line(e.V.Pt(f.Left, z), e.V.Pt(f.Right, z), pen)
		}
	}
	d.names(e, g)
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
	for _, p := range f.Parts {
		for i, s := range p.Sheets {
			m := (p.From + p.To) / 2
			t := scene.Text{At: scene.Pt(e.V.X(m), e.V.Y(f.High)-k.Of(3.5)), String: elevation.NumberOf(s), Height: k.Small, Anchor: scene.Middle, Layer: scene.Numbers}
			if f.Run.Up || len(p.Sheets) > 1 && i < len(p.Sheets)-1 {
				a, z0, b, z1, ok := f.Extent(s)
				if !ok {
					continue
				}
				t.At, t.Seat, t.Field = e.V.Pt((a+b)/2, (z0+z1)/2), scene.Centred, k.Of(0.4)
				if e.V.MM(z1-z0) < t.Height*1.5 || e.V.MM(b-a) < t.Bounds().W() {
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
