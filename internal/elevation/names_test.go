package elevation_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// named is a room whose walls have names of some sixty letters; nil where it is none with them.
func named(text string) *layout.Plan {
	parts := strings.Split(text, "[[wall]]\n")
	for i := 1; i < len(parts); i++ {
		lines := strings.Split(parts[i], "\n")
		for j, line := range lines {
			if strings.HasPrefix(line, "[") {
				break
			}
			if strings.HasPrefix(line, "name = ") {
				lines[j] = "#"
			}
		}
		parts[i] = fmt.Sprintf("name = \"Long wall of the members' dining room beside the old stair %d\"\n", i) + strings.Join(lines, "\n")
	}
	r, err := room.Decode("room.toml", []byte(strings.Join(parts, "[[wall]]\n")))
	if err != nil {
		return nil
	}
	p, err := layout.Lay(r)
	if err != nil {
		return nil
	}
	return p
}

// touching lists what touches on the pages of a set.
func touching(t *testing.T, p *layout.Plan, paper string) (list []string) {
	d, err := submittal.Photographed(p, roomtest.Template(t, paper), nil, nil)
	require.NoError(t, err)
	for _, page := range d.Pages {
		for _, o := range scene.Overlaps(page, 0.5) {
			list = append(list, page.Name+": "+o.String())
		}
	}
	return list
}

// Names of sixty letters touch nothing where short ones do not: titles of views, titles of pages, ghosts, the plan and the cover.
func TestLongNamesTouchNothing(t *testing.T) {
	papers := []string{"ansi-b", "a4", "a3", "arch-d"}
	drawn := 0
	roomtest.RandomPlans(t, effort.Of(3, 40), func(seed uint64, text string, short *layout.Plan) {
		p := named(text)
		if p == nil {
			return
		}
		paper := papers[int(seed)%len(papers)]
		if len(touching(t, short, paper)) > 0 {
			return
		}
		drawn++
		for _, words := range touching(t, p, paper) {
			t.Errorf("seed %d on %s, %s", seed, paper, words)
		}
	})
	require.Greater(t, drawn, effort.Of(1, 30))
}
