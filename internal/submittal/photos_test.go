package submittal

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// sheetPicture is a sheet so many pixels wide and high, black in the upper half, red in the lower left quarter, white in
// the lower right one.
func sheetPicture(t *testing.T, w, h int) scene.Picture {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{A: 255}
			switch {
			case y >= h/2 && x < w/2:
				c.R = 255
			case y >= h/2:
				c.R, c.G, c.B = 255, 255, 255
			}
			m.SetRGBA(x, y, c)
		}
	}
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, m))
	p, err := scene.ReadPhotograph(out.Bytes(), 400)
	require.NoError(t, err)
	return p
}

// photosOf gives all laid sheets the same picture, but for those to be left out.
func photosOf(p *layout.Plan, photo scene.Picture, out func(number int) bool) folio.Photographs {
	list := folio.Photographs{}
	for i := range p.Runs {
		for _, s := range p.Runs[i].Sheets {
			if s.Number > 0 && !out(s.Number) {
				list[folio.SheetName{Flitch: s.Flitch, Number: s.Number}] = photo
			}
		}
	}
	return list
}

func none(int) bool { return false }

// photoPages draws the set and gives the pages of photographs.
func photoPages(t *testing.T, text, page string, photo scene.Picture, out func(number int) bool) (*layout.Plan, []*scene.Page) {
	template, err := paper.Named(page)
	require.NoError(t, err)
	p := roomtest.Laid(t, "room.toml", text)
	d, err := Photographed(p, template, nil, photosOf(p, photo, out))
	require.NoError(t, err)
	var list []*scene.Page
	for _, p := range d.Pages {
		if len(p.Title) > 12 && p.Title[:12] == "PHOTOGRAPHS:" {
			list = append(list, p)
		}
	}
	return p, list
}

// images are the photographs on a page, by the number of their sheet.
func images(p *scene.Page) map[string]*scene.Image {
	out := map[string]*scene.Image{}
	for _, g := range roomtest.Classed(&p.Group, "sheet") {
		g.Walk(func(it scene.Item) {
			if m, ok := it.(*scene.Image); ok {
				out[roomtest.Fact(g, "number")] = m
			}
		})
	}
	return out
}

// Whatever the room and the paper, with every third photograph missing, nothing touches anything.
func TestNothingOverlapsOnPhotographs(t *testing.T) {
	photo := sheetPicture(t, 49, 260)
	roomtest.OnPapers(t, roomtest.AllRooms(t), []string{"ansi-a", "ansi-b", "a3", "arch-d"}, func(t *testing.T, text, name string) {
		_, list := photoPages(t, text, name, photo, func(n int) bool { return n%3 == 0 })
		require.NotEmpty(t, list)
		for _, p := range list {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
		}
	})
}

// A wall of 9 ft, 8 ft high, net 23 1/2, worked by hand: seams at 18 3/4, 42 1/4, 65 3/4, 89 1/4; half an overlap 1/2.
// Sheet 1 is ripped at its left: its right raw edge stands at 18 3/4 + 1/2, the left one 24 1/2 left of that. Sheets 2 to
// 5 begin half an overlap left of a seam; 5 is ripped at its right. Below the level line at 4 ft hang 48 in and 2 in trim,
// so the ends lie at -2 in and, 10 ft up, at 118 in.
func TestPhotographsLieWhereTheSheetsHang(t *testing.T) {
	const text = `[project]
title = "Mill Row: back office"
[veneer]
gross_width = "24 1/2"
overlap     = "1"
length      = "10'"
face        = "photo-%d.png"
[[wall]]
name      = "Left"
length    = "9' 0"
height    = "8' 0"
left_end  = "trim"
right_end = "trim"
`
	_, list := photoPages(t, text, "ansi-b", sheetPicture(t, 49, 240), none)
	require.Len(t, list, 1)
	view := roomtest.Classed(&list[0].Group, "view")[0]
	scale := view.View.Scale
	left, floor := view.View.Box.X0+1, view.View.Box.Y1-1 // the view has 1 mm round the wall
	wall := func(x float64) float64 { return (x - left) * scale / 25.4 }
	got := images(list[0])
	require.Len(t, got, 5)
	for number, want := range map[string]float64{"1": -5.25, "2": 18.25, "3": 41.75, "4": 65.25, "5": 88.75} {
		m := got[number]
		require.NotNil(t, m, "sheet %s", number)
		assert.InDelta(t, want, wall(m.Box.X0), 1e-6, "raw left edge of sheet %s", number)
		assert.InDelta(t, want+24.5, wall(m.Box.X1), 1e-6, "raw right edge of sheet %s", number)
		assert.InDelta(t, -2, (floor-m.Box.Y1)*scale/25.4, 1e-6, "lower end of sheet %s", number)
		assert.InDelta(t, 118, (floor-m.Box.Y0)*scale/25.4, 1e-6, "upper end of sheet %s", number)
	}
	for _, g := range roomtest.Classed(&list[0].Group, "sheet") {
		for _, it := range g.Items {
			clip, ok := it.(*scene.Group)
			if !ok {
				continue
			}
			number, err := strconv.Atoi(roomtest.Fact(g, "number"))
			require.NoError(t, err)
			seams := []float64{0, 18.75, 42.25, 65.75, 89.25, 108}
			for _, p := range clip.Clip {
				assert.GreaterOrEqual(t, wall(p.X), seams[number-1]-1e-6)
				assert.LessOrEqual(t, wall(p.X), seams[number]+1e-6)
			}
		}
	}
}

