// Package source holds a text with places: it reads a TOML file, keeps where every key and value stands, and prints a
// person's mistakes with the line and a caret under what is wrong. Room files and page templates are read alike.
//
// Coordinates and units: an offset counts bytes from the start of the text; lines and columns count from 1, columns in
// characters.
//
// Order: fields of a table and items of an array stay in file order; mistakes come in the order of their offsets.
//
// Not here: what a key means, and lengths (packages room and paper).
package source

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// Span is a stretch of the text: the bytes from Start up to, not including, End.
type Span struct{ Start, End int }

// Text is a named text and where its lines begin.
type Text struct {
	Name  string // as messages print it
	body  string
	lines []int // offset of the first byte of each line

	origins []origin // of one that was put together
}

// NewText finds the lines of a text. They end at a line feed; a carriage return before it is no part of the line.
func NewText(name string, body []byte) *Text {
	t := &Text{Name: name, body: string(body), lines: []int{0}}
	for i := 0; i < len(t.body); i++ {
		if t.body[i] == '\n' {
			t.lines = append(t.lines, i+1)
		}
	}
	if strings.HasPrefix(t.body, bom) {
		t.lines[0] = len(bom)
	}
	return t
}

// bom is the byte order mark that some editors put first.
const bom = "\ufeff"

// Place gives the line and the column, in characters, of an offset.
func (t *Text) Place(offset int) (line, column int) {
	offset = max(t.lines[0], min(offset, len(t.body)))
	line = sort.Search(len(t.lines), func(i int) bool { return t.lines[i] > offset })
	return line, 1 + utf8.RuneCountInString(t.body[t.lines[line-1]:offset])
}

// Offset is the way back from Place: the byte at which the character of that line and column starts.
//
// Errors: what lies past the line or the text is brought to its end.
func (t *Text) Offset(line, column int) int {
	if line < 1 {
		return t.lines[0]
	}
	if line > len(t.lines) {
		return len(t.body)
	}
	at, end := t.lines[line-1], t.lines[line-1]+len(t.line(line))
	for ; column > 1 && at < end; column-- {
		_, n := utf8.DecodeRuneInString(t.body[at:end])
		at += n
	}
	return at
}

// line is the text of a line, without its end.
func (t *Text) line(line int) string {
	start, end := t.lines[line-1], len(t.body)
	if line < len(t.lines) {
		end = t.lines[line] - 1
	}
	return strings.TrimSuffix(t.body[start:max(start, end)], "\r")
}

// Slice is the text of a span.
func (t *Text) Slice(s Span) string { return t.body[s.Start:s.End] }
