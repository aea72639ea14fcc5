package layout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// The values below are derived from geometry alone: w a sheet's gross width, o the overlap that one double cut uses up,
// p = w - o the net step, t all end trims together, m the least wrap past a bend. Where the trade's rule of thumb knows no
// least width and no preference, the rooms here set them small, so that nothing but geometry is left to decide.

// ware is a room's head: sheets of a gross width and an overlap, and the rules of one case.
func ware(gross, overlap, rules string) string {
	return fmt.Sprintf("[project]\ntitle = \"Trade value\"\n[veneer]\ngross_width = %q\noverlap = %q\nlength = \"120\"\n[rules]\n%s\n",
		gross, overlap, rules)
}

// easy are rules that leave widths and edges to geometry.
const easy = "least_width = \"1/4\"\nprefer_width = \"1/4\"\nleast_overlap = \"1/2\"\n"

// plain is a level wall 8 ft high with a corner at its right.
func plain(name, long, corner, rest string) string {
	return fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = \"96\"\ncorner = %q\n%s\n", name, long, corner, rest)
}

// round is a closed room of level walls with the same corner everywhere.
func round(corner string, sides ...string) string {
	text := ""
	for i, s := range sides {
		text += plain(string(rune('A'+i)), s, corner, "")
	}
	return text
}

// An open wall takes N = ceil((L + t - o) / (w - o)) sheets, and N sheets cover N w - (N - 1) o. Derived from geometry: the
// two end sheets keep their outer edges, t lies outside the wall, and each of the N - 1 double cuts uses up o.
func TestTradeOpenWallCounts(t *testing.T) {
	for _, c := range []struct {
		name, wall, gross, overlap, trim string
		sheets                           int
		cover                            string // less t: what N sheets reach; "" where the rule gives no figure
	}{
		{"L 144, w 24, o 2, t 0: (144 - 2) / 22 = 6.45", "144", "24", "2", "0", 7, "156"},
		{"L 144, w 24, o 1, t 0: (144 - 1) / 23 = 6.22", "144", "24", "1", "0", 7, "162"},
		{"L 120, w 24, o 2, t 0: (120 - 2) / 22 = 5.36", "120", "24", "2", "0", 6, "134"},
		{"L 96, w 24, o 2, t 4: (96 + 4 - 2) / 22 = 4.45", "96", "24", "2", "2", 5, "108"},
		{"L 240, w 18, o 1, t 2: (240 + 2 - 1) / 17 = 14.18", "240", "18", "1", "1", 15, "254"},
		{"L 24: one sheet", "24", "24", "2", "0", 1, "24"},
		{"L 24.01: a hundredth over one sheet", "24.01", "24", "2", "0", 2, "46"},
	} {
		t.Run(c.name, func(t *testing.T) {
			head := ware(c.gross, c.overlap, easy+"edge_trim = \""+c.trim+"\"")
			p := lay(t, head+plain("A", c.wall, "none", ""))
			assert.Len(t, p.Runs[0].Sheets, c.sheets)
			p = lay(t, head+plain("A", c.cover, "none", ""))
			assert.Len(t, p.Runs[0].Sheets, c.sheets, "as far as that many cover")
			p = lay(t, head+plain("A", c.cover+" 1/16", "none", ""))
			assert.Len(t, p.Runs[0].Sheets, c.sheets+1, "and a snap further")
		})
	}
}

