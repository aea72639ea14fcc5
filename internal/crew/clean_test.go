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
		text := roomtest.CrewRoom(seed)
		r, err := room.Decode("random.toml", []byte(text))
		if err != nil {
			continue
		}
		p, err := layout.Lay(r)
		if err != nil {
			continue
		}
		count++
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
	assert.Equal(t, wanted, count, "so many rooms have to be readable")
}
