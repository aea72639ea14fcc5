package count

import (
	"cmp"
	"slices"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Cut is one row of the cut list.
type Cut struct {
	Flitch               string
	Number               int // 0: no sheet left
	Place, Course        int
	Run                  string
	Walls                []string
	Length               L // to cut it to
	Above, Below         L // of the level line; where the grain is level right of the wall's left end, and left of it
	TopTrim, BottomTrim  L // in the cut length
	Net                  L // finished width
	Width                L // as hung: gross, or ripped to
	Rip                  string
	LeftTrim, RightTrim  L // at raw ends, else 0
	Bends                []Bend
	Holes                []Hole
	Askew                L // how far a corner takes what is past it out of plumb over the height, 0 where it does not
	Turned, Hung, Narrow bool
	Level                bool      // grain is level
	Line                 face.Line // that its heights are figured from
	RawHead, RawFoot     bool      // as it hangs: nothing is cut off that end
	Over                 string    // what the sheet is only over and under: "header of D1", "over and under W1"; else empty
	HeaderOnly           bool
	Closes               bool       // it meets the first of its span: the gap that it fills is measured before it is ripped
	Measured             []GapPlace // where that gap can be measured, from above: where the wall has the raw edges at both its sides
	Stock                L          // its end that the cut leaves, of the sheet as delivered; negative where it is too short
	keeps                L          // length of the lower part that a header leaves
	datum                L          // of the wall, where the grain is level
	sheet                *layout.Sheet
}

// Sheet is the sheet that is cut.
func (c *Cut) Sheet() *layout.Sheet { return c.sheet }

// Bend is a bend line of a sheet, by how far it is from the sheet's left edge at three heights: they differ where the corner
// leans.
type Bend struct {
	Name string
	At   L             // at the level line of its sheet
	Foot L             // at the sheet's lower end as it is cut
	Head L             // at its upper end
	Of   *room.Opening // whose jamb it is, nil at a corner

	rightJamb    bool // the opening lies left of it
	floor, level L
	moves        []move
}

// move is by how much a wall's right end, which is at x on it, moves a bend from floor to ceiling.
type move struct {
	wall  *room.Wall
	x, by L
}

// AtHeight is how far the bend is from the sheet's left edge at a height over the level line.
func (b *Bend) AtHeight(z L) L {
	at := b.floor
	for _, m := range b.moves {
		at += m.wall.PartBefore(m.by, m.x, b.level+z)
	}
	return at
}

// Hole is what is cut out of a sheet: the edges of an opening, of a box's hole, or of a plate that is never taken off.
type Hole struct {
	Kind        room.Kind
	Name        string
	From, To    L   // from the sheet's left edge, raw or ripped, inside the sheet
	Low, High   L   // from the level line; where the grain is level from the wall's left end
	Wall, Index int // where it stands in the room, and in the list of the wall's openings or boxes
}

// cut makes a sheet's row.
func cut(p *layout.Plan, r *layout.Run, s *layout.Sheet, b bed, line face.Line) Cut {
	c := Cut{Flitch: s.Flitch, Number: s.Number, Place: s.Place, Course: s.Course, Run: r.Name, Length: s.CutLength,
		Above: s.Above, Below: s.Below, TopTrim: b.top, BottomTrim: b.bottom, Net: s.Width, Width: asHung(s), Rip: s.Ripped,
		Turned: s.Turned, Hung: s.Hung, Narrow: s.Narrow, Level: r.Up, Line: line, Stock: p.Room.Veneer.Length - s.CutLength, sheet: s}
	span := &r.Spans[s.Span]
	c.Closes = span.Closed && s.Place == span.LastSheet && s.Width > p.Room.Veneer.Overlap
	rawLeft, rawRight := raw(r, s)
	if rawLeft {
		c.LeftTrim = span.LeftTrim
	}
	if rawRight {
		c.RightTrim = span.RightTrim
	}
	if r.Up {
		c.datum = p.Room.Datum(r.Walls[0].Wall)
	}
	c.Walls = wallsOf(p, r, s)
	c.bends(p, r, s)
	c.holes(p, r, s)
	c.over(p, r, s, b)
	if c.Closes {
		c.measured(p, r, s)
	}
	return c
}

// wallsOf names the walls that a sheet has pieces on, from left to right.
func wallsOf(p *layout.Plan, r *layout.Run, s *layout.Sheet) []string {
	type part struct {
		at   L
		wall int
	}
	var parts []part
	for _, st := range r.Walls {
		if !slices.ContainsFunc(s.Pieces, func(x layout.Piece) bool { return x.Wall == st.Wall }) {
			continue
		}
		at := st.Left
		for r.Closed && at+(st.Right-st.Left) <= s.Left {
			at += r.Length
		}
		parts = append(parts, part{at, st.Wall})
	}
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(a.at, b.at) })
	var names []string
	for _, x := range parts {
		names = append(names, p.Room.Walls[x.wall].Name)
	}
	return names
}

