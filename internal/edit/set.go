package edit

import (
	"strings"

	"flitchlay/internal/source"
)

// set gives a key of a table a value. The table is v; where the file has none it is opened at the end under path.
func (t *text) set(v source.Value, path string, p pair) {
	if f := v.Get(p.key); f.Given() {
		if f.Raw() != p.raw {
			t.replace(f.Span().Start, f.Span().End, p.raw)
		}
		return
	}
	nl := t.newline()
	switch {
	case !v.Given():
		t.finish()
		t.body += nl + "[" + path + "]" + nl + p.key + " = " + p.raw + nl
	case inline(v):
		t.intoBrackets(v, len(v.Fields()) > 0, p.key+" = "+p.raw)
	case t.headed(v):
		at, key := v.KeySpan().Start, p.key
		before := ""
		if list := t.own(v); len(list) > 0 {
			last := list[len(list)-1]
			at, before = end(last), t.indent(last.KeySpan().Start)
			key = t.aligned(last, p.key)
		} else {
			before = t.indent(at)
		}
		_, to := t.line(at)
		t.replace(to, to, nl+before+key+" = "+p.raw)
	default: // by dotted keys
		list := v.Fields()
		last := list[len(list)-1]
		from, _ := t.line(last.KeySpan().Start)
		_, to := t.line(end(last))
		t.replace(to, to, nl+t.body[from:last.KeySpan().Start]+p.key+" = "+p.raw)
	}
}

// aligned is a key filled up with blanks as far as the one before it is.
func (t *text) aligned(before source.Value, key string) string {
	from := before.KeySpan()
	gap := t.body[from.End:before.Span().Start]
	eq := strings.IndexByte(gap, '=')
	if eq <= 1 || strings.ContainsAny(gap, "\n\t") {
		return key
	}
	if wide := from.End - from.Start + eq - 1; wide > len(key) {
		return key + strings.Repeat(" ", wide-len(key))
	}
	return key
}

// unset takes a key out of a table, with its line where it has one to itself.
func (t *text) unset(v source.Value, key string) {
	f := v.Get(key)
	if !f.Given() {
		return
	}
	if inline(v) {
		t.outOfBrackets(f.KeySpan().Start, f.Span().End)
		return
	}
	from, _ := t.line(f.KeySpan().Start)
	_, to := t.line(f.Span().End)
	t.replace(from, t.past(to), "")
}

// past is the byte behind the end of the line that ends at to.
func (t *text) past(to int) int {
	if strings.HasPrefix(t.body[to:], "\r\n") {
		return to + 2
	}
	return min(to+1, len(t.body))
}

// finish ends the last line of the file.
func (t *text) finish() {
	if t.body != "" && !strings.HasSuffix(t.body, "\n") {
		t.body += t.newline()
	}
}

// intoBrackets puts words behind the last that stands in the brackets of a value.
func (t *text) intoBrackets(v source.Value, any bool, words string) {
	from, to := v.Span().Start, v.Span().End-1
	last := to
	if any {
		at := from + 1
		for _, f := range append(v.Fields(), v.Items()...) {
			at = max(at, end(f))
		}
		t.replace(at, at, ", "+words)
		return
	}
	blank := strings.Trim(t.body[from+1:last], " \t") == ""
	if blank && t.body[from] == '{' {
		t.replace(from+1, last, " "+words+" ")
		return
	}
	t.replace(from+1, from+1, words)
}

// outOfBrackets takes a stretch out of a list in brackets, with one of the commas beside it.
func (t *text) outOfBrackets(from, to int) {
	after := strings.TrimLeft(t.body[to:], " \t\r\n")
	if strings.HasPrefix(after, ",") {
		to = len(t.body) - len(after) + 1
		for to < len(t.body) && (t.body[to] == ' ' || t.body[to] == '\t') {
			to++
		}
	} else if before := strings.TrimRight(t.body[:from], " \t\r\n"); strings.HasSuffix(before, ",") {
		from = len(before) - 1
	}
	t.replace(from, to, "")
}
