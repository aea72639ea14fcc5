package elevation

import (
	"math"
	"sort"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Stacks sets up the dimensions on the four sides of the view. Over it openings and boxes, under it what each sheet
// covers and the wall, at the left sills, heads and boxes, at the right base, covering and crown.
func (e *View) Stacks() {
	k, box := e.Look, e.Box()
	e.Above = draft.Stack{Edge: box.Y0, Out: -1, Outline: e.Roof}
	e.Below = draft.Stack{Edge: box.Y1, Out: 1, Outline: e.Ground}
	e.Left = draft.Stack{Upright: true, Edge: box.X0 - e.Wide(e.GhostLeft), Out: -1, First: k.Of(12)}
	e.Right = draft.Stack{Upright: true, Edge: box.X1 + e.Wide(e.GhostRight), Out: 1, First: k.Of(12)}
	if !e.First() { // clear of what stands along the match line
		e.Left.Edge -= k.Of(7)
	}
	if !e.Last() {
		e.Right.Edge += k.Of(7)
	}
	add := func(s *draft.Stack, t draft.Tier) {
		if len(t.Marks) > 1 {
			s.Tiers = append(s.Tiers, t)
		}
	}
	along, up := e.ProfileTiers()
	add(&e.Above, along)
	add(&e.Above, e.OpeningTier())
	add(&e.Above, e.BoxTier())
	add(&e.Below, e.SeamTier())
	add(&e.Below, e.WallTier())
	add(&e.Left, e.BandTier())
	if !e.Lean {
		for _, t := range e.HeightTiers() {
			add(&e.Left, t)
		}
	}
	add(&e.Left, e.BoxHeights())
	add(&e.Left, up)
	if n := len(e.Left.Tiers); n == 1 && !e.Left.Tiers[0].Running {
		e.Left.Tiers[0].Name = "" // it can only be the openings
	} else if n > 0 { // names of level tiers stand left of those that read up
		e.Above.NameAt = e.Left.Box(k).X0 - k.Of(2)
		e.Below.NameAt = e.Above.NameAt
	}
	for _, t := range e.CoverTiers() {
		add(&e.Right, t)
	}
}

// Roof is where the wall ends over a place of the page.
func (e *View) Roof(x float64) float64 {
	return e.V.Y(room.At(e.F.W.Ceiling, e.Back(x)))
}

// Ground is where it ends under it, the floor line included.
func (e *View) Ground(x float64) float64 {
	return e.V.Y(room.At(e.F.W.Floor, e.Back(x))) + e.Look.Wide/2
}

// Back is the x of the wall that comes to lie at a place of the page.
func (e *View) Back(x float64) L {
	at := L(math.Round((x - e.V.Origin.X) * float64(e.V.Scale) * Millimetre))
	return min(max(at, e.From), e.To)
}

// Chain makes a tier of places along the wall: each once, inside what is shown, with its two ends.
func (e *View) Chain(name string, places ...L) draft.Tier {
	list := []L{e.From, e.To}
	for _, x := range places {
		if x > e.From && x < e.To {
			list = append(list, x)
		}
	}
	return e.Tier(name, list, e.V.X)
}

// Tier makes a chain of any places; to turns one into a place on paper.
func (e *View) Tier(name string, list []L, to func(L) float64) draft.Tier {
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	list = Compact(list)
	t := draft.Tier{Name: name, Figures: e.Style.Chain(list)}
	for _, x := range list {
		t.Marks = append(t.Marks, to(x))
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{folio.Datum("tier", strings.ToLower(name)), folio.Datum("from", folio.Mm(list[i])), folio.Datum("to", folio.Mm(list[i+1]))}
	}
	if n := len(t.Marks); n > 1 && t.Marks[0] > t.Marks[n-1] { // up the page
		for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
			t.Marks[i], t.Marks[j] = t.Marks[j], t.Marks[i]
		}
		for i, j := 0, n-2; i < j; i, j = i+1, j-1 {
			t.Figures[i], t.Figures[j] = t.Figures[j], t.Figures[i]
		}
		t.Data = func(i int) []scene.Datum {
			return []scene.Datum{folio.Datum("tier", strings.ToLower(name)), folio.Datum("from", folio.Mm(list[n-2-i])), folio.Datum("to", folio.Mm(list[n-1-i]))}
		}
	}
	return t
}