// A closed room takes N = ceil(P / p): every sheet loses one overlap; the last one is P - (N - 1) p wide. Its walls meet
// straight here, so that no corner has a say; the far-right seams then leave all the lack to the last sheet.
func TestTradeClosedRoomCounts(t *testing.T) {
	for _, c := range []struct {
		name, gross, overlap string
		sides                []string
		sheets               int
		last                 string
	}{
		{"P 528, w 24, o 2: 24 sheets of 22, exactly", "24", "2", []string{"144", "120", "144", "120"}, 24, "22"},
		{"P 528, w 24, o 1: 23 sheets, the last 528 - 22 x 23 = 22", "24", "1", []string{"144", "120", "144", "120"}, 23, "22"},
		{"P 528, w 18, o 1: 32 sheets, the last 528 - 31 x 17 = 1", "18", "1", []string{"144", "120", "144", "120"}, 32, "1"},
		{"P 480, w 24, o 2: 22 sheets, the last 480 - 21 x 22 = 18", "24", "2", []string{"120", "120", "120", "120"}, 22, "18"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, ware(c.gross, c.overlap, easy)+"[room]\nclosed = true\n"+round("straight", c.sides...))
			list := p.Runs[0].Sheets
			require.Len(t, list, c.sheets)
			for _, s := range list[:len(list)-1] {
				assert.Equal(t, p.Room.Veneer.GrossWidth-p.Room.Veneer.Overlap, s.Width)
			}
			assert.Equal(t, c.last, p.Style.Inches(list[len(list)-1].Width))
		})
	}
}

// A sliver: 31 sheets of 17 in leave 1 in of 528. Under a least width the lack is taken off the two sheets beside the
// closing seam; shared out over all, every sheet is 528 / 32 = 16.5 in wide. Derived from geometry.
func TestTradeSliver(t *testing.T) {
	walls := "[room]\nclosed = true\n" + round("straight", "144", "120", "144", "120")
	p := lay(t, ware("18", "1", "least_width = \"1/4\"\nprefer_width = \"2\"")+walls)
	assert.Empty(t, messages(p, finding.SheetThin))
	assert.Equal(t, 2*length.Inch, p.Runs[0].Sheets[31].Width, "rather 2 in and 16 than 1 and 17: a preference decides")
	p = lay(t, ware("18", "1", "least_width = \"12\"\nprefer_width = \"12\"")+walls)
	// first and last have 528 - 30 x 17 = 18 in between them, which is no twice 12: inner sheets have to give 6 in; one alone
	// would be left with 11, so two are narrowed
	assert.Empty(t, messages(p, finding.SheetThin))
	assert.EqualValues(t, 2, p.Runs[0].Spans[0].Score.Narrow)
	assert.EqualValues(t, 32, p.Runs[0].Spans[0].Score.Sheets)
	p = lay(t, ware("18", "1", "aim = \"even\"")+walls)
	for _, s := range p.Runs[0].Sheets {
		assert.Equal(t, "16 1/2", p.Style.Inches(s.Width), "32 sheets give 16 in too much: half an inch off each")
	}
	assert.Len(t, p.Runs[0].Sheets, 32)
}

// uniform lays a closed room of inside corners whose seams stand at x0, x0 + 22, ...: the closing seam and the next one are
// pinned. It tells whether that can be done without breaking a must or narrowing an inner sheet.
func uniform(t *testing.T, m, x0 string, next L, sheets int, sides ...string) bool {
	t.Helper()
	text := ware("24", "2", "least_width = \"1/4\"\nprefer_width = \"1/4\"\ncorner_return = \""+m+"\"\nprefer_return = \""+m+"\"") +
		"[room]\nclosed = true\nclose_at = { wall = \"A\", at = \"" + x0 + "\" }\n" + round("inside", sides...)
	style := length.StyleOf(length.Inches)
	text = strings.Replace(text, "corner = \"inside\"\n", "corner = \"inside\"\n[[wall.pin]]\nat = \""+style.Inches(next)+"\"\n", 1)
	p := lay(t, text)
	score := p.Runs[0].Spans[0].Score
	if len(messages(p, finding.PinDropped)) > 0 || score.Bends+score.Edges > 0 || score.Jump > 0 {
		return false
	}
	return assert.Len(t, p.Runs[0].Sheets, sheets)
}

