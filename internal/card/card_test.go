package card_test

import (
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/shape"
)

const in = length.Inch

// cards are those of a room's text.
func cards(t *testing.T, text string) []*card.Card {
	return card.Of(count.Of(roomtest.Laid(t, "room.toml", text)))
}

// toHang are the sheets of a plan that a card is owed for: those that show somewhere and do not hang yet.
func toHang(p *layout.Plan) []*layout.Sheet {
	var list []*layout.Sheet
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if s := &p.Runs[i].Sheets[k]; s.Area > 0 && !s.Hung {
				list = append(list, s)
			}
		}
	}
	return list
}

func TestEverySheetStillToHangHasOneCard(t *testing.T) {
	try := func(why string, p *layout.Plan) {
		var got []*layout.Sheet
		for _, c := range card.Of(count.Of(p)) {
			got = append(got, c.Sheet)
		}
		assert.Equal(t, toHang(p), got, why)
	}
	rooms := roomtest.AllRooms(t)
	for _, why := range slices.Sorted(maps.Keys(rooms)) {
		try(why, roomtest.Laid(t, why, rooms[why]))
	}
	roomtest.RandomPlans(t, effort.Of(15, 300), func(_ uint64, text string, p *layout.Plan) { try(text, p) })
}

// What hangs, and what an opening takes whole, needs no card.
func TestWhatIsNotCutHasNoCard(t *testing.T) {
	hung := roomtest.Laid(t, "room.toml", roomtest.OddRooms["sheets hang already"])
	require.True(t, hung.Runs[0].Sheets[0].Hung)
	assert.Len(t, card.Of(count.Of(hung)), len(hung.Runs[0].Sheets)-1)
	gap := roomtest.Laid(t, "room.toml", roomtest.OddRooms["a gap that the grain counts through"])
	stock := 0
	for i := range gap.Runs[0].Sheets {
		if gap.Runs[0].Sheets[i].InGap {
			stock++
		}
	}
	require.Positive(t, stock)
	assert.Len(t, card.Of(count.Of(gap)), len(gap.Runs[0].Sheets)-stock)
}

// The small room by hand: sheet 4 begins behind the casing and is ripped at its left, sheet 7 has the door at its right, and
// the last of the first wall goes round C1.
func TestCardsOfTheSmallRoom(t *testing.T) {
	list := card.Of(count.Of(roomtest.SmallPlan(t)))
	first := list[0]
	require.Equal(t, 4, first.Sheet.Number)
	require.Equal(t, "left", first.Sheet.Ripped)
	gross := 24*in + in/2
	assert.Equal(t, gross, first.Raw.Right-first.Raw.Left, "the raw sheet is as wide as it is delivered")
	assert.Equal(t, 120*in, first.Raw.Top-first.Raw.Bottom, "and as long")
	assert.Equal(t, shape.Rect{Bottom: -first.Sheet.Below, Right: first.Sheet.RipTo, Top: first.Sheet.Above}, first.Kept)
	assert.Equal(t, first.Kept.Right-gross, first.Raw.Left, "what is ripped lies left of the edge that figures run from")
	holed := list[slices.IndexFunc(list, func(c *card.Card) bool { return len(c.Holes) > 0 && c.Holes[0].Name == "a" })]
	h := holed.Holes[0]
	assert.Equal(t, 14*in, h.Left+holed.Sheet.StartLine+in, "from the left edge to the left side of a hole 2 wide about 1'-2")
	assert.Equal(t, [2]length.Length{18*in - 48*in - in - in/2, 18*in - 48*in + in + in/2}, [2]length.Length{h.Bottom, h.Top}, "3 high about 1'-6, under the level line at 4'")
	var sums, whole length.Area
	for _, c := range list {
		for _, p := range c.Pieces {
			sums += p.Twice()
		}
		whole += c.Sheet.Area
	}
	assert.InDelta(t, float64(2*whole), float64(sums), float64(len(list)), "halves of units are rounded sheet by sheet")
	folded := slices.IndexFunc(list, func(c *card.Card) bool { return len(c.Folds) > 0 })
	require.Positive(t, folded)
	c := list[folded]
	assert.Len(t, c.Cut.Walls, 2, "one card for both walls")
	assert.Equal(t, "C1", c.Folds[0].Bend.Name)
	assert.Equal(t, []length.Length{c.Kept.Bottom, c.Kept.Top}, []length.Length{c.Folds[0].Foot.Z, c.Folds[0].Head.Z}, "from foot to head")
	assert.Equal(t, list[folded-1].Sheet, c.Next.Left.Sheet)
	assert.Equal(t, list[folded+1].Sheet, c.Next.Right.Sheet)
	assert.Equal(t, "the casing", first.Next.Left.End.Words())
}

