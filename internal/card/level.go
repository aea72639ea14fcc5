package card

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/draft"
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
	first, below := s.wide(s.heights)+leaderLong*u, s.pitch()+2*u
	if c.Back {
		first = 2.4 * u
	}
	rest := 2.4 * u
	if c.Back {
		rest = s.wide(s.heights) + leaderLong*u
	}
	across := first + wide + rest
	least := math.Max(top+over, s.upTop()+upHigh*u) // the arrow stands over the heights
	s.place(s.box.X0+first, least+high)
	if across > s.box.W() || least+high+below > s.box.Y1 {
		return false
	}
	s.list = scene.Box{X0: s.box.X0 + across + 2.4*u, Y0: top, X1: s.box.X1, Y1: s.box.Y1}
	if s.under {
		s.list = scene.Box{X0: s.box.X0, Y0: s.sheet.Y1 + below + 1.6*u, X1: s.box.X1, Y1: s.box.Y1}
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
		{s.view.MM(c.Kept.Top), []string{count.UpDown(s.Say, c.Kept.Top-level), "upper edge"}, true},
		{s.view.MM(c.Kept.Bottom), []string{count.UpDown(s.Say, c.Kept.Bottom-level), strings.TrimPrefix(c.Cut.FromEdge(), "from ")}, true},
	}
	if c.Raw.Bottom <= level && level <= c.Raw.Top {
		list = append(list, label{s.view.MM(level), []string{"level line"}, false})
		slices.SortFunc(list, func(a, b label) int { return int(math.Copysign(1, b.at-a.at)) })
	}
	return list
}

// labelLevel letters what stands round the sheet.
func (s *sketch) labelLevel(g *scene.Group) {
	u := s.u
	s.up(g)
	at := make([]float64, len(s.heights))
	for i := range s.heights {
		at[i] = s.view.Origin.Y - s.heights[i].at
	}
	slot := 2*s.pitch() + 0.6*u
	lo := s.upTop() + upHigh*u + 1*u
	part := g.Part(scene.Tag{Class: "heights"})
	edge, anchor, out := s.sheet.X0, scene.End, -leaderLong*u
	if s.c.Back {
		edge, anchor, out = s.sheet.X1, scene.Start, leaderLong*u
	}
	for i, y := range draft.Shelf(at, slot, lo, lo+slot*float64(len(at))+s.sheet.H()) {
		l := &s.heights[i]
		part.Line(scene.Pt(edge, at[i]), scene.Pt(edge+out*0.82, y), scene.Pen(scene.Marks, rawLine))
		for k, text := range l.lines {
			mid := y + (float64(k)-float64(len(l.lines)-1)/2)*s.pitch()
			part.Text(scene.Text{At: scene.Pt(edge+out, mid), String: text, Height: s.text, Bold: l.strong && k == 0, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
		}
	}
	s.cutEnd(g)
	s.nameHoles(g)
}

// cutEnd says under the sheet how long it is cut, from the end that figures run from.
func (s *sketch) cutEnd(g *scene.Group) {
	k := s.rect(s.c.Kept)
	y := s.sheet.Y1 + 1.2*s.u + s.text/2
	part := g.Part(scene.Tag{Class: "length"})
	for _, x := range []float64{k.X0, k.X1} {
		part.VLine(x, y-1*s.u, y+1*s.u, scene.Pen(scene.Marks, folio.TapedFine))
	}
	text := "CUT " + s.Say(s.c.Sheet.CutLength)
	half := scene.Width(text, s.text, true)/2 + 1.2*s.u
	mid := k.Centre()
	part.HLine(k.X0, mid.X-half, y, scene.Pen(scene.Marks, rawLine))
	part.HLine(mid.X+half, k.X1, y, scene.Pen(scene.Marks, rawLine))
	part.Text(scene.Text{At: scene.Pt(mid.X, y), String: text, Height: s.text, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
}
