package wood

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// coefficientOf is the dimensional change coefficient that belongs to a shrinkage: equation 13-3 at 10 per cent.
func coefficientOf(shrinkage float64) float64 { return 1 / (3000/shrinkage - 20) }

// The handbook's two tables hang together: a coefficient is equation 13-3 at 10 per cent of the shrinkage. So each row
// with figures from both checks the other.
//
// Source: Wood Handbook, FPL-GTR-190 (2010), Tables 13-5 and 4-3.
func TestCoefficientsAgreeWithShrinkage(t *testing.T) {
	tried := 0
	var off []string
	for _, s := range All() {
		if s.Radial.Status != Read || s.Tangential.Status != Read {
			continue
		}
		if s.Name() == "white oak" || s.Name() == "red oak" {
			continue // commercial oak is a blend of several, shrinkage is of one
		}
		tried++
		for _, pair := range [][2]float64{{s.Radial.Value, s.ShrinksRadial}, {s.Tangential.Value, s.ShrinksTangential}} {
			linked := coefficientOf(pair[1])
			assert.InDelta(t, pair[0], linked, 0.0000065, s.Name())
			if strconv.FormatFloat(linked, 'f', 5, 64) != strconv.FormatFloat(pair[0], 'f', 5, 64) {
				off = append(off, s.Name())
			}
		}
	}
	assert.Equal(t, 16, tried)
	assert.Equal(t, []string{"sycamore"}, off, "all others to the last printed digit")
}

func TestComputedCoefficientsFollowFromShrinkage(t *testing.T) {
	tried := 0
	for _, s := range All() {
		for _, c := range []struct {
			Coefficient
			shrinks float64
		}{{s.Radial, s.ShrinksRadial}, {s.Tangential, s.ShrinksTangential}} {
			if c.Status == Computed {
				tried++
				assert.InDelta(t, coefficientOf(c.shrinks), c.Value, 0.000005, s.Name())
			}
		}
	}
	assert.Equal(t, 11, tried)
}

func TestShrinkageAndCoefficientAreInverse(t *testing.T) {
	for shrinkage := 2.0; shrinkage < 13; shrinkage += 0.1 {
		assert.InDelta(t, shrinkage, ShrinkageOf(coefficientOf(shrinkage)), 1e-9)
	}
}

// What holds of every hardwood in the handbook's tables.
func TestTheTableIsSound(t *testing.T) {
	seen := map[string]string{}
	for _, s := range All() {
		assert.Less(t, s.Radial.Value, s.Tangential.Value, "%s moves less across the rays", s.Name())
		assert.Less(t, s.ShrinksRadial, s.ShrinksTangential, s.Name())
		assert.True(t, 0.001 <= s.Radial.Value && s.Tangential.Value <= 0.0045, s.Name())
		if s.ShrinksVolume != 0 {
			assert.InDelta(t, s.ShrinksRadial+s.ShrinksTangential, s.ShrinksVolume, 2.5, s.Name())
		}
		assert.Contains(t, []string{"", "4-3", "4-4"}, s.ShrinkageTable)
		for _, name := range s.Names {
			key := strings.Join(wordsOf(name), " ")
			assert.Empty(t, seen[key], "%q stands twice", name)
			seen[key] = s.Name()
		}
	}
	assert.Len(t, All(), 29)
}

func TestAllIsACopy(t *testing.T) {
	All()[0].Radial.Value = 1
	assert.Equal(t, 0.00180, All()[0].Radial.Value)
}

func TestStatusOfACut(t *testing.T) {
	hickory := find(t, "hickory")
	assert.Equal(t, Restated, hickory.Status(Plain))
	assert.Equal(t, Memory, hickory.Status(Quarter))
	assert.Equal(t, Memory, hickory.Status(Rift), "the less sure of the two")
	assert.Equal(t, "from memory", Memory.String())
	assert.Equal(t, Read, find(t, "white oak").Status(AnyCut))
}

func TestFind(t *testing.T) {
	for name, want := range map[string]string{
		"white oak": "white oak", "White Oak": "white oak", "Oak, white": "white oak", "oak  (white)": "white oak",
		"black walnut": "walnut", "Walnut, black": "walnut", "WALNUT": "walnut", "sugar maple": "hard maple",
		"maple, hard": "hard maple", "Douglas fir": "Douglas-fir", "yellow poplar": "yellow-poplar", "khaya": "African mahogany",
		"European walnut": "European walnut", "ash": "white ash",
	} {
		s, ok := Find(name)
		require.True(t, ok, name)
		assert.Equal(t, want, s.Name(), name)
	}
	for _, name := range []string{"", "  ", "oak", "maple", "birch", "plywood", "white", "7"} {
		_, ok := Find(name)
		assert.False(t, ok, "%q names no one species", name)
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		name string
		n    int
		want []string
	}{
		{"oak", 3, []string{"red oak", "white oak"}},
		{"wite oak", 1, []string{"white oak"}},
		{"waluut", 1, []string{"walnut"}},
		{"chery", 3, []string{"cherry"}},
		{"birch", 3, []string{"paper birch", "yellow birch", "beech"}},
		{"wlanut", 1, []string{"walnut"}}, // neighbours exchanged count as one mistake
		{"xylophone", 3, nil},
		{strings.Repeat("x", 1000), 3, nil},
		{"", 3, nil},
	} {
		got := Nearest(c.name, c.n)
		assert.Equal(t, c.want, got, c.name)
	}
	assert.Subset(t, Nearest("maple", 5), []string{"hard maple", "soft maple"})
	assert.LessOrEqual(t, len(Nearest("American", 4)), 4)
}

func TestBands(t *testing.T) {
	assert.True(t, RoomHumidity.Holds(30))
	assert.True(t, RoomHumidity.Holds(55))
	assert.False(t, RoomHumidity.Holds(55.1))
	assert.False(t, RoomHumidity.Holds(math.NaN()))
	assert.False(t, Acclimatise.Holds(71))
	assert.True(t, Acclimatise.Holds(720))
	for _, b := range Bands() {
		assert.Equal(t, b.Status == Practice, b.Source == "", "%s: what has no source says so", b.What)
		assert.Less(t, b.Low, b.High)
		assert.True(t, slices.Contains([]string{"h", "d", "F", "%", "% moisture"}, b.Unit), b.Unit)
	}
}
