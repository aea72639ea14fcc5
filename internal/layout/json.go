package layout

import (
	"bytes"
	"encoding/json"
	"strings"
)

// JSON writes the plan in the format flitchlay-layout/1.
//
// Units: millimetres as decimals, exact to 1/8 micrometre; areas in square metres; heights above the room's level;
// where there is nothing to say a field is null.
func (p *Plan) JSON() []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(p.kept()); err != nil {
		panic(err) // every number's own text is a number, so a plan always encodes
	}
	return spread(bytes.TrimRight(b.Bytes(), "\n"))
}

// lines is how deep an item still gets a line of its own; what is deeper stands side by side.
const lines = 4

// spread sets compact JSON for a person's reading: an item a line down to a depth, and a blank after each comma below
// that, but for the comma in a point.
func spread(text []byte) []byte {
	var out bytes.Buffer
	var open []byte // brackets around here; '.' for that of a point
	fresh := false  // a bracket has just been opened
	line := func() {
		if len(open) > 0 && len(open) <= lines {
			out.WriteByte('\n')
			out.WriteString(strings.Repeat("  ", len(open)))
		}
	}
	for i := 0; i < len(text); i++ {
		c := text[i]
		if fresh && c != '}' && c != ']' {
			line()
		}
		fresh = false
		switch c {
		case '"':
			end := i + 1
			for text[end] != '"' {
				if text[end] == '\\' {
					end++
				}
				end++
			}
			out.Write(text[i : end+1])
			i = end
		case '{', '[':
			out.WriteByte(c)
			if c == '[' && len(open) > 0 && open[len(open)-1] == '[' && number(text[i+1]) {
				c = '.'
			}
			open = append(open, c)
			fresh = true
		case '}', ']':
			out.WriteByte(c)
			open = open[:len(open)-1]
		case ',':
			out.WriteByte(c)
			if len(open) > lines && open[len(open)-1] != '.' {
				out.WriteByte(' ')
			}
			line()
		case ':':
			out.WriteString(": ")
		default:
			out.WriteByte(c)
		}
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// number reports whether a number begins with c.
func number(c byte) bool { return c == '-' || '0' <= c && c <= '9' }
