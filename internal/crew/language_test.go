package crew

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/pole"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/words"
)

// spoken is a page template with the words of a language.
func spoken(t *testing.T, name, language string) *paper.Template {
	t.Helper()
	template := roomtest.Template(t, name)
	first, beside, two := strings.Cut(language, "+")
	table, err := words.Named(first)
	require.NoError(t, err)
	if two {
		other, err := words.Named(beside)
		require.NoError(t, err)
		table = words.Paired(table, other)
	}
	template.Words = table
	return template
}

// languages are all that come with the program but English, which all other tests draw, and two together.
func languages() []string {
	list := slices.DeleteFunc(words.Names(), func(name string) bool { return name == "en" })
	return append(list, "en+es")
}

// Nothing touches on the pages of any room in any language, and nothing but what the room file gave is cut off.
func TestPagesOfAllLanguagesAreClean(t *testing.T) {
	rooms, papers := roomtest.Samples(t), []string{}
	if effort.Full() {
		rooms = roomtest.AllRooms(t)
		maps.DeleteFunc(rooms, func(_, text string) bool { return strings.Contains(text, "西") }) // what no typeface has is drawn higher than letters, and tried in English
	}
	for _, language := range languages() {
		papers = append(papers, "ansi-a "+language, "a4 "+language)
	}
	roomtest.OnPapers(t, rooms, papers, func(t *testing.T, text, named string) {
		name, language, _ := strings.Cut(named, " ")
		p := roomtest.Laid(t, "room.toml", text)
		d, err := Install(p, spoken(t, name, language))
		require.NoError(t, err)
		Clean(t, d)
		for _, page := range d.Pages {
			page.Texts(func(x *scene.Text) {
				if neighbours.MatchString(x.String) || x.At.Y < 30 {
					return // heads of pages and of cards are shortened in every language
				}
				if strings.HasSuffix(x.String, "…") {
					for _, name := range strings.Split(marked.ReplaceAllString(strings.TrimSuffix(x.String, "…"), ""), ", ") {
						assert.Contains(t, given(p), name, "page %s: %q is cut off", page.Name, x.String)
					}
				}
			})
		}
		d, err = pole.Draw(p, spoken(t, name, language))
		require.NoError(t, err)
		Clean(t, d)
	})
}

// neighbours begin what a card says of them in its head.
var neighbours = regexp.MustCompile(`^(left|izq\.|right|der\.): `)

// marked is the letter of a wall before its name.
var marked = regexp.MustCompile(`^[A-Z]{1,2}  `)

// given is all that a room file says.
func given(p *layout.Plan) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%+v", p.Room.Project)
	for i := range p.Room.Walls {
		w := &p.Room.Walls[i]
		fmt.Fprintf(&b, " %s %+v %+v %+v", w.Name, w.Openings, w.Boxes, w.Bare)
	}
	for _, f := range p.Room.Flitches {
		fmt.Fprintf(&b, " %+v", f)
	}
	if board := p.Room.Site.Board; board != nil {
		b.WriteString(" " + board.Meter)
	}
	return b.String()
}

// letters finds the words of a text.
var letters = regexp.MustCompile(`\p{L}{3,}`)

// vocabulary are the words of a table.
func vocabulary(t *words.Table) map[string]bool {
	out := map[string]bool{}
	for _, form := range t.Forms() {
		for _, word := range letters.FindAllString(form, -1) {
			out[strings.ToLower(word)] = true
		}
	}
	return out
}

// No word of the English table is left on a page in Spanish, but for what the room file gave and words that both have.
func TestNoEnglishIsLeftInSpanish(t *testing.T) {
	spanish, err := words.Named("es")
	require.NoError(t, err)
	english, both := vocabulary(words.English()), vocabulary(spanish)
	roomtest.OnPapers(t, roomtest.Samples(t), []string{"ansi-a"}, func(t *testing.T, text, paper string) {
		p := roomtest.Laid(t, "room.toml", text)
		own := strings.ToLower(given(p))
		for _, answer := range []layout.Word{layout.HangIt, layout.Restrike, layout.PlanAgain} {
			own += " " + strings.ToLower(answer.String()) // check answers so in every language
		}
		install, err := Install(p, spoken(t, paper, "es"))
		require.NoError(t, err)
		poles, err := pole.Draw(p, spoken(t, paper, "es"))
		require.NoError(t, err)
		read := 0
		look := func(where, text string) {
			for _, word := range letters.FindAllString(strings.ToLower(text), -1) {
				read++
				assert.False(t, english[word] && !both[word] && !strings.Contains(own, word), "%s: %q", where, text)
			}
		}
		for _, page := range append(install.Pages, poles.Pages...) {
			look(page.Name+", title", page.Title)
			look(page.Name+", read out", page.Desc)
			page.Texts(func(x *scene.Text) { look(page.Name, x.String) })
		}
		assert.Greater(t, read, 500)
	})
}

// numbers are the figures of texts, each as often as it stands there.
func numbers(texts []string) []string {
	list := regexp.MustCompile(`\d+`).FindAllString(strings.Join(texts, " "), -1)
	slices.Sort(list)
	return list
}

// said is what the pages of a set say with figures, before it has its place: lists of the walls, the cut list, the room start.
func said(c *Set) map[string][]string {
	out := map[string][]string{"registers": c.registerLines(), "stock": c.stockLengths(c.cutRows())}
	for _, r := range append(c.cutRows(), c.struckRows()...) {
		key := "cut of " + r.number
		out[key] = append(append(append(out[key], r.ends...), r.more...), r.cut, r.rip)
	}
	for _, s := range c.inOrder() {
		d := c.boards(&board{Set: c}, s)
		key := s.lead().key()
		for _, r := range d.tapeRows() {
			out[key] = append(append(out[key], r.number...), r.line, r.words, r.seam, r.head, r.face)
		}
		out[key] = append(out[key], d.ripLines()...)
		for _, d := range d.faces {
			for _, lines := range [][]string{d.boxLines(), d.edgeWords(), d.stockWords(), d.slantWords(), d.witnessWords(), d.sliverWords(), d.jointWords()} {
				out[key] = append(out[key], lines...)
			}
		}
	}
	return out
}

// Figures are the same in every language: of each wall's list, its boxes and rips, of each row of the cut list.
func TestFiguresAreTheSameInEveryLanguage(t *testing.T) {
	rooms := strangers(t)
	for why, text := range roomtest.Samples(t) {
		rooms[why] = text
	}
	for why, text := range rooms {
		r, err := room.Decode(why, []byte(text))
		require.NoError(t, err)
		p, err := layout.Lay(r)
		if err != nil {
			continue
		}
		want := said(NewSet(p, spoken(t, "ansi-a", "en"), "Install"))
		require.NotEmpty(t, want)
		for _, language := range words.Names() {
			for key, texts := range said(NewSet(p, spoken(t, "ansi-a", language), "Install")) {
				assert.Equal(t, numbers(want[key]), numbers(texts), "%s, %s, %s: %q", why, language, key, texts)
			}
		}
	}
}
