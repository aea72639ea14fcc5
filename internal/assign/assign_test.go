package assign

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// of makes rooms of sheets in one course.
func of(needs ...int) (list []Room) {
	for _, n := range needs {
		r := Room{Fixed: -1}
		for range n {
			r.Columns = append(r.Columns, 1)
		}
		list = append(list, r)
	}
	return list
}

func TestChoices(t *testing.T) {
	for _, c := range []struct {
		why    string
		rooms  []Room
		sheets []int
		whole  bool
		want   []int
		cost   Cost
	}{
		{"the order given where nothing is gained by another", of(3, 3, 3), []int{9, 9}, true, []int{0, 0, 0}, Cost{}},
		{"a later flitch first, so that no room is parted", of(4, 4, 6), []int{6, 8}, false, []int{1, 1, 0}, Cost{}},
		{"no end too short for any room", of(3, 4), []int{5, 4, 3}, true, []int{2, 1}, Cost{}},
		{"one has to be parted", of(4, 4, 2), []int{5, 5}, true, []int{0, 1, 0}, Cost{Changes: 1}},
		{"too few sheets", of(4, 4), []int{5}, true, []int{0, 0}, Cost{Short: 3}},
		{"a room that has its flitch", []Room{{Columns: []int{1, 1}, Fixed: 1}, {Columns: []int{2}, Fixed: -1}}, []int{2, 4}, true, []int{1, 1}, Cost{}},
		{"two courses are not parted", []Room{{Columns: []int{2, 2}, Fixed: -1}}, []int{3, 3}, true, []int{0}, Cost{Changes: 1, Ends: 2}},
	} {
		got := Find(c.rooms, c.sheets, c.whole, 1e6)
		assert.Equal(t, c.want, got.Starts, c.why)
		assert.Equal(t, c.cost, got.Cost, c.why)
		assert.True(t, got.Best, c.why)
	}
}

// brute tries every choice in its order, and keeps the first of the best.
func brute(rooms []Room, sheets []int, whole bool) (best []int, cost Cost) {
	s := &search{rooms: rooms, whole: whole, needs: make([]int, len(rooms))}
	least := 1 << 30
	for i := range rooms {
		s.needs[i] = rooms[i].Need()
		least = min(least, s.needs[i])
	}
	at := make([]int, len(rooms))
	var try func(i int, rest []int, current int, so Cost)
	try = func(i int, rest []int, current int, so Cost) {
		if i == len(rooms) {
			for _, n := range rest {
				if n > 0 && n < least {
					so.Ends++
				}
			}
			if best == nil || so.Less(cost) {
				best, cost = append([]int{}, at...), so
			}
			return
		}
		for _, f := range s.starts(i, rest, current) {
			next := append([]int{}, rest...)
			short, last, changed := serve(&rooms[i], next, f, whole)
			c := so
			c.Short += short
			if changed {
				c.Changes++
			}
			at[i] = f
			try(i+1, next, last, c)
		}
	}
	try(0, sheets, 0, Cost{})
	return best, cost
}

// On small jobs no choice is better than the one found, and none before it in the order is as good.
func TestAgainstBruteForce(t *testing.T) {
	parted := 0
	for n := range effort.Of(60, 1000) {
		random := rand.New(rand.NewPCG(uint64(n), 14))
		var rooms []Room
		for range 2 + random.IntN(5) {
			r := Room{Fixed: -1}
			if random.IntN(8) == 0 {
				r.Fixed = 0
			}
			course := 1 + random.IntN(6)/5
			for range 1 + random.IntN(7) {
				r.Columns = append(r.Columns, course)
			}
			rooms = append(rooms, r)
		}
		var sheets []int
		for range 1 + random.IntN(3) {
			sheets = append(sheets, 1+random.IntN(14))
		}
		whole := random.IntN(2) == 0
		want, cost := brute(rooms, sheets, whole)
		got := Find(rooms, sheets, whole, 1e7)
		require.Equal(t, cost, got.Cost, "job %d: %v from %v, whole %v", n, rooms, sheets, whole)
		require.Equal(t, want, got.Starts, "job %d", n)
		require.True(t, got.Best)
		s := &search{rooms: rooms, needs: make([]int, len(rooms)), least: 1 << 30}
		for i := range rooms {
			s.needs[i] = rooms[i].Need()
			s.least = min(s.least, s.needs[i])
		}
		s.reaches(sheets)
		require.False(t, cost.Less(s.bound(0, sheets, Cost{})), "job %d: the bound is one", n)
		if cost.Changes > 0 {
			parted++
		}
	}
	assert.Positive(t, parted)
}

