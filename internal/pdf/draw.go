package pdf

import (
	"github.com/go-pdf/fpdf"

	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// items draws a row of items.
func (w *writer) items(items []scene.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *scene.Group:
			w.group(it)
		case *scene.Line:
			if w.pen(it.Style, false) == "D" {
				w.pdf.Line(it.A.X*perMM, it.A.Y*perMM, it.B.X*perMM, it.B.Y*perMM)
			}
		case *scene.Poly:
			w.poly(it)
		case *scene.Rect:
			if op := w.pen(it.Style, true); op != "" {
				w.pdf.Rect(it.X0*perMM, it.Y0*perMM, it.W()*perMM, it.H()*perMM, op)
			}
		case *scene.Circle:
			if op := w.pen(it.Style, true); op != "" {
				w.pdf.Circle(it.Centre.X*perMM, it.Centre.Y*perMM, it.Radius*perMM, op)
			}
		case *scene.Path:
			w.path(it)
		case *scene.Text:
			w.text(it)
		case *scene.Image:
			w.enter(it.Layer)
			w.pdf.ImageOptions(w.picture(it), it.Box.X0*perMM, it.Box.Y0*perMM, it.Box.W()*perMM, it.Box.H()*perMM, false,
				fpdf.ImageOptions{ImageType: it.Kind, AllowNegativePosition: true}, 0, "")
		}
	}
}

// group draws a group, inside its clip where it has one. Layers end at a clip, so that the two nest.
func (w *writer) group(g *scene.Group) {
	if g.Clip == nil {
		w.items(g.Items)
		return
	}
	if len(g.Clip) < 3 {
		return // nothing is inside
	}
	w.enter("")
	points := make([]fpdf.PointType, len(g.Clip))
	for i, p := range g.Clip {
		points[i] = fpdf.PointType{X: p.X * perMM, Y: p.Y * perMM}
	}
	w.pdf.ClipPolygon(points, false)
	w.items(g.Items)
	w.enter("")
	w.pdf.ClipEnd()
	w.lost()
}

func (w *writer) poly(p *scene.Poly) {
	if len(p.Points) < 2 {
		return
	}
	op := w.pen(p.Style, true)
	if op == "" {
		return
	}
	for i, q := range p.Points {
		if i == 0 {
			w.pdf.MoveTo(q.X*perMM, q.Y*perMM)
		} else {
			w.pdf.LineTo(q.X*perMM, q.Y*perMM)
		}
	}
	if p.Closed {
		w.pdf.ClosePath()
	}
	w.pdf.DrawPath(op)
}

func (w *writer) path(p *scene.Path) {
	if len(p.Steps) == 0 {
		return
	}
	op := w.pen(p.Style, true)
	if op == "" {
		return
	}
	for _, s := range p.Steps {
		switch s.Kind {
		case scene.MoveTo:
			w.pdf.MoveTo(s.P.X*perMM, s.P.Y*perMM)
		case scene.LineTo:
			w.pdf.LineTo(s.P.X*perMM, s.P.Y*perMM)
		case scene.CurveTo:
			w.pdf.CurveBezierCubicTo(s.C1.X*perMM, s.C1.Y*perMM, s.C2.X*perMM, s.C2.Y*perMM, s.P.X*perMM, s.P.Y*perMM)
		case scene.Close:
			w.pdf.ClosePath()
		}
	}
	w.pdf.DrawPath(op)
}

// text draws a line of text over its white field.
func (w *writer) text(t *scene.Text) {
	s := t.Lettered()
	if t.Ink() == nil {
		return
	}
	if field := t.FieldBox(); field != nil {
		w.poly(&scene.Poly{Points: field, Closed: true, Style: scene.Style{Layer: t.Layer, Fill: scene.Solid(scene.White)}})
	}
	w.enter(t.Layer)
	size := font.Of(t.Bold).Size(t.Height) * perMM
	if !w.lettered || w.bold != t.Bold || w.fontSize != size {
		style := ""
		if t.Bold {
			style = "B"
		}
		w.pdf.SetFont(family, style, size)
		w.lettered, w.bold, w.fontSize = true, t.Bold, size
	}
	// Letters are filled; with both colours alike fpdf needs no state of its own around the text.
	w.paint(t.Colour)
	w.pdf.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
	o := t.Pen()
	x, y := o.X*perMM, o.Y*perMM
	if t.Angle == 0 {
		w.pdf.Text(x, y, s)
		return
	}
	w.pdf.TransformBegin()
	w.pdf.TransformRotate(t.Angle, x, y)
	w.pdf.Text(x, y, s)
	w.pdf.TransformEnd()
}

// pen brings the page state to a style and returns fpdf's word for what is drawn: D line, F fill, FD both, nothing at all.
func (w *writer) pen(s scene.Style, fills bool) string {
	op := ""
	if fills && s.Fill.On {
		op = "F"
	}
	if s.Width > 0 {
		op += "D"
	}
	if op == "" {
		return ""
	}
	w.enter(s.Layer)
	if !w.known {
		// The fill colour has to be told even where the next item has none: fpdf believes the one before the clip.
		w.pdf.SetFillColor(int(w.fill.R), int(w.fill.G), int(w.fill.B))
	}
	all := !w.known
	if s.Width > 0 || all {
		if all || s.Width != w.width {
			w.pdf.SetLineWidth(s.Width * perMM)
		}
		if all || s.Colour != w.stroke {
			w.pdf.SetDrawColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
		}
		if all || s.Dash != w.dash {
			w.dashBuffer = w.dashBuffer[:0]
			for _, v := range s.Dash.Lengths() {
				w.dashBuffer = append(w.dashBuffer, v*perMM)
			}
			w.pdf.SetDashPattern(w.dashBuffer, 0)
		}
		if all || s.Cap != w.cap {
			w.pdf.SetLineCapStyle([]string{"butt", "round", "square"}[s.Cap])
		}
		if all || s.Join != w.join {
			w.pdf.SetLineJoinStyle([]string{"miter", "round", "bevel"}[s.Join])
		}
		w.width, w.stroke, w.dash, w.cap, w.join = s.Width, s.Colour, s.Dash, s.Cap, s.Join
	}
	w.known = true
	if fills && s.Fill.On {
		w.paint(s.Fill.Colour)
	}
	return op
}

// paint sets the fill colour.
func (w *writer) paint(c scene.Colour) {
	if !w.known {
		w.pen(scene.Style{Layer: w.layer, Width: 0.25}, false)
	}
	if c != w.fill {
		w.pdf.SetFillColor(int(c.R), int(c.G), int(c.B))
		w.fill = c
	}
}
