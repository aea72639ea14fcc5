package layout

import (
	"slices"
	"strconv"

	"flitchlay/internal/finding"
)

// judgeRegisters holds every register against one sheet: where the longest cut over the mark and the longest under it are
// together more than a sheet, the sheets have no mark that all can be cut from.
func (b *builder) judgeRegisters() {
	list, have := b.plan.Registers(), b.room.Veneer.Length
	for i := range list {
		r := &list[i]
		if r.Need <= have {
			continue
		}
		run, high := b.plan.runOf(r.Most[0]), r.Most[0]
		wall, x := b.sheetAt(run, high)
		above, below := high.Above, r.Most[1].Below
		reach := b.style.Words(above) + " above the level line and " + b.style.Words(below) + " below it"
		switch {
		case below < 0:
			reach = "from " + b.style.Words(-below) + " to " + b.style.Words(above) + " above the level line"
		case above < 0:
			reach = "from " + b.style.Words(-above) + " to " + b.style.Words(below) + " below the level line"
		}
		whose, place := b.whose(list, r)
		b.say(finding.FigureSteps, finding.Finding{Place: place, Wall: wall, At: x, Measured: ptr(r.Need), Required: ptr(have)}, finding.Slots{
			"whose": whose, "reach": reach, "high": SheetWords(high), "low": SheetWords(r.Most[1])})
	}
}

// whose names the sheets that share a register, and the place of what is said about them.
func (b *builder) whose(list []Register, r *Register) (words, place string) {
	words, place = "the room", "room"
	switch {
	case r.Flitch != "":
		words = "flitch " + r.Flitch
		place = words
	case len(b.room.Flitches) > 0:
		words = "no flitch"
	}
	if slices.ContainsFunc(list, func(o Register) bool { return o.Flitch == r.Flitch && o.Course != r.Course }) {
		words += ", course " + strconv.Itoa(r.Course)
		place += ", course " + strconv.Itoa(r.Course)
	}
	return words, place
}

// runOf is the run that a sheet is laid in.
func (p *Plan) runOf(s *Sheet) *Run {
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if &p.Runs[i].Sheets[k] == s {
				return &p.Runs[i]
			}
		}
	}
	panic("layout: a register of a sheet that is not laid")
}
