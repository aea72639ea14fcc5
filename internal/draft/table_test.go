package draft

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/scene"
)

// What a row takes by itself adds up to what a table takes, however narrow, and Draw takes as much.
func TestHeightsAddUpToTheTable(t *testing.T) {
	k := Office()
	for _, width := range []float64{60, 90, 180} {
		tb := table(17)
		tb.Fit(k, width)
		sum, rows := tb.Heights(k)
		assert.Len(t, rows, 17)
		for _, h := range rows {
			sum += h
		}
		assert.InDelta(t, tb.High(k), sum, 1e-9)
		p := scene.NewPage("Z-601", "", 300, 900)
		count, box := tb.Draw(&p.Group, k, scene.Pt(20, 20), 0, sum+1e-6)
		assert.Equal(t, 17, count)
		assert.InDelta(t, sum, box.H(), 1e-9)
	}
}

// At its least width a table has all its figures and columns; a little under it, it has not.
func TestLeastWidthCutsNothingOff(t *testing.T) {
	k := Office()
	cut := func(width float64) (cut, columns int) {
		tb := table(9)
		tb.Fit(k, width)
		p := scene.NewPage("Z-601", "", 300, 900)
		tb.Draw(&p.Group, k, scene.Pt(20, 20), 0, 800)
		p.Texts(func(x *scene.Text) {
			if strings.HasSuffix(x.String, "…") {
				cut++
			}
		})
		return cut, len(tb.Columns)
	}
	least := table(9).Least(k)
	n, columns := cut(least + 1e-6)
	assert.Zero(t, n)
	assert.Equal(t, 3, columns)
	_, columns = cut(least - 1)
	assert.Equal(t, 2, columns)
}

// A column that says nothing goes before text is wrapped for it, and stays where there is room.
func TestASilentColumnGoesBeforeTextIsWrapped(t *testing.T) {
	k := Office()
	made := func() *Table {
		tb := &Table{Columns: []Column{{Head: "SHEET"}, {Head: "WALL", Wrap: true}, {Head: "NOTE", Spare: 3}}}
		tb.Rows = []Row{{Cells: []string{"1", "north wall of the hall", ""}}}
		return tb
	}
	whole := made()
	whole.Fit(k, 0)
	tight := made()
	tight.Fit(k, whole.Width()-1)
	assert.Len(t, tight.Columns, 2)
	assert.InDelta(t, k.Of(5.6), tight.rowHeight(k, tight.Rows[0]), 1e-9, "on one line")
	wide := made()
	wide.Fit(k, whole.Width()+1)
	assert.Len(t, wide.Columns, 3)
}

// Of many columns each takes its share of a width that is left; of few, the one that wraps takes it.
func TestWidthThatIsLeftGoesToAllOfManyColumns(t *testing.T) {
	k := Office()
	for _, c := range []struct {
		columns int
		want    []float64 // that each of the first two gains of 60
	}{{3, []float64{60, 0}}, {6, []float64{10, 10}}} {
		made := func() *Table {
			tb := &Table{Rows: []Row{{Cells: make([]string, c.columns)}}}
			for i := range c.columns {
				tb.Columns = append(tb.Columns, Column{Head: "HEAD", Wrap: i == 0})
				tb.Rows[0].Cells[i] = "text"
			}
			return tb
		}
		narrow, wide := made(), made()
		narrow.Fit(k, 0)
		wide.Fit(k, narrow.Width()+60)
		for i, gain := range c.want {
			assert.InDelta(t, gain, wide.Columns[i].Width-narrow.Columns[i].Width, 1e-9, "%d columns, column %d", c.columns, i)
		}
	}
}

// A repeated title is in full where there is room, and never cut off where its main part fits.
func TestContinuedTitleFits(t *testing.T) {
	const title = "SEAMS, from the left end of their wall"
	for _, c := range []struct {
		width float64
		want  string
	}{{200, title + " (continued)"}, {80, "SEAMS (continued)"}, {38, "SEAMS (cont.)"}, {30, "SEAMS, on"}} {
		got := Office().Continued(title, 3.5, c.width)
		assert.Equal(t, c.want, got)
		assert.LessOrEqual(t, scene.Width(got, 3.5, true), c.width)
	}
}
