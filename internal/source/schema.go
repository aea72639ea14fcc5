package source

import (
	"slices"
	"strings"
)

// Key is one key of a table: for checking files, for naming the nearest one, and for documentation.
type Key struct {
	Name     string
	Required bool
	Kind     string   // what its value is, in words: "length", "text", "whole number", ...
	Words    []string // the words that it takes, where it takes only some
	Default  string   // in words, "" where there is none
	Doc      string   // what it means, a sentence without a full stop
	Like     string   // its value in an example, where neither its default nor its kind gives one
}

// KeyTable is a table that a file can hold.
type KeyTable struct {
	Path string // "wall.opening"; the top table is ""
	Many bool   // [[wall.opening]], not [wall.opening]
	Doc  string
	Keys []Key
	Gone map[string]string // keys that are no longer known: what to write in their place
}

// Schema is all tables that a file can hold.
type Schema []KeyTable

// Table finds a table by its path.
func (s Schema) Table(path string) (KeyTable, bool) {
	for _, t := range s {
		if t.Path == path {
			return t, true
		}
	}
	return KeyTable{}, false
}

// Key is the row of the key under which a value stands, or should stand.
func (s Schema) Key(v Value) (Key, bool) {
	parent, name := cutPath(plainPath(v.path))
	t, _ := s.Table(parent)
	for _, k := range t.Keys {
		if k.Name == name {
			return k, true
		}
	}
	return Key{}, false
}

// names are all keys and tables that can stand in a table.
func (s Schema) names(path string) []string {
	var names []string
	if t, ok := s.Table(path); ok {
		for _, k := range t.Keys {
			names = append(names, k.Name)
		}
	}
	for _, t := range s {
		if parent, name := cutPath(t.Path); parent == path && t.Path != "" {
			names = append(names, name)
		}
	}
	return names
}

func cutPath(path string) (parent, name string) {
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		return path[:i], path[i+1:]
	}
	return "", path
}

// header is how a table is opened in a file.
func (s Schema) header(path string) string {
	if path == "" {
		return "the top of the file"
	}
	if t, _ := s.Table(path); t.Many {
		return "[[" + path + "]]"
	}
	return "[" + path + "]"
}

// Unknown notes every key and table that the schema does not hold, with the nearest known one. Small and capital
// letters differ.
func (s Schema) Unknown(root Value) { s.unknown(root, "") }

func (s Schema) unknown(v Value, path string) {
	known := s.names(path)
	for _, f := range v.Fields() {
		name := f.Name()
		child := name
		if path != "" {
			child = path + "." + name
		}
		if !slices.Contains(known, name) {
			what := "key"
			if k := f.Kind(); k == Table || k == Array && len(f.node.items) > 0 && f.node.items[0].kind == Table {
				what = "table"
			}
			v.file.Add(f.KeySpan(), s.hint(name, path, known), "unknown %s %s in %s", what, quoteName(name), s.header(path))
			continue
		}
		if _, ok := s.Table(child); !ok {
			continue
		}
		if f.Kind() == Table {
			s.unknown(f, child)
		}
		for _, item := range f.Items() {
			if item.Kind() == Table {
				s.unknown(item, child)
			}
		}
	}
}

// hint says what was meant: the nearest key of the table, else the table that has the key.
func (s Schema) hint(name, path string, known []string) string {
	if t, _ := s.Table(path); t.Gone[name] != "" {
		return t.Gone[name]
	}
	near := Nearest(name, known)
	if near != "" && fold(near) == fold(name) {
		return "write " + near + ", keys are in small letters with _ between the words"
	}
	var homes []string
	for _, t := range s {
		for _, k := range t.Keys {
			if k.Name == name && t.Path != path {
				homes = append(homes, s.header(t.Path))
			}
		}
		if parent, last := cutPath(t.Path); last == name && parent != path {
			homes = append(homes, "as "+s.header(t.Path))
		}
	}
	switch {
	case near != "":
		return "the nearest known key is " + near
	case len(homes) == 1 && strings.HasPrefix(homes[0], "as "):
		return "write " + homes[0][len("as "):] + " in a line of its own, with its keys below"
	case len(homes) > 0:
		return name + " stands in " + strings.TrimPrefix(strings.Join(homes, " or "), "as ")
	case len(known) == 0:
		return "leave it out"
	}
	slices.Sort(known) // what may be a value or a table is in it twice
	return "known are " + strings.Join(slices.Compact(known), ", ")
}

// quoteName prints a key as it would be written: bare where it can be.
func quoteName(name string) string {
	for _, r := range name {
		if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '_' || r == '-') {
			return `"` + name + `"`
		}
	}
	if name == "" {
		return `""`
	}
	return name
}
