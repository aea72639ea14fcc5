package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/roomtest"
)

// What belongs together stands together in the list: sheets that follow each other, marks that follow each other on a wall, names. A
// place without a number has none to miss.
func TestListOfThePlanPutsTogether(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("Long", `24'`, `9'`) + roomtest.Wall("Side, first part", `4'`, `9'`)
	s, _ := keyOf(t, roomtest.Laid(t, "room.toml", text), "ansi-b")
	r := newRoomKey(elevation.Scratch(s), keyLayout{scale: 64})
	mark := func(wall, piece int, letter, page string) missedMark {
		return missedMark{elevationMark{wall: wall, letter: letter, page: page}, piece}
	}
	var m keyMissed
	assert.Empty(t, m.lines(r))
	m.loseSheets([]int{0, 0})
	assert.Zero(t, m.count())
	m.loseSheets([]int{9, 0})
	m.loseSheets([]int{3, 8})
	m.loseSheets([]int{7, 7})
	m.marks = []missedMark{mark(1, 0, "B", "Z-207"), mark(0, 3, "Ad", "Z-206"), mark(0, 0, "Aa", "Z-201"), mark(0, 1, "Ab", "Z-203")}
	m.corners, m.words, m.told, m.named = []string{"C1"}, []string{"START"}, []int{1}, []int{1, 0}
	assert.Equal(t, []string{
		"marks Aa to Ab of Long, Z-201 to Z-203", "mark Ad of Long, Z-206", "mark B of Side, first part, Z-207",
		"sheets 3, 7 to 9", "corner C1", "name and length of Side, first part", "name of Long and Side, first part", "words START",
	}, m.lines(r))
}

// A list that has no room under the table stands on a page of its own after the plan, which names it.
func TestLongListOfThePlanHasItsPage(t *testing.T) {
	text := roomtest.Head("in")
	for _, long := range []string{`3' 1`, `2' 2`, `3' 3`, `2' 4`, `3' 5`, `2' 6`, `3' 7`, `2' 8`, `3' 9`, `2' 10`, `3' 11`, `2' 1`, `3' 2`, `2' 3`, `3' 4`, `2' 5`, `3' 6`, `2' 7`} {
		text += roomtest.Wall("Long name "+long[:1]+long[3:], long, `9'`)
	}
	s, plan := keyOf(t, roomtest.Laid(t, "room.toml", text), "a4")
	pages := planPages(t, s)
	require.Len(t, pages, 2)
	var list *folio.Leaf
	for _, l := range s.List {
		if l.About == keyListKey {
			list = l
		}
	}
	require.NotNil(t, list)
	assert.Equal(t, "ROOM KEY: LIST", list.Title)
	words := strings.Join(roomtest.Lettering(&plan.Group), " ")
	assert.Contains(t, words, "Not lettered on the plan, but listed: "+list.Number+".")
	assert.Contains(t, strings.Join(roomtest.Lettering(&pages[1].Group), " "), "NOT LETTERED ON THE PLAN")
}
