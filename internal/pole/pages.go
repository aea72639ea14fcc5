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
	stripFoot  = 13.0 // under the last: bars to check the print by, and how strips are set
	howUnder   = 7.6  // from the bars to the baseline of that
	stripEnds  = 4.5  // left and right of one: the crosses by which it is joined
	stripStep  = 10   // where the room is metric, strips are so many mm long, or a multiple, and begin so; else whole inches
)

// stripPages draws the strips of one pole, as long and as many to a page as the paper takes.
func stripPages(c *folio.TapedSet, p pole, n int) []*scene.Page {
	w, h := c.Paper.Landscape()
	step := stripStep * length.Millimetre
	if !c.Metric() {
		step = length.Inch
	}
	long := L(math.Floor((w-2*folio.TapedBorder-2*stripEnds)/step.MM())) * step
	rows := max(int((h-2*folio.TapedBorder-stripHead-stripFoot+stripPitch-stripHigh)/stripPitch), 1)
	list := p.stretches(long, step)
	var out []*scene.Page
	var b *poleBoard
	for i, s := range list {
		if i%rows == 0 {
			x := (w - long.MM()) / 2
			page, g := c.Strip(n+len(out), w, h, x, "pole", c.Words.Say("pole.page", p.title), c.Words.Say("pole.head_one", p.title))
			b = &poleBoard{TapedSet: c, page: page, left: x, top: page.Frame.Y0 + stripHead}
			b.bars(g, rows)
			if parted(list) {
				b.text(g, scene.Pt(x, b.barsAt(rows)+howUnder), c.Words.Say("pole.how"), folio.TapedSmall, true, scene.Start)
			}
			out = append(out, page)
		}
		b.strip(p, part{index: i, count: len(list), from: s.from, long: long, row: i % rows, left: s.joined, right: i+1 < len(list) && list[i+1].joined, set: i > 0 && !s.joined})
	}
	return out
}

// parted reports whether something is left out between strips.
func parted(list []stretch) bool {
	for _, s := range list[1:] {
		if !s.joined {
			return true
		}
	}
	return false
}

// part is one strip of a pole: which of how many, what it carries, which row of its page it stands in, at which ends it is joined to
// another, and whether its left end is set at a figure.
type part struct {
	index, count     int
	from, long       L
	row              int
	left, right, set bool
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
			long := L(long) * length.Millimetre
			list = append(list, strip{p, part{index: i, count: count, from: p.from + L(i)*long, long: long, left: i > 0, right: i+1 < count}})
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
