package cli

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typed runs one command line, with a text as standard input.
func typed(in string, args ...string) (status int, out, messages string) {
	var o, m bytes.Buffer
	status = Run(args, strings.NewReader(in), &o, &m)
	return status, o.String(), m.String()
}

// wallRoom is a wall of 10 ft that takes 6 sheets.
const wallRoom = `[project]
title = "One wall"
[veneer]
species = "walnut"
cut = "plain"
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[flitch]]
number = "F-1"
sheets = "1-12"
spare = 2
[[wall]]
name = "Long"
length = "10'"
height = "8'"
`

// thinRoom breaks a rule: a keep-clear stretch leaves seams no place.
const thinRoom = wallRoom + `[[wall.keep_clear]]
from = "1"
to = "9' 11"
`

// savedRoom writes a room file and gives its path.
func savedRoom(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return path
}

func TestCountPrintsTables(t *testing.T) {
	path := savedRoom(t, "wall.toml", wallRoom)
	status, out, messages := typed("", "count", path)
	assert.Equal(t, fine, status, messages)
	for _, want := range []string{"One wall", "What to order", "Sheets by flitch", "What may go wrong", "sheets come narrower", "Cut list", "Where the veneer goes"} {
		assert.Contains(t, out, want)
	}
	assert.NotContains(t, out, "The whole job", "one room is no job")

	_, out, _ = typed("", "count", path, path)
	assert.Contains(t, out, "The whole job")
	_, quick, _ := typed("", "count", "--quick", path)
	assert.NotContains(t, quick, "sheets come narrower")
	_, out, _ = typed(wallRoom, "count", "-")
	assert.Contains(t, out, "One wall")
}

func TestCountExits(t *testing.T) {
	good, thin := savedRoom(t, "wall.toml", wallRoom), savedRoom(t, "thin.toml", thinRoom)
	bad := savedRoom(t, "bad.toml", "[project]\n")
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   string
	}{
		{"a rule broken", []string{"count", thin}, broken, ""},
		{"a rule broken in one of two rooms", []string{"count", good, thin}, broken, ""},
		{"a room that is none", []string{"count", good, bad}, unusable, "title"},
		{"no such file", []string{"count", "nowhere.toml", good}, unusable, "nowhere.toml"},
		{"no room", []string{"count"}, unusable, "arg"},
		{"a table that there is not", []string{"count", "--csv", "--table", "cut", good}, unusable, "cuts"},
		{"two forms", []string{"count", "--csv", "--json", good}, unusable, "csv"},
		{"a table of JSON", []string{"count", "--json", "--table", "cuts", good}, unusable, "--table"},
		{"standard input twice", []string{"count", "-", "-"}, unusable, "only once"},
		{"a workbook where no folder is", []string{"count", "--xlsx", filepath.Join(good, "x", "b.xlsx"), good}, unwritten, "not written"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, messages := typed("", c.args...)
			assert.Equal(t, c.status, status, messages)
			assert.Contains(t, messages, c.says)
			if c.status != broken {
				assert.Empty(t, out, "all or nothing")
			}
		})
	}
}

func TestCountForMachines(t *testing.T) {
	path := savedRoom(t, "wall.toml", wallRoom)
	_, out, _ := typed("", "count", "--csv", path, path)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Len(t, rows, 1+2*6, "a head and 6 sheets of each room")

	_, out, _ = typed("", "count", "--csv", "--table", "flitches", path)
	rows, err = csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, "F-1", rows[1][2])

	_, out, _ = typed("", "count", "--json", path)
	var v struct{ Rooms []struct{ Sheets int } }
	require.NoError(t, json.Unmarshal([]byte(out), &v))
	require.Len(t, v.Rooms, 1)
	assert.Equal(t, 6, v.Rooms[0].Sheets)

	book := filepath.Join(t.TempDir(), "job.xlsx")
	status, out, messages := typed("", "count", "--xlsx", book, path)
	assert.Equal(t, fine, status)
	assert.Empty(t, out)
	assert.Contains(t, messages, "wrote "+book)
	z, err := zip.OpenReader(book)
	require.NoError(t, err)
	z.Close()

	thin := savedRoom(t, "thin.toml", thinRoom)
	status, _, _ = typed("", "count", "--xlsx", book, thin)
	assert.Equal(t, broken, status, "the workbook is written all the same")
	bad := filepath.Join(t.TempDir(), "never.xlsx")
	typed("", "count", "--xlsx", bad, savedRoom(t, "bad.toml", "[project]\n"))
	left, err := os.ReadDir(filepath.Dir(bad))
	require.NoError(t, err)
	assert.Empty(t, left, "nothing is left of a workbook that could not be made")
}

