package card

import (
	"math"
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// layLevel lays a card out whose sheet lies on its side: heights from the level line at its left, names of cut-outs over it,
// ends under it.
func (s *sketch) layLevel(force bool) bool {
	c, u := s.c, s.u
	e := c.Extent()
	wide, high := s.view.MM(e.Right-e.Left), s.view.MM(e.Top-e.Bottom)
	top := s.box.Y0 + s.headHigh() + 2*u
	over := 1.5 * u
	if len(c.Holes) > 0 {
		over = overHigh * u
	}
	s.heights = s.edgeLabels()
	first, below := math.Max(s.wide(s.heights)+leaderLong*u, s.upWide()), s.text+4.4*u
	rest := 2.4 * u
	if c.Back {
		first, rest = rest, first
	}
	across := first + wide + rest
	s.right = s.box.X0 + first + wide
	least := math.Max(top+over, s.upTop()+(upHigh+1.6)*u) // the arrow stands over the heights
	s.place(s.box.X0+first, least+high)
	length := s.cutLength()
	foot := math.Max(math.Max(s.sheet.Y1+below, s.labelsTo()), length.Bounds().Y1+1*u)
	if across > s.box.W() || foot > s.box.Y1 {
		return false
	}
	s.list = scene.Box{X0: s.box.X0 + across + 2.4*u, Y0: top, X1: s.box.X1, Y1: s.box.Y1}
	if s.under {
		s.list = scene.Box{X0: s.box.X0, Y0: foot + 1.6*u, X1: s.box.X1, Y1: s.box.Y1}
		if s.list.H() < s.pitch() {
			return false
		}
	}
	return s.fill(force)
}

// edgeLabels say how far the edges of the sheet as it hangs are from the level line.
func (s *sketch) edgeLabels() []label {
	c := s.c
	level := s.levelLine()
	list := []label{
		{s.view.MM(c.Kept.Top), []string{count.UpDown(s.Words, s.Say, c.Kept.Top-level), s.Words.Say("card.upper_edge")}, true},
		{s.view.MM(c.Kept.Bottom), []string{count.UpDown(s.Words, s.Say, c.Kept.Bottom-level), c.Cut.EdgeName(s.cuts(c))}, true},
	}
	if c.Raw.Bottom <= level && level <= c.Raw.Top {
		list = append(list, label{s.view.MM(level), []string{s.Words.Say("card.level_line")}, false})
		slices.SortFunc(list, func(a, b label) int { return int(math.Copysign(1, b.at-a.at)) })
	}
	return list
}

// labelLevel letters what stands round the sheet.
func (s *sketch) labelLevel(g *scene.Group) {
	s.up(g)
	s.labelHeights(g)
	s.cutEnd(g)
	s.nameHoles(g)
}

// cutEnd says under the sheet how long it is cut, from the end that figures run from.
func (s *sketch) cutEnd(g *scene.Group) {
	k := s.rect(s.c.Kept)
	y := s.sheet.Y1 + 2*s.u
	part := g.Part(scene.Tag{Class: "length"})
	for _, x := range []float64{k.X0, k.X1} {
		part.VLine(x, y-1*s.u, y+1*s.u, scene.Pen(scene.Marks, folio.TapedFine))
	}
	part.HLine(k.X0, k.X1, y, scene.Pen(scene.Marks, rawLine))
	part.Text(s.cutLength())
}

// cutLength is the length of a sheet that lies, under its middle. Where the sheet is shorter than its figure it stands under the
// heights beside the sheet.
func (s *sketch) cutLength() scene.Text {
	k := s.rect(s.c.Kept)
	text := s.Words.Say("card.cut", s.Say(s.CutLong(s.c.Sheet)))
	half := scene.Width(text, s.text, true) / 2
	x, y := math.Min(math.Max(k.Centre().X, s.box.X0+half), s.right-half), s.sheet.Y1+3.8*s.u
	if x-half < s.sheet.X0-0.5*s.u || x+half > s.sheet.X1+0.5*s.u {
		y = math.Max(y, s.labelsTo()+0.8*s.u)
	}
	return scene.Text{At: scene.Pt(x, y), String: text, Height: s.text, Bold: true, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Notes}
}
