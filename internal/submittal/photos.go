package submittal

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// photographedLayer is the layer of photographs, so that a reader can switch them off.
const photographedLayer scene.Layer = "photographs"

// unphotographed is the ground of a sheet without a photograph.
var unphotographed = scene.Grey(0.93)

// Photographed draws the set for the architect with the photographs of the sheets laid in place, a page for each wall
// behind the elevations. With nil photographs it is the set without them. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Photographed(p *layout.Plan, t *paper.Template, logo *scene.Picture, photos folio.Photographs) (*scene.Document, error) {
	s := folio.NewSet(p, t, logo, "Submittal")
	s.Photos = photos
	return s.Document(Submittal)
}

// photographPages are the pages with the photographs of all walls, none where none are asked for: each wall at the scale
// and in the pieces of its elevation.
func photographPages(s *folio.Set) []*folio.Leaf {
	if s.Photos == nil {
		return nil
	}
	var list []*folio.Leaf
	cuts := elevation.CutWalls(s)
	for _, f := range s.Faces {
		pieces := cuts[f.Wall]
		for i, p := range pieces {
			title := "PHOTOGRAPHS: " + strings.ToUpper(f.W.Name)
			if len(pieces) > 1 {
				title += fmt.Sprintf(", %d OF %d", i+1, len(pieces))
			}
			l := &folio.Leaf{Title: title, Scale: draft.Ratio(p.Scale, s.Metric()), Wall: f.Wall, About: "photographs of " + folio.WallKey(f.Wall)}
			l.Draw = func(b *folio.Board) {
				e := &photoElevation{View: elevation.View{Board: b, F: f, From: p.From, To: p.To, Piece: i, Of: len(pieces)}}
				e.V.Scale = p.Scale
				e.draw()
			}
			list = append(list, l)
		}
	}
	return list
}

// photoElevation is the view of a wall, or of a piece of it, with photographs.
type photoElevation struct {
	elevation.View
	without, stretched []*layout.Sheet
}

func (e *photoElevation) draw() {
	k, t := e.Look, e.Paper.Elevation
	e.sort()
	notes := elevation.Notes(e.View.Board, e.noteLines())
	w, h := e.V.MM(e.To-e.From), e.V.MM(e.F.High-e.F.Low)
	top := math.Max(t.Top, notes+k.Of(8))
	e.V.Origin = scene.Pt(t.Middle-w/2-e.V.MM(e.From), top+h+e.V.MM(e.F.Low))
	if over := e.Box().X1 - (e.Field.X1 - k.Of(10)); over > 0 {
		e.V.Origin.X -= over
	}
	if under := e.Box().Y1 + k.Of(33) - e.Field.Y1; under > 0 { // numbers and title stand under the floor
		e.V.Origin.Y -= math.Min(under, math.Max(0, top-notes-k.Of(8)))
	}
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: strings.ToUpper(e.F.W.Name), Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = e.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", e.F.W.Name), folio.Datum("unit", e.Room.Project.Units.String()), folio.Datum("photographs", "yes"))
	e.Hatches(e.Group)
	e.pictures()
	e.Trim(e.Group)
	e.Seams(e.Group)
	e.Slivers(e.Group)
	e.Joints(e.Group)
	e.RawEnds(e.Group)
	e.level()
	for i := range e.F.W.Openings {
		e.Opening(e.Group, &e.F.W.Openings[i])
	}
	e.wallLines()
	e.MatchLines(e.Group)
	for i := range e.F.W.Boxes {
		e.Plate(e.Group, &e.F.W.Boxes[i])
	}
	e.title(e.numbers())
}

// sort parts the sheets of the view into those without a photograph and those whose photograph is stretched.
func (e *photoElevation) sort() {
	seen := map[*layout.Sheet]bool{}
	v := e.Room.Veneer
	want := float64(v.Length) / float64(v.GrossWidth)
	for _, p := range e.F.Parts {
		if p.To <= e.From || p.From >= e.To {
			continue
		}
		for _, s := range p.Sheets {
			if seen[s] {
				continue
			}
			seen[s] = true
			photo, ok := e.Photos[folio.SheetName{Flitch: s.Flitch, Number: s.Number}]
			switch {
			case !ok:
				e.without = append(e.without, s)
			case photo.Width > 0 && math.Abs(float64(photo.Height)/float64(photo.Width)/want-1) > 0.05:
				e.stretched = append(e.stretched, s)
			}
		}
	}
}

