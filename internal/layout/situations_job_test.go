package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
)

func TestSituationsOfFlitches(t *testing.T) {
	flitch := func(text string) string { return head + must + text + plain("A", "186", "none", "") } // (186 + 2 - 1) / 23 1/2: 8 sheets
	t.Run("24 sheet 7 is damaged: the next one takes its place and every seam stays", func(t *testing.T) {
		whole := lay(t, flitch("[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\n"))
		p := lay(t, flitch("[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\ndamaged = [7]\n"))
		assert.Equal(t, at(whole), at(p))
		assert.Equal(t, "1-6, 8, 9", numbers(p))
		assert.Equal(t, []string{"of flitch F, delivered 1-12, sheet 7 is not laid (damaged)"}, messages(p, finding.NumbersLeftOut))
		assert.Equal(t, []int{10, 11, 12}, p.Left[0].Left)
	})
	t.Run("25 a sheet was never delivered: it is skipped and no number before it goes back", func(t *testing.T) {
		p := lay(t, flitch("[[flitch]]\nnumber = \"F\"\nsheets = \"1-3, 5-12\"\n"))
		assert.Equal(t, "1-3, 5-9", numbers(p))
		assert.NotContains(t, p.Left[0].Delivered, 4)
	})
	t.Run("26 the flitch runs out in the field: it is found, and a door would have taken the change", func(t *testing.T) {
		two := "[[flitch]]\nnumber = \"F\"\nsheets = \"1-5\"\n[[flitch]]\nnumber = \"G\"\nsheets = \"1-7\"\n"
		p := lay(t, flitch(two))
		assert.Equal(t, []string{"flitch F runs out at seam 5 | 1, in the open field of wall A"}, messages(p, finding.FlitchChangeInField))
		q := lay(t, head+must+two+plain("A", "186", "none", opening("door", 80, 36, 0, 84, "")))
		assert.Empty(t, messages(q, finding.FlitchChangeInField))
		for _, s := range q.Runs[0].Seams {
			if s.FlitchChange {
				assert.True(t, 80*in <= s.At && s.At <= 116*in)
			}
		}
	})
	t.Run("27 a second flitch begins on the other wall, at the corner cut between them", func(t *testing.T) {
		p := lay(t, head+must+"[[flitch]]\nnumber = \"F\"\nsheets = \"1-5\"\n[[flitch]]\nnumber = \"G\"\nsheets = \"1-7\"\n"+
			plain("A", "90", "inside", "wrap = false")+plain("B", "90", "none", ""))
		// 90 in: (90 + 2 - 1) / 23 1/2 = 3.9: four sheets on each wall
		for _, s := range p.Runs[0].Sheets {
			assert.Equal(t, map[bool]string{true: "F", false: "G"}[s.Right <= 90*in], s.Flitch)
		}
		assert.Empty(t, messages(p, finding.FlitchChangeInField))
	})
	t.Run("not enough sheets: how many lack, and that fewer would not do", func(t *testing.T) {
		p := lay(t, flitch("[[flitch]]\nnumber = \"F\"\nsheets = \"1-6\"\n"))
		assert.Equal(t, []string{"8 sheets are laid and 6 can be: 2 short; no layout takes fewer"}, messages(p, finding.FlitchShort))
		assert.Equal(t, 2, p.Totals.Short)
	})
}

