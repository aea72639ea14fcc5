package room

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryDistanceHasItsRow(t *testing.T) {
	keys, lines := map[string]bool{}, map[int]string{}
	columns := map[CoverLine]int{}
	for _, d := range Distances() {
		t.Run(d.Key, func(t *testing.T) {
			assert.False(t, keys[d.Key], "the key of another rule")
			keys[d.Key] = true
			assert.NotEmpty(t, d.Doc)
			assert.False(t, d.inch < 0 || d.mm < 0 || d.over0 && d.inch*d.mm == 0)
			assert.InDelta(t, float64(d.inch)*25.4/64, float64(d.mm), 0.05*float64(d.mm)+0.6, "the two defaults are near each other")

			var r Rules
			*d.Of(&r) = 7
			assert.EqualValues(t, 7, r.Distance(d.Key))

			require.Positive(t, d.Line.At)
			assert.Equal(t, lines[d.Line.At] == "", d.Line.Says != "", "the first of a line has its words")
			lines[d.Line.At] += d.Line.Says
			columns[CoverLine{At: d.Line.At, Better: d.Line.Better}]++
		})
	}
	for at := 1; at <= len(lines); at++ {
		assert.NotEmpty(t, lines[at], "line %d of the cover's rules", at)
		assert.LessOrEqual(t, columns[CoverLine{At: at, Better: true}], 1, "a line has one thing that is better")
	}
}

// Every length of Rules is reached by one distance: none is left out of the file, the cover or the comparison of two rooms.
func TestEveryLengthOfTheRulesIsADistance(t *testing.T) {
	var r Rules
	for i, d := range Distances() {
		*d.Of(&r) += L(i + 1)
	}
	v, found := reflect.ValueOf(r), 0
	for i := range v.NumField() {
		if v.Field(i).Type() == reflect.TypeFor[L]() {
			found++
			assert.NotZero(t, v.Field(i).Int(), v.Type().Field(i).Name)
		}
	}
	assert.Len(t, Distances(), found)
}
