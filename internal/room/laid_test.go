package room

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func flitched(t *testing.T, lines, more string) (*Room, error) {
	t.Helper()
	return Decode("r", []byte(strings.Replace(quiet, "[site]", lines+"\n[site]", 1)+more))
}

// The order of numbers in words follows from the flitches.
func TestOrderOfNumbers(t *testing.T) {
	up, down := "[[flitch]]\nnumber = \"A\"\nsheets = \"1-40\"\n", "[[flitch]]\nnumber = \"B\"\nsheets = \"1-40\"\nfrom = \"last\"\n"
	for lines, want := range map[string]string{"": "number order", up: "number order", down: "falling number order", up + down: "number order, rising or falling by the flitch,"} {
		r, err := flitched(t, lines, "")
		require.NoError(t, err)
		assert.Equal(t, want, r.Order())
	}
}

// Hung sheets of a flitch that is laid from its high end are named as they hang.
func TestHungNumbersFall(t *testing.T) {
	down := "[[flitch]]\nnumber = \"B\"\nsheets = \"1-40\"\nfrom = \"last\"\n"
	for sheets, want := range map[string]string{
		`"40-39"`: "", `[40, 39]`: "",
		`"39-40"`:  "the first hung sheet is 39, not the first of flitch \"B\"",
		`[40, 40]`: "sheet 40 stands twice",
	} {
		_, err := flitched(t, down, "[[hung]]\nwall = \"N\"\nsheets = "+sheets+"\nseams = [20, 43]\n")
		if want == "" {
			assert.NoError(t, err, sheets)
		} else if assert.Error(t, err, sheets) {
			assert.Contains(t, err.Error(), want)
		}
	}
	_, err := flitched(t, down, "[[hung]]\nwall = \"N\"\nsheet = 40\nseam = 20\n[[hung]]\nwall = \"N\"\nsheet = 40\nseam = 43\n")
	assert.ErrorContains(t, err, "from the highest down")
}
