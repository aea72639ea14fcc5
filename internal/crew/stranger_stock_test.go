package crew_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// stockOf are the sheets of a plan that an opening takes whole, and how many hang or are still to hang.
func stockOf(p *layout.Plan) (stock []string, toHang int) {
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			switch s := &p.Runs[i].Sheets[k]; {
			case len(s.Pieces) == 0:
				stock = append(stock, fmt.Sprint(s.Number))
			case !s.Hung:
				toHang++
			}
		}
	}
	return stock, toHang
}

// TestSheetsInAGapAreNobodysNeighbours looks for the sheets that an opening takes whole: the walls' pages send them to stock
// and strike no line for them, no card names one as what its sheet meets, and no page counts them among those to hang.
func TestSheetsInAGapAreNobodysNeighbours(t *testing.T) {
	beside := regexp.MustCompile(`(?:left|right|under|over): (\d+)`)
	one := regexp.MustCompile(`to hang: ([-0-9, ]+?) (?:[a-z]|in a gap)`)
	for name, doors := range map[string]int{"tall14": 3, "metric": 2} {
		t.Run(name, func(t *testing.T) {
			p := rooms(t)[name]
			stock, toHang := stockOf(p)
			require.Len(t, stock, 1)
			all := strings.Join(printed(t, p), "\n")
			met := 0
			for _, c := range cardsOf(t, p) {
				for _, m := range beside.FindAllStringSubmatch(c.words, -1) {
					assert.NotContains(t, stock, m[1], "card %s", c.number)
				}
				met += len(regexp.MustCompile(`(left|right|under|over): door D1`).FindAllString(c.words, -1))
			}
			assert.Equal(t, doors, met, "cards that meet the door")
			assert.Contains(t, all, stock[0]+" in the gap: to stock")
			assert.Contains(t, all, "TOTAL "+fmt.Sprint(toHang)+" sheets to cut")
			assert.Contains(t, all, "all "+fmt.Sprint(toHang)+" sheets face up")
			assert.Contains(t, all, "in a gap, to stock: "+stock[0])
			m := one.FindStringSubmatch(all)
			require.NotNil(t, m)
			assert.Equal(t, toHang, len(numbersOf(m[1])), m[0])
			assert.NotContains(t, numbersOf(m[1]), stock[0])
		})
	}
}

// numbersOf are the numbers of a list as it is printed: "1-5, 7".
func numbersOf(list string) []string {
	var out []string
	for _, part := range strings.Split(list, ",") {
		var a, b int
		if n, _ := fmt.Sscanf(strings.TrimSpace(part), "%d-%d", &a, &b); n == 1 {
			b = a
		}
		for ; a <= b; a++ {
			out = append(out, fmt.Sprint(a))
		}
	}
	return out
}

// TestEveryNumberDeliveredIsSpokenFor adds up the cut list: what is cut and what it says is not cut are all that was delivered.
func TestEveryNumberDeliveredIsSpokenFor(t *testing.T) {
	for name, p := range rooms(t) {
		if len(p.Left) != 1 {
			continue
		}
		t.Run(name, func(t *testing.T) {
			var got, want []string
			for _, row := range cutListOf(t, p) {
				got = append(got, fmt.Sprint(row.sheet.Number))
			}
			for _, page := range printed(t, p) {
				if _, rest, ok := strings.Cut(page, "NOT CUT"); ok {
					rest, _, _ = strings.Cut(rest, "TOTAL")
					for _, m := range regexp.MustCompile(`(\d[-0-9, ]*?) `+regexp.QuoteMeta(p.Left[0].Flitch)).FindAllStringSubmatch(rest, -1) {
						got = append(got, numbersOf(m[1])...)
					}
				}
			}
			for _, n := range p.Left[0].Delivered {
				want = append(want, fmt.Sprint(n))
			}
			slices.Sort(got)
			slices.Sort(want)
			assert.Equal(t, want, got)
		})
	}
}

// TestPlaceOverAnOpeningHasItsLine finds the line of the sheet that hangs over the door whose lower course goes to stock: in the
// tape list, and as a flag.
func TestPlaceOverAnOpeningHasItsLine(t *testing.T) {
	p := rooms(t)["tall14"]
	var page string
	for _, s := range printed(t, p) {
		if strings.Contains(s, "TAPE LIST") && strings.Contains(s, "flitch R-21 sheets 1-5") {
			page = s
		}
	}
	assert.Equal(t, tapeRead{`10'-6 1/2"`, `10'-6"`}, tapeOf(page)[13])
	flags := 0
	for _, g := range written(t, p, "plumb-line") {
		if strings.Join(g.words, " ") == `10'-6 1/2"` {
			flags++
		}
	}
	assert.Equal(t, 1, flags)
}

// TestNoTongueStaysOverADoor cuts the sheets beside a door that reaches to the joint, or to the upper edge of the covering: what
// is cut out goes to the end of the sheet as cut, as a window's does that goes past the joint.
func TestNoTongueStaysOverADoor(t *testing.T) {
	for name, numbers := range map[string][]string{"tall14": {"10", "14"}, "metric": {"16", "18"}} {
		p := rooms(t)[name]
		for _, c := range cardsOf(t, p) {
			if !slices.Contains(numbers, c.number) {
				continue
			}
			_, words, ok := strings.Cut(c.words, "D1: ")
			require.True(t, ok, c.words)
			cut, ok := readCut(t, p, words)
			require.True(t, ok, words)
			_, s := sheetOf(t, p, c.number)
			assert.True(t, near(s.Above, cut.high) && near(-s.Below, cut.low), "%s, card %s: %s", name, c.number, words)
		}
	}
}

