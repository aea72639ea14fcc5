package scene

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// note returns a line of text 2.5 high with its start at x, y.
func note(x, y float64, s string) Text {
	return Text{At: Pt(x, y), String: s, Height: 2.5, Layer: Notes}
}

func with(t Text, change func(*Text)) Text {
	change(&t)
	return t
}

func TestOverlapsFindsEveryPlantedCollision(t *testing.T) {
	fielded := func(x, y float64, s string) Text { return with(note(x, y, s), func(t *Text) { t.Field = 0.5 }) }
	box := func(x, y, w, h float64) Box { return BoxAt(x, y, w, h) }
	cases := []struct {
		why  string
		draw func(p *Page)
		want []OverlapKind
	}{
		{"two texts apart", func(p *Page) { p.Text(note(50, 50, "WALL")); p.Text(note(50, 54, "SEAMS")) }, nil},
		{"two texts on one another", func(p *Page) { p.Text(note(50, 50, "WALL")); p.Text(note(52, 51, "SEAMS")) }, []OverlapKind{TextOverText}},
		{"one text's white field over another text", func(p *Page) { p.Text(note(50, 50, "WALL")); p.Text(fielded(50, 52.7, "SEAMS")) }, []OverlapKind{TextOverText}},
		{"an upright text across a level one", func(p *Page) {
			p.Text(note(50, 50, "WALL"))
			p.Text(with(note(54, 55, "SEAMS"), func(t *Text) { t.Angle = 90 }))
		}, []OverlapKind{TextOverText}},
		{"a slanted text whose upright box overlaps but whose ink does not", func(p *Page) {
			p.Text(with(note(50, 70, "SLANTED TEXT"), func(t *Text) { t.Angle = 45 }))
			p.Text(note(60, 70, "BELOW"))
		}, nil},
		{"a dimension line under text", func(p *Page) {
			p.HLine(40, 80, 49, Pen(Dimensions, 0.18))
			p.Text(note(50, 50, "WALL"))
		}, []OverlapKind{TextOverLine}},
		{"a dimension line under text with a white field", func(p *Page) {
			p.HLine(40, 80, 49, Pen(Dimensions, 0.18))
			p.Text(fielded(50, 50, "WALL"))
		}, []OverlapKind{TextOverLine}},
		{"text a millimetre above its dimension line", func(p *Page) {
			p.HLine(40, 80, 51, Pen(Dimensions, 0.18))
			p.Text(note(50, 50, `12'-6 3/8"`))
		}, nil},
		{"a white field that bites into a seam beside the text", func(p *Page) {
			p.VLine(49.8, 40, 60, Pen(Seams, 0.35))
			p.Text(fielded(50, 50, "WALL"))
		}, []OverlapKind{TextOverLine}},
		{"a heavy outline under a white field", func(p *Page) {
			p.VLine(52, 40, 60, Pen(Walls, 0.5))
			p.Text(fielded(50, 50, "WALL"))
		}, []OverlapKind{TextOverLine}},
		{"a thin line under a white field is cleared", func(p *Page) {
			p.Line(Pt(40, 40), Pt(60, 60), Pen(Openings, 0.18))
			p.Text(fielded(50, 50, "W1"))
		}, nil},
		{"a thin line under bare text is not", func(p *Page) {
			p.Line(Pt(40, 40), Pt(60, 57), Pen(Openings, 0.18))
			p.Text(note(50, 50, "W1"))
		}, []OverlapKind{TextOverLine}},
		{"grain under a white field is cleared", func(p *Page) {
			p.Path(Pen(Grain, 0.1).In(Grey(0.8)), Strokes(Pt(51, 40), Pt(51, 60), Pt(53, 40), Pt(53, 60))...)
			p.Text(fielded(50, 50, "NARROW"))
		}, nil},
		{"grain under bare text is not", func(p *Page) {
			p.Path(Pen(Grain, 0.1).In(Grey(0.8)), Strokes(Pt(51, 40), Pt(51, 60))...)
			p.Text(note(50, 50, "NARROW"))
		}, []OverlapKind{TextOverLine}},
		{"a faint line drawn after its text is over it, field or not", func(p *Page) {
			p.Text(fielded(50, 50, "NARROW"))
			p.VLine(53, 40, 60, Pen(Grain, 0.1))
		}, []OverlapKind{TextUnderLine}},
		{"a curve through text", func(p *Page) {
			p.Arc(Pt(50, 60), 11, 45, 135, Pen(Dimensions, 0.18))
			p.Text(note(49, 50, "R"))
		}, []OverlapKind{TextOverLine}},
		{"text over the frame", func(p *Page) {
			p.Rect(p.Frame, Pen(Frame, 0.7))
			p.Text(note(183, 50, "WALL"))
		}, []OverlapKind{TextOffFrame, TextOverLine}},
		{"text outside the frame", func(p *Page) { p.Text(note(2, 50, "A")) }, []OverlapKind{TextOffFrame}},
		{"text outside the frame, where it belongs", func(p *Page) {
			p.Text(with(note(2, 50, "A"), func(t *Text) { t.Layer = Margin }))
		}, nil},
		{"text off the paper", func(p *Page) {
			p.Text(with(note(198, 50, "A3 SIZE"), func(t *Text) { t.Layer = Margin }))
		}, []OverlapKind{OffPaper}},
		{"a line off the paper", func(p *Page) { p.HLine(100, 250, 50, Pen(Walls, 0.5)) }, []OverlapKind{OffPaper}},
		{"a line kept on the paper by its clip", func(p *Page) {
			p.Clipped(box(10, 10, 100, 100).Corners()...).HLine(100, 250, 50, Pen(Walls, 0.5))
		}, nil},
		{"text in a reserved area", func(p *Page) { p.Reserve("stamp", box(100, 100, 70, 30)); p.Text(note(98, 110, "WALL")) }, []OverlapKind{InReservedArea}},
		{"a line in a reserved area", func(p *Page) {
			p.Reserve("stamp", box(100, 100, 70, 30))
			p.HLine(90, 110, 105, Pen(Frame, 0.5))
		}, []OverlapKind{InReservedArea}},
		{"a shape around a reserved area's corner", func(p *Page) {
			p.Reserve("stamp", box(100, 100, 70, 30))
			p.Circle(Pt(100, 100), 2, Style{Layer: Marks, Fill: Solid(Black)})
		}, []OverlapKind{InReservedArea}},
		{"a picture in a reserved area", func(p *Page) {
			p.Reserve("stamp", box(100, 100, 70, 30))
			p.Image(Image{Box: box(160, 120, 20, 20), Kind: "png", Alt: "mark"})
		}, []OverlapKind{InReservedArea}},
		{"the rule around a reserved area", func(p *Page) {
			p.Reserve("stamp", box(100, 100, 70, 30))
			p.Rect(box(100, 100, 70, 30).Inset(-0.25), Pen(Frame, 0.5))
		}, nil},
		{"text on a picture", func(p *Page) {
			p.Image(Image{Box: box(50, 45, 20, 20), Kind: "png", Alt: "mark"})
			p.Text(note(48, 50, "WALL"))
		}, []OverlapKind{TextOnPicture}},
		{"a number in its white circle over grain and a seam", func(p *Page) {
			p.VLine(50, 40, 60, Pen(Seams, 0.35))
			p.Circle(Pt(50, 50), 4.5, Pen(Numbers, 0.35).Filled(White))
			p.Text(Text{At: Pt(50, 50), String: "12", Height: 3.5, Bold: true, Anchor: Middle, Seat: Centred, Layer: Numbers})
		}, nil},
		{"a number too wide for its circle", func(p *Page) {
			p.Circle(Pt(50, 50), 3, Pen(Numbers, 0.35).Filled(White))
			p.Text(Text{At: Pt(50, 50), String: "124", Height: 3.5, Bold: true, Anchor: Middle, Seat: Centred, Layer: Numbers})
		}, []OverlapKind{TextOverLine}},
		{"text under a panel", func(p *Page) {
			p.Text(note(50, 50, "WALL"))
			p.Rect(box(52, 40, 20, 20), Style{Layer: Frame, Fill: Solid(White)})
		}, []OverlapKind{TextHidden}},
		{"black text on a black arrow", func(p *Page) {
			p.Polygon(Style{Layer: Marks, Fill: Solid(Black)}, Pt(50, 45), Pt(55, 50), Pt(50, 52))
			p.Text(note(50, 50, "WALL"))
		}, []OverlapKind{TextFaint}},
		{"white text on a black bar", func(p *Page) {
			p.Rect(box(45, 45, 40, 8), Style{Layer: Marks, Fill: Solid(Black)})
			p.Text(with(note(50, 50, "WALL"), func(t *Text) { t.Colour = White }))
		}, nil},
		{"white text that sticks out of its bar", func(p *Page) {
			p.Rect(box(45, 45, 8, 8), Style{Layer: Marks, Fill: Solid(Black)})
			p.Text(with(note(50, 50, "WALL"), func(t *Text) { t.Colour = White }))
		}, []OverlapKind{TextFaint}},
		{"text cut by a clip", func(p *Page) {
			p.Clipped(box(50, 40, 5, 20).Corners()...).Text(note(50, 50, "NORTH WALL"))
		}, []OverlapKind{TextCut}},
		{"text beside the inward corner of a filled shape", func(p *Page) {
			p.Polygon(Style{Layer: Hatch, Fill: Solid(Black)}, Pt(40, 40), Pt(80, 40), Pt(80, 46), Pt(46, 46), Pt(46, 80), Pt(40, 80))
			p.Text(note(50, 55, "WALL"))
		}, nil},
		{"text in the arm of such a shape", func(p *Page) {
			p.Polygon(Style{Layer: Hatch, Fill: Solid(Black)}, Pt(40, 40), Pt(80, 40), Pt(80, 46), Pt(46, 46), Pt(46, 80), Pt(40, 80))
			p.Text(note(44, 55, "WALL"))
		}, []OverlapKind{TextFaint}},
	}
	for _, c := range cases {
		t.Run(c.why, func(t *testing.T) {
			p := NewPage("1", "", 200, 150)
			p.Frame = Box{10, 10, 190, 140}
			c.draw(p)
			require.NoError(t, p.Validate())
			var got []OverlapKind
			for _, o := range Overlaps(p, 0) {
				got = append(got, o.Kind)
			}
			assert.ElementsMatch(t, c.want, got, "%v", Overlaps(p, 0))
		})
	}
}

