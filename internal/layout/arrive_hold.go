package layout

import (
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// hold lays the room as read with the sheets of the plan. Where that cannot be done at all it says why.
func (a *arrival) hold(now *room.Room) (why string) {
	lines, err := run.Unroll(now)
	if err != nil || len(lines) != len(a.plan.Runs) {
		return "as read the covering is parted otherwise"
	}
	plain := &builder{room: now, aim: a.aim, style: a.style, net: a.net, plan: &Plan{Room: now, Style: a.style}}
	held := make([][]*question, len(lines))
	a.moved = make([][]L, len(lines))
	for i, line := range lines {
		asked := plain.questions(line)
		if len(asked) != len(a.asked[i]) {
			return "as read the covering is parted otherwise"
		}
		a.moved[i] = make([]L, len(asked))
		for k, q := range asked {
			fits := true
			if q.found, a.moved[i][k], fits = a.held(a.asked[i][k], q); !fits {
				return "as read a span has no room for its last sheet, or for another one: the sheets come out otherwise"
			}
		}
		held[i] = asked
	}
	const otherwise = "as read the sheets come out otherwise"
	t := begin(now, a.aim, nil, a.shapes)
	if t.solve(func(run int) []*question { return held[run] }, a.plan) != nil {
		return otherwise
	}
	t.tile()
	if err := t.number(); err != nil {
		return otherwise
	}
	t.measureCorners()
	t.plan.Findings = nil // what was said on the way is no must of the room
	for i := range t.plan.Runs {
		t.judgeWidths(i)
		t.judgeSeams(i)
		t.judgeCorners(i)
		t.judgeOpenings(i)
	}
	t.judgeClosure()
	a.now = t
	return ""
}

// held are the seams of a span in the room as read, all as far from where it begins as planned, and how far along the run they
// have moved. It is false where one of them falls out of the span.
func (a *arrival) held(plan, now *question) (seam.Layout, L, bool) {
	if plan.done || now.done {
		return now.found, now.left - plan.left, plan.done == now.done
	}
	if plan.Closed != now.Closed {
		return seam.Layout{}, 0, false
	}
	found := seam.Layout{Closing: -1, Score: plan.found.Score}
	if !plan.Closed {
		by := L(now.L - plan.L) // after what hangs
		if len(plan.hung) == 0 {
			by = a.begin(plan, now, plan.from.LeftEnd.Wall)
		}
		for _, s := range plan.found.Seams {
			found.Seams = append(found.Seams, s+int64(by))
			if s+int64(by) <= now.L || s+int64(by) >= now.R {
				return found, by, false
			}
		}
		return found, by, true
	}
	bounds, _ := plan.bounds(plan.found)
	by := a.begin(plan, now, plan.line.Find(bounds[0]).Wall)
	first := int64(bounds[0] + by)
	for _, s := range bounds[:len(bounds)-1] {
		at := int64(s + by)
		if at >= first+now.Period {
			return found, by, false
		}
		found.Seams = append(found.Seams, int64(now.line.Round(L(at))))
	}
	closing := found.Seams[0]
	slices.Sort(found.Seams)
	found.Closing = slices.Index(found.Seams, closing)
	return found, by, true
}

// begin is how far along its run a wall has moved on which a span begins: what begins there stays where it is on that wall.
func (a *arrival) begin(plan, now *question, wall int) L {
	was, _ := plan.line.Of(wall)
	is, _ := now.line.Of(wall)
	return is.Shift - was.Shift
}

// rightBy is how far right of the plan something of a span's sheets stands on a wall, at the floor; turns is how often the sheets have
// gone round the room when they come to it.
func (a *arrival) rightBy(i, span int, wall, turns int) L {
	was, now := a.plan.Runs[i].Line, a.now.plan.Runs[i].Line
	from, _ := was.Of(wall)
	to, _ := now.Of(wall)
	return a.moved[i][span] - (to.Shift - from.Shift) - L(turns)*(now.Length-was.Length)
}

// musts finds those of the room as read that the plan does not have, and the pins that it meets and the room as read does not.
func (a *arrival) musts() {
	type key struct {
		code           finding.Code
		place, message string
	}
	had := map[key]bool{}
	for _, f := range a.plan.Findings {
		had[key{f.Code, f.Place, f.Message}] = true
	}
	for _, f := range a.now.plan.Findings {
		if f.Level == finding.Must && !had[key{f.Code, f.Place, f.Message}] {
			wall := f.Wall
			if wall < 0 {
				wall = a.longest()
			}
			a.on(wall).Broken = append(a.on(wall).Broken, f)
		}
	}
	for i := range a.plan.Runs {
		a.pins(i)
	}
}

// longest is the wall whose length was read the furthest off: what the room as a whole does not bear is said of it.
func (a *arrival) longest() int {
	wall, most := a.room.Readings[0].Wall, L(-1)
	for _, x := range a.room.Readings {
		if d := (a.now.room.Walls[x.Wall].Length - a.room.Walls[x.Wall].Length).Abs(); d > most {
			wall, most = x.Wall, d
		}
	}
	return wall
}

// pins finds the pins of a run that the plan meets and the room as read does not.
func (a *arrival) pins(i int) {
	for k, q := range a.asked[i] {
		for _, p := range q.pins {
			if _, _, met := a.plan.Runs[i].meets(p); !met {
				continue
			}
			for _, now := range a.now.asked[i][k].pins {
				if now.where != p.where || now.x != p.x || now.wall != p.wall {
					continue
				}
				if _, _, met := a.now.plan.Runs[i].meets(now); !met {
					b := &builder{room: a.room, style: a.style, plan: &Plan{}}
					b.dropped(now, "the sheets come to stand elsewhere")
					a.on(p.wall).Broken = append(a.on(p.wall).Broken, b.plan.Findings...)
				}
			}
		}
	}
}
