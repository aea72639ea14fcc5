package source

import (
	"cmp"
	"math"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// file is what all values of one text share.
type file struct {
	*Mistakes
	lost int // values that the scanner found no place for
}

// Value is a table, a list or a value of the file, or the lack of one: asking for what is not there gives an absent
// Value that still knows its path, and whose mistakes are noted where it should stand.
type Value struct {
	file  *file
	node  *node // nil: absent
	owner *node // of an absent one: the table that should hold it
	name  string
	path  string
}

// Mistakes is the collection to which all values of the file add.
func (v Value) Mistakes() *Mistakes { return v.file.Mistakes }

// Get is the field of a table, absent where there is none.
func (v Value) Get(name string) Value {
	out := Value{file: v.file, owner: v.owner, name: name, path: quoteName(name)}
	if v.path != "" {
		out.path = v.path + "." + out.path
	}
	if v.node != nil {
		out.owner, out.node = v.node, v.node.fields[name]
	}
	return out
}

// Fields are the fields of a table, in the order in which they stand.
func (v Value) Fields() []Value {
	if v.Kind() != Table {
		return nil
	}
	list := make([]Value, 0, len(v.node.names))
	for _, name := range v.node.names {
		list = append(list, v.Get(name))
	}
	slices.SortStableFunc(list, func(a, b Value) int {
		return cmp.Or(cmp.Compare(a.KeySpan().Start, b.KeySpan().Start), cmp.Compare(a.name, b.name))
	})
	return list
}

// Items are the items of a list; none of anything else.
func (v Value) Items() []Value {
	if v.Kind() != Array {
		return nil
	}
	list := make([]Value, len(v.node.items))
	for i, item := range v.node.items {
		list[i] = Value{file: v.file, node: item, owner: v.node, name: v.name, path: v.path + "[" + strconv.Itoa(i) + "]"}
	}
	return list
}

// Given reports whether the value is in the file.
func (v Value) Given() bool { return v.node != nil }

// Kind is what the value is.
func (v Value) Kind() Kind {
	if v.node == nil {
		return Absent
	}
	return v.node.kind
}

// Name is the last name of the path.
func (v Value) Name() string { return v.name }

// Path is where the value stands in the tree, with places in lists counted from 0: wall[1].opening[0].width.
func (v Value) Path() string { return v.path }

// Span is where the value stands; of an absent one, the table that should hold it.
func (v Value) Span() Span {
	switch {
	case v.node != nil:
		return v.node.value
	case v.owner != nil:
		return v.owner.key
	}
	return Span{}
}

// KeySpan is where the key stands; of an absent one, the table that should hold it.
func (v Value) KeySpan() Span {
	switch {
	case v.node != nil:
		return v.node.key
	case v.owner != nil:
		return v.owner.key
	}
	return Span{}
}

// Mistake notes a mistake under the value, or where it should stand.
func (v Value) Mistake(mend, format string, args ...any) { v.file.Add(v.Span(), mend, format, args...) }

// Raw is the value as it is written in the file.
func (v Value) Raw() string {
	if v.node == nil {
		return ""
	}
	return v.file.Text.Slice(v.node.value)
}

// wrong notes that the value is not of the kind that its key takes.
func (v Value) wrong(want, example string) {
	v.Mistake("write "+example, "%s takes %s, not %s", v.name, want, v.Kind())
}

// Text is the string that stands here, or the default.
func (v Value) Text(other string) string {
	switch v.Kind() {
	case Absent:
		return other
	case String:
		return v.node.data.(string)
	}
	v.wrong("a text", quoteText(strings.Trim(firstLine(v.Raw()), `"'`)))
	return other
}

func firstLine(s string) string {
	line, _, _ := strings.Cut(s, "\n")
	return strings.TrimSuffix(line, "\r")
}

func quoteText(s string) string { return `"` + strings.ReplaceAll(s, `"`, `\"`) + `"` }

// Whole is the whole number that stands here, or the default.
func (v Value) Whole(other int64) int64 {
	switch v.Kind() {
	case Absent:
		return other
	case Integer:
		return v.node.data.(int64)
	case Float:
		if f := v.node.data.(float64); f == math.Trunc(f) && math.Abs(f) < 1<<53 {
			return int64(f)
		}
	}
	v.wrong("a whole number", v.name+" = "+v.figures("1"))
	return other
}

// Number is the number that stands here, or the default. It is never infinite or not a number.
func (v Value) Number(other float64) float64 {
	switch v.Kind() {
	case Absent:
		return other
	case Integer:
		return float64(v.node.data.(int64))
	case Float:
		if f := v.node.data.(float64); !math.IsNaN(f) && !math.IsInf(f, 0) {
			return f
		}
		v.Mistake("write a number", "%s is no number to count with", v.Raw())
		return other
	}
	v.wrong("a number", v.name+" = "+v.figures("1.5"))
	return other
}

// figures are the figures of a text that begins with a number, as in "42 %", or others.
func (v Value) figures(other string) string {
	if v.Kind() == String {
		if m := leading.FindString(strings.TrimSpace(v.node.data.(string))); m != "" {
			return m
		}
	}
	return other
}

var leading = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?`)

// Exact is the number that stands here as it is written, without the rounding of a binary fraction.
//
// Errors: false where there is no finite number of less than 1e12.
func (v Value) Exact() (*big.Rat, bool) {
	switch v.Kind() {
	case Integer:
		return new(big.Rat).SetInt64(v.node.data.(int64)), true
	case Float:
		f := v.node.data.(float64)
		switch {
		case math.IsNaN(f) || math.Abs(f) > 1e12:
			return nil, false
		case math.Abs(f) < 1e-12:
			return new(big.Rat), true
		}
		if r, ok := new(big.Rat).SetString(strings.ReplaceAll(v.Raw(), "_", "")); ok {
			return r, true
		}
		return new(big.Rat).SetFloat64(f), true
	}
	return nil, false
}

// Bool is the truth value that stands here, or the default.
func (v Value) Bool(other bool) bool {
	switch v.Kind() {
	case Absent:
		return other
	case Boolean:
		return v.node.data.(bool)
	}
	v.wrong("true or false", v.name+" = true, without quotes")
	return other
}

// Word is one of some words, or the default.
func (v Value) Word(other string, words ...string) string {
	if v.Kind() != Absent && v.Kind() != String {
		v.wrong("one of the words "+strings.Join(words, ", "), v.name+" = "+v.alone(words))
		return other
	}
	word := v.Text(other)
	if !v.Given() || slices.Contains(words, word) {
		return word
	}
	mend := "write one of " + strings.Join(words, ", ")
	if near := Nearest(word, words); near != "" {
		mend = "write " + quoteText(near) + "; " + v.name + " takes " + strings.Join(words, ", ")
	}
	v.Mistake(mend, "%s %s is not known", v.name, quoteText(word))
	return other
}

// alone is the word that stands alone in a list in the place of a word, or else the first, as a value is written.
func (v Value) alone(words []string) string {
	if items := v.Items(); len(items) == 1 && items[0].Kind() == String {
		if near := Nearest(items[0].node.data.(string), words); near != "" {
			return quoteText(near)
		}
	}
	return quoteText(words[0]) + ", or another of them in double quotes"
}

// Section is a table that stands here, or an absent one. A [[list]] of tables in its place is a mistake.
func (v Value) Section() Value {
	switch v.Kind() {
	case Absent, Table:
		return v
	}
	v.file.Add(v.KeySpan(), "write ["+plainPath(v.path)+"] once, in single brackets", "%s is one table, not %s", v.name, v.Kind())
	return Value{file: v.file, owner: v.owner, name: v.name, path: v.path}
}

// Tables are the tables of a [[list]]. A single [table] or a value in its place is a mistake.
func (v Value) Tables() []Value {
	switch v.Kind() {
	case Absent:
		return nil
	case Array:
		var list []Value
		for _, item := range v.Items() {
			if item.Kind() == Table {
				list = append(list, item)
				continue
			}
			item.Mistake("write [["+plainPath(v.path)+"]] and its keys below", "%s holds tables, not %s", v.name, item.Kind())
		}
		return list
	}
	v.file.Add(v.KeySpan(), "write [["+plainPath(v.path)+"]], in double brackets, before each", "%s is a list of tables, not %s", v.name, v.Kind())
	return nil
}

// plainPath is a path without its counts, as a header is written.
func plainPath(path string) string {
	var b strings.Builder
	in := false
	for _, r := range path {
		if r == '[' {
			in = true
		}
		if !in {
			b.WriteRune(r)
		}
		if r == ']' {
			in = false
		}
	}
	return b.String()
}

// At finds the span of the key or value that starts at an offset; an empty span there where none does.
func (v Value) At(offset int) Span {
	at := Span{offset, offset}
	var walk func(n *node)
	walk = func(n *node) {
		for _, s := range []Span{n.key, n.value} {
			if s.Start == offset && s.End > at.End {
				at = s
			}
		}
		for _, f := range n.fields {
			walk(f)
		}
		for _, item := range n.items {
			walk(item)
		}
	}
	if v.node != nil {
		walk(v.node)
	}
	return at
}