// Every wrapped corner c needs m <= (c - x0) mod p <= p - m. For a room of 12 x 10 ft, corners 0, 144, 264, 408, p 22:
// remainders 0, 12, 0, 12. With m 6 only x0 = 6 is left; with m 4, x0 in 4..8 or 16..18. Derived from geometry.
func TestTradeCornerSafeStarts(t *testing.T) {
	sides := []string{"144", "120", "144", "120"}
	for _, c := range []struct {
		m, x0 string
		at    L
		fits  bool
	}{
		{"6", "5 15/16", 95, false}, {"6", "6", 96, true}, {"6", "6 1/16", 97, false}, {"6", "17", 272, false},
		{"4", "3 15/16", 63, false}, {"4", "4", 64, true}, {"4", "6", 96, true}, {"4", "8", 128, true}, {"4", "8 1/16", 129, false},
		{"4", "12", 192, false}, {"4", "15 15/16", 255, false}, {"4", "16", 256, true}, {"4", "18", 288, true}, {"4", "18 1/16", 289, false},
	} {
		t.Run("m "+c.m+", x0 "+c.x0, func(t *testing.T) {
			at := c.at * (length.Inch / 16)
			assert.Equal(t, c.fits, uniform(t, c.m, c.x0, at+22*length.Inch, 24, sides...))
		})
	}
}

// A room of 14 x 11 ft, P 600, corners 168, 300, 468 and, once round, 600: the last sheet is 600 - 27 x 22 = 6 in, the 28th.
// Remainders by 22: 14, 14, 6, 6. With u = (6 - x0) mod 22 both u and (u + 8) mod 22 have to lie in m..22 - m: for m 6 u in 6..8,
// x0 from 20 up to 22, where the corner at 0 begins to forbid the closing seam; for m 4 u in 4..10 or u = 18, x0 from 18 up or 10;
// for m 7 u in 7..7, x0 = 21; for m 8 none. Derived from geometry.
func TestTradeUniformStartThatLeavesASliver(t *testing.T) {
	sides := []string{"168", "132", "168", "132"}
	for m, want := range map[string][]int{"8": nil, "7": {21}, "6": {20, 21}, "4": {10, 18, 19, 20, 21}} {
		var fits []int
		for x := range 22 {
			if uniform(t, m, fmt.Sprint(x), L(x+22)*length.Inch, 28, sides...) {
				fits = append(fits, x)
			}
		}
		assert.Equal(t, want, fits, "m %s", m)
	}
	// what no uniform grid does is done by sheets that are narrowed
	p := lay(t, ware("24", "2", "corner_return = \"8\"\nprefer_return = \"8\"")+"[room]\nclosed = true\n"+round("inside", sides...))
	assert.EqualValues(t, 0, p.Runs[0].Spans[0].Score.Bends)
	for _, c := range p.Runs[0].Corners {
		assert.GreaterOrEqual(t, min(c.LeftReturn, c.RightReturn), 8*length.Inch, c.Name)
	}
}

// The strip cut off a narrowed sheet is lost, and the grain jumps by its width: jump = w - o - net. Derived from geometry.
func TestTradeNarrowedSheet(t *testing.T) {
	p := lay(t, ware("24", "2", easy)+plain("A", "240", "none", "[[wall.pin]]\nat = \"60\"\n[[wall.pin]]\nat = \"75\""))
	var s *Sheet
	for k := range p.Runs[0].Sheets {
		if p.Runs[0].Sheets[k].Right == 75*length.Inch {
			s = &p.Runs[0].Sheets[k]
		}
	}
	require.NotNil(t, s)
	assert.Equal(t, 15*length.Inch, s.Width)
	assert.Equal(t, 7*length.Inch, s.Lost, "24 - 2 - 15")
	assert.True(t, s.Narrow)
	assert.Equal(t, "right", s.Ripped)
	assert.Equal(t, 17*length.Inch, s.RipTo, "an inner sheet is cut to its width and one overlap")
	list := messages(p, finding.NarrowSheet)
	require.Len(t, list, 1)
	assert.Contains(t, list[0], ", ripped to 17 in, covers 15 in of 22 in: the grain jumps 7 in at seam")
}

