// Package svg writes a page of a scene as an SVG file.
//
// What it does: one file per page, at true size, with the lettering inside. As a rule letters are drawn as outlines, so that every program
// shows the same picture, and lie under a transparent text that can be selected, searched and read aloud.
//
// Coordinates and units: a user unit is a millimetre on paper; numbers have three decimals.
//
// Order: items in the order of the scene. Runs of items on one layer share a group with data-layer.
//
// Not here: what is on the page. The package knows no room.
package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// Lettering is how text gets into a file.
type Lettering uint8

// The ways of lettering.
const (
	Overlaid Lettering = iota // outlines to look at, transparent text to select and search
	Outlined                  // outlines only, for cutters and drawing programs that would show text twice
	Live                      // text in an embedded font, for programs that honour one
)

// Options say how a file is written; the zero value is the rule.
type Options struct {
	Lettering Lettering
	Set       string    // title of the set of pages, put before the page's own
	Part      scene.Box // not zero: what is seen of the page
	Inside    string    // not empty: it stands inside a page of a browser that has its faces and styles; begins every name in it, once there
}

// decimals of every number svgo writes: 0.001 mm.
const decimals = 3

// family is the font list of text elements: the embedded font, then its like, then any.
const family = "'Flitchlay Sans','DejaVu Sans Condensed','DejaVu Sans',sans-serif"

// Page writes one page.
//
// Errors: the page holds something that cannot be drawn; see scene.Page.Validate.
func Page(p *scene.Page, o Options) ([]byte, error) {
	if err := p.Validate(); err != nil {
		return nil, fmt.Errorf("svg: %w", err)
	}
	var out bytes.Buffer
	w := &writer{out: &out, svg: svgo.New(&out), lettering: o.Lettering, attrs: map[scene.Style]string{}}
	w.svg.Decimals = decimals
	if o.Inside != "" {
		w.lettering, w.inside = Live, o.Inside
		w.within(p, o.Set, o.seen(p))
	} else {
		w.head(p, o.Set, o.seen(p))
	}
	w.items(p.Items, "")
	w.svg.Gend()
	w.svg.End()
	return out.Bytes(), nil
}

// seen is what is seen of a page.
func (o Options) seen(p *scene.Page) scene.Box {
	if o.Part.IsZero() {
		return p.Paper()
	}
	return o.Part
}

// viewBox is a box as the outermost element has it.
func viewBox(b scene.Box) string {
	return scene.Num(b.X0) + " " + scene.Num(b.Y0) + " " + scene.Num(b.W()) + " " + scene.Num(b.H())
}

// writer is one file being written.
type writer struct {
	out       *bytes.Buffer
	svg       *svgo.SVG
	lettering Lettering
	attrs     map[scene.Style]string
	inside    string // as in Options
	clips     int
	xs, ys    []float64
}

// head writes everything before the first item.
func (w *writer) head(p *scene.Page, set string, seen scene.Box) {
	width, height := scene.Num(seen.W()), scene.Num(seen.H())
	title := titleOf(p, set)
	labels := `aria-labelledby="_title"`
	if p.Desc != "" {
		labels += ` aria-describedby="_desc"`
	}
	// svgo would round sizes to its decimals in any unit and scale the paper; written whole they are exact.
	w.svg.Startraw(
		fmt.Sprintf(`width="%smm" height="%smm" viewBox="%s"`, width, height, viewBox(seen)),
		`role="graphics-document document" `+labels,
		fmt.Sprintf(`data-page="%s"`, escape(p.Name)),
	)
	fmt.Fprintf(w.out, "<title id=\"_title\">%s</title>\n", escape(title))
	if p.Desc != "" {
		fmt.Fprintf(w.out, "<desc id=\"_desc\">%s</desc>\n", escape(p.Desc))
	}
	faces := facesOf(p)
	w.styles(faces, fmt.Sprintf("@page{size:%smm %smm;margin:0}", width, height))
	w.glyphs(faces)
	fmt.Fprintf(w.out, "<rect class=\"paper\" width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n", scene.Num(p.Width), scene.Num(p.Height))
	// PDF's miter limit, so that sharp corners look alike.
	w.svg.Group(`fill="none"`, `stroke="#000000"`, `stroke-miterlimit="10"`, `font-family="`+family+`"`)
}

