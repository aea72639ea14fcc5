package detail

import (
	"math"

	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// measure is one dimension of a face: between two places on it, to its side.
type measure struct {
	seg      int
	from, to float64 // along the segment
	side     float64 // 1 in the room, -1 behind the board
	first    float64 // where its extension lines begin, off the face
	off      float64 // of its line
	open     [2]bool // an extension line is drawn at that end
	figure   string
	tag      scene.Tag
}

// Distances of the dimensions of a face on the office page, as in package draft.
const (
	tierOff   = 9.0 // of the first line from what it measures
	tierPitch = 7.0
	overRun   = 2.0 // of extension lines past the dimension line
	overGap   = 1.0 // between an object and its extension line
	overTick  = 2.4
)

// measures are the dimensions of all faces: every return, and every face between two bends with the pieces of it.
func (p *chainPlan) measures() []measure {
	k := p.Look
	var list []measure
	for i := range p.segs {
		side := p.sides[i]
		first := k.Of(overGap)
		if side > 0 {
			first += p.vo + k.Of(1.2)
		} else {
			first += p.bt
		}
		off := first - k.Of(overGap) + k.Of(tierOff)
		m := measure{seg: i, side: side, first: first, off: off, open: [2]bool{p.open(i, 0, side), p.open(i, 1, side)}}
		a, b := p.bounds(i)
		if !p.inner(i) {
			list = append(list, p.returns(m, a, b)...)
			continue
		}
		whole := m
		whole.from, whole.to = 0, p.segs[i].long
		whole.figure = p.Style.Format(around(p.run, p.verts[b].at-p.verts[a].at) - p.eased(a, b))
		whole.tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "face")}}
		if pieces := p.figures(p.Style, i); len(pieces) > 1 {
			at := []float64{p.verts[a].tan}
			for _, x := range p.stops {
				if d := around(p.run, x.s-p.verts[a].at); x.seg == i && !x.raw && d > p.verts[a].half && d < around(p.run, p.verts[b].at-p.verts[a].at)-p.verts[b].half {
					at = append(at, x.along)
				}
			}
			at = append(at, p.segs[i].long-p.verts[b].tan)
			for j, figure := range pieces {
				piece := m
				piece.from, piece.to, piece.figure = at[j], at[j+1], figure
				if j > 0 {
					piece.open[0] = false // the one before has it
				}
				if j < len(pieces)-1 {
					piece.open[1] = true
				}
				piece.tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "return")}}
				list = append(list, piece)
			}
			whole.off += k.Of(tierPitch)
			if p.verts[a].tan == 0 {
				whole.first = off + k.Of(overRun)
			}
		}
		list = append(list, whole)
	}
	return list
}

// eased is what a face between two bends is longer along the way than between its sharp corners.
func (p *chainPlan) eased(a, b int) L {
	va, vb := p.verts[a], p.verts[b]
	return L(math.Round((va.arc + vb.arc - va.tan - vb.tan) * p.ratio * float64(length.Millimetre)))
}

// returns is the dimension of a leg, from the outer bend to the seam or raw end.
func (p *chainPlan) returns(m measure, a, b int) []measure {
	var x stop
	for _, y := range p.stops {
		if y.seg == m.seg {
			x = y
		}
	}
	name, figure := "", L(0)
	if a < 0 {
		c := p.bends[0]
		name, figure = c.Name, c.LeftReturnBottom
		m.from, m.to = x.along, p.segs[m.seg].long-p.verts[b].tan
		m.open[0] = true
	} else {
		c := p.bends[len(p.bends)-1]
		name, figure = c.Name, c.RightReturnBottom
		m.from, m.to = p.verts[a].tan, x.along
		m.open[1] = true
	}
	if x.beyond || m.to-m.from < 0.05 {
		return nil
	}
	m.figure = p.Style.Format(figure)
	m.tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", name), folio.Datum("width", folio.Mm(figure))}}
	return []measure{m}
}

// open reports whether an extension line may be drawn at an end of a segment: not where it would lie along the next
// face.
func (p *chainPlan) open(i, end int, side float64) bool {
	a, b := p.bounds(i)
	v := a
	if end == 1 {
		v = b
	}
	if v < 0 {
		return true
	}
	turn := p.verts[v].turn * side
	return turn < 80 // concave on that side, and near a square
}

// choose finds the side of every face at which its dimensions stand freely: those of an outer bend on its outer side.
func (p *chainPlan) choose() {
	n := len(p.segs)
	p.sides = make([]float64, n)
	best := math.Inf(1)
	sides := make([]float64, n)
	costs := p.sideCosts()
	for bits := range 1 << n {
		cost := 0.0
		for i := range n {
			s := bits >> i & 1
			cost += costs[i][s]
			sides[i] = 1 - 2*float64(s)
		}
		if cost >= best {
			continue
		}
		for v := range p.verts { // both of two dimensions inside the same angle
			i, j := p.before(v), p.after(v)
			if t := p.verts[v].turn; sides[i] == sides[j] && t*sides[i] > 0 && i != j {
				cost += hardCost
			}
		}
		if cost < best {
			best = cost
			copy(p.sides, sides)
		}
	}
	if best >= hardCost {
		p.lost++
	}
}

// What a side costs at which the dimensions of a face do not stand freely.
const (
	behindCost = 0.01 // behind the board: of two sides as good as one another, the room
	insideCost = 1.0  // inside the angle of a bend
	acrossCost = 20.0 // across another face, or the band of its figures
	hardCost   = 50.0 // through a face, or two dimensions inside one angle: no better than no place
)

// sideCosts says how badly the dimensions of each segment stand in the room, and behind the board.
func (p *chainPlan) sideCosts() [][2]float64 {
	k := p.Look
	list := make([][2]float64, len(p.segs))
	for i := range p.segs {
		for s := range 2 {
			side := 1 - 2*float64(s)
			cost := behindCost * float64(s)
			a, b := p.bounds(i)
			for _, v := range []int{a, b} {
				if v < 0 {
					continue
				}
				switch t := p.verts[v].turn * side; {
				case t > 100: // its extension line would run through the next face
					cost += hardCost
				case t > 0:
					cost += insideCost
				}
			}
			far := k.Of(tierOff) + math.Max(p.bt, p.vo+k.Of(1.2))
			if p.inner(i) && len(p.figures(p.Style, i)) > 1 {
				far += k.Of(tierPitch)
			}
			// the band between face and line, with its figures, has to be clear of all other faces
			for _, off := range []float64{far * 0.6, far, far + k.Of(4)} {
				c, d := p.on(i, 0, side*off), p.on(i, p.segs[i].long, side*off)
				for j := range p.segs {
					if j == i || p.joined(i, j) {
						continue
					}
					if meets(c, d, p.on(j, 0, 0), p.on(j, p.segs[j].long, 0)) || meets(c, d, p.on(j, 0, -p.bt), p.on(j, p.segs[j].long, -p.bt)) {
						cost += acrossCost
					}
				}
			}
			list[i][s] = cost
		}
	}
	return list
}

// joined reports whether two segments meet at a bend.
func (p *chainPlan) joined(i, j int) bool {
	d := i - j
	n := len(p.segs)
	return d == 1 || d == -1 || p.loop && (d == n-1 || d == 1-n)
}

// meets reports whether two lines cross.
func meets(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
