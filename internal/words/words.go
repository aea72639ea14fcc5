package words

import (
	"fmt"
	"strings"
	"sync"

	"flitchlay/templates"
)

// Table is all words of one language. The nil table is the English one.
type Table struct {
	says  map[string]text
	other *Table // what stands beside it where there is room, nil where one language does
}

// text is what stands under a key: two forms where the language has one for a single thing, else the same twice.
type text struct{ one, many string }

// Say is the text under a key, its places filled in: {1} by the first of what is given, {2} by the second. Where the text has a
// form for one thing, that is taken for a first place that is 1.
func (t *Table) Say(key string, given ...any) string {
	if t == nil {
		return English().Say(key, given...)
	}
	x, known := t.says[key]
	if !known {
		panic(fmt.Sprintf("words: no text %q", key)) // tables are read whole, and code is held against the English one
	}
	form := x.many
	if len(given) > 0 && fmt.Sprint(given[0]) == "1" {
		form = x.one
	}
	return fill(form, given)
}

// Both is Say in both languages of a table that has two, one after the other: for where a page has room.
func (t *Table) Both(key string, given ...any) string {
	say := t.Say(key, given...)
	if t == nil || t.other == nil {
		return say
	}
	if also := t.other.Say(key, given...); also != say {
		return say + " / " + also
	}
	return say
}

// Of is the word of a section for something that is known by its English word, and the word itself where the section has none:
// "inside corner" of section end is under end.inside_corner.
func (t *Table) Of(section, word string, given ...any) string {
	if t == nil {
		return English().Of(section, word, given...)
	}
	if key := Key(section, word); t.Has(key) {
		return t.Say(key, given...)
	}
	return word
}

// Has reports whether there is a text under a key.
func (t *Table) Has(key string) bool {
	if t == nil {
		return English().Has(key)
	}
	_, known := t.says[key]
	return known
}

// Key is where a word of a section stands.
func Key(section, word string) string {
	return section + "." + strings.ReplaceAll(strings.ToLower(word), " ", "_")
}

// fill puts what is given into the places of a text.
func fill(form string, given []any) string {
	var b strings.Builder
	for {
		before, rest, open := strings.Cut(form, "{")
		b.WriteString(before)
		if !open {
			return b.String()
		}
		place, after, _ := strings.Cut(rest, "}")
		n := int(place[0] - '1')
		if n >= len(given) {
			panic(fmt.Sprintf("words: nothing given for {%s} of %q", place, form))
		}
		fmt.Fprint(&b, given[n])
		form = after
	}
}

// English is the table that all others are held against.
func English() *Table { return english() }

var english = sync.OnceValue(func() *Table {
	name := "words/" + first + ".toml"
	body, err := templates.Files.ReadFile(name)
	if err != nil {
		panic(fmt.Sprintf("words: %v", err))
	}
	t, _, err := read(name, body)
	if err != nil {
		panic(fmt.Sprintf("words: %v", err)) // a test reads it
	}
	return t
})

// first is the language that the tables are translated from.
const first = "en"
