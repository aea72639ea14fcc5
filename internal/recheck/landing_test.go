package recheck

import (
	"fmt"
	"strings"
	"testing"
)

// Walls of two courses over a landing whose height goes through the joint, from an end match on both sides down to a sheet
// that has none: every number again, and the covering of every column whole.
func TestLandings(t *testing.T) {
	for landing := 60; landing <= 110; landing += 5 {
		for _, step := range []string{"45.5", "40", "60 1/3"} {
			text := fmt.Sprintf(`[project]
title = "Landing"
[veneer]
gross_width = 24.5
overlap = 1
length = "9'"
cut = "quarter"
[rules]
bottom_trim = 3
[[flitch]]
number = "L-1"
sheets = "1-40"
damaged = [3]
[[wall]]
name = "Stair"
length = 130
height = "13'"
floor = [[0, 0], [%q, 0], [%q, %d], [130, %d]]
`, step, step, landing, landing)
			t.Run(fmt.Sprintf("landing at %d in from %s in", landing, step), func(t *testing.T) { check(t, text) })
		}
	}
}

// Straight joints and corners without a return that lean, in open, closed and cut runs, with a pin that would have a seam
// inside the strip they sweep: no wall is covered twice nor left bare there.
func TestSeamsInLeaningJoints(t *testing.T) {
	for _, lean := range []string{"2", "-2", "1/2"} {
		for _, at := range []string{"1/2", "1 1/4", "1 3/4"} {
			for _, kind := range []string{"straight", "inside"} {
				for _, closed := range []bool{false, true} {
					text := fmt.Sprintf("[project]\ntitle = \"Joint\"\n[veneer]\ngross_width = 24.5\noverlap = 1\nlength = \"10'\"\n"+
						"[rules]\ncorner_return = 0\nprefer_return = 0\n[room]\nclosed = %v\n", closed)
					for i, kind := range [4]string{kind, "inside", kind, "inside"} {
						text += fmt.Sprintf("[[wall]]\nname = \"W%d\"\nlength = 90\nheight = \"8'\"\nlean = [%q, %q]\n", i, lean, lean)
						if i < 3 || closed {
							text += fmt.Sprintf("corner = %q\n", kind)
						}
						if i == 1 {
							text += "wrap = false\n"
						}
						switch { // the strip is right of the joint, or left of it
						case i == 1 && lean[0] != '-':
							text += fmt.Sprintf("[[wall.pin]]\nat = %q\n", at)
						case i == 0 && lean[0] == '-':
							text += fmt.Sprintf("[[wall.pin]]\nat = %q\n", "88 "+strings.TrimPrefix(at, "1 "))
						}
					}
					t.Run(fmt.Sprintf("%s, lean %s, pin at %s, closed %v", kind, lean, at, closed), func(t *testing.T) { check(t, text) })
				}
			}
		}
	}
}

// Round corners that lean between walls of two heights, with a seam on the half of the curve that is the right wall's: past
// what the middle of the curve sweeps, the right wall's height shows.
func TestSeamsOnLeaningCurves(t *testing.T) {
	for _, lean := range []string{"-3/8", "3/8", "1 1/2"} {
		for _, at := range []string{"1/2", "1 1/4", "4"} {
			text := fmt.Sprintf("[project]\ntitle = \"Curve\"\n[veneer]\ngross_width = 24.5\noverlap = 1\nlength = \"10'\"\n"+
				"[[wall]]\nname = \"A\"\nlength = 90\nheight = \"7'\"\nlean = [0, %q]\ncorner = \"outside\"\nradius = 8\n"+
				"[[wall]]\nname = \"B\"\nlength = 90\nheight = \"9'\"\n[[wall.pin]]\nat = %q\nput = \"seam\"\n", lean, at)
			t.Run(fmt.Sprintf("lean %s, seam at %s", lean, at), func(t *testing.T) { check(t, text) })
		}
	}
}
