package source

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// stray is what was typed as elsewhere: where in its line, what is wrong, and what to type.
type stray struct {
	at            Span
	message, mend string
}

// muddle is one way in which lines go wrong that TOML does not read: what such a line looks like, and what is said of it.
type muddle struct {
	like *regexp.Regexp
	say  func(line string, m []int) *stray
}

// muddles are tried in their order.
var muddles = []muddle{
	{regexp.MustCompile(`^\s*[\w.-]+\s*=\s*(?:"[^"]*"|'[^']*'|[-+.\d]+|true|false)[\s,;]\s*([\w-]+\s*=\s*[^#]*?)\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[2], m[3]}, "two keys stand in one line", "write " + line[m[2]:m[3]] + " in a line of its own"}
	}},
	{regexp.MustCompile(`^\s*([A-Za-z]\w*(?:[ \t]+[A-Za-z]\w*)+)\s*=`), func(line string, m []int) *stray {
		key := line[m[2]:m[3]]
		return &stray{Span{m[2], m[3]}, "a key has no blanks in it", "write " + strings.Join(strings.Fields(key), "_")}
	}},
	{regexp.MustCompile(`^\s*([\w-]+)("[^"]*"|'[^']*')\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[2], m[5]}, "the line has no equals sign", "write " + line[m[2]:m[3]] + " = " + line[m[4]:m[5]]}
	}},
	{regexp.MustCompile(`^\s*(\[\[?)\s*([\w.-]+(?:[ \t]+[\w.-]+)+)\s*(\]\]?)`), func(line string, m []int) *stray {
		name := strings.Join(strings.Fields(line[m[4]:m[5]]), "_")
		return &stray{Span{m[4], m[5]}, "the name of a table has no blanks in it", "write " + line[m[2]:m[3]] + name + line[m[6]:m[7]]}
	}},
	{regexp.MustCompile(`^\s*([({<]{1,2})\s*([\w.]+)\s*[)}>]{1,2}\s*(?:#.*)?$`), func(line string, m []int) *stray {
		n := m[3] - m[2]
		return &stray{Span{m[2], len(strings.TrimRight(line, " \t"))}, "the name of a table stands in square brackets",
			"write " + strings.Repeat("[", n) + line[m[4]:m[5]] + strings.Repeat("]", n)}
	}},
	{regexp.MustCompile(`^\s*([\w.]+)\s*:\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[2], m[3]}, "the name of a table stands in square brackets", "write [" + line[m[2]:m[3]] + "]"}
	}},
	{regexp.MustCompile(`^\s*[\w.-]+\s*=\s*('[^#"]*'[^#"]+?)\s*(?:#.*)?$`), func(line string, m []int) *stray {
		typed := line[m[2]:m[3]]
		inner := strings.TrimPrefix(typed, "'")
		if strings.Count(typed, "'")%2 == 1 {
			inner = strings.TrimSuffix(inner, "'")
		}
		return &stray{Span{m[2], m[3]}, "a text in single quotes ends at the mark for feet", `write "` + inner + `", in double quotes`}
	}},
	{regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*("[^"]*\\[^"]*")`), func(line string, m []int) *stray {
		typed := line[m[4]:m[5]]
		return &stray{Span{m[4], m[5]}, `the stroke \ has no place in a text`, "write " + strings.ReplaceAll(typed, `\`, "/")}
	}},
	{regexp.MustCompile(`^\s*[\w.-]+\s*=\s*([-+]?)(0+)(\d+)\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[2], m[7]}, "a number does not begin with a nought", "write " + line[m[2]:m[3]] + line[m[6]:m[7]]}
	}},
	{regexp.MustCompile(`^\s*[\w.-]+\s*=\s*(\d[\d_.]*)\s*(?:#.*)?$`), func(line string, m []int) *stray {
		if typed := line[m[2]:m[3]]; strings.Contains(typed, "_") {
			return &stray{Span{m[2], m[3]}, typed + " is no number", "write " + strings.ReplaceAll(typed, "_", "")}
		}
		return nil
	}},
	{regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*(\d{4}-\d{1,2})\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[4], m[5]}, line[m[4]:m[5]] + " is no date", dateMend(line[m[2]:m[3]], line[m[4]:m[5]])}
	}},
	{regexp.MustCompile(`^\s*[\w.-]+\s*=\s*(\d+\s*[-–]\s*\d+(?:\s*,\s*\d+(?:\s*[-–]\s*\d+)?)*)\s*(?:#.*)?$`), func(line string, m []int) *stray {
		return &stray{Span{m[2], m[3]}, "numbers from one to another stand in quotes", `write "` + line[m[2]:m[3]] + `"`}
	}},
}

