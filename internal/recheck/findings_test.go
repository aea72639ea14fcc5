package recheck

import (
	"fmt"
	"math"
	"math/big"
	"sort"
	"strings"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
)

func trimmed(decimal string) string {
	if strings.Contains(decimal, ".") {
		decimal = strings.TrimRight(strings.TrimRight(decimal, "0"), ".")
	}
	return decimal
}

// about are the codes that seams and sheets earn one by one: each is due exactly as often as it is found.
var about = map[string]bool{"return-short": true, "leg-thin": true, "clear-short": true, "reveal-short": true, "kept-clear": true, "return-close": true,
	"leg-close": true, "clear-close": true, "plate-close": true, "sheet-thin": true, "sheet-slim": true, "narrow-sheet": true}

// findings holds the findings to what is due, and their figures to what they measure.
func (c *checker) findings() {
	var got []string
	counts := map[string]int{}
	for _, f := range c.p.Findings {
		measured, required := int64(-1), int64(-1)
		if f.Measured != nil {
			measured = units(c.t, *f.Measured)
		}
		if f.Required != nil {
			required = units(c.t, *f.Required)
		}
		counts[f.Code]++
		if about[f.Code] {
			c.settle(f, measured, required, &got)
			continue
		}
		c.measured(f, measured, required)
	}
	for _, w := range c.want {
		assert.Fail(c.t, "a finding is missing", w)
	}
	for _, g := range got {
		assert.Fail(c.t, "a finding is not due", g)
	}
	c.counted(counts)
}

// settle takes a finding off those that are due.
func (c *checker) settle(f printedFinding, measured, required int64, left *[]string) {
	need := fmt.Sprint(required)
	if f.Required == nil {
		need = "-"
	}
	key := fmt.Sprintf("%s|%s|%d|%s|", f.Code, f.Place, measured, need)
	for i, w := range c.want {
		rest, ok := strings.CutPrefix(w, key)
		if ok && strings.Contains(f.Message, rest) {
			c.want = append(c.want[:i], c.want[i+1:]...)
			return
		}
	}
	*left = append(*left, key+f.Message)
}

// measured recomputes the figures of the other findings.
func (c *checker) measured(f printedFinding, measured, required int64) {
	r := c.room
	switch f.Code {
	case "sheet-short":
		assert.Equal(c.t, int64(r.Veneer.Length), required, f.Message)
		assert.Greater(c.t, measured, required, f.Message)
		c.some(f, func(_ *printedRun, s *printedSheet) bool { return c.calls(f, s) && units(c.t, s.CutLength) == measured })
	case "figure-steps":
		assert.Equal(c.t, int64(r.Veneer.Length), required)
		assert.Contains(c.t, c.stepping(), fmt.Sprintf("%s: %d", f.Place, measured), f.Message)
	case "piece-thin":
		assert.Equal(c.t, int64(r.Rules.LeastWidth), required)
		c.some(f, func(_ *printedRun, s *printedSheet) bool {
			high, wide := c.greatest(s)
			return c.calls(f, s) && max(min(high, wide)-measured, measured-min(high, wide)) <= 1
		})
	case "closing-seam":
		ok := false
		for _, p := range c.p.Runs {
			for _, s := range p.Seams {
				ok = ok || s.Closing && f.Place == "seam "+c.seamName(&p, &s) && units(c.t, s.Seen) == measured
			}
		}
		assert.True(c.t, ok, f.Message)
	case "misclosure", "closes-badly", "closes-within":
		c.closure(f, measured, required)
	case "end-close", "room-made":
		assert.Equal(c.t, int64(r.Rules.CornerReturn), required)
		assert.Less(c.t, measured, required)
	case "reveal-shallow", "head-and-sill", "reveals-overlap":
		c.reveal(f, measured, required)
	case "skew-eats-overlap":
		c.skew(f, measured, required)
	case "nearly":
		assert.Positive(c.t, measured, f.Message)
		assert.LessOrEqual(c.t, measured, int64(203200), "no change is over an inch: "+f.Message)
		assert.Empty(c.t, r.Hung, f.Message)
	case "pin-to-grid":
		assert.Positive(c.t, measured)
		assert.LessOrEqual(c.t, 2*measured, int64(r.Rules.Snap), f.Message)
	}
}

