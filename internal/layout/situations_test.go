package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// Job situations that a layout decides; common practice, no source. The sheet is 24 1/2 in gross, W 23 1/2, 23 at a raw end.

const (
	in = length.Inch
	ft = length.Foot
)

// must keeps preferences out of a case: what is asserted is decided by musts and by the count.
const must = "[rules]\nprefer_return = \"4\"\nprefer_leg = \"3\"\nprefer_clear = \"2\"\nprefer_width = \"6\"\n"

// musts counts the must findings of a plan.
func musts(p *Plan) int {
	n := 0
	for _, f := range p.Findings {
		if f.Level == finding.Must {
			n++
		}
	}
	return n
}

// at lists where the seams of the first run stand, in inches.
func at(p *Plan) string {
	var out []string
	for _, s := range p.Runs[0].Seams {
		out = append(out, p.Style.Inches(s.At))
	}
	return strings.Join(out, " ")
}

// clear asserts that no seam of the first run stands strictly between two places.
func clear(t *testing.T, p *Plan, from, to L) {
	t.Helper()
	for _, s := range p.Runs[0].Seams {
		assert.False(t, from < s.At && s.At < to, "seam at %s", p.Style.Inches(s.At))
	}
}

func numbers(p *Plan) string {
	var list []int
	for _, r := range p.Runs {
		for _, s := range r.Sheets {
			list = append(list, s.Number)
		}
	}
	return Numbers(list)
}

// opening is one opening of a wall.
func opening(kind string, left, width, sill, height int, rest string) string {
	text := fmt.Sprintf("[[wall.opening]]\nkind = %q\nfrom_left = %d\nwidth = %d\nheight = %d\n%s\n", kind, left, width, height, rest)
	if sill > 0 {
		text += fmt.Sprintf("sill = %d\n", sill)
	}
	return text
}

