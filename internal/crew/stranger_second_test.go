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
	"flitchlay/internal/shape"
)

// secondOn is how far over the first line the start page has the second one of a wall, 0 where it has none.
func secondOn(t *testing.T, p *layout.Plan, wall int) length.Length {
	t.Helper()
	m := regexp.MustCompile(`line 2 on ` + regexp.QuoteMeta(p.Room.Walls[wall].Name) + `, struck from it: ` + figure + ` (over|under) it`).FindStringSubmatch(printed(t, p)[0])
	if m == nil {
		return 0
	}
	if by := read(t, p, m[1]); m[2] == "over" {
		return by
	}
	return -read(t, p, m[1])
}

// stretchOfSecond is from where to where the page of a wall has its second line.
func stretchOfSecond(t *testing.T, p *layout.Plan, wall int) (from, to length.Length) {
	t.Helper()
	for _, page := range printed(t, p) {
		if m := regexp.MustCompile(`LINE 2: ` + figure + ` (?:over|under) the level line, from ` + figure + ` to ` + figure).FindStringSubmatch(page); m != nil && wallNamed(p, page) == wall {
			zero := cornerAt(p, wall, false, p.Room.Space.LevelLine)
			return read(t, p, m[2]) + zero, read(t, p, m[3]) + zero
		}
	}
	t.Fatalf("no second line on %s", p.Room.Walls[wall].Name)
	return 0, 0
}

// meets are from where to where a piece covers a height, false where it does not.
func meets(q *layout.Piece, z length.Length) (from, to length.Length, ok bool) {
	var at []length.Length
	for i, a := range q.Outline {
		b := q.Outline[(i+1)%len(q.Outline)]
		if (a.Z > z) != (b.Z > z) {
			at = append(at, a.X+length.MulDiv(b.X-a.X, z-a.Z, b.Z-a.Z))
		}
	}
	if at == nil {
		return 0, 0, false
	}
	return slices.Min(at), slices.Max(at), true
}

// setFromSecond stands for a sheet that neither line crosses, near the second one: it is set from that.
const setFromSecond = 3

// lineOf is the line from which a sheet has to be figured: 1 where that crosses what it covers, else 2 where that does in its stretch;
// setFromSecond where neither does; 0 where its wall has no second one near it.
func lineOf(t *testing.T, p *layout.Plan, s *layout.Sheet) int {
	t.Helper()
	line := 0
	for i := range s.Pieces {
		q := &s.Pieces[i]
		by := secondOn(t, p, q.Wall)
		if by == 0 {
			continue
		}
		from, to := stretchOfSecond(t, p, q.Wall)
		near := slices.ContainsFunc(q.Outline, func(x shape.Point) bool { return x.X > from+length.Inch/8 }) &&
			slices.ContainsFunc(q.Outline, func(x shape.Point) bool { return x.X < to-length.Inch/8 })
		if _, _, ok := meets(q, p.Room.Space.LevelLine); ok && near {
			return 1
		}
		if a, b, ok := meets(q, p.Room.Space.LevelLine+by); ok && a < to && b > from {
			line = 2
		} else if near && line == 0 {
			line = setFromSecond
		}
	}
	return line
}

// TestSheetsAreFiguredFromOneLineEverywhere finds out for every sheet on a stair which line crosses it, and reads the cut list, the
// cards and the wall's page: all three name that line, and the ends of the sheet are where its figures say, up and down from it.
func TestSheetsAreFiguredFromOneLineEverywhere(t *testing.T) {
	found := [4]int{}
	for _, file := range []string{"stair", "landing"} {
		p := rooms(t)[file]
		cards := map[string]string{}
		for _, c := range cardsOf(t, p) {
			cards[c.number] = c.words
		}
		pages := strings.Join(printed(t, p), " ")
		m := regexp.MustCompile(`([-0-9, ]+): heights are from line 2`).FindStringSubmatch(pages)
		require.NotNil(t, m, file)
		listed := numbersOf(strings.TrimSpace(m[1]))
		for _, row := range cutListOf(t, p) {
			s := row.sheet
			line := lineOf(t, p, s)
			found[line]++
			words, card := strings.Join(row.words, " "), cards[itoa(s.Number)]
			for k, name := range []string{"", "heights from LINE 1", "heights from LINE 2"} {
				if k > 0 {
					assert.Equal(t, line == k || k == 2 && line == setFromSecond, strings.Contains(words, name), "%s, sheet %d in the cut list: %s", file, s.Number, words)
					assert.Equal(t, line == k, strings.Contains(card, name), "%s, card %d: %s", file, s.Number, card)
				}
			}
			assert.Equal(t, line == 2, slices.Contains(listed, itoa(s.Number)), "%s, sheet %d on the wall's page: %s", file, s.Number, m[0])
			if line == setFromSecond {
				set := "HANG its raw head " + p.Style.Format(secondOn(t, p, s.Pieces[0].Wall)-s.Above) + " under LINE 2"
				assert.Contains(t, words, set)
				assert.Contains(t, card, set)
				assert.Regexp(t, `\b`+itoa(s.Number)+`\b[0-9, -]*: `+set, pages)
			}
			if line != 2 {
				continue
			}
			by := secondOn(t, p, s.Pieces[0].Wall)
			up, down := p.Style.Format(s.Above-by)+" up", p.Style.Format(s.Below+by)+" down"
			assert.Contains(t, words, up, "%s: head of %d", file, s.Number)
			assert.Contains(t, words, down, "%s: foot of %d", file, s.Number)
			assert.Contains(t, card, up, "%s: head of card %d", file, s.Number)
			assert.Contains(t, card, down, "%s: foot of card %d", file, s.Number)
			assert.NotContains(t, words+card, "over its foot")
		}
	}
	// every sheet of the second line is under it, or over it, or on it from edge to edge
	for _, file := range []string{"stair", "landing"} {
		p := rooms(t)[file]
		from, to := stretchOfSecond(t, p, 0)
		for _, row := range cutListOf(t, p) {
			for _, q := range row.sheet.Pieces {
				if line := lineOf(t, p, row.sheet); line >= 2 && q.Wall == 0 {
					for _, x := range q.Outline {
						assert.True(t, x.X >= from-length.Inch/16 && x.X <= to+length.Inch/16, "%s: sheet %d lies in the stretch of line 2", file, row.sheet.Number)
					}
				}
			}
		}
	}
	for line, n := range found {
		assert.GreaterOrEqual(t, n, 2, "sheets of line %d", line)
	}
}