// titleOf is what a page is called outside its set.
func titleOf(p *scene.Page, set string) string {
	title := strings.TrimSpace(p.Name + " " + p.Title)
	if set != "" {
		title = set + ": " + title
	}
	return title
}

// within writes what head does of a page inside a page of a browser: no size of its own, no styles, no faces.
func (w *writer) within(p *scene.Page, set string, seen scene.Box) {
	fmt.Fprintf(w.out, "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"%s\" role=\"group\" aria-label=\"%s\">\n",
		viewBox(seen), escape(titleOf(p, set)))
	w.svg.Group(`fill="none"`, `stroke="#000000"`, `stroke-miterlimit="10"`, `font-family="`+family+`"`)
}

// faceUse is a face with what a page letters in it.
type faceUse struct {
	face   *font.Face
	weight string // as style sheets call it
	runes  []rune
}

// facesOf are both faces, with the runes that a page needs of each.
func facesOf(p *scene.Page) []faceUse {
	var regular, bold []string
	p.Texts(func(t *scene.Text) {
		if t.Bold {
			bold = append(bold, t.Lettered())
		} else {
			regular = append(regular, t.Lettered())
		}
	})
	return []faceUse{
		{font.Regular, "normal", font.Runes(regular...)},
		{font.Bold, "bold", font.Runes(bold...)},
	}
}

// styles writes the style sheet: the size of the page, and for text the faces, cut down to what the page needs.
func (w *writer) styles(faces []faceUse, css string) {
	if w.lettering != Outlined {
		css += "\ntext{font-kerning:none;font-variant-ligatures:none;white-space:pre}"
		for _, f := range faces {
			if len(f.runes) > 0 {
				css += fmt.Sprintf("\n@font-face{font-family:'Flitchlay Sans';font-weight:%s;src:url(data:font/ttf;base64,%s)}",
					f.weight, base64.StdEncoding.EncodeToString(f.face.Subset(f.runes)))
			}
		}
	}
	w.svg.Style("text/css", css)
}

// glyphs writes the outline of every letter that the page needs, once.
func (w *writer) glyphs(faces []faceUse) {
	if w.lettering == Live {
		return
	}
	w.svg.Def()
	for _, f := range faces {
		for _, r := range f.runes {
			if d := f.face.Outline(r); d != "" {
				w.svg.Path(d, `id="`+glyphID(f.face, r)+`"`)
			}
		}
	}
	w.svg.DefEnd()
}

// items writes a row of items, those of one layer together. given is a layer that the group around them says already.
func (w *writer) items(items []scene.Item, given scene.Layer) {
	open := given
	for _, it := range items {
		layer := scene.LayerOf(it)
		if layer != open {
			if open != given {
				w.svg.Gend()
			}
			if layer != given {
				w.svg.Group(`data-layer="` + escape(string(layer)) + `"`)
			}
			open = layer
		}
		w.item(it)
	}
	if open != given {
		w.svg.Gend()
	}
}

// alike returns the layer that all items have, empty where they differ.
func alike(items []scene.Item) scene.Layer {
	if len(items) == 0 {
		return ""
	}
	layer := scene.LayerOf(items[0])
	for _, it := range items[1:] {
		if scene.LayerOf(it) != layer {
			return ""
		}
	}
	return layer
}

// escape makes any text safe inside an element or an attribute in double quotes.
func escape(s string) string {
	plain := true
	for i := 0; i < len(s) && plain; i++ {
		c := s[i]
		plain = c >= ' ' && c <= '~' && c != '<' && c != '>' && c != '&' && c != '"' && c != '\''
	}
	if plain {
		return s
	}
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // writing to a Builder cannot fail
	return b.String()
}
