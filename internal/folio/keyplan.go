package folio

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/scene"
)

// OutlinePlan is the room seen from above, on paper.
type OutlinePlan struct {
	room  *room.Room
	sides [][2]scene.Point // left and right end of each wall
}

// PlanIn brings the plan of the room into a box, as large as it takes.
func PlanIn(r *room.Room, box scene.Box) OutlinePlan {
	all := sidesOf(r).Box()
	scale := math.Inf(1)
	if all.W() > 0 {
		scale = box.W() / all.W()
	}
	if all.H() > 0 {
		scale = math.Min(scale, box.H()/all.H())
	}
	return PlanAt(r, box, scale)
}

// sidesOf are the walls of the room as a plan shows them, in 1/8 micrometre.
func sidesOf(r *room.Room) OutlinePlan {
	p := OutlinePlan{room: r}
	for _, s := range run.Sides(r) {
		p.sides = append(p.sides, [2]scene.Point{{X: s.X0, Y: s.Y0}, {X: s.X1, Y: s.Y1}})
	}
	return p
}

// PlanAt puts the plan of the room into the middle of a box, at a scale in mm of paper to 1/8 micrometre.
func PlanAt(r *room.Room, box scene.Box, scale float64) OutlinePlan {
	p := sidesOf(r)
	m, from := box.Centre(), p.Box().Centre()
	on := func(c scene.Point) scene.Point { return scene.Pt(m.X+(c.X-from.X)*scale, m.Y+(c.Y-from.Y)*scale) }
	for i, s := range p.sides {
		p.sides[i] = [2]scene.Point{on(s[0]), on(s[1])}
	}
	return p
}

// Box is the box round all walls.
func (p OutlinePlan) Box() scene.Box {
	var points []scene.Point
	for _, s := range p.sides {
		points = append(points, s[0], s[1])
	}
	return scene.Around(points...)
}

// Ends are the ends of a wall.
func (p OutlinePlan) Ends(wall int) (a, b scene.Point) { return p.sides[wall][0], p.sides[wall][1] }

// Along is a place on a wall, as a share of its length, moved out of the room.
func (p OutlinePlan) Along(wall int, share, out float64) scene.Point {
	a, b := p.Ends(wall)
	nx, ny := p.Outward(wall)
	return scene.Pt(a.X+(b.X-a.X)*share+nx*out, a.Y+(b.Y-a.Y)*share+ny*out)
}

// Outward is the direction out of the room across a wall: to the left of the way along it.
func (p OutlinePlan) Outward(wall int) (x, y float64) {
	a, b := p.Ends(wall)
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return 0, -1
	}
	return (b.Y - a.Y) / l, -(b.X - a.X) / l
}

// keyInsets are what is kept free round the walls of the strip's plan, in mm on the office page: the least with which all letters find
// a place.
var keyInsets = []float64{4.5, 6.5, 8.5}

// keyPlan draws the small plan of the strip, what the page shows in heavy line, with the letter of every wall.
func (b *Board) keyPlan(g *scene.Group, box scene.Box) {
	k := b.Look
	var p OutlinePlan
	var letters []keyLetter
	for n, inset := range keyInsets {
		at := PlanIn(b.Room, box.Inset(k.Of(inset)))
		if list, all := b.keyLetters(at, box); n == 0 || all || len(list) > len(letters) {
			p, letters = at, list
			if all {
				break
			}
		}
	}
	g = g.Part(scene.Tag{Class: "key", Title: "key plan"})
	for i := range b.Room.Walls {
		a, c := p.Ends(i)
		pen := scene.Pen(scene.Walls, k.Thin)
		if !b.Room.Walls[i].Cover {
			pen = pen.As(scene.Dashed(k.Thin))
		}
		g.Line(a, c, pen)
	}
	heavy := scene.Pen(scene.Walls, 2*k.Wide)
	heavy.Cap = scene.Square
	for i := range b.Room.Walls {
		for _, part := range b.heavyParts(i) {
			g.Line(p.Along(i, part.From, 0), p.Along(i, part.To, 0), heavy)
		}
	}
	for _, l := range letters {
		if l.led {
			g.Line(l.foot, l.end, scene.Pen(scene.Marks, k.Dimension))
		}
		g.Text(l.text)
	}
}

// keyLetter is the letter of a wall on the strip's plan, on a leader where it stands off.
type keyLetter struct {
	text      scene.Text
	foot, end scene.Point
	led       bool
}

// Places of a letter on the strip's plan, in mm on the office page.
const (
	letterOut   = 3.2 // from its wall
	letterNear  = 3.3 // from here on it stands on a leader
	letterStep  = 1.1
	letterReach = 16.0
)