// Where the steps run out, what is found is no better than the bound, and says that it may not be the best.
func TestBoundHolds(t *testing.T) {
	rooms := of(7, 8, 9, 7, 8, 9, 7, 8, 9, 11, 13, 7, 9)
	few := Find(rooms, []int{31, 29, 30, 28}, true, 14)
	best := Find(rooms, []int{31, 29, 30, 28}, true, 1e6)
	require.True(t, best.Best)
	assert.False(t, few.Cost.Less(best.Cost))
	assert.False(t, best.Cost.Less(few.Bound))
	assert.Len(t, few.Starts, len(rooms))
}

// On larger jobs a general optimiser finds no less, where it can say the same: rooms hung whole, and ends too short for any.
func TestAgainstGLPK(t *testing.T) {
	if !effort.Full() {
		t.Skip("a long comparison")
	}
	glpsol, err := exec.LookPath("glpsol")
	require.NoError(t, err)
	whole := 0
	for n := range 30 {
		random := rand.New(rand.NewPCG(uint64(n), 15))
		var needs []int
		total := 0
		for range 12 + random.IntN(10) {
			needs = append(needs, 5+random.IntN(25))
			total += needs[len(needs)-1]
		}
		var sheets []int
		for have := 0; have < total+2+random.IntN(20); {
			sheets = append(sheets, 40+random.IntN(50))
			have += sheets[len(sheets)-1]
		}
		got := Find(of(needs...), sheets, true, 3e6)
		changes, ends := optimum(t, glpsol, needs, sheets)
		assert.LessOrEqual(t, changes, got.Cost.Changes, "job %d", n)
		assert.LessOrEqual(t, got.Bound.Changes, max(changes, got.Cost.Changes), "job %d", n)
		if changes == 0 { // else it may part rooms as no order can
			whole++
			if got.Best {
				assert.Equal(t, Cost{Ends: ends}, got.Cost, "job %d: %v from %v", n, needs, sheets)
			}
		}
	}
	assert.Greater(t, whole, 5)
}

// optimum has GLPK say how many rooms cannot be whole at least, and how many ends are too short then.
func optimum(t *testing.T, glpsol string, needs, sheets []int) (changes, ends int) {
	least := needs[0]
	for _, n := range needs {
		least = min(least, n)
	}
	var b, subject, binary strings.Builder
	fmt.Fprintln(&b, "Minimize\ncost:")
	for r := range needs {
		fmt.Fprintf(&b, "+ 1000 y%d ", r)
		fmt.Fprintf(&binary, "y%d\n", r)
		for f := range sheets {
			fmt.Fprintf(&subject, "+ x%d_%d ", r, f)
			fmt.Fprintf(&binary, "x%d_%d\n", r, f)
		}
		fmt.Fprintf(&subject, "+ y%d = 1\n", r)
	}
	for f, have := range sheets {
		fmt.Fprintf(&b, "+ z%d ", f)
		fmt.Fprintf(&binary, "z%d\ne%d\n", f, f)
		row := ""
		for r, n := range needs {
			row += fmt.Sprintf("+ %d x%d_%d ", n, r, f)
		}
		// what is left is nothing (e), or too short (z), or enough for a room
		fmt.Fprintf(&subject, "%s <= %d\n", row, have)
		fmt.Fprintf(&subject, "%s - %d e%d >= 0\n", row, have, f)
		fmt.Fprintf(&subject, "%s - %d z%d - %d e%d <= %d\n", row, least, f, least, f, have-least)
	}
	fmt.Fprintf(&b, "\nSubject To\n%sBinary\n%sEnd\n", subject.String(), binary.String())
	dir := t.TempDir()
	model, out := filepath.Join(dir, "job.lp"), filepath.Join(dir, "job.txt")
	require.NoError(t, os.WriteFile(model, []byte(b.String()), 0o600))
	text, err := exec.Command(glpsol, "--lp", model, "--tmlim", "20", "-o", out).CombinedOutput()
	require.NoError(t, err, string(text))
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	m := regexp.MustCompile(`Objective: +cost = (\d+)`).FindStringSubmatch(string(data))
	require.NotNil(t, m, string(data[:200]))
	n, err := strconv.Atoi(m[1])
	require.NoError(t, err)
	return n / 1000, n % 1000
}
