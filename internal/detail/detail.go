package detail

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// cornerCell is a cell of a page with the bends that are drawn in it, and how they come to stand in it.
type cornerCell struct {
	chain
	pose
	box scene.Box
}

// settle gives each chain its cell, in order: one that needs two cells takes them side by side, and one that follows may
// stand in a cell that was left free before it. One that fits no cell is parted.
func settle(s *folio.Set, list []chain, cells []scene.Box) [][]cornerCell {
	var pages [][]cornerCell
	var taken [][]bool
	columns := perRow(cells)
	for len(list) > 0 {
		c := list[0]
		list = list[1:]
		fit, ok := fitting(s, c, cells[0], columns > 1)
		if !ok && len(c.bends) > 1 {
			list = append(c.parted(), list...)
			continue
		}
		for p := 0; ; p++ {
			if p == len(pages) {
				pages, taken = append(pages, nil), append(taken, make([]bool, len(cells)))
			}
			i := freeCells(taken[p], columns, fit.wide)
			if i < 0 {
				continue
			}
			cell := cornerCell{chain: c, pose: fit, box: cells[i]}
			taken[p][i] = true
			if fit.wide {
				taken[p][i+1] = true
				cell.box.X1 = cells[i+1].X1
			}
			pages[p] = append(pages[p], cell)
			break
		}
	}
	for _, page := range pages {
		slices.SortStableFunc(page, func(a, b cornerCell) int {
			return cmp.Or(cmp.Compare(a.box.Y0, b.box.Y0), cmp.Compare(a.box.X0, b.box.X0))
		})
	}
	return pages
}

// freeCells is the first free cell of a page, or the first of two free ones side by side; -1 where there is none.
func freeCells(taken []bool, columns int, wide bool) int {
	for i := range taken {
		if taken[i] || wide && (i%columns == columns-1 || taken[i+1]) {
			continue
		}
		return i
	}
	return -1
}

// cornerNumber is the number in the name of a corner, -1 where there is none.
func cornerNumber(name string) int {
	n, err := strconv.Atoi(strings.TrimPrefix(name, "C"))
	if err != nil {
		return -1
	}
	return n
}

// ranges names corners in short: C1 TO C4, C9.
func ranges(names []string) string {
	var out []string
	for i := 0; i < len(names); {
		j := i
		for j+1 < len(names) && cornerNumber(names[j]) >= 0 && cornerNumber(names[j+1]) == cornerNumber(names[j])+1 {
			j++
		}
		switch {
		case j == i:
			out = append(out, names[i])
		case j == i+1:
			out = append(out, names[i], names[j])
		default:
			out = append(out, names[i]+" TO "+names[j])
		}
		i = j + 1
	}
	if n := len(out); n == 2 && !strings.Contains(out[0]+out[1], " TO ") {
		return out[0] + " AND " + out[1]
	}
	return strings.Join(out, ", ")
}

// detailScale is 1:4, in a metric room 1:5.
func detailScale(s *folio.Set) int64 { return detailScales(s)[0] }

// detailScales are the scales of a detail, the usual one first.
//
// Source: reduction scales of ISO 5455:1979 clause 5.1; scales of a US architect's rule.
func detailScales(s *folio.Set) []int64 {
	if s.Metric() {
		return []int64{5, 10, 20, 50}
	}
	return []int64{4, 8, 12, 16, 24}
}

// grid parts the cells of a page by hairlines.
func grid(b *folio.Board, cells []scene.Box) {
	k := b.Look
	for _, c := range cells {
		if c.X0 > b.Field.X0+1 {
			b.Page.VLine(c.X0, c.Y0+k.Of(3), c.Y1-k.Of(3), scene.Pen(scene.Frame, k.Extension))
		}
		if c.Y0 > cells[0].Y0+1 {
			b.Page.HLine(c.X0+k.Of(3), c.X1-k.Of(3), c.Y0, scene.Pen(scene.Frame, k.Extension))
		}
	}
}

// titleFoot is how much of a cell a title of two lines takes, on the office page.
const titleFoot = 20

// footOf is how much a title takes.
func footOf(k draft.Look, t draft.Title) float64 { return math.Max(k.Of(titleFoot), t.Low(k)+k.Of(11)) }

// clearOf is what a cell leaves its drawing and title.
func clearOf(s *folio.Set, cell scene.Box) scene.Box {
	k := s.Look
	return scene.Box{X0: cell.X0 + k.Of(5), Y0: cell.Y0 + k.Of(5), X1: cell.X1 - k.Of(5), Y1: cell.Y1 - k.Of(4)}
}

