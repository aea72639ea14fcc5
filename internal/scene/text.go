package scene

import (
	"strings"

	"flitchlay/internal/font"
)

// Anchor is which part of a line of text stands at its point.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Seat is which height of a line of text stands at its point.
type Seat uint8

// The seats.
const (
	Baseline Seat = iota
	Centred       // the middle of the capitals
	Hanging       // the top of the capitals
)

// Text is one line of text.
//
// Units: Height is that of capitals, in mm; never under 2.5 on a drawing but for captions of a title block. Angle turns it about At: 0 reads from
// the foot of the page, 90 from its right side.
type Text struct {
	At     Point
	String string
	Height float64
	Bold   bool
	Anchor Anchor
	Seat   Seat
	Angle  float64
	Colour Colour
	Field  float64 // white field behind the text, this much larger than its ink on each side; 0 is none
	Layer  Layer
	Tag    Tag
}

// Lettered returns the text as it is drawn: what has no glyph is replaced by a visible mark.
func (t *Text) Lettered() string { return font.Clean(t.String) }

// Width returns the advance of the text.
func (t *Text) Width() float64 { return Width(t.String, t.Height, t.Bold) }

// Origin returns where the pen starts: the left end of the baseline, before the turn about At.
func (t *Text) Origin() Point {
	p := t.At
	switch t.Anchor {
	case Middle:
		p.X -= t.Width() / 2
	case End:
		p.X -= t.Width()
	}
	switch t.Seat {
	case Centred:
		p.Y += t.Height / 2
	case Hanging:
		p.Y += t.Height
	}
	return p
}

// Pen returns where the pen starts on the page, the turn included.
func (t *Text) Pen() Point { return turn(t.Origin(), t.At, t.Angle) }

// Ink returns the corners of the box around the ink, turned as the text is; nil for text without ink.
func (t *Text) Ink() []Point { return t.box(0) }

// FieldBox returns the corners of the white field, nil where there is none.
func (t *Text) FieldBox() []Point {
	if t.Field <= 0 {
		return nil
	}
	return t.box(t.Field)
}

// box returns the corners of the ink box made larger on all sides, turned.
func (t *Text) box(more float64) []Point {
	e := font.Of(t.Bold).Extent(t.Lettered(), t.Height)
	if e.Right <= e.Left {
		return nil
	}
	o := t.Origin()
	b := Box{o.X + e.Left, o.Y - e.Up, o.X + e.Right, o.Y + e.Down}.Inset(-more)
	c := b.Corners()
	for i := range c {
		c[i] = turn(c[i], t.At, t.Angle)
	}
	return c
}

// Bounds returns the upright box around the ink, without the field.
func (t *Text) Bounds() Box { return Around(t.Ink()...) }

// Width returns how long a line of text is whose capitals have the given height.
func Width(s string, height float64, bold bool) float64 {
	return font.Of(bold).Width(font.Clean(s), height)
}

// Wrap breaks a text at spaces into lines no longer than width, but never inside a figure: 4 1/2 read as 4 at the end of one
// line and 1/2 at the beginning of the next costs a sheet. A word that is longer stands alone and is broken between its numbers, 109+110 |
// and 111+112, or if none of them fits, between letters.
func Wrap(s string, height float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range figureWords(font.Clean(s)) {
		if line != "" && Width(line+" "+word, height, bold) <= width {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = word
		for Width(line, height, bold) > width {
			head := fitting(line, height, bold, width)
			if head == line {
				break
			}
			if i := strings.LastIndexAny(line[:min(len(head)+1, len(line))], " +"); i > 0 && (line[i] == ' ' || i < len(head)) {
				head = line[:i+1]
			}
			line = line[len(head):]
			lines = append(lines, strings.TrimRight(head, " "))
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// Shorten returns the text, or as much of it as fits a width with an ellipsis behind.
func Shorten(s string, height float64, bold bool, width float64) string {
	s = font.Clean(s)
	if Width(s, height, bold) <= width {
		return s
	}
	head := fitting(s, height, bold, width-Width("…", height, bold))
	return strings.TrimRight(head, " ") + "…"
}

// fitting returns the longest head of s, of at least one rune, that is no longer than width.
func fitting(s string, height float64, bold bool, width float64) string {
	f := font.Of(bold)
	w, first := 0.0, true
	for i, r := range s {
		w += float64(f.Advance(r)) * height / float64(f.CapHeight())
		if w > width && !first {
			return s[:i]
		}
		first = false
	}
	return s
}
