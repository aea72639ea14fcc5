package crewday

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/roomtest"
)

// Beside every blank for a reading stands its limit, and who sets it where that is published.
func TestEveryReadingHasItsLimit(t *testing.T) {
	site := "[site]\ntemperature = 70\nhumidity = 40\nboard = { meter = 'gypsum scale', limit = 1 }\n"
	set := NewSet(roomtest.Laid(t, "room.toml", roomtest.Head("in")+site+roomtest.Wall("Long", `30'`, `9'`)), roomtest.Template(t, "ansi-a"), "Install")
	start := strings.Join(strings.Fields(roomtest.Texts(set.StartPage(1))), " ")
	for _, words := range []string{"air 60 to 90 F AWI 200, 3.2.6", "RH 30 to 55 % AWI 200, 3.2.4", "wall min 49.6 F at 70 F and 40 % RH common practice", "board max 1 gypsum scale", "go no go"} {
		assert.Contains(t, start, words)
	}
	day := strings.Join(strings.Fields(roomtest.Texts(set.DayPages(1))), " ")
	assert.Contains(t, day, "READINGS time air F 60 to 90 RH % 30 to 55 wall F min 49.6 board max 1 go")
	assert.Contains(t, day, "Wall: 49.6 F at 70 F and 40 % RH; in other air, dew point + 5 F.")
	assert.Equal(t, "go: air 60 to 90 F, RH 30 to 55 %, wall min 49.6 F, board max 1", set.LimitLine())

	set = NewSet(roomtest.Laid(t, "room.toml", roomtest.Metric()+roomtest.WallMM("Long", 6000, 2500)), roomtest.Template(t, "a4"), "Install")
	start = strings.Join(strings.Fields(roomtest.Texts(set.StartPage(1))), " ")
	for _, words := range []string{"air 15,6 to 32,2 C", "wall dew point + 2,8 C", "board max ____"} {
		assert.Contains(t, start, words)
	}
}

// The three words of an arrival stand under the heights to read, each with what it means.
func TestHeightsSayWhatComesOfThem(t *testing.T) {
	set := NewSet(roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("Long", `30'`, `9'`)), roomtest.Template(t, "ansi-a"), "Install")
	pages := set.StartPage(1)
	last := strings.Join(strings.Fields(roomtest.Texts(pages[len(pages)-1:])), " ")
	for _, words := range []string{"length and leans (page 1)", "[[reading]]", "hang the lines stand", "re-strike sheets and cut lengths stand", "plan again a rule breaks"} {
		assert.Contains(t, last, words)
	}
}
