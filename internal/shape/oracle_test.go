package shape

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
)

// oracle is the covering as an outside polygon library builds it from half planes, in grid steps: what is under the
// ceiling and over the floor and between the edges, less every hole, without any rounding of ours.
//
// Source: github.com/peterstace/simplefeatures v0.50.0, geom.Intersection, geom.Difference, geom.Area.
func oracle(t *testing.T, s sketch, scale float64) geom.Geometry {
	t.Helper()
	const far = 100
	at := func(l L) float64 { return float64(l) / scale }
	profile := func(points []Point, beyond float64) geom.Geometry {
		way := []float64{-far, beyond, -far, at(points[0].Z)}
		for i, p := range points {
			if i > 0 && i+1 < len(points) && points[i-1].X == p.X && p.X == points[i+1].X {
				continue // of several points at one x the first and the last make the step
			}
			way = append(way, at(p.X), at(p.Z))
		}
		return ring(append(way, far, at(last(points).Z), far, beyond))
	}
	side := func(e Edge, beyond float64) geom.Geometry {
		run := at(e.Head.X-e.Foot.X) / at(e.Head.Z-e.Foot.Z)
		foot := at(e.Foot.X) - run*at(e.Foot.Z)
		return ring([]float64{beyond, -far / 2, foot - run*far/2, -far / 2, foot + run*far/2, far / 2, beyond, far / 2})
	}
	covering := profile(s.wall.Ceiling, -far)
	for _, other := range []geom.Geometry{
		profile(s.wall.Floor, far), side(s.wall.Left, far), side(s.wall.Right, -far),
	} {
		covering = intersection(t, covering, other)
	}
	for _, h := range s.wall.Holes {
		if h.Left < h.Right && h.Bottom < h.Top {
			var err error
			covering, err = geom.Difference(covering, box(at(h.Left), at(h.Bottom), at(h.Right), at(h.Top)))
			require.NoError(t, err)
		}
	}
	return covering
}

// ring closes a ring of x, z pairs, leaving out points that repeat.
func ring(way []float64) geom.Geometry {
	var plain []float64
	for i := 0; i < len(way); i += 2 {
		if n := len(plain); n > 0 && plain[n-2] == way[i] && plain[n-1] == way[i+1] {
			continue
		}
		plain = append(plain, way[i], way[i+1])
	}
	plain = append(plain, plain[0], plain[1])
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(plain, geom.DimXY))}).AsGeometry()
}

func box(left, bottom, right, top float64) geom.Geometry {
	return ring([]float64{left, bottom, right, bottom, right, top, left, top})
}

func intersection(t *testing.T, g, h geom.Geometry) geom.Geometry {
	t.Helper()
	both, err := geom.Intersection(g, h)
	require.NoError(t, err)
	return both
}

// outside makes polygons of ours into one of the library's; it refuses what is no valid polygon.
func outside(t *testing.T, p Polygon, scale float64) geom.Geometry {
	t.Helper()
	var rings []geom.LineString
	for _, o := range append([]Outline{p.Outline}, p.Holes...) {
		var way []float64
		for _, q := range append(o[:len(o):len(o)], o[0]) {
			way = append(way, float64(q.X)/scale, float64(q.Z)/scale)
		}
		rings = append(rings, geom.NewLineString(geom.NewSequence(way, geom.DimXY)))
	}
	polygon := geom.NewPolygon(rings)
	require.NoError(t, polygon.Validate(), "a valid polygon: %v", p)
	return polygon.AsGeometry()
}

