package recheck

import (
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Cards are cut out here: what a card says to cut is cut off a raw sheet, and what stays is held to the walls, from the room
// and the printed layout alone.

// cutter holds one card to its sheet as printed.
type cutter struct {
	*checker
	card  *card.Card
	run   *printedRun
	sheet *printedSheet
	line  *line
	what  string
	start int64 // s of the sheet's left edge as hung
	from  int64 // s of the seam or end at its left
	to    int64 // and at its right
	width int64 // as hung
	r     reach
}

// Every card of every room that comes with the program.
func TestCardsOfRooms(t *testing.T) {
	for _, name := range roomFiles(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			assert.Positive(t, checkCards(t, string(text)))
		})
	}
}

// The cards of rooms made at random.
func TestCardsOfRandomRooms(t *testing.T) {
	first, rooms := effort.Seeds(t, "FLITCHLAY_ROOMS", 12, effort.Waited(250, 400))
	cards := 0
	for seed := first; seed < first+rooms; seed++ {
		text := random(seed, asDrawn, false)
		if _, err := room.Decode("room.toml", []byte(text)); err != nil {
			continue
		}
		if _, status := lay(t, text); status > 1 {
			continue // a mistake that only the spans show
		}
		t.Run(fmt.Sprintf("seed %d", seed), func(t *testing.T) { cards += checkCards(t, text) })
	}
	assert.Greater(t, cards, 4*rooms)
}

// checkCards holds all cards of a room to its printed layout, and says how many there are.
func checkCards(t *testing.T, text string) int {
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	plan, err := layout.Lay(r)
	require.NoError(t, err)
	p, status := lay(t, text)
	require.LessOrEqual(t, status, 1)
	c := &checker{t: t, room: r, p: p}
	if !r.Veneer.Horizontal {
		c.lines = lines(r)
	}
	cards := map[*layout.Sheet]*card.Card{}
	for _, x := range card.Of(count.Of(plan)) {
		assert.Nil(t, cards[x.Sheet], "one card for a sheet")
		cards[x.Sheet] = x
	}
	n := 0
	for i := range plan.Runs {
		for k := range plan.Runs[i].Sheets {
			s, printed := &plan.Runs[i].Sheets[k], &p.Runs[i].Sheets[k]
			what := fmt.Sprintf("card of the sheet at place %d, course %d: ", printed.Place, printed.Course)
			x := cards[s]
			if s.Hung || len(printed.Pieces) == 0 {
				assert.Nil(t, x, what+"hangs, or hangs nowhere")
				continue
			}
			require.NotNil(t, x, what)
			n++
			cut := &cutter{checker: c, card: x, run: &p.Runs[i], sheet: printed, what: what}
			if r.Veneer.Horizontal {
				cut.start, cut.width = int64(s.StartLine), int64(x.Kept.Top)
				cut.lying()
				continue
			}
			cut.line = c.lines[i]
			cut.upright()
		}
	}
	assert.Len(t, cards, n, "no card of anything else")
	return n
}

// upright holds the card of a sheet that stands.
func (c *cutter) upright() {
	c.hang()
	c.edges()
	c.flat()
	c.cutOuts()
	c.folded()
	c.cutOff()
}

// hang finds out where the sheet's left edge hangs.
func (c *cutter) hang() {
	s, v := c.sheet, &c.room.Veneer
	from := units(c.t, s.Left)
	to := from + units(c.t, s.Width)
	rawLeft, rawRight := true, true
	for _, m := range c.run.Seams {
		rawLeft, rawRight = rawLeft && m.RightSheet != s.Place, rawRight && m.LeftSheet != s.Place
	}
	sp, turn := c.spanOf((from + to) / 2)
	from, to = from+turn, to+turn
	c.from, c.to = from, to
	half := int64(v.Overlap) >> 1
	left, right := from-int64(v.Overlap)+half, to+half
	if rawLeft {
		left = from - sp.leftTrim
	}
	if rawRight {
		right = to + sp.rightTrim
		if !rawLeft {
			left = from - half
		}
	}
	c.width = c.cameAs(s)
	if s.Ripped != nil {
		if c.width = right - left; !rawLeft && !rawRight {
			c.width = to - from + int64(v.Overlap)
		}
	}
	if c.start = right - c.width; rawRight && !rawLeft && s.Ripped == nil {
		c.start = left
	}
	if short := right - left - c.width; short > 0 && c.width < int64(v.GrossWidth) { // both edges lack half of it
		c.start = left + short - short>>1
	}
	c.r = reach{from: from, to: to}
	if !sp.closed {
		first, last := from == sp.left, to == sp.right
		c.r = reach{max(from, sp.left-min(0, sp.leftLean)), min(to, sp.right-max(0, sp.rightLean)), first, last}
	}
}

