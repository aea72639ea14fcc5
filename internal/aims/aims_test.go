package aims

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// allAims are the comparisons of rooms, by their text: each is laid out once for all tests.
var allAims sync.Map // of func() (*layout.Comparison, error)

// compared draws the comparison of a room.
func compared(t *testing.T, text, page string) (*scene.Document, *layout.Comparison) {
	p := roomtest.Laid(t, "room.toml", text)
	once, _ := allAims.LoadOrStore(text, sync.OnceValues(func() (*layout.Comparison, error) { return layout.Compare(p.Room) }))
	all, err := once.(func() (*layout.Comparison, error))()
	require.NoError(t, err)
	template, err := paper.Named(page)
	require.NoError(t, err)
	d, err := Draw(all, p, template, nil)
	require.NoError(t, err)
	return d, all
}

// Nothing touches anything on a comparison, on any room, on a small, the usual, a large and a metric paper.
func TestNothingOverlapsOnAComparison(t *testing.T) {
	roomtest.OnPapers(t, roomtest.AllRooms(t), []string{"ansi-a", "ansi-b", "arch-d", "a3"}, func(t *testing.T, text, name string) {
		d, _ := compared(t, text, name)
		for _, p := range d.Pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
			p.Texts(func(x *scene.Text) {
				assert.GreaterOrEqual(t, x.Height, 2.5-1e-9, "%s: %q is under 2.5 mm", p.Name, x.String)
			})
		}
	})
}

// words are all texts of a document, in the order drawn.
func words(d *scene.Document) string {
	var out []string
	for _, p := range d.Pages {
		p.Texts(func(t *scene.Text) { out = append(out, t.String) })
	}
	return strings.Join(out, " ")
}

// groupsOf visits all groups of a document.
func groupsOf(d *scene.Document, visit func(*scene.Group)) {
	for _, p := range d.Pages {
		p.Walk(func(it scene.Item) {
			if g, ok := it.(*scene.Group); ok {
				visit(g)
			}
		})
	}
}

// Every wall is drawn once for each layout, at one scale; aims that give the same are named together and drawn once.
func TestAimsStandOneOverTheOther(t *testing.T) {
	for why, text := range roomtest.Samples(t) {
		t.Run(why, func(t *testing.T) {
			d, all := compared(t, text, "ansi-b")
			own := map[string]bool{}
			for _, a := range all.Aims {
				if a.Same == "" {
					own[layout.AimWord(a.Plan.Aim)] = true
				} else {
					assert.Contains(t, words(d), layout.AimWord(a.Plan.Aim)+" gives the same layout")
					assert.Contains(t, words(d), "the same as "+a.Same)
				}
			}
			for _, o := range all.Others {
				own[fmt.Sprintf("layout %d", o.Number)] = true
				assert.Contains(t, words(d), fmt.Sprintf("LAYOUT %d ", o.Number))
			}
			count, scales := map[string]map[string]float64{}, map[string]bool{}
			groupsOf(d, func(g *scene.Group) {
				if g.View == nil {
					return
				}
				scales[roomtest.Fact(g, "scale")] = true
				aim, wall := roomtest.Fact(g, "aim"), roomtest.Fact(g, "wall")
				assert.True(t, own[aim], "%s has a layout of its own", aim)
				if count[wall] == nil {
					count[wall] = map[string]float64{}
				}
				count[wall][aim] += (g.View.Box.W() - 1) * g.View.Scale // less what the view has round it
			})
			want := 1
			if len(all.Others) > 0 {
				want = 2 // the aims have one, the other layouts another
			}
			assert.LessOrEqual(t, len(scales), want)
			// an eased corner shortens its walls: they meet in the middle of the arc
			plan := all.Aims[0].Plan
			for i := range plan.Runs {
				for _, st := range plan.Runs[i].Walls {
					name := plan.Room.Walls[st.Wall].Name
					require.Len(t, count[name], len(own), "wall %s", name)
					for aim, length := range count[name] {
						assert.InDelta(t, (st.Right - st.Left).MM(), length, 0.01, "wall %s of %s, all pieces together", name, aim)
					}
				}
			}
		})
	}
}

