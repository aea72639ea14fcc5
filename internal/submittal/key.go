package submittal

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// roomKeyPages are the plan of the room: where every wall, seam, corner and sheet is, where hanging starts and where the grain
// breaks. Of a single wall it would be a line: all that would stand on it is read off the ribbon on the cover and off the elevation.
func roomKeyPages(s *folio.Set) []*folio.Leaf {
	if len(s.Room.Walls) == 1 && s.Room.Space.North == nil {
		return nil
	}
	how := keyLayout{scale: keyScales[0]} // before there are pages, nothing of it is seen
	if len(s.List) > 0 {
		how = layKey(s)
	}
	l := &folio.Leaf{Title: "ROOM KEY", Wall: -1, About: "room key", Scale: draft.Ratio(how.scale, s.Metric())}
	l.Draw = func(b *folio.Board) {
		r := newRoomKey(b, how)
		r.plan()
		r.north()
		r.title()
		r.table()
	}
	list := []*folio.Leaf{l}
	if how.more {
		list = append(list, keyListPages(s, how)...)
	}
	return list
}

// keyLayout is how the page of the plan is laid out.
type keyLayout struct {
	scale  int64
	under  bool        // the table stands under the plan, else beside it
	lost   *keyMissed  // what found no place when it was tried: the list under the table has room for it
	apart  bool        // under the table there is only room for the number of the list's page
	more   bool        // there is that page
	by     scene.Point // by which the whole is moved from where its walls are in the middle
	forced bool        // nothing smaller is left: it is drawn, room or not
}

// roomKey is the plan with what stands on it.
type roomKey struct {
	*folio.Board
	keyLayout
	outline  folio.OutlinePlan
	thick    float64 // of the walls on paper; 0: they stand too close for one
	backs    [][2]scene.Point
	box      scene.Box // of the plan with its labels
	side     scene.Box // of the table
	g        *scene.Group
	reach    []float64        // how far out of the room each wall's numbers and its dimension go
	inward   []float64        // how far its dimension goes into the room
	column   bool             // one goes round the walls, not they round the room
	circled  []bool           // the corner at the wall's right has its circle
	named    []bool           // the mark of the wall has its name beside it
	figured  []bool           // the wall's length stands at a dimension line
	lines    [][2]scene.Point // of dimensions and leaders
	every    int              // sheets from one number to the next
	missed   keyMissed
	squeezed int // what stands otherwise than it would freely
}

// Distances of the page, in mm on the office page.
const (
	keyEdge       = 8   // from the field's edge
	keyMargin     = 10  // round the walls, at the least
	keyTitle      = 24  // title and scale bar under the plan
	keyTitleUnder = 12  // from the plan to the line of its title
	keySide       = 122 // the table beside the plan, at the most
	keyUpright    = 260 // on narrower paper the table stands under the plan
	keyThick      = 2.4 // of a wall
	keyUnfit      = 11  // NOT FOR HANGING over a table
	keyUnfitTop   = 18  // the same over a plan
	keyShort      = 12  // a wall that has no room for what is told of it
	keyLost       = 100 // what is lost counts so much more than what is squeezed
	keySqueezed   = 5   // so much of a plan may be, for a larger scale
	keyListTries  = 3   // layouts that are tried for room for a list
	keyTries      = 3   // scales that are tried from the largest at which the walls stand on the page
	keySideShare  = 0.29
	keyUnderMost  = 0.6 // of the height that the table takes under the plan, at the most
)

// newRoomKey lays out the page, nil where the walls do not stand on it at the scale.
func newRoomKey(b *folio.Board, how keyLayout) *roomKey {
	at := *b
	r := &roomKey{Board: &at, keyLayout: how}
	r.everyNumber()
	r.part()
	if r.box.IsZero() {
		return nil
	}
	k := b.Look
	inner := r.box.Inset(k.Of(keyMargin))
	r.outline = folio.PlanAt(b.Room, inner, 1/(float64(length.Millimetre)*float64(how.scale)))
	if how.by != (scene.Point{}) {
		r.outline = folio.PlanAt(b.Room, scene.BoxRound(inner.Centre().Add(how.by.X, how.by.Y), inner.W(), inner.H()), 1/(float64(length.Millimetre)*float64(how.scale)))
	}
	if all := r.outline.Box(); !how.forced && (all.W() > inner.W() || all.H() > inner.H()) {
		return nil
	}
	r.Space = draft.NewSpace(r.box)
	r.thick = r.outline.Thick(k.Of(keyThick), k.Of(keyThick*0.7), k.Of(keyThick*0.45))
	r.backs = r.outline.Backs(r.thick)
	n := len(b.Room.Walls)
	r.reach, r.inward, r.column = make([]float64, n), make([]float64, n), r.goneRound()
	r.figured, r.circled, r.named = make([]bool, n), make([]bool, n), make([]bool, n)
	return r
}

