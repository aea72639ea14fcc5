package crew_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/paper"
	"flitchlay/internal/pole"
	"flitchlay/internal/roomtest"
)

func TestInstallIsCleanOnEveryPaper(t *testing.T) {
	names := paper.Names()
	require.NotEmpty(t, names)
	p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples reading-room.toml"])
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			d, err := crew.Install(p, roomtest.Template(t, name))
			require.NoError(t, err)
			crew.Clean(t, d)
			d, err = pole.Draw(p, roomtest.Template(t, name))
			require.NoError(t, err)
			crew.Clean(t, d)
		})
	}
}
