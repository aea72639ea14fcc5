package days

import "slices"

// placed is a sheet with its times, on a day that is tried.
type placed struct {
	task              int
	damp, hang, to    int
	breaks            []Step // before it
	group             bool   // a group begins with it
	look              bool   // the look that follows ends before the evening
	lookFrom, lookEnd int
}

// plan makes the days. A day ends where the last good stop place of its second half is; where there is none, after the
// last sheet that is done in time. A sheet is never begun that is not done, its seams cut, when the day ends.
func (s *Schedule) plan(layOut bool) {
	if len(s.Tasks) == 0 {
		return
	}
	s.allStops()
	day, now := 1, s.Day.Start
	if layOut && s.Day.LayOut > 0 {
		day, now = s.layOut(day)
	}
	look, after := NoHold, 0 // left over from the evening before
	for next := 0; next < len(s.Tasks) || look != NoHold; day, now = day+1, s.Day.Start {
		fresh := now == s.Day.Start
		if look != NoHold {
			s.step(Step{Kind: LookStep, Day: day, From: now, To: now + s.Day.Look, Hold: look, After: after})
			now, look = now+s.Day.Look, NoHold
		}
		tried := s.try(next, now, fresh)
		n := s.evening(tried, now, next+len(tried) == len(s.Tasks))
		s.keep(day, tried[:n])
		next += n
		s.Days = day
		if n > 0 {
			if last := tried[n-1]; s.Tasks[last.task].Hold != NoHold && !last.look {
				look, after = s.Tasks[last.task].Hold, last.task
			}
			now = s.Steps[len(s.Steps)-1].To
		}
		s.close(day, now, next, look)
	}
	s.walls()
}

// allStops lists where days may end.
func (s *Schedule) allStops() {
	for i := range s.Tasks {
		if t := &s.Tasks[i]; t.Whole && t.after.Kind != InField {
			s.Stops = append(s.Stops, t.after)
		}
	}
}

// step adds a row and counts its minutes.
func (s *Schedule) step(x Step) {
	s.Steps = append(s.Steps, x)
	switch x.Kind {
	case LayOutStep:
		s.LayOut += x.To - x.From
	case LookStep:
		s.Look += x.To - x.From
	}
}

// layOut lays all sheets on the floor in their order, over breaks and evenings, and gives when that is done.
func (s *Schedule) layOut(day int) (int, int) {
	now, left := s.Day.Start, s.Day.LayOut*len(s.Tasks)
	next := 0
	for {
		until, pause := s.Day.End, -1
		if next < len(s.Day.Breaks) {
			until, pause = s.Day.Breaks[next].From, next
		}
		work := min(left, until-now)
		if work > 0 {
			s.step(Step{Kind: LayOutStep, Day: day, From: now, To: now + work, Hold: DryLayOut})
		}
		left -= work
		now += work
		switch {
		case left == 0:
			s.Days = day
			return day, now
		case pause >= 0:
			b := s.Day.Breaks[pause]
			s.step(Step{Kind: BreakStep, Day: day, From: b.From, To: b.To})
			now, next = b.To, next+1
		default:
			s.step(Step{Kind: EveningStep, Day: day, From: now, To: s.Day.End})
			day, now, next = day+1, s.Day.Start, 0
		}
	}
}

// try hangs sheets from a time on until the day is over: all that are done by then.
func (s *Schedule) try(next, now int, fresh bool) []placed {
	var out []placed
	d := &s.Day
	pause, damped := 0, 0
	for !fresh && pause < len(d.Breaks) && d.Breaks[pause].From < now {
		pause++ // taken during the lay-out
	}
	dry := true // nothing is damp yet
	whole := 0  // how many of out end a column
	for i := next; i < len(s.Tasks); i++ {
		t := &s.Tasks[i]
		p := placed{task: i}
		for pause < len(d.Breaks) && d.Breaks[pause].From <= now {
			b := d.Breaks[pause]
			p.breaks = append(p.breaks, Step{Kind: BreakStep, From: now, To: now + b.Minutes()})
			now += b.Minutes()
			pause++
			dry = true
		}
		switch {
		case dry:
			p.group, damped = true, 0
			p.damp, p.hang = now, now+d.Rest
		case t.Closes && !s.Tasks[i-1].Closes:
			// its gap is measured between sheets that hang, before it is damped
			p.group, damped = true, 0
			p.damp, p.hang = now, now+d.Rest
		case damped == d.Group:
			// damped while the sheet before it was hung and its seam cut
			p.group, damped = true, 0
			before := &s.Tasks[i-1]
			p.damp = now
			p.hang = now + max(0, d.Rest-before.Hang-before.Cuts*d.Cut)
		default:
			p.damp, p.hang = now, now
		}
		p.to = p.hang + t.Hang + t.Cuts*d.Cut
		if p.to > d.End && !(fresh && whole == 0) {
			break // the first column of a fresh day hangs whatever it takes
		}
		now, dry = p.to, false
		damped++
		if t.Hold != NoHold {
			if p.look = now+d.Look <= d.End; p.look {
				p.lookFrom, p.lookEnd = now, now+d.Look
				now = p.lookEnd
			}
			dry = true
		}
		out = append(out, p)
		if t.Whole {
			whole = len(out)
		}
		if t.Hold != NoHold && !p.look {
			break
		}
	}
	return out[:whole]
}

