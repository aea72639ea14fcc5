package source

import (
	"errors"
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// Largest is the size of the largest file that is read, in bytes.
const Largest = 1 << 20

// Parse reads a whole TOML file and gives its top table.
//
// Errors: a *Mistakes with the first fault of the TOML, and with every length that lacks its quotes.
func Parse(name string, body []byte) (Value, error) { return ParseText(NewText(name, body)) }

// ParseText is Parse of a text that was put together.
//
// Errors: as Parse.
func ParseText(text *Text) (Value, error) {
	found := &Mistakes{Text: text}
	if len(text.body) > Largest {
		found.Add(Span{}, "give the name of a room file or of a page template", "a file of more than 1 MB is not read")
		return Value{}, found
	}
	if at, ok := wrongByte(text.body); ok {
		found.Add(Span{at, at + 1}, "save the file as UTF-8", "the file is not in UTF-8")
		return Value{}, found
	}
	if at, ok := manyParts(text.body); ok {
		found.Add(at, "write short keys", "a key of more than 50 parts is not read")
		return Value{}, found
	}
	from := text.lines[0]
	data, ok := decode(text.body[from:], from, found)
	if !ok {
		return Value{}, found
	}
	root, twice := scan(text.body, from)
	for _, p := range twice {
		found.Add(p.at, keepOne, "key %s stands twice", quoteName(p.name))
	}
	if len(twice) > 0 {
		return Value{}, found
	}
	lost := attach(root, data)
	return Value{file: &file{Mistakes: found, lost: lost}, node: root}, nil
}

// wrongByte finds the first byte that is no UTF-8; a file in UTF-16 begins with one.
func wrongByte(body string) (int, bool) {
	for i, r := range body {
		if r == utf8.RuneError && !strings.HasPrefix(body[i:], string(utf8.RuneError)) {
			return i, true
		}
	}
	return 0, false
}

// mostParts is how many parts a dotted key can have: the library's work grows with their square and more.
const mostParts = 50

// manyParts finds a dotted key of more parts.
func manyParts(body string) (Span, bool) {
	start, parts := 0, 0
	for i := 0; i < len(body); {
		name := i
		for i < len(body) && inKey(body[i]) {
			i++
		}
		if i == name {
			i, parts = i+1, 0
			continue
		}
		if parts == 0 {
			start = name
		}
		for i < len(body) && (body[i] == ' ' || body[i] == '\t') {
			i++
		}
		if i == len(body) || body[i] != '.' {
			parts = 0
			continue
		}
		if parts++; parts >= mostParts {
			return Span{start, i}, true
		}
		for i++; i < len(body) && (body[i] == ' ' || body[i] == '\t'); i++ {
		}
	}
	return Span{}, false
}

// inKey reports whether a byte can be part of a key: of a bare one, or a quote round one.
func inKey(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-' || c == '"' || c == '\''
}

// decode hands the text to the library. A length without its quotes is noted, taken out of the text, and the rest is
// read on, so that all of them are reported at once; any other fault ends the reading.
func decode(body string, from int, found *Mistakes) (map[string]any, bool) {
	for {
		var data map[string]any
		_, err := toml.Decode(body, &data)
		if err == nil {
			return data, len(found.list) == 0
		}
		var fault toml.ParseError
		if !errors.As(err, &fault) {
			found.Add(Span{from, from}, "", "%s", strings.TrimPrefix(err.Error(), "toml: "))
			return nil, false
		}
		start := max(0, min(fault.Position.Start, len(body)))
		again := strings.Contains(fault.Message, "already been defined")
		if f := strayed(body, start, fault.Message); f != nil && !again {
			found.Add(Span{from + f.at.Start, from + f.at.End}, f.mend, "%s", f.message)
			return nil, false
		}
		if at, message, mend, ok := slip(body, start); ok && !again {
			found.Add(Span{from + at.Start, from + at.End}, mend, "%s", message)
			return nil, false
		}
		if at, mend, ok := unquoted(body, start); ok && !again && len(found.list) < most {
			found.Add(Span{from + at.Start, from + at.End}, mend, "a length in feet and inches stands in quotes")
			body = body[:at.Start] + "0" + strings.Repeat(" ", at.End-at.Start-1) + body[at.End:]
			continue
		}
		if len(found.list) > 0 && !again {
			return nil, false // what follows may come from the mistakes above
		}
		if strings.Contains(fault.Message, "control characters") && start+1 < len(body) && body[start] >= ' ' {
			start++ // the library stands before the character
		}
		end := max(start, min(start+fault.Position.Len, len(body)))
		message, mend := plain(fault)
		found.Add(Span{from + start, from + end}, mend, "%s", message)
		return nil, false
	}
}

// most is how many lengths without quotes are noted at once.
const most = 100

// assignment is a line with a value that can be read as a length in feet and inches: it starts with a figure, and a
// mark, a fraction or a unit follows; or it is such a length whose closing inch mark ends the quotes too early.
var assignment = regexp.MustCompile(`^(\s*[\w."' -]+?\s*=\s*)("?-?[0-9⅛¼⅜½⅝¾⅞][^#\[\]{},]*?)\s*(#.*)?$`)

// figures is what such a length is made of.
var figures = regexp.MustCompile(`^[-0-9 ./'"′″’”⅛¼⅜½⅝¾⅞a-z]*$`)

// unquoted finds a length without quotes in the line that a fault stands in or ends.
func unquoted(body string, at int) (Span, string, bool) {
	if at > 0 && at == len(body) || at < len(body) && body[at] == '\n' {
		at = max(0, at-1)
	}
	start := strings.LastIndexByte(body[:at], '\n') + 1
	line, _, _ := strings.Cut(body[start:], "\n")
	line = strings.TrimSuffix(line, "\r")
	m := assignment.FindStringSubmatchIndex(line)
	if m == nil {
		return Span{}, "", false
	}
	value := line[m[4]:m[5]]
	if !figures.MatchString(value) || !strings.ContainsAny(value, `'"′″’”/⅛¼⅜½⅝¾⅞ abcdefghijklmnopqrstuvwxyz`) {
		return Span{}, "", false
	}
	inner := strings.Trim(value, `" `)
	if inner == "" || value == `"`+inner+`"` || strings.Contains(inner, `"`) && !strings.HasSuffix(value, `"`) {
		return Span{}, "", false
	}
	mend := `write "` + inner + `"`
	if strings.HasSuffix(value, `"`) {
		mend += ": the mark for inches at the end can be left out"
	}
	return Span{start + m[4], start + m[5]}, mend, true
}

const keepOne = "keep one of the two; a further wall, opening or box starts with its own [[...]] line"

// twice is what the library says of a key that stands twice.
var twice = regexp.MustCompile(`^Key '(.*)' has already been defined$`)

// plain says a fault of the TOML in the words of these messages, where the library's are those of a program.
func plain(fault toml.ParseError) (message, mend string) {
	m := strings.TrimSuffix(fault.Message, ".")
	switch {
	case twice.MatchString(m):
		return twice.ReplaceAllString(m, "key $1 stands twice"), keepOne
	case strings.Contains(m, "cannot be used as an array"):
		return "one list of tables stands in single brackets and in double ones", "write double brackets before each: [[wall]]"
	case strings.Contains(m, "invalid UTF-8"), strings.Contains(m, "NULL bytes"):
		return m, "save the file as UTF-8"
	case strings.Contains(m, "control characters"):
		return m, "type the line anew: it holds a character that cannot be seen"
	case strings.Contains(m, "strings cannot contain newlines"):
		return m, "close the text with the quote that it began with"
	case strings.Contains(m, "expected value but found"):
		return m, `write the value after the equals sign: a text in double quotes, a number, true or false`
	case strings.Contains(m, "expected '.' or '='"), strings.Contains(m, "expected key separator"):
		return m, "write key = value"
	case strings.Contains(m, "invalid character in keys"), strings.Contains(m, "bare keys cannot contain"):
		return m, "write keys in small letters with _ between the words"
	}
	return m, "write one key = value to a line, texts and lengths in double quotes"
}
