package scene

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDump(t *testing.T) {
	p := NewPage("Z-201", "Elevation", 431.8, 279.4)
	p.Frame = Box{20, 10, 421.8, 269.4}
	p.Reserve("stamp", BoxAt(80, 225.4, 72, 44))
	v := p.Viewed(View{Box: BoxAt(50, 50, 100, 80), Scale: 24, Name: "North", Ratio: `1/2" = 1'-0"`}, Datum{"wall", "North"})
	v.Part(Tag{Class: "seam", Data: []Datum{{"at", "609.6"}}}).VLine(60, 50, 130, Pen(Seams, 0.35))
	v.Text(Text{At: Pt(1.0/3, -0.0001), String: "1", Height: 3.5, Bold: true, Anchor: Middle, Seat: Centred, Angle: 90, Field: 0.5, Layer: Numbers})
	v.Clipped(Pt(0, 0), Pt(1, 0), Pt(0, 1)).Circle(Pt(5, 5), 2.25, Style{Fill: Solid(Grey(0.5))})
	v.Polygon(Pen(Walls, 0.5).As(Dashed(0.5)), Pt(0, 0), Pt(1, 0), Pt(0, 1))
	v.Rect(BoxAt(1, 2, 3, 4), Pen(Frame, 0.7).In(Colour{200, 0, 16}))
	v.Path(Pen(Grain, 0.1), Step{Kind: MoveTo, P: Pt(1, 2)}, Step{Kind: CurveTo, C1: Pt(3, 4), C2: Pt(5, 6), P: Pt(7, 8)}, Step{Kind: Close})
	p.Link(BoxAt(0, 0, 10, 10), "Z-202")
	assert.Equal(t, `page "Z-201" "Elevation" 431.8 x 279.4
frame 20,10 421.8,269.4
keep "stamp" 80,225.4 152,269.4
group class="view" wall="North" view "North" 1:24 "1/2\" = 1'-0\"" 50,50 150,130
  group class="seam" at="609.6"
    line 60,50 60,130 seams w0.35
  text 0.333,0 "1" h3.5 bold middle centred turn 90 field 0.5 numbers
  group clip 0,0 1,0 0,1
    circle 5,5 r2.25 fill #808080
  polygon 0,0 1,0 0,1 walls w0.5 dash 6 1.5
  rect 1,2 4,6 frame w0.7 #c80010
  path M1 2C3 4 5 6 7 8Z grain w0.1
link 0,0 10,10 page "Z-202" uri ""
`, Dump(p))
}

func TestNumbersHaveFixedDecimals(t *testing.T) {
	for in, want := range map[float64]string{
		0: "0", -0.0004: "0", 0.0005: "0.001", 12: "12", 12.5: "12.5", -3.14159: "-3.142", 1e6: "1000000", 0.1 + 0.2: "0.3", 25.4: "25.4", 1.005: "1.005",
	} {
		assert.Equal(t, want, Num(in))
	}
}

// Line types after ISO 128-2: multiples of the line width; the figures are those its restatements print for 0.25, 0.35 and 0.5 mm.
func TestLineTypes(t *testing.T) {
	for _, c := range []struct {
		width float64
		dash  Dash
		want  []float64
	}{
		{0.25, Dashed(0.25), []float64{3, 0.75}},
		{0.35, Dashed(0.35), []float64{4.2, 1.05}},
		{0.5, Dashed(0.5), []float64{6, 1.5}},
		{0.25, Chain(0.25), []float64{6, 0.75, 0.125, 0.75}},
		{0.35, Chain(0.35), []float64{8.4, 1.05, 0.175, 1.05}},
		{0.5, Chain(0.5), []float64{12, 1.5, 0.25, 1.5}},
	} {
		assert.InDeltaSlice(t, c.want, c.dash.Lengths(), 1e-9)
	}
	assert.Empty(t, Dash{}.Lengths())
}

