package job

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// Finding is what there is to say of a job, beside what there is to say of its rooms.
type Finding struct {
	Level         finding.Level
	Code          string
	Place         string // a room of the job
	Message, Mend string
}

// Codes of what is found.
const (
	SheetTwice   = "sheet-twice"
	FlitchParted = "flitch-parted"
	HangsUnsaid  = "hangs-unsaid"
)

// Book keeps which room lays which sheet, as rooms come, and finds those that two rooms lay.
type Book struct {
	job      *Job
	laid     map[string]map[int]place
	by       map[string]*room.Room // of a flitch: rules of the room that wants the most spares
	Findings []Finding
	Unsaid   []Unsaid // rooms that hang and whose sheets the job does not say
}

// place is where a sheet hangs: the index of its room, and the wall.
type place struct {
	room int
	wall string
}

// Unsaid is what laid is to say of a room.
type Unsaid struct {
	Room *Room
	Laid string
}

// NewBook begins with no room.
func NewBook(j *Job) *Book {
	return &Book{job: j, laid: map[string]map[int]place{}, by: map[string]*room.Room{}}
}

// Add takes a room's sheets down.
func (b *Book) Add(l *Laid) {
	type twice struct {
		before       place
		flitch, wall string
		numbers      []int
	}
	var again []twice
	p := l.Plan
	b.asks(p)
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			s := &p.Runs[i].Sheets[k]
			if s.Number == 0 || s.Flitch == "" {
				continue
			}
			if b.laid[s.Flitch] == nil {
				b.laid[s.Flitch] = map[int]place{}
			}
			here := place{l.Index, wallOf(p, s)}
			before, taken := b.laid[s.Flitch][s.Number]
			if !taken || before.room == l.Index {
				b.laid[s.Flitch][s.Number] = here
				continue
			}
			n := len(again)
			if n == 0 || again[n-1].before != before || again[n-1].wall != here.wall || again[n-1].flitch != s.Flitch {
				again = append(again, twice{before: before, flitch: s.Flitch, wall: here.wall})
				n++
			}
			again[n-1].numbers = append(again[n-1].numbers, s.Number)
		}
	}
	name := l.Room.Name()
	for _, t := range again {
		first := b.job.Rooms[t.before.room].Name()
		b.say(finding.Must, SheetTwice, name, fmt.Sprintf("%s of flitch %s: laid on wall %s and, in %s, on wall %s", sheetWords(t.numbers), t.flitch, t.wall, first, t.before.wall),
			"give the flitch to the job in a [[flitch]] of its own, or mend laid")
	}
	if l.Room.Split && len(LaidRows(p)) > 1 { // else it is short, which its own findings say
		b.say(finding.Must, FlitchParted, name, fmt.Sprintf("no flitch has enough sheets left for the room: it is hung from %s", strings.Join(flitches(p), " and ")),
			`move the room up in the order, name another flitch, or write whole = "wall" or "none" under [job]`)
	}
	if l.Room.Hung && len(l.Room.Laid) == 0 && !l.Room.Own && len(p.Room.Hung) == 0 {
		b.Unsaid = append(b.Unsaid, Unsaid{l.Room, RowWords(LaidRows(p))})
		b.say(finding.Should, HangsUnsaid, name, "it hangs, but the job does not say with which sheets: they change when something before them does", "put the line of laid that is printed below into its [[room]]")
	}
}

func (b *Book) say(level finding.Level, code, where, message, mend string) {
	b.Findings = append(b.Findings, Finding{level, code, where, message, mend})
}

// flitches are those that a plan lays sheets of.
func flitches(p *layout.Plan) (list []string) {
	for _, row := range LaidRows(p) {
		list = append(list, row.Flitch)
	}
	return list
}

func sheetWords(numbers []int) string {
	numbers = slices.Clone(numbers)
	slices.Sort(numbers)
	if len(numbers) == 1 {
		return "sheet " + layout.Numbers(numbers)
	}
	return "sheets " + layout.Numbers(numbers)
}

// RowWords are sheets by flitch as laid takes them: "SR-F2 1-4, 6-13".
func RowWords(rows []Row) string {
	var list []string
	for _, r := range rows {
		list = append(list, r.Flitch+" "+layout.Numbers(r.Numbers))
	}
	return strings.Join(list, "; ")
}

// Breaks reports whether a rule is broken that must be met.
func (f Finding) Breaks() bool { return f.Level == finding.Must }
