package crew_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// least is the figure that a limit is printed as: never more than it is.
func least(t *testing.T, p *layout.Plan, l layout.Limit, printed string) {
	t.Helper()
	got, err := length.Parse(printed, p.Room.Project.Units)
	require.NoError(t, err, printed)
	assert.LessOrEqual(t, got, l.By)
	assert.Greater(t, got, l.By-length.Inch, "but not much less")
	if l.By < 3*length.Inch && p.Room.Project.Units == length.Inches {
		assert.Equal(t, l.By/(length.Inch/16)*(length.Inch/16), got)
	}
}

// TestEveryLineSaysHowFarItMayBeOff reads the limits under the seams of the tape lists, and finds every line on the page of all
// of them, with what breaks.
func TestEveryLineSaysHowFarItMayBeOff(t *testing.T) {
	figure := `(any|\d+ \d+/\d+|\d+/\d+|\d+(?:,\d)?)`
	const inches = `(?:\d+'-)?\d+(?: \d+/\d+)?"`
	row := regexp.MustCompile(`(?:^| )(\d+)(?: \d+)? ` + inches + ` (check |left edge, seam right )?(?:(?:\d+: )?left edge to ` + inches + ` )?(?:(?:check, |left edge, seam right, )?no room [a-z ]+? )?` + inches + ` ← ` + figure + ` → ` + figure)
	for _, name := range []string{"tall14", "oldhouse", "column"} {
		p := rooms(t)[name]
		t.Run(name, func(t *testing.T) {
			off, tape, all := "", 0, 0
			pages := printed(t, p)
			for i := range p.Runs {
				all += len(p.Plays(&p.Runs[i]))
			}
			for n, page := range pages {
				if strings.Contains(page, "HOW FAR A LINE MAY BE OFF") && off == "" {
					off = fmt.Sprint("page ", n+1)
					assert.Contains(t, page, "STOP")
					assert.Contains(t, page, "[[hung]]")
				}
			}
			require.NotEmpty(t, off)
			for _, page := range pages {
				if _, list, ok := strings.Cut(page, "TAPE LIST"); ok && strings.Contains(list, "←") {
					assert.Regexp(t, `(?:off: |STOP, (?:plan again, )?|may be off: )pages? \d+`, list)
					tape += len(row.FindAllString(list, -1))
				}
			}
			assert.GreaterOrEqual(t, tape, all-1, "each line on its wall; a start and a line to check stand on two")
			for i := range p.Runs {
				r := &p.Runs[i]
				for k := range r.Seams {
					play, ok := p.Plays(r)[r.Seams[k].LeftSheet]
					if !ok || r.Seams[k].Closing {
						continue
					}
					number := p.PlaceName(r, play.LeftSheet)
					number = number[strings.LastIndex(number, "+")+1:]
					found := false
					for _, page := range pages {
						_, list, _ := strings.Cut(page, "TAPE LIST")
						for _, m := range row.FindAllStringSubmatch(list, -1) {
							if m[1] == number && !strings.HasPrefix(m[2], "left edge") {
								found = true
								least(t, p, play.Left, m[3])
								least(t, p, play.Right, m[4])
							}
						}
					}
					assert.True(t, found, "sheet %s", number)
				}
			}
		})
	}
}

// TestEveryListSaysWhereToStop looks on the page of every wall that has a line to strike which may be off by so much and no more: it
// says to stop when it is off by more, and names the page that has all lines.
func TestEveryListSaysWhereToStop(t *testing.T) {
	found := 0
	for file, p := range rooms(t) {
		pages := printed(t, p)
		named := regexp.MustCompile(`(?:STOP[^0-9;]*|may be off: )pages? (\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*)`)
		for _, page := range pages {
			if !strings.Contains(page, "TAPE LIST") || !regexp.MustCompile(`[←↓] \S+(?: \d+/\d+)? +[→↑]`).MatchString(page) {
				continue
			}
			found++
			m := named.FindStringSubmatch(page)
			if !assert.NotNil(t, m, "%s: %s", file, page) {
				continue
			}
			for _, n := range roomtest.Numbers(t, m[1]) {
				assert.Contains(t, pages[n-1], "HOW FAR A LINE MAY BE OFF", "%s: page %d of %s", file, n, m[0])
			}
		}
	}
	assert.GreaterOrEqual(t, found, 20)
}
