package page

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Finding is a finding, with where it is in the room and in the file.
type Finding struct {
	Level   string   `json:"level"`
	Code    string   `json:"code"`
	Place   string   `json:"place"`
	Message string   `json:"message"`
	Mend    string   `json:"mend"`
	Wall    int      `json:"wall"`
	At      *float64 `json:"at"`
	Line    int      `json:"line"`
	Where   string   `json:"where"` // the line, in words
	Text    string   `json:"text"`  // the line itself, where the text is at hand
}

// Counts are the figures over the room.
type Counts struct {
	Sheets  int    `json:"sheets"`
	Narrow  int    `json:"narrow"`
	Left    int    `json:"left"`
	Short   int    `json:"short"`
	Waste   string `json:"waste"`
	Musts   int    `json:"musts"`
	Shoulds int    `json:"shoulds"`
}

// Mistake is what is wrong in a file.
type Mistake struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
	Mend    string `json:"mend"`
	Text    string `json:"text"` // the line as it stands
}

// musts are the names of the seams that a must finding speaks of.
func (d *Drawer) musts() map[string]bool {
	out := map[string]bool{}
	for _, f := range d.set.Plan.Findings {
		if name, ok := strings.CutPrefix(f.Place, "seam "); ok && f.Level == finding.Must {
			out[name] = true
		}
	}
	return out
}

// Findings are those of the plan.
func (d *Drawer) Findings() []Finding {
	list := []Finding{}
	r := d.set.Plan.Room
	for _, f := range d.set.Plan.Findings {
		out := Finding{f.Level.String(), string(f.Code), f.Place, f.Message, f.Mend, f.Wall, nil, f.Line, "", ""}
		if f.Wall >= 0 && f.Wall < len(r.Walls) && d.set.Face(f.Wall) != nil {
			at := f.At.MM()
			out.At = &at
		}
		if out.Line == 0 {
			out.Line = lineOf(d.set.Plan, &f)
		}
		switch {
		case out.Line > 0 && f.File != "":
			out.Where = Word("line_of", fmt.Sprint(out.Line), f.File)
		case out.Line > 0:
			out.Where = Word("line", fmt.Sprint(out.Line))
		}
		list = append(list, out)
	}
	return list
}

// Quote puts the lines of a room's text to the findings that are about one.
func Quote(list []Finding, text []byte) {
	lines := strings.Split(string(text), "\n")
	for i := range list {
		if f := &list[i]; f.Line > 0 && f.Line <= len(lines) && f.Where == Word("line", fmt.Sprint(f.Line)) {
			f.Text = strings.TrimSpace(lines[f.Line-1])
		}
	}
}

// lineOf is the line of the file that a finding is about: of the thing that it names, of the pin that it is at, else of its wall.
func lineOf(p *layout.Plan, f *finding.Finding) int {
	for i := range p.Room.Walls {
		if line := namedLine(&p.Room.Walls[i], f.Place); line > 0 {
			return line
		}
	}
	if f.Wall < 0 || f.Wall >= len(p.Room.Walls) {
		return 0
	}
	w := &p.Room.Walls[f.Wall]
	for _, pin := range w.Pins {
		if pin.X == f.At && (f.Code == finding.PinDropped || f.Code == finding.PinToGrid) {
			return pin.Where.Line
		}
	}
	if line := namedLine(w, f.Message); line > 0 {
		return line
	}
	return w.At.Line
}

// namedLine is the line of the opening or the box of a wall that some words name, 0 where they name none.
func namedLine(w *room.Wall, text string) int {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;:.()", r) })
	for k := range w.Openings {
		if slices.Contains(words, w.Openings[k].Name) {
			return w.Openings[k].At.Line
		}
	}
	for k := range w.Boxes {
		if slices.Contains(words, w.Boxes[k].Name) {
			return w.Boxes[k].At.Line
		}
	}
	return 0
}

// Counts are those of the plan.
func (d *Drawer) Counts() Counts {
	p := d.set.Plan
	c := Counts{Sheets: p.Totals.Sheets, Short: p.Totals.Short}
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if s := &p.Runs[i].Sheets[k]; s.Narrow && s.Lowest {
				c.Narrow++
			}
		}
	}
	for _, s := range p.Left {
		c.Left += len(s.Left)
	}
	if gross := p.Totals.GrossArea.SquareMetres(); gross > 0 {
		c.Waste = fmt.Sprintf("%.0f %%", 100*(1-p.Totals.NetArea.SquareMetres()/gross))
	}
	for _, f := range p.Findings {
		switch f.Level {
		case finding.Must:
			c.Musts++
		case finding.Should:
			c.Shoulds++
		}
	}
	return c
}

// Mistakes are what an error says is wrong in files: with places where it has them, else its words alone.
func Mistakes(err error) []Mistake {
	list := []Mistake{}
	var all *source.Mistakes
	for e := err; e != nil; {
		if m, ok := e.(*source.Mistakes); ok {
			all = m
			break
		}
		u, ok := e.(interface{ Unwrap() error })
		if !ok {
			break
		}
		e = u.Unwrap()
	}
	if all == nil {
		return append(list, Mistake{Message: err.Error()})
	}
	for _, m := range all.List() {
		text, at := all.Text.Home(m.Span)
		line, column := text.Place(at.Start)
		whole := strings.Split(text.Body(), "\n")
		list = append(list, Mistake{text.Name, line, column, m.Message, m.Mend, strings.TrimRight(whole[min(line, len(whole))-1], "\r")})
	}
	return list
}
