package crew_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
)

// TestNoHoldCallsNobody reads the wall pages: one on which the work does not stop asks for no look and no name.
func TestNoHoldCallsNobody(t *testing.T) {
	held, free := 0, 0
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			if !strings.Contains(page, "TAPE LIST") {
				continue
			}
			stops, asks := regexp.MustCompile(`HOLD \d+ after [\d+]+`).MatchString(page), strings.Contains(page, "and along the wall; call")
			assert.Equal(t, stops, asks, "%s: %.60s", file, page)
			if stops {
				held++
			} else {
				free++
				assert.Contains(t, page, "no HOLD on this page", "%s: %.60s", file, page)
			}
		}
	}
	assert.Greater(t, held, 5)
	assert.Greater(t, free, 5)
}

// TestEndOfTheCutListIsOnOnePage reads what is not cut and how many sheets there are to cut: of all samples, on one page.
// Courses are named only where there are some.
func TestEndOfTheCutListIsOnOnePage(t *testing.T) {
	rows, plain := 0, 0
	samples := roomtest.Samples(t)
	for i, file := range slices.Sorted(maps.Keys(samples)) {
		if !effort.Full() && i%3 > 0 {
			continue
		}
		p := roomtest.Laid(t, file, samples[file])
		var cut []string
		for _, page := range printed(t, p) {
			if strings.Contains(page[:min(len(page), 300)], "Cut list") {
				cut = append(cut, page)
			}
		}
		ends := slices.DeleteFunc(slices.Clone(cut), func(page string) bool { return !strings.Contains(page, "TOTAL ") })
		require.Len(t, ends, 1, "%s: what the walls' pages have no room for may come after it", file)
		last := ends[0]
		for _, s := range p.Left {
			for _, numbers := range [][]int{s.Spare, s.Damaged} {
				if len(numbers) == 0 {
					continue
				}
				rows++
				assert.Contains(t, last, "NOT CUT", file)
				assert.Contains(t, last, layout.Numbers(numbers)+" "+s.Flitch+", ", file)
			}
		}
		if len(jointsOf(p)) == 0 {
			plain++
			assert.NotContains(t, strings.Join(cut, " "), "course 1", file)
		}
	}
	assert.Greater(t, rows, effort.Of(1, 5))
	assert.Greater(t, plain, effort.Of(0, 3))
}

// jointsOf are the heights of all end matches of a plan.
func jointsOf(p *layout.Plan) []layout.L {
	var list []layout.L
	for i := range p.Runs {
		list = append(list, p.Runs[i].Joints...)
	}
	return list
}
