//go:build glpsol

package seam_test

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// model is a span as an integer program in the seam form: one binary column x for every grid line.
//
//	widths      every window as wide as the widest sheet holds a seam
//	slivers     what sheets lack to a width p is an integral over windows of width p: one with k seams holds k - 1 pairs
//	            of neighbours, and a pair w apart lies inside windows for a stretch of p - w; so z >= k - 1 says it
//	whole       y for a pair of lines about W apart: both are seams and no line between them is
//	first, last f and l: the one seam beside each end
//	squares     w * w = w + 2 * sum over p of (w - p), and w - p counts the windows of p lines without a seam
type model struct {
	c       oracletest.Case
	columns []string
	of      map[string]int
	rows    []string
	binary  map[string]bool
	edges   []int64 // the left end, all lines, the right end
	places  []oracletest.Place
	closing oracletest.Place
	items   []item
	spent   time.Duration // by glpsol itself
}

// item is one item of the score as a linear sum.
type item struct {
	name     string
	constant int64
	weight   map[string]int64
	scale    int64
}

// canModel tells whether the rows say the whole of a span: two sheets at least whatever the layout, and for the squares
// a grid without a short step.
func canModel(s seam.Span, aim seam.Aim) bool {
	_, one := oracletest.Score(s, nil, -1)
	return !one && (aim != seam.Even || (s.R-s.L)%s.Snap == 0)
}

// inOrder lists the items that the rows can say in the order of the aim, and the closing seam left out, which is given.
func inOrder(score seam.Score, c oracletest.Case) []int64 {
	if c.Aim == seam.Even {
		return []int64{score.Bends, score.Edges, score.Sheets, score.Should, int64(score.Unevenness.Lo), score.Seen}
	}
	narrow := []int64{score.NarrowMain, score.Narrow}
	sheets := []int64{score.Sheets}
	middle := slices.Concat(narrow, sheets)
	if c.Aim == seam.Fewest {
		middle = slices.Concat(sheets, narrow)
	}
	return slices.Concat([]int64{score.Bends, score.Edges}, middle, []int64{score.NarrowJump, score.Sliver, score.Jump, score.Should, score.Seen, score.Difference})
}

// glpsolLeast finds the least of every item in the order of the aim, one run of glpsol each: what an item reached is a
// row from then on. It gives the time that glpsol itself took, too.
func glpsolLeast(t testing.TB, c oracletest.Case, limit time.Duration) ([]int64, time.Duration) {
	program, err := exec.LookPath("glpsol")
	require.NoError(t, err, "glpsol is what this test compares with: install GLPK")
	m := newModel(c)
	var least []int64
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	for _, it := range m.items {
		value := m.minimise(t, ctx, program, it)
		least = append(least, value)
		m.row(it.weight, "<=", (value-it.constant)/cmp.Or(it.scale, 1))
	}
	return least, m.spent
}

func newModel(c oracletest.Case) *model {
	m := &model{c: c, of: map[string]int{}, binary: map[string]bool{}}
	s := c.Span
	left, right := s.L, s.R
	var lines []int64
	if s.Closed {
		for _, line := range oracletest.Grid(s) {
			if max(line-s.Pins[0].At, s.Pins[0].At-line) <= s.Snap/2 {
				left = line
				break
			}
		}
		right = left + s.Period
		for _, line := range oracletest.Grid(s) {
			if line < left {
				line += s.Period
			}
			if line != left {
				lines = append(lines, line)
			}
		}
		slices.Sort(lines)
		m.closing = oracletest.PlaceAt(s, left)
	} else {
		lines = oracletest.Grid(s)
	}
	m.edges = slices.Concat([]int64{left}, lines, []int64{right})
	m.places = make([]oracletest.Place, len(m.edges))
	for i := 1; i <= len(lines); i++ {
		at := m.edges[i]
		if s.Closed {
			at %= s.Period
		}
		m.places[i] = oracletest.PlaceAt(s, at)
		m.column(x(i), true)
	}
	m.widths()
	m.ends()
	m.whole()
	m.score()
	return m
}

func x(i int) string { return "x" + strconv.Itoa(i) }

func (m *model) column(name string, binary bool) string {
	if _, known := m.of[name]; !known {
		m.of[name] = len(m.columns)
		m.columns = append(m.columns, name)
		m.binary[name] = binary
	}
	return name
}

func (m *model) row(weight map[string]int64, sense string, right int64) {
	if len(weight) == 0 {
		return
	}
	m.rows = append(m.rows, fmt.Sprintf("r%d: %s %s %d", len(m.rows), m.sum(weight), sense, right))
}

