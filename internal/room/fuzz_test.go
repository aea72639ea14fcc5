package room

import (
	"os"
	"path/filepath"
	"testing"

	"flitchlay/internal/source"

	"github.com/stretchr/testify/require"
)

// FuzzDecode holds that every text is read or refused, twice alike, and that what is read keeps what the program
// builds on.
func FuzzDecode(f *testing.F) {
	for _, pattern := range []string{"../../samples/*.toml", "../../templates/rooms/*.toml", "testdata/*.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(f, err)
		require.NotEmpty(f, files)
		for _, name := range files {
			text, err := os.ReadFile(name)
			require.NoError(f, err)
			f.Add(text)
		}
	}
	f.Add([]byte(least))
	f.Fuzz(func(t *testing.T, text []byte) {
		r, err := Decode("a.toml", text)
		again, errAgain := Decode("a.toml", text)
		if err != nil {
			require.EqualError(t, errAgain, err.Error())
			var all *source.Mistakes
			require.ErrorAs(t, err, &all)
			require.NotEmpty(t, all.List())
			return
		}
		require.NoError(t, errAgain)
		require.Equal(t, len(r.Walls), len(again.Walls))
		holdsTogether(t, r)
	})
}

// holdsTogether checks what later stages take for granted.
func holdsTogether(t *testing.T, r *Room) {
	require.NotEmpty(t, r.Walls)
	require.Positive(t, r.Rules.Snap)
	require.GreaterOrEqual(t, (r.Veneer.GrossWidth-r.Veneer.Overlap)/r.Rules.Snap*r.Rules.Snap, r.Rules.LeastWidth)
	covered := false
	names := map[string]bool{}
	for i := range r.Walls {
		w := &r.Walls[i]
		covered = covered || w.Cover
		require.False(t, names[w.Name], w.Name)
		names[w.Name] = true
		require.Positive(t, w.Length)
		for _, profile := range [][]Point{w.Ceiling, w.Floor} {
			require.Zero(t, profile[0].X)
			require.Equal(t, w.Length, profile[len(profile)-1].X)
			for k := 1; k < len(profile); k++ {
				require.LessOrEqual(t, profile[k-1].X, profile[k].X)
			}
		}
		for _, x := range stops(0, w.Length, w.Ceiling, w.Floor) {
			require.Greater(t, At(w.Ceiling, x), At(w.Floor, x))
			require.Greater(t, AtRight(w.Ceiling, x), AtRight(w.Floor, x))
		}
		require.Equal(t, w.Corner == Inside || w.Corner == Outside, w.Angle > 0)
		for k := range w.Openings {
			o := &w.Openings[k]
			require.GreaterOrEqual(t, o.FromLeft, L(0))
			require.Positive(t, o.Width)
			require.LessOrEqual(t, o.Right(), w.Length)
			require.Greater(t, o.Head, o.Sill)
			require.True(t, o.Grain == "" || w.FullHeight(o))
		}
		for _, b := range w.Boxes {
			require.Positive(t, b.HoleWidth)
			require.LessOrEqual(t, b.HoleWidth, b.PlateWidth)
			require.LessOrEqual(t, b.HoleHigh, b.PlateHigh)
		}
	}
	require.True(t, covered)
	for _, f := range r.Flitches {
		require.NotEmpty(t, usable(f))
	}
}
