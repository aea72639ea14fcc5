package layout

import (
	"strconv"

	"flitchlay/internal/finding"
)

// Move is a seam that stands elsewhere because of the sheets that hang already.
type Move struct {
	Run       string
	Place     int // of the sheet at its left
	Wall      int
	From, To  L // s without and with the sheets that hang; equal nowhere in a list
	Hung      bool
	Gone, New bool // the seam is there only without, or only with them
}

// drift lays the room out again as if nothing hung, by the same choice, and compares.
func (b *builder) drift() {
	if len(b.room.Hung) == 0 {
		return
	}
	fresh := *b.room
	fresh.Hung = nil
	other, err := solve(&fresh, b.aim, nil, b.layer, b.shapes)
	if err != nil {
		return // nothing to compare with
	}
	if b.picks() {
		if whole, err := build(&fresh, b.aim, nil, b.layer); err == nil {
			if c, _ := whole.pick(fresh.Space.Choose); c != nil {
				other = c
			}
		}
	}
	for i := range b.plan.Runs {
		if i < len(other.plan.Runs) {
			b.compare(&b.plan.Runs[i], &other.plan.Runs[i])
		}
	}
}

// compare lists the moves of one run and words its drift.
func (b *builder) compare(now, plan *Run) {
	var last *Sheet
	for k := range now.Sheets {
		if s := &now.Sheets[k]; s.Hung && s.Lowest {
			last = s
		}
	}
	if last == nil {
		return
	}
	moved, most := 0, L(0)
	for _, s := range now.Seams {
		move := Move{Run: now.Name, Place: s.LeftSheet, Wall: s.Wall, To: s.At, Hung: s.Hung, New: true}
		if t := plan.SeamAfter(s.LeftSheet); t != nil {
			move.From, move.New = t.At, false
		}
		if !move.New && move.From == move.To {
			continue
		}
		b.plan.Moves = append(b.plan.Moves, move)
		if !s.Hung {
			moved++
			if !move.New {
				most = max(most, now.Line.Distance(move.From, move.To))
			}
		}
	}
	for _, t := range plan.Seams {
		if now.SeamAfter(t.LeftSheet) == nil {
			b.plan.Moves = append(b.plan.Moves, Move{Run: now.Name, Place: t.LeftSheet, Wall: t.Wall, From: t.At, Gone: true})
		}
	}
	joint, planned := now.SeamAfter(last.Place), plan.SeamAfter(last.Place)
	if joint == nil || planned == nil || moved == 0 && joint.At == planned.At {
		return
	}
	by := joint.At - planned.At
	if now.Closed && by > now.Length/2 {
		by -= now.Length
	}
	if now.Closed && by < -now.Length/2 {
		by += now.Length
	}
	side := "right"
	if by < 0 {
		side = "left"
	}
	b.say(finding.Drift, finding.Finding{Place: "sheet " + SheetWords(last), Wall: joint.Wall, At: joint.X, Measured: ptr(by.Abs())}, finding.Slots{
		"sheet": SheetWords(last), "side": side, "wall": b.room.Walls[joint.Wall].Name, "moved": strconv.Itoa(moved), "most": b.style.Words(most)})
}

// SeamAfter is the seam at the right of a place, nil where there is none.
func (r *Run) SeamAfter(place int) *Seam {
	for k := range r.Seams {
		if r.Seams[k].LeftSheet == place {
			return &r.Seams[k]
		}
	}
	return nil
}
