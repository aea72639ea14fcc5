package layout

import (
	"encoding/json"
	"fmt"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// someRooms calls check for each random room that is one, and says its seed and text when a check fails. At least a number
// of rooms must come through. Without FLITCHLAY_CHECK=1 it is an eighth of the seeds, and of what must come through.
func someRooms(t *testing.T, seeds uint64, least int, change func(string) string, check func(t *testing.T, r *room.Room, text string) bool) {
	t.Helper()
	seeds, least = uint64(effort.Of(int(seeds)/8, int(seeds))), effort.Of(least/8, least)
	done := 0
	for seed := range seeds {
		text := change(randomRoom(rand.New(rand.NewPCG(seed, 11))))
		r, err := room.Decode("room.toml", []byte(text))
		if err != nil {
			continue // an opening over the ceiling, a slope through the floor
		}
		if check(t, r, text) {
			done++
		}
		if t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, text)
		}
	}
	assert.GreaterOrEqual(t, done, least, "enough rooms came through")
}

func same(text string) string { return text }

// mirror is a room as it would be seen in a mirror: left is right.
func mirror(r *room.Room) *room.Room {
	out := *r
	n := len(r.Walls)
	out.Walls = make([]room.Wall, n)
	for i := range r.Walls {
		w := r.Walls[i]
		flip := func(points []room.Point) []room.Point {
			list := make([]room.Point, len(points))
			for k, p := range points {
				list[len(points)-1-k] = room.Point{X: w.Length - p.X, Z: p.Z}
			}
			return list
		}
		w.Ceiling, w.Floor = flip(w.Ceiling), flip(w.Floor)
		w.LeanLeft, w.LeanRight = -w.LeanRight, -w.LeanLeft
		w.LeftEnd, w.RightEnd = w.RightEnd, w.LeftEnd
		w.Openings = slices.Clone(w.Openings)
		for k := range w.Openings {
			w.Openings[k].FromLeft = w.Length - w.Openings[k].Right()
		}
		w.Boxes = slices.Clone(w.Boxes)
		for k := range w.Boxes {
			w.Boxes[k].X = w.Length - w.Boxes[k].X
		}
		w.Bare = slices.Clone(w.Bare)
		for k := range w.Bare {
			w.Bare[k].From, w.Bare[k].To = w.Length-w.Bare[k].To, w.Length-w.Bare[k].From
		}
		w.KeepClear = slices.Clone(w.KeepClear)
		for k := range w.KeepClear {
			w.KeepClear[k].From, w.KeepClear[k].To = w.Length-w.KeepClear[k].To, w.Length-w.KeepClear[k].From
		}
		// the corner at its right end is now that of the wall before it
		before := r.Walls[(i+n-1)%n]
		w.Corner, w.Angle, w.Radius, w.Wrap = before.Corner, before.Angle, before.Radius, before.Wrap
		out.Walls[n-1-i] = w
	}
	if !r.Space.Closed {
		out.Walls[n-1].Corner = room.None
	}
	return &out
}

// scores lists what the spans of a plan score, in no order of their own, as far as the mirror has to agree. A jump is seen at
// the right seam of its sheet, which in the mirror is the left one: narrow sheets and jumps agree only where every seam shows
// the same. So does all that the aim puts behind them.
func scores(p *Plan, level bool) []string {
	var out []string
	for _, r := range p.Runs {
		for _, s := range r.Spans {
			v := s.Score
			text := fmt.Sprintf("%s: bends %d edges %d closing %d", p.Style.Inches(s.Right-s.Left), v.Bends, v.Edges, v.Closing)
			switch {
			case p.Aim == seam.Even:
				text += fmt.Sprintf(" sheets %d should %d unevenness %v seen %d", v.Sheets, v.Should, v.Unevenness, v.Seen)
			case level:
				v.Unevenness = seam.Score{}.Unevenness // decides nothing here
				text = fmt.Sprintf("%+v", v)
			case p.Aim == seam.Fewest:
				text += fmt.Sprintf(" sheets %d", v.Sheets)
			}
			out = append(out, text)
		}
	}
	sort.Strings(out)
	return out
}

