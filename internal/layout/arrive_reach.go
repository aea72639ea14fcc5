package layout

import (
	"maps"
	"slices"
)

// reach holds what every sheet of a run is cut to against what it covers in the room as read.
func (a *arrival) reach(i int) {
	r, now := &a.plan.Runs[i], &a.now.plan.Runs[i]
	for k := range now.Sheets {
		t := &now.Sheets[k]
		if t.Hung || t.InGap || len(t.Pieces) == 0 {
			continue
		}
		s := r.course(t.Place, t.Course)
		wall, name := t.Pieces[0].Wall, SheetWords(t)
		if s == nil || s.CutLength == 0 {
			a.on(wall).Lacks = append(a.on(wall).Lacks, Lack{name, More, t.CutLength})
			continue
		}
		name = SheetWords(s)
		a.reachUp(s, t, name, r.Up)
		if t.Lowest {
			a.reachAcross(i, s, t, name)
		}
	}
	for k := range r.Sheets {
		if s := &r.Sheets[k]; !s.Hung && len(s.Pieces) > 0 && now.course(s.Place, s.Course) == nil {
			one := a.on(s.Pieces[0].Wall)
			one.Lacks = append(one.Lacks, Lack{SheetWords(s), Gone, s.CutLength})
		}
	}
}

// course finds one sheet of a place, nil where it has none of that course.
func (r *Run) course(place, course int) *Sheet {
	for _, k := range r.column(place) {
		if r.Sheets[k].Course == course {
			return &r.Sheets[k]
		}
	}
	return nil
}

// reachUp holds the cut length of a sheet against what it covers of each wall: up and down, and to the sides where the grain runs
// level.
func (a *arrival) reachUp(s, t *Sheet, name string, up bool) {
	level, sides := a.room.Space.LevelLine, [2]string{"head", "foot"}
	if up {
		level, sides = 0, [2]string{"right", "left"}
	}
	now, was := t.extents(up), s.extents(up)
	walls := slices.Sorted(maps.Keys(now))
	for _, wall := range walls {
		one, x, p := a.on(wall), now[wall], was[wall]
		if by := x[1] - (level + s.Above); by > 0 {
			one.Lacks = append(one.Lacks, Lack{name, sides[0], by})
		}
		if by := level - s.Below - x[0]; by > 0 {
			one.Lacks = append(one.Lacks, Lack{name, sides[1], by})
		}
		if _, planned := was[wall]; planned {
			one.Higher, one.Lower = max(one.Higher, x[1]-p[1]), max(one.Lower, p[0]-x[0])
		}
	}
}

// extents are the least and the greatest height of a sheet's pieces by wall, or the x of them where the grain runs level.
func (s *Sheet) extents(up bool) map[int][2]L {
	out := map[int][2]L{}
	for _, p := range s.Pieces {
		x, ok := out[p.Wall]
		if !ok {
			x = [2]L{far, -far}
		}
		for _, q := range p.Outline {
			at := q.Z
			if up {
				at = q.X
			}
			x = [2]L{min(x[0], at), max(x[1], at)}
		}
		out[p.Wall] = x
	}
	return out
}

// reachAcross holds the two ends of a span against the raw edges of their sheets as they are cut, and the gap that closes against
// what a sheet covers.
func (a *arrival) reachAcross(i int, s, t *Sheet, name string) {
	r, now := &a.plan.Runs[i], &a.now.plan.Runs[i]
	span, ends := &now.Spans[t.Span], now.Line.Spans[t.Span]
	first, last := t.Place == span.FirstSheet, t.Place == span.LastSheet
	by := a.moved[i][t.Span]
	tell := func(wall int, side string, lack, out L) {
		one := a.on(wall)
		one.Out = max(one.Out, out)
		if lack > 0 {
			one.Lacks = append(one.Lacks, Lack{name, side, lack})
		}
	}
	if last && (ends.Closed || span.RightSeam) {
		wall := r.Line.Find(s.Right).Wall
		tell(wall, Gap, t.Width-a.net, 0)
		return
	}
	if ends.Closed {
		return
	}
	if first && !span.LeftSeam {
		tell(ends.LeftEnd.Wall, side(r, "left"), s.StartLine+by-t.Left, s.Left+by-t.Left)
	}
	if last {
		tell(ends.RightEnd.Wall, side(r, "right"), t.Right-(s.RightLine+by), t.Right-(s.Right+by))
	}
}

// side is the word for an edge of a sheet as it hangs.
func side(r *Run, side string) string {
	if r.Up {
		return map[string]string{"left": "foot", "right": "head"}[side]
	}
	return side
}
