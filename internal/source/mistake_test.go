package source

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// small is a schema to try the checks on.
var small = Schema{
	{Path: "veneer", Keys: []Key{{Name: "cut"}, {Name: "gross_width"}}},
	{Path: "wall", Many: true, Keys: []Key{{Name: "length"}, {Name: "height"}}},
	{Path: "wall.opening", Many: true, Keys: []Key{{Name: "width"}, {Name: "height"}}},
}

func parse(t *testing.T, text string) Value {
	v, err := Parse("room.toml", []byte(text))
	require.NoError(t, err)
	return v
}

func TestMistakesPrint(t *testing.T) {
	for _, c := range []struct {
		name, text string
		paths      []string // a mistake is noted under each, in this order
		want       string
	}{
		{"two on one line, noted from right to left", "a = { x = 1, y = 'two' }", []string{"a.y", "a.x"}, `room.toml:1:11: wrong
  a = { x = 1, y = 'two' }
            ^
  mend: mend it
room.toml:1:18: wrong
  a = { x = 1, y = 'two' }
                   ^^^^^
  mend: mend it`},
		{"a tab before the caret stays a tab", "\ta\t=\t12", []string{"a"}, "room.toml:1:6: wrong\n  \ta\t=\t12\n  \t \t \t^^\n  mend: mend it"},
		{"a caret counts characters", "a = { \"äöü½\" = 1, b = \"½″ × 3\" }", []string{"a.b"}, `room.toml:1:23: wrong
  a = { "äöü½" = 1, b = "½″ × 3" }
                        ^^^^^^^^
  mend: mend it`},
		{"a value over lines is marked on its first", "a = [\n  1,\n]\n", []string{"a"}, `room.toml:1:5: wrong
  a = [
      ^
  mend: mend it`},
		{"third wall, second opening, one mistake noted twice is printed once",
			"[[wall]]\n[[wall]]\n[[wall]]\n[[wall.opening]]\n[[wall.opening]]\r\nwidth = 'abc'\r\n", []string{"wall[2].opening[1].width", "wall[2].opening[1].width"}, `room.toml:6:9: wrong
  width = 'abc'
          ^^^^^
  mend: mend it`},
		{"an absent value is marked on the table that lacks it", "[[wall]]\n[[wall]]\n  [[wall.opening]]\n", []string{"wall[1].opening[0].width"}, `room.toml:3:10: wrong
    [[wall.opening]]
           ^^^^^^^
  mend: mend it`},
		{"a value of many dotted parts", "site.shop.humidity = 3", []string{"site.shop.humidity"}, `room.toml:1:22: wrong
  site.shop.humidity = 3
                       ^
  mend: mend it`},
		{"an empty file", "", []string{"title"}, "room.toml:1:1: wrong\n  mend: mend it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := parse(t, c.text)
			require.NoError(t, v.Mistakes().Err())
			for _, path := range c.paths {
				find(t, v, path).Mistake("mend it", "wrong")
			}
			require.EqualError(t, v.Mistakes().Err(), c.want)
		})
	}
}

func TestLongLinesAreCut(t *testing.T) {
	v := parse(t, "a = { s = '"+strings.Repeat("x", 300)+"', b = 77, t = '"+strings.Repeat("ü", 300)+"' }")
	find(t, v, "a.b").Mistake("", "wrong")
	find(t, v, "a.s").Mistake("", "wrong")
	lines := strings.Split(v.Mistakes().Error(), "\n")
	require.Len(t, lines, 6)
	for i, mark := range []string{"'xxx", "77"} {
		text, caret := []rune(lines[3*i+1]), lines[3*i+2]
		assert.LessOrEqual(t, len(text), len(lead)+window)
		at := strings.Index(caret, "^")
		assert.Equal(t, mark, string(text[at:at+len(mark)]), "the caret stands under what is wrong")
	}
	assert.Equal(t, 2, strings.Count(lines[5], "^"))
}

func TestMessagesCannotSteerATerminal(t *testing.T) {
	v := parse(t, `a = "\u001b[2J\u202e"`)
	v.Get("a").Mistake("", "%q and %s", v.Get("a").Text(""), v.Get("a").Text(""))
	assert.NotContains(t, v.Mistakes().Error(), "\x1b")
	assert.NotContains(t, v.Mistakes().Error(), "\u202e")
}

