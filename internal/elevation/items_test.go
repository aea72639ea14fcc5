package elevation_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// asked are the things that the elevation of a stretch of a wall has to say, read off the layout.
func asked(p *layout.Plan, f *face.Face, from, to length.Length) []string {
	var list []string
	add := func(ok bool, format string, args ...any) {
		if ok {
			list = append(list, fmt.Sprintf(format, args...))
		}
	}
	in := func(x length.Length) bool { return from <= x && x <= to }
	for _, part := range f.Parts {
		for _, s := range part.Sheets {
			seen := false
			for _, q := range s.Pieces {
				left, right := q.Outline[0].X, q.Outline[0].X
				for _, pt := range q.Outline {
					left, right = min(left, pt.X), max(right, pt.X)
				}
				seen = seen || q.Wall == f.Wall && max(left, part.From) < to && min(right, part.To) > from
			}
			add(seen && part.From < to && part.To > from, "sheet %d %d", s.Place, s.Course)
		}
		s := part.Sheet()
		add(s.Lost > 0 && part.To > from && part.To <= to && !f.Run.Up && len(f.Shown(part.To)) > 0 && seamAt(f, part.To), "lost %d", part.Place)
	}
	for _, s := range f.Seams {
		seen := in(s.X) && len(f.Shown(s.X)) > 0 && !f.Run.Up
		add(seen && s.Closing, "closing %d", s.Number)
		add(seen && s.FlitchChange && !s.Closing, "flitch %d", s.Number)
	}
	first, last := from == f.Left, to == f.Right
	add(first && f.W.LeanLeft != 0, "lean left")
	add(last && f.W.LeanRight != 0, "lean right")
	add(f.W.HiddenBelow > max(f.Low, 0) && f.W.HiddenBelow < f.High, "hidden")
	hung := false
	for _, part := range f.Parts {
		hung = hung || part.Sheet().Hung && part.From < to && part.To > from
	}
	add(hung, "hung")
	for _, o := range f.W.Openings {
		add(o.FromLeft < to && o.Right() > from, "opening %s", o.Name)
	}
	for i := range f.W.Boxes {
		add(in(f.W.Boxes[i].X), "box %d", i)
	}
	for i, r := range f.RawEnds() {
		add(in(r.X), "end %d", i)
	}
	add(f.Run.Up && first, "end 0")
	add(f.Run.Up && last, "end 1")
	for _, d := range elevation.Deviations(&folio.Set{Plan: p, Room: p.Room}) {
		add(d.Wall == f.Wall && in(d.At), "deviation %d", d.Number)
	}
	for i, rev := range p.Room.Project.Revisions {
		add(rev.Wall == f.Wall && in(rev.At) && (rev.At > from || from == f.Left), "revision %d", i)
	}
	for i := range f.W.Pins {
		add(in(f.W.Pins[i].X), "pin %d", i)
	}
	for i, c := range f.W.KeepClear {
		add(c.From < to && c.To > from, "keep %d", i)
	}
	return append(list, "grain")
}

func seamAt(f *face.Face, x length.Length) bool {
	for _, s := range f.Seams {
		if s.X == x {
			return true
		}
	}
	return false
}

