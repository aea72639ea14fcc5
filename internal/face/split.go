package face

import (
	"slices"
	"sort"

	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// Piece is what of a wall stands on one page: all of it, or from match line to match line.
type Piece struct {
	Face      *Face
	Index, Of int
	From, To  L       // x; the wall's ends, or match lines
	Hangs     []*Hang // on it, from left to right; with horizontal grain from the floor up
}

// Split parts a wall into as few pieces as hold no more than a number of sheets each. They meet at match lines through
// the middle of a sheet, which stands on both, over an opening where one is near. Bands are not parted.
//
// The elevations of the architect are parted by their width on paper instead, at match lines of the same kind.
func (f *Face) Split(most int) []*Piece {
	if f.Run.Up {
		return []*Piece{{Face: f, Of: 1, From: f.Left, To: f.Right, Hangs: f.Hangs}}
	}
	order := slices.Clone(f.Hangs)
	sort.SliceStable(order, func(i, j int) bool { return order[i].From < order[j].From })
	n, count := len(order), 1
	for n+count-1 > most*count {
		count++
	}
	var cuts []int // indices of the sheets that are cut through
	for k := 1; k < count; k++ {
		low := 1
		if len(cuts) > 0 {
			low = cuts[len(cuts)-1] + 1
		}
		// what is left has to stand on the pieces that are left
		least, last := n-1-(most-1)*(count-k), low+most-2
		if k == 1 {
			last = most - 1
		}
		cuts = append(cuts, f.cut(order, n*k/count, max(low, least), min(last, n-2)))
	}
	var list []*Piece
	from, start := f.Left, 0
	for i := range count {
		p := &Piece{Face: f, Index: i, Of: count, From: from, To: f.Right}
		end := n
		if i < len(cuts) {
			p.To, end = order[cuts[i]].Middle(), cuts[i]+1
		}
		p.Hangs = order[start:end]
		list = append(list, p)
		from, start = p.To, end-1
	}
	return list
}

// notOpen is by how many sheets a match line may leave the place that was wanted to come over an opening, where it cuts
// through the least.
const notOpen = 3

// cut chooses the sheet from low to high through whose middle a match line runs: over an opening, near to where it was
// wanted.
func (f *Face) cut(order []*Hang, want, low, high int) int {
	best, cost := min(max(want, low), high), 1<<30
	for i := low; i <= high; i++ {
		d := max(want-i, i-want)
		if !f.Open(order[i].Middle()) {
			d += notOpen
		}
		if d < cost {
			best, cost = i, d
		}
	}
	return best
}

// LeftCut reports whether the piece begins at a match line.
func (p *Piece) LeftCut() bool { return p.Index > 0 }

// RightCut reports whether the piece ends at a match line.
func (p *Piece) RightCut() bool { return p.Index < p.Of-1 }

// MatchLines are the places at which the wall goes on on another page.
func (p *Piece) MatchLines() []L {
	var list []L
	if p.LeftCut() {
		list = append(list, p.From)
	}
	if p.RightCut() {
		list = append(list, p.To)
	}
	return list
}

// Here reports whether the right edge of a sheet is on this piece.
func (p *Piece) Here(h *Hang) bool { return !p.RightCut() || h.X <= p.To }

// StartsHere reports whether the left edge of a sheet is on this piece.
func (p *Piece) StartsHere(h *Hang) bool { return !p.LeftCut() || h.From >= p.From }

// Span is what a sheet covers of this piece.
func (p *Piece) Span(h *Hang) (a, b L) { return max(h.From, p.From), min(h.To, p.To) }

// Boxes are the boxes of the wall on this piece. One on a match line stands on the piece right of it.
func (p *Piece) Boxes() []Box {
	return slices.DeleteFunc(p.Face.Boxes(), func(b Box) bool { return b.X < p.From || b.X >= p.To && p.RightCut() })
}

// Part is what of a shape of the wall stands on this piece.
func (p *Piece) Part(s shape.Wall) []shape.Polygon {
	column := 0
	if p.LeftCut() {
		column = 1
	}
	return shape.Grid(s, p.MatchLines(), nil)[column][0]
}

// Extremes are the lowest and the highest point of the piece's outline, between its two ends. Low and High of a face are
// those of the whole wall as it was measured, also beyond an eased corner.
func (p *Piece) Extremes() (low, high L) {
	w := p.Face.W
	low, high = room.AtRight(w.Floor, p.From), room.AtRight(w.Ceiling, p.From)
	take := func(profile []room.Point) {
		for _, q := range profile {
			if q.X >= p.From && q.X <= p.To {
				low, high = min(low, q.Z), max(high, q.Z)
			}
		}
		for _, x := range []L{p.From, p.To} {
			for _, z := range []L{room.At(profile, x), room.AtRight(profile, x)} {
				low, high = min(low, z), max(high, z)
			}
		}
	}
	take(w.Floor)
	take(w.Ceiling)
	return low, high
}
