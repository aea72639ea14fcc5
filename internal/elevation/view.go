package elevation

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// View is the view of one wall, or of one piece of a long one.
type View struct {
	*folio.Board
	F         *face.Face
	From, To  L // what of the wall is shown
	Piece, Of int
	V         draft.View
	Group     *scene.Group
	Detail    bool                           // an opening drawn large: its sides are broken off
	Holes     map[*room.Opening]*scene.Group // openings as drawn
	Middle    float64                        // x at which the middle of the wall should stand
	Line      float64                        // of the titles of the page; 0: of this one alone
	Lean      bool                           // without the heights of openings
	Shared    bool                           // other views stand on the page: they share a scale bar

	Above, Below, Left, Right draft.Stack
	GhostLeft, GhostRight     Ghost
}

// Ghost is the wall next door as far as the sheet that comes round the corner covers it.
type Ghost struct {
	Corner string
	Wall   int
	Width  L // to the seam
	Place  int
	Stub   bool // broken: there is no room to show it whole
}

func (h Ghost) Shown() bool { return h.Corner != "" }

// Pages are the pages with the views of all walls. Walls in a row that stand side by side on a page at the scale
// that each would have alone share it.
func Pages(s *folio.Set) []*folio.Leaf {
	var list []*folio.Leaf
	var row []WallView
	flush := func() {
		if len(row) > 0 {
			list = append(list, ViewPage(s, row))
		}
		row = nil
	}
	for _, f := range face.All(s.Plan) {
		pieces := CutWall(s, f)
		if len(pieces) > 1 {
			flush()
			for i, p := range pieces {
				list = append(list, ViewPage(s, []WallView{{F: f, Cut: p, Piece: i, Of: len(pieces)}}))
			}
			continue
		}
		v := WallView{F: f, Cut: pieces[0], Of: 1}
		v.Wide = ViewWide(s, v)
		sum := v.Wide
		for _, o := range row {
			sum += o.Wide
		}
		if len(row) > 0 && (row[0].Cut.Scale != v.Cut.Scale || sum > s.Paper.Field.W-s.Look.Of(6) || !StandTogether(s, append(slices.Clone(row), v))) {
			flush()
		}
		row = append(row, v)
	}
	flush()
	return list
}

// StandTogether reports whether the views of a row have room over the foot of a page with their floors in line.
func StandTogether(s *folio.Set, row []WallView) bool {
	var list []*View
	for _, v := range row {
		e := Trial(s, v)
		e.Shared = true
		list = append(list, e)
	}
	notes, floor := Notes(list[0].Board, PageNotes(list)), 0.0
	for _, e := range list {
		e.Compose(notes)
		floor = math.Max(floor, e.V.Origin.Y)
	}
	for _, e := range list {
		e.V.Origin.Y = floor
		if e.Spare(e.Around()) < 0 {
			return false
		}
	}
	return true
}

// Spare is what is left under a view, its dimensions and its title; negative where they have no room.
func (e *View) Spare(all scene.Box) float64 {
	k := e.Look
	return e.Field.Y1 - k.Of(1) - math.Max(all.Y1+e.TitleHigh(), e.Box().Y1+k.Of(41.5))
}

// WallView is one view of a page: a wall, or a piece of one.
type WallView struct {
	F         *face.Face
	Cut       Cut
	Piece, Of int
	Wide      float64 // that it takes with its dimensions and its title
}

// ViewWide is how wide a view comes out with all that belongs to it.
func ViewWide(s *folio.Set, v WallView) float64 {
	e := Trial(s, v)
	e.Compose(0)
	k := s.Look
	return math.Max(e.Around().W()+k.Of(8), e.Title().Wide(k)+k.Of(14))
}

// ViewPage is the page of some views.
func ViewPage(s *folio.Set, row []WallView) *folio.Leaf {
	first := row[0]
	l := &folio.Leaf{Scale: draft.Ratio(first.Cut.Scale, s.Metric()), Wall: first.F.Wall, About: folio.WallKey(first.F.Wall)}
	var names []string
	for _, v := range row {
		names = append(names, strings.ToUpper(v.F.W.Name))
		l.Abouts = append(l.Abouts, folio.WallKey(v.F.Wall))
		l.Walls = append(l.Walls, v.F.Wall)
	}
	l.Title = "ELEVATION: " + names[0]
	switch {
	case first.Of > 1:
		l.Title += fmt.Sprintf(", %d OF %d", first.Piece+1, first.Of)
	case len(row) > 1:
		l.Title = "ELEVATIONS: " + strings.Join(names, ", ")
		if len(l.Title) > 44 { // no title block has room for it
			var marks []string
			for _, v := range row {
				marks = append(marks, s.Marks[v.F.Wall])
			}
			l.Title = "ELEVATIONS " + strings.Join(marks, ", ")
		}
	}
	l.Draw = func(b *folio.Board) { Views(b, row) }
	return l
}

// Views draws the views of a page side by side, their floors in line.
func Views(b *folio.Board, row []WallView) {
	sum := 0.0
	for _, v := range row {
		sum += v.Wide
	}
	var list []*View
	x := b.Field.X0
	for _, v := range row {
		at := *b
		if len(row) > 1 {
			w := v.Wide + (b.Field.W()-sum)/float64(len(row))
			at.Field.X0, at.Field.X1 = x, x+w
			x += w
		}
		e := &View{Board: &at, F: v.F, From: v.Cut.From, To: v.Cut.To, Piece: v.Piece, Of: v.Of, Middle: at.Field.Centre().X, Shared: len(row) > 1}
		if len(row) == 1 {
			e.Middle = b.Paper.Elevation.Middle
		}
		e.V.Scale, e.Lean = v.Cut.Scale, v.Cut.Lean
		list = append(list, e)
	}
	notes := Notes(b, PageNotes(list))
	floor := 0.0
	for _, e := range list {
		e.Compose(notes)
		floor = math.Max(floor, e.V.Origin.Y)
	}
	line := 0.0
	for _, e := range list {
		e.V.Origin.Y = floor
		e.Around()
		line = math.Max(line, e.TitleY())
	}
	for _, e := range list {
		e.Line = line
		e.Draw()
	}
	if len(list) > 1 {
		list[0].SharedBar()
	}
	for _, e := range list {
		e.Labels()
	}
}

