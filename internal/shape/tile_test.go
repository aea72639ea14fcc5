package shape

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

func TestGridOfNamedWalls(t *testing.T) {
	cases := []struct{ name, why, wall, want string }{
		{"plain wall", "nothing to cut",
			"floor 0,0 10,0; ceiling 0,8 10,8",
			"0,0 10,0 10,8 0,8"},
		{"two seams", "three sheets side by side",
			"floor 0,0 10,0; ceiling 0,8 10,8; seams 4 7",
			"0,0 4,0 4,8 0,8 | 4,0 7,0 7,8 4,8 | 7,0 10,0 10,8 7,8"},
		{"seam on the wall's end", "a sheet of no width has no piece",
			"floor 0,0 10,0; ceiling 0,8 10,8; seams 0 10",
			" | 0,0 10,0 10,8 0,8 | "},
		{"seams past the wall", "sheets beside the wall have no piece",
			"floor 0,0 10,0; ceiling 0,8 10,8; seams -3 5 12",
			" | 0,0 5,0 5,8 0,8 | 5,0 10,0 10,8 5,8 | "},
		{"window inside a sheet", "a hole, clockwise from its lowest left point",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,2 6,5",
			"0,0 10,0 10,8 0,8 - 3,2 3,5 6,5 6,2"},
		{"door", "a notch in the outline, which starts at its lowest, then leftmost point",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,0 6,5",
			"0,0 3,0 3,5 6,5 6,0 10,0 10,8 0,8"},
		{"door at the wall's left end", "the lowest point is not the leftmost",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 0,0 3,5",
			"3,0 10,0 10,8 0,8 0,5 3,5"},
		{"window over a whole sheet", "a sill piece and a header piece",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 8,5; seams 3 7",
			"0,0 3,0 3,2 2,2 2,5 3,5 3,8 0,8 | 3,0 7,0 7,2 3,2; 3,5 7,5 7,8 3,8 | 7,0 10,0 10,8 7,8 7,5 8,5 8,2 7,2"},
		{"seams on both edges of a window", "the legs are plain, the middle is two pieces",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,2 7,5; seams 3 7",
			"0,0 3,0 3,8 0,8 | 3,0 7,0 7,2 3,2; 3,5 7,5 7,8 3,8 | 7,0 10,0 10,8 7,8"},
		{"full-height gap", "no piece in it",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,-1 7,9; seams 3 7",
			"0,0 3,0 3,8 0,8 |  | 7,0 10,0 10,8 7,8"},
		{"window beside a window", "touching openings make one hole",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 4,5; hole 4,2 6,5",
			"0,0 10,0 10,8 0,8 - 2,2 2,5 6,5 6,2"},
		{"sidelight beside a taller window", "an L-shaped hole",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 4,6; hole 4,2 6,4",
			"0,0 10,0 10,8 0,8 - 2,2 2,6 4,6 4,4 6,4 6,2"},
		{"window over a built-in", "a T-shaped hole",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 8,4; hole 4,4 6,6",
			"0,0 10,0 10,8 0,8 - 2,2 2,4 4,4 4,6 6,6 6,4 8,4 8,2"},
		{"window over a door", "a taller notch",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,0 6,4; hole 3,4 6,6",
			"0,0 3,0 3,6 6,6 6,0 10,0 10,8 0,8"},
		{"overlapping openings", "their union is taken out once",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 5,5; hole 4,4 7,6",
			"0,0 10,0 10,8 0,8 - 2,2 2,5 4,5 4,6 7,6 7,4 5,4 5,2"},
		{"openings that touch at a corner", "two holes: an outline never touches itself",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 2,2 4,4; hole 4,4 6,6",
			"0,0 10,0 10,8 0,8 - 2,2 2,4 4,4 4,2 - 4,4 4,6 6,6 6,4"},
		{"ring of openings", "what is inside is a piece of its own",
			"floor 0,0 10,0; ceiling 0,9 10,9; hole 1,1 6,2; hole 6,1 7,6; hole 2,6 7,7; hole 1,2 2,7",
			"0,0 10,0 10,9 0,9 - 1,1 1,7 7,7 7,1; 2,2 6,2 6,6 2,6"},
		{"window in a piece inside a ring of openings", "its hole belongs to the inner piece",
			"floor 0,0 12,0; ceiling 0,12 12,12; hole 1,1 10,2; hole 10,1 11,11; hole 1,10 10,11; hole 1,2 2,10; hole 5,5 7,7",
			"0,0 12,0 12,12 0,12 - 1,1 1,11 11,11 11,1; 2,2 10,2 10,10 2,10 - 5,5 5,7 7,7 7,5"},
		{"ring of openings that touch at corners", "the same, though no side is shared",
			"floor 0,0 9,0; ceiling 0,9 9,9; hole 2,1 6,2; hole 6,2 7,6; hole 2,6 6,7; hole 1,2 2,6",
			"0,0 9,0 9,9 0,9 - 2,1 2,2 1,2 1,6 2,6 2,7 6,7 6,6 7,6 7,2 6,2 6,1; 2,2 6,2 6,6 2,6"},
		{"opening past the wall's end", "a notch as deep as the wall goes",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole -3,2 2,5",
			"0,0 10,0 10,8 0,8 0,5 2,5 2,2 0,2"},
		{"opening past the ceiling", "a notch from above",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,5 6,12",
			"0,0 10,0 10,8 6,8 6,5 3,5 3,8 0,8"},
		{"opening that is all of the wall", "nothing is left",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 0,0 10,8",
			""},
		{"opening without width", "takes nothing out",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,2 3,5",
			"0,0 10,0 10,8 0,8"},
		{"sloped ceiling", "8 + 3/10 x 4 = 9.2 rounds to 9, a point of both pieces",
			"floor 0,0 10,0; ceiling 0,8 10,11; seams 4",
			"0,0 4,0 4,9 0,8 | 4,0 10,0 10,11 4,9"},
		{"half a unit over nought", "halves go away from nought: 0.5 to 1",
			"floor 0,-5 4,-5; ceiling 0,0 4,1; seams 2",
			"0,-5 2,-5 2,1 0,0 | 2,-5 4,-5 4,1 2,1"},
		{"half a unit under nought", "halves go away from nought: -0.5 to -1",
			"floor 0,-5 4,-5; ceiling 0,0 4,-1; seams 2",
			"0,-5 2,-5 2,-1 0,0 | 2,-5 4,-5 4,-1 2,-1"},
		{"sloped floor and ceiling", "both slopes get the seam's points",
			"floor 0,0 10,-2; ceiling 0,8 10,10; seams 5",
			"5,-1 5,9 0,8 0,0 | 10,-2 10,10 5,9 5,-1"},
		{"stepped ceiling", "a soffit; two points at one x are a step",
			"floor 0,0 10,0; ceiling 0,8 4,8 4,6 10,6; seams 3 4",
			"0,0 3,0 3,8 0,8 | 3,0 4,0 4,8 3,8 | 4,0 10,0 10,6 4,6"},
		{"step inside a sheet", "the step is a side of the outline",
			"floor 0,0 10,0; ceiling 0,8 4,8 4,6 10,6",
			"0,0 10,0 10,6 4,6 4,8 0,8"},
		{"beam", "a step down and up again",
			"floor 0,0 10,0; ceiling 0,8 4,8 4,6 6,6 6,8 10,8",
			"0,0 10,0 10,8 6,8 6,6 4,6 4,8 0,8"},
		{"beam down to the floor", "two pieces, nothing under the beam",
			"floor 0,0 10,0; ceiling 0,8 4,8 4,0 6,0 6,8 10,8",
			"0,0 4,0 4,8 0,8; 6,0 10,0 10,8 6,8"},
		{"step down past a sloped floor", "the step's foot is a point of the slope: 2/10 x 4 = 0.8 rounds to 1",
			"floor 0,0 10,2; ceiling 0,8 4,8 4,-1 10,-1",
			"0,0 4,1 4,8 0,8"},
		{"ceiling under the floor", "no covering where they cross",
			"floor 0,0 10,0; ceiling 0,5 10,-5",
			"0,0 5,0 0,5"},
		{"rake down to nought", "a triangle",
			"floor 0,0 12,0; ceiling 0,0 12,4; seams 3 6",
			"0,0 3,0 3,1 | 3,0 6,0 6,2 3,1 | 6,0 12,0 12,4 6,2"},
		{"gable", "the apex is a point of its piece",
			"floor 0,0 8,0; ceiling 0,4 4,8 8,4; seams 3 6",
			"0,0 3,0 3,7 0,4 | 3,0 6,0 6,6 4,8 3,7 | 6,0 8,0 8,4 6,6"},
		{"slope through three points in line", "a needless point is left out",
			"floor 0,0 8,0; ceiling 0,4 4,6 8,8",
			"0,0 8,0 8,8 0,4"},
		{"opening under a slope", "its head meets the slope at 10/3 = 3.3, which rounds to 3; its left side at 8.6, to 9; its right side does not",
			"floor 0,0 10,0; ceiling 0,8 10,11; hole 2,3 6,9",
			"0,0 10,0 10,11 3,9 6,9 6,3 2,3 2,9 0,8"},
		{"left end leans inward", "lean is how far it moves to the right",
			"floor 0,0 10,0; ceiling 0,8 10,8; left 2",
			"0,0 10,0 10,8 2,8"},
		{"left end leans outward", "the ceiling goes on level",
			"floor 0,0 10,0; ceiling 0,8 10,8; left -2",
			"0,0 10,0 10,8 -2,8"},
		{"right end leans inward", "to the left is negative",
			"floor 0,0 10,0; ceiling 0,8 10,8; right -2",
			"0,0 10,0 8,8 0,8"},
		{"right end leans outward", "the ceiling goes on level",
			"floor 0,0 10,0; ceiling 0,8 10,8; right 2",
			"0,0 10,0 12,8 0,8"},
		{"both ends lean and meet", "a triangle",
			"floor 0,0 4,0; ceiling 0,8 4,8; left 4; right -4",
			"0,0 4,0 2,4"},
		{"seam in the strip of a leaning end", "both sheets have a part: at x 1 the end is 4 high",
			"floor 0,0 10,0; ceiling 0,8 10,8; left 2; seams 1",
			"0,0 1,0 1,4 | 1,0 10,0 10,8 2,8 1,4"},
		{"seam in the strip of an outward end", "the sheet outside the foot has a part",
			"floor 0,0 10,0; ceiling 0,8 10,8; left -2; seams -1 1",
			"-1,4 -1,8 -2,8 | 0,0 1,0 1,8 -1,8 -1,4 | 1,0 10,0 10,8 1,8"},
		{"opening in the strip of a leaning end", "its head and sill meet the end: 3/4 x 1 rounds to 1, 6/4 to 2",
			"floor 0,0 10,0; ceiling 0,8 10,8; left 2; hole 0,3 5,6",
			"0,0 10,0 10,8 2,8 2,6 5,6 5,3 1,3"},
		{"leaning end under a slope", "8 z = 64 + 3 x, z = 8 x: x 1.05, z 8.4 round to 1,8",
			"floor 0,0 8,0; ceiling 0,8 8,11; left 1; seams 4",
			"0,0 4,0 4,10 1,8 | 4,0 8,0 8,11 4,10"},
		{"two courses", "one joint, two rows in each column",
			"floor 0,0 10,0; ceiling 0,8 10,8; seams 4; levels 5",
			"0,0 4,0 4,5 0,5 / 0,5 4,5 4,8 0,8 | 4,0 10,0 10,5 4,5 / 4,5 10,5 10,8 4,8"},
		{"joint on a head", "the door is in the lower course alone",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,0 6,5; levels 5",
			"0,0 3,0 3,5 0,5; 6,0 10,0 10,5 6,5 / 0,5 10,5 10,8 0,8"},
		{"joint behind an opening", "the opening stays one",
			"floor 0,0 10,0; ceiling 0,8 10,8; hole 3,2 6,6; levels 4",
			"0,0 10,0 10,4 6,4 6,2 3,2 3,4 0,4 / 0,4 3,4 3,6 6,6 6,4 10,4 10,8 0,8"},
		{"joint under a slope", "the slope is cut at 10/3 = 3.3, which rounds to 3",
			"floor 0,0 10,0; ceiling 0,8 10,11; levels 9",
			"0,0 10,0 10,9 3,9 0,8 / 3,9 10,9 10,11"},
		{"joint over the ceiling", "the upper row is empty",
			"floor 0,0 10,0; ceiling 0,8 10,8; levels 9",
			"0,0 10,0 10,8 0,8 / "},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := readSketch(t, c.wall)
			grid := Grid(s.wall, s.uprights, s.levels)
			assert.Equal(t, c.want, writeGrid(grid), c.why)
			assert.Equal(t, CoveringArea(s.wall, s.uprights, s.levels), Twice(all(grid)))
		})
	}
}

