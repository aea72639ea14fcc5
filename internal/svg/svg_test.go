package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	svgo "github.com/ajstarks/svgo/float"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"

	"flitchlay/internal/effort"
	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// element is one element of a written file, read back by encoding/xml.
type element struct {
	name  string
	attrs map[string]string
	text  string
	in    []*element
}

func read(t testing.TB, data []byte) *element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	top := &element{}
	open := []*element{top}
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		last := open[len(open)-1]
		switch tok := tok.(type) {
		case xml.StartElement:
			e := &element{name: tok.Name.Local, attrs: map[string]string{}}
			for _, a := range tok.Attr {
				_, twice := e.attrs[a.Name.Local]
				require.False(t, twice, "attribute %s twice", a.Name.Local)
				e.attrs[a.Name.Local] = a.Value
			}
			last.in = append(last.in, e)
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			last.text += string(tok)
		}
	}
	require.Len(t, top.in, 1)
	return top.in[0]
}

// all returns the elements of a name, in document order.
func (e *element) all(name string) []*element {
	var out []*element
	for _, c := range e.in {
		if c.name == name {
			out = append(out, c)
		}
		out = append(out, c.all(name)...)
	}
	return out
}

func (e *element) number(t testing.TB, attr string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.attrs[attr], 64)
	require.NoError(t, err, "%s %s", e.name, attr)
	return v
}

func write(t testing.TB, p *scene.Page, o Options) []byte {
	t.Helper()
	out, err := Page(p, o)
	require.NoError(t, err)
	return out
}

func TestSizeAndLengthAreMillimetres(t *testing.T) {
	for _, size := range [][2]float64{{431.8, 279.4}, {914.4, 609.6}, {594, 841}, {279.4, 215.9}} {
		p := scene.NewPage("Z-201", "Elevation", size[0], size[1])
		p.Line(scene.Pt(10, 20), scene.Pt(110.25, 20), scene.Pen(scene.Walls, 0.5))
		e := read(t, write(t, p, Options{}))
		assert.Equal(t, scene.Num(size[0])+"mm", e.attrs["width"])
		assert.Equal(t, scene.Num(size[1])+"mm", e.attrs["height"])
		assert.Equal(t, "0 0 "+scene.Num(size[0])+" "+scene.Num(size[1]), e.attrs["viewBox"])
		assert.Contains(t, e.all("style")[0].text, fmt.Sprintf("@page{size:%smm %smm;margin:0}", scene.Num(size[0]), scene.Num(size[1])))
		line := e.all("line")[0]
		assert.InDelta(t, 100.25, line.number(t, "x2")-line.number(t, "x1"), 0.0005)
	}
}

// rsvg-convert draws the file: a line of 100 mm is 100 mm long there, to a twentieth of a millimetre.
func TestRendererDrawsTrueLength(t *testing.T) {
	rsvg := effort.Tool(t, "rsvg-convert")
	p := scene.NewPage("1", "", 120, 30)
	p.Line(scene.Pt(10, 15), scene.Pt(110, 15), scene.Pen(scene.Walls, 1))
	dir := t.TempDir()
	from, to := filepath.Join(dir, "p.svg"), filepath.Join(dir, "p.png")
	require.NoError(t, os.WriteFile(from, write(t, p, Options{}), 0o644))
	const dpi = 1016 // 40 pixels a millimetre
	out, err := exec.Command(rsvg, "-d", strconv.Itoa(dpi), "-p", strconv.Itoa(dpi), from, "-o", to).CombinedOutput()
	require.NoError(t, err, string(out))
	img := picture(t, to)
	require.Equal(t, 120*40, img.Bounds().Dx())
	first, last := -1, -1
	for x := range img.Bounds().Dx() {
		if r, _, _, _ := img.At(x, 15*40).RGBA(); r < 0x8000 {
			if first < 0 {
				first = x
			}
			last = x
		}
	}
	assert.InDelta(t, 100, float64(last-first+1)/40, 0.05)
	assert.InDelta(t, 10, float64(first)/40, 0.05)
}

