package page

import (
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/words"
)

// said are all words of the screen, by their keys. {1}, {2} stand for what is filled in. What a plan says of itself, findings and
// names, it says in its own words.
var said = map[string]string{
	"title":         "{1}: flitchlay",
	"skip":          "to the wall",
	"ribbon":        "The room unrolled",
	"wall":          "Wall",
	"walls":         "Walls",
	"pages":         "Pages as they print",
	"cards":         "Cards of the sheets",
	"findings":      "Findings",
	"none":          "No findings.",
	"counts":        "Counts",
	"sheets":        "sheets",
	"narrow":        "narrow",
	"left":          "left over",
	"short":         "short",
	"waste":         "waste",
	"musts":         "musts broken",
	"must":          "must",
	"should":        "should",
	"ask":           "ask",
	"note":          "note",
	"line":          "line {1}",
	"line_of":       "line {1} of {2}",
	"broken":        "The file cannot be laid out as it stands. What is drawn is the last layout that could.",
	"nothing":       "There is no layout yet: mend the file, and it comes.",
	"mend":          "mend: {1}",
	"drawing":       "{1}, drawn at {2}",
	"seam":          "seam {1}",
	"closing":       "closing seam",
	"hangs":         "it hangs",
	"from_left":     "from the left end, at the floor",
	"at_level":      "from 0 at the level line",
	"near_opening":  "from {1}",
	"near_bend":     "from bend {1}",
	"play_left":     "room to the left",
	"play_right":    "room to the right",
	"play":          "{1}, then {2}",
	"play_none":     "none: {1}",
	"play_free":     "a sheet's width",
	"pinned":        "pinned",
	"pinned_at":     "by line {1}",
	"sheet":         "sheet {1}",
	"sheet_of":      "of flitch",
	"width":         "width",
	"cut":           "cut to",
	"ripped":        "ripped",
	"wraps":         "wraps",
	"course":        "course",
	"to_card":       "its card",
	"why_1":         "the return past {1} is too small",
	"why_2":         "it stands too near the jamb of {1}",
	"why_3":         "it stands too near the edge of {1}, inside",
	"why_4":         "the leg beside {1} is too narrow",
	"why_5":         "the stretch that is kept clear",
	"why_6":         "sheet {2} is too narrow",
	"why_7":         "sheet {2} laps too little",
	"why_8":         "sheet {2} does not reach",
	"why_9":         "the hole of {1} shows beside its plate",
	"measure":       "Measure",
	"measured":      "{1} across, {2} up",
	"measure_hint":  "Choose two points; seams, edges and levels draw the point to them.",
	"zoom_in":       "closer",
	"zoom_out":      "further",
	"zoom_all":      "all of it",
	"point_hint":    "Point at a seam or a sheet; the arrow keys go from one to the next, Enter opens a sheet's card, M measures.",
	"try_hint":      "Drag a seam, or move it with Shift and the arrow keys: it is pinned there and the rest is solved anew. Nothing is written until you keep it.",
	"trial":         "trial {1}",
	"trials":        "Trials",
	"as_file":       "as the file has it",
	"new_trial":     "Another trial",
	"undo":          "Undo",
	"redo":          "Redo",
	"drop":          "Drop",
	"keep":          "Keep",
	"kept":          "Written into {1}.",
	"stale":         "The file has changed since. What you tried has been laid out on it anew: look at it, then keep it.",
	"unkept":        "Not written: {1}",
	"edits":         "What it would write",
	"no_edits":      "nothing yet",
	"tool_seam":     "seam",
	"tool_middle":   "middle of a sheet",
	"tool_keep":     "stretch without seams",
	"tool_look":     "look only",
	"tool":          "What a press on the wall does",
	"aim":           "Aim",
	"aim_steady":    "steady",
	"aim_fewest":    "fewest",
	"aim_even":      "even",
	"start":         "start",
	"start_about":   "where hanging starts; drag it, or use Shift and the arrow keys",
	"drop_pin":      "Drop the pin at {1}",
	"drop_keep":     "Drop the stretch at {1}",
	"close_auto":    "Let it close where it shows least",
	"hung":          "As hung",
	"hung_about":    "Type what hangs on this wall, as its page has it: raw edges at the level line, from 0. The new plan stands beside the old.",
	"hung_from":     "first sheet",
	"hung_to":       "last sheet",
	"hung_left":     "left edge of the first",
	"hung_try":      "Plan with these",
	"rooms":         "Rooms",
	"set_submittal": "For the architect",
	"set_install":   "For the crew",
	"set_pole":      "Story poles",
	"pdf":           "{1} as PDF",
	"drawing_set":   "The pages are being drawn.",
	"no_set":        "The pages cannot be drawn: {1}",
	"back":          "Back to the walls",
	"gone":          "The program has ended. Start it again in the terminal.",
	"unit":          "lengths as in the room file: 3' 2 1/2, or 965",
	"about_number":  "number",
	"about_room":    "room",
	"about_place":   "place",
	"about_for":     "for",
	"about_by":      "by",
	"about_drawn":   "drawn",
	"contents":      "Contents",
	"not_hanging":   "NOT FOR HANGING: a rule that must be met is broken.",
	"figures":       "Figures of this wall",
	"wall_kept":     "Marks on this wall",
	"mark_pin_seam": "pin of a seam at {1}",
	"mark_pin_mid":  "pin of a sheet's middle at {1}",
	"mark_pin_any":  "pin of a seam or a middle at {1}",
	"mark_keep":     "kept clear from {1} to {2}",
	"mark_keep_why": "kept clear from {1} to {2}: {3}",
	"marks_none":    "none",
}

// Word is a word of the screen with what is filled in.
func Word(key string, args ...string) string {
	text := said[key]
	for i, a := range args {
		text = strings.ReplaceAll(text, "{"+string(rune('1'+i))+"}", a)
	}
	return text
}

// Words are all of them, for what runs in the browser.
func Words() map[string]string { return said }

// mustKeys are the keys of why a line may not be further off.
var mustKeys = map[layout.Must]string{layout.MustReturn: "why_1", layout.MustReveal: "why_2", layout.MustClear: "why_3", layout.MustLeg: "why_4",
	layout.MustKept: "why_5", layout.MustWidth: "why_6", layout.MustOverlap: "why_7", layout.MustReach: "why_8", layout.MustPlate: "why_9"}

// HungWords are the names of the fields for a raw edge as it hangs, at its foot and at its head, as the wall's page has them in the
// crew's language; in English where the room brings a table of its own.
func HungWords(language string) ([2]string, error) {
	name, _, _ := strings.Cut(language, "+")
	if name == "" || !words.IsName(name) {
		name = "en"
	}
	t, err := words.Named(name)
	if err != nil {
		return [2]string{}, err
	}
	return [2]string{t.Say("hung.as_hung", t.Say("hung.foot")), t.Say("hung.as_hung", t.Say("hung.head"))}, nil
}
