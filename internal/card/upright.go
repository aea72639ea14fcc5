package card

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// layUpright lays a card out whose sheet stands: heights at the side where figures begin, names of cut-outs at the other.
func (s *sketch) layUpright(force bool) bool {
	c, u := s.c, s.u
	e := c.Extent()
	wide, high := s.view.MM(e.Right-e.Left), s.view.MM(e.Top-e.Bottom)
	top := s.box.Y0 + s.headHigh() + 2*u
	over, below := 1.5*u, 0.0
	if len(s.cornerFolds()) > 0 {
		over, below = s.foldRow(), s.foldRow()
	}
	if c.Sheet.Ripped != "" {
		over += s.text + 5*u
	}
	s.heights = s.heightLabels()
	first, second := math.Max(s.wide(s.heights)+leaderLong*u, s.upWide()), 2.4*u
	if names := s.nameWidth(); names > 0 {
		second = names + leaderLong*u
	}
	if c.Sheet.Ripped != "" { // room for the width that stays
		second = math.Max(second, scene.Width(s.Inches(c.Cut.Width), s.text, true)-wide+1*u)
	}
	if c.Back {
		first, second = second, first
	}
	across := first + wide + second
	s.right = s.box.X0 + across
	s.place(s.box.X0+first, top+over+high)
	foot := math.Max(s.sheet.Y1+below, s.labelsTo())
	if across > s.box.W() || foot > s.box.Y1 {
		return false
	}
	s.list = scene.Box{X0: s.box.X0 + across + 2.4*u, Y0: top, X1: s.box.X1, Y1: s.box.Y1}
	if s.under {
		s.right = s.box.X1
		s.list = scene.Box{X0: s.box.X0, Y0: foot + 2*u, X1: s.box.X1, Y1: s.box.Y1}
		if s.list.H() < s.pitch() {
			return false
		}
	}
	return s.fill(force)
}

// heightLabels are the figures of head, mark and foot, at their heights over the sheet's foot.
func (s *sketch) heightLabels() []label {
	c := s.c
	raw := [2]string{"head", "foot"}
	if c.Sheet.Turned {
		raw[0], raw[1] = raw[1], raw[0]
	}
	var list []label
	add := func(z L, strong bool, lines ...string) {
		if z == c.Zero.Z && strong {
			lines[1] += " = 0"
		}
		if lines[0] == "" {
			lines = lines[1:]
		}
		list = append(list, label{s.view.MM(z), lines, strong})
	}
	marked, line := c.Cut.Marked(), c.Cut.Line
	say := func(z L) string {
		switch {
		case line.Second() && !line.Off:
			return count.UpDown(s.Words, s.Say, z-line.By)
		case c.Register.Foot && z-c.Raw.Bottom <= c.Step:
			return ""
		case c.Register.Foot && z == c.Kept.Top && c.stays(false):
			return s.Say(c.Cut.Long(c.Sheet, s.Style)) // as the cut list has it
		case c.Register.Foot:
			return s.Say(z - c.Raw.Bottom)
		case marked:
			return count.UpDown(s.Words, s.Say, z)
		case c.Raw.Top-z <= c.Step:
			return ""
		}
		return s.Say(c.Raw.Top - z)
	}
	if !c.stays(true) {
		add(c.Raw.Top, false, s.Words.Of("raw_end", raw[0]))
		add(c.Kept.Top, true, say(c.Kept.Top), s.Words.Say("card.cut_head"))
	} else {
		add(c.Kept.Top, true, say(c.Kept.Top), s.Words.Of("raw_end", raw[0]+" stays"))
	}
	switch {
	case !marked:
	case len(c.stayingAt(line.By)) == 0:
		add(line.By, false, s.Say(c.MarkedAt()), s.Words.Say("parts.cut_out"))
	case line.Second():
		add(line.By, true, s.Say(c.MarkedAt()), s.Words.Say("card.mark_line", line.No))
	default:
		add(0, true, s.Say(c.Register.At), s.Words.Say("card.mark_here"))
	}
	if _, lost := c.set(); lost && !marked && c.Cut.FromFoot() {
		add(c.Kept.Bottom, false, s.Words.Of("raw_end", raw[1]), s.Words.Say("parts.cut_out"))
	} else if !c.stays(false) {
		add(c.Kept.Bottom, true, say(c.Kept.Bottom), s.Words.Say("card.cut_foot"))
		add(c.Raw.Bottom, false, s.Words.Of("raw_end", raw[1]))
	} else {
		add(c.Kept.Bottom, true, say(c.Kept.Bottom), s.Words.Of("raw_end", raw[1]+" stays"))
	}
	for i := range c.Parts { // by which the pieces hang
		if p := &c.Parts[i]; !c.beside(i) {
			if p.Bottom > c.Kept.Bottom {
				add(p.Bottom, true, say(p.Bottom), s.Words.Say("parts.foot"))
			}
			if p.Top < c.Kept.Top {
				add(p.Top, true, say(p.Top), s.Words.Say("parts.head"))
			}
		}
	}
	slices.SortStableFunc(list, func(a, b label) int { return cmp.Compare(b.at, a.at) })
	return list
}