func picture(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	img, err := png.Decode(f)
	require.NoError(t, err)
	return img
}

func TestLetteringModes(t *testing.T) {
	p := scene.NewPage("1", "", 100, 100)
	p.Text(scene.Text{At: scene.Pt(50, 50), String: `12'-6 3/8"`, Height: 2.5, Anchor: scene.Middle, Angle: 90, Layer: scene.Dimensions})
	p.Text(scene.Text{At: scene.Pt(50, 80), String: "NORTH", Height: 5, Bold: true})
	texts := func(o Options) (words []*element, uses int, css string) {
		e := read(t, write(t, p, o))
		return e.all("text"), len(e.all("use")), e.all("style")[0].text
	}
	words, uses, css := texts(Options{})
	require.Len(t, words, 2)
	assert.Equal(t, `12'-6 3/8"`, words[0].text)
	assert.Equal(t, "0", words[0].attrs["fill-opacity"], "under outlines the text is transparent")
	assert.Equal(t, len(`12'-63/8"`)+len("NORTH"), uses, "one outline a letter, none for the space")
	assert.Contains(t, css, "@font-face")

	words, uses, css = texts(Options{Lettering: Live})
	require.Len(t, words, 2)
	assert.NotContains(t, words[0].attrs, "fill-opacity")
	assert.Zero(t, uses)
	assert.Contains(t, css, "font-kerning:none")

	words, uses, css = texts(Options{Lettering: Outlined})
	assert.Empty(t, words)
	assert.NotZero(t, uses)
	assert.NotContains(t, css, "@font-face")
}

// The widths told to the file are those the letters have, in both faces and at every height.
func TestTextHasItsMeasuredWidth(t *testing.T) {
	for _, bold := range []bool{false, true} {
		for _, height := range []float64{2.5, 3.5, 5, 7, 10} {
			const s = `WALL 12'-6 3/8" é½`
			p := scene.NewPage("1", "", 500, 100)
			p.Text(scene.Text{At: scene.Pt(5, 50), String: s, Height: height, Bold: bold})
			e := read(t, write(t, p, Options{}))
			want := scene.Width(s, height, bold)
			text := e.all("text")[0]
			assert.InDelta(t, want, text.number(t, "textLength"), 0.0005)
			// The embedded font itself says the same.
			size := text.number(t, "font-size")
			assert.InDelta(t, height, size*float64(font.Regular.CapHeight())/float64(font.Regular.UnitsPerEm()), 0.001)
			sub := embedded(t, e)
			n := 0.0
			var buf sfnt.Buffer
			for _, r := range s {
				g, err := sub.GlyphIndex(&buf, r)
				require.NoError(t, err)
				adv, err := sub.GlyphAdvance(&buf, g, 2048<<6, 0)
				require.NoError(t, err)
				n += float64(adv) / 64 / 2048
			}
			assert.InDelta(t, want, n*size, want*0.0003)
			// The outlines: the last letter stands where the pen is after all others.
			uses := e.all("use")
			last := uses[len(uses)-1]
			k := regexp.MustCompile(`scale\(([0-9.]+)\)`).FindStringSubmatch(e.all("g")[len(e.all("g"))-1].attrs["transform"])
			require.Len(t, k, 2)
			scale, err := strconv.ParseFloat(k[1], 64)
			require.NoError(t, err)
			assert.InDelta(t, scene.Width(s[:len(s)-len("½")], height, bold), last.number(t, "x")*scale, 0.0005)
		}
	}
}

// embedded returns the one font inside a file.
func embedded(t *testing.T, e *element) *sfnt.Font {
	t.Helper()
	m := regexp.MustCompile(`base64,([A-Za-z0-9+/=]+)\)`).FindStringSubmatch(e.all("style")[0].text)
	require.Len(t, m, 2)
	data, err := base64.StdEncoding.DecodeString(m[1])
	require.NoError(t, err)
	f, err := sfnt.Parse(data)
	require.NoError(t, err)
	return f
}

const hostile = `"><script>alert('x')</script><g a="]]>&amp;` + "\x00\x1b\uFFFE\u202e 墙😀"

