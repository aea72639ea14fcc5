package submittal

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// rowPlan is where the words round a row stand: x from the left end of the row, y from its lowest floor.
type rowPlan struct {
	numbers []ribbonNumber
	discs   []ribbonDisc
	labels  []ribbonLabel
	lost    []string // what has no place and is said under the ribbon
	over    float64  // of the numbers, over the highest ceiling
	high    float64  // of the row with all its words, and with what parts it from the next
}

// ribbonNumber is the number of a sheet over its middle, in a line of numbers, the lowest 0.
type ribbonNumber struct {
	text string
	x    float64
	line int
}

// ribbonDisc is the letter of a corner under it.
type ribbonDisc struct {
	name string
	x    float64 // of the corner
	at   scene.Point
}

// ribbonLabel says under a wall which it is, which sheets are on it, and on which page it is drawn.
type ribbonLabel struct {
	part  *ribbonPart
	lines []string // the first bold
	box   scene.Box
	mid   float64 // of the wall
	under bool    // in a lower row, on a leader
	leg   float64 // of the leader, under the discs
}

// Distances round a row on the office page.
const (
	labelTop    = 2.8 // from the floor to the first row of labels
	labelPitch  = 4.0 // between the lines of a label
	labelRow    = 9.4 // from a row of labels to the next
	labelRows   = 9
	discTop     = 6.0  // from the floor to the middle of the discs
	legTop      = 2.4  // to where leaders run straight down
	narrowFoot  = 11.0 // a narrower wall has its label on a leader
	numberPitch = 3.9
	rowAir      = 4.0 // under a row
)

// planRow finds the places of all words of a row.
func (r *ribbon) planRow(row *ribbonRow) rowPlan {
	k := r.Look
	p := rowPlan{numbers: r.planNumbers(row)}
	if len(p.numbers) > 0 {
		lines := 0
		for _, n := range p.numbers {
			lines = max(lines, n.line+1)
		}
		p.over = k.Of(numberPitch)*float64(lines) + k.Of(1)
	}
	space := draft.NewSpace(scene.Box{})
	r.planLabels(row, &p, space, r.planFeet(row, &p, space))
	foot := k.Of(2)
	for _, d := range p.discs {
		foot = max(foot, d.at.Y+elevation.CornerDisc(r.Set, d.name)/2)
	}
	for _, l := range p.labels {
		foot = max(foot, l.box.Y1)
	}
	p.high = p.over + r.mm(row.high-row.low) + foot + k.Of(rowAir)
	return p
}

// planNumbers puts the number of every sheet that hangs upright over the middle of what the row shows of it: those of the lowest
// course in the lowest line, and where numbers are wider than sheets by turns in a second line over it. What has room in neither is left
// out; the label of its wall has the range.
func (r *ribbon) planNumbers(row *ribbonRow) []ribbonNumber {
	k := r.Look
	type shown struct {
		sheets   []*layout.Sheet
		from, to float64
	}
	var list []shown
	courses, tight := 1, false
	for i := range row.parts {
		p := &row.parts[i]
		if p.f.Run.Up {
			continue
		}
		for _, part := range p.f.Parts {
			from, to := max(part.From, p.from), min(part.To, p.to)
			if from >= to {
				continue
			}
			x0, x1 := p.x+r.mm(from-p.from), p.x+r.mm(to-p.from)
			if n := len(list); n > 0 && list[n-1].sheets[0].Place == part.Place && x0-list[n-1].to < k.Of(cutGap)/2 {
				list[n-1].to = x1
				continue
			}
			list = append(list, shown{part.Sheets, x0, x1})
			courses = max(courses, len(part.Sheets))
		}
	}
	air := k.Of(0.9)
	for _, s := range list {
		for _, sh := range s.sheets {
			tight = tight || scene.Width(elevation.NumberOf(sh), k.Small, false)+air > s.to-s.from
		}
	}
	step := 1
	if tight {
		step = 2
	}
	ends := make([]float64, courses*step)
	for i := range ends {
		ends[i] = -1e9
	}
	var out []ribbonNumber
	for _, s := range list {
		for c, sh := range s.sheets {
			text, x := elevation.NumberOf(sh), (s.from+s.to)/2
			w := scene.Width(text, k.Small, false)
			for line := c * step; line < (c+1)*step; line++ {
				if x-w/2 >= ends[line]+air {
					out = append(out, ribbonNumber{text, x, line})
					ends[line] = x + w/2
					break
				}
			}
		}
	}
	return out
}

