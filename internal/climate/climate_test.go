package climate

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/wood"
)

// TestSheetMovement holds the movement of a sheet 24 in wide from 70 F and 30 % to 50 % against figures computed from
// Table 13-5 and equations 4-5 and 13-2 of the Wood Handbook (FPL-GTR-190, FPL-GTR-282).
func TestSheetMovement(t *testing.T) {
	for _, c := range []struct {
		species string
		cut     wood.Cut
		inches  float64
	}{{"walnut", wood.Plain, 0.2022}, {"white oak", wood.Plain, 0.2693}, {"white oak", wood.Quarter, 0.1328}, {"cherry", wood.Plain, 0.1830},
		{"hard maple", wood.Plain, 0.2605}} {
		t.Run(c.species+" "+string(c.cut), func(t *testing.T) {
			s, err := FindSpecies(c.species)
			require.NoError(t, err)
			k := &Conditions{Shop: &wood.Climate{Temperature: 70, Humidity: 30}, Site: &wood.Climate{Temperature: 70, Humidity: 50}, Species: s, Cut: c.cut,
				Width: 24 * length.Inch, Low: 30, High: 55}
			move, m, ok := k.Move(*k.Shop, *k.Site)
			require.True(t, ok)
			assert.Equal(t, "13-2", m.Equation)
			assert.InDelta(t, c.inches, float64(move)/float64(length.Inch), 0.0001)
			assert.Contains(t, strings.Join(k.Lines(), "\n"), "grows")
			back, _, _ := k.Move(*k.Site, *k.Shop)
			assert.Equal(t, -move, back)
		})
	}
}

// TestYear holds the year's band, 30 to 55 % at 70 F, against figures computed from equation 4-5 of the Wood Handbook:
// 6.17 to 10.07 % moisture, and 24 in of plain walnut move 0.257 in.
func TestYear(t *testing.T) {
	s, err := FindSpecies("walnut")
	require.NoError(t, err)
	k := &Conditions{Site: &wood.Climate{Temperature: 70, Humidity: 45}, Species: s, Cut: wood.Plain, Width: 24 * length.Inch, Low: 30, High: 55}
	dry, damp, move, ok := k.Year(70)
	require.True(t, ok)
	assert.InDelta(t, 6.17, dry, 0.005)
	assert.InDelta(t, 10.07, damp, 0.005)
	assert.InDelta(t, 0.257, float64(move)/float64(length.Inch), 0.0005)
}

func TestSpeciesNotKnown(t *testing.T) {
	_, err := FindSpecies("white aok")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "white oak")
	_, err = FindSpecies("qqqqqqqq")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "--list")
	rows := SpeciesTable().Rows
	assert.Len(t, rows, len(wood.All()))
	for _, row := range rows {
		_, err := FindSpecies(row[0].Text)
		assert.NoError(t, err)
	}
}

func TestOfARoom(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		if !strings.HasSuffix(name, "reading-room.toml") {
			continue
		}
		k, err := Of(p.Room)
		require.NoError(t, err)
		assert.Equal(t, "white oak", k.Species.Name())
		assert.Equal(t, wood.Quarter, k.Cut)
		assert.Equal(t, wood.Climate{Temperature: 68, Humidity: 45}, *k.Site)
		assert.Equal(t, wood.Climate{Temperature: 70, Humidity: 35}, *k.Shop)
		assert.Equal(t, 49*length.Inch/2, k.Width)
		text := strings.Join(k.Lines(), "\n")
		for _, want := range []string{"free movement, an upper bound", "dew point", "the room's year", "at the seams"} {
			assert.Contains(t, text, want)
		}
		return
	}
	t.Fatal("no reading room")
}

func TestFine(t *testing.T) {
	assert.Equal(t, "0.250 in (6.35 mm)", fine(length.Inch/4))
	assert.Equal(t, "0.039 in (1.00 mm)", fine(length.Millimetre))
}
