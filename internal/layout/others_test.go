package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// Net 23 1/2, ends of at most 23: of 100 1/2 three whole sheets leave 30 to the ends. The best is 15 and 15; a quarter of a
// sheet is 5 7/8, and the next line past it makes 20 15/16 and 9 1/16, which lack 2 15/16 of 12 on either side alike. Right of
// it no end is another's neighbour any more: all others take a narrow sheet.
const twoStarts = head + `[[wall]]
name = "Long"
length = "8' 4 1/2"
height = "8'"
`

func TestOthersOfTwoStarts(t *testing.T) {
	c, err := Compare(decoded(t, twoStarts))
	require.NoError(t, err)
	assert.Equal(t, 0, c.Own)
	require.GreaterOrEqual(t, len(c.Others), 2)
	assert.Equal(t, "15 23 1/2 23 1/2 23 1/2 15", widths(c.Aims[0].Plan))
	assert.Equal(t, "20 15/16 23 1/2 23 1/2 23 1/2 9 1/16", widths(c.Others[0].Plan))
	assert.Equal(t, "9 1/16 23 1/2 23 1/2 23 1/2 20 15/16", widths(c.Others[1].Plan))
	for i, o := range c.Others {
		assert.Equal(t, i+2, o.Number)
		if i < 2 {
			require.Len(t, o.Shoulds, 1)
			assert.Equal(t, finding.SheetSlim, o.Shoulds[0].Code)
		} else {
			assert.Len(t, o.Narrow, 1)
		}
	}
}

// choose lays one of them out, whatever is asked of the room; one that there is not is refused with how many there are.
func TestChoose(t *testing.T) {
	r := decoded(t, twoStarts+"[room]\nchoose = 3\n")
	p, err := Lay(r)
	require.NoError(t, err)
	assert.Equal(t, "9 1/16 23 1/2 23 1/2 23 1/2 20 15/16", widths(p))
	assert.Equal(t, 3, p.Chosen)
	assert.Empty(t, p.Nearly)
	assert.Len(t, messages(p, finding.Chosen), 1)
	same, err := LayAim(r, p.Aim)
	require.NoError(t, err)
	assert.Equal(t, p.Runs, same.Runs)

	_, err = Lay(decoded(t, twoStarts+"[room]\nchoose = 70\n"))
	assert.ErrorContains(t, err, "room.toml:13:1: choose = 70, but the room has 6 layouts to choose from")
	_, err = Lay(decoded(t, wall("length = \"10\"\nheight = \"8'\"\n[room]\nchoose = 2\n")))
	assert.ErrorContains(t, err, "choose = 2, but the room has 1 layout to choose from")
	_, err = room.Decode("room.toml", []byte(twoStarts+"[room]\nchoose = 0\n"))
	assert.ErrorContains(t, err, "choose = 0 is no number of a layout")
}

// While sheets hang the layouts to choose from begin at the last of them, and what moved is told against the room's own choice.
func TestChoiceWhileSheetsHang(t *testing.T) {
	const two = "[[hung]]\nwall = \"Long\"\nsheet = 1\nseam = \"20 15/16\"\n"
	p := lay(t, twoStarts+two)
	assert.Equal(t, "20 15/16 23 1/2 23 1/2 23 1/2 9 1/16", widths(p), "what is left of the other layout is the best of the rest")
	assert.NotEmpty(t, p.Moves, "against the best of the whole room")
	p = lay(t, twoStarts+two+"[room]\nchoose = 2\n")
	assert.Equal(t, 20*in+15*in/16, p.Runs[0].Seams[0].At)
	assert.NotEqual(t, "20 15/16 23 1/2 23 1/2 23 1/2 9 1/16", widths(p))
	require.Len(t, messages(p, finding.Chosen), 1)
	assert.Contains(t, messages(p, finding.Chosen)[0], "while sheets hang these are layouts of what is left")
	for _, m := range p.Moves {
		assert.NotEqual(t, 1, m.Place, "the first sheet hangs where choice 2 of the whole room has it")
	}
}

// On any room the others come in the order of the aim, none is better than the best, all differ by more than a quarter of a sheet,
// none costs more than it may, and choose takes each by its number.
func TestOthersOfRandomRooms(t *testing.T) {
	t.Parallel()
	listed := 0
	someRooms(t, 60, 15, same, func(t *testing.T, r *room.Room, _ string) bool {
		best, err := build(r, aims[r.Rules.Aim], nil, nil)
		if err != nil {
			return false
		}
		list := best.others()
		require.LessOrEqual(t, len(list), othersListed)
		all := []*Plan{best.plan}
		for i, o := range list {
			require.Equal(t, i+2, o.Number)
			for _, p := range all {
				require.True(t, differ(best, p, o.Plan), "layout %d", o.Number)
				require.LessOrEqual(t, roomScore(best, p).Compare(roomScore(best, o.Plan), best.aim), 0, "layout %d", o.Number)
			}
			require.LessOrEqual(t, o.Plan.count(finding.Must), best.plan.count(finding.Must))
			require.LessOrEqual(t, o.Plan.Totals.Sheets, best.plan.Totals.Sheets+1)
			all = append(all, o.Plan)
			listed++
		}
		chosen := *r
		for number := range len(list) + 2 {
			chosen.Space.Choose = number
			p, err := LayAim(&chosen, best.aim)
			if number > len(all) {
				require.Error(t, err)
				continue
			}
			require.NoError(t, err)
			require.True(t, sameSeams(all[max(number, 1)-1], p), "choose = %d", number)
		}
		return true
	})
	assert.Greater(t, listed, 20)
}

// differ reports whether two plans close, begin or end more than a quarter of a sheet apart in one of the spans still to hang.
func differ(b *builder, p, q *Plan) bool {
	apart := b.net / 4
	for i := range p.Runs {
		for k := range p.Runs[i].Spans {
			asked := b.asked[i][k]
			if asked.done {
				continue
			}
			mine, theirs := lookOf(&p.Runs[i], k), lookOf(&q.Runs[i], k)
			for n := range mine {
				d := (mine[n] - theirs[n]).Abs()
				if asked.Closed {
					d = p.Runs[i].Line.Distance(mine[n], theirs[n])
				}
				if d > apart {
					return true
				}
			}
		}
	}
	return false
}

// lookOf is where a span closes and its first sheet to hang ends; in an open span where that ends and the last one begins.
func lookOf(r *Run, span int) [2]L {
	var sheets []*Sheet
	for k := range r.Sheets {
		if s := &r.Sheets[k]; s.Span == span && !s.Hung && (len(sheets) == 0 || sheets[len(sheets)-1].Place != s.Place) {
			sheets = append(sheets, s)
		}
	}
	first, last := sheets[0], sheets[len(sheets)-1]
	if r.Spans[span].Closed {
		return [2]L{r.Line.Round(first.Left), r.Line.Round(first.Right)}
	}
	return [2]L{first.Right, last.Left}
}

// roomScore adds up what is still to hang.
func roomScore(b *builder, p *Plan) seam.Score {
	var sum seam.Score
	for i := range p.Runs {
		for k, span := range p.Runs[i].Spans {
			if !b.asked[i][k].done {
				sum = sum.Plus(span.Score)
			}
		}
	}
	return sum
}
