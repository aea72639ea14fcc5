package submittal

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// steppedRooms are rooms whose floors are off their level.
func steppedRooms() map[string]string {
	window := roomtest.Window(`4'`, `3'`)
	return map[string]string{
		"a floor that rises":  roomtest.Head("in") + roomtest.Wall("West", `13' 1`, `8'`, "floor = [0, \"3/4\"]\n", window) + roomtest.Wall("East", `9'`, `8'`, "floor = \"3/4\"\n", window),
		"a landing":           roomtest.Head("in") + roomtest.Wall("Foot", `9'`, `9'`, window) + roomtest.Wall("Landing", `12'`, `10'`, "floor = \"2' 6\"\n", window),
		"two courses":         strings.Replace(roomtest.Head("in"), `length = "13'"`, `length = "6' 6"`, 1) + roomtest.Wall("West", `10'`, `9'`) + roomtest.Wall("East", `11'`, `9'`, "floor = \"6\"\n"),
		"millimetres, fallen": roomtest.Metric() + roomtest.WallMM("A", 5230, 2650, "floor = [0, -9]\n", roomtest.WindowMM(900, 1200)) + roomtest.WallMM("B", 3000, 2650, "floor = [-9, -6]\n", roomtest.WindowMM(900, 1200)),
	}
}

// A height has one figure: over the level of the room, in the schedule, on elevations, on enlargements and in what is said of
// joints. Nothing is figured from a floor that is off that level, which is marked with how far it is.
func TestAHeightHasOneFigureOverTheLevel(t *testing.T) {
	rooms := roomtest.Samples(t)
	for why, text := range steppedRooms() {
		rooms[why] = text
	}
	figures, over, marks := 0, 0, 0
	for why, text := range rooms {
		p, d := drawnOnce(t, text)
		for _, page := range d.Pages {
			for _, v := range roomtest.PartsOf(&page.Group, "view") {
				w := wallNamed(p.Room, v.Data["wall"])
				if w == nil {
					continue
				}
				off := false
				for _, q := range w.Floor {
					off = off || q.Z != 0
				}
				heights := map[float64]bool{} // at which an opening or a joint is
				for i := range w.Openings {
					if o := &w.Openings[i]; o.SillGiven {
						heights[o.Sill.MM()] = true
					}
					heights[w.Openings[i].Head.MM()] = true
				}
				for i := range p.Runs {
					for _, z := range p.Runs[i].Joints {
						heights[z.MM()] = true
					}
				}
				for _, g := range roomtest.PartsOf(v.Group, "dimension") {
					if tier := g.Data["tier"]; g.Data["from"] == "" || slices.Contains([]string{"seams", "openings", "boxes", "wall", "piece", "seams and edges", "from left edge", "return"}, tier) {
						continue
					}
					from, to := mm(t, g.Data["from"]), mm(t, g.Data["to"])
					counts := strings.Contains(g.Data["tier"], "level") || strings.Contains(g.Data["tier"], "heights")
					for z := range heights {
						if math.Abs(to-z) > 0.01 || !counts && !onFloor(w, from) {
							continue
						}
						for _, figure := range roomtest.Lettering(g.Group) {
							figures++
							assert.InDelta(t, z, read(t, p, figure).MM(), 0.8, "%s, wall %s: %s", why, w.Name, g.Data["tier"])
							if counts && off {
								over++
							}
						}
					}
				}
				if v.Data["opening"] == "" && off {
					marks += len(roomtest.Classed(v.Group, "floor-level"))
					assert.Contains(t, running([]*scene.Page{page}), "Floor of "+w.Name+", over the level of the room", "%s", why)
				}
				for _, g := range roomtest.PartsOf(v.Group, "floor-level") {
					z := read(t, p, strings.TrimPrefix(roomtest.Lettering(g.Group)[0], "+"))
					assert.InDelta(t, mm(t, g.Data["z"]), z.MM(), 0.8)
					x := L(math.Round(mm(t, g.Data["x"]) * 8000))
					before, after := room.At(w.Floor, x).MM(), room.AtRight(w.Floor, x).MM() // of a step
					assert.Less(t, min(math.Abs(before-z.MM()), math.Abs(after-z.MM())), 0.8)
				}
			}
		}
		if why == "two courses" {
			assert.Contains(t, running(d.Pages), "over the level")
		}
	}
	assert.Greater(t, figures, 40)
	assert.Greater(t, over, 10)
	assert.Greater(t, marks, 6)
}

// wallNamed is the wall of a name, nil for none.
func wallNamed(r *room.Room, name string) *room.Wall {
	for i := range r.Walls {
		if r.Walls[i].Name == name {
			return &r.Walls[i]
		}
	}
	return nil
}

// onFloor reports whether a height is one of the floor's.
func onFloor(w *room.Wall, z float64) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range w.Floor {
		low, high = min(low, p.Z.MM()), max(high, p.Z.MM())
	}
	return z > low-0.01 && z < high+0.01
}