// A 22 in net sheet under a 4:12 rake rises 7 1/3 in.
func TestRakeAcrossOneSheet(t *testing.T) {
	in := length.Inch
	wall := Wall{
		Floor: []Point{{0, 0}, {120 * in, 0}}, Ceiling: []Point{{0, 96 * in}, {120 * in, 136 * in}},
		Left: Leaning(0, 0, 0, 96*in), Right: Leaning(120*in, 0, 0, 136*in),
	}
	low, high, ok := Extent(wall, 0, 22*in)
	require.True(t, ok)
	assert.Equal(t, L(0), low)
	// 96 + 22/3 in = 20 997 333 1/3 units
	assert.Equal(t, L(20_997_333), high)

	_, high, ok = Extent(wall, 22*in, 44*in)
	require.True(t, ok)
	assert.Equal(t, L(22_487_467), high, "96 + 44/3 in = 22 487 466 2/3 units")
}

// A return of 6 in at the floor beside a corner that leans 3/8 in over 96 in is 5 5/8 in at the ceiling.
func TestReturnBesideALeaningCorner(t *testing.T) {
	in := length.Inch
	wall := Wall{
		Floor: []Point{{0, 0}, {100 * in, 0}}, Ceiling: []Point{{0, 96 * in}, {100 * in, 96 * in}},
		Left: Leaning(0, 3*in/8, 0, 96*in), Right: Leaning(100*in, 0, 0, 96*in),
	}
	piece := Tile(wall, []L{6 * in})[0]
	require.Len(t, piece, 1)
	assert.Equal(t, Outline{{0, 0}, {6 * in, 0}, {6 * in, 96 * in}, {3 * in / 8, 96 * in}}, piece[0].Outline)
	assert.Equal(t, 6*in-3*in/8, piece[0].Outline[2].X-piece[0].Outline[3].X)
	assert.Equal(t, 48*in*(12*in-3*in/8), L(piece[0].Area()), "a trapezoid: half the height times both widths")
}

