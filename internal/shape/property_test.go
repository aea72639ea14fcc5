package shape

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
)

// properties are what holds of every wall, however it is cut.
func properties(t *testing.T, name string, s sketch) {
	t.Helper()
	done := false
	defer func() {
		if !done {
			t.Logf("%s: %v", name, s)
		}
	}()
	grid := Grid(s.wall, s.uprights, s.levels)
	require.Len(t, grid, len(s.uprights)+1)

	whole := Covering(s.wall, s.uprights, s.levels)
	require.Equal(t, Twice(whole), Twice(all(grid)), "pieces add up to the covering")
	require.Equal(t, Twice(whole), CoveringArea(s.wall, s.uprights, s.levels))
	wellFormed(t, whole)

	for i, rows := range grid {
		require.Len(t, rows, len(s.levels)+1)
		low, high := Point{math.MinInt64, math.MinInt64}, Point{math.MaxInt64, math.MaxInt64}
		if i > 0 {
			low.X = s.uprights[i-1]
		}
		if i < len(s.uprights) {
			high.X = s.uprights[i]
		}
		for j, cell := range rows {
			low.Z, high.Z = math.MinInt64, math.MaxInt64
			if j > 0 {
				low.Z = s.levels[j-1]
			}
			if j < len(s.levels) {
				high.Z = s.levels[j]
			}
			wellFormed(t, cell)
			if a, b, ok := Bounds(cell); ok {
				require.True(t, low.X <= a.X && low.Z <= a.Z && b.X <= high.X && b.Z <= high.Z, "a piece stays between its cuts")
			}
		}
	}
	done = true
}

// wellFormed checks the order that the package promises.
func wellFormed(t *testing.T, polygons []Polygon) {
	t.Helper()
	ring := func(o Outline) {
		require.GreaterOrEqual(t, len(o), 3)
		for i, p := range o {
			require.False(t, compare(p, o[0]) < 0, "starts at its lowest, then leftmost point")
			next, after := o[(i+1)%len(o)], o[(i+2)%len(o)]
			require.NotZero(t, turn(p, next, after), "has no needless point")
			require.Equal(t, i, slices.Index(o, p), "comes through no point twice")
		}
	}
	for i, p := range polygons {
		ring(p.Outline)
		require.Positive(t, p.Outline.Twice(), "runs anticlockwise")
		require.Positive(t, p.Twice(), "holes leave something")
		if i > 0 {
			require.Negative(t, slices.CompareFunc(polygons[i-1].Outline, p.Outline, compare), "polygons are sorted")
		}
		for j, h := range p.Holes {
			ring(h)
			require.Negative(t, h.Twice(), "holes run clockwise")
			if j > 0 {
				require.Negative(t, slices.CompareFunc(p.Holes[j-1], h, compare), "holes are sorted")
			}
		}
	}
}

func TestPropertiesOfDegenerateWalls(t *testing.T) {
	t.Parallel()
	count := uint64(effort.Of(1000, 10_000))
	for _, scale := range []L{1, length.Inch + 1} {
		for seed := range count {
			properties(t, fmt.Sprintf("seed %d scale %d", seed, scale), randomSketch(seed, scale))
		}
	}
	for seed := range count {
		properties(t, fmt.Sprintf("shallow, seed %d", seed), shallowSketch(seed))
	}
}

