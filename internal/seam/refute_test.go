//go:build glpsol

package seam_test

import (
	"cmp"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// glpsolHolds holds a layout against glpsol, which is faster than to have it find one: the rows take the layout, and for each
// item of its score in the order of the aim no layout has less of it, with the items before it at most what they are. An
// item that is a sum of nothing negative and stands at its constant needs no proof.
func glpsolHolds(t *testing.T, c oracletest.Case, got seam.Layout, limit time.Duration) {
	t.Helper()
	program, err := exec.LookPath("glpsol")
	require.NoError(t, err, "glpsol is what this test compares with: install GLPK")
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	m, score := newModel(c), inOrder(got.Score, c)
	require.Len(t, m.items, len(score))
	for i, it := range m.items {
		over := (score[i] - it.constant) / cmp.Or(it.scale, 1)
		require.Equal(t, score[i], over*cmp.Or(it.scale, 1)+it.constant, it.name)
		if len(it.weight) == 0 || over == 0 && !slices.ContainsFunc(values(it.weight), negative) {
			require.Equal(t, it.constant, score[i], it.name)
		} else {
			kept := len(m.rows)
			m.row(it.weight, "<=", over-1)
			require.False(t, m.possible(t, ctx, program, it), "%s: a layout with less than %d\n%s", it.name, score[i], c)
			m.rows = m.rows[:kept]
		}
		m.row(it.weight, "<=", over)
	}
	for i := 1; i < len(m.edges)-1; i++ {
		at := m.edges[i]
		if c.Span.Closed {
			at %= c.Span.Period
		}
		seen := int64(0)
		if slices.Contains(got.Seams, at) {
			seen = 1
		}
		m.row(map[string]int64{x(i): 1}, "=", seen)
	}
	require.True(t, m.possible(t, ctx, program, m.items[0]), "the rows take the layout of Solve\n%s", c)
}

func values(weight map[string]int64) []int64 {
	var out []int64
	for _, w := range weight {
		out = append(out, w)
	}
	return out
}

func negative(w int64) bool { return w < 0 }

// possible reports whether glpsol finds any layout under the rows.
func (m *model) possible(t *testing.T, ctx context.Context, program string, it item) bool {
	t.Helper()
	folder := t.TempDir()
	problem, solution := filepath.Join(folder, "span.lp"), filepath.Join(folder, "span.sol")
	require.NoError(t, os.WriteFile(problem, m.text(it), 0o644))
	out, err := exec.CommandContext(ctx, program, "--lp", problem, "--write", solution).CombinedOutput()
	require.NoError(t, err, "%s: %s", it.name, tail(out))
	said := strings.Split(string(out), "\n")
	says := func(words string) bool { return slices.Contains(said, words) }
	switch {
	case says("PROBLEM HAS NO PRIMAL FEASIBLE SOLUTION"), says("LP HAS NO PRIMAL FEASIBLE SOLUTION"),
		says("PROBLEM HAS NO INTEGER FEASIBLE SOLUTION"):
		return false
	case says("INTEGER OPTIMAL SOLUTION FOUND"), says("INTEGER OPTIMAL SOLUTION FOUND BY MIP PREPROCESSOR"):
		return true
	}
	require.Fail(t, "glpsol came to no end", "%s: %s", it.name, tail(out))
	return false
}