func TestNothingAUserWritesBreaksOut(t *testing.T) {
	p := scene.NewPage(hostile, hostile, 100, 100)
	g := p.Part(scene.Tag{Class: hostile, ID: hostile, Title: hostile, Desc: hostile, Data: []scene.Datum{{Key: "wall", Value: hostile}}})
	g.Text(scene.Text{At: scene.Pt(5, 5), String: hostile, Height: 2.5, Layer: scene.Layer(hostile), Tag: scene.Tag{Title: hostile, Class: hostile}})
	g.Link(scene.BoxAt(0, 0, 5, 5), hostile)
	g.Web(scene.BoxAt(0, 0, 5, 5), `https://example.org/"><script>`)
	g.Web(scene.BoxAt(0, 0, 5, 5), `javascript:alert(1)`)
	g.Image(scene.Image{Box: scene.BoxAt(0, 0, 5, 5), Kind: "png", Alt: hostile, Layer: scene.Layer(hostile)})
	for _, mode := range []Lettering{Overlaid, Outlined, Live} {
		out := write(t, p, Options{Lettering: mode, Set: hostile})
		e := read(t, out)
		assert.Empty(t, e.all("script"))
		assert.NotContains(t, string(out), "<script")
		assert.NotContains(t, string(out), "javascript:")
		assert.Len(t, e.all("a"), 2)
		// What XML can hold comes back as written; control characters cannot.
		said := strings.NewReplacer("\x00", "\uFFFD", "\x1b", "\uFFFD", "\uFFFE", "\uFFFD").Replace(hostile)
		var tagged *element
		for _, g := range e.all("g") {
			if g.attrs["data-wall"] != "" {
				tagged = g
			}
		}
		require.NotNil(t, tagged)
		assert.Equal(t, said, tagged.attrs["data-wall"])
		assert.Equal(t, said, tagged.attrs["class"])
		assert.Equal(t, said, tagged.all("title")[0].text)
	}
}

func TestGroupsShowWhatTheyStandFor(t *testing.T) {
	p := scene.NewPage("Z-201", "", 100, 100)
	v := p.Viewed(scene.View{Box: scene.BoxAt(0, 0, 50, 50), Scale: 48, Name: "North"}, scene.Datum{Key: "wall", Value: "North"})
	v.Part(scene.Tag{Class: "seam", Data: []scene.Datum{{Key: "at", Value: "609.6"}}}).VLine(10, 0, 50, scene.Pen(scene.Seams, 0.35))
	v.Part(scene.Tag{}).HLine(0, 1, 2, scene.Pen(scene.Walls, 0.5))
	e := read(t, write(t, p, Options{}))
	g := e.all("g")
	assert.Equal(t, map[string]string{"class": "view", "data-wall": "North", "data-scale": "48"}, g[1].attrs)
	assert.Equal(t, map[string]string{"class": "seam", "data-at": "609.6", "data-layer": "seams"}, g[2].attrs)
	assert.Equal(t, map[string]string{"data-layer": "walls"}, g[3].attrs)
	assert.Len(t, g, 4, "a group that says nothing leaves no trace")
}

func TestLinkLeadsToThePagesFile(t *testing.T) {
	p := scene.NewPage("Z-201", "", 100, 100)
	p.Link(scene.BoxAt(1, 2, 3, 4), "Z-202")
	a := read(t, write(t, p, Options{})).all("a")
	require.Len(t, a, 1)
	assert.Equal(t, "Z-202.svg", a[0].attrs["href"])
	assert.Equal(t, "0", a[0].all("rect")[0].attrs["fill-opacity"])
}

func TestWhatCannotBeDrawnIsAnError(t *testing.T) {
	p := scene.NewPage("1", "", 100, 100)
	p.HLine(0, math.NaN(), 5, scene.Pen(scene.Walls, 0.5))
	_, err := Page(p, Options{})
	assert.ErrorContains(t, err, "not finite")
}

