package crew_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
)

// TestRegisterNamesWhatDoesNotGoByIt reads in every row of the cut list how the sheet is marked, and finds in the register over the list
// just those that are marked by another line, or carry no mark, with the figure of their row.
func TestRegisterNamesWhatDoesNotGoByIt(t *testing.T) {
	effort.Tool(t, "pdftotext")
	but := regexp.MustCompile(`but not ([-0-9, ]+): (?:mark LINE (\d+) on them, ` + figure + ` (below|above) the raw end that hangs (?:up|down)|no mark; (?:cut ` + figure + ` off|measure the cut length from) the raw (?:head|foot))`)
	line := regexp.MustCompile(`MARK LINE (\d+) at ` + figure + ` (below|above) the raw end`)
	lines, none := 0, 0
	for file, p := range rooms(t) {
		if p.Room.Veneer.Horizontal {
			continue
		}
		t.Run(file, func(t *testing.T) {
			all := strings.Join(printed(t, p), " ")
			_, register, ok := strings.Cut(all, "REGISTER: one mark for all")
			require.True(t, ok)
			register, _, ok = strings.Cut(register, "cut lengths ")
			require.True(t, ok)
			said := map[int]string{} // by numbers: line, figure and way
			for _, m := range but.FindAllStringSubmatch(register, -1) {
				for _, n := range strings.Split(m[1], ", ") {
					k, err := strconv.Atoi(n)
					require.NoError(t, err, m[0])
					said[k] = m[2] + " " + m[3] + " " + m[4]
				}
			}
			var want []int
			for _, row := range cutListOf(t, p) {
				s, words := row.sheet, strings.Join(row.words, " ")
				got, named := said[s.Number]
				if m := line.FindStringSubmatch(words); m != nil {
					lines++
					assert.Equal(t, m[1]+" "+m[2]+" "+m[3], got, "sheet %d: %s", s.Number, words)
					want = append(want, s.Number)
					continue
				}
				foot := slices.ContainsFunc(p.Registers(), func(r layout.Register) bool {
					return r.Foot && r.Flitch == s.Flitch && r.Course == s.Course && r.Turned == s.Turned
				})
				if unmarked := s.Above < 0 || s.Below < 0; unmarked && !foot || strings.Contains(words, "HANG its raw head") && !foot {
					none++
					assert.True(t, named, "sheet %d carries no mark: %s", s.Number, register)
					assert.True(t, strings.HasPrefix(got, " "), got)
					want = append(want, s.Number)
					continue
				}
				assert.False(t, named, "sheet %d goes by the register: %s", s.Number, register)
			}
			assert.Len(t, said, len(want), "no sheet is named that is not cut")
		})
	}
	assert.Positive(t, lines, "sheets marked by another line")
	assert.Positive(t, none, "sheets without a mark")
}
