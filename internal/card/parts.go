package card

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/shape"
	"flitchlay/internal/words"
)

// A sheet that an opening goes right across falls into pieces when it is cut. Each is hung by itself, where its ends say.

// findParts parts what is kept of a sheet by the openings that are cut out of it: what hangs together lies in one part. They are from above, over one
// another from the left; where the grain is level from the left.
func (c *Card) findParts() {
	var xs, zs []L
	add := func(r shape.Rect) { xs, zs = append(xs, r.Left, r.Right), append(zs, r.Bottom, r.Top) }
	add(c.Kept)
	for i := range c.Holes {
		add(c.Holes[i].Rect)
	}
	xs, zs = inOrder(xs, c.Kept.Left, c.Kept.Right), inOrder(zs, c.Kept.Bottom, c.Kept.Top)
	wide, high := len(xs)-1, len(zs)-1
	seen := make([]bool, max(0, wide*high))
	var parts []shape.Rect
	for first := range seen {
		if seen[first] || c.cutOut(xs[first%wide], zs[first/wide], xs[first%wide+1], zs[first/wide+1]) {
			continue
		}
		seen[first] = true
		part := shape.Rect{Left: c.Kept.Right, Right: c.Kept.Left, Bottom: c.Kept.Top, Top: c.Kept.Bottom}
		for list := []int{first}; len(list) > 0; {
			at := list[len(list)-1]
			list = list[:len(list)-1]
			i, k := at%wide, at/wide
			part = shape.Rect{Left: min(part.Left, xs[i]), Right: max(part.Right, xs[i+1]), Bottom: min(part.Bottom, zs[k]), Top: max(part.Top, zs[k+1])}
			for _, n := range [][2]int{{i - 1, k}, {i + 1, k}, {i, k - 1}, {i, k + 1}} {
				if n[0] < 0 || n[0] >= wide || n[1] < 0 || n[1] >= high || seen[n[1]*wide+n[0]] || c.cutOut(xs[n[0]], zs[n[1]], xs[n[0]+1], zs[n[1]+1]) {
					continue
				}
				seen[n[1]*wide+n[0]] = true
				list = append(list, n[1]*wide+n[0])
			}
		}
		parts = append(parts, part)
	}
	slices.SortStableFunc(parts, func(a, b shape.Rect) int {
		if c.Level {
			return cmp.Or(cmp.Compare(a.Left, b.Left), cmp.Compare(b.Top, a.Top))
		}
		return cmp.Or(cmp.Compare(b.Top, a.Top), cmp.Compare(a.Left, b.Left))
	})
	c.Parts = parts
}

// inOrder are places within two ends, each once.
func inOrder(list []L, from, to L) []L {
	slices.Sort(list)
	return slices.DeleteFunc(slices.Compact(list), func(at L) bool { return at < from || at > to })
}

// cutOut reports whether a stretch that no edge parts is cut out.
func (c *Card) cutOut(left, bottom, right, top L) bool {
	return slices.ContainsFunc(c.Holes, func(h Hole) bool {
		return h.Left <= left && right <= h.Right && h.Bottom <= bottom && top <= h.Top
	})
}

// stayingAt are the stretches across an upright sheet where it is not cut out at a height.
func (c *Card) stayingAt(z L) [][2]L {
	list := [][2]L{{c.Kept.Left, c.Kept.Right}}
	for i := range c.Holes {
		h := &c.Holes[i]
		if h.Bottom > z || h.Top < z || h.Hole.Kind.Traits().Box { // round a box enough stays
			continue
		}
		var next [][2]L
		for _, s := range list {
			if from, to := s[0], min(s[1], h.Left); from < to {
				next = append(next, [2]L{from, to})
			}
			if from, to := max(s[0], h.Right), s[1]; from < to {
				next = append(next, [2]L{from, to})
			}
		}
		list = next
	}
	return list
}

// parts say into how many pieces a sheet falls, and of each how long it is and where its ends hang; none of a sheet that stays whole.
func (w speech) parts(c *Card) []string {
	if len(c.Parts) < 2 {
		return nil
	}
	list := []string{w.Words.Say("parts.falls", len(c.Parts))}
	for i := range c.Parts {
		p := &c.Parts[i]
		low, high := p.Bottom, p.Top
		if c.Level {
			low, high = p.Left, p.Right
		}
		end := func(at L) string { return c.Cut.EndWords(w.Words, w.Say, at) }
		zero := c.Cut.Line.By
		if c.Level {
			zero = w.Room.Datum(c.Run.Walls[0].Wall)
		}
		long := w.Say(w.Style.Round(high-zero) - w.Style.Round(low-zero)) // from the one figure to the other, as printed
		words := w.Words.Say("parts.piece", w.partName(c, i), long, end(low), end(high))
		if !c.Level && (p.Left > c.Kept.Left || p.Right < c.Kept.Right) && c.beside(i) {
			from, to := c.fromEdge(p.Left), c.fromEdge(p.Right)
			words = w.Words.Say("parts.across", words, w.cuts(c).Inches(min(from, to)), w.cuts(c).Inches(max(from, to)), c.Cut.FromEdge(w.cuts(c)))
		}
		list = append(list, words)
	}
	if line := c.Cut.Line; line.Second() && !c.Level {
		list[len(list)-1] = w.Words.Say("slopes.line", list[len(list)-1], line.No)
	}
	return list
}

