package crew_test

import (
	"os"
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
	text, err := os.ReadFile("../../samples/reading-room.toml")
	require.NoError(t, err)
	p := roomtest.PlanOf(t, "reading-room.toml", text)
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			d, err := crew.Install(p, roomtest.Template(t, name))
			require.NoError(t, err)
			crew.Clean(t, d)
			d, err = pole.Draw(p, roomtest.Template(t, name))
			require.NoError(t, err)
			crew.Clean(t, d)
		})
	}
}