// spanOf is the span that a place of the run lies in, and the turn that takes the place there.
func (c *cutter) spanOf(at int64) (sp span, turn int64) {
	for _, x := range c.line.spans {
		if x.closed {
			return x, 0
		}
		for turn := -c.line.length; turn <= c.line.length; turn += c.line.length {
			if (turn == 0 || c.line.closed) && x.left <= at+turn && at+turn <= x.right {
				return x, turn
			}
		}
	}
	assert.Fail(c.t, "in no span", c.what)
	return sp, 0
}

// edges hold the raw sheet and what is kept of it.
func (c *cutter) edges() {
	k, raw, s := c.card.Kept, c.card.Raw, c.sheet
	above, below := units(c.t, s.Above), units(c.t, s.Below)
	assert.Equal(c.t, [4]int64{0, -below, c.width, above}, [4]int64{int64(k.Left), int64(k.Bottom), int64(k.Right), int64(k.Top)}, c.what+"kept")
	gross, long := c.cameAs(c.sheet), int64(c.room.Veneer.Length)
	lost := int64(0)
	if s.Ripped != nil && *s.Ripped == "left" {
		lost = gross - c.width
	}
	assert.Equal(c.t, []int64{-lost, gross - lost}, []int64{int64(raw.Left), int64(raw.Right)}, c.what+"raw edges")
	// all sheets of a flitch and a course are marked at one distance from the end that hangs up
	high, low := above, -below
	for _, r := range c.p.Runs {
		for i := range r.Sheets {
			o := &r.Sheets[i]
			if o.Course == s.Course && o.Turned == s.Turned && text(o.Flitch) == text(s.Flitch) && units(c.t, o.CutLength) > 0 {
				high, low = max(high, units(c.t, o.Above)), min(low, -units(c.t, o.Below))
			}
		}
	}
	foot, head := high-long, high
	if low > 0 {
		foot, head = low, low+long
	}
	assert.Equal(c.t, []int64{foot, head}, []int64{int64(raw.Bottom), int64(raw.Top)}, c.what+"raw ends")
	if high-low <= long {
		assert.True(c.t, raw.Bottom <= k.Bottom && k.Top <= raw.Top, c.what+"the raw sheet is long enough")
	}
}

// text is what a printed word says, "" where there is none.
func text(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}

// flat lays the pieces of the walls on the sheet, and finds each where the card has it, to the last unit.
func (c *cutter) flat() {
	got, want := new(big.Int), new(big.Int)
	left := map[string]int{}
	for _, p := range c.sheet.Pieces {
		want.Add(want, c.twice(p.Outline))
		for _, h := range p.Holes {
			want.Add(want, c.twice(h))
		}
		for _, place := range c.places(p.Wall) {
			left[c.rings(p, place[0], place[1])]++
		}
	}
	for _, p := range c.card.Pieces {
		key := ""
		for _, o := range append([][]ring{ringOf(p.Outline)}, ringsOf(p.Holes)...) {
			key += fmt.Sprint(o) + ";"
			got.Add(got, twiceOf(o))
		}
		assert.Positive(c.t, left[key], c.what+"a piece of wall %d at %s", p.Wall, key)
		left[key]--
	}
	assert.Len(c.t, c.card.Pieces, len(c.sheet.Pieces), c.what+"pieces")
	assert.Equal(c.t, want.String(), got.String(), c.what+"twice the area of what stays")
}

// places are what x and z of a wall are moved by to come to the sheet: a closed run comes round again.
func (c *cutter) places(wall string) [][2]int64 {
	if c.line == nil {
		return [][2]int64{{0, -c.start}}
	}
	var list [][2]int64
	for _, st := range c.line.walls {
		for turn := -2 * c.line.length; turn <= 2*c.line.length && c.line.wall(st).Name == wall; turn += c.line.length {
			if turn == 0 || c.line.closed {
				list = append(list, [2]int64{st.shift + turn - c.start, -int64(c.room.Space.LevelLine)})
			}
		}
	}
	return list
}

// rings are the rings of a printed piece moved to the sheet, as text.
func (c *cutter) rings(p printedPiece, dx, dz int64) string {
	key := ""
	for _, r := range append([][][2]num{p.Outline}, p.Holes...) {
		var out []ring
		for _, q := range r {
			out = append(out, ring{units(c.t, q[0]) + dx, units(c.t, q[1]) + dz})
		}
		key += fmt.Sprint(out) + ";"
	}
	return key
}

// ring is a point of a ring on the sheet.
type ring [2]int64

// twiceOf is twice the area of a ring.
func twiceOf(r []ring) *big.Int {
	sum := new(big.Int)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		sum.Add(sum, new(big.Int).Mul(big.NewInt(a[0]), big.NewInt(b[1]))).Sub(sum, new(big.Int).Mul(big.NewInt(b[0]), big.NewInt(a[1])))
	}
	return sum
}

// asMM is a length in millimetres.
func asMM(l length.Length) float64 { return mm(int64(l)) }
