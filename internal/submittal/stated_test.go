package submittal

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// What a specification asks a submittal to state stands on the cover under its word, once, where the room file gives it, and no
// word of it where it does not; the title block carries the number, the type and the three names.
//
// Source: number, type of document, creator, approval person, date of issue are fields of a title block by ISO 7200, from memory.
func TestTheCoverStatesWhatASpecificationAsksFor(t *testing.T) {
	const bare = `[project]
title = "Mill Row"
drawn = 2026-03-01
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[wall]]
length = "9' 0"
height = "8' 0"
`
	keys := map[string][][3]string{
		"[project]": {
			{"submittal", "097200-003", "Submittal"}, {"document", "Shop drawing", "Document"}, {"contractor", "Tern Quay Builders", "Contractor"},
			{"contract_drawings", "A-601; detail 3 on A-901", "Contract drawings"}, {"sample", "sample 2 of 2026-03-20", "Control sample"},
			{"drawn_by", "D. Mason", "Drawn by"}, {"checked_by", "R. Lund", "Checked by"}, {"approved_by", "E. Shaw", "Approved by"},
		},
		"[veneer]": {
			{"face_grade", "AA of the grading rules", "Face grade"}, {"backing", "paper", "Backing"}, {"finish", "clear, in the shop", "Finish"},
			{"sheen", "20 at 60 degrees", "Sheen"}, {"fire_report", "TL-4410", "Fire report"},
		},
	}
	given := bare
	for table, list := range keys {
		lines := table + "\n"
		for _, k := range list {
			lines += k[0] + " = \"" + k[1] + "\"\n"
		}
		given = strings.Replace(given, table+"\n", lines, 1)
	}
	given = strings.Replace(given, "[project]\n", "[project]\nresubmittal = \"R2\"\n", 1)
	given += "[paste]\nname = \"wheat paste, 2 parts\"\n[primer]\nname = \"white primer\"\n"
	keys["paste"] = [][3]string{{"name", "wheat paste, 2 parts", "Adhesive"}}
	keys["primer"] = [][3]string{{"name", "white primer", "Primer"}}

	drawn := func(text string) *drawnList {
		var d drawnList
		d.draw(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"))
		return &d
	}
	with, without := drawn(given), drawn(bare)
	rows := func(d *drawnList) (list [][2]string) {
		for _, table := range []*draft.Table{projectTable(d.set), materialTable(d.set)} {
			for _, r := range table.Rows {
				list = append(list, [2]string{r.Cells[0], r.Cells[1]})
			}
		}
		return list
	}
	for table, list := range keys {
		for _, k := range list {
			if k[0] == "submittal" {
				k[1] += "-R2"
			}
			n := 0
			for _, row := range rows(with) {
				if row == [2]string{k[2], k[1]} {
					n++
				}
			}
			assert.Equal(t, 1, n, "%s %s is stated once", table, k[0])
			assert.Contains(t, running(coversOf(with.pages)), k[1])
			assert.NotContains(t, rows(without), [2]string{k[2], ""}, "%s is not given, and its word stands on the cover", k[0])
		}
	}
	assert.NotContains(t, running(coversOf(without.pages)), "Adhesive")
	text := roomtest.Texts(coversOf(with.pages))
	for _, words := range []string{"Shop drawing", "submittal 097200-003-R2", "drawn D. Mason", "checked R. Lund", "approved E. Shaw", "issue - 2026-03-01"} {
		assert.Contains(t, text, words)
	}
}

// In the strip a revision's note that has no room is told to stand on the page that lists them; where there is nothing to say nothing is said.
func TestNotesOfRevisionsAreNotCutOff(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("North", `9'`, `8'`)
	long := "All boxes of the north wall moved 3 in to the left after the electrician's visit of the week before"
	strip := func(text string) string {
		var d drawnList
		d.draw(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"))
		return roomtest.Texts(d.pages[:1])
	}
	for _, word := range strings.Fields(long) {
		assert.Contains(t, strip(text+"[[project.revision]]\nnote = \""+long+"\"\n"), word, "it takes the rows that are free")
	}
	long = strings.Repeat(long+", ", 3)
	with := strip(text + "[[project.revision]]\nnote = \"" + long + "\"\n")
	assert.NotContains(t, with, "…")
	var pages drawnList
	pages.draw(roomtest.Laid(t, "room.toml", text+"[[project.revision]]\nnote = \""+long+"\"\n"), roomtest.Template(t, "ansi-b"))
	told := regexp.MustCompile(`see (Z-00\d)`).FindStringSubmatch(with)
	require.NotNil(t, told)
	for _, page := range pages.pages {
		if page.Name == told[1] {
			assert.Contains(t, running([]*scene.Page{page}), long, "on the page that is told")
		}
	}
	assert.Contains(t, running(pages.pages), long)
	dated := regexp.MustCompile(`(?m)^(drawn|date).*\n`)
	assert.NotRegexp(t, `see Z-`, strip(dated.ReplaceAllString(text, "")))
}

// A set that is drawn anew says in its strip and in its list when it was first issued.
func TestFirstIssueKeepsItsDay(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), "drawn = 2026-04-14\n", "drawn = 2026-06-20\nissued = 2026-04-01\n", 1) + roomtest.Wall("Long", `14'`, `8'`) +
		"[[project.revision]]\ndate = 2026-06-02\nnote = \"Door moved\"\n"
	var d drawnList
	d.draw(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"))
	for _, p := range d.pages {
		assert.Contains(t, running([]*scene.Page{p}), "First issue "+"2026-04-01", p.Name)
	}
	assert.Contains(t, running(coversOf(d.pages)), "- 2026-04-01 First issue")
}
