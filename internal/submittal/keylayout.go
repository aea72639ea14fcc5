package submittal

import (
	"math"

	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// The scales of the key, the largest first, in an inch room and in a metric one.
//
// Source: scales of a US architect's rule and their halves; ISO 5455:1979 clause 5.1.
var (
	keyScales       = []int64{8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536}
	keyScalesMetric = []int64{10, 20, 50, 100, 200, 500, 1000, 2000}
)

// layKey chooses the largest scale at which everything finds a place on the plan, its table beside it or under it: where the page has
// room for all as it would stand freely, the whole is moved into its middle; else its walls stand there, and the rest gives way. Where
// no scale has room for all, it is the largest of those that have for most.
func layKey(s *folio.Set) keyLayout {
	scales := keyScales
	if s.Metric() {
		scales = keyScalesMetric
	}
	best, fewest, tried := keyLayout{scale: scales[len(scales)-1], under: true, forced: true}, math.MaxInt, 0
	var missed keyMissed
	for _, scale := range scales {
		stands := false
		for _, under := range []bool{false, true} {
			for _, free := range []bool{true, false} {
				how, r := tryKey(s, keyLayout{scale: scale, under: under}, free)
				if r == nil {
					continue
				}
				stands = true
				bad := r.missed.count()*keyLost + r.squeezed
				if bad >= fewest {
					continue
				}
				touch := r.touches()
				if bad += touch * keyLost; bad < fewest {
					best, fewest, missed = how, bad, r.missed
				}
				if r.missed.count() == 0 && touch == 0 && (free || r.squeezed <= keySqueezed) {
					return how
				}
			}
		}
		if stands {
			if tried++; tried == keyTries { // smaller it only becomes more crowded
				break
			}
		}
	}
	return withList(s, scales, best, missed)
}

// touches counts what touches on the plan: where a search has looked past something, another layout is taken.
func (r *roomKey) touches() int {
	n := 0
	for _, o := range scene.Overlaps(&scene.Page{Group: *r.g, Width: r.Page.Width, Height: r.Page.Height}, 0.5) {
		if o.Kind == scene.TextOverText || o.Kind == scene.TextOverLine || o.Kind == scene.TextUnderLine { // it may not yet lie on the paper
			n++
		}
	}
	return n
}

// withList lays out the plan once more with room for the list of what found no place: under or beside the table, or where that makes
// the plan smaller or has no room there, for the number of the page that it stands on.
func withList(s *folio.Set, scales []int64, best keyLayout, missed keyMissed) keyLayout {
	with := keyLayout{scale: best.scale, under: best.under, lost: &missed}
	var here keyLayout
	fits := false
	for range keyListTries { // with less room more finds no place, and the list grows
		how, r := atLeast(s, scales, with)
		low := r.table()
		if r.missed.count() == 0 {
			return how
		}
		here, fits = how, low <= r.side.Y1
		if fits {
			break
		}
		with.lost = &r.missed
	}
	if fits && here.scale == best.scale {
		return here
	}
	with.apart = true
	how, r := atLeast(s, scales, with)
	if fits && here.scale <= how.scale {
		return here
	}
	how.more = r.missed.count() > 0
	return how
}

// atLeast lays out the plan at a scale, or where its walls do not stand on the page then, at the next that they do.
func atLeast(s *folio.Set, scales []int64, how keyLayout) (keyLayout, *roomKey) {
	for _, scale := range scales {
		if scale < how.scale {
			continue
		}
		at := how
		at.scale = scale
		if at, r := tryKey(s, at, false); r != nil {
			return at, r
		}
	}
	how.forced = true
	return tryKey(s, how, false)
}

// tryKey draws the plan on a page that is thrown away; nil where it does not stand there.
func tryKey(s *folio.Set, how keyLayout, free bool) (keyLayout, *roomKey) {
	r := newRoomKey(elevation.Scratch(s), how)
	if r == nil {
		return how, nil
	}
	if !free {
		r.plan()
		return how, r
	}
	r.Space.Bounds = scene.Box{}
	r.plan()
	all := r.g.Bounds()
	if all.W() > r.box.W() || all.H() > r.box.H() {
		return how, nil
	}
	m, c := r.box.Centre(), all.Centre()
	how.by = scene.Pt(m.X-c.X, m.Y-c.Y)
	return how, r
}
