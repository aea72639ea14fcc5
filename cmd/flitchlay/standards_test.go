package main

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/paper"
)

// Every paper is exactly as large as its standard says, in the SVG and in the PDF.
//
// Source: TestPapersAreExact of package paper holds the templates to the standards that it names. The two letter papers
// stand upright. A PDF point is 1/72 in: ISO 32000-1, 8.3.2.3.
func TestPaperSizesAreOfTheStandards(t *testing.T) {
	pdfinfo := effort.Tool(t, "pdfinfo")
	box := regexp.MustCompile(`Page +\d+ MediaBox: +([\d.]+) +([\d.]+) +([\d.]+) +([\d.]+)`)
	for i, name := range paper.Names() {
		if !effort.Full() && i%3 != 0 {
			continue // every third one; package pdf holds the boxes of all sizes
		}
		template, err := paper.Named(name)
		require.NoError(t, err)
		size := [2]float64{template.Width, template.Height}
		dir, order := drawnSets(t, onPaper(t, filepath.Join(top, "samples", "metric-headwall.toml"), name))
		page := svgs(t, dir)[order["submittal"][0]]
		for i, key := range []string{"width", "height"} {
			mm, err := strconv.ParseFloat(strings.TrimSuffix(page.attr(key), "mm"), 64)
			require.NoError(t, err)
			assert.InDelta(t, size[i], mm, 1e-9, "%s: %s of the SVG", name, key)
		}
		said := box.FindAllStringSubmatch(run(t, pdfinfo, "-box", "-l", "999", filepath.Join(dir, "submittal.pdf")), -1)
		require.Len(t, said, len(order["submittal"]))
		for _, m := range said {
			for i := range 2 {
				points, err := strconv.ParseFloat(m[3+i], 64)
				require.NoError(t, err)
				assert.InDelta(t, size[i]*72/25.4, points, 0.01, "%s: the PDF", name)
			}
		}
	}
}

// All lines are as wide as the series says.
//
// Source: ISO 128-2 (formerly 128-20): 0.13 0.18 0.25 0.35 0.5 0.7 1 1.4 2 mm.
func TestLineWidthsAreOfTheSeries(t *testing.T) {
	series := []string{"0.13", "0.18", "0.25", "0.35", "0.5", "0.7", "1", "1.4", "2"}
	for _, room := range some(t) {
		used := map[string]bool{}
		for name, page := range svgs(t, drawn(t, room)) {
			var visit func(e *element)
			visit = func(e *element) {
				if w := e.attr("stroke-width"); w != "" && w != "0" {
					used[w] = true
					assert.Contains(t, series, w, "%s: a %s", name, e.XMLName.Local)
				}
				for i := range e.Children {
					visit(&e.Children[i])
				}
			}
			visit(page)
		}
		assert.GreaterOrEqual(t, len(used), 5, "%s has heavy and fine lines: %v", filepath.Base(room), used)
	}
}

// No text is lower than 2.5 mm, and the figures of all dimensions of a submittal are 2.5 mm high, 3.5 mm on the large papers
// that are read at half size too. Only pages for the crew fit long names between the heights of the series.
//
// Source: ISO 3098: 2.5 3.5 5 7 10 mm, the height of capitals; 2.5 mm is the least on paper in EN ISO practice, 3.5 mm where
// it will be reduced.
// ISO 129-1:2018: one height for all dimensions of a drawing.
func TestTextHeightsAreOfTheSeries(t *testing.T) {
	series := []float64{2.5, 3.5, 5, 7, 10}
	for _, room := range some(t) {
		all, fitted, figures := 0, 0, 0
		for name, page := range svgs(t, drawn(t, room)) {
			height := func(e *element) float64 { return e.number(t, "font-size") * capitals }
			page.each(func(e *element) {
				if e.XMLName.Local == "text" {
					all++
					h := height(e)
					assert.GreaterOrEqual(t, h, 2.499, "%s: %q", name, e.Text)
					if !slices.ContainsFunc(series, func(s float64) bool { return math.Abs(s-h) < 0.002 }) {
						fitted++
						assert.False(t, strings.HasPrefix(name, "Z-"), "%s: %q is %.3f high", name, e.Text, h)
					}
				}
			})
			if !strings.HasPrefix(name, "Z-") {
				continue
			}
			want := 2.5
			box := figure.FindAllString(page.attr("viewBox"), -1)
			require.Len(t, box, 4)
			wide, err := strconv.ParseFloat(box[2], 64)
			require.NoError(t, err)
			if wide > 800 {
				want = 3.5
			}
			for _, part := range page.of("dimension") {
				part.each(func(e *element) {
					if e.XMLName.Local == "text" {
						figures++
						assert.InDelta(t, want, height(e), 0.002, "%s: %q", name, e.Text)
					}
				})
			}
		}
		assert.Greater(t, all, 500)
		assert.Less(t, fitted, all/20, "%s: nearly all text is of the series", filepath.Base(room))
		assert.Greater(t, figures, 20)
	}
}

