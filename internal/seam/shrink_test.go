package seam_test

import (
	"slices"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// shrink makes a failing case smaller, one change at a time, for as long as it still fails.
func shrink(c oracletest.Case, fails func(oracletest.Case) bool) oracletest.Case {
	for again := true; again; {
		again = false
		for _, smaller := range smallerCases(c) {
			if sensible(smaller) && fails(smaller) {
				c, again = smaller, true
				break
			}
		}
	}
	return c
}

// sensible holds a shrunken case inside what a room file may ask for.
func sensible(c oracletest.Case) bool {
	s := c.Span
	ends := s.Gross - s.Overlap/2 - max(s.TrimLeft, s.TrimRight)
	return s.Snap <= s.LeastWidth && s.LeastWidth <= oracletest.NetWidth(&s) && s.LeastWidth <= ends &&
		s.R-s.L >= s.Snap && s.Period >= s.Snap && s.Overlap > 0 && s.Foot > 0
}

// smallerCases lists the cases one step simpler: without one object, with one rule at nought, shorter.
func smallerCases(c oracletest.Case) []oracletest.Case {
	var list []oracletest.Case
	add := func(change func(*seam.Span, *oracletest.Profile)) {
		smaller := c
		s, p := &smaller.Span, &smaller.Profile
		s.Corners, s.Openings, s.Boxes = slices.Clone(s.Corners), slices.Clone(s.Openings), slices.Clone(s.Boxes)
		s.Keep, s.Pins, s.Main, p.Steps = slices.Clone(s.Keep), slices.Clone(s.Pins), slices.Clone(s.Main), slices.Clone(p.Steps)
		change(s, p)
		list = append(list, smaller.Ready())
	}
	shorten := func(by int64) {
		if c.Span.R-c.Span.L > by {
			add(func(s *seam.Span, p *oracletest.Profile) {
				s.R -= by
				if s.RunClosed {
					s.Period -= by
					p.Period -= by
				}
			})
		}
	}
	shorten(3 * c.Span.Snap)
	shorten(c.Span.Snap)
	for i := range c.Span.Corners {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Corners = slices.Delete(s.Corners, i, i+1) })
	}
	for i := range c.Span.Openings {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Openings = slices.Delete(s.Openings, i, i+1) })
	}
	for i := range c.Span.Boxes {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Boxes = slices.Delete(s.Boxes, i, i+1) })
	}
	for i := range c.Span.Keep {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Keep = slices.Delete(s.Keep, i, i+1) })
	}
	for i := range c.Span.Pins {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Pins = slices.Delete(s.Pins, i, i+1) })
	}
	for i := range c.Span.Main {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.Main = slices.Delete(s.Main, i, i+1) })
	}
	for _, field := range []func(*seam.Span) *[]seam.Strip{
		func(s *seam.Span) *[]seam.Strip { return &s.NotClosing }, func(s *seam.Span) *[]seam.Strip { return &s.NotFirst },
		func(s *seam.Span) *[]seam.Strip { return &s.NotLast },
	} {
		if len(*field(&c.Span)) > 0 {
			add(func(s *seam.Span, _ *oracletest.Profile) { *field(s) = slices.Clone((*field(s))[1:]) })
		}
	}
	if len(c.Profile.Steps) > 1 {
		for i := range c.Profile.Steps {
			add(func(_ *seam.Span, p *oracletest.Profile) { p.Steps = slices.Delete(p.Steps, i, i+1) })
		}
	}
	for i := range c.Profile.Steps {
		if c.Profile.Steps[i].Per != 0 {
			add(func(_ *seam.Span, p *oracletest.Profile) { p.Steps[i].Rise, p.Steps[i].Per = 0, 0 })
		}
	}
	if c.Span.OneWall {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.OneWall = false })
	}
	for _, field := range []func(*seam.Span) *int64{
		func(s *seam.Span) *int64 { return &s.CornerReturn }, func(s *seam.Span) *int64 { return &s.PreferReturn },
		func(s *seam.Span) *int64 { return &s.Leg }, func(s *seam.Span) *int64 { return &s.PreferLeg },
		func(s *seam.Span) *int64 { return &s.OpeningClear }, func(s *seam.Span) *int64 { return &s.PreferClear },
		func(s *seam.Span) *int64 { return &s.BoxClear }, func(s *seam.Span) *int64 { return &s.PreferWidth },
		func(s *seam.Span) *int64 { return &s.TrimLeft }, func(s *seam.Span) *int64 { return &s.TrimRight },
	} {
		if *field(&c.Span) != 0 {
			add(func(s *seam.Span, _ *oracletest.Profile) { *field(s) = 0 })
		}
	}
	if c.Span.LeastWidth != c.Span.Snap {
		add(func(s *seam.Span, _ *oracletest.Profile) { s.LeastWidth = s.Snap })
	}
	return list
}
