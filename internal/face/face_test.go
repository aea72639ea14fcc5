package face_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

const in = length.Inch

// faces are all covered walls of all samples, starters and odd rooms.
func faces(t *testing.T, do func(why string, p *layout.Plan, f *face.Face)) {
	rooms := roomtest.Samples(t)
	for why, text := range roomtest.OddRooms {
		rooms[why] = text
	}
	n := 0
	for why, text := range rooms {
		p := roomtest.Laid(t, "room.toml", text)
		for _, f := range face.All(p) {
			do(why+", "+f.W.Name, p, f)
			n++
		}
	}
	require.Greater(t, n, 60, "walls to look at")
}

// laid is the first wall of a room whose walls are given.
func laid(t *testing.T, walls ...string) *face.Face {
	return face.On(roomtest.Laid(t, "room.toml", roomtest.Head("in")+strings.Join(walls, "")), 0)
}

func TestHangsFollowOneAnotherAlongTheWall(t *testing.T) {
	faces(t, func(why string, p *layout.Plan, f *face.Face) {
		for i, h := range f.Hangs {
			assert.NotEmpty(t, h.Sheets, why)
			if i > 0 {
				assert.LessOrEqual(t, f.Hangs[i-1].Place, h.Place, "%s: in hanging order", why)
			}
			for _, s := range h.Sheets {
				assert.Equal(t, h.Place, s.Place, why)
				assert.True(t, h.Holds(s), why)
			}
			if f.Run.Up {
				assert.Equal(t, [2]length.Length{0, f.W.Length}, [2]length.Length{h.From, h.To}, "%s: a band goes from end to end", why)
				continue
			}
			assert.True(t, f.Left <= h.From && h.From < h.To && h.To <= f.Right, "%s: place %d covers %s to %s", why, h.Place, h.From.Decimal(), h.To.Decimal())
			assert.False(t, h.After && h.Seam != nil, "%s: the seam of a sheet that goes on stands on the next wall", why)
			if h.Seam != nil {
				assert.Equal(t, h.X+p.Room.Veneer.Overlap.HalfDown(), h.Line, "%s: the line is half an overlap right of the seam", why)
			}
		}
	})
}

func TestPartsAreTheHangsLessWhatOpeningsTakeWhole(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		parts := map[*layout.Sheet]bool{}
		for i, q := range f.Parts {
			for _, s := range q.Sheets {
				parts[s] = true
			}
			if i > 0 && !f.Run.Up {
				assert.Less(t, f.Parts[i-1].From, q.From, "%s: from left to right", why)
			}
		}
		for _, h := range f.Hangs {
			for _, s := range h.Sheets {
				_, _, _, _, ok := f.Extent(s)
				assert.Equal(t, ok, parts[s], "%s: place %d course %d is drawn where it has a piece", why, s.Place, s.Course)
			}
		}
	})
}

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

func TestSplitMeetsThroughTheMiddleOfASheet(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		for _, most := range []int{3, 5, 12, 1000} {
			pieces := f.Split(most)
			require.NotEmpty(t, pieces, why)
			assert.Equal(t, f.Left, pieces[0].From, why)
			assert.Equal(t, f.Right, pieces[len(pieces)-1].To, why)
			for i, p := range pieces {
				assert.Equal(t, []any{i, len(pieces)}, []any{p.Index, p.Of}, why)
				assert.True(t, len(p.Hangs) <= most || f.Run.Up, "%s: %d sheets on a piece of %d", why, len(p.Hangs), most)
				if i > 0 {
					before := pieces[i-1]
					require.True(t, before.RightCut() && p.LeftCut(), why)
					assert.Equal(t, before.To, p.From, "%s: pieces meet", why)
					assert.Equal(t, p.Hangs[0].Middle(), p.From, "%s: through the middle of a sheet", why)
					assert.Same(t, before.Hangs[len(before.Hangs)-1], p.Hangs[0], "%s: that stands on both", why)
				}
			}
			if len(f.Hangs) <= most {
				assert.Len(t, pieces, 1, why)
			}
		}
	})
}

func TestSplitPrefersAnOpening(t *testing.T) {
	f := laid(t, roomtest.Wall("Corridor", `60'`, `9'`, roomtest.Door(`20'`, `5'`)))
	pieces := f.Split(20)
	require.Len(t, pieces, 2)
	assert.True(t, f.Open(pieces[1].From) || pieces[1].From > 28*12*in, "over the door where it is near enough")
	assert.False(t, f.Open(20*12*in), "its jamb is no part of what is open")
	assert.True(t, f.Open(21*12*in))
}

func TestExtremesOfAPieceAreItsOwn(t *testing.T) {
	text := strings.Replace(roomtest.Wall("Gable", `40'`, `9'`), `height = "9'"`, `height = [["0", "8'"], ["40'", "12'"]]`, 1)
	f := laid(t, text)
	pieces := f.Split(12)
	require.Greater(t, len(pieces), 1)
	low, high := pieces[0].Extremes()
	assert.Zero(t, low)
	assert.Equal(t, room.At(f.W.Ceiling, pieces[0].To), high, "the ceiling rises to the match line")
	_, high = pieces[len(pieces)-1].Extremes()
	assert.Equal(t, f.High, high)
	assert.Len(t, pieces[0].MatchLines(), 1)
	for _, p := range pieces {
		for _, q := range p.Part(f.Covering()) {
			for _, o := range q.Outline {
				assert.True(t, p.From <= o.X && o.X <= p.To, "what is cut out stays between the match lines")
			}
		}
	}
}

func TestBoxesAreLetteredFromTheLeft(t *testing.T) {
	f := laid(t, roomtest.Wall("Plant", `14'`, `9'`, roomtest.Box("outlet", "6'", "1' 6"), roomtest.Box("switch", "2'", "4'"), roomtest.Box("light", "2'", "1'")))
	var got []string
	for _, b := range f.Boxes() {
		got = append(got, b.Letter+" "+b.Kind)
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
	assert.Equal(t, []string{"door"}, []string{bar.OpeningsIn(bar.Hangs[2])[0].Kind})
	assert.Empty(t, bar.OpeningsIn(bar.Hangs[1]), "it ends at the door")
}
