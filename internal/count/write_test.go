package count

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
)

// samplesCounted are all samples as counted, with and without margins, once for all tests: nothing changes a count.
var samplesCounted [2][]*Count

// counts counts all samples, in the order of their names. Its list may be added to.
func counts(t testing.TB, solve bool) []*Count {
	t.Helper()
	which := 0
	if solve {
		which = 1
	}
	if samplesCounted[which] == nil {
		plans := roomtest.SamplePlans(t)
		for _, name := range slices.Sorted(maps.Keys(plans)) {
			n := Of(plans[name])
			if solve {
				n.Solve()
			}
			samplesCounted[which] = append(samplesCounted[which], n)
		}
	}
	return slices.Clone(samplesCounted[which])
}

// put writes rooms and the job.
func put(t testing.TB, w Writer, list []*Count) {
	t.Helper()
	var job Job
	for _, n := range list {
		job.Add(n)
		require.NoError(t, w.Room(n))
	}
	require.NoError(t, w.Job(&job))
}

func TestTextFitsTheLine(t *testing.T) {
	var b bytes.Buffer
	put(t, Text(&b), counts(t, true))
	for _, name := range append(TableNames(), "job") {
		put(t, One(&b, name), counts(t, false))
	}
	lines := strings.Split(b.String(), "\n")
	assert.Greater(t, len(lines), 500)
	for i, line := range lines {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), 100, "line %d: %s", i+1, line)
		assert.Equal(t, strings.TrimRight(line, " "), line, "no blanks at the end of line %d", i+1)
	}
	for _, n := range counts(t, false) {
		for _, s := range n.Cuts {
			assert.Regexp(t, `(?m)^ *`+strconv.Itoa(s.Number)+` `, b.String(), "sheet %d has a row", s.Number)
		}
	}
}

// TestCSVReadsBack reads every table with encoding/csv: all rows of one table are as wide, numbers are numbers, and they
// are those of the count.
func TestCSVReadsBack(t *testing.T) {
	list := counts(t, false)
	for _, name := range TableNames() {
		var b bytes.Buffer
		put(t, CSV(&b, name), list)
		rows, err := csv.NewReader(&b).ReadAll() // fails on rows of different widths
		require.NoError(t, err, name)
		want := 1
		for _, n := range list {
			want += len(n.Table(name).Lines())
		}
		assert.Len(t, rows, want, name)
	}
	var b bytes.Buffer
	put(t, CSV(&b, "cuts"), list)
	rows, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	at := func(head string) int {
		i := slices.Index(rows[0], head)
		require.GreaterOrEqual(t, i, 0, head)
		return i
	}
	i := 1
	for _, n := range list {
		for _, c := range n.Cuts {
			cut, err := strconv.ParseFloat(rows[i][at("cut to")], 64)
			require.NoError(t, err)
			assert.InDelta(t, float64(c.Long(c.Sheet(), n.Style))/float64(n.Style.Unit.Of()), cut, 1e-6, "as pages print it")
			assert.InDelta(t, float64(c.Length), float64(c.Long(c.Sheet(), n.Style)), float64(n.Style.Least()), "no further off than its two ends are rounded")
			above, err := strconv.ParseFloat(rows[i][at("above")], 64)
			require.NoError(t, err)
			below, err := strconv.ParseFloat(rows[i][at("below")], 64)
			require.NoError(t, err)
			assert.InDelta(t, cut, above+below, 1e-5, "its ends add up to it")
			assert.Equal(t, n.Room, rows[i][at("room")])
			assert.Equal(t, n.Style.Unit.String(), rows[i][at("unit")])
			i++
		}
	}
}

// TestCSVKeepsFormulasOut names walls and rooms so that a spreadsheet would reckon with them.
func TestCSVKeepsFormulasOut(t *testing.T) {
	n := counted(t, strings.Replace(veneer("24 1/2", "1", "10'"), "Test room", "=SUM(A1)", 1)+"[[wall]]\nname = \"+North\"\nlength = \"10'\"\nheight = \"8'\"\n"+
		"corner = \"straight\"\n[[wall]]\nname = \"@East\"\nlength = \"10'\"\nheight = \"8'\"\ncorner = \"straight\"\n[[wall]]\nname = \"-West\"\nlength = \"10'\"\nheight = \"8'\"\n")
	var b bytes.Buffer
	for _, name := range TableNames() {
		put(t, CSV(&b, name), []*Count{n})
	}
	r := csv.NewReader(&b)
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	require.NoError(t, err)
	guarded := 0
	number := regexp.MustCompile(`^-?\d+(\.\d+)?$`)
	for _, row := range rows {
		for _, cell := range row {
			if strings.HasPrefix(cell, "'") {
				guarded++
			}
			if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
				assert.Regexp(t, number, cell, "only numbers begin so")
			}
		}
	}
	assert.Greater(t, guarded, 10)
}