// sum writes a sum in the order of the columns.
func (m *model) sum(weight map[string]int64) string {
	names := make([]string, 0, len(weight))
	for name := range weight {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Compare(m.of[a], m.of[b]) })
	var b strings.Builder
	for i, name := range names {
		if i%12 == 11 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, " %+d %s", weight[name], name)
	}
	return b.String()
}

// reach gives the widest sheet at the left end, between seams, and at the right end.
func (m *model) reach() (first, inner, last int64) {
	s := m.c.Span
	inner = oracletest.NetWidth(&s)
	first, last = inner, inner
	if !s.Closed && !s.LeftSeam {
		first = s.Gross - s.Overlap/2 - s.TrimLeft
	}
	if !s.Closed && !s.RightSeam {
		last = s.Gross - s.Overlap/2 - s.TrimRight
	}
	return first, inner, last
}

// between lists the lines with from < s <= to as a sum.
func (m *model) between(from, to int64) map[string]int64 {
	sum := map[string]int64{}
	for i := 1; i < len(m.edges)-1; i++ {
		if from < m.edges[i] && m.edges[i] <= to {
			sum[x(i)] = 1
		}
	}
	return sum
}

func (m *model) left() int64  { return m.edges[0] }
func (m *model) right() int64 { return m.edges[len(m.edges)-1] }

func (m *model) widths() {
	first, inner, last := m.reach()
	m.row(m.between(m.left(), m.left()+first), ">=", 1)
	m.row(m.between(m.right()-last-1, m.right()), ">=", 1)
	for i := 1; i < len(m.edges)-1; i++ {
		at := m.edges[i]
		if at >= m.right()-last {
			continue
		}
		sum, right := m.between(at, at+inner), int64(1)
		if at+inner < m.left()+first { // a first sheet wider than W may lie over the whole window
			sum[x(i)], right = -1, 0
		}
		m.row(sum, ">=", right)
	}
}

// ends adds f and l, the seams beside the left and the right end.
func (m *model) ends() {
	first, _, last := m.reach()
	one, before := map[string]int64{}, map[string]int64{}
	for i := 1; i < len(m.edges)-1 && m.edges[i] <= m.left()+first; i++ {
		f := m.column("f"+strconv.Itoa(i), true)
		m.row(map[string]int64{f: 1, x(i): -1}, "<=", 0)
		one[f], before[f] = 1, -1
		before[x(i)] = 1
		m.row(before, "<=", 0)
		delete(before, x(i))
	}
	m.row(one, "=", 1)
	one, before = map[string]int64{}, map[string]int64{}
	for i := len(m.edges) - 2; i > 0 && m.edges[i] >= m.right()-last; i-- {
		l := m.column("l"+strconv.Itoa(i), true)
		m.row(map[string]int64{l: 1, x(i): -1}, "<=", 0)
		one[l], before[l] = 1, -1
		before[x(i)] = 1
		m.row(before, "<=", 0)
		delete(before, x(i))
	}
	m.row(one, "=", 1)
}

// whole adds y for the pairs of lines that make an inner sheet without a jump.
func (m *model) whole() {
	s := m.c.Span
	net := oracletest.NetWidth(&s)
	over := make([]map[string]int64, len(m.edges))
	for j := 1; j < len(m.edges)-1; j++ {
		for i := j - 1; i >= 0 && m.edges[j]-m.edges[i] <= net; i-- {
			if net-(m.edges[j]-m.edges[i]) >= s.Snap || i == 0 && !s.LeftSeam {
				continue
			}
			y := m.column(fmt.Sprintf("y%d_%d", i, j), true)
			m.row(map[string]int64{y: 1, x(j): -1}, "<=", 0)
			if i > 0 {
				m.row(map[string]int64{y: 1, x(i): -1}, "<=", 0)
			}
			for k := i + 1; k < j; k++ {
				if over[k] == nil {
					over[k] = map[string]int64{x(k): 1}
				}
				over[k][y] = 1
			}
		}
	}
	for _, sum := range over {
		m.row(sum, "<=", 1)
	}
}

// slivers adds the columns that say what sheets lack to the width p, and their sum to weight.
func (m *model) slivers(p int64, name string, weight map[string]int64) {
	if p == 0 {
		return
	}
	var breaks []int64
	for _, e := range m.edges {
		breaks = append(breaks, e, e-p)
	}
	slices.Sort(breaks)
	breaks = slices.Compact(breaks)
	// the windows [u, u + p) with lo < u <= hi hold the edges e with hi <= e <= lo + p
	for i := 1; i < len(breaks); i++ {
		lo, hi := breaks[i-1], breaks[i]
		row := map[string]int64{}
		ends := int64(0)
		for k, e := range m.edges {
			switch {
			case e < hi || e > lo+p:
			case k == 0 || k == len(m.edges)-1:
				ends++
			default:
				row[x(k)] = 1
			}
		}
		if int64(len(row))+ends < 2 {
			continue
		}
		z := m.column(fmt.Sprintf("%s%d", name, i), false)
		row[z] = -1
		m.row(row, "<=", 1-ends)
		weight[z] += hi - lo
	}
}

