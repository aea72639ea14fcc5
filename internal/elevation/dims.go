package elevation

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// stacks sets up the dimensions on the four sides of the view. Over it openings and boxes, under it what each sheet
// covers and the wall, at the left sills, heads and boxes, at the right base, covering and crown.
func (e *View) stacks() {
	k, box := e.Look, e.Box()
	e.balloons()
	e.above = draft.Stack{Edge: box.Y0, Out: -1, Outline: e.Roof, Behind: true}
	e.below = draft.Stack{Edge: box.Y1, Out: 1, Outline: e.ground, Behind: true}
	if over := e.over.high(k); over > 0 {
		e.above.First = over + k.Of(overFirst)
	}
	if under := e.under.high(k); under > 0 {
		e.below.First = under + k.Of(underFirst)
	}
	e.left = draft.Stack{Upright: true, Edge: box.X0 - e.wide(e.ghostLeft), Out: -1, First: k.Of(12)}
	e.right = draft.Stack{Upright: true, Edge: box.X1 + e.wide(e.ghostRight), Out: 1, First: k.Of(12)}
	if !e.First() { // clear of what stands along the match line
		e.left.Edge -= k.Of(7)
	}
	if !e.Last() {
		e.right.Edge += k.Of(7)
	}
	add := func(s *draft.Stack, t draft.Tier) {
		if len(t.Marks) > 1 {
			s.Tiers = append(s.Tiers, t)
		}
	}
	along, up := e.profileTiers()
	add(&e.above, along)
	add(&e.above, e.openingTier())
	add(&e.above, e.boxTier())
	add(&e.below, e.seamTier())
	add(&e.below, e.floorTier())
	add(&e.below, e.wallTier())
	add(&e.left, e.bandTier())
	if !e.lean {
		add(&e.left, e.levelTier())
		for _, t := range e.heightTiers() {
			add(&e.left, t)
		}
	}
	add(&e.left, e.boxHeights())
	add(&e.left, up)
	if n := len(e.left.Tiers); n == 1 && !e.left.Tiers[0].Running {
		e.left.Tiers[0].Name = "" // it can only be the openings
		e.besideLeft()
	} else if n > 0 { // names of level tiers stand left of those that read up
		e.above.NameAt = e.left.Box(k).X0 - k.Of(2)
		e.below.NameAt = e.above.NameAt
	}
	for _, t := range e.coverTiers() {
		add(&e.right, t)
	}
}

// besideLeft ends the names of level tiers left of the tiers that read up where a figure of these goes out on a leader past the top or
// the foot of the wall, to where the names would stand.
func (e *View) besideLeft() {
	k, box := e.Look, e.Box()
	taken := e.left.Box(k)
	past := func(s *draft.Stack, reach float64) {
		first := s.First
		if first == 0 {
			first = k.Of(9)
		}
		if reach > first-k.Small {
			s.NameAt = taken.X0 - k.Of(2)
		}
	}
	past(&e.above, box.Y0-taken.Y0)
	past(&e.below, taken.Y1-box.Y1)
}

// How far the first line of dimensions stands off a row of balloons, in mm on the office page: over the wall figures stand out
// from it, under the wall between it and the row.
const (
	overFirst  = 2.4
	underFirst = 4.4
)

// Roof is where the wall ends over a place of the page.
func (e *View) Roof(x float64) float64 {
	return e.V.Y(room.At(e.F.W.Ceiling, e.back(x)))
}

// ground is where it ends under it, the floor line included.
func (e *View) ground(x float64) float64 {
	return e.V.Y(room.At(e.F.W.Floor, e.back(x))) + e.Look.Wide/2
}

// back is the x of the wall that comes to lie at a place of the page.
func (e *View) back(x float64) L {
	return min(max(e.V.Length(x-e.V.Origin.X), e.From), e.To)
}

// chain makes a tier of links.
func (e *View) chain(name string, places ...L) draft.Tier {
	return e.Tier(name, e.links(places...), e.V.X)
}

