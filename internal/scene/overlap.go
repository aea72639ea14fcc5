package scene

import (
	"cmp"
	"fmt"
	"slices"
	"sync"
)

// OverlapKind is a way in which two things on a page get in each other's way.
type OverlapKind string

// The kinds of overlap.
const (
	TextOverText   OverlapKind = "text over text"
	TextOverLine   OverlapKind = "text over line"
	TextUnderLine  OverlapKind = "line over text"
	TextHidden     OverlapKind = "text hidden by shape"
	TextFaint      OverlapKind = "text too like its ground"
	TextOnPicture  OverlapKind = "text and picture"
	TextCut        OverlapKind = "text cut by clip"
	TextOffFrame   OverlapKind = "text outside frame"
	OffPaper       OverlapKind = "off the paper"
	InReservedArea OverlapKind = "in reserved area"
)

// Overlap is one place where a page is not clean.
type Overlap struct {
	Kind OverlapKind
	What string // the text, or what else is in the way
	With string // what it meets
	At   Point
}

// String returns the overlap as a line for a test to print.
func (o Overlap) String() string {
	s := fmt.Sprintf("%s: %s", o.Kind, o.What)
	if o.With != "" {
		s += " / " + o.With
	}
	return s + fmt.Sprintf(" at %s,%s", Num(o.At.X), Num(o.At.Y))
}

// heavy is the width from which a line is as strong as an outline: no white field may break it.
const heavy = 0.35

// slack is what counts as touching only: less than a third of the thinnest line.
const slack = 0.04

// contrast is the least difference in brightness of text and ground.
const contrast = 0.4

// hard says whether a line may never run through or under text, white field or not: heavy lines, and the lines that are the drawing's
// statement. Any other line is faint, and a white field over it clears it.
func hard(s Style) bool {
	switch s.Layer {
	case Grain, Hatch:
		return s.Width >= 2*heavy
	case Seams, Dimensions, Frame, Plumb:
		return true
	}
	return s.Width >= heavy-1e-9
}

// Overlaps finds everything on a page that gets in the way of something else, in the order drawn. Text, its white field included, keeps gap
// millimetres from other text and from hard lines.
//
// A shape that is filled hides what was drawn before it, so text on a filled panel is free of what lies underneath.
func Overlaps(p *Page, gap float64) []Overlap {
	f := finders.Get().(*finder)
	defer f.giveBack()
	f.page, f.gap, f.told = p, gap, map[meeting]bool{}
	f.gather(p.Items, nil, "")
	for i := range f.texts {
		f.place(&f.texts[i])
		f.against(i)
	}
	f.rest()
	slices.SortStableFunc(f.found, func(a, b found) int { return cmp.Compare(a.order, b.order) })
	out := make([]Overlap, len(f.found))
	for i, x := range f.found {
		out[i] = x.Overlap
	}
	return out
}

// finders keeps the room that pages took for the pages that come: a page full of grain is tens of thousands of strokes.
var finders = sync.Pool{New: func() any { return new(finder) }}

// giveBack keeps the room of a finder and nothing of its page.
func (f *finder) giveBack() {
	clear(f.texts)
	clear(f.strokes)
	clear(f.fills)
	clear(f.pictures)
	*f = finder{texts: f.texts[:0], strokes: f.strokes[:0], fills: f.fills[:0], pictures: f.pictures[:0]}
	finders.Put(f)
}

// finder holds a page taken apart into what can collide. order is the place of an item in the drawing.
type finder struct {
	page     *Page
	gap      float64
	texts    []lettering
	strokes  []stroke
	fills    []fill
	pictures []picture
	order    int
	found    []found
	told     map[meeting]bool
}

// meeting is one thing meeting another: told once, in however many places they meet.
type meeting struct {
	order, other int
	kind         OverlapKind
}

type found struct {
	order int
	Overlap
}

type lettering struct {
	order int
	*Text
	ink   []Point // corners
	field []Point // corners of the white field, or of the ink where there is none
	box   Box     // Around field
	clips [][]Point
}

type stroke struct {
	order  int
	a, b   Point
	half   float64
	box    Box
	strong bool // hard
	white  bool
	origin
}

// origin is where in the drawing something comes from.
type origin struct {
	layer Layer
	class string // of its group
}

// label names it for a report.
func (o origin) label(kind string) string {
	if o.layer != "" {
		kind += " on " + string(o.layer)
	}
	if o.class != "" {
		kind += " of " + o.class
	}
	return kind
}

type fill struct {
	order  int
	points []Point
	light  float64
	whole  bool // a plain shape, not one of several outlines of a path
	box    Box
	clips  [][]Point
	origin
}

type picture struct {
	order int
	*Image
	seen Box // what the clips leave of it
}

// report tells of an item that meets another; other is the other's order, or for an area a number below 0.
func (f *finder) report(order, other int, kind OverlapKind, what, with string, at Point) {
	m := meeting{order, other, kind}
	if !f.told[m] {
		f.told[m] = true
		f.found = append(f.found, found{order, Overlap{kind, what, with, at}})
	}
}

