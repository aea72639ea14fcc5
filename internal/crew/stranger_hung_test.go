package crew_test

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
)

// tapeRead is a row of a tape list as a stranger reads it: what stands under edge, and what under seam.
type tapeRead struct{ edge, seam string }

// tapeOf reads the tape list of a page: the left side of a first sheet under 0, all others by their numbers.
func tapeOf(page string) map[int]tapeRead {
	rows := map[int]tapeRead{}
	_, list, _ := strings.Cut(page, "TAPE LIST")
	list, _, _ = strings.Cut(list, " left of raw edge")
	const inches = `((?:\d+'-)?\d+(?: \d+/\d+)?")`
	first := regexp.MustCompile(`(\d+) ` + inches + ` left edge, seam right ` + inches)
	if m := first.FindStringSubmatch(list); m != nil {
		rows[0] = tapeRead{m[2], m[3]}
		list = strings.Replace(list, m[0], "", 1)
	}
	for _, m := range regexp.MustCompile(`(?:^| )(\d+) `+inches+` (?:check )?`+inches).FindAllStringSubmatch(list, -1) {
		n := 0
		_, _ = fmt.Sscan(m[1], &n)
		rows[n] = tapeRead{m[2], m[3]}
	}
	return rows
}

// TestReadingsGoBackUnderTheirNames types what the walls' pages print under edge and under seam into the keys that are called
// the same: the room that hangs so far stands as it was planned, whichever was typed.
func TestReadingsGoBackUnderTheirNames(t *testing.T) {
	p := rooms(t)["oldhouse"]
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	tape := map[string]map[int]tapeRead{}
	for _, page := range printed(t, p) {
		if i := wallNamed(p, page); i >= 0 && strings.Contains(page, "TAPE LIST") {
			tape[p.Room.Walls[i].Name] = tapeOf(page)
			assert.Contains(t, page, "no. raw edge seam")
		}
	}
	door, side := tape["Door wall"], tape["Sideboard wall"]
	require.NotEmpty(t, door[0].edge)
	typed := func(of func(tapeRead) string, left, one, many string) string {
		list := ""
		for n := 2; n <= 8; n++ {
			require.NotEmpty(t, of(side[n]), "sheet %d", n)
			list += fmt.Sprintf("%q, ", of(side[n]))
		}
		return fmt.Sprintf("[[hung]]\nwall = \"Door wall\"\nsheet = 1\n%s = %q\n%s = %q\n[[hung]]\nwall = \"Sideboard wall\"\nsheets = \"2-8\"\n%s = [%s]\n",
			left, of(door[0]), one, of(door[1]), many, list)
	}
	for why, readings := range map[string]string{
		"edges": typed(func(r tapeRead) string { return r.edge }, "left_edge", "edge", "edges"),
		"seams": typed(func(r tapeRead) string { return r.seam }, "left_seam", "seam", "seams"),
	} {
		got := roomtest.Laid(t, why, string(text)+readings)
		require.Len(t, got.Runs[0].Seams, len(p.Runs[0].Seams), why)
		for k, s := range p.Runs[0].Seams {
			assert.Equal(t, s.At, got.Runs[0].Seams[k].At, "%s: seam %d", why, s.Number)
		}
		for _, f := range got.Findings {
			assert.NotEqual(t, finding.Drift, f.Code, "%s: %s", why, f.Message)
		}
		assert.Empty(t, got.Moves, why)
	}
	// what is typed under the other's name is not the same room: the last sheet comes out half an overlap narrower
	seams := typed(func(r tapeRead) string { return r.seam }, "left_seam", "seam", "seams")
	wrong := roomtest.Laid(t, "mixed up", string(text)+strings.Replace(seams, strings.Trim(door[0].seam, `"`), strings.Trim(door[0].edge, `"`), 1))
	last := func(p *layout.Plan) layout.L { return p.Runs[0].Sheets[len(p.Runs[0].Sheets)-1].Width }
	assert.Equal(t, p.Room.Veneer.Overlap.HalfDown(), last(p)-last(wrong))
	assert.Equal(t, rooms(t)["halfhung"].JSON(), rooms(t)["halfhung-edge"].JSON(), "the same readings at the left, as seam and as edge")
}
