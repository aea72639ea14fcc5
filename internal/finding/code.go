package finding

import (
	"strings"

	"flitchlay/internal/length"
)

// Code names a finding.
type Code string

// rule is one row of the list: a code, its level, and its one wording.
//
// Slots in braces are filled by Make; {measured} and {required} are the finding's own figures, told apart by as fine a
// fraction as that takes.
type rule struct {
	code    Code
	level   Level
	pattern string
}

// The codes, as the room's layout can earn them; those of the site come from what stands in the room file about it.
const (
	SheetThin       Code = "sheet-thin"
	ReturnShort     Code = "return-short"
	LegThin         Code = "leg-thin"
	ClearShort      Code = "clear-short"
	RevealShort     Code = "reveal-short"
	KeptClear       Code = "kept-clear"
	RevealsOverlap  Code = "reveals-overlap"
	SkewEatsOverlap Code = "skew-eats-overlap"
	PinDropped      Code = "pin-dropped"
	SheetShort      Code = "sheet-short"
	FlitchShort     Code = "flitch-short"
	Misclosure      Code = "misclosure"
	CannotMeet      Code = "cannot-meet"
	PlanAgain       Code = "plan-again"

	ReturnClose         Code = "return-close"
	LegClose            Code = "leg-close"
	ClearClose          Code = "clear-close"
	PlateClose          Code = "plate-close"
	SheetSlim           Code = "sheet-slim"
	PieceThin           Code = "piece-thin"
	EndClose            Code = "end-close"
	RevealShallow       Code = "reveal-shallow"
	BoxInOpening        Code = "box-in-opening"
	FigureSteps         Code = "figure-steps"
	FlitchChangeInField Code = "flitch-change-in-field"
	SparesFew           Code = "spares-few"
	ClosesBadly         Code = "closes-badly"
	EdgeBare            Code = "edge-bare"
	SiteCold            Code = "site-cold"
	SiteHot             Code = "site-hot"
	SiteDry             Code = "site-dry"
	SiteDamp            Code = "site-damp"
	WallCold            Code = "wall-cold"
	BoardDamp           Code = "board-damp"
	YearWide            Code = "year-wide"
	LeansMuch           Code = "leans-much"
	HungDamaged         Code = "hung-damaged"
	Restrike            Code = "re-strike"

	WallOdd         Code = "wall-odd"
	CeilingOdd      Code = "ceiling-odd"
	OpeningNarrow   Code = "opening-narrow"
	DoorLow         Code = "door-low"
	DoorWide        Code = "door-wide"
	SillHigh        Code = "sill-high"
	SheetOdd        Code = "sheet-odd"
	TrimOdd         Code = "trim-odd"
	LevelOdd        Code = "level-odd"
	PlateOdd        Code = "plate-odd"
	ClosedUnsaid    Code = "closed-unsaid"
	LeftEndUnsaid   Code = "left-end-unsaid"
	RightEndUnsaid  Code = "right-end-unsaid"
	LeanUnsaid      Code = "lean-unsaid"
	WrapUnsaid      Code = "wrap-unsaid"
	ClearanceUnsaid Code = "clearance-unsaid"
	CasingUnsaid    Code = "casing-unsaid"
	HeightsFew      Code = "heights-few"
	BoxNear         Code = "box-near"
	NotMeasured     Code = "not-measured"
	MeasuredLongAgo Code = "measured-long-ago"
	IssueUndated    Code = "issue-undated"
	SiteUnread      Code = "climate-unread"
	BoardUnread     Code = "board-unread"
	SparesMany      Code = "spares-many"
	PinsClose       Code = "pins-close"
	FractionOdd     Code = "fraction-odd"
	AnswersNothing  Code = "answers-nothing"

	HangIt         Code = "hang"
	NarrowSheet    Code = "narrow-sheet"
	JumpSeen       Code = "jump-seen"
	FlitchBegins   Code = "flitch-begins"
	ClosingSeam    Code = "closing-seam"
	ClosesWithin   Code = "closes-within"
	NumbersLeftOut Code = "numbers-left-out"
	SheetInGap     Code = "sheet-in-gap"
	PinToGrid      Code = "pin-to-grid"
	HeadAndSill    Code = "head-and-sill"
	AlarmStaysBare Code = "alarm-stays-bare"
	Joint          Code = "joint"
	Turned         Code = "turned"
	Drift          Code = "drift"
	NoFlitch       Code = "no-flitch"
	RoomMade       Code = "room-made"
	Glyph          Code = "glyph"
	Acclimatise    Code = "acclimatise"
	YearSwing      Code = "year-swing"
	OffTheMiddle   Code = "off-the-middle"
	SpeciesUnknown Code = "species-unknown"
	Leans          Code = "leans"
	Nearly         Code = "nearly"
	Chosen         Code = "chosen"
)

