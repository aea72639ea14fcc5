package seam

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A closed run with more narrow sheets than gists have bits for at first is solved by gists that count them all, and as by whole
// costs.
func TestHuntWithManyNarrowSheets(t *testing.T) {
	for seed := range uint64(3) {
		span := room(seed, 600*12*inch, true)
		span.Snap, span.Main = inch, nil
		for at := int64(0); at+40*inch < span.Period; at += 40 * inch {
			span.Pins = append(span.Pins, Pin{At: at, Put: PutSeam})
		}
		p := &problem{s: &span, g: newGrid(&span), store: new(store), fell: true}
		p.findWays()
		kept, unbroken, known := p.keepByRows()
		require.True(t, unbroken && known)
		first, err := p.table(Steady, true, least{})
		require.NoError(t, err)
		whole, err := p.table(Steady, true, least{})
		require.NoError(t, err)
		p.choose(kept, way{closings: p.g.closings()}, func(w way) {
			b := newBounds(p.g, w.wishes)
			got, ok := first.closed(b, w.closings, never, p.store)
			require.True(t, ok)
			want, ok := whole.closedBy(false, b, w.closings, never, p.store)
			require.True(t, ok)
			require.Equal(t, want, got)
			seams, closing := p.seams(got.lines)
			require.Greater(t, span.Score(seams, closing).Narrow, int64(2<<narrowBits))
			require.Equal(t, first.used, first.counted)
			require.False(t, first.gists.over)
		})
	}
}
