package crew

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/words"
)

// manyFlitches is a room of sheets from a dozen flitches with what is said of each, and walls that lean, with long names.
func manyFlitches() string {
	text := roomtest.Head("in")
	for i := range 12 {
		text += fmt.Sprintf("[[flitch]]\nnumber = 'FL-%d'\nsheets = '1-7'\nspare = 1\ndamaged = [%d]\n", 100+i, i%5+2)
	}
	text += "[day]\nplain = 2\ncut = 2\nrest = 0\nlay_out = 0\nlook = 2\n"
	for i := range 6 {
		text += roomtest.Wall(fmt.Sprintf("Wall number %d between the reading room and the stair", i+1), `10'`, `9'`) + "lean = [\"3/8\", \"-1/4\"]\nright_end = \"trim\"\n"
	}
	return text
}

// What the site has to give, what is delivered, every wall of the table and every hold point to sign stand on the pages before the
// walls, however many these take; none is cut off.
func TestPagesBeforeTheWallsHoldAllOfTheirLists(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", manyFlitches())
	for _, language := range words.Names() {
		for _, paper := range []string{"ansi-a", "a4", "ansi-b"} {
			c := NewSet(p, spoken(t, paper, language), "Install")
			pages := c.StartPage(1)
			all := strings.Join(strings.Fields(roomtest.Texts(pages)), " ")
			for _, check := range []string{"primer", "heat", "power", "alarms", "frames", "rested", "counted", "release"} {
				assert.Contains(t, all, c.Words.Say("check."+check), "%s on %s", language, paper)
			}
			assert.Contains(t, all, c.Words.Say("check.trims", ""), "%s on %s", language, paper)
			said := map[string]int{}
			for _, s := range p.Left {
				assert.Contains(t, all, s.Flitch+": ", "%s on %s", language, paper)
				for word, numbers := range map[string][]int{"damaged": s.Damaged, "spare": s.Spare} {
					if len(numbers) > 0 {
						said[c.Words.Say("stock."+word)+": "]++
					}
				}
			}
			for words, times := range said {
				assert.Equal(t, times, strings.Count(all, words), "%s, %s on %s", words, language, paper)
			}
			for _, w := range c.Faces {
				assert.Contains(t, all, w.W.Name, "%s on %s", language, paper)
			}
			for i, page := range pages[1:] { // what goes on on a page says so on the one before it
				words := roomtest.Texts([]*scene.Page{page})
				for _, on := range []string{"start.checks_on", "start.sheets_on"} {
					if strings.Contains(words, c.Words.Say(on)) {
						assert.Contains(t, roomtest.Texts(pages[i:i+1]), c.Words.Say("page.goes_on", i+2)+"\n", "%s on %s", language, paper)
					}
				}
			}
			days := c.DayPages(1)
			signed := strings.Join(strings.Fields(roomtest.Texts(days)), " ")
			holds, signs := strings.Count(signed, c.Words.Of("look", "first"))+strings.Count(signed, c.Words.Of("look", "flitch"))+strings.Count(signed, c.Words.Of("look", "all")), strings.Count(signed, c.Words.Say("sign.name"))
			assert.GreaterOrEqual(t, holds, 2)
			assert.Equal(t, holds, signs, "hold points of the timetable with lines to sign on, %s on %s", language, paper)
			for _, p := range append(pages, days...) {
				assert.Empty(t, scene.Overlaps(p, 0.5), "%s, %s on %s", p.Name, language, paper)
				p.Texts(func(x *scene.Text) {
					assert.False(t, x.At.Y > 30 && strings.HasSuffix(x.String, "…"), "%q is cut off", x.String)
				})
			}
		}
	}
}
