package count

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

// XLSX writes a workbook: one worksheet for each table, with the room and its unit in front, and one for the job.
//
// Order: rows are put on disk as they come, so that memory does not grow with them; the file is written by Job.
type XLSX struct {
	w     io.Writer
	file  *excelize.File
	pages map[string]*excelize.StreamWriter
	rows  map[string]int
	bold  int
}

// NewXLSX starts a workbook.
func NewXLSX(w io.Writer) (*XLSX, error) {
	x := &XLSX{w: w, file: excelize.NewFile(), pages: map[string]*excelize.StreamWriter{}, rows: map[string]int{}}
	var err error
	if x.bold, err = x.file.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}}); err != nil {
		return nil, err
	}
	for i, name := range append(TableNames(), "job") {
		if i == 0 {
			err = x.file.SetSheetName("Sheet1", name)
		} else {
			_, err = x.file.NewSheet(name)
		}
		if err != nil {
			return nil, err
		}
		if x.pages[name], err = x.file.NewStreamWriter(name); err != nil {
			return nil, err
		}
	}
	return x, nil
}

// Room adds a room's rows to every worksheet.
func (x *XLSX) Room(c *Count) error {
	for _, name := range TableNames() {
		if err := x.table(c.Room, c.Style.Unit.String(), c.Table(name)); err != nil {
			return err
		}
	}
	return nil
}

// table adds rows to one worksheet, under a head that stays in sight.
func (x *XLSX) table(room, unit string, t *Table) error {
	page := x.pages[t.Name]
	if x.rows[t.Name] == 0 {
		var head []any
		for i, h := range header(t) {
			head = append(head, excelize.Cell{StyleID: x.bold, Value: h})
			wide := 14.0
			if i == 0 || i > 1 && t.Columns[i-2].Long {
				wide = 40
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
		x.rows[t.Name] = 1
	}
	for _, row := range t.Rows {
		cells := []any{room, unit}
		for _, c := range row {
			if !c.Number {
				cells = append(cells, c.Text)
				continue
			}
			f, err := strconv.ParseFloat(c.Value, 64)
			if err != nil {
				return fmt.Errorf("table %s: %w", t.Name, err)
			}
			cells = append(cells, f)
		}
		x.rows[t.Name]++
		if err := page.SetRow("A"+strconv.Itoa(x.rows[t.Name]), cells); err != nil {
			return err
		}
	}
	return nil
}

// Job adds the totals and writes the file.
func (x *XLSX) Job(j *Job) error {
	defer x.file.Close()
	if err := x.table("the whole job", j.Style.Unit.String(), j.Table()); err != nil {
		return err
	}
	for _, name := range append(TableNames(), "job") {
		if err := x.pages[name].Flush(); err != nil {
			return err
		}
	}
	return x.sorted()
}

// sorted writes the workbook with its parts in one order, which the library leaves open: same input, same bytes. It goes
// through a file, since it may be large.
func (x *XLSX) sorted() (err error) {
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
