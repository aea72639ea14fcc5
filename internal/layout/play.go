package layout

import "flitchlay/internal/seam"

// A line that is off by something takes what is still to hang with it: every seam of the span from that one on stands off by as
// much, as far as one that does not move, the edge of the span, the closing seam, or one that a pin holds. The sheet before
// that one takes it up in its width. Play is how much of this a line can have before a must is broken that the layout keeps,
// or one is broken more than the layout breaks it.
//
// The sheet at the left of the line counts where its left edge does not move either. Elsewhere the sheets before it have come
// to what the line is off between them, each by a little of its overlap; that is seen at every seam, and not figured here.

// Must is what asks of a seam or of a sheet that a line may not be further off.
type Must int

// The musts. Those up to MustKept ask of a seam, those up to MustReach of the sheet that takes up what the line is off, the last of
// the sheet whose edge is off.
const (
	NoMust      Must = iota // none within the width of a sheet
	MustReturn              // corner_return, past a wrapped corner or outside a wrapped jamb
	MustReveal              // the jamb and opening_clear, inside a wrapped jamb
	MustClear               // opening_clear, inside an edge of an opening
	MustLeg                 // leg, outside an edge of an opening
	MustKept                // keep_clear
	MustWidth               // least_width
	MustOverlap             // least_overlap, at the left of the sheet
	MustReach               // the sheet would end before the covering does
	MustPlate               // the hole of a box in the sheet that is off itself would show beside its plate
)

// mustWords are the words of the kept form, and mustOf what the solver charges for each.
var (
	mustWords = [...]string{"", "return", "reveal", "clear", "leg", "kept clear", "width", "overlap", "reach", "plate"}
	mustOf    = map[seam.Cause]Must{seam.Return: MustReturn, seam.Reveal: MustReveal, seam.Clear: MustClear, seam.Leg: MustLeg, seam.Kept: MustKept}
)

// String is the must in a word.
func (m Must) String() string { return mustWords[m] }

// Limit is how far a line may be off to one side, and what it would break one step of the grid further.
type Limit struct {
	By    L
	Must  Must
	Name  string // of the corner, the opening, the box, or the wall with the stretch kept clear, that asks; else empty
	Side  string // left, right: the edge of the opening
	Place int    // of the sheet that would be too narrow, or would not reach; else 0
}

// Play is how far the line of a seam may be off. Where the grain runs level left is down, and right is up.
type Play struct {
	LeftSheet   int // as of the Seam
	Left, Right Limit
}

// side is one of the two ways.
func (p *Play) side(way L) *Limit {
	if way < 0 {
		return &p.Left
	}
	return &p.Right
}

// Plays finds how far the line of every seam of a run may be off that does not hang, by the place at its left. That of a closing
// seam is how far the left edge of the first sheet may be off, and all that hangs after it.
func (p *Plan) Plays(r *Run) map[int]Play {
	b := &builder{room: p.Room, aim: p.Aim, style: p.Style, plan: &Plan{}}
	out := map[int]Play{}
	for i, q := range b.questions(r.Line) {
		if q.done {
			continue
		}
		row := newPlayRow(b, r, q, i)
		for k := 1; k < len(row.edges)-1; k++ {
			if k > row.hung {
				out[row.place(k)] = row.play(k)
			}
		}
		if q.from.Closed && row.hung == 0 {
			last := len(row.edges) - 1
			play := row.play(0)
			play.LeftSheet = row.place(last)
			out[play.LeftSheet] = play
		}
	}
	return out
}

// playRow is a span as its lines move: edge 0 is the left one of its first sheet, edge k the right one of the k-th.
type playRow struct {
	*builder
	run    *Run
	q      *question
	first  int // place of the first sheet
	edges  []L
	hung   int
	pinned []bool // does not move with those before it
	known  map[playSide]Limit
}

// playSide is an edge and one of the two ways.
type playSide struct {
	edge int
	way  L
}

func newPlayRow(b *builder, r *Run, q *question, span int) *playRow {
	s := &r.Spans[span]
	row := &playRow{builder: b, run: r, q: q, first: s.FirstSheet, hung: len(q.hung), known: map[playSide]Limit{}}
	for place := s.FirstSheet; place <= s.LastSheet; place++ {
		sheet := r.sheet(place)
		if len(row.edges) == 0 {
			row.edges = []L{sheet.Left}
		}
		row.edges = append(row.edges, sheet.Right)
	}
	row.pinned = make([]bool, len(row.edges))
	row.pinned[len(row.edges)-1] = true
	for _, p := range q.pins {
		row.pin(p)
	}
	return row
}

// pin marks the edges that a pin holds: a seam, or both seams of a sheet whose middle it is.
func (p *playRow) pin(pin pin) {
	at, met, ok := p.run.meets(pin)
	if !ok {
		return
	}
	for k := 1; k < len(p.edges); k++ {
		left, right := p.edges[k-1], p.edges[k]
		if pin.Put != seam.PutMiddle && p.run.Line.Distance(right, at) == p.run.Line.Distance(met, at) {
			p.pinned[k] = true
			return
		}
		if pin.Put != seam.PutSeam && p.run.Line.Distance(left+(right-left).HalfDown(), at) == p.run.Line.Distance(met, at) {
			p.pinned[k-1], p.pinned[k] = true, true
			return
		}
	}
}

func (p *playRow) place(edge int) int { return p.first + edge - 1 }

// play is how far an edge may be off: the left one of the first sheet in a closed span, else that of a seam.
func (p *playRow) play(edge int) Play {
	out := Play{LeftSheet: p.place(edge)}
	own := p.place(max(edge, 1)) // the sheet that is off itself
	for _, way := range [2]L{-1, 1} {
		l := p.limit(edge, way)
		if h := p.holeLimit(own, way); h.Must != NoMust && (h.By < l.By || l.Must == NoMust) {
			l = h
		}
		*out.side(way) = l
	}
	return out
}

