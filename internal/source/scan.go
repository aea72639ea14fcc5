package source

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// part is one name of a dotted key.
type part struct {
	name string
	at   Span
}

// scanner finds where keys and values stand in a text that the library has read without an error; so it looks for no
// mistakes of its own.
type scanner struct {
	body  string
	at    int
	twice []part // keys that stand twice where the library looks over it: a.b = 1 and then a = 2
}

// scan builds the tree of places of a whole text, from an offset on. It also gives the keys that stand twice.
func scan(body string, from int) (*node, []part) {
	s := &scanner{body: body, at: from}
	root := &node{kind: Table, key: Span{from, from}, value: Span{from, from}}
	table := root
	for s.skip(); s.at < len(s.body); s.skip() {
		if s.body[s.at] == '[' {
			table = s.header(root)
		} else {
			s.pair(table)
		}
	}
	return root, s.twice
}

// blank passes over spaces and tabs.
func (s *scanner) blank() {
	for s.at < len(s.body) && (s.body[s.at] == ' ' || s.body[s.at] == '\t') {
		s.at++
	}
}

// skip passes over white space, ends of lines and comments.
func (s *scanner) skip() {
	for s.at < len(s.body) {
		switch s.body[s.at] {
		case ' ', '\t', '\r', '\n':
			s.at++
		case '#':
			if end := strings.IndexByte(s.body[s.at:], '\n'); end >= 0 {
				s.at += end
			} else {
				s.at = len(s.body)
			}
		default:
			return
		}
	}
}

// header reads [a.b] or [[a.b]] and gives the table that it opens.
func (s *scanner) header(root *node) *node {
	s.at++
	many := s.at < len(s.body) && s.body[s.at] == '['
	if many {
		s.at++
	}
	path := s.key(']')
	for n := 0; s.at < len(s.body) && s.body[s.at] == ']' && n < 2; n++ {
		s.at++
	}
	table := root
	for _, p := range path[:len(path)-1] {
		table = table.child(p).last()
	}
	p := path[len(path)-1]
	if !many {
		table = table.child(p).last()
		table.key, table.value = p.at, p.at
		return table
	}
	array := table.child(p)
	array.kind = Array
	item := &node{kind: Table, key: p.at, value: p.at}
	array.items = append(array.items, item)
	return item
}

// pair reads key = value into a table.
func (s *scanner) pair(table *node) {
	path := s.key('=')
	if s.at < len(s.body) {
		s.at++ // the equals sign
	}
	s.blank()
	for _, p := range path[:len(path)-1] {
		if table = table.child(p); table.kind != Table {
			s.twice = append(s.twice, p)
		}
	}
	p := path[len(path)-1]
	if table.fields[p.name] != nil {
		s.twice = append(s.twice, p)
	}
	value := s.valueNode()
	value.key = p.at
	table.set(p.name, value)
}

// key reads a dotted key up to the byte that ends it.
func (s *scanner) key(end byte) []part {
	var path []part
	for s.at < len(s.body) && s.body[s.at] != end {
		s.blank()
		if s.at < len(s.body) && s.body[s.at] == '.' {
			s.at++
			continue
		}
		start := s.at
		var name string
		if s.at < len(s.body) && (s.body[s.at] == '"' || s.body[s.at] == '\'') {
			name = s.quoted()
		} else {
			for s.at < len(s.body) && !strings.ContainsRune(" \t.=]\r\n", rune(s.body[s.at])) {
				s.at++
			}
			name = s.body[start:s.at]
		}
		if s.at == start {
			break
		}
		path = append(path, part{name, Span{start, s.at}})
		s.blank()
	}
	if len(path) == 0 {
		s.at = min(s.at+1, len(s.body))
		return []part{{"", Span{s.at, s.at}}}
	}
	return path
}

// valueNode reads one value.
func (s *scanner) valueNode() *node {
	start := s.at
	n := &node{}
	if s.at < len(s.body) {
		switch s.body[s.at] {
		case '"', '\'':
			n.kind = String
			s.quoted()
		case '[':
			n.kind = Array
			s.at++
			s.list(']', func() { n.items = append(n.items, s.valueNode()) })
		case '{':
			n.kind = Table
			s.at++
			s.list('}', func() { s.pair(n) })
		default:
			for s.at < len(s.body) && !strings.ContainsRune(",]}#\n", rune(s.body[s.at])) {
				s.at++
			}
			s.at = start + len(strings.TrimRight(s.body[start:s.at], " \t\r"))
		}
	}
	n.value = Span{start, s.at}
	if n.key == (Span{}) {
		n.key = n.value
	}
	return n
}

// list reads what stands between brackets, parted by commas.
func (s *scanner) list(end byte, one func()) {
	for {
		s.skip()
		switch {
		case s.at >= len(s.body):
			return
		case s.body[s.at] == end:
			s.at++
			return
		case s.body[s.at] == ',':
			s.at++
		default:
			start := s.at
			one()
			if s.at == start {
				s.at++
			}
		}
	}
}

// quoted passes over a string of any of the four kinds; of one on one line it gives what the string says.
func (s *scanner) quoted() string {
	quote := s.body[s.at : s.at+1]
	rest := s.body[s.at:]
	if triple := strings.Repeat(quote, 3); strings.HasPrefix(rest, triple) {
		s.at += 3
		for s.at < len(s.body) && !strings.HasPrefix(s.body[s.at:], triple) {
			s.step(quote)
		}
		s.at = min(s.at+3, len(s.body))
		for n := 0; n < 2 && strings.HasPrefix(s.body[s.at:], quote); n++ {
			s.at++ // quotes that belong to the text, before the three that end it
		}
		return ""
	}
	s.at++
	start := s.at
	for s.at < len(s.body) && s.body[s.at] != quote[0] {
		s.step(quote)
	}
	text := s.body[start:min(s.at, len(s.body))]
	s.at = min(s.at+1, len(s.body))
	if quote == `"` {
		return unescape(text)
	}
	return text
}

// step passes over one byte of a string, or over a backslash and what it escapes.
func (s *scanner) step(quote string) {
	if quote == `"` && s.body[s.at] == '\\' {
		s.at++
	}
	s.at = min(s.at+1, len(s.body))
}

// escapes are the short ones of TOML 1.1.
var escapes = map[byte]string{'b': "\b", 't': "\t", 'n': "\n", 'f': "\f", 'r': "\r", 'e': "\x1b", '"': "\"", '\\': "\\"}

// digits of the numeric escapes.
var digits = map[byte]int{'x': 2, 'u': 4, 'U': 8}

func unescape(text string) string {
	if !strings.Contains(text, `\`) {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		if text[i] != '\\' || i+1 == len(text) {
			b.WriteByte(text[i])
			continue
		}
		i++
		if n := digits[text[i]]; n > 0 && i+n < len(text) {
			code, err := strconv.ParseUint(text[i+1:i+1+n], 16, 32)
			if err != nil || code > utf8.MaxRune {
				code = utf8.RuneError
			}
			b.WriteRune(rune(code))
			i += n
		} else {
			b.WriteString(escapes[text[i]])
		}
	}
	return b.String()
}