// A mirrored wall gives mirrored pieces, to the last unit: rounding knows no side.
func TestMirroredWallsGiveMirroredPieces(t *testing.T) {
	t.Parallel()
	for seed := range uint64(effort.Of(200, 1000)) {
		for _, scale := range []L{1, 3*length.Inch + 1} {
			s := randomSketch(seed, scale)
			plain := Grid(s.wall, s.uprights, s.levels)

			wide := mirror(s, func(p Point) Point { return Point{-p.X, p.Z} })
			wide.wall.Left, wide.wall.Right = wide.wall.Right, wide.wall.Left
			slices.Reverse(wide.wall.Floor)
			slices.Reverse(wide.wall.Ceiling)
			for i, x := range s.uprights {
				wide.uprights[len(s.uprights)-1-i] = -x
			}
			got := Grid(wide.wall, wide.uprights, wide.levels)
			for i := range plain {
				for j := range plain[i] {
					require.Equal(t, Twice(plain[i][j]), Twice(got[len(got)-1-i][j]), "left to right, seed %d: %v", seed, s)
				}
			}

			tall := mirror(s, func(p Point) Point { return Point{p.X, -p.Z} })
			tall.wall.Floor, tall.wall.Ceiling = tall.wall.Ceiling, tall.wall.Floor
			for _, e := range []*Edge{&tall.wall.Left, &tall.wall.Right} {
				e.Foot, e.Head = e.Head, e.Foot
			}
			for i, z := range s.levels {
				tall.levels[len(s.levels)-1-i] = -z
			}
			got = Grid(tall.wall, tall.uprights, tall.levels)
			for i := range plain {
				for j := range plain[i] {
					require.Equal(t, Twice(plain[i][j]), Twice(got[i][len(got[i])-1-j]), "upside down, seed %d: %v", seed, s)
				}
			}
		}
	}
}

func mirror(s sketch, at func(Point) Point) sketch {
	points := func(ps []Point) []Point {
		var moved []Point
		for _, p := range ps {
			moved = append(moved, at(p))
		}
		return moved
	}
	edge := func(e Edge) Edge { return Edge{at(e.Foot), at(e.Head)} }
	m := sketch{uprights: slices.Clone(s.uprights), levels: slices.Clone(s.levels)}
	m.wall = Wall{Floor: points(s.wall.Floor), Ceiling: points(s.wall.Ceiling), Left: edge(s.wall.Left), Right: edge(s.wall.Right)}
	for _, h := range s.wall.Holes {
		p, q := at(Point{h.Left, h.Bottom}), at(Point{h.Right, h.Top})
		m.wall.Holes = append(m.wall.Holes, Rect{min(p.X, q.X), min(p.Z, q.Z), max(p.X, q.X), max(p.Z, q.Z)})
	}
	return m
}

func TestHolesComeInAnyOrder(t *testing.T) {
	t.Parallel()
	for seed := range uint64(effort.Of(400, 2000)) {
		s := randomSketch(seed, 1)
		want := Grid(s.wall, s.uprights, s.levels)
		slices.Reverse(s.wall.Holes)
		require.Equal(t, want, Grid(s.wall, s.uprights, s.levels), "seed %d: %v", seed, s)
	}
}

func FuzzGrid(f *testing.F) {
	for seed := range uint64(20) {
		f.Add(seed, int64(1))
		f.Add(seed, int64(3175))
	}
	f.Fuzz(func(t *testing.T, seed uint64, scale int64) {
		if scale < 1 || scale > int64(20*length.Metre) {
			t.Skip("no length of a wall")
		}
		properties(t, "coarse", randomSketch(seed, L(scale)))
		properties(t, "shallow", shallowSketch(seed))
	})
}

func BenchmarkTile(b *testing.B) {
	in := length.Inch
	wall := Wall{
		Floor:   []Point{{0, 0}, {240 * in, -in / 4}},
		Ceiling: []Point{{0, 114 * in}, {240 * in, 116 * in}},
		Left:    Leaning(0, in/4, 0, 114*in), Right: Leaning(240*in, -in/8, -in/4, 116*in),
		Holes: []Rect{{36 * in, 32 * in, 84 * in, 86 * in}, {150 * in, -in, 186 * in, 84 * in}, {100 * in, 15 * in, 102 * in, 18 * in}},
	}
	var seams []L
	for x := 47 * in / 2; x < 240*in; x += 47 * in / 2 {
		seams = append(seams, x)
	}
	for b.Loop() {
		Tile(wall, seams)
	}
}