// some holds that a sheet somewhere is as asked.
func (c *checker) some(f printedFinding, is func(*printedRun, *printedSheet) bool) {
	for i := range c.p.Runs {
		for k := range c.p.Runs[i].Sheets {
			if is(&c.p.Runs[i], &c.p.Runs[i].Sheets[k]) {
				return
			}
		}
	}
	assert.Fail(c.t, "no sheet is as the finding says", f.Message)
}

// calls reports whether a finding is about a sheet.
func (c *checker) calls(f printedFinding, s *printedSheet) bool {
	if s.Number != nil {
		return f.Place == fmt.Sprintf("sheet %d", *s.Number)
	}
	return f.Place == fmt.Sprintf("sheet at place %d", s.Place)
}

// seamName is what a seam is called: the numbers of the sheets that hang at its left and right, from the lowest up, and its wall.
func (c *checker) seamName(r *printedRun, s *printedSeam) string {
	side := func(place int) string {
		var pieces, all []string
		for i := range r.Sheets {
			x := &r.Sheets[i]
			if x.Place != place {
				continue
			}
			text := "?"
			if x.Number != nil {
				text = fmt.Sprint(*x.Number)
			}
			if all = append(all, text); len(x.Pieces) > 0 {
				pieces = append(pieces, text)
			}
		}
		switch {
		case pieces != nil:
			return strings.Join(pieces, "+")
		case all != nil:
			return strings.Join(all, "+")
		}
		return "?"
	}
	return side(s.LeftSheet) + " | " + side(s.RightSheet) + ", " + s.Wall
}

// seamAfter is the name of the seam right of a place.
func (c *checker) seamAfter(place int) string {
	for i := range c.p.Runs {
		for k := range c.p.Runs[i].Seams {
			if s := &c.p.Runs[i].Seams[k]; s.LeftSheet == place {
				return c.seamName(&c.p.Runs[i], s)
			}
		}
	}
	return "of no place"
}

// mark is what shares one register: the sheets of a course of a flitch that hang the same way up.
type mark struct {
	flitch string
	course int
	turned bool
}

// marks is, for all sheets that share a register, the greatest part of them above the level line and the greatest below it.
func (c *checker) marks() map[mark][2]int64 {
	out := map[mark][2]int64{}
	for _, p := range c.p.Runs {
		for _, s := range p.Sheets {
			if p.Axis == "up" || units(c.t, s.CutLength) == 0 {
				continue
			}
			k := mark{"", s.Course, s.Turned}
			if s.Flitch != nil {
				k.flitch = *s.Flitch
			}
			a, b := units(c.t, s.Above), units(c.t, s.Below)
			if m, ok := out[k]; ok {
				a, b = max(a, m[0]), max(b, m[1])
			}
			out[k] = [2]int64{a, b}
		}
	}
	return out
}

// registers recomputes where the sheets that share a register are marked.
func (c *checker) registers() {
	all := c.marks()
	require.Len(c.t, c.p.Registers, len(all), "one register for each course of each flitch")
	for _, r := range c.p.Registers {
		k := mark{"", r.Course, r.Turned}
		if r.Flitch != nil {
			k.flitch = *r.Flitch
		}
		m, ok := all[k]
		require.True(c.t, ok, "%v", k)
		c.is(m[0]+m[1], r.Need, "what the register of %v needs", k)
		end, at, got := "head", m[0], r.Mark // from the end that hangs up to the level line
		if m[1] < 0 {
			end, at, got = "foot", -m[1], r.Over // from the level line up to the end that hangs down
		}
		if k.turned {
			end = map[string]string{"head": "foot", "foot": "head"}[end]
		}
		assert.Equal(c.t, end, r.From, "%v", k)
		require.NotNil(c.t, got, "%v", k)
		assert.True(c.t, r.Mark == nil || r.Over == nil, "one of the two: %v", k)
		c.is(at, *got, "register of %v", k)
	}
}