// SharedBar draws one scale bar for all views of the page, which are at one scale: at the right under the titles, or
// where else there is room for it.
func (e *View) SharedBar() {
	k := e.Look
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	field := folio.BoxOf(e.Paper.Field)
	for _, most := range []float64{104, 84, 64, 52, 40, 30, 20} {
		w := bar.Wide(k, k.Of(most))
		for _, y := range []float64{e.TitleY() + k.Of(1.5), e.TitleY() + k.Of(16), field.Y1 - k.Of(3), e.TitleY() + k.Of(8)} {
			for x := field.X1 - k.Of(8) - w; x > field.X0+k.Of(8); x -= k.Of(3) {
				box := scene.Box{X0: x - k.Of(5), Y0: y - k.Of(3.4) - k.Small, X1: x + w + k.Of(7), Y1: y + k.Of(0.6)}
				if y < field.Y1-k.Of(2) && e.Space.Free(box, k.Of(1.5)) {
					e.Space.Take(bar.Draw(&e.Page.Group, k, scene.Pt(x, y), k.Of(most)))
					return
				}
			}
		}
	}
}

// Draw draws the view: the wall, dimensions on its four sides, corners, title, bar, table. Labels come last, when all
// views of the page stand.
func (e *View) Draw() {
	k := e.Look
	title := strings.ToUpper(e.F.W.Name)
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: title, Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = e.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", e.F.W.Name), folio.Datum("unit", e.Room.Project.Units.String()))
	e.Body()
	for _, stack := range []*draft.Stack{&e.Above, &e.Below, &e.Left, &e.Right} {
		stack.Draw(e.Group, k, e.Space)
	}
	e.CornerMarks()
	e.Foot()
}

// Box is where the piece of the wall stands on the page.
func (e *View) Box() scene.Box { return e.V.Box(e.From, e.F.Low, e.To, e.F.High) }

// First reports whether the piece holds the wall's left end, last whether its right end.
func (e *View) First() bool { return e.From == e.F.Left }

func (e *View) Last() bool { return e.To == e.F.Right }

// Ghosts finds what is seen of the walls next door.
func (e *View) Ghosts() {
	most := e.Look.Of(28)
	for _, right := range []bool{false, true} {
		if right && !e.Last() || !right && !e.First() {
			continue
		}
		c, width, place := e.F.Neighbour(right)
		if c == nil {
			continue
		}
		h := Ghost{Corner: c.Name, Wall: c.LeftWall, Width: width, Place: place}
		if right {
			h.Wall = c.RightWall
		}
		h.Stub = e.V.MM(width) > most
		if right {
			e.GhostRight = h
		} else {
			e.GhostLeft = h
		}
	}
}

// Wide is how far a ghost reaches from the corner on paper.
func (e *View) Wide(h Ghost) float64 {
	switch {
	case !h.Shown():
		return 0
	case h.Stub:
		return e.Look.Of(8)
	}
	return e.V.MM(h.Width)
}

// Compose finds the origin of the view: its middle where the template has it, its top no higher than allowed and clear
// of what stands over it. Where the sides do not fit, ghosts become stubs, and the view moves.
//
// Shape: false where the page is too small for the view at this scale.
func (e *View) Compose(notes float64) bool {
	k, t := e.Look, e.Paper.Elevation
	air := k.Of(3)
	w, h := e.V.MM(e.To-e.From), e.V.MM(e.F.High-e.F.Low)
	e.V.Origin = scene.Pt(e.Middle-w/2-e.V.MM(e.From), t.Top+h+e.V.MM(e.F.Low))
	e.Ghosts()
	all := e.Around()
	if all.W() > e.Field.W()-2*air {
		e.GhostLeft.Stub, e.GhostRight.Stub = true, true
		all = e.Around()
	}
	fits := all.W() <= e.Field.W()-2*air
	switch {
	case all.X0 < e.Field.X0+air:
		e.V.Origin.X += e.Field.X0 + air - all.X0
	case all.X1 > e.Field.X1-air:
		e.V.Origin.X -= all.X1 - e.Field.X1 + air
	}
	if over := notes + k.Of(2) - all.Y0; over > 0 {
		e.V.Origin.Y += over
	}
	all = e.Around()
	spare := e.Spare(all)
	if e.TableHigh() > spare-k.Of(6) || e.TableHigh() == 0 {
		e.V.Origin.Y += math.Max(0, math.Min(spare/3, k.Of(40)))
	}
	e.Around()
	return fits && spare >= 0
}

// Around lays the dimensions anew for the origin as it stands, and gives the box of the wall with all of them.
func (e *View) Around() scene.Box {
	e.Stacks()
	box := e.Box()
	box.X0 -= e.Wide(e.GhostLeft)
	box.X1 += e.Wide(e.GhostRight)
	for _, stack := range []*draft.Stack{&e.Above, &e.Below, &e.Left, &e.Right} {
		box = box.Union(stack.Box(e.Look))
	}
	box.Y1 += e.Look.Of(8.7) // corner marks
	if e.Apart() > 0 {
		box.Y1 += e.Look.Of(2)
	}
	return box
}
