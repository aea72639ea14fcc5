package spell

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		name, a, b string
		want       int
	}{
		{"nothing", "", "", 0},
		{"a letter put in", "", "a", 1},
		{"a word put in", "", "four", 4},
		{"the same word", "oak", "oak", 0},
		// Source: the examples of the algorithm's descriptions.
		{"two changed, one put in", "kitten", "sitting", 3},
		{"one left out, one put in", "flaw", "lawn", 2},
		{"neighbours exchanged", "ca", "ac", 1},
		{"letters of more than one byte", "café", "cafe", 1},
		{"a hundred letters are compared", strings.Repeat("x", 100), "x", 99},
		{"more are not", strings.Repeat("x", 1000), "x", 1000},
	} {
		assert.Equal(t, c.want, Distance(c.a, c.b), c.name)
		assert.Equal(t, c.want, Distance(c.b, c.a), c.name)
	}
}
