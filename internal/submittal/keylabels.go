package submittal

import (
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// Places for the label of a wall, in mm on the office page.
const (
	labelClear = 1.8 // between what stands behind the wall and the label
	labelStep  = 1.6 // from one distance from the wall to the next
	labelSteps = 9   // further off it could be that of another wall

	labelBesideStep = 2.5 // between the free end of a wall and the label, and from one place there to the next
	labelBesides    = 4

	labelLine = 2.0 // between its lines

	asideFirst = 5.0 // from the wall of a label that stands to any side
	asideReach = 60.0
	asideStep  = 1.5
	asideTurns = 24 // places on a ring
)

// labelShares are the places of a label along its wall, as shares of the wall's length.
var labelShares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.15, 0.85}

// wallLabel is the label of a wall: its name, its length where no dimension has it, and its sheets.
type wallLabel struct {
	wall  int
	lines []string
	plain int // how many of its lines are not bold
}

func (r *roomKey) labelOf(i int) wallLabel {
	w := &r.Room.Walls[i]
	l := wallLabel{wall: i, lines: draft.Folded(w.Name, r.Look.Medium, false, r.Look.Of(60))}
	if !r.figured[i] {
		l.lines = append(l.lines, r.Style.Format(w.Length))
	}
	f := r.Face(i)
	if f == nil {
		l.lines = append(l.lines, "bare")
	}
	l.plain = len(l.lines)
	if f != nil {
		var sheets []*layout.Sheet
		for _, p := range f.Parts {
			sheets = append(sheets, p.Sheets...)
		}
		l.lines = append(l.lines, r.short(sheets)...)
	}
	return l
}

// size is how large a label is lettered in a height.
func (l wallLabel) size(k draft.Look, height float64) (wide, high float64) {
	for j, line := range l.lines {
		wide = math.Max(wide, scene.Width(line, height, j >= l.plain))
	}
	return wide, height*float64(len(l.lines)) + k.Of(labelLine)*float64(len(l.lines)-1)
}

// labelOutside letters the label of a wall outside the room behind what stands there already, as near as can be, at each distance near
// the wall's middle, and reports whether it has room there. Of a column that one goes round, outside is where one goes.
func (r *roomKey) labelOutside(i int) bool {
	if r.column {
		return r.labelBeyond(i, -1, r.inward[i])
	}
	return r.labelBeyond(i, 1, r.reach[i])
}

// label letters the label of a wall in the first place that is free: outside, else
//
//  1. as near before the wall, in the room;
//  2. beside its free end;
//  3. to any side on a leader, see labelAside.
func (r *roomKey) label(i int) {
	switch {
	case r.labelOutside(i):
	case !r.column && r.labelBeyond(i, -1, r.inward[i]), r.labelBeside(i), r.labelAside(i):
		r.squeezed++
	case r.figured[i]:
		r.missed.named = append(r.missed.named, i)
	default:
		r.missed.told = append(r.missed.told, i)
	}
}

// labelBeyond letters the label of a wall at one side of it, beyond what reaches so far.
func (r *roomKey) labelBeyond(i int, side, reach float64) bool {
	k, l := r.Look, r.labelOf(i)
	wide, high := l.size(k, k.Medium)
	nx, ny := r.outline.Outward(i)
	for step := range labelSteps {
		for _, share := range labelShares {
			off := reach + k.Of(labelClear) + math.Abs(nx)*wide/2 + math.Abs(ny)*high/2 + k.Of(labelStep)*float64(step)
			if r.labelAt(l, scene.BoxRound(r.outline.Along(i, share, side*off), wide, high), side*nx) {
				return true
			}
		}
	}
	return false
}

// labelBeside letters the label of a wall beside an end that is free.
func (r *roomKey) labelBeside(i int) bool {
	k, l := r.Look, r.labelOf(i)
	wide, high := l.size(k, k.Medium)
	a, b := r.outline.Ends(i)
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	for end, share := range []float64{0, 1} {
		if !r.openEnd(i, end) || long == 0 {
			continue
		}
		ux, uy := (b.X-a.X)/long*(2*share-1), (b.Y-a.Y)/long*(2*share-1)
		at := r.outline.Along(i, share, r.thick/2)
		for step := 1; step <= labelBesides; step++ {
			by := k.Of(labelBesideStep)*float64(step) + math.Abs(ux)*wide/2 + math.Abs(uy)*high/2
			if r.labelAt(l, scene.BoxRound(at.Add(ux*by, uy*by), wide, high), ux) {
				return true
			}
		}
	}
	return false
}

