package scene

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
)

// MaxPaper is the longest side of a page that files can hold, in mm.
//
// Source: 14400 default user units of 1/72 in, ISO 32000-1 Annex C (from memory).
const MaxPaper = 5080

// Validate says what no backend could draw: numbers that are not finite, pages without size, names used twice, links to nowhere.
//
// Errors: all faults, joined. A fault is one of the program that recorded the page, not of its user.
func (d *Document) Validate() error {
	var faults []error
	names := map[string]bool{}
	for _, p := range d.Pages {
		if names[p.Name] {
			faults = append(faults, fmt.Errorf("page %q: name used twice", p.Name))
		}
		names[p.Name] = true
	}
	reached := maps.Clone(names)
	for _, name := range d.Elsewhere {
		reached[name] = true
	}
	for _, p := range d.Pages {
		faults = append(faults, p.Validate())
		p.Walk(func(it Item) {
			if g, ok := it.(*Group); ok {
				for i, x := range g.Data {
					if slices.ContainsFunc(g.Data[:i], func(o Datum) bool { return o.Key == x.Key }) {
						faults = append(faults, fmt.Errorf("page %q: a part has %q twice", p.Name, x.Key))
					}
				}
			}
			if l, ok := it.(*Link); ok && l.Page != "" && !reached[l.Page] {
				faults = append(faults, fmt.Errorf("page %q: link to page %q, which is not there", p.Name, l.Page))
			}
		})
	}
	level := -1
	for _, e := range d.Outline {
		if e.Level < 0 || e.Level > level+1 {
			faults = append(faults, fmt.Errorf("outline entry %q: level %d after %d", e.Title, e.Level, level))
		}
		if level = e.Level; !names[e.Page] {
			faults = append(faults, fmt.Errorf("outline entry %q: no page %q", e.Title, e.Page))
		}
		if !finite(e.Y) {
			faults = append(faults, fmt.Errorf("outline entry %q: place is not finite", e.Title))
		}
	}
	return errors.Join(faults...)
}

// Validate says what no backend could draw of this page.
func (p *Page) Validate() error {
	var faults []error
	fault := func(format string, a ...any) {
		faults = append(faults, fmt.Errorf("page %q: "+format, append([]any{p.Name}, a...)...))
	}
	if !(p.Width > 0 && p.Height > 0 && p.Width <= MaxPaper && p.Height <= MaxPaper) {
		fault("no paper of %g x %g mm", p.Width, p.Height)
	}
	ids := map[string]bool{}
	tag := func(t Tag) {
		if t.ID != "" && ids[t.ID] {
			fault("id %q used twice", t.ID)
		}
		ids[t.ID] = true
		for _, d := range t.Data {
			if !keyed(d.Key) {
				fault("data key %q", d.Key)
			}
		}
	}
	p.Walk(func(it Item) {
		if !sound(it) {
			fault("%T holds a number that is not finite: %+v", it, it)
		}
		switch it := it.(type) {
		case *Group:
			tag(it.Tag)
			if it.View != nil && !(it.View.Scale > 0) {
				fault("view %q: scale %g", it.View.Name, it.View.Scale)
			}
		case *Text:
			tag(it.Tag)
			if !(it.Height > 0) {
				fault("text %q: height %g", it.String, it.Height)
			}
		case *Path:
			if len(it.Steps) > 0 && it.Steps[0].Kind != MoveTo {
				fault("path without a start")
			}
		case *Image:
			if it.Kind != "png" && it.Kind != "jpeg" {
				fault("picture of kind %q", it.Kind)
			}
		}
	})
	return errors.Join(faults...)
}

// Walk visits every item of the group, depth first, in the order drawn.
func (g *Group) Walk(visit func(Item)) {
	for _, it := range g.Items {
		visit(it)
		if in, ok := it.(*Group); ok {
			in.Walk(visit)
		}
	}
}

// sound says whether every number of an item is finite.
func sound(it Item) bool {
	box := func(b Box) bool { return finite(b.X0, b.Y0, b.X1, b.Y1) }
	style := func(s *Style) bool { return finite(s.Width) && finite(s.Dash[:]...) }
	points := func(ps []Point) bool {
		return !slices.ContainsFunc(ps, func(p Point) bool { return !finite(p.X, p.Y) })
	}
	switch it := it.(type) {
	case *Group:
		return points(it.Clip) && (it.View == nil || box(it.View.Box) && finite(it.View.Scale))
	case *Line:
		return finite(it.A.X, it.A.Y, it.B.X, it.B.Y) && style(&it.Style)
	case *Poly:
		return points(it.Points) && style(&it.Style)
	case *Rect:
		return box(it.Box) && style(&it.Style)
	case *Circle:
		return finite(it.Centre.X, it.Centre.Y, it.Radius) && style(&it.Style)
	case *Path:
		return style(&it.Style) && !slices.ContainsFunc(it.Steps, func(s Step) bool {
			return !finite(s.P.X, s.P.Y, s.C1.X, s.C1.Y, s.C2.X, s.C2.Y)
		})
	case *Text:
		return finite(it.At.X, it.At.Y, it.Height, it.Angle, it.Field)
	case *Image:
		return box(it.Box)
	case *Link:
		return box(it.Box)
	}
	panic(fmt.Sprintf("scene: unknown item %T", it))
}

func finite(numbers ...float64) bool {
	for _, v := range numbers {
		// Beyond this the last digits of a file's numbers are lost; no paper is that large.
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return false
		}
	}
	return true
}

// keyed says whether a text can be the end of an attribute's name.
func keyed(key string) bool {
	for _, r := range key {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' {
			return false
		}
	}
	return key != ""
}
