package layout

import (
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// charged is which of the room's distances the solver is told, by their keys, and where it keeps them. Those that a sheet or a
// seam must have are tried, in this order, where a span cannot be laid.
var charged = []struct {
	key  string
	to   func(*seam.Rules) *int64
	must bool
}{
	{"least_width", func(r *seam.Rules) *int64 { return &r.LeastWidth }, true},
	{"prefer_width", func(r *seam.Rules) *int64 { return &r.PreferWidth }, false},
	{"corner_return", func(r *seam.Rules) *int64 { return &r.CornerReturn }, true},
	{"prefer_return", func(r *seam.Rules) *int64 { return &r.PreferReturn }, false},
	{"leg", func(r *seam.Rules) *int64 { return &r.Leg }, true},
	{"prefer_leg", func(r *seam.Rules) *int64 { return &r.PreferLeg }, false},
	{"opening_clear", func(r *seam.Rules) *int64 { return &r.OpeningClear }, true},
	{"prefer_clear", func(r *seam.Rules) *int64 { return &r.PreferClear }, false},
	{"box_clear", func(r *seam.Rules) *int64 { return &r.BoxClear }, false},
	{"short_seam", func(r *seam.Rules) *int64 { return &r.ShortSeam }, false},
}

// rulesOf are a room's rules as the solver knows them.
func rulesOf(r *room.Rules) seam.Rules {
	var out seam.Rules
	for _, t := range charged {
		*t.to(&out) = int64(r.Distance(t.key))
	}
	return out
}