// score adds the items in the order of the aim.
func (m *model) score() {
	s := m.c.Span
	sum := func(of func(oracletest.Place) int64) map[string]int64 {
		weight := map[string]int64{}
		for i := 1; i < len(m.edges)-1; i++ {
			if w := of(m.places[i]); w != 0 {
				weight[x(i)] = w
			}
		}
		return weight
	}
	// of the right seams of inner sheets that are not whole: x - f - y
	jumps := func(of func(oracletest.Place) int64) map[string]int64 {
		weight := sum(of)
		for name := range m.of {
			switch name[0] {
			case 'f':
				if w := weight["x"+name[1:]]; w != 0 && !s.LeftSeam {
					weight[name] = -w
				}
			case 'y':
				if w := weight["x"+name[strings.Index(name, "_")+1:]]; w != 0 {
					weight[name] = -w
				}
			}
		}
		return weight
	}
	tall := func(p oracletest.Place) int64 { return number(p.Tall) }
	tallMain := func(p oracletest.Place) int64 { return number(p.Tall && p.Main) }
	feet := func(p oracletest.Place) int64 { return p.Feet }

	bends := item{name: "bends", constant: m.closing.Bends, weight: sum(func(p oracletest.Place) int64 { return p.Bends })}
	if m.right()-m.left() >= s.LeastWidth {
		m.slivers(s.LeastWidth, "a", bends.weight)
	}
	edges := item{name: "edges", constant: m.closing.Edges, weight: sum(func(p oracletest.Place) int64 { return p.Edges })}
	should := item{name: "should", constant: m.closing.Should, weight: sum(func(p oracletest.Place) int64 { return p.Should })}
	if s.PreferWidth >= s.LeastWidth {
		m.slivers(s.PreferWidth, "b", should.weight)
	}
	sheets := item{name: "sheets", constant: 1, weight: sum(func(oracletest.Place) int64 { return 1 })}
	seen := item{name: "seen", constant: m.closing.Feet, weight: sum(feet)}
	if m.c.Aim == seam.Even {
		m.items = []item{bends, edges, sheets, should, m.squares(), seen}
		return
	}
	narrowMain := item{name: "narrow on main", weight: jumps(tallMain)}
	narrow := item{name: "narrow", weight: jumps(tall)}
	jump := item{name: "jump", weight: jumps(feet)}
	narrowJump, sliver := item{name: "jump of narrow"}, item{name: "sliver", weight: m.slim()}
	if left, right := m.raw(); left || right {
		narrowJump.weight = jumps(func(p oracletest.Place) int64 { return number(p.Tall) * p.Feet })
	}
	m.items = []item{bends, edges, narrowMain, narrow, sheets, narrowJump, sliver, jump, should, seen, m.difference()}
	if m.c.Aim == seam.Fewest {
		m.items = []item{bends, edges, sheets, narrowMain, narrow, narrowJump, sliver, jump, should, seen, m.difference()}
	}
}

// raw tells which ends are raw.
func (m *model) raw() (left, right bool) {
	s := m.c.Span
	return !s.Closed && !s.LeftSeam, !s.Closed && !s.RightSeam
}

// slim is what the sheets at raw ends lack of being no slivers, by the seams beside the ends.
func (m *model) slim() map[string]int64 {
	weight := map[string]int64{}
	add := func(name string, i int, width int64) {
		if w := oracletest.SliverLacks(&m.c.Span, width); w > 0 && m.places[i].Tall && m.has(name) {
			weight[name] = w
		}
	}
	left, right := m.raw()
	for i := 1; i < len(m.edges)-1; i++ {
		if left {
			add("f"+strconv.Itoa(i), i, m.edges[i]-m.left())
		}
		if right {
			add("l"+strconv.Itoa(i), i, m.right()-m.edges[i])
		}
	}
	return weight
}

func number(is bool) int64 {
	if is {
		return 1
	}
	return 0
}

// difference adds d, at least first - last and last - first.
func (m *model) difference() item {
	s := m.c.Span
	it := item{name: "difference", weight: map[string]int64{}}
	if !s.OneWall || s.Closed || s.LeftSeam || s.RightSeam {
		return it
	}
	d := m.column("d", false)
	more, less := map[string]int64{d: -1}, map[string]int64{d: -1}
	for i := 1; i < len(m.edges)-1; i++ {
		if f := "f" + strconv.Itoa(i); m.has(f) {
			more[f], less[f] = m.edges[i]-m.left(), m.left()-m.edges[i]
		}
		if l := "l" + strconv.Itoa(i); m.has(l) {
			more[l], less[l] = m.edges[i]-m.right(), m.right()-m.edges[i]
		}
	}
	m.row(more, "<=", 0)
	m.row(less, "<=", 0)
	it.weight[d] = 1
	return it
}

