package draft

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

func TestViewTurnsWallSpaceIntoPaper(t *testing.T) {
	v := View{Origin: scene.Pt(100, 200), Scale: 24}
	assert.InDelta(t, 100+12*25.4/24, v.X(length.Foot), 1e-12)
	assert.InDelta(t, 200-12*25.4/24, v.Y(length.Foot), 1e-12)
	b := v.Box(0, 0, length.Foot, 2*length.Foot)
	assert.Equal(t, v.Pt(0, 2*length.Foot), scene.Pt(b.X0, b.Y0), "z goes up, y down")
}

// Source: architect's scales as US drafting texts list them; ISO 5455 writes the plain ratio.
func TestRatiosAreWrittenAsTheTradeDoes(t *testing.T) {
	for scale, want := range map[int64]string{16: `3/4" = 1'-0" (1:16)`, 24: `1/2" = 1'-0" (1:24)`, 32: `3/8" = 1'-0" (1:32)`, 48: `1/4" = 1'-0" (1:48)`, 96: `1/8" = 1'-0" (1:96)`} {
		assert.Equal(t, want, Ratio(scale, false))
		// the two halves say the same: inches on paper to a foot
		frac := strings.SplitN(want, `"`, 2)[0]
		l, err := length.Parse(frac, length.Inches)
		require.NoError(t, err)
		assert.Equal(t, length.Foot, l*length.Length(scale))
	}
	assert.Equal(t, "1:20", Ratio(20, true))
	assert.Equal(t, "1:1", Ratio(1, false))
}

func TestOutsideLeavesWhatNoBoxHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// hundredths of a millimetre, and boxes half a hundredth off: no line runs along a side, where it may be in or out
		hundredths := func(name string, least, most int) float64 {
			return float64(rapid.IntRange(least, most).Draw(t, name)) / 100
		}
		pt := func(name string) scene.Point {
			return scene.Pt(hundredths(name+" x", 0, 10_000), hundredths(name+" y", 0, 10_000))
		}
		a, b := pt("a"), pt("b")
		var boxes []scene.Box
		for range rapid.IntRange(0, 5).Draw(t, "boxes") {
			p := pt("box")
			boxes = append(boxes, scene.BoxAt(p.X+0.005, p.Y+0.005, hundredths("w", 100, 4000), hundredths("h", 100, 4000)))
		}
		left := Outside(a, b, boxes...)
		// walked in small steps, a place is left exactly where it lies in no box
		sum := 0.0
		for i := 0; i+1 < len(left); i += 2 {
			m := scene.Pt((left[i].X+left[i+1].X)/2, (left[i].Y+left[i+1].Y)/2)
			for _, o := range boxes {
				if o.Inset(1e-9).Contains(scene.Box{X0: m.X, Y0: m.Y, X1: m.X, Y1: m.Y}) {
					t.Fatalf("%v lies in %v", m, o)
				}
			}
			sum += math.Hypot(left[i+1].X-left[i].X, left[i+1].Y-left[i].Y)
		}
		const n = 4000
		free := 0
		for i := range n {
			s := (float64(i) + 0.5) / n
			p := scene.Pt(a.X+(b.X-a.X)*s, a.Y+(b.Y-a.Y)*s)
			in := false
			for _, o := range boxes {
				in = in || o.Contains(scene.Box{X0: p.X, Y0: p.Y, X1: p.X, Y1: p.Y})
			}
			if !in {
				free++
			}
		}
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		if math.Abs(sum-l*float64(free)/n) > l*12/n {
			t.Fatalf("%v left, %v counted", sum, l*float64(free)/n)
		}
	})
}