// The corner to measure from is one that is on the sheet: where the mark is, else the end as cut that hangs next to it.
func TestTheCornerIsOnTheSheet(t *testing.T) {
	rooms := roomtest.AllRooms(t)
	seen := map[string]int{}
	for _, why := range slices.Sorted(maps.Keys(rooms)) {
		for _, c := range cards(t, rooms[why]) {
			k := c.Kept
			assert.True(t, c.Zero.X == k.Left && k.Bottom <= c.Zero.Z && c.Zero.Z <= k.Top, "%s: sheet %d", why, c.Sheet.Number)
			switch c.Zero.Z {
			case k.Bottom:
				seen["foot"]++
			case 0:
				seen["mark"]++
			}
		}
	}
	assert.Positive(t, seen["foot"])
	assert.Positive(t, seen["mark"])
}

// A ceiling that slopes has a figure at both edges of every sheet under it; one that is out of level by less than a trim
// takes up has none.
func TestRakesHaveTheirFigures(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", roomtest.OddRooms["a slope and a step"])
	rakes := 0
	for _, c := range card.Of(count.Of(p)) {
		for _, r := range c.Rakes {
			rakes++
			require.True(t, r.Head)
			first, last := r.Points[0], r.Points[len(r.Points)-1]
			rise := card.L(0)
			for _, b := range r.Bevels() {
				rise += b.Rise
				assert.True(t, 0 < b.Over && b.Over <= last.X-first.X)
			}
			if len(r.Bevels()) == len(r.Points)-1 {
				assert.Equal(t, last.Z-first.Z, rise, "bevels lead from end to end")
			}
			assert.True(t, first.X >= 0 && last.X <= c.Kept.Right && first.X < last.X)
			for _, q := range r.Points {
				assert.LessOrEqual(t, q.Z, c.Kept.Top, "the sheet is cut over the highest of it")
			}
		}
	}
	assert.Greater(t, rakes, 5)
	for _, c := range cards(t, roomtest.Head("in")+roomtest.Wall("Plain", `11'`, `9'`)+"floor = [\"0\", \"-1/2\"]\n") {
		assert.Empty(t, c.Rakes)
	}
}

// Seen from the back everything is where it was, left and right exchanged; seen from the back of the back, where it was.
func TestMirroredTwiceIsTheSame(t *testing.T) {
	rooms := roomtest.AllRooms(t)
	for _, why := range slices.Sorted(maps.Keys(rooms)) {
		for _, c := range cards(t, rooms[why]) {
			m := c.Mirrored()
			assert.Equal(t, c, m.Mirrored(), why)
			assert.Equal(t, c.Kept, m.Kept)
			assert.Equal(t, c.Next.Left, m.Next.Right)
			for i := range c.Holes {
				assert.Equal(t, c.Holes[i].Left-c.Kept.Left, m.Kept.Right-m.Holes[i].Right, "as far from the same edge")
				assert.Equal(t, c.Holes[i].Right-c.Holes[i].Left, m.Holes[i].Right-m.Holes[i].Left)
			}
		}
	}
}

// Neighbours in courses are those of the same course.
func TestNeighboursAreOfTheSameCourse(t *testing.T) {
	for _, c := range cards(t, roomtest.OddRooms["a tall wall in two courses"]) {
		for _, n := range []card.Neighbour{c.Next.Left, c.Next.Right} {
			if n.Sheet != nil {
				assert.Equal(t, c.Sheet.Course, n.Sheet.Course)
			} else {
				assert.True(t, n.End != nil, "sheet %d", c.Sheet.Number)
			}
		}
		require.True(t, (c.Next.Under.Sheet != nil) != (c.Next.Over.Sheet != nil), "two courses")
	}
	for _, c := range cards(t, roomtest.OddRooms["grain level"]) {
		if c.Next.Under.Sheet != nil {
			assert.Equal(t, c.Sheet.Place-1, c.Next.Under.Sheet.Place, "bands lie over one another")
		}
	}
}
