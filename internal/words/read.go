package words

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"flitchlay/internal/source"
	"flitchlay/templates"
)

// Names are the languages that come with the program.
func Names() []string {
	entries, err := fs.ReadDir(templates.Files, "words")
	if err != nil {
		panic(fmt.Sprintf("words: %v", err))
	}
	var names []string
	for _, e := range entries {
		if name, ok := strings.CutSuffix(e.Name(), ".toml"); ok {
			names = append(names, name)
		}
	}
	return names
}

// Text is the file of a language that comes with the program.
//
// Errors: one sentence that names the nearest.
func Text(name string) ([]byte, error) {
	body, err := templates.Files.ReadFile("words/" + name + ".toml")
	if err == nil {
		return body, nil
	}
	if near := source.Nearest(name, Names()); near != "" {
		return nil, fmt.Errorf("no language %q; the nearest is %s", name, near)
	}
	return nil, fmt.Errorf("no language %q; known are %s", name, strings.Join(Names(), ", "))
}

// IsName reports whether a word of the room file is the name of a language, not the path of a table.
func IsName(word string) bool { return !strings.ContainsAny(word, `/\.`) }

// Decode reads a table: sections of keys, under each a text, or { one = ..., many = ... }.
//
// Errors: a *source.Mistakes with every mistake of the file: a key that the English table has and this one lacks, one that it
// does not have, and a text whose places are not those of the English one.
func Decode(name string, body []byte) (*Table, error) {
	t, root, err := read(name, body)
	if err != nil {
		return nil, err
	}
	t.hold(root, English())
	if err := root.Mistakes().Err(); err != nil {
		return nil, err
	}
	return t, nil
}

// Paired is a table with another beside it: where a page has room, both say what they have to.
func Paired(t, other *Table) *Table { return &Table{says: t.says, other: other} }

// read reads a table as it stands.
func read(name string, body []byte) (*Table, source.Value, error) {
	root, err := source.Parse(name, body)
	if err != nil {
		return nil, root, err
	}
	t := &Table{says: map[string]text{}}
	for _, section := range root.Fields() {
		if section.Kind() != source.Table {
			section.Mistake("write it under [name]", "a text outside every section")
			continue
		}
		for _, v := range section.Fields() {
			t.says[section.Name()+"."+v.Name()] = textOf(v)
		}
	}
	return t, root, root.Mistakes().Err()
}

// textOf is what stands under a key.
func textOf(v source.Value) text {
	var x text
	if v.Kind() != source.Table {
		x.many = v.Text("")
		x.one = x.many
	} else {
		x.one, x.many = v.Get("one").Text(""), v.Get("many").Text("")
		if fields := v.Fields(); len(fields) != 2 || !v.Get("one").Given() || !v.Get("many").Given() {
			v.Mistake(`write { one = "{1} sheet", many = "{1} sheets" }`, "%s takes a text, or the two forms one and many", v.Path())
			return x
		}
	}
	for _, form := range []string{x.one, x.many} {
		if strings.TrimSpace(form) == "" {
			v.Mistake("write what the crew is to read", "%s says nothing", v.Path())
			break
		}
		if _, ok := places(form); !ok {
			v.Mistake("write {1}, {2}, ... and no other brace", "a brace that is no place in %q", form)
			break
		}
	}
	return x
}

// places are the places of a text, each once, in their order; false where a brace is none.
func places(form string) (list []string, ok bool) {
	for {
		before, rest, open := strings.Cut(form, "{")
		if strings.Contains(before, "}") {
			return nil, false
		}
		if !open {
			slices.Sort(list)
			return slices.Compact(list), true
		}
		place, after, closed := strings.Cut(rest, "}")
		if !closed || len(place) != 1 || place < "1" || place > "9" {
			return nil, false
		}
		list, form = append(list, "{"+place+"}"), after
	}
}

// hold notes where a table is not like another.
func (t *Table) hold(root source.Value, like *Table) {
	for _, key := range like.Keys() {
		section, name, _ := strings.Cut(key, ".")
		want, at := like.says[key].many, root.Get(section).Get(name)
		have, known := t.says[key]
		if !known {
			at.Mistake(fmt.Sprintf("write %s = \"...\" under [%s]; in English it is %q", name, section, want), "%s is missing", key)
			continue
		}
		needs, _ := places(want)
		many, _ := places(have.many)
		one, _ := places(have.one)
		if have.one != have.many && !slices.Contains(one, "{1}") { // one thing can be said without its number
			one = append([]string{"{1}"}, one...)
		}
		for _, form := range [][]string{many, one} {
			if !slices.Equal(needs, form) {
				at.Mistake(fmt.Sprintf("in English it is %q", want), "%s has the places %s, not %s", key, listed(form), listed(needs))
				break
			}
		}
	}
	for _, section := range root.Fields() {
		for _, v := range section.Fields() {
			key := section.Name() + "." + v.Name()
			if like.Has(key) {
				continue
			}
			mend := "take it out"
			if near := source.Nearest(key, like.Keys()); near != "" {
				mend = "the nearest is " + near
			}
			root.Mistakes().Add(v.KeySpan(), mend, "no page says %s", key)
		}
	}
}

func listed(places []string) string {
	if len(places) == 0 {
		return "none"
	}
	return strings.Join(places, " ")
}

// Keys are the keys of all texts, in their order.
func (t *Table) Keys() []string {
	var list []string
	for key := range t.says {
		list = append(list, key)
	}
	slices.Sort(list)
	return list
}

// Places is how many places the text under a key has.
func (t *Table) Places(key string) int {
	list, _ := places(t.says[key].many)
	return len(list)
}
