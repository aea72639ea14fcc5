package pages

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// detailPages are the plan of every wrapped corner, then once for the set the double cut and the terminations.
func detailPages(s *set) []*leaf {
	return append(cornerPages(s), standardPages(s)...)
}

// cornerPages are the plans of all wrapped corners, close ones together in one cell.
func cornerPages(s *set) []*leaf {
	var pages []*leaf
	for _, cells := range s.settle(s.chains(), s.cells(128, 104)) {
		var names []string
		scale := draft.Ratio(s.detailScale(), s.metric())
		l := &leaf{wall: -1}
		for _, c := range cells {
			for _, b := range c.bends {
				l.abouts = append(l.abouts, "corner "+b.Name)
				names = append(names, b.Name)
			}
			if c.scale != s.detailScale() {
				scale = "" // the title block says: as noted
			}
		}
		slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(cornerNumber(a), cornerNumber(b)) })
		l.title, l.scale = "CORNERS "+ranges(names), scale
		if len(names) == 1 {
			l.title = "CORNER " + names[0]
		}
		l.draw = func(b *board) {
			var boxes []scene.Box
			for i, c := range cells {
				b.cornerIn(c, i+1)
				boxes = append(boxes, c.box)
			}
			b.grid(boxes)
		}
		pages = append(pages, l)
	}
	return pages
}

// cornerCell is a cell of a page with the bends that are drawn in it, and how they come to stand in it.
type cornerCell struct {
	chain
	pose
	box scene.Box
}

// settle gives each chain its cell, in order: one that needs two cells takes them side by side, and one that follows may
// stand in a cell that was left free before it. One that fits no cell is parted.
func (s *set) settle(list []chain, cells []scene.Box) [][]cornerCell {
	var pages [][]cornerCell
	var taken [][]bool
	columns := s.perRow(cells)
	for len(list) > 0 {
		c := list[0]
		list = list[1:]
		fit, ok := s.fitting(c, cells[0], columns > 1)
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
		sort.SliceStable(page, func(i, j int) bool {
			a, b := page[i].box, page[j].box
			return a.Y0 < b.Y0 || a.Y0 == b.Y0 && a.X0 < b.X0
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
func (s *set) detailScale() int64 { return s.detailScales()[0] }

// detailScales are the scales of a detail, the usual one first.
//
// Source: reduction scales of ISO 5455:1979 clause 5.1; scales of a US architect's rule.
func (s *set) detailScales() []int64 {
	if s.metric() {
		return []int64{5, 10, 20, 50}
	}
	return []int64{4, 8, 12, 16, 24}
}

// grid parts the cells of a page by hairlines.
func (b *board) grid(cells []scene.Box) {
	k := b.look
	for _, c := range cells {
		if c.X0 > b.field.X0+1 {
			b.page.VLine(c.X0, c.Y0+k.Of(3), c.Y1-k.Of(3), scene.Pen(scene.Frame, k.Extension))
		}
		if c.Y0 > cells[0].Y0+1 {
			b.page.HLine(c.X0+k.Of(3), c.X1-k.Of(3), c.Y0, scene.Pen(scene.Frame, k.Extension))
		}
	}
}

// titleFoot is how much of a cell its title takes, on the office page.
const titleFoot = 20

// clearOf is what a cell leaves its drawing and title.
func (s *set) clearOf(cell scene.Box) scene.Box {
	k := s.look
	return scene.Box{X0: cell.X0 + k.Of(5), Y0: cell.Y0 + k.Of(5), X1: cell.X1 - k.Of(5), Y1: cell.Y1 - k.Of(4)}
}

// cornerIn draws the bends of a cell and the title under them.
func (b *board) cornerIn(cell cornerCell, n int) {
	k := b.look
	clear := b.clearOf(cell.box)
	ratio := draft.Ratio(cell.scale, b.metric())
	name := cell.title()
	view := scene.View{Box: cell.box.Inset(k.Of(4)), Scale: float64(cell.scale), Metric: b.metric(), Name: name, Ratio: ratio}
	view.Box.Y1 -= k.Of(titleFoot)
	t := b.titleOf(cell.chain, cell.scale, b.leaf.number, n, clear)
	at := titleAt(k, clear)
	var trial scene.Group
	titled := t.Draw(&trial, k, at)
	p := &chainPlan{set: b.set, chain: cell.chain, pose: cell.pose}
	table := b.returnTable(cell.chain)
	placed := p.place(clear, titled, table)
	p.g = b.page.Viewed(view, datum("scale", fmt.Sprint(cell.scale)), datum("corners", strings.Join(cell.names(), " ")))
	p.space = draft.NewSpace(scene.Box{})
	p.draw()
	t.Draw(&b.page.Group, k, at)
	if table != nil {
		table.Draw(p.g, k, placed, 0, table.High(k)+1)
	}
}

// titleOf is the title of a cell.
func (s *set) titleOf(c chain, scale int64, page string, n int, clear scene.Box) draft.Title {
	var walls []string
	for i, b := range c.bends {
		if walls = append(walls, s.room.Walls[b.LeftWall].Name); i == len(c.bends)-1 && (!c.loop || c.cut != nil) {
			walls = append(walls, s.room.Walls[b.RightWall].Name)
		}
	}
	of := strings.Join(walls, ", ")
	if !c.loop {
		of = walls[0] + " to " + walls[len(walls)-1]
	}
	under := []string{"SCALE " + draft.Ratio(scale, s.metric()) + "   " + s.angles(c), of}
	return draft.Title{Mark: fmt.Sprint(n), Page: page, Name: c.title(), Under: under, Most: min(clear.W(), s.look.Of(118))}
}

// titleAt is where the title of a cell stands.
func titleAt(k draft.Look, clear scene.Box) scene.Point {
	return scene.Pt(clear.X0, clear.Y1-k.Of(titleFoot)+k.Of(7))
}

// returnTable gives what the plan of a chain cannot: both returns at top and bottom of a leaning bend, the least ones
// bold, and the skew; and the returns that run on round the next bend. It is nil where nothing is left to say.
func (s *set) returnTable(c chain) *draft.Table {
	f := s.style.Format
	leans := false
	for _, b := range c.bends {
		leans = leans || b.Lean != 0 || b.Skew != 0
	}
	one := len(c.bends) == 1
	if !leans && (one || !s.roundBends(c)) {
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
		t.Rows = append(t.Rows, draft.Row{Cells: cells, Strong: strong, Tag: scene.Tag{Class: "returns", Data: []scene.Datum{datum("corner", b.Name)}}})
	}
	for _, b := range c.bends {
		if b.Lean == 0 && b.Skew == 0 && b.LeftReturnTop == b.LeftReturnBottom && b.RightReturnTop == b.RightReturnBottom {
			row(b, "", b.LeftReturn, b.RightReturn, "", false)
			continue
		}
		worst := min(b.LeftReturnTop, b.RightReturnTop) < min(b.LeftReturnBottom, b.RightReturnBottom)
		row(b, "top", b.LeftReturnTop, b.RightReturnTop, f(b.Skew), worst)
		row(b, "bottom", b.LeftReturnBottom, b.RightReturnBottom, "", !worst)
	}
	t.Fit(s.look, 0)
	return t
}

// angle prints an angle in degrees.
func angle(degrees float64) string {
	text := fmt.Sprintf("%.1f", degrees)
	return strings.TrimSuffix(text, ".0") + "°"
}
