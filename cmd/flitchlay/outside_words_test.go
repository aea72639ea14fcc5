package main

import (
	"fmt"
	"math"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/paper"
)

// touching is how deep two words may lie in each other, in millimetres: under it, an eye sees them apart.
const touching = 0.2

// The faces that the program letters in, in parts of the type size: a word's box as Poppler gives it reaches from the
// descent to the ascent. Over the capitals there is nothing but accents, under figures and most capitals nothing at all.
//
// Source: tables hhea and OS/2 of DejaVu Sans 2.37.
const (
	ascent   = 0.928
	descent  = 0.236
	capitals = 0.729
)

// point is a place on paper in millimetres, y down.
type point struct{ x, y float64 }

// word is a word of a page of a PDF file.
type word struct {
	text     string
	box      [4]float64 // of Poppler: left, upper, right, lower, in mm
	along    point      // unit vector in which it reads
	quad     [4]point   // its box as it lies, without the room over its capitals, and under its letters where none goes there
	directed bool
}

// sheetOfWords is a page of a PDF file as a reader sees it.
type sheetOfWords struct {
	w, h  float64
	words []word
}

var (
	pageLine = regexp.MustCompile(`<page width="([\d.]+)" height="([\d.]+)"`)
	wordLine = regexp.MustCompile(`<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)</word>`)
)

// words reads the boxes of all words of a PDF file by Poppler, and the way each reads by MuPDF.
func words(t *testing.T, file string) []sheetOfWords {
	t.Helper()
	text, err := exec.Command(effort.Tool(t, "pdftotext"), "-bbox", file, "-").Output()
	require.NoError(t, err, file)
	var out []sheetOfWords
	for _, line := range strings.Split(string(text), "\n") {
		if m := pageLine.FindStringSubmatch(line); m != nil {
			out = append(out, sheetOfWords{w: paperMM(t, m[1]), h: paperMM(t, m[2])})
		}
		if m := wordLine.FindStringSubmatch(line); m != nil {
			w := word{text: unescape.Replace(m[5])}
			for i := range w.box {
				w.box[i] = paperMM(t, m[1+i])
			}
			p := &out[len(out)-1]
			p.words = append(p.words, w)
		}
	}
	glyphs := glyphs(t, file)
	require.Len(t, glyphs, len(out), "%s: both readers find as many pages", file)
	for i := range out {
		for k := range out[i].words {
			out[i].words[k].lay(glyphs[i])
		}
	}
	return out
}

var unescape = strings.NewReplacer("&amp;", "&", "&lt;", "<", "&gt;", ">", "&quot;", `"`, "&#39;", "'", "&apos;", "'")

func paperMM(t *testing.T, points string) float64 {
	f, err := strconv.ParseFloat(points, 64)
	require.NoError(t, err)
	return f * 25.4 / 72
}

// lay finds how a word lies from the glyph that it begins with, and the quad that its box was put around.
func (w *word) lay(glyphs []glyph) {
	first := []rune(w.text)[0]
	size := 0.0
	for _, g := range glyphs {
		if g.r == first && g.at.x > w.box[0]-0.1 && g.at.x < w.box[2]+0.1 && g.at.y > w.box[1]-0.1 && g.at.y < w.box[3]+0.1 {
			w.along, w.directed, size = g.along, true, g.size
			break
		}
	}
	if !w.directed {
		return
	}
	thick := (ascent + descent) * size
	c, s := math.Abs(w.along.x), math.Abs(w.along.y)
	long := (w.box[2] - w.box[0] - thick*s) / c
	if s > c {
		long = (w.box[3] - w.box[1] - thick*c) / s
	}
	up := point{w.along.y, -w.along.x} // page space: y down
	mid := point{(w.box[0] + w.box[2]) / 2, (w.box[1] + w.box[3]) / 2}
	high, low := thick/2-(ascent-capitals)*size, -thick/2
	low += (descent - deepest(w.text)) * size
	corner := func(l, u float64) point {
		return point{mid.x + l*w.along.x + u*up.x, mid.y + l*w.along.y + u*up.y}
	}
	w.quad = [4]point{corner(-long/2, low), corner(long/2, low), corner(long/2, high), corner(-long/2, high)}
}

// deepest is how far under the line a word may go, in parts of the type size.
//
// Source: the outlines of DejaVu Sans and its bold face: comma and semicolon 0.142, Q 0.146, brackets 0.132, slash 0.093.
func deepest(text string) float64 {
	down := 0.0
	for _, r := range text {
		switch {
		case strings.ContainsRune("0123456789ABCDEFGHIKLMNOPRSTUVWXYZ'\"-+.=", r):
		case strings.ContainsRune(",;/()Q", r):
			down = max(down, 0.15)
		default:
			down = descent
		}
	}
	return down
}

