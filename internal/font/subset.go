package font

import (
	"encoding/binary"
	"slices"
	"unicode/utf16"
)

// Flags of a part of a composite glyph.
//
// Source: OpenType specification, glyf table.
const (
	partWordArgs     = 0x0001
	partScale        = 0x0008
	partMore         = 0x0020
	partXYScale      = 0x0040
	partTwoByTwo     = 0x0080
	partInstructions = 0x0100
)

// Runes returns the runes of some texts, each once, ascending.
func Runes(texts ...string) []rune {
	var seen [0x10000 / 64]uint64
	n := 0
	for _, s := range texts {
		for _, r := range s {
			if r >= 0 && r <= 0xFFFF && seen[r/64]&(1<<(r%64)) == 0 {
				seen[r/64] |= 1 << (r % 64)
				n++
			}
		}
	}
	out := make([]rune, 0, n)
	for w, bits := range seen {
		for b := range 64 {
			if bits&(1<<b) != 0 {
				out = append(out, rune(w*64+b))
			}
		}
	}
	return out
}

// Subset returns a TrueType file with the glyphs of some runes only, under the name of the face. Hinting, kerning and positioning are
// left out, so that whoever draws with it sets text as it was measured.
func (f *Face) Subset(runes []rune) []byte {
	runes = slices.Clone(runes)
	slices.Sort(runes)
	runes = slices.Compact(runes)
	glyphs, to := f.closure(runes)
	glyf, loca, deepest := f.cut(glyphs, to)
	hmtx := make([]byte, 0, 4*len(glyphs))
	widest := 0
	for _, g := range glyphs {
		adv := f.advance(g)
		x0, _, _, _ := f.ink(g)
		hmtx = be16(hmtx, adv, x0)
		widest = max(widest, adv)
	}

	head := slices.Clone(f.tables["head"])
	put16(head, 50, 1) // long offsets
	put32(head, 8, 0)
	hhea := slices.Clone(f.tables["hhea"])
	put16(hhea, 10, widest)
	put16(hhea, 34, len(glyphs))
	maxp := slices.Clone(f.tables["maxp"])
	put16(maxp, 4, len(glyphs))
	put16(maxp, 26, 0) // no instructions
	put16(maxp, 30, deepest)
	os2 := slices.Clone(f.tables["OS/2"])
	post := make([]byte, 32)
	copy(post, f.tables["post"][:32])
	put32(post, 0, 0x00030000) // no glyph names

	return assemble([]table{
		{"OS/2", os2},
		{"cmap", f.mapping(runes, to)},
		{"glyf", glyf},
		{"head", head},
		{"hhea", hhea},
		{"hmtx", hmtx},
		{"loca", loca},
		{"maxp", maxp},
		{"name", f.naming()},
		{"post", post},
	})
}

// closure returns the glyphs a subset needs, the parts of composites included, and where each comes to stand.
func (f *Face) closure(runes []rune) (glyphs []int, to map[int]int) {
	to = map[int]int{}
	add := func(g int) {
		if _, ok := to[g]; !ok {
			to[g] = len(glyphs)
			glyphs = append(glyphs, g)
		}
	}
	add(0)
	for _, r := range runes {
		if g := f.index(r); g != 0 {
			add(g)
		}
	}
	for i := 0; i < len(glyphs); i++ { // grows while it runs
		parts(f.record(glyphs[i]), func(at int, record []byte) { add(int(u16(record, at))) })
	}
	return glyphs, to
}

// parts visits the places where a composite record names another glyph.
func parts(record []byte, visit func(at int, record []byte)) (end int, flags uint16) {
	if len(record) < 10 || int16(u16(record, 0)) >= 0 {
		return 0, 0
	}
	at := 10
	for {
		flags = u16(record, at)
		visit(at+2, record)
		at += 4
		if flags&partWordArgs != 0 {
			at += 4
		} else {
			at += 2
		}
		switch {
		case flags&partScale != 0:
			at += 2
		case flags&partXYScale != 0:
			at += 4
		case flags&partTwoByTwo != 0:
			at += 8
		}
		if flags&partMore == 0 {
			return at, flags
		}
	}
}

// cut copies the outlines without their instructions and renames the parts of composites.
func (f *Face) cut(glyphs []int, to map[int]int) (glyf, loca []byte, deepest int) {
	deepest = 1
	for _, g := range glyphs {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		record := f.record(g)
		if len(record) < 10 {
			continue
		}
		from := len(glyf)
		if contours := int(int16(u16(record, 0))); contours >= 0 {
			at := 10 + 2*contours
			glyf = append(glyf, record[:at]...)
			glyf = append(glyf, 0, 0)
			glyf = append(glyf, record[at+2+int(u16(record, at)):]...)
		} else {
			end, _ := parts(record, func(int, []byte) {})
			glyf = append(glyf, record[:end]...)
			copied := glyf[from:]
			parts(copied, func(at int, _ []byte) {
				put16(copied, at, to[int(u16(copied, at))])
				put16(copied, at-2, int(u16(copied, at-2)&^partInstructions))
			})
			deepest = max(deepest, f.depth(g))
		}
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
	}
	return glyf, binary.BigEndian.AppendUint32(loca, uint32(len(glyf))), deepest
}

