package submittal

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// onOffice are the sets on the office page that some test has asked for, by the text of the room: no test changes them.
var onOffice = map[string]*scene.Document{}

// drawnOnce returns a room's plan and its set on the office page, which is drawn once for all tests that stand in one row.
func drawnOnce(t *testing.T, text string) (*layout.Plan, *scene.Document) {
	p := roomtest.Laid(t, "room.toml", text)
	if onOffice[text] == nil {
		d, err := Photographed(p, roomtest.Template(t, "ansi-b"), nil, nil)
		require.NoError(t, err)
		onOffice[text] = d
	}
	return p, onOffice[text]
}
