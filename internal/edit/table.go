package edit

import (
	"strings"

	"flitchlay/internal/source"
)

// add adds a table to a list of tables: in brackets where the list stands so, else under a header of its own, behind the last of the
// list, or behind all that is in the table which holds it. Of the whole file that is its end.
func (t *text) add(parent source.Value, name, path string, pairs []pair) {
	list := parent.Get(name)
	var words []string
	for _, p := range pairs {
		words = append(words, p.key+" = "+p.raw)
	}
	row := "{ " + strings.Join(words, ", ") + " }"
	switch {
	case list.Given() && inline(list):
		t.intoBrackets(list, len(list.Items()) > 0, row)
		return
	case parent.Given() && inline(parent):
		t.intoBrackets(parent, len(parent.Fields()) > 0, name+" = ["+row+"]")
		return
	}
	nl := t.newline()
	like, at := source.Value{}, len(t.body)
	if items := list.Items(); len(items) > 0 {
		like = items[len(items)-1]
		at = end(like)
	} else if path != name {
		like, at = parent, end(parent)
	}
	before := ""
	inner := ""
	if like.Given() {
		before = t.indent(like.KeySpan().Start)
		inner = before
		if own := t.own(like); len(own) > 0 {
			inner = t.indent(own[0].KeySpan().Start)
		}
	}
	out := before + "[[" + path + "]]"
	wide := 0
	for _, p := range pairs {
		wide = max(wide, len(p.key))
	}
	for _, p := range pairs {
		out += nl + inner + p.key + strings.Repeat(" ", wide-len(p.key)) + " = " + p.raw
	}
	if at == len(t.body) && !like.Given() {
		t.finish()
		t.body += nl + out + nl
		return
	}
	_, to := t.line(at)
	t.replace(to, to, nl+nl+out)
}

// drop takes a table out of a list of tables. Comments over its header stay: they may speak of more.
func (t *text) drop(item source.Value) {
	if inline(item) {
		t.outOfBrackets(item.Span().Start, item.Span().End)
		return
	}
	from, _ := t.line(item.KeySpan().Start)
	_, to := t.line(end(item))
	to = t.past(to)
	// of the blank lines before and behind it one is enough
	if at := strings.TrimSuffix(strings.TrimSuffix(t.body[:from], "\n"), "\r"); strings.HasSuffix(at, "\n") || at == "" {
		if rest := strings.TrimLeft(t.body[to:], " \t"); rest == "" || rest[0] == '\n' || rest[0] == '\r' {
			from = len(at)
		}
	}
	t.replace(from, to, "")
}