// Nothing is dropped in silence: every sheet, mark, name and end of the layout stands on the page of its wall once, on the
// drawing, in the list at the head of the page, or on the page of its list, which it names. Counted from the layout, on random rooms and on several papers.
func TestEveryThingOfTheLayoutIsOnItsPageOnce(t *testing.T) {
	papers := []string{"ansi-b", "a4", "a3", "arch-d"}
	untied := 0
	counted, kinds, listed, pointed := 0, map[string]int{}, map[string]int{}, map[bool]int{}
	n := 0
	roomtest.RandomPlans(t, effort.Of(6, 150), func(seed uint64, text string, p *layout.Plan) {
		p = furnished(text, p)
		style := length.StyleOf(p.Room.Project.Units)
		paper := papers[n%len(papers)]
		n++
		d, err := submittal.Photographed(p, roomtest.Template(t, paper), nil, nil)
		require.NoError(t, err)
		for i, page := range d.Pages {
			lists := roomtest.Classed(&page.Group, "listed")
			if strings.HasPrefix(page.Title, "ELEVATION") && i+1 < len(d.Pages) && moreOf(d.Pages[i+1].Title) == page.Title { // the page has no room for its list, or not even for its notes
				assert.Empty(t, lists)
				assert.Contains(t, roomtest.Texts([]*scene.Page{page}), "also here: "+d.Pages[i+1].Name)
				lists = roomtest.Classed(&d.Pages[i+1].Group, "listed")
				noted := strings.Contains(roomtest.Texts(d.Pages[i+1:i+2]), "Work to figures, not to scale.")
				assert.Equal(t, strings.HasSuffix(d.Pages[i+1].Title, ": NOTES"), noted)
				assert.NotEqual(t, noted, strings.Contains(roomtest.Texts(d.Pages[i:i+1]), "Work to figures, not to scale."))
				assert.True(t, len(lists) > 0 || noted, "seed %d on %s: a page of its own for nothing", seed, paper)
			}
			if moreOf(page.Title) == "" {
				lettersOnDrawings(t, page, lists, pointed)
			}
			for _, v := range roomtest.Classed(&page.Group, "view") {
				if roomtest.Fact(v, "wall") == "" || roomtest.Fact(v, "opening") != "" {
					continue
				}
				said, worded := map[string]int{}, []*scene.Group(nil)
				count := func(g *scene.Group) {
					g.Walk(func(it scene.Item) {
						if in, ok := it.(*scene.Group); ok && roomtest.Fact(in, "item") != "" {
							said[roomtest.Fact(in, "item")]++
							worded = append(worded, in)
						}
					})
				}
				count(v)
				struck := false       // the seams of level bands are figured from the level line
				var measured []string // openings whose sill and head are said
				for _, g := range roomtest.Classed(v, "dimension") {
					measured = append(measured, strings.Fields(strings.ToUpper(roomtest.Fact(g, "tier")))...)
					struck = struck || roomtest.Fact(g, "tier") == "from level"
				}
				for _, g := range lists {
					if roomtest.Fact(g, "wall") == roomtest.Fact(v, "wall") {
						if roomtest.Fact(g, "item") == "from level" {
							struck = true
							continue
						}
						if heights, ok := strings.CutPrefix(roomtest.Fact(g, "item"), "heights "); ok {
							measured = append(measured, strings.Fields(heights)...)
							continue
						}
						said[roomtest.Fact(g, "item")]++
						worded = append(worded, g)
						listed[strings.Fields(roomtest.Fact(g, "item"))[0]]++
					}
				}
				var f *face.Face
				for i := range p.Room.Walls {
					if p.Room.Walls[i].Name == roomtest.Fact(v, "wall") {
						f = face.On(p, i)
					}
				}
				for _, o := range f.W.Openings {
					if o.FromLeft < lengthOf(t, roomtest.Fact(v, "to")) && o.Right() > lengthOf(t, roomtest.Fact(v, "from")) {
						assert.True(t, slices.Contains(measured, o.Name) || slices.Contains(measured, "OVER") || enlargedIn(d, f.W.Name, o.Name), "seed %d on %s: sill and head of %s", seed, paper, o.Name)
					}
				}
				assert.Equal(t, f.Run.Up && len(f.Run.Seams) > 0, struck, "seed %d on %s, wall %s", seed, paper, f.W.Name)
				want := map[string]int{}
				for _, key := range asked(p, f, lengthOf(t, roomtest.Fact(v, "from")), lengthOf(t, roomtest.Fact(v, "to"))) {
					want[key] = 1
					kinds[strings.Fields(key)[0]]++
					counted++
				}
				for i := range f.W.Openings { // how the seams over it lie to its edges, there or on its enlargement
					o, from, to := &f.W.Openings[i], lengthOf(t, roomtest.Fact(v, "from")), lengthOf(t, roomtest.Fact(v, "to"))
					if key := "ties " + o.Name; len(f.SeamsIn(o, from, to)) > 0 && !f.Run.Up && !enlargedIn(d, f.W.Name, o.Name) {
						if said[key] == 0 { // on a crowded page the chains under and over the wall have them
							untied++
							continue
						}
						want[key] = 1
						kinds["ties"]++
					} else {
						delete(said, key)
					}
				}
				for _, g := range worded {
					circledTwice(t, f, g)
					words := strings.Join(roomtest.Lettering(g), " ")
					if name, ok := strings.CutPrefix(roomtest.Fact(g, "item"), "ties "); ok { // of a piece what it shows of the opening
						from, to := lengthOf(t, roomtest.Fact(v, "from")), lengthOf(t, roomtest.Fact(v, "to"))
						for i := range f.W.Openings {
							if o := &f.W.Openings[i]; o.Name == name && g.Class == "listed" {
								for _, m := range f.SeamsIn(o, from, to) {
									assert.Contains(t, words, style.Format(m.X-o.FromLeft), "seed %d on %s, %s", seed, paper, name)
								}
							} else if o.Name == name && o.FromLeft >= from {
								assert.Contains(t, words, style.Format(f.SeamsIn(o, from, to)[0].X-o.FromLeft), "seed %d on %s, %s", seed, paper, name)
							}
						}
						continue
					}
					if amount, ok := strings.CutPrefix(wordsOf(p, f, roomtest.Fact(g, "item")), inWords); ok { // a list has it in words
						assert.True(t, strings.Contains(words, style.Format(lengthOf(t, amount))) || strings.Contains(words, style.Words(lengthOf(t, amount))), "seed %d on %s, %s", seed, paper, words)
						continue
					}
					assert.Contains(t, words, wordsOf(p, f, roomtest.Fact(g, "item")), "seed %d on %s, wall %s: %s", seed, paper, f.W.Name, roomtest.Fact(g, "item"))
				}
				assert.Equal(t, want, said, "seed %d on %s, wall %s", seed, paper, roomtest.Fact(v, "wall"))
			}
		}
	})
	assert.Greater(t, counted, 100)
	// of the many rooms more are crowded than of the few: 5/2 is asked of them
	assert.Greater(t, 2*pointed[true], effort.Of(6, 5)*pointed[false], "letters of lists that stand on drawings")
	assert.Greater(t, kinds["ties"], untied, "openings whose seams are figured in them or in a list")
	t.Logf("%d counted, %v, in lists %v", counted, kinds, listed)
}

