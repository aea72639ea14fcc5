package submittal

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/elevation"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// running are all words of pages as one text: a paragraph that is wrapped reads on.
func running(pages []*scene.Page) string {
	return strings.ReplaceAll(roomtest.Texts(pages), "\n", " ")
}

// coversOf are the cover and the pages on which its lists go on.
func coversOf(pages []*scene.Page) []*scene.Page {
	var list []*scene.Page
	for _, p := range pages {
		if p.Title == "COVER" || strings.HasPrefix(p.Title, "NOTES") {
			list = append(list, p)
		}
	}
	return list
}

// wallCalled is a wall as a sentence of the set has it: "wall West", but not "wall Window wall".
func wallCalled(s *folio.Set, wall int) string {
	name := s.Room.Walls[wall].Name
	if strings.Contains(" "+strings.ToLower(name)+" ", " wall ") {
		return name
	}
	return "wall " + name
}

// A seam is called by its sheets, its wall and the page that shows it, in every deviation and every note, and nowhere by its
// place in a run.
func TestSeamsAreNamedBySheetsWallAndPage(t *testing.T) {
	byPlace, nought := regexp.MustCompile(`(?i)\bseam \d+(?: [^|\d]|[,.;:]|$)`), regexp.MustCompile(`(?i)is 0 (in|mm) from`)
	name := regexp.MustCompile(`seam (\S+ \| \S+)`)
	named := 0
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		for _, p := range pages {
			p.Texts(func(x *scene.Text) {
				assert.NotRegexp(t, byPlace, x.String, p.Name)
				assert.NotRegexp(t, nought, x.String, p.Name)
			})
		}
		text := running(coversOf(pages))
		for _, f := range s.Plan.Findings {
			m := name.FindStringSubmatch(f.Message)
			if m == nil || f.Wall < 0 {
				continue
			}
			page := ""
			for _, l := range s.List {
				for _, at := range l.Shown {
					if at.Wall == f.Wall && at.From <= f.At && f.At <= at.To && page == "" {
						page = l.Number
					}
				}
			}
			require.NotEmpty(t, page, f.Message)
			assert.Contains(t, text, strings.TrimRight(m[1], ",.;:")+", "+wallCalled(s, f.Wall)+", "+page+",", f.Message)
			named++
		}
	})
	assert.Greater(t, named, effort.Of(60, 100))
}

// A seam that no part of a plate is clear of runs behind it.
func TestASeamUnderAPlateRunsBehindIt(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("West", `3' 10`, `8'`, roomtest.Box("outlet", "23", "16")))
	d, err := Photographed(p, roomtest.Template(t, paper.Names()[0]), nil, nil)
	require.NoError(t, err)
	assert.Contains(t, running(coversOf(d.Pages)), "1 | 2, wall West, Z-201, runs behind the plate of outlet E1; preferred 1 in beside it.")
}

// Every should that is broken, every sheet that is ripped narrower where it shows, and every other jump of the grain that shows
// for longer than a short seam or over all the height of its wall stands among the deviations, and none of them beside "None".
func TestEveryJumpThatShowsIsADeviation(t *testing.T) {
	jumps := 0
	try := func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		text := running(coversOf(pages))
		_, text, ok := strings.Cut(text, "DEVIATIONS ")
		require.True(t, ok)
		list, _, ok := strings.Cut(text, "OPEN QUESTIONS ")
		require.True(t, ok)
		due := 0
		want := func(words string) {
			due++
			assert.Contains(t, list, words)
		}
		shows := func(m *layout.Seam) bool {
			w := &s.Room.Walls[m.Wall]
			return m.Seen > s.Room.Rules.ShortSeam || m.Seen > 0 && m.Seen >= room.At(w.Ceiling, m.X)-room.At(w.Floor, m.X)-w.Base-w.Crown
		}
		for i := range s.Plan.Runs {
			r := &s.Plan.Runs[i]
			for k := range r.Seams {
				m := &r.Seams[k]
				left, right := r.Hanging(m.LeftSheet), r.Hanging(m.RightSheet)
				if m.Hung || r.Up || !shows(m) {
					continue
				}
				pair := s.Plan.PlaceName(r, m.LeftSheet) + " | " + s.Plan.PlaceName(r, m.RightSheet) + ", " + wallCalled(s, m.Wall)
				switch {
				case m.Closing:
					want(fmt.Sprintf("heet %s meets sheet %s at the closing seam", layout.SheetWords(left), layout.SheetWords(right)))
				case m.FlitchChange:
					want(pair)
				case left.Lost > 0 && !left.Hung:
					want(fmt.Sprintf("covers %s of %s: the grain jumps %s at seam %s", s.Style.Words(left.Width), s.Style.Words(s.Room.NetWidth()), s.Style.Words(left.Lost), pair))
				}
			}
		}
		jumps += due
		for _, f := range s.Plan.Findings {
			if f.Level != finding.Note {
				due++
			}
		}
		if due > 0 {
			assert.NotContains(t, list, "None")
		}
		for n := range elevation.Deviations(s) {
			assert.Contains(t, list, fmt.Sprintf("%d ", n+1))
		}
	}
	listPages(t, try)
	for _, wall := range []string{
		roomtest.Wall("Ripped, main", `20'`, `8'`) + "main = true\n[[wall.pin]]\nat = \"60\"\n[[wall.pin]]\nat = \"75\"\n",
		roomtest.Wall("Dado", `20'`, `2'`) + "[[wall.pin]]\nat = \"60\"\n[[wall.pin]]\nat = \"75\"\n",
	} {
		d := &drawnList{}
		d.draw(roomtest.Laid(t, "room.toml", roomtest.Head("in")+wall), roomtest.Template(t, paper.Names()[0]))
		before := jumps
		try(t, d.set, d.pages)
		assert.Greater(t, jumps, before, "the grain jumps where it shows")
	}
	assert.Greater(t, jumps, effort.Of(20, 40))
}

