package detail

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Fitting finds how a chain stands best in a cell: at the usual scale where it can, in one cell or over two, else at the
// next smaller one. A single bend always stands, its returns broken off; a loop may take any scale.
func Fitting(s *folio.Set, c Chain, cell scene.Box, two bool) (Pose, bool) {
	k := s.Look
	if len(c.Bends) == 1 && !c.Loop {
		return Pose{Scale: DetailScale(s), Leg: k.Of(54)}, true
	}
	double := cell
	double.X1 += cell.W()
	scales := DetailScales(s)
	if !c.Loop {
		scales = scales[:3]
	}
	for _, scale := range scales {
		for _, wide := range []bool{false, true} {
			box := cell
			if wide {
				if box = double; !two {
					continue
				}
			}
			for _, rotation := range c.Rotations() {
				p := &ChainPlan{Set: s, Chain: c, Pose: Pose{Scale: scale, Wide: wide, Rotation: rotation}}
				if p.Legs(ClearOf(s, box), ReturnTable(s, c)) {
					return p.Pose, true
				}
			}
		}
	}
	return Pose{}, false
}

// Rotations are the directions tried for the first segment: as the way goes, then so that a face lies level.
func (c Chain) Rotations() []float64 {
	list := []float64{0}
	sum := 0.0
	verts := c.Vertices()
	for _, v := range verts[:len(verts)-1] {
		sum += v.Turn
		r := math.Mod(-sum, 360)
		known := false
		for _, o := range list {
			known = known || math.Abs(math.Mod(o-r+720, 360)) < 1e-6
		}
		if !known {
			list = append(list, r)
		}
	}
	return list
}

// Legs finds the longest returns, no longer than 54 on the office page, with which the plan and its table stand in a
// cell with nothing lost, and where they stand: over the title, or beside it.
func (p *ChainPlan) Legs(clear scene.Box, table *draft.Table) bool {
	k := p.Look
	high := clear.H() - k.Of(TitleFoot) - k.Of(2)
	var trial scene.Group
	page := p.Paper.PageNumber(int(folio.Details), 1)
	titled := TitleOf(p.Set, p.Chain, p.Scale, page, 1, clear).Draw(&trial, k, TitleAt(k, clear)).Inset(-k.Of(3))
	least := 12.0
	if p.Loop {
		least = 54
	}
	p.Leg, p.Origin = k.Of(least), scene.Pt(0, 0)
	if p.Shape(); !p.Roomy(clear.W(), clear.H()) && !p.Loop {
		return false // not even with the shortest
	}
	for leg := 54.0; leg >= least; leg *= 0.82 {
		p.Leg = k.Of(leg)
		p.Origin = scene.Pt(0, 0)
		p.Shape()
		if !p.Roomy(clear.W(), clear.H()) {
			continue
		}
		box := p.Trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
		if p.Lost > 0 || box.W() > clear.W() || box.H() > clear.H() {
			continue
		}
		over := scene.Box{X0: clear.X0, Y0: clear.Y0, X1: clear.X1, Y1: clear.Y0 + high}
		row := 0.0
		if table != nil {
			row = table.High(k) + k.Of(3)
		}
		raised := over
		raised.Y1 -= row
		beside := scene.Box{X0: titled.X1, Y0: clear.Y0, X1: clear.X1, Y1: clear.Y1}
		right := scene.Box{X0: clear.X1 - box.W(), Y0: clear.Y0, X1: clear.X1, Y1: clear.Y1}
		for _, at := range []scene.Box{over, raised, beside, right} {
			if p.Stands(clear, at, titled, box, table) {
				return true
			}
		}
	}
	return false
}

// Stands reports whether a plan whose box about the origin is known stands in the middle of a part of a cell, clear of
// the title, and its table beside it; and notes where.
func (p *ChainPlan) Stands(clear, in, titled, box scene.Box, table *draft.Table) bool {
	at := scene.Pt(in.Centre().X-box.Centre().X, in.Centre().Y-box.Centre().Y)
	lies := scene.Box{X0: box.X0 + at.X, Y0: box.Y0 + at.Y, X1: box.X1 + at.X, Y1: box.Y1 + at.Y}
	if !clear.Inset(-0.01).Contains(lies) {
		return false
	}
	space := draft.NewSpace(scene.Box{})
	p.Trial(at, space)
	if !space.Free(titled, 0) {
		return false
	}
	p.At = scene.Pt(at.X-clear.X0, at.Y-clear.Y0)
	if table == nil {
		return true
	}
	place, ok := p.TablePlace(table, clear, titled)
	p.Table = scene.Pt(place.X-clear.X0, place.Y-clear.Y0)
	return ok
}