// rules is the one list of codes.
var rules = []rule{
	{SheetThin, Must, "sheet {sheet} covers {measured} of wall {wall}; no sheet may be under {required}"},
	{ReturnShort, Must, "seam {seam} is {measured} from {bend}; {required} must wrap past a bend"},
	{LegThin, Must, "seam {seam} leaves a leg of {measured} beside {opening}; a leg must be {required}"},
	{ClearShort, Must, "seam {seam} is {measured} inside the {side} edge of {opening}; it must be {required} inside"},
	{RevealShort, Must, "seam {seam} is {measured} inside the {side} jamb of {opening}; the jamb takes {required}"},
	{KeptClear, Must, "seam {seam} stands {measured} inside the stretch kept clear from {from} to {to} on wall {wall}{why}"},
	{RevealsOverlap, Must, "the two jambs of {opening} take {required} of the sheets over it, but it is only {measured} wide"},
	{SkewEatsOverlap, Must, "sheet {sheet} goes {measured} askew round {bends}; the overlap allows of {required}"},
	{PinDropped, Must, "the pin {put} at {at} on wall {wall} is dropped: {against}"},
	{SheetShort, Must, "sheet {sheet} has to be cut {measured} long; the sheets are {required}"},
	{FlitchShort, Must, "{needed} sheets are laid and {have} can be: {short} short{fewest}{why}"},
	{Misclosure, Must, "the walls miss closing by {measured}, {likely}, the angles by {angles} degrees; over {girth} of girth no more than {required} is a measuring error: measure again"},
	{CannotMeet, Must, "not all of these can be met on {where}: {rules}. {mend}"},
	{PlanAgain, Must, "wall {wall}{read}: PLAN AGAIN: {why}. Put the reading into [[wall]] and what hangs into [[hung]], and lay out again"},

	{ReturnClose, Should, "seam {seam} is {measured} from {bend}; better {required}"},
	{LegClose, Should, "seam {seam} leaves a leg of {measured} beside {opening}; better {required}"},
	{ClearClose, Should, "seam {seam} is {measured} inside the {side} edge of {opening}; better {required}"},
	{PlateClose, Should, "seam {seam} {stands} the plate of {box}; better {required} beside it"},
	{SheetSlim, Should, "sheet {sheet} covers {measured} of wall {wall}; better {required}"},
	{PieceThin, Should, "what sheet {sheet} covers of wall {wall} is no more than {measured} {way}; a strip under {required} is hard to hang straight"},
	{EndClose, Should, "the covering ends {measured} from {bend} against {end}; better {required}"},
	{RevealShallow, Should, "the jambs of {opening} are {measured} deep; {required} should wrap past a bend"},
	{BoxInOpening, Should, "the plate of {box} at {at} on wall {wall} reaches {measured} into {opening}"},
	{FigureSteps, Should, "the sheets of {whose} need {reach}, {measured} in all; out of {required} the figure steps from sheet to sheet; sheet {high} reaches up and sheet {low} down the most"},
	{FlitchChangeInField, Should, "flitch {flitch} runs out at seam {seam}, in the open field of wall {wall}"},
	{SparesFew, Should, "{have} spare of flitch {flitch} for {laid} sheets laid; better {want}"},
	{ClosesBadly, Should, "the walls miss closing by {measured}, {likely}, the angles by {angles} degrees, over {girth} of girth; better {required}"},
	{EdgeBare, Should, "the covering ends at outside edge {bend} of wall {wall}, at {at}, without a trim"},
	{LeansMuch, Should, "the {side} end of wall {wall} leans {lean} to the {to} over {high}, which is {measured} in {over}; over {required} a wall is put right before sheets hang on it (woodwork is made for walls within {usual}, {source})"},
	{HungDamaged, Should, "{numbers} of flitch {flitch}, said to be damaged, {hang} on the wall and {count} as laid: if a new sheet is to hang there, take it out of [[hung]], else out of damaged"},
	{Restrike, Should, "wall {wall}{read}: RE-STRIKE, sheets and cut lengths stand: {why}"},
	{SiteCold, Should, "the site is at {now}; hold at least {least} from before the sheets come until after they hang ({source})"},
	{SiteHot, Should, "the site is at {now}; hold at most {most} from before the sheets come until after they hang ({source})"},
	{SiteDry, Should, "the site has {now} relative humidity; hold {low} to {high}, never longer than {hours} h out of that ({source})"},
	{SiteDamp, Should, "the site has {now} relative humidity; hold {low} to {high}, never longer than {hours} h out of that ({source})"},
	{WallCold, Should, "the wall itself is at {now}, {over} the dew point of {dew}; it has to be at least {least} over it ({source})"},
	{BoardDamp, Should, "the wall reads {now} on the {meter}, over its limit of {limit}: let it dry"},
	{YearWide, Should, "over the year the room goes from {low} to {high} relative humidity; wood wants {least} to {most} ({source})"},

	{WallOdd, Ask, "wall {wall} is {measured} long, {usual}: is it so?"},
	{CeilingOdd, Ask, "the ceiling of wall {wall} is {measured} up, {usual}: is it so?"},
	{OpeningNarrow, Ask, "{opening} is {measured} wide, {usual}: is it so?"},
	{DoorLow, Ask, "{opening} is {measured} high, {usual}: is it so?"},
	{DoorWide, Ask, "{opening} is {measured} wide and {required} high: are the two figures in each other's place?"},
	{SillHigh, Ask, "the sill of {opening} is {measured} up, {usual}: is it so?"},
	{SheetOdd, Ask, "{key} of the veneer is {measured}, {usual}: is it so?"},
	{TrimOdd, Ask, "{key} is {measured}, {usual}: is it so?"},
	{LevelOdd, Ask, "the level line is {measured} up, {usual}: is it so?"},
	{PlateOdd, Ask, "the plate of {box} is {measured} {way}, {usual}: is it so?"},
	{ClosedUnsaid, Ask, "the last wall ends {measured} from where the first begins: do the walls close?"},
	{LeftEndUnsaid, Ask, "what does the covering run against at the left end of wall {wall}? Nothing is said, and a free end is counted"},
	{RightEndUnsaid, Ask, "what does the covering run against at the right end of wall {wall}? Nothing is said, and a free end is counted"},
	{LeanUnsaid, Ask, "at other corners a lean was read: {walls} plumb?"},
	{WrapUnsaid, Ask, "{opening} has sides {measured} deep: are they covered?"},
	{ClearanceUnsaid, Ask, "which clearance to combustibles does {opening} on wall {wall} ask for, by the local code or the listing of the appliance? None is stated: the covering is laid up to its edge"},
	{CasingUnsaid, Ask, "how wide are casings? Nothing is said of {openings}, on walls with a base; figures run to the outer edge of a casing"},
	{HeightsFew, Ask, "wall {wall} is {measured} long, and its ceiling is given at its ends only: is it straight between them?"},
	{BoxNear, Ask, "the plate of {box} stands {measured} from {opening}: was it measured from the same end?"},
	{NotMeasured, Ask, "the room is not yet said to be measured: are the figures from the drawings?"},
	{MeasuredLongAgo, Ask, "the room was measured on {measured_on}, {days} days before it was drawn: is it still as it was?"},
	{IssueUndated, Ask, "on which day was the first issue? The drawing is of {drawn}, later than revision {mark}, so that its row has no date"},
	{SiteUnread, Ask, "what are temperature and humidity of the site? Nothing is said of them"},
	{BoardUnread, Ask, "what does the meter read on the wall? Its scale is named, and no reading"},
	{SparesMany, Ask, "spare_share {share} asks for {spares} spare sheets of {sheets}: is one in so many meant?"},
	{PinsClose, Ask, "the pins {put} at {from} and at {to} on wall {wall} are {measured} apart, less than the {required} that a sheet covers: are both wanted?"},
	{FractionOdd, Ask, "{key} is written {text}, and no rule is marked so: is one of its figures another?"},
	{AnswersNothing, Ask, "answered holds {entry}, and nothing asks that{near}"},

	{Leans, Note, "the {side} end of wall {wall} leans {lean} to the {to} over {high}, which is {measured} in {over}; woodwork is made for walls within {required} in that ({source})"},
	{Chosen, Note, "not the best layout but number {number} of those that compare lists is laid out, as choose in [room] asks{hung}"},
	{Nearly, Note, "{measured} {change} would {saves}"},
	{HangIt, Note, "wall {wall}{read}: HANG: the lines stand as printed{why}"},
	{NarrowSheet, Note, "sheet {sheet}{ripped} covers {measured} of {required}: the grain jumps {lost} at seam {seam}, seen for {seen}{where}"},
	{JumpSeen, Note, "sheet {sheet}{ripped} covers {measured} of {required}: the grain jumps {lost} at seam {seam}, seen for all its height of {seen}"},
	{FlitchBegins, Note, "flitch {flitch} begins at seam {seam}, seen for {measured}{where}: the grain does not go on"},
	{ClosingSeam, Note, "sheet {last} meets sheet {first} at the closing seam {seam}, wall {wall}, {at} from its left end, seen for {measured}{where}"},
	{ClosesWithin, Note, "the walls close within {measured} over {girth} of girth, the angles within {angles} degrees"},
	{NumbersLeftOut, Note, "of flitch {flitch}, delivered {all}, {numbers} not laid ({why})"},
	{SheetInGap, Note, "sheet {sheet}, from {from} to {to} on wall {wall}, falls wholly into {opening} and goes back to stock"},
	{PinToGrid, Note, "the pin {put} at {at} on wall {wall} is met at {met}, {measured} off"},
	{HeadAndSill, Note, "the jambs of {opening}, {measured} deep, are wrapped; {rest} of it on wall {wall} {need} separate pieces or paint: grain cannot bend over a level edge"},
	{AlarmStaysBare, Note, "{box} at {at} on wall {wall}, {height} up, is an alarm device: cut round it, never cover or take it off"},
	{Joint, Note, "wall {wall} takes {courses} courses; {below} and {above} meet at {measured} over the level: {chance}"},
	{Turned, Note, "the upper sheets of wall {wall}, {numbers}, hang turned end for end: the figure meets but does not mirror"},
	{Drift, Note, "sheet {sheet}, the last one hung, ends {measured} {side} of the plan without it on wall {wall}; of the seams still to hang {moved} move, by up to {most}"},
	{NoFlitch, Note, "no flitch is given: the {count} sheets are numbered from 1"},
	{RoomMade, Note, "the {side} edge of {opening} stands {measured} from {bend}; {required} should wrap past a bend, but the room leaves no more"},
	{Glyph, Note, "{what} holds characters that the drawings cannot show: {signs}"},
	{Acclimatise, Note, "from shop to site wood goes from {from} to {to} moisture{move}; let the sheets lie in the room at least {hours} h before they hang ({source})"},
	{YearSwing, Note, "over the year wood in the room goes from {from} to {to} moisture{move}"},
	{OffTheMiddle, Note, "the site's {now} moisture is far from the middle of the room's year, {middle}: start near it ({source})"},
	{SpeciesUnknown, Note, "the movement of {species} is not known: it is not in the table{near}"},
}

