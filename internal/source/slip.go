package source

import (
	"regexp"
	"strings"
)

// Lines that are typed as people write elsewhere, and that TOML does not read.
var (
	dateLine  = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*(\d{1,4}[/.]\d{1,2}[/.]\d{1,4})\s*(#.*)?$`)
	commaLine = regexp.MustCompile(`^\s*[\w.-]+\s*=\s*(-?\d+),(\d+)\s*(#.*)?$`)
	loneWord  = regexp.MustCompile(`^\s*[\w.-]+\s*=\s*([\pL][^"'#\[\]{}]*?)\s*(#.*)?$`)
	dayLine   = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*(\d{4}-\d{1,2}-\d{1,2})\s*(#.*)?$`)
	emptyLine = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*(#.*)?$`)
	openHead  = regexp.MustCompile(`^\s*(\[\[?)([\w. -]+)\]?\s*(#.*)?$`)
	numbered  = regexp.MustCompile(`^\s*[\w.-]+\s*=\s*((?:"[^"]*"|[-\d.]+|true|false)\s*)([;,%][^#]*?)\s*(#.*)?$`)
	noEquals  = regexp.MustCompile(`^\s*([\pL/][\w.-]*)(?:\s*:\s*|\s+|/)([^=#\s][^=#]*)$`)
	curlyLine = regexp.MustCompile(`[“”„‘’‚«»]`)
)

// slip finds in the line of a fault what was typed as elsewhere: a date with strokes, a decimal comma, quotes that a word processor
// has bent.
func slip(body string, at int) (where Span, message, mend string, ok bool) {
	if at > 0 && at == len(body) || at < len(body) && body[at] == '\n' {
		at = max(0, at-1)
	}
	start := strings.LastIndexByte(body[:at], '\n') + 1
	line, _, _ := strings.Cut(body[start:], "\n")
	line = strings.TrimSuffix(line, "\r")
	if m := dateLine.FindStringSubmatchIndex(line); m != nil {
		typed := line[m[4]:m[5]]
		return Span{start + m[4], start + m[5]}, typed + " is no date", dateMend(line[m[2]:m[3]], typed), true
	}
	if m := commaLine.FindStringSubmatchIndex(line); m != nil {
		whole, part := line[m[2]:m[3]], line[m[4]:m[5]]
		mend = "write " + whole + "." + part + ", with a point"
		if len(part) == 3 {
			mend = "write " + whole + "." + part + " with a point for the part after it, or " + whole + part + " for a whole number"
		}
		return Span{start + m[2], start + m[5]}, "a number has no comma", mend, true
	}
	if m := dayLine.FindStringSubmatchIndex(line); m != nil {
		typed := line[m[4]:m[5]]
		mend = dateMend(line[m[2]:m[3]], typed)
		return Span{start + m[4], start + m[5]}, typed + " is no day", mend, true
	}
	if m := loneWord.FindStringSubmatchIndex(line); m != nil {
		word := line[m[2]:m[3]]
		message, mend = "a word stands in quotes", "write "+quoteText(word)+", in double quotes"
		if plain, ok := map[string]string{"true": "true", "yes": "true", "false": "false", "no": "false"}[strings.ToLower(word)]; ok {
			message, mend = "what is so or not so is true or false, in small letters", "write "+plain
		}
		return Span{start + m[2], start + m[3]}, message, mend, true
	}
	if m := emptyLine.FindStringSubmatchIndex(line); m != nil {
		name := line[m[2]:m[3]]
		return Span{start + m[2], start + m[3]}, name + " has no value", note(name, strings.TrimSpace(line[strings.Index(line, "=")+1:])), true
	}
	if m := openHead.FindStringSubmatchIndex(line); m != nil && strings.Count(line, "[") != strings.Count(line, "]") {
		head, name := line[m[2]:m[3]], strings.TrimSpace(line[m[4]:m[5]])
		return Span{start + m[2], start + m[5]}, "a bracket is missing", "write " + head + name + strings.Repeat("]", len(head)), true
	}
	if m := numbered.FindStringSubmatchIndex(line); m != nil {
		return Span{start + m[4], start + m[5]}, quoteText(line[m[4]:m[5]]) + " stands after the value", "take it out; a note begins with #", true
	}
	if m := noEquals.FindStringSubmatchIndex(line); m != nil {
		return Span{start + m[2], start + m[5]}, "the line has no equals sign", "write key = value; a note begins with #", true
	}
	key, value, found := strings.Cut(line, "=")
	value, _, _ = strings.Cut(value, "#")
	typed := strings.TrimSpace(value)
	if m := curlyLine.FindStringIndex(value); found && m != nil && !strings.HasPrefix(typed, `"`) {
		from := start + len(key) + 1 + strings.Index(value, typed)
		straight := strings.Trim(curlyLine.ReplaceAllStringFunc(typed, func(q string) string {
			if strings.ContainsAny(q, "‘’‚") {
				return "'"
			}
			return `"`
		}), `"'`)
		return Span{from, from + len(typed)}, "quotes are straight, not curly", `write "` + strings.TrimRight(straight, `"`) + `"`, true
	}
	return Span{}, "", "", false
}