// evening chooses after how many of the sheets tried the day ends.
func (s *Schedule) evening(tried []placed, from int, all bool) int {
	if all {
		return len(tried)
	}
	half := from + (s.Day.End-from)/2
	for n := len(tried); n > 0; n-- {
		if t := &s.Tasks[tried[n-1].task]; t.Whole && t.after.Kind != InField && tried[n-1].to >= half {
			return n
		}
	}
	return len(tried)
}

// keep turns the sheets of a day into rows.
func (s *Schedule) keep(day int, list []placed) {
	for k, p := range list {
		t := &s.Tasks[p.task]
		for _, b := range p.breaks {
			b.Day = day
			s.step(b)
		}
		if p.group {
			s.step(Step{Kind: GroupStep, Day: day, From: p.damp, Hang: p.hang})
			s.Wait += p.hang - p.damp
		}
		row := &s.Steps[len(s.Steps)-1]
		row.Tasks, row.To, row.Cut = append(row.Tasks, p.task), p.to, row.Cut+t.Cuts
		t.Day, t.Up = day, p.to
		s.Hang += t.Hang
		s.Cut += t.Cuts * s.Day.Cut
		paused := k == len(list)-1 || t.Hold != NoHold || len(list[k+1].breaks) > 0
		t.DryEdge = paused && t.joined
		if k > 0 && !t.First {
			s.late(list, k)
		}
		if p.look {
			s.step(Step{Kind: LookStep, Day: day, From: p.lookFrom, To: p.lookEnd, Hold: t.Hold, After: p.task})
		}
	}
}

// late finds out whether the paste at the left of a sheet is still open when its seam is cut; where it is not, the edge
// of the sheet before stays dry too.
func (s *Schedule) late(list []placed, k int) {
	t := &s.Tasks[list[k].task]
	if t.Cuts == 0 || !t.Whole {
		return
	}
	j := k - 1
	for j > 0 && s.Tasks[list[j].task].Place == t.Place {
		j--
	}
	before := &s.Tasks[list[j].task]
	if before.DryEdge || !before.joined || before.Run != t.Run || before.Place == t.Place {
		return
	}
	if up := list[j].hang + before.Hang; list[k].to-up > s.Day.Open {
		t.Late, before.DryEdge = true, true
	}
}

// OpenEdges are the sheets that hang once a task is done and that a sheet still to come laps at the side to which the work goes on: in
// hanging order. Where a pause follows, these edges stay unpasted.
//
// Shape: indexes in Tasks.
func (s *Schedule) OpenEdges(task int) []int {
	var list []int
	for j := range s.Tasks[:task+1] {
		x := &s.Tasks[j]
		if x.Run != s.Tasks[task].Run || !x.joined {
			continue
		}
		next := slices.IndexFunc(s.Tasks[j:], func(t Task) bool { return t.Run == x.Run && t.Place != x.Place })
		if next < 0 {
			continue
		}
		place := s.Tasks[j+next].Place
		beside := slices.IndexFunc(s.Tasks, func(t Task) bool { return t.Run == x.Run && t.Place == place && t.Course == x.Course })
		if beside > task {
			list = append(list, j)
		}
	}
	return list
}

// close ends a day.
func (s *Schedule) close(day, now, next int, look Hold) {
	e := Step{Kind: EveningStep, Day: day, From: now, To: max(now, s.Day.End)}
	if next > 0 {
		stop := s.Tasks[next-1].after
		e.Stop = &stop
	}
	e.Done = next == len(s.Tasks) && look == NoHold
	s.step(e)
}

// walls adds up what each wall takes, in hanging order.
func (s *Schedule) walls() {
	at := map[int]int{}
	for _, x := range s.Steps {
		for _, i := range x.Tasks {
			t := &s.Tasks[i]
			k, ok := at[t.Wall]
			if !ok {
				k = len(s.Walls)
				at[t.Wall] = k
				s.Walls = append(s.Walls, WallTime{Wall: t.Wall})
			}
			w := &s.Walls[k]
			w.Sheets++
			w.Hang += t.Hang
			w.Cut += t.Cuts * s.Day.Cut
			w.Day, w.Done = t.Day, t.Up
		}
	}
}