// limit is how far an edge may be off to one side: the least of what it and those that move with it may, and the sheets whose
// one edge moves.
func (p *playRow) limit(edge int, way L) Limit {
	least := Limit{By: p.room.Veneer.GrossWidth / p.room.Rules.Snap * p.room.Rules.Snap}
	take := func(l Limit) {
		if l.Must != NoMust && (l.By < least.By || least.Must == NoMust) {
			least = l
		}
	}
	stop := edge + 1 // the first edge that does not move
	for stop < len(p.edges)-1 && !p.pinned[stop] {
		stop++
	}
	last := len(p.edges) - 1
	if edge == 0 && stop == last { // the whole row moves, and its closing seam with it
		stop++
	}
	if edge > 0 && (edge-1 <= p.hung || p.pinned[edge-1]) {
		take(p.wider(edge, way))
		take(p.narrower(edge, -way))
	}
	for k := edge; k < min(stop, last); k++ {
		take(p.seamLimit(k, way))
	}
	if stop <= last {
		take(p.wider(stop, -way))
		take(p.narrower(stop, way))
		if edge == 0 { // the closing seam moves, the seam before it does not
			take(p.wider(last, way))
			take(p.narrower(last, -way))
		}
	}
	return least
}

// narrower is how much narrower the sheet left of an edge may become; nothing is asked where way is to the left.
func (p *playRow) narrower(edge int, way L) Limit {
	width := p.edges[edge] - p.edges[edge-1]
	due := p.q.WidthDue(int64(width))
	if way < 0 {
		return Limit{}
	}
	return Limit{By: p.onGrid(width - L(due.Must)), Must: MustWidth, Place: p.place(edge)}
}

// wider is how much wider the sheet left of an edge may become; nothing is asked where way is to the left. It is as wide as it
// was cut, but one that closes a room is ripped to its gap.
func (p *playRow) wider(edge int, way L) Limit {
	if way < 0 {
		return Limit{}
	}
	place, last := p.place(edge), edge == len(p.edges)-1
	sheet, v := p.run.Hanging(place), &p.room.Veneer
	raw := sheet.Gross
	if sheet.RipTo > 0 && !(last && p.q.from.Closed) {
		raw = sheet.RipTo
	}
	out := Limit{Must: MustOverlap, Place: place}
	switch {
	case edge == 1 && !p.q.from.Closed && p.hung == 0: // a raw end at its left
		out.By, out.Must = raw-v.Overlap.HalfDown()-sheet.Width, MustReach
	case last && !p.q.from.Closed:
		out.By = raw + v.Overlap.HalfDown() - p.room.Rules.LeastOverlap - sheet.Width
	default:
		out.By = raw - p.room.Rules.LeastOverlap - sheet.Width
	}
	out.By = p.onGrid(out.By)
	return out
}

// onGrid takes a length down to the grid, and nought for what is less.
func (p *playRow) onGrid(l L) L {
	snap := p.room.Rules.Snap
	return max(0, l) / snap * snap
}

// seamLimit is how far a single seam may be moved to one side.
func (p *playRow) seamLimit(edge int, way L) Limit {
	key := playSide{edge, way}
	if l, ok := p.known[key]; ok {
		return l
	}
	at, snap := p.edges[edge], p.room.Rules.Snap
	now := p.lacks(at)
	out := Limit{By: p.room.Veneer.GrossWidth}
	for by := L(0); by+snap <= p.room.Veneer.GrossWidth; by += snap {
		if c := p.breaks(at+way*(by+snap), now); c != nil {
			out = p.limitOf(*c)
			out.By = by
			break
		}
	}
	p.known[key] = out
	return out
}

// asker is a thing that asks something of a seam.
type asker struct {
	kind  seam.Cause
	index int
}

func askerOf(c *seam.Charge) asker {
	kind := c.Cause
	if c.Edge != seam.NoEdge {
		kind = seam.Leg // one opening asks for all of this
	}
	return asker{kind, c.Object}
}

// lacks is what a seam at a place lacks of what each thing says it must have.
func (p *playRow) lacks(at L) map[asker]int64 {
	var out map[asker]int64
	for _, c := range p.q.Owed(int64(at)) {
		if owed := c.Adds.Bends + c.Adds.Edges; owed > 0 {
			if out == nil {
				out = map[asker]int64{}
			}
			out[askerOf(&c)] += owed
		}
	}
	return out
}

// breaks is the first must that a seam at a place breaks, of which it lacks more than another does; nil where there is none.
func (p *playRow) breaks(at L, than map[asker]int64) *seam.Charge {
	lacking := p.lacks(at)
	if lacking == nil {
		return nil
	}
	for _, c := range p.q.Owed(int64(at)) {
		if c.Adds.Bends+c.Adds.Edges > 0 && lacking[askerOf(&c)] > than[askerOf(&c)] {
			return &c
		}
	}
	return nil
}

// limitOf names what asks.
func (p *playRow) limitOf(c seam.Charge) Limit {
	l := Limit{Must: mustOf[c.Cause]}
	switch {
	case c.Edge != seam.NoEdge:
		o := p.q.openings[c.Object]
		l.Name, l.Side = p.room.Walls[o.wall].Openings[o.index].Name, edgeWord(p.q.line, c.Edge)
	case c.Cause == seam.Return:
		l.Name = p.q.corners[c.Object].Name
	case c.Cause == seam.Kept:
		l.Name = p.room.Walls[p.q.keeps[c.Object].wall].Name
	}
	return l
}