// A pier between two outside corners, face f, returns r on both sides: one sheet covers it where f + 2 r <= w - o; a seam can
// stand on the face where f >= 2 r. f 14, r 4 1/2, w 24, o 2: 23 is over 22 by 1 in. Derived from geometry.
func TestTradePier(t *testing.T) {
	pier := func(gross, face, ret, onFace string) *Plan {
		return lay(t, ware(gross, "2", easy+"corner_return = \""+ret+"\"\nprefer_return = \""+ret+"\"")+
			plain("A", "60", "outside", "")+plain("Face", face, "outside", onFace)+plain("B", "60", "none", ""))
	}
	whole := "[[wall.keep_clear]]\nfrom = \"0\"\nto = \"14\"\nwhy = \"one sheet on the face\""
	p := pier("24", "14", "4 1/2", whole)
	require.Len(t, messages(p, finding.CannotMeet), 1)
	says := messages(p, finding.CannotMeet)[0]
	assert.Contains(t, says, "corner_return 4 in in place of 4 1/2 in", "22 - 14 is twice 4")
	assert.Contains(t, says, "a gross width of 25 in in place of 24 in", "it does not fit by 1 in")
	p = pier("25", "14", "4 1/2", whole)
	assert.Empty(t, messages(p, finding.CannotMeet))
	c := p.Runs[0].Corners
	assert.Equal(t, c[0].Sheet, c[1].Sheet, "one sheet takes the face and both returns")
	assert.Equal(t, [2]L{9 * length.Inch / 2, 9 * length.Inch / 2}, [2]L{c[0].LeftReturn, c[1].RightReturn}, "to the last fraction")

	middle := "[[wall.pin]]\nat = \"4 1/2\""
	assert.Empty(t, messages(pier("24", "9", "4 1/2", middle), finding.PinDropped), "f = 2 r: a seam has just room on the face")
	assert.NotEmpty(t, messages(pier("24", "8 15/16", "4 1/2", middle), finding.PinDropped), "and a snap less has not")
}

// A square column of side a: a seam has room on a face where a >= 2 m. a 10, m 6: on none, so that one sheet has to go round,
// which takes w >= 4 a + o = 42. Derived from geometry. The rule of thumb lets that one seam stand where it must; here it
// owes 6 in to both bends of its face and lacks 2 of 12 wherever it stands.
func TestTradeSquareColumn(t *testing.T) {
	column := func(gross, side string) *Plan {
		return lay(t, ware(gross, "2", easy+"corner_return = \"6\"\nprefer_return = \"6\"")+"[room]\nclosed = true\n"+round("outside", side, side, side, side))
	}
	p := column("42", "10")
	assert.Len(t, p.Runs[0].Sheets, 1)
	assert.Equal(t, 2*length.Inch, L(p.Runs[0].Spans[0].Score.Bends))
	p = column("41 15/16", "10")
	assert.Len(t, p.Runs[0].Sheets, 2)
	assert.Equal(t, 4*length.Inch, L(p.Runs[0].Spans[0].Score.Bends))
	p = column("24", "12")
	assert.Zero(t, p.Runs[0].Spans[0].Score.Bends, "12 = 2 m: a seam on the middle of every face")
	assert.Len(t, p.Runs[0].Sheets, 4, "a sheet from middle to middle: 12 of 22; two faces are 24")
	p = column("24", "11 15/16")
	assert.NotZero(t, p.Runs[0].Spans[0].Score.Bends)
}

// A round column of diameter d takes N = ceil(pi d / (w - o)): d 18, girth 56.549, w 24, o 2: 3 sheets. Derived from geometry.
// The column is a closed run of four eased corners of radius 9 whose flats have no width; a bend as wide as that breaks no
// veneer, so nothing has to wrap past it.
func TestTradeRoundColumn(t *testing.T) {
	text := ware("24", "2", easy+"corner_return = \"0\"\nprefer_return = \"0\"") + "[room]\nclosed = true\n"
	for i := range 4 {
		text += plain(fmt.Sprintf("Quarter %d", i+1), "18", "outside", "radius = \"9\"")
	}
	p := lay(t, text)
	assert.InDelta(t, 56.549, inches(p.Runs[0].Length), 0.0005)
	assert.Len(t, p.Runs[0].Sheets, 3)
	assert.Zero(t, p.Runs[0].Spans[0].Score.Bends)
	assert.Equal(t, "no-flitch closing-seam closes-within", codes(p))
}

