package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTextOfAWideTable(t *testing.T) {
	table := &Table{Title: "T", Columns: []Column{{Head: "n", Right: true}, {Head: "why", Long: true}},
		Rows: [][]Cell{{Whole(1), Text(strings.Repeat("word ", 30) + "6 3/4 end " + strings.Repeat("x", 120))}, {Whole(20), Text("short")}}}
	var b bytes.Buffer
	require.NoError(t, table.Write(&b))
	words := strings.Fields(b.String())
	assert.Equal(t, 30, strings.Count(b.String(), "word"), "no word is lost")
	assert.Contains(t, words, "short")
	assert.Contains(t, b.String(), "6 3/4", "no line is broken inside a mixed number")
	assert.Equal(t, 120, strings.Count(b.String(), "x"))
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, len(line), 100)
	}
}

// TestGuard keeps a spreadsheet from reckoning with what begins like a formula.
func TestGuard(t *testing.T) {
	for _, s := range []string{"=1", "+1", "-a", "@x", "\tx", "\rx"} {
		assert.Equal(t, "'"+s, Guard(s))
	}
	assert.Equal(t, "North", Guard("North"))
	assert.Empty(t, Guard(""))
}