// stepping are the places of the registers that do not fit a sheet, each with what it needs.
func (c *checker) stepping() []string {
	var out []string
	all := c.marks()
	for k, m := range all {
		if m[0]+m[1] <= int64(c.room.Veneer.Length) {
			continue
		}
		place := "room"
		if k.flitch != "" {
			place = "flitch " + k.flitch
		}
		for o := range all {
			if o.flitch == k.flitch && o.course != k.course {
				place += fmt.Sprintf(", course %d", k.course)
				break
			}
		}
		out = append(out, fmt.Sprintf("%s: %d", place, m[0]+m[1]))
	}
	return out
}

// greatest are the greatest height straight up and the greatest width of a sheet's pieces: between two neighbouring corners of an
// outline, along its axis, each height is a line, and told by two places.
func (c *checker) greatest(s *printedSheet) (high, wide int64) {
	for _, p := range s.Pieces {
		var xs []float64
		for _, q := range p.Outline {
			xs = append(xs, float64(units(c.t, q[0])))
		}
		sort.Float64s(xs)
		wide = max(wide, int64(xs[len(xs)-1]-xs[0]))
		heights := func(x float64) (list []float64) {
			for i, a := range p.Outline {
				b := p.Outline[(i+1)%len(p.Outline)]
				ax, az, bx, bz := float64(units(c.t, a[0])), float64(units(c.t, a[1])), float64(units(c.t, b[0])), float64(units(c.t, b[1]))
				if (ax < x) != (bx < x) {
					list = append(list, az+(bz-az)*(x-ax)/(bx-ax))
				}
			}
			sort.Float64s(list)
			return list
		}
		for i := 0; i+1 < len(xs); i++ {
			step := (xs[i+1] - xs[i]) / 3
			if step == 0 {
				continue
			}
			at, on := heights(xs[i]+step), heights(xs[i]+2*step)
			for k := 0; k+1 < len(at); k += 2 {
				a, b := at[k+1]-at[k], on[k+1]-on[k]
				high = max(high, int64(math.Round(2*a-b)), int64(math.Round(2*b-a)))
			}
		}
	}
	return high, wide
}

// closure recomputes how far the measured walls miss closing: start at the first wall, turn right at inside corners, left
// at outside ones.
func (c *checker) closure(f printedFinding, measured, required int64) {
	gap, girth := gap(c.room)
	assert.InDelta(c.t, gap, measured, 1, f.Message)
	limit := girth / 300 // 1 in over 25 ft
	inch := 203_200.0
	switch f.Code {
	case "misclosure":
		assert.Greater(c.t, gap, limit)
		assert.InDelta(c.t, limit, required, 1)
	case "closes-badly":
		assert.True(c.t, gap > inch && gap <= limit+1, f.Message)
		assert.InDelta(c.t, inch, required, 0)
	default:
		assert.LessOrEqual(c.t, gap, inch+1)
		assert.Nil(c.t, f.Required)
	}
}

// gap walks round the walls as complex numbers: what is left is the closing error.
func gap(r *room.Room) (gap, girth float64) {
	at, way := complex(0, 0), complex(1, 0)
	for i := range r.Walls {
		w := &r.Walls[i]
		at += way * complex(float64(w.Length), 0)
		girth += float64(w.Length)
		a := w.Angle / 180 * math.Pi
		switch w.Corner {
		case room.Outside:
			way *= complex(math.Cos(a), math.Sin(a))
		case room.Inside, room.None:
			way *= complex(math.Cos(a), -math.Sin(a))
		}
	}
	return math.Hypot(real(at), imag(at)), girth
}

