package crew_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// TestSheetsAreReceived types back what the page of receiving asks for: the width under which it refuses is the least that hangs,
// every sheet delivered has its boxes, and the sheet that came narrower hangs by the line that its wall's page then prints.
func TestSheetsAreReceived(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	p := rooms(t)["oldhouse"]
	page := ""
	for _, s := range printed(t, p) {
		if strings.Contains(s, "WIDTH OF EACH SHEET") {
			page += s + " "
		}
	}
	m := regexp.MustCompile(`gross width (\S+(?: \d+/\d+)?") overlap (\S+(?: \d+/\d+)?") refuse under (\S+(?: \d+/\d+)?")`).FindStringSubmatch(page)
	require.NotNil(t, m, page)
	limit, err := length.Parse(m[3], length.Inches)
	require.NoError(t, err)
	for _, n := range p.Left[0].Delivered {
		assert.Regexp(t, `(^| )`+itoa(n)+`( |$)`, page)
	}
	measured := func(width layout.L) *layout.Plan {
		wide := length.StyleOf(length.Inches).Inches(width)
		return roomtest.Laid(t, "measured", strings.Replace(string(text), "[[flitch]]\n", "[[flitch]]\nwidths = [[3, \""+wide+"\"]]\n", 1))
	}
	under := measured(limit - length.Inch/16)
	assert.Contains(t, under.Left[0].Damaged, 3)
	assert.Contains(t, strings.Join(printed(t, under), " "), "too narrow")

	q := measured(limit)
	assert.NotContains(t, q.Left[0].Damaged, 3)
	was, is := layout.L(0), layout.L(0)
	for _, x := range []struct {
		plan *layout.Plan
		line *layout.L
	}{{p, &was}, {q, &is}} {
		for _, s := range printed(t, x.plan) {
			if strings.Contains(s, "TAPE LIST") {
				if row, ok := tapeOf(s)[3]; ok && *x.line == 0 {
					*x.line, err = length.Parse(row.edge, length.Inches)
					require.NoError(t, err)
				}
			}
		}
	}
	lacks := (p.Room.Veneer.GrossWidth - limit) - (p.Room.Veneer.GrossWidth - p.Room.Veneer.Overlap - p.Room.NetWidth())
	assert.Positive(t, lacks)
	assert.InDelta(t, float64(lacks/2), float64(was-is), float64(length.Inch/32))
	assert.Regexp(t, `3 came .* wide: its seam .* left of its raw edge`, strings.Join(printed(t, q), " "))
}