func TestSituationsAtCorners(t *testing.T) {
	t.Run("1 an outside corner leans: the return is held at its short end", func(t *testing.T) {
		lobby := func(pin string) *Plan {
			return lay(t, head+plain("A", "60", "outside", "lean = \"1/2\"")+plain("B", "60", "none", "[[wall.pin]]\nat = \""+pin+"\""))
		}
		p := lobby("4 1/2")
		assert.Zero(t, musts(p))
		c := p.Runs[0].Corners[0]
		assert.Equal(t, [2]L{9 * in / 2, 4 * in}, [2]L{c.RightReturnBottom, c.RightReturnTop}, "4 1/2 at the floor, 4 at the ceiling")
		assert.Equal(t, 4*in, c.RightReturn)
		assert.Len(t, messages(lobby("4 7/16"), finding.PinDropped), 1, "a snap less and the ceiling is short")
	})
	t.Run("2 an inside corner leans and the next wall is plumb: the seam behind it eats overlap", func(t *testing.T) {
		room := func(lean string) *Plan {
			return lay(t, head+plain("A", "60", "inside", "lean = \""+lean+"\"")+plain("B", "60", "none", "lean = [0, 0]"))
		}
		p := room("3/8")
		assert.Equal(t, 3*in/8, p.Runs[0].Corners[0].Skew)
		assert.Zero(t, musts(p))
		c := p.Runs[0].Corners[0]
		assert.Equal(t, 3*in/8, c.LeftReturnTop-c.LeftReturnBottom, "two sizes on the left wall")
		assert.Equal(t, c.RightReturnTop, c.RightReturnBottom, "one on the plumb wall")
		assert.Len(t, messages(room("5/8"), finding.SkewEatsOverlap), 1)
	})
	t.Run("4 a seam would land on a corner: the start moves, nothing is narrowed", func(t *testing.T) {
		// 23 + 3 x 23 1/2 = 93 1/2 would be 1/2 before the corner at 94
		p := lay(t, head+must+plain("A", "94", "inside", "")+plain("B", "60", "none", ""))
		assert.Equal(t, "19 1/2 43 66 1/2 90 113 1/2 137", at(p), "90 is 4 before it, the furthest right that wraps")
		assert.EqualValues(t, 0, p.Runs[0].Spans[0].Score.Jump)
	})
	t.Run("5 no uniform start works: one sheet is narrowed, over the door where it shows least", func(t *testing.T) {
		// bends at 94, 148 7/8 and 203 3/4: remainders 0, 7 7/8 and 15 3/4 of 23 1/2, and 4 to either side of each leave none
		walls := func(door string) *Plan {
			return lay(t, head+must+plain("A", "94", "inside", "")+plain("B", "54 7/8", "inside", door)+plain("C", "54 7/8", "inside", "")+
				plain("D", "56 1/4", "none", ""))
		}
		p := walls("")
		require.Zero(t, musts(p))
		score := p.Runs[0].Spans[0].Score
		assert.EqualValues(t, 1, score.Narrow, "the fewest")
		assert.EqualValues(t, 8, score.Jump)
		assert.Len(t, messages(p, finding.NarrowSheet), 1)
		p = walls(opening("door", 8, 36, 0, 84, ""))
		require.Zero(t, musts(p))
		score = p.Runs[0].Spans[0].Score
		assert.EqualValues(t, 0, score.Narrow, "12 in over the door are no longer than 30")
		assert.EqualValues(t, 1, score.Jump)
		for _, s := range p.Runs[0].Sheets {
			if s.Lost > 0 {
				assert.Equal(t, 12*in, p.Runs[0].SeamAfter(s.Place).Seen, "the jump stands over the door, 96 - 84")
			}
		}
	})
	t.Run("13 a square column of 12 in: a seam on the middle of a face, never nearer than 4 to an edge", func(t *testing.T) {
		p := lay(t, head+must+"[room]\nclosed = true\n"+round("outside", "12", "12", "12", "12"))
		assert.Zero(t, musts(p))
		assert.Len(t, p.Runs[0].Sheets, 3, "48 / 23 1/2 = 2.04")
		for _, s := range p.Runs[0].Seams {
			assert.GreaterOrEqual(t, s.NearestCorner.Distance, 4*in)
		}
	})
	t.Run("14 a round column: three sheets, the lack beside the closing seam", func(t *testing.T) {
		text := head + "[rules]\ncorner_return = 0\nprefer_return = 0\n[room]\nclosed = true\n"
		for range 4 {
			text += plain("", "18", "outside", "radius = 9")
		}
		text = strings.ReplaceAll(text, "name = \"\"\n", "")
		p := lay(t, text)
		require.Len(t, p.Runs[0].Sheets, 3)
		assert.EqualValues(t, 0, p.Runs[0].Spans[0].Score.Narrow)
	})
	t.Run("15 a pilaster too deep for one sheet: the bends that collide are named", func(t *testing.T) {
		// 7 + 7 + 7 in: no face is twice 4, and 7 + 7 + 7 + 4 + 4 = 29 is over 23 1/2
		p := lay(t, head+plain("A", "60", "inside", "")+plain("L", "7", "outside", "")+plain("F", "7", "outside", "")+plain("R", "7", "inside", "")+
			plain("B", "60", "none", ""))
		list := messages(p, finding.CannotMeet)
		require.Len(t, list, 1)
		for _, c := range []string{"C1", "C2", "C3", "C4"} {
			assert.Contains(t, list[0], "corner "+c, "without any one bend a sheet would do")
		}
		assert.Contains(t, list[0], "corner_return 3 1/2 in in place of 4 in", "half a face")
		assert.Contains(t, list[0], "a gross width of 30 in in place of 24 1/2 in", "29 + 1")
	})
	t.Run("16 corners that are not square wrap like others, with their angle", func(t *testing.T) {
		p := lay(t, head+plain("A", "60", "outside", "angle = 135")+plain("B", "60", "inside", "angle = 30")+plain("C", "60", "none", ""))
		assert.Equal(t, 135.0, p.Runs[0].Corners[0].Angle)
		assert.Equal(t, 30.0, p.Runs[0].Corners[1].Angle)
		assert.Equal(t, []L{60 * in}, p.Runs[0].Sheets[2].Bends)
		assert.Equal(t, 180*in, p.Runs[0].Length, "a sharp bend takes no girth, whatever its angle")
	})
	t.Run("17 a bullnose is measured along its arc", func(t *testing.T) {
		sharp := lay(t, head+plain("A", "60", "outside", "")+plain("B", "60", "none", ""))
		eased := lay(t, head+plain("A", "60", "outside", "radius = \"3/4\"")+plain("B", "60", "none", ""))
		assert.InDelta(t, 0.4292*0.75, inches(sharp.Runs[0].Length-eased.Runs[0].Length), 1e-4)
		c := eased.Runs[0].Corners[0]
		for _, s := range eased.Runs[0].Seams {
			assert.True(t, s.At <= c.From-4*in || s.At >= c.To+4*in, "returns count from the tangent")
		}
	})
	t.Run("18 a curved wall: facets that meet straight take seams anywhere", func(t *testing.T) {
		text := head
		for range 12 {
			text += "[[wall]]\nlength = \"10\"\nheight = \"96\"\ncorner = \"straight\"\n"
		}
		p := lay(t, strings.TrimSuffix(text, "corner = \"straight\"\n"))
		assert.Equal(t, 120*in, p.Runs[0].Length)
		assert.Empty(t, p.Runs[0].Corners)
		assert.Len(t, p.Runs[0].Sheets, 6, "(120 + 2 - 1) / 23 1/2 = 5.1")
	})
}