// reveal recomputes what is said about wrapped jambs.
func (c *checker) reveal(f printedFinding, measured, required int64) {
	for _, l := range c.lines {
		for _, o := range l.openings {
			if f.Place != o.Kind.Named(o.Name) {
				continue
			}
			assert.True(c.t, o.WrapReveal)
			switch f.Code {
			case "reveal-shallow":
				assert.Equal(c.t, []int64{int64(o.Reveal), int64(c.room.Rules.CornerReturn)}, []int64{measured, required})
			case "head-and-sill":
				assert.Equal(c.t, int64(o.Reveal), measured)
			case "reveals-overlap":
				assert.Equal(c.t, []int64{o.right - o.left, 2 * int64(o.Reveal)}, []int64{measured, required})
			}
			return
		}
	}
	assert.Fail(c.t, "no such opening", f.Place)
}

// skew recomputes how far a sheet goes askew round its corners.
func (c *checker) skew(f printedFinding, measured, required int64) {
	assert.Equal(c.t, int64(c.room.Veneer.Overlap-c.room.Rules.LeastOverlap), required)
	c.some(f, func(p *printedRun, s *printedSheet) bool {
		sum := int64(0)
		for _, b := range c.lines[c.index(p)].corners {
			for _, at := range s.Bends {
				if b.wrapped && units(c.t, at) == b.at {
					sum += b.lean - b.leanNext
				}
			}
		}
		return c.calls(f, s) && max(sum, -sum) == measured && measured > required
	})
}

func (c *checker) index(p *printedRun) int {
	for i := range c.p.Runs {
		if &c.p.Runs[i] == p {
			return i
		}
	}
	return -1
}

// counted holds how often findings stand that the room as a whole earns.
func (c *checker) counted(counts map[string]int) {
	closed := 0
	if c.room.Space.Closed {
		closed = 1
	}
	assert.Equal(c.t, closed, counts["misclosure"]+counts["closes-badly"]+counts["closes-within"], "one word on how the walls close")
	short, closing, gaps, skewed, thin := 0, 0, 0, 0, 0
	least := int64(c.room.Rules.LeastWidth)
	allowed := int64(c.room.Veneer.Overlap - c.room.Rules.LeastOverlap)
	for i := range c.p.Runs {
		p := &c.p.Runs[i]
		for k := range p.Sheets {
			s := &p.Sheets[k]
			if units(c.t, s.CutLength) > int64(c.room.Veneer.Length) {
				short++
			}
			if units(c.t, s.CutLength) == 0 {
				gaps++
			}
			if high, wide := c.greatest(s); high > 0 && min(high, wide) < least && units(c.t, s.Width) >= least {
				thin++
			}
			sum := int64(0)
			for _, b := range c.lines[i].corners {
				for _, at := range s.Bends {
					if b.wrapped && units(c.t, at) == b.at && (k == 0 || p.Sheets[k-1].Place != s.Place) {
						sum += b.lean - b.leanNext
					}
				}
			}
			if max(sum, -sum) > allowed {
				skewed++
			}
		}
		for _, s := range p.Seams {
			if s.Closing {
				closing++
			}
		}
	}
	if len(c.room.Hung) == 0 {
		assert.Equal(c.t, short, counts["sheet-short"], "sheets that are too short")
		assert.Equal(c.t, closing, counts["closing-seam"])
		assert.Equal(c.t, thin, counts["piece-thin"], "sheets of which little is on the wall")
		assert.Equal(c.t, skewed, counts["skew-eats-overlap"])
	}
	assert.Equal(c.t, len(c.stepping()), counts["figure-steps"], "registers whose figure steps")
	assert.Equal(c.t, gaps, counts["sheet-in-gap"], "sheets in gaps")
}

