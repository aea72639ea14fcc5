package detail

import (
	"math"
	"slices"

	"flitchlay/internal/scene"
)

// Places for the number of a sheet. Distances are mm on the office page.
const (
	angleFirst  = 15.1 // from a bend into its angle: as far as it looks well
	angleSharp  = 17.1 // the same behind the board, which takes some of the angle
	angleReach  = 16.0 // further than the first
	angleStep   = 2.0
	leaderFirst = 10.0 // from a face, on a leader
	leaderReach = 34.0
	leaderStep  = 1.5
)

// Places for the number of a sheet, in the order in which they are tried.
var (
	stubOuts    = []float64{6, 4.5, 8, 3, 10, 2, 1}            // from the seam of a neighbour into it, mm on the office page
	faceShares  = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} // of the length of a face
	numberTurns = []float64{0, 25, -25, 50, -50}               // of a leader from straight off the face, degrees
)

// numberPlace finds where the number of a sheet stands: the first free place of
//
//  1. the angle of a bend that stands alone, as near as it looks well, where the number says at a glance that the sheet
//     goes round;
//  2. of a neighbour that is broken off, close by its seam: a little way into it first, for much of it is not drawn;
//  3. beside its faces on the side without dimensions, the longest face first, from its middle to both ends by turns;
//  4. the same on the side with the dimensions;
//  5. further off on a leader, whose foot is given: the nearest first, straight off the face before slanted.
func (p *chainPlan) numberPlace(r sheetRun, w, h float64) (c, foot scene.Point, ok bool) {
	k := p.Look
	free := func(c scene.Point) bool { return p.space.Free(scene.BoxRound(c, w, h), k.Of(0.7)) }
	parts := p.parts(r)
	if c, ok = p.inBend(r, w, free); ok {
		return c, foot, true
	}
	slices.SortStableFunc(parts, func(a, b facePart) int {
		switch {
		case a.long() > b.long()+1e-6:
			return -1
		case b.long() > a.long()+1e-6:
			return 1
		}
		return 0
	})
	clear := func(seg int, side float64) float64 { // of its middle from the face: half of what it takes across the face
		r := p.segs[seg].r
		half := math.Abs(r.X)*(w-h)/2 + h/2
		if side > 0 {
			return p.vo + k.Of(2.4) + half
		}
		return p.bt + k.Of(1.9) + half
	}
	if c, ok = p.besideSeam(r, clear, free); ok {
		return c, foot, true
	}
	for _, other := range []float64{-1, 1} {
		for _, f := range parts {
			side := other * p.sides[f.seg]
			for _, t := range faceShares {
				if c := p.on(f.seg, f.from+t*(f.to-f.from), side*clear(f.seg, side)); free(c) {
					return c, foot, true
				}
			}
		}
	}
	return p.onLeader(parts, free)
}

// inBend is step 1 of numberPlace.
func (p *chainPlan) inBend(r sheetRun, w float64, free func(scene.Point) bool) (c scene.Point, ok bool) {
	if len(p.bends) != 1 || len(r.bends) != 1 {
		return c, false
	}
	k := p.Look
	sign := math.Copysign(1, p.verts[0].turn)
	first := angleFirst
	if sign < 0 {
		first = angleSharp
	}
	for more := first; more < first+angleReach; more += angleStep {
		if c := p.inAngle(0, sign, k.Of(more)+w/2-k.Of(4.5)); free(c) {
			return c, true
		}
	}
	return c, false
}

// besideSeam is step 2 of numberPlace.
func (p *chainPlan) besideSeam(r sheetRun, clear func(int, float64) float64, free func(scene.Point) bool) (c scene.Point, ok bool) {
	if !r.stub {
		return c, false
	}
	near, sign := r.to, -1.0
	if !r.gap[1] {
		near, sign = r.from, 1
	}
	for _, side := range []float64{-p.sides[near.seg], p.sides[near.seg]} {
		for _, out := range stubOuts {
			if c := p.on(near.seg, near.along+sign*p.Look.Of(out), side*clear(near.seg, side)); free(c) {
				return c, true
			}
		}
	}
	return c, false
}

// onLeader is step 5 of numberPlace.
func (p *chainPlan) onLeader(parts []facePart, free func(scene.Point) bool) (c, foot scene.Point, ok bool) {
	k := p.Look
	for out := leaderFirst; out < leaderReach; out += leaderStep {
		for _, f := range parts {
			at := p.on(f.seg, (f.from+f.to)/2, p.vo)
			for _, side := range []float64{-p.sides[f.seg], p.sides[f.seg]} {
				x, y := p.segs[f.seg].r.X*side, p.segs[f.seg].r.Y*side
				for _, turn := range numberTurns {
					sin, cos := scene.SinCos(turn)
					c := at.Add((x*cos-y*sin)*k.Of(out), (x*sin+y*cos)*k.Of(out))
					if free(c) && p.space.FreeLine(at, c, k.Of(0.5)) {
						return c, at, true
					}
				}
			}
		}
	}
	return c, foot, false
}

// inAngle is a place in the angle of a bend, so far from it, on one side.
func (p *chainPlan) inAngle(v int, side, far float64) scene.Point {
	at, q := p.corner(v, 0), p.corner(v, side*10)
	dx, dy := q.X-at.X, q.Y-at.Y
	l := math.Hypot(dx, dy)
	return at.Add(dx/l*far, dy/l*far)
}