// Turns gives a place of a run as often as it can come up beside a sheet: in a closed run once for each round.
func Turns(r *layout.Run, f func(turn L)) {
	if !r.Closed {
		f(0)
		return
	}
	for k := L(-1); k <= 2; k++ {
		f(k * r.Length)
	}
}

// bends lists the bend lines from left to right. One along a corner leans as the corner does; past a corner whose two walls
// lean differently the sheet is askew, and all further ones lean by that much more.
func (c *Cut) bends(p *layout.Plan, r *layout.Run, s *layout.Sheet) {
	corners := map[*layout.Corner]L{} // where they are on the sheet
	add := func(at L, name string, of *room.Opening, right bool) {
		Turns(r, func(turn L) {
			if at := at + turn; s.Left < at && at < s.Right {
				at -= s.StartLine
				c.Bends = append(c.Bends, Bend{Name: name, At: at, Of: of, rightJamb: right})
			}
		})
	}
	for i := range r.Corners {
		k := &r.Corners[i]
		before := len(c.Bends)
		add(k.At, k.Name, nil, false)
		if len(c.Bends) > before {
			c.Askew += k.Skew
			corners[k] = c.Bends[before].At
		}
	}
	for _, o := range r.Openings {
		if o.Wrap {
			of := &p.Room.Walls[o.Wall].Openings[o.Index]
			add(o.Left, o.Name+" left jamb", of, false)
			add(o.Right, o.Name+" right jamb", of, true)
		}
	}
	slices.SortStableFunc(c.Bends, func(a, b Bend) int { return cmp.Compare(a.At, b.At) })
	level := p.Room.Space.LevelLine
	for i := range c.Bends {
		b := &c.Bends[i]
		b.floor, b.level = b.At, level
		for k, at := range corners {
			by := L(0)
			switch {
			case at == b.floor && b.Of == nil:
				by = k.Lean
			case at < b.floor:
				by = k.Skew
			}
			w := &p.Room.Walls[k.LeftWall]
			x := w.Length
			if st, ok := r.Line.Of(k.LeftWall); ok {
				x = st.Right - st.Shift
			}
			b.moves = append(b.moves, move{w, x, by})
		}
		b.At, b.Foot, b.Head = b.AtHeight(c.Line.By), b.AtHeight(-c.Below), b.AtHeight(c.Above)
	}
}

// sliver is how much of a box may come into the strip that a seam cuts off without being cut out of it.
const sliver = length.Inch / 8