// part parts the page between the plan and its table; on paper too narrow the table has no room beside the plan.
func (r *roomKey) part() {
	k, f := r.Look, folio.BoxOf(r.Paper.Field)
	in := scene.Box{X0: f.X0 + k.Of(keyEdge), Y0: f.Y0 + k.Of(keyEdge), X1: f.X1 - k.Of(keyEdge), Y1: f.Y1 - k.Of(keyEdge-2)}
	r.side, r.box = in, in
	if r.under {
		high := r.tableHigh(in.W())
		if most := in.H() * keyUnderMost; high > most {
			high = most
		}
		r.side.Y0 = in.Y1 - high
		r.box.Y1 = r.side.Y0 - k.Of(keyTitle)
		if r.Unfit() {
			r.box.Y0 += k.Of(keyUnfitTop)
		}
		return
	}
	if f.W() < k.Of(keyUpright) {
		r.box = scene.Box{}
		return
	}
	r.side.X0 = in.X1 - math.Min(f.W()*keySideShare, k.Of(keySide))
	r.box.X1, r.box.Y1 = r.side.X0-k.Of(6), in.Y1-k.Of(keyTitle-4)
	if r.Unfit() {
		r.side.Y0 += k.Of(keyUnfit)
	}
}

// plan draws the plan itself: marks that have one place, then what gives way, the most needed first.
func (r *roomKey) plan() {
	r.view()
	for i := range r.Room.Walls {
		r.wall(i)
	}
	r.across()
	words := append(r.starts(), r.changes()...)
	short, long := r.byLength()
	for _, i := range short { // a long wall has more places
		r.corner(r.before(i), true)
		r.corner(i, true)
	}
	for _, i := range short {
		r.marks(i, true)
	}
	r.numbers()
	r.holeNames()
	for _, letter := range words {
		letter()
	}
	for i := range r.Room.Walls {
		r.dimension(i)
	}
	for i := range r.Room.Walls {
		r.corner(i, false)
	}
	for _, i := range short { // where a label has no room, the table names the wall by its mark
		missed := r.missed
		if !r.named[i] {
			r.label(i)
		}
		if r.Marks[i] != "" {
			r.missed = missed
		}
	}
	var inside []int // the room before a wall is for its mark first
	for _, i := range long {
		if !r.labelOutside(i) {
			inside = append(inside, i)
		}
	}
	for _, i := range long {
		r.marks(i, false)
	}
	for _, i := range inside {
		r.label(i)
	}
	r.name()
	r.direction()
}

// before is the wall before another.
func (r *roomKey) before(wall int) int { return (wall + len(r.Room.Walls) - 1) % len(r.Room.Walls) }

// byLength are the walls that are shorter on paper than their names, and the others, the shortest first.
func (r *roomKey) byLength() (short, long []int) {
	for i := range r.Room.Walls {
		if r.Room.Walls[i].Length.MM()/float64(r.scale) < r.Look.Of(keyShort) {
			short = append(short, i)
		} else {
			long = append(long, i)
		}
	}
	slices.SortStableFunc(long, func(a, b int) int { return cmp.Compare(r.Room.Walls[a].Length, r.Room.Walls[b].Length) })
	return short, long
}

// view opens the group that the plan is drawn into.
func (r *roomKey) view() {
	b := r.outline.Box()
	ratio := draft.Ratio(r.scale, r.Metric())
	view := scene.View{Box: b.Inset(-r.Look.Of(2)), Scale: float64(r.scale), Metric: r.Metric(), Name: "ROOM KEY", Ratio: ratio}
	r.g = r.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(r.scale)))
}

// title draws title and scale bar under the plan.
func (r *roomKey) title() {
	k := r.Look
	second := "SCALE " + draft.Ratio(r.scale, r.Metric()) + "   seen from above; walls as measured at their faces; thickness not measured"
	x, y := r.box.X0, math.Min(r.box.Y1, r.g.Bounds().Y1)+k.Of(keyTitleUnder)
	t := draft.Title{Mark: "1", Page: r.Leaf.Number, Name: "ROOM KEY", Under: []string{second}, Width: k.Of(60), Most: r.box.W()}
	tb := t.Draw(&r.Page.Group, k, scene.Pt(x, y))
	if r.under { // and the table under that
		r.side.Y0 = math.Min(r.side.Y0, tb.Y1+k.Of(6))
	}
	bar := draft.Bar{Scale: r.scale, Metric: r.Metric()}
	most := math.Min(k.Of(104), r.box.X1-tb.X1-k.Of(30))
	if most > k.Of(20) {
		bar.Draw(&r.Page.Group, k, scene.Pt(tb.X1+k.Of(14), y+k.Of(1.5)), most)
	}
}
