package source

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Source: the valid files of the TOML project's own test corpus.
func TestPlacesOfCorpus(t *testing.T) {
	archive, err := txtar.ParseFile("testdata/valid.txtar")
	require.NoError(t, err)
	require.Greater(t, len(archive.Files), 200, "the corpus is there")
	for _, f := range archive.Files {
		t.Run(f.Name, func(t *testing.T) { checkPlaces(t, string(f.Data)) })
	}
}

// find walks a path such as wall[1].opening[0].width.
func find(t *testing.T, v Value, path string) Value {
	for _, step := range strings.Split(path, ".") {
		name, rest, _ := strings.Cut(step, "[")
		v = v.Get(name)
		for _, c := range strings.Split(strings.TrimSuffix(rest, "]"), "][") {
			if c != "" {
				require.Greater(t, len(v.Items()), int(c[0]-'0'), v.Path())
				v = v.Items()[c[0]-'0']
			}
		}
	}
	require.Equal(t, path, v.Path())
	return v
}

func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		name, text, path  string
		line, column      int // of the value
		keyLine, keyStart int
		raw, key          string
	}{
		{"first key of all", "title = \"x\"", "title", 1, 9, 1, 1, `"x"`, "title"},
		{"second opening of the third wall",
			"[[wall]]\n[[wall.opening]]\nwidth=1\n[[wall]]\n[[wall.opening]]\nwidth=2\n[[wall]]\n[[wall.opening]]\nwidth=3\n[[wall.opening]]\n\twidth = 4 # inch\n",
			"wall[2].opening[1].width", 11, 10, 11, 2, "4", "width"},
		{"the header is the key of a table in a list", "[[wall]]\n[[ wall . opening ]]\n", "wall[0].opening[0]", 2, 11, 2, 11, "opening", "opening"},
		{"inline table on one line", "[room]\nclose_at = { wall = \"S\", at = 3 }\n", "room.close_at.at", 2, 31, 2, 26, "3", "at"},
		{"inline table over lines, with a comma at the end (TOML 1.1)",
			"[[wall]]\nopening = [\n  { width = 1, },\n  { # second\n    width = 22,\n  },\n]\n", "wall[0].opening[1].width", 5, 13, 5, 5, "22", "width"},
		{"item of a list over lines", "height = [\n  1,\n  [2, 3],\n]\n", "height[1][1]", 3, 7, 3, 7, "3", "3"},
		{"dotted key", "site.shop.humidity = 35\n", "site.shop.humidity", 1, 22, 1, 11, "35", "humidity"},
		{"table that only a dotted key made", "site.shop.humidity = 35\n", "site.shop", 1, 6, 1, 6, "shop", "shop"},
		{"quoted key with an escape", "\"wid\\u0074h\" = 5", "width", 1, 16, 1, 1, "5", `"wid\u0074h"`},
		{"literal key", "'a' . 'b'=5", "a.b", 1, 11, 1, 7, "5", "'b'"},
		{"second of two on one line", "a = {x = 1, y = 'two'}", "a.y", 1, 17, 1, 13, "'two'", "y"},
		{"characters, not bytes, are counted", "a = { \"ü\" = \"½″\", y = 2 }", "a.y", 1, 23, 1, 19, "2", "y"},
		{"text over lines that holds quotes", "a = \"\"\"one \"two\" \\\"\"\"\" # \"\nb = 1", "a", 1, 5, 1, 1, `"""one "two" \""""`, "a"},
		{"literal text over lines that ends in a quote", "a = '''b''''\nc = 3", "c", 2, 5, 2, 1, "3", "c"},
		{"a line ended by carriage return and line feed", "[a]\r\nb = 1 \r\nc = 2\r\n", "a.b", 2, 5, 2, 1, "1", "b"},
		{"after a byte order mark", "\ufeffa = 1\nb = 2", "a", 1, 5, 1, 1, "1", "a"},
		{"date with a time after a blank", "a = 2026-04-14 07:32:00 # day", "a", 1, 5, 1, 1, "2026-04-14 07:32:00", "a"},
		{"a table opened before its parent", "[a.b]\nc = 1\n[a]\nd = 2\n", "a", 3, 2, 3, 2, "a", "a"},
	} {
		t.Run(c.name, func(t *testing.T) {
			root, err := Parse("a.toml", []byte(c.text))
			require.NoError(t, err)
			v := find(t, root, c.path)
			assert.Equal(t, c.raw, v.Raw())
			line, column := v.file.Text.Place(v.Span().Start)
			assert.Equal(t, [2]int{c.line, c.column}, [2]int{line, column}, "value")
			assert.Equal(t, v.Span().Start, v.file.Text.Offset(line, column))
			line, column = v.file.Text.Place(v.KeySpan().Start)
			assert.Equal(t, [2]int{c.keyLine, c.keyStart}, [2]int{line, column}, "key")
			assert.Equal(t, c.key, v.file.Text.Slice(v.KeySpan()))
			checkPlaces(t, c.text)
		})
	}
}