// workbook is what a workbook holds, read without the library that writes it: worksheet by name, then rows of cells.
func workbook(t *testing.T, data []byte) map[string][][]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	read := func(name string, into any) {
		f, err := z.Open(name)
		require.NoError(t, err)
		defer f.Close()
		text, err := io.ReadAll(f)
		require.NoError(t, err)
		require.NoError(t, xml.Unmarshal(text, into), name)
	}
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
			ID   string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
		} `xml:"sheets>sheet"`
	}
	read("xl/workbook.xml", &book)
	var rels struct {
		List []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	read("xl/_rels/workbook.xml.rels", &rels)
	out := map[string][][]string{}
	for _, s := range book.Sheets {
		target := ""
		for _, r := range rels.List {
			if r.ID == s.ID {
				target = "xl/" + strings.TrimPrefix(strings.TrimPrefix(r.Target, "/xl/"), "xl/")
			}
		}
		var page struct {
			Rows []struct {
				Cells []struct {
					Ref   string `xml:"r,attr"`
					Type  string `xml:"t,attr"`
					Value string `xml:"v"`
					Text  string `xml:"is>t"`
				} `xml:"c"`
			} `xml:"sheetData>row"`
		}
		read(target, &page)
		out[s.Name] = [][]string{}
		for _, row := range page.Rows {
			var cells []string
			for i, c := range row.Cells {
				require.True(t, strings.HasPrefix(c.Ref, string(rune('A'+i))), "cells stand in their columns")
				if c.Type == "inlineStr" {
					cells = append(cells, c.Text)
				} else {
					cells = append(cells, c.Value)
				}
			}
			out[s.Name] = append(out[s.Name], cells)
		}
	}
	return out
}

// TestWorkbookReadsBack reads a workbook with archive/zip and encoding/xml: every table is there, with the cells of the
// CSV, and the same input gives the same bytes.
func TestWorkbookReadsBack(t *testing.T) {
	list := counts(t, true)
	make := func() []byte {
		var b bytes.Buffer
		x, err := NewXLSX(&b)
		require.NoError(t, err)
		put(t, x, list)
		return b.Bytes()
	}
	data := make()
	book := workbook(t, data)
	for _, name := range append(TableNames(), "job") {
		var b bytes.Buffer
		put(t, CSV(&b, name), list)
		want, err := csv.NewReader(&b).ReadAll()
		require.NoError(t, err)
		got := book[name]
		require.Len(t, got, len(want), name)
		for i := range want {
			require.Len(t, got[i], len(want[i]), "%s, row %d", name, i+1)
			for k := range want[i] {
				a, b := strings.TrimPrefix(want[i][k], "'"), got[i][k]
				if x, err := strconv.ParseFloat(a, 64); err == nil {
					y, err := strconv.ParseFloat(b, 64)
					require.NoError(t, err, "%s, row %d, column %d", name, i+1, k+1)
					assert.InDelta(t, x, y, 1e-9)
					continue
				}
				assert.Equal(t, a, b, "%s, row %d, column %d", name, i+1, k+1)
			}
		}
	}
	assert.True(t, bytes.Equal(data, make()), "same input, same bytes")
}

// TestJSONKeepsItsSchema holds what is printed against schema.json, and schema.json against what it must refuse.
func TestJSONKeepsItsSchema(t *testing.T) {
	var b bytes.Buffer
	list := counts(t, true)
	roomtest.RandomPlans(t, effort.Of(8, 30), func(_ uint64, _ string, p *layout.Plan) { list = append(list, Of(p)) })
	put(t, JSON(&b), list)
	var schema, value any
	require.NoError(t, json.Unmarshal(Schema, &schema))
	require.NoError(t, json.Unmarshal(b.Bytes(), &value))
	assert.Empty(t, hold(schema, schema, value, "$"))

	empty := &bytes.Buffer{}
	put(t, JSON(empty), nil)
	var none any
	require.NoError(t, json.Unmarshal(empty.Bytes(), &none))
	assert.Empty(t, hold(schema, schema, none, "$"))

	for what, spoil := range map[string]func(map[string]any){
		"a key too many":    func(v map[string]any) { v["extra"] = 1.0 },
		"a key missing":     func(v map[string]any) { delete(v, "totals") },
		"another format":    func(v map[string]any) { v["format"] = "flitchlay-count/2" },
		"a text for a list": func(v map[string]any) { v["rooms"] = "none" },
		"a room's key missing": func(v map[string]any) {
			delete(v["rooms"].([]any)[0].(map[string]any), "cuts")
		},
		"a negative count": func(v map[string]any) { v["totals"].(map[string]any)["rooms"] = -1.0 },
		"half a sheet":     func(v map[string]any) { v["totals"].(map[string]any)["laid"] = 1.5 },
	} {
		var spoilt map[string]any
		require.NoError(t, json.Unmarshal(b.Bytes(), &spoilt))
		spoil(spoilt)
		assert.NotEmpty(t, hold(schema, schema, spoilt, "$"), what)
	}
}

