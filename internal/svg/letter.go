package svg

import (
	"strconv"
	"strings"

	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// text writes a line of text: its white field, its outlines, and the text itself.
func (w *writer) text(t *scene.Text) {
	s := t.Lettered()
	ink := t.Ink()
	if ink == nil {
		return
	}
	attrs := w.tagged(t.Tag)
	wrapped := len(attrs) > 0 || t.Tag.Title != "" || t.Tag.Desc != ""
	if wrapped {
		w.svg.Group(attrs...)
		w.said(t.Tag)
	}
	if field := t.FieldBox(); field != nil {
		w.item(&scene.Poly{Points: field, Closed: true, Style: scene.Style{Fill: scene.Solid(scene.White)}})
	}
	if w.lettering != Live {
		w.outlines(t, s)
	}
	if w.lettering != Outlined {
		w.words(t, s)
	}
	if wrapped {
		w.svg.Gend()
	}
}

// outlines writes the glyphs of a line in font units, brought to size by one transform.
func (w *writer) outlines(t *scene.Text, s string) {
	f := font.Of(t.Bold)
	o := t.Pen()
	b := w.out.AvailableBuffer()
	b = append(b, `<g transform="translate(`...)
	b = scene.AppendNum(b, o.X)
	b = append(b, ' ')
	b = scene.AppendNum(b, o.Y)
	b = append(b, ')')
	if t.Angle != 0 {
		b = append(b, `rotate(`...)
		b = scene.AppendNum(b, -t.Angle)
		b = append(b, ')')
	}
	b = append(b, `scale(`...)
	// Nine decimals keep a metre of text within a micrometre.
	b = strconv.AppendFloat(b, t.Height/float64(f.CapHeight()), 'f', 9, 64)
	b = append(b, `)" stroke="none" fill="`...)
	b = append(b, t.Colour.Hex()...)
	b = append(b, `" aria-hidden="true">`...)
	pen := 0
	for _, r := range s {
		if f.Inked(r) {
			b = append(b, `<use xlink:href="#`...)
			b = append(b, glyphID(f, r)...)
			if pen != 0 {
				b = append(b, `" x="`...)
				b = strconv.AppendInt(b, int64(pen), 10)
			}
			b = append(b, `"/>`...)
		}
		pen += f.Advance(r)
	}
	b = append(b, "</g>\n"...)
	w.out.Write(b)
}

// words writes the text element: transparent over outlines, else the picture itself.
func (w *writer) words(t *scene.Text, s string) {
	f := font.Of(t.Bold)
	o := t.Pen()
	var a strings.Builder
	a.WriteString(`font-size="` + scene.Num(f.Size(t.Height)) + `"`)
	if t.Bold {
		a.WriteString(` font-weight="bold"`)
	}
	// Where another font has to stand in, it at least keeps the length.
	a.WriteString(` textLength="` + scene.Num(t.Width()) + `" lengthAdjust="spacingAndGlyphs"`)
	if t.Angle != 0 {
		a.WriteString(` transform="rotate(` + scene.Num(-t.Angle) + ` ` + scene.Num(o.X) + ` ` + scene.Num(o.Y) + `)"`)
	}
	if strings.Contains(s, "  ") || strings.TrimSpace(s) != s {
		a.WriteString(` xml:space="preserve"`)
	}
	if w.lettering == Overlaid {
		a.WriteString(` stroke="none" fill="#000000" fill-opacity="0"`)
	} else {
		a.WriteString(` stroke="none" fill="` + t.Colour.Hex() + `"`)
	}
	w.svg.Text(tidy(o.X), tidy(o.Y), s, a.String())
}

// glyphID names a glyph of a face within the file.
func glyphID(f *font.Face, r rune) string {
	kind := "_r"
	if f == font.Bold {
		kind = "_b"
	}
	return kind + strconv.FormatInt(int64(r), 16)
}
