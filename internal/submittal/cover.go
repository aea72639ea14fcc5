package submittal

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// revisionTitle is over the table of revisions.
const revisionTitle = "REVISIONS"

// coverBlocks are the lists of the cover: what the set is about, the material, what departs from the rules, what is open, the drawings,
// the rules.
func coverBlocks(s *folio.Set) []folio.Block {
	list := []folio.Block{
		{Table: projectTable(s)},
		{Table: materialTable(s)},
		{Title: "MATCH AT FOUR LEVELS", Items: matchItems(s)},
		{Title: "DEVIATIONS", Items: deviationItems(s)},
		{Title: "OPEN QUESTIONS", Items: questionItems(s)},
		{Table: drawingList(s)},
		{Table: rulesTable(s)},
		{Title: "NOTES OF THE LAYOUT", Items: noteItems(s)},
		{Title: "GENERAL NOTES", Items: generalItems(s)},
	}
	if len(s.Room.Project.Revisions) > 0 { // else the strip of every page has all
		list = append(list, folio.Block{Table: revisionTable(s)})
	}
	return append(list, folio.Block{Title: "ABBREVIATIONS", Items: abbreviations(s)})
}

// Pairs makes a table of two columns without a head; rows without a value are left out.
func Pairs(title string, rows ...[2]string) *draft.Table {
	t := &draft.Table{Title: title, Columns: []draft.Column{{Bold: true}, {Wrap: true}}}
	for _, r := range rows {
		if r[1] != "" {
			t.Rows = append(t.Rows, draft.Row{Cells: []string{r[0], r[1]}})
		}
	}
	return t
}

func projectTable(s *folio.Set) *draft.Table {
	issue := s.Issue()
	if date := s.Issued(); date != "" && issue != "-" {
		issue += ", " + date
	}
	if issue == "-" && s.Room.Project.Drawn != "" { // the first, which the line of that day stands for
		issue = ""
	}
	return Pairs("SUBMITTAL", append(projectLines(s.Room.Project, issue), s.Room.StatedOf("project")...)...)
}

func projectLines(p room.Project, issue string) [][2]string {
	return [][2]string{{"Submittal", p.SubmittalNumber()}, {"Project", p.Title}, {"Number", p.Number}, {"Room", p.Room}, {"Place", p.Place},
		{"For", p.For}, {"By", p.By}, {"Section", p.Section}, {"Finish", p.Tag}, {"Measured", p.Measured}, {"Drawn", p.Drawn}, {"Issue", issue}}
}

func materialTable(s *folio.Set) *draft.Table {
	v := s.Room.Veneer
	grain := "up the wall"
	if v.Horizontal {
		grain = "level"
	}
	rows := [][2]string{
		{"Species", v.Species}, {"Cut", v.Cut}, {"Grain", grain},
		{"Sheets", s.Style.Measured(v.GrossWidth) + " wide gross, up to " + s.Style.Measured(v.Length) + " long"},
		{"Overlap", s.Style.Measured(v.Overlap) + " at every seam, double cut"},
		{"Net", s.Style.Measured(s.Room.NetWidth()) + " covered by a full sheet: " + elevation.NetOf(s)},
	}
	if v.LeafWidth > 0 {
		rows = append(rows, [2]string{"Leaves", s.Style.Measured(v.LeafWidth) + " wide, drawn dotted"})
	}
	if v.Thickness > 0 {
		rows = append(rows, [2]string{"Thickness", s.Style.MeasuredWords(v.Thickness)})
	}
	rows = append(rows, s.Room.StatedOf("veneer", "paste", "primer")...)
	for _, f := range s.Room.Flitches {
		text := fmt.Sprintf("%d sheets delivered", len(f.Sheets))
		if n := len(f.Damaged); n > 0 {
			text += ", damaged " + layout.Ranges(f.Damaged, " to ")
		}
		if n := len(f.Spare); n > 0 {
			text += ", kept back " + layout.Ranges(f.Spare, " to ")
		}
		rows = append(rows, [2]string{"Flitch " + f.Number, text})
	}
	if len(s.Room.Flitches) == 0 {
		rows = append(rows, [2]string{"Flitch", "not yet chosen: sheets are numbered from 1"})
	}
	for _, c := range clearanceItems(s) {
		rows = append(rows, [2]string{"Clearance", c})
	}
	hang, gaps := hanging(s.Plan)
	laid := fmt.Sprintf("%s, %s of wall", sheetCount(hang), s.Style.FormatArea(s.Plan.Totals.NetArea))
	if gaps > 0 {
		laid += fmt.Sprintf("; %d more to stock, in openings", gaps)
	}
	rows = append(rows, [2]string{"Laid", laid})
	return Pairs("MATERIAL", rows...)
}

