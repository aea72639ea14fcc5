package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// at is where a place of a run comes to lie on the plan, moved out of the room.
func (r *roomKey) at(run *layout.Run, wall int, x L, out float64) scene.Point {
	return r.outline.Along(wall, float64(x)/float64(r.Room.Walls[wall].Length), out)
}

// startOf is the wall and the place along it at which the hanging of a run starts: of level bands the left end of the lowest.
func (r *roomKey) startOf(run *layout.Run) (wall int, x L, ok bool) {
	first := &run.Sheets[0]
	if run.Up {
		for _, p := range first.Pieces {
			for _, pt := range p.Outline {
				if !ok || pt.X < x {
					wall, x, ok = p.Wall, max(pt.X, 0), true
				}
			}
		}
		return wall, x, ok
	}
	for _, st := range run.Walls {
		x := first.Left - st.Shift
		if run.Closed {
			for x < 0 {
				x += run.Length
			}
			for x >= run.Length {
				x -= run.Length
			}
		}
		if w := &r.Room.Walls[st.Wall]; x <= w.Length && x >= -w.Length/50 {
			return st.Wall, max(x, 0), true
		}
	}
	return 0, 0, false
}

// startClear is between the triangle at an inside corner and the wall beside it, with half of its width, in mm on the office page.
const startClear = 3.4

// starts draws the triangle at which the hanging of each run starts. What letters them comes back.
func (r *roomKey) starts() (words []func()) {
	k := r.Look
	for i := range r.Plan.Runs {
		run := &r.Plan.Runs[i]
		if len(run.Sheets) == 0 {
			continue
		}
		wall, x, ok := r.startOf(run)
		if !ok {
			continue
		}
		if on := (k.Of(startClear) + r.thick) * float64(r.scale); x.MM() < on && !r.openEnd(wall, 0) && !run.Closed { // clear of the wall beside it
			x = min(L(on*float64(length.Millimetre)), r.Room.Walls[wall].Length/2)
		}
		tip := r.at(run, wall, x, -k.Of(1.4))
		nx, ny := r.outline.Outward(wall)
		direction := math.Atan2(-ny, nx) * 180 / math.Pi
		in := r.g.Part(scene.Tag{Class: "start", Title: "hanging starts with sheet " + elevation.NumberOf(&run.Sheets[0])})
		draft.Triangle(in, scene.Marks, tip, direction, k.Of(5), k.Of(5), 0, false)
		back := r.at(run, wall, x, -k.Of(6.4))
		r.Space.Take(scene.Box{X0: math.Min(tip.X, back.X) - k.Of(2.5), Y0: math.Min(tip.Y, back.Y) - k.Of(2.5), X1: math.Max(tip.X, back.X) + k.Of(2.5), Y1: math.Max(tip.Y, back.Y) + k.Of(2.5)})
		words = append(words, func() { r.wordNear("START", r.at(run, wall, x, -k.Of(11.4)), -nx, -ny, true) })
	}
	return words
}

// Places for a word of the key, in mm on the office page.
const (
	wordStep  = 1.5 // from one place along its direction to the next
	wordSteps = 40
	wordAside = 7 // from one place across its direction to the next
)

// wordSides are how many places a word stands to the side, in the order in which they are tried.
var wordSides = []float64{0, 1, -1, 2, -2}

// wordNear letters a word at a place or further along a direction, the nearest first; at each distance straight on, then
// aside.
func (r *roomKey) wordNear(text string, at scene.Point, dx, dy float64, bold bool) {
	k := r.Look
	for step := range wordSteps {
		for _, side := range wordSides {
			t := scene.Text{At: at.Add(dx*k.Of(wordStep)*float64(step)-dy*k.Of(wordAside)*side, dy*k.Of(wordStep)*float64(step)+dx*k.Of(wordAside)*side), String: text, Height: k.Small, Bold: bold,
				Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
			if r.Space.Free(t.Bounds(), k.Of(1.15)) && r.outline.Sees(at, t.At) {
				r.g.Text(t)
				r.Space.Take(t.Bounds())
				return
			}
		}
	}
	r.missed.words = append(r.missed.words, text)
}

// changes marks the closing seam and every change of flitch. What letters them comes back.
func (r *roomKey) changes() (list []func()) {
	k := r.Look
	for i := range r.Plan.Runs {
		run := &r.Plan.Runs[i]
		for _, m := range run.Seams {
			if !m.Closing && !m.FlitchChange || run.Up {
				continue
			}
			at := r.at(run, m.Wall, m.X, 0)
			nx, ny := r.outline.Outward(m.Wall)
			if m.Closing {
				draft.Diamond(r.g.Part(scene.Tag{Class: "closing", Title: "closing seam"}), k, scene.Marks, at, k.Of(5), k.Seam, scene.White)
			} else {
				draft.Hexagon(r.g.Part(scene.Tag{Class: "flitch-change", Title: "change of flitch"}), k, scene.Marks, at, k.Of(5.6), k.Seam)
			}
			if m.Closing { // beside its points there is room
				r.Space.Take(scene.BoxRound(at, k.Of(5.4), k.Of(1.6)), scene.BoxRound(at, k.Of(1.6), k.Of(5.4)), scene.BoxRound(at, k.Of(3.4), k.Of(3.4)))
			} else {
				r.Space.Take(scene.BoxRound(at, 2*k.Of(3), 2*k.Of(3)))
			}
			words := elevation.NumberOf(elevation.SheetAt(r.Board.Set, m.LeftSheet)) + " | " + elevation.NumberOf(elevation.SheetAt(r.Board.Set, m.RightSheet))
			list = append(list, func() { r.wordNear(words, at.Add(nx*k.Of(6), ny*k.Of(6)), nx, ny, true) })
		}
	}
	return list
}
