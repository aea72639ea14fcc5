package room

import (
	"cmp"
	"slices"

	"flitchlay/internal/source"
)

// openings reads the openings of a wall. Their names stand already.
func (d *decoder) openings(tables []source.Value, w *Wall, long, sound bool) {
	good := make([]bool, len(tables))
	for i, v := range tables {
		o := &w.Openings[i]
		good[i] = d.opening(v, o, w, long, sound)
	}
	d.apart(tables, w, good)
}

// opening reads one opening. It reports whether its four edges are sound.
//
// The head is its height above the sill. Without a sill the opening reaches down to the floor everywhere, and its head
// is its height above the floor at its left edge.
func (d *decoder) opening(v source.Value, o *Opening, w *Wall, long, sound bool) bool {
	of := "opening " + quote(o.Name)
	var okFrom, okWidth, okHeight bool
	o.FromLeft, okFrom = d.required(v.Get("from_left"), of)
	if o.Width, okWidth = d.required(v.Get("width"), of); okWidth && o.Width <= 0 {
		v.Get("width").Mistake("give a width over 0", "%s has a width of %s", of, d.words(o.Width))
		okWidth = false
	}
	if o.Height, okHeight = d.required(v.Get("height"), of); okHeight && o.Height <= 0 {
		v.Get("height").Mistake("give the height from sill to head", "%s has a height of %s", of, d.words(o.Height))
		okHeight = false
	}
	okSill := true
	if sill := v.Get("sill"); sill.Given() {
		o.Sill, okSill = d.height(sill)
		o.SillGiven = true
	}
	o.Casing = d.casing(v.Get("casing"), d.room.Space.Casing)
	o.Reveal, _ = d.positive(v.Get("reveal"), 0, true)
	o.WrapReveal = v.Get("wrap_reveal").Bool(false)
	if o.WrapReveal {
		if o.Reveal == 0 {
			v.Get("wrap_reveal").Mistake("add reveal: the depth of its sides", "%s has no reveal to wrap", of)
		}
		if d.room.Veneer.Horizontal {
			v.Get("wrap_reveal").Mistake("leave wrap_reveal out: with horizontal grain nothing wraps", "only long grain wraps: %s cannot be wrapped with horizontal grain", of)
		}
	}
	if c := v.Get("clearance"); c.Given() {
		o.Clearance, o.Cleared = d.positive(c, 0, true)
		if !o.Kind.Traits().Burns {
			c.Mistake("leave clearance out, or say kind = \"fireplace\"", "%s asks for no clearance to what burns", of)
		}
	}
	o.Grain = v.Get("grain").Word("", throughWords...)
	inside := okFrom && long && d.within(v, o, w, okWidth)
	if !inside || !sound || !okHeight || !okSill {
		return false
	}
	return d.heads(v, o, w)
}

// casing reads the width of a casing; nil or what holds for the room where nothing is said.
func (d *decoder) casing(v source.Value, other *L) *L {
	if l, ok := d.positive(v, 0, true); ok && v.Given() {
		return &l
	}
	return other
}

// within checks that an opening stands between the ends of its wall; its right edge only where its width is sound.
func (d *decoder) within(v source.Value, o *Opening, w *Wall, okWidth bool) bool {
	switch {
	case o.FromLeft < 0:
		v.Get("from_left").Mistake(d.stand(w), "opening %q begins %s left of wall %q", o.Name, d.words(-o.FromLeft), w.Name)
	case o.FromLeft >= w.Length:
		v.Get("from_left").Mistake(d.stand(w), "opening %q begins at the end of wall %q (%s) or past it", o.Name, w.Name, d.words(w.Length))
	case !okWidth:
	case o.Right() > w.Length:
		v.Get("width").Mistake("from_left + width is at most the wall's length; both are to the outer edge of the casing",
			"opening %q ends %s past wall %q (%s)", o.Name, d.over(o.Right()-w.Length), w.Name, d.words(w.Length))
	default:
		return true
	}
	return false
}

// over prints how much something is too much, never as 0.
func (d *decoder) over(l L) string {
	text, _ := d.both(l, 0)
	return text
}

// heads works out sill and head, and checks them against floor and ceiling.
func (d *decoder) heads(v source.Value, o *Opening, w *Wall) bool {
	floor := AtRight(w.Floor, o.FromLeft)
	low, high := floor, AtRight(w.Ceiling, o.FromLeft)
	for _, x := range stops(o.FromLeft, o.Right(), w.Floor, w.Ceiling) {
		if x < o.Right() {
			low, high = min(low, AtRight(w.Floor, x)), max(high, AtRight(w.Ceiling, x))
		}
		if x > o.FromLeft {
			low, high = min(low, At(w.Floor, x)), max(high, At(w.Ceiling, x))
		}
	}
	if o.SillGiven {
		o.Head = o.Sill + o.Height
		if o.Sill < low {
			v.Get("sill").Mistake("heights are above the room's level; leave sill out where the opening reaches down to the floor",
				"the sill of opening %q lies %s under the floor", o.Name, d.over(low-o.Sill))
			return false
		}
	} else {
		o.Sill, o.Head = low, floor+o.Height
	}
	if o.Head > high && d.reachesUp(o, w) {
		o.Head = high
	}
	if o.Head > high {
		v.Get("height").Mistake("the head is sill + height", "the head of opening %q is at %s, %s over the ceiling of wall %q there",
			o.Name, d.words(o.Head), d.over(o.Head-high), w.Name)
		return false
	}
	if o.Grain != "" && !w.FullHeight(o) {
		v.Get("grain").Mistake("leave grain out: over and under this opening the sheets go on",
			"grain is for full-height gaps; opening %q leaves covering above or below it", o.Name)
	}
	return true
}