func TestSituationsAtOpenings(t *testing.T) {
	t.Run("6 a narrow pier between windows takes one sheet with both returns", func(t *testing.T) {
		// pier of 9 in, jambs wrapped 4 deep: 9 + 2 x (4 + 2) = 21 of 23 1/2
		p := lay(t, head+must+plain("A", "180", "none", opening("window", 40, 45, 30, 50, "reveal = 4\nwrap_reveal = true")+
			opening("window", 94, 45, 30, 50, "reveal = 4\nwrap_reveal = true")))
		assert.Zero(t, musts(p))
		clear(t, p, 79*in, 100*in)
		for _, s := range p.Runs[0].Sheets {
			if s.Left < 90*in && s.Right > 90*in {
				assert.Equal(t, []L{85 * in, 94 * in}, s.Bends, "its sheet goes round both jambs")
			}
		}
	})
	t.Run("6 a pier that no sheet covers with both returns: the short side is named", func(t *testing.T) {
		// 7 + 2 x (7 + 2) = 25 in one sheet; on the pier a seam owes 4 to either side, 8 of 7
		p := lay(t, head+must+plain("A", "180", "none", opening("window", 40, 45, 30, 50, "reveal = 7\nwrap_reveal = true")+
			opening("window", 92, 45, 30, 50, "reveal = 7\nwrap_reveal = true")))
		list := messages(p, finding.CannotMeet)
		require.Len(t, list, 1)
		assert.Contains(t, list[0], "jambs of 7 in at window W1")
		assert.Contains(t, list[0], "jambs of 7 in at window W2")
		assert.Contains(t, list[0], "a gross width of 26 in in place of 24 1/2 in", "25 + 1")
	})
	t.Run("7 a reveal shallower than a return", func(t *testing.T) {
		p := lay(t, wrapped("width = 40\nreveal = \"3 1/2\"", ""))
		assert.Equal(t, []string{"the jambs of window W1 are 3 1/2 in deep; 4 in should wrap past a bend"}, messages(p, finding.RevealShallow))
	})
	t.Run("8 a deep reveal: the sheet beside it has to reach into it, and over it", func(t *testing.T) {
		p := lay(t, wrapped("width = 60\nreveal = 12", ""))
		require.Zero(t, musts(p))
		clear(t, p, 26*in, 44*in) // 4 outside, 12 + 2 inside
		clear(t, p, 76*in, 94*in)
		// two jambs of 16 in a width of 30 take more than there is
		assert.Equal(t, []string{"the two jambs of window W1 take 32 in of the sheets over it, but it is only 30 in wide"},
			messages(lay(t, wrapped("width = 30\nreveal = 16", "")), finding.RevealsOverlap))
	})
	t.Run("9 head and sill returns need pieces of their own", func(t *testing.T) {
		assert.Equal(t, []string{"the jambs of window W1, 5 in deep, are wrapped; the head and the sill of it on wall Long need separate pieces or paint: grain cannot bend over a level edge"},
			messages(lay(t, wrapped("width = 40\nreveal = 5", "")), finding.HeadAndSill))
	})
	t.Run("10 a door: the sheet runs past its jamb and is cut out, with a leg that can stand", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "120", "none", opening("door", 30, 36, 0, 84, "")))
		clear(t, p, 27*in, 32*in)
		clear(t, p, 64*in, 69*in)
		var cut *Sheet
		for k := range p.Runs[0].Sheets {
			if s := &p.Runs[0].Sheets[k]; s.Left < 30*in && s.Right > 30*in {
				cut = s
			}
		}
		require.NotNil(t, cut)
		require.Len(t, cut.Pieces, 1)
		assert.Len(t, cut.Pieces[0].Outline, 6, "an L: leg and head in one piece")
		assert.Equal(t, 100*in, cut.CutLength)
	})
	t.Run("11 the piece above a door comes off the sheet whose number is next", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "120", "none", opening("door", 40, 36, 0, 84, "")))
		for k, s := range p.Runs[0].Sheets {
			assert.Equal(t, k+1, s.Number)
			top := L(0)
			for _, q := range s.Pieces[0].Outline {
				top = max(top, q.Z)
			}
			assert.Equal(t, 96*in, top, "every sheet reaches the ceiling over the door as beside it")
		}
	})
	t.Run("12 a double door: the sheet wholly over it is a header and keeps its cut length and place", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "168", "none", opening("door", 48, 72, 0, 84, "")))
		found := 0
		for k, s := range p.Runs[0].Sheets {
			assert.Equal(t, k+1, s.Number)
			assert.Equal(t, 100*in, s.CutLength, "openings are not taken off the length")
			if s.Left >= 48*in && s.Right <= 120*in {
				found++
				assert.Equal(t, s.Width.Times(12*in), s.Area, "of it 96 - 84 is laid")
			}
		}
		assert.Positive(t, found)
	})
	t.Run("12 a full-height opening with the grain counted on: whole sheets go back to stock", func(t *testing.T) {
		p := lay(t, head+must+"[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\n"+plain("A", "192", "none", opening("cased opening", 60, 60, 0, 96, "grain = \"through\"")))
		in := 0
		for _, s := range p.Runs[0].Sheets {
			if s.InGap {
				in++
				assert.Empty(t, s.Pieces)
				assert.Zero(t, s.CutLength)
				assert.NotZero(t, s.Number, "it keeps its number")
			}
		}
		assert.Equal(t, in, len(messages(p, finding.SheetInGap)))
		assert.Positive(t, in)
	})
	t.Run("41 a headboard hides a jump: behind it a sheet may be narrow", func(t *testing.T) {
		pins := "[[wall.pin]]\nat = \"60\"\n[[wall.pin]]\nat = \"75\"\n"
		// 60 = 2 x 23 1/2 + 13; 236 - 75 = 6 x 23 1/2 + 20: the one narrow sheet is that from 60 to 75
		shown := lay(t, head+must+plain("A", "236", "none", pins))
		hidden := lay(t, head+must+plain("A", "236", "none", "hidden_below = 70\n"+pins))
		assert.EqualValues(t, 1, shown.Runs[0].Spans[0].Score.Narrow)
		assert.EqualValues(t, 0, hidden.Runs[0].Spans[0].Score.Narrow, "96 - 70 = 26 is seen: no longer than 30")
		assert.EqualValues(t, 3, hidden.Runs[0].Spans[0].Score.Jump, "26 in is 3 ft, rounded up")
		assert.Empty(t, messages(hidden, finding.NarrowSheet))
	})
	t.Run("a lift door pocket: a door whose reveal is wrapped, to the floor", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "168", "none", opening("door", 60, 42, 0, 84, "reveal = 6\nwrap_reveal = true")))
		assert.Zero(t, musts(p))
		assert.Contains(t, messages(p, finding.HeadAndSill)[0], "; the head of it on wall A needs separate pieces")
	})
	t.Run("an inside niche shallower than a return on all sides is one sheet's picture when pinned so", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "120", "none", opening("built-in", 52, 12, 40, 30, "reveal = 3\nwrap_reveal = true")+"[[wall.pin]]\nat = \"58\"\nput = \"middle\"\n"))
		assert.Empty(t, messages(p, finding.PinDropped))
		for _, s := range p.Runs[0].Sheets {
			if s.Left < 58*in && s.Right > 58*in {
				assert.Equal(t, []L{52 * in, 64 * in}, s.Bends)
				require.Len(t, s.Pieces[0].Holes, 1, "the niche is a hole in one sheet")
			}
		}
	})
}

