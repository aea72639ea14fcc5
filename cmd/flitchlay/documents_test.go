package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// The PDF files lead about as another program reads them: a label for each page, an outline by set, wall and page, the
// project in the document's data, the room file attached to the last byte, and a scale for every scaled view.
//
// Source: page labels ISO 32000-1, 12.4.2; outline 12.3.3; attachments 7.11.4; viewports 12.9; read by MuPDF and poppler.
func TestPDFLeadsAbout(t *testing.T) {
	mutool, pdfinfo, pdfdetach := effort.Tool(t, "mutool"), effort.Tool(t, "pdfinfo"), effort.Tool(t, "pdfdetach")
	for which, room := range some(t) {
		t.Run(filepath.Base(room), func(t *testing.T) {
			t.Parallel()
			text, err := os.ReadFile(room)
			require.NoError(t, err)
			dir, order := drawnSets(t, room)
			pages := svgs(t, dir)
			views := 0
			for _, set := range setsOf(which) {
				file := filepath.Join(dir, set+".pdf")
				labels := run(t, mutool, "show", file, "trailer/Root/PageLabels")
				var got []string
				for _, m := range regexp.MustCompile(`/P \(([^)]*)\)`).FindAllStringSubmatch(labels, -1) {
					got = append(got, m[1])
				}
				assert.Equal(t, order[set], got, "%s: labels", set)

				outline := run(t, mutool, "show", file, "outline")
				for i := range order[set] {
					assert.Regexp(t, `#page=`+strconv.Itoa(i+1)+`\b`, outline, "%s: outline", set)
				}
				info := run(t, pdfinfo, file)
				title := regexp.MustCompile(`(?m)^title\s*=\s*"(.*)"`).FindSubmatch(text)
				require.Len(t, title, 2)
				assert.Regexp(t, `Title: +`+regexp.QuoteMeta(string(title[1])), info)
				assert.Regexp(t, `Author: +\S`, info)
				assert.Regexp(t, `(?i)Subject: .*`+set, info)

				out := filepath.Join(t.TempDir(), "room.toml")
				run(t, pdfdetach, "-savefile", "room.toml", "-o", out, file)
				back, err := os.ReadFile(out)
				require.NoError(t, err)
				assert.Equal(t, string(text), string(back), "%s: the room file", set)

				ask := []string{"show", "-g", file}
				for i := range order[set] {
					ask = append(ask, "pages/"+strconv.Itoa(i+1)+"/VP")
				}
				ports := strings.Split(strings.TrimSpace(run(t, mutool, ask...)), "\n")
				require.Len(t, ports, len(order[set]), "%s: a line for each page", set)
				for i, name := range order[set] {
					want := 0
					for _, v := range pages[name].of("view") {
						if v.attr("data-scale") != "" {
							want++
						}
					}
					assert.Equal(t, want, strings.Count(ports[i], "/Type/Viewport"), "%s page %s: viewports", set, name)
					views += want
				}
			}
			assert.Greater(t, views, 10)
		})
	}
}

// Every SVG page says what it is, and every drawn item what it stands for.
func TestSVGSaysWhatItShows(t *testing.T) {
	for _, room := range some(t) {
		t.Run(filepath.Base(room), func(t *testing.T) {
			plan := laid(t, room)
			count := map[string]int{}
			seams := map[string]bool{}
			for name, page := range svgs(t, drawn(t, room)) {
				require.NotEmpty(t, page.Children)
				assert.Equal(t, "title", page.Children[0].XMLName.Local, name)
				assert.NotEmpty(t, strings.TrimSpace(page.Children[0].Text), name)
				assert.Equal(t, "desc", page.Children[1].XMLName.Local, name)
				assert.NotEmpty(t, strings.TrimSpace(page.Children[1].Text), name)
				for class, keys := range map[string][]string{"view": {"data-scale"}, "seam": nil, "plumb-line": {"data-at"}, "sheet": {"data-place"},
					"opening": {"data-name"}, "box": {"data-kind"}, "corner": nil, "dimension": nil} {
					for _, e := range page.of(class) {
						count[class]++
						for _, key := range keys {
							assert.NotEmpty(t, e.attr(key), "%s: %s of a %s", name, key, class)
						}
					}
				}
				for _, e := range page.of("seam") {
					seams[e.attr("data-at")] = true
				}
			}
			for _, class := range []string{"view", "seam", "plumb-line", "sheet", "opening", "corner", "dimension"} {
				assert.Positive(t, count[class], "class %s is on some page", class)
			}
			text, err := os.ReadFile(room)
			require.NoError(t, err)
			boxes := strings.Contains(string(text), "[[wall.box]]")
			assert.Equal(t, boxes, count["box"] > 0, "boxes are on some page where the room has any, and only there")
			for _, r := range plan.Runs {
				for _, s := range r.Seams {
					assert.True(t, seams[strconv.FormatFloat(s.At, 'f', -1, 64)] || s.Seen == 0, "the seam at %v says where it is", s.At)
				}
			}
		})
	}
}