// totals recomputes the sums of the room.
func (c *checker) totals() {
	t := c.p.Totals
	sheets, laid := 0, map[string]int{}
	for _, p := range c.p.Runs {
		sheets += len(p.Sheets)
		for _, s := range p.Sheets {
			if s.Flitch != nil {
				laid[*s.Flitch]++
			}
		}
	}
	assert.Equal(c.t, sheets, t.Sheets)
	spares := func(n int) int {
		share := new(big.Rat).SetFloat64(c.room.Rules.SpareShare)
		part, _ := new(big.Rat).SetString(share.FloatString(6))
		part.Mul(part, big.NewRat(int64(n), 1))
		up := new(big.Int).Add(part.Num(), new(big.Int).Sub(part.Denom(), big.NewInt(1)))
		return max(2, int(up.Quo(up, part.Denom()).Int64()))
	}
	want := 0
	if len(c.room.Flitches) == 0 {
		want = spares(sheets)
	}
	for _, n := range laid {
		want += spares(n)
	}
	assert.Equal(c.t, want, t.Spares, "spares")
	assert.Equal(c.t, squareMetres(c.net2), t.NetArea.String(), "net area")
	assert.Equal(c.t, squareMetres(c.gross), t.GrossArea.String(), "gross area")
	// paste for what hangs, both layers of an overlap, and a tenth that stays in the tray (common practice, no source)
	paste := new(big.Rat).Add(c.net2, c.laps)
	c.pail(paste.Mul(paste, big.NewRat(11, 10)), c.room.Paste, t.Paste)
	// primer for the covering and for 2 in under the trims at floor and ceiling
	primer := new(big.Rat).Mul(c.ends, big.NewRat(4*203_200, 1))
	c.pail(primer.Add(primer, c.net2), c.room.Primer, t.Primer)
	c.numbers()
}

// pail recomputes how much of a pail an area takes, up to the next tenth of its unit.
func (c *checker) pail(area *big.Rat, label room.Coverage, got *amount) {
	require.Equal(c.t, label.Given, got != nil)
	if got == nil {
		return
	}
	side := int64(8_000_000) // a metre
	if label.Area == "sq ft" {
		side = 12 * 203_200
	}
	area.Quo(area, new(big.Rat).SetInt64(side)).Quo(area, new(big.Rat).SetInt64(side))
	f, _ := area.Float64()
	assert.InDelta(c.t, math.Ceil(f/label.Amount*10-1e-6)/10, got.Amount, 1e-9)
	assert.Equal(c.t, label.Volume, got.Unit)
}

// numbers holds the numbers of the sheets to what the flitches have: up with the place or down as the flitch is laid, no damaged one, no spare one.
func (c *checker) numbers() {
	type name struct {
		flitch string
		number int
	}
	var usable []name
	for _, f := range c.room.Flitches {
		out := map[int]bool{}
		for _, n := range append(append([]int{}, f.Damaged...), f.Spare...) {
			out[n] = true
		}
		sheets := append([]int{}, f.Sheets...)
		if f.From == "last" {
			sort.Sort(sort.Reverse(sort.IntSlice(sheets)))
		}
		for _, n := range sheets {
			if !out[n] {
				usable = append(usable, name{f.Number, n})
			}
		}
	}
	var got []printedSheet
	for _, p := range c.p.Runs {
		got = append(got, p.Sheets...)
	}
	sort.SliceStable(got, func(i, j int) bool { return got[i].Place < got[j].Place })
	next := 0
	columns := map[int]int{}
	for _, s := range got {
		columns[s.Place]++
	}
	for i, s := range got {
		switch {
		case len(c.room.Flitches) == 0:
			require.NotNil(c.t, s.Number)
			assert.Equal(c.t, i+1, *s.Number)
			assert.Nil(c.t, s.Flitch)
		case s.Number == nil:
			assert.Nil(c.t, s.Flitch)
			assert.Greater(c.t, next+columns[s.Place], len(usable), "a sheet has no number only where its column takes more than are left")
		case len(c.room.Hung) > 0: // those that hang have the numbers that were hung
		default:
			k := next
			for k < len(usable) && usable[k] != (name{*s.Flitch, *s.Number}) {
				k++
			}
			require.Less(c.t, k, len(usable), "sheet %s %d is one that can be laid, and comes after those before it", *s.Flitch, *s.Number)
			assert.True(c.t, k == next || usable[k].flitch != usable[next].flitch, "only a change of flitch leaves sheets out")
			next = k + 1
		}
	}
}
