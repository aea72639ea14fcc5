package card_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// drawn are the pages of the cards alone, on a paper of ours.
func drawn(t *testing.T, p *layout.Plan, name string, which paper.Cards) []*scene.Page {
	t.Helper()
	template := *roomtest.Template(t, name)
	template.Cards = which
	set := folio.NewTapedSet(p, &template, "Install")
	d, err := set.Document(card.Pages(set, count.Of(p)))
	require.NoError(t, err)
	return d.Pages
}

// onPages are the groups of the cards of some pages.
func onPages(pages []*scene.Page) []*scene.Group {
	var list []*scene.Group
	for _, p := range pages {
		list = append(list, roomtest.Classed(&p.Group, "card")...)
	}
	return list
}

func TestPagesShowEveryCardOnce(t *testing.T) {
	p := roomtest.SmallPlan(t)
	for which, sides := range map[paper.Cards][]string{paper.CardsFace: {"FACE"}, paper.CardsBack: {"BACK"}, paper.CardsBoth: {"FACE", "BACK"}} {
		var got, want []string
		for _, g := range onPages(drawn(t, p, "ansi-a", which)) {
			got = append(got, roomtest.Fact(g, "number")+" "+roomtest.Fact(g, "seen"))
		}
		for _, s := range toHang(p) {
			for _, side := range sides {
				want = append(want, fmt.Sprint(s.Number)+" "+side)
			}
		}
		assert.Equal(t, want, got, "%s: in the order of hanging, the back after the face", which)
	}
	template := *roomtest.Template(t, "ansi-a")
	template.Cards = paper.CardsNone
	assert.Empty(t, card.Pages(folio.NewTapedSet(p, &template, "Install"), count.Of(p)))
}

// What is seen from the back says so, and says of an edge which it is as it lies there.
func TestBacksAreToldApart(t *testing.T) {
	p := roomtest.SmallPlan(t)
	face, back := onPages(drawn(t, p, "ansi-a", paper.CardsFace)), onPages(drawn(t, p, "ansi-a", paper.CardsBack))
	require.Len(t, back, len(face))
	for i := range face {
		f, b := strings.Join(roomtest.Lettering(face[i]), " "), strings.Join(roomtest.Lettering(back[i]), " ")
		assert.NotContains(t, f, "BACK")
		assert.Contains(t, b, "BACK")
		assert.Equal(t, strings.Count(f, "from left edge"), strings.Count(b, "from right edge"))
		assert.Equal(t, strings.Contains(f, "RIP LEFT"), strings.Contains(b, "RIP RIGHT"))
	}
}

// A card is drawn to its scale: the raw sheet, what is kept of it, every cut-out.
func TestCardsAreToScale(t *testing.T) {
	rects := 0
	for _, which := range []string{"a tall wall in two courses", "grain level", "metric"} {
		p := roomtest.Laid(t, "room.toml", roomtest.OddRooms[which])
		for _, g := range onPages(drawn(t, p, "ansi-a", paper.CardsFace)) {
			scale, err := strconv.ParseFloat(roomtest.Fact(g, "scale"), 64)
			require.NoError(t, err)
			for _, class := range []string{"raw", "cut-out"} {
				for _, part := range roomtest.Classed(g, class) {
					i := slices.IndexFunc(part.Items, func(it scene.Item) bool { _, ok := it.(*scene.Rect); return ok })
					require.GreaterOrEqual(t, i, 0)
					r := part.Items[i].(*scene.Rect)
					size := func(a, b string) float64 {
						from, err := strconv.ParseFloat(roomtest.Fact(part, a), 64)
						require.NoError(t, err)
						to, err := strconv.ParseFloat(roomtest.Fact(part, b), 64)
						require.NoError(t, err)
						return (to - from) / scale
					}
					assert.InDelta(t, size("left", "right"), r.Box.W(), 1e-6, which)
					assert.InDelta(t, size("bottom", "top"), r.Box.H(), 1e-6, which)
					rects++
				}
			}
		}
	}
	assert.Greater(t, rects, 30)
}

// Nothing on the cards is in the way of anything else, and nothing is too small to read. What the install set shows is looked
// at there; here are the faces with their backs, on every paper by turns.
func TestCardsAreClean(t *testing.T) {
	roomtest.OnPapers(t, roomtest.AllRooms(t), paper.Names(), func(t *testing.T, text, name string) {
		clean(t, drawn(t, roomtest.Laid(t, "room.toml", text), name, paper.CardsBoth))
	})
}

func TestCardsOfRandomRoomsAreClean(t *testing.T) {
	turn, metric := 0, 0
	roomtest.RandomPlans(t, effort.Of(12, 40), func(_ uint64, text string, p *layout.Plan) {
		if strings.Contains(text, `units = "mm"`) {
			metric++
		}
		for _, name := range effort.Turns(turn, paper.Names()) {
			if !clean(t, drawn(t, p, name, paper.CardsBoth)) {
				t.Log(name, text)
			}
		}
		turn++
	})
	assert.True(t, metric > 0 && metric < turn, "in both units")
}

// clean reports whether pages have nothing in the way.
func clean(t *testing.T, pages []*scene.Page) bool {
	ok := true
	for _, p := range pages {
		for _, o := range scene.Overlaps(p, 0.5) {
			ok = assert.Fail(t, "crowded", "%s %s: %s", p.Name, p.Title, o)
		}
		p.Texts(func(x *scene.Text) {
			ok = assert.GreaterOrEqual(t, x.Height, folio.TapedSmall-1e-9, "%s: %q", p.Name, x.String) && ok
		})
	}
	return ok
}

// A sheet with more cut-outs than any card has room for says where the others stand.
func TestALongListSaysWhereTheRestStands(t *testing.T) {
	var boxes []string
	for i := range 70 {
		boxes = append(boxes, roomtest.Box("outlet", fmt.Sprint(4+i%5*4), fmt.Sprint(10+i/5*7)))
	}
	p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("Plant", `12'`, `9'`, boxes...))
	pages := drawn(t, p, "ansi-a", paper.CardsFace)
	assert.Contains(t, roomtest.Texts(pages), "the others: cut list, page ")
	clean(t, pages)
	assert.Len(t, onPages(pages), len(toHang(p)))
}

// Sheets that differ share a page at one scale, and a sheet that needs a larger card gets it.
func TestCardsOfAPageAreOfOneSize(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples reading-room.toml"])
	pages := drawn(t, p, "ansi-a", paper.CardsFace)
	for _, page := range pages {
		list := roomtest.Classed(&page.Group, "card")
		assert.Contains(t, []int{1, 2, 3, 4}, len(list))
		for _, g := range list {
			assert.Equal(t, roomtest.Fact(list[0], "scale"), roomtest.Fact(g, "scale"))
		}
	}
	assert.Len(t, roomtest.Classed(&pages[0].Group, "card"), 4, "four to a page where they can be read")
}