// TestSheetsEndAndBeginAtAJamb reads the rows of the sheets beside a door whose seams stand in it: no seam is there, the jambs are.
func TestSheetsEndAndBeginAtAJamb(t *testing.T) {
	all := strings.Join(printed(t, rooms(t)["metric"]), "\n")
	for _, words := range []string{"16 ends at D1 1900", "18 from D1 2850", "in D1: raw right edge of 16 at 1953", "in D1: raw left edge of 18 at 2513"} {
		assert.Contains(t, all, words)
	}
	assert.NotContains(t, all, "1938", "the seam that the door swallows")
}

// TestEndMatchesAreThoseOfTheRun counts the end matches of bands: what begins right of a window's jamb is none.
func TestEndMatchesAreThoseOfTheRun(t *testing.T) {
	found := regexp.MustCompile(`end match at (\S+ ?\S*")`).FindAllStringSubmatch(strings.Join(printed(t, rooms(t)["horiz"]), "\n"), -1)
	require.Len(t, found, 1)
	assert.Equal(t, `7'-9 3/8"`, found[0][1])
}

// TestPagesOfTheCutListAreNamed goes where the page of a wall of two courses sends for what it has no room for: to each page of the
// cut list that has rows of its sheets.
func TestPagesOfTheCutListAreNamed(t *testing.T) {
	pages := printed(t, rooms(t)["tall14"])
	wall := slices.IndexFunc(pages, func(s string) bool {
		return strings.Contains(s, "flitch R-21 sheets 1-5") && strings.Contains(s, "TAPE LIST")
	})
	require.GreaterOrEqual(t, wall, 0)
	m := regexp.MustCompile(`the others: (?:beside, or )?pages (\d+), (\d+)`).FindStringSubmatch(pages[wall])
	require.NotNil(t, m, pages[wall])
	for i, words := range []string{"3 R-21", "21 R-21"} { // the first and the last of them
		var n int
		_, err := fmt.Sscan(m[i+1], &n)
		require.NoError(t, err)
		assert.Contains(t, pages[n-1], "Cut list")
		assert.Contains(t, pages[n-1], words)
	}
}

// TestBesideIsSaidWhereSomethingIs looks on every page whose foot says that the others stand beside: their heading stands there a
// second time.
func TestBesideIsSaidWhereSomethingIs(t *testing.T) {
	said, not := 0, 0
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			again := regexp.MustCompile(`(?:BOXES|OPENINGS|RIP BEFORE PASTING), on `).MatchString(page)
			switch {
			case strings.Contains(page, "others: beside"):
				said++
				assert.True(t, again, "%s: %s", file, page)
			case strings.Contains(page, "the others: page"):
				not++
			}
		}
	}
	assert.Positive(t, said)
	assert.Positive(t, not)
}

// TestStockIsLongEnoughForTheMark lays every sheet of the cut list out of a sheet as long as the list asks for: marked by the
// register, the mark and the whole cut are on it. The page of receiving asks for no less than the longest.
func TestStockIsLongEnoughForTheMark(t *testing.T) {
	effort.Tool(t, "pdftotext") // for all of it, so that nothing is counted where nothing is read
	longer, by := 0, 0
	for file, p := range rooms(t) {
		if p.Room.Veneer.Horizontal || p.Room.Project.Units != length.Inches {
			continue
		}
		t.Run(file, func(t *testing.T) {
			all := strings.Join(printed(t, p), " ")
			asked := regexp.MustCompile(`all by number, from sheets (\d+) ft long or longer; none from an offcut`).FindAllStringSubmatch(all, -1)
			require.Len(t, asked, 1, "sheets of a flitch are as long as each other: no shorter stock is named beside it")
			feet, err := strconv.Atoi(asked[0][1])
			require.NoError(t, err)
			most := length.Length(0)
			each := map[string]length.Length{} // by courses
			for i := range p.Runs {
				for k := range p.Runs[i].Sheets {
					s := &p.Runs[i].Sheets[k]
					if s.Hung || len(s.Pieces) == 0 {
						continue
					}
					need := s.CutLength
					for _, g := range p.Registers() {
						switch same := g.Flitch == s.Flitch && g.Course == s.Course && g.Turned == s.Turned; {
						case same && g.Foot:
							need = max(need, s.Above-g.At)
						case same:
							need = max(need, g.At, g.At+s.Below)
						}
					}
					most = max(most, need)
					course := "course " + itoa(s.Course)
					if len(p.Room.Flitches) > 1 {
						course = "flitch " + s.Flitch + ", " + course
					}
					each[course] = max(each[course], need)
					if need > s.CutLength {
						longer++
					}
				}
			}
			assert.Equal(t, length.CeilDiv(most, length.Foot), int64(feet))
			assert.NotContains(t, all, "from stock")
			if strings.Contains(all, "least length, ") {
				by++
				for course, need := range each {
					assert.Regexp(t, `least length, `+course+`(?:: [-0-9, ]+)? `+regexp.QuoteMeta(p.Style.Format(need)), all)
				}
			} else if strings.Contains(all, "least length") {
				assert.Contains(t, all, "least length "+p.Style.Format(most))
			}
		})
	}
	assert.Positive(t, longer, "sheets that have to come longer than they are cut")
	assert.Positive(t, by, "rooms whose courses differ")
}
