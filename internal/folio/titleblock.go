package folio

import (
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// values fill the fields of the title block.
func (b *Board) values() map[string]string {
	p, v := b.Room.Project, b.Room.Veneer
	scale := b.Leaf.Scale
	switch scale {
	case "none":
		scale = ""
	case "":
		scale = "scale as noted"
	default:
		scale, _, _ = strings.Cut(scale, " (") // the plain ratio stands under the view
		scale = "scale " + scale
	}
	return map[string]string{
		"title": p.Title, "number": p.Number, "room": p.Room, "place": p.Place, "for": p.For, "by": p.By, "section": p.Section,
		"submittal": p.SubmittalNumber(), "document": p.Document, "contractor": p.Contractor,
		"drawn by": p.DrawnBy, "checked by": p.CheckedBy, "approved by": p.ApprovedBy,
		"tag": p.Tag, "drawn": p.Drawn, "measured": p.Measured, "issue": b.Issue(), "issued": b.Issued(), "scale": scale,
		"page": strconv.Itoa(b.Leaf.count), "pages": b.pages(), "page title": b.Leaf.Title,
		"page number": b.Leaf.Number, "paper": b.Paper.Name,
		"species": strings.TrimSpace(v.Species + " " + v.Cut),
	}
}

// pages is how many pages the set has; where the set of a room stands among others, those of the room, and it says so.
func (b *Board) pages() string {
	n := strconv.Itoa(len(b.List) + len(b.Others))
	if b.Paper.Room != "" {
		n += " of the room"
	}
	return n
}

// titleBlock draws rows of text, with the logo and the page number where the template wants them.
func (b *Board) titleBlock(g *scene.Group, block paper.Block) {
	k, box := b.Look, BoxOf(block.Box)
	values := b.values()
	y := box.Y0
	for i, row := range block.Rows {
		h := row.Height
		if i == len(block.Rows)-1 {
			h = math.Max(h, box.Y1-y) // the last takes what is left
		}
		if i > 0 {
			g.HLine(box.X0, box.X1, y, scene.Pen(scene.Frame, k.Thin))
		}
		right := box.X1
		if row.Number > 0 {
			right -= row.Number
			g.VLine(right, y, y+h, scene.Pen(scene.Frame, k.Thin))
			c := scene.Pt(right+row.Number/2, y+h/2)
			height := draft.FitHeight(b.Leaf.Number, k.Huge, k.Small, true, row.Number-k.Of(3))
			g.Text(scene.Text{At: c, String: b.Leaf.Number, Height: height, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Frame})
		}
		if row.Logo > 0 && b.logo != nil {
			at := b.logo.Fit(scene.BoxAt(right-row.Logo-k.Of(1), y+k.Of(1), row.Logo, h-k.Of(2)))
			g.Image(b.logo.Image(at, "mark of "+b.Room.Project.By, scene.Frame))
			right -= row.Logo + k.Of(1)
		}
		b.rowLines(g, row, scene.Box{X0: box.X0, Y0: y, X1: right, Y1: y + h}, values)
		y += h
	}
}

// titleLine is a line of a row of the title block as it is lettered.
type titleLine struct {
	text   string
	height float64
	bold   bool
}

// rowLines letters the lines of a row, evenly spread: on more lines where they are too long and there is room, else smaller.
func (b *Board) rowLines(g *scene.Group, row paper.Row, box scene.Box, values map[string]string) {
	k := b.Look
	lines, sum := b.titleLines(row, box, values)
	gap, y := titleGap(box, lines, sum), box.Y0
	for _, l := range lines {
		y += gap + l.height
		g.Text(scene.Text{At: scene.Pt(box.X0+k.Of(2.6), y), String: l.text, Height: l.height, Bold: l.bold, Layer: scene.Frame})
	}
}

// titleLines are the lines of a row with the largest letters that they have room with, and the sum of their heights. Where there
// is no room even with small ones, the last parts of lines are left out: the cover says all of them.
func (b *Board) titleLines(row paper.Row, box scene.Box, values map[string]string) (lines []titleLine, sum float64) {
	k := b.Look
	var texts []string
	for _, l := range row.Lines {
		texts = append(texts, paper.Fill(l.Text, values))
	}
	for _, most := range []float64{math.Inf(1), k.Large, k.Medium, k.Small} {
		if lines, sum = b.titleLinesOf(row, texts, box, most); b.spread(box, lines, sum) {
			return lines, sum
		}
	}
	for i := len(texts) - 1; i >= 0; i-- {
		for strings.Contains(texts[i], apartBy) {
			texts[i] = texts[i][:strings.LastIndex(texts[i], apartBy)]
			if lines, sum = b.titleLinesOf(row, texts, box, k.Small); b.spread(box, lines, sum) {
				return lines, sum
			}
		}
	}
	w := box.W() - 2*k.Of(2.6)
	lines, sum = nil, 0
	for i, l := range row.Lines {
		if texts[i] != "" {
			if scene.Width(texts[i], k.Small, l.Bold) > w { // a word that no line takes: the cover has it
				continue
			}
			lines = append(lines, titleLine{texts[i], k.Small, l.Bold})
			sum += k.Small
		}
	}
	return lines, sum
}

// titleGap is how far lines of a row stand apart.
func titleGap(box scene.Box, lines []titleLine, sum float64) float64 {
	under := 0.0 // what letters of the last line hang down
	if n := len(lines) - 1; n >= 1 {
		under = 0.24 * lines[n].height
	}
	return (box.H() - sum - under) / float64(len(lines)+1)
}

// spread reports whether lines stand far enough apart in a row that none touches what hangs down from the one above.
func (b *Board) spread(box scene.Box, lines []titleLine, sum float64) bool {
	under := 0.0
	for _, l := range lines[:max(0, len(lines)-1)] {
		under = max(under, 0.24*l.height)
	}
	return titleGap(box, lines, sum) >= under+b.Look.Of(0.7)
}

// titleLinesOf parts the texts of a row into lines, with letters no higher than most.
func (b *Board) titleLinesOf(row paper.Row, texts []string, box scene.Box, most float64) (lines []titleLine, sum float64) {
	k := b.Look
	w := box.W() - 2*k.Of(2.6)
	for i, l := range row.Lines {
		if texts[i] == "" {
			continue
		}
		h := draft.FitHeight(texts[i], math.Min(l.Height, most), k.Small, l.Bold, w)
		for _, part := range folded(texts[i], h, l.Bold, w) {
			pieces := []string{part}
			if scene.Width(part, h, l.Bold) > w {
				pieces = scene.Wrap(part, h, l.Bold, w)
			}
			for _, piece := range pieces {
				lines = append(lines, titleLine{piece, h, l.Bold})
				sum += h
			}
		}
	}
	return lines, sum
}

// closer sets the parts of a line that is too long closer together: they stand apart by three spaces, then by two.
func closer(text string, height float64, bold bool, width float64) string {
	if scene.Width(text, height, bold) <= width {
		return text
	}
	return strings.ReplaceAll(text, apartBy, "  ")
}

// apartBy is what the parts of a line of a title block stand apart by.
const apartBy = "   "

// folded parts a line that is too long where its parts stand apart.
func folded(text string, height float64, bold bool, width float64) []string {
	if close := closer(text, height, bold, width); scene.Width(close, height, bold) <= width {
		return []string{close}
	}
	var lines []string
	for _, part := range strings.Split(text, apartBy) {
		part = strings.TrimSpace(part)
		if n := len(lines) - 1; n >= 0 && scene.Width(lines[n]+apartBy+part, height, bold) <= width {
			lines[n] += apartBy + part
		} else if part != "" {
			lines = append(lines, part)
		}
	}
	return lines
}
