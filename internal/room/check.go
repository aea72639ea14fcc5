package room

import (
	"fmt"

	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// finest is the finest grid for seams: finer than any knife, coarse enough to count.
const finest = length.Millimetre / 10

// What a room may have, for the time that its best seams take: places for seams, 370 m on a grid of 1/16 in, 185 m on one of 1/32 in
// or 25 m on one of 0.1 mm; and sheets side by side, 900 m of them 24 in wide. One that closes may have fewer, for it has to be found
// as well where it closes.
const (
	mostPlaces        = 250_000
	mostPlacesClosed  = 125_000
	mostAbreast       = 1_500
	mostAbreastClosed = 500
)

// places checks that the grid of seams is not too fine for the length of the walls, nor a sheet too narrow.
func (d *decoder) places(veneer, rules source.Value) {
	total, snap := L(0), d.room.Rules.Snap
	for i := range d.room.Walls {
		if d.room.Walls[i].Cover {
			total += d.room.Walls[i].Length
		}
	}
	if snap < finest || total > length.Limit {
		return // said already
	}
	places, abreast, walls := L(mostPlaces), L(mostAbreast), "covered walls"
	if d.room.Space.Closed {
		places, abreast, walls = mostPlacesClosed, mostAbreastClosed, "covered walls that close"
	}
	if total/snap > places {
		at, fine := rules.Get("snap"), d.words(snap)
		if at.Given() {
			fine = at.Raw()
		}
		at.Mistake("write a coarser snap, or draw it as several rooms",
			"snap = %s is too fine for %s, %s long in all: they would have over %s places for seams", fine, walls, d.words(total), thousands(places))
	}
	if net := d.room.NetWidth(); net > 0 && !d.room.Veneer.Horizontal && total/net > abreast {
		at := veneer.Get("gross_width")
		at.Mistake("give wider sheets, or draw it as several rooms",
			"gross_width = %s is too narrow for %s, %s long in all: they would take over %s sheets", at.Raw(), walls, d.words(total), thousands(abreast))
	}
}

// thousands is a number in print.
func thousands(n L) string {
	if n < 1000 {
		return fmt.Sprint(int64(n))
	}
	return fmt.Sprintf("%d,%03d", n/1000, n%1000)
}

// sheets checks the veneer against the rules.
func (d *decoder) sheets(veneer, rules source.Value) {
	n, r := &d.room.Veneer, &d.room.Rules
	if n.GrossWidth == 0 || !veneer.Get("overlap").Given() || n.Length == 0 {
		return // noted already
	}
	overlap := veneer.Get("overlap")
	if n.GrossWidth > tallest || n.Length > tallest {
		veneer.Get("length").Mistake("give the size of one sheet", "a sheet of %s x %s is longer or wider than 30 m", d.words(n.GrossWidth), d.words(n.Length))
		return
	}
	if n.Overlap >= n.GrossWidth {
		overlap.Mistake("overlap is how much two sheets overlap at a double cut", "an overlap of %s leaves nothing of a sheet of %s", d.words(n.Overlap), d.words(n.GrossWidth))
		return
	}
	if n.LeafWidth > n.GrossWidth {
		a, b := d.both(n.LeafWidth, n.GrossWidth)
		veneer.Get("leaf_width").Mistake("leaf_width is the width of one of the leaves that a sheet is made of", "a leaf of %s is wider than a sheet of %s", a, b)
	}
	if n.Overlap < r.LeastOverlap {
		a, b := d.both(n.Overlap, r.LeastOverlap)
		overlap.Mistake("overlap more, or give a smaller least_overlap in [rules]", "an overlap of %s is under least_overlap (%s)", a, b)
	}
	snap := rules.Get("snap")
	if r.Snap < finest {
		snap.Mistake(`write snap = "1/16", or a coarser grid`, "a snap of less than 0.1 mm is finer than a seam can be cut")
		return
	}
	if r.Snap > r.LeastWidth {
		at := snap
		if !at.Given() {
			at = rules.Get("least_width")
		}
		a, b := d.both(r.Snap, r.LeastWidth)
		at.Mistake("seams fall on a grid much finer than a sheet", "snap (%s) is over least_width (%s)", a, b)
		return
	}
	if net := d.room.NetWidth(); net < r.LeastWidth {
		at := rules.Get("least_width")
		if !at.Given() {
			at = veneer.Get("gross_width")
		}
		a, b := d.both(net, r.LeastWidth)
		at.Mistake("a sheet covers its gross width less one overlap, on the grid of snap", "a sheet covers at most %s, less than least_width (%s)", a, b)
	}
	if n.Length <= r.TopTrim+r.BottomTrim {
		veneer.Get("length").Mistake("give the length of a sheet, or smaller trims", "top_trim and bottom_trim leave nothing of a sheet %s long", d.words(n.Length))
	}
}
