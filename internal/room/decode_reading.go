package room

import "flitchlay/internal/source"

// reading is where the right side of one hung sheet was measured.
type reading struct {
	at          source.Value
	bottom, top L    // of the finished seam, whichever was read
	edge        bool // it was the raw edge that was read
	ok          bool
}

// word is what was read.
func (r reading) word() string {
	if r.edge {
		return "edge"
	}
	return "seam"
}

// Mends that tell an edge from a seam.
const (
	sidesRight = "edge is the sheet's raw right edge as it hangs, seam the finished joint, half an overlap left of it"
	sidesLeft  = "left_edge is the sheet's raw left edge as it hangs, left_seam the finished joint, half an overlap right of it"
)

// readings are those of one table, for so many sheets.
func (d *decoder) readings(v source.Value, sheets int) []reading {
	var keys []source.Value
	for _, name := range []string{"seam", "edge", "seams", "edges"} {
		if at := v.Get(name); at.Given() {
			keys = append(keys, at)
		}
	}
	many := func(at source.Value) bool { return at.Name() == "seams" || at.Name() == "edges" }
	switch {
	case len(keys) == 0:
		missing(v.Get("seam"), "a hung sheet")
		return []reading{{at: v.Get("seam")}}
	case len(keys) > 1 && many(keys[len(keys)-1]):
		keys[1].Mistake("keep the one that was measured", "%s and %s are readings of the same sheets", keys[0].Name(), keys[1].Name())
	case many(keys[0]):
		return d.readingList(v, keys[0], sheets)
	case v.Get("sheets").Given():
		v.Get("sheets").Mistake("write seams = [...] or edges = [...], or sheet with a single number", "sheets goes with a list of readings, not with %s", keys[0].Name())
	case len(keys) == 2:
		return []reading{d.seamInOverlap(d.reading(keys[0], keys[0].Name()), d.reading(keys[1], keys[1].Name()))}
	}
	return []reading{d.reading(keys[0], keys[0].Name())}
}

// readingList reads seams or edges, one for each of the sheets.
func (d *decoder) readingList(v, list source.Value, sheets int) []reading {
	items, name := list.Items(), list.Name()
	switch {
	case list.Kind() != source.Array || len(items) == 0:
		list.Mistake("write a figure for each sheet: "+name+` = ["1' 11", "3' 10 1/2"]`, "%s takes a list with a reading of each sheet", name)
		return nil
	case v.Get("sheet").Given() && !v.Get("sheets").Given():
		v.Get("sheet").Mistake(`write sheets = "1-6"`, "%s are readings of several sheets", name)
	case sheets > 0 && sheets != len(items):
		list.Mistake("write a figure for each sheet, from left to right", "of %d sheets %s holds %d", sheets, name, len(items))
	}
	out := make([]reading, len(items))
	for i, item := range items {
		out[i] = d.reading(item, name)
	}
	return out
}

// reading reads one figure, or [bottom, top], of the seam or of the raw edge at a sheet's right.
func (d *decoder) reading(v source.Value, name string) reading {
	r := reading{at: v, edge: name == "edge" || name == "edges"}
	if two := v.Items(); v.Kind() != source.Array {
		r.bottom, r.ok = d.length(v, 0)
		r.top = r.bottom
	} else if len(two) != 2 {
		v.Mistake("write one figure, or [bottom, top]", "%s has %d figures", name, len(two))
	} else {
		var okTop bool
		r.bottom, r.ok = d.length(two[0], 0)
		r.top, okTop = d.length(two[1], 0)
		r.ok = r.ok && okTop
	}
	if r.edge {
		r.bottom, r.top = r.bottom-d.right(), r.top-d.right()
	}
	return r
}

// right is how far the raw edge of a sheet lies right of the finished seam at its right.
func (d *decoder) right() L { return d.room.Veneer.Overlap.HalfDown() }

// left is how far the raw edge of a sheet lies left of the finished seam at its left.
func (d *decoder) left() L { return d.room.Veneer.Overlap - d.room.Veneer.Overlap.HalfDown() }

// asRead is the place of a seam in the terms of what was read: of the edge where that was.
func (d *decoder) asRead(seam L, r reading) L {
	if r.edge {
		return seam + d.right()
	}
	return seam
}

// seamInOverlap holds a seam against the raw edge of the same sheet, and keeps the seam.
func (d *decoder) seamInOverlap(seam, edge reading) reading {
	raw, overlap := edge.bottom+d.right(), d.room.Veneer.Overlap
	if seam.ok && edge.ok && (seam.bottom > raw || seam.bottom < raw-overlap) {
		seam.at.Mistake(sidesRight, "the sheet's right edge hangs at %s, and its seam is cut in the overlap of %s left of that: it is expected at %s",
			d.words(raw), d.words(overlap), d.words(edge.bottom))
	}
	return seam
}

// leftSeam reads the left side of the first hung sheet: the seam there, nil where nothing tells it. In an open run it is only
// held against the sheet's right side.
func (d *decoder) leftSeam(v source.Value, r reading) *L {
	edge, okEdge := d.length(v.Get("left_edge"), 0)
	left, okSeam := d.length(v.Get("left_seam"), 0)
	at, overlap := v.Get("left_seam"), d.room.Veneer.Overlap
	switch {
	case okSeam && !d.closedSpan():
		at.Mistake("leave left_seam out: the covering begins at the left end of its run", "the first sheet of a run that does not go round has no seam at its left")
		return &left
	case okSeam && okEdge && (left < edge || left > edge+overlap):
		at.Mistake(sidesLeft, "the sheet's left edge hangs at %s, and the seam there is cut in the overlap of %s right of that: it is expected at %s",
			d.words(edge), d.words(overlap), d.words(edge+d.left()))
		return &left
	case okEdge && !okSeam:
		left, at = edge+d.left(), v.Get("left_edge")
	case !okSeam:
		return nil
	}
	d.rawWidth(at, r, left)
	return &left
}

// rawWidth holds the two sides of the first hung sheet against what a sheet is wide.
func (d *decoder) rawWidth(at source.Value, r reading, left L) {
	read := left
	if at.Name() == "left_edge" {
		read -= d.left()
	}
	wide, gross := r.bottom+d.right()-(left-d.left()), d.room.Veneer.GrossWidth
	switch {
	case !r.ok || gross <= 0:
	case d.asRead(r.bottom, r) <= read:
		at.Mistake(sidesLeft, "the hung sheet begins at %s, not left of its %s at %s", d.words(read), r.word(), d.words(d.asRead(r.bottom, r)))
	case wide > gross+d.either(wetInch, wetMM):
		r.at.Mistake(sidesLeft, "from %s %s to %s %s the sheet is %s wide between its raw edges, and no sheet is wider than %s: the %s is expected at %s, or left of it",
			at.Name(), d.words(read), r.word(), d.words(d.asRead(r.bottom, r)), d.words(wide), d.words(gross), r.word(), d.words(d.asRead(r.bottom, r)-wide+gross))
	}
}

// What a sheet may measure over its gross width once it is pasted and hung, in 1/64 in and in mm: common practice, no source.
const (
	wetInch = 8
	wetMM   = 3
)