// cornerIn draws the bends of a cell and the title under them.
func cornerIn(b *folio.Board, cell cornerCell, n int) {
	k := b.Look
	clear := clearOf(b.Set, cell.box)
	ratio := draft.Ratio(cell.scale, b.Metric())
	name := cell.title()
	view := scene.View{Box: cell.box.Inset(k.Of(4)), Scale: float64(cell.scale), Metric: b.Metric(), Name: name, Ratio: ratio}
	t := titleOf(b.Set, cell.chain, cell.scale, b.Leaf.Number, n, clear)
	view.Box.Y1 -= footOf(k, t)
	at := titleAt(k, t, clear)
	var trial scene.Group
	titled := t.Draw(&trial, k, at)
	p := &chainPlan{Set: b.Set, chain: cell.chain, pose: cell.pose}
	table := returnTable(b.Set, cell.chain)
	placed := p.place(clear, titled, table)
	p.g = b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(cell.scale)), folio.Datum("corners", strings.Join(cell.names(), " ")))
	p.space = draft.NewSpace(scene.Box{})
	p.draw()
	t.Draw(&b.Page.Group, k, at)
	if table != nil {
		table.Draw(p.g, k, placed, 0, table.High(k)+1)
	}
}

// titleOf is the title of a cell.
func titleOf(s *folio.Set, c chain, scale int64, page string, n int, clear scene.Box) draft.Title {
	var walls []string
	for i, b := range c.bends {
		if walls = append(walls, s.Room.Walls[b.LeftWall].Name); i == len(c.bends)-1 && (!c.loop || c.cut != nil) {
			walls = append(walls, s.Room.Walls[b.RightWall].Name)
		}
	}
	of := strings.Join(walls, ", ")
	if !c.loop {
		of = walls[0] + " to " + walls[len(walls)-1]
	}
	if b := c.bends[0]; len(c.bends) == 1 && b.Radius.MM()/float64(scale)*math.Tan(b.Angle*math.Pi/360) > s.Look.Of(roundMost) {
		of += "; the round is not to scale"
	}
	under := []string{"SCALE " + draft.Ratio(scale, s.Metric()) + "   " + angles(s, c), of}
	return draft.Title{Mark: fmt.Sprint(n), Page: page, Name: c.title(), Under: under, Most: min(clear.W(), s.Look.Of(118))}
}

// titleAt is where the title of a cell stands.
func titleAt(k draft.Look, t draft.Title, clear scene.Box) scene.Point {
	return scene.Pt(clear.X0, clear.Y1-footOf(k, t)+k.Of(7))
}

// returnTable gives what the plan of a chain, which is drawn at the floor, cannot: both returns at ceiling and floor of a
// leaning bend, the least ones bold, and the skew; and the returns that run on round the next bend. It is nil where nothing is left to say.
func returnTable(s *folio.Set, c chain) *draft.Table {
	f := s.Style.Format
	leans := false
	for _, b := range c.bends {
		leans = leans || b.Lean != 0 || b.Skew != 0
	}
	one := len(c.bends) == 1
	if !leans && (one || !roundBends(s, c)) {
		return nil
	}
	t := &draft.Table{Columns: []draft.Column{{}, {Head: "LEFT", Align: scene.End}, {Head: "RIGHT", Align: scene.End}}}
	if leans {
		t.Columns = append(t.Columns, draft.Column{Head: "SKEW", Align: scene.End})
	}
	if !one {
		t.Title, t.Columns[0].Head = "RETURNS", "BEND"
	}
	row := func(b *layout.Corner, name string, left, right L, skew string, strong bool) {
		if !one {
			name = strings.TrimSpace(b.Name + " " + name)
		}
		cells := []string{name, f(left), f(right)}
		if leans {
			cells = append(cells, skew)
		}
		t.Rows = append(t.Rows, draft.Row{Cells: cells, Strong: strong, Tag: scene.Tag{Class: "returns", Data: []scene.Datum{folio.Datum("corner", b.Name)}}})
	}
	for _, b := range c.bends {
		if b.Lean == 0 && b.Skew == 0 && b.LeftReturnTop == b.LeftReturnBottom && b.RightReturnTop == b.RightReturnBottom {
			row(b, "", b.LeftReturn, b.RightReturn, "", false)
			continue
		}
		worst := min(b.LeftReturnTop, b.RightReturnTop) < min(b.LeftReturnBottom, b.RightReturnBottom)
		row(b, "ceiling", b.LeftReturnTop, b.RightReturnTop, f(b.Skew), worst)
		row(b, "floor, as drawn", b.LeftReturnBottom, b.RightReturnBottom, "", !worst)
	}
	t.Fit(s.Look, 0)
	return t
}

// angle prints an angle in degrees.
func angle(degrees float64) string {
	text := fmt.Sprintf("%.1f", degrees)
	return strings.TrimSuffix(text, ".0") + "°"
}