func TestExtentLeavesOpeningsIn(t *testing.T) {
	s := readSketch(t, "floor 0,1 10,0; ceiling 0,8 4,8 4,6 10,6; hole 2,-1 7,5")
	for _, c := range []struct {
		why                    string
		left, right, low, high L
		ok                     bool
	}{
		{"over the step the higher side counts", 3, 7, 0, 8, true},
		{"right of the step only the lower", 4, 7, 0, 6, true},
		{"the floor's lowest point is at the right", 0, 3, 1, 8, true},
		{"past the end", 10, 12, 0, 0, false},
		{"no width", 3, 3, 0, 0, false},
		{"partly past the end", 9, 12, 0, 6, true},
	} {
		low, high, ok := Extent(s.wall, c.left, c.right)
		assert.Equal(t, []any{c.low, c.high, c.ok}, []any{low, high, ok}, c.why)
	}
}

// The extent of a row between two cuts is that of the pieces that Grid cuts there, also in degenerate walls.
func TestExtentsAreThoseOfPieces(t *testing.T) {
	some := 0
	for seed := range uint64(150) {
		s := randomSketch(seed, 1+L(seed%3)*700)
		if seed%2 == 0 {
			s = shallowSketch(seed)
		}
		solid := s.wall
		solid.Holes = nil
		for i := range len(s.uprights) - 1 {
			left, right := s.uprights[i], s.uprights[i+1]
			if left == right {
				continue
			}
			for row, polygons := range Grid(solid, []L{left, right}, s.levels)[1] {
				bottom, top, want := Bounds(polygons)
				low, high, ok := RowExtent(s.wall, left, right, s.levels, row)
				require.Equal(t, []any{want, bottom.Z, top.Z}, []any{ok, low, high}, "%d: %s", seed, s)
				if ok {
					some++
				}
			}
		}
	}
	require.Greater(t, some, 150)
}