func TestTextStandsWhereItsAnchorSays(t *testing.T) {
	w := Width("HHHH", 2.5, false)
	for _, c := range []struct {
		why  string
		text Text
		pen  Point
	}{
		{"start on the baseline", Text{}, Pt(100, 50)},
		{"middle", Text{Anchor: Middle}, Pt(100-w/2, 50)},
		{"end", Text{Anchor: End}, Pt(100-w, 50)},
		{"middle of the capitals", Text{Seat: Centred}, Pt(100, 51.25)},
		{"top of the capitals", Text{Seat: Hanging}, Pt(100, 52.5)},
		{"reads upwards, middle half its length below", Text{Anchor: Middle, Angle: 90}, Pt(100, 50+w/2)},
		{"reads upwards, capitals to the left of the point", Text{Seat: Hanging, Angle: 90}, Pt(102.5, 50)},
		{"upside down", Text{Anchor: End, Angle: 180}, Pt(100+w, 50)},
	} {
		t.Run(c.why, func(t *testing.T) {
			x := c.text
			x.At, x.String, x.Height = Pt(100, 50), "HHHH", 2.5
			assert.InDelta(t, c.pen.X, x.Pen().X, 1e-9)
			assert.InDelta(t, c.pen.Y, x.Pen().Y, 1e-9)
			assert.Equal(t, 2.5, math.Round(min(x.Bounds().H(), x.Bounds().W())*1e9)/1e9, "the ink of H is as high as capitals")
		})
	}
}

func TestWrapAndShorten(t *testing.T) {
	const s = "Sheets 2 to 8 have full net width; sheet 5 is centred on the flue."
	for _, width := range []float64{12, 20, 40, 200} {
		for _, line := range Wrap(s, 2.5, false, width) {
			assert.LessOrEqual(t, Width(line, 2.5, false), width, line)
		}
	}
	assert.Equal(t, []string{"one two", "three"}, Wrap(" one  two\nthree ", 2.5, false, Width("one two", 2.5, false)))
	broken := Wrap("unbreakablyverylongword", 2.5, false, 10)
	assert.Greater(t, len(broken), 2)
	assert.Equal(t, []string{"W", "W"}, Wrap("WW", 2.5, false, 0.1), "at least a letter a line")
	assert.Empty(t, Wrap("  ", 2.5, false, 10))
	assert.Equal(t, "short", Shorten("short", 2.5, false, 100))
	cut := Shorten(s, 2.5, true, 30)
	assert.LessOrEqual(t, Width(cut, 2.5, true), 30.0)
	assert.Equal(t, '…', []rune(cut)[len([]rune(cut))-1])
}

func TestValidateNamesWhatCannotBeDrawn(t *testing.T) {
	for _, c := range []struct {
		why, want string
		draw      func(d *Document)
	}{
		{"nothing wrong", "", func(d *Document) { d.Pages[0].HLine(0, 1, 2, Pen(Walls, 1)) }},
		{"not a number", "not finite", func(d *Document) { d.Pages[0].HLine(0, math.NaN(), 2, Pen(Walls, 1)) }},
		{"infinite, deep in groups", "not finite", func(d *Document) {
			d.Pages[0].Part(Tag{}).Part(Tag{}).Circle(Pt(math.Inf(1), 0), 1, Style{})
		}},
		{"infinite width", "not finite", func(d *Document) { d.Pages[0].HLine(0, 1, 2, Pen(Walls, math.Inf(-1))) }},
		{"far off any paper", "not finite", func(d *Document) { d.Pages[0].HLine(0, 1e9, 2, Pen(Walls, 1)) }},
		{"clip", "not finite", func(d *Document) { d.Pages[0].Clipped(Pt(0, math.NaN())) }},
		{"text angle", "not finite", func(d *Document) { d.Pages[0].Text(Text{Height: 2.5, Angle: math.NaN()}) }},
		{"text without height", "height 0", func(d *Document) { d.Pages[0].Text(Text{String: "A"}) }},
		{"path that starts nowhere", "without a start", func(d *Document) { d.Pages[0].Path(Style{}, Step{Kind: LineTo}) }},
		{"link to nowhere", `link to page "9"`, func(d *Document) { d.Pages[0].Link(Box{}, "9") }},
		{"two pages of a name", "used twice", func(d *Document) { d.Pages = append(d.Pages, NewPage("1", "", 10, 10)) }},
		{"two ids alike", `id "a" used twice`, func(d *Document) { d.Pages[0].Part(Tag{ID: "a"}); d.Pages[0].Part(Tag{ID: "a"}) }},
		{"an attribute that would break out", "data key", func(d *Document) { d.Pages[0].Part(Tag{Data: []Datum{{`x="" onclick`, ""}}}) }},
		{"no paper", "no paper", func(d *Document) { d.Pages[0].Width = 0 }},
		{"outline to nowhere", "no page", func(d *Document) { d.Outline = []Entry{{Title: "x", Page: "9"}} }},
		{"outline that skips a level", "level 2 after 0", func(d *Document) {
			d.Outline = []Entry{{Title: "x", Page: "1"}, {Title: "y", Page: "1", Level: 2}}
		}},
		{"view without scale", "scale 0", func(d *Document) { d.Pages[0].Viewed(View{}) }},
		{"unknown picture", "picture of kind", func(d *Document) { d.Pages[0].Image(Image{Kind: "gif"}) }},
	} {
		t.Run(c.why, func(t *testing.T) {
			d := &Document{Pages: []*Page{NewPage("1", "", 100, 100)}}
			c.draw(d)
			if c.want == "" {
				assert.NoError(t, d.Validate())
			} else {
				assert.ErrorContains(t, d.Validate(), c.want)
			}
		})
	}
}

