package pole

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// Strips on their page, in mm.
const (
	stripHigh  = 55
	stripPitch = 57
	stripHead  = 11.0 // over the first: what is on the page
	stripFoot  = 13.0 // under the last: bars to check the print by
	stripEnds  = 4.5  // left and right of one: the crosses by which it is joined
	stripStep  = 10   // strips are so many mm long, or a multiple
)

// stripPages draws the strips of one pole, as long and as many to a page as the paper takes.
func stripPages(c *folio.TapedSet, p pole, n int) []*scene.Page {
	w, h := c.Paper.Landscape()
	long := L(math.Floor((w-2*folio.TapedBorder-2*stripEnds)/stripStep)*stripStep) * length.Millimetre
	rows := max(int((h-2*folio.TapedBorder-stripHead-stripFoot+stripPitch-stripHigh)/stripPitch), 1)
	count := int(length.CeilDiv(max(p.to-p.from, 1), long))
	var out []*scene.Page
	var b *poleBoard
	for i := range count {
		if i%rows == 0 {
			x := (w - long.MM()) / 2
			page, g := c.Strip(n+len(out), w, h, x, "pole", c.Words.Say("pole.page", p.title), c.Words.Say("pole.head_one", p.title))
			b = &poleBoard{TapedSet: c, page: page, left: x, top: page.Frame.Y0 + stripHead}
			b.bars(g, rows)
			out = append(out, page)
		}
		b.strip(p, part{i, count, long, i % rows})
	}
	return out
}

// part is one strip of a pole: which of how many, how long they are, and which row of its page it stands in.
type part struct {
	index, count int
	long         L
	row          int
}

// rollPages draws poles one over the other on pieces of a roll, each in one strip, or in as few as its longest piece allows.
func rollPages(c *folio.TapedSet, poles []pole, n int) []*scene.Page {
	const ends = folio.TapedBorder + stripEnds
	most := L(c.Paper.Pole.Longest-2*ends) * length.Millimetre
	rows := max(int((c.Paper.Pole.Roll-2*folio.TapedBorder-stripHead-stripFoot+stripPitch-stripHigh)/stripPitch), 1)
	type strip struct {
		pole pole
		part part
	}
	var list []strip
	for _, p := range poles {
		count := int(length.CeilDiv(max(p.to-p.from, 1), most))
		long := length.CeilDiv(max(p.to-p.from, 1), L(count)*length.Millimetre)
		for i := range count {
			list = append(list, strip{p, part{i, count, L(long) * length.Millimetre, 0}})
		}
	}
	var out []*scene.Page
	for here := range slices.Chunk(list, rows) {
		longest, titles := leastRoll*length.Millimetre, []string{}
		for _, s := range here {
			longest = max(longest, s.part.long)
			titles = append(titles, s.pole.title)
		}
		words := strings.Join(slices.Compact(titles), "; ")
		high := 2*folio.TapedBorder + stripHead + stripFoot + stripPitch*float64(len(here)) - (stripPitch - stripHigh)
		page, g := c.Strip(n+len(out), longest.MM()+2*ends, max(high, c.Paper.Pole.Roll), ends, "pole", c.Words.Say("pole.pages", words), c.Words.Say("pole.head_many", words))
		b := &poleBoard{TapedSet: c, page: page, left: ends, top: page.Frame.Y0 + stripHead}
		b.bars(g, len(here))
		for i, s := range here {
			s.part.row = i
			b.strip(s.pole, s.part)
		}
		out = append(out, page)
	}
	return out
}

// leastRoll is the least length of a piece, so that what is said of it has room, in mm.
const leastRoll = 270
