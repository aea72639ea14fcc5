package layout

import (
	"slices"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// Gross widths are tried by a step that stock is sold by, in the room's unit, and so many of them: 24 in or 480 mm.
// Openings are moved by a step that a frame can be set to, and no farther than a builder would hear of.
const (
	widerInch   = length.Inch / 2
	widerMetric = 10 * length.Millimetre
	widerSteps  = 48
	moveInch    = length.Inch / 4
	moveMetric  = 5 * length.Millimetre
	moveMost    = 12 * length.Inch
)

// inUnit is one of two lengths, by the room's unit.
func (b *builder) inUnit(inch, metric L) L {
	if b.style.Unit == length.Millimetres {
		return metric
	}
	return inch
}

// mends names single changes of one value each that would free a span from its conflict. Each is found by solving, and
// stands here only because the span solved with it breaks no must.
func (b *builder) mends(q *question, kept []demand) string {
	var out []string
	// In the order of what they cost: 1. a rule is let down, 2. other stock is bought, 3. the building is changed.
	for _, try := range []func(*question, []demand) []string{b.mendRules, b.mendWidth, b.mendOpenings} {
		out = append(out, try(q, kept)...)
	}
	if len(out) == 0 {
		return "No single change of a rule, of the gross width or of an opening's place frees it"
	}
	return "One of these would do: " + strings.Join(out, "; ")
}

// meets reports whether the span breaks no must.
func meets(s seam.Span) bool {
	ok, err := seam.Meets(s)
	return err == nil && ok
}

// mendRules finds for each rule the greatest value that would do, less than what it is now.
func (b *builder) mendRules(q *question, kept []demand) []string {
	var out []string
	for _, rule := range charged {
		if !rule.must {
			continue
		}
		with := func(value int64) bool {
			s := q.Span
			*rule.to(&s.Rules) = value
			return meets(s)
		}
		now := *rule.to(&q.Rules)
		if now == 0 || !with(0) {
			continue
		}
		step := q.Snap
		low, high := int64(0), (now+step-1)/step // in snaps: low does, high does not
		for high-low > 1 {
			if mid := (low + high) / 2; with(mid * step) {
				low = mid
			} else {
				high = mid
			}
		}
		out = append(out, rule.key+" "+b.style.Words(L(low*step))+" in place of "+b.style.Words(L(now)))
	}
	return out
}

// mendWidth finds the least greater gross width that would do, up to widerSteps steps.
func (b *builder) mendWidth(q *question, kept []demand) []string {
	step := int64(b.inUnit(widerInch, widerMetric))
	// From the least upward: the first that does is the one to ask for.
	for k := int64(1); k <= widerSteps; k++ {
		s := q.Span
		s.Gross = (q.Gross/step + k) * step
		if meets(s) {
			return []string{"a gross width of " + b.style.Words(L(s.Gross)) + " in place of " + b.style.Words(L(q.Gross))}
		}
	}
	return nil
}

// mendOpenings finds for each opening of the conflict the least way it would have to be moved, up to moveMost.
func (b *builder) mendOpenings(q *question, kept []demand) []string {
	var out []string
	for k, o := range q.openings {
		name := b.openingWords(o.wall, o.index)
		if !slices.ContainsFunc(kept, func(d demand) bool { return strings.HasSuffix(d.name, " "+name) }) {
			continue
		}
		if q.Openings[k].Gap {
			continue // its edges are raw ends: moving it changes the spans
		}
		if text, ok := b.moves(q, o.wall, o.index, k); ok {
			out = append(out, text)
		}
	}
	return out
}

// moves tries an opening further and further to both sides, as far as the wall and its neighbours leave room.
func (b *builder) moves(q *question, wall, i, k int) (string, bool) {
	w := &b.room.Walls[wall]
	o := w.Openings[i]
	step := b.inUnit(moveInch, moveMetric)
	low, high, sides := along(w, i)
	if q.line.Up {
		if !o.SillGiven {
			return "", false // what stands on the floor goes neither up nor down
		}
		low, high, sides = upward(w, i)
	}
	// The least way first, of two alike the one to the left or down: what is first found moves the least.
	for n := L(1); n*step <= moveMost; n++ {
		for _, by := range [2]L{-n * step, n * step} {
			if by < low || by > high {
				continue
			}
			s := q.Span
			s.Openings = slices.Clone(s.Openings)
			s.Openings[k].A += int64(by)
			s.Openings[k].B += int64(by)
			if meets(s) {
				side := sides[1]
				if by < 0 {
					side = sides[0]
				}
				return b.openingWords(wall, i) + " moved " + b.style.Words(by.Abs()) + " " + side, true
			}
		}
	}
	return "", false
}

// along is how far an opening can be moved to the left, as a negative length, and to the right, until it meets a neighbour or
// the wall's end.
func along(w *room.Wall, i int) (low, high L, sides [2]string) {
	o := &w.Openings[i]
	low, high = -o.FromLeft, w.Length-o.Right()
	for j := range w.Openings {
		other := &w.Openings[j]
		if j != i && other.Right() <= o.FromLeft {
			low = max(low, other.Right()-o.FromLeft)
		}
		if j != i && other.FromLeft >= o.Right() {
			high = min(high, other.FromLeft-o.Right())
		}
	}
	return low, high, [2]string{"to the left", "to the right"}
}

// upward is the same down and up, where s goes up the wall.
func upward(w *room.Wall, i int) (low, high L, sides [2]string) {
	o := &w.Openings[i]
	low, high = -far, far
	for _, x := range [2]L{o.FromLeft, o.Right()} {
		low = max(low, room.At(w.Floor, x)-o.Sill)
		high = min(high, room.At(w.Ceiling, x)-o.Head)
	}
	for j := range w.Openings {
		other := &w.Openings[j]
		if j == i || other.Right() <= o.FromLeft || other.FromLeft >= o.Right() {
			continue
		}
		if other.Head <= o.Sill {
			low = max(low, other.Head-o.Sill)
		} else {
			high = min(high, other.Sill-o.Head)
		}
	}
	return low, high, [2]string{"down", "up"}
}