// Every page of a submittal carries the fields that a title block must have.
//
// Source: ISO 7200:2004, mandatory fields. Legal owner and creator are the one firm that draws; it and the architect approve
// in the review boxes; what kind of document it is stands before the title of the page.
func TestTitleBlockHasTheMandatoryFields(t *testing.T) {
	dir, order := drawnSets(t, filepath.Join(top, "samples", "reading-room.toml"))
	pages := svgs(t, dir)
	kinds := regexp.MustCompile(`^(COVER|NOTES|SITE|ROOM KEY|ELEVATION|OPENINGS?|CORNERS|DOUBLE CUT AND TERMINATIONS|SHEETS|SEAMS|BOXES|QUANTITIES)`)
	for i, name := range order["submittal"] {
		var words []string
		pages[name].each(func(e *element) {
			if e.XMLName.Local == "text" {
				words = append(words, e.Text)
			}
		})
		text := strings.Join(words, "\n")
		for field, want := range map[string]string{
			"legal owner, creator":  "Northlight Finishes",
			"identification number": "HL-207",
			"date of issue":         "issue A 2026-05-02",
			"sheet number":          "\n" + name,
			"number of sheets":      "page " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(order["submittal"])),
			"title":                 "Harbour Lane Library: reading room",
			"approval, the hanger":  "HANGER'S REVIEW",
			"approval, the other":   "ARCHITECT'S REVIEW",
			"revisions":             "REVISIONS",
		} {
			assert.Contains(t, text, want, "%s: %s", name, field)
		}
		var block []string
		for _, frame := range pages[name].of("frame") {
			frame.each(func(e *element) {
				if e.XMLName.Local == "text" {
					block = append(block, e.Text)
				}
			})
		}
		assert.True(t, slices.ContainsFunc(block, kinds.MatchString), "%s: document type", name)
	}
}

// Page numbers are a discipline, a kind and a count of two figures from 01.
//
// Source: US National CAD Standard, UDS module 1, 1.3.1: discipline with a hyphen as place-holder, sheet type 0 to 9,
// sequence. Types in use: 0 general, 1 plans, 2 elevations, 4 large-scale views, 5 details, 6 schedules. Z is the
// contractor's drawings.
func TestPageNumbersAreOfTheForm(t *testing.T) {
	form := regexp.MustCompile(`^([A-Z]-|[A-Z]{2})([0-9])([0-9]{2})$`)
	for _, room := range some(t) {
		_, order := drawnSets(t, room)
		last, sequence := "", 0
		for _, name := range order["submittal"] {
			m := form.FindStringSubmatch(name)
			require.NotNil(t, m, name)
			assert.Equal(t, "Z-", m[1])
			assert.Contains(t, "012456", m[2], name)
			if m[2] != last {
				assert.Greater(t, m[2], last, "from the general to the particular")
				last, sequence = m[2], 0
			}
			sequence++
			n, err := strconv.Atoi(m[3])
			require.NoError(t, err)
			assert.Equal(t, sequence, n, name)
		}
		assert.Equal(t, "6", last, "schedules come last")
	}
}

// The views of a submittal are at the scales of an architect's rule, of a metric room at those of ISO 5455.
//
// Source: architect's scales as US drafting texts list them, 3/32" = 1'-0" to full size; ISO 5455:1979, 5.1: 1, 2, 5 and
// their tens. 1:25 is none of them.
func TestScalesAreOfTheStandards(t *testing.T) {
	for room, allowed := range map[string][]float64{
		"reading-room.toml":    {1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128},
		"metric-headwall.toml": {1, 2, 5, 10, 20, 50, 100, 200, 500},
	} {
		dir, order := drawnSets(t, filepath.Join(top, "samples", room))
		pages, views := svgs(t, dir), 0
		for _, name := range order["submittal"] {
			for _, view := range pages[name].of("view") {
				if view.attr("data-scale") == "" {
					continue
				}
				views++
				scale := view.number(t, "data-scale")
				assert.Contains(t, allowed, scale, "%s of %s", name, room)
				ratio := "1:" + strconv.FormatFloat(scale, 'f', -1, 64)
				found := false
				pages[name].each(func(e *element) { found = found || e.XMLName.Local == "text" && strings.Contains(e.Text, ratio) })
				assert.True(t, found, "%s of %s says %s", name, room, ratio)
			}
		}
		assert.Greater(t, views, 5, room)
	}
}

// A reader that measures 225.5625 points on a view at 1/2" = 1'-0" shows 6 ft 3 3/16 in, by the factors in the file.
//
// Source: ISO 32000-1, 12.9, Tables 260 to 263; a point is 1/72 in, so 225.5625 points are 3.1328125 in, at 24 times the
// size 6.265625 ft.
func TestPDFMeasuresTheVector(t *testing.T) {
	qpdf := effort.Tool(t, "qpdf")
	dir := drawn(t, filepath.Join(top, "samples", "reading-room.toml"))
	plain := filepath.Join(t.TempDir(), "plain.pdf")
	run(t, qpdf, "--qdf", "--object-streams=disable", filepath.Join(dir, "submittal.pdf"), plain)
	text, err := os.ReadFile(plain)
	require.NoError(t, err)
	dictionary := regexp.MustCompile(`(?s)/D \[\s*<<\s*/C 1\s*/Type /NumberFormat\s*/U \(ft\)\s*>>\s*<<\s*/C 12\s*/D 16\s*/F /F\s*/Type /NumberFormat\s*/U \(in\)\s*>>\s*\]\s*/R \(1/2" = 1'-0" \\\(1:24\\\)\)\s*/Subtype /RL\s*/Type /Measure\s*/X \[\s*<<\s*/C ([\d.]+)\s*/Type /NumberFormat\s*/U \(ft\)`)
	m := dictionary.FindSubmatch(text)
	require.NotNil(t, m, "a view at 1/2 in to the foot is there")
	factor, err := strconv.ParseFloat(string(m[1]), 64)
	require.NoError(t, err)
	feet := 225.5625 * factor
	assert.InDelta(t, 6.265625, feet, 1e-7)
	whole := math.Floor(feet)
	sixteenths := math.Round((feet - whole) * 12 * 16)
	assert.Equal(t, 6.0, whole)
	assert.Equal(t, 3.1875, sixteenths/16, "3 3/16 in")
}
