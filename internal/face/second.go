package face

import (
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// reachFeet is as high over the floor as a line is struck and marks are read from it without steps, in feet, and 300 mm each in a
// metric room; handFeet is where a line is struck best (common practice, no source).
const (
	reachFeet = 7
	handFeet  = 4
)

// Second is a second level line, where the floor leaves the first one out of reach. It is struck from the first by a whole number
// of feet, or of 300 mm, so that a figure of the one is turned into one of the other without a fraction.
type Second struct {
	No       int // 2; 3 on a wall that has one over the first line and one under it
	From, To L   // x of where the first line is out of reach, or one of its sheets hangs
	By       L   // over the first; negative under it
}

// Seconds are the second level lines of a wall: where its floor is over the level line, and where it is more than seven feet under;
// each from where the first is out of reach on to the edges of all sheets that are marked for it or set from it.
func (f *Face) Seconds() []Second {
	list := seconds(f.room, f.W)
	for i, second := range list {
		for k := range f.Run.Sheets {
			s := &f.Run.Sheets[k]
			if line, ok := lineOf(f.room.Space.LevelLine, s, f.Wall, second); !ok || f.Run.Up || line.No != second.No {
				continue
			}
			if left, _, right, _, here := f.Extent(s); here {
				list[i].From, list[i].To = min(list[i].From, left), max(list[i].To, right)
			}
		}
	}
	return list
}

func seconds(rm *room.Room, w *room.Wall) []Second {
	foot := length.Foot
	if rm.Project.Units == length.Millimetres {
		foot = 300 * length.Millimetre
	}
	level := rm.Space.LevelLine
	var list []Second
	for _, limit := range []L{level, level - reachFeet*foot} {
		over := limit == level
		if s, ok := past(w.Floor, limit, over); ok {
			s.No = len(list) + 2
			low, high := heights(w.Floor, s.From, s.To)
			by := low + (high - low).HalfDown() + handFeet*foot - level
			s.By = length.MulDiv(by, 1, foot) * foot
			list = append(list, s)
		}
	}
	return list
}

// past is the stretch of a floor that is over a height, or under it.
func past(floor []room.Point, z L, over bool) (Second, bool) {
	out, found := Second{}, false
	take := func(x L) {
		if !found {
			out, found = Second{From: x, To: x}, true
		}
		out.From, out.To = min(out.From, x), max(out.To, x)
	}
	beyond := func(p room.Point) bool { return over && p.Z > z || !over && p.Z < z }
	for i, p := range floor {
		if beyond(p) {
			take(p.X)
		}
		if i > 0 && beyond(p) != beyond(floor[i-1]) && floor[i-1].X < p.X {
			a := floor[i-1]
			take(a.X + length.MulDiv(p.X-a.X, z-a.Z, p.Z-a.Z))
		}
	}
	return out, found && out.To > out.From
}

// heights are the lowest and the highest place of a floor in a stretch.
func heights(floor []room.Point, from, to L) (low, high L) {
	low, high = room.AtRight(floor, from), room.AtRight(floor, from)
	for _, p := range floor {
		if p.X > from && p.X < to {
			low, high = min(low, p.Z), max(high, p.Z)
		}
	}
	end := room.At(floor, to)
	return min(low, end), max(high, end)
}
