package elevation

import (
	"fmt"
	"math"
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
	Inside    bool                           // of such a view: its numbers stand in the field, for over it is no room
	Small     bool                           // a small picture of a wall: without the lines of casings, which its names have no room beside
	holes     map[*room.Opening]*scene.Group // openings as drawn
	middle    float64                        // x at which the middle of the wall should stand
	line      float64                        // of the titles of the page; 0: of this one alone
	lean      bool                           // without the heights of openings
	low       bool                           // without a row of numbers under the wall
	unnoted   bool                           // without notes at the head of the page
	shared    bool                           // other views stand on the page: they share a scale bar

	above, below, left, right draft.Stack
	ghostLeft, ghostRight     ghost
	over, under               balloonRow
	leaders                   [][2]scene.Point // of numbers and marks, none of which crosses another
	strict                    bool             // no circle stands on the neighbour of its sheet
	crowded                   bool             // the list of the page has no room beside the views: it takes nothing that chains have too
	before                    int              // things in the list of other views of the page before those of this one
	listed                    []said           // what stands in the list at the head of the page
	more                      string           // what the page of the list is looked up by, "" where it stands here
	dropped                   []said           // what found no place on the drawing
}

// ghost is the wall next door as far as the sheet that comes round the corner covers it.
type ghost struct {
	corner string
	wall   int
	width  L // to the seam
	place  int
	stub   bool // broken: there is no room to show it whole
}

func (h ghost) shown() bool { return h.corner != "" }

// sharedBars are the lengths of a scale bar shared by the views of a page, in mm on the office page: as long as a bar
// ever is, then shorter and shorter.
var sharedBars = []float64{104, 84, 64, 52, 40, 30, 20}

// sharedBarStep is how far the bar is moved to the left from one place to the next.
const sharedBarStep = 3

// sharedBar draws one scale bar for all views of the page, which are at one scale, in the first place that is free:
//
//  1. the longest bar, on which most can be measured;
//  2. for each length on the line of the titles, well under them, at the foot of the field, close under them;
//  3. on each line from the right end to the left, away from the titles, which begin at the left.
func (e *View) sharedBar() {
	k := e.Look
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	field := folio.BoxOf(e.Paper.Field)
	for _, most := range sharedBars {
		w := bar.Wide(k, k.Of(most))
		for _, y := range []float64{e.titleY() + k.Of(1.5), e.titleY() + k.Of(16), field.Y1 - k.Of(3), e.titleY() + k.Of(8)} {
			for x := field.X1 - k.Of(8) - w; x > field.X0+k.Of(8); x -= k.Of(sharedBarStep) {
				box := scene.Box{X0: x - k.Of(5), Y0: y - k.Of(3.4) - k.Small, X1: x + w + k.Of(7), Y1: y + k.Of(0.6)}
				if y < field.Y1-k.Of(2) && e.Space.Free(box, k.Of(1.5)) {
					e.Space.Take(bar.Draw(&e.Page.Group, k, scene.Pt(x, y), k.Of(most)))
					return
				}
			}
		}
	}
}

// draw draws the view: the wall, dimensions on its four sides, corners, title, bar, table. Labels come last, when all
// views of the page stand.
func (e *View) draw() {
	k := e.Look
	title := strings.ToUpper(e.F.W.Name)
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: title, Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = e.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", e.F.W.Name), folio.Datum("unit", e.Room.Project.Units.String()),
		folio.Datum("from", folio.Mm(e.From)), folio.Datum("to", folio.Mm(e.To)))
	e.Body()
	e.DrawBalloons()
	for _, stack := range []*draft.Stack{&e.above, &e.below, &e.left, &e.right} {
		stack.Draw(e.Group, k, e.Space)
	}
	e.cornerMarks()
	e.foot()
}

// Box is where the piece of the wall stands on the page.
func (e *View) Box() scene.Box { return e.V.Box(e.From, e.F.Low, e.To, e.F.High) }

// First reports whether the piece holds the wall's left end, last whether its right end.
func (e *View) First() bool { return e.From == e.F.Left }

// Last reports whether the view goes to the wall's right end.
func (e *View) Last() bool { return e.To == e.F.Right }

// ghosts finds what is seen of the walls next door.
func (e *View) ghosts() {
	most := e.Look.Of(28)
	for _, right := range []bool{false, true} {
		if right && !e.Last() || !right && !e.First() {
			continue
		}
		c, width, place := e.F.Neighbour(right)
		if c == nil {
			continue
		}
		h := ghost{corner: c.Name, wall: c.LeftWall, width: width, place: place}
		if right {
			h.wall = c.RightWall
		}
		h.stub = e.V.MM(width) > most
		if right {
			e.ghostRight = h
		} else {
			e.ghostLeft = h
		}
	}
}

// wide is how far a ghost reaches from the corner on paper.
func (e *View) wide(h ghost) float64 {
	switch {
	case !h.shown():
		return 0
	case h.stub:
		return e.Look.Of(8)
	}
	return e.V.MM(h.width)
}

// compose finds the origin of the view: its middle where the template has it, its top no higher than allowed and clear
// of what stands over it. Where the sides do not fit, ghosts become stubs, and the view moves.
//
// Shape: false where the page is too small for the view at this scale.
func (e *View) compose(notes float64) bool {
	k, t := e.Look, e.Paper.Elevation
	air := k.Of(3)
	w, h := e.V.MM(e.To-e.From), e.V.MM(e.F.High-e.F.Low)
	e.V.Origin = scene.Pt(e.middle-w/2-e.V.MM(e.From), t.Top+h+e.V.MM(e.F.Low))
	e.ghosts()
	all := e.around()
	if all.W() > e.Field.W()-2*air {
		e.ghostLeft.stub, e.ghostRight.stub = true, true
		all = e.around()
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
	all = e.around()
	spare := e.spare(all)
	if e.tableHigh() > spare-k.Of(6) || e.tableHigh() == 0 {
		e.V.Origin.Y += math.Max(0, math.Min(spare/3, k.Of(40)))
	}
	e.around()
	return fits && spare >= 0
}

// around lays the dimensions anew for the origin as it stands, and gives the box of the wall with all of them.
func (e *View) around() scene.Box {
	e.stacks()
	box := e.Box()
	box.X0 -= e.wide(e.ghostLeft)
	box.X1 += e.wide(e.ghostRight)
	for _, stack := range []*draft.Stack{&e.above, &e.below, &e.left, &e.right} {
		box = box.Union(stack.Box(e.Look))
	}
	for _, r := range []*balloonRow{&e.over, &e.under} {
		if len(r.list) > 0 {
			box = box.Union(r.box())
		}
	}
	box.Y1 += e.Look.Of(8.7) // corner marks
	if e.apart() > 0 {
		box.Y1 += e.Look.Of(2)
	}
	return box
}
