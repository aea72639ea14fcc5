package length

import (
	"strconv"
	"strings"
)

// Style says how lengths are printed: in feet and inches to 1/Denominator in, or in millimetres to 1/Denominator mm.
//
// The zero Style prints feet and inches to 1/16 in.
type Style struct {
	Unit        Unit
	Denominator int64 // 0: 16 in an inch room, 2 in a metric one
}

// StyleOf is the style of drawings in a room of that unit.
func StyleOf(u Unit) Style { return Style{Unit: u} }

func (s Style) denominator() int64 {
	switch {
	case s.Denominator > 0:
		return s.Denominator
	case s.Unit == Millimetres:
		return 2
	}
	return 16
}

// step counts l in the style's smallest parts, halves away from zero.
//
// No published rule was found for rounding feet and inches; this one is stated in the notes of every drawing.
func (s Style) step(l Length) int64 {
	return int64(MulDiv(l, Length(s.denominator()), s.Unit.Of()))
}

// Least is the least length that the style prints.
func (s Style) Least() Length { return MulDiv(1, s.Unit.Of(), Length(s.denominator())) }

// Round brings l to the nearest length that the style prints exactly.
func (s Style) Round(l Length) Length {
	return MulDiv(Length(s.step(l)), s.Unit.Of(), Length(s.denominator()))
}

// Exact reports whether the style prints l without rounding.
func (s Style) Exact(l Length) bool { return s.Round(l) == l }

// Format prints a length as it stands on a drawing: 12'-6 3/8", 6", 1/2", 0"; 3810, 12,5.
//
// Source: decimal comma in millimetres, ISO 129-1:2018; 12'-0" with its zero inches, common practice.
func (s Style) Format(l Length) string { return s.print(s.step(l)) }

func (s Style) print(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	d := s.denominator()
	if s.Unit == Millimetres {
		return sign + decimal(n, d)
	}
	if n < 12*d {
		return sign + inches(n, d) + `"`
	}
	rest := inches(n%(12*d), d)
	if n%(12*d) < d && n%(12*d) > 0 {
		rest = "0 " + rest // 12'-0 1/2": the zero inches are kept
	}
	return sign + strconv.FormatInt(n/(12*d), 10) + "'-" + rest + `"`
}

// Words prints a length inside a sentence: 3 1/4 in, 12'-6 3/8", 82,5 mm. From three feet on it is as on drawings.
func (s Style) Words(l Length) string {
	n := s.step(l)
	if s.Unit == Millimetres {
		return s.print(n) + " mm"
	}
	d := s.denominator()
	if n <= -36*d || n >= 36*d {
		return s.print(n)
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	return sign + inches(n, d) + " in"
}

// Inches prints a length in inches alone (or millimetres), without a mark: 23 1/2, for tables whose head says so.
func (s Style) Inches(l Length) string {
	n := s.step(l)
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	if s.Unit == Millimetres {
		return sign + decimal(n, s.denominator())
	}
	return sign + inches(n, s.denominator())
}

// Measured prints as on drawings what is no length on a wall and so on no step of the style: the thickness of a sheet, its
// width, a rule. It takes the coarsest fraction that has it exactly, else decimals to a thousandth.
func (s Style) Measured(l Length) string { return s.exactly(l, Style.Format) }

// MeasuredWords is Measured inside a sentence.
func (s Style) MeasuredWords(l Length) string { return s.exactly(l, Style.Words) }

func (s Style) exactly(l Length, say func(Style, Length) string) string {
	if s.Unit == Millimetres {
		if !s.Exact(l) {
			s.Denominator = 1000
		}
		return say(s, l)
	}
	for t := s; ; t.Denominator *= 2 {
		if t.Denominator = t.denominator(); t.Denominator > 64 {
			return strconv.FormatFloat(float64(l)/float64(Inch), 'f', 3, 64) + " in"
		} else if t.Exact(l) {
			return say(t, l)
		}
	}
}

// Apart prints two lengths that differ so that the figures differ too: it refines the fraction until they do.
func (s Style) Apart(a, b Length) (string, string) {
	t := s
	t.Denominator = s.denominator()
	last := int64(64)
	if s.Unit == Millimetres {
		last = 1000
	}
	for a != b && t.step(a) == t.step(b) && t.Denominator < last {
		if s.Unit == Millimetres {
			t.Denominator *= 5
			if t.Denominator > last {
				t.Denominator = last
			}
		} else {
			t.Denominator *= 2
		}
	}
	x, y := t.Words(a), t.Words(b)
	if a != b && x == y {
		if a < b {
			return "just under " + y, y
		}
		return "just over " + y, y
	}
	return x, y
}

// inches prints n parts of 1/d inch in lowest terms.
func inches(n, d int64) string {
	whole, part := n/d, n%d
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for part%2 == 0 && d%2 == 0 {
		part, d = part/2, d/2
	}
	f := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(d, 10)
	if whole == 0 {
		return f
	}
	return strconv.FormatInt(whole, 10) + " " + f
}

// decimal prints n parts of 1/d as a decimal of up to three places with a comma.
func decimal(n, d int64) string {
	thousandths := n * 1000 / d
	text := strconv.FormatInt(thousandths/1000, 10)
	rest := thousandths % 1000
	if rest == 0 {
		return text
	}
	part := strconv.FormatInt(1000+rest, 10)[1:]
	return text + "," + strings.TrimRight(part, "0")
}

// Chain prints the parts between running positions so that the printed parts add up to the printed whole: each is
// the difference of two rounded positions.
//
// Shape: positions ascending, n of them; n-1 texts.
func (s Style) Chain(positions []Length) []string {
	if len(positions) < 2 {
		return nil
	}
	texts := make([]string, 0, len(positions)-1)
	base := positions[0]
	last := int64(0)
	for _, p := range positions[1:] {
		at := s.step(p - base)
		texts = append(texts, s.print(at-last))
		last = at
	}
	return texts
}

// Decimal prints a length in millimetres, exactly, as JSON takes it: up to six decimals, no more than needed.
func (l Length) Decimal() string {
	sign := ""
	n := int64(l)
	if n < 0 {
		sign, n = "-", -n
	}
	const whole, million = int64(Millimetre), 1_000_000
	text := sign + strconv.FormatInt(n/whole, 10)
	rest := n % whole
	if rest == 0 {
		return text
	}
	part := strconv.FormatInt(million+rest*(million/whole), 10)[1:] // the leading 1 keeps the zeros behind it
	return text + "." + strings.TrimRight(part, "0")
}