func inches(l L) float64 { return float64(l) / float64(length.Inch) }

// The girth round a bend of a radius R and a turn a is shorter than to the sharp corner by 2 R tan(a/2) - R a. A bullnose of
// 3/4 in at 90 degrees: 0.4292 R = 0.322; at 45 degrees the arc is 0.589 and either tangent 0.311. Derived from geometry.
func TestTradeBullnoseAndBendAngle(t *testing.T) {
	for _, c := range []struct {
		angle                float64
		arc, tangent, shorts float64
	}{{90, 1.178, 0.75, 0.322}, {45, 0.589, 0.311, 0.032}} {
		p := lay(t, ware("24", "2", easy)+plain("A", "60", "outside", fmt.Sprintf("radius = \"3/4\"\nangle = %v", c.angle))+plain("B", "60", "none", ""))
		corner := p.Runs[0].Corners[0]
		assert.InDelta(t, c.arc, inches(corner.To-corner.From), 0.0006, "arc at %v degrees", c.angle)
		assert.InDelta(t, 60-c.tangent, inches(corner.From), 0.0006, "tangent point on the left wall")
		assert.InDelta(t, 60-c.tangent, inches(p.Runs[0].Length-corner.To), 0.0006, "tangent point on the right wall")
		assert.InDelta(t, 120-c.shorts, inches(p.Runs[0].Length), 0.0006, "girth")
	}
}

// A corner out of plumb by e: the return on the far wall runs from w0 at the floor to w0 - e at the ceiling, and the least must
// stay at m. Derived from geometry.
func TestTradeOutOfPlumb(t *testing.T) {
	corner := func(w0, e, height string) *Plan {
		high := strings.ReplaceAll(ware("24", "2", easy+"corner_return = \"4\"\nprefer_return = \"4\"")+
			plain("A", "60", "inside", "lean = \""+e+"\"")+plain("B", "60", "none", "[[wall.pin]]\nat = \""+w0+"\""), `"96"`, `"`+height+`"`)
		return lay(t, high)
	}
	for _, c := range []struct{ w0, e, height, least string }{
		{"6", "3/8", "96", "5 5/8"}, {"5", "3/4", "108", "4 1/4"}, {"4 1/2", "1/2", "96", "4"}} {
		p := corner(c.w0, c.e, c.height)
		assert.Empty(t, messages(p, finding.PinDropped))
		got := p.Runs[0].Corners[0]
		assert.Equal(t, c.w0, p.Style.Inches(got.RightReturnBottom))
		assert.Equal(t, c.least, p.Style.Inches(got.RightReturn))
		assert.Equal(t, got.RightReturnTop, got.RightReturn, "least at the ceiling")
	}
	p := corner("4", "1/2", "96")
	assert.Equal(t, []string{"the pin for a seam at 4 in on wall B is dropped: a seam there is 3 1/2 in from corner C1 (4 in must wrap)"},
		messages(p, finding.PinDropped), "4 less 1/2 is 3 1/2: under m")
}

// Where the two walls of a corner lean differently, the next sheet's overlap has to take up the difference e and still leave an
// allowance to cut in: e + allowance <= o. Derived from geometry; the allowance of 1/2 in is common practice, no source.
func TestTradeLeanEatsOverlap(t *testing.T) {
	for _, c := range []struct {
		e     string
		short bool
	}{{"1/2", false}, {"9/16", true}} {
		p := lay(t, ware("24", "1", easy)+plain("A", "60", "inside", "lean = \""+c.e+"\"")+plain("B", "60", "none", "lean = [0, 0]"))
		assert.Equal(t, c.short, len(messages(p, finding.SkewEatsOverlap)) > 0, c.e)
	}
}