// ByCode finds a code's level and pattern, false where the code is not in the list.
func ByCode(code Code) (Level, string, bool) {
	for _, r := range rules {
		if r.code == code {
			return r.level, r.pattern, true
		}
	}
	return 0, "", false
}

// Codes lists all codes, musts first, for tests that provoke each.
func Codes() []Code {
	out := make([]Code, len(rules))
	for i, r := range rules {
		out[i] = r.code
	}
	return out
}

// Slots fill the braces of a pattern.
type Slots map[string]string

// Make words a finding.
//
// Errors: it panics on an unknown code and on a slot left empty: both are faults of the program.
func Make(style length.Style, code Code, f Finding, slots Slots) Finding {
	level, pattern, ok := ByCode(code)
	if !ok {
		panic("finding: no code " + string(code))
	}
	f.Code, f.Level = code, level
	measured, required := "", ""
	switch {
	case f.Measured != nil && f.Required != nil:
		measured, required = style.Apart(*f.Measured, *f.Required)
	case f.Measured != nil:
		measured = style.Words(*f.Measured)
	case f.Required != nil:
		required = style.Words(*f.Required)
	}
	var b strings.Builder
	for {
		head, rest, found := strings.Cut(pattern, "{")
		b.WriteString(head)
		if !found {
			break
		}
		name, tail, _ := strings.Cut(rest, "}")
		value, given := slots[name]
		switch {
		case name == "measured" && f.Measured != nil:
			value = measured
		case name == "required" && f.Required != nil:
			value = required
		case !given:
			panic("finding: " + string(code) + " lacks " + name)
		}
		b.WriteString(value)
		pattern = tail
	}
	f.Message = b.String()
	return f
}

// OfFile lists the codes that the room file earns, not the layout, for tests that provoke each: all that ask.
func OfFile() (list []Code) {
	for _, r := range rules {
		if r.level == Ask {
			list = append(list, r.code)
		}
	}
	return list
}

// OfSite lists the codes that the site earns, not the layout, for tests that provoke each.
func OfSite() []Code {
	return []Code{SiteCold, SiteHot, SiteDry, SiteDamp, WallCold, BoardDamp, YearWide, Acclimatise, YearSwing, OffTheMiddle, SpeciesUnknown}
}