// labelAt letters a label in a box if it has room there and no wall parts it from its own.
func (r *roomKey) labelAt(label wallLabel, box scene.Box, toward float64) bool {
	i, c := label.wall, box.Centre()
	a, b := r.outline.Ends(i)
	nx, ny := r.outline.Outward(i)
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	share := 0.0
	if l > 0 {
		share = math.Min(math.Max(((c.X-a.X)*(b.X-a.X)+(c.Y-a.Y)*(b.Y-a.Y))/(l*l), 0), 1)
	}
	out := math.Copysign(0.1, (c.X-a.X)*nx+(c.Y-a.Y)*ny)
	ink := box // letters reach over and under capitals
	ink.Y0, ink.Y1 = box.Y0-0.15*r.Look.Medium, box.Y1+0.28*r.Look.Medium
	if !r.Space.Free(ink, r.Look.Of(0.9)) || !r.outline.Sees(r.outline.Along(i, share, out), c) {
		return false
	}
	r.lettered(label, box, toward, r.Look.Medium)
	r.Space.Take(ink)
	return true
}

// labelAside letters the label of a wall small on a leader: from inside the room, where the wall is seen, then from outside.
func (r *roomKey) labelAside(i int) bool {
	k, l := r.Look, r.labelOf(i)
	wide, high := l.size(k, k.Small)
	for _, side := range []float64{-1, 1} {
		foot := r.outline.Along(i, 0.5, side*k.Of(0.8))
		place := r.ring(foot, wide, high, asideFirst/2, func(c scene.Point) bool { return r.crossesNothing([2]scene.Point{foot, c}) })
		if place.IsZero() {
			continue
		}
		end := ringEnd(k, foot, place)
		draft.Leader(r.g, k, r.Space, foot, end)
		r.lettered(l, place, 0, k.Small)
		r.took(place, foot, end)
		return true
	}
	return false
}

// ring finds a box for words round a place, ring by ring, on each from the right anticlockwise, from which a line that is as
// long as a least one runs free to the place.
func (r *roomKey) ring(foot scene.Point, wide, high, least float64, may func(scene.Point) bool) scene.Box {
	k := r.Look
	for out := k.Of(asideFirst); out < k.Of(asideReach); out += k.Of(asideStep) {
		for turn := range asideTurns {
			sin, cos := scene.SinCos(float64(turn) * 360 / asideTurns)
			c := foot.Add(out*cos, -out*sin)
			box := scene.BoxRound(c, wide, high)
			end := ringEnd(k, foot, box)
			if math.Hypot(end.X-foot.X, end.Y-foot.Y) < k.Of(least) || !r.Space.Free(box, k.Of(1.2)) || !r.Space.FreeLine(foot, end, k.Of(0.6)) || !may(c) || r.crossesLines([2]scene.Point{foot, end}) {
				continue
			}
			return box
		}
	}
	return scene.Box{}
}

// ringEnd is where the line from a place to words ends, just off them.
func ringEnd(k draft.Look, foot scene.Point, box scene.Box) scene.Point {
	c := box.Centre()
	enter, _, ok := draft.Clip(foot, c, box.Inset(-k.Of(1)))
	if !ok || enter <= 0 {
		return foot
	}
	return foot.Add((c.X-foot.X)*enter, (c.Y-foot.Y)*enter)
}

// took notes words and the line to them.
func (r *roomKey) took(box scene.Box, from, to scene.Point) {
	r.Space.Take(box)
	r.Space.Stroke(from, to)
	r.lines = append(r.lines, [2]scene.Point{from, to})
}

// lettered letters the lines of a label in their box: ranged to a wall at the right or left of it, else centred.
func (r *roomKey) lettered(l wallLabel, box scene.Box, nx, height float64) {
	k := r.Look
	for j, line := range l.lines {
		y := box.Y0 + height/2 + float64(j)*(height+k.Of(labelLine))
		t := scene.Text{At: scene.Pt(box.Centre().X, y), String: line, Height: height, Bold: j >= l.plain, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
		if nx < -0.7 { // left of an upright wall: ranged to it
			t.At.X, t.Anchor = box.X1, scene.End
		} else if nx > 0.7 {
			t.At.X, t.Anchor = box.X0, scene.Start
		}
		r.g.Text(t)
	}
	r.Space.Take(box)
}

// short are a wall's sheets in as few signs as can be, in lines that ascend and are of one flitch: "3 to 6, 8 to 12".
func (r *roomKey) short(sheets []*layout.Sheet) []string {
	var lines []string
	for i := 0; i < len(sheets); {
		j := i + 1
		for j < len(sheets) && sheets[j].Flitch == sheets[i].Flitch && sheets[j].Number >= sheets[j-1].Number {
			j++
		}
		text := strings.Join(elevation.Runs(r.Set, sheets[i:j]), ", ")
		if sheets[i].Number == 0 {
			text = "-"
		}
		lines = append(lines, scene.Wrap(text, r.Look.Medium, true, r.Look.Of(60))...)
		i = j
	}
	return lines
}
