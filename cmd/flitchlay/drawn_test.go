package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
	"flitchlay/internal/effort"
)

// samples are the rooms that come with the program.
func samples(t *testing.T) []string {
	files, err := filepath.Glob(filepath.Join(top, "samples", "*.toml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	return files
}

// some are all samples with FLITCHLAY_CHECK=1, else one in inches and one in millimetres.
func some(t *testing.T) []string {
	if effort.Full() {
		return samples(t)
	}
	return []string{filepath.Join(top, "samples", "reading-room.toml"), filepath.Join(top, "samples", "metric-headwall.toml")}
}

// sets are the sets that a room is drawn in.
var sets = []string{"submittal", "install", "pole"}

// Every set that can be drawn is looked at, and the README names its file.
func TestSetsAreAll(t *testing.T) {
	var out, messages bytes.Buffer
	require.Zero(t, cli.Run([]string{"__complete", "draw", "--set", ""}, nil, &out, &messages))
	words, _, _ := strings.Cut(out.String(), ":")
	assert.Equal(t, sets, strings.Fields(words), "the list sets in drawn_test.go, from which tests take what they look at")
	text, err := os.ReadFile(filepath.Join(top, "README.md"))
	require.NoError(t, err)
	for _, set := range sets {
		assert.True(t, bytes.Contains(text, []byte("`"+set+".pdf`")), "the README names %s.pdf", set)
	}
}

// setsOf are the sets of a room to look at: that for the architect, and by turns one of the others; with FLITCHLAY_CHECK=1
// all of them.
func setsOf(which int) []string { return append(sets[:1:1], effort.Turns(which, sets[1:])...) }

// drawing is what the program has drawn of a room. Tests read it and change nothing in its folder.
type drawing struct {
	dir      string
	status   int
	messages string
	pages    func() (map[string]*element, error) // of SVG, read once
}

// kept are the drawings of this run: each room file is drawn once, whatever looks at it. TestMain removes the folder.
var kept struct {
	sync.Mutex
	dir   string
	rooms map[string]func() *drawing // by the path of the room file
	pages map[string]*drawing        // by their folder
}

// keptDir is the folder of all drawings that tests share. The caller holds the lock.
func keptDir(t *testing.T) string {
	if kept.dir == "" {
		dir, err := os.MkdirTemp("", "drawn")
		require.NoError(t, err)
		kept.dir, kept.rooms, kept.pages = dir, map[string]func() *drawing{}, map[string]*drawing{}
	}
	return kept.dir
}

// draw draws a room into a folder.
func draw(room, dir string) *drawing {
	d := &drawing{dir: dir}
	var out, messages bytes.Buffer
	d.status = cli.Run([]string{"draw", room, "-o", dir}, nil, &out, &messages)
	d.messages = messages.String()
	d.pages = sync.OnceValues(func() (map[string]*element, error) { return readPages(dir) })
	return d
}

// drawn is a room as drawn, once for all tests.
func drawn(t *testing.T, room string) string {
	dir, _ := drawnSets(t, room)
	return dir
}

// wrote is what the program says of each set: its file, and the pages in their order.
var wrote = regexp.MustCompile(`wrote .*?([a-z]+)\.pdf \((\d+) pages?\) and in .*?svg (.*)`)

// drawnSets is a room as drawn, once for all tests: the folder, and the names of the pages of each set, in order.
func drawnSets(t *testing.T, room string) (dir string, order map[string][]string) {
	kept.Lock()
	dir = filepath.Join(keptDir(t), strconv.Itoa(len(kept.rooms)))
	once := kept.rooms[room]
	if once == nil {
		once = sync.OnceValue(func() *drawing { return draw(room, dir) })
		kept.rooms[room] = once
	}
	kept.Unlock()
	d := once()
	require.LessOrEqual(t, d.status, 1, d.messages)
	kept.Lock()
	kept.pages[d.dir] = d
	kept.Unlock()
	order = map[string][]string{}
	for _, said := range wrote.FindAllStringSubmatch(d.messages, -1) {
		for _, name := range strings.Split(said[3], ", ") {
			if !strings.HasSuffix(name, ".svg") {
				continue // another backend's; that no page is left out is held below
			}
			first, last, _ := strings.Cut(name, " to ")
			order[said[1]] = append(order[said[1]], between(t, strings.TrimSuffix(first, ".svg"), strings.TrimSuffix(last, ".svg"))...)
		}
		require.Equal(t, said[2], strconv.Itoa(len(order[said[1]])))
	}
	for _, set := range sets {
		require.NotEmpty(t, order[set], "pages of the set %s", set)
	}
	return d.dir, order
}

// between are the names of pages from first to last, which differ in the number at their end; first alone where there is no
// last.
func between(t *testing.T, first, last string) []string {
	if last == "" {
		return []string{first}
	}
	stem := strings.TrimRight(first, "0123456789")
	a, err := strconv.Atoi(first[len(stem):])
	require.NoError(t, err)
	b, err := strconv.Atoi(last[len(stem):])
	require.NoError(t, err)
	var out []string
	for ; a <= b; a++ {
		out = append(out, fmt.Sprintf("%s%0*d", stem, len(first)-len(stem), a))
	}
	return out
}

// svgs are the pages of a folder as drawn, by name.
func svgs(t *testing.T, dir string) map[string]*element {
	kept.Lock()
	d := kept.pages[dir]
	kept.Unlock()
	require.NotNil(t, d, "%s is no folder of drawings", dir)
	pages, err := d.pages()
	require.NoError(t, err)
	require.NotEmpty(t, pages)
	return pages
}

// readPages reads the SVG files of a folder.
func readPages(dir string) (map[string]*element, error) {
	files, err := filepath.Glob(filepath.Join(dir, "svg", "*.svg"))
	if err != nil {
		return nil, err
	}
	out := map[string]*element{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return nil, err
		}
		var e element
		if err := xml.Unmarshal(text, &e); err != nil {
			return nil, fmt.Errorf("%s: %w", f, err)
		}
		out[strings.TrimSuffix(filepath.Base(f), ".svg")] = &e
	}
	return out, nil
}

// pageTable is the table of a room file that names its paper.
var pageTable = regexp.MustCompile(`(?m)^\[page\]\n(?:[^\[\n].*\n|\n)*`)

// onPaper is a room file of ours that is drawn on other paper: the same file each time that it is asked for.
func onPaper(t *testing.T, room, paper string) string {
	t.Helper()
	text, err := os.ReadFile(room)
	require.NoError(t, err)
	return keptFile(t, strings.TrimSuffix(filepath.Base(room), ".toml")+" on "+paper+".toml", otherPaper(string(text), paper))
}

// otherPaper is the text of a room that is drawn on other paper.
func otherPaper(text, paper string) string {
	return pageTable.ReplaceAllString(text, "") + fmt.Sprintf("\n[page]\nsubmittal = %q\ninstall = %q\n", paper, paper)
}

// keptFile writes a room file for all tests, once.
func keptFile(t *testing.T, name, text string) string {
	t.Helper()
	kept.Lock()
	defer kept.Unlock()
	file := filepath.Join(keptDir(t), name)
	if _, err := os.Stat(file); err != nil {
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	}
	return file
}

// walls are the lengths of the walls of a room, their seams and their sheets, as the layout prints them.
type walls struct {
	Runs []struct {
		Walls []struct {
			Name        string
			Left, Right float64
		}
		Seams []struct {
			At, Seen float64
			Wall     string
		}
		Sheets []struct {
			Number *int
			Pieces []struct {
				Wall    string
				Outline [][2]float64
			}
		}
	}
}

func laid(t *testing.T, room string) walls {
	var out, messages bytes.Buffer
	require.LessOrEqual(t, cli.Run([]string{"layout", room}, nil, &out, &messages), 1, messages.String())
	var w walls
	require.NoError(t, json.Unmarshal(out.Bytes(), &w))
	return w
}