func Compact(list []L) []L {
	out := list[:0:0]
	for i, x := range list {
		if i == 0 || x != list[i-1] {
			out = append(out, x)
		}
	}
	return out
}

func (e *View) OpeningTier() draft.Tier {
	var places []L
	name := "OPENINGS"
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		places = append(places, o.FromLeft, o.Right())
	}
	for _, b := range e.F.W.Bare {
		places = append(places, b.From, b.To)
		name = "OPENINGS"
	}
	if len(places) == 0 {
		return draft.Tier{}
	}
	t := e.Chain(name, places...)
	if len(t.Marks) == 2 && len(places) > 0 && e.Of > 1 && !e.CrossesAny(places) {
		return draft.Tier{}
	}
	return t
}

// CrossesAny reports whether one of the places lies in what is shown.
func (e *View) CrossesAny(places []L) bool {
	for _, x := range places {
		if x > e.From && x < e.To {
			return true
		}
	}
	return false
}

// BoxTier gives the middles of boxes, running from the wall's left end. Boxes over one another share a mark.
func (e *View) BoxTier() draft.Tier {
	list := []L{e.From}
	for _, b := range e.F.W.Boxes {
		if b.X > e.From && b.X < e.To {
			list = append(list, b.X)
		}
	}
	if len(list) == 1 {
		return draft.Tier{}
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	list = Compact(list)
	t := draft.Tier{Name: "BOXES", Running: true}
	for i, x := range list {
		t.Marks = append(t.Marks, e.V.X(x))
		text := ""
		if i > 0 {
			text = e.Style.Format(x)
		}
		if i == 0 && x != 0 {
			text = e.Style.Format(x) // a piece of a wall: all figures still run from the wall's left end
		}
		t.Figures = append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{folio.Datum("tier", "boxes"), folio.Datum("from", "0"), folio.Datum("to", folio.Mm(list[i]))}
	}
	return t
}

// SeamTier gives what each sheet covers on this wall, so that its first and last figures are the returns; where the
// wall next door is seen, the return there too.
func (e *View) SeamTier() draft.Tier {
	if e.F.Run.Up {
		if len(e.F.Run.Joints) == 0 {
			return draft.Tier{}
		}
		return e.Chain("JOINTS", e.F.Run.Joints...)
	}
	var places []L
	for _, p := range e.F.Parts {
		places = append(places, p.From, p.To)
	}
	inside := places[:0:0]
	for _, x := range places {
		if x >= e.F.Left && x <= e.F.Right {
			inside = append(inside, x)
		}
	}
	t := e.Chain("SEAMS", inside...)
	data := t.Data
	lead := 0
	if h := e.GhostLeft; h.Shown() && !h.Stub {
		t.Marks = append([]float64{e.V.X(e.From) - e.V.MM(h.Width)}, t.Marks...)
		t.Figures = append([]string{e.Style.Format(h.Width)}, t.Figures...)
		lead = 1
	}
	if h := e.GhostRight; h.Shown() && !h.Stub {
		t.Marks = append(t.Marks, e.V.X(e.To)+e.V.MM(h.Width))
		t.Figures = append(t.Figures, e.Style.Format(h.Width))
	}
	inner := len(t.Figures)
	t.Data = func(i int) []scene.Datum {
		switch {
		case i < lead:
			return []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", e.GhostLeft.Corner), folio.Datum("width", folio.Mm(e.GhostLeft.Width))}
		case i == inner-1 && e.GhostRight.Shown() && !e.GhostRight.Stub:
			return []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", e.GhostRight.Corner), folio.Datum("width", folio.Mm(e.GhostRight.Width))}
		}
		return data(i - lead)
	}
	return t
}

// WallTier is the overall length, once: as measured, sharp corner to sharp corner, also where a corner is eased and the
// covering turns sooner.
func (e *View) WallTier() draft.Tier {
	if e.Of > 1 {
		return e.Chain("PIECE")
	}
	return e.Tier("WALL", []L{0, e.F.W.Length}, e.V.X)
}