// ribbonFoot is what stands or passes in the line of discs: the disc of a corner, or the leader of a narrow wall's label.
type ribbonFoot struct {
	x    float64 // of the corner, or of the middle of the wall
	name string  // of the corner; "" for a leader
	part *ribbonPart
}

// feet are the corners of a row with the leaders of the walls between them, from left to right.
func (r *ribbon) feet(row *ribbonRow) []ribbonFoot {
	var list []ribbonFoot
	for i := range row.parts {
		part := &row.parts[i]
		wide := r.mm(part.to - part.from)
		if part.corner != nil && part.first() {
			list = append(list, ribbonFoot{part.x, part.corner.Name, nil})
		}
		if wide < r.Look.Of(narrowFoot) {
			list = append(list, ribbonFoot{part.x + wide/2, "", part})
		}
		if c, _, _ := part.f.Neighbour(true); c != nil && part.last() && !row.joined(i) {
			list = append(list, ribbonFoot{part.x + wide, c.Name, nil})
		}
	}
	return list
}

// planFeet puts the letter of every corner round which a sheet goes under it; where corners stand close they are spread, in their
// order, with room for the leaders of the walls between them. It gives where each leader passes.
func (r *ribbon) planFeet(row *ribbonRow, p *rowPlan, space *draft.Space) map[*ribbonPart]float64 {
	k := r.Look
	list := r.feet(row)
	at, gaps := make([]float64, len(list)), make([]float64, len(list))
	half := func(f ribbonFoot) float64 {
		if f.name == "" {
			return k.Of(0.3)
		}
		return elevation.CornerDisc(r.Set, f.name) / 2
	}
	for i, f := range list {
		at[i] = f.x
		if i > 0 {
			gaps[i] = half(list[i-1]) + half(f) + k.Of(0.8)
		}
	}
	legs := map[*ribbonPart]float64{}
	for i, x := range draft.Spread(at, gaps) {
		f := list[i]
		if f.name == "" {
			legs[f.part] = x
			continue
		}
		d := elevation.CornerDisc(r.Set, f.name)
		disc := ribbonDisc{f.name, f.x, scene.Pt(x, k.Of(discTop))}
		space.Take(scene.BoxRound(disc.at, d, d))
		p.discs = append(p.discs, disc)
	}
	for part, x := range legs {
		space.Stroke(scene.Pt(part.x, k.Of(0.7)), scene.Pt(x, k.Of(legTop)))
		space.Stroke(scene.Pt(x, k.Of(legTop)), scene.Pt(x, k.Of(labelTop+labelRow-1)))
	}
	return legs
}

// joined reports whether the part after one stands against it round a corner.
func (row *ribbonRow) joined(i int) bool {
	return i+1 < len(row.parts) && row.parts[i+1].gap == 0
}

// planLabels puts the label of every wall under it where the wall is about as wide; then those of the others, from left to right, in
// the first free place of the rows under that, on a leader: in full, then with mark and page alone.
func (r *ribbon) planLabels(row *ribbonRow, p *rowPlan, space *draft.Space, legs map[*ribbonPart]float64) {
	k := r.Look
	side := max(0, (r.box.W()-row.wide)/2)
	var rest []*ribbonPart
	for i := range row.parts {
		part := &row.parts[i]
		_, done := legs[part]
		l := r.label(part, true)
		w, wide := l.box.W(), r.mm(part.to-part.from)
		for i := 0; i < len(labelLefts) && !done; i++ {
			l.box = scene.BoxAt(l.mid-w*labelLefts[i], k.Of(labelTop), w, l.box.H())
			on := min(l.box.X1, part.x+wide) - max(l.box.X0, part.x)
			if on >= w*labelOn && l.box.X0 >= -side && l.box.X1 <= row.wide+side && space.Free(l.box, k.Of(1.2)) {
				space.Take(l.box)
				p.labels = append(p.labels, l)
				done = true
			}
		}
		if _, narrow := legs[part]; narrow || !done {
			rest = append(rest, part)
		}
	}
	for i, part := range rest {
		if _, ok := legs[part]; !ok {
			legs[part] = part.x + r.mm(part.to-part.from)/2
		}
		var others []float64 // leaders that have still to come down
		for _, o := range rest[i+1:] {
			x, ok := legs[o]
			if !ok {
				x = o.x + r.mm(o.to-o.from)/2
			}
			others = append(others, x)
		}
		if l, ok := r.lower(part, legs[part], others, space, -side, row.wide+side); ok {
			p.labels = append(p.labels, l)
		} else {
			p.lost = append(p.lost, strings.Join(r.label(part, true).lines, ", "))
		}
	}
}

