package submittal

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Nothing may touch anything or be cut short, on any room and any paper.
func TestNothingOverlapsOnAnyPageOfTheSubmittalSet(t *testing.T) {
	roomtest.OnPapers(t, roomtest.AllRooms(t), paper.Names(), func(t *testing.T, text, name string) {
		d, err := Photographed(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, name), nil, nil)
		require.NoError(t, err)
		for _, p := range d.Pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
			p.Texts(func(x *scene.Text) {
				assert.GreaterOrEqual(t, x.Height, 2.5-1e-9, "%s: %q is under 2.5 mm", p.Name, x.String)
				assert.NotContains(t, x.String, "…", "cut short on %s", p.Name)
			})
		}
	})
}
