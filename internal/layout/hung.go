package layout

import (
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// A raw edge that was read of a sheet tells its seam: half an overlap away, as a reading is decoded. A sheet that came narrower
// hangs by a line of its own, nearer to its seam by half of what it is short (measured); so its seam is nearer to its edge.

// shortage is by how much a hung sheet that came narrower is too narrow for its overlaps, or for the trim at a raw left end; at is
// the seam at its left, and to is where its right one would be if it were not. A whole sheet is short by what it came too narrow. One
// that is to cover less than a whole one, or begins at a raw end, is as wide as its two sides tell.
func (q *question) shortage(b *builder, h *room.Hung, at, to L, raw bool) L {
	gross, overlap := b.room.HungGross(h), b.room.Veneer.Overlap
	if gross >= b.room.Veneer.GrossWidth {
		return 0
	}
	past := overlap
	if raw {
		past = overlap.HalfDown() + L(q.TrimLeft)
	}
	whole := max(0, b.net+past-gross)
	if !raw && !q.Loses(int64(to+whole.HalfDown()-at)) {
		return whole
	}
	// seam = edge - o/2 + short/2, and short is what the seam asks more than there is
	return min(b.room.Veneer.GrossWidth-gross, max(0, 2*(to-at+past-gross)))
}

// began is where the seam at the left of the first hung sheet of a closed span is. Its raw left edge tells it with the other side:
// a sheet that is narrower there than it came was ripped, and laps over in full.
func (q *question) began(b *builder, line *run.Run, h *room.Hung, st run.Stretch) L {
	at := st.Shift
	if h.Left == nil {
		return line.Round(at)
	}
	at += *h.Left
	if gross := b.room.HungGross(h); h.Raw && gross < b.room.Veneer.GrossWidth {
		overlap := b.room.Veneer.Overlap
		short := max(0, b.net+overlap-gross)
		other, _ := line.Of(h.Wall)
		to := other.Shift + h.Seam
		for to <= at {
			to += line.Length
		}
		hangs := to - at + overlap // between its raw edges, by what was read
		if !h.Edge {
			hangs = to - at + overlap - short.HalfDown()
		}
		if gross-hangs < b.room.Rules.Snap {
			at -= short - short.HalfDown()
		}
	}
	return line.Round(at)
}