func TestCountKeepsTheOrderOfRooms(t *testing.T) {
	var args []string
	args = append(args, "count", "--quick", "--table", "margins")
	for _, name := range []string{"A", "B", "C", "D", "E", "F", "G", "H"} {
		args = append(args, savedRoom(t, name+".toml", strings.Replace(wallRoom, "One wall", "Room "+name, 1)))
	}
	_, first, _ := typed("", args...)
	at := -1
	for _, name := range []string{"A", "B", "C", "D", "E", "F", "G", "H"} {
		i := strings.Index(first, "Room "+name)
		assert.Greater(t, i, at)
		at = i
	}
	_, second, _ := typed("", args...)
	assert.Equal(t, first, second)
}

func TestClimateCommand(t *testing.T) {
	path := savedRoom(t, "wall.toml", wallRoom+"[site]\ntemperature = 68\nhumidity = 45\nshop = { temperature = 70, humidity = 35 }\n")
	chart := filepath.Join(t.TempDir(), "m.svg")
	status, out, messages := typed("", "climate", path, "--chart", chart)
	require.Equal(t, fine, status, messages)
	assert.Contains(t, out, "68 F (20 C), 45 % relative humidity")
	assert.Contains(t, out, "walnut, plain")
	data, err := os.ReadFile(chart)
	require.NoError(t, err)
	assert.Contains(t, string(data), "<svg")

	// 24 in of plain walnut from 70 F and 30 % to 50 %: 0.2022 in, computed from the Wood Handbook's table and equations.
	_, out, _ = typed("", "climate", "--species", "walnut", "--cut", "plain", "--width", "24", "--from", "70 F 30 %", "--to", "70F, 50%")
	assert.Contains(t, out, "grows 0.202 in")
	_, out, _ = typed("", "climate", "--to", "21,1 C 50 % RH")
	assert.Contains(t, out, "21.1 C")
	_, out, _ = typed("", "climate", "--list")
	assert.Contains(t, out, "white oak")

	for _, c := range []struct {
		name string
		args []string
		says string
	}{
		{"a species that there is not", []string{"climate", "--species", "wallnut", "--to", "70 F 40 %"}, "walnut"},
		{"a cut that there is not", []string{"climate", "--cut", "sawn", "--to", "70 F 40 %"}, "quarter"},
		{"no climate", []string{"climate"}, "no climate is given"},
		{"half a climate", []string{"climate", "--to", "70 F"}, "no climate"},
		{"more than all", []string{"climate", "--to", "70 F 140 %"}, "between 0 and 100"},
		{"a wall without air", []string{"climate", "--from", "70 F 40 %", "--wall", "50 F"}, "needs the climate of the site"},
		{"a year that runs back", []string{"climate", "--to", "70 F 40 %", "--year", "55-30"}, "lower to a higher"},
		{"a sheet of no width", []string{"climate", "--to", "70 F 40 %", "--width", "-2"}, "no size"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, messages := typed("", c.args...)
			assert.Equal(t, unusable, status)
			assert.Empty(t, out)
			assert.Contains(t, messages, c.says)
		})
	}
}

func TestDiffCommand(t *testing.T) {
	old := savedRoom(t, "old.toml", wallRoom)
	higher := strings.Replace(wallRoom, `height = "8'"`, `height = "8' 2"`, 1)
	status, out, messages := typed(higher, "diff", old, "-")
	assert.Equal(t, fine, status, messages)
	assert.Contains(t, out, `ceiling of wall Long at 8'-2", was at 8'-0"`)
	assert.Contains(t, out, `cut 8'-6", was 8'-4" (too short if cut)`)
	assert.Contains(t, out, "[[project.revision]]")

	_, kept, _ := typed("", "layout", old)
	issued := savedRoom(t, "old.json", kept)
	_, out, _ = typed("", "diff", issued, old)
	assert.Equal(t, "nothing changed\n", out)

	status, _, _ = typed("", "diff", old, savedRoom(t, "thin.toml", thinRoom))
	assert.Equal(t, broken, status, "the new room breaks a rule")
	status, _, _ = typed("", "diff", savedRoom(t, "thin.toml", thinRoom), old)
	assert.Equal(t, fine, status, "only the old one does")
	for _, c := range []struct {
		name string
		args []string
		says string
	}{
		{"JSON that is no layout", []string{"diff", savedRoom(t, "x.json", `{"format": "x"}`), old}, "no layout"},
		{"no such file", []string{"diff", "nowhere.toml", old}, "nowhere.toml"},
		{"one room only", []string{"diff", old}, "arg"},
		{"standard input twice", []string{"diff", "-", "-"}, "only once"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, messages := typed("", c.args...)
			assert.Equal(t, unusable, status)
			assert.Empty(t, out)
			assert.Contains(t, messages, c.says)
		})
	}
}