func TestSituationsOfStartAndEnd(t *testing.T) {
	t.Run("28 a focal wall: the middle of a sheet or a seam on its centre line, by the designer's choice", func(t *testing.T) {
		for _, put := range []string{"middle", "seam"} {
			p := lay(t, head+must+plain("A", "168", "none", "main = true\n[[wall.pin]]\nat = \"84\"\nput = \""+put+"\"\n"))
			require.Empty(t, messages(p, finding.PinDropped))
			list := p.Runs[0].Sheets
			assert.Equal(t, list[0].Width, list[len(list)-1].Width, "both ways alike")
			if put == "middle" {
				assert.Equal(t, 84*in, midOf(p, 84*in))
				// 84 - 11 3/4 = 72 1/4 = 3 x 23 1/2 + 1 3/4: too thin an end, so one sheet on either side is narrowed
				assert.EqualValues(t, 2, p.Runs[0].Spans[0].Score.Narrow)
				continue
			}
			// 84 = 3 x 23 1/2 + 13 1/2 on either side
			assert.Equal(t, "13 1/2 37 60 1/2 84 107 1/2 131 154 1/2", at(p))
		}
	})
	t.Run("29 a balanced wall: both ends the same where nothing is in the way", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "150", "none", ""))
		// (150 + 2 - 1) / 23 1/2 = 6.4: 7 sheets, 150 - 5 x 23 1/2 = 32 1/2 for two ends
		assert.Equal(t, "16 1/4 23 1/2 23 1/2 23 1/2 23 1/2 23 1/2 16 1/4", widths(p))
		assert.Zero(t, p.Runs[0].Spans[0].Score.Difference)
	})
	t.Run("30 a closed room: last meets first over the door, where it shows least", func(t *testing.T) {
		text := closedRoom("")
		text = strings.Replace(text, "name = \"C\"\nlength = \"12'\"\nheight = \"8'\"\ncorner = \"inside\"\n",
			"name = \"C\"\nlength = \"12'\"\nheight = \"8'\"\ncorner = \"inside\"\n"+opening("door", 50, 36, 0, 84, ""), 1)
		p := lay(t, text)
		require.Zero(t, musts(p))
		list := messages(p, finding.ClosingSeam)
		require.Len(t, list, 1)
		assert.Contains(t, list[0], "closing seam 23 | 1, wall C, 6'-8\" from its left end, seen for 12 in")
		for _, s := range p.Runs[0].Seams {
			if s.Closing {
				assert.True(t, s.X >= 52*in && s.X <= 84*in)
				assert.GreaterOrEqual(t, s.NearestCorner.Distance, 4*in)
			}
		}
	})
	t.Run("31 an open wall ends at glass: half the trim, and what it ends against is said", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "46 1/2", "none", "left_end = \"trim\"\nright_end = \"frame\"\n"))
		// 23 at the trim, 24 1/2 - 1/2 - 1/2 = 23 1/2 at the frame
		assert.Equal(t, "23 23 1/2", widths(p))
		span := p.Runs[0].Spans[0]
		assert.Equal(t, [2]string{"the trim", "the frame"}, [2]string{span.LeftEnd, span.RightEnd})
		assert.Equal(t, in/2, span.RightTrim)
	})
	t.Run("44 a movement joint in the board: the covering ends at it on both sides", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "120", "none", "[[wall.bare]]\nfrom = \"60\"\nto = \"60 1/2\"\nwhy = \"movement joint\"\n"))
		require.Len(t, p.Runs[0].Spans, 2)
		assert.Equal(t, "the bare strip (movement joint)", p.Runs[0].Spans[0].RightEnd)
		assert.Equal(t, [2]L{60*in + in/2, 120 * in}, [2]L{p.Runs[0].Spans[1].Left, p.Runs[0].Spans[1].Right})
		for _, s := range p.Runs[0].Sheets {
			assert.False(t, s.Left < 60*in && s.Right > 60*in, "no sheet bridges it")
		}
	})
	t.Run("32 horizontal grain: nothing wraps, the seams are level and every wall is cut at its corners", func(t *testing.T) {
		p := lay(t, head+"grain = \"horizontal\"\n"+must+plain("A", "100", "inside", "")+plain("B", "80", "none", ""))
		require.Len(t, p.Runs, 2)
		for _, r := range p.Runs {
			assert.True(t, r.Up)
			assert.Empty(t, r.Corners)
			for _, s := range r.Sheets {
				assert.Empty(t, s.Bends)
			}
		}
		// raw ends with 2 in of trim: 24 1/2 - 1/2 - 2 = 22: (96 - 44) / 23 1/2 = 2.2, so 5 bands
		assert.Len(t, p.Runs[0].Sheets, 5)
	})
	t.Run("two crews from both ends: the seam between them is pinned and both work towards it", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "240", "none", "[[wall.pin]]\nat = \"120\"\nput = \"seam\"\n"))
		assert.Contains(t, at(p), "120")
		for _, s := range p.Runs[0].Seams {
			if s.At == 120*in {
				assert.Equal(t, 120*in+in/2, s.PlumbLine, "half an overlap right of the seam")
			}
		}
	})
	t.Run("an outside edge without a trim is found", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "60", "outside", "wrap = false")+plain("B", "60", "none", ""))
		assert.Len(t, messages(p, finding.EdgeBare), 2, "both sides of the cut corner")
		p = lay(t, head+must+plain("A", "60", "outside", "wrap = false\nright_end = \"trim\"")+plain("B", "60", "none", "left_end = \"trim\""))
		assert.Empty(t, messages(p, finding.EdgeBare))
	})
}

