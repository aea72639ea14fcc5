package room

import "flitchlay/internal/length"

// LeanAt is how far an end of the wall has moved to the right from the floor up to a height: nothing at the floor, all of the
// lean at the ceiling, and past them on along the same line.
func (w *Wall) LeanAt(right bool, z L) L {
	if right {
		return w.Part(w.LeanRight, right, z)
	}
	return w.Part(w.LeanLeft, right, z)
}

// Part is how much of what an upright moves by from floor to ceiling it has moved by at a height, at an end of the wall.
func (w *Wall) Part(whole L, right bool, z L) L {
	floor, ceiling := AtRight(w.Floor, 0), AtRight(w.Ceiling, 0)
	if right {
		floor, ceiling = At(w.Floor, w.Length), At(w.Ceiling, w.Length)
	}
	if whole == 0 || ceiling <= floor {
		return 0
	}
	return length.MulDiv(whole, z-floor, ceiling-floor)
}

// Datum is the point of a wall from which all figures of its lines run: the x at which its left corner crosses the level line,
// rounded as lengths are printed, so that figures are as far apart as the lines. Where the floor stands over the level line
// there, or the ceiling under it, it is the corner at the floor, x = 0.
func (r *Room) Datum(wall int) L {
	w := &r.Walls[wall]
	level := r.Space.LevelLine
	if level <= AtRight(w.Floor, 0) || level >= AtRight(w.Ceiling, 0) {
		return 0
	}
	return length.StyleOf(r.Project.Units).Round(w.LeanAt(false, level))
}

// offDatum takes what was read of the sheets that hang, at the level line from the datum of their walls as the figures of their
// lines run, to where all else of a room is measured from.
func (r *Room) offDatum() {
	for i := range r.Hung {
		h := &r.Hung[i]
		by := r.Datum(h.Wall)
		h.Seam, h.Top = h.Seam+by, h.Top+by
		if h.Left != nil {
			left := *h.Left + by
			h.Left = &left
		}
	}
}