func TestReachOfALeaningWall(t *testing.T) {
	s := readSketch(t, "floor 0,0 10,0; ceiling 0,8 10,8; left -2; right 2; hole 0,0 10,4")
	for _, c := range []struct {
		why                    string
		low, high, left, right L
		ok                     bool
	}{
		{"lower half: at z 4 both ends have moved by 1", 0, 4, -1, 11, true},
		{"upper half", 4, 8, -2, 12, true},
		{"over the ceiling", 8, 9, 0, 0, false},
		{"no height", 4, 4, 0, 0, false},
	} {
		left, right, ok := Reach(s.wall, c.low, c.high)
		assert.Equal(t, []any{c.left, c.right, c.ok}, []any{left, right, ok}, c.why)
	}
}

func TestAreas(t *testing.T) {
	triangle := Outline{{0, 0}, {1, 0}, {1, 1}}
	assert.Equal(t, length.Area(1), triangle.Twice())
	assert.Equal(t, length.Area(1), triangle.Area(), "half a unit is rounded away from nought")
	back := Outline{{0, 0}, {1, 1}, {1, 0}}
	assert.Equal(t, length.Area(-1), back.Twice(), "clockwise")
	assert.Equal(t, length.Area(-1), back.Area())
	frame := Polygon{Outline{{0, 0}, {5, 0}, {5, 4}, {0, 4}}, []Outline{{{1, 1}, {1, 3}, {3, 3}, {3, 1}}}}
	assert.Equal(t, length.Area(16), frame.Area())
	assert.Equal(t, length.Area(0), Outline(nil).Twice())
}

