package layout

import (
	"slices"
	"strconv"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// courses are the end matches of a run in which a wall is taller than a sheet.
type courses struct {
	joints []L // heights, ascending
	tall   map[int]bool
	chance string // why the joint is where it is
}

// matchSpare is what a sheet has over past the cut of an end match.
const matchSpare = length.Inch / 2

// mostCourses is where stack stops looking for a number of courses that a sheet is long enough for.
const mostCourses = 20

// match is what a sheet needs past an end match: half an overlap and matchSpare, in place of a trim.
func (b *builder) match() L { return b.room.Veneer.Overlap.HalfDown() + matchSpare }

// stack finds the courses of a run whose seams are known: as few as the sheets' length allows. A wall is tall where a
// sheet on it would have to be cut longer than a sheet is.
func (b *builder) stack(out *Run) courses {
	c := courses{tall: map[int]bool{}}
	if out.Up {
		return c
	}
	rules, have := b.room.Rules, b.room.Veneer.Length
	low, high := far, -far
	for _, st := range out.Walls {
		cover := Covering(b.room, st)
		known := b.shapes.of(&cover)
		for _, p := range out.parts(st) {
			bottom, top, ok := known.extent(cover, p, nil, 1)
			if !ok || top-bottom+rules.TopTrim+rules.BottomTrim <= have {
				continue
			}
			c.tall[st.Wall] = true
			low, high = min(low, bottom), max(high, top)
		}
	}
	if len(c.tall) == 0 {
		return c
	}
	match := b.match()
	total := high - low + rules.TopTrim + rules.BottomTrim
	n := L(2)
	for n < mostCourses && total+(n-1)*2*match > n*have {
		n++
	}
	// The joint is the one line across the figure, so it goes where it is looked for the least:
	// 1. where the room file puts it, for who draws the room has a reason;
	// 2. with more than two courses, at equal heights: how far a joint may be moved is worked out for one only;
	// 3. at the head of doors, where a line is there already;
	// 4. in the middle of what the sheets' length allows, so that both courses have the same to spare.
	if rules.JointHeight != nil {
		c.joints, c.chance = []L{*rules.JointHeight}, "as the room file says"
		return c
	}
	from, to := high+rules.TopTrim+match-have, low+have-rules.BottomTrim-match
	if n > 2 {
		for k := L(1); k < n; k++ {
			c.joints = append(c.joints, low+length.MulDiv(high-low, k, n))
		}
		c.chance = "the height shared out over " + strconv.Itoa(int(n)) + " courses"
		return c
	}
	if head, doors := b.doorHead(from, to); doors > 0 {
		c.joints, c.chance = []L{head}, "the head of "+strconv.Itoa(doors)+" doors"
		if doors == 1 {
			c.chance = "the head of the door"
		}
		return c
	}
	c.joints = []L{from + (to - from).HalfDown()}
	c.chance = "the middle between " + b.style.Words(from) + " and " + b.style.Words(to)
	return c
}

// doorHead is the head that most doors share, of those between two heights; the lowest of equals.
func (b *builder) doorHead(from, to L) (head L, doors int) {
	count := map[L]int{}
	for i := range b.room.Walls {
		for _, o := range b.room.Walls[i].Openings {
			if o.Kind.Traits().Doorway && from <= o.Head && o.Head <= to {
				count[o.Head]++
				if n := count[o.Head]; n > doors || n == doors && o.Head < head {
					head, doors = o.Head, n
				}
			}
		}
	}
	return head, doors
}

// piles makes the sheets of every column.
func (b *builder) piles(out *Run) {
	var list []Sheet
	for _, s := range out.Sheets {
		list = append(list, b.pile(out, s)...)
	}
	out.Sheets = list
}

// pile makes the sheets of a column out of one: a place that covers a tall wall takes one for each course.
func (b *builder) pile(out *Run, s Sheet) []Sheet {
	c := out.courses
	if out.Up {
		var list []Sheet
		for k := 0; k <= len(out.Joints); k++ {
			s.Course, s.Lowest = k+1, k == 0
			list = append(list, s)
		}
		return list
	}
	if len(c.joints) == 0 || !c.over(out, s) {
		return []Sheet{s}
	}
	list := make([]Sheet, 0, len(c.joints)+1)
	for k := 0; k <= len(c.joints); k++ {
		s.Course, s.Lowest = k+1, k == 0
		s.Turned = k%2 == 1 && b.turns()
		list = append(list, s)
	}
	return list
}

// turns reports whether upper sheets hang turned end for end.
func (b *builder) turns() bool {
	switch b.room.Rules.Upper {
	case "turned":
		return true
	case "upright":
		return false
	}
	return b.room.Veneer.Cut == "quarter" || b.room.Veneer.Cut == "rift"
}

// over reports whether a sheet covers some of a tall wall.
func (c courses) over(out *Run, s Sheet) bool {
	left, right := out.footing(&s)
	for _, st := range out.Walls {
		for turn := L(0); turn <= out.Length; turn += out.Length {
			if c.tall[st.Wall] && max(left, st.Left+turn) < min(right, st.Right+turn) {
				return true
			}
			if !out.Closed {
				break
			}
		}
	}
	return false
}

// judgeCourses says where courses meet, and that turned sheets do not mirror.
func (b *builder) judgeCourses(i int) {
	r := &b.plan.Runs[i]
	for _, st := range r.Walls {
		if !r.courses.tall[st.Wall] {
			continue
		}
		w := &b.room.Walls[st.Wall]
		for k, z := range r.courses.joints {
			b.say(finding.Joint, finding.Finding{Place: b.wallPlace(st.Wall), Wall: st.Wall, Measured: ptr(z)}, finding.Slots{
				"wall": w.Name, "chance": r.courses.chance, "courses": countWord(len(r.courses.joints) + 1),
				"below": strconv.Itoa(k + 1), "above": strconv.Itoa(k + 2)})
		}
		var turned []int
		for k := range r.Sheets {
			if s := &r.Sheets[k]; s.Turned && s.Number > 0 && r.on(s, st.Wall) {
				turned = append(turned, s.Number)
			}
		}
		if len(turned) > 0 {
			b.say(finding.Turned, finding.Finding{Place: b.wallPlace(st.Wall), Wall: st.Wall}, finding.Slots{
				"wall": w.Name, "numbers": Numbers(turned)})
		}
	}
}

// on reports whether a sheet has a piece on a wall.
func (r *Run) on(s *Sheet, wall int) bool {
	return slices.ContainsFunc(s.Pieces, func(p Piece) bool { return p.Wall == wall })
}

// countWord is a small number in words.
func countWord(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six"}
	if n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}
