package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html/template"
	"strings"
	"unicode"

	"flitchlay/internal/finding"
	"flitchlay/internal/font"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// File is a room as one HTML file: ribbon, elevations and the crew's pages with the cards, with what is told on pointing, and as plain
// pages where no script runs. It loads nothing from anywhere. The crew's pages may be nil.
//
// Errors: a fault of the program: something that cannot be drawn.
func File(p *layout.Plan, crew *scene.Document) ([]byte, error) {
	d, err := NewDrawer(p, true)
	if err != nil {
		return nil, err
	}
	f := &fileMaker{plan: p, drawer: d, walls: d.Facts(true)}
	in := fileText{Room: p.Room.Project.Title, Counts: d.Counts(), Findings: d.Findings(), Unfit: finding.Any(p.Findings, finding.Must)}
	in.Lines = f.lines()
	drawings := map[string]*Drawing{}
	ribbon, err := d.Ribbon(fileWide)
	if err != nil {
		return nil, err
	}
	in.Ribbon = template.HTML(ribbon.SVG)
	drawings["ribbon"] = ribbon
	for i := range f.walls {
		w, err := d.Wall(i, fileWide, fileHigh)
		if err != nil {
			return nil, err
		}
		if w == nil {
			continue
		}
		drawings[fmt.Sprint(i)] = w
		in.Walls = append(in.Walls, fileWall{i, f.walls[i], template.HTML(w.SVG), w.Ratio})
		w.SVG = ""
	}
	ribbon.SVG = ""
	if crew != nil {
		if in.Pages, err = f.pages(crew); err != nil {
			return nil, err
		}
	}
	data, err := json.Marshal(map[string]any{"walls": f.walls, "drawings": drawings, "words": said, "metric": d.set.Metric()})
	if err != nil {
		return nil, err
	}
	in.Data = template.HTML(`<script type="application/json" id="room">` + string(data) + `</script>`)
	return in.write(f.runes(in, crew))
}

// How large drawings are, in mm of their own paper: between a phone's screen, on which they are brought closer, and a desk's.
const (
	fileWide = 230.0
	fileHigh = 130.0
)

// fileText is what the file is filled with.
type fileText struct {
	Room          string
	Lines         [][2]string
	Unfit         bool
	Counts        Counts
	Findings      []Finding
	Ribbon, Data  template.HTML
	Walls         []fileWall
	Pages         []filePage
	Style, Script template.HTML
	Policy        string
}

// fileWall is a wall of the file.
type fileWall struct {
	Index int
	Wall
	SVG   template.HTML
	Ratio string
}

// filePage is a printed page of the file.
type filePage struct {
	ID, Name, Title string
	SVG             template.HTML
}

// fileMaker makes the file of a plan.
type fileMaker struct {
	plan   *layout.Plan
	drawer *Drawer
	walls  []Wall
}

// lines are what the room's file says of the project.
func (f *fileMaker) lines() (list [][2]string) {
	p := f.plan.Room.Project
	for _, x := range [][2]string{{"about_number", p.Number}, {"about_room", p.Room}, {"about_place", p.Place}, {"about_for", p.For}, {"about_by", p.By}, {"about_drawn", p.Drawn}} {
		if x[1] != "" {
			list = append(list, [2]string{Word(x[0]), x[1]})
		}
	}
	return list
}

// pages are the crew's pages, each with its own names.
func (f *fileMaker) pages(d *scene.Document) (list []filePage, err error) {
	for i, p := range d.Pages {
		data, err := svg.Page(p, svg.Options{Inside: fmt.Sprintf("p%d", i)})
		if err != nil {
			return nil, err
		}
		list = append(list, filePage{scene.FileName(p.Name), p.Name, p.Title, template.HTML(data)})
	}
	return list, nil
}

// runes are all that the file letters, so that its faces have them.
func (f *fileMaker) runes(in fileText, crew *scene.Document) []rune {
	texts := []string{in.Room, string(in.Ribbon), string(in.Data)}
	for _, w := range in.Walls {
		texts = append(texts, string(w.SVG))
	}
	for _, l := range in.Lines {
		texts = append(texts, l[0], l[1])
	}
	for _, x := range in.Findings {
		texts = append(texts, x.Message, x.Place, x.Mend)
	}
	if crew != nil {
		for _, p := range crew.Pages {
			texts = append(texts, p.Title)
			p.Texts(func(t *scene.Text) { texts = append(texts, t.Lettered()) })
		}
	}
	for r := ' '; r <= '~'; r++ {
		texts = append(texts, string(r))
	}
	var list []rune
	for _, r := range font.Runes(texts...) {
		if unicode.IsPrint(r) {
			list = append(list, r)
		}
	}
	return list
}

// write fills the file in.
func (in *fileText) write(runes []rune) ([]byte, error) {
	css, err := Asset("page.css")
	if err != nil {
		return nil, err
	}
	style := string(css)
	for name, face := range map[string]*font.Face{"regular.ttf": font.Regular, "bold.ttf": font.Bold} {
		style = strings.Replace(style, `url("`+name+`")`, "url(data:font/ttf;base64,"+base64.StdEncoding.EncodeToString(face.Subset(runes))+")", 1)
	}
	own, err := Asset("file.css")
	if err != nil {
		return nil, err
	}
	style += string(own)
	see, err := Asset("see.js")
	if err != nil {
		return nil, err
	}
	last, err := Asset("file.js")
	if err != nil {
		return nil, err
	}
	_, body, _ := strings.Cut(string(last), "// ----\n") // its import is what stands before it here
	script := string(see) + body
	in.Policy = "default-src 'none'; img-src data:; font-src data:; style-src '" + digest(style) + "'; script-src '" + digest(script) + "'; base-uri 'none'; form-action 'none'"
	in.Style = template.HTML("<style>" + style + "</style>")
	in.Script = template.HTML(`<script type="module">` + script + "</script>")
	text, err := Asset("file.html")
	if err != nil {
		return nil, err
	}
	t, err := template.New("file").Funcs(template.FuncMap{"word": Word, "str": func(n int) string { return fmt.Sprint(n) }}).Parse(string(text))
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = t.Execute(&out, in)
	return out.Bytes(), err
}

// digest is how a content policy names a text.
func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
