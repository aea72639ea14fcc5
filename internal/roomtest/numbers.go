package roomtest

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Numbers are the numbers of "3, 5-7".
func Numbers(t testing.TB, s string) (list []int) {
	t.Helper()
	for _, part := range strings.Split(s, ", ") {
		first, last, through := strings.Cut(part, "-")
		if !through {
			last = first
		}
		a, err := strconv.Atoi(first)
		require.NoError(t, err)
		b, err := strconv.Atoi(last)
		require.NoError(t, err)
		for n := a; n <= b; n++ {
			list = append(list, n)
		}
	}
	return list
}
