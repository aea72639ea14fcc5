package layout

import (
	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// plumb is what woodwork may be hung on: walls out of plumb by no more than a quarter of an inch in twelve feet
// (Architectural Woodwork Standards, ed. 1, 6.1.10.1: "1/4 in in 144 in"), in a metric room 6 mm in 3600. From twice that on a
// wall should be put right first (common practice, no source).
func (b *builder) plumb() (within, much, over L) {
	if b.room.Project.Units == length.Millimetres {
		return 6 * length.Millimetre, 12 * length.Millimetre, 3600 * length.Millimetre
	}
	return length.Inch / 4, length.Inch / 2, 144 * length.Inch
}

// judgeLeans names the wall ends that are out of plumb by more than woodwork is made for. An end that only follows the
// wall beside it across their corner is said once, at that one.
func (b *builder) judgeLeans(i int) {
	for _, st := range b.plan.Runs[i].Walls {
		w := &b.room.Walls[st.Wall]
		if w.LeanLeftGiven {
			b.lean(st.Wall, "left", w.LeanLeft, 0, room.AtRight(w.Ceiling, 0)-room.AtRight(w.Floor, 0))
		}
		b.lean(st.Wall, "right", w.LeanRight, w.Length, room.At(w.Ceiling, w.Length)-room.At(w.Floor, w.Length))
	}
}

// lean says how far the end of a wall leans, where that is too far for its height.
func (b *builder) lean(wall int, side string, lean, x, high L) {
	if high <= 0 {
		return
	}
	within, much, over := b.plumb()
	code, limit := finding.LeansMuch, much
	rate := length.MulDiv(lean.Abs(), over, high)
	switch {
	case rate <= within:
		return
	case rate <= much:
		code, limit = finding.Leans, within
	}
	f := finding.Finding{Place: b.wallPlace(wall), Wall: wall, At: x, Measured: ptr(rate), Required: ptr(limit)}
	to := "right"
	if lean < 0 {
		to = "left"
	}
	b.say(code, f, finding.Slots{"wall": b.room.Walls[wall].Name, "side": side, "lean": b.style.Words(lean.Abs()), "to": to,
		"high": b.style.Words(high), "over": b.style.Words(over),
		"usual": b.style.Words(within), "source": "AWS 6.1.10.1"})
}
