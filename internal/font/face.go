// Package font holds the two faces that every drawing is lettered in, and measures them.
//
// What it does: advances, ink, coverage, outlines and subsets of DejaVu Sans Condensed and its bold.
//
// Coordinates and units: text heights are the height of CAPITALS in millimetres on paper; glyphs are in font units, y up, origin on the
// baseline at the pen.
//
// Order: text is measured and drawn rune by rune, left to right, without kerning, ligatures or hinting, so that every backend agrees.
//
// Not here: where text stands on a page, and how a backend writes it.
package font

import (
	"encoding/binary"
	"fmt"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font/sfnt"
)

// Face is one weight of the lettering, ready to measure. It is safe for concurrent use.
type Face struct {
	name    string // inside files; not that of the design the face was made from, which its licence keeps for unchanged copies
	data    []byte
	outline *sfnt.Font
	tables  map[string][]byte

	upem     int
	capital  int // height of capitals, font units
	cmap     []byte
	near     [nearRunes]uint16 // glyphs of the first runes, which nearly all text is of
	hmtx     []byte
	metrics  int // long entries of hmtx
	glyphs   int
	loca     []byte
	longLoca bool
	glyf     []byte
}

// Regular and Bold are the two faces.
var (
	Regular = load("Flitchlay Sans", dejavusanscondensed.TTF)
	Bold    = load("Flitchlay Sans Bold", dejavusanscondensedbold.TTF)
)

// Of returns the bold or the regular face.
func Of(bold bool) *Face {
	if bold {
		return Bold
	}
	return Regular
}

// Data is the whole TrueType file, for tests that read it with somebody else's reader. The caller does not change it.
func (f *Face) Data() []byte { return f.data }

// UnitsPerEm is the number of font units in an em, for tests that compute sizes again.
func (f *Face) UnitsPerEm() int { return f.upem }

// CapHeight is the height of capitals in font units, as the font states it.
func (f *Face) CapHeight() int { return f.capital }

// Size returns the em size at which capitals are as high as given, in the same unit.
func (f *Face) Size(capital float64) float64 {
	return capital * float64(f.upem) / float64(f.capital)
}

// load reads the tables that measuring needs. The fonts are part of the program, so a fault in them is a broken invariant.
func load(name string, data []byte) *Face {
	f := &Face{name: name, data: data, tables: map[string][]byte{}}
	var err error
	if f.outline, err = sfnt.Parse(data); err != nil {
		panic(fmt.Sprintf("font %s: %v", name, err))
	}
	for i := range int(u16(data, 4)) {
		e := data[12+16*i:]
		from, size := u32(e, 8), u32(e, 12)
		f.tables[string(e[:4])] = data[from : from+size]
	}
	head, os2 := f.tables["head"], f.tables["OS/2"]
	f.upem = int(u16(head, 18))
	f.longLoca = u16(head, 50) == 1
	f.glyphs = int(u16(f.tables["maxp"], 4))
	f.metrics = int(u16(f.tables["hhea"], 34))
	f.hmtx, f.loca, f.glyf = f.tables["hmtx"], f.tables["loca"], f.tables["glyf"]
	// The statement of the cap height came with version 2 of the table; the height of H is the same thing.
	if u16(os2, 0) >= 2 {
		f.capital = int(u16(os2, 88))
	}
	f.cmap = bmp(f.tables["cmap"])
	for r := range f.near {
		f.near[r] = uint16(f.search(rune(r)))
	}
	if f.capital == 0 {
		_, _, _, f.capital = f.ink(f.index('H'))
	}
	return f
}

// bmp finds the format 4 subtable, which maps the basic plane.
func bmp(cmap []byte) []byte {
	for i := range int(u16(cmap, 2)) {
		t := cmap[u32(cmap, 4+8*i+4):]
		if u16(t, 0) == 4 {
			return t[:u16(t, 2)]
		}
	}
	panic("font: no map of the basic plane")
}

// nearRunes is how many runes a face keeps the glyphs of: Latin letters, marks, fractions and arrows are among them.
const nearRunes = 0x2200

// index returns the glyph of a rune, 0 where the face has none.
func (f *Face) index(r rune) int {
	if 0 <= r && r < nearRunes {
		return int(f.near[r])
	}
	return f.search(r)
}

// search looks the glyph of a rune up in the font's own table.
func (f *Face) search(r rune) int {
	if r < 0 || r > 0xFFFF {
		return 0
	}
	t, n := f.cmap, int(u16(f.cmap, 6)) // n is twice the number of segments
	lo, hi := 0, n/2
	for lo < hi {
		if m := (lo + hi) / 2; rune(u16(t, 14+2*m)) < r {
			lo = m + 1
		} else {
			hi = m
		}
	}
	if 2*lo >= n {
		return 0
	}
	start := rune(u16(t, 16+n+2*lo))
	if r < start {
		return 0
	}
	delta, at := u16(t, 16+2*n+2*lo), 16+3*n+2*lo
	offset := int(u16(t, at))
	if offset == 0 {
		return int(uint16(r) + delta)
	}
	g := u16(t, at+offset+2*int(r-start))
	if g == 0 {
		return 0
	}
	return int(g + delta)
}

// advance returns how far the pen moves on, in font units.
func (f *Face) advance(glyph int) int {
	return int(u16(f.hmtx, 4*min(glyph, f.metrics-1)))
}

// record returns the outline record of a glyph, empty for one without ink.
func (f *Face) record(glyph int) []byte {
	if f.longLoca {
		return f.glyf[u32(f.loca, 4*glyph):u32(f.loca, 4*glyph+4)]
	}
	return f.glyf[2*int(u16(f.loca, 2*glyph)) : 2*int(u16(f.loca, 2*glyph+2))]
}

// ink returns the box of a glyph in font units, y up; four zeros without ink.
func (f *Face) ink(glyph int) (x0, y0, x1, y1 int) {
	g := f.record(glyph)
	if len(g) < 10 {
		return 0, 0, 0, 0
	}
	return int(int16(u16(g, 2))), int(int16(u16(g, 4))), int(int16(u16(g, 6))), int(int16(u16(g, 8)))
}

func u16(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }

func u32(b []byte, at int) uint32 { return binary.BigEndian.Uint32(b[at:]) }
