package svg

import (
	"encoding/base64"
	"fmt"
	"strings"

	"flitchlay/internal/scene"
)

// item writes one item.
func (w *writer) item(it scene.Item) {
	switch it := it.(type) {
	case *scene.Group:
		w.group(it)
	case *scene.Line:
		w.svg.Line(tidy(it.A.X), tidy(it.A.Y), tidy(it.B.X), tidy(it.B.Y), w.style(it.Style))
	case *scene.Poly:
		w.xs, w.ys = w.xs[:0], w.ys[:0]
		for _, p := range it.Points {
			w.xs, w.ys = append(w.xs, tidy(p.X)), append(w.ys, tidy(p.Y))
		}
		switch {
		case len(it.Points) < 2:
		case it.Closed:
			w.svg.Polygon(w.xs, w.ys, w.style(it.Style))
		default:
			w.svg.Polyline(w.xs, w.ys, w.style(it.Style))
		}
	case *scene.Rect:
		w.svg.Rect(tidy(it.X0), tidy(it.Y0), tidy(it.W()), tidy(it.H()), w.style(it.Style))
	case *scene.Circle:
		w.svg.Circle(tidy(it.Centre.X), tidy(it.Centre.Y), tidy(it.Radius), w.style(it.Style))
	case *scene.Path:
		if len(it.Steps) > 0 {
			w.svg.Path(it.Data(), w.style(it.Style))
		}
	case *scene.Text:
		w.text(it)
	case *scene.Image:
		w.image(it)
	case *scene.Link:
		w.link(it)
	}
}

// group writes a group; one that says nothing leaves no trace.
func (w *writer) group(g *scene.Group) {
	attrs := w.tagged(g.Tag)
	if v := g.View; v != nil {
		said := false
		for _, d := range g.Data {
			said = said || d.Key == "scale"
		}
		if !said {
			attrs = append(attrs, `data-scale="`+scene.Num(v.Scale)+`"`)
		}
	}
	if g.Clip != nil {
		w.clips++
		id := fmt.Sprintf("%s_c%d", w.inside, w.clips)
		w.xs, w.ys = w.xs[:0], w.ys[:0]
		for _, p := range g.Clip {
			w.xs, w.ys = append(w.xs, tidy(p.X)), append(w.ys, tidy(p.Y))
		}
		w.svg.ClipPath(`id="` + id + `"`)
		w.svg.Polygon(w.xs, w.ys)
		w.svg.ClipEnd()
		attrs = append(attrs, `clip-path="url(#`+id+`)"`)
	}
	if len(attrs) == 0 && g.Title == "" && g.Desc == "" {
		w.items(g.Items, "")
		return
	}
	layer := alike(g.Items)
	if layer != "" {
		attrs = append(attrs, `data-layer="`+escape(string(layer))+`"`)
	}
	w.svg.Group(attrs...)
	w.said(g.Tag)
	w.items(g.Items, layer)
	w.svg.Gend()
}

// tagged returns the attributes of a tag.
func (w *writer) tagged(t scene.Tag) []string {
	var attrs []string
	if t.Class != "" {
		attrs = append(attrs, `class="`+escape(t.Class)+`"`)
	}
	if t.ID != "" {
		attrs = append(attrs, `id="`+w.inside+escape(strings.Join(strings.Fields(t.ID), "-"))+`"`)
	}
	for _, d := range t.Data {
		attrs = append(attrs, `data-`+d.Key+`="`+escape(d.Value)+`"`)
	}
	return attrs
}

// said writes the title and the description of a tag.
func (w *writer) said(t scene.Tag) {
	if t.Title != "" {
		w.svg.Title(t.Title)
	}
	if t.Desc != "" {
		w.svg.Desc(t.Desc)
	}
}

// image writes a picture.
func (w *writer) image(i *scene.Image) {
	data := "data:image/" + i.Kind + ";base64," + base64.StdEncoding.EncodeToString(i.Data)
	// svgo takes whole sizes only, so the picture is one unit large and the transform makes it fit.
	w.svg.Image(0, 0, 1, 1, data, `preserveAspectRatio="none"`, `role="img"`, `aria-label="`+escape(i.Alt)+`"`,
		fmt.Sprintf(`transform="matrix(%s 0 0 %s %s %s)"`, scene.Num(i.Box.W()), scene.Num(i.Box.H()), scene.Num(i.Box.X0), scene.Num(i.Box.Y0)))
}

// link writes a transparent area that leads elsewhere.
func (w *writer) link(l *scene.Link) {
	to := scene.FileName(l.Page) + ".svg"
	if w.inside != "" {
		to = "#" + scene.FileName(l.Page)
	}
	if l.Page == "" {
		uri, ok := l.Target()
		if !ok {
			return
		}
		to = uri
	}
	w.svg.Link(escape(to), l.Page)
	w.svg.Rect(tidy(l.Box.X0), tidy(l.Box.Y0), tidy(l.Box.W()), tidy(l.Box.H()), `fill="#ffffff" fill-opacity="0" stroke="none"`)
	w.svg.LinkEnd()
}

// style returns the attributes of a style, without what the outer group says already.
func (w *writer) style(s scene.Style) string {
	s.Layer = ""
	if a, ok := w.attrs[s]; ok {
		return a
	}
	var a []string
	if s.Width > 0 {
		a = append(a, `stroke-width="`+scene.Num(s.Width)+`"`)
		if s.Colour != scene.Black {
			a = append(a, `stroke="`+s.Colour.Hex()+`"`)
		}
		if d := s.Dash.Lengths(); len(d) > 0 {
			n := make([]string, len(d))
			for i, v := range d {
				n[i] = scene.Num(v)
			}
			a = append(a, `stroke-dasharray="`+strings.Join(n, " ")+`"`)
		}
		if s.Cap != scene.Butt {
			a = append(a, `stroke-linecap="`+[]string{"butt", "round", "square"}[s.Cap]+`"`)
		}
		if s.Join != scene.Miter {
			a = append(a, `stroke-linejoin="`+[]string{"miter", "round", "bevel"}[s.Join]+`"`)
		}
	} else {
		a = append(a, `stroke="none"`)
	}
	if s.Fill.On {
		a = append(a, `fill="`+s.Fill.Hex()+`"`)
	}
	w.attrs[s] = strings.Join(a, " ")
	return w.attrs[s]
}

// tidy keeps svgo, which prints fixed decimals, from writing -0.000.
func tidy(v float64) float64 {
	if v > -0.0005 && v < 0 {
		return 0
	}
	return v
}
