package room

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Drawing anew does not redate the first issue: its row has the day that the file gives it, or that of the drawing while no revision
// is older, or none.
func TestDrawingAnewKeepsTheFirstIssue(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"", ""},
		{"drawn = 2026-04-01", "2026-04-01"},
		{"drawn = 2026-05-01\nissued = 2026-04-01", "2026-04-01"},
		{"drawn = 2026-04-01\nrevision = [{ date = 2026-05-01 }]", "2026-04-01"},
		{"drawn = 2026-05-01\nrevision = [{ date = 2026-05-01 }]", "2026-05-01"},
		{"drawn = 2026-06-01\nrevision = [{ date = 2026-05-01 }]", ""},
		{"drawn = 2026-06-01\nrevision = [{ note = \"n\" }]", "2026-06-01"},
		{"drawn = 2026-06-01\nissued = 2026-04-01\nrevision = [{ date = 2026-05-01 }]", "2026-04-01"},
	} {
		r, err := Decode("r", []byte(strings.Replace(quiet, "title", c.lines+"\ntitle", 1)))
		require.NoError(t, err, c.lines)
		assert.Equal(t, c.want, r.Project.FirstIssue(), c.lines)
	}
}