func drawingList(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "DRAWINGS", Columns: []draft.Column{{Head: "PAGE", Bold: true}, {Head: "TITLE", Wrap: true}, {Head: "SCALE"}}}
	for _, l := range s.List {
		scale := l.Scale
		switch scale {
		case "":
			scale = "as noted"
		case "none":
			scale = ""
		}
		scale, _, _ = strings.Cut(scale, " (")
		t.Rows = append(t.Rows, draft.Row{Cells: []string{l.Number, l.Title, scale}, Link: l.Number})
	}
	if len(s.List) == 0 { // while pages are planned: as many rows as there will be, about
		n := 6 + len(s.Faces)
		for range n {
			t.Rows = append(t.Rows, draft.Row{Cells: []string{"Z-000", "PAGE", "1:24"}})
		}
	}
	return t
}

// rulesTable is the rules and values that the layout was made by, without those about what the room has none of.
func rulesTable(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "RULES AND VALUES USED", Columns: []draft.Column{{Head: "RULE", Wrap: true}, {Head: "MUST", Align: scene.End}, {Head: "BETTER", Align: scene.End}}}
	none := map[int]bool{}
	for _, d := range room.Distances() {
		for len(t.Rows) < d.Line.At {
			t.Rows = append(t.Rows, draft.Row{Cells: make([]string, len(t.Columns))})
		}
		cells, column := t.Rows[d.Line.At-1].Cells, 1
		if d.Line.Better {
			column = 2
		}
		cells[0] += d.Line.Says
		if cells[column] != "" {
			cells[column] += ", "
		}
		cells[column] += s.Style.Measured(*d.Of(&s.Room.Rules))
		if !hasPart(s, d.Line.Of) {
			none[d.Line.At-1] = true
		}
	}
	for i := len(t.Rows) - 1; i >= 0; i-- {
		if none[i] {
			t.Rows = slices.Delete(t.Rows, i, i+1)
		}
	}
	t.Rows = append(t.Rows, draft.Row{Cells: []string{"aim: " + aimWords(layout.AimWord(s.Plan.Aim)), "", ""}})
	return t
}

// hasPart reports whether a room has what a rule is about.
func hasPart(s *folio.Set, of room.Part) bool {
	covered := func(has func(*room.Wall) bool) bool {
		return slices.ContainsFunc(s.Faces, func(f *face.Face) bool { return has(f.W) })
	}
	switch of {
	case room.Bends:
		return slices.ContainsFunc(s.Plan.Runs, func(r layout.Run) bool { return len(r.Corners) > 0 })
	case room.Openings:
		return covered(func(w *room.Wall) bool { return len(w.Openings) > 0 })
	case room.Boxes:
		return covered(func(w *room.Wall) bool { return len(w.Boxes) > 0 })
	}
	return true
}

// aimWords says what an aim of the layout is.
func aimWords(aim string) string {
	switch aim {
	case "fewest":
		return "fewest sheets"
	case "even":
		return "even widths"
	}
	return "steady grain before fewest sheets"
}

func deviationItems(s *folio.Set) []draft.Item {
	var list []draft.Item
	for _, d := range elevation.Deviations(s) {
		list = append(list, draft.Item{Mark: fmt.Sprint(d.Number), Text: elevation.Said(s, d.Finding), Bold: d.Level == finding.Must})
	}
	for _, f := range climate.Findings(s.Room) {
		if f.Level != finding.Note {
			list = append(list, draft.Item{Mark: fmt.Sprint(len(list) + 1), Text: elevation.Capital(f.Message) + sitePage(s) + ".", Bold: f.Level == finding.Must})
		}
	}
	if len(list) == 0 {
		return []draft.Item{{Text: "None: every rule and every preference is met, and no jump of the grain is seen."}}
	}
	if s.Unfit() {
		list = append([]draft.Item{{Text: "NOT FOR HANGING: what is bold breaks a rule and has to be settled first.", Bold: true}}, list...)
	}
	return list
}

// sitePage refers to the page of the site; while pages are planned to one as long.
func sitePage(s *folio.Set) string {
	page := s.PageOf("site")
	if page == "" {
		page = s.Paper.PageNumber(int(folio.General), 2)
	}
	return " (" + page + ")"
}

