package submittal

import (
	"strconv"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
)

// Ordinal is the mark before the n-th line of a list.
func Ordinal(n int) string { return strconv.Itoa(n) }

// deferring says whose word holds.
var deferring = []string{
	"Local codes, the authority having jurisdiction, the makers' printed instructions and licensed trades decide. Where they say otherwise than this page, they hold.",
	"Figures stand with the published text they are from. What is marked common practice has no source; what is as restated was read in another text that quotes it.",
}

// waterNotes are about moisture before and after the day.
//
// Source: heat of three days, Wood Handbook chapter 13; change of colour by light, BioResources 14(3) 6909-6922; the rest
// common practice, no source.
var waterNotes = []string{
	"Heat is on 72 h before the sheets come and stays on.",
	"Movement given here is of a free sheet, an upper bound: a sheet on the wall is held by the paste. It is no gap to expect.",
	"An outside wall has a temperature of its own: paste does not dry on a wall near the dew point.",
	"No air outlet blows on a covered wall, no sun falls on a wet one; say where that cannot be helped.",
	"Light changes the colour of wood (BioResources 14(3), 6909-6922): what hangs on the wall later leaves its shape.",
}

// wallChecks is what a wall is measured for.
//
// Source: as each row says; distances common in one country are given in both units.
func wallChecks(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "CHECKS OF THE WALL", Columns: []draft.Column{{Head: "CHECK", Wrap: true}, {Head: "FIGURE", Bold: true}}}
	row := func(what, inch, metric, source string) {
		if s.Metric() {
			inch = metric
		}
		t.Rows = append(t.Rows, draft.Row{Cells: []string{sourced(what, source), inch}})
	}
	row("Finish of the board; level 5 where light rakes along it", "level 4 or 5", "level 4 or 5", "GA-214, ASTM C840, as restated; level 5 under a sheen: common practice")
	row("Gap between boards, filled first", `at most 1/4"`, "at most 6 mm", "GA-216, 4.6.8, as restated")
	row("Out of plumb, under thin finishes", `at most 1/8" in 8'`, "at most 3 mm in 2,4 m", "UFGS framing, as restated")
	row("Out of flat, straightedge", `at most 1/8" in 10'`, "at most 3 mm in 3 m", "common practice, no source")
	row("Building more out of plumb, level or straight than this is not made good by the hanger", `1/4" in 144"`, "6 mm in 3,6 m", "Architectural Woodwork Standards, 1st edition, 6.1.10.1")
	row("Leans of every corner, both faces; floor and ceiling from the level line", `every 4'`, "every 1,2 m", "common practice, no source")
	row("Moisture of the wall, "+boardScale(s)+"; scale and limit by who answers for the paste", boardLimit(s), boardLimit(s), "a wood scale in per cent says nothing in gypsum: Gypsum Association, as quoted by AWCI")
	return t
}

// boardLimit is the most that a meter may read.
func boardLimit(s *folio.Set) string {
	if b := s.Room.Site.Board; b != nil && b.Limit != nil {
		return "at most " + climate.WordsOf(s.Style).Decimal(*b.Limit, 3)
	}
	return "not given"
}

// boardScale is the scale that it reads on.
func boardScale(s *folio.Set) string {
	if b := s.Room.Site.Board; b != nil && b.Meter != "" {
		return "on the " + b.Meter
	}
	return "on the scale of the meter"
}

// wallNotes are about what is on a wall.
//
// Source: common practice, no source, but where a note names one.
var wallNotes = []string{
	"Primer: the one that the cover names, dry and tight; where it names none, it is still to be chosen. Old paper and loose paint are off.",
	"Trims: the details of the terminations show which stand before the covering comes; another order is noted at the review. The covering is not cut over the frames of doors and windows.",
	"Backing for brackets is in; sprinklers and their plates stay free and are never pasted over.",
}

// fireNotes are about what the authority is asked.
//
// Source: NEC 314.20 (2014 and 2017), as quoted for training; IBC 803.2 (2018); NFPA 101, 10.2.1.2; ASTM E84 classes as
// restated; that the thickness is that of all layers, from memory.
func fireNotes(s *folio.Set) []string {
	thick := "The thickness of the sheet is not given."
	if t := s.Room.Veneer.Thickness; t > 0 {
		thick = "The sheet is " + s.Style.MeasuredWords(t) + " thick."
	}
	box := `1/4"`
	least := "0.036 in"
	if s.Metric() {
		box, least = "6 mm", "0,9 mm"
	}
	return []string{
		"Finish class (ASTM E84: A to 25, B to 75, C to 200 flame spread, smoke to 450, as restated): to be confirmed by the authority for this room and use.",
		"A finish thinner than " + least + " stuck straight on the wall need not be tested (IBC 2018, 803.2; NFPA 101, 10.2.1.2); the number of the rule moves with the edition, and paste, liner and old paper count. " + thick,
		"Boxes: at most " + box + " behind a finish that does not burn; flush with one that does (NEC 314.20). Inspectors differ on veneer: extenders are allowed for at all boxes until the authority says otherwise.",
	}
}
