package font

// Width returns the advance of a line of text whose capitals have the given height, in the same unit.
func (f *Face) Width(s string, capital float64) float64 {
	return float64(f.Units(s)) * capital / float64(f.capital)
}

// Units returns the advance of a line of text in font units. A rune without a glyph counts as the replacement mark.
func (f *Face) Units(s string) int {
	n := 0
	for _, r := range s {
		n += f.advance(f.glyph(r))
	}
	return n
}

// Advance returns how far one rune moves the pen on, in font units.
func (f *Face) Advance(r rune) int { return f.advance(f.glyph(r)) }

// Extent is the ink of a line of text from its start on the baseline.
//
// Units: those of the capital height asked for; Up is positive above the baseline, Down positive below it. Left and Right are the
// outermost ink, which can lie a little outside the advance.
type Extent struct{ Left, Right, Up, Down float64 }

// Extent returns the ink of a line of text; all zero for one without ink.
func (f *Face) Extent(s string, capital float64) Extent {
	pen, left, right, up, down := 0, 0, 0, 0, 0
	inked := false
	for _, r := range s {
		g := f.glyph(r)
		x0, y0, x1, y1 := f.ink(g)
		if x0 != x1 && y0 != y1 {
			if !inked {
				left, right, up, down = pen+x0, pen+x1, y1, -y0
				inked = true
			}
			left, right = min(left, pen+x0), max(right, pen+x1)
			up, down = max(up, y1), max(down, -y0)
		}
		pen += f.advance(g)
	}
	k := capital / float64(f.capital)
	return Extent{Left: float64(left) * k, Right: float64(right) * k, Up: float64(up) * k, Down: float64(down) * k}
}

// glyph returns the glyph that is drawn for a rune.
func (f *Face) glyph(r rune) int {
	if g := f.index(r); g != 0 {
		return g
	}
	return f.index(Replacement)
}

// Inked says whether a rune leaves ink.
func (f *Face) Inked(r rune) bool { return len(f.record(f.glyph(r))) >= 10 }
