package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestFoldsNeedNoAdding reads where a jamb that is wrapped is folded and where the sheet is cut for it: both from one edge, with
// the reveal between them, and the fold where the jamb stands.
func TestFoldsNeedNoAdding(t *testing.T) {
	p := rooms(t)["winwall"]
	fold := regexp.MustCompile(`(\S+) (left|right) jamb at ` + figure)
	found := 0
	for _, row := range cutListOf(t, p) {
		text := strings.Join(row.words, " ")
		for _, m := range fold.FindAllStringSubmatch(text, -1) {
			found++
			cut := regexp.MustCompile(m[1] + `: opening ` + figure + ` to ` + figure + ` from (?:left|ripped) edge`).FindStringSubmatch(text)
			if !assert.NotNil(t, cut, text) {
				continue
			}
			at, from, to := read(t, p, m[3]), read(t, p, cut[1]), read(t, p, cut[2])
			for i := range p.Room.Walls[0].Openings {
				o := &p.Room.Walls[0].Openings[i]
				if o.Name != m[1] {
					continue
				}
				by := row.run.Walls[0].Shift - row.sheet.StartLine
				if m[2] == "left" {
					assert.True(t, near(at, o.FromLeft+by) && near(from, at+o.Reveal), "%s, %s", m[0], cut[0])
				} else {
					assert.True(t, near(at, o.Right()+by) && near(to, at-o.Reveal), "%s, %s", m[0], cut[0])
				}
			}
		}
	}
	assert.Equal(t, 4, found, "two windows")
}
