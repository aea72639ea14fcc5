package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// mostRooms bounds the rooms of one job.
const mostRooms = 200_000

// ends are the two ends of a row of room numbers: the same letters before a count, which may begin with noughts.
var ends = regexp.MustCompile(`^(.*?)(\d+)\s*[-–—]\s*(.*?)(\d+)$`)

// roomNumbers reads "301-318, 320", or a list of texts that are taken as they stand.
func roomNumbers(v source.Value) (list []string) {
	switch v.Kind() {
	case source.Absent:
	case source.Array:
		for _, item := range v.Items() {
			text := strings.TrimSpace(item.Text(""))
			if text == "" && item.Kind() == source.String {
				item.Mistake("write the number of the room", "a room number is empty")
			} else if text != "" {
				list = append(list, text)
			}
		}
	case source.Integer:
		list = []string{v.Raw()}
	case source.String:
		for _, part := range strings.Split(v.Text(""), ",") {
			row, err := unrolled(strings.TrimSpace(part))
			if err != nil {
				v.Mistake(`write "301-318, 320", or a list of texts`, "%s %q: %s", v.Name(), v.Text(""), err)
				return nil
			}
			list = append(list, row...)
		}
	default:
		v.Mistake(`write "301-318, 320", or a list of texts`, "%s takes room numbers, not %s", v.Name(), v.Kind())
	}
	return list
}

// unrolled is one room number, or a row of them.
func unrolled(part string) ([]string, error) {
	if part == "" {
		return nil, fmt.Errorf("a room number is missing")
	}
	m := ends.FindStringSubmatch(part)
	if m == nil || m[1] != m[3] {
		return []string{part}, nil
	}
	from, err := strconv.Atoi(m[2])
	to, err2 := strconv.Atoi(m[4])
	switch {
	case err != nil || err2 != nil || to-from >= mostRooms:
		return nil, fmt.Errorf("more than %d rooms", mostRooms)
	case to < from:
		return nil, fmt.Errorf("%s runs backwards", part)
	}
	var list []string
	for n := from; n <= to; n++ {
		list = append(list, fmt.Sprintf("%s%0*d", m[1], len(m[2]), n))
	}
	return list, nil
}

// laid reads the sheets of rooms that hang, one text for each: "SR-F2 1-4, 6-13; SR-F3 1-2".
func laid(v source.Value) (rooms [][]Row, at []source.Value) {
	texts := []source.Value{v}
	switch v.Kind() {
	case source.Absent:
		return nil, nil
	case source.Array:
		texts = v.Items()
	}
	for _, t := range texts {
		rows, err := laidRows(t.Text(""))
		if err != nil && t.Kind() == source.String {
			t.Mistake(`write the flitch and its sheets, as check prints them: "SR-F2 1-4, 6-13"; a further flitch after a semicolon`, "laid %q: %s", t.Text(""), err)
		}
		rooms, at = append(rooms, rows), append(at, t)
	}
	return rooms, at
}

func laidRows(text string) (rows []Row, err error) {
	for _, part := range strings.Split(text, ";") {
		part = strings.TrimSpace(part)
		// the sheets are what the text ends with; the number of the flitch may hold figures and blanks itself
		m := sheetsLast.FindStringSubmatch(part)
		if m == nil {
			return nil, fmt.Errorf("%q names no flitch with sheets", part)
		}
		row := Row{Flitch: strings.TrimSpace(m[1])}
		if row.Numbers, err = sheetNumbers(m[2]); err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
	return rows, nil
}

var sheetsLast = regexp.MustCompile(`^(.*?\S)\s+(\d+(?:-\d+)?(?:\s*,\s*\d+(?:-\d+)?)*)$`)

// sheetNumbers reads "1-4, 6-13", which rises.
func sheetNumbers(text string) (list []int, err error) {
	for _, part := range strings.Split(text, ",") {
		first, last, is := strings.Cut(strings.TrimSpace(part), "-")
		if !is {
			last = first
		}
		a, err := strconv.Atoi(first)
		b, err2 := strconv.Atoi(last)
		if err != nil || err2 != nil || a < 1 || b < a || b-a > mostSheets || len(list) > 0 && a <= list[len(list)-1] {
			return nil, fmt.Errorf("%q is no row of sheets that goes up", text)
		}
		for n := a; n <= b; n++ {
			list = append(list, n)
		}
	}
	return list, nil
}

// mostSheets is as many as a flitch may have.
const mostSheets = 10_000