func TestSyntaxErrors(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"fault at the first byte of a line: the library counts its column on the line before",
			"[project]\ntitle = \"a\"\ntitle = \"b\"\n", `a.toml:3:1: key project.title stands twice
  title = "b"
  ^^^^^
  mend: keep one of the two; a further wall, opening or box starts with its own [[...]] line`},
		{"the same after a byte order mark and with carriage returns",
			"\ufefftitle = \"a\"\r\ntitle = \"b\"\r\n", `a.toml:2:1: key title stands twice
  title = "b"
  ^^^^^
  mend: keep one of the two; a further wall, opening or box starts with its own [[...]] line`},
		{"lengths without quotes are all noted", "[[wall]]\nlength = 12'-6 3/8\" # long\n\theight = 9' 6\n[veneer]\ngross_width=24 1/2\noverlap=1/2", `a.toml:2:10: a length in feet and inches stands in quotes
  length = 12'-6 3/8" # long
           ^^^^^^^^^^
  mend: write "12'-6 3/8": the mark for inches at the end can be left out
a.toml:3:11: a length in feet and inches stands in quotes
  	height = 9' 6
  	         ^^^^
  mend: write "9' 6"
a.toml:5:13: a length in feet and inches stands in quotes
  gross_width=24 1/2
              ^^^^^^
  mend: write "24 1/2"
a.toml:6:9: a length in feet and inches stands in quotes
  overlap=1/2
          ^^^
  mend: write "1/2"`},
		{"the inch mark inside the quotes", "length = \"12'-6 3/8\"\"", `a.toml:1:10: a length in feet and inches stands in quotes
  length = "12'-6 3/8""
           ^^^^^^^^^^^^
  mend: write "12'-6 3/8": the mark for inches at the end can be left out`},
		{"a key that the library lets stand twice", "a.b = 1\na = 2\n", `a.toml:2:1: key a stands twice
  a = 2
  ^
  mend: keep one of the two; a further wall, opening or box starts with its own [[...]] line`},
		{"Latin letters of another encoding", "a = \"M\xfcller\"", "a.toml:1:7: the file is not in UTF-8\n  a = \"M\ufffdller\"\n        ^\n  mend: save the file as UTF-8"},
		{"UTF-16", "\xfe\xff\x00a", "a.toml:1:1: the file is not in UTF-8\n  \ufffd\ufffd\ufffda\n  ^\n  mend: save the file as UTF-8"},
		{"no value", "a = \n", `a.toml:1:1: a has no value
  a = 
  ^
  mend: write it after the equals sign, or take the line out`},
		{"text not closed", "a = \"x\nb = 2\n", `a.toml:1:7: strings cannot contain newlines
  a = "x
        ^
  mend: close the text with the quote that it began with`},
		{"control characters never reach the terminal", "a = \x1b[2J\n", `a.toml:1:5: TOML files cannot contain control characters: '0x1b'
  a = ` + "\ufffd" + `[2J
      ^
  mend: type the line anew: it holds a character that cannot be seen`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Parse("a.toml", []byte(c.text))
			require.Error(t, err)
			assert.Equal(t, c.want, err.Error())
		})
	}
}

func TestRefusesWhatWouldNotEnd(t *testing.T) {
	_, err := Parse("a.toml", []byte(strings.Repeat("a.", 200_000)+"b = 1"))
	require.ErrorContains(t, err, "a key of more than 50 parts")
	_, err = Parse("a.toml", make([]byte, Largest+1))
	require.ErrorContains(t, err, "more than 1 MB")
	_, err = Parse("a.toml", []byte("a = "+strings.Repeat("[", 100_000)+strings.Repeat("]", 100_000)))
	require.NoError(t, err)
}

func FuzzParse(f *testing.F) {
	archive, err := txtar.ParseFile("testdata/valid.txtar")
	require.NoError(f, err)
	for i := 0; i < len(archive.Files); i += 7 {
		f.Add(string(archive.Files[i].Data))
	}
	if sample, err := os.ReadFile("../../samples/reading-room.toml"); assert.NoError(f, err) {
		f.Add(string(sample))
	}
	f.Fuzz(func(t *testing.T, body string) {
		_, err := Parse("a.toml", []byte(body))
		_, again := Parse("a.toml", []byte(body))
		if err != nil {
			require.EqualError(t, again, err.Error())
			return
		}
		require.NoError(t, again)
		checkPlaces(t, body)
	})
}
