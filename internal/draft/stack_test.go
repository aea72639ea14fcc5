package draft

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// drawn draws stacks on an empty page and returns what overlaps there.
func drawn(t interface{ Logf(string, ...any) }, stacks ...*Stack) []scene.Overlap {
	p := scene.NewPage("Z-201", "", 5000, 5000)
	s := NewSpace(scene.Box{})
	for _, st := range stacks {
		st.Draw(&p.Group, Office(), s)
	}
	return scene.Overlaps(p, 0.5)
}

// figures counts the figures of a page and gives those under 2.5 mm, the least height of ISO 3098 that is in use for them.
func figures(p *scene.Page) (count int, small []string) {
	p.Texts(func(t *scene.Text) {
		count++
		if t.Height < 2.5 {
			small = append(small, t.String)
		}
	})
	return count, small
}

func TestChainsKeepEveryFigureClear(t *testing.T) {
	style := length.StyleOf(length.Inches)
	rapid.Check(t, func(t *rapid.T) {
		upright := rapid.Bool().Draw(t, "upright")
		out := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "out")
		st := &Stack{Upright: upright, Edge: 2500, Out: out}
		want := 0
		for i := range rapid.IntRange(1, 3).Draw(t, "tiers") {
			n := rapid.IntRange(1, 14).Draw(t, "parts")
			at := []length.Length{0}
			for range n {
				part := rapid.IntRange(1, 600).Draw(t, "sixteenths")
				at = append(at, at[len(at)-1]+length.Length(part)*length.Inch/16)
			}
			tier := Tier{Name: fmt.Sprintf("TIER %d", i+1), Figures: style.Chain(at)}
			for _, a := range at {
				tier.Marks = append(tier.Marks, 2000+a.MM()/24)
			}
			if rapid.Bool().Draw(t, "running") && !upright {
				tier.Running = true
				tier.Figures = nil
				for _, a := range at {
					tier.Figures = append(tier.Figures, style.Format(a))
				}
			}
			want += len(tier.Figures) + 1
			st.Tiers = append(st.Tiers, tier)
		}
		p := scene.NewPage("Z-201", "", 5000, 5000)
		st.Draw(&p.Group, Office(), NewSpace(scene.Box{}))
		count, small := figures(p)
		if count != want || len(small) > 0 {
			t.Fatalf("%d of %d figures, too small %q", count, want, small)
		}
		for _, o := range scene.Overlaps(p, 0.5) {
			t.Fatalf("%v", o)
		}
	})
}

func TestAFigureThatFitsStandsOverTheMiddleOfItsStretch(t *testing.T) {
	tier := Tier{Marks: []float64{100, 140}, Figures: []string{`3'-0"`}}
	p := tier.lay(Office(), false, -1)[0]
	assert.Equal(t, 120.0, p.along)
	assert.Equal(t, 1.0, p.in, "about 1 mm above the line: ISO 129-1 as textbooks restate it")
	assert.Zero(t, p.level)
}

func TestAFigureThatDoesNotFitGoesOutOnALeaderAtFortyFiveDegrees(t *testing.T) {
	tier := Tier{Marks: []float64{100, 103}, Figures: []string{`5 3/4"`}}
	p := tier.lay(Office(), false, 1)[0]
	require.Equal(t, 1, p.level)
	a, b := p.lead[0], p.lead[1]
	assert.Equal(t, b.out-a.out, max(b.along-a.along, a.along-b.along))
	assert.Equal(t, 5.0, b.out)
}

func TestAFigureGivesWayToALineThatPasses(t *testing.T) {
	tier := Tier{Marks: []float64{100, 160}, Figures: []string{`5'-0"`}, through: []float64{130}}
	p := tier.lay(Office(), false, -1)[0]
	assert.Zero(t, p.level)
	assert.True(t, p.to < 130 || p.from > 130)
}

func TestTheNextTierStandsClearOfFiguresThatWentOut(t *testing.T) {
	st := &Stack{Edge: 100, Out: 1, Tiers: []Tier{
		{Marks: []float64{100, 103, 106, 109}, Figures: []string{`5 3/4"`, `6 3/4"`, `7 3/4"`}},
		{Marks: []float64{100, 109}, Figures: []string{`20 1/4"`}},
	}}
	st.Lay(Office())
	assert.Equal(t, 109.0, st.Tiers[0].line)
	assert.Greater(t, st.Tiers[1].line, 109+7.0)
	assert.Empty(t, drawn(t, st))
}
