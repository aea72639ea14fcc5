package pages

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// SheetName is what a sheet is called: its number in its flitch.
type SheetName struct {
	Flitch string
	Number int
}

// Photographs are the photographs of sheets, each of a whole sheet as it is delivered, upright, its head up. A sheet
// that has none is left as a plain field.
type Photographs map[SheetName]scene.Picture

// photographed is the layer of photographs, so that a reader can switch them off.
const photographed scene.Layer = "photographs"

// unphotographed is the ground of a sheet without a photograph.
var unphotographed = scene.Grey(0.93)

// Photographed draws the set for the architect with the photographs of the sheets laid in place, a page for each wall
// behind the elevations. With nil photographs it is the set without them. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Photographed(p *layout.Plan, t *paper.Template, logo *scene.Picture, photos Photographs) (*scene.Document, error) {
	s := newSet(p, t, logo, "Submittal")
	s.photos = photos
	return s.document(submittal)
}

// wallPages are the elevations, then the photographs.
func wallPages(s *set) []*leaf { return append(elevationPages(s), photographPages(s)...) }

// photographPages are the pages with the photographs of all walls, none where none are asked for: each wall at the scale
// and in the pieces of its elevation.
func photographPages(s *set) []*leaf {
	if s.photos == nil {
		return nil
	}
	var list []*leaf
	for _, f := range facesOf(s.plan) {
		pieces := s.cutWall(f)
		for i, p := range pieces {
			title := "PHOTOGRAPHS: " + strings.ToUpper(f.w.Name)
			if len(pieces) > 1 {
				title += fmt.Sprintf(", %d OF %d", i+1, len(pieces))
			}
			l := &leaf{title: title, scale: draft.Ratio(p.scale, s.metric()), wall: f.wall, about: "photographs of " + wallKey(f.wall)}
			l.draw = func(b *board) {
				e := &photoElevation{elevation: elevation{board: b, f: f, from: p.from, to: p.to, piece: i, of: len(pieces)}}
				e.v.Scale = p.scale
				e.draw()
			}
			list = append(list, l)
		}
	}
	return list
}

// photoElevation is the view of a wall, or of a piece of it, with photographs.
type photoElevation struct {
	elevation
	without, stretched []*layout.Sheet
}

func (e *photoElevation) draw() {
	k, t := e.look, e.paper.Elevation
	e.sort()
	notes := e.notes(e.noteLines())
	w, h := e.v.MM(e.to-e.from), e.v.MM(e.f.high-e.f.low)
	top := math.Max(t.Top, notes+k.Of(8))
	e.v.Origin = scene.Pt(t.Middle-w/2-e.v.MM(e.from), top+h+e.v.MM(e.f.low))
	if over := e.box().X1 - (e.field.X1 - k.Of(10)); over > 0 {
		e.v.Origin.X -= over
	}
	if under := e.box().Y1 + k.Of(33) - e.field.Y1; under > 0 { // numbers and title stand under the floor
		e.v.Origin.Y -= math.Min(under, math.Max(0, top-notes-k.Of(8)))
	}
	view := scene.View{Box: e.box().Inset(-k.Of(1)), Scale: float64(e.v.Scale), Metric: e.metric(), Name: strings.ToUpper(e.f.w.Name), Ratio: draft.Ratio(e.v.Scale, e.metric())}
	e.group = e.page.Viewed(view, datum("scale", fmt.Sprint(e.v.Scale)), datum("wall", e.f.w.Name), datum("unit", e.room.Project.Units.String()), datum("photographs", "yes"))
	e.hatches(e.group)
	e.pictures()
	e.trim(e.group)
	e.seams(e.group)
	e.joints(e.group)
	e.rawEnds(e.group)
	e.level()
	for i := range e.f.w.Openings {
		e.opening(e.group, &e.f.w.Openings[i])
	}
	e.wallLines()
	e.matchLines(e.group)
	for i := range e.f.w.Boxes {
		e.plate(e.group, &e.f.w.Boxes[i])
	}
	e.title(e.numbers())
}