// The pieces have the area together that the library finds, so has each (tried in every fifth wall), and each lies where
// the library's does (in every fiftieth): what they differ by is less than the rounding of the slopes can make.
func TestPiecesAgreeWithAPolygonLibrary(t *testing.T) {
	t.Parallel()
	count := uint64(effort.Of(1000, 20_000))
	const scale = float64(length.Foot)
	// All slopes together are under 200 steps long; no point of them moves by more than a unit.
	const allowed = 200 / scale
	// Here a sliver of 1e-15 is left in the library's covering, and its cells no longer add up to it.
	const sliver = 18880
	for seed := range count {
		s := randomSketch(seed, length.Foot)
		covering := oracle(t, s, scale)
		grid := Grid(s.wall, s.uprights, s.levels)
		require.InDelta(t, covering.Area(), squareSteps(Twice(all(grid)), scale), allowed, "seed %d: %v", seed, s)

		if seed%5 != 0 {
			continue
		}
		cells := oracleCells(t, covering, s, scale)
		sum := 0.0
		for _, rows := range cells {
			for _, cell := range rows {
				sum += cell.Area()
			}
		}
		if seed == sliver {
			require.Greater(t, math.Abs(sum-covering.Area()), allowed, "seed %d is no exception any more", seed)
			continue
		}
		for i, rows := range grid {
			for j, cell := range rows {
				want := cells[i][j]
				require.InDelta(t, want.Area(), squareSteps(Twice(cell), scale), allowed, "column %d row %d of seed %d: %v", i, j, seed, s)
				if seed%50 != 0 {
					continue
				}
				common := 0.0
				for _, p := range cell {
					common += intersection(t, want, outside(t, p, scale)).Area()
				}
				require.InDelta(t, want.Area(), common, allowed, "lies elsewhere: column %d row %d of seed %d: %v", i, j, seed, s)
			}
		}
	}
}

// oracleCells cuts the library's covering by boxes.
func oracleCells(t *testing.T, covering geom.Geometry, s sketch, scale float64) [][]geom.Geometry {
	t.Helper()
	const far = 40
	cut := func(cuts []L, i int) float64 {
		switch {
		case i < 0:
			return -far
		case i >= len(cuts):
			return far
		}
		return float64(cuts[i]) / scale
	}
	var cells [][]geom.Geometry
	for i := range len(s.uprights) + 1 {
		var rows []geom.Geometry
		for j := range len(s.levels) + 1 {
			var cell geom.Geometry
			if left, right := cut(s.uprights, i-1), cut(s.uprights, i); left < right {
				cell = intersection(t, covering, box(left, cut(s.levels, j-1), right, cut(s.levels, j)))
			}
			rows = append(rows, cell)
		}
		cells = append(cells, rows)
	}
	return cells
}

func squareSteps(twice length.Area, scale float64) float64 { return float64(twice) / 2 / scale / scale }

// With one unit to a grid step every slope is rounded hard: pieces still are valid polygons, none overlaps another, and
// the covering differs from the true one by no more than rounding can make.
func TestPiecesNeverOverlap(t *testing.T) {
	t.Parallel()
	count := uint64(effort.Of(300, 2000))
	for seed := range count {
		s := randomSketch(seed, 1)
		pieces := all(Grid(s.wall, s.uprights, s.levels))
		var polygons []geom.Geometry
		for _, p := range pieces {
			polygons = append(polygons, outside(t, p, 1))
		}
		union, err := geom.UnionMany(polygons)
		require.NoError(t, err)
		require.InDelta(t, union.Area(), float64(Twice(pieces))/2, 1e-9, "overlap, seed %d: %v", seed, s)

		whole := 0.0
		for _, p := range Covering(s.wall, s.uprights, s.levels) {
			whole += outside(t, p, 1).Area()
		}
		require.InDelta(t, whole, union.Area(), 1e-9, "seed %d: %v", seed, s)

		var slopes float64
		for _, way := range [][]Point{s.wall.Floor, s.wall.Ceiling, {s.wall.Left.Foot, s.wall.Left.Head}, {s.wall.Right.Foot, s.wall.Right.Head}} {
			for i, p := range way[1:] {
				slopes += math.Hypot(float64(p.X-way[i].X), float64(p.Z-way[i].Z))
			}
		}
		require.InDelta(t, oracle(t, s, 1).Area(), whole, slopes, "seed %d: %v", seed, s)
	}
}