func TestSameInputSameBytes(t *testing.T) {
	first := write(t, crowded(), Options{})
	for range 20 {
		require.Equal(t, first, write(t, crowded(), Options{}))
	}
	assert.NotContains(t, string(first), "-0.000")
	assert.NotRegexp(t, `[0-9]e[-+][0-9]`, regexp.MustCompile(`base64,[^)"]*`).ReplaceAllString(string(first), ""))
}

// crowded is a page with much of everything.
func crowded() *scene.Page {
	p := scene.NewPage("Z-201", "Elevation", 431.8, 279.4)
	for i := range 2000 {
		x, y := float64(i%50)*8, float64(i/50)*6
		p.Line(scene.Pt(x, y), scene.Pt(x+7, y+5.123), scene.Pen(scene.Layers[i/40%4], 0.25))
	}
	for i := range 300 {
		x, y := float64(i%20)*20, float64(i/20)*18
		t := scene.Text{At: scene.Pt(x, y), String: fmt.Sprintf(`%d'-%d 3/8"`, i/12, i%12), Height: 2.5, Layer: scene.Dimensions, Bold: i%7 == 0}
		if i%5 == 0 {
			t.Angle, t.Field = 90, 0.5
		}
		p.Text(t)
	}
	c := p.Clipped(scene.Pt(-0.0001, 0), scene.Pt(50, 0), scene.Pt(0, 50))
	c.Circle(scene.Pt(20, 20), 15, scene.Pen(scene.Marks, 0.35).As(scene.Chain(0.35)).Filled(scene.Grey(0.9)))
	c.Arc(scene.Pt(20, 20), 10, 0, 200, scene.Pen(scene.Marks, 0.35))
	return p
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"WALL", hostile, "  a  b ", "\xff", "<b>&amp;", "\u0301", "]]>"} {
		f.Add(s, 2.5, 45.0, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, height, angle float64, mode uint8) {
		p := scene.NewPage("1", s, 100, 100)
		p.Part(scene.Tag{Title: s, Data: []scene.Datum{{Key: "wall", Value: s}}}).
			Text(scene.Text{At: scene.Pt(50, 50), String: s, Height: height, Angle: angle, Layer: scene.Layer(s), Field: 1})
		out, err := Page(p, Options{Lettering: Lettering(mode % 3), Set: s})
		if err != nil {
			if p.Validate() == nil {
				t.Fatal(err)
			}
			return
		}
		e := read(t, out)
		for _, w := range e.all("text") {
			if w.text != font.Clean(s) {
				t.Fatalf("%q came out as %q", s, w.text)
			}
		}
		if len(e.all("script")) > 0 {
			t.Fatal("a script")
		}
	})
}

func BenchmarkPage(b *testing.B) {
	p := crowded()
	for _, mode := range []struct {
		name string
		Lettering
	}{{"overlaid", Overlaid}, {"outlined", Outlined}, {"live", Live}} {
		b.Run(mode.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				out, err := Page(p, Options{Lettering: mode.Lettering})
				if err != nil {
					b.Fatal(err)
				}
				b.SetBytes(int64(len(out)))
			}
		})
	}
	b.Run("svgo alone", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var out bytes.Buffer
			s := svgo.New(&out)
			s.Decimals = decimals
			s.Startraw(`width="431.8mm" height="279.4mm" viewBox="0 0 431.8 279.4"`)
			bare(s, p.Items)
			s.End()
			b.SetBytes(int64(out.Len()))
		}
	})
}

// bare draws the page by svgo's own calls, with nothing of ours.
func bare(s *svgo.SVG, items []scene.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *scene.Group:
			bare(s, it.Items)
		case *scene.Line:
			s.Line(it.A.X, it.A.Y, it.B.X, it.B.Y, `stroke="#000000" stroke-width="0.25"`)
		case *scene.Circle:
			s.Circle(it.Centre.X, it.Centre.Y, it.Radius, `stroke="#000000" stroke-width="0.35"`)
		case *scene.Text:
			s.Text(it.At.X, it.At.Y, it.String, `font-size="3.429"`)
		}
	}
}
