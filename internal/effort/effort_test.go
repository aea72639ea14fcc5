package effort

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// By turns every part of a list comes up, and with FLITCHLAY_CHECK=1 every case takes all of it.
func TestTurnsComeRound(t *testing.T) {
	list := []string{"a", "b", "c"}
	t.Setenv("FLITCHLAY_CHECK", "")
	got := map[string]int{}
	for turn := range 7 {
		for _, x := range Turns(turn, list) {
			got[x]++
		}
	}
	assert.Equal(t, map[string]int{"a": 3, "b": 2, "c": 2}, got)
	assert.Empty(t, Turns(4, []string{}))
	assert.Equal(t, 3, Of(3, 20))

	t.Setenv("FLITCHLAY_CHECK", "1")
	assert.Equal(t, list, Turns(5, list))
	assert.Equal(t, 20, Of(3, 20))
}

// What the environment says of seeds and their number goes before few and all.
func TestSeedsAreThoseAskedFor(t *testing.T) {
	t.Setenv("FLITCHLAY_CHECK", "")
	t.Setenv("FLITCHLAY_SEED", "")
	t.Setenv("FLITCHLAY_ROOMS", "")
	first, count := Seeds(t, "FLITCHLAY_ROOMS", 15, 1000)
	assert.Equal(t, []int{1, 15}, []int{first, count})
	t.Setenv("FLITCHLAY_CHECK", "1")
	_, count = Seeds(t, "FLITCHLAY_ROOMS", 15, 1000)
	assert.Equal(t, 1000, count)
	t.Setenv("FLITCHLAY_SEED", "77")
	t.Setenv("FLITCHLAY_ROOMS", "2")
	first, count = Seeds(t, "FLITCHLAY_ROOMS", 15, 1000)
	assert.Equal(t, []int{77, 2}, []int{first, count})
}