func TestSituationsOfHeights(t *testing.T) {
	t.Run("19 a raked ceiling: every sheet is cut to its high side, and both edges are drawn", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nname = \"A\"\nlength = \"94\"\nheight = [\"60\", \"107\"]\n") // rises 1 in 2
		for _, s := range p.Runs[0].Sheets {
			assert.Equal(t, 60*in+s.Right/2+4*in, s.CutLength)
			assert.Len(t, s.Pieces[0].Outline, 4)
		}
		last := p.Runs[0].Sheets[len(p.Runs[0].Sheets)-1]
		assert.Equal(t, 111*in, last.CutLength, "the longest blank: 107 + 4")
	})
	t.Run("20 a ceiling out of level: a sheet over its stock is found", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nname = \"A\"\nlength = \"94\"\nheight = [\"115\", \"116\"]\n")
		assert.Empty(t, messages(p, finding.SheetShort))
		p = lay(t, head+must+"[rules]\njoint_height = 60\n"[8:]+"[[wall]]\nname = \"A\"\nlength = \"94\"\nheight = [\"115\", \"116 1/16\"]\n")
		assert.NotEmpty(t, messages(p, finding.Joint), "116 1/16 + 4 takes an end match")
	})
	t.Run("21 a floor out of level: the base follows it and the cut grows by the drop", func(t *testing.T) {
		p := lay(t, head+must+"[room]\nbase = 6\n[[wall]]\nlength = \"47\"\nheight = 96\nfloor = [0, \"-1\"]\n")
		list := p.Runs[0].Sheets
		assert.Equal(t, 96*in-6*in+in+4*in, list[len(list)-1].CutLength, "96 - (6 - 1) + 4")
	})
	t.Run("22 a wall taller than a sheet: rows, numbers bottom then top, the joint told", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nlength = \"60\"\nheight = 150\n")
		// from 150 + 2 + 1 - 120 = 33 to 120 - 2 - 1 = 117, the middle 75
		assert.Equal(t, []L{75 * in}, p.Runs[0].Joints)
		assert.Equal(t, "1-6", numbers(p))
		assert.Equal(t, []int{1, 1, 2, 2, 3, 3}, places(p))
	})
	t.Run("23 sheets much longer than the wall share one mark: the level line", func(t *testing.T) {
		p := lay(t, head+must+plain("A", "120", "inside", "")+"[[wall]]\nlength = \"60\"\nheight = 90\n")
		for _, s := range p.Runs[0].Sheets {
			assert.Equal(t, 50*in, s.Below, "48 + 2 on every sheet")
		}
		assert.Empty(t, messages(p, finding.FigureSteps))
	})
	t.Run("42 a wainscot cap: the covering begins on it", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nlength = \"60\"\nheight = 96\nbase = 36\n")
		assert.Equal(t, 64*in, p.Runs[0].Sheets[0].CutLength, "96 - 36 + 4")
		assert.Equal(t, 60*in, p.Runs[0].Seams[0].Seen)
	})
	t.Run("43 base and crown go on afterwards: the covering runs behind them and the seam shows as before", func(t *testing.T) {
		p := lay(t, head+must+"[room]\nbase = 5\ncrown = 4\nbehind = \"both\"\n[[wall]]\nlength = \"60\"\nheight = 96\n")
		assert.Equal(t, 100*in, p.Runs[0].Sheets[0].CutLength)
		assert.Equal(t, 87*in, p.Runs[0].Seams[0].Seen, "96 - 5 - 4")
	})
	t.Run("a stair wall: the longest sheet is on the rake, the lower edge on it", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nlength = \"94\"\nheight = [[0, 96], [94, 143]]\nfloor = [[0, 0], [94, 47]]\n")
		for _, s := range p.Runs[0].Sheets {
			assert.Equal(t, 96*in+s.Width/2+4*in, s.CutLength, "the rake takes half the width on top")
		}
	})
	t.Run("a wall of half height under a cap", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nlength = \"60\"\nheight = 42\n")
		assert.Equal(t, 46*in, p.Runs[0].Sheets[0].CutLength)
	})
	t.Run("a soffit: the wall under it is lower, the sheet at its edge is cut to the high side in one piece", func(t *testing.T) {
		p := lay(t, head+must+"[[wall]]\nlength = \"94\"\nheight = [[0, 96], [40, 96], [40, 84], [94, 84]]\n")
		for _, s := range p.Runs[0].Sheets {
			want := 100 * in
			if s.Left >= 40*in {
				want = 88 * in
			}
			assert.Equal(t, want, s.CutLength)
			require.Len(t, s.Pieces, 1)
			if s.Left < 40*in && s.Right > 40*in {
				assert.Len(t, s.Pieces[0].Outline, 6)
			}
		}
	})
}

func places(p *Plan) []int {
	var out []int
	for _, r := range p.Runs {
		for _, s := range r.Sheets {
			out = append(out, s.Place)
		}
	}
	return out
}