// questionItems are what is open: what the room file is asked, what lacks; what is asked of several alike once.
func questionItems(s *folio.Set) []draft.Item {
	p := s.Room.Project
	var list []question
	for _, f := range s.Room.Asks {
		text := strings.Replace(elevation.Said(s, f), "?.", "?", 1)
		if f.Code == finding.SiteUnread && silent(s) {
			text = askSite
		}
		list = append(list, question{string(f.Code), text})
	}
	ask := func(format string, a ...any) {
		list = append(list, question{text: elevation.Walled(s, fmt.Sprintf(format, a...))})
	}
	if len(s.Room.Flitches) == 0 {
		ask("The flitch is not yet chosen.")
	}
	var unmarked []string
	for i := range s.Room.Walls {
		if w := &s.Room.Walls[i]; w.Cover && w.Ref == "" {
			unmarked = append(unmarked, w.Name)
		}
	}
	switch n := len(unmarked); {
	case n == 1:
		ask("Which elevation of the architect shows wall %s?", unmarked[0])
	case n > 1:
		ask("Which elevations of the architect show walls %s?", andOf(unmarked))
	}
	if p.Tag == "" {
		ask("Which finish tag does the covering carry?")
	}
	var items []draft.Item
	for _, text := range asked(list) {
		items = append(items, draft.Item{Mark: lettered(len(items)), Text: text})
	}
	if len(items) == 0 {
		return []draft.Item{{Text: "None."}}
	}
	return items
}

// lettered is the letter of the i-th question: a to z, then aa.
func lettered(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return lettered(i/26-1) + lettered(i%26)
}

// clearanceItems are the clearances to what burns that are stated: of every firebox in a covered wall.
func clearanceItems(s *folio.Set) []string {
	var list []string
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			if !w.Cover || !o.Kind.Traits().Burns || !o.Cleared {
				continue
			}
			list = append(list, s.Style.Measured(o.Clearance)+" from "+o.Kind.Named(o.Name)+" on wall "+w.Name+" to what burns, as stated")
		}
	}
	return list
}

func noteItems(s *folio.Set) []draft.Item {
	var said []question
	for _, f := range s.Plan.Findings {
		if f.Level != finding.Ask && !elevation.Departs(s, f) {
			said = append(said, question{string(f.Code), elevation.Said(s, f)})
		}
	}
	var list []draft.Item
	for _, text := range asked(said) {
		list = append(list, draft.Item{Mark: "-", Text: text})
	}
	if len(list) == 0 {
		return []draft.Item{{Text: "None."}}
	}
	return list
}

func generalItems(s *folio.Set) []draft.Item {
	rounded := "1/16 in"
	if s.Metric() {
		rounded = "1/2 mm"
	}
	texts := []string{
		"Figures are rounded to " + rounded + ", halves away from zero; the parts of a chain add up to the whole that is printed.",
		"Heights are above one level for the whole room: the floor at the left end of the first wall. A solid triangle under a floor says how far it is off that level.",
		"Returns at a corner are measured at the floor, from the seam to the bend; at an eased corner to its round.",
		"Elevations are seen from inside the room. A dashed ghost shows how far a wrapped sheet goes on round the corner.",
		"Grain is drawn to show its way and where it breaks, not the figure of the flitch.",
		"A double circle marks a sheet that is ripped narrower; a diamond the closing seam; a hexagon a change of flitch; a pentagon a deviation by its number in the list; a triangle a revision by its mark in the block; a letter in a square what stands in the list of its page.",
		"Beside an opening and in its white: from its edges to the seams on either side and over it.",
	}
	if !wraps(s) { // no returns, and no ghosts
		texts = slices.Delete(texts, 2, 4)
		texts = slices.Insert(texts, 2, "Elevations are seen from inside the room.")
	}
	if !hasPart(s, room.Openings) {
		texts = texts[:len(texts)-1]
	}
	var list []draft.Item
	for i, t := range append(texts, s.Paper.Standing...) {
		list = append(list, draft.Item{Mark: fmt.Sprint(i + 1), Text: t})
	}
	return list
}

// revisionTable lists all revisions in full: the strip has room for the last ones only.
func revisionTable(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: revisionTitle, Columns: []draft.Column{{Head: "MARK", Bold: true}, {Head: "DATE"}, {Head: "WHAT", Wrap: true}}}
	t.Rows = append(t.Rows, draft.Row{Cells: []string{"-", s.Room.Project.FirstIssue(), "First issue"}})
	for _, r := range s.Room.Project.Revisions {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{r.Mark, r.Date, r.Note}})
	}
	return t
}

// abbreviations explains the letters of marks, and of those kinds in the room that have the word nowhere beside their names.
func abbreviations(s *folio.Set) []draft.Item {
	text := "CL centre line, T termination"
	if hasPart(s, room.Bends) {
		text += ", C corner"
	}
	there := map[room.Kind]bool{}
	for i := range s.Room.Walls {
		for j := range s.Room.Walls[i].Openings {
			there[s.Room.Walls[i].Openings[j].Kind] = true
		}
		for j := range s.Room.Walls[i].Boxes {
			there[s.Room.Walls[i].Boxes[j].Kind] = true
		}
	}
	for _, k := range room.Kinds() {
		if k.Abbreviated && there[k.Word] {
			text += ", " + k.Letter + " " + string(k.Word)
		}
	}
	return []draft.Item{{Text: text + "."}}
}