// The longest wall that is read, far from nought, with every corner askew.
func TestLongestWallKeepsEveryUnit(t *testing.T) {
	width, high := length.Limit, 30*length.Metre
	wall := Wall{
		Floor:   []Point{{0, -7}, {width, 3 * length.Metre}},
		Ceiling: []Point{{0, high - 1_234_567}, {width/3 + 1, high}, {width, high - 76_543}},
		Left:    Leaning(0, 12_345, -7, high-1_234_567),
		Right:   Leaning(width, -54_321, 3*length.Metre, high-76_543),
		Holes:   []Rect{{width / 7, 0, width / 2, high / 3}, {width / 2, high / 2, width, 2 * high}},
	}
	var seams []L
	for x := L(1); x < width; x += 7_654_321 {
		seams = append(seams, x)
	}
	sum := new(big.Int)
	for _, tile := range Tile(wall, seams) {
		for _, p := range tile {
			sum.Add(sum, big.NewInt(int64(p.Twice())))
		}
	}
	assert.Equal(t, int64(CoveringArea(wall, seams, nil)), sum.Int64())
	assert.True(t, sum.IsInt64())
}

func TestCutsThatDoNotAscendAreRefused(t *testing.T) {
	s := readSketch(t, "floor 0,0 10,0; ceiling 0,8 10,8")
	assert.PanicsWithValue(t, "shape: cuts do not ascend", func() { Tile(s.wall, []L{4, 2}) })
	assert.PanicsWithValue(t, "shape: cuts do not ascend", func() { Grid(s.wall, nil, []L{4, 2}) })
}

// The covering stops over the base, the edge leans from the floor: at the base it has moved by its share.
func TestLeanCountsFromTheWallsOwnFloor(t *testing.T) {
	wall := Wall{
		Floor: []Point{{0, 2}, {12, 2}}, Ceiling: []Point{{0, 6}, {12, 6}},
		Left: Leaning(0, 4, 0, 8), Right: Leaning(12, -8, 0, 8),
	}
	assert.Equal(t, "1,2 10,2 6,6 3,6", write(Covering(wall, nil, nil)))
}

// Beside an eased corner the covering starts where the arc ends, inside the profile.
func TestEdgeInsideTheProfile(t *testing.T) {
	wall := Wall{
		Floor: []Point{{0, 0}, {10, 0}}, Ceiling: []Point{{0, 8}, {10, 11}},
		Left: Leaning(2, 0, 0, 8), Right: Leaning(9, 0, 0, 11),
	}
	assert.Equal(t, "2,0 9,0 9,11 2,9", write(Covering(wall, nil, nil)), "8.6 rounds to 9, 10.7 to 11")
}

// A long line that is rounded far from where it leaves the covering still keeps to its side of all others there.
func TestRoundingFarAwayMovesNoLineAcrossAnother(t *testing.T) {
	wall := Wall{
		Floor: []Point{{0, 6}, {158, 10}, {230, 13}, {300, 16}}, Ceiling: []Point{{0, 21}, {253, 27}, {300, 18}},
		Left: Edge{Point{58, 7}, Point{188, 12}}, Right: Edge{Point{280, 7}, Point{327, 24}},
	}
	seams := []L{66, 89, 196, 259}
	assert.Equal(t, CoveringArea(wall, seams, nil), Twice(all(Grid(wall, seams, nil))))
}