// holes lists what is cut out of the sheet as it hangs, overlaps and trims included: openings, then boxes. An opening that leaves
// no covering between itself and an end of the sheet goes through the trim there to the end as cut: no loose tongue stays.
func (c *Cut) holes(p *layout.Plan, r *layout.Run, s *layout.Sheet) {
	level := p.Room.Space.LevelLine
	add := func(h Hole, o *layout.Opening, from, to, low, high L) {
		if r.Up { // the sheet lies on its side: across it is up the wall
			from, to, low, high = low, high, from, to
		} else {
			low, high = low-level, high-level
		}
		low, high = max(low, -c.Below), min(high, c.Above)
		if o != nil && (high <= c.BottomTrim-c.Below || low >= c.Above-c.TopTrim) {
			return // only in a trim, which is cut away over it
		}
		Turns(r, func(turn L) {
			a, b := max(from+turn, s.StartLine), min(to+turn, s.StartLine+c.Width)
			if o == nil && b-a <= sliver && (b <= s.Left || a >= s.Right) {
				return // a knife would only tear into the edge that its seam cuts off
			}
			if a < b && low < high {
				h.From, h.To, h.Low, h.High = a-s.StartLine, b-s.StartLine, low, high
				if o != nil {
					c.through(&h, &p.Room.Walls[h.Wall], a-turn-o.Left, b-turn-o.Left)
				}
				c.Holes = append(c.Holes, h)
			}
		})
	}
	for i := range r.Openings {
		o := &r.Openings[i]
		if o.Gap && !o.Through {
			continue // its edges are raw ends
		}
		w := &p.Room.Walls[o.Wall].Openings[o.Index]
		left, right, in := o.Left, o.Right, L(0)
		if o.Wrap {
			in = w.Reveal // the jambs stay on the sheet and are bent in
		}
		if r.Up {
			left, right = w.FromLeft, w.Right()
		}
		add(Hole{Kind: o.Kind, Name: o.Name, Wall: o.Wall, Index: o.Index}, o, left+in, right-in, o.Sill, o.Head)
	}
	for _, st := range r.Walls {
		shift := st.Shift
		if r.Up {
			shift = 0
		}
		for i := range p.Room.Walls[st.Wall].Boxes {
			x := &p.Room.Walls[st.Wall].Boxes[i]
			x0, z0, x1, z1 := x.CutOut()
			add(Hole{Kind: x.Kind, Name: x.Name, Wall: st.Wall, Index: i}, nil, shift+x0, shift+x1, z0, z1)
		}
	}
	slices.SortStableFunc(c.Holes, func(a, b Hole) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.Low, b.Low)) })
}

// through carries the cut-out of an opening on to the ends of the sheet that it leaves no covering to, from one distance right of
// its left jamb to another.
func (c *Cut) through(h *Hole, w *room.Wall, from, to L) {
	under, over := true, true
	if o := &w.Openings[h.Index]; !c.Level {
		under, over = w.Leaves(o, o.FromLeft+from, o.FromLeft+to)
	}
	if !under || h.Low <= c.BottomTrim-c.Below {
		h.Low = -c.Below
	}
	if !over || h.High >= c.Above-c.TopTrim {
		h.High = c.Above
	}
}

// over finds out whether the whole width of a sheet stands in the width of one opening.
func (c *Cut) over(p *layout.Plan, r *layout.Run, s *layout.Sheet, b bed) {
	if r.Up {
		return
	}
	foot := p.Room.Space.LevelLine - c.Below + c.BottomTrim
	for i := range r.Openings {
		o := &r.Openings[i]
		Turns(r, func(turn L) {
			if o.Gap || o.Left+turn > s.Left || s.Right > o.Right+turn || o.Head <= foot {
				return
			}
			switch top := p.Room.Space.LevelLine + c.Above - c.TopTrim; {
			case len(s.Pieces) == 0:
				c.Over = "wholly in " + o.Name + ": hangs nowhere"
			case o.Sill >= top:
				c.Over = ""
			case o.Sill <= foot:
				c.HeaderOnly, c.Over = true, "header of "+o.Name
				c.keeps = o.Head - p.Room.Rules.BottomTrim - (p.Room.Space.LevelLine - c.Below)
			case o.Head >= top:
				c.Over = "under " + o.Name
			default:
				c.Over = "over and under " + o.Name
			}
		})
	}
}
