package layout

import (
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// matter is what a change can save.
type matter int

const (
	savesCourse matter = iota // of a wall
	savesSheet                // of a run
	savesNarrow               // a narrow sheet on a main wall, of a run
	savesMust                 // of a run
)

// thing is one matter at a place: a wall or a run.
type thing struct {
	matter
	at int
}

// account is what two layouts of a room are held against each other by.
type account struct {
	courses             map[int]int // of tall walls; where the grain is horizontal the pieces of a band
	sheets, narrow      []int       // by run; narrow ones wherever they stand
	main, shown, broken []int       // by run: narrow sheets on main walls, feet of closing seam, spans that break a must
	others              int         // musts that are no matter of seams
}

// ofSeams are the musts that a span's score holds; they count once a span.
var ofSeams = []finding.Code{finding.SheetThin, finding.ReturnShort, finding.LegThin, finding.ClearShort, finding.RevealShort, finding.KeptClear,
	finding.CannotMeet}

func (b *builder) account() *account {
	a := &account{courses: map[int]int{}}
	for i := range b.plan.Runs {
		r := &b.plan.Runs[i]
		main, narrow, shown, broken := 0, 0, 0, 0
		for _, s := range r.Spans {
			shown += int(s.Score.Closing)
			if b.aim != seam.Even { // which narrows every sheet on purpose
				main, narrow = main+int(s.Score.NarrowMain), narrow+int(s.Score.Narrow)
			}
			if s.Score.Bends+s.Score.Edges > 0 {
				broken++
			}
		}
		a.main, a.narrow, a.shown, a.broken = append(a.main, main), append(a.narrow, narrow), append(a.shown, shown), append(a.broken, broken)
		a.sheets = append(a.sheets, len(r.Sheets))
		b.piled(r, r.courses, r.Joints, a.courses)
	}
	for _, f := range b.plan.Findings {
		if f.Level == finding.Must && !slices.Contains(ofSeams, f.Code) {
			a.others++
		}
	}
	return a
}

// piled notes the courses of a run's walls.
func (b *builder) piled(r *Run, c courses, joints []L, out map[int]int) {
	for _, st := range r.Walls {
		if len(joints) > 0 && (r.Up || c.tall[st.Wall]) {
			out[st.Wall] = len(joints) + 1
		}
	}
}

// tried lays a changed room out as far as an account needs it, nil where it cannot be.
func (b *builder) tried(c *nudge, r *room.Room) *account {
	t := begin(r, b.aim, b.layer, b.shapes)
	t.trial = true
	err := t.solve(func(run int) []*question {
		if run >= len(b.plan.Runs) || c.moved(&b.plan.Runs[run]) {
			return nil
		}
		return b.asked[run]
	}, nil)
	if err != nil || len(t.plan.Runs) != len(b.plan.Runs) {
		return nil
	}
	t.tile()
	if t.number() != nil {
		return nil
	}
	t.measureCorners()
	for i := range t.plan.Runs {
		t.judgeCorners(i)
		t.judgeLengths(i)
		t.judgeOpenings(i)
	}
	t.judgeClosure()
	return t.account()
}

// total adds up.
func total(list []int) int {
	sum := 0
	for _, n := range list {
		sum += n
	}
	return sum
}

// saves lists what another account has less of, nothing where anything that weighs is more.
func (a *account) saves(other *account) []thing {
	if other == nil || total(other.sheets) > total(a.sheets) || total(other.narrow) > total(a.narrow) || total(other.main) > total(a.main) ||
		total(other.shown) > total(a.shown) || total(other.broken) > total(a.broken) || other.others > a.others {
		return nil
	}
	var out []thing
	for wall, n := range other.courses {
		if n > max(1, a.courses[wall]) {
			return nil
		}
	}
	for wall, n := range a.courses {
		if max(1, other.courses[wall]) < n {
			out = append(out, thing{savesCourse, wall})
		}
	}
	slices.SortFunc(out, func(x, y thing) int { return x.at - y.at })
	for i := range a.sheets {
		if other.sheets[i] < a.sheets[i] && len(out) == 0 { // a course saved saves its sheets
			out = append(out, thing{savesSheet, i})
		}
		if other.main[i] < a.main[i] {
			out = append(out, thing{savesNarrow, i})
		}
		if other.broken[i] < a.broken[i] {
			out = append(out, thing{savesMust, i})
		}
	}
	if other.others < a.others {
		out = append(out, thing{savesMust, -1})
	}
	return out
}

// savesWords says what another account has less of.
func (b *builder) savesWords(a, other *account) string {
	var parts []string
	byCourses := map[int][]string{}
	for _, t := range a.saves(other) {
		if n := max(1, other.courses[t.at]); t.matter == savesCourse {
			byCourses[n] = append(byCourses[n], b.room.Walls[t.at].Name)
		}
	}
	most := 0
	for n := range byCourses {
		most = max(most, n)
	}
	for n := 1; n <= most; n++ {
		if walls := byCourses[n]; len(walls) > 0 {
			parts = append(parts, "hang "+eachOf(len(walls), "wall ", "walls ")+fewNames(walls)+" in "+b.courseWords(n))
		}
	}
	if was, is := total(a.main), total(other.main); is < was {
		parts = append(parts, "leave "+countWord(is)+" narrow "+eachOf(is, "sheet", "sheets")+" on main walls, where there "+eachOf(was, "is ", "are ")+countWord(was))
	}
	if was, is := total(a.broken)+a.others, total(other.broken)+other.others; is == 0 && was > 0 {
		parts = append(parts, "break no rule that must be met")
	} else if is < was {
		parts = append(parts, "break rules that must be met in "+countWord(is)+" "+eachOf(is, "place", "places")+" and not in "+countWord(was))
	}
	was, is := total(a.sheets), total(other.sheets)
	sheets := strconv.Itoa(is) + eachOf(is, " sheet", " sheets") + " and not " + strconv.Itoa(was)
	switch {
	case len(parts) == 0:
		return "do with " + sheets
	case is < was:
		return strings.Join(parts, " and ") + ": " + sheets
	}
	return strings.Join(parts, " and ")
}

// fewNames lists names, and of many the first and how many more there are.
func fewNames(names []string) string {
	const most = 6
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return strings.Join(names[:most-1], ", ") + " and " + strconv.Itoa(len(names)-most+1) + " more"
}

// courseWords is so many courses, or where the grain is horizontal so many pieces of a band.
func (b *builder) courseWords(n int) string {
	one, more := " course", " courses"
	if b.room.Veneer.Horizontal {
		one, more = " piece a band", " pieces a band"
	}
	return countWord(n) + eachOf(n, one, more)
}

// eachOf is the one word for a single thing, the other for none and for more.
func eachOf(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}