// deep is how deep two words lie in each other: the shortest way that parts them, negative where they are apart.
func (w *word) deep(o *word) float64 {
	depth := math.Inf(1)
	for _, a := range []point{w.along, {-w.along.y, w.along.x}, o.along, {-o.along.y, o.along.x}} {
		low, high := math.Inf(1), math.Inf(-1)
		for _, p := range w.quad {
			low, high = min(low, p.x*a.x+p.y*a.y), max(high, p.x*a.x+p.y*a.y)
		}
		left, right := math.Inf(1), math.Inf(-1)
		for _, p := range o.quad {
			left, right = min(left, p.x*a.x+p.y*a.y), max(right, p.x*a.x+p.y*a.y)
		}
		depth = min(depth, high-left, right-low)
	}
	return depth
}

// clashes lists the words of a page that lie in each other, or off the paper, and those of which nobody knows how they lie.
func (p *sheetOfWords) clashes() []string {
	var out []string
	for i := range p.words {
		a := &p.words[i]
		if !a.directed {
			out = append(out, fmt.Sprintf("%q at %.1f,%.1f: no glyph of it is found", a.text, a.box[0], a.box[1]))
			continue
		}
		for _, q := range a.quad {
			if q.x < 0 || q.y < 0 || q.x > p.w || q.y > p.h {
				out = append(out, fmt.Sprintf("%q at %.1f,%.1f is off the paper", a.text, a.box[0], a.box[1]))
				break
			}
		}
		for k := range i {
			b := &p.words[k]
			if a.box[0] > b.box[2] || b.box[0] > a.box[2] || a.box[1] > b.box[3] || b.box[1] > a.box[3] || !b.directed {
				continue
			}
			if d := a.deep(b); d > touching {
				out = append(out, fmt.Sprintf("%q lies %.2f mm in %q at %.1f,%.1f", a.text, d, b.text, a.box[0], a.box[1]))
			}
		}
	}
	return out
}

// glyph is a letter as it is drawn.
type glyph struct {
	r     rune
	at    point // where it stands on its baseline
	along point
	size  float64
}

// glyphs are all letters of a PDF file by page.
//
// Source: MuPDF's trace of everything that is drawn.
func glyphs(t *testing.T, file string) [][]glyph {
	t.Helper()
	var out [][]glyph
	var to [6]float64
	var trm [4]float64
	trace(t, file, func(step string, at map[string]string) {
		switch step {
		case "page":
			out = append(out, nil)
		case "fill_text":
			numbers(t, at["transform"], to[:])
		case "span":
			numbers(t, at["trm"], trm[:])
		case "g":
			var place [2]float64
			numbers(t, at["x"]+" "+at["y"], place[:])
			const mm = 25.4 / 72
			g := glyph{at: point{(place[0]*to[0] + place[1]*to[2] + to[4]) * mm, (place[0]*to[1] + place[1]*to[3] + to[5]) * mm}}
			along := point{trm[0]*to[0] + trm[1]*to[2], trm[0]*to[1] + trm[1]*to[3]}
			n := math.Hypot(along.x, along.y)
			g.along, g.size = point{along.x / n, along.y / n}, n*mm
			for _, r := range unescape.Replace(at["unicode"]) {
				g.r = r
				break
			}
			out[len(out)-1] = append(out[len(out)-1], g)
		}
	})
	return out
}

// numbers reads as many numbers as there is room for.
func numbers(t *testing.T, text string, into []float64) {
	fields := strings.Fields(text)
	if len(fields) != len(into) {
		t.Fatalf("%q: not %d numbers", text, len(into))
	}
	for i, f := range fields {
		var err error
		if into[i], err = strconv.ParseFloat(f, 64); err != nil {
			t.Fatal(err)
		}
	}
}

// papers are those that the check from outside is made on: with FLITCHLAY_DRAWN all that come with the program.
func papers(t *testing.T) []string {
	if effort.Drawn() == 0 {
		return []string{"ansi-b", "a3"}
	}
	names := paper.Names()
	require.GreaterOrEqual(t, len(names), 8)
	return names
}

