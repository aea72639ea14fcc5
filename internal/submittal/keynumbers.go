package submittal

import (
	"math"
	"strings"

	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// numberSteps are how many sheets may lie from one number to the next.
var numberSteps = []int{1, 2, 5, 10, 20, 50}

// everyNumber finds how many sheets lie from one number to the next: the fewest with which all numbers have room over sheets of the
// usual width.
func (r *roomKey) everyNumber() {
	k := r.Look
	wide := r.Room.NetWidth().MM() / float64(r.scale)
	widest := 0.0
	for i := range r.Plan.Runs {
		for j := range r.Plan.Runs[i].Sheets {
			widest = math.Max(widest, scene.Width(elevation.NumberOf(&r.Plan.Runs[i].Sheets[j]), k.Small, false))
		}
	}
	for _, r.every = range numberSteps {
		if wide*float64(r.every) >= widest+k.Of(1.4) {
			return
		}
	}
}

// Places for a sheet's number, in mm on the office page.
const (
	numberClear = 0.95 // from the wall
	numberRow   = 3.6  // from one row to the next
	numberRows  = 3
)

// numberShifts are the places along its sheet.
var numberShifts = []float64{0, 1.6, -1.6, 3.2, -3.2}

// planNumber is the number of a sheet over a part of it.
type planNumber struct {
	wall     int
	text     string
	sheets   []int
	from, to float64 // shares of the wall
}

// numbers letters the numbers of the sheets along the walls: of each over its widest part, also where it needs a leader, and over what
// of it goes round a corner where there is room.
func (r *roomKey) numbers() {
	widest := map[int]L{}
	for _, f := range r.Faces {
		r.reach[f.Wall] = r.thick
		for _, p := range f.Parts {
			widest[p.Place] = max(widest[p.Place], p.To-p.From)
		}
	}
	var rest []planNumber
	for _, f := range r.Faces {
		if f.Run.Up {
			continue
		}
		for n, p := range f.Parts {
			sh := p.Sheet()
			if r.every > 1 && n > 0 && n < len(f.Parts)-1 && sh.Number%r.every != 0 {
				continue
			}
			var names []string
			var sheets []int
			for _, s := range p.Sheets {
				names = append(names, elevation.NumberOf(s))
				sheets = append(sheets, s.Number)
			}
			number := planNumber{f.Wall, strings.Join(names, "/"), sheets, r.share(f.Wall, max(p.From, 0)), r.share(f.Wall, min(p.To, f.W.Length))}
			if widest[p.Place] == p.To-p.From {
				widest[p.Place] = -1 // of two parts as wide the first
				r.number(number, true)
			} else {
				rest = append(rest, number)
			}
		}
	}
	for _, number := range rest {
		r.number(number, false)
	}
}

// number letters a number behind its wall where there is room, else before it: over the middle of the part, then, where it has to
// stand, on a leader.
func (r *roomKey) number(p planNumber, must bool) {
	k := r.Look
	a, b := r.outline.Along(p.wall, p.from, 0), r.outline.Along(p.wall, p.to, 0)
	nx, ny := r.outline.Outward(p.wall)
	part := math.Abs(nx)*math.Abs(b.Y-a.Y) + math.Abs(ny)*math.Abs(b.X-a.X)
	text := scene.Text{String: p.text, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	if along := math.Abs(ny)*text.Width() + math.Abs(nx)*k.Small; !must && along > part {
		return
	}
	half := (math.Abs(nx)*text.Width() + math.Abs(ny)*k.Small) / 2
	for _, side := range []float64{1, -1} {
		edge := k.Of(0.5)
		if side > 0 {
			edge = r.thick
		}
		for row := range numberRows {
			for _, shift := range numberShifts {
				off := edge + k.Of(numberClear) + half + float64(row)*k.Of(numberRow)
				text.At = r.outline.Along(p.wall, (p.from+p.to)/2, side*off).Add(-ny*k.Of(shift), nx*k.Of(shift))
				if r.numberAt(p, text, side, edge, half, row > 0 || math.Abs(k.Of(shift)) > part/2) {
					if side > 0 {
						r.reach[p.wall] = math.Max(r.reach[p.wall], off+half)
					}
					return
				}
				if !must {
					return
				}
			}
		}
	}
	r.missed.loseSheets(p.sheets)
}

// numberAt letters a number at a place, on a leader where it is led, if there is room.
func (r *roomKey) numberAt(p planNumber, t scene.Text, side, edge, half float64, led bool) bool {
	k := r.Look
	nx, ny := r.outline.Outward(p.wall)
	mid := (p.from + p.to) / 2
	foot, end := r.outline.Along(p.wall, mid, side*(edge+k.Of(0.3))), t.At.Add(-side*nx*(half+k.Of(0.5)), -side*ny*(half+k.Of(0.5)))
	if !r.Space.Free(t.Bounds(), k.Of(1)) || !r.outline.Sees(r.outline.Along(p.wall, mid, side*k.Of(0.1)), t.At) || led && !r.Space.FreeLine(foot, end, k.Of(0.5)) {
		return false
	}
	in := r.g.Part(scene.Tag{Class: "key-number", Data: []scene.Datum{folio.Datum("number", t.String)}})
	if led {
		in.Line(foot, end, scene.Pen(scene.Marks, k.Dimension))
		r.Space.Stroke(foot, end)
	}
	in.Text(t)
	r.Space.Take(t.Bounds())
	return true
}