// links are the places of a chain along the wall: each once, inside what is shown, with its two ends.
func (e *View) links(places ...L) []L {
	from, to := e.ends()
	list := []L{from, to}
	for _, x := range places {
		if x > e.From && x < e.To {
			list = append(list, x)
		}
	}
	return ascending(list)
}

// ends are the ends of what is dimensioned: of the wall its sharp corners, as it was measured, also where a corner is eased
// and the covering turns sooner.
func (e *View) ends() (from, to L) {
	from, to = e.From, e.To
	if e.First() && !e.Detail {
		from = min(from, 0)
	}
	if e.Last() && !e.Detail {
		to = max(to, e.F.W.Length)
	}
	return from, to
}

// rounds are the places where the covering leaves the wall for the round of an eased corner: what it covers up to there is
// the return that the detail of the corner has.
func (e *View) rounds() []L {
	var list []L
	for i := range e.F.Run.Corners {
		c := &e.F.Run.Corners[i]
		half := (c.To - c.From - max(c.Lean, -c.Lean)).HalfDown()
		if c.Radius == 0 || half <= 0 || e.F.Run.Up {
			continue
		}
		if c.RightWall == e.F.Wall && e.First() {
			list = append(list, e.F.Left+half)
		}
		if c.LeftWall == e.F.Wall && e.Last() {
			list = append(list, e.F.Right-half)
		}
	}
	return list
}

// Tier makes a chain of any places; to turns one into a place on paper.
func (e *View) Tier(name string, list []L, to func(L) float64) draft.Tier {
	list = ascending(list)
	t := draft.Tier{Name: name, Figures: e.Style.Chain(list)}
	for _, x := range list {
		t.Marks = append(t.Marks, to(x))
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{folio.Datum("tier", strings.ToLower(name)), folio.Datum("from", folio.Mm(list[i])), folio.Datum("to", folio.Mm(list[i+1]))}
	}
	if n := len(t.Marks); n > 1 && t.Marks[0] > t.Marks[n-1] { // up the page
		slices.Reverse(t.Marks)
		slices.Reverse(t.Figures)
		t.Data = func(i int) []scene.Datum {
			return []scene.Datum{folio.Datum("tier", strings.ToLower(name)), folio.Datum("from", folio.Mm(list[n-2-i])), folio.Datum("to", folio.Mm(list[n-1-i]))}
		}
	}
	return t
}

// ascending puts places into their order, each once, and leaves the list that it is given as it is.
func ascending(list []L) []L {
	list = slices.Clone(list)
	slices.Sort(list)
	return slices.Compact(list)
}

func (e *View) openingTier() draft.Tier {
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
	t := e.chain(name, places...)
	if len(t.Marks) == 2 && len(places) > 0 && e.Of > 1 && !e.crossesAny(places) {
		return draft.Tier{}
	}
	return t
}

// crossesAny reports whether one of the places lies in what is shown.
func (e *View) crossesAny(places []L) bool {
	for _, x := range places {
		if x > e.From && x < e.To {
			return true
		}
	}
	return false
}

// boxTier gives the middles of boxes, running from the wall's left end. Boxes over one another share a mark.
func (e *View) boxTier() draft.Tier {
	from, _ := e.ends()
	list := []L{from}
	for _, b := range e.F.W.Boxes {
		if b.X > e.From && b.X < e.To {
			list = append(list, b.X)
		}
	}
	return e.middles(list, e.V.X, "boxes")
}

// boxHeights are the middles of boxes, running from the level of the room.
func (e *View) boxHeights() draft.Tier {
	list := []L{0}
	for _, b := range e.F.W.Boxes {
		if b.X > e.From && b.X < e.To && b.Z > 0 {
			list = append(list, b.Z)
		}
	}
	return e.middles(list, e.V.Y, "box heights")
}

