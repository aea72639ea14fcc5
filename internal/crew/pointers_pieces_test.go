package crew

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// listRow is a row of the cut list. Pieces of one band that have no number share a key.
type listRow struct {
	page       int
	key, words string
}

// rowsInPieces finds that every sheet that is named falls into pieces by its row on one of the pages, and that no page is named in vain.
func (r *pointed) rowsInPieces(t *testing.T, from int, said []string, to []int) {
	named := strings.Split(strings.ReplaceAll(said[1], "?", "0"), ", ")
	vain := map[int]bool{}
	for _, n := range to {
		vain[n] = true
	}
	found := map[string]bool{}
	for _, row := range r.list {
		if _, s := r.sheet(row.key); s != nil && strings.Contains(row.words, "FALLS INTO ") && slices.Contains(to, row.page) && slices.Contains(named, itoa(s.Number)) {
			found[itoa(s.Number)] = true
			delete(vain, row.page)
		}
	}
	for _, number := range named {
		assert.True(t, found[number], "page %d: %s: sheet %s", from, said[0], number)
	}
	assert.Empty(t, vain, "page %d: %s", from, said[0])
}
