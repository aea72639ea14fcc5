package edit

import (
	"strings"

	"flitchlay/internal/source"
)

// text is a file while it is changed.
type text struct {
	body string
	root source.Value
}

// read parses a text.
//
// Errors: the text cannot be read.
func read(name, body string) (*text, error) {
	root, err := source.Parse(name, []byte(body))
	if err != nil {
		return nil, err
	}
	return &text{body, root}, nil
}

// pair is a key and its value as they are written.
type pair struct{ key, raw string }

// replace puts words in place of a stretch.
func (t *text) replace(from, to int, words string) { t.body = t.body[:from] + words + t.body[to:] }

// line is the line in which a byte stands, without its end.
func (t *text) line(at int) (from, to int) {
	from = strings.LastIndexByte(t.body[:at], '\n') + 1
	to = len(t.body)
	if n := strings.IndexByte(t.body[at:], '\n'); n >= 0 {
		to = at + n
	}
	if to > from && t.body[to-1] == '\r' {
		to--
	}
	return from, to
}

// newline is how the file ends its lines.
func (t *text) newline() string {
	if strings.Contains(t.body, "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// indent is the white space before what stands at a byte.
func (t *text) indent(at int) string {
	from, _ := t.line(at)
	rest := strings.TrimLeft(t.body[from:at], " \t")
	if rest == "" || rest == "[" || rest == "[[" {
		return t.body[from : at-len(rest)]
	}
	line := t.body[from:at]
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}

// inline reports whether a table or a list stands in brackets of its own behind its key, or in another one that does.
func inline(v source.Value) bool {
	raw := v.Raw()
	return strings.HasPrefix(raw, "{") || strings.HasPrefix(raw, "[")
}

// headed reports whether a table is opened by a header.
func (t *text) headed(v source.Value) bool {
	if inline(v) {
		return false
	}
	from, _ := t.line(v.KeySpan().Start)
	return strings.HasPrefix(strings.TrimLeft(t.body[from:], " \t"), "[")
}

// end is where the last of a value and of all that is in it ends.
func end(v source.Value) int {
	last := v.Span().End
	for _, f := range v.Fields() {
		last = max(last, end(f))
	}
	for _, f := range v.Items() {
		last = max(last, end(f))
	}
	return last
}

// own are the fields of a headed table that stand under its own header.
func (t *text) own(v source.Value) []source.Value {
	var list []source.Value
	for _, f := range v.Fields() {
		if f.Kind() == source.Table && !inline(f) && t.headed(f) || f.Kind() == source.Array && !inline(f) {
			continue
		}
		list = append(list, f)
	}
	return list
}