// middles makes the running tier of boxes; list holds its origin too, and to turns one of its places into one on paper.
func (e *View) middles(list []L, to func(L) float64, what string) draft.Tier {
	if len(list) == 1 {
		return draft.Tier{}
	}
	t := e.Running("BOXES", what, 0, ascending(list), to)
	t.Upright = true
	return t
}

// Running makes a tier whose figures count from zero, which may lie before the first of its places; what it is called in
// the file.
func (e *View) Running(name, what string, zero L, list []L, to func(L) float64) draft.Tier {
	t := draft.Tier{Name: name, Running: true}
	for i, x := range list {
		text := ""
		if i > 0 || x != zero { // a piece of a wall: all figures still run from the wall's left end
			text = e.Style.Format(x - zero)
		}
		t.Marks, t.Figures = append(t.Marks, to(x)), append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{folio.Datum("tier", what), folio.Datum("from", folio.Mm(zero)), folio.Datum("to", folio.Mm(list[i]))}
	}
	return t
}

// seamTier gives what each sheet covers on this wall, so that its first and last figures are the returns; where the
// wall next door is seen, the return there too.
func (e *View) seamTier() draft.Tier {
	if e.F.Run.Up {
		if len(e.F.Run.Joints) == 0 {
			return draft.Tier{}
		}
		return e.chain("JOINTS", e.F.Run.Joints...)
	}
	var places []L
	for _, p := range e.F.Parts {
		for _, x := range []L{p.From, p.To} {
			if len(e.F.Shown(x)) > 0 || !e.inFullHole(x) {
				places = append(places, x)
			}
		}
	}
	for i := range e.F.W.Openings { // where one takes the whole height the covering ends
		if o := &e.F.W.Openings[i]; e.F.W.FullHeight(o) && o.FromLeft >= e.F.Left && o.Right() <= e.F.Right {
			places = append(places, o.FromLeft, o.Right())
		}
	}
	inside := places[:0:0]
	for _, x := range places {
		if x >= e.F.Left && x <= e.F.Right {
			inside = append(inside, x)
		}
	}
	list := e.links(append(inside, e.rounds()...)...)
	t := e.equal(e.Tier("SEAMS", list, e.V.X), list)
	data := t.Data
	from, to := e.ends()
	lead := 0
	if h := e.ghostLeft; h.shown() && !h.stub {
		t.Marks = append([]float64{e.V.X(from) - e.V.MM(h.width)}, t.Marks...)
		t.Figures = append([]string{e.Style.Format(h.width)}, t.Figures...)
		lead = 1
	}
	if h := e.ghostRight; h.shown() && !h.stub {
		t.Marks = append(t.Marks, e.V.X(to)+e.V.MM(h.width))
		t.Figures = append(t.Figures, e.Style.Format(h.width))
	}
	inner := len(t.Figures)
	t.Data = func(i int) []scene.Datum {
		switch {
		case i < lead:
			return []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", e.ghostLeft.corner), folio.Datum("width", folio.Mm(e.ghostLeft.width))}
		case i == inner-1 && e.ghostRight.shown() && !e.ghostRight.stub:
			return []scene.Datum{folio.Datum("tier", "return"), folio.Datum("corner", e.ghostRight.corner), folio.Datum("width", folio.Mm(e.ghostRight.width))}
		}
		return data(i - lead)
	}
	return t
}

// inFullHole reports whether a place lies in an opening that leaves no covering over or under it: what would be a seam there is none.
func (e *View) inFullHole(x L) bool {
	for i := range e.F.W.Openings {
		if o := &e.F.W.Openings[i]; o.FromLeft < x && x < o.Right() && e.F.W.FullHeight(o) {
			return true
		}
	}
	return false
}

// wallTier is the overall length, once: as measured, sharp corner to sharp corner, also where a corner is eased and the
// covering turns sooner.
func (e *View) wallTier() draft.Tier {
	if e.Of > 1 {
		return e.chain("PIECE")
	}
	return e.Tier("WALL", []L{0, e.F.W.Length}, e.V.X)
}
