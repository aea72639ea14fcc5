package count

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

// TestNarrowerByHand works the margin of TestPlainWall's wall through: 6 sheets cover 120 in as long as 2 (w - 1/2 - 1) +
// 4 (w - 1) is 120 or more: 6 w >= 127, w >= 21 1/6; on the grid of 1/16 in 21 3/16. Sheets of 21 1/8 need a seventh.
func TestNarrowerByHand(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+"[rules]\naim = \"fewest\"\n[[wall]]\nlength = \"10'\"\nheight = \"8'\"\n")
	n.Solve()
	require.NotNil(t, n.Margins.Narrower)
	assert.Equal(t, 339*in/16, n.Margins.Narrower.Holds, "21 3/16 in")
	assert.Equal(t, 53*in/16, n.Margins.Narrower.Margin)
	assert.Equal(t, "more than 6 sheets", n.Margins.Narrower.Next)
	assert.Nil(t, n.Margins.Lost, "no flitch is named")
}

// TestLostByHand works the sheets that may be lost through: 12 delivered, 1 damaged, 2 spare, 6 laid: 3 are left, so 3 may
// be lost, and 5 when the spares are laid.
func TestLostByHand(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+"[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\ndamaged = [2]\nspare = 2\n[[wall]]\nlength = \"10'\"\nheight = \"8'\"\n")
	n.Solve()
	assert.Equal(t, &Lost{Left: 3, Spares: 5}, n.Margins.Lost)
}

// TestMarginsHoldOnSamples tries the margins of every sample: each width down to the one told holds, the next does not;
// with as many sheets lost as may be the layout still holds, with one more it falls.
func TestMarginsHoldOnSamples(t *testing.T) {
	narrower, lost := 0, 0
	for name, p := range roomtest.SamplePlans(t) {
		t.Run(name, func(t *testing.T) {
			n := Of(p)
			n.Solve()
			if m := n.Margins.Narrower; m != nil {
				narrower++
				for w := p.Room.Veneer.GrossWidth; w >= m.Holds; w -= m.Step {
					assert.True(t, holds(n, w), "at %s", n.Style.Words(w))
				}
				if m.Next != "not tried" {
					assert.False(t, holds(n, m.Holds-m.Step), "at %s", n.Style.Words(m.Holds-m.Step))
				}
			}
			if m := n.Margins.Lost; m != nil {
				lost++
				assert.True(t, standsWithout(n, m.Spares))
				assert.False(t, standsWithout(n, m.Spares+1))
			}
		})
	}
	assert.Greater(t, narrower, 5)
	assert.Greater(t, lost, 5)
}

// TestWidthsAgreeWithLaying counts the sheets of ordinary rooms at one width after the other without laying them out, and
// holds that against what laying out gives; under each aim, with walls that take one course and with some that take two.
func TestWidthsAgreeWithLaying(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	more, bads := 0, 0
	for i := range effort.Of(3, 9) {
		if !effort.Full() {
			i *= 4 // still of every aim, and of both lengths
		}
		r, err := room.Decode("room.toml", []byte(plainRoom(rnd)))
		require.NoError(t, err)
		r.Rules.Aim = []string{"steady", "fewest", "even"}[i%3]
		if i >= 6 {
			r.Veneer.Length = 100 * in
		}
		p, err := layout.Lay(r)
		require.NoError(t, err)
		widths := layout.NewWidths(p)
		for _, less := range []L{0, in / 16, in / 8, in / 2, 2 * in, 5 * in, 9 * in, 17 * in, 22 * in} {
			gross := r.Veneer.GrossWidth - less
			other := *r
			other.Veneer.GrossWidth, other.Flitches = gross, nil
			want, err := layout.LayAim(&other, p.Aim)
			got, bad, again := widths.Sheets(gross)
			assert.Equal(t, err, again)
			if err != nil {
				bads++
				continue
			}
			bends, edges := broken(want)
			assert.Equal(t, bends+edges > 0, bad, "%v: %d", less, i)
			switch {
			case bad:
				bads++
			case assert.Equal(t, want.Totals.Sheets, got, "%v: %d", less, i) && got > p.Totals.Sheets:
				more++
			}
		}
	}
	assert.Greater(t, more, effort.Of(7, 20))
	assert.Greater(t, bads, 5)
}

// holds lays a room out with sheets of another width: the same number of sheets, and no rule broken.
func holds(n *Count, width L) bool {
	r := *n.Plan.Room
	r.Veneer.GrossWidth = width
	p, err := layout.LayAim(&r, n.Plan.Aim)
	if err != nil {
		return false
	}
	bends, edges := broken(p)
	return bends+edges == 0 && p.Totals.Sheets == n.Sheets
}

// standsWithout lays a room out without so many sheets of some flitch, spares laid too: of each flitch in turn, those laid
// last.
func standsWithout(n *Count, lost int) bool {
	for i := range n.Plan.Room.Flitches {
		r := *n.Plan.Room
		r.Flitches = slices.Clone(r.Flitches)
		for k := range r.Flitches {
			r.Flitches[k].Spare = nil
		}
		f := &r.Flitches[i]
		var free []int
		for _, x := range f.Sheets {
			if !slices.Contains(f.Damaged, x) {
				free = append(free, x)
			}
		}
		if len(free) == 0 || lost > len(free) {
			continue
		}
		f.Damaged = append(slices.Clone(f.Damaged), free[len(free)-lost:]...)
		slices.Sort(f.Damaged)
		p, err := layout.Lay(&r)
		if err != nil || p.Totals.Short > 0 {
			return false
		}
	}
	return true
}

// TestLongestCut holds the margin of length against the cut lengths.
func TestLongestCut(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		n := Of(p)
		longest := L(0)
		for i := range p.Runs {
			for _, s := range p.Runs[i].Sheets {
				longest = max(longest, s.CutLength)
			}
		}
		assert.Equal(t, longest, n.Longest.Cut, name)
		assert.Equal(t, p.Room.Veneer.Length-longest, n.Longest.Left, name)
	}
}

// TestStockLengths holds the steps of stock lengths: whole feet, or 300 mm.
func TestStockLengths(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		step := length.Foot
		if p.Room.Project.Units == length.Millimetres {
			step = 300 * length.Millimetre
		}
		n := Of(p)
		sum := 0
		for _, s := range n.Lengths {
			assert.Zero(t, s.Length%step, name)
			for _, c := range n.Cuts {
				if slices.Contains(s.Numbers, c.Number) && len(n.Flitches) == 1 {
					assert.True(t, c.Length <= s.Length && c.Length > s.Length-step, "%s: sheet %d", name, c.Number)
				}
			}
			sum += s.Sheets
		}
		assert.Equal(t, len(n.Cuts), sum, name)
	}
}

// TestSolveLeavesTheRoom holds that margins are found on copies.
func TestSolveLeavesTheRoom(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		before, err := layout.Lay(clone(p.Room))
		require.NoError(t, err)
		n := Of(p)
		n.Solve()
		after, err := layout.Lay(p.Room)
		require.NoError(t, err)
		assert.Equal(t, string(before.JSON()), string(after.JSON()), name)
	}
}

func clone(r *room.Room) *room.Room {
	c := *r
	c.Flitches = slices.Clone(c.Flitches)
	for i := range c.Flitches {
		c.Flitches[i].Damaged = slices.Clone(c.Flitches[i].Damaged)
		c.Flitches[i].Spare = slices.Clone(c.Flitches[i].Spare)
	}
	return &c
}
