package layout

import (
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/shape"
)

// judgePieces names the sheets of which so little is on the wall that it cannot be hung straight, though the sheet itself is wide
// enough: low ones over a landing or over an opening, and what an opening leaves of one at its side.
func (b *builder) judgePieces(i int) {
	r, least := &b.plan.Runs[i], b.room.Rules.LeastWidth
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Hung || s.InGap || len(s.Pieces) == 0 || s.Width < least {
			continue
		}
		var high, wide L
		for _, p := range s.Pieces {
			low, top := p.Outline[0].X, p.Outline[0].X
			for _, q := range p.Outline {
				low, top = min(low, q.X), max(top, q.X)
			}
			high, wide = max(high, tallest(p.Outline)), max(wide, top-low)
		}
		measured, way := high, "high"
		if wide < high {
			measured, way = wide, "wide"
		}
		if measured >= least {
			continue
		}
		wall, x := b.sheetAt(r, s)
		b.say(finding.PieceThin, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x, Measured: ptr(measured), Required: ptr(least)},
			finding.Slots{"sheet": SheetWords(s), "wall": b.room.Walls[wall].Name, "way": way})
	}
}

// tallest is the greatest height of an outline straight up at any place of it: its sides are straight, so that it is reached beside a
// corner.
func tallest(o shape.Outline) L {
	most := L(0)
	for _, at := range o {
		for _, right := range []bool{true, false} {
			zs := crossings(o, at.X, right)
			for k := 0; k+1 < len(zs); k += 2 {
				most = max(most, zs[k+1]-zs[k])
			}
		}
	}
	return most
}

// crossings are the heights at which the sides of an outline are crossed just right of x, or just left of it, from the lowest.
func crossings(o shape.Outline, x L, right bool) []L {
	var zs []L
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if a.X > b.X {
			a, b = b, a
		}
		if right && a.X <= x && x < b.X || !right && a.X < x && x <= b.X {
			zs = append(zs, a.Z+length.MulDiv(b.Z-a.Z, x-a.X, b.X-a.X))
		}
	}
	slices.Sort(zs)
	return zs
}
