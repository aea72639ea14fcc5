package recheck

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ownHole is a hole of a box on the walls of a sheet: its edges across the sheets and those of the plate, and at which of them the
// sheet shows.
type ownHole struct {
	box         string
	hole, plate [2]int64
	shows       [2]bool
}

// holesOf are the holes beside which some sheet of a place shows, read off its printed pieces.
func (t *shifted) holesOf(p *printedRun, place int) []ownHole {
	var list []ownHole
	for _, st := range t.line.walls {
		w := t.line.wall(st)
		for i := range w.Boxes {
			b := &w.Boxes[i]
			size := [4]int64{int64(b.HoleWidth), int64(b.HoleHigh), int64(b.PlateWidth), int64(b.PlateHigh)}
			if b.Kind.Traits().NeverCovered {
				size[0], size[1] = size[2], size[3]
			}
			round := func(at, size int64) [2]int64 { return [2]int64{at - size>>1, at - size>>1 + size} }
			x, z := round(int64(b.X), size[0]), round(int64(b.Z), size[1])
			h := ownHole{b.Name, x, round(int64(b.X), size[2]), [2]bool{}}
			along := (z[0] + z[1]) / 2
			if p.Axis == "up" {
				h.hole, h.plate, along = z, round(int64(b.Z), size[3]), (x[0]+x[1])/2
			}
			for k, at := range [2]int64{h.hole[0] - 1, h.hole[1] + 1} {
				q := point{float64(at), float64(along)}
				if p.Axis == "up" {
					q = point{q.z, q.x}
				}
				h.shows[k] = t.showsAt(p, place, w.Name, q)
			}
			if h.shows[0] || h.shows[1] {
				list = append(list, h)
			}
		}
	}
	return list
}

// showsAt reports whether a point of a wall lies in a printed piece of a place.
func (t *shifted) showsAt(p *printedRun, place int, wall string, q point) bool {
	in := func(outline [][2]num) bool {
		odd := false
		for i := range outline {
			a, b := outline[i], outline[(i+1)%len(outline)]
			ax, az, bx, bz := float64(units(t.t, a[0])), float64(units(t.t, a[1])), float64(units(t.t, b[0])), float64(units(t.t, b[1]))
			if (az > q.z) != (bz > q.z) && q.x < ax+(q.z-az)/(bz-az)*(bx-ax) {
				odd = !odd
			}
		}
		return odd
	}
	for i := range p.Sheets {
		for _, piece := range p.Sheets[i].Pieces {
			if p.Sheets[i].Place != place || piece.Wall != wall || !in(piece.Outline) {
				continue
			}
			hole := false
			for _, o := range piece.Holes {
				hole = hole || in(o)
			}
			if !hole {
				return true
			}
		}
	}
	return false
}

// bared names the boxes beside whose plates a hole shows when its sheet is off by so much.
func bared(own []ownHole, way, by int64) []string {
	var list []string
	for _, h := range own {
		left, right := h.hole[0]+way*by, h.hole[1]+way*by
		if h.shows[0] && left < h.plate[0] && way < 0 || h.shows[1] && right > h.plate[1] && way > 0 {
			list = append(list, h.box)
		}
	}
	return list
}

// A wall whose lines may be off by what is left of plates round the holes of their sheets, worked out by hand: an outlet of 2 in with a
// plate of 2 3/4 in, and a device that is never covered, cut round its plate.
func TestHolesOfTheSheetItselfCount(t *testing.T) {
	text := `[project]
title = "One wall"
[veneer]
gross_width = 25
overlap = 1
length = 120
[[wall]]
name = "Only"
length = 100
height = 96
[[wall.box]]
kind = "outlet"
x = 30
z = 16
hole = [2, 3]
plate = ["2 3/4", "4 1/2"]
[[wall.box]]
kind = "alarm"
x = 50
z = 90
`
	p := check(t, text)
	seams := p.Runs[0].Seams
	require.Len(t, seams, 4)
	const in = 25.4
	for i, want := range [][2]float64{0: {-1, -1}, 1: {3. / 8, 3. / 8}, 3: {-1, -1}} {
		off := seams[i].MayBeOff
		require.NotNil(t, off, i)
		for k, l := range []*printedLimit{off.Left, off.Right} {
			if i == 2 { // see below
				continue
			}
			require.NotNil(t, l)
			if assert.Equal(t, want[k] >= 0, l.Must == "plate", "line %d: %s", i, l.Must); want[k] >= 0 {
				assert.InDelta(t, want[k]*in, mm(units(t, l.By)), 1e-9)
				assert.Equal(t, "E1", *l.At)
			}
		}
	}
	third := seams[2].MayBeOff
	assert.Equal(t, []string{"plate", "plate"}, []string{third.Left.Must, third.Right.Must})
	assert.Equal(t, []int64{0, 0}, []int64{units(t, third.Left.By), units(t, third.Right.By)}, "it is cut round its plate")
}
