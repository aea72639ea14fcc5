package crew

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// rowsInPieces finds that every sheet that is named falls into pieces by its row on one of the pages, and that no page is named in vain.
func (r *pointed) rowsInPieces(t *testing.T, from int, said []string, to []int) {
	named := strings.Split(strings.ReplaceAll(said[1], "?", "0"), ", ")
	vain := map[int]bool{}
	for _, n := range to {
		vain[n] = true
	}
	found := map[string]bool{}
	for k, n := range r.rows {
		if _, s := r.sheet(k); s != nil && strings.Contains(r.words[k], "FALLS INTO ") && slices.Contains(to, n) && slices.Contains(named, itoa(s.Number)) {
			found[itoa(s.Number)] = true
			delete(vain, n)
		}
	}
	for _, number := range named {
		assert.True(t, found[number], "page %d: %s: sheet %s", from, said[0], number)
	}
	assert.Empty(t, vain, "page %d: %s", from, said[0])
}
