package seam

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a cost has of the musts is what went into it, however many bits they take.
func TestMustsOfACost(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 24))
	for range 2000 {
		bends, edges := r.Int64N(1<<(1+r.IntN(60))), r.Int64N(1<<(1+r.IntN(60)))
		most := [itemCount]Square{itemBends: {Lo: uint64(bends)}, itemEdges: {Hi: uint64(r.IntN(9)), Lo: uint64(edges)}}
		l, err := newLedger(musts, most)
		require.NoError(t, err)
		gotBends, gotEdges := l.mustsOf(l.of(itemBends, bends).plus(l.of(itemEdges, edges)))
		require.Equal(t, []int64{bends, edges}, []int64{gotBends, gotEdges}, "%v", l.at)
	}
}
