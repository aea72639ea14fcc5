package folio

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// rows is how many rows a block has, read off it anew.
func (b *Block) rows() int {
	if b.Table != nil {
		return len(b.Table.Rows)
	}
	return len(b.Items)
}

// tried are blocks as a seed makes them: small tables, long ones, forms, lists.
func tried(seed uint64) ([]Block, Columns) {
	r := rand.New(rand.NewPCG(seed, 1))
	var blocks []Block
	for range 1 + r.IntN(3) {
		if r.IntN(3) == 0 {
			b := Block{Title: "LIST"}
			for range r.IntN(5) {
				b.Items = append(b.Items, draft.Item{Mark: "1", Text: strings.Repeat("words ", 1+r.IntN(30))})
			}
			blocks = append(blocks, b)
			continue
		}
		b := Block{Table: &draft.Table{Title: "TABLE", Columns: []draft.Column{{Head: "A"}}}, Whole: r.IntN(4) == 0}
		for i := range r.IntN(14) {
			b.Table.Rows = append(b.Table.Rows, draft.Row{Cells: []string{"a"}, On: i > 0 && r.IntN(5) == 0, Rule: r.IntN(5) == 0})
		}
		blocks = append(blocks, b)
	}
	c := Columns{Box: scene.BoxAt(0, 0, 200, 40+60*r.Float64()), Count: 1 + r.IntN(2), Gap: 12}
	if seed%3 == 0 { // the first page has something over its columns
		c.Head = 0.6 * c.Box.H() * r.Float64()
	}
	return blocks, c
}

// Of all ways to break, the one taken costs least: every way is tried on small lists.
func TestBreaksCostTheLeast(t *testing.T) {
	k := draft.Office()
	found := 0
	for seed := range uint64(150) {
		blocks, c := tried(seed)
		f := newFlowing(k, blocks, c).spaced(wideGap)
		const most = 4
		var try func(from, column int) float64
		try = func(from, column int) float64 {
			if from == len(f.place) {
				return 0
			}
			if column == most {
				return math.Inf(1)
			}
			best, first := math.Inf(1), f.place[from]
			least := from + 1
			if f.over(column) > 0 {
				least = from // such a column may stay empty
			}
			for to := least; to <= len(f.place); to++ {
				high := f.over(column)
				for p := from; p < to; p++ {
					at := f.place[p]
					if p == from || at.row == 0 {
						high += f.above[at.block]
						if p > from {
							high += f.gap
						}
					}
					high += f.rows[at.block][at.row]
				}
				if high > f.high+1e-6 && to > from+1 {
					break
				}
				cost := (1 + float64(column)/(100*most)) * high / f.high * high / f.high
				if to > from && to < len(f.place) {
					begun := 0
					if f.place[to].block == first.block {
						begun = first.row
					}
					cost += f.cost(f.place[to], begun, (column+1)%f.count == 0)
				}
				best = min(best, cost+try(to, column+1))
			}
			return best
		}
		want := try(0, 0)
		starts, cost := f.breaks(most)
		if math.IsInf(want, 1) {
			assert.True(t, math.IsInf(cost, 1), "seed %d", seed)
			continue
		}
		found++
		assert.InDelta(t, want, cost, 1e-9, "seed %d", seed)
		assert.LessOrEqual(t, len(starts), most, "seed %d", seed)
	}
	assert.Greater(t, found, 100)
}

// Every row is placed once, in order, inside its column, whatever flows.
func TestFlowPlacesEveryRowOnce(t *testing.T) {
	k := draft.Office()
	for seed := range uint64(400) {
		blocks, c := tried(seed)
		at, row := 0, 0
		for page, parts := range Flow(k, blocks, c) {
			if page > 0 || c.Head == 0 {
				require.NotEmpty(t, parts, "seed %d, page %d", seed, page)
			}
			for _, p := range parts {
				if p.Block != at {
					assert.Equal(t, blocks[at].rows(), row, "seed %d", seed)
					at, row = at+1, 0
				}
				require.Equal(t, at, p.Block, "seed %d", seed)
				assert.Equal(t, row, p.First, "seed %d", seed)
				above, rows := blocks[p.Block].heights(k, c.Width())
				for high := above; row < len(rows) && high+rows[row] <= p.Height+1e-6; row++ {
					high += rows[row]
				}
				assert.LessOrEqual(t, p.Y+p.Height, c.Box.Y1+1e-6, "seed %d", seed)
				if page == 0 {
					assert.GreaterOrEqual(t, p.Y, c.Box.Y0+c.Head, "seed %d", seed)
				}
			}
		}
		assert.Equal(t, blocks[at].rows(), row, "seed %d", seed)
		assert.Equal(t, len(blocks)-1, at, "seed %d", seed)
	}
}

// What belongs together is kept so where a page more is enough for it, and one page more only.
func TestWhatBelongsTogetherTakesAPageMore(t *testing.T) {
	k := draft.Office()
	table := func(rows int) *draft.Table {
		t := &draft.Table{Title: "TABLE", Columns: []draft.Column{{Head: "A"}}}
		for range rows {
			t.Rows = append(t.Rows, draft.Row{Cells: []string{"a"}})
		}
		return t
	}
	high := func(rows int) float64 { t := table(rows); t.Fit(k, 100); return t.High(k) }
	pagesOf := func(c Columns, blocks ...Block) (list []string) {
		for _, parts := range Flow(k, blocks, c) {
			var words []string
			for _, p := range parts {
				words = append(words, fmt.Sprintf("%d from %d", p.Block, p.First))
			}
			list = append(list, strings.Join(words, ", "))
		}
		return list
	}
	one := Columns{Box: scene.BoxAt(0, 0, 100, high(20)), Count: 1}
	assert.Equal(t, []string{"0 from 0"}, pagesOf(one, Block{Table: table(20)}))
	assert.Equal(t, []string{"0 from 0", "0 from 11"}, pagesOf(one, Block{Table: table(21)}), "rows are spread, the fuller page first")
	assert.Equal(t, []string{"0 from 0", "0 from 17", "0 from 33"}, pagesOf(one, Block{Table: table(49)}))
	assert.Equal(t, []string{"0 from 0", "1 from 0"}, pagesOf(one, Block{Table: table(14)}, Block{Table: table(7)}), "seven rows are not parted")
	assert.Equal(t, []string{"0 from 0", "1 from 0"}, pagesOf(one, Block{Table: table(12)}, Block{Table: table(12), Whole: true}))
	two := Columns{Box: scene.BoxAt(0, 0, 212, high(20)), Count: 2, Gap: 12}
	assert.Equal(t, []string{"0 from 0, 0 from 15"}, pagesOf(two, Block{Table: table(30)}), "columns of a page come out even")
	tied := table(24)
	for i := 8; i < 18; i++ {
		tied.Rows[i].On = true
	}
	assert.Equal(t, []string{"0 from 0", "0 from 7"}, pagesOf(one, Block{Table: tied}), "rows that go on are not parted from theirs")
}
