package face_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

func TestBoxesAreLetteredFromTheLeft(t *testing.T) {
	f := laid(t, roomtest.Wall("Plant", `14'`, `9'`, roomtest.Box("outlet", "6'", "1' 6"), roomtest.Box("switch", "2'", "4'"), roomtest.Box("light", "2'", "1'")))
	var got []string
	for _, b := range f.Boxes() {
		got = append(got, b.Letter+" "+string(b.Kind))
	}
	assert.Equal(t, []string{"a light", "b switch", "c outlet"}, got, "one over the other from below")
	var parts []string
	for i := range 30 {
		parts = append(parts, roomtest.Box("outlet", (length.Length(i+1)*5*in).Decimal()+" mm", "1' 6"))
	}
	list := laid(t, roomtest.Wall("Long", `20'`, `9'`, parts...)).Boxes()
	assert.Equal(t, []string{"z", "aa", "ad"}, []string{list[25].Letter, list[26].Letter, list[29].Letter}, "letters go on in pairs")
}

func TestBoxesFallIntoTheSheetsTheirHolesMeet(t *testing.T) {
	boxes := 0
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		for _, b := range f.Boxes() {
			for _, h := range f.Hangs {
				for _, s := range h.Sheets {
					x0, z0, x1, z1, ok := f.Extent(s)
					if f.Run.Up {
						assert.Equal(t, ok && b.Right() > x0 && b.Left() < x1 && b.Top() > z0 && b.Bottom() < z1, f.BoxOf(s, b), why)
					}
				}
				if !f.Run.Up && f.BoxIn(h, b) {
					boxes++
					assert.True(t, b.Right() > h.From && b.Left() < h.To, "%s: box %s in place %d", why, b.Letter, h.Place)
					if s := f.CourseAt(h, b.Z); assert.NotNil(t, s, "%s: box %s in place %d", why, b.Letter, h.Place) {
						assert.True(t, h.Holds(s), why)
					}
				}
			}
		}
	})
	assert.Greater(t, boxes, 30)
	// a door's head, and a box in its white
	f := laid(t, roomtest.Wall("North", `12'`, `9'`, roomtest.Door(`4'`, `5'`), roomtest.Box("outlet", "6'", "3'"), roomtest.Box("light", "6'", "8'")))
	for _, b := range f.Boxes() {
		in := slices.ContainsFunc(f.Hangs, func(h *face.Hang) bool { return f.BoxIn(h, b) })
		assert.Equal(t, b.Kind == "light", in, "%s: only over the door there is covering", b.Kind)
	}
}

func TestCoursesOfAPlace(t *testing.T) {
	f := face.On(roomtest.Laid(t, "room.toml", roomtest.OddRooms["a tall wall in two courses"]), 0)
	joints := f.Joints()
	require.NotEmpty(t, joints)
	for _, h := range f.Hangs {
		require.Len(t, h.Called(), len(h.Sheets))
		low, high := f.CourseAt(h, joints[0]-in/2), f.CourseAt(h, joints[0]+in/2)
		require.NotNil(t, low)
		require.NotNil(t, high)
		assert.Equal(t, []int{1, 2}, []int{low.Course, high.Course}, "under and over the joint")
		_, top := f.Between(low, h.From, h.To)
		assert.Equal(t, joints[0], top, "the lower course ends at the joint")
	}
	level := face.On(roomtest.Laid(t, "room.toml", roomtest.OddRooms["grain level"]), 0)
	require.True(t, level.Run.Up)
	assert.Equal(t, level.Run.Joints, level.Joints(), "along the wall where the grain lies level")
}

func TestBendsAreJambsAndTheCornerAtTheRight(t *testing.T) {
	f := face.On(roomtest.Laid(t, "room.toml", roomtest.OddRooms["wrapped jambs"]), 0)
	o := f.W.Openings[0]
	var jambs []length.Length
	for _, h := range f.Hangs {
		for _, b := range f.Bends(h) {
			jambs = append(jambs, b.X)
			assert.True(t, f.Bent(f.Hangs, b.X))
		}
	}
	assert.Equal(t, []length.Length{o.FromLeft, o.Right()}, jambs, "each jamb in one sheet")
	small := roomtest.SmallPlan(t)
	bar, back := face.On(small, 0), face.On(small, 1)
	last := bar.Hangs[len(bar.Hangs)-1]
	require.True(t, last.After)
	assert.Equal(t, []face.Bend{{X: bar.Right, Name: "C1"}}, bar.Bends(last))
	assert.True(t, back.Hangs[0].Before, "it comes round the corner")
	assert.Equal(t, last.Place, back.Hangs[0].Place)
	assert.True(t, bar.Bent(bar.Hangs, bar.Right))
	assert.False(t, bar.Bent(bar.Hangs, bar.Left), "the raw end is no bend")
	assert.Equal(t, &bar.W.Openings[0], bar.OpeningsIn(bar.Hangs[2])[0])
	assert.Empty(t, bar.OpeningsIn(bar.Hangs[1]), "it ends at the door")
}
