package room

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// Limits of sheet numbers, and of how many a flitch holds.
const (
	highestSheet = 999_999
	mostSheets   = 10_000
)

// Flitches reads the flitches of a job file, whose sheets are not measured here: how wide they have to be each room says.
func Flitches(root source.Value) []Flitch {
	d := &decoder{root: root, room: &Room{}}
	d.flitches(root.Get("flitch").Tables())
	return d.room.Flitches
}

// flitches reads the flitches.
func (d *decoder) flitches(tables []source.Value) {
	numbers := map[string]bool{}
	for _, v := range tables {
		f := Flitch{At: d.place(v), From: v.Get("from").Word(FromFirst, fromWords...)}
		number := v.Get("number")
		if !number.Given() {
			missing(number, "a flitch")
		} else if f.Number = number.Text(""); numbers[f.Number] && f.Number != "" {
			number.Mistake("give every flitch its own number", "a second flitch has the number %q", f.Number)
		}
		numbers[f.Number] = true
		of := "flitch " + quote(f.Number)
		if sheets := v.Get("sheets"); !sheets.Given() {
			missing(sheets, of)
		} else if sheets.Kind() == source.Integer {
			sheets.Mistake(fmt.Sprintf("write sheets = \"1-%s\" for that many, sheets = [%s] for the one sheet of that number", sheets.Raw(), sheets.Raw()),
				"sheets = %s names one sheet, or says how many there are", sheets.Raw())
		} else if f.Sheets = d.numbers(sheets); !d.rising(sheets) {
			sheets.Mistake("write them in rising order; sheets are laid by their numbers, and from = \"last\" lays them from the highest down", "the numbers of sheets go down in %s", sheets.Raw())
		}
		f.Damaged = d.delivered(v.Get("damaged"), f, of)
		d.widths(v.Get("widths"), &f, of)
		if spare := v.Get("spare"); spare.Kind() == source.Integer {
			f.Spare = d.lastOnes(spare, f, of)
		} else {
			f.Spare = d.delivered(spare, f, of)
		}
		f.UseUp = v.Get("use_up").Bool(false)
		if n := len(f.Sheets); n > 0 && len(usable(f)) == 0 && !v.Mistakes().Text.Composed() {
			v.Get("sheets").Mistake("a spare sheet is never laid out: keep fewer back", "no sheet of %s is left to hang", of)
		}
		d.room.Flitches = append(d.room.Flitches, f)
	}
}

// rising reports whether numbers stand in the order in which they are laid. What cannot be read is told elsewhere.
func (d *decoder) rising(v source.Value) bool {
	last := int64(0)
	if v.Kind() == source.Array {
		for _, item := range v.Items() {
			if item.Kind() == source.Integer {
				if item.Whole(0) < last {
					return false
				}
				last = item.Whole(0)
			}
		}
		return true
	}
	if _, err := parseNumbers(v.Text(""), false); err != nil {
		return true
	}
	for _, part := range strings.Split(v.Text(""), ",") {
		first, _, _ := strings.Cut(strings.NewReplacer("–", "-", "—", "-").Replace(part), "-")
		n, err := sheetNumber(first)
		if err != nil {
			return true
		}
		if int64(n) < last {
			return false
		}
		last = int64(n)
	}
	return true
}

// numbers reads sheet numbers: "1-6, 8-24" or a list of whole numbers. They come back ascending.
func (d *decoder) numbers(v source.Value) []int {
	list := d.inOrder(v, false)
	slices.Sort(list)
	return list
}

// inOrder reads sheet numbers as they are given; where they may fall, "24-8" runs from the one to the other.
func (d *decoder) inOrder(v source.Value, fall bool) []int {
	switch v.Kind() {
	case source.Absent:
		return nil
	case source.String:
		list, err := parseNumbers(v.Text(""), fall)
		if err != nil {
			v.Mistake(`write "1-24", or "1-6, 8-24"`, "%s %q: %s", v.Name(), v.Text(""), err)
			return nil
		}
		return list
	case source.Integer:
		if n := v.Whole(0); n >= 1 && n <= highestSheet {
			return []int{int(n)}
		}
		v.Mistake("sheets are numbered from 1", "%s is no sheet number", v.Raw())
		return nil
	case source.Array:
		var list []int
		have := map[int]bool{}
		for _, item := range v.Items() {
			n := item.Whole(1)
			switch {
			case item.Kind() != source.Integer && item.Kind() != source.Float:
				continue // noted by Whole
			case n < 1 || n > highestSheet:
				item.Mistake("sheets are numbered from 1", "%s is no sheet number", item.Raw())
			case have[int(n)]:
				item.Mistake("name every sheet once", "sheet %d stands twice", n)
			default:
				have[int(n)] = true
				list = append(list, int(n))
			}
		}
		return list
	}
	v.Mistake(`write "1-24", or a list [1, 2, 3]`, "%s takes sheet numbers, not %s", v.Name(), v.Kind())
	return nil
}