// place looks at one text alone: paper, frame, clip.
func (f *finder) place(t *lettering) {
	ink := Around(t.ink...)
	what := fmt.Sprintf("%q", t.String)
	switch {
	case !f.page.Paper().Inset(-slack).Contains(ink):
		f.report(t.order, 0, OffPaper, what, "", t.At)
	case t.Layer != Margin && !f.page.Frame.IsZero() && !f.page.Frame.Inset(-slack).Contains(ink):
		f.report(t.order, 0, TextOffFrame, what, "", t.At)
	}
	for _, c := range t.clips {
		if !holds(c, t.ink) {
			f.report(t.order, 0, TextCut, what, "", t.At)
		}
	}
	for k, a := range f.page.Keep {
		if apart(t.ink, a.Corners()) < -slack {
			f.report(t.order, -1-k, InReservedArea, what, a.Name, t.At)
		}
	}
}

// against looks at one text and everything else.
func (f *finder) against(i int) {
	t := &f.texts[i]
	what := fmt.Sprintf("%q", t.String)
	for j := range i {
		o := &f.texts[j]
		// The field of the later text lies over the earlier one.
		if t.box.Inset(-f.gap).Meets(o.box) && apart(t.field, o.ink) < f.gap-slack {
			f.report(t.order, o.order, TextOverText, what, fmt.Sprintf("%q", o.String), t.At)
		}
	}
	ground := f.ground(t)
	for k := range f.strokes {
		s := &f.strokes[k]
		gap := 0.0
		if s.strong {
			gap = f.gap
		}
		if s.order < ground || s.white || !t.box.Inset(-gap).Meets(s.box) {
			continue
		}
		body := t.ink
		if s.strong && s.order < t.order {
			body = t.field
		}
		if reach(body, s.a, s.b)-s.half >= gap-slack {
			continue
		}
		switch {
		case s.order > t.order:
			f.report(t.order, s.order, TextUnderLine, what, s.label("line"), t.At)
		case s.strong || t.Field <= 0:
			f.report(t.order, s.order, TextOverLine, what, s.label("line"), t.At)
		default:
			continue
		}
	}
	f.onGround(t, ground, what)
	for _, m := range f.pictures {
		if m.seen.Meets(t.box) && apart(t.ink, m.seen.Corners()) < -slack {
			f.report(t.order, m.order, TextOnPicture, what, "picture "+m.Alt, t.At)
		}
	}
}

// ground returns the order of the last filled shape before a text that holds all of it: what was drawn before that cannot be seen there.
func (f *finder) ground(t *lettering) int {
	last := -1
	for k := range f.fills {
		s := &f.fills[k]
		if s.order < t.order && s.order > last && s.whole && s.box.Contains(t.box) && holds(s.points, t.field) && held(s.clips, t.field) {
			last = s.order
		}
	}
	return last
}

// onGround checks that a text stands out from what is under it and is not hidden by what comes after.
func (f *finder) onGround(t *lettering, ground int, what string) {
	letter := t.Colour.Light()
	paper := 1.0
	for k := range f.fills {
		s := &f.fills[k]
		if s.order == ground {
			paper = s.light
		}
		if s.order < ground || !s.box.Meets(t.box) || apart(t.ink, s.points) >= -slack {
			continue
		}
		if len(s.clips) > 0 && !slices.ContainsFunc(s.clips, func(c []Point) bool { return apart(t.ink, c) < -slack }) {
			continue
		}
		switch {
		case s.order > t.order:
			f.report(t.order, s.order, TextHidden, what, s.label("shape"), t.At)
		case s.order > ground && t.Field <= 0 && differ(letter, s.light) < contrast:
			f.report(t.order, s.order, TextFaint, what, s.label("shape"), t.At)
		}
	}
	if t.Field > 0 {
		paper = 1
	}
	if differ(letter, paper) < contrast {
		f.report(t.order, ground, TextFaint, what, "ground", t.At)
	}
}

// rest looks at what is no text: reserved areas and the paper's edge.
func (f *finder) rest() {
	paper := f.page.Paper().Inset(-slack)
	for _, s := range f.strokes {
		if s.white {
			continue
		}
		if !paper.Contains(s.box.Inset(s.half)) {
			f.report(s.order, 0, OffPaper, s.label("line"), "", s.a)
		}
		for k, a := range f.page.Keep {
			if a.Meets(s.box) && reach(a.Corners(), s.a, s.b)-s.half < -slack {
				f.report(s.order, -1-k, InReservedArea, s.label("line"), a.Name, s.a)
			}
		}
	}
	for _, s := range f.fills {
		if s.light == 1 {
			continue
		}
		for k, a := range f.page.Keep {
			if a.Meets(s.box) && apart(a.Corners(), s.points) < -slack {
				f.report(s.order, -1-k, InReservedArea, s.label("shape"), a.Name, s.points[0])
			}
		}
	}
	for _, m := range f.pictures {
		at := Pt(m.seen.X0, m.seen.Y0)
		if !paper.Contains(m.seen) {
			f.report(m.order, 0, OffPaper, "picture "+m.Alt, "", at)
		}
		for k, a := range f.page.Keep {
			if a.Meets(m.seen.Inset(slack)) {
				f.report(m.order, -1-k, InReservedArea, "picture "+m.Alt, a.Name, at)
			}
		}
	}
}

func differ(a, b float64) float64 { return max(a-b, b-a) }