// depth is how many composites deep a glyph is.
func (f *Face) depth(g int) int {
	d := 0
	parts(f.record(g), func(at int, record []byte) { d = max(d, 1+f.depth(int(u16(record, at)))) })
	return d
}

// mapping writes a cmap of the basic plane: one segment for each stretch in which runes and glyphs run on together.
func (f *Face) mapping(runes []rune, to map[int]int) []byte {
	type segment struct{ start, end, glyph int }
	var segments []segment
	for _, r := range runes {
		g := f.index(r)
		if g == 0 || r == 0xFFFF {
			continue
		}
		n := len(segments)
		if n > 0 && int(r) == segments[n-1].end+1 && to[g] == segments[n-1].glyph+int(r)-segments[n-1].start {
			segments[n-1].end++
			continue
		}
		segments = append(segments, segment{int(r), int(r), to[g]})
	}
	segments = append(segments, segment{0xFFFF, 0xFFFF, 0x10000}) // the closing one, to glyph 0
	n := len(segments)
	search := 1
	for search*2 <= n {
		search *= 2
	}
	log := 0
	for 1<<(log+1) <= n {
		log++
	}
	t := be16(nil, 4, 16+8*n, 0, 2*n, 2*search, log, 2*(n-search))
	for _, s := range segments {
		t = be16(t, s.end)
	}
	t = be16(t, 0)
	for _, s := range segments {
		t = be16(t, s.start)
	}
	for _, s := range segments {
		t = be16(t, s.glyph-s.start)
	}
	for range segments {
		t = be16(t, 0)
	}
	// The same table serves Unicode (0, 3) and Windows (3, 1).
	return append(be16(nil, 0, 2, 0, 3, 0, 20, 3, 1, 0, 20), t...)
}

// naming writes the names of the subset: neutral ones, and the notice that the fonts' licence wants kept.
func (f *Face) naming() []byte {
	post := make([]rune, 0, len(f.name))
	for _, r := range f.name {
		if r != ' ' {
			post = append(post, r)
		}
	}
	names := []struct {
		id   int
		text string
	}{
		{0, "Subset of a typeface in part (c) 2003 by Bitstream, Inc., (c) 2006 by Tavmjong Bah; DejaVu changes are in public domain."},
		{1, f.name}, {2, "Regular"}, {3, f.name}, {4, f.name}, {6, string(post)},
	}
	head := be16(nil, 0, len(names), 6+12*len(names))
	var text []byte
	for _, n := range names {
		u := utf16.Encode([]rune(n.text))
		head = be16(head, 3, 1, 0x409, n.id, 2*len(u), len(text))
		for _, c := range u {
			text = be16(text, int(c))
		}
	}
	return append(head, text...)
}

type table struct {
	tag  string
	data []byte
}

// assemble writes a font file of tables, given in the order of their tags.
func assemble(tables []table) []byte {
	n := len(tables)
	search, log := 1, 0
	for search*2 <= n {
		search, log = search*2, log+1
	}
	out := be16([]byte{0, 1, 0, 0}, n, 16*search, log, 16*(n-search))
	at, head := 12+16*n, 0
	for _, t := range tables {
		if t.tag == "head" {
			head = at
		}
		out = append(out, t.tag...)
		out = binary.BigEndian.AppendUint32(out, sum(t.data))
		out = binary.BigEndian.AppendUint32(out, uint32(at))
		out = binary.BigEndian.AppendUint32(out, uint32(len(t.data)))
		at += (len(t.data) + 3) &^ 3
	}
	for _, t := range tables {
		out = append(out, t.data...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	// The whole file's sum, so that it comes to this constant of the OpenType specification.
	put32(out, head+8, 0xB1B0AFBA-sum(out))
	return out
}

func sum(b []byte) (s uint32) {
	for i := 0; i < len(b); i += 4 {
		var word [4]byte
		copy(word[:], b[i:])
		s += binary.BigEndian.Uint32(word[:])
	}
	return s
}

func be16(b []byte, values ...int) []byte {
	for _, v := range values {
		b = binary.BigEndian.AppendUint16(b, uint16(v))
	}
	return b
}

func put16(b []byte, at, v int) { binary.BigEndian.PutUint16(b[at:], uint16(v)) }

func put32(b []byte, at int, v uint32) { binary.BigEndian.PutUint32(b[at:], v) }
