package source

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Mistake is one thing that a person has to mend in a text.
type Mistake struct {
	Span    Span   // the offending text
	Message string // what is wrong, as a sentence without a full stop
	Mend    string // one line on how to mend it
}

// Mistakes collects all mistakes of one text. As an error it prints them all, in the order in which they stand.
type Mistakes struct {
	Text *Text
	list []Mistake
	have map[Mistake]bool
}

// Add notes a mistake, once.
func (m *Mistakes) Add(at Span, mend, format string, args ...any) {
	one := Mistake{Span: at, Message: fmt.Sprintf(format, args...), Mend: mend}
	if m.have[one] {
		return
	}
	if m.have == nil {
		m.have = map[Mistake]bool{}
	}
	m.have[one] = true
	m.list = append(m.list, one)
}

// Err is the collection as an error, or nil where it is empty.
func (m *Mistakes) Err() error {
	if len(m.list) == 0 {
		return nil
	}
	return m
}

// List gives the mistakes in the order of their offsets; at one offset in the order in which they were found.
func (m *Mistakes) List() []Mistake {
	list := append([]Mistake(nil), m.list...)
	slices.SortStableFunc(list, func(a, b Mistake) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	return list
}

// Error prints every mistake: its place and message, the line, a caret under the offending text, how to mend it.
func (m *Mistakes) Error() string {
	var b strings.Builder
	for i, one := range m.Said() {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(one)
	}
	return b.String()
}

// Said is every mistake as it is printed, one by one.
func (m *Mistakes) Said() []string {
	var list []string
	for _, one := range m.List() {
		var b strings.Builder
		home, at := m.Text.Home(one.Span)
		one.Span = at
		home.print(&b, one)
		list = append(list, b.String())
	}
	return list
}

// lead stands before the source line, the caret and the mending line.
const lead = "  "

// Widths of the window of a long line that is printed: characters before the offending text, and in all.
const (
	before = 60
	window = 120
)

func (t *Text) print(b *strings.Builder, one Mistake) {
	line, column := t.Place(one.Span.Start)
	fmt.Fprintf(b, "%s:%d:%d: %s", t.Name, line, column, clean(one.Message))
	text := t.line(line)
	start := min(max(one.Span.Start, t.lines[0])-t.lines[line-1], len(text))
	end := max(start, min(one.Span.End-t.lines[line-1], len(text)))
	left, mark, right := t.cut(text[:start], text[start:end], text[end:])
	if strings.TrimSpace(left+mark+right) != "" {
		fmt.Fprintf(b, "\n%s%s\n%s%s%s", lead, clean(left+mark+right), lead, pad(left),
			strings.Repeat("^", max(1, utf8.RuneCountInString(mark))))
	}
	if one.Mend != "" {
		fmt.Fprintf(b, "\n%smend: %s", lead, clean(one.Mend))
	}
}

// cut shortens a long line round the offending text.
func (t *Text) cut(left, mark, right string) (string, string, string) {
	if utf8.RuneCountInString(left)+utf8.RuneCountInString(mark)+utf8.RuneCountInString(right) <= window {
		return left, mark, right
	}
	if r := []rune(left); len(r) > before {
		left = "…" + string(r[len(r)-before+1:])
	}
	room := window - utf8.RuneCountInString(left)
	if r := []rune(mark); len(r) > room {
		return left, string(r[:room-1]) + "…", ""
	}
	room -= utf8.RuneCountInString(mark)
	if r := []rune(right); len(r) > room {
		right = string(r[:max(0, room-1)]) + "…"
	}
	return left, mark, right
}

// pad is as wide as the text before a caret: tabs stay tabs.
func pad(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\t' {
			return r
		}
		return ' '
	}, text)
}

// clean puts a mark in place of what a terminal would obey: control characters, and marks that turn the line round.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r != '\t' && (unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069' ||
			r == '\u2028' || r == '\u2029') {
			return utf8.RuneError
		}
		return r
	}, text)
}
