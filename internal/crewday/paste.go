package crewday

import (
	"strconv"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// blank is a line to write on what the room file does not say.
const blank = "________"

// pasteBlock says who mixes what: paste and primer by their names, how far they go, how much all of it takes and how long the paste stays
// open. What the room file does not say is for the hand that reads it off the pail.
func (h *hanging) pasteBlock() folio.Block {
	r, m, say := h.Room, &h.set.Count.Material, h.Words
	t := &draft.Table{Title: say.Say("paste.title"), Row: h.look.Of(6), Columns: []draft.Column{{Bold: true}, {Head: say.Say("paste.name"), Wrap: true},
		{Head: say.Say("paste.spread")}, {Head: say.Say("paste.needed"), Align: scene.End}, {Head: say.Say("paste.open"), Align: scene.End}}}
	named := func(s string) string {
		if s == "" {
			return blank
		}
		return s
	}
	row := func(key, name string, c room.Coverage, a *layout.Amount, open string) {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{say.Of("paste", key), named(name), h.spread(c), h.amount(a), open}})
	}
	row("paste", r.PasteName, r.Paste, m.Paste, say.Say("paste.minutes", strconv.Itoa(h.plan.Day.Open)))
	row("primer", r.PrimerName, r.Primer, m.Primer, "")
	return folio.Block{Table: t, Whole: true}
}

// spread is how far it goes, as the pail's label has it.
func (h *hanging) spread(c room.Coverage) string {
	if !c.Given {
		return blank
	}
	return h.Words.Say("paste.per", climate.WordsOf(h.Style).Decimal(c.Amount, 1)+" "+c.Area, c.Volume)
}

// amount is how much all that is still to hang takes.
func (h *hanging) amount(a *layout.Amount) string {
	if a == nil {
		return blank
	}
	return climate.WordsOf(h.Style).Decimal(a.Amount, 1) + " " + a.Unit
}