func TestSpaceTellsWordsFromLines(t *testing.T) {
	s := NewSpace(scene.Box{X0: 0, Y0: 0, X1: 100, Y1: 100})
	s.Take(scene.BoxAt(10, 10, 20, 5))
	s.Stroke(scene.Pt(50, 0), scene.Pt(50, 100))
	cases := []struct {
		why  string
		box  scene.Box
		free bool
	}{
		{"clear of both", scene.BoxAt(60, 10, 10, 5), true},
		{"over words", scene.BoxAt(25, 12, 10, 5), false},
		{"over a line", scene.BoxAt(45, 40, 10, 5), false},
		{"too near to a line", scene.BoxAt(39.5, 40, 10, 5), false},
		{"past the bounds", scene.BoxAt(95, 40, 10, 5), false},
	}
	for _, c := range cases {
		assert.Equal(t, c.free, s.Free(c.box, 1), c.why)
	}
	assert.True(t, s.FreeLine(scene.Pt(40, 50), scene.Pt(60, 50), 0.5), "a leader may cross a line")
	assert.False(t, s.FreeLine(scene.Pt(0, 12), scene.Pt(60, 12), 0.5), "but no words")
	assert.False(t, s.Free(scene.BoxAt(25, 12, 10, 5), 1))
	assert.True(t, s.Free(scene.BoxAt(60, 10, 10, 5), 1))
}

func table(rows int) *Table {
	t := &Table{Title: "SHEETS", Columns: []Column{{Head: "SHEET", Align: scene.End}, {Head: "WALL", Wrap: true}, {Head: "CUT LENGTH", Align: scene.End, Spare: 1}}}
	for i := range rows {
		t.Rows = append(t.Rows, Row{Cells: []string{strings.Repeat("1", 1+i%4), strings.Repeat("north wall ", 1+i%9), `9'-10 1/2"`}})
	}
	return t
}

// A table that breaks over pages shows every row once, its head on each page, and nothing touches.
func TestATableBreaksOverPages(t *testing.T) {
	k := Office()
	for _, width := range []float64{60, 90, 180} {
		tb := table(40)
		tb.Fit(k, width)
		assert.LessOrEqual(t, tb.Width(), width+1e-6)
		shown := 0
		for first := 0; first < len(tb.Rows); {
			p := scene.NewPage("Z-601", "", 300, 300)
			p.Frame = scene.BoxAt(10, 10, 280, 280)
			count, box := tb.Draw(&p.Group, k, scene.Pt(20, 20), first, 120)
			require.Positive(t, count)
			assert.LessOrEqual(t, box.H(), 120+1e-6)
			assert.Empty(t, scene.Overlaps(p, 0.5))
			heads := 0
			p.Texts(func(x *scene.Text) {
				if x.String == "SHEET" {
					heads++
				}
			})
			assert.Equal(t, 1, heads)
			first += count
			shown += count
		}
		assert.Equal(t, 40, shown)
	}
}

func TestATooNarrowTableLosesItsSpareColumnFirst(t *testing.T) {
	tb := table(3)
	tb.Fit(Office(), 42)
	assert.Len(t, tb.Columns, 2)
	assert.Len(t, tb.Rows[0].Cells, 2)
}

func TestMarksHoldTheirWords(t *testing.T) {
	k := Office()
	p := scene.NewPage("Z-101", "", 200, 200)
	Disc(&p.Group, k, scene.Numbers, scene.Pt(20, 20), 9, k.Seam, "88", k.Medium, true)
	Disc(&p.Group, k, scene.Marks, scene.Pt(40, 20), 6.4, k.Thin, "C8", k.Small, true)
	Elevation(&p.Group, k, scene.Pt(80, 30), 90, "J", "Z-288")
	Title{Mark: "Q2", Page: "Z-288", Name: "J, (QUAY) WALL", Under: []string{"SCALE 1:24"}}.Draw(&p.Group, k, scene.Pt(20, 100))
	Bar{Scale: 24}.Draw(&p.Group, k, scene.Pt(20, 150), 104)
	Bar{Scale: 50, Metric: true}.Draw(&p.Group, k, scene.Pt(20, 170), 60)
	assert.Empty(t, scene.Overlaps(p, 0.5))
}