// TestSecondLinesAreDrawn finds the second line on the page of its wall, as high over the first as its name says and from where to
// where its words say.
func TestSecondLinesAreDrawn(t *testing.T) {
	for _, file := range []string{"stair", "landing"} {
		p := rooms(t)[file]
		lines := written(t, p, "second-line")
		require.Len(t, lines, 1, file)
		from, to := stretchOfSecond(t, p, 0)
		for key, want := range map[string]length.Length{"data-over": secondOn(t, p, 0), "data-from": from, "data-to": to} {
			got, err := length.Parse(lines[0].facts[key], length.Millimetres)
			require.NoError(t, err)
			assert.True(t, near(want, got), "%s: %s", file, key)
		}
		for _, page := range printed(t, p) {
			if strings.Contains(page, "TAPE LIST") {
				assert.Contains(t, page, p.Style.Format(secondOn(t, p, 0))+" ↑")
			}
		}
	}
}

// TestSlopesStandOnTheWallsPage reads the bevels on the pages of the walls, in sheets and in their blocks, and finds each in the words
// of that sheet's card; no bevel of a card is left out.
func TestSlopesStandOnTheWallsPage(t *testing.T) {
	bevel := regexp.MustCompile(`bevel, to the right, ((?:[^;]*? (?:up|down) in [^;,]*"(?:, )?)+)`)
	one := regexp.MustCompile(`(HEAD|FOOT) SLOPES`)
	found := 0
	for _, file := range []string{"stair", "landing"} {
		p := rooms(t)[file]
		drawn := map[string][]string{} // by sheets and ends
		for _, g := range written(t, p, "bevel") {
			_, s := sheetAt(p, g.facts["data-place"], g.facts["data-course"])
			key := itoa(s) + " " + g.facts["data-end"]
			drawn[key] = append(drawn[key], strings.Join(g.words, " "))
		}
		for _, g := range written(t, p, "bevels") {
			end := strings.ToLower(strings.Fields(g.words[0])[0])
			for _, line := range g.words[1:] {
				numbers, words, ok := strings.Cut(line, ": ")
				require.True(t, ok, line)
				for _, n := range strings.Split(numbers, ", ") {
					drawn[n+" "+end] = append(drawn[n+" "+end], words)
				}
			}
		}
		want := 0
		for _, c := range cardsOf(t, p) {
			parts := one.FindAllStringSubmatchIndex(c.words, -1)
			for k, m := range parts {
				rest := c.words[m[0]:]
				if k+1 < len(parts) {
					rest = c.words[m[0]:parts[k+1][0]]
				}
				b := bevel.FindStringSubmatch(rest)
				require.NotNil(t, b, rest)
				key := c.number + " " + strings.ToLower(c.words[m[2]:m[3]])
				assert.Equal(t, []string{strings.TrimSuffix(b[1], ", ")}, drawn[key], "%s: %s", file, key)
				want++
			}
		}
		assert.Len(t, drawn, want, file)
		found += want
	}
	assert.Greater(t, found, 15)
}

// sheetAt is the number of the sheet at a place, and of a course.
func sheetAt(p *layout.Plan, place, course string) (*layout.Run, int) {
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if s := &p.Runs[i].Sheets[k]; itoa(s.Place) == place && itoa(s.Course) == course {
				return &p.Runs[i], s.Number
			}
		}
	}
	return nil, 0
}
