package paper

import (
	"fmt"
	"io/fs"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/source"
	"flitchlay/templates"
)

// Names are the templates that come with the program.
func Names() []string {
	entries, err := fs.ReadDir(templates.Files, "pages")
	if err != nil {
		panic(fmt.Sprintf("paper: %v", err))
	}
	var names []string
	for _, e := range entries {
		if name, ok := strings.CutSuffix(e.Name(), ".toml"); ok {
			names = append(names, name)
		}
	}
	return names
}

// IsName reports whether a word of the room file is the name of a template, not the path of one.
func IsName(word string) bool { return !strings.ContainsAny(word, `/\.`) }

// Named gives one of the templates that come with the program.
//
// Errors: one sentence that names the nearest.
func Named(name string) (*Template, error) {
	body, err := templates.Files.ReadFile("pages/" + name + ".toml")
	if err != nil {
		if near := source.Nearest(name, Names()); near != "" {
			return nil, fmt.Errorf("no page template %q; the nearest is %s", name, near)
		}
		return nil, fmt.Errorf("no page template %q; known are %s", name, strings.Join(Names(), ", "))
	}
	return Decode("pages/"+name+".toml", body)
}

// Decode reads a page template.
//
// Errors: a *source.Mistakes with every mistake of the file.
func Decode(name string, body []byte) (*Template, error) {
	root, err := source.Parse(name, body)
	if err != nil {
		return nil, err
	}
	Schema.Unknown(root)
	d := decoder{root}
	t := d.template()
	d.check(t)
	if err := root.Mistakes().Err(); err != nil {
		return nil, err
	}
	return t, nil
}

// decoder reads the tables of one file.
type decoder struct{ root source.Value }

func (d decoder) table(name string) source.Value { return d.root.Get(name).Section() }

func (d decoder) template() *Template {
	p, f := d.table("paper"), d.table("frame")
	t := &Template{Name: need(p, "name", "ANSI B").Text("")}
	t.Width = size(need(p, "width", `"17 in"`), 50, 5080)
	t.Height = size(need(p, "height", `"11 in"`), 50, 5080)
	left, right := size(f.Get("left"), 0, 200), size(f.Get("right"), 0, 200)
	top, bottom := size(f.Get("top"), 0, 200), size(f.Get("bottom"), 0, 200)
	t.Frame = Box{left, top, t.Width - left - right, t.Height - top - bottom}
	t.FrameLine = pen(f.Get("line"))
	t.Centring = truth(f.Get("centring"))

	x := d.table("text")
	t.Text = Text{Small: size(x.Get("small"), Least, 20), Medium: size(x.Get("medium"), Least, 20),
		Large: size(x.Get("large"), Least, 40), Huge: size(x.Get("huge"), Least, 40)}
	l := d.table("lines")
	t.Lines = Lines{Wide: pen(l.Get("wide")), Outline: pen(l.Get("outline")), Seam: pen(l.Get("seam")),
		Thin: pen(l.Get("thin")), Dimension: pen(l.Get("dimension")), Extension: pen(l.Get("extension")),
		Grain: pen(l.Get("grain"))}
	w := d.table("wood")
	t.Wood = Wood{Grain: truth(w.Get("grain")), Colour: truth(w.Get("colour"))}
	o := d.table("pole")
	t.Pole = Pole{Roll: sizeOr(o.Get("roll"), 0, 100, 2000), Longest: size(o.Get("longest"), 500, 5000), Other: truth(o.Get("other")), Openings: truth(o.Get("openings"))}
	t.Discipline = discipline(d.table("number").Get("discipline"))
	t.NumberStyle = numberStyle(d.table("number").Get("style"))
	t.Standing = texts(d.table("notes").Get("standing"))
	c := d.table("install").Get("cards")
	t.Cards = Cards(c.Word(usual(c), cards()...))
	d.strip(t)
	d.elevation(t)
	return t
}

// discipline is one letter, or two: the first part of every page number.
//
// Source: sheet number of the US National CAD Standard, a letter and a hyphen, or two letters.
func discipline(v source.Value) string {
	word := v.Text(usual(v))
	other := func(r rune) bool { return r < 'A' || r > 'Z' }
	if strings.ContainsFunc(word, other) || len(word) < 1 || len(word) > 2 {
		v.Mistake(fmt.Sprintf("write %q", usual(v)), "%q is no discipline: one capital letter, or two", word)
		return usual(v)
	}
	return word
}

func (d decoder) strip(t *Template) {
	s := d.table("strip")
	t.Strip = box(need(s, "box", "[20, 225.4, 401.8, 44]"))
	t.StripLine, t.Divider = pen(s.Get("line")), pen(s.Get("divider"))
	t.Field = left(t.Frame, t.Strip)
	if f := s.Get("field"); f.Given() {
		t.Field = box(f)
	}
	for _, v := range s.Get("block").Tables() {
		b := Block{Kind: Kind(need(v, "kind", `"stamp"`).Word("", kinds()...)), Box: box(need(v, "box", "[80, 225.4, 72, 44]")),
			Heading: v.Get("heading").Text(""), Row: grown(v.Get("row_height"), t.Unit(), 3, 60)}
		for _, c := range v.Get("columns").Items() {
			b.Columns = append(b.Columns, size(c, 3, 1000))
		}
		for _, r := range v.Get("row").Items() { // a title block's rows
			b.Rows = append(b.Rows, row(r, t.Unit()))
		}
		t.Blocks = append(t.Blocks, b)
	}
}

