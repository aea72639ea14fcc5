package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// Saving is a small change of the room that would save something, as laying it out again has shown.
type Saving struct {
	By      L
	Change  string // what is less or more by that
	Saves   string // what it does
	Wall    int    // where it saves, or the first wall of where
	Courses int    // of how many walls there is one less
	Sheets  int    // how many fewer
	Narrow  int    // how many fewer narrow sheets on main walls
	Musts   int    // in how many fewer places a must is broken
}

// Bounds on what is said and on what it may cost.
const (
	nearlySaid  = 4   // savings of a room: who reads more of them decides nothing
	nearlyTrial = 12  // rooms laid out again
	nearlySolve = 600 // sheets solved again, of spans and of rooms
)

// candidate is a change that a bound lets hope for.
type candidate struct {
	nudge
	by   L
	want []thing
	wall int // where it would save
}

// search looks for candidates without laying the whole room out again.
type search struct {
	*builder
	step  L
	spent int // sheets of spans solved again
	found []candidate
}

// nearly says which single small change of the room would save a course, a sheet, a narrow sheet on a main wall or a broken
// must: of each thing saved the least change, the smallest first, of equal ones by rank. While sheets hang nothing is said:
// by then all are cut. Nor is it where another layout than the best is chosen: what that has more of, the best saves.
//
// Each bound is cheap and may hope in vain; what is said is what the room laid out again with the change does, against
// what it does now.
func (b *builder) nearly() {
	if len(b.room.Hung) > 0 || b.plan.Chosen > 1 {
		return
	}
	s := search{builder: b, step: nearlySteps(b.room.Project.Units)}
	s.courses()
	s.short()
	s.spans()
	slices.SortStableFunc(s.found, func(x, y candidate) int { return cmp.Or(cmp.Compare(x.by, y.by), cmp.Compare(x.rank, y.rank)) })
	var now *account
	done := map[thing]bool{}
	trials := 0
	for _, c := range s.found {
		if len(b.plan.Nearly) == nearlySaid || trials == nearlyTrial {
			return
		}
		if !slices.ContainsFunc(c.want, func(t thing) bool { return !done[t] }) {
			continue
		}
		r, ok := b.changed(&c.nudge, c.by)
		if !ok {
			continue
		}
		if now == nil {
			now = b.account()
		}
		trials++
		for i := range b.plan.Runs {
			if run := &b.plan.Runs[i]; c.moved(run) {
				s.spent += len(run.Sheets)
			}
		}
		if s.spent > nearlySolve {
			continue
		}
		then := b.tried(&c.nudge, r)
		saved := now.saves(then)
		if !slices.ContainsFunc(saved, func(t thing) bool { return !done[t] }) {
			continue
		}
		for _, t := range saved {
			done[t] = true
		}
		b.saving(&c, now, then)
	}
}

// saving notes a saving and says it.
func (b *builder) saving(c *candidate, now, then *account) {
	s := Saving{By: c.by, Change: c.words(c.by), Saves: b.savesWords(now, then), Wall: c.wall, Sheets: total(now.sheets) - total(then.sheets),
		Narrow: total(now.main) - total(then.main), Musts: total(now.broken) + now.others - total(then.broken) - then.others}
	for _, t := range now.saves(then) {
		if t.matter == savesCourse {
			s.Courses++
		}
	}
	b.plan.Nearly = append(b.plan.Nearly, s)
	b.say(finding.Nearly, finding.Finding{Place: b.wallPlace(s.Wall), Wall: s.Wall, Measured: ptr(s.By)},
		finding.Slots{"change": s.Change, "saves": s.Saves})
}

// hope notes a candidate.
func (s *search) hope(c nudge, steps L, wall int, want ...thing) {
	if by := steps * s.step; len(want) > 0 && 0 < by && by <= c.most {
		s.found = append(s.found, candidate{c, by, want, wall})
	}
}

// steps is how many steps a change can go.
func (s *search) steps(c *nudge) int { return int(c.most / s.step) }

// over is how many steps make up for an excess.
func (s *search) over(excess L) L { return L(length.CeilDiv(excess, s.step)) }
