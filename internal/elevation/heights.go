package elevation

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
)

// heightTiers are the sills and heads: one tier for each different pair, the openings it measures as its name. Over a floor that
// is not the level of the room they are figured over that level, as everywhere else.
func (e *View) heightTiers() []draft.Tier {
	pairs, names := e.heightPairs()
	if len(pairs) > 0 && !e.OnLevel() {
		var heights []L
		for _, p := range pairs {
			heights = append(heights, max(p.sill, p.floor), p.head)
		}
		return []draft.Tier{e.OverLevel("OVER LEVEL", heights...)}
	}
	var tiers []draft.Tier
	for _, p := range pairs {
		list := []L{p.floor, max(p.sill, p.floor), p.head}
		if p.ceiling > p.head {
			list = append(list, p.ceiling)
		}
		tiers = append(tiers, e.Tier(strings.Join(names[p], " "), list, e.V.Y))
	}
	if len(tiers) > mostHeights { // the page would be all dimensions
		tiers = tiers[:mostHeights]
	}
	return tiers
}

// mostHeights is how many tiers of sills and heads stand beside a wall: the others are on enlargements, or in the list of the page.
const mostHeights = 4

// heightsElsewhere sees to sills and heads that have no tier beside the wall: of an opening that is not drawn large they go into the
// list of the page.
func (e *View) heightsElsewhere() {
	pairs, names := e.heightPairs()
	switch {
	case e.lean:
	case !e.OnLevel():
		return
	default:
		pairs = pairs[min(len(pairs), mostHeights):]
	}
	for _, p := range pairs {
		var bare []string
		var first *room.Opening
		for i := range e.F.W.Openings {
			if o := &e.F.W.Openings[i]; slices.Contains(names[p], o.Name) && e.PageOf(OpeningKey(e.F.Wall, i)) == "" {
				bare = append(bare, o.Name)
				if first == nil {
					first = o
				}
			}
		}
		if key := "heights " + strings.Join(bare, " "); len(bare) > 0 && !e.elsewhere(key) {
			e.dropAt(key, e.inHole(first), "%s: sill at %s, head at %s", strings.Join(bare, ", "), e.Style.Format(p.sill), e.Style.Format(p.head))
		}
	}
}

// pair is how high openings stand: floor, sill, head and ceiling at their middle.
type pair struct{ floor, sill, head, ceiling L }

// heightPairs are the different heights of the openings on the view, and the openings of each.
func (e *View) heightPairs() (pairs []pair, names map[pair][]string) {
	names = map[pair][]string{}
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		if o.Right() <= e.From || o.FromLeft >= e.To {
			continue
		}
		_, z0, _, z1 := e.F.Hole(o)
		mid := (o.FromLeft + o.Right()) / 2
		p := pair{room.At(e.F.W.Floor, mid), z0, z1, room.At(e.F.W.Ceiling, mid)}
		if _, ok := names[p]; !ok {
			pairs = append(pairs, p)
		}
		names[p] = append(names[p], o.Name)
	}
	return pairs, names
}

// coverTiers are base, covering and crown at the right end, and the overall height. A left end of another height has
// its own figure on the left.
func (e *View) coverTiers() []draft.Tier {
	x := e.To
	floor, ceiling := room.At(e.F.W.Floor, x), room.At(e.F.W.Ceiling, x)
	list := []L{floor, ceiling, floor + e.F.W.Base, ceiling - e.F.W.Crown}
	whole := e.Tier("", []L{floor, ceiling}, e.V.Y)
	parts := e.Tier("", list, e.V.Y)
	var tiers []draft.Tier
	if len(parts.Marks) > 2 {
		tiers = append(tiers, parts)
	}
	for _, z := range e.jointHeights() {
		if e.OnLevel() {
			tiers = append(tiers, e.Tier("JOINT", []L{floor, z}, e.V.Y))
		} else {
			tiers = append(tiers, e.OverLevel("JOINT OVER LEVEL", z))
		}
	}
	return append(tiers, whole)
}

// profileTiers are the turns of a ceiling that is not straight: along the wall, and their heights over the room's level.
func (e *View) profileTiers() (along, up draft.Tier) {
	var xs []L
	zs := []L{0}
	for _, p := range e.F.W.Ceiling {
		if p.X > e.From && p.X < e.To {
			xs = append(xs, p.X)
		}
		if p.X >= e.From && p.X <= e.To && p.Z > 0 {
			zs = append(zs, p.Z)
		}
	}
	zs = ascending(zs)
	if len(zs) < 3 && len(xs) == 0 {
		return draft.Tier{}, draft.Tier{}
	}
	if len(xs) > 0 {
		along = e.chain("CEILING", xs...)
	}
	return along, e.Running("CEILING", "ceiling heights", 0, zs, e.V.Y)
}

// jointHeights are the heights at which courses meet on this wall, as the run has them. The joints of a face are the feet of
// the upper courses as they are hung: over the head of an opening, too, that takes what is under it.
func (e *View) jointHeights() []L {
	if e.F.Run.Up {
		return nil
	}
	var list []L
	for _, p := range e.F.Parts {
		if len(p.Sheets) > 1 {
			for _, z := range e.F.Run.Joints {
				if bottom, top := e.F.Cover((p.From + p.To) / 2); bottom < z && z < top {
					list = append(list, z)
				}
			}
		}
	}
	return ascending(list)
}

// bandTier are the seams of horizontal grain: what each band covers, from the lower edge of the covering up.
func (e *View) bandTier() draft.Tier {
	if !e.F.Run.Up {
		return draft.Tier{}
	}
	bottom, top := e.F.Cover(e.From)
	list := []L{bottom, top}
	for _, s := range e.F.Run.Seams {
		if s.At > bottom && s.At < top {
			list = append(list, s.At)
		}
	}
	return e.Tier("BANDS", list, e.V.Y)
}

// levelTier are the same seams as the crew strikes them: from the level line, up and down.
func (e *View) levelTier() draft.Tier {
	level := e.Room.Space.LevelLine
	if !e.F.Run.Up || len(e.F.Run.Seams) == 0 {
		return draft.Tier{}
	}
	list := []L{level}
	for _, s := range e.F.Run.Seams {
		list = append(list, s.At)
	}
	return e.FromLevel("FROM LEVEL", ascending(list))
}

// levelElsewhere sees to the seams of level bands where a crowded view has no tier of them.
func (e *View) levelElsewhere() {
	if !e.lean || !e.F.Run.Up || len(e.F.Run.Seams) == 0 || e.elsewhere("from level") {
		return
	}
	var list []string
	for _, s := range e.F.Run.Seams {
		way := "up "
		d := s.At - e.Room.Space.LevelLine
		if d < 0 {
			way = "down "
		}
		list = append(list, way+e.Style.Format(d.Abs()))
	}
	e.drop("from level", "seams of the bands from the level line: %s", strings.Join(list, ", "))
}

// FromLevel is a running tier of heights that counts from the level line, which is one of them: up and down.
func (e *View) FromLevel(name string, list []L) draft.Tier {
	level := e.Room.Space.LevelLine
	t := e.Running(name, strings.ToLower(name), level, list, e.V.Y)
	for i, z := range list {
		t.Figures[i] = ""
		if z != level {
			t.Figures[i] = e.Style.Format((z - level).Abs())
		} else {
			t.Zero = i
		}
	}
	return t
}
