package crew_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// TestPrintedPartsAddUp adds the ends of every sheet of the cut list over and under its mark, as they are printed: they come to the
// length that is printed beside them.
func TestPrintedPartsAddUp(t *testing.T) {
	end := regexp.MustCompile(figure + ` (up|down)\b`)
	cuts, odd := 0, 0
	for name, p := range rooms(t) {
		if p.Room.Veneer.Horizontal || p.Room.Project.Units != length.Inches {
			continue
		}
		for _, row := range cutListOf(t, p) {
			words := strings.Join(row.words, " ")
			ends := end.FindAllStringSubmatch(words, 2)
			require.Len(t, ends, 2, words)
			sum := length.Length(0)
			for i, m := range ends {
				at := read(t, p, m[1])
				if (m[2] == "up") != (i == 0) {
					at = -at
				}
				sum += at
			}
			assert.Contains(t, " "+words+" ", " "+p.Style.Format(sum)+" ", "%s, sheet %d", name, row.sheet.Number)
			if p.Style.Round(row.sheet.CutLength) != sum {
				odd++
			}
			cuts++
		}
	}
	assert.Greater(t, cuts, 100)
	assert.Positive(t, odd, "sheets whose length rounds to another step than the sum of its ends")
}

// TestEveryCardSaysWhoseItIs finds on every card, on papers on which it has much room and on which it has little, the number of the
// job, or its room or title, the issue and its date.
func TestEveryCardSaysWhoseItIs(t *testing.T) {
	found := 0
	for name, p := range rooms(t) {
		project := p.Room.Project
		date, mark := project.Drawn, "-"
		if n := len(project.Revisions); n > 0 {
			mark = project.Revisions[n-1].Mark
			if project.Revisions[n-1].Date != "" {
				date = project.Revisions[n-1].Date
			}
		}
		if date == "" {
			date = "no date"
		}
		who := project.Title
		if project.Number != "" || project.Room != "" {
			who = strings.Trim(project.Number+", "+project.Room, ", ")
		}
		for _, page := range install(t, p).Pages {
			for _, g := range roomtest.Classed(&page.Group, "card") {
				words := strings.Join(roomtest.Lettering(g), " ")
				assert.Contains(t, words, who+", issue "+mark+" "+date, "%s, %s", name, page.Name)
				found++
			}
		}
	}
	assert.Greater(t, found, 100)
}

// TestTheLastSheetRunsToTheEnd reads of every last sheet of a span that it runs to what ends the covering, and the least that it laps
// over the sheet before: no figure of its right edge has to be kept.
func TestTheLastSheetRunsToTheEnd(t *testing.T) {
	said := regexp.MustCompile(`([\d+]+): runs to (the [a-z ]+|a free end|opening \w+|[a-z ]*\w+); left edge ` + figure + `, lap there ` + figure + ` at least`)
	found := 0
	for name, p := range rooms(t) {
		for _, m := range said.FindAllStringSubmatch(strings.Join(printed(t, p), " "), -1) {
			_, s := sheetOf(t, p, strings.Split(m[1], "+")[0])
			require.True(t, slices.ContainsFunc(p.Runs[0].Spans, func(x layout.Span) bool { return x.LastSheet == s.Place }) || len(p.Runs) > 1, m[0])
			assert.Equal(t, p.Room.Rules.LeastOverlap, read(t, p, m[4]), "%s: %s", name, m[0])
			found++
		}
	}
	assert.Greater(t, found, 3)
}
