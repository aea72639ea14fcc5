package face_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/shape"
)

// What shows and what is covered are two questions: along a jamb an edge shows, and nothing is covered. Everywhere else a
// seam shows exactly where there is covering.
func TestSeamsShowWhereTheWallIsCovered(t *testing.T) {
	seams := 0
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		for _, s := range f.Seams {
			if f.Run.Up {
				continue
			}
			jamb := false
			for _, o := range f.W.Openings {
				jamb = jamb || s.X == o.FromLeft || s.X == o.Right()
			}
			for _, b := range f.W.Bare {
				jamb = jamb || s.X == b.From || s.X == b.To
			}
			if !jamb {
				seams++
				assert.Equal(t, f.Covered(s.X), f.Shown(s.X), "%s: seam %d", why, s.Number)
			}
		}
	})
	assert.Greater(t, seams, 200)
}

func TestCoveredLeavesOutOpeningsWithTheirJambs(t *testing.T) {
	f := laid(t, roomtest.Wall("North", `12'`, `9'`, roomtest.Window(`5'`, `3'`)))
	base, sill, head, top := 5*in+in/2, 32*in, 86*in, 108*in
	whole, parted := [][2]length.Length{{base, top}}, [][2]length.Length{{base, sill}, {head, top}}
	assert.Equal(t, whole, f.Covered(59*in), "left of the window")
	assert.Equal(t, parted, f.Covered(60*in), "on its left jamb")
	assert.Equal(t, parted, f.Covered(70*in), "through it")
	assert.Equal(t, parted, f.Covered(96*in), "on its right jamb")
	f = laid(t, roomtest.Wall("Joint", `18'`, `9'`, "[[wall.bare]]\nfrom = \"9'\"\nto = \"9' 3\"\nwhy = \"control joint\"\n"))
	assert.Empty(t, f.Covered(109*in), "in a bare strip")
}

func TestCoveredByGoesRoundOpenings(t *testing.T) {
	f := laid(t, roomtest.Wall("North", `12'`, `9'`, roomtest.Window(`5'`, `3'`)))
	for _, q := range f.Parts {
		s := q.Sheet()
		for x := q.From; x < q.To; x += in / 2 {
			if x != 60*in && x != 96*in { // to the right of a jamb it covers what is beside the window
				assert.Equal(t, f.Covered(x), f.CoveredBy(s, x), "at %s", x.Decimal())
			}
		}
		assert.Empty(t, f.CoveredBy(s, q.To), "the next sheet begins there")
	}
}

func TestRawEdgesStandWhereTheSheetIsHung(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		if f.Run.Up {
			return
		}
		for _, q := range f.Parts {
			left, right := q.Raw(q.Sheet())
			assert.True(t, left <= q.From+2*in && right >= q.To-2*in, "%s: raw from %s to %s, shows from %s to %s", why, left.Decimal(), right.Decimal(), q.From.Decimal(), q.To.Decimal())
		}
	})
}

func TestEndAt(t *testing.T) {
	p := roomtest.SmallPlan(t)
	bar, back := face.On(p, 0), face.On(p, 1)
	assert.Equal(t, []string{"the casing", ""}, []string{said(bar.EndAt(false)), said(bar.EndAt(true))}, "it goes on round the corner at the right")
	assert.Equal(t, []string{"", "the trim"}, []string{said(back.EndAt(false)), said(back.EndAt(true))})
}

func TestOutlineLeansAtTheWallsEndsOnly(t *testing.T) {
	f := laid(t, roomtest.Wall("Old", `15'`, `9'`)+"lean = [\"-1/4\", \"3/8\"]\nfloor = [\"0\", \"-3/4\"]\n")
	at := func(from, to length.Length) []room.Point { return f.Outline(f.W.Floor, f.W.Ceiling, from, to) }
	assert.Equal(t, []room.Point{{X: 0}, {X: 180 * in, Z: -3 * in / 4}, {X: 180*in + 3*in/8, Z: 108 * in}, {X: 180 * in, Z: 108 * in}, {Z: 108 * in}, {X: -in / 4, Z: 108 * in}}, at(f.Left, f.Right), "with the turns of the ceiling as measured")
	assert.Equal(t, []room.Point{{X: 60 * in, Z: -in / 4}, {X: 120 * in, Z: -in / 2}, {X: 120 * in, Z: 108 * in}, {X: 60 * in, Z: 108 * in}}, at(60*in, 120*in), "upright at a match line")
}

func TestBareHoldsOpeningsAndStrips(t *testing.T) {
	f := laid(t, roomtest.Wall("Joint", `18'`, `9'`, roomtest.Door(`2'`, `3'`), "[[wall.bare]]\nfrom = \"9'\"\nto = \"9' 3\"\nwhy = \"control joint\"\n"))
	assert.Equal(t, []shape.Rect{{Left: 24 * in, Right: 60 * in, Top: 84 * in}, {Left: 108 * in, Right: 111 * in, Top: 108 * in}}, f.Bare(), "a door reaches down to the floor, a strip from floor to ceiling")
}

func TestFeetAndHeads(t *testing.T) {
	f := face.On(roomtest.Laid(t, "room.toml", roomtest.OddRooms["a tall wall in two courses"]), 0)
	joint := f.Run.Joints[0]
	for _, h := range f.Hangs {
		feet := f.Feet(h)
		require.Len(t, feet, 1, "one upper course")
		assert.Equal(t, face.Edge{From: h.From, To: h.To, Z: joint}, feet[0])
	}
	level := face.On(roomtest.Laid(t, "room.toml", roomtest.OddRooms["grain level"]), 0)
	for _, h := range level.Hangs {
		heads := level.Heads(h)
		assert.NotEmpty(t, heads, "place %d", h.Place)
		for _, e := range heads {
			assert.Equal(t, h.X, e.Z, "along the seam over the band")
			assert.True(t, level.Left <= min(e.From, e.To) && max(e.From, e.To) <= level.Right)
		}
	}
}

func TestEndsAndJointsStandWhereTheyAre(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		for _, e := range f.RawEnds() {
			if e.Kind != "jamb" && e.Kind != "bare" {
				assert.Equal(t, e.Right, e.X > (f.Left+f.Right)/2, "%s: the %s stands at %s", why, e.Kind, e.X.Decimal())
			}
		}
		for _, z := range f.Joints() {
			assert.Contains(t, f.Run.Joints, z, "%s: the head of an opening is no joint", why)
		}
	})
}

// said names an end, "" where there is none.
func said(e *run.End) string {
	if e == nil {
		return ""
	}
	return e.Words()
}
