package roomtest

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// PlanOf lays a room file out.
func PlanOf(t require.TestingT, name string, text []byte) *layout.Plan {
	r, err := room.Decode(name, text)
	require.NoError(t, err)
	p, err := layout.Lay(r)
	require.NoError(t, err)
	return p
}

// laidOut are the rooms that some test has asked for, by their text.
var laidOut sync.Map // of func() (*layout.Plan, error)

// Laid decodes and lays out a room, once for all tests: nothing changes a plan.
func Laid(t require.TestingT, name, text string) *layout.Plan {
	once, _ := laidOut.LoadOrStore(text, sync.OnceValues(func() (*layout.Plan, error) {
		r, err := room.Decode(name, []byte(text))
		if err != nil {
			return nil, err
		}
		return layout.Lay(r)
	}))
	p, err := once.(func() (*layout.Plan, error))()
	require.NoError(t, err)
	return p
}

// Samples are the rooms that come with the program: samples and starters, by folder and file.
func Samples(t testing.TB) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, dir := range []string{"../../samples", "../../templates/rooms"} {
		files, err := filepath.Glob(dir + "/*.toml")
		require.NoError(t, err)
		require.NotEmpty(t, files, "rooms in %s", dir)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			out[filepath.Base(dir)+" "+filepath.Base(f)] = string(text)
		}
	}
	return out
}

// SamplePlans are the samples and starters as laid out, by folder and file.
func SamplePlans(t testing.TB) map[string]*layout.Plan {
	t.Helper()
	out := map[string]*layout.Plan{}
	for name, text := range Samples(t) {
		out[name] = Laid(t, name, text)
	}
	return out
}

// AllRooms are the samples, the starters and the odd rooms.
func AllRooms(t testing.TB) map[string]string {
	t.Helper()
	out := Samples(t)
	maps.Copy(out, OddRooms)
	return out
}

// OnPapers tries every room on papers, side by side: on one of them, by turns, or with FLITCHLAY_CHECK=1 on all.
func OnPapers(t *testing.T, rooms map[string]string, papers []string, try func(t *testing.T, text, paper string)) {
	t.Helper()
	require.NotEmpty(t, rooms)
	require.NotEmpty(t, papers)
	for i, why := range slices.Sorted(maps.Keys(rooms)) {
		for _, name := range effort.Turns(i, papers) {
			t.Run(why+", "+name, func(t *testing.T) {
				t.Parallel()
				try(t, rooms[why], name)
			})
		}
	}
}