// moreOf is the title of the page whose notes and list a page has, "" where it is no such page.
func moreOf(title string) string {
	for _, more := range []string{": LIST", ": NOTES"} {
		if of, ok := strings.CutSuffix(title, more); ok {
			return of
		}
	}
	return ""
}

// circledTwice holds that a sheet's number stands in a double circle where the sheet is ripped narrower, by whatever edge and wherever
// it hangs, and nowhere else.
func circledTwice(t *testing.T, f *face.Face, g *scene.Group) {
	var place, course int
	if n, _ := fmt.Sscanf(roomtest.Fact(g, "item"), "sheet %d %d", &place, &course); n < 2 || g.Class != "sheet-number" {
		return
	}
	for _, part := range f.Parts {
		for _, s := range part.Sheets {
			if s.Place == place && s.Course == course {
				circles := 0
				for _, it := range g.Items {
					if _, ok := it.(*scene.Circle); ok {
						circles++
					}
				}
				assert.Equal(t, s.Ripped != "" || s.Lost > 0, circles == 2, "sheet %s on wall %s: %d circles", elevation.NumberOf(s), f.W.Name, circles)
			}
		}
	}
}

// lettersOnDrawings holds that what is in a list has a letter of its own, and that it stands on the drawing once, in a square; where the
// drawing has no room for it, it does not. It counts both.
func lettersOnDrawings(t *testing.T, page *scene.Page, lists []*scene.Group, pointed map[bool]int) {
	on := map[string]int{}
	for _, g := range roomtest.Classed(&page.Group, "list-letter") {
		on[roomtest.Fact(g, "letter")]++
	}
	seen := map[string]bool{}
	for _, g := range lists {
		letter := roomtest.Fact(g, "letter")
		assert.Regexp(t, "^[a-z]+$", letter)
		assert.False(t, seen[letter], "letter %s twice in a list", letter)
		seen[letter] = true
		if kind := roomtest.Fact(g, "item"); kind != "grain" && kind != "from level" {
			assert.LessOrEqual(t, on[letter], 1)
			pointed[on[letter] == 1]++
		}
		delete(on, letter)
	}
	assert.Empty(t, on, "letters on a drawing that no list has")
}

