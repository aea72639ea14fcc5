package layout

import (
	"slices"

	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// change is something that a person can do about a conflict.
type change struct {
	kind   changeKind
	amount L                // the less of it, the better
	span   func(*seam.Span) // what it does to the span of the conflict; nil where it makes other spans
	room   func(*room.Room) // what it does to the room
	on     *demandKey       // the one demand that is changed; nil where it is a rule
}

// changeKind is what is changed: what asks least of others first.
type changeKind int

const (
	keepShorter changeKind = iota
	openingMoved
	ruleLess
	bendLeft // a corner cut, a jamb not wrapped
	sheetWider
)

// deliverable reports whether other sheets can still be bought: no flitch is given, and none hangs.
func (b *builder) deliverable() bool { return len(b.room.Flitches) == 0 && len(b.room.Hung) == 0 }

// altered puts the questions of the room with changes made in it. It says false where such a room has a mistake, and where no
// trials are left.
func (k *clash) altered(list ...change) (*builder, bool) {
	r := *k.room
	r.Walls = slices.Clone(r.Walls)
	weight := 0
	for i := range r.Walls {
		w := &r.Walls[i]
		w.Openings, w.KeepClear = slices.Clone(w.Openings), slices.Clone(w.KeepClear)
		weight += 1 + len(w.Openings) + len(w.KeepClear) + len(w.Boxes)
	}
	if k.tries.left -= 40 * weight; k.tries.left <= 0 {
		return nil, false
	}
	for _, c := range list {
		c.room(&r)
	}
	if !sound(&r) {
		return nil, false
	}
	lines, err := run.Unroll(&r)
	if err != nil {
		return nil, false
	}
	b := &builder{room: &r, aim: k.aim, style: k.style, plan: &Plan{}}
	for _, line := range lines {
		asked := b.questions(line)
		if b.hungInOrder(asked) != nil {
			return nil, false
		}
		b.asked = append(b.asked, asked)
	}
	return b, true
}

// sound reports whether changes that each leave room have left it together: no opening stands in another or past its wall, and
// what is kept clear has a length.
func sound(r *room.Room) bool {
	for i := range r.Walls {
		w := &r.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			if o.FromLeft < 0 || o.Right() > w.Length {
				return false
			}
			for _, x := range w.Openings[:j] {
				if x.FromLeft < o.Right() && o.FromLeft < x.Right() && x.Sill < o.Head && o.Sill < x.Head {
					return false
				}
			}
		}
		if slices.ContainsFunc(w.KeepClear, func(x room.KeepClear) bool { return x.To <= x.From }) {
			return false
		}
	}
	return true
}

// meets reports whether all that is asked of the spans can be met, but for some demands.
func (t *trials) meets(spots []spot, less map[demandKey]bool) bool {
	for i := range spots {
		t.rest = without(t.rest, spots[i].all, less)
		if !t.stands(&spots[i], t.rest) {
			return false
		}
	}
	return t.left > 0
}

// remains reports whether the demands of a conflict collide also in the spans of a changed room.
func (t *trials) remains(c *conflict, spots []spot) bool {
	for i := range spots {
		var asked []demand
		for _, d := range c.demands {
			if x, ok := spots[i].of(d.demandKey); ok {
				asked = append(asked, x)
			}
		}
		if !t.stands(&spots[i], asked) {
			return true
		}
	}
	return false
}