// reachesUp reports whether an opening whose head is over the ceiling in its width is a gap that reaches from the floor
// up to a ceiling or from a floor out of level: its height was then taken elsewhere on the wall.
func (d *decoder) reachesUp(o *Opening, w *Wall) bool {
	low, lift := extent(w.Floor)
	_, top := extent(w.Ceiling)
	return !o.SillGiven && o.Head <= top+lift-low
}

// apart checks that openings do not overlap. They may touch, and one may stand over another.
func (d *decoder) apart(tables []source.Value, w *Wall, good []bool) {
	var order []int
	for i := range tables {
		if good[i] {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(w.Openings[a].FromLeft, w.Openings[b].FromLeft) })
	for a, i := range order {
		for _, k := range order[a+1:] {
			p, q := &w.Openings[i], &w.Openings[k]
			if q.FromLeft >= p.Right() {
				break
			}
			if p.Sill < q.Head && q.Sill < p.Head {
				tables[k].Get("from_left").Mistake("move one of them, or make them one opening", "opening %q overlaps opening %q by %s",
					q.Name, p.Name, d.over(min(p.Right(), q.Right())-q.FromLeft))
			}
		}
	}
}

// One 2 x 3 in hole by gang, a step of 1 13/16 in wider for each further one, in 1/16 in.
//
// Source: common practice for a single device box; the step as for plates.
const (
	holeWidth  = 32
	holeStep   = 29
	holeHeight = 48
)

// boxes reads the boxes of a wall. Their names stand already.
func (d *decoder) boxes(tables []source.Value, w *Wall, long, sound bool) {
	for i, v := range tables {
		b := &w.Boxes[i]
		of := b.Kind.Named(b.Name)
		if called := b.Kind.Traits().Called; called != "" {
			of = called + " " + b.Name
		}
		var okX, okZ bool
		b.X, okX = d.required(v.Get("x"), of)
		b.Z, okZ = d.required(v.Get("z"), of)
		gang := v.Get("gang")
		b.Gang = int(max(0, min(gang.Whole(1), 1000)))
		if b.Gang < 1 || b.Gang > len(plateWidths) && !v.Get("plate").Given() {
			gang.Mistake("write 1 to 4, or add plate = [width, height]", "a plate of %d gang is not known", b.Gang)
			b.Gang = 1
		}
		if !d.plate(v, b, of) {
			continue
		}
		if okX && long {
			d.onWall(v, b, w, of, okZ && sound)
		}
	}
}

// plate finds the size of a box's plate and hole.
func (d *decoder) plate(v source.Value, b *Box, of string) bool {
	p, usual, ok := v.Get("plate"), b.Kind.Traits().Plate, true
	switch {
	case p.Given():
		b.PlateWidth, b.PlateHigh, ok = d.pair(p)
	case usual == nil:
		p.Mistake(`add plate = ["width", "height"]`, "%s has no plate: a %s has no usual size", of, b.Kind)
		return false
	default:
		b.PlateWidth, b.PlateHigh = usual(b.Gang)
	}
	b.HoleWidth = min(L(holeWidth+holeStep*(b.Gang-1))*sixteenth, b.PlateWidth)
	b.HoleHigh = min(holeHeight*sixteenth, b.PlateHigh)
	h := v.Get("hole")
	if !h.Given() || !ok {
		return ok
	}
	if b.HoleWidth, b.HoleHigh, ok = d.pair(h); ok && (b.HoleWidth > b.PlateWidth || b.HoleHigh > b.PlateHigh) {
		h.Mistake("give the hole as [width, height], no larger than the plate that covers it", "the hole of %s is larger than its plate (%s x %s)",
			of, d.words(b.PlateWidth), d.words(b.PlateHigh))
	}
	return ok
}

// pair reads [width, height], both over 0.
func (d *decoder) pair(v source.Value) (width, high L, ok bool) {
	two := v.Items()
	if len(two) != 2 {
		v.Mistake("write [width, height]", "%s has not two figures", v.Name())
		return 0, 0, false
	}
	width, okWidth := d.positive(two[0], 0, false)
	high, okHigh := d.positive(two[1], 0, false)
	return width, high, okWidth && okHigh
}

// onWall checks that a box's plate lies on its wall.
func (d *decoder) onWall(v source.Value, b *Box, w *Wall, of string, heights bool) {
	left, right := b.X-b.PlateWidth.HalfDown(), b.X-b.PlateWidth.HalfDown()+b.PlateWidth
	switch {
	case left < 0:
		v.Get("x").Mistake("x is the centre of the plate, from the wall's left end", "the plate of %s reaches %s left of wall %q", of, d.over(-left), w.Name)
		return
	case right > w.Length:
		v.Get("x").Mistake("x is the centre of the plate, from the wall's left end", "the plate of %s reaches %s past wall %q (%s)",
			of, d.over(right-w.Length), w.Name, d.words(w.Length))
		return
	}
	if !heights {
		return
	}
	low, high := At(w.Floor, b.X), At(w.Ceiling, b.X)
	bottom := b.Z - b.PlateHigh.HalfDown()
	if bottom < low {
		v.Get("z").Mistake("z is the height of the plate's centre above the room's level", "the plate of %s reaches %s under the floor", of, d.over(low-bottom))
	} else if top := bottom + b.PlateHigh; top > high {
		v.Get("z").Mistake("z is the height of the plate's centre above the room's level", "the plate of %s reaches %s over the ceiling", of, d.over(top-high))
	}
}
