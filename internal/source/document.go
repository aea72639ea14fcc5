package source

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// Paths are the paths of all tables.
func (s Schema) Paths() []string {
	var list []string
	for _, t := range s {
		if t.Path != "" {
			list = append(list, t.Path)
		}
	}
	return list
}

// Header is how a table is opened in a file.
func (t KeyTable) Header() string { return Schema{t}.header(t.Path) }

// WriteText documents tables for a terminal; more says what else there is to say of a key, "" for nothing.
func (s Schema) WriteText(to io.Writer, more func(table, key string) string) {
	for i, t := range s {
		if t.Path == "" {
			continue
		}
		if i > 0 {
			fmt.Fprintln(to)
		}
		fmt.Fprintf(to, "%s  %s\n", t.Header(), t.Doc)
		for _, k := range t.Keys {
			fmt.Fprintf(to, "\n  %s\n", k.Name)
			for _, line := range k.lines(more(t.Path, k.Name)) {
				fmt.Fprintf(to, "      %s\n", strings.ReplaceAll(fill(line, 72), "\n", "\n      "))
			}
		}
	}
}

// lines say what there is to know of a key.
func (k Key) lines(more string) []string {
	takes := k.Takes()
	switch {
	case k.Required:
		takes += "; required"
	case k.Default != "":
		takes += "; without it " + k.Default
	}
	list := []string{k.Doc, takes}
	if more != "" {
		list = append(list, more)
	}
	return append(list, "as in: "+k.Example())
}

// fill breaks a line at blanks.
func fill(text string, width int) string {
	var b strings.Builder
	at := 0
	for _, word := range strings.Fields(text) {
		if n := len([]rune(word)); at > 0 && at+1+n > width {
			b.WriteByte('\n')
			at = 0
		} else if at > 0 {
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += len([]rune(word))
	}
	return b.String()
}

// WriteMarkdown documents tables as Markdown.
func (s Schema) WriteMarkdown(to io.Writer, more func(table, key string) string) {
	cell := strings.NewReplacer("|", "\\|")
	for _, t := range s {
		if t.Path == "" {
			continue
		}
		fmt.Fprintf(to, "\n## `%s`\n\n%s.\n\n| key | what it is | takes | without it | as in |\n|---|---|---|---|---|\n", t.Header(), capital(t.Doc))
		for _, k := range t.Keys {
			without := k.Default
			if k.Required {
				without = "it is required"
			}
			doc := k.Doc
			if m := more(t.Path, k.Name); m != "" {
				doc += "; " + m
			}
			fmt.Fprintf(to, "| `%s` | %s | %s | %s | `%s` |\n", k.Name, cell.Replace(doc), cell.Replace(k.Takes()), cell.Replace(without), cell.Replace(k.Example()))
		}
	}
}

func capital(text string) string {
	text = strings.TrimSuffix(text, ".")
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// Complete puts the keys that a file does not have into it as comments, each once: those of a table that it has after the table's
// own, those of others at the end.
func (s Schema) Complete(text string) string {
	root, err := Parse("", []byte(text))
	if err != nil {
		panic(err) // only starters are completed, and they can be read
	}
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	var rest []string
	for _, t := range s {
		if t.Path == "" {
			continue
		}
		has, at := s.present(root, t.Path), -1
		for i, line := range lines {
			if head, _, _ := strings.Cut(line, "#"); strings.TrimSpace(head) == t.Header() {
				at = i
				break
			}
		}
		var add []string
		for _, k := range t.Keys {
			if !slices.Contains(has, k.Name) {
				add = append(add, fmt.Sprintf("# %-36s # %s", k.Example(), k.Doc))
			}
		}
		switch {
		case len(add) == 0 || at < 0 && len(has) > 0: // it stands as an inline table
		case at < 0:
			rest = append(append(rest, "", fmt.Sprintf("# %-36s # %s", t.Header(), t.Doc)), add...)
		default:
			end := at + 1
			for end < len(lines) && !strings.HasPrefix(lines[end], "[") {
				end++
			}
			for lines[end-1] == "" || end < len(lines) && strings.HasPrefix(lines[end-1], "#") {
				end--
			}
			lines = slices.Insert(lines, end, add...)
		}
	}
	if len(rest) > 0 {
		rest = append([]string{"", "# What follows is there where you need it: take the # away, at the table's head too."}, rest...)
	}
	return strings.Join(append(lines, rest...), "\n") + "\n"
}

// present are the keys that a file has in any table of a path.
func (s Schema) present(v Value, path string) (names []string) {
	list := []Value{v}
	for _, step := range strings.Split(path, ".") {
		var next []Value
		for _, one := range list {
			f := one.Get(step)
			if f.Kind() == Array {
				next = append(next, f.Items()...)
			} else if f.Given() {
				next = append(next, f)
			}
		}
		list = next
	}
	for _, one := range list {
		for _, f := range one.Fields() {
			names = append(names, f.Name())
		}
	}
	return names
}
