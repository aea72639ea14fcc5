package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// shorten makes a stretch kept clear shorter from the end where it takes less.
func (m *mender) shorten(d demand) {
	k := m.room.Walls[d.wall].KeepClear[d.item]
	snap := m.room.Rules.Snap
	kept := slices.Clone(m.c.spot.q.Keep)
	was := kept[d.index]
	from := len(m.found)
	for side := range 2 {
		m.least(int64((k.To-k.From-1)/snap), func(n int64) change {
			by := L(n) * snap
			return change{kind: keepShorter, amount: by, on: &d.demandKey, span: func(s *seam.Span) {
				s.Keep = kept
				if kept[d.index] = was; side == 0 {
					kept[d.index].To -= int64(by)
				} else {
					kept[d.index].From += int64(by)
				}
			}, room: func(r *room.Room) {
				if x := &r.Walls[d.wall].KeepClear[d.item]; side == 0 {
					x.To -= by
				} else {
					x.From += by
				}
			}}
		})
	}
	if both := m.found[from:]; len(both) == 2 {
		m.found[from] = slices.MinFunc(both, func(a, b proposal) int { return cmp.Compare(a.amount, b.amount) })
		m.found = m.found[:from+1]
	}
}

// lower finds for each rule the greatest value that would do, less than what it is now.
func (m *mender) lower() {
	snap := int64(m.room.Rules.Snap)
	for _, rule := range charged {
		if !rule.must {
			continue
		}
		now := *rule.to(&m.c.spot.q.Rules)
		steps := (now + snap - 1) / snap
		if rule.key == "least_width" {
			steps-- // a sheet is one snap wide at least
		}
		m.least(steps, func(n int64) change { // the n-th value on the grid under what it is
			value := max(0, (now+snap-1)/snap-n) * snap
			return change{kind: ruleLess, amount: L(now - value), span: func(s *seam.Span) { *rule.to(&s.Rules) = value },
				room: func(r *room.Room) {
					d := distance(r, rule.key)
					*d = min(*d, L(value))
				}}
		})
	}
}

// widen finds the least greater gross width that would do, up to 24 in more.
func (m *mender) widen() {
	if !m.deliverable() {
		return
	}
	snap, now := m.room.Rules.Snap, m.room.Veneer.GrossWidth
	m.least(int64(24*length.Inch/snap), func(n int64) change {
		value := (now/snap + L(n)) * snap
		return change{kind: sheetWider, amount: value - now, span: func(s *seam.Span) { s.Gross = int64(value) },
			room: func(r *room.Room) { r.Veneer.GrossWidth = max(r.Veneer.GrossWidth, value) }}
	})
}

// cut leaves a corner unwrapped, so that the covering ends on both sides of it. What its raw ends do to the rest only the
// room tells.
func (m *mender) cut(d demand) {
	if m.room.Walls[d.wall].Radius == 0 {
		m.propose(change{kind: bendLeft, on: &d.demandKey, room: func(r *room.Room) { r.Walls[d.wall].Wrap = false }})
	}
}

// unwrap leaves the jambs of an opening unwrapped.
func (m *mender) unwrap(d demand) {
	if m.room.Walls[d.wall].Openings[d.item].WrapReveal {
		m.propose(change{kind: bendLeft, on: &d.demandKey, room: func(r *room.Room) { r.Walls[d.wall].Openings[d.item].WrapReveal = false }})
	}
}
