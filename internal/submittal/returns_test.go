package submittal

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// read takes a printed figure for the length it says.
func read(t *testing.T, p *layout.Plan, figure string) L {
	t.Helper()
	l, err := length.Parse(strings.ReplaceAll(figure, ",", "."), p.Style.Unit)
	require.NoError(t, err, figure)
	return l
}

// mm is a datum in millimetres.
func mm(t *testing.T, value string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(value, 64)
	require.NoError(t, err)
	return f
}

// leaningRooms are rooms with corners that lean and corners that are eased, to both sides.
func leaningRooms() map[string]string {
	wall := func(name, long string, keys ...string) string {
		return roomtest.Wall(name, long, `9'`) + strings.Join(keys, "\n") + "\n"
	}
	return map[string]string{
		"leaning": roomtest.Head("in") + wall("A", `9' 3`, `lean = "3/16"`) + wall("B", `8' 2`, `lean = "-1/4"`, `corner = "outside"`) + wall("C", `7' 7`),
		"eased":   roomtest.Head("in") + wall("A", `9' 3`, `corner = "outside"`, `radius = "3/4"`) + wall("B", `8' 2`, `corner = "outside"`, `radius = "2"`, `lean = "1/8"`) + wall("C", `7' 7`),
		"skew":    roomtest.Head("in") + wall("A", `9' 3`, `lean = ["0", "3/16"]`) + wall("B", `8' 2`, `lean = ["1/16", "0"]`) + wall("C", `7' 7`),
		"metric":  roomtest.Metric() + roomtest.WallMM("A", 3015, 2700, "lean = [0, 3]\n") + roomtest.WallMM("B", 2450, 2700, "lean = [3, -4]\n") + roomtest.WallMM("C", 2610, 2700, "lean = [-4, 0]\n"),
	}
}

// Both returns of a sheet at a corner, on elevations and on details the same and measured at the floor, add up to what the
// sheet covers, with what lies on the round of an eased corner; at the ceiling they do so by the skew less.
func TestReturnsAtOneHeightAddUpToTheSheet(t *testing.T) {
	rooms := roomtest.Samples(t)
	for why, text := range leaningRooms() {
		rooms[why] = text
	}
	both, rows, shown, leaning := 0, 0, 0, 0
	for why, text := range rooms {
		p, d := drawnOnce(t, text)
		for i := range p.Runs {
			for j := range p.Runs[i].Corners {
				c := &p.Runs[i].Corners[j]
				width := p.Runs[i].Hanging(c.Sheet).Width
				arc := L(math.Round(float64(c.Radius) * c.Angle * math.Pi / 180))
				if c.LeftReturnBottom == 0 || c.RightReturnBottom == 0 {
					continue // a seam stands on the bend
				}
				var off L // of three rounded figures
				if arc > 0 {
					off = p.Style.Least()
				}
				if c.Lean != 0 {
					leaning++
				}
				left, right := drawnReturns(t, p, d, c, true), drawnReturns(t, p, d, c, false)
				if len(left) > 0 && len(right) > 0 {
					both++
					sum := read(t, p, left[0]) + read(t, p, right[0]) + p.Style.Round(arc)
					assert.LessOrEqual(t, (sum - p.Style.Round(width)).Abs(), off, "%s, %s: %s and %s of %s", why, c.Name, left[0], right[0], p.Style.Format(width))
				}
				for _, list := range [][]string{left, right} {
					for _, figure := range list {
						shown++
						assert.Equal(t, list[0], figure, "%s, %s: elevation and detail say one figure", why, c.Name)
					}
				}
				for _, row := range returnRows(d, c.Name) {
					rows++
					want := p.Style.Round(width)
					if strings.HasSuffix(row[0], "ceiling") {
						want = p.Style.Round(width + c.Skew)
					}
					sum := read(t, p, row[1]) + read(t, p, row[2]) + p.Style.Round(arc)
					assert.LessOrEqual(t, (sum - want).Abs(), off, "%s, %s: row %q", why, c.Name, row)
				}
			}
		}
	}
	assert.Greater(t, both, 15)
	assert.Greater(t, shown, 60)
	assert.Greater(t, rows, 12)
	assert.Greater(t, leaning, 6)
}

// drawnReturns are the printed figures of one return of a corner, the detail's first where it has it: on details and on the
// wall next door by corner and width, on its own wall by where it begins and ends.
func drawnReturns(t *testing.T, p *layout.Plan, d *scene.Document, c *layout.Corner, left bool) []string {
	width, other, wall, end := c.RightReturnBottom, c.LeftReturnBottom, c.RightWall, c.Radius.MM()*math.Tan(c.Angle*math.Pi/360)
	if left {
		width, other, wall = other, width, c.LeftWall
		end = p.Room.Walls[wall].Length.MM() - end
	}
	var details, views []string
	for _, page := range d.Pages {
		for _, v := range roomtest.PartsOf(&page.Group, "view") {
			of, own := v.Data["wall"], v.Data["wall"] == p.Room.Walls[wall].Name
			for _, g := range roomtest.PartsOf(v.Group, "dimension") {
				switch {
				case own && g.Data["tier"] == "seams" && v.Data["opening"] == "":
					from, to := mm(t, g.Data["from"]), mm(t, g.Data["to"])
					if !left {
						from, to = -to, -from
					}
					if math.Abs(math.Abs(to)-end) < 0.01 && math.Abs(to-from-width.MM()) < 0.01 {
						views = append(views, roomtest.Lettering(g.Group)...)
					}
				case own || g.Data["tier"] != "return" || g.Data["corner"] != c.Name:
				case of != "":
					views = append(views, roomtest.Lettering(g.Group)...)
				case math.Abs(mm(t, g.Data["width"])-width.MM()) < 0.01:
					details = append(details, roomtest.Lettering(g.Group)...)
				default: // the other return of the corner
					assert.InDelta(t, other.MM(), mm(t, g.Data["width"]), 0.01, "%s is measured at the floor", c.Name)
				}
			}
		}
	}
	return append(details, views...)
}

// returnRows are the rows of a corner in the tables of its details: name, left, right.
func returnRows(d *scene.Document, corner string) [][]string {
	var list [][]string
	for _, page := range d.Pages {
		for _, g := range roomtest.PartsOf(&page.Group, "returns") {
			words := roomtest.Lettering(g.Group)
			if g.Data["corner"] == corner && len(words) >= 3 {
				list = append(list, words)
			}
		}
	}
	return list
}