// nameWidth is how wide the widest name of a cut-out is.
func (s *sketch) nameWidth() float64 {
	w := 0.0
	for i := range s.c.Holes {
		w = math.Max(w, scene.Width(s.c.Holes[i].Name, s.text, true))
	}
	return w
}

// labelUpright letters what stands round the sheet.
func (s *sketch) labelUpright(g *scene.Group) {
	s.up(g)
	s.labelHeights(g)
	s.nameHoles(g)
	s.nameFolds(g)
	s.ripWidth(g)
}

// slot is how high a label of two lines is.
func (s *sketch) slot() float64 { return 2*s.pitch() + 0.6*s.u }

// labelsFrom and labelsTo are where labels beside the sheet may stand: under the arrow, and as far as they need.
func (s *sketch) labelsFrom() float64 {
	return math.Max(s.sheet.Y0-s.text, s.upTop()+(upHigh+1)*s.u)
}

func (s *sketch) labelsTo() float64 {
	return math.Max(s.labelsFrom()+s.slot()*float64(len(s.heights)), s.sheet.Y1+s.text)
}

// labelHeights letters the heights beside the sheet, at the side where figures begin.
func (s *sketch) labelHeights(g *scene.Group) {
	at := make([]float64, len(s.heights))
	for i := range s.heights {
		at[i] = s.view.Origin.Y - s.heights[i].at
	}
	edge, anchor, out := s.sheet.X0, scene.End, -leaderLong*s.u
	if s.c.Back {
		edge, anchor, out = s.sheet.X1, scene.Start, leaderLong*s.u
	}
	part := g.Part(scene.Tag{Class: "heights"})
	for i, y := range draft.Shelf(at, s.slot(), s.labelsFrom(), s.labelsTo()) {
		l := &s.heights[i]
		part.Line(scene.Pt(edge, at[i]), scene.Pt(edge+out*0.82, y), scene.Pen(scene.Marks, rawLine))
		for k, text := range l.lines {
			mid := y + (float64(k)-float64(len(l.lines)-1)/2)*s.pitch()
			part.Text(scene.Text{At: scene.Pt(edge+out, mid), String: text, Height: s.text, Bold: l.strong && k == 0, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
		}
	}
}

// upTop is where the arrow UP begins.
func (s *sketch) upTop() float64 { return s.box.Y0 + s.headHigh() + 1.6*s.u }

// upWide is what the arrows take of the width beside the sheet.
func (s *sketch) upWide() float64 {
	w := (2.4+2.4+2+leaderLong)*s.u + scene.Width(s.Words.Say("wall.up"), s.text, true)
	if s.c.Sheet.Turned {
		w += 4.4*s.u + scene.Width(s.Words.Say("card.head_down"), s.text, false)
	}
	return w
}

// up draws the arrow that says which way the sheet hangs, and for a turned sheet the one that says where its head is.
func (s *sketch) up(g *scene.Group) {
	u, y := s.u, s.upTop()
	x := s.box.X0 + 2.4*u
	if s.c.Back {
		x = s.sheet.X1 + leaderLong*u + 2.4*u
	}
	part := g.Part(scene.Tag{Class: "up"})
	word := func(x float64, text string) {
		part.Text(scene.Text{At: scene.Pt(x, y+upHigh*u-0.4*u), String: text, Height: s.text, Bold: true, Layer: scene.Marks})
	}
	part.Line(scene.Pt(x, y+2*u), scene.Pt(x, y+upHigh*u-0.6*u), scene.Pen(scene.Marks, folio.TapedHeavy))
	draft.Triangle(part, scene.Marks, scene.Pt(x, y), 90, 3.4*u, 3*u, 0, false)
	word(x+2.4*u, s.Words.Say("wall.up"))
	if s.c.Sheet.Turned {
		x += 2.4*u + scene.Width(s.Words.Say("wall.up"), s.text, true) + 4*u
		part.Line(scene.Pt(x, y), scene.Pt(x, y+upHigh*u-3*u), scene.Pen(scene.Marks, folio.TapedFine))
		draft.Triangle(part, scene.Marks, scene.Pt(x, y+upHigh*u-0.6*u), 270, 3.4*u, 3*u, rawLine, true)
		part.Text(scene.Text{At: scene.Pt(x+2.4*u, y+upHigh*u-0.4*u), String: s.Words.Say("card.head_down"), Height: s.text, Layer: scene.Marks})
	}
}

// nameFolds letters the names of corners over and under the sheet, where they have room.
func (s *sketch) nameFolds(g *scene.Group) {
	order := s.cornerFolds()
	n := len(order)
	wide := 0.0
	for _, k := range order {
		wide = math.Max(wide, scene.Width(s.c.Folds[k].Bend.Name, s.text, true)+1.4*s.u)
	}
	lo, hi := s.sheet.X0-2*s.u, s.sheet.X1+2*s.u
	if n == 0 || wide*float64(n) > hi-lo {
		return
	}
	part := g.Part(scene.Tag{Class: "names"})
	for _, head := range []bool{true, false} {
		at := make([]float64, n)
		for i, k := range order {
			f := &s.c.Folds[k]
			at[i] = s.view.X(f.Foot.X)
			if head {
				at[i] = s.view.X(f.Head.X)
			}
		}
		for i, x := range draft.Shelf(at, wide, lo, hi) {
			y, way := s.sheet.Y1, 1.0
			if head {
				y, way = s.sheet.Y0, -1
			}
			part.Line(scene.Pt(at[i], y), scene.Pt(x, y+way*1.6*s.u), scene.Pen(scene.Marks, rawLine))
			part.Text(scene.Text{At: scene.Pt(x, y+way*(2.2*s.u+s.text/2)), String: s.c.Folds[order[i]].Bend.Name, Height: s.text, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
		}
	}
}

// ripWidth says over the sheet what width of it stays.
func (s *sketch) ripWidth(g *scene.Group) {
	c := s.c
	if c.Sheet.Ripped == "" {
		return
	}
	k := s.rect(c.Kept)
	y := s.sheet.Y0 - 2*s.u
	if len(s.cornerFolds()) > 0 {
		y -= s.foldRow() - 1*s.u
	}
	part := g.Part(scene.Tag{Class: "rip"})
	for _, x := range []float64{k.X0, k.X1} {
		part.VLine(x, y-1*s.u, y+1*s.u, scene.Pen(scene.Marks, folio.TapedFine))
	}
	part.HLine(k.X0, k.X1, y, scene.Pen(scene.Marks, rawLine))
	text := s.Inches(c.Cut.Width)
	half := scene.Width(text, s.text, true) / 2
	lo, hi := s.box.X0+s.upWide(), s.right
	if c.Back { // the arrow stands at the other side
		lo, hi = s.box.X0, s.sheet.X1+leaderLong*s.u
	}
	x := math.Max(math.Min(k.Centre().X, hi-half), lo+half)
	part.Text(scene.Text{At: scene.Pt(x, y-2.8*s.u), String: text, Height: s.text, Bold: true, Anchor: scene.Middle, Layer: scene.Notes})
}

// foldRow is how high the names of corners over and under the sheet are.
func (s *sketch) foldRow() float64 { return s.text + 3.6*s.u }