// apart holds all words of all pages of some sets of a room as drawn apart. It counts them.
func apart(t *testing.T, dir string, sets []string) int {
	t.Helper()
	count := 0
	for _, set := range sets {
		for i, p := range words(t, filepath.Join(dir, set+".pdf")) {
			assert.Empty(t, p.clashes(), "%s set, page %d", set, i+1)
			count += len(p.words)
		}
	}
	return count
}

// No word of a written PDF file lies in another or off the paper, as Poppler reads it: a check that shares nothing with the
// one that the drawing is made by.
//
// Of some samples one set by turns, on its own paper; with FLITCHLAY_CHECK=1 all sets of all samples on all that papers names.
func TestWordsOfFilesAreApart(t *testing.T) {
	effort.Tool(t, "pdftotext")
	effort.Tool(t, "mutool")
	for i, room := range some(t) {
		if !effort.Full() && effort.Drawn() == 0 {
			t.Run(filepath.Base(room), func(t *testing.T) {
				t.Parallel()
				require.Greater(t, apart(t, drawn(t, room), effort.Turns(i, sets)), 100)
			})
			continue
		}
		for _, paper := range papers(t) {
			t.Run(filepath.Base(room)+" on "+paper, func(t *testing.T) {
				t.Parallel()
				require.Greater(t, apart(t, drawn(t, onPaper(t, room, paper)), sets), 500)
			})
		}
	}
}

// The check from outside finds what lies in something else, level, upright or aslant, and what runs off the paper; and it
// leaves alone what is only near.
func TestWordsThatCollideAreFound(t *testing.T) {
	effort.Tool(t, "pdftotext")
	effort.Tool(t, "mutool")
	qpdf, dir := effort.Tool(t, "qpdf"), t.TempDir()
	plain := filepath.Join(drawn(t, filepath.Join(top, "samples", "metric-headwall.toml")), "submittal.pdf")
	before := words(t, plain)
	require.Empty(t, before[0].clashes())
	// the first page with the second one laid over it
	run(t, qpdf, plain, "--overlay", plain, "--from=2", "--to=1", "--", filepath.Join(dir, "both.pdf"))
	after := words(t, filepath.Join(dir, "both.pdf"))
	assert.Greater(t, len(after[0].clashes()), 5, "two pages on one sheet of paper")
	assert.Empty(t, after[1].clashes(), "the others are as they were")

	base := func(text string, x, y, angle float64) word {
		const size = 2.5 / capitals
		rad := angle * math.Pi / 180
		along := point{math.Cos(rad), -math.Sin(rad)}
		up := point{along.y, -along.x}
		w := word{text: text, box: [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}}
		for _, l := range []float64{0, 10} {
			for _, u := range []float64{-descent * size, ascent * size} {
				q := point{x + l*along.x + u*up.x, y + l*along.y + u*up.y}
				w.box = [4]float64{min(w.box[0], q.x), min(w.box[1], q.y), max(w.box[2], q.x), max(w.box[3], q.y)}
			}
		}
		w.lay([]glyph{{r: []rune(text)[0], at: point{x, y}, along: along, size: size}})
		require.True(t, w.directed)
		return w
	}
	for _, c := range []struct {
		name string
		a, b word
		want int
	}{
		{"one over the other", base("one", 50, 50, 0), base("two", 52, 51, 0), 1},
		{"half a millimetre in the next", base("one", 50, 50, 0), base("two", 59.5, 50, 0), 1},
		{"a line under the other", base("one", 50, 50, 0), base("two", 50, 53.4, 0), 0},
		{"a line that is too near", base("one", 50, 50, 0), base("two", 50, 52.9, 0), 1},
		{"beside it", base("one", 50, 50, 0), base("two", 60.2, 50, 0), 0},
		{"upright through it", base("one", 50, 50, 0), base("two", 55, 55, 90), 1},
		{"upright beside it", base("one", 50, 50, 0), base("two", 63, 55, 90), 0},
		{"aslant through it", base("one", 50, 50, 0), base("two", 52, 54, 45), 1},
		{"aslant, the boxes over each other and the words apart", base("one", 50, 50, 45), base("two", 53.6, 53.6, 45), 0},
		{"over the left edge", base("one", -1, 50, 0), base("two", 50, 50, 0), 1},
		{"over the lower edge", base("one", 50, 99.5, 0), base("two", 50, 50, 0), 1},
		{"over the upper edge", base("one", 50, 9, 90), base("two", 50, 50, 0), 1},
	} {
		p := sheetOfWords{w: 100, h: 100, words: []word{c.a, c.b}}
		assert.Len(t, p.clashes(), c.want, c.name)
	}
}