// parseNumbers reads "1-6, 8-24", and "24-8" where they may fall.
func parseNumbers(text string, fall bool) ([]int, error) {
	var list []int
	have := map[int]bool{}
	for _, part := range strings.Split(strings.NewReplacer("–", "-", "—", "-").Replace(text), ",") {
		first, last, isRange := strings.Cut(part, "-")
		a, err := sheetNumber(first)
		if err != nil {
			return nil, err
		}
		b := a
		if isRange {
			if b, err = sheetNumber(last); err != nil {
				return nil, err
			}
		}
		if b < a && !fall {
			return nil, fmt.Errorf("%d-%d runs backwards", a, b)
		}
		if len(list)+max(b-a, a-b) >= mostSheets {
			return nil, fmt.Errorf("more than %d sheets", mostSheets)
		}
		step := 1
		if b < a {
			step = -1
		}
		for n := a; n != b+step; n += step {
			if have[n] {
				return nil, fmt.Errorf("sheet %d stands twice", n)
			}
			have[n] = true
			list = append(list, n)
		}
	}
	return list, nil
}

func sheetNumber(text string) (int, error) {
	text = strings.TrimSpace(text)
	n, err := strconv.Atoi(text)
	switch {
	case text == "":
		return 0, fmt.Errorf("a sheet number is missing")
	case err != nil || n < 1 || n > highestSheet || text[0] == '+':
		return 0, fmt.Errorf("%q is no sheet number", text)
	}
	return n, nil
}

// delivered reads sheet numbers that have to be among the delivered ones.
func (d *decoder) delivered(v source.Value, f Flitch, of string) []int {
	var list []int
	for _, n := range d.numbers(v) {
		if holds(f.Sheets, n) || len(f.Sheets) == 0 {
			list = append(list, n)
			continue
		}
		at := v
		for _, item := range v.Items() {
			if (item.Kind() == source.Integer || item.Kind() == source.Float) && item.Whole(0) == int64(n) {
				at = item
			}
		}
		at.Mistake("name sheets that were delivered", "%s sheet %d is not one of the sheets of %s", v.Name(), n, of)
	}
	return list
}

// lastOnes are the last sheets, damaged ones passed over.
func (d *decoder) lastOnes(v source.Value, f Flitch, of string) []int {
	count := v.Whole(0)
	sound := without(f.Sheets, f.Damaged)
	if count < 0 || len(f.Sheets) > 0 && count > int64(len(sound)) {
		v.Mistake("write how many sheets are kept back, or a list of their numbers", "%s has no %s sheets to spare", of, v.Raw())
		return nil
	}
	if count == 0 || len(sound) == 0 {
		return nil
	}
	if f.From == FromLast {
		return slices.Clone(sound[:count])
	}
	return slices.Clone(sound[len(sound)-int(count):])
}

// widths reads what sheets measure, and counts those that are too narrow to hang as damaged.
func (d *decoder) widths(v source.Value, f *Flitch, of string) {
	if !v.Given() {
		return
	}
	const form = `write [number, width] for each sheet that was measured: widths = [[12, "23 7/16"], [15, "23"]]`
	if v.Kind() != source.Array {
		v.Mistake(form, "widths takes a list, not %s", v.Kind())
		return
	}
	seen := map[int]bool{}
	for _, item := range v.Items() {
		two := item.Items()
		if len(two) != 2 || two[0].Kind() != source.Integer {
			item.Mistake(form, "%s is no sheet number with a width", item.Raw())
			continue
		}
		n := int(max(0, min(two[0].Whole(0), highestSheet+1)))
		width, ok := d.positive(two[1], 0, false)
		gross := d.room.Veneer.GrossWidth
		switch {
		case len(f.Sheets) > 0 && !holds(f.Sheets, n):
			two[0].Mistake("name sheets that were delivered", "widths sheet %s is not one of the sheets of %s", two[0].Raw(), of)
		case seen[n]:
			two[0].Mistake("keep the width that was measured last", "widths has sheet %d twice", n)
		case !ok || gross <= 0:
		case width > gross+d.room.Veneer.Overlap:
			a, b := d.both(width, gross)
			two[1].Mistake("measure from factory edge to factory edge; where all sheets came wider, give a greater gross_width",
				"sheet %d cannot be %s wide: gross_width is %s", n, a, b)
		default:
			f.Widths = append(f.Widths, SheetWidth{n, width})
		}
		seen[n] = true
	}
	slices.SortFunc(f.Widths, func(a, b SheetWidth) int { return a.Number - b.Number })
	for _, w := range f.Widths {
		if w.Width < d.room.LeastGross() && !holds(f.Damaged, w.Number) {
			f.Refused = append(f.Refused, w.Number)
		}
	}
	f.Damaged = append(f.Damaged, f.Refused...)
	slices.Sort(f.Damaged)
}

func holds(ascending []int, n int) bool {
	_, found := slices.BinarySearch(ascending, n)
	return found
}

// without are the numbers of a that are not in b, both ascending.
func without(a, b []int) []int {
	var out []int
	for _, n := range a {
		if !holds(b, n) {
			out = append(out, n)
		}
	}
	return out
}

// usable are the sheets that can be laid out.
func usable(f Flitch) []int { return without(without(f.Sheets, f.Damaged), f.Spare) }
