package submittal

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/wood"
)

const fullSite = "[site]\ntemperature = 58\nhumidity = 71.5\nwall = 50\nyear = { low = 15, high = 75 }\nboard = { meter = 'gypsum scale', reading = 1.25, limit = 1 }\nshop = { temperature = 95, humidity = 12 }\n"

// Nothing touches on the site's pages, whatever is known of the site.
func TestNothingOverlapsOnTheSitePages(t *testing.T) {
	rooms := roomtest.AllRooms(t)
	rooms["a site with everything wrong"] = roomtest.Head("in") + fullSite + roomtest.Wall("North", `12'`, `9'`)
	rooms["the same in metric"] = roomtest.Metric() + fullSite + roomtest.WallMM("Head", 4280, 2700)
	rooms["shop and site alike"] = roomtest.Head("in") + "[site]\ntemperature = 70\nhumidity = 40\nshop = { temperature = 70, humidity = 40 }\n" + roomtest.Wall("North", `12'`, `9'`)
	rooms["as dry and as damp as air can be"] = roomtest.Head("in") + "[site]\ntemperature = 30\nhumidity = 100\nshop = { temperature = 120, humidity = 0 }\n" + roomtest.Wall("North", `12'`, `9'`)
	roomtest.OnPapers(t, rooms, paper.Names(), func(t *testing.T, text, name string) {
		s := folio.NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, name), nil, "Submittal")
		d, err := s.Document([]folio.Section{{Kind: folio.General, Pages: generalPages}})
		require.NoError(t, err)
		for _, p := range d.Pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
			p.Texts(func(x *scene.Text) { assert.GreaterOrEqual(t, x.Height, 2.5-1e-9, "%q", x.String) })
		}
	})
}

// What the site page has to say, whatever the room: each by a word that stands for it.
func TestSitePageSaysWhatItHasTo(t *testing.T) {
	template, err := paper.Named("ansi-b")
	require.NoError(t, err)
	d, err := folio.NewSet(roomtest.Laid(t, "room.toml", roomtest.Head("in")+fullSite+roomtest.Wall("North", `12'`, `9'`)), template, nil, "Submittal").Document([]folio.Section{{Kind: folio.General, Pages: generalPages}})
	require.NoError(t, err)
	all := strings.Join(strings.Fields(roomtest.Texts(d.Pages)), " ")
	for _, words := range []string{"Local codes", "licensed trades decide", "Primer: the one that the cover names", "NEC 314.20", "confirmed by the authority", "GA-214", "AWI 200, 3.2.5",
		"at least 72 h", "free sheet, an upper bound", "common practice, no source", "at most 1", "58 F, 71.5 % relative humidity"} {
		assert.Contains(t, all, words)
	}
	// each finding of the site stands on the page
	for _, words := range []string{"the site is at 58 F; hold at least 60 F", "hold 30 % to 55 %", "the dew point of", "over its limit of 1", "goes from 15 % to 75 %", "from shop to site wood goes"} {
		assert.Contains(t, strings.ToLower(all), strings.ToLower(words))
	}
}

// The dots of the chart stand where the handbook's table has them: at 70 F wood comes to 7.7 % at 40 % and 13.1 % at 70 %.
// Source: Wood Handbook, FPL-GTR-282, Table 4-2.
func TestChartMarksBothStates(t *testing.T) {
	p := scene.NewPage("chart", "chart", 160, 120)
	moistureChart(&p.Group, scene.Box{X0: 5, Y0: 5, X1: 155, Y1: 115}, draft.Office(), []State{
		{Name: "shop", Climate: wood.Climate{Temperature: 70, Humidity: 40}}, {Name: "site", Climate: wood.Climate{Temperature: 70, Humidity: 70}}})
	var dots []scene.Point
	var plot scene.Box
	letters := map[string]scene.Point{}
	p.Walk(func(it scene.Item) {
		switch it := it.(type) {
		case *scene.Circle:
			dots = append(dots, it.Centre)
		case *scene.Rect:
			if it.Width > 0 {
				plot = it.Box
			}
		case *scene.Text:
			if it.Height > 3 {
				letters[it.String] = it.At
			}
		}
	})
	require.Len(t, dots, 2)
	for i, want := range [][2]float64{{40, 7.7}, {70, 13.1}} {
		assert.InDelta(t, want[0], (dots[i].X-plot.X0)/plot.W()*100, 1e-6)
		assert.InDelta(t, want[1], (plot.Y1-dots[i].Y)/plot.H()*24, 0.07)
	}
	require.Len(t, letters, 2)
	for i, name := range []string{"A", "B"} {
		near := math.Hypot(letters[name].X-dots[i].X, letters[name].Y-dots[i].Y)
		other := math.Hypot(letters[name].X-dots[1-i].X, letters[name].Y-dots[1-i].Y)
		assert.Less(t, near, other, "a letter stands by its own dot")
	}
	assert.Empty(t, scene.Overlaps(MoisturePage([]State{{Name: "shop", Climate: wood.Climate{Temperature: 70, Humidity: 40}},
		{Name: "site", Climate: wood.Climate{Temperature: 60, Humidity: 42}}}), 0.5))
}

// The lists are as many pages as they take once all pages are listed, on every paper: nothing falls off their end.
func TestCoverTakesAllOfItsList(t *testing.T) {
	roomtest.OnPapers(t, roomtest.Samples(t), paper.Names(), func(t *testing.T, text, name string) {
		s := folio.NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, name), nil, "Submittal")
		s.Number(Submittal)
		pages := 0
		for _, l := range s.List {
			if l.Kind == folio.General {
				pages++
			}
		}
		r := newRibbon(s, func() []folio.Block { return generalBlocks(s) })
		if r.alone {
			pages--
		}
		assert.Len(t, folio.Flow(s.Look, r.blocks(generalBlocks(s)), generalColumns(s, r)), pages)
	})
}

// How the work is done, and what is minded then, stands in the set for the crew alone; what defers to who decides on fire and on the
// site stays with the architect.
func TestMeansAndMethodsAreNotForTheArchitect(t *testing.T) {
	means := regexp.MustCompile(`(?i)\bblades?\b|\bladders?\b|stepladder|\blead(-safe)? paint|lead-safe|\bdust\b|\brespirable|\bglasses\b|\bcut wet|locked and tried|29 CFR|40 CFR|MOISTURE READINGS|(?i)hang, stop, look|tested with tape|name and date on this page|say before hanging|hot air|WALLS RELEASED`)
	for why, p := range roomtest.SamplePlans(t) {
		d, err := Photographed(p, roomtest.Template(t, "ansi-b"), nil, nil)
		require.NoError(t, err)
		all := running(d.Pages)
		assert.Empty(t, means.FindAllString(all, -1), why)
		for _, words := range []string{"WHO DECIDES", "the authority having jurisdiction", "FIRE ", "ASTM E84", "IBC 2018, 803.2", "to be confirmed by the authority"} {
			assert.Contains(t, all, words, why)
		}
	}
}
