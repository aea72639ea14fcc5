package submittal

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Nothing may touch anything, on any room and any paper.
func TestNothingOverlapsOnAnyPageOfTheSubmittalSet(t *testing.T) {
	rooms := roomtest.Samples(t)
	for why, text := range roomtest.OddRooms {
		rooms[why] = text
	}
	for why, text := range rooms {
		for _, name := range paper.Names() {
			t.Run(why+", "+name, func(t *testing.T) {
				t.Parallel()
				template, err := paper.Named(name)
				require.NoError(t, err)
				d, err := Photographed(roomtest.Laid(t, "room.toml", text), template, nil, nil)
				require.NoError(t, err)
				for _, p := range d.Pages {
					for _, o := range scene.Overlaps(p, 0.5) {
						t.Errorf("%s: %v", p.Name, o)
					}
					p.Texts(func(x *scene.Text) {
						assert.GreaterOrEqual(t, x.Height, 2.5-1e-9, "%s: %q is under 2.5 mm", p.Name, x.String)
					})
				}
			})
		}
	}
}
