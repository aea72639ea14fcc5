package crew

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// strip is what stands on one page: a wall or a piece of one, or short walls unrolled side by side, from left to right.
type strip struct {
	pieces []*piece
	fits   *fit
	over   []note // what its page has no room for
}

// lead is the piece at its left, by which its page is found.
func (s *strip) lead() *piece { return s.pieces[0] }

// last is the piece at its right.
func (s *strip) last() *piece { return s.pieces[len(s.pieces)-1] }

// title is what its page is called.
func (s *strip) title() string {
	if len(s.pieces) == 1 {
		return s.lead().title()
	}
	w := s.lead().wall
	return w.Words.Say("wall.strip", w.W.Name, s.last().wall.W.Name)
}

// What walls that are taken together have at most, in widths of a sheet from seam to seam.
const (
	shortWall = 2 // each; one that is so wide stands on a page of its own
	longStrip = 6 // all of them: half of the widest piece of a wall, since narrow faces need a larger scale
)

// strips are the pages of the walls. Which walls are taken together is said in the comment of this package.
func (c *Set) strips() []*strip {
	var list []*strip
	done := map[*Wall]bool{}
	for _, chain := range c.chains() {
		for _, walls := range c.packed(chain) {
			s := &strip{}
			for _, w := range walls {
				s.pieces = append(s.pieces, w.pieces[0])
				done[w] = true
			}
			list = append(list, s)
		}
	}
	for _, w := range c.Walls {
		for _, p := range w.pieces {
			if !done[w] {
				list = append(list, &strip{pieces: []*piece{p}})
			}
		}
	}
	return list
}

// short reports whether a wall may stand beside others on a page.
func (c *Set) short(w *Wall) bool {
	return !w.Run.Up && len(w.pieces) == 1 && w.Right-w.Left < shortWall*c.module()
}

// module is a sheet from seam to seam.
func (c *Set) module() L { return c.Room.Veneer.GrossWidth - c.Room.Veneer.Overlap }

// next is the wall that a sheet goes on to round the right corner of a wall, nil where none does.
func (c *Set) next(w *Wall) *Wall {
	k, _, _ := w.Neighbour(true)
	if k == nil || k.Kind == room.Straight {
		return nil
	}
	for _, n := range c.Walls {
		if n.Wall != k.RightWall || n == w {
			continue
		}
		for _, h := range w.Hangs {
			for _, m := range n.Hangs {
				if h.After && m.Before && h.Place == m.Place {
					return n
				}
			}
		}
	}
	return nil
}

// chains are short walls that follow one another round corners, each chain as long as it goes. One that closes on itself begins
// where its first sheet does.
func (c *Set) chains() [][]*Wall {
	before := map[*Wall]*Wall{}
	for _, w := range c.Walls {
		if n := c.next(w); n != nil && c.short(w) && c.short(n) {
			before[n] = w
		}
	}
	var list [][]*Wall
	from := func(w *Wall) {
		chain := []*Wall{w}
		for n := c.next(w); n != nil && before[n] == chain[len(chain)-1] && n != w; n = c.next(n) {
			chain = append(chain, n)
		}
		if len(chain) > 1 {
			list = append(list, chain)
		}
	}
	for _, w := range c.Walls {
		if before[w] == nil {
			from(w)
		}
	}
	for _, w := range c.Walls {
		if before[w] != nil && opens(w) && c.closes(w, before) {
			from(w)
		}
	}
	return list
}

// opens reports whether the first sheet of a run begins on a wall.
func opens(w *Wall) bool {
	for _, h := range w.Hangs {
		if h.Begins {
			return true
		}
	}
	return false
}

// closes reports whether a chain comes back to a wall.
func (c *Set) closes(w *Wall, before map[*Wall]*Wall) bool {
	n := before[w]
	for n != nil && n != w {
		n = before[n]
	}
	return n == w
}

// packed parts a chain into pages: 1. all of it; 2. cut at inside corners, as much of it together as has room; walls that have
// none stand on pages of their own.
func (c *Set) packed(chain []*Wall) [][]*Wall {
	var parts, list [][]*Wall
	if c.together(chain) {
		return [][]*Wall{chain}
	}
	for i, w := range chain {
		if i > 0 && c.corner(chain[i-1]).Kind == room.Outside {
			parts[len(parts)-1] = append(parts[len(parts)-1], w)
			continue
		}
		parts = append(parts, []*Wall{w})
	}
	for _, part := range parts {
		if n := len(list); n > 0 && c.together(slices.Concat(list[n-1], part)) {
			list[n-1] = append(list[n-1], part...)
			continue
		}
		list = append(list, part)
	}
	return slices.DeleteFunc(list, func(walls []*Wall) bool { return !c.together(walls) })
}

// corner is the one at the right of a wall of a chain; none, where the covering ends there.
func (c *Set) corner(w *Wall) *layout.Corner {
	if k, _, _ := w.Neighbour(true); k != nil {
		return k
	}
	return &layout.Corner{RightWall: -1}
}

// together reports whether walls that follow one another stand on one page: there is a pilaster, a recess or a column in them, and
// the page has room for them.
func (c *Set) together(walls []*Wall) bool {
	if len(walls) < 2 {
		return false
	}
	first, last := walls[0], walls[len(walls)-1]
	left, _, _ := first.Neighbour(false)
	right, _, _ := last.Neighbour(true)
	out := left != nil && left.Kind == room.Outside && right != nil && right.Kind == room.Outside
	long, sheets := L(0), 0
	var pieces []*piece
	for i, w := range walls {
		out = out || i > 0 && c.corner(walls[i-1]).Kind == room.Outside
		long += w.Right - w.Left
		sheets += len(w.Hangs)
		pieces = append(pieces, w.pieces[0])
	}
	b := &board{Set: c}
	return out && long <= longStrip*c.module() && sheets <= mostSheets && inList(c.boards(b, &strip{pieces: pieces}).tapeRows())
}
