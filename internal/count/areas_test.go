package count

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/shape"
)

// exact reports what is wrong with the areas of a count: they have to add up to the last unit, agree with what the
// layout says and with the covering of the walls, and every part has to be one.
func exact(c *Count) []string {
	var wrong []string
	check := func(ok bool, format string, args ...any) {
		if !ok {
			wrong = append(wrong, fmt.Sprintf(format, args...))
		}
	}
	p := c.Plan
	var sum length.Area
	for i, a := range c.Areas.Of {
		sum += a
		check(a >= 0 || Part(i) == Slopes, "%s is less than nothing: %d", Part(i), a)
	}
	check(sum == c.Areas.Gross, "the parts come to %d, gross is %d", sum, c.Areas.Gross)
	check(c.Areas.Gross == 2*p.Totals.GrossArea, "gross is %d, the layout says %d", c.Areas.Gross, 2*p.Totals.GrossArea)
	check(c.Areas.Of[Net]/2 == p.Totals.NetArea, "net is %d, the layout says %d", c.Areas.Of[Net]/2, p.Totals.NetArea)
	var walls length.Area
	for _, w := range c.Walls {
		walls += w.Twice
	}
	check(walls == c.Areas.Of[Net], "the walls come to %d, net is %d", walls, c.Areas.Of[Net])
	check(c.Areas.StockEnds() >= 0, "less than no stock ends")
	begin := 0
	for _, w := range c.Walls {
		begin += w.Begin
	}
	check(begin == c.Sheets, "%d sheets begin on walls, %d are laid", begin, c.Sheets)
	for _, f := range c.Flitches {
		all := slices.Concat(f.Damaged, f.Spare, f.Laid, f.Gaps, f.Left)
		slices.Sort(all)
		check(slices.Equal(all, f.Delivered), "flitch %s: %v delivered, %v told of", f.Number, f.Delivered, all)
	}
	if len(c.Flitches) > 0 {
		check(len(c.All.Laid)+len(c.All.Gaps)+c.All.Short == c.Sheets, "%d on walls, %d in gaps, %d short of %d", len(c.All.Laid), len(c.All.Gaps), c.All.Short, c.Sheets)
	}
	return append(wrong, bare(c)...)
}

// bare looks at sheets one by one: one that no opening touches loses nothing to openings, and every cut-out is inside
// its sheet.
func bare(c *Count) []string {
	var wrong []string
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		beds := measure(c.Plan, r)
		for k := range r.Sheets {
			s := &r.Sheets[k]
			var a Areas
			a.add(c.room(), r, s, beds[k])
			if touched(r, s) || s.CutLength == 0 {
				continue
			}
			if a.Of[Openings] != 0 {
				wrong = append(wrong, fmt.Sprintf("sheet at place %d loses %d to openings and has none", s.Place, a.Of[Openings]))
			}
		}
	}
	for _, cut := range c.Cuts {
		for _, h := range cut.Holes {
			if h.From < 0 || h.To > cut.Width || h.From >= h.To || h.Low < -cut.Below || h.High > cut.Above || h.Low >= h.High {
				wrong = append(wrong, fmt.Sprintf("cut-out %s of sheet at place %d is outside it", h.Name, cut.Place))
			}
		}
		for _, b := range cut.Bends {
			if b.At <= 0 || b.At >= cut.Width {
				wrong = append(wrong, fmt.Sprintf("bend %s of sheet at place %d is outside it", b.Name, cut.Place))
			}
		}
	}
	return wrong
}

// touched reports whether an opening reaches into the width of a sheet.
func touched(r *layout.Run, s *layout.Sheet) bool {
	if r.Up {
		return len(r.Openings)+len(r.Line.Room.Walls[r.Walls[0].Wall].Bare) > 0
	}
	found := false
	for _, o := range r.Openings {
		Turns(r, func(turn L) { found = found || o.Left+turn < s.Right && s.Left < o.Right+turn })
	}
	return found
}

func TestAreasAddUpOnSamples(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		t.Run(name, func(t *testing.T) { assert.Empty(t, exact(Of(p))) })
	}
}

func TestAreasAddUpOnRandomRooms(t *testing.T) {
	t.Parallel()
	n := effort.Of(50, 500)
	seen := map[string]int{}
	roomtest.RandomPlans(t, n, func(seed uint64, text string, p *layout.Plan) {
		c := Of(p)
		if wrong := exact(c); len(wrong) > 0 {
			t.Errorf("seed %d: %s\n%s", seed, strings.Join(wrong, "\n"), text)
		}
		for i, a := range c.Areas.Of {
			if a != 0 {
				seen[Part(i).String()]++
			}
		}
	})
	for i := range parts {
		assert.Greater(t, seen[i.String()], n/100, "the random rooms have too little of: %s", i)
	}
}

// TestNetIsTheCovering holds what is on the wall against the covering of the walls, which is cut by nobody: for rooms
// whose walls are wholly covered.
func TestNetIsTheCovering(t *testing.T) {
	for name, p := range roomtest.SamplePlans(t) {
		if p.Room.Veneer.Horizontal {
			continue
		}
		t.Run(name, func(t *testing.T) {
			var covering length.Area
			for i := range p.Runs {
				for _, st := range p.Runs[i].Walls {
					var cuts []L
					for _, s := range p.Runs[i].Seams {
						if s.Wall == st.Wall {
							cuts = append(cuts, s.X)
						}
					}
					slices.Sort(cuts)
					covering += shape.CoveringArea(layout.Covering(p.Room, st), cuts, p.Runs[i].Joints)
				}
			}
			assert.InDelta(t, float64(covering), float64(Of(p).Areas.Of[Net]), 2*float64(length.Millimetre)*float64(length.Metre),
				"but for what a rounded point moves: 1 mm by 1 m")
		})
	}
}
