package submittal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
)

// keyMissed is what found no place on the plan. What is told of it stands in the list of the key instead.
type keyMissed struct {
	corners []string
	words   []string
	marks   []missedMark
	sheets  []int
	named   []int // walls without their names, their lengths elsewhere
	told    []int // walls without name and length
	holes   []string
}

// missedMark is the mark of a view that found no place.
type missedMark struct {
	elevationMark
	piece int // of its wall, from 0
}

// count is how much found no place.
func (m *keyMissed) count() int {
	return len(m.corners) + len(m.words) + len(m.marks) + len(m.sheets) + len(m.named) + len(m.told) + len(m.holes)
}

// loseSheets notes that the numbers of some sheets found no place. A place whose sheet has no number yet has none to miss.
func (m *keyMissed) loseSheets(numbers []int) {
	for _, n := range numbers {
		if n != 0 && !slices.Contains(m.sheets, n) {
			m.sheets = append(m.sheets, n)
		}
	}
}

// lines say what found no place, each what belongs together.
func (m *keyMissed) lines(r *roomKey) (list []string) {
	slices.SortFunc(m.marks, func(a, b missedMark) int { return cmp.Or(a.wall-b.wall, a.piece-b.piece) })
	slices.Sort(m.named)
	slices.Sort(m.told)
	list = append(m.markLines(r), m.sheetLines()...)
	if line := several("corner", m.corners); line != "" {
		list = append(list, line)
	}
	for _, of := range []struct {
		what  string
		walls []int
	}{{"name and length", m.told}, {"name", m.named}} {
		var names []string
		for _, i := range of.walls {
			names = append(names, r.Room.Walls[i].Name)
		}
		if len(names) > 0 {
			list = append(list, of.what+" of "+strings.Join(names, " and "))
		}
	}
	list = append(list, m.holes...)
	if len(m.words) > 0 {
		list = append(list, "words "+strings.Join(m.words, ", "))
	}
	return list
}

// sheetLines are the numbers in as few signs as can be: "sheets 3, 5 to 9".
func (m *keyMissed) sheetLines() []string {
	numbers := slices.Sorted(slices.Values(m.sheets))
	var spans []string
	for i := 0; i < len(numbers); {
		j := i + 1
		for j < len(numbers) && numbers[j] == numbers[j-1]+1 {
			j++
		}
		spans = append(spans, elevation.Span(numbers[i], numbers[j-1]))
		i = j
	}
	switch {
	case len(numbers) == 0:
		return nil
	case len(numbers) == 1:
		return []string{"sheet " + spans[0]}
	}
	return []string{"sheets " + strings.Join(spans, ", ")}
}

// markLines are the marks, those that follow each other on a wall together: "marks Ba to Bh of Wall 2, Z-207 to Z-214".
func (m *keyMissed) markLines(r *roomKey) (list []string) {
	for i := 0; i < len(m.marks); {
		j := i + 1
		for j < len(m.marks) && m.marks[j].wall == m.marks[i].wall && m.marks[j].piece == m.marks[j-1].piece+1 {
			j++
		}
		first, last := m.marks[i], m.marks[j-1]
		letters, pages := "mark "+first.letter, first.page
		if j > i+1 {
			letters = fmt.Sprintf("marks %s to %s", first.letter, last.letter)
		}
		if last.page != first.page {
			pages += " to " + last.page
		}
		list = append(list, fmt.Sprintf("%s of %s, %s", letters, r.Room.Walls[first.wall].Name, pages))
		i = j
	}
	return list
}

// several are things of one kind after their word, which has an s where they are more than one.
func several(word string, list []string) string {
	switch len(list) {
	case 0:
		return ""
	case 1:
		return word + " " + list[0]
	}
	return word + "s " + strings.Join(list, ", ")
}

// keyListKey is what the page is looked up by that has the list of what found no place on the plan.
const keyListKey = "room key list"

// keyListPages are the pages of that list, in columns, where the page of the plan has no room for it.
func keyListPages(s *folio.Set, how keyLayout) []*folio.Leaf {
	return s.Flowed("ROOM KEY: LIST", keyListKey, s.NoteColumns(), func() []folio.Block {
		b := folio.Block{Title: "NOT LETTERED ON THE PLAN"}
		r := newRoomKey(elevation.Scratch(s), how) // with the pages that are known by now
		r.plan()
		for _, line := range r.missed.lines(r) {
			b.Items = append(b.Items, draft.Item{Text: strings.ToUpper(line[:1]) + line[1:]})
		}
		return []folio.Block{b}
	}, nil)
}
