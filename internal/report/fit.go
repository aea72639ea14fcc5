package report

import (
	"io"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// plainWidth is how many characters a line of text has where nothing says how wide it may be.
const plainWidth = 100

// Columns is how wide a line may be that goes to a writer, where it knows that: a terminal does. Else it is 0.
func Columns(w io.Writer) int {
	if s, ok := w.(interface{ Columns() int }); ok {
		return s.Columns()
	}
	return 0
}

// PageWidth is how wide a line may be that goes to a writer: 100 characters, but on a terminal as many as it has.
func PageWidth(w io.Writer) int {
	if n := Columns(w); n > 0 {
		return n
	}
	return plainWidth
}

// leastLong is how many characters a column that may be broken keeps.
const leastLong = 8

// narrow takes what is over the page's width from the widest columns: first from those of long texts, then from heads and texts of
// several words, then with one blank between columns, last from any.
func (t *Table) narrow(wide []int, page int) {
	least := make([]int, len(wide))
	for i, c := range t.Columns {
		least[i] = wide[i]
		if c.Long {
			least[i] = min(wide[i], leastLong)
		}
	}
	if t.squeeze(wide, least, page) {
		return
	}
	for i, c := range t.Columns {
		least[i] = longestWord(c.Head)
		for _, row := range t.Rows {
			if c.Right { // figures are not broken
				least[i] = max(least[i], utf8.RuneCountInString(row[i].Text))
			} else {
				least[i] = max(least[i], longestWord(row[i].Text))
			}
		}
		least[i] = min(least[i], wide[i])
	}
	if t.squeeze(wide, least, page) {
		return
	}
	if t.close = true; !t.squeeze(wide, least, page) {
		t.squeeze(wide, slices.Repeat([]int{1}, len(wide)), page)
	}
}

// gap stands between two columns.
func (t *Table) gap() string {
	if t.close {
		return " "
	}
	return "  "
}

// squeeze takes from the widest columns, none under its least width, until they fit a page; it reports whether they do.
func (t *Table) squeeze(wide, least []int, page int) bool {
	over := len(t.gap())*(len(wide)-1) - page
	for _, n := range wide {
		over += n
	}
	for ; over > 0; over-- {
		widest := -1
		for i := range wide {
			if wide[i] > least[i] && (widest < 0 || wide[i] > wide[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return false
		}
		wide[widest]--
	}
	return true
}

// longestWord is how many characters the longest part of a text has at which no line is broken.
func longestWord(s string) int {
	n := 0
	for _, word := range strings.FieldsFunc(tied(s), blank) {
		n = max(n, utf8.RuneCountInString(word))
	}
	return n
}

// Fit sets rows in columns with two blanks between, at most so many characters wide: what is too long is broken into lines.
func Fit(rows [][]string, page int) []string {
	t := &Table{}
	var wide []int
	for _, row := range rows {
		for i, s := range row {
			if i == len(wide) {
				wide = append(wide, 0)
				t.Columns = append(t.Columns, Column{})
			}
			wide[i] = max(wide[i], utf8.RuneCountInString(s))
		}
	}
	for _, row := range rows {
		cells := make([]Cell, len(wide))
		for i, s := range row {
			cells[i] = Text(s)
		}
		t.Rows = append(t.Rows, cells)
	}
	t.narrow(wide, page)
	var b strings.Builder
	for _, row := range t.Rows {
		t.line(&b, wide, row)
	}
	return strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
}

// mixed is the blank inside a mixed number, at which no line is broken.
var mixed = regexp.MustCompile(`(\d) (\d+/\d)`)

const tie = "\u00a0"

// tied keeps the parts of mixed numbers together.
func tied(s string) string { return mixed.ReplaceAllString(s, "$1"+tie+"$2") }

// blank reports whether a line may be broken at a character.
func blank(r rune) bool { return r == ' ' || r == '\t' || r == '\n' }

// Wrap breaks a text into lines of at most n characters, at blanks where it can.
func Wrap(s string, n int) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(tied(s), blank) {
		for utf8.RuneCountInString(word) > n {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			r := []rune(word)
			lines, word = append(lines, string(r[:n])), string(r[n:])
		}
		switch {
		case word == "":
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= n:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], tie, " ")
	}
	return lines
}