func TestUnknown(t *testing.T) {
	for _, c := range []struct{ name, text, message, mend string }{
		{"a slip", "[[wall]]\nlenght = 1", "unknown key lenght in [[wall]]", "the nearest known key is length"},
		{"another case", "[[wall]]\nLength = 1", "unknown key Length in [[wall]]", "write length, keys are in small letters with _ between the words"},
		{"a hyphen", "[veneer]\ngross-width = 1", "unknown key gross-width in [veneer]", "write gross_width, keys are in small letters with _ between the words"},
		{"a key of another table", "[[wall]]\ncut = 1", "unknown key cut in [[wall]]", "cut stands in [veneer]"},
		{"a table in the wrong place", "[opening]\nwidth = 1", "unknown table opening in the top of the file", "write [[wall.opening]] in a line of its own, with its keys below"},
		{"nothing near", "[veneer]\nprice = 1", "unknown key price in [veneer]", "known are cut, gross_width"},
		{"an odd key", "[veneer]\n\"a b\" = 1", "unknown key \"a b\" in [veneer]", "known are cut, gross_width"},
		{"in an inline list", "wall = [{opening=[{widht=1}]}]", "unknown key widht in [[wall.opening]]", "the nearest known key is width"},
		{"a table of tables", "[wall2]\nlength = 1", "unknown table wall2 in the top of the file", "the nearest known key is wall"},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := parse(t, c.text)
			small.Unknown(v)
			list := v.Mistakes().List()
			require.Len(t, list, 1)
			assert.Equal(t, [2]string{c.message, c.mend}, [2]string{list[0].Message, list[0].Mend})
		})
	}
	v := parse(t, "veneer = { cut = 1 }\n[[wall]]\nopening = [{ width = 1 }]\n")
	small.Unknown(v)
	assert.NoError(t, v.Mistakes().Err())
	assert.Equal(t, "known are cut, gross_width", small.hint("price", "veneer", []string{"gross_width", "cut", "gross_width"}), "each once")
}

func TestNearest(t *testing.T) {
	words := []string{"window", "door", "cased opening", "fireplace", "built-in"}
	for typed, want := range map[string]string{
		"Window": "window", "widnow": "window", "windw": "window", "dor": "door", "built in": "built-in", "cased-opening": "cased opening",
		"fire place": "fireplace", "gate": "", "": "", "xy": "",
	} {
		assert.Equal(t, want, Nearest(typed, words), typed)
	}
	assert.Empty(t, Nearest(strings.Repeat("x", 1000), words), "a text of any length is near to nothing")
}

func TestGetters(t *testing.T) {
	v := parse(t, "t='x'\ni=3\nf=2.5\nw=4.0\nb=true\nd=2026-04-14\nl=[1,2]\nn=nan\n[s]\nk=1\n[[m]]\nk=1\n[[m]]\nk=2\n")
	assert.Equal(t, "x", v.Get("t").Text(""))
	assert.Equal(t, "other", v.Get("none").Text("other"))
	assert.Equal(t, int64(3), v.Get("i").Whole(0))
	assert.Equal(t, int64(4), v.Get("w").Whole(0))
	assert.Equal(t, 2.5, v.Get("f").Number(0))
	assert.Equal(t, 3.0, v.Get("i").Number(0))
	assert.True(t, v.Get("b").Bool(false))
	assert.Equal(t, "2026-04-14", v.Get("d").Day())
	assert.Empty(t, v.Get("none").Day())
	assert.Equal(t, int64(1), v.Get("s").Section().Get("k").Whole(0))
	assert.Len(t, v.Get("m").Tables(), 2)
	assert.Equal(t, int64(2), v.Get("m").Tables()[1].Get("k").Whole(0))
	assert.Empty(t, v.Get("none").Tables())
	assert.False(t, v.Get("none").Get("further").Given())
	assert.Equal(t, "none.further", v.Get("none").Get("further").Path())
	require.NoError(t, v.Mistakes().Err())

	v.Get("i").Text("")
	v.Get("t").Whole(0)
	v.Get("f").Whole(0)
	v.Get("b").Number(0)
	v.Get("n").Number(0)
	v.Get("l").Bool(false)
	v.Get("i").Day()
	v.Get("t").Day()
	v.Get("d").Word("", "a", "b")
	v.Get("t").Word("", "a", "b")
	v.Get("m").Section()
	v.Get("s").Tables()
	v.Get("l").Tables()
	var messages []string
	for _, m := range v.Mistakes().List() {
		messages = append(messages, m.Message)
	}
	assert.Equal(t, []string{
		"t takes a whole number, not a text", `"x" is no date`, `t "x" is not known`, "i takes a text, not a whole number", "i takes a date, not a whole number",
		"f takes a whole number, not a decimal number", "b takes a number, not true or false", "d takes one of the words a, b, not a date",
		"l takes true or false, not a list", "l holds tables, not a whole number", "l holds tables, not a whole number", "nan is no number to count with",
		"s is a list of tables, not a table", "m is one table, not a list",
	}, messages)
}

func TestExactNumbers(t *testing.T) {
	v := parse(t, "a=0.1\nb=1_000.5e-1\nc=0x1F\nd=inf\ne=1e300\nf=1e-300\ng='x'\nh=-2.50")
	for name, want := range map[string]string{"a": "1/10", "b": "2001/20", "c": "31/1", "f": "0/1", "h": "-5/2"} {
		r, ok := v.Get(name).Exact()
		require.True(t, ok, name)
		assert.Equal(t, want, r.String(), name)
	}
	for _, name := range []string{"d", "e", "g", "none"} {
		_, ok := v.Get(name).Exact()
		assert.False(t, ok, name)
	}
}
