package source

import (
	"regexp"
	"strings"
)

// Lines that are typed as people write elsewhere, and that TOML does not read.
var (
	dateLine  = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*(\d{1,4}[/.]\d{1,2}[/.]\d{1,4})\s*(#.*)?$`)
	commaLine = regexp.MustCompile(`^\s*[\w.-]+\s*=\s*(-?\d+),(\d+)\s*(#.*)?$`)
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