// letterShares and letterTurns are its places along the wall, as shares, and round where its leader begins, in degrees.
var (
	letterShares = []float64{0.5, 0.35, 0.65, 0.2, 0.8}
	letterTurns  = []float64{0, 30, -30, 60, -60}
)

// keyLetters finds places for the letters of all walls, those of short walls first, since a long one has more: out of the room as near
// to the wall as can be, then in it; further off on a leader. It reports whether all have one.
func (b *Board) keyLetters(p OutlinePlan, box scene.Box) (list []keyLetter, all bool) {
	var walls []int
	for i := range b.Room.Walls {
		if _, ok := b.Marks[i]; ok {
			walls = append(walls, i)
		}
	}
	slices.SortStableFunc(walls, func(x, y int) int { return cmp.Compare(b.Room.Walls[x].Length, b.Room.Walls[y].Length) })
	for _, i := range walls {
		if l, ok := b.keyLetter(p, box, i, list); ok {
			list = append(list, l)
		}
	}
	return list, len(list) == len(walls)
}

// keyLetter finds the place of one letter, clear of all walls and of other letters with their leaders.
func (b *Board) keyLetter(p OutlinePlan, box scene.Box, wall int, others []keyLetter) (keyLetter, bool) {
	k := b.Look
	t := scene.Text{String: b.Marks[wall], Height: k.Small, Bold: b.heavy(wall), Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
	nx, ny := p.Outward(wall)
	for out := k.Of(letterOut); out < k.Of(letterReach); out += k.Of(letterStep) {
		led := out > k.Of(letterNear)
		for _, turn := range letterTurns {
			if turn != 0 && !led {
				continue
			}
			sin, cos := scene.SinCos(turn)
			ux, uy := nx*cos-ny*sin, nx*sin+ny*cos
			for _, side := range []float64{1, -1} {
				for _, share := range letterShares {
					if share != 0.5 && led {
						continue
					}
					foot := p.Along(wall, share, 0)
					t.At = foot.Add(side*ux*out, side*uy*out)
					l := keyLetter{t, foot, t.At.Add(-side*ux*k.Of(2), -side*uy*k.Of(2)), led}
					if l.free(p, k, wall, box, others) {
						return l, true
					}
				}
			}
		}
	}
	return keyLetter{}, false
}

// free reports whether a letter has room at its place.
func (l keyLetter) free(p OutlinePlan, k draft.Look, wall int, box scene.Box, others []keyLetter) bool {
	ink := l.text.Bounds().Inset(-k.Of(0.6))
	if !box.Inset(-k.Of(1.2)).Contains(ink) || p.Touches(ink.Inset(-k.Wide)) {
		return false
	}
	for _, o := range others {
		if ink.Meets(o.text.Bounds()) || o.led && draft.Crosses(o.foot, o.end, ink) {
			return false
		}
		if l.led && (draft.Crosses(l.foot, l.end, o.text.Bounds().Inset(-k.Of(0.5))) || o.led && Parted([2]scene.Point{l.foot, l.end}, [2]scene.Point{o.foot, o.end})) {
			return false
		}
	}
	for i := range p.sides {
		if i != wall && Parted([2]scene.Point{l.foot, l.text.At}, p.sides[i]) {
			return false
		}
	}
	return true
}

// heavyParts are what of a wall the key shows heavy, as shares of it: what the page shows of it, or all.
func (b *Board) heavyParts(wall int) (list []draft.Part) {
	w := &b.Room.Walls[wall]
	for _, s := range b.Leaf.Shown {
		if s.Wall == wall {
			list = append(list, draft.Part{From: max(float64(s.From)/float64(w.Length), 0), To: min(float64(s.To)/float64(w.Length), 1)})
		}
	}
	if list == nil && b.heavy(wall) {
		list = []draft.Part{{From: 0, To: 1}}
	}
	return list
}

// heavy reports whether the key shows a wall heavy.
func (b *Board) heavy(wall int) bool {
	return wall == b.Leaf.Wall || slices.Contains(b.Leaf.Walls, wall)
}

// MeetsAny reports whether a box meets one of a list.
func MeetsAny(b scene.Box, list []scene.Box) bool {
	return slices.ContainsFunc(list, b.Meets)
}

// Touches reports whether a box comes on a wall of the plan.
func (p OutlinePlan) Touches(b scene.Box) bool {
	for i := range p.room.Walls {
		a, c := p.Ends(i)
		if draft.Crosses(a, c, b) {
			return true
		}
	}
	return false
}