// furnished is a room with what random rooms lack: on every wall furniture that hides its foot and a revision, on the last a centre line
// and a stretch without seams. One that is no room with them is left as it was.
func furnished(text string, p *layout.Plan) *layout.Plan {
	text = strings.ReplaceAll(text, "[[wall]]\n", "[[wall]]\nhidden_below = \"29 in\"\n")
	text += "\n[[wall.pin]]\nat = \"21 in\"\nput = \"middle\"\n[[wall.keep_clear]]\nfrom = \"25 in\"\nto = \"30 in\"\nwhy = \"screen\"\n"
	for i := range p.Room.Walls {
		if w := &p.Room.Walls[i]; w.Cover {
			text += fmt.Sprintf("[[project.revision]]\nnote = \"Moved\"\nwall = %q\n", w.Name)
		}
	}
	r, err := room.Decode("room.toml", []byte(text))
	if err != nil {
		return p
	}
	if more, err := layout.Lay(r); err == nil {
		return more
	}
	return p
}

// inWords is before an amount that may be read as a dimension has it, or in words.
const inWords = "mm "

// wordsOf is what has to be read where a thing of the layout is said, on the drawing or in a list.
func wordsOf(p *layout.Plan, f *face.Face, key string) string {
	s := &folio.Set{Plan: p, Room: p.Room}
	style := length.StyleOf(p.Room.Project.Units)
	var a, b int
	kind, rest, _ := strings.Cut(key, " ")
	fmt.Sscan(rest, &a, &b)
	seam := func() string {
		for _, m := range f.Seams {
			if m.Number == a {
				return elevation.NumberOf(elevation.SheetAt(s, m.LeftSheet)) + " | " + elevation.NumberOf(elevation.SheetAt(s, m.RightSheet))
			}
		}
		return "no such seam"
	}
	switch kind {
	case "sheet":
		for _, part := range f.Parts {
			for _, sh := range part.Sheets {
				if sh.Place == a && sh.Course == b {
					return strings.TrimPrefix(elevation.NumberOf(sh), "-")
				}
			}
		}
	case "closing", "flitch":
		return seam()
	case "lost":
		return inWords + folio.Mm(f.Run.Hanging(a).Lost)
	case "opening":
		return rest
	case "box":
		return f.W.Boxes[a].Name
	case "end":
		return "T"
	case "deviation":
		return rest
	case "revision":
		return p.Room.Project.Revisions[a].Mark
	case "pin":
		return "CL"
	case "keep":
		return "no seam: " + f.W.KeepClear[a].Why
	case "lean":
		if rest == "left" {
			return style.Format(f.W.LeanLeft.Abs())
		}
		return style.Format(f.W.LeanRight.Abs())
	case "hidden":
		return style.Format(f.W.HiddenBelow)
	case "hung":
		return "hung"
	}
	return ""
}

// enlargedIn reports whether an opening is drawn large.
func enlargedIn(d *scene.Document, wall, name string) bool {
	for _, p := range d.Pages {
		for _, v := range roomtest.Classed(&p.Group, "view") {
			if roomtest.Fact(v, "wall") == wall && roomtest.Fact(v, "opening") == name {
				return true
			}
		}
	}
	return false
}

// lengthOf reads millimetres as they stand in the data of a drawn item.
func lengthOf(t *testing.T, mm string) length.Length {
	l, err := length.Parse(mm, length.Millimetres)
	require.NoError(t, err)
	return l
}