// What a sheet is ripped to and what it then covers are two figures with a word each, and the notes over an elevation, its
// table, the schedule and the cover give the same.
func TestNotesOfNarrowSheetsAgreeWithTheirDrawing(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		text := roomtest.Head("in") + roomtest.Wall("Screen", `20'`, `8'`) + "[[wall.pin]]\nat = \"60\"\n[[wall.pin]]\nat = \"75\"\n"
		if units == "mm" {
			text = roomtest.Metric() + roomtest.WallMM("Screen", 6000, 2400) + "[[wall.pin]]\nat = 1500\n[[wall.pin]]\nat = 1875\n"
		}
		p := roomtest.Laid(t, "room.toml", text)
		d, err := Photographed(p, roomtest.Template(t, "arch-d"), nil, nil)
		require.NoError(t, err)
		words, all := p.Style.Words, running(d.Pages)
		narrow := 0
		for _, s := range p.Runs[0].Sheets {
			if s.Lost == 0 {
				continue
			}
			narrow++
			both := fmt.Sprintf("heet %s, ripped to %s, covers %s", layout.SheetWords(&s), words(s.RipTo), words(s.Width))
			assert.Equal(t, 2, strings.Count(all, both), "on the cover and over the elevation: %s", both)
			assert.Contains(t, all, "ripped to "+words(s.RipTo)+" at its "+s.Ripped+" edge", "in the table under the elevation")
			assert.Contains(t, all, p.Style.Format(s.Width)+" "+p.Style.Format(s.RipTo)+" "+s.Ripped, "in the schedule")
		}
		assert.Positive(t, narrow)
		assert.NotRegexp(t, `(?i)\bcut (to \d|narrower)`, all)
	}
}

// Thickness and whatever else is no length on a wall is printed as it was measured: on no step of a drawing's figures.
func TestMeasuredQuantitiesAreNotRounded(t *testing.T) {
	for _, c := range []struct{ text, says, never string }{
		{strings.Replace(roomtest.Metric(), "[veneer]\n", "[veneer]\nthickness = 0.7\n", 1) + roomtest.WallMM("A", 3600, 2400), "0,7 mm", `0,5 mm|\b1 mm thick`},
		{strings.Replace(roomtest.Metric(), "[veneer]\n", "[veneer]\nthickness = 0.8\n", 1) + roomtest.WallMM("A", 3600, 2400), "0,8 mm", `\b1 mm thick`},
		{strings.Replace(roomtest.Head("in"), "[veneer]\n", "[veneer]\nthickness = \"1/32\"\n", 1) + roomtest.Wall("A", `12'`, `8'`), "1/32 in", `1/16 in thick|0\.031`},
	} {
		d, err := Photographed(roomtest.Laid(t, "room.toml", c.text), roomtest.Template(t, "ansi-b"), nil, nil)
		require.NoError(t, err)
		all := running(d.Pages)
		assert.Contains(t, all, "Thickness "+c.says)
		assert.Contains(t, all, "The sheet is "+c.says+" thick.")
		assert.NotRegexp(t, c.never, all)
	}
}

// What a full sheet covers is said with all that it is less than the sheet is wide, on the cover and under the double cut, and
// the figures add up.
func TestNetWidthIsSaidWithAllThatItIsLess(t *testing.T) {
	rooms := roomtest.Samples(t)
	grid := strings.Replace(strings.Replace(roomtest.Metric(), "gross_width = 640", "gross_width = 914.5", 1), "overlap = 25", "overlap = 25.5", 1)
	rooms["a grid of 5"] = grid + "[rules]\nsnap = 5\n" + roomtest.WallMM("A", 3600, 2400)
	said := regexp.MustCompile(`(?:Net (.{1,20}?) covered by a full sheet: |net (.{1,20}?): gross )(.{1,20}?) less (.{1,12}?) overlap(?: and (.{1,12}?) to the grid)?`)
	for why, text := range rooms {
		p, d := drawnOnce(t, text)
		times := 0
		for _, m := range said.FindAllStringSubmatch(running(d.Pages), -1) {
			times++
			net, gross, overlap := read(t, p, m[1]+m[2]), read(t, p, m[3]), read(t, p, m[4])
			if m[5] != "" {
				gross -= read(t, p, m[5])
			}
			assert.Equal(t, net, gross-overlap, "%s: %s", why, m[0])
			assert.Equal(t, p.Room.NetWidth(), net)
		}
		assert.GreaterOrEqual(t, times, 2, why)
		if why == "a grid of 5" {
			assert.Contains(t, running(d.Pages), "885 covered by a full sheet: 914,5 less 25,5 overlap and 4 to the grid of 5")
		}
	}
}

// Where the sequence of a flitch leaves out a sheet the figure steps: the cover says at which seam, and so does the elevation. Of two
// courses it says that their joint parts the figure.
func TestTheMatchNamesWhatTheSequenceLeavesOut(t *testing.T) {
	_, d := drawnOnce(t, roomtest.Samples(t)["samples reading-room.toml"])
	assert.Contains(t, running(coversOf(d.Pages)), "at 6 | 8 on wall West, where sheet 7 is left out")
	for _, p := range d.Pages {
		if strings.HasPrefix(p.Title, "ELEVATION") {
			assert.Equal(t, p.Title == "ELEVATION: WEST", strings.Contains(running([]*scene.Page{p}), "the figure steps, at 6 | 8."), p.Title)
		}
	}
	_, d = drawnOnce(t, roomtest.Samples(t)["samples attic-studio.toml"])
	assert.Contains(t, running(coversOf(d.Pages)), "at the level joint of the courses")
}
