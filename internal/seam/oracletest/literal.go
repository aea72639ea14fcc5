package oracletest

import (
	"fmt"
	"strings"

	"flitchlay/internal/seam"
)

// String writes the case as a Go literal that can be pasted into a test.
func (c Case) String() string {
	s := c.Span
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, "\t\t"+format+",\n", args...) }
	b.WriteString("oracletest.Case{\n")
	fmt.Fprintf(&b, "\tAim: %s,\n\tSpan: seam.Span{\n", []string{"seam.Steady", "seam.Fewest", "seam.Even"}[c.Aim])
	if s.Closed {
		line("Closed: true")
	}
	line("L: %d, R: %d", s.L, s.R)
	if s.LeftSeam {
		line("LeftSeam: true")
	}
	if s.RightSeam {
		line("RightSeam: true")
	}
	line("Period: %d", s.Period)
	if s.RunClosed {
		line("RunClosed: true")
	}
	line("Snap: %d, Gross: %d, Overlap: %d, TrimLeft: %d, TrimRight: %d", s.Snap, s.Gross, s.Overlap, s.TrimLeft, s.TrimRight)
	r := s.Rules
	line("Rules: seam.Rules{LeastWidth: %d, PreferWidth: %d, CornerReturn: %d, PreferReturn: %d, Leg: %d, PreferLeg: %d, "+
		"OpeningClear: %d, PreferClear: %d, BoxClear: %d, ShortSeam: %d}", r.LeastWidth, r.PreferWidth, r.CornerReturn,
		r.PreferReturn, r.Leg, r.PreferLeg, r.OpeningClear, r.PreferClear, r.BoxClear, r.ShortSeam)
	line("Foot: %d", s.Foot)
	if s.OneWall {
		line("OneWall: true")
	}
	strips := func(name string, list []seam.Strip) {
		if len(list) > 0 {
			line("%s: []seam.Strip{%s}", name, joined(list, func(x seam.Strip) string { return fmt.Sprintf("{%d, %d}", x.From, x.To) }))
		}
	}
	strips("Corners", s.Corners)
	if len(s.Openings) > 0 {
		line("Openings: []seam.Opening{%s}", joined(s.Openings, func(o seam.Opening) string {
			return fmt.Sprintf("{A: %d, B: %d, Gap: %t, Wrap: %t, Reveal: %d}", o.A, o.B, o.Gap, o.Wrap, o.Reveal)
		}))
	}
	strips("Boxes", s.Boxes)
	strips("Keep", s.Keep)
	if len(s.Pins) > 0 {
		puts := []string{"seam.PutSeam", "seam.PutMiddle", "seam.PutEither", "seam.PutClose"}
		line("Pins: []seam.Pin{%s}", joined(s.Pins, func(p seam.Pin) string { return fmt.Sprintf("{At: %d, Put: %s}", p.At, puts[p.Put]) }))
	}
	strips("Main", s.Main)
	if len(s.NotClosing)+len(s.NotFirst)+len(s.NotLast) > 0 {
		b.WriteString("\t\tApart: seam.Apart{\n")
		strips("NotClosing", s.NotClosing)
		strips("NotFirst", s.NotFirst)
		strips("NotLast", s.NotLast)
		line("}")
	}
	steps := joined(c.Profile.Steps, func(x Step) string { return fmt.Sprintf("{%d, %d, %d, %d}", x.From, x.Height, x.Rise, x.Per) })
	fmt.Fprintf(&b, "\t},\n\tProfile: oracletest.Profile{Period: %d, Steps: []oracletest.Step{%s}},\n}.Ready()", c.Profile.Period, steps)
	return b.String()
}

// Ready sets the span's seen heights from the profile.
func (c Case) Ready() Case {
	c.Span.Seen = c.Profile.Seen
	return c
}

func joined[T any](list []T, write func(T) string) string {
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = write(x)
	}
	return strings.Join(words, ", ")
}
