package detail

import (
	"math"

	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Measure is one dimension of a face: between two places on it, to its side.
type Measure struct {
	Seg      int
	From, To float64 // along the segment
	Side     float64 // 1 in the room, -1 behind the board
	First    float64 // where its extension lines begin, off the face
	Off      float64 // of its line
	Open     [2]bool // an extension line is drawn at that end
	Figure   string
	Tag      scene.Tag
}

// Distances of the dimensions of a face on the office page, as in package draft.
const (
	TierOff   = 9.0 // of the first line from what it measures
	TierPitch = 7.0
	OverRun   = 2.0 // of extension lines past the dimension line
	OverGap   = 1.0 // between an object and its extension line
	OverTick  = 2.4
)

// Measures are the dimensions of all faces: every return, and every face between two bends with the pieces of it.
func (p *ChainPlan) Measures() []Measure {
	k := p.Look
	var list []Measure
	for i := range p.Segs {
		side := p.Sides[i]
		first := k.Of(OverGap)
		if side > 0 {
			first += p.Vo + k.Of(1.2)
		} else {
			first += p.Bt
		}
		off := first - k.Of(OverGap) + k.Of(TierOff)
		m := Measure{Seg: i, Side: side, First: first, Off: off, Open: [2]bool{p.Open(i, 0, side), p.Open(i, 1, side)}}
		a, b := p.Bounds(i)
		if !p.Inner(i) {
			list = append(list, p.Returns(m, a, b)...)
			continue
		}
		whole := m
		whole.From, whole.To = 0, p.Segs[i].Long
		whole.Figure = p.Style.Format(Around(p.Run, p.Verts[b].At-p.Verts[a].At) - p.Eased(a, b))
		whole.Tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "face")}}
		if pieces := p.Figures(p.Style, i); len(pieces) > 1 {
			at := []float64{p.Verts[a].Tan}
			for _, x := range p.Stops {
				if d := Around(p.Run, x.S-p.Verts[a].At); x.Seg == i && !x.Raw && d > p.Verts[a].Half && d < Around(p.Run, p.Verts[b].At-p.Verts[a].At)-p.Verts[b].Half {
					at = append(at, x.Along)
				}
			}
			at = append(at, p.Segs[i].Long-p.Verts[b].Tan)
			for j, figure := range pieces {
				piece := m
				piece.From, piece.To, piece.Figure = at[j], at[j+1], figure
				if j > 0 {
					piece.Open[0] = false // the one before has it
				}
				if j < len(pieces)-1 {
					piece.Open[1] = true
				}
				piece.Tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "return")}}
				list = append(list, piece)
			}
			whole.Off += k.Of(TierPitch)
			if p.Verts[a].Tan == 0 {
				whole.First = off + k.Of(OverRun)
			}
		}
		list = append(list, whole)
	}
	return list
}

// Eased is what a face between two bends is longer along the way than between its sharp corners.
func (p *ChainPlan) Eased(a, b int) L {
	va, vb := p.Verts[a], p.Verts[b]
	return L(math.Round((va.Arc + vb.Arc - va.Tan - vb.Tan) * p.Ratio * 8000))
}

// Returns is the dimension of a leg, from the outer bend to the seam or raw end.
func (p *ChainPlan) Returns(m Measure, a, b int) []Measure {
	var x Stop
	for _, y := range p.Stops {
		if y.Seg == m.Seg {
			x = y
		}
	}
	name, figure := "", L(0)
	if a < 0 {
		c := p.Bends[0]
		name, figure = c.Name, c.LeftReturn
		m.From, m.To = x.Along, p.Segs[m.Seg].Long-p.Verts[b].Tan
		m.Open[0] = true
	} else {
		c := p.Bends[len(p.Bends)-1]
		name, figure = c.Name, c.RightReturn
		m.From, m.To = p.Verts[a].Tan, x.Along
		m.Open[1] = true
	}
	if x.Beyond || m.To-m.From < 0.05 {
		return nil
	}
	m.Figure = p.Style.Format(figure)
	m.Tag = scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", name), folio.Datum("width", folio.Mm(figure))}}
	return []Measure{m}
}

// Open reports whether an extension line may be drawn at an end of a segment: not where it would lie along the next
// face.
func (p *ChainPlan) Open(i, end int, side float64) bool {
	a, b := p.Bounds(i)
	v := a
	if end == 1 {
		v = b
	}
	if v < 0 {
		return true
	}
	turn := p.Verts[v].Turn * side
	return turn < 80 // concave on that side, and near a square
}

// Choose finds the side of every face at which its dimensions stand freely: those of an outer bend on its outer side.
func (p *ChainPlan) Choose() {
	n := len(p.Segs)
	p.Sides = make([]float64, n)
	best := math.Inf(1)
	sides := make([]float64, n)
	costs := p.SideCosts()
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
		for v := range p.Verts { // both of two dimensions inside the same angle
			i, j := p.Before(v), p.After(v)
			if t := p.Verts[v].Turn; sides[i] == sides[j] && t*sides[i] > 0 && i != j {
				cost += 50
			}
		}
		if cost < best {
			best = cost
			copy(p.Sides, sides)
		}
	}
	if best >= 50 {
		p.Lost++
	}
}

// SideCosts says how badly the dimensions of each segment stand in the room, and behind the board.
func (p *ChainPlan) SideCosts() [][2]float64 {
	k := p.Look
	list := make([][2]float64, len(p.Segs))
	for i := range p.Segs {
		for s := range 2 {
			side := 1 - 2*float64(s)
			cost := 0.01 * float64(s)
			a, b := p.Bounds(i)
			for _, v := range []int{a, b} {
				if v < 0 {
					continue
				}
				switch t := p.Verts[v].Turn * side; {
				case t > 100: // its extension line would run through the next face
					cost += 50
				case t > 0:
					cost++
				}
			}
			far := k.Of(TierOff) + math.Max(p.Bt, p.Vo+k.Of(1.2))
			if p.Inner(i) && len(p.Figures(p.Style, i)) > 1 {
				far += k.Of(TierPitch)
			}
			// the band between face and line, with its figures, has to be clear of all other faces
			for _, off := range []float64{far * 0.6, far, far + k.Of(4)} {
				c, d := p.On(i, 0, side*off), p.On(i, p.Segs[i].Long, side*off)
				for j := range p.Segs {
					if j == i || p.Joined(i, j) {
						continue
					}
					if Meets(c, d, p.On(j, 0, 0), p.On(j, p.Segs[j].Long, 0)) || Meets(c, d, p.On(j, 0, -p.Bt), p.On(j, p.Segs[j].Long, -p.Bt)) {
						cost += 20
					}
				}
			}
			list[i][s] = cost
		}
	}
	return list
}

// Joined reports whether two segments meet at a bend.
func (p *ChainPlan) Joined(i, j int) bool {
	d := i - j
	n := len(p.Segs)
	return d == 1 || d == -1 || p.Loop && (d == n-1 || d == 1-n)
}

// Meets reports whether two lines cross.
func Meets(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
