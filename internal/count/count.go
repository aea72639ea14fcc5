// Package count tells the numbers of a job: sheets by flitch, wall and length, the cut list, areas and where they go,
// paste, primer and small material, what to order, and how much may go wrong before the layout falls.
//
// Coordinates and units: exact lengths; areas are kept as twice the area, which is a whole number of units. In the cut
// list distances across a sheet run from its left edge as hung, raw or ripped, heights from the level line, up is positive.
//
// Order: flitches, walls in file order, sheets by place, then by course.
//
// Not here: where sheets go (package layout), how tables are set (package report), when sheets hang (package days), what
// changed from another plan (package diff), pages.
package count

import (
	"slices"

	"flitchlay/internal/face"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Count is the numbers of one room.
type Count struct {
	Plan     *layout.Plan
	Room     string // how tables name it: title and room number
	Style    length.Style
	Flitches []Flitch // none where the room gives none
	All      Flitch   // all of them together
	Sheets   int      // laid, those in gaps included
	Spares   int      // to have over
	Walls    []Wall
	Lengths  []Stock
	Cuts     []Cut
	Kept     []Kept
	Areas    Areas
	Material Material
	Longest  Longest
	Margins  *Margins // nil until Solve finds them
	Order    []Line
	Broken   bool // a must finding
}

// Of counts a plan. The margins that need solving again are not in it: see Solve.
func Of(p *layout.Plan) *Count {
	c := &Count{Plan: p, Room: p.Room.Project.Title, Style: p.Style, Sheets: p.Totals.Sheets, Spares: p.Totals.Spares,
		Broken: finding.Any(p.Findings, finding.Must)}
	if n := p.Room.Project.Room; n != "" {
		c.Room += ", room " + n
	}
	lines := face.Lines(p)
	for i := range p.Runs {
		r := &p.Runs[i]
		beds := measure(p, r)
		for k := range r.Sheets {
			s := &r.Sheets[k]
			c.Areas.add(p.Room, r, s, beds[k])
			if s.CutLength > 0 {
				c.Cuts = append(c.Cuts, cut(p, r, s, beds[k], lines[s]))
			}
		}
	}
	c.rawEnds()
	c.flitches()
	c.walls()
	c.lengths()
	c.kept()
	c.material()
	c.Order = c.order()
	return c
}

// rawEnds finds out at which of its ends, as it hangs, nothing is cut off a sheet that is marked at its flitch's register.
func (c *Count) rawEnds() {
	list, least := c.Plan.Registers(), c.Style.Least()
	for i := range c.Cuts {
		x := &c.Cuts[i]
		k := slices.IndexFunc(list, func(r layout.Register) bool {
			return r.Flitch == x.sheet.Flitch && r.Course == x.sheet.Course && r.Turned == x.sheet.Turned
		})
		if x.Level || k < 0 {
			continue
		}
		top := list[k].At
		if list[k].Foot {
			top += c.room().Veneer.Length
		}
		x.RawHead, x.RawFoot = top-x.Above <= least, -x.Below-(top-c.room().Veneer.Length) <= least
	}
}

// bed is what a sheet covers before openings are taken out.
type bed struct {
	low, high   L           // of the covering in its width
	solid       length.Area // twice its area
	top, bottom L           // trims
	found       bool        // there is covering
}

// room is the room that is counted.
func (c *Count) room() *room.Room { return c.Plan.Room }

// each goes through all sheets in order.
func (c *Count) each(f func(*layout.Run, *layout.Sheet)) {
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for k := range r.Sheets {
			f(r, &r.Sheets[k])
		}
	}
}
