package face

import (
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// All lines of a wall are figured at the level line, from where the wall's left corner crosses it. At the floor, where a wall
// is measured, the corner stands behind the base, and over a lean every figure from there would need adding.

// At is how far right of the datum a place of the wall stands; negative left of it.
func (f *Face) At(x L) L { return x - f.Datum }

// AtLevel reports whether the level line crosses the wall's left corner, so that the datum is there; else it is at the floor.
func (f *Face) AtLevel() bool { return f.crosses(false) }

// crosses reports whether the level line crosses an end of the wall.
func (f *Face) crosses(right bool) bool {
	x := f.Left
	if right {
		x = f.Right
	}
	level := f.room.Space.LevelLine
	return level > room.AtRight(f.W.Floor, x) && level < room.At(f.W.Ceiling, x)
}

// End is the x at which the level line ends at the wall's right corner, rounded as the datum is; of a corner that it does not
// cross, where that stands at the floor.
func (f *Face) End() L {
	if !f.crosses(true) {
		return f.Right
	}
	return f.Right + length.StyleOf(f.room.Project.Units).Round(f.W.LeanAt(true, f.room.Space.LevelLine))
}

// Lengths are how long the wall is at the floor, where it is measured, and from 0, as its end is figured: they differ where its
// ends lean. Level is false where the level line does not come to both its ends.
func (f *Face) Lengths() (floor, end L, level bool) {
	floor = f.W.Length
	if f.Run.Up || f.Left != 0 || f.Right != floor {
		return floor, floor, true
	}
	return floor, f.At(f.End()), f.crosses(false) && f.crosses(true)
}

// Slant is an edge that is not plumb: how far right of the wall's left corner it is at three heights, of the corner at each.
type Slant struct{ Foot, Level, Head L }

// Slanted is how the right edge of a sheet that comes round the left corner runs on this wall, false where it is plumb. The
// sheet is plumb on the wall where its line was struck; past a corner whose two walls lean differently it is not. Foot and head
// are those of the covering.
func (f *Face) Slanted(h *Hang) (Slant, bool) {
	if !h.Before || f.Run.Up || h.Seam == nil {
		return Slant{}, false
	}
	skew := L(0)
	for i := range f.Run.Corners {
		if c := &f.Run.Corners[i]; c.Sheet == h.Place && f.passed(h, c.At) {
			skew += c.Skew
		}
	}
	if skew == 0 {
		return Slant{}, false
	}
	at := func(z L) L { return h.Line - f.W.Part(skew, false, z) - f.W.LeanAt(false, z) }
	foot, head := f.Cover(f.Left)
	return Slant{at(foot), at(f.room.Space.LevelLine), at(head)}, true
}

// passed reports whether a sheet has gone round a corner of the run when it comes to this wall.
func (f *Face) passed(h *Hang, corner L) bool {
	left := h.Sheet().Left
	for f.Run.Closed && corner < left {
		corner += f.Run.Length
	}
	return corner <= f.Left-h.Turn
}

// Witness is a line from floor to ceiling that stands in for a start line which cannot be struck so.
type Witness struct {
	X    L
	By   L // right of the start line; negative left of it
	Over *room.Opening
}

// clearOf is how far a witness line keeps clear of openings and of what is set in the wall.
const clearOf = 2 * length.Inch

// Witness is the witness line of a first sheet whose start line stands over or under an opening: a whole number of feet, or of
// 100 mm, away, the nearest where the wall is whole from floor to ceiling. Nil where the start needs none, or has none.
func (f *Face) Witness(h *Hang) *Witness {
	if !h.Opens {
		return nil
	}
	var over *room.Opening
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; o.FromLeft <= h.Start && h.Start <= o.Right() {
			over = o
		}
	}
	if over == nil {
		return nil
	}
	step := length.Foot
	if f.room.Project.Units == length.Millimetres {
		step = 100 * length.Millimetre
	}
	for by := step; by < f.Right-f.Left; by += step {
		for _, by := range []L{by, -by} {
			if x := h.Start + by; f.intact(x) {
				return &Witness{x, by, over}
			}
		}
	}
	return nil
}

// intact reports whether nothing is open or set in the wall at x, or near it.
func (f *Face) intact(x L) bool {
	if x < f.Left+clearOf+max(f.W.LeanLeft, 0) || x > f.Right-clearOf+min(f.W.LeanRight, 0) {
		return false
	}
	off := func(from, to L) bool { return x < from-clearOf || x > to+clearOf }
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; !off(o.FromLeft, o.Right()) {
			return false
		}
	}
	for _, b := range f.W.Bare {
		if !off(b.From, b.To) {
			return false
		}
	}
	for _, b := range f.W.Boxes {
		if !off(b.X-b.PlateWidth/2, b.X+b.PlateWidth/2) {
			return false
		}
	}
	return true
}