// quarters are the colours in the middles of a picture's quarters, left to right, then down.
func quarters(t *testing.T, m *scene.Image) [4]string {
	img, _, err := image.Decode(bytes.NewReader(m.Data))
	require.NoError(t, err)
	b := img.Bounds()
	var out [4]string
	for i := range out {
		r, g, _, _ := img.At(b.Dx()*(1+2*(i%2))/4, b.Dy()*(1+2*(i/2))/4).RGBA()
		switch {
		case r < 0x4000:
			out[i] = "black"
		case g < 0x4000:
			out[i] = "red"
		default:
			out[i] = "white"
		}
	}
	return out
}

// A turned sheet's photograph hangs upside down; one of level grain lies on its raw left edge, its head at the left.
func TestPhotographsAreTurnedAsTheSheetsAre(t *testing.T) {
	upright := [4]string{"black", "black", "red", "white"}
	photo := sheetPicture(t, 49, 192)
	tall := `[project]
title = "Stair"
[veneer]
cut = "quarter"
gross_width = "24 1/2"
overlap = "1"
length = "8'"
[[wall]]
name = "Stair"
length = "9'"
height = "14'"
`
	p, list := photoPages(t, tall, "ansi-b", photo, none)
	turned := 0
	for _, page := range list {
		got := images(page)
		for _, s := range p.Runs[0].Sheets {
			m := got[strconv.Itoa(s.Number)]
			require.NotNil(t, m)
			if s.Turned {
				assert.Equal(t, [4]string{"white", "red", "black", "black"}, quarters(t, m))
				turned++
			} else {
				assert.Equal(t, upright, quarters(t, m))
			}
		}
	}
	assert.Greater(t, turned, 3)

	level := `[project]
title = "Bar"
[veneer]
cut = "quarter"
grain = "horizontal"
gross_width = "24 1/2"
overlap = "1"
length = "8'"
[[wall]]
name = "Bar"
length = "7'"
height = "9'"
`
	p, list = photoPages(t, level, "ansi-b", photo, none)
	require.Len(t, list, 1)
	got := images(list[0])
	require.Len(t, got, len(p.Runs[0].Sheets))
	for number, m := range got {
		assert.Equal(t, [4]string{"black", "white", "black", "red"}, quarters(t, m), "sheet %s", number)
		assert.InDelta(t, 96/24.5, m.Box.W()/m.Box.H(), 1e-6)
	}
}

// Where a photograph is missing a plain field with the number stands for it and a note says so; so it does of one that is
// stretched.
func TestMissingAndStretchedPhotographsAreSaid(t *testing.T) {
	_, list := photoPages(t, roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`), "ansi-b", sheetPicture(t, 49, 200), func(n int) bool { return n == 3 })
	require.Len(t, list, 1)
	said := roomtest.Lettering(&list[0].Group)
	assert.Contains(t, said, "No photograph, a plain field: flitch F-311, sheet 3.")
	assert.Contains(t, said, "The photograph has not the proportion of a sheet and is stretched: flitch F-311, sheets 1 to 8.")
	assert.NotContains(t, images(list[0]), "3")
	fields, numbers := 0, 0
	for _, g := range roomtest.Classed(&list[0].Group, "sheet") {
		if shape, ok := g.Items[0].(*scene.Poly); ok && shape.Fill.On {
			assert.Equal(t, "3", roomtest.Fact(g, "number"))
			fields++
		}
	}
	for _, g := range roomtest.Classed(&list[0].Group, "sheet-number") {
		if roomtest.Lettering(g)[0] == "3" {
			numbers++
		}
	}
	assert.Equal(t, 1, fields)
	assert.Equal(t, 2, numbers, "in the field and under it")
}

// Without photographs the set is as it was.
func TestNoPhotographsNoPages(t *testing.T) {
	template, err := paper.Named("ansi-b")
	require.NoError(t, err)
	p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`))
	plain, err := Photographed(p, template, nil, nil)
	require.NoError(t, err)
	for _, page := range plain.Pages {
		assert.NotContains(t, page.Title, "PHOTOGRAPHS")
	}
	with, err := Photographed(p, template, nil, folio.Photographs{})
	require.NoError(t, err)
	assert.Len(t, with.Pages, len(plain.Pages)+1, "asked for, and all missing")
}
