package detail

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Lengths of a return past an outer bend, as drawn, in mm on the office page.
const (
	longestLeg  = 54.0 // no more is to be seen on a longer one
	shortestLeg = 12.0 // room for its dimension and the mark of its end
	legStep     = 0.82 // from one length tried to the next, as a share
)

// fitting finds how a chain stands in a cell: the first of
//
//  1. the scales from the usual one down, for what is drawn larger is read better;
//  2. at each scale one cell, then two side by side;
//  3. in each the way along the page as the walls go, then turned so that another face lies level;
//  4. for each of these the longest returns, see legs.
//
// A single bend always stands, its returns broken off; a loop may take any scale, another chain the first three.
func fitting(s *folio.Set, c chain, cell scene.Box, two bool) (pose, bool) {
	k := s.Look
	if len(c.bends) == 1 && !c.loop {
		return pose{scale: detailScale(s), leg: k.Of(longestLeg)}, true
	}
	double := cell
	double.X1 += cell.W()
	scales := detailScales(s)
	if !c.loop {
		scales = scales[:chainScales]
	}
	for _, scale := range scales {
		for _, wide := range []bool{false, true} {
			box := cell
			if wide {
				if box = double; !two {
					continue
				}
			}
			for _, rotation := range c.rotations() {
				p := &chainPlan{Set: s, chain: c, pose: pose{scale: scale, wide: wide, rotation: rotation}}
				if p.legs(clearOf(s, box), returnTable(s, c)) {
					return p.pose, true
				}
			}
		}
	}
	return pose{}, false
}

// chainScales is how many of the scales of a detail a chain may take: smaller, its returns could not be read.
const chainScales = 3

