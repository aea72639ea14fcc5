package layout

import (
	"fmt"
	"slices"
)

// courses looks for changes that make a tall wall take fewer courses, or a band fewer pieces. No span is solved for it: no
// change tried here moves a seam, and where one does the room laid out again tells.
func (s *search) courses() {
	var tall []int
	now := s.piles(&nudge{}, 0)
	for wall := range now {
		tall = append(tall, wall)
	}
	if len(tall) == 0 {
		return
	}
	slices.Sort(tall)
	list := []nudge{s.topTrim(), s.bottomTrim(), s.longerStock()}
	if s.room.Veneer.Horizontal {
		list = []nudge{s.edgeTrim(), s.longerStock()}
	}
	for _, wall := range tall {
		if s.room.Veneer.Horizontal {
			list = append(list, s.shorter(wall))
		} else {
			list = append(list, s.lower(wall))
		}
	}
	for _, c := range list {
		at := func(step int) string {
			if step == 0 {
				return fmt.Sprint(now)
			}
			return fmt.Sprint(s.piles(&c, L(step)*s.step))
		}
		turns(s.steps(&c), at, func(step int, _ string) {
			then := s.piles(&c, L(step)*s.step)
			var want []thing
			for _, wall := range tall {
				if max(1, then[wall]) < now[wall] {
					want = append(want, thing{savesCourse, wall})
				}
			}
			if len(want) > 0 {
				s.hope(c, L(step), want[0].at, want...)
			}
		})
	}
}

// piles is how many courses each tall wall takes with a change made and every seam where it is.
func (s *search) piles(c *nudge, by L) map[int]int {
	out := map[int]int{}
	r, ok := s.room, true
	if by > 0 {
		r, ok = s.changed(c, by)
	}
	t := builder{room: r, aim: s.aim, style: s.style, net: s.net, shapes: s.shapes}
	for i := range s.plan.Runs {
		run := s.plan.Runs[i]
		switch {
		case len(run.Joints) == 0:
		case by == 0 || !ok:
			s.piled(&run, run.courses, run.Joints, out)
		case run.Up:
			t.piled(&run, courses{}, t.bands(&run), out)
		default:
			stacked := t.stack(&run)
			t.piled(&run, stacked, stacked.joints, out)
		}
	}
	return out
}

// short looks for changes that make a sheet long enough which has to be cut longer than it is.
func (s *search) short() {
	have := s.room.Veneer.Length
	want := thing{savesMust, -1}
	for i := range s.plan.Runs {
		r := &s.plan.Runs[i]
		for k := range r.Sheets {
			sheet := &r.Sheets[k]
			if r.Up || sheet.CutLength <= have {
				continue
			}
			wall, _ := s.sheetAt(r, sheet)
			steps := s.over(sheet.CutLength - have)
			column := r.column(sheet.Place)
			if k == column[len(column)-1] {
				s.hope(s.topTrim(), steps, wall, want)
				s.hope(s.lower(wall), steps, wall, want)
			}
			if sheet.Lowest {
				s.hope(s.bottomTrim(), steps, wall, want)
			}
			s.hope(s.longerStock(), steps, wall, want)
		}
	}
}
