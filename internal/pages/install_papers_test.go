package pages

import (
	"os"
	"testing"

	"flitchlay/internal/paper"

	"github.com/stretchr/testify/require"
)

func TestInstallIsCleanOnEveryPaper(t *testing.T) {
	names := paper.Names()
	require.NotEmpty(t, names)
	text, err := os.ReadFile("../../samples/reading-room.toml")
	require.NoError(t, err)
	p := planOf(t, "reading-room.toml", text)
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			d, err := Install(p, template(t, name))
			require.NoError(t, err)
			clean(t, d)
			d, err = Pole(p, template(t, name))
			require.NoError(t, err)
			clean(t, d)
		})
	}
}