func (m *model) has(name string) bool { _, known := m.of[name]; return known }

// squares adds v for every window of p lines without a seam, counted in squares of a grid step.
func (m *model) squares() item {
	s := m.c.Span
	it := item{name: "unevenness", constant: (m.right() - m.left()) * s.Snap, weight: map[string]int64{}, scale: s.Snap * s.Snap}
	first, inner, last := m.reach()
	for p := 1; int64(p)*s.Snap < max(first, inner, last); p++ {
		for i := 1; i+p <= len(m.edges)-1; i++ {
			row := map[string]int64{}
			for k := i; k < i+p; k++ {
				row[x(k)] = 1
			}
			v := m.column(fmt.Sprintf("v%d_%d", p, i), false)
			row[v] = 1
			m.row(row, ">=", 1)
			it.weight[v] = 2
		}
	}
	return it
}

// minimise runs glpsol and gives the least value of an item; the solution's own seams must score the same.
func (m *model) minimise(t testing.TB, ctx context.Context, program string, it item) int64 {
	if len(it.weight) == 0 {
		return it.constant
	}
	folder := t.TempDir()
	problem, solution := filepath.Join(folder, "span.lp"), filepath.Join(folder, "span.sol")
	require.NoError(t, os.WriteFile(problem, m.text(it), 0o644))
	start := time.Now()
	out, err := exec.CommandContext(ctx, program, "--lp", problem, "--write", solution).CombinedOutput()
	m.spent += time.Since(start)
	require.NoError(t, err, "%s: %s", it.name, tail(out))
	written, err := os.ReadFile(solution)
	require.NoError(t, err, "%s", tail(out))

	value, seams := math.NaN(), []int64{}
	for line := range strings.Lines(string(written)) {
		words := strings.Fields(line)
		switch {
		case len(words) == 6 && words[0] == "s" && words[1] == "mip":
			require.Equal(t, "o", words[4], "%s: no optimum\n%s", it.name, tail(out))
			value, err = strconv.ParseFloat(words[5], 64)
			require.NoError(t, err)
		case len(words) == 3 && words[0] == "j":
			number, err := strconv.Atoi(words[1])
			require.NoError(t, err)
			if name := m.columns[number-1]; name[0] == 'x' && words[2] == "1" {
				line, err := strconv.Atoi(name[1:])
				require.NoError(t, err)
				seams = append(seams, m.edges[line])
			}
		}
	}
	require.InDelta(t, math.Round(value), value, 1e-4, "%s: a sum of whole numbers", it.name)
	least := int64(math.Round(value))*cmp.Or(it.scale, 1) + it.constant
	require.Equal(t, least, m.itemOf(t, it.name, seams), "%s: what the rows say of %v", it.name, seams)
	return least
}

// text writes the program with one item to be the least.
func (m *model) text(it item) []byte {
	var text bytes.Buffer
	text.WriteString("Minimize\n obj:")
	for i, name := range m.columns { // all of them, so that glpsol numbers the columns as we do
		if i%12 == 11 {
			text.WriteString("\n")
		}
		fmt.Fprintf(&text, " %+d %s", it.weight[name], name)
	}
	text.WriteString("\nSubject To\n" + strings.Join(m.rows, "\n") + "\nBinary\n")
	for _, name := range m.columns {
		if m.binary[name] {
			text.WriteString(name + "\n")
		}
	}
	text.WriteString("End\n")
	return text.Bytes()
}

// itemOf scores a layout that glpsol found and gives one item of it.
func (m *model) itemOf(t testing.TB, name string, seams []int64) int64 {
	s, closing := m.c.Span, -1
	if s.Closed {
		seams = append(slices.Clone(seams), m.left())
		for i := range seams {
			seams[i] %= s.Period
		}
		slices.Sort(seams)
		closing = slices.Index(seams, m.left())
	}
	score, ok := oracletest.Score(s, seams, closing)
	require.True(t, ok, "glpsol's layout %v breaks a hard limit", seams)
	return map[string]int64{
		"bends": score.Bends, "edges": score.Edges, "narrow on main": score.NarrowMain, "narrow": score.Narrow,
		"sheets": score.Sheets, "jump of narrow": score.NarrowJump, "sliver": score.Sliver, "jump": score.Jump, "should": score.Should, "seen": score.Seen,
		"difference": score.Difference, "unevenness": int64(score.Unevenness.Lo),
	}[name]
}

func tail(out []byte) string { return string(out[max(0, len(out)-1500):]) }
