package scene

import (
	"fmt"
	"strings"
)

// Dump writes a page as text, one item a line, groups indented: what tests compare.
//
// Units: mm with three decimals. Only what differs from the zero value of a style is written, in a fixed order.
func Dump(p *Page) string {
	var b strings.Builder
	fmt.Fprintf(&b, "page %q %q %s x %s\n", p.Name, p.Title, Num(p.Width), Num(p.Height))
	if !p.Frame.IsZero() {
		fmt.Fprintf(&b, "frame %s\n", dumpBox(p.Frame))
	}
	for _, a := range p.Keep {
		fmt.Fprintf(&b, "keep %q %s\n", a.Name, dumpBox(a.Box))
	}
	dumpItems(&b, "", p.Items)
	return b.String()
}

// Num prints a number for a file: at most three decimals, no exponent, never -0.
func Num(v float64) string { return string(AppendNum(nil, v)) }

func dumpItems(b *strings.Builder, indent string, items []Item) {
	for _, it := range items {
		b.WriteString(indent)
		switch it := it.(type) {
		case *Group:
			b.WriteString("group" + dumpTag(it.Tag))
			if v := it.View; v != nil {
				fmt.Fprintf(b, " view %q 1:%s %q %s", v.Name, Num(v.Scale), v.Ratio, dumpBox(v.Box))
			}
			if it.Clip != nil {
				b.WriteString(" clip" + dumpPoints(it.Clip))
			}
			b.WriteByte('\n')
			dumpItems(b, indent+"  ", it.Items)
			continue
		case *Line:
			b.WriteString("line" + dumpPoints([]Point{it.A, it.B}) + dumpStyle(it.Style))
		case *Poly:
			b.WriteString(map[bool]string{false: "polyline", true: "polygon"}[it.Closed] + dumpPoints(it.Points) + dumpStyle(it.Style))
		case *Rect:
			b.WriteString("rect " + dumpBox(it.Box) + dumpStyle(it.Style))
		case *Circle:
			fmt.Fprintf(b, "circle%s r%s%s", dumpPoints([]Point{it.Centre}), Num(it.Radius), dumpStyle(it.Style))
		case *Path:
			b.WriteString("path " + it.Data() + dumpStyle(it.Style))
		case *Text:
			fmt.Fprintf(b, "text%s %q h%s", dumpPoints([]Point{it.At}), it.String, Num(it.Height))
			if it.Bold {
				b.WriteString(" bold")
			}
			b.WriteString([]string{"", " middle", " end"}[it.Anchor] + []string{"", " centred", " hanging"}[it.Seat])
			if it.Angle != 0 {
				b.WriteString(" turn " + Num(it.Angle))
			}
			if it.Field != 0 {
				b.WriteString(" field " + Num(it.Field))
			}
			b.WriteString(dumpStyle(Style{Layer: it.Layer, Colour: it.Colour}) + dumpTag(it.Tag))
		case *Image:
			fmt.Fprintf(b, "image %s %s %d bytes %q%s", it.Kind, dumpBox(it.Box), len(it.Data), it.Alt, dumpStyle(Style{Layer: it.Layer}))
		case *Link:
			fmt.Fprintf(b, "link %s page %q uri %q", dumpBox(it.Box), it.Page, it.URI)
		}
		b.WriteByte('\n')
	}
}

func dumpTag(t Tag) string {
	s := ""
	for _, f := range []struct{ name, value string }{{"class", t.Class}, {"id", t.ID}, {"title", t.Title}, {"desc", t.Desc}} {
		if f.value != "" {
			s += fmt.Sprintf(" %s=%q", f.name, f.value)
		}
	}
	for _, d := range t.Data {
		s += fmt.Sprintf(" %s=%q", d.Key, d.Value)
	}
	return s
}

func dumpStyle(s Style) string {
	out := ""
	if s.Layer != "" {
		out += " " + string(s.Layer)
	}
	if s.Width != 0 {
		out += " w" + Num(s.Width)
	}
	if s.Colour != Black {
		out += " " + s.Colour.Hex()
	}
	if d := s.Dash.Lengths(); len(d) > 0 {
		out += " dash"
		for _, v := range d {
			out += " " + Num(v)
		}
	}
	out += []string{"", " round", " square"}[s.Cap] + []string{"", " round-join", " bevel"}[s.Join]
	if s.Fill.On {
		out += " fill " + s.Fill.Hex()
	}
	return out
}

func dumpPoints(points []Point) string {
	s := ""
	for _, p := range points {
		s += " " + Num(p.X) + "," + Num(p.Y)
	}
	return s
}

func dumpBox(b Box) string {
	return Num(b.X0) + "," + Num(b.Y0) + " " + Num(b.X1) + "," + Num(b.Y1)
}
