package elevation

import (
	"math"
	"slices"

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
	unnoted  bool // too high for notes at the head of its page: they stand on the page of its list
	low      bool // too high for a row of numbers under it: those of the lowest of several courses stand in the field
}

// Scales that follow on the office's where a wall is too high for all of them, in an inch room and in a metric one, and the
// smallest at which an elevation is read without a glass.
//
// Source: scales of a US architect's rule, elevations at 3/8" = 1'-0" and more; ISO 5455:1979 clause 5.1, 1:50.
var (
	smaller       = []int64{64, 96, 128, 192, 384}
	smallerMetric = []int64{100, 200, 500, 1000}
)

const (
	readable       = 32
	readableMetric = 50
)

// scales are those of a set, the largest drawing first, and how many of them can be read well.
func scales(s *folio.Set) (list []int64, well int) {
	t := s.Paper.Elevation
	office, more, limit := t.Inch, smaller, int64(readable)
	if s.Metric() {
		office, more, limit = t.Metric, smallerMetric, readableMetric
	}
	list = slices.Clone(office)
	for _, m := range more {
		if m > list[len(list)-1] {
			list = append(list, m)
		}
	}
	for well < len(list) && list[well] <= limit {
		well++
	}
	return list, well
}

// CutWalls chooses the scale of every covered wall and how it is parted. Walls of a room are compared, so they are drawn at one
// scale: the largest at which each of them stands. Only a wall that does not stand at it has its own.
func CutWalls(s *folio.Set) map[int][]Cut {
	return folio.Planned(s, "cuts", func() map[int][]Cut { return cutWalls(s) })
}

func cutWalls(s *folio.Set) map[int][]Cut {
	cuts := map[int][]Cut{}
	list, well := scales(s)
	common := int64(0)
	faces := s.Faces
	for _, f := range faces {
		own := cutWall(s, f, list, well)
		cuts[f.Wall] = own
		if well > 0 && own[0].Scale <= list[well-1] || well == 0 {
			common = max(common, own[0].Scale)
		}
	}
	for _, f := range faces {
		if own := cuts[f.Wall]; own[0].Scale < common {
			if at := standing(s, f, Cut{Scale: common, lean: own[0].lean, unnoted: own[0].unnoted, low: own[0].low}, 1, len(own)); at != nil {
				cuts[f.Wall] = at
			}
		}
	}
	return cuts
}

// CutWall is what CutWalls chooses for one wall.
func CutWall(s *folio.Set, f *face.Face) []Cut { return CutWalls(s)[f.Wall] }

// cutWall chooses the scale of a wall by itself and how it is parted. It takes the first with which every page stands:
//
//  1. The wall whole at each scale that is read well, the largest first: a reader sees most on it; then, where no parting would help
//     against the height of several courses, without a row of numbers under it.
//  2. In pieces at one of them, the fewest first, for at each match line a reader turns the page; no more than two pages for each
//     that a smaller scale would take.
//  3. The same without the heights of openings, which their enlargements have too, whole and in pieces.
//  4. The same with the notes on a page of their own.
//  5. At a smaller scale, the largest first, on the fewest pages, giving up the same.
//  6. The wall whole without all of that, at the smallest scale: no paper takes it, but it is drawn all the same.
func cutWall(s *folio.Set, f *face.Face, list []int64, well int) []Cut {
	for _, low := range []bool{false, true} {
		for _, scale := range list[:well] {
			if whole := standing(s, f, Cut{Scale: scale, low: low}, 1, 1); whole != nil {
				return whole
			}
		}
	}
	small := cutSmall(s, f, list[well:])
	most := 2 * max(len(small), 1)
	for _, how := range ways {
		for n := 1; n <= most; n++ {
			for _, scale := range list[:well] {
				how.Scale = scale
				if cuts := standing(s, f, how, n, n); cuts != nil {
					return cuts
				}
			}
		}
	}
	if small != nil {
		return small
	}
	return pieces(f, 1, f.Right-f.Left, Cut{Scale: list[len(list)-1], lean: true, unnoted: true})
}

// ways are what a view gives up for a larger scale, one after the other.
var ways = []Cut{{}, {lean: true}, {unnoted: true}, {lean: true, unnoted: true}}

// cutSmall parts a wall at the largest of some scales at which it stands in any number of pieces, in the way that takes the fewest
// pages.
func cutSmall(s *folio.Set, f *face.Face, list []int64) []Cut {
	for _, scale := range list {
		var best []Cut
		fewest := 0
		for _, how := range ways {
			how.Scale = scale
			cuts, per := standing(s, f, how, 1, 0), 1
			if how.unnoted {
				per = 2
			}
			if pages := per * len(cuts); cuts != nil && (best == nil || pages < fewest) {
				best, fewest = cuts, pages
			}
		}
		if best != nil {
			return best
		}
	}
	return nil
}

// standing parts a wall into the fewest pieces that stand on a page each, at the least and at the most so many, nil where none do;
// with no most as many as may help.
func standing(s *folio.Set, f *face.Face, how Cut, least, most int) []Cut {
	t := s.Paper.Elevation
	if (f.High-f.Low).MM()/float64(how.Scale) > t.Height { // parting does not help against height
		return nil
	}
	widest := L(t.Width * float64(how.Scale) * float64(length.Millimetre))
	need := max(int((f.Right-f.Left+widest-1)/widest), 1)
	if need > mostPieces { // a template that asks for the absurd
		return nil
	}
	if most == 0 {
		most = 2*need + morePieces
	}
	for n := max(least, need); n <= most; n++ {
		cuts := pieces(f, n, widest, how)
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

// mostPieces is more than the longest wall takes on the smallest paper.
const mostPieces = 100

// pieces parts a long wall into so many, alike but for where their match lines can stand.
func pieces(f *face.Face, n int, most L, how Cut) []Cut {
	wide := f.Right - f.Left
	var cuts []Cut
	from := f.Left
	for i := 1; i < n; i++ {
		ideal := f.Left + wide*L(i)/L(n)
		at := matchLine(f, ideal, max(from+wide/L(4*n), f.Right-L(n-i)*most), min(from+most, f.Right-wide/L(4*n)))
		how.From, how.To = from, at
		cuts = append(cuts, how)
		from = at
	}
	how.From, how.To = from, f.Right
	return append(cuts, how)
}

// stands reports whether the view of a piece with all its dimensions stands on a page.
func stands(s *folio.Set, f *face.Face, c Cut, i, of int) bool {
	e := trial(s, wallView{f: f, cut: c, piece: i, of: of})
	return e.compose(headNotes(e.Board, []*View{e}))
}

// Scratch is a page that is thrown away: to see what would stand on one.
func Scratch(s *folio.Set) *folio.Board {
	return &folio.Board{Set: s, Leaf: &folio.Leaf{Number: s.Paper.PageNumber(int(folio.Elevations), 1)}, Page: scene.NewPage("", "", 1, 1), Space: draft.NewSpace(scene.Box{}), Field: folio.BoxOf(s.Paper.Field)}
}

// trial is a view on a page that is thrown away.
func trial(s *folio.Set, v wallView) *View {
	plan := *s
	plan.List = nil
	b := Scratch(&plan)
	b.Leaf.Wall = v.f.Wall
	e := &View{Board: b, F: v.f, From: v.cut.From, To: v.cut.To, Piece: v.piece, Of: v.of, middle: s.Paper.Elevation.Middle}
	e.be(v.cut)
	return e
}

// be makes a view one of a cut.
func (e *View) be(c Cut) { e.V.Scale, e.lean, e.unnoted, e.low = c.Scale, c.lean, c.unnoted, c.low }

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
