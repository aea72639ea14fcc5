package crewday

import (
	"slices"
	"strings"

	"flitchlay/internal/face"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// A wall over a stair: where its floor and its ceiling begin to slope, and how the tape goes on where the first level line cannot be
// reached.

// A slope is steep from so much rise over so much of a wall on: what is less is a floor that is out of level. One that climbs by as much
// as stairRise over it is no floor to stand a ladder on.
const (
	steepOver = 4 * length.Foot
	steepRise = 2 * length.Inch
	stairRise = length.Foot
)

// slope is a part of a floor or a ceiling between two knees.
type slope struct {
	from, to L
	rise     L // over steepOver
}

// slopes are the straight parts of a profile, those in one line taken together.
func slopes(profile []room.Point) []slope {
	var list []slope
	for i := 1; i < len(profile); i++ {
		a, b := profile[i-1], profile[i]
		if a.X == b.X {
			continue
		}
		s := slope{a.X, b.X, length.MulDiv(b.Z-a.Z, steepOver, b.X-a.X)}
		if n := len(list); n > 0 && list[n-1].to == s.from && (list[n-1].rise-s.rise).Abs() < steepRise {
			list[n-1].to = s.to
			continue
		}
		list = append(list, s)
	}
	return list
}

// knees are where a wall's floor or ceiling changes its slope, from left to right.
func knees(w *room.Wall) []L {
	var list []L
	for _, profile := range [][]room.Point{w.Floor, w.Ceiling} {
		for i, s := range slopes(profile) {
			if i > 0 {
				list = append(list, s.from)
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// onStairs reports whether the floor under a covered wall is a stair: too steep to stand on, or out of reach of the level line.
func (c *Set) onStairs() bool {
	return slices.ContainsFunc(c.Faces, func(w *face.Face) bool {
		steep := slices.ContainsFunc(slopes(w.W.Floor), func(s slope) bool { return s.rise.Abs() >= stairRise })
		return steep || len(w.Seconds()) > 0
	})
}

// stairWords say of a wall that has a second level line where its floor and ceiling slope, and how the tape goes on along that line.
func (c *Set) stairWords(w *face.Face) []string {
	if w.Run.Up || len(w.Seconds()) == 0 {
		return nil
	}
	var lines []string
	if parts := append(c.slopeWords(w, w.W.Floor, slopeKeys[0]), c.slopeWords(w, w.W.Ceiling, slopeKeys[1])...); len(parts) > 0 {
		lines = append(lines, c.Words.Say("start.slopes", strings.Join(parts, ", ")))
	}
	for _, s := range w.Seconds() {
		at := s.From
		if at <= w.Left {
			at = s.To
		}
		if at < w.Right { // else the first line is out of reach everywhere
			lines = append(lines, c.Words.Say("start.carry", c.Along(w, at), s.No))
		}
	}
	return lines
}

// slopeKeys say that a floor climbs, that it falls, and the same of a ceiling.
var slopeKeys = [2][2]string{{"start.floor_climbs", "start.floor_falls"}, {"start.ceiling_climbs", "start.ceiling_falls"}}

// slopeWords say where a floor or a ceiling climbs and falls, in figures of the tape list.
func (c *Set) slopeWords(w *face.Face, profile []room.Point, keys [2]string) []string {
	var parts []string
	for _, s := range slopes(profile) {
		key := keys[0]
		if s.rise < 0 {
			key = keys[1]
		}
		if s.rise.Abs() >= steepRise {
			parts = append(parts, c.Words.Say(key, c.Along(w, max(s.from, w.Left)), c.Along(w, min(s.to, w.Right))))
		}
	}
	return parts
}
