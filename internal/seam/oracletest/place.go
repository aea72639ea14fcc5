package oracletest

import "flitchlay/internal/seam"

// Place is what one seam owes by the place it lies at, whatever sheets stand beside it.
//
// Units: Bends, Edges and Should are lengths, Feet the seen height in counts of Foot, rounded up.
type Place struct {
	Bends, Edges, Should int64
	Feet                 int64
	Tall                 bool // seen for more than short_seam
	Main                 bool // on a main stretch
}

// PlaceAt judges a seam at s against every object of the run.
func PlaceAt(span seam.Span, s int64) Place {
	var place Place
	seen := span.Seen(s)
	place.Feet = (seen + span.Foot - 1) / span.Foot
	place.Tall = seen > span.ShortSeam
	for _, main := range span.Main {
		place.Main = place.Main || covers(&span, main.From, main.To-1, s)
	}

	preferReturn := prefer(span.PreferReturn, span.CornerReturn)
	for _, corner := range span.Corners {
		d := distanceToStrip(span, corner, s)
		place.Bends += lack(span.CornerReturn, d)
		place.Should += lack(preferReturn, d)
	}
	for _, opening := range span.Openings {
		place.addOpening(span, opening, s)
	}
	for _, keep := range span.Keep {
		if covers(&span, keep.From+1, keep.To-1, s) {
			place.Edges += min(distance(&span, keep.From, s), distance(&span, keep.To, s))
		}
	}
	for _, box := range span.Boxes {
		place.Should += lack(span.BoxClear, distanceToStrip(span, box, s))
	}
	return place
}

func (place *Place) addOpening(span seam.Span, opening seam.Opening, s int64) {
	preferReturn := prefer(span.PreferReturn, span.CornerReturn)
	preferLeg := prefer(span.PreferLeg, span.Leg)
	preferClear := prefer(span.PreferClear, span.OpeningClear)
	left, right := distance(&span, opening.A, s), distance(&span, opening.B, s)
	onLeft, onRight := left == 0, right == 0
	inside := covers(&span, opening.A, opening.B, s)

	switch {
	case opening.Gap && inside && !onLeft && !onRight:
		// no covering over or under it

	case opening.Wrap && !inside:
		place.Bends += lack(span.CornerReturn, min(left, right))
		place.Should += lack(preferReturn, min(left, right))

	case opening.Wrap:
		for _, d := range []int64{left, right} {
			if d == 0 { // on this jamb
				place.Bends += span.CornerReturn + span.OpeningClear
				place.Should += preferReturn + preferClear
				continue
			}
			place.Bends += lack(opening.Reveal+span.OpeningClear, d)
			place.Should += lack(prefer(opening.Reveal+span.PreferClear, opening.Reveal+span.OpeningClear), d)
		}

	case !inside:
		place.Edges += lack(span.Leg, min(left, right))
		place.Should += lack(preferLeg, min(left, right))

	default:
		place.Edges += lack(span.OpeningClear, left) + lack(span.OpeningClear, right)
		place.Should += lack(preferClear, left) + lack(preferClear, right)
	}
}

// distance is how far two places are apart, in a closed run the shorter way round.
func distance(span *seam.Span, a, b int64) int64 {
	d := max(a-b, b-a)
	if span.RunClosed {
		d %= span.Period
		d = min(d, span.Period-d)
	}
	return d
}

// distanceToStrip is nought inside the strip and on its edges.
func distanceToStrip(span seam.Span, strip seam.Strip, s int64) int64 {
	if covers(&span, strip.From, strip.To, s) {
		return 0
	}
	return min(distance(&span, strip.From, s), distance(&span, strip.To, s))
}

// covers tells whether from <= s <= to, in a closed run after any number of rounds.
func covers(span *seam.Span, from, to, s int64) bool {
	if !span.RunClosed {
		return from <= s && s <= to
	}
	for s > from {
		s -= span.Period
	}
	for s < from {
		s += span.Period
	}
	return s <= to
}
