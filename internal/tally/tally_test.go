package tally

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/job"
	"flitchlay/internal/report"
)

// wall is a room of one wall, 8 ft high, that takes n sheets.
func wall(n int) string {
	return fmt.Sprintf("[project]\ntitle = 'A room'\n[veneer]\ngross_width = 24\noverlap = 1\nlength = 120\n[[wall]]\nname = 'North'\nlength = %d\nheight = 96\nright_end = 'trim'\n", 23*n-1)
}

// added adds up a job.
func added(t *testing.T, text string, rooms map[string]string) *Job {
	t.Helper()
	j, err := job.Read("job.toml", []byte(text), func(file string) (string, []byte, error) { return file, []byte(rooms[file]), nil })
	require.NoError(t, err)
	j.Run(1)
	out := New(j)
	require.NoError(t, j.Each(1, nil, func(l *job.Laid) error {
		require.NoError(t, l.Err)
		out.Add(l.Room, count.Of(l.Plan), days.Of(l.Plan))
		return nil
	}))
	return out
}

// text is a table as rows of words.
func text(t *report.Table) (list []string) {
	for _, row := range t.Rows {
		var cells []string
		for _, c := range row {
			cells = append(cells, c.Plain())
		}
		list = append(list, strings.Join(cells, " | "))
	}
	return list
}

const priced = `[price]
currency = "EUR"
sheet = 100
hour = 30
trim = 1.25
[[flitch]]
number = "F1"
sheets = "1-14"
damaged = [5]
spare = 2
[[flitch]]
number = "F2"
sheets = "1-6"
[[room]]
file = "a.toml"
[[room]]
file = "b.toml"
as = "11-12"
[[room]]
file = "own.toml"
`

var rooms = map[string]string{"a.toml": wall(3), "b.toml": wall(4), "own.toml": wall(2) + "[[flitch]]\nnumber='G'\nsheets='1-3'\n"}

// Every sheet is in one column, once for the job: 14 of F1 are 11 laid, 1 damaged and 2 kept back, though each room knows of the two.
func TestEverySheetIsToldOnce(t *testing.T) {
	j := added(t, priced, rooms)
	tables := j.Tables()
	// flitch, delivered, laid, in gaps, damaged, spare, left, short, spares wanted (a tenth, at least two), to order
	assert.Equal(t, []string{"F1 | 14 | 11 | 0 | 1 | 2 | 0 | 0 | 2 | 0 |  | 5", "F2 | 6 | 0 | 0 | 0 | 0 | 6 | 0 | 0 | 0 | 1-6 | ", "G | 3 | 2 | 0 | 0 | 0 | 1 | 0 | 2 | 1 | 3 | ",
		"all | 23 | 13 | 0 | 1 | 2 | 7 | 0 | 4 | 1 |  | "}, text(tables[0]))
	assert.Equal(t, []string{"F1 | a.toml | 3 | 1-3", "F1 | b.toml as 11 | 4 | 4, 6-8", "F1 | b.toml as 12 | 4 | 9-12", "G | own.toml | 2 | 1, 2"}, text(tables[1]))
	sums := j.Sums()
	assert.Equal(t, []int{23, 1, 2, 13, 7, 4, 1}, []int{sums.Delivered, sums.Damaged, sums.Spare, sums.Laid, sums.Left, sums.Want, sums.Order})
	for _, f := range j.stocks() {
		assert.Equal(t, len(f.delivered), len(f.laid)+len(f.gaps)+len(f.damaged)+len(f.spare)+len(f.left), f.number)
	}
	assert.Positive(t, sums.Minutes)
	assert.Contains(t, strings.Join(text(sums.Table()), "\n"), fmt.Sprintf("hours of the crew | %.2f | h", float64(sums.Minutes)/60))
}

// A flitch that is too short for its rooms says how many sheets to order: those short, and spares.
func TestShortFlitchIsOrdered(t *testing.T) {
	j := added(t, "[[flitch]]\nnumber='F'\nsheets='1-5'\n[[room]]\nfile='a.toml'\n[[room]]\nfile='b.toml'\n", rooms)
	assert.Equal(t, "F | 5 | 5 | 0 | 0 | 0 | 0 | 2 | 2 | 4 |  | ", text(j.Tables()[0])[0])
}

// Money is reckoned with the printed figures, so that the printed sum is theirs; in a workbook by formulas.
func TestPrice(t *testing.T) {
	j := added(t, priced, rooms)
	p := j.Tables()[3]
	hours := hundredths(hoursOf(j.minutes)).Text
	var h float64
	fmt.Sscan(hours, &h)
	// 23 delivered and 1 to order; trims of the right ends, 8 ft each, in four rooms
	assert.Equal(t, []string{"veneer, delivered and to order | 24.00 | sheets | 100.00 | 2400.00", fmt.Sprintf("the crew | %s | h | 30.00 | %.2f", hours, h*30),
		"edge trim | 32.00 | ft | 1.25 | 40.00", fmt.Sprintf("sum |  |  |  | %.2f", 2440+h*30)}, text(p))
	assert.Contains(t, p.Title, "without a price: end bead, cutting strip, blades")
	assert.Contains(t, p.Columns[4].Head, "EUR")

	var b bytes.Buffer
	x, err := count.NewXLSX(&b, Names()...)
	require.NoError(t, err)
	for _, table := range j.Tables() {
		require.NoError(t, x.Table(table, j.Unit()))
	}
	require.NoError(t, x.Job(j.Sums()))
	z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	require.NoError(t, err)
	parts := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		require.NoError(t, err)
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		parts[f.Name] = string(data)
	}
	prices := strings.TrimSpace(parts["xl/worksheets/sheet4.xml"])
	prices = prices[strings.Index(prices, "<sheetPr>"):]
	for _, want := range []string{`<f>ROUND(D2*F2,2)</f><v>2400</v>`, `<f>SUM(G2:G4)</f>`, `<autoFilter ref="$A$1:$G$4">`, `fitToPage="true"`, `orientation="landscape"`, `ySplit="1"`, `state="frozen"`} {
		assert.Contains(t, prices, want)
	}
	assert.Contains(t, parts["xl/workbook.xml"], "&#39;price&#39;!$1:$1", "the head is repeated on every page")
	assert.Contains(t, parts["docProps/core.xml"], "<dc:creator>flitchlay<")
	assert.Less(t, strings.Index(prices, `<col min="1"`), strings.Index(prices, `<col min="2"`), "columns rise, as the format asks")
	assert.NotContains(t, parts["docProps/core.xml"], "xuri")
}

// Equal rooms have equal areas in the table, however they are rounded; of all the area is exact.
func TestEqualRoomsHaveEqualAreas(t *testing.T) {
	j := added(t, "[[flitch]]\nnumber='F'\nsheets='1-60'\n[[room]]\nfile='a.toml'\nas='1-7'\n", map[string]string{"a.toml": strings.Replace(wall(3), "height = 96", "height = 95.6", 1)})
	table := j.Tables()[2]
	areas := map[string]bool{}
	for _, row := range table.Rows[:7] {
		areas[row[4].Plain()] = true
	}
	assert.Len(t, areas, 1, "%v", areas)
	// 7 walls of 68 x 95.6 in
	assert.Equal(t, fmt.Sprintf("%.1f0", 7*68*95.6/144), table.Rows[7][4].Plain())
	assert.Contains(t, table.Title, "areas are rounded one by one")
}

// A job without prices is not priced.
func TestNoPrice(t *testing.T) {
	assert.Len(t, added(t, strings.Replace(priced, priced[:strings.Index(priced, "[[flitch]]")], "", 1), rooms).Tables(), 3)
}
