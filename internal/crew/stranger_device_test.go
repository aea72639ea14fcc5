package crew_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// rectOf is a part of a wall: left, right, low, top.
type rectOf [4]length.Length

// TestDevicesAreCutRoundTheirPlates puts what is cut out for an alarm device together, of all the sheets that come into it: on the cut list and
// on the cards it is the device's plate, whole and no more, and so on the page of its wall where that has room for all of them.
func TestDevicesAreCutRoundTheirPlates(t *testing.T) {
	effort.Tool(t, "pdftotext")
	onPage := regexp.MustCompile(`\b([a-z])(?: on [^:]+?)? in (\d+): $`)
	found := 0
	for file, p := range rooms(t) {
		for wall := range p.Room.Walls {
			boxes := p.Room.Walls[wall].Boxes
			for i := range boxes {
				b := &boxes[i]
				if !b.Kind.Traits().NeverCovered || p.Room.Veneer.Horizontal {
					continue
				}
				want := rectOf{b.X - b.PlateWidth/2, b.X + b.PlateWidth/2, b.Z - b.PlateHigh/2, b.Z + b.PlateHigh/2}
				of := func(number, words string) (list []rectOf) { // the plates in a sheet that lie in this one
					r, s := sheetOf(t, p, number)
					for _, at := range cutPattern.FindAllStringIndex(words, -1) {
						c, ok := readCut(t, p, words[at[0]:at[1]])
						require.True(t, ok)
						x0, z0, x1, z1 := c.onWall(t, p, r, s, wall)
						if mid := (x0 + x1) / 2; c.what == "plate" && want[0] <= mid && mid <= want[1] && want[2] <= (z0+z1)/2 && (z0+z1)/2 <= want[3] {
							list = append(list, rectOf{x0, x1, z0, z1})
						}
					}
					return list
				}
				var list, cards, page []rectOf
				for _, row := range cutListOf(t, p) {
					list = append(list, of(itoa(row.sheet.Number), strings.Join(row.words, " "))...)
				}
				for _, c := range cardsOf(t, p) {
					cards = append(cards, of(c.number, c.words)...)
				}
				whole := true
				for _, text := range printed(t, p) {
					if !shows(p, text, wall) {
						continue
					}
					whole = whole && !strings.Contains(text, "others: ")
					for _, at := range cutPattern.FindAllStringIndex(text, -1) {
						if m := onPage.FindStringSubmatch(text[:at[0]]); m != nil {
							page = append(page, of(m[2], text[at[0]:at[1]])...)
						}
					}
				}
				assertWhole(t, want, list, file+", cut list")
				assertWhole(t, want, cards, file+", cards")
				if whole {
					assertWhole(t, want, page, file+", wall")
				}
				found++
			}
		}
	}
	assert.GreaterOrEqual(t, found, 2)
}

// assertWhole holds that parts one beside the other make up a whole, each as high as it.
func assertWhole(t *testing.T, want rectOf, parts []rectOf, what string) {
	t.Helper()
	require.NotEmpty(t, parts, what)
	slices.SortFunc(parts, func(a, b rectOf) int { return int(a[0] - b[0]) })
	right := parts[0][0]
	for _, q := range parts {
		assert.True(t, near(q[2], want[2]) && near(q[3], want[3]), "%s: %v", what, q)
		assert.LessOrEqual(t, q[0], right+length.Inch/16, "%s: %v", what, q)
		right = max(right, q[1])
	}
	assert.True(t, near(parts[0][0], want[0]) && near(right, want[1]), "%s: %v", what, parts)
}

// TestNoRoomIsSaidOfLinesThatHaveNone reads the lists of all walls: over the figure of a line stands that it has no room to a side where it may
// not be off at all to that side, by the layout and by the figures under its seam, and nowhere else. Where a narrow column says already what
// the line is for, the figures say it.
func TestNoRoomIsSaidOfLinesThatHaveNone(t *testing.T) {
	effort.Tool(t, "pdftotext")
	row := regexp.MustCompile(`(\d+) ` + figure + ` (check|left edge, seam right|(?:\d+: )?left edge to (?:\d+'-)?\d+(?: \d+/\d+)?")?(?:, )?(no room (?:to the right|to the left|either way))? ?` + figure + ` ← (\S+)(?: \d+/\d+)? → (\S+)`)
	want := map[[2]bool]string{{true, true}: "no room either way", {true, false}: "no room to the left", {false, true}: "no room to the right"}
	said, silent := 0, 0
	for file, p := range rooms(t) {
		none := map[string]string{} // by the number of the sheet whose right edge goes to the line
		for i := range p.Runs {
			plays := p.Plays(&p.Runs[i])
			for _, s := range p.Runs[i].Sheets {
				play := plays[s.Place]
				none[itoa(s.Number)] = want[[2]bool{noPlay(p, play.Left), noPlay(p, play.Right)}]
			}
		}
		for _, page := range printed(t, p) {
			_, list, _ := strings.Cut(page, "TAPE LIST")
			for _, m := range row.FindAllStringSubmatch(list, -1) {
				zero := want[[2]bool{m[6] == "0", m[7] == "0"}]
				if zero != "" && m[4] == "" && m[3] != "" {
					silent++
					continue
				}
				assert.Equal(t, zero, m[4], "%s: %s", file, m[0])
				if m[3] != "left edge, seam right" {
					assert.Equal(t, none[m[1]], m[4], "%s: %s", file, m[0])
				}
				if m[4] != "" {
					said++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, said, 11)
	assert.Less(t, silent, said)
}

// noPlay reports whether a line may not be off by what pages print at the least.
func noPlay(p *layout.Plan, l layout.Limit) bool {
	return l.Must != layout.NoMust && l.By < p.Style.Least()
}
