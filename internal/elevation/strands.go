package elevation

import (
	"math"

	"flitchlay/internal/scene"
)

func seedOf(text string) uint64 {
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(text) {
		h = (h ^ uint64(text[i])) * 1099511628211
	}
	return h
}

// noise is an even number from 0 to 1 that depends on nothing but its arguments.
//
// Source: the finalizer of MurmurHash3.
func noise(seed uint64, n ...int) float64 {
	h := seed
	for _, v := range n {
		h ^= uint64(int64(v)) * 0x9e3779b97f4a7c15
		h ^= h >> 33
		h *= 0xff51afd7ed558ccd
		h ^= h >> 33
		h *= 0xc4ceb9fe1a85ec53
		h ^= h >> 33
	}
	return float64(h>>11) / (1 << 53)
}

// strand is one grain line of a leaf: where it stands across the leaf at a height, both as shares, and how strong.
type strand struct {
	points []scene.Point // x across the leaf 0..1, y up the wall in feet
	weight float64
}

// strands are the lines of one leaf of a flitch from the floor to a height in feet, about so many side by side.
func (w woods) strands(seed uint64, leaf int, height, many float64) []strand {
	if w.loose {
		seed += uint64(leaf) * 7919
		leaf = 0
	}
	if w.plain {
		return w.cathedrals(seed, leaf, height, many)
	}
	return w.straight(seed, leaf, height, many)
}

// straight are lines up the leaf that hardly waver, close in one part and wide in another. From leaf to leaf they
// drift a little, as slices of one log do.
func (w woods) straight(seed uint64, leaf int, height, many float64) []strand {
	n := max(int(many+0.5), 2)
	var out []strand
	x := 0.0
	for i := range n {
		x += (0.45 + 1.1*noise(seed, 1, i)) / float64(n)
		drift := 0.05 * (noise(seed, 2, i, leaf/3) - 0.5)
		lean := 0.05 * (noise(seed, 3, i) - 0.5)
		at := x + drift
		s := strand{weight: 0.7 + 0.6*noise(seed, 4, i)}
		const steps = 4
		for j := range steps + 1 {
			t := float64(j) / steps
			bend := 0.012 * math.Sin(6.3*(t+noise(seed, 5, i)))
			s.points = append(s.points, scene.Pt(at+lean*(t-0.5)+bend, t*height))
		}
		out = append(out, s)
	}
	return out
}

// Of cathedrals as they stand in a leaf of average width: arches over one another in feet, lines along each side, how many strands
// side by side that makes.
const (
	archPitch = 1.15
	sideLines = 5
	archMany  = 22
)

// cathedrals are nested arches in the middle of the leaf, and straight lines along its sides.
func (w woods) cathedrals(seed uint64, leaf int, height, many float64) []strand {
	dense := many / archMany
	sides := max(int(sideLines*dense+0.5), 1)
	var out []strand
	mid := 0.5 + 0.14*(noise(seed, 11)-0.5)
	for i := range sides {
		for side := range 2 {
			at := 0.02 + (0.045*float64(i)+0.02*noise(seed, 12, i, side))*sideLines/float64(sides)
			if side == 1 {
				at = 1 - at
			}
			s := strand{weight: 0.7 + 0.6*noise(seed, 13, i, side)}
			for j := range 7 {
				t := float64(j) / 6
				s.points = append(s.points, scene.Pt(at+0.012*math.Sin(6.3*(t*1.3+noise(seed, 14, i))), t*height))
			}
			out = append(out, s)
		}
	}
	// arches: each a parabola that opens downward, one above the other, climbing with the leaf
	pitch := archPitch / dense
	shift := archPitch * (noise(seed, 15) + 0.11*float64(leaf%9))
	for i := int(-8 * dense); float64(i)*pitch+shift < height+1; i++ {
		tip := float64(i)*pitch + shift + 0.43*pitch*noise(seed, 16, i)
		if tip <= 0 {
			continue
		}
		spread := 0.24 + 0.05*noise(seed, 17, i)
		reach := 5.5 + 3*noise(seed, 18, i) // feet from the tip to where the arch runs along the side
		var s strand
		s.weight = 0.8 + 0.5*noise(seed, 19, i)
		for j := -12; j <= 12; j++ {
			t := float64(j) / 12
			y := tip - reach*t*t*(0.35+0.65*math.Abs(t))
			s.points = append(s.points, scene.Pt(mid+spread*t+0.01*math.Sin(y*2.1+float64(i)), y))
		}
		out = append(out, s)
	}
	return out
}

// heavier is the next pen of the series, in mm.
//
// Source: ISO 128-2, each width the one before times the root of two.
func heavier(pen float64) float64 {
	for _, w := range []float64{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1} {
		if w > pen+1e-9 {
			return w
		}
	}
	return pen
}