// rotations are the directions tried for the first segment: as the way goes, then so that a face lies level.
func (c chain) rotations() []float64 {
	list := []float64{0}
	sum := 0.0
	verts := c.vertices()
	for _, v := range verts[:len(verts)-1] {
		sum += v.turn
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

// legs finds the longest returns with which the plan and its table stand in a cell with nothing lost, and where they
// stand. For each length, from the longest down, it tries
//
//  1. the middle of the cell over the title;
//  2. the same raised by the height of the table, which then stands in a row under it;
//  3. beside the title, as high as the cell;
//  4. against the right edge of the cell, as high as it.
func (p *chainPlan) legs(clear scene.Box, table *draft.Table) bool {
	k := p.Look
	var trial scene.Group
	page := p.Paper.PageNumber(int(folio.Details), 1)
	t := titleOf(p.Set, p.chain, p.scale, page, 1, clear)
	high := clear.H() - footOf(k, t) - k.Of(2)
	titled := t.Draw(&trial, k, titleAt(k, t, clear)).Inset(-k.Of(3))
	least := shortestLeg
	if p.loop {
		least = longestLeg
	}
	p.leg, p.origin = k.Of(least), scene.Pt(0, 0)
	if p.shape(); !p.roomy(clear.W(), clear.H()) && !p.loop {
		return false // not even with the shortest
	}
	for leg := longestLeg; leg >= least; leg *= legStep {
		p.leg = k.Of(leg)
		p.origin = scene.Pt(0, 0)
		p.shape()
		if !p.roomy(clear.W(), clear.H()) {
			continue
		}
		box := p.trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
		if p.lost > 0 || box.W() > clear.W() || box.H() > clear.H() {
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
			if p.stands(clear, at, titled, box, table) {
				return true
			}
		}
	}
	return false
}

// stands reports whether a plan whose box about the origin is known stands in the middle of a part of a cell, clear of
// the title, and its table beside it; and notes where.
func (p *chainPlan) stands(clear, in, titled, box scene.Box, table *draft.Table) bool {
	at := scene.Pt(in.Centre().X-box.Centre().X, in.Centre().Y-box.Centre().Y)
	lies := scene.Box{X0: box.X0 + at.X, Y0: box.Y0 + at.Y, X1: box.X1 + at.X, Y1: box.Y1 + at.Y}
	if !clear.Inset(-0.01).Contains(lies) {
		return false
	}
	space := draft.NewSpace(scene.Box{})
	p.trial(at, space)
	if !space.Free(titled, 0) {
		return false
	}
	p.at = scene.Pt(at.X-clear.X0, at.Y-clear.Y0)
	if table == nil {
		return true
	}
	place, ok := p.tablePlace(table, clear, titled)
	p.table = scene.Pt(place.X-clear.X0, place.Y-clear.Y0)
	return ok
}

// roomy reports whether the faces alone stand in a box, and are long enough, and none comes near another.
func (p *chainPlan) roomy(w, h float64) bool {
	k := p.Look
	var points []scene.Point
	for i := range p.segs {
		points = append(points, p.on(i, 0, 0), p.on(i, p.segs[i].long, 0))
		if p.inner(i) && p.segs[i].long < k.Of(3) {
			return false
		}
		for j := range i {
			if p.joined(i, j) {
				continue
			}
			for _, off := range []float64{-p.bt - k.Of(2), 0, p.vo + k.Of(2)} {
				if meets(p.on(i, 0, off), p.on(i, p.segs[i].long, off), p.on(j, 0, 0), p.on(j, p.segs[j].long, 0)) {
					return false
				}
			}
		}
	}
	box := scene.Around(points...)
	return box.W() <= w && box.H() <= h
}

// trial draws the plan nowhere, to see what it takes.
func (p *chainPlan) trial(at scene.Point, space *draft.Space) scene.Box {
	var trial scene.Group
	p.g, p.origin, p.space, p.dry = &trial, at, space, true
	p.draw()
	p.dry = false
	return trial.Bounds()
}

// place puts the plan into a cell: a chain as it was found to stand, a single bend into the upper part, its returns
// shortened until it stands there; and gives the place of its table: in white that the plan leaves, else in a row of its
// own over the title.
func (p *chainPlan) place(clear, titled scene.Box, table *draft.Table) scene.Point {
	k := p.Look
	if len(p.bends) > 1 {
		p.origin = scene.Pt(clear.X0+p.at.X, clear.Y0+p.at.Y)
		return scene.Pt(clear.X0+p.table.X, clear.Y0+p.table.Y)
	}
	high := clear.H() - footOf(k, titleOf(p.Set, p.chain, p.scale, "", 1, clear)) - k.Of(2)
	p.fit(clear, high)
	if table == nil {
		return scene.Point{}
	}
	if at, ok := p.tablePlace(table, clear, titled.Inset(-k.Of(2))); ok {
		return at
	}
	row := table.High(k) + k.Of(3)
	p.fit(clear, high-row)
	return scene.Pt(clear.X1-table.Width(), titled.Y0-row)
}

// The returns of a single bend are shortened in up to so many steps, each to that share of the length before, and no
// further than to a length on the office page.
const (
	fitSteps = 16
	fitStep  = 0.88
	fitLeast = 8
)

// fit shortens the returns of a single bend until the plan stands in the upper part of a cell, and places it there.
func (p *chainPlan) fit(clear scene.Box, high float64) {
	k := p.Look
	for range fitSteps {
		box := p.trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
		if box.W() <= clear.W() && box.H() <= high && p.lost == 0 || p.leg < k.Of(fitLeast) {
			p.origin = scene.Pt(clear.Centre().X-box.Centre().X, clear.Y0+high/2-box.Centre().Y)
			return
		}
		p.leg *= fitStep
	}
}

// standsAlone reports whether a single bend, its returns broken off as far as they may be, stands in a cell over its title, with its
// table.
func standsAlone(s *folio.Set, c chain, cell scene.Box) bool {
	k, clear := s.Look, clearOf(s, cell)
	p := &chainPlan{Set: s, chain: c, pose: pose{scale: detailScale(s), leg: s.Look.Of(longestLeg)}}
	t := titleOf(s, c, p.scale, s.Paper.PageNumber(int(folio.Details), 1), 1, clear)
	var trial scene.Group
	titled := t.Draw(&trial, k, titleAt(k, t, clear))
	table := returnTable(s, c)
	at := p.place(clear, titled, table)
	o := p.origin
	box := p.trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
	lies := scene.Box{X0: box.X0 + o.X, Y0: box.Y0 + o.Y, X1: box.X1 + o.X, Y1: box.Y1 + o.Y}
	if p.lost > 0 || !clear.Inset(-0.01).Contains(lies) || lies.Meets(titled) {
		return false
	}
	space := draft.NewSpace(scene.Box{})
	p.trial(o, space)
	return table == nil || space.Free(scene.Box{X0: at.X, Y0: at.Y, X1: at.X + table.Width(), Y1: at.Y + table.High(k)}, 0)
}

// tablePlace finds a place for a table in the white beside the plan, so that it lies against an edge of the cell: at the
// left over the title, where it is read with it, then in the upper left corner; the same at the right; in the lower right
// corner beside the title; in the middle beside it.
func (p *chainPlan) tablePlace(t *draft.Table, clear, titled scene.Box) (scene.Point, bool) {
	k := p.Look
	space := draft.NewSpace(clear.Inset(-1))
	p.trial(p.origin, space)
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
