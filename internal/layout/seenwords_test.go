package layout

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/length"
)

// What a seam shows is the sum of its stretches, whatever openings it meets, also two that lie one over the other or share an edge.
func TestStretchesOfASeamAddUp(t *testing.T) {
	p := lay(t, closedRoom(""))
	v := newSight(p.Runs[0].Line)
	rnd := rand.New(rand.NewPCG(1, 2))
	several := 0
	for range 2000 {
		v.holes = nil
		sill := L(rnd.IntN(20)) * length.Inch
		for range rnd.IntN(4) {
			head := sill + L(1+rnd.IntN(40))*length.Inch
			v.holes = append(v.holes, hiding{a: 0, b: 10, sill: sill, head: head})
			sill = head + L(rnd.IntN(20))*length.Inch
		}
		low, high := L(rnd.IntN(10))*length.Inch, L(40+rnd.IntN(60))*length.Inch
		sum, last := L(0), low-1
		list := v.stretches(5, low, high)
		for _, s := range list {
			assert.Greater(t, s[0], last, "apart, from the lowest up")
			sum, last = sum+s[1]-s[0], s[1]
		}
		if len(list) > 1 {
			several++
		}
		assert.Equal(t, v.less(5, low, high), sum)
	}
	assert.Greater(t, several, 200)
}