// The lean's angle is atan(e / H): 3/8 in 96 is 0.224 degrees. Derived from geometry. Measured on the last piece of the wall.
func TestTradeLeanAngle(t *testing.T) {
	p := lay(t, ware("24", "2", easy)+plain("A", "60", "none", "lean = \"3/8\""))
	list := p.Runs[0].Sheets
	outline := list[len(list)-1].Pieces[0].Outline
	low, high := L(0), L(0)
	for _, q := range outline {
		if q.Z == 0 {
			low = max(low, q.X)
		} else {
			high = max(high, q.X)
		}
	}
	assert.InDelta(t, 0.224, math.Atan2(float64(high-low), float64(96*length.Inch))*180/math.Pi, 0.0005)
}

// A sheet is cut to the most it covers plus a trim at the top and one at the bottom, 2 in each. Common practice, no source.
func TestTradeSheetHeight(t *testing.T) {
	p := lay(t, ware("24", "2", easy)+"[room]\nbase = \"4\"\n[[wall]]\nlength = \"20\"\nheight = [\"96\", \"98\"]\nfloor = [0, \"-1\"]\n")
	// the ceiling at its highest, 98, less the top of the base at its lowest, 4 - 1 = 3, and 2 + 2
	assert.Equal(t, 99*length.Inch, p.Runs[0].Sheets[0].CutLength)
}

// A ceiling rises across a sheet by its width times the slope: 1 in in 10 ft over 24 in is 0.20; a rake of 4 in 12 over 22 in net
// is 7.333, and its bevel atan(4/12) = 18.435 degrees. Derived from geometry.
func TestTradeCeilingSlope(t *testing.T) {
	for _, c := range []struct {
		gross, overlap, long, ceiling string
		net, rise, bevel              float64
	}{{"25", "1", "120", `["96", "97"]`, 24, 0.20, 0.477}, {"24", "2", "66", `["60", "82"]`, 22, 7.333, 18.435}} {
		p := lay(t, ware(c.gross, c.overlap, easy+"edge_trim = 0")+"[[wall]]\nlength = \""+c.long+"\"\nheight = "+c.ceiling+"\n")
		s := p.Runs[0].Sheets[1]
		require.InDelta(t, c.net, inches(s.Width), 1e-9)
		left, right := L(0), L(0)
		for _, q := range s.Pieces[0].Outline {
			if q.X == s.Left {
				left = max(left, q.Z)
			}
			if q.X == s.Right {
				right = max(right, q.Z)
			}
		}
		assert.InDelta(t, c.rise, inches(right-left), 0.0005)
		assert.InDelta(t, c.bevel, math.Atan2(float64(right-left), float64(s.Width))*180/math.Pi, 0.0005)
		assert.InDelta(t, inches(right)+4, inches(s.CutLength), 1e-9, "cut to its high side")
	}
}

// A wall taller than a sheet takes ceil((H + trims - j) / (len - j)) rows, j what an end match uses up: H 144, len 120: 2 rows.
// Derived from geometry; j is one overlap and 1/2 in on either side, here 2 + 1 = 3, trims 4.
func TestTradeTallWall(t *testing.T) {
	for _, c := range []struct {
		name, high string
		rows       int
	}{
		{"116 + 4 is one sheet", "116", 1}, {"a snap more is two", "116 1/16", 2}, {"H 144", "144", 2},
		{"233 + 4 - 3 = 2 x 117", "233", 2}, {"a snap more is three", "233 1/16", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, ware("24", "2", easy)+"[[wall]]\nlength = \"60\"\nheight = \""+c.high+"\"\n")
			r := p.Runs[0]
			assert.Len(t, r.Joints, c.rows-1)
			columns := r.Sheets[len(r.Sheets)-1].Place
			assert.Len(t, r.Sheets, c.rows*columns, "sheets = rows x columns")
			assert.Empty(t, messages(p, finding.SheetShort))
		})
	}
}