func TestOverlapsKeepsTheGapAskedFor(t *testing.T) {
	p := NewPage("1", "", 200, 150)
	p.VLine(49.5, 40, 60, Pen(Seams, 0.35))
	p.Text(note(50, 50, `8'-7 1/2"`))
	clear := p.Items[1].Bounds().X0 - 49.5 - 0.35/2
	assert.Empty(t, Overlaps(p, 0))
	assert.Empty(t, Overlaps(p, clear-0.01))
	require.Len(t, Overlaps(p, 1), 1)
	assert.Equal(t, `text over line: "8'-7 1/2\"" / line on seams at 50,50`, Overlaps(p, 1)[0].String())
}

// Two convex shapes overlap just where some point lies in both: tried on a fine grid.
func TestApartAgreesWithAGridOfPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		quad := func(name string) []Point {
			c := Pt(rapid.Float64Range(0, 10).Draw(t, name+" x"), rapid.Float64Range(0, 10).Draw(t, name+" y"))
			b := BoxAt(c.X, c.Y, rapid.Float64Range(1, 8).Draw(t, name+" w"), rapid.Float64Range(1, 8).Draw(t, name+" h"))
			a := rapid.Float64Range(0, 360).Draw(t, name+" angle")
			k := b.Corners()
			for i := range k {
				k[i] = turn(k[i], c, a)
			}
			return k
		}
		a, b := quad("a"), quad("b")
		d := apart(a, b)
		shared := 0
		box := Around(a...)
		for x := box.X0; x <= box.X1; x += 0.1 {
			for y := box.Y0; y <= box.Y1; y += 0.1 {
				if within(Pt(x, y), a) && within(Pt(x, y), b) {
					shared++
				}
			}
		}
		if shared > 0 && d >= 0 {
			t.Fatalf("%d points in both, yet %g apart", shared, d)
		}
		// Sunk by d in every direction, they share at least a triangle that deep.
		if shared == 0 && d < -0.4 {
			t.Fatalf("no point in both, yet %g deep", -d)
		}
		if math.Abs(apart(b, a)-d) > 1e-9 {
			t.Fatalf("%g one way, %g the other", d, apart(b, a))
		}
	})
}

func TestInsideCutsALineAtAPolygon(t *testing.T) {
	l := []Point{{0, 0}, {10, 0}, {10, 2}, {2, 2}, {2, 10}, {0, 10}}
	cases := []struct {
		why  string
		a, b Point
		want [][2]Point
	}{
		{"through", Pt(-5, 1), Pt(15, 1), [][2]Point{{Pt(0, 1), Pt(10, 1)}}},
		{"inside", Pt(1, 1), Pt(9, 1), [][2]Point{{Pt(1, 1), Pt(9, 1)}}},
		{"outside", Pt(5, 5), Pt(9, 9), nil},
		{"in, out and in again", Pt(1, 5), Pt(5, 1), [][2]Point{{Pt(1, 5), Pt(2, 4)}, {Pt(4, 2), Pt(5, 1)}}},
	}
	for _, c := range cases {
		t.Run(c.why, func(t *testing.T) {
			got := inside(c.a, c.b, l)
			require.Len(t, got, len(c.want))
			for i := range got {
				for k := range 2 {
					assert.InDelta(t, c.want[i][k].X, got[i][k].X, 1e-9)
					assert.InDelta(t, c.want[i][k].Y, got[i][k].Y, 1e-9)
				}
			}
		})
	}
}
