package layout

import (
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

var changeWords = regexp.MustCompile(`^(less|more) (?:of (\w+) |length of the sheets |(height|length) of wall (.*) \(measure it again\)$)`)

// withChange makes a change of a room by its words, as who reads them would.
func withChange(t *testing.T, r *room.Room, words string, by L) *room.Room {
	t.Helper()
	m := changeWords.FindStringSubmatch(words)
	require.NotNil(t, m, words)
	out := *r
	if m[1] == "less" {
		by = -by
	}
	rules := map[string]*L{"top_trim": &out.Rules.TopTrim, "bottom_trim": &out.Rules.BottomTrim, "edge_trim": &out.Rules.EdgeTrim,
		"least_width": &out.Rules.LeastWidth, "corner_return": &out.Rules.CornerReturn, "leg": &out.Rules.Leg,
		"opening_clear": &out.Rules.OpeningClear}
	switch {
	case m[2] != "":
		require.Contains(t, rules, m[2])
		*rules[m[2]] += by
	case m[3] == "":
		out.Veneer.Length += by
	default:
		out.Walls = slices.Clone(r.Walls)
		i := slices.IndexFunc(out.Walls, func(w room.Wall) bool { return w.Name == m[4] })
		require.GreaterOrEqual(t, i, 0, words)
		w := &out.Walls[i]
		longer, higher := by, L(0)
		if m[3] == "height" {
			longer, higher = 0, by
		}
		stretch := func(points []room.Point, up L) []room.Point {
			var list []room.Point
			for _, p := range points {
				if p.X == w.Length {
					p.X += longer
				}
				list = append(list, room.Point{X: p.X, Z: p.Z + up})
			}
			return list
		}
		w.Ceiling, w.Floor = stretch(w.Ceiling, higher), stretch(w.Floor, 0)
		w.Length += longer
	}
	return &out
}

// tally is what of a plan a saving is told in, and what it must not worsen.
type tally struct{ sheets, courses, narrow, musts, anyNarrow, closing int }

// worse reports whether something is more than in another plan.
func (s tally) worse(than tally) bool {
	return s.sheets > than.sheets || s.courses > than.courses || s.narrow > than.narrow || s.musts > than.musts || s.anyNarrow > than.anyNarrow ||
		s.closing > than.closing
}

func tallyOf(p *Plan) tally {
	s := tally{sheets: p.Totals.Sheets}
	for _, f := range p.Findings {
		switch {
		case f.Code == finding.Joint: // one for each joint of each wall
			s.courses++
		case f.Level == finding.Must && !slices.Contains(ofSeams, f.Code):
			s.musts++
		}
	}
	for _, r := range p.Runs {
		if r.Up && len(r.Joints) > 0 {
			s.courses++
		}
		for _, span := range r.Spans {
			if span.Score.Bends+span.Score.Edges > 0 {
				s.musts++
			}
			s.closing += int(span.Score.Closing)
			if p.Aim != seam.Even {
				s.narrow += int(span.Score.NarrowMain)
				s.anyNarrow += int(span.Score.Narrow)
			}
		}
	}
	return s
}

// TestNearlySavesWhatItSays makes every change that random rooms are told, by its words, and lays out again: it saves what
// is said, worsens nothing, and a step less does not save as much without worsening something.
func TestNearlySavesWhatItSays(t *testing.T) {
	told := map[string]int{}
	someRooms(t, 600, 180, same, func(t *testing.T, r *room.Room, _ string) bool {
		own, err := Lay(r)
		if err != nil {
			return false
		}
		assert.LessOrEqual(t, len(own.Nearly), nearlySaid)
		now, step := tallyOf(own), nearlySteps(r.Project.Units)
		for _, s := range own.Nearly {
			told[changeWords.FindString(s.Change)[:9]]++
			then, err := LayAim(withChange(t, r, s.Change, s.By), own.Aim)
			require.NoError(t, err, s.Change)
			after := tallyOf(then)
			assert.Equal(t, []int{now.sheets - s.Sheets, now.narrow - s.Narrow, now.musts - s.Musts}, []int{after.sheets, after.narrow, after.musts},
				"%v %s", s.By, s.Change)
			assert.False(t, after.worse(now), "%v %s", s.By, s.Change)
			assert.Equal(t, s.Courses > 0, after.courses < now.courses, s.Change)
			assert.Positive(t, s.Sheets+s.Courses+s.Narrow+s.Musts)
			if s.By == step {
				continue
			}
			less, err := LayAim(withChange(t, r, s.Change, s.By-step), own.Aim)
			require.NoError(t, err, s.Change)
			short := tallyOf(less)
			reached := short.sheets <= after.sheets && short.courses <= after.courses && short.narrow <= after.narrow && short.musts <= after.musts
			assert.False(t, reached && !short.worse(now), "%v %s: a step less saves as much: %s", s.By, s.Change, s.Saves)
		}
		return true
	})
	told["a rule"] = told["less of c"] + told["less of l"] + told["less of o"]
	for _, way := range []string{"less of t", "less of e", "more leng", "a rule"} {
		assert.Positive(t, told[way], "no room is told %s: %v", way, told)
	}
}
