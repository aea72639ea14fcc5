package submittal

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// mark is how far the level mark stands from the end of a sheet that hangs lowest: as far as the longest of its run and
// course reaches down, so that it is the same on all; where a sheet then lacks length above, its figure steps.
func (e *photoElevation) mark(s *layout.Sheet) L {
	most := s.Below
	for i := range e.F.Run.Sheets {
		if o := &e.F.Run.Sheets[i]; o.Course == s.Course && !o.InGap && len(o.Pieces) > 0 {
			most = max(most, o.Below)
		}
	}
	return max(s.Below, min(most, e.Room.Veneer.Length-s.Above))
}

// level draws the level line, on which the marks hang.
func (e *photoElevation) level() {
	z := e.Room.Space.LevelLine
	if e.F.Run.Up || z <= e.F.Low || z >= e.F.High {
		return
	}
	k, box := e.Look, e.Box()
	y := e.V.Y(z)
	in := e.Group.Part(scene.Tag{Class: "level-line", Data: []scene.Datum{folio.Datum("z", folio.Mm(z))}})
	from := box.X0
	if e.First() {
		from -= k.Of(3)
	}
	in.HLine(from, box.X1, y, scene.Pen(scene.Plumb, k.Thin).As(scene.Chain(k.Thin)))
	if e.First() {
		t := scene.Text{At: scene.Pt(from-k.Of(1), y), String: e.Style.Format(z), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		in.Text(t)
		e.Space.Take(t.Bounds())
	}
}

// Rows of numbers under the floor, in mm on the office page.
const (
	footFirst = 4.5 // from the floor
	footStep  = 5.0 // from row to row
	footRows  = 5
)

// numbers letters the number of each sheet under the floor: in the first row, where sheets are slim in the next in which
// the number is free and a line leads to it; those without a photograph also in their field.
//
// Shape: the y under the lowest.
func (e *photoElevation) numbers() float64 {
	k := e.Look
	y := e.Box().Y1
	for _, p := range e.F.Parts {
		from, to := max(p.From, e.From), min(p.To, e.To)
		if from >= to {
			continue
		}
		x := (e.V.X(from) + e.V.X(to)) / 2
		var names []string
		for _, s := range p.Sheets {
			names = append(names, elevation.NumberOf(s))
		}
		t := scene.Text{String: strings.Join(names, ", "), Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
		for row := range footRows {
			t.At = scene.Pt(x, e.Box().Y1+k.Of(footFirst+footStep*float64(row)))
			stem := scene.Pt(x, t.At.Y-t.Height/2-k.Of(0.8))
			if !e.Space.Free(t.Bounds(), k.Of(0.6)) || row > 0 && !e.Space.FreeLine(scene.Pt(x, e.Box().Y1+k.Of(1)), stem, k.Of(0.5)) {
				continue
			}
			in := e.Group.Part(scene.Tag{Class: "sheet-number", Data: []scene.Datum{folio.Datum("place", fmt.Sprint(p.Place))}})
			in.Text(t)
			e.Space.Take(t.Bounds())
			if row > 0 {
				in.Line(scene.Pt(x, e.Box().Y1+k.Of(1)), stem, scene.Pen(scene.Marks, k.Dimension))
				e.Space.Stroke(scene.Pt(x, e.Box().Y1+k.Of(1)), stem)
			}
			y = math.Max(y, t.Bounds().Y1)
			break
		}
		for _, s := range p.Sheets {
			if _, ok := e.photo(s); !ok {
				e.plain(s, x, elevation.NumberOf(s))
			}
		}
	}
	return y
}

// plainShares are the heights of a number in a plain field, as shares of the field from its foot: in the middle, then by
// turns over and under it.
var plainShares = []float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.88, 0.12}

// plain letters the number of a sheet into its plain field, at the first height that is free and off the level line.
func (e *photoElevation) plain(s *layout.Sheet, x float64, number string) {
	_, low, _, high, _ := e.F.Extent(s)
	t := scene.Text{String: number, Height: e.Look.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	for _, share := range plainShares {
		t.At = scene.Pt(x, e.V.Y(low)+(e.V.Y(high)-e.V.Y(low))*share)
		if level := e.V.Y(e.Room.Space.LevelLine); math.Abs(t.At.Y-level) < e.Look.Of(4) {
			continue
		}
		if e.Space.Free(t.Bounds(), e.Look.Of(1)) {
			e.Group.Part(scene.Tag{Class: "sheet-number"}).Text(t)
			e.Space.Take(t.Bounds())
			return
		}
	}
}

// title draws the view's title and the scale bar at the foot of the field.
func (e *photoElevation) title(under float64) {
	k, box := e.Look, e.Box()
	y := math.Min(math.Max(box.Y1+k.Of(24), under+k.Of(10)), e.Field.Y1-k.Of(8))
	mark, name := e.Marks[e.F.Wall], strings.ToUpper(e.F.W.Name)
	if e.Of > 1 {
		mark = elevation.PieceMark(mark, e.Piece)
	}
	left, right := e.Field.X0+k.Of(6), e.Field.X1-k.Of(6)
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	most := k.Of(60)
	wide := bar.Wide(k, most)
	t := draft.Title{Mark: mark, Page: e.Leaf.Number, Name: name, Under: []string{"SCALE " + draft.Ratio(e.V.Scale, e.Metric())}, Width: k.Of(60), Most: right - left - wide - k.Of(12)}
	x := math.Min(math.Max(box.X0, left), math.Max(left, right-wide-k.Of(12)-t.Wide(k)))
	t.Draw(&e.Page.Group, k, scene.Pt(x, y))
	bar.Draw(&e.Page.Group, k, scene.Pt(right-wide, y+k.Of(1.5)), most)
}