func row(v source.Value, unit float64) Row {
	r := Row{Height: size(need(v, "height", "11"), 3, 400), Logo: size(v.Get("logo"), 0, 400), Number: size(v.Get("number"), 0, 400)}
	for _, l := range v.Get("line").Tables() {
		text := need(l, "text", `"{title}"`)
		line := Line{Text: text.Text(""), Height: grown(l.Get("height"), unit, Least, 60), Bold: truth(l.Get("bold"))}
		names, paired := unknown(line.Text)
		if !paired {
			text.Mistake("write {title}", "a brace without its partner in %q", line.Text)
		}
		for _, name := range names {
			mend := "known are " + strings.Join(fieldNames(), ", ")
			if near := source.Nearest(name, fieldNames()); near != "" {
				mend = "write {" + near + "}"
			}
			text.Mistake(mend, "unknown field {%s}", name)
		}
		r.Lines = append(r.Lines, line)
	}
	return r
}

func (d decoder) elevation(t *Template) {
	e, k := d.table("elevation"), t.Unit()
	t.Elevation = Elevation{
		Width:  sizeOr(e.Get("width"), t.Field.W-71.8*k, 0, 5080),
		Height: sizeOr(e.Get("height"), t.Field.H-87.4*k, 0, 5080),
		Middle: sizeOr(e.Get("middle"), t.Field.X+t.Field.W/2, 0, 5080),
		Top:    sizeOr(e.Get("top"), t.Field.Y+42*k, 0, 5080),
		Inch:   scales(e.Get("inch")),
		Metric: scales(e.Get("metric")),
	}
}

// left is what a strip along one side leaves of the frame.
func left(frame, strip Box) Box {
	switch {
	case strip.W > frame.W-1 && strip.Y > frame.Y+frame.H/2:
		return Box{frame.X, frame.Y, frame.W, strip.Y - frame.Y}
	case strip.W > frame.W-1:
		return Box{frame.X, strip.Foot(), frame.W, frame.Foot() - strip.Foot()}
	case strip.H > frame.H-1 && strip.X > frame.X+frame.W/2:
		return Box{frame.X, frame.Y, strip.X - frame.X, frame.H}
	case strip.H > frame.H-1:
		return Box{strip.Right(), frame.Y, frame.Right() - strip.Right(), frame.H}
	}
	return Box{}
}

// need notes a missing key.
func need(v source.Value, name, example string) source.Value {
	f := v.Get(name)
	if !f.Given() {
		f.Mistake("write "+name+" = "+example, "%s is missing", name)
	}
	return f
}

// pen is the width of a line.
func pen(v source.Value) float64 { return size(v, 0.05, 5) }

// size is a length on paper in millimetres, within bounds.
func size(v source.Value, least, most float64) float64 { return grown(v, 1, least, most) }

// grown is size where what the key usually is grows with all distances on the page.
func grown(v source.Value, unit, least, most float64) float64 {
	return sizeOr(v, usualSize(v)*unit, least, most)
}

// sizeOr is size where what is taken for a missing one depends on others.
func sizeOr(v source.Value, other, least, most float64) float64 {
	var mm float64
	switch v.Kind() {
	case source.Absent:
		return other
	case source.String:
		l, err := length.Parse(v.Text(""), length.Millimetres)
		if err != nil {
			v.Mistake(`write 17.5, or "17 1/2 in"`, "%q is no length: %v", v.Text(""), err)
			return other
		}
		mm = l.MM()
	default:
		mm = v.Number(other)
	}
	if mm < least || mm > most {
		v.Mistake(fmt.Sprintf("write %s to %s", figure(least), figure(most)), "%s mm is out of bounds here", figure(mm))
		return other
	}
	return mm
}

// box is [x, y, width, height].
func box(v source.Value) Box {
	if !v.Given() {
		return Box{}
	}
	items := v.Items()
	if len(items) != 4 {
		v.Mistake("write [x, y, width, height]", "a box takes four lengths, not %d", len(items))
		return Box{}
	}
	return Box{size(items[0], 0, 5080), size(items[1], 0, 5080), sizeOr(items[2], 1, 1, 5080), sizeOr(items[3], 1, 1, 5080)}
}

func scales(v source.Value) []int64 {
	other := usualScales(v)
	if !v.Given() {
		return other
	}
	var list []int64
	for _, item := range v.Items() {
		n := item.Whole(1)
		if n < 1 || n > 1000 || len(list) > 0 && n <= list[len(list)-1] {
			item.Mistake("write [16, 24, 32, 48]", "scales go from the largest drawing to the smallest, 1 to 1000")
			return other
		}
		list = append(list, n)
	}
	if len(list) == 0 {
		v.Mistake("write [16, 24, 32, 48]", "at least one scale is needed")
		return other
	}
	return list
}

func texts(v source.Value) []string {
	var list []string
	for _, item := range v.Items() {
		list = append(list, item.Text(""))
	}
	return list
}

// figure prints a number without needless zeros.
func figure(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", v), "0"), ".")
}