func TestArcKeepsToTheCircle(t *testing.T) {
	steps := ArcSteps(Pt(10, 20), 5, -30, 300)
	p := &Path{Steps: steps}
	for _, q := range p.flatten()[0].points {
		assert.InDelta(t, 5, math.Hypot(q.X-10, q.Y-20), 5*5e-6)
	}
	first, last := steps[0].P, steps[len(steps)-1].P
	assert.InDelta(t, 20+5*math.Sin(math.Pi/6), first.Y, 1e-9, "minus thirty degrees is below, as seen")
	assert.InDelta(t, 20+5*math.Sin(math.Pi/3), last.Y, 1e-9)
}

func TestTargetLetsOnlyAddressesThrough(t *testing.T) {
	for uri, want := range map[string]bool{
		"https://example.org/a?b=c": true, "http://example.org": true, "mailto:a@example.org": true, " https://example.org ": true,
		"javascript:alert(1)": false, "JaVaScRiPt:alert(1)": false, "data:text/html,x": false, "file:///etc/passwd": false, "": false,
		"//example.org": false, "https:": false, "\x01javascript:alert(1)": false,
	} {
		_, ok := (&Link{URI: uri}).Target()
		assert.Equal(t, want, ok, uri)
	}
}

func TestFileName(t *testing.T) {
	for in, want := range map[string]string{"Z-201": "Z-201", "a/b": "a-b", "..": "_..", "../x": "_..-x", "": "_", "Süd 1": "S-d-1"} {
		assert.Equal(t, want, FileName(in))
	}
}

func TestReadPicture(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 4, 2))
	img.Set(1, 1, color.NRGBA{200, 100, 50, 128})
	var buf bytes.Buffer
	require.NoError(t, png.Encode(&buf, img))
	p, err := ReadPicture(buf.Bytes())
	require.NoError(t, err)
	assert.Equal(t, [2]int{4, 2}, [2]int{p.Width, p.Height})
	assert.Equal(t, Box{10, 12.5, 30, 22.5}, p.Fit(Box{10, 0, 30, 35}))

	deep := image.NewNRGBA64(image.Rect(0, 0, 4, 2))
	buf.Reset()
	require.NoError(t, png.Encode(&buf, deep))
	p, err = ReadPicture(buf.Bytes())
	require.NoError(t, err)
	c, err := png.DecodeConfig(bytes.NewReader(p.Data))
	require.NoError(t, err)
	assert.Equal(t, color.NRGBAModel, c.ColorModel, "a deep picture comes back plain")

	buf.Reset()
	require.NoError(t, jpeg.Encode(&buf, img, nil))
	p, err = ReadPicture(buf.Bytes())
	require.NoError(t, err)
	assert.Equal(t, "jpeg", p.Kind)
	assert.Equal(t, buf.Bytes(), p.Data)

	for _, bad := range [][]byte{nil, []byte("GIF89a"), buf.Bytes()[:40]} {
		_, err := ReadPicture(bad)
		assert.Error(t, err)
	}
}

func BenchmarkOverlaps(b *testing.B) {
	p := NewPage("1", "", 431.8, 279.4)
	for i := range 40 {
		p.VLine(20+10*float64(i), 40, 200, Pen(Seams, 0.35))
		for k := range 11 {
			p.Text(note(21+10*float64(i), 50+10*float64(k), "9'-2"))
		}
		var grain []Point
		for k := range 20 {
			grain = append(grain, Pt(20.5+10*float64(i)+0.45*float64(k), 160), Pt(20.5+10*float64(i)+0.45*float64(k), 200))
		}
		p.Path(Pen(Grain, 0.1), Strokes(grain...)...)
	}
	b.ReportAllocs()
	for b.Loop() {
		if len(Overlaps(p, 0)) != 0 {
			b.Fatal(Overlaps(p, 0)[0])
		}
	}
}
