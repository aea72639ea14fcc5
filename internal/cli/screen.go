package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"golang.org/x/term"

	"flitchlay/internal/finding"
	"flitchlay/internal/report"
)

// What a terminal is taken for that does not say how wide it is, and the least that lines are fitted to.
const (
	usualColumns = 80
	leastColumns = 40
)

// screen is where text for people goes. Only a terminal has a width and colours: what goes into a file or a pipe is the same
// wherever it is run.
type screen struct {
	io.Writer
	wide    int // 0: no terminal
	colours bool
}

// Columns is how wide a line may be, 0 where nothing says so.
func (s screen) Columns() int { return s.wide }

// screenOf looks whether a stream is a terminal.
func screenOf(to io.Writer, variable func(string) string) screen {
	f, ok := to.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return screen{Writer: to}
	}
	wide, _, err := term.GetSize(int(f.Fd()))
	if err != nil || wide <= 0 {
		wide = usualColumns
	}
	// Source: no-color.org: "when present and not an empty string (regardless of its value)"
	return screen{to, max(wide, leastColumns), variable("NO_COLOR") == "" && variable("TERM") != "dumb"}
}

// onto is the screen with another writer before it.
func (s screen) onto(w io.Writer) screen { return screen{w, s.wide, s.colours} }

// screen is standard output as people read it.
func (c *call) screen() screen { return screenOf(c.out.to, os.Getenv).onto(c.out) }

// levelColours are the colours of the levels, as terminals take them.
//
// Source: ECMA-48, select graphic rendition: 1 bold, 31 red, 33 yellow, 36 cyan, 2 faint.
var levelColours = map[finding.Level]string{finding.Must: "1;31", finding.Should: "33", finding.Ask: "36", finding.Note: "2"}

// level is a level's word, in its colour where there are colours.
func (s screen) level(l finding.Level) string {
	if !s.colours {
		return l.String()
	}
	return "\x1b[" + levelColours[l] + "m" + l.String() + "\x1b[0m"
}

// prose prints text, its long lines broken at blanks under their own indent.
func (s screen) prose(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if s.wide > 0 {
		text = reflow(text, s.wide)
	}
	io.WriteString(s, text)
}

// filled is how long a line of a paragraph is at least that goes on in the next.
const filled = 64

// paragraphs prints text that was broken into lines by hand: on a terminal they are filled anew.
func (s screen) paragraphs(text string) {
	if s.wide > 0 {
		var b strings.Builder
		last := ""
		for line := range strings.Lines(text) {
			if len(last) > filled && line[0] > ' ' && last[0] > ' ' {
				b.WriteString(" " + strings.TrimSuffix(line, "\n"))
			} else {
				b.WriteString("\n" + strings.TrimSuffix(line, "\n"))
			}
			last = line
		}
		text = strings.TrimPrefix(b.String(), "\n") + "\n"
	}
	s.prose("%s", text)
}

// bullet is what the first line of a paragraph begins with: blanks, and a number or a dash.
var bullet = regexp.MustCompile(`^ *(?:\d+: |- )?`)

// reflow breaks lines that are too long, and leaves the others as they are.
func reflow(text string, wide int) string {
	lines := strings.Split(text, "\n")
	var out []string
	for _, line := range lines {
		if utf8.RuneCountInString(line) <= wide {
			out = append(out, line)
			continue
		}
		head := bullet.FindString(line)
		for i, part := range report.Wrap(line[len(head):], wide-len(head)) {
			if i > 0 {
				head = strings.Repeat(" ", len(head))
			}
			out = append(out, head+part)
		}
	}
	return strings.Join(out, "\n")
}

// grid is a table of columns: tabs part the entries of what is written to it. It is printed by Flush.
type grid struct {
	bytes.Buffer
	to io.Writer
}

// table aligns columns by two spaces; on a terminal it fits them to it.
func table(to io.Writer) *grid { return &grid{to: to} }

// Flush prints the table.
func (g *grid) Flush() {
	defer g.Reset()
	if n := report.Columns(g.to); n > 0 {
		var rows [][]string
		for line := range strings.Lines(g.String()) {
			rows = append(rows, strings.Split(strings.TrimSuffix(line, "\n"), "\t"))
		}
		for _, line := range report.Fit(rows, n) {
			fmt.Fprintln(g.to, line)
		}
		return
	}
	t := tabwriter.NewWriter(g.to, 0, 0, 2, ' ', 0)
	t.Write(g.Bytes())
	t.Flush()
}

// said is a finding as it is printed. A list has a place for each finding, or for none.
type said struct {
	level                finding.Level
	code, place, message string
}

// leastMessage is how wide the column of messages has to be on a terminal; else they stand under their heads.
const leastMessage = 48

// underHead is by how much they are indented there.
const underHead = 8

// said prints findings: in columns one a line, and on a terminal as wide as it is.
func (s screen) said(list []said) {
	if s.wide == 0 {
		t := table(s)
		for _, f := range list {
			fmt.Fprintln(t, strings.Join(f.cells(), "\t"))
		}
		t.Flush()
		return
	}
	var wide []int
	for _, f := range list {
		for i, text := range f.cells() {
			if i == len(wide) {
				wide = append(wide, 0)
			}
			wide[i] = max(wide[i], utf8.RuneCountInString(text))
		}
	}
	for _, f := range list {
		plain, indent, head := f.cells(), 0, s.level(f.level)
		for i, text := range plain[:len(plain)-1] {
			if i > 0 {
				head += text
			}
			head += strings.Repeat(" ", wide[i]+2-utf8.RuneCountInString(text))
			indent += wide[i] + 2
		}
		if s.wide-indent < leastMessage {
			fmt.Fprintln(s, strings.TrimRight(head, " "))
			head, indent = strings.Repeat(" ", underHead), underHead
		}
		for _, line := range report.Wrap(f.message, s.wide-indent) {
			fmt.Fprintln(s, head+line)
			head = strings.Repeat(" ", indent)
		}
	}
}

// cells are the entries of a finding's row.
func (f said) cells() []string {
	if f.place == "" {
		return []string{f.level.String(), f.code, f.message}
	}
	return []string{f.level.String(), f.code, f.place, f.message}
}