// noteLines say how the photographs are laid, and of which sheets there is none.
func (e *photoElevation) noteLines() []string {
	at := "its level mark on the level line"
	if e.F.Run.Up {
		at = "its head at the left, its length in the middle of its piece"
	}
	list := []string{"Each photograph covers its sheet from raw edge to raw edge and from end to end, " + at + "; what is cut away is not shown."}
	for _, n := range []struct {
		sheets []*layout.Sheet
		words  string
	}{
		{e.without, "No photograph, a plain field: "}, {e.stretched, "The photograph has not the proportion of a sheet and is stretched: "},
	} {
		if len(n.sheets) > 0 {
			list = append(list, n.words+elevation.Ranges(e.View.Board.Set, n.sheets)+".")
		}
	}
	return append(list, "Wood darkens and prints differ: judge the figure here, the colour on the sheets.")
}

// pictures lays each sheet's photograph, shown where its pieces are; a plain field where there is none.
func (e *photoElevation) pictures() {
	for _, p := range e.F.Parts {
		if p.To <= e.From || p.From >= e.To {
			continue
		}
		for _, s := range p.Sheets {
			photo, ok := e.photo(s)
			box := e.whole(p, s)
			for _, q := range s.Pieces {
				if q.Wall != e.F.Wall || !onPart(q.Outline, p) {
					continue
				}
				var points []scene.Point
				for _, pt := range q.Outline {
					x := pt.X
					if !e.First() || !e.Last() {
						x = min(max(x, e.From), e.To)
					}
					points = append(points, e.V.Pt(x, pt.Z))
				}
				tag := scene.Tag{Class: "sheet", Title: elevation.SheetWords(e.View.Board.Set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place)), folio.Datum("number", elevation.NumberOf(s))}}
				in := e.Group.Part(tag)
				if !ok {
					in.Polygon(scene.Style{Layer: scene.Covering, Fill: scene.Solid(unphotographed)}, points...)
					continue
				}
				in.Polygon(scene.Style{Layer: scene.Covering}, points...) // what a reader points at
				in.Clipped(points...).Image(photo.Image(box, "photograph of "+elevation.SheetWords(e.View.Board.Set, s), photographedLayer))
			}
		}
	}
}

// onPart reports whether a piece belongs to a part: a sheet that goes all round a room comes to a wall twice.
func onPart(o []elevation.ShapePoint, p face.Part) bool {
	low, high := o[0].X, o[0].X
	for _, q := range o {
		low, high = min(low, q.X), max(high, q.X)
	}
	m := low + (high-low)/2
	return p.From <= m && m <= p.To
}

// photo is a sheet's photograph as the sheet hangs: upside down where it is turned, on its side where the grain is level.
func (e *photoElevation) photo(s *layout.Sheet) (scene.Picture, bool) {
	photo, ok := e.Photos[folio.SheetName{Flitch: s.Flitch, Number: s.Number}]
	if !ok {
		return photo, false
	}
	quarters := 0
	if s.Turned {
		quarters = 2
	}
	if e.F.Run.Up { // its raw left edge lies at the foot
		quarters++
	}
	photo, err := photo.Turned(quarters)
	return photo, err == nil
}

// whole is where the whole sheet would lie on the page, before it is ripped and cut.
//
//	ripped at its right            ripped at its left
//	start line    right line       start line    right line
//	    |<- kept ->|- - - -|   |- - - -|<- kept ->|
//	    |<-- gross width ->|   |<-- gross width ->|
func (e *photoElevation) whole(p face.Part, s *layout.Sheet) scene.Box {
	gross, length := e.Room.Veneer.GrossWidth, e.Room.Veneer.Length
	left := s.StartLine
	if s.Ripped == "left" {
		left = s.RightLine - gross
	}
	if e.F.Run.Up {
		low := -s.Below - (length-s.CutLength)/2
		return e.V.Box(low, left, low+length, left+gross)
	}
	foot := e.Room.Space.LevelLine - e.mark(s)
	x := e.onWall(p, s, left)
	return e.V.Box(x, foot, x+gross, foot+length)
}

// onWall brings a place of a sheet along the run to the wall that a part of the sheet is on.
func (e *photoElevation) onWall(p face.Part, s *layout.Sheet, at L) L {
	shift := e.F.St.Shift
	if e.F.Run.Closed {
		for turn := -e.F.Run.Length; turn <= e.F.Run.Length; turn += e.F.Run.Length {
			if max(s.Left+turn-shift, e.F.Left) == p.From && min(s.Right+turn-shift, e.F.Right) == p.To {
				return at + turn - shift
			}
		}
	}
	return at - shift
}

// wallLines draw the wall's outline and its floor.
func (e *photoElevation) wallLines() {
	k, f := e.Look, e.F
	e.Outline(e.Group, e.Points(f.Outline(f.W.Floor, f.W.Ceiling, e.From, e.To)))
	floor := e.Points(face.Profile(f.W.Floor, e.From, e.To))
	e.Group.Polyline(scene.Pen(scene.Walls, k.Wide), floor...)
	for i := 0; i+1 < len(floor); i++ {
		e.Space.Stroke(floor[i], floor[i+1])
	}
}
