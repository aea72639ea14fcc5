package pages

import (
	"math"
	"sort"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// stacks sets up the dimensions on the four sides of the view. Over it openings and boxes, under it what each sheet
// covers and the wall, at the left sills, heads and boxes, at the right base, covering and crown.
func (e *elevation) stacks() {
	k, box := e.look, e.box()
	e.above = draft.Stack{Edge: box.Y0, Out: -1, Outline: e.roof}
	e.below = draft.Stack{Edge: box.Y1, Out: 1, Outline: e.ground}
	e.left = draft.Stack{Upright: true, Edge: box.X0 - e.wide(e.ghostLeft), Out: -1, First: k.Of(12)}
	e.right = draft.Stack{Upright: true, Edge: box.X1 + e.wide(e.ghostRight), Out: 1, First: k.Of(12)}
	if !e.first() { // clear of what stands along the match line
		e.left.Edge -= k.Of(7)
	}
	if !e.last() {
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
	add(&e.below, e.wallTier())
	add(&e.left, e.bandTier())
	if !e.lean {
		for _, t := range e.heightTiers() {
			add(&e.left, t)
		}
	}
	add(&e.left, e.boxHeights())
	add(&e.left, up)
	if n := len(e.left.Tiers); n == 1 && !e.left.Tiers[0].Running {
		e.left.Tiers[0].Name = "" // it can only be the openings
	} else if n > 0 { // names of level tiers stand left of those that read up
		e.above.NameAt = e.left.Box(k).X0 - k.Of(2)
		e.below.NameAt = e.above.NameAt
	}
	for _, t := range e.coverTiers() {
		add(&e.right, t)
	}
}

// roof is where the wall ends over a place of the page.
func (e *elevation) roof(x float64) float64 {
	return e.v.Y(room.At(e.f.w.Ceiling, e.back(x)))
}

// ground is where it ends under it, the floor line included.
func (e *elevation) ground(x float64) float64 {
	return e.v.Y(room.At(e.f.w.Floor, e.back(x))) + e.look.Wide/2
}

// back is the x of the wall that comes to lie at a place of the page.
func (e *elevation) back(x float64) L {
	at := L(math.Round((x - e.v.Origin.X) * float64(e.v.Scale) * millimetre))
	return min(max(at, e.from), e.to)
}

// chain makes a tier of places along the wall: each once, inside what is shown, with its two ends.
func (e *elevation) chain(name string, places ...L) draft.Tier {
	list := []L{e.from, e.to}
	for _, x := range places {
		if x > e.from && x < e.to {
			list = append(list, x)
		}
	}
	return e.tier(name, list, e.v.X)
}

// tier makes a chain of any places; to turns one into a place on paper.
func (e *elevation) tier(name string, list []L, to func(L) float64) draft.Tier {
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	list = compact(list)
	t := draft.Tier{Name: name, Figures: e.style.Chain(list)}
	for _, x := range list {
		t.Marks = append(t.Marks, to(x))
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{datum("tier", strings.ToLower(name)), datum("from", mm(list[i])), datum("to", mm(list[i+1]))}
	}
	if n := len(t.Marks); n > 1 && t.Marks[0] > t.Marks[n-1] { // up the page
		for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
			t.Marks[i], t.Marks[j] = t.Marks[j], t.Marks[i]
		}
		for i, j := 0, n-2; i < j; i, j = i+1, j-1 {
			t.Figures[i], t.Figures[j] = t.Figures[j], t.Figures[i]
		}
		t.Data = func(i int) []scene.Datum {
			return []scene.Datum{datum("tier", strings.ToLower(name)), datum("from", mm(list[n-2-i])), datum("to", mm(list[n-1-i]))}
		}
	}
	return t
}

func compact(list []L) []L {
	out := list[:0:0]
	for i, x := range list {
		if i == 0 || x != list[i-1] {
			out = append(out, x)
		}
	}
	return out
}

func (e *elevation) openingTier() draft.Tier {
	var places []L
	name := "OPENINGS"
	for i := range e.f.w.Openings {
		o := &e.f.w.Openings[i]
		places = append(places, o.FromLeft, o.Right())
	}
	for _, b := range e.f.w.Bare {
		places = append(places, b.From, b.To)
		name = "OPENINGS"
	}
	if len(places) == 0 {
		return draft.Tier{}
	}
	t := e.chain(name, places...)
	if len(t.Marks) == 2 && len(places) > 0 && e.of > 1 && !e.crossesAny(places) {
		return draft.Tier{}
	}
	return t
}

// crossesAny reports whether one of the places lies in what is shown.
func (e *elevation) crossesAny(places []L) bool {
	for _, x := range places {
		if x > e.from && x < e.to {
			return true
		}
	}
	return false
}

// boxTier gives the middles of boxes, running from the wall's left end. Boxes over one another share a mark.
func (e *elevation) boxTier() draft.Tier {
	list := []L{e.from}
	for _, b := range e.f.w.Boxes {
		if b.X > e.from && b.X < e.to {
			list = append(list, b.X)
		}
	}
	if len(list) == 1 {
		return draft.Tier{}
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	list = compact(list)
	t := draft.Tier{Name: "BOXES", Running: true}
	for i, x := range list {
		t.Marks = append(t.Marks, e.v.X(x))
		text := ""
		if i > 0 {
			text = e.style.Format(x)
		}
		if i == 0 && x != 0 {
			text = e.style.Format(x) // a piece of a wall: all figures still run from the wall's left end
		}
		t.Figures = append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{datum("tier", "boxes"), datum("from", "0"), datum("to", mm(list[i]))}
	}
	return t
}

// seamTier gives what each sheet covers on this wall, so that its first and last figures are the returns; where the
// wall next door is seen, the return there too.
func (e *elevation) seamTier() draft.Tier {
	if e.f.run.Up {
		if len(e.f.run.Joints) == 0 {
			return draft.Tier{}
		}
		return e.chain("JOINTS", e.f.run.Joints...)
	}
	var places []L
	for _, p := range e.f.parts {
		places = append(places, p.from, p.to)
	}
	inside := places[:0:0]
	for _, x := range places {
		if x >= e.f.left && x <= e.f.right {
			inside = append(inside, x)
		}
	}
	t := e.chain("SEAMS", inside...)
	data := t.Data
	lead := 0
	if h := e.ghostLeft; h.shown() && !h.stub {
		t.Marks = append([]float64{e.v.X(e.from) - e.v.MM(h.width)}, t.Marks...)
		t.Figures = append([]string{e.style.Format(h.width)}, t.Figures...)
		lead = 1
	}
	if h := e.ghostRight; h.shown() && !h.stub {
		t.Marks = append(t.Marks, e.v.X(e.to)+e.v.MM(h.width))
		t.Figures = append(t.Figures, e.style.Format(h.width))
	}
	inner := len(t.Figures)
	t.Data = func(i int) []scene.Datum {
		switch {
		case i < lead:
			return []scene.Datum{datum("tier", "return"), datum("corner", e.ghostLeft.corner), datum("width", mm(e.ghostLeft.width))}
		case i == inner-1 && e.ghostRight.shown() && !e.ghostRight.stub:
			return []scene.Datum{datum("tier", "return"), datum("corner", e.ghostRight.corner), datum("width", mm(e.ghostRight.width))}
		}
		return data(i - lead)
	}
	return t
}

// wallTier is the overall length, once: as measured, sharp corner to sharp corner, also where a corner is eased and the
// covering turns sooner.
func (e *elevation) wallTier() draft.Tier {
	if e.of > 1 {
		return e.chain("PIECE")
	}
	return e.tier("WALL", []L{0, e.f.w.Length}, e.v.X)
}

// heightTiers are the sills and heads: one tier for each different pair, the openings it measures as its name.
func (e *elevation) heightTiers() []draft.Tier {
	type pair struct{ floor, sill, head, ceiling L }
	var pairs []pair
	names := map[pair][]string{}
	for i := range e.f.w.Openings {
		o := &e.f.w.Openings[i]
		if o.Right() <= e.from || o.FromLeft >= e.to {
			continue
		}
		_, z0, _, z1 := e.f.hole(o)
		mid := (o.FromLeft + o.Right()) / 2
		p := pair{room.At(e.f.w.Floor, mid), z0, z1, room.At(e.f.w.Ceiling, mid)}
		if _, ok := names[p]; !ok {
			pairs = append(pairs, p)
		}
		names[p] = append(names[p], o.Name)
	}
	var tiers []draft.Tier
	for _, p := range pairs {
		list := []L{p.floor, max(p.sill, p.floor), p.head}
		if p.ceiling > p.head {
			list = append(list, p.ceiling)
		}
		tiers = append(tiers, e.tier(strings.Join(names[p], " "), list, e.v.Y))
	}
	if len(tiers) > 4 { // the page would be all dimensions: the openings are drawn large elsewhere
		tiers = tiers[:4]
	}
	return tiers
}

// boxHeights are the middles of boxes, running from the level of the room.
func (e *elevation) boxHeights() draft.Tier {
	list := []L{0}
	for _, b := range e.f.w.Boxes {
		if b.X > e.from && b.X < e.to && b.Z > 0 {
			list = append(list, b.Z)
		}
	}
	if len(list) == 1 {
		return draft.Tier{}
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	list = compact(list)
	t := draft.Tier{Name: "BOXES", Running: true}
	for i, z := range list {
		t.Marks = append(t.Marks, e.v.Y(z))
		text := ""
		if i > 0 {
			text = e.style.Format(z)
		}
		t.Figures = append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{datum("tier", "box heights"), datum("from", "0"), datum("to", mm(list[i]))}
	}
	return t
}

// coverTiers are base, covering and crown at the right end, and the overall height. A left end of another height has
// its own figure on the left.
func (e *elevation) coverTiers() []draft.Tier {
	x := e.to
	floor, ceiling := room.At(e.f.w.Floor, x), room.At(e.f.w.Ceiling, x)
	list := []L{floor, ceiling, floor + e.f.w.Base, ceiling - e.f.w.Crown}
	whole := e.tier("", []L{floor, ceiling}, e.v.Y)
	parts := e.tier("", list, e.v.Y)
	var tiers []draft.Tier
	if len(parts.Marks) > 2 {
		tiers = append(tiers, parts)
	}
	for _, z := range e.jointHeights() {
		tiers = append(tiers, e.tier("JOINT", []L{floor, z}, e.v.Y))
	}
	return append(tiers, whole)
}

// profileTiers are the turns of a ceiling that is not straight: along the wall, and their heights over the room's level.
func (e *elevation) profileTiers() (along, up draft.Tier) {
	var xs []L
	zs := []L{0}
	for _, p := range e.f.w.Ceiling {
		if p.X > e.from && p.X < e.to {
			xs = append(xs, p.X)
		}
		if p.X >= e.from && p.X <= e.to && p.Z > 0 {
			zs = append(zs, p.Z)
		}
	}
	sort.Slice(zs, func(i, j int) bool { return zs[i] < zs[j] })
	zs = compact(zs)
	if len(zs) < 3 && len(xs) == 0 {
		return draft.Tier{}, draft.Tier{}
	}
	if len(xs) > 0 {
		along = e.chain("CEILING", xs...)
	}
	up = draft.Tier{Name: "CEILING", Running: true}
	for i, z := range zs {
		text := ""
		if i > 0 {
			text = e.style.Format(z)
		}
		up.Marks, up.Figures = append(up.Marks, e.v.Y(z)), append(up.Figures, text)
	}
	up.Data = func(i int) []scene.Datum {
		return []scene.Datum{datum("tier", "ceiling heights"), datum("from", "0"), datum("to", mm(zs[i]))}
	}
	return along, up
}

// jointHeights are the heights at which courses meet on this wall.
func (e *elevation) jointHeights() []L {
	if e.f.run.Up {
		return nil
	}
	var list []L
	for _, p := range e.f.parts {
		if len(p.sheets) > 1 {
			for _, z := range e.f.run.Joints {
				if bottom, top := e.f.cover((p.from + p.to) / 2); bottom < z && z < top {
					list = append(list, z)
				}
			}
		}
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	return compact(list)
}

// bandTier are the seams of horizontal grain: what each band covers, from the lower edge of the covering up.
func (e *elevation) bandTier() draft.Tier {
	if !e.f.run.Up {
		return draft.Tier{}
	}
	bottom, top := e.f.cover(e.from)
	list := []L{bottom, top}
	for _, s := range e.f.run.Seams {
		if s.At > bottom && s.At < top {
			list = append(list, s.At)
		}
	}
	return e.tier("BANDS", list, e.v.Y)
}