func TestSituationsOfBoxes(t *testing.T) {
	box := func(kind, x, z, rest string) string {
		return fmt.Sprintf("[[wall.box]]\nkind = %q\nx = %q\nz = %q\n%s\n", kind, x, z, rest)
	}
	t.Run("36 a switch where a seam would be: the seam keeps off it", func(t *testing.T) {
		// three sheets for 60: f + last = 36 1/2, f from 13 1/2 to 23; the middle, 18 1/4, puts seams at 18 1/4 and 41 3/4
		free := lay(t, head+plain("A", "60", "none", ""))
		assert.Equal(t, "18 1/4 41 3/4", at(free))
		p := lay(t, head+plain("A", "60", "none", box("switch", "41 3/4", "48", "")))
		assert.Empty(t, messages(p, finding.PlateClose))
		clear(t, p, 41*in+3*in/4-11*in/8-in, 41*in+3*in/4+11*in/8+in)
		assert.Equal(t, 3, p.Totals.Sheets)
	})
	t.Run("36 where no seam can keep off, it is found", func(t *testing.T) {
		p := lay(t, head+plain("A", "46", "none", box("outlet", "23", "16", "")))
		assert.Equal(t, []string{"seam 1 | 2 runs behind the plate of outlet E1; better 1 in beside it"}, messages(p, finding.PlateClose))
	})
	t.Run("38 a bracket that holds a screen: no seam behind it", func(t *testing.T) {
		// three sheets for 60 put a seam at 41 3/4; f + 23 1/2 <= 36 wants f = 12 1/2, and 60 - 36 = 24 is over 23: four sheets
		free := lay(t, head+must+plain("A", "60", "none", ""))
		require.Equal(t, "18 1/4 41 3/4", at(free))
		p := lay(t, head+must+plain("A", "60", "none", "[[wall.keep_clear]]\nfrom = \"37\"\nto = \"54\"\nwhy = \"screen bracket\"\n"))
		assert.Zero(t, musts(p))
		clear(t, p, 37*in, 54*in)
	})
	t.Run("39 a strobe is never covered nor taken off", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "60", "none", box("alarm", "30", "84", "")))
		assert.Equal(t, []string{"alarm AL1 at 30 in on wall A, 7'-0\" up, is an alarm device: cut round it, never cover or take it off"},
			messages(p, finding.AlarmStaysBare))
	})
	t.Run("40 a thermostat moved late: no other sheet changes", func(t *testing.T) {
		a := lay(t, head+must+plain("A", "100", "none", box("thermostat", "30", "60", "")))
		b := lay(t, head+must+plain("A", "100", "none", box("thermostat", "33", "60", "")))
		assert.Equal(t, at(a), at(b))
		assert.Equal(t, a.Runs[0].Sheets, b.Runs[0].Sheets)
	})
	t.Run("a plate that reaches into a casing is found", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "100", "none", opening("door", 40, 36, 0, 84, "")+box("switch", "39", "48", "")))
		assert.Equal(t, []string{"the plate of switch S1 at 3'-3\" on wall A reaches 3/8 in into door D1"}, messages(p, finding.BoxInOpening))
	})
}
