package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// Cut is one piece of a wall on one page.
type Cut struct {
	From, To L
	Scale    int64
	lean     bool // too crowded for the heights of its openings: their enlargements have them
}

// CutWall chooses the scale of a wall and how it is parted. It takes the first with which every page stands:
//
//  1. The wall whole at each of the office's scales, the largest first: a reader sees most on it.
//  2. In pieces at the smallest of them, doubled until the height of the wall stands on the paper: parting does not help
//     against height. The fewest pieces, for at each match line a reader turns the page.
//  3. The same without the heights of openings, which their enlargements have too.
//  4. Twice at half the scale, with them and without.
//  5. The wall whole without them, at the scale after that: no paper takes it, but it is drawn all the same.
func CutWall(s *folio.Set, f *face.Face) []Cut {
	t := s.Paper.Elevation
	scales := t.Inch
	if s.Metric() {
		scales = t.Metric
	}
	wide, high := f.Right-f.Left, f.High-f.Low
	onPaper := func(l L, scale int64) float64 { return l.MM() / float64(scale) }
	for _, scale := range scales {
		whole := Cut{f.Left, f.Right, scale, false}
		if onPaper(high, scale) <= t.Height && onPaper(wide, scale) <= t.Width && stands(s, f, whole, 0, 1) {
			return []Cut{whole}
		}
	}
	scale := scales[len(scales)-1]
	for onPaper(high, scale) > t.Height {
		scale *= 2
	}
	for range 1 + halvings {
		for _, lean := range []bool{false, true} {
			if cuts := standing(s, f, scale, lean); cuts != nil {
				return cuts
			}
		}
		scale *= 2
	}
	return pieces(s, f, 1, f.Right-f.Left, scale, true) // no paper takes it: draw it all the same
}

// halvings is how often the scale is halved for a wall that stands on no page in any number of pieces.
const halvings = 2

// standing parts a wall into the fewest pieces that stand on a page each, nil where none do.
func standing(s *folio.Set, f *face.Face, scale int64, lean bool) []Cut {
	wide := f.Right - f.Left
	most := L(s.Paper.Elevation.Width * float64(scale) * float64(length.Millimetre))
	least := max(int((wide+most-1)/most), 1)
	for n := least; n <= 2*least+morePieces; n++ {
		cuts := pieces(s, f, n, most, scale, lean)
		ok := true
		for i, c := range cuts {
			ok = ok && stands(s, f, c, i, len(cuts))
		}
		if ok {
			return cuts
		}
	}
	return nil
}

// morePieces is how many pieces are tried over twice the number that the width of the wall asks for: narrower ones do not
// stand either, for their dimensions are as wide.
const morePieces = 6

// pieces parts a long wall into so many, alike but for where their match lines can stand.
func pieces(s *folio.Set, f *face.Face, n int, most L, scale int64, lean bool) []Cut {
	wide := f.Right - f.Left
	var cuts []Cut
	from := f.Left
	for i := 1; i < n; i++ {
		ideal := f.Left + wide*L(i)/L(n)
		at := matchLine(f, ideal, max(from+wide/L(4*n), f.Right-L(n-i)*most), min(from+most, f.Right-wide/L(4*n)))
		cuts = append(cuts, Cut{from, at, scale, lean})
		from = at
	}
	return append(cuts, Cut{from, f.Right, scale, lean})
}

// stands reports whether the view of a piece with all its dimensions stands on a page.
func stands(s *folio.Set, f *face.Face, c Cut, i, of int) bool {
	e := trial(s, wallView{f: f, cut: c, piece: i, of: of})
	return e.compose(Notes(e.Board, pageNotes([]*View{e})))
}

// trial is a view on a page that is thrown away.
func trial(s *folio.Set, v wallView) *View {
	plan := *s
	plan.List = nil
	b := &folio.Board{Set: &plan, Leaf: &folio.Leaf{Wall: v.f.Wall}, Page: scene.NewPage("", "", 1, 1), Space: draft.NewSpace(scene.Box{}), Field: folio.BoxOf(s.Paper.Field)}
	e := &View{Board: b, F: v.f, From: v.cut.From, To: v.cut.To, Piece: v.piece, Of: v.of, middle: s.Paper.Elevation.Middle}
	e.V.Scale, e.lean = v.cut.Scale, v.cut.lean
	return e
}

// overOpening is how many times as far from the ideal a match line may stand where it runs over an opening: it crosses
// less covering there.
const overOpening = 4

// matchLine finds where to part a long wall: the middle of a sheet, over an opening if there is one, near the ideal.
func matchLine(f *face.Face, ideal, least, most L) L {
	best, cost := ideal, L(math.MaxInt64)
	for _, p := range f.Parts {
		m := (p.From + p.To) / 2
		if m < least || m > most {
			continue
		}
		c := (m - ideal).Abs()
		if f.Open(m) {
			c /= overOpening
		}
		if c < cost {
			best, cost = m, c
		}
	}
	return min(max(best, least), max(least, most))
}