// sort parts the sheets of the view into those without a photograph and those whose photograph is stretched.
func (e *photoElevation) sort() {
	seen := map[*layout.Sheet]bool{}
	v := e.room.Veneer
	want := float64(v.Length) / float64(v.GrossWidth)
	for _, p := range e.f.parts {
		if p.to <= e.from || p.from >= e.to {
			continue
		}
		for _, s := range p.sheets {
			if seen[s] {
				continue
			}
			seen[s] = true
			photo, ok := e.photos[SheetName{Flitch: s.Flitch, Number: s.Number}]
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
	if e.f.run.Up {
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
			list = append(list, n.words+e.ranges(n.sheets)+".")
		}
	}
	return append(list, "Wood darkens and prints differ: judge the figure here, the colour on the sheets.")
}

// pictures lays each sheet's photograph, shown where its pieces are; a plain field where there is none.
func (e *photoElevation) pictures() {
	for _, p := range e.f.parts {
		if p.to <= e.from || p.from >= e.to {
			continue
		}
		for _, s := range p.sheets {
			photo, ok := e.photo(s)
			box := e.whole(p, s)
			for _, q := range s.Pieces {
				if q.Wall != e.f.wall || !onPart(q.Outline, p) {
					continue
				}
				var points []scene.Point
				for _, pt := range q.Outline {
					x := pt.X
					if !e.first() || !e.last() {
						x = min(max(x, e.from), e.to)
					}
					points = append(points, e.v.Pt(x, pt.Z))
				}
				tag := scene.Tag{Class: "sheet", Title: e.sheetWords(s), Data: []scene.Datum{datum("place", fmt.Sprint(s.Place)), datum("number", numberOf(s))}}
				in := e.group.Part(tag)
				if !ok {
					in.Polygon(scene.Style{Layer: scene.Covering, Fill: scene.Solid(unphotographed)}, points...)
					continue
				}
				in.Polygon(scene.Style{Layer: scene.Covering}, points...) // what a reader points at
				in.Clipped(points...).Image(photo.Image(box, "photograph of "+e.sheetWords(s), photographed))
			}
		}
	}
}

// onPart reports whether a piece belongs to a part: a sheet that goes all round a room comes to a wall twice.
func onPart(o []shapePoint, p part) bool {
	low, high := o[0].X, o[0].X
	for _, q := range o {
		low, high = min(low, q.X), max(high, q.X)
	}
	m := low + (high-low)/2
	return p.from <= m && m <= p.to
}

// photo is a sheet's photograph as the sheet hangs: upside down where it is turned, on its side where the grain is level.
func (e *photoElevation) photo(s *layout.Sheet) (scene.Picture, bool) {
	photo, ok := e.photos[SheetName{Flitch: s.Flitch, Number: s.Number}]
	if !ok {
		return photo, false
	}
	quarters := 0
	if s.Turned {
		quarters = 2
	}
	if e.f.run.Up { // its raw left edge lies at the foot
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
func (e *photoElevation) whole(p part, s *layout.Sheet) scene.Box {
	gross, length := e.room.Veneer.GrossWidth, e.room.Veneer.Length
	left := s.StartLine
	if s.Ripped == "left" {
		left = s.RightLine - gross
	}
	if e.f.run.Up {
		low := -s.Below - (length-s.CutLength)/2
		return e.v.Box(low, left, low+length, left+gross)
	}
	foot := e.room.Space.LevelLine - e.mark(s)
	x := e.onWall(p, s, left)
	return e.v.Box(x, foot, x+gross, foot+length)
}

// onWall brings a place of a sheet along the run to the wall that a part of the sheet is on.
func (e *photoElevation) onWall(p part, s *layout.Sheet, at L) L {
	shift := e.f.st.Shift
	if e.f.run.Closed {
		for turn := -e.f.run.Length; turn <= e.f.run.Length; turn += e.f.run.Length {
			if max(s.Left+turn-shift, e.f.left) == p.from && min(s.Right+turn-shift, e.f.right) == p.to {
				return at + turn - shift
			}
		}
	}
	return at - shift
}

// mark is how far the level mark stands from the end of a sheet that hangs lowest: as far as the longest of its run and
// course reaches down, so that it is the same on all; where a sheet then lacks length above, its figure steps.
func (e *photoElevation) mark(s *layout.Sheet) L {
	most := s.Below
	for i := range e.f.run.Sheets {
		if o := &e.f.run.Sheets[i]; o.Course == s.Course && !o.InGap && len(o.Pieces) > 0 {
			most = max(most, o.Below)
		}
	}
	return max(s.Below, min(most, e.room.Veneer.Length-s.Above))
}

// wallLines draw the wall's outline and its floor.
func (e *photoElevation) wallLines() {
	k, f := e.look, e.f
	e.outline(e.group, e.points(f.outline(f.w.Floor, f.w.Ceiling, e.from, e.to)))
	floor := e.points(profile(f.w.Floor, e.from, e.to))
	e.group.Polyline(scene.Pen(scene.Walls, k.Wide), floor...)
	for i := 0; i+1 < len(floor); i++ {
		e.space.Stroke(floor[i], floor[i+1])
	}
}

// level draws the level line, on which the marks hang.
func (e *photoElevation) level() {
	z := e.room.Space.LevelLine
	if e.f.run.Up || z <= e.f.low || z >= e.f.high {
		return
	}
	k, box := e.look, e.box()
	y := e.v.Y(z)
	in := e.group.Part(scene.Tag{Class: "level-line", Data: []scene.Datum{datum("z", mm(z))}})
	from := box.X0
	if e.first() {
		from -= k.Of(3)
	}
	in.HLine(from, box.X1, y, scene.Pen(scene.Plumb, k.Thin).As(scene.Chain(k.Thin)))
	if e.first() {
		t := scene.Text{At: scene.Pt(from-k.Of(1), y), String: e.style.Format(z), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		in.Text(t)
		e.space.Take(t.Bounds())
	}
}

// numbers letters the number of each sheet under the floor, in rows where sheets are slim; those without a photograph
// also in their field.
//
// Shape: the y under the lowest.
func (e *photoElevation) numbers() float64 {
	k := e.look
	y := e.box().Y1
	for _, p := range e.f.parts {
		from, to := max(p.from, e.from), min(p.to, e.to)
		if from >= to {
			continue
		}
		x := (e.v.X(from) + e.v.X(to)) / 2
		var names []string
		for _, s := range p.sheets {
			names = append(names, numberOf(s))
		}
		t := scene.Text{String: strings.Join(names, ", "), Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
		for row := range 5 {
			t.At = scene.Pt(x, e.box().Y1+k.Of(4.5+5*float64(row)))
			stem := scene.Pt(x, t.At.Y-t.Height/2-k.Of(0.8))
			if !e.space.Free(t.Bounds(), k.Of(0.6)) || row > 0 && !e.space.FreeLine(scene.Pt(x, e.box().Y1+k.Of(1)), stem, k.Of(0.5)) {
				continue
			}
			in := e.group.Part(scene.Tag{Class: "sheet-number", Data: []scene.Datum{datum("place", fmt.Sprint(p.place))}})
			in.Text(t)
			e.space.Take(t.Bounds())
			if row > 0 {
				in.Line(scene.Pt(x, e.box().Y1+k.Of(1)), stem, scene.Pen(scene.Marks, k.Dimension))
				e.space.Stroke(scene.Pt(x, e.box().Y1+k.Of(1)), stem)
			}
			y = math.Max(y, t.Bounds().Y1)
			break
		}
		for _, s := range p.sheets {
			if _, ok := e.photo(s); !ok {
				e.plain(s, x, numberOf(s))
			}
		}
	}
	return y
}

// plain letters the number of a sheet into its plain field, where it is free.
func (e *photoElevation) plain(s *layout.Sheet, x float64, number string) {
	low, high, any := L(0), L(0), false
	for _, q := range s.Pieces {
		if q.Wall != e.f.wall {
			continue
		}
		for _, p := range q.Outline {
			if !any {
				low, high, any = p.Z, p.Z, true
			}
			low, high = min(low, p.Z), max(high, p.Z)
		}
	}
	t := scene.Text{String: number, Height: e.look.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	for _, share := range []float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.88, 0.12} {
		t.At = scene.Pt(x, e.v.Y(low)+(e.v.Y(high)-e.v.Y(low))*share)
		if level := e.v.Y(e.room.Space.LevelLine); math.Abs(t.At.Y-level) < e.look.Of(4) {
			continue
		}
		if e.space.Free(t.Bounds(), e.look.Of(1)) {
			e.group.Part(scene.Tag{Class: "sheet-number"}).Text(t)
			e.space.Take(t.Bounds())
			return
		}
	}
}

// title draws the view's title and the scale bar at the foot of the field.
func (e *photoElevation) title(under float64) {
	k, box := e.look, e.box()
	y := math.Min(math.Max(box.Y1+k.Of(24), under+k.Of(10)), e.field.Y1-k.Of(8))
	mark, name := e.marks[e.f.wall], strings.ToUpper(e.f.w.Name)
	if e.of > 1 {
		mark += fmt.Sprint(e.piece + 1)
	}
	left, right := e.field.X0+k.Of(6), e.field.X1-k.Of(6)
	bar := draft.Bar{Scale: e.v.Scale, Metric: e.metric()}
	most := k.Of(60)
	wide := bar.Wide(k, most)
	t := draft.Title{Mark: mark, Page: e.leaf.number, Name: name, Under: []string{"SCALE " + draft.Ratio(e.v.Scale, e.metric())}, Width: k.Of(60), Most: right - left - wide - k.Of(12)}
	x := math.Min(math.Max(box.X0, left), math.Max(left, right-wide-k.Of(12)-t.Wide(k)))
	t.Draw(&e.page.Group, k, scene.Pt(x, y))
	bar.Draw(&e.page.Group, k, scene.Pt(right-wide, y+k.Of(1.5)), most)
}
