package edit

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Each change leaves every other byte: what stands here is the whole file after it.
func TestSmallestEdits(t *testing.T) {
	const two = "# a room\n[[wall]]\nname = \"A\" # first\nlength = 1\n\n[[wall]]\nname = \"B\"\nlength = 2\n"
	for why, x := range map[string]struct {
		text   string
		change Change
		want   string
	}{
		"a first pin stands in its wall, before the next": {two, Change{Do: Pin, Item: -1, At: `"3"`},
			"# a room\n[[wall]]\nname = \"A\" # first\nlength = 1\n\n[[wall.pin]]\nat = \"3\"\n\n[[wall]]\nname = \"B\"\nlength = 2\n"},
		"at the last wall it stands at the end": {two, Change{Do: Pin, Wall: 1, Item: -1, At: `"3"`, Put: "middle"},
			two + "\n[[wall.pin]]\nat  = \"3\"\nput = \"middle\"\n"},
		"a file without an end of its last line keeps it so": {"[[wall]]\nlength = 1", Change{Do: Pin, Item: -1, At: "3"},
			"[[wall]]\nlength = 1\n\n[[wall.pin]]\nat = 3"},
		"a second pin stands behind the first, with its indent": {"[[wall]]\n  [[wall.pin]] # wish\n    at = 1 # here\n\n[rules]\n", Change{Do: Pin, Item: -1, At: "2"},
			"[[wall]]\n  [[wall.pin]] # wish\n    at = 1 # here\n\n  [[wall.pin]]\n    at = 2\n\n[rules]\n"},
		"a pin that moves changes its figure alone": {"[[wall]]\n[[wall.pin]]   # wish\nat  =  \"1\"   # here\nput = \"either\"\n", Change{Do: Pin, Item: 0, At: `"2"`, Put: "either"},
			"[[wall]]\n[[wall.pin]]   # wish\nat  =  \"2\"   # here\nput = \"either\"\n"},
		"a pin of a seam needs no word": {"[[wall]]\n[[wall.pin]]\nat = \"1\"\nput = \"middle\"\n", Change{Do: Pin, Item: 0, At: `"2"`, Put: "seam"},
			"[[wall]]\n[[wall.pin]]\nat = \"2\"\n"},
		"pins in brackets stay there":         {"[[wall]]\npin = [{ at = 1 }]\n", Change{Do: Pin, Item: -1, At: "2"}, "[[wall]]\npin = [{ at = 1 }, { at = 2 }]\n"},
		"walls in brackets too":               {"wall = [ { length = 1 } ]\n", Change{Do: Pin, Item: -1, At: "2"}, "wall = [ { length = 1, pin = [{ at = 2 }] } ]\n"},
		"lines that end as on other machines": {"[[wall]]\r\nlength = 1\r\n", Change{Do: Pin, Item: -1, At: "2"}, "[[wall]]\r\nlength = 1\r\n\r\n[[wall.pin]]\r\nat = 2\r\n"},
		"a pin falls with one blank line": {"[[wall]]\n\n[[wall.pin]]\nat = 1\n\n[[wall]]\n", Change{Do: Unpin, Item: 0},
			"[[wall]]\n\n[[wall]]\n"},
		"a pin in brackets falls with its comma": {"[[wall]]\npin = [{ at = 1 }, { at = 2 }]\n", Change{Do: Unpin, Item: 0}, "[[wall]]\npin = [{ at = 2 }]\n"},
		"the last in brackets too":               {"[[wall]]\npin = [{ at = 1 }, { at = 2 }]\n", Change{Do: Unpin, Item: 1}, "[[wall]]\npin = [{ at = 1 }]\n"},
		"an aim as the others stand": {"[rules]\nsnap      = \"1/16\" # fine\n\n[room]\n", Change{Do: Aim, Word: "even"},
			"[rules]\nsnap      = \"1/16\" # fine\naim       = \"even\"\n\n[room]\n"},
		"an aim where there are no rules":  {"[room]\n", Change{Do: Aim, Word: "even"}, "[room]\n\n[rules]\naim = \"even\"\n"},
		"rules in dots":                    {"rules.snap = 1\n[room]\n", Change{Do: Aim, Word: "even"}, "rules.snap = 1\nrules.aim = \"even\"\n[room]\n"},
		"rules in brackets":                {"rules = { snap = 1 }\n", Change{Do: Aim, Word: "even"}, "rules = { snap = 1, aim = \"even\" }\n"},
		"rules in brackets with nothing":   {"rules = {}\n", Change{Do: Aim, Word: "even"}, "rules = { aim = \"even\" }\n"},
		"an empty table":                   {"[rules] # none\n", Change{Do: Aim, Word: "even"}, "[rules] # none\naim = \"even\"\n"},
		"the same aim is no change":        {"[rules]\naim = \"even\"\n", Change{Do: Aim, Word: "even"}, "[rules]\naim = \"even\"\n"},
		"a closing place":                  {"[room]\nclosed = true\n", Change{Do: Close, Word: `N "1"`, At: `"2"`}, "[room]\nclosed = true\nclose_at = { wall = \"N \\\"1\\\"\", at = \"2\" }\n"},
		"a closing place that was another": {"[room]\nclose_at = \"auto\" # ?\n", Change{Do: Close, Word: "N", At: "2"}, "[room]\nclose_at = { wall = \"N\", at = 2 } # ?\n"},
		"a closing place under its header": {"[room.close_at]\ncorner = \"E\"\n[paste]\n", Change{Do: Close, Word: "N", At: "2"}, "[room.close_at]\nwall = \"N\"\nat   = 2\n[paste]\n"},
		"no closing place":                 {"[room]\nclose_at = { corner = \"E\" }\nbase = 1\n", Change{Do: CloseOff}, "[room]\nbase = 1\n"},
		"a stretch kept clear": {two, Change{Do: Keep, Item: -1, From: "1", To: "2"},
			strings.Replace(two, "length = 1\n", "length = 1\n\n[[wall.keep_clear]]\nfrom = 1\nto   = 2\n", 1)},
		"a stretch that moves":   {"[[wall]]\nkeep_clear = [{ from = 1, to = 200, why = \"x\" }]\n", Change{Do: Keep, Item: 0, From: "100", To: "3"}, "[[wall]]\nkeep_clear = [{ from = 100, to = 3, why = \"x\" }]\n"},
		"a stretch that falls":   {"[[wall]]\n[[wall.keep_clear]]\nfrom = 1\nto = 2\n", Change{Do: Unkeep, Item: 0}, "[[wall]]\n"},
		"what hangs, behind all": {"[[wall]]\n", Change{Do: Hung, Word: "A", Sheets: "1-2", Edges: "[1, 2]"}, "[[wall]]\n\n[[hung]]\nwall   = \"A\"\nsheets = \"1-2\"\nedges  = [1, 2]\n"},
		"what hangs, behind the last": {"[[hung]]\nwall = \"A\"\n\n[paste]\n", Change{Do: Hung, Word: "B", Sheets: "3", Left: "1", Edges: "[5]"},
			"[[hung]]\nwall = \"A\"\n\n[[hung]]\nwall      = \"B\"\nsheets    = \"3\"\nleft_edge = 1\nedges     = [5]\n\n[paste]\n"},
	} {
		t.Run(why, func(t *testing.T) {
			got, err := Apply("room.toml", []byte(x.text), []Change{x.change})
			require.NoError(t, err)
			assert.Equal(t, x.want, string(got))
		})
	}
}