// level takes openings and slopes out of a random room.
func level(text string) string {
	var out []string
	hole := false
	for _, line := range strings.Split(text, "\n") {
		switch {
		case strings.HasPrefix(line, "["):
			hole = line == "[[wall.opening]]"
		case strings.HasPrefix(line, "height ="):
			line = "height = 100"
		case strings.HasPrefix(line, "floor =") || strings.HasPrefix(line, "main ="):
			continue
		}
		if !hole {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// onEdge reports whether a seam stands on a corner, in the strip it sweeps, or on a step of a ceiling. There design names the
// left wall, which in the mirror is the other one.
func onEdge(p *Plan) bool {
	for _, r := range p.Runs {
		for _, s := range r.Seams {
			for _, c := range r.Line.Corners {
				if r.Line.DistanceTo(s.At, c.From, c.To) == 0 {
					return true
				}
			}
			for _, st := range r.Walls {
				for _, q := range p.Room.Walls[st.Wall].Ceiling {
					if r.Line.Round(s.At) == r.Line.Round(st.Shift+q.X) {
						return true
					}
				}
			}
		}
	}
	return false
}

// A room and its mirror image score the same by every aim, as all lengths are on the grid; level rooms without openings in
// every item.
func TestMirroredRoomScoresTheSame(t *testing.T) {
	for name, change := range map[string]func(string) string{"any rooms": same, "level rooms": level} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			closed := 0
			someRooms(t, 70, 15, change, func(t *testing.T, r *room.Room, text string) bool {
				if r.Veneer.Horizontal {
					return false // s goes up the walls, and no wall's mirror changes that
				}
				for _, aim := range []seam.Aim{seam.Steady, seam.Fewest, seam.Even} {
					p, err := LayAim(r, aim)
					if err != nil {
						return false // a span shorter than a snap
					}
					q, err := LayAim(mirror(r), aim)
					require.NoError(t, err)
					if name == "any rooms" && (onEdge(p) || onEdge(q)) {
						return false
					}
					if !assert.Equal(t, scores(p, name == "level rooms"), scores(q, name == "level rooms"), AimWord(aim)) {
						return false
					}
				}
				if r.Space.Closed {
					closed++
				}
				return true
			})
			assert.Greater(t, closed, effort.Of(0, 4), "closed rooms among them")
		})
	}
}

var figures = regexp.MustCompile(`"[^"]*"|-?\d+`)

// metric writes every inch of a room as millimetres: 1/16 in is 1.5875 mm, a whole number of the smallest unit.
func metric(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		key, value, ok := strings.Cut(line, " = ")
		if !ok || !slices.Contains([]string{"length", "height", "floor", "lean", "from_left", "width", "sill", "from", "to", "base", "crown",
			"gross_width", "overlap"}, key) {
			continue
		}
		lines[i] = key + " = " + figures.ReplaceAllStringFunc(value, func(s string) string {
			s = strings.Trim(s, `"`)
			if strings.Contains(s, "'") {
				return `"` + s + `"`
			}
			sign := ""
			if rest, minus := strings.CutPrefix(s, "-"); minus {
				sign, s = "-", rest
			}
			sum := new(big.Rat)
			for _, part := range strings.Fields(s) {
				x, ok := new(big.Rat).SetString(part)
				if !ok {
					panic("no figure: " + part)
				}
				sum.Add(sum, x)
			}
			return `"` + sign + sum.Mul(sum, big.NewRat(254, 10)).FloatString(4) + ` mm"`
		})
	}
	return strings.Join(lines, "\n")
}

// A room whose lengths are written in millimetres has the seams, the sheets and the findings of the one in inches.
func TestInchesAndMillimetresAreOneRoom(t *testing.T) {
	t.Parallel()
	someRooms(t, 90, 30, same, func(t *testing.T, r *room.Room, text string) bool {
		p, err := Lay(r)
		if err != nil {
			return false
		}
		other := metric(text)
		require.NotEqual(t, text, other)
		q := lay(t, other)
		return assert.Equal(t, string(p.JSON()), string(q.JSON()))
	})
}

// The whole of a plan holds together: numbers go up from left to right and from bottom to top, above and below the level line
// are the cut length, every piece lies inside its one sheet as ripped, the pieces tile the walls; with courses as without.
func TestSheetsHoldTheirPieces(t *testing.T) {
	short := func(text string) string { return strings.Replace(text, "length = \"10'\"", "length = \"5'\"", 1) }
	for name, change := range map[string]func(string) string{"sheets of 10 ft": same, "sheets of 5 ft, in courses": short} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			someRooms(t, 100, 40, change, func(t *testing.T, r *room.Room, text string) bool {
				p, err := Lay(r)
				if err != nil {
					return false
				}
				tiles(t, p, "room")
				last, place := 0, 0
				for i := range p.Runs {
					run := &p.Runs[i]
					for k := range run.Sheets {
						s := &run.Sheets[k]
						assert.Equal(t, last+1, s.Number, "without a flitch no number is left out")
						assert.GreaterOrEqual(t, s.Place, place)
						if k > 0 && run.Sheets[k-1].Span == s.Span {
							assert.GreaterOrEqual(t, s.Left, run.Sheets[k-1].Left, "numbers go up from left to right")
						}
						if k > 0 && run.Sheets[k-1].Place == s.Place {
							assert.Greater(t, s.Course, run.Sheets[k-1].Course, "and from bottom to top")
						}
						last, place = s.Number, s.Place
						assert.Equal(t, s.CutLength, s.Above+s.Below)
						inside(t, p, run, s)
					}
				}
				return true
			})
		})
	}
}

