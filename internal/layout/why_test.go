package layout

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/seam"
)

// crowded is a closed room of so many walls, in each of which a must is broken, with pins in all of them.
func crowded(walls int) string {
	text := head + "[room]\nclosed = true\n[rules]\nsnap = \"1/4\"\n"
	for i := range walls {
		text += fmt.Sprintf("[[wall]]\nlength = \"%d\"\nheight = \"8'\"\ncorner = \"inside\"\n", 190+7*i%13)
		text += fmt.Sprintf("[[wall.keep_clear]]\nfrom = \"%d\"\nto = \"%d\"\n", 60+i, 88+i)
		for k := range 4 {
			text += fmt.Sprintf("[[wall.pin]]\nat = \"%d\"\nput = %q\n", 11+(31*i+43*k)%170, []string{"seam", "middle"}[k%2])
		}
	}
	return text
}

// What is asked about pins that fall ends where it has taken as much as it may, by a count that no clock and no other room has a part
// in, and the findings say of which pins it was left out.
func TestWhyPinsFallIsAskedSoFarAndNoFurther(t *testing.T) {
	r := decoded(t, crowded(4))
	lay := func(left seam.Allowance) (reasons []string, spent seam.Allowance) {
		b := begin(r, seam.Steady, nil, newShapes())
		b.whyLeft = left
		require.NoError(t, b.solve(nil, nil))
		for _, f := range b.plan.Findings {
			if f.Code == finding.PinDropped {
				_, reason, _ := strings.Cut(f.Message, "is dropped: ")
				reasons = append(reasons, reason)
			}
		}
		return reasons, left - b.whyLeft
	}
	all, whole := lay(mostWhy)
	require.Greater(t, len(all), 2)
	assert.NotContains(t, all, notToTheEnd)
	assert.Less(t, whole, mostWhy/4, "a usual room comes to its end long before")
	one := whole // the most that a question takes
	for _, part := range []seam.Allowance{2} {
		some, spent := lay(whole / part)
		again, twice := lay(whole / part)
		assert.Equal(t, some, again)
		assert.Equal(t, spent, twice)
		assert.Less(t, spent-whole/part, one, "it ends with the question that spends the rest")
		require.Len(t, some, len(all))
		from := slices.Index(some, notToTheEnd)
		require.GreaterOrEqual(t, from, 0)
		assert.Equal(t, all[:from], some[:from])
		for _, reason := range some[from:] {
			assert.Equal(t, notToTheEnd, reason)
		}
	}
	none, spent := lay(0)
	assert.Zero(t, spent)
	assert.Equal(t, slices.Repeat([]string{notToTheEnd}, len(all)), none)
}
