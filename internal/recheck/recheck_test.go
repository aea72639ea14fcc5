package recheck

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/room"
)

// roomFiles are the rooms that come with the program.
func roomFiles(t *testing.T) []string {
	t.Helper()
	var files []string
	for _, pattern := range []string{"../../samples/*.toml", "../../templates/rooms/*.toml"} {
		list, err := filepath.Glob(pattern)
		require.NoError(t, err)
		files = append(files, list...)
	}
	require.GreaterOrEqual(t, len(files), 10)
	return files
}

// Every number of the layout of every room that comes with the program.
func TestRooms(t *testing.T) {
	for _, name := range roomFiles(t) {
		t.Run(filepath.Base(filepath.Dir(name))+"/"+filepath.Base(name), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			check(t, string(text))
		})
	}
}

// Every number of the layouts of rooms made at random: open and closed, level and sloping, upright and leaning.
func TestRandomRooms(t *testing.T) {
	first, count := effort.Seeds(t, "FLITCHLAY_ROOMS", 40, effort.Waited(250, 1000))
	made := map[string]int{}
	for seed := first; seed < first+count; seed++ {
		text := random(seed, asDrawn, false)
		r, err := room.Decode("room.toml", []byte(text))
		if err == nil {
			_, status := lay(t, text)
			require.LessOrEqual(t, status, 2)
			if status == 2 { // a mistake that only the spans show
				err = errors.New("a mistake")
			}
		}
		if err != nil {
			made["mistaken"]++
			continue
		}
		ok := t.Run(fmt.Sprintf("seed %d", seed), func(t *testing.T) {
			p := check(t, text)
			for k, v := range traits(r, p) {
				if v {
					made[k]++
				}
			}
		})
		if !ok {
			t.Fatalf("seed %d:\n%s", seed, text)
		}
	}
	t.Log(made)
	require.Less(t, made["mistaken"], count/4, "most rooms are rooms")
	if count >= 100 {
		for _, k := range []string{"closed", "open", "metric", "broken", "met", "leaning", "sloping", "eased", "gap", "wrapped jambs", "bare strip", "cut corner", "outside corner"} {
			require.Greater(t, made[k], count/50, "rooms that are or have: %s", k)
		}
	}
}

// traits say what a random room shows.
func traits(r *room.Room, p *printed) map[string]bool {
	out := map[string]bool{"metric": r.Project.Units != 0}
	for _, f := range p.Findings {
		out["broken"] = out["broken"] || f.Code == "return-short" || f.Code == "leg-thin" || f.Code == "clear-short" || f.Code == "sheet-thin"
	}
	out["met"] = !out["broken"]
	for _, l := range lines(r) {
		out["closed"] = out["closed"] || l.closed
		out["open"] = out["open"] || !l.closed
		out["sloping"] = out["sloping"] || !l.level()
		for _, c := range l.corners {
			out["leaning"] = out["leaning"] || c.lean != 0
			out["eased"] = out["eased"] || c.half != 0
			out["outside corner"] = out["outside corner"] || c.kind == "outside"
			out["cut corner"] = out["cut corner"] || !r.Walls[c.wall].Wrap
		}
		for _, o := range l.openings {
			out["gap"] = out["gap"] || o.gap
			out["wrapped jambs"] = out["wrapped jambs"] || o.WrapReveal
		}
		for _, st := range l.walls {
			out["bare strip"] = out["bare strip"] || len(l.wall(st).Bare) > 0
		}
	}
	return out
}

// A preference in wrapped jambs under its must, and one that is none, over a window so narrow that a seam stands in a jamb.
func TestPreferClearInWrappedJambs(t *testing.T) {
	for prefer := 1; prefer <= 3; prefer++ {
		for _, width := range []int{26, 30, 33} {
			text := fmt.Sprintf(`[project]
title = "Jambs"
[veneer]
gross_width = "24 1/2"
overlap = 1
length = "10'"
[rules]
corner_return = 4
prefer_return = 4
opening_clear = 2
prefer_clear = %d
[[flitch]]
number = "J-1"
sheets = "1-40"
[[wall]]
name = "Long"
length = "14'"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = 30
sill = 30
height = 40
width = %d
wrap_reveal = true
reveal = 16
`, prefer, width)
			t.Run(fmt.Sprintf("clear of %d in over %d in", prefer, width), func(t *testing.T) { check(t, text) })
		}
	}
}
