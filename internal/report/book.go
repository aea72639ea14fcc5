package report

import (
	"archive/zip"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Book writes a workbook: one worksheet for each name of a table, with a lead in front of every row.
//
// Order: rows are put on disk as they come, so that memory does not grow with them; the file is written by Close.
type Book struct {
	w     io.Writer
	names []string
	lead  []string // heads of the lead
	file  *excelize.File
	pages map[string]*excelize.StreamWriter
	rows  map[string]int
	lines map[string]int // the last row that is no sum
	wide  map[string]int // columns
	bold  int
}

// NewBook starts a workbook with a worksheet for each name, and a lead that has these heads.
func NewBook(w io.Writer, names []string, lead ...string) (*Book, error) {
	x := &Book{w: w, names: names, lead: lead, file: excelize.NewFile(), pages: map[string]*excelize.StreamWriter{}, rows: map[string]int{}, lines: map[string]int{}, wide: map[string]int{}}
	var err error
	if x.bold, err = x.file.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}}); err != nil {
		return nil, err
	}
	for i, name := range names {
		if i == 0 {
			err = x.file.SetSheetName("Sheet1", name)
		} else {
			_, err = x.file.NewSheet(name)
		}
		if err != nil {
			return nil, err
		}
		if err = x.paper(name); err != nil {
			return nil, err
		}
		if x.pages[name], err = x.file.NewStreamWriter(name); err != nil {
			return nil, err
		}
	}
	return x, x.file.SetDocProps(&excelize.DocProperties{Creator: author, LastModifiedBy: author, Created: epoch, Modified: epoch})
}

// Who a workbook is by, and the day that stands in place of a clock: the same input gives the same bytes.
const (
	author = "flitchlay"
	epoch  = "2000-01-01T00:00:00Z"
)

// paper sets a worksheet for printing: across, all columns on one page, as many pages down as it takes.
func (x *Book) paper(name string) error {
	fit, across, wide, high := true, "landscape", 1, 0
	if err := x.file.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	return x.file.SetPageLayout(name, &excelize.PageLayoutOptions{Orientation: &across, FitToWidth: &wide, FitToHeight: &high})
}

// finish puts filters on a worksheet's head, and has the head repeated on every page.
func (x *Book) finish(name string) error {
	if x.rows[name] == 0 {
		return nil
	}
	last, err := excelize.CoordinatesToCellName(x.wide[name], max(2, x.lines[name]))
	if err != nil {
		return err
	}
	if err := x.file.AutoFilter(name, "A1:"+last, nil); err != nil {
		return err
	}
	quoted := "'" + strings.ReplaceAll(name, "'", "''") + "'"
	return x.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: quoted + "!$1:$1", Scope: name})
}

// Widths of columns, in characters.
const (
	columnWide = 14
	textWide   = 40 // of the first column and of those with long texts
)

// Add adds a table's rows to the worksheet of its name, under a head that stays in sight.
func (x *Book) Add(t *Table, lead ...string) error {
	page := x.pages[t.Name]
	if x.rows[t.Name] == 0 {
		var head []any
		for _, h := range header(t, x.lead) {
			head = append(head, excelize.Cell{StyleID: x.bold, Value: h})
		}
		// the library writes the last that it is told first
		for i := len(head) - 1; i >= 0; i-- {
			wide := float64(columnWide)
			if i == 0 || i >= len(x.lead) && t.Columns[i-len(x.lead)].Long {
				wide = textWide
			}
			if err := page.SetColWidth(i+1, i+1, wide); err != nil {
				return err
			}
		}
		if err := page.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
			return err
		}
		if err := page.SetRow("A1", head); err != nil {
			return err
		}
		x.rows[t.Name], x.lines[t.Name], x.wide[t.Name] = 1, 1, len(head)
	}
	rows := t.Lines()
	if t.Sum {
		rows = t.Rows
	}
	for i, row := range rows {
		var cells []any
		for _, s := range lead {
			cells = append(cells, s)
		}
		for _, c := range row {
			if !c.Number {
				cells = append(cells, c.Text)
				continue
			}
			f, err := strconv.ParseFloat(c.Value, 64)
			if err != nil {
				return fmt.Errorf("table %s: %w", t.Name, err)
			}
			if c.Formula == "" {
				cells = append(cells, f)
				continue
			}
			at := x.rows[t.Name] + 1
			by := strings.NewReplacer("{row}", strconv.Itoa(at), "{above}", strconv.Itoa(at-1)).Replace(c.Formula)
			cells = append(cells, excelize.Cell{Formula: by, Value: f})
		}
		x.rows[t.Name]++
		if i < len(t.Lines()) {
			x.lines[t.Name] = x.rows[t.Name]
		}
		if err := page.SetRow("A"+strconv.Itoa(x.rows[t.Name]), cells); err != nil {
			return err
		}
	}
	return nil
}

// Close writes the file.
func (x *Book) Close() error {
	defer x.file.Close()
	for _, name := range x.names {
		if err := x.finish(name); err != nil {
			return err
		}
		if err := x.pages[name].Flush(); err != nil {
			return err
		}
	}
	return x.sorted()
}

// sorted writes the workbook with its parts in one order, which the library leaves open: same input, same bytes. It goes
// through a file, since it may be large.
func (x *Book) sorted() (err error) {
	between, err := os.CreateTemp("", "flitchlay-*.xlsx")
	if err != nil {
		return err
	}
	defer func() {
		between.Close()
		os.Remove(between.Name())
	}()
	if err := x.file.Write(between); err != nil {
		return err
	}
	size, err := between.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	in, err := zip.NewReader(between, size)
	if err != nil {
		return err
	}
	slices.SortFunc(in.File, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	out := zip.NewWriter(x.w)
	for _, f := range in.File {
		if err := again(out, f); err != nil {
			return err
		}
	}
	return out.Close()
}

// again puts a part into another archive, without the times that the first may have.
func again(out *zip.Writer, f *zip.File) error {
	from, err := f.Open()
	if err != nil {
		return err
	}
	defer from.Close()
	to, err := out.CreateHeader(&zip.FileHeader{Name: f.Name, Method: zip.Deflate})
	if err != nil {
		return err
	}
	_, err = io.Copy(to, from)
	return err
}
