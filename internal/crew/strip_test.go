package crew

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/roomtest"
)

// standing is a room whose walls have lengths, a corner at the right of each: i inside, o outside, - none. A sheet covers 23 1/2 in.
func standing(closed bool, walls ...string) string {
	text := strings.Replace(roomtest.Head("in"), "[room]", fmt.Sprintf("[room]\nclosed = %v", closed), 1)
	for k, w := range walls {
		long, corner, _ := strings.Cut(w, " ")
		text += fmt.Sprintf("[[wall]]\nname = \"%c\"\nlength = %q\nheight = \"96\"\n", 'A'+k, long)
		if kind := map[string]string{"i": "inside", "o": "outside"}[corner]; kind != "" {
			text += fmt.Sprintf("corner = %q\n", kind)
		}
	}
	return text
}

func TestWhichWallsAreTakenTogether(t *testing.T) {
	for why, c := range map[string]struct {
		text string
		want []string
	}{
		"a pilaster":               {standing(false, "120 i", "9 o", "26 o", "9 i", "120"), []string{"A", "B to D", "E"}},
		"a recess":                 {standing(false, "120 o", "9 i", "30 i", "9 o", "120"), []string{"A", "B to D", "E"}},
		"a column":                 {standing(true, "16 o", "16 o", "16 o", "16 o"), []string{"4"}},
		"an alcove of short walls": {standing(false, "40 i", "30 i", "40"), []string{"A", "B", "C"}},
		"a face of two sheets":     {standing(false, "120 i", "9 o", "47 o", "9 i", "120"), []string{"A", "B", "C", "D", "E"}},
		"a face a little less":     {standing(false, "120 i", "9 o", "46 o", "9 i", "120"), []string{"A", "B to D", "E"}},
		"a single return":          {standing(false, "120 o", "9 i", "120"), []string{"A", "B", "C"}},
		"a pilaster in two steps":  {standing(false, "120 i", "6 o", "10 i", "6 o", "20 o", "12 i", "120"), []string{"A", "B to F", "G"}},
		"too long for one page": {standing(false, "120 i", "15 o", "40 o", "15 i", "40 i", "15 o", "40 o", "15 i", "120"),
			[]string{"A", "B to E", "F to H", "I"}},
		"a large column": {standing(true, "40 o", "40 o", "40 o", "40 o"), []string{"A", "B", "C", "D"}},
	} {
		var got []string
		s := NewSet(roomtest.Laid(t, why, c.text), roomtest.Template(t, "ansi-a"), "Install")
		for _, x := range s.inOrder() {
			got = append(got, x.title())
			if why == "a column" { // wherever it begins
				got[len(got)-1] = fmt.Sprint(len(x.pieces))
			}
		}
		assert.ElementsMatch(t, c.want, got, "%s: %s", why, got)
	}
}