// Of every sheet each piece is drawn, on the wall that it covers, that among them which only comes past a leaning joint.
func TestEveryPieceIsDrawn(t *testing.T) {
	rooms := roomtest.Samples(t)
	rooms["leaning"] = roomtest.Head("in") + "[[wall]]\nname = \"Alder\"\nlength = \"70\"\nheight = \"96\"\ncorner = \"straight\"\nlean = [0, \"3\"]\n" +
		"[[wall]]\nname = \"Birch\"\nlength = \"60\"\nheight = \"96\"\n[[wall.pin]]\nat = \"1 1/2\"\n"
	for why, text := range rooms {
		d, all := compared(t, text, "ansi-b")
		type piece struct{ aim, wall, place string }
		want, got := map[piece]int{}, map[piece]int{}
		for _, a := range all.Aims {
			if a.Same != "" {
				continue
			}
			for i := range a.Plan.Runs {
				for _, s := range a.Plan.Runs[i].Sheets {
					for _, q := range s.Pieces {
						want[piece{layout.AimWord(a.Plan.Aim), a.Plan.Room.Walls[q.Wall].Name, strconv.Itoa(s.Place)}]++
					}
				}
			}
		}
		groupsOf(d, func(v *scene.Group) {
			if v.View == nil || strings.HasPrefix(roomtest.Fact(v, "aim"), "layout ") {
				return
			}
			for _, g := range roomtest.Classed(v, "sheet") {
				if place := roomtest.Fact(g, "place"); place != "" && roomtest.Fact(g, "number") != "" {
					got[piece{roomtest.Fact(v, "aim"), roomtest.Fact(v, "wall"), place}]++
				}
			}
		})
		for p, n := range want {
			assert.GreaterOrEqual(t, got[p], n, "%s: %v", why, p)
		}
		require.NotEmpty(t, want)
	}
}

// Every jump, closing seam and change of flitch has its mark, and every narrow sheet is shaded.
func TestBreaksOfTheGrainAreMarked(t *testing.T) {
	jumps, closings := 0, 0
	for why, text := range roomtest.Samples(t) {
		t.Run(why, func(t *testing.T) {
			d, all := compared(t, text, "ansi-b")
			for _, a := range all.Aims {
				if a.Same != "" {
					continue
				}
				aim := layout.AimWord(a.Plan.Aim)
				want, got := map[string]bool{}, map[string]bool{}
				for i := range a.Plan.Runs {
					for _, s := range a.Plan.Runs[i].Seams {
						if s.Closing {
							want["closing "+folio.Mm(s.At)] = true
							closings++
						}
					}
				}
				narrow := map[string]bool{}
				for _, j := range a.Narrow {
					want["jump "+folio.Mm(j.Seam.At)] = true
					narrow[strconv.Itoa(j.Sheet.Place)] = true
					jumps++
				}
				shown := map[string]bool{}
				groupsOf(d, func(view *scene.Group) {
					if view.View == nil || roomtest.Fact(view, "aim") != aim {
						return
					}
					for _, it := range view.Items {
						g, ok := it.(*scene.Group)
						if !ok {
							continue
						}
						switch {
						case g.Class == "seam" && roomtest.Fact(g, "kind") != "flitch-change":
							got[roomtest.Fact(g, "kind")+" "+roomtest.Fact(g, "at")] = true
						case g.Class == "sheet":
							shape := g.Items[0].(*scene.Poly)
							assert.Equal(t, narrow[roomtest.Fact(g, "place")], shape.Fill.On, "%s: sheet at place %s", aim, roomtest.Fact(g, "place"))
							shown[roomtest.Fact(g, "place")] = true
						}
					}
				})
				assert.Equal(t, want, got, aim)
				for i := range a.Plan.Runs {
					for _, s := range a.Plan.Runs[i].Sheets {
						if len(s.Pieces) > 0 {
							assert.True(t, shown[strconv.Itoa(s.Place)], "%s: place %d is drawn", aim, s.Place)
						}
					}
				}
			}
		})
	}
	assert.Greater(t, jumps, 20)
	assert.Greater(t, closings, 0)
}
