package report

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// narrowPage is a writer that says how wide its lines are.
type narrowPage struct {
	strings.Builder
	n int
}

func (p *narrowPage) Columns() int { return p.n }

// Tables keep to the width of the writer: long texts are broken first, then heads at their blanks, then columns stand closer; figures
// are broken last.
func TestTablesFitTheWriter(t *testing.T) {
	table := Table{Title: "Sheets", Columns: []Column{{Head: "flitch"}, {Head: "spares wanted", Right: true}, {Head: "why", Long: true}},
		Rows: [][]Cell{{Text("F-1"), Text(`9'-2 1/2"`), Text("a tenth of forty is four")}}}
	for n, want := range map[int]string{
		60: "Sheets\nFLITCH  SPARES WANTED  WHY\nF-1         9'-2 1/2\"  a tenth of forty is four\n",
		36: "Sheets\nFLITCH  SPARES WANTED  WHY\nF-1         9'-2 1/2\"  a tenth of\n                       forty is four\n",
		27: "Sheets\nFLITCH     SPARES  WHY\n           WANTED\nF-1     9'-2 1/2\"  a tenth\n                   of forty\n                   is four\n",
		22: "Sheets\nFLITCH    SPARES WHY\n          WANTED\nF-1    9'-2 1/2\" a\n                 tenth\n                 of\n                 forty\n                 is\n                 four\n",
	} {
		p := &narrowPage{n: n}
		require.NoError(t, table.Write(p))
		assert.Equal(t, want, p.String(), n)
	}
}

func TestFitBreaksTheWidest(t *testing.T) {
	rows := [][]string{{"wall", "North and the side of it", "x"}, {"a", "b"}}
	assert.Equal(t, []string{"wall  North and the side of it  x", "a     b"}, Fit(rows, 80))
	got := Fit(rows, 20)
	assert.Equal(t, []string{"wall  North and    x", "      the side of", "      it", "a     b"}, got)
	for _, line := range Fit([][]string{{strings.Repeat("x", 50), strings.Repeat("y", 9)}}, 30) {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), 30, "a word is broken where nothing else can be")
	}
}