// What is not there cannot be changed, and leaves nothing half changed.
func TestRefusedEdits(t *testing.T) {
	const text = "[[wall]]\nlength = 1\n"
	for why, c := range map[string]Change{
		"no such wall":  {Do: Pin, Wall: 1, Item: -1, At: "1"},
		"no such pin":   {Do: Pin, Item: 0, At: "1"},
		"no pin to cut": {Do: Unpin, Item: 0},
		"no such thing": {Do: "burn"},
		"no length":     {Do: Pin, Item: -1, At: "1'"},
	} {
		got, err := Apply("room.toml", []byte(text), []Change{{Do: Aim, Word: "even"}, c})
		assert.Error(t, err, why)
		assert.Nil(t, got, why)
	}
	_, err := Apply("room.toml", []byte("[[wall"), nil)
	var mistakes *source.Mistakes
	assert.ErrorAs(t, err, &mistakes)
}

// In every sample each wall takes a pin, which moves and falls again: what is read is the pin alone, every line that was there is
// there still, and at the end the file is as it was.
func TestSamplesComeBack(t *testing.T) {
	list, err := filepath.Glob("../../samples/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	for _, name := range list {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		before, err := room.Decode(name, text)
		require.NoError(t, err)
		for i := range before.Walls {
			n := len(before.Walls[i].Pins)
			one, err := Apply(name, text, []Change{{Do: Pin, Wall: i, Item: -1, At: `"2 7/16"`}})
			require.NoError(t, err)
			two, err := Apply(name, one, []Change{{Do: Pin, Wall: i, Item: n, At: `"2 9/16"`}})
			require.NoError(t, err)
			r, err := room.Decode(name, two)
			require.NoError(t, err)
			for k := range r.Walls {
				want := len(before.Walls[k].Pins)
				if k == i {
					want++
				}
				assert.Len(t, r.Walls[k].Pins, want)
			}
			assert.Equal(t, strings.Replace(string(one), `"2 7/16"`, `"2 9/16"`, 1), string(two))
			assert.Equal(t, lines(string(text)), without(lines(string(one)), `at = "2 7/16"`))
			back, err := Apply(name, two, []Change{{Do: Unpin, Wall: i, Item: n}})
			require.NoError(t, err)
			assert.Equal(t, string(text), string(back), "%s, wall %d", name, i)
		}
	}
}

// lines are those that say something.
func lines(text string) (list []string) {
	for _, l := range strings.Split(text, "\n") {
		if strings.TrimSpace(l) != "" {
			list = append(list, l)
		}
	}
	return list
}

// without leaves out a line and the one before it.
func without(list []string, line string) (out []string) {
	for i, l := range list {
		if l == line || i+1 < len(list) && list[i+1] == line {
			continue
		}
		out = append(out, l)
	}
	return out
}

// What two texts differ in is told line by line, what falls away first.
func TestLines(t *testing.T) {
	assert.Empty(t, Lines([]byte("a\nb\n"), []byte("a\nb\n")))
	assert.Equal(t, []Line{{2, true, "b"}, {2, false, "x"}, {4, false, "d"}}, Lines([]byte("a\nb\nc\n"), []byte("a\nx\nc\nd\n")))
	assert.Equal(t, []Line{{1, false, "z"}}, Lines([]byte("a"), []byte("z\na")))
	assert.Equal(t, []Line{{2, true, "b"}}, Lines([]byte("a\nb\na\n"), []byte("a\na\n")))
}
