package layout

import (
	"fmt"
	"strings"
)

// stretches say of a seam at an opening where it is seen: over it, under it, or how much of the whole on either side; empty where
// no opening is.
func (b *builder) stretches(r *Run, s *Seam) string {
	over := r.over(s)
	if r.Up || over == "" {
		return ""
	}
	v, at := newSight(r.Line), r.Line.Round(s.At)
	low, high := v.between(at)
	list := v.stretches(at, low, high)
	switch {
	case len(list) == 2:
		return fmt.Sprintf(", %s under and %s over %s", b.style.Words(list[0][1]-list[0][0]), b.style.Words(list[1][1]-list[1][0]), over)
	case len(list) > 2:
		return fmt.Sprintf(" in %d stretches", len(list))
	case len(list) == 1 && list[0][1] < high:
		return " under " + over
	}
	return " over " + over
}

// summed says of a seam that is seen in several stretches which they are; empty where there is one.
func (b *builder) summed(r *Run, s *Seam) string {
	if text := b.stretches(r, s); !strings.HasPrefix(text, " over ") && !strings.HasPrefix(text, " under ") {
		return text
	}
	return ""
}
