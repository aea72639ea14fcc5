package crew

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
)

const linePlace = `((?:\d+|\?)(?: ?\+ ?(?:\d+|\?))*)`

// limitRow reads the lines of a row of the page that says how far lines may be off: one, several that follow one another, or the left edge of
// a first sheet.
var limitRow = regexp.MustCompile(linePlace + ` ?\| ?` + linePlace + `(?: to ` + linePlace + ` ?\| ?` + linePlace + `)?|left edge of ` +
	linePlace + `(?: to ` + linePlace + ` ?\| ?` + linePlace + `)?`)

// limitsOn are the seams whose limits stand on a page, by their runs and the places at their left.
func (r *pointed) limitsOn(page int) map[[2]int]bool {
	found := map[[2]int]bool{}
	for _, m := range limitRow.FindAllStringSubmatch(r.texts[page-1], -1) {
		for i := range m {
			m[i] = strings.ReplaceAll(m[i], " ", "")
		}
		for i := range r.plan.Runs {
			run := &r.plan.Runs[i]
			on := false
			last := [2]string{m[3] + m[6], m[4] + m[7]}
			for _, s := range hangingOrder(run) {
				names := [2]string{r.plan.PlaceName(run, s.LeftSheet), r.plan.PlaceName(run, s.RightSheet)}
				first := names == [2]string{m[1], m[2]} || s.Closing && names[1] == m[5]
				if on = on || first; on {
					found[[2]int{i, s.LeftSheet}] = true
				}
				if last[0] == "" && first || names == last {
					on = false
				}
			}
		}
	}
	return found
}

// hangingOrder are the seams of a run in the order of their left sheets, the left edge of a first sheet before all of its span.
func hangingOrder(run *layout.Run) []*layout.Seam {
	var list []*layout.Seam
	for k := range run.Seams {
		list = append(list, &run.Seams[k])
	}
	first := func(s *layout.Seam) int {
		if s.Closing {
			return 2*s.RightSheet - 1
		}
		return 2 * s.LeftSheet
	}
	slices.SortStableFunc(list, func(a, b *layout.Seam) int { return first(a) - first(b) })
	return list
}

// limitsOfWall finds every line that the list of a page gives a limit for, and that is drawn on it, on one of the pages named; and on each of
// these at least one of them: nobody is sent to a page in vain.
func (r *pointed) limitsOfWall(t *testing.T, from int, said []string, to []int) {
	there := map[[2]int]int{}
	vain := map[int]bool{}
	for _, n := range to {
		vain[n] = true
		assert.True(t, strings.HasPrefix(r.pages[n-1].Title, "How far off"), "page %d: %s", from, said[0])
		for k := range r.limitsOn(n) {
			there[k] = n
		}
	}
	for i := range r.plan.Runs {
		run := &r.plan.Runs[i]
		plays := r.plan.Plays(run)
		for k := range run.Seams {
			s := &run.Seams[k]
			if slices.ContainsFunc(run.Sheets, func(x layout.Sheet) bool { return x.Number == 0 && len(x.Pieces) > 0 }) { // lines without a number cannot be told apart
				clear(vain)
			}
			if _, ok := plays[s.LeftSheet]; !ok {
				continue
			}
			if drawn, called := r.lined(from, run, s); !drawn || !called {
				if called { // where an opening leaves nothing of a seam, its line is called all the same
					delete(vain, there[[2]int{i, s.LeftSheet}])
				}
				continue
			}
			if names := r.plan.PlaceName(run, s.LeftSheet) + r.plan.PlaceName(run, s.RightSheet); strings.Contains(names, "?") {
				continue
			}
			n, ok := there[[2]int{i, s.LeftSheet}]
			assert.True(t, ok, "page %d: %s: the line at %s is on none of these pages", from, said[0], s.At.Decimal())
			delete(vain, n)
		}
	}
	assert.Empty(t, vain, "page %d: %s: no line of the page stands there", from, said[0])
}

// lined reports whether a seam is drawn on a page, and whether the sheet at its left is called in the list there; of where a room closes, the
// left edge of its first sheet.
func (r *pointed) lined(page int, run *layout.Run, s *layout.Seam) (drawn, called bool) {
	for _, view := range roomtest.Classed(&r.pages[page-1].Group, "view") {
		if !slices.ContainsFunc(run.Walls, func(st layout.Stretch) bool { return r.plan.Room.Walls[st.Wall].Name == roomtest.Fact(view, "wall") }) {
			continue
		}
		for _, g := range roomtest.Classed(view, "seam") {
			drawn = drawn || roomtest.Fact(g, "at") == s.At.Decimal()
		}
	}
	var list []string
	for _, g := range roomtest.Classed(&r.pages[page-1].Group, "tape-list") {
		list = append(list, roomtest.Lettering(g)...)
	}
	if s.Closing {
		return drawn, slices.ContainsFunc(list, func(w string) bool { return strings.HasPrefix(w, "left edge, seam right") })
	}
	for _, sheet := range run.Sheets {
		if sheet.Place == s.LeftSheet && sheet.Number > 0 && slices.Contains(list, itoa(sheet.Number)) {
			return drawn, true
		}
	}
	return drawn, false
}
