package recheck

import (
	"fmt"
	"math/big"

	"github.com/stretchr/testify/assert"
)

// due notes a finding that has to be there.
func (c *checker) due(code, place string, measured, required int64, what string) {
	need := fmt.Sprint(required)
	if required < 0 {
		need = "-"
	}
	c.want = append(c.want, fmt.Sprintf("%s|%s|%d|%s|%s", code, place, measured, need, what))
}

// score recomputes the score of a span, item by item, and notes what the seams and sheets have to be told of.
func (c *checker) score(p *printedRun, l *line, i int, sp span, edges, hung []int64, first int) {
	got := p.Spans[i].Score
	if i > 0 {
		hung = nil // sheets hang from the run's first, so in its first span
	}
	n := len(hung)
	rest := edges[n:] // of the sheets that do not hang yet
	if n > 0 {
		sp.left = rest[0]
	}
	if sp.closed && n == 0 {
		c.is(0, p.Spans[i].Left, "left end of a closed span")
		c.is(l.length, p.Spans[i].Right, "right end of a closed span")
	} else if len(rest) > 1 {
		c.is(sp.left, p.Spans[i].Left, "left end of span %d", i)
		c.is(sp.right, p.Spans[i].Right, "right end of span %d", i)
	}
	sums := map[string]int64{}
	foot := int64(c.room.Project.Units.Grain())
	feet := func(s int64) int64 {
		seen := round(l.seen(l.round(s)))
		return (seen + foot - 1) / foot
	}
	seams := append([]int64{}, rest[min(1, len(rest)):max(0, len(rest)-1)]...)
	if sp.closed && n == 0 {
		seams = append(seams, edges[0])
		sums["closing"] = feet(edges[0])
	}
	number := func(s int64) int { // of the sheet at the seam's left
		for k := 1; k < len(edges); k++ {
			if edges[k] == s || sp.closed && l.round(edges[k]) == l.round(s) {
				return first + k - 1
			}
		}
		return 0
	}
	for _, s := range seams {
		sums["seen"] += feet(s)
		place := "seam " + c.seamAfter(number(s))
		for _, pair := range l.pairs(s) {
			sums[pair.sum] += lacks(pair.need, pair.d)
			sums["should"] += lacks(pair.prefer, pair.d)
			switch {
			case pair.must == "kept-clear":
				c.due(pair.must, place, pair.d, -1, pair.what)
			case pair.d < pair.need:
				c.due(pair.must, place, pair.d, pair.need, pair.what)
			case pair.d < pair.prefer:
				c.due(pair.should, place, pair.d, pair.prefer, pair.what)
			}
		}
	}
	c.widths(l, sp, rest, n, first, sums, feet)
	if last := len(rest) - 1; last > 1 && !sp.closed {
		if n == 0 {
			sums["sliver"] += c.sliver(l, rest[1]-rest[0], rest[1])
		}
		sums["sliver"] += c.sliver(l, rest[last]-rest[last-1], rest[last-1])
	}
	if len(rest) > 2 && n == 0 && !sp.closed && sp.leftWall == sp.rightWall {
		a, b := rest[1]-rest[0], rest[len(rest)-1]-rest[len(rest)-2]
		sums["difference"] = max(a-b, b-a)
	}
	what := fmt.Sprintf("score of span %d of run %s: ", i, p.Name)
	for _, v := range []struct {
		name string
		got  num
	}{{"bends", got.Bends}, {"edges", got.Edges}, {"sliver", got.Sliver}, {"should", got.Should}, {"difference", got.Difference}} {
		c.is(sums[v.name], v.got, "%s%s", what, v.name)
	}
	for _, v := range []struct {
		name string
		got  int64
	}{{"closing", got.Closing}, {"narrow_main", got.NarrowMain}, {"narrow", got.Narrow}, {"sheets", got.Sheets}, {"narrow_jump", got.NarrowJump}, {"jump", got.Jump}, {"seen", got.Seen}} {
		assert.Equal(c.t, sums[v.name], v.got, what+v.name)
	}
	square := new(big.Rat)
	for k := 1; k < len(rest); k++ {
		w := big.NewRat(rest[k]-rest[k-1], 8000)
		square.Add(square, w.Mul(w, w))
	}
	assert.Equal(c.t, trimmed(square.FloatString(6)), got.Unevenness.String(), what+"unevenness")
}

// widths adds what the sheets of a span owe and count.
func (c *checker) widths(l *line, sp span, rest []int64, hung, first int, sums map[string]int64, feet func(int64) int64) {
	rules := c.room.Rules
	owes := sp.right-sp.left >= int64(rules.LeastWidth)
	for k := 1; k < len(rest); k++ {
		w := rest[k] - rest[k-1]
		place := first + hung + k - 1
		sums["sheets"]++
		if owes {
			sums["bends"] += lacks(int64(rules.LeastWidth), w)
		}
		prefer := preference(rules.PreferWidth, rules.LeastWidth)
		sums["should"] += lacks(prefer, w)
		switch sheet := c.called(place); {
		case owes && w < int64(rules.LeastWidth):
			c.due("sheet-thin", sheet, w, int64(rules.LeastWidth), "")
		case w < prefer:
			c.due("sheet-slim", sheet, w, prefer, "")
		}
		inner := k < len(rest)-1 && (k > 1 || hung > 0)
		if !inner || w > c.net-int64(rules.Snap) {
			continue
		}
		right := l.round(rest[k])
		sums["jump"] += feet(right)
		if round(l.seen(right)) > int64(rules.ShortSeam) {
			sums["narrow"]++
			if !sp.closed { // one end at least is raw
				sums["narrow_jump"] += feet(right)
			}
			if l.main(right) {
				sums["narrow_main"]++
			}
			c.due("narrow-sheet", c.called(place), w, c.net, "")
		}
	}
}

// sliver is what a sheet from a raw end to a seam lacks of the middle between least_width and prefer_width.
func (c *checker) sliver(l *line, width, seam int64) int64 {
	least, want := int64(c.room.Rules.LeastWidth), int64(c.room.Rules.PreferWidth)
	if want < least || round(l.seen(l.round(seam))) <= int64(c.room.Rules.ShortSeam) {
		return 0
	}
	return lacks((least+want)/2, width)
}

// called is how findings call the sheet of a place: by its number, and where it has none by its place.
func (c *checker) called(place int) string {
	for _, r := range c.p.Runs {
		for _, s := range r.Sheets {
			if s.Place == place && s.Number != nil {
				return fmt.Sprintf("sheet %d", *s.Number)
			}
		}
	}
	return fmt.Sprintf("sheet at place %d", place)
}