// set is how high over its level line a sheet without a mark is set: the end that its heights are from; or, where an opening takes that end over
// the whole width, the nearest end of a piece that is left.
func (c *Card) set() (at L, piece bool) {
	at = c.Cut.Set()
	if len(c.Parts) == 0 {
		return at, false
	}
	end := c.Parts[len(c.Parts)-1].Bottom // they are from above
	for i := range c.Parts {
		end = min(end, c.Parts[i].Bottom)
	}
	lost := end - c.Kept.Bottom
	if c.Cut.FromHead() {
		end = c.Parts[0].Top
		lost = end - c.Kept.Top
	}
	return at + lost, lost != 0
}

// beside reports whether another part lies beside one, not only over it or under it.
func (c *Card) beside(i int) bool {
	for k, q := range c.Parts {
		if p := c.Parts[i]; k != i && q.Bottom < p.Top && p.Bottom < q.Top {
			return true
		}
	}
	return false
}

// partName names a part by where it lies: upper and lower of two, left and right where the grain is level; of more by its number.
func (w speech) partName(c *Card, i int) string {
	side := c.Level || c.beside(0) && len(c.Parts) == 2
	switch {
	case len(c.Parts) > 2 && side:
		return w.Words.Say("parts.from_left", i+1)
	case len(c.Parts) > 2:
		return w.Words.Say("parts.from_above", i+1)
	case side && (i == 0) != (c.Back && !c.Level):
		return w.Words.Say("parts.left")
	case side:
		return w.Words.Say("parts.right")
	case i == 0:
		return w.Words.Say("parts.upper")
	}
	return w.Words.Say("parts.lower")
}

// PartWords say in a language into which pieces a card's sheet falls, that its mark comes off with what is cut out, and what of its
// trims hangs over an opening, for a list beside the cards.
func PartWords(set *folio.TapedSet, t *words.Table, c *Card) []string {
	w := speechIn(set, t)
	list := w.parts(c)
	if text := w.markStays(c); text != "" {
		list = append(list, text)
	}
	for i := range c.Overhangs {
		list = append(list, w.overhang(c, &c.Overhangs[i]))
	}
	return list
}

// speechIn says what stands on the cards of a set in a language of its own.
func speechIn(set *folio.TapedSet, t *words.Table) speech {
	in := *set
	in.Words = t
	return speech{TapedSet: &in}
}

// markStays says where on the sheet its mark is made, where part of that height is cut out; or that all of it is.
func (w speech) markStays(c *Card) string {
	if c.Level || !c.Cut.Marked() {
		return ""
	}
	list := c.stayingAt(c.Cut.Line.By)
	if len(list) == 1 && list[0] == [2]L{c.Kept.Left, c.Kept.Right} {
		return ""
	}
	if len(list) == 0 {
		return w.Words.Say("parts.no_mark")
	}
	var where []string
	for _, s := range list {
		from, to := c.fromEdge(s[0]), c.fromEdge(s[1])
		where = append(where, w.Words.Say("cut.span", w.cuts(c).Inches(min(from, to)), w.cuts(c).Inches(max(from, to))))
	}
	if c.Back {
		slices.Reverse(where)
	}
	return w.Words.Say("parts.mark", strings.Join(where, ", "), c.Cut.FromEdge(w.cuts(c)))
}

// goesOn says of a cut-out that runs through an end of the sheet where the opening's own end is, or that it goes on there.
func (w speech) goesOn(c *Card, h *count.Hole) string {
	if c.Level || h.Kind.Traits().Box {
		return ""
	}
	o := &w.Room.Walls[h.Wall].Openings[h.Index]
	level := w.Room.Space.LevelLine
	var list []string
	end := func(z L) string { return c.Cut.EndWords(w.Words, w.cuts(c).Inches, z-level) }
	if h.High == c.Cut.Above {
		switch head := o.Head - level; {
		case head < h.High:
			list = append(list, w.Words.Say("through.head", h.Name, end(o.Head)))
		case head > h.High:
			list = append(list, w.Words.Say("through.over", h.Name))
		}
	}
	if h.Low == -c.Cut.Below && o.SillGiven {
		switch sill := o.Sill - level; {
		case sill > h.Low:
			list = append(list, w.Words.Say("through.sill", h.Name, end(o.Sill)))
		case sill < h.Low:
			list = append(list, w.Words.Say("through.under", h.Name))
		}
	}
	if list == nil {
		return ""
	}
	return "; " + strings.Join(list, "; ")
}

// HoleWords are those of the cut list, and where the opening itself ends if its cut-out runs through an end of the sheet.
func HoleWords(set *folio.TapedSet, t *words.Table, c *Card, h *count.Hole, say count.Speech) string {
	w := speechIn(set, t)
	return c.Cut.HoleWords(say, *h) + w.goesOn(c, h)
}
