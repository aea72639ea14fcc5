package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// TestAStartOverADoorHasAWitnessLine strikes the witness line from floor to ceiling, measures from it as the page says, and finds
// the left edge of the first sheet, over a door where no line can be struck.
func TestAStartOverADoorHasAWitnessLine(t *testing.T) {
	p := rooms(t)["oldhouse"]
	row := regexp.MustCompile(figure + ` witness (\d+) ` + figure + ` left edge`)
	said := regexp.MustCompile(`left edge of (\d+) is at (\S+): strike a witness line floor to ceiling, ` + figure + ` (left|right) of it`)
	found := 0
	pages := printed(t, p)
	for _, page := range pages {
		at := row.FindStringSubmatch(page)
		if at == nil {
			continue
		}
		found++
		i := wallNamed(p, page)
		m := said.FindStringSubmatch(strings.Join(pages, " ")) // there, or where the page points to
		require.NotNil(t, m, page)
		assert.Equal(t, m[1], at[2], "the same sheet")
		witness, start, by := read(t, p, at[1]), read(t, p, at[3]), read(t, p, m[3])
		if m[4] == "left" {
			by = -by
		}
		assert.Equal(t, start, witness-by)
		assert.Zero(t, by%length.Foot, "a figure that is easily measured")
		zero := cornerAt(p, i, false, p.Room.Space.LevelLine)
		over := false
		for _, o := range p.Room.Walls[i].Openings {
			assert.False(t, o.FromLeft <= witness+zero && witness+zero <= o.Right(), "the witness line crosses %s", o.Name)
			over = over || o.Name == m[2] && o.FromLeft <= start+zero && start+zero <= o.Right()
		}
		assert.True(t, over, "the start stands over %s", m[2])
	}
	assert.Equal(t, 1, found)
}
