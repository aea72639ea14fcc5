package crew_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/pole"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

func TestInstallSaysWhatMayNotBeHung(t *testing.T) {
	text := strings.Replace(roomtest.SmallRoom, `length = "10'"`, `length = "8'"`, 1)
	text = strings.Replace(text, "[room]\n", "[rules]\njoint_height = \"2'\"\n[room]\n", 1)
	p := roomtest.PlanOf(t, "short.toml", []byte(strings.Replace(text, `sheets = "4-20"`, `sheets = "4-8"`, 1)))
	d, err := crew.Install(p, roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	pole, err := pole.Draw(p, roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	for _, page := range append(d.Pages, pole.Pages...) {
		assert.Contains(t, crew.TextsOf(&page.Group), "NOT FOR HANGING", "page %s", page.Name)
	}
	for _, page := range crew.SmallInstall(t).Pages {
		assert.NotContains(t, crew.TextsOf(&page.Group), "NOT FOR HANGING", "page %s", page.Name)
	}
}

func TestInstallSamplesAreClean(t *testing.T) {
	roomtest.OnPapers(t, roomtest.Samples(t), []string{"ansi-a", "a4"}, func(t *testing.T, text, paper string) {
		p := roomtest.Laid(t, "room.toml", text)
		d, err := crew.Install(p, roomtest.Template(t, paper))
		require.NoError(t, err)
		crew.Clean(t, d)
		crew.AssertPointers(t, p, d)
		crew.AssertWhole(t, d)
		d, err = pole.Draw(p, roomtest.Template(t, paper))
		require.NoError(t, err)
		crew.Clean(t, d)
	})
}

func TestInstallOddRoomsAreClean(t *testing.T) {
	count, wanted := 0, effort.Of(16, 120)
	for seed := uint64(1); count < wanted && seed < 1000; seed++ {
		if p, ok := odd(seed); ok {
			count++
			isClean(t, seed, p)
		}
	}
	assert.Equal(t, wanted, count, "so many rooms have to be readable")
}

// TestInstallCrowdedRoomsAreClean draws rooms in which something has little room: the letter of a box between its plate and a heavy
// line, the name of a low cut-out that the level line crosses, the words under the tape list of a wall of bands.
func TestInstallCrowdedRoomsAreClean(t *testing.T) {
	for _, seed := range []uint64{322, 445, 468} {
		p, ok := odd(seed)
		require.True(t, ok, "seed %d", seed)
		isClean(t, seed, p)
	}
}

// odd lays an odd room, false where it cannot be laid.
func odd(seed uint64) (*layout.Plan, bool) {
	r, err := room.Decode("random.toml", []byte(roomtest.CrewRoom(seed)))
	if err != nil {
		return nil, false
	}
	p, err := layout.Lay(r)
	return p, err == nil
}

// isClean draws an odd room, and looks at all pages.
func isClean(t *testing.T, seed uint64, p *layout.Plan) {
	t.Run(fmt.Sprintf("seed %d", seed), func(t *testing.T) {
		t.Parallel()
		d, err := crew.Install(p, roomtest.Template(t, []string{"ansi-a", "a4"}[seed%2]))
		require.NoError(t, err)
		crew.Clean(t, d)
		crew.AssertPointers(t, p, d)
		crew.AssertWhole(t, d)
		if seed%4 == 0 {
			d, err = pole.Draw(p, roomtest.Template(t, "ansi-a"))
			require.NoError(t, err)
			crew.Clean(t, d)
		}
	})
}
