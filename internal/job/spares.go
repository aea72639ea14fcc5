package job

import (
	"fmt"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// unspared takes off a plan what it says of the spares of flitches that are the job's: a room knows of no flitch but what it may take,
// and the job says it once, of the whole flitch (End).
func (j *Job) unspared(r *Room, p *layout.Plan) {
	if r.Own {
		return
	}
	p.Findings = slices.DeleteFunc(p.Findings, func(f finding.Finding) bool { return f.Code == finding.SparesFew })
}

// End says what only the whole job shows, once all its rooms were added: flitches with fewer spares than the rooms ask for that lay
// them. A job of which not every room could be laid out, or only a part was, has no such end.
func (b *Book) End() {
	for i := range b.job.Flitches {
		f := &b.job.Flitches[i]
		used := b.laid[f.Number]
		by := b.by[f.Number]
		if len(used) == 0 || by == nil {
			continue
		}
		have := 0
		for _, n := range f.Sheets {
			if _, is := used[n]; !is && !within(f.Damaged, n) {
				have++
			}
		}
		if want := layout.Spares(by, len(used)); have < want {
			b.say(finding.Should, string(finding.SparesFew), "flitch "+f.Number, fmt.Sprintf("%d spare of flitch %s for %d sheets laid in all rooms; better %d", have, f.Number, len(used), want),
				fmt.Sprintf("order %d more from the same log, or write a smaller spare_share under [rules]", want-have))
		}
	}
}

// asks notes the room that wants the most spares of the flitches that it lays.
func (b *Book) asks(p *layout.Plan) {
	for _, row := range LaidRows(p) {
		if known := b.by[row.Flitch]; known == nil || known.Rules.SpareShareParts < p.Room.Rules.SpareShareParts {
			b.by[row.Flitch] = &room.Room{Rules: p.Room.Rules}
		}
	}
}