// The sheets needed, with those kept back, must be in the flitch; else the change is put where it harms least: at an inside
// corner, over a full-height door, at a column. Common practice, no source.
func TestTradeFlitchCheck(t *testing.T) {
	wall := func(sheets, spare string) *Plan {
		return lay(t, ware("24", "2", easy)+"[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-"+sheets+"\"\nspare = "+spare+"\n"+
			plain("A", "115", "inside", "")+plain("B", "105", "none", ""))
	}
	// 220 in: (220 + 2 - 2) / 22 = 10 sheets
	assert.Empty(t, messages(wall("12", "2"), finding.FlitchShort), "10 and 2 kept back")
	assert.Equal(t, []string{"10 sheets are laid and 9 can be: 1 short; no layout takes fewer"}, messages(wall("11", "2"), finding.FlitchShort))

	p := lay(t, ware("24", "2", easy)+"[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-7\"\n[[flitch]]\nnumber = \"F-2\"\nsheets = \"1-7\"\n"+
		plain("A", "115", "inside", "")+plain("B", "105", "none", ""))
	require.Len(t, p.Runs[0].Sheets, 10)
	var change *Seam
	for k := range p.Runs[0].Seams {
		if p.Runs[0].Seams[k].FlitchChange {
			change = &p.Runs[0].Seams[k]
		}
	}
	require.NotNil(t, change)
	for _, s := range p.Runs[0].Seams {
		assert.LessOrEqual(t, change.NearestCorner.Distance, s.NearestCorner.Distance, "the seam nearest the inside corner")
	}
	assert.Empty(t, messages(p, finding.FlitchChangeInField))
}

// Sheets are counted, never worked out from an area: two walls of one area, one sheet more for the second.
func TestTradeAreaIsNotACount(t *testing.T) {
	a := lay(t, ware("24", "2", easy)+"[[wall]]\nlength = \"88\"\nheight = \"100\"\n") // (88 + 2 - 2) / 22 = 4
	b := lay(t, ware("24", "2", easy)+"[[wall]]\nlength = \"100\"\nheight = \"88\"\n") // (100 + 2 - 2) / 22 = 4.5
	assert.Equal(t, a.Totals.NetArea, b.Totals.NetArea)
	assert.Equal(t, 4, a.Totals.Sheets)
	assert.Equal(t, 5, b.Totals.Sheets)
}

// A plate of one gang covers a hole of 2 x 3 in by 3/8 in at each side and 0.745 in at top and bottom: cut to the box, never to
// the plate. Source: ANSI/NEMA WD 6, plates of 2.750 x 4.490 in; drawn here 4 1/2 in high.
func TestTradeDeviceBox(t *testing.T) {
	p := lay(t, ware("24", "2", easy)+plain("A", "60", "none", "[[wall.box]]\nkind = \"outlet\"\nx = \"34\"\nz = \"16\"\n"))
	box := p.Room.Walls[0].Boxes[0]
	assert.Equal(t, 3*length.Inch/8, (box.PlateWidth-box.HoleWidth)/2)
	assert.InDelta(t, 0.745, inches(box.PlateHigh-box.HoleHigh)/2, 0.0051)
	assert.Equal(t, room.L(0), p.Room.Veneer.Thickness, "without a thickness no box falls short of the finish")
	for gang, wide := range map[int]string{1: "2 3/4", 2: "4 1/2", 3: "6 3/8", 4: "8 3/16"} {
		p := lay(t, ware("24", "2", easy)+plain("A", "60", "none", fmt.Sprintf("[[wall.box]]\nkind = \"switch\"\nx = \"34\"\nz = \"48\"\ngang = %d\n", gang)))
		assert.Equal(t, wide, p.Style.Inches(p.Room.Walls[0].Boxes[0].PlateWidth))
	}
}