// TestJSONPartsAddUp adds up the printed decimals.
func TestJSONPartsAddUp(t *testing.T) {
	var b bytes.Buffer
	put(t, JSON(&b), counts(t, false))
	d := json.NewDecoder(&b)
	d.UseNumber()
	var v struct {
		Rooms []struct {
			Areas struct {
				Gross json.Number
				Parts []struct{ Area json.Number }
			}
		}
		Totals struct {
			Gross json.Number
			Parts []struct{ Area json.Number }
		}
	}
	require.NoError(t, d.Decode(&v))
	add := func(parts []struct{ Area json.Number }) int64 {
		sum := int64(0)
		for _, p := range parts {
			sum += nano(t, p.Area)
		}
		return sum
	}
	require.NotEmpty(t, v.Rooms)
	for _, r := range v.Rooms {
		assert.Equal(t, nano(t, r.Areas.Gross), add(r.Areas.Parts))
	}
	assert.Equal(t, nano(t, v.Totals.Gross), add(v.Totals.Parts))
}

// nano is a decimal of at most nine places as a whole number of the ninth.
func nano(t *testing.T, n json.Number) int64 {
	t.Helper()
	whole, part, _ := strings.Cut(n.String(), ".")
	require.LessOrEqual(t, len(part), 9)
	v, err := strconv.ParseInt(whole+part+strings.Repeat("0", 9-len(part)), 10, 64)
	require.NoError(t, err)
	return v
}

// hold holds a value against a JSON schema, as far as schema.json goes: type, properties, required,
// additionalProperties, items, enum, const, minimum, anyOf and references into $defs. It lists what is wrong, and refuses
// a word of the schema that it does not know.
func hold(root, schema, value any, at string) []string {
	s, ok := schema.(map[string]any)
	if !ok {
		return []string{at + ": no schema"}
	}
	var wrong []string
	fail := func(format string, args ...any) { wrong = append(wrong, at+": "+fmt.Sprintf(format, args...)) }
	object, isObject := value.(map[string]any)
	array, isArray := value.([]any)
	number, isNumber := value.(float64)
	for _, word := range slices.Sorted(maps.Keys(s)) {
		arg := s[word]
		switch word {
		case "$schema", "title", "description", "$defs":
		case "$ref":
			def := root
			for _, step := range strings.Split(strings.TrimPrefix(arg.(string), "#/"), "/") {
				def = def.(map[string]any)[step]
			}
			wrong = append(wrong, hold(root, def, value, at)...)
		case "anyOf":
			fits := false
			for _, one := range arg.([]any) {
				fits = fits || len(hold(root, one, value, at)) == 0
			}
			if !fits {
				fail("fits none of the choices")
			}
		case "type":
			kinds, ok := arg.([]any)
			if !ok {
				kinds = []any{arg}
			}
			fits := false
			for _, kind := range kinds {
				_, isText := value.(string)
				_, isBool := value.(bool)
				fits = fits || kind == "object" && isObject || kind == "array" && isArray || kind == "number" && isNumber || kind == "null" && value == nil ||
					kind == "integer" && isNumber && number == float64(int64(number)) || kind == "string" && isText || kind == "boolean" && isBool
			}
			if !fits {
				fail("%v is not of type %v", value, arg)
			}
		case "properties":
			for _, key := range slices.Sorted(maps.Keys(object)) {
				if of, ok := arg.(map[string]any)[key]; ok {
					wrong = append(wrong, hold(root, of, object[key], at+"."+key)...)
				}
			}
		case "additionalProperties":
			known, _ := s["properties"].(map[string]any)
			for key := range object {
				if _, ok := known[key]; !ok && arg == false {
					fail("%s is not known", key)
				}
			}
		case "required":
			for _, key := range arg.([]any) {
				if _, ok := object[key.(string)]; isObject && !ok {
					fail("%s is missing", key)
				}
			}
		case "items":
			for i, item := range array {
				wrong = append(wrong, hold(root, arg, item, at+"["+strconv.Itoa(i)+"]")...)
			}
		case "enum":
			if !slices.Contains(arg.([]any), value) {
				fail("%v is none of %v", value, arg)
			}
		case "const":
			if value != arg {
				fail("%v is not %v", value, arg)
			}
		case "minimum":
			if isNumber && number < arg.(float64) {
				fail("%v is under %v", number, arg)
			}
		default:
			fail("the schema says %s, which is not known here", word)
		}
	}
	return wrong
}
