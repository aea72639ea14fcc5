package crewday

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// OffKey is where other pages find how far each line may be off.
const OffKey = "offs"

// OffPages draws how far each line may be off, and what breaks then. There are none where no line is left to strike.
func (c *Set) OffPages(n int) []*scene.Page {
	rows := c.offRows()
	if len(rows) == 0 {
		return nil
	}
	level := c.Room.Veneer.Horizontal
	k := c.readable()
	title := "off.head"
	if c.Metric() {
		title = "off.head_metric"
	}
	t := &draft.Table{Title: c.Words.Say(title), Row: k.Of(5.6), Rows: rows}
	for i, head := range c.offHeads(level) {
		column := draft.Column{Head: head, Wrap: i == 0 || i == 1 || i == 3 || i == 5, Bold: i == 2 || i == 4}
		if column.Bold {
			column.Align = scene.End
		}
		t.Columns = append(t.Columns, column)
	}
	var items []draft.Item
	for _, text := range c.offTexts(level) {
		items = append(items, draft.Item{Text: text})
	}
	pages := c.sided(n, c.Words.Both("off.title"), c.Words.Say("off.about"), []folio.Block{{Table: t}}, items, "off.rules", nil)
	c.noteOffs(n, pages)
	return pages
}

// OffKeyOf is where other pages find how far one line may be off, by the place at its left.
func OffKeyOf(r *layout.Run, place int) string {
	return OffKey + " " + r.Name + " " + strconv.Itoa(place)
}

// bare are words without what stands between them, wherever their lines are broken.
func bare(words ...string) string {
	return strings.Join(strings.Fields(strings.Join(scene.Wrap(strings.Join(words, " "), 1, false, math.MaxFloat64), " ")), "")
}

// noteOffs notes on which page each row has come to stand, for all of its lines: rows are read off the pages one after the other.
func (c *Set) noteOffs(n int, pages []*scene.Page) {
	var texts []string
	for _, p := range pages {
		var words []string
		p.Texts(func(t *scene.Text) { words = append(words, t.String) })
		texts = append(texts, bare(words...))
	}
	at, from := 0, 0
	for _, x := range c.offLines() {
		cells := bare(c.Room.Walls[x.wall].Name, c.lines(x.first, x.last), x.off[0])
		for k := at; k < len(texts); k++ {
			if k > at {
				from = 0
			}
			if i := strings.Index(texts[k][from:], cells); i >= 0 {
				at, from = k, from+i+len(cells)
				break
			}
		}
		for _, place := range x.places {
			c.First(OffKeyOf(x.run, place), n+at)
		}
	}
}

// offLine is a line of the table, or several one after the other that may be off by the same.
type offLine struct {
	wall        int
	first, last string
	off         [4]string
	run         *layout.Run
	places      []int // at the left of its lines
}

// offLines are the lines of the room in the order of hanging; what is the same of neighbours on a wall stands in one.
func (c *Set) offLines() []offLine {
	var list []offLine
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		var row []offLine
		for _, s := range inOrder(r) {
			play, ok := c.Plays(r)[s.LeftSheet]
			if !ok {
				continue
			}
			x := offLine{wall: s.Wall, first: c.Seam(r, s), off: [4]string{c.Off(play.Left), c.breaks(r, play.Left), c.Off(play.Right), c.breaks(r, play.Right)}, run: r, places: []int{s.LeftSheet}}
			if s.Closing {
				x.first = c.Words.Say("off.start", c.Plan.PlaceName(r, s.RightSheet))
			}
			x.last = x.first
			if n := len(row) - 1; n >= 0 && row[n].wall == x.wall && row[n].off == x.off && !s.Closing {
				row[n].last = x.last
				row[n].places = append(row[n].places, s.LeftSheet)
				continue
			}
			row = append(row, x)
		}
		list = append(list, row...)
	}
	return list
}

func (c *Set) offRows() []draft.Row {
	var rows []draft.Row
	for _, x := range c.offLines() {
		rows = append(rows, draft.Row{Cells: append([]string{c.Room.Walls[x.wall].Name, c.lines(x.first, x.last)}, x.off[:]...)})
	}
	return rows
}

// inOrder are the seams of a run in the order of hanging; a closing seam is the left edge of the first sheet, and comes first.
func inOrder(r *layout.Run) []*layout.Seam {
	var list []*layout.Seam
	for k := range r.Seams {
		list = append(list, &r.Seams[k])
	}
	slices.SortStableFunc(list, func(a, b *layout.Seam) int {
		if a.Closing != b.Closing && a.Span == b.Span {
			if a.Closing {
				return -1
			}
			return 1
		}
		return a.LeftSheet - b.LeftSheet
	})
	return list
}

// breaks says what breaks of a run beyond a limit.
func (c *Set) breaks(r *layout.Run, l layout.Limit) string {
	who := l.Name
	if l.Place > 0 {
		who = c.Plan.PlaceName(r, l.Place)
	}
	switch l.Must {
	case layout.NoMust:
		return ""
	case layout.MustKept:
		return c.Words.Say("breaks.kept_clear")
	case layout.MustPlate:
		who = c.letterOf(l.Name)
	}
	return c.Words.Of("breaks", l.Must.String(), who)
}

// letterOf is the letter by which the pages of the walls call a box.
func (c *Set) letterOf(name string) string {
	for _, f := range c.Faces {
		for _, b := range f.Boxes() {
			if b.Name == name {
				return b.Letter
			}
		}
	}
	return name
}

// Plays are how far the lines of a run may be off, by the place at their left.
func (c *Set) Plays(r *layout.Run) map[int]layout.Play {
	if c.plays[r] == nil {
		c.plays[r] = c.Plan.Plays(r)
	}
	return c.plays[r]
}

// plain is from where on a limit is given in whole inches, or centimetres: nobody reads a line that is so far off to a fraction.
const plain = 3 * length.Inch

// Off is a limit, never more than it is: rounded down to what the pages print.
func (c *Set) Off(l layout.Limit) string {
	if l.Must == layout.NoMust {
		return c.Words.Say("off.any")
	}
	step := c.Style.Least()
	if l.By >= plain {
		step = length.Inch
		if c.Metric() {
			step = 10 * length.Millimetre
		}
	}
	return c.Style.Inches(l.By / step * step)
}