// Roomy reports whether the faces alone stand in a box, and are long enough, and none comes near another.
func (p *ChainPlan) Roomy(w, h float64) bool {
	k := p.Look
	var points []scene.Point
	for i := range p.Segs {
		points = append(points, p.On(i, 0, 0), p.On(i, p.Segs[i].Long, 0))
		if p.Inner(i) && p.Segs[i].Long < k.Of(3) {
			return false
		}
		for j := range i {
			if p.Joined(i, j) {
				continue
			}
			for _, off := range []float64{-p.Bt - k.Of(2), 0, p.Vo + k.Of(2)} {
				if Meets(p.On(i, 0, off), p.On(i, p.Segs[i].Long, off), p.On(j, 0, 0), p.On(j, p.Segs[j].Long, 0)) {
					return false
				}
			}
		}
	}
	box := BoxAround(points)
	return box.W() <= w && box.H() <= h
}

// Trial draws the plan nowhere, to see what it takes.
func (p *ChainPlan) Trial(at scene.Point, space *draft.Space) scene.Box {
	var trial scene.Group
	p.G, p.Origin, p.Space, p.Dry = &trial, at, space, true
	p.Draw()
	p.Dry = false
	return trial.Bounds()
}

// Place puts the plan into a cell: a chain as it was found to stand, a single bend into the upper part, its returns
// shortened until it stands there; and gives the place of its table: in white that the plan leaves, else in a row of its
// own over the title.
func (p *ChainPlan) Place(clear, titled scene.Box, table *draft.Table) scene.Point {
	k := p.Look
	if len(p.Bends) > 1 {
		p.Origin = scene.Pt(clear.X0+p.At.X, clear.Y0+p.At.Y)
		return scene.Pt(clear.X0+p.Table.X, clear.Y0+p.Table.Y)
	}
	high := clear.H() - k.Of(TitleFoot) - k.Of(2)
	p.Fit(clear, high)
	if table == nil {
		return scene.Point{}
	}
	if at, ok := p.TablePlace(table, clear, titled.Inset(-k.Of(2))); ok {
		return at
	}
	row := table.High(k) + k.Of(3)
	p.Fit(clear, high-row)
	return scene.Pt(clear.X1-table.Width(), titled.Y0-row)
}

// Fit shortens the returns of a single bend until the plan stands in the upper part of a cell, and places it there.
func (p *ChainPlan) Fit(clear scene.Box, high float64) {
	k := p.Look
	for range 16 {
		box := p.Trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
		if box.W() <= clear.W() && box.H() <= high && p.Lost == 0 || p.Leg < k.Of(8) {
			p.Origin = scene.Pt(clear.Centre().X-box.Centre().X, clear.Y0+high/2-box.Centre().Y)
			return
		}
		p.Leg *= 0.88
	}
}

// TablePlace finds a place for a table: in the white beside the plan, over the title or beside it.
func (p *ChainPlan) TablePlace(t *draft.Table, clear, titled scene.Box) (scene.Point, bool) {
	k := p.Look
	space := draft.NewSpace(clear.Inset(-1))
	p.Trial(p.Origin, space)
	space.Take(titled)
	w, h := t.Width(), t.High(k)
	low, right := titled.Y0-k.Of(2)-h, clear.X1-w
	for _, c := range []scene.Point{{X: clear.X0, Y: low}, {X: clear.X0, Y: clear.Y0}, {X: right, Y: low}, {X: right, Y: clear.Y0}, {X: right, Y: clear.Y1 - h}, {X: clear.Centre().X - w/2, Y: clear.Y1 - h}} {
		if space.Free(scene.BoxAt(c.X, c.Y, w, h), k.Of(1.8)) {
			return c, true
		}
	}
	return scene.Point{}, false
}
