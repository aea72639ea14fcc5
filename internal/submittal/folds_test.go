package submittal

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/detail"
	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// foldedRoom is a wall of thirteen feet with a window whose jambs are wrapped, one that is cut out, and casing at its left end.
func foldedRoom() string {
	return roomtest.Head("in") + roomtest.Wall("West", `13' 1`, `8'`, "left_end = \"casing\"\n", roomtest.Window(`1' 3`, `3'`)+"reveal = \"3 1/4\"\nwrap_reveal = true\n", roomtest.Window(`8'`, `2'`)+"reveal = \"4\"\n")
}

// papers are some of them, in the full run all.
func papers(some ...string) []string {
	if effort.Full() {
		return paper.Names()
	}
	return some
}

// A wrapped jamb is a fold, not a cut: the page of its opening gives for every sheet the fold, the flap that stays on it and what is
// taken out beyond, draws fold and free edge where they are, and leads to the detail of the flap's end. An opening that is cut out is
// none of that.
func TestWrappedJambsAreFoldedNotCutOff(t *testing.T) {
	for _, name := range papers("ansi-b", "a3") {
		p := roomtest.Laid(t, "room.toml", foldedRoom())
		d, err := Photographed(p, roomtest.Template(t, name), nil, nil)
		require.NoError(t, err)
		mark, end := "", ""
		for _, page := range d.Pages {
			for _, v := range roomtest.PartsOf(&page.Group, "view") {
				words := roomtest.Lettering(&page.Group)
				if k := slices.Index(words, "WRAPPED JAMB"); k > 1 && words[k-2] == v.Data["termination"] {
					mark, end = words[k-2], page.Name
				}
			}
		}
		require.NotEmpty(t, mark, "the jamb has its detail")
		seen := 0
		for _, page := range d.Pages {
			if !strings.HasPrefix(page.Title, "OPENING") {
				continue
			}
			text := running([]*scene.Page{page})
			for _, v := range roomtest.PartsOf(&page.Group, "view") {
				flaps := roomtest.Classed(v.Group, "flap")
				if v.Data["opening"] != "W1" {
					assert.Empty(t, flaps)
					continue
				}
				seen++
				require.Len(t, flaps, 1)
				var dashed, solid []float64
				for _, it := range flaps[0].Items {
					if l, ok := it.(*scene.Line); ok && len(l.Style.Dash.Lengths()) > 0 {
						dashed = append(dashed, l.A.X)
					} else if ok && l.Style.Colour != scene.White && l.Style.Layer == scene.Openings {
						solid = append(solid, l.A.X)
					}
				}
				require.Len(t, dashed, 2)
				require.Len(t, solid, 2)
				deep := 3.25 * 25.4 / v.View.Scale
				assert.InDelta(t, dashed[0]+deep, solid[0], 1e-6)
				assert.InDelta(t, dashed[1]-deep, solid[1], 1e-6)
				assert.InDelta(t, 36*25.4/v.View.Scale, dashed[1]-dashed[0], 1e-6, "the folds are the jambs")
				// worked by hand: the first sheet hangs with an inch of trim at the casing, so that the jamb at 15 in is 16 in from its raw edge
				assert.Contains(t, text, `1 1'-4" 3 1/4" right 1'-7 1/4" to right edge`)
				assert.Contains(t, text, `3 1/4" left left edge to `)
				assert.Contains(t, text, `jambs wrapped 3 1/4": fold dashed, end of the flap `+mark+", page "+end)
				assert.Contains(t, text, "TAKEN OUT")
				if !strings.Contains(text, "W2") {
					assert.NotContains(t, text, "CUT-OUT")
				}
			}
		}
		assert.Equal(t, 1, seen)
	}
}

// A detail of a termination states a scale only where it is drawn at it: what is given of it is as long on paper as the scale says.
// Else it says that it is not to scale, and nobody can measure in it.
func TestTerminationsAreDrawnAtTheScaleTheyState(t *testing.T) {
	ratio := regexp.MustCompile(`^SCALE .*1:\d+\)?, not to thickness$`)
	given, not := 0, 0
	rooms := roomtest.Samples(t)
	rooms["folded"] = foldedRoom()
	for why, text := range rooms {
		for _, name := range papers("ansi-b", "a4") {
			p := roomtest.Laid(t, "room.toml", text)
			s := folio.NewSet(p, roomtest.Template(t, name), nil, "")
			s.Number([]folio.Section{{Kind: folio.Details, Pages: detail.Pages}})
			for _, l := range s.List {
				if strings.HasPrefix(l.Title, "CORNER") {
					continue
				}
				b := s.Open(l)
				l.Draw(b)
				page := b.Page
				words := roomtest.Lettering(&page.Group)
				for _, v := range append(roomtest.PartsOf(&page.Group, "view"), roomtest.PartsOf(&page.Group, "sketch")...) {
					mark := v.Data["termination"]
					if mark == "" {
						continue
					}
					k := slices.Index(words, strings.ToUpper(mark))
					require.GreaterOrEqual(t, k, 0)
					under := words[k+3] // mark, page, name, scale
					parts := roomtest.Classed(v.Group, "given")
					if v.View == nil {
						not++
						assert.Equal(t, "NOT TO SCALE", under, "%s, %s, %s", why, name, mark)
						assert.Empty(t, parts)
						continue
					}
					assert.Regexp(t, ratio, under)
					require.Len(t, parts, 1, "%s, %s, %s", why, name, mark)
					long := 0.0
					for _, it := range parts[0].Items {
						switch x := it.(type) {
						case *scene.Line:
							long = math.Abs(x.A.Y - x.B.Y)
						case *scene.Rect:
							long = x.Box.H()
						}
					}
					given++
					assert.InDelta(t, read(t, p, parts[0].Title).MM()/v.View.Scale, long, 1e-6, "%s, %s, %s: %s", why, name, mark, parts[0].Title)
				}
			}
		}
	}
	assert.Greater(t, given, 10)
	assert.Greater(t, not, 20)
}
