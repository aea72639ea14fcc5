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