// labelLefts are how much of a label stands left of the middle of its wall, in the order in which it is tried.
var labelLefts = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}

// labelOn is how much of a label has to stand under its own wall.
const labelOn = 0.8

// lower finds the place of a label in the rows under the first, between two places of the row, clear of the leaders of others.
func (r *ribbon) lower(part *ribbonPart, leg float64, others []float64, space *draft.Space, from, to float64) (ribbonLabel, bool) {
	k := r.Look
	for _, full := range []bool{true, false} {
		l := r.label(part, full)
		l.under, l.leg = true, leg
		w, h := l.box.W(), l.box.H()
		for n := 1; n < labelRows; n++ {
			top := k.Of(labelTop + labelRow*float64(n))
			for _, left := range labelLefts {
				l.box = scene.BoxAt(leg-w*left, top, w, h)
				wide := l.box.Inset(-k.Of(1))
				covers := slices.ContainsFunc(others, func(x float64) bool { return wide.X0 < x && x < wide.X1 })
				a, b := scene.Pt(leg, k.Of(legTop)), scene.Pt(leg, top-k.Of(0.8))
				if covers || l.box.X0 < from || l.box.X1 > to || !space.Free(l.box, k.Of(0.9)) || !space.FreeLine(a, b, k.Of(0.5)) {
					continue
				}
				space.Take(l.box)
				space.Stroke(a, b)
				return l, true
			}
		}
	}
	return ribbonLabel{}, false
}

// label words the label of a part: its mark and name over its sheets and pages, or mark and pages alone. Its box is as large as the
// words.
func (r *ribbon) label(p *ribbonPart, full bool) ribbonLabel {
	k := r.Look
	l := ribbonLabel{part: p, mid: p.x + r.mm(p.to-p.from)/2}
	list := r.wallPages(p)
	pages := strings.Join(list, ", ")
	if n := len(list); n > 2 {
		pages = list[0] + " to " + list[n-1]
	}
	if full {
		l.lines = []string{r.Marks[p.f.Wall] + "  " + p.f.W.Name, strings.TrimSpace(r.sheetsOn(p) + "  " + pages)}
	} else {
		l.lines = []string{r.Marks[p.f.Wall], pages}
	}
	w := 0.0
	for i, line := range l.lines {
		w = max(w, scene.Width(line, k.Small, i == 0))
	}
	l.box = scene.BoxAt(0, 0, w, k.Of(labelPitch)*float64(len(l.lines)-1)+k.Small)
	return l
}

// sheetsOn are the numbers of the sheets that show on a part: 12 to 24.
func (r *ribbon) sheetsOn(p *ribbonPart) string {
	var list []string
	var numbers []int
	flush := func() {
		if len(numbers) > 0 {
			slices.Sort(numbers)
			list = append(list, layout.Ranges(slices.Compact(numbers), " to "))
		}
		numbers = nil
	}
	flitch := ""
	for _, part := range p.f.Parts {
		if part.To <= p.from || part.From >= p.to {
			continue
		}
		for _, s := range part.Sheets {
			if s.Flitch != flitch {
				flush()
				flitch = s.Flitch
			}
			if s.Number > 0 {
				numbers = append(numbers, s.Number)
			}
		}
	}
	flush()
	return strings.Join(list, ", ")
}