// strayed finds what went wrong where the library's words would not say what to type; nil where they do.
func strayed(body string, at int, fault string) *stray {
	for _, f := range []*stray{early(body, fault), tripled(body, fault), unclosed(body, at, fault)} {
		if f != nil {
			return f
		}
	}
	if at > 0 && at == len(body) || at < len(body) && body[at] == '\n' {
		at = max(0, at-1)
	}
	start := strings.LastIndexByte(body[:at], '\n') + 1
	f := muddled(strings.TrimSuffix(firstLine(body[start:]), "\r"), at-start)
	if f != nil {
		f.at = Span{start + f.at.Start, start + f.at.End}
	}
	return f
}

// muddled finds how the line of a fault goes wrong, nil where it is in none of these ways. at is the place of the fault in it.
func muddled(line string, at int) *stray {
	if at < len(line) {
		// a no-break space, or what a program for letters puts in its place, is not seen
		if r, n := utf8.DecodeRuneInString(line[at:]); r > 127 && (unicode.IsSpace(r) || unicode.Is(unicode.Cf, r)) {
			return &stray{Span{at, at + n}, fmt.Sprintf("a blank stands here that is none (U+%04X)", r), "delete it, and type a blank if there is to be one"}
		}
	}
	for _, one := range muddles {
		if m := one.like.FindStringSubmatchIndex(line); m != nil {
			if f := one.say(line, m); f != nil {
				return f
			}
		}
	}
	return nil
}

// note is what to type where a value is lost in a note: behind an equals sign a # stands first.
func note(key, after string) string {
	text := strings.TrimSpace(strings.TrimPrefix(after, "#"))
	switch {
	case strings.HasPrefix(text, `"`):
		return "write " + key + " = " + text + ", before the # that begins a note"
	case strings.HasPrefix(after, "#") && text != "" && after == "#"+text && !strings.Contains(text, " "):
		return "write " + key + " = " + quoteText(after) + ", in double quotes: without them # begins a note"
	}
	return "write it after the equals sign, or take the line out"
}

// begun is where a list or a table in braces begins, at the latest.
var begun = regexp.MustCompile(`(?m)^[ \t]*[\w.-]+[ \t]*=[ \t]*([\[{])`)

// nextLine is how a line begins that is no part of a list.
var nextLine = regexp.MustCompile(`^\s*(\[+[A-Za-z]|[\w.-]+\s*=)`)

// unclosed says of a list, or of a table in braces, whether its end is lost or a comma in it. nil where the fault is another one.
func unclosed(body string, at int, message string) *stray {
	if !strings.Contains(message, "array terminator") && !strings.Contains(message, "inline table terminator") {
		return nil
	}
	all := begun.FindAllStringSubmatchIndex(body[:at], -1)
	if all == nil {
		return nil
	}
	open := Span{all[len(all)-1][2], all[len(all)-1][3]}
	line := body[strings.LastIndexByte(body[:at], '\n')+1:]
	if strings.TrimSpace(body[at:]) == "" || strings.Contains(body[open.Start:at], "\n") && nextLine.MatchString(line) {
		what, end := "list", "]"
		if body[open.Start] == '{' {
			what, end = "table in braces", "}"
		}
		return &stray{open, "the " + what + " that begins here has no end", "write " + end + " behind its last value"}
	}
	return &stray{Span{at, at + 1}, "a comma is missing", "put a comma between the two"}
}

// tripled is a text that three quotes begin and nothing ends; nil where the fault is another one.
func tripled(body, message string) *stray {
	for _, three := range []string{`"""`, `'''`} {
		if at := strings.LastIndex(body, three); at >= 0 && strings.Contains(message, "expected '"+three+"'") {
			return &stray{Span{at, at + 3}, "three quotes begin a text of several lines, and it has no end",
				"write one quote before it and one behind it: " + quoteText(strings.Trim(firstLine(body[at:]), three[:1]))}
		}
	}
	return nil
}

// early is a table inside one of several, [[wall.opening]], before the first of them; nil where the fault is another one.
func early(body string, fault string) *stray {
	name := lateList.FindStringSubmatch(fault)
	if name == nil {
		return nil
	}
	quoted := regexp.QuoteMeta(name[1])
	if regexp.MustCompile(`(?m)^\s*\[` + quoted + `\]`).MatchString(body) {
		return nil
	}
	m := regexp.MustCompile(`(?m)^\s*(\[\[?` + quoted + `\.[\w.]+\]\]?)`).FindStringSubmatchIndex(body)
	if m == nil {
		return nil
	}
	return &stray{Span{m[2], m[3]}, body[m[2]:m[3]] + " stands before the first [[" + name[1] + "]]", "put it, and its keys, under the [[" + name[1] + "]] that it belongs to"}
}

// lateList is what the library says of a list that a table stands for already.
var lateList = regexp.MustCompile(`[kK]ey '([\w.]+)'.*cannot be used as an array`)
