package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/assign"
)

// choiceSteps is how many steps the search for the best choice may take: some seconds at the most.
const choiceSteps = 200_000

// choose finds with which flitch each room begins, where the job leaves it open: what hangs is served first, and stays. It gives the
// rooms that are served by that.
func (j *Job) choose(l *ledger, kinds map[int]*kind) map[*Room]bool {
	served := map[*Room]bool{}
	var open []*Room
	var rooms []assign.Room
	for _, r := range j.Rooms {
		switch k := kinds[r.file.kind]; {
		case r.Own:
		case r.Err != nil:
			l.known, l.bad = 0, r.Name() // how many sheets it takes nobody knows
		case len(r.Laid) > 0 || len(k.hung) > 0 && k.hung[0].Flitch >= 0:
			l.serve(r, k)
			served[r] = true
		default:
			open = append(open, r)
			rooms = append(rooms, assign.Room{Columns: k.places(), Fixed: j.index(r.Flitch)})
		}
	}
	if l.known == 0 || len(open) == 0 {
		return served
	}
	var sheets []int
	for i := range j.Flitches {
		sheets = append(sheets, len(l.free(&j.Flitches[i])))
	}
	choice := assign.Find(rooms, sheets, j.Whole == "room", choiceSteps)
	for i, r := range open {
		r.Flitch = j.Flitches[choice.Starts[i]].Number
	}
	j.Choice = &choice
	return served
}

// places are the sheets of each place.
func (k *kind) places() (list []int) {
	for _, c := range k.columns {
		list = append(list, c.sheets)
	}
	return list
}

// index is the place of a flitch in the job, -1 where it has none.
func (j *Job) index(number string) int {
	for i := range j.Flitches {
		if j.Flitches[i].Number == number {
			return i
		}
	}
	return -1
}

// ChoiceWords say what was chosen and whether another choice can be better.
func (j *Job) ChoiceWords() string {
	c := j.Choice
	words := "best"
	if !c.Best {
		words = fmt.Sprintf("within %d of best", max(c.Cost.Changes-c.Bound.Changes, 0))
		if c.Cost.Changes == c.Bound.Changes {
			words = fmt.Sprintf("best in the changes, within %d of best in the ends", c.Cost.Ends-c.Bound.Ends)
		}
	}
	if c.Cost.Short > 0 {
		words = fmt.Sprintf("%s; %d sheets are short", words, c.Cost.Short)
	}
	return fmt.Sprintf("%s: %d rooms with a change of the flitch, %d left-over ends too short for any room", words, c.Cost.Changes, c.Cost.Ends)
}

// Lines are the rooms of the job with the flitches that were chosen, to be pasted in place of its [[room]]s, assign = "given".
func (j *Job) Lines() string {
	var b strings.Builder
	for i := 0; i < len(j.Rooms); {
		r, k := j.Rooms[i], i+1
		for k < len(j.Rooms) && r.As != "" && j.Rooms[k].File == r.File && j.Rooms[k].at == r.at && j.Rooms[k].Flitch == r.Flitch && j.Rooms[k].Hung == r.Hung {
			k++
		}
		fmt.Fprintf(&b, "[[room]]\nfile = %s\n", strconv.Quote(r.File))
		var laid []string
		for _, x := range j.Rooms[i:k] {
			if len(x.Laid) > 0 {
				laid = append(laid, strconv.Quote(RowWords(x.Laid)))
			}
		}
		if r.As != "" {
			fmt.Fprintf(&b, "as = %s\n", asWords(j.Rooms[i:k]))
		}
		if r.Hung {
			fmt.Fprintln(&b, "hung = true")
		}
		if len(laid) > 0 {
			fmt.Fprintf(&b, "laid = [%s]\n", strings.Join(laid, ", "))
		}
		if r.Flitch != "" {
			fmt.Fprintf(&b, "flitch = %s\n", strconv.Quote(r.Flitch))
		}
		i = k
	}
	return b.String()
}

// asWords are the numbers of rooms as [[room]] takes them: "301-318, 320" where that reads back as they are, else a list.
func asWords(rooms []*Room) string {
	var names, parts []string
	for _, r := range rooms {
		names = append(names, r.As)
	}
	for i := 0; i < len(names); {
		k := i + 1
		for k < len(names) {
			if row, err := unrolled(names[i] + "-" + names[k]); err != nil || !slices.Equal(row, names[i:k+1]) {
				break
			}
			k++
		}
		if k-i > 2 {
			parts = append(parts, names[i]+"-"+names[k-1])
		} else {
			parts = append(parts, names[i:k]...)
		}
		i = k
	}
	var back []string
	for _, p := range strings.Split(strings.Join(parts, ", "), ",") {
		row, err := unrolled(strings.TrimSpace(p))
		if err != nil {
			break
		}
		back = append(back, row...)
	}
	if slices.Equal(back, names) {
		return strconv.Quote(strings.Join(parts, ", "))
	}
	var quoted []string
	for _, n := range names {
		quoted = append(quoted, strconv.Quote(n))
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}
