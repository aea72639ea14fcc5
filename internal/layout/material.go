package layout

import (
	"math"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// lossShare is paste that stays in the tray and on the roller (common practice, no source).
const lossShare = 0.10

// underTrim is the strip of wall under a trim that is primed with the covering, at the floor and at the ceiling.
const underTrim = 2 * length.Inch

// Paste and primer are told in tenths of their measure; a tenth that is over by less than slack, which is what adding up
// floats leaves, is not begun.
const (
	tenthParts = 10
	slack      = 1e-9
)

// paste is the paste for the covering as hung, both layers of every overlap counted, plus a loss.
func (b *builder) paste() *Amount {
	area := b.plan.Totals.NetArea
	for _, r := range b.plan.Runs {
		for _, s := range r.Seams {
			area += b.room.Veneer.Overlap.Times(s.Seen)
		}
	}
	return PasteOn(b.room, 2*area)
}

// PasteOn is the paste for twice an area, by the label's coverage; nil where that is not given.
func PasteOn(r *room.Room, twice length.Area) *Amount { return amount(r.Paste, twice/2, 1+lossShare) }

// PrimerOn is the same of primer.
func PrimerOn(r *room.Room, twice length.Area) *Amount { return amount(r.Primer, twice/2, 1) }

// primer is the primer for the covering and for what is under trims at floor and ceiling.
func (b *builder) primer() *Amount {
	area := b.plan.Totals.NetArea
	for _, r := range b.plan.Runs {
		for _, s := range r.Spans {
			area += (2 * underTrim).Times(s.Right - s.Left)
		}
	}
	return PrimerOn(b.room, 2*area)
}

// amount is how much of a pail an area takes, rounded up to a tenth.
func amount(c room.Coverage, area length.Area, factor float64) *Amount {
	if !c.Given || c.Amount <= 0 {
		return nil
	}
	measure := area.SquareFeet()
	if c.Area == "m2" {
		measure = area.SquareMetres()
	}
	return &Amount{Amount: math.Ceil(measure*factor/c.Amount*tenthParts-slack) / tenthParts, Unit: c.Volume}
}
