package paper

import "strings"

// Fields are the names that a line of a title block may hold in braces, with what each stands for.
var Fields = []struct{ Name, Doc string }{
	{"title", "title of the project"},
	{"number", "number of the project"},
	{"room", "number of the room"},
	{"place", "where the room is"},
	{"for", "who reviews the drawings"},
	{"by", "who hangs the work"},
	{"section", "specification section"},
	{"tag", "finish tag"},
	{"submittal", "number of the submittal, with the suffix of one handed in again"},
	{"document", "type of the document"},
	{"contractor", "who builds the building"},
	{"drawn", "date drawn"},
	{"drawn by", "who drew"},
	{"checked by", "who checked"},
	{"approved by", "who approved for issue"},
	{"measured", "date measured"},
	{"issue", "mark of the last revision"},
	{"issued", "date of the last revision, or the date drawn"},
	{"scale", "scale of the page, or as noted"},
	{"page", "count of the page"},
	{"pages", "how many pages the set has"},
	{"page title", "title of the page"},
	{"page number", "number of the page"},
	{"paper", "name of the paper"},
	{"species", "species, cut and match"},
}

// Gap is what stands between the parts of a line that | sets apart.
const Gap = "   "

// Fill puts values in place of the {fields} of a line. Of parts between |, one that holds fields and none of them has a
// value is left out.
func Fill(text string, values map[string]string) string {
	var parts []string
	for part := range strings.SplitSeq(text, "|") {
		filled, held, given := fill(part, values)
		if filled = strings.Join(strings.Fields(filled), " "); filled != "" && (given || !held) {
			parts = append(parts, filled)
		}
	}
	return strings.Join(parts, Gap)
}

// fill tells whether the part holds fields, and whether one of them has a value.
func fill(part string, values map[string]string) (filled string, held, given bool) {
	var b strings.Builder
	for {
		before, rest, open := strings.Cut(part, "{")
		name, after, closed := strings.Cut(rest, "}")
		if !open || !closed {
			b.WriteString(part)
			return b.String(), held, given
		}
		b.WriteString(before)
		b.WriteString(values[name])
		held, given = true, given || values[name] != ""
		part = after
	}
}

// unknown lists the names in braces that are no fields, and says whether the braces pair.
func unknown(text string) (names []string, paired bool) {
	for {
		before, rest, open := strings.Cut(text, "{")
		if strings.Contains(before, "}") {
			return names, false
		}
		if !open {
			return names, true
		}
		name, after, closed := strings.Cut(rest, "}")
		if !closed || strings.Contains(name, "{") {
			return names, false
		}
		if !isField(name) {
			names = append(names, name)
		}
		text = after
	}
}

func isField(name string) bool {
	for _, f := range Fields {
		if f.Name == name {
			return true
		}
	}
	return false
}

// fieldNames are all names of fields.
func fieldNames() []string {
	names := make([]string, len(Fields))
	for i, f := range Fields {
		names[i] = f.Name
	}
	return names
}