// inside holds a sheet's pieces against the one gross sheet they are cut from, ripped as said.
func inside(t *testing.T, p *Plan, r *Run, s *Sheet) {
	t.Helper()
	if s.InGap || len(s.Pieces) == 0 {
		return
	}
	gross, overlap := p.Room.Veneer.GrossWidth, p.Room.Veneer.Overlap
	raw := gross
	if s.Ripped != "" {
		raw = s.RipTo
		assert.LessOrEqual(t, raw, gross-p.Room.Rules.Snap, "sheet %d: what is ripped off is at least a snap", s.Place)
	}
	assert.Equal(t, raw, s.RightLine-s.StartLine, "sheet %d hangs from its start line to its right line", s.Place)
	assert.LessOrEqual(t, s.StartLine, s.Left-overlap.HalfDown(), "sheet %d: half an overlap, or a trim, at its left", s.Place)
	assert.GreaterOrEqual(t, s.RightLine, s.Right+overlap.HalfDown(), "sheet %d: the same at its right", s.Place)
	askew := L(0)
	for _, c := range r.Corners {
		if c.Sheet == s.Place {
			askew += c.Skew.Abs()
		}
	}
	low, high := far, -far
	for _, piece := range s.Pieces {
		var shift L
		for _, st := range r.Walls {
			if st.Wall == piece.Wall {
				shift = st.Shift
			}
		}
		for _, q := range piece.Outline {
			along, up := q.X+shift, q.Z
			if r.Up {
				along, up = q.Z, q.X
			}
			for r.Closed && along < s.Left-askew {
				along += r.Length
			}
			assert.True(t, s.Left-askew <= along && along <= s.Right+askew, "sheet %d from %s to %s has a piece at %s", s.Place,
				p.Style.Inches(s.Left), p.Style.Inches(s.Right), p.Style.Inches(along))
			low, high = min(low, up), max(high, up)
		}
	}
	assert.LessOrEqual(t, high-low, s.CutLength, "sheet %d is cut longer than what it covers", s.Place)
	level := p.Room.Space.LevelLine
	if r.Up {
		level = 0
	}
	assert.LessOrEqual(t, high, level+s.Above, "sheet %d reaches as far above its mark", s.Place)
	assert.GreaterOrEqual(t, low, level-s.Below, "sheet %d reaches as far below its mark", s.Place)
}

// The same room gives the same bytes, they are JSON, and its sheets add up to the spans.
func TestJSONIsValidAndTheSame(t *testing.T) {
	t.Parallel()
	someRooms(t, 60, 25, same, func(t *testing.T, r *room.Room, text string) bool {
		p, err := Lay(r)
		if err != nil {
			return false
		}
		first := p.JSON()
		assert.Equal(t, string(first), string(lay(t, text).JSON()))
		var doc struct {
			Runs []struct {
				Length float64
				Closed bool
				Spans  []struct{ Left, Right float64 }
				Sheets []struct {
					Width     float64
					Place     int
					CutLength float64 `json:"cut_length"`
					Above     float64
					Below     float64
					Number    *int
					Flitch    *string
					Ripped    *string
					Bends     []float64
					Area      float64
					Pieces    []struct{ Area float64 }
					Narrow    bool
					Left      float64
					Right     float64
				}
			}
			Totals struct {
				Sheets int
				Net    float64 `json:"net_area"`
			}
		}
		require.NoError(t, json.Unmarshal(first, &doc))
		sheets, net := 0, 0.0
		for _, run := range doc.Runs {
			wide, long := 0.0, 0.0
			for k, s := range run.Sheets {
				sheets++
				net += s.Area
				if k == 0 || run.Sheets[k-1].Place != s.Place {
					wide += s.Width
				}
				assert.InDelta(t, s.CutLength, s.Above+s.Below, 1e-6)
				assert.Nil(t, s.Flitch)
				assert.NotNil(t, s.Number)
				assert.NotNil(t, s.Bends, "a list, never null")
			}
			for _, s := range run.Spans {
				long += s.Right - s.Left
			}
			assert.InDelta(t, long, wide, 1e-6, "sheets lie side by side from end to end")
		}
		assert.Equal(t, doc.Totals.Sheets, sheets)
		assert.InDelta(t, doc.Totals.Net, net, 1e-6)
		return true
	})
}

// A length written in millimetres is the length in inches, to the last unit.
func TestMetricWritesExactly(t *testing.T) {
	assert.Equal(t, `length = "4.7625 mm"`, metric(`length = "3/16"`))
	assert.Equal(t, `height = ["2438.4000 mm", "-38.1000 mm"]`, metric(`height = [96, "-1 1/2"]`))
	one, err := length.Parse("1.5875 mm", length.Inches)
	require.NoError(t, err)
	assert.Equal(t, length.Inch/16, one)
}
