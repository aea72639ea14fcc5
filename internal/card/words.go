package card

import (
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
)

// All words of the cards stand here. Those of a cut-out are the cut list's: see count.Cut.HoleWords.

// Words of a page.
const (
	pageTitle  = "Cards"
	pageWords  = "cut apart, lay each on its sheet, tick when cut"
	safeWords  = "pencil or laser only; metal strip behind every cut, new blade"
	frontWords = "FACE"
	backWords  = "BACK"
)

// speech says what stands on the cards of a set.
type speech struct {
	*folio.TapedSet
	count *count.Count
}

// line is one thing that is done to a sheet, or to know of it.
type line struct {
	text string
	bold bool
}

// caption says what the head of the card is about, over the number.
func (w speech) caption(c *Card) string {
	if c.Back {
		return backWords
	}
	return "sheet"
}

// where is on which walls a sheet hangs, and which course of its place it is where there are more.
func (w speech) where(c *Card) string {
	words := strings.Join(c.Cut.Walls, ", ")
	switch {
	case c.Courses < 2:
		return words
	case c.Level:
		return words + ", piece " + itoa(c.Sheet.Course)
	}
	return words + ", course " + itoa(c.Sheet.Course)
}

// others says where the rest of a list stands that a card has no room for.
func (w speech) others() string { return "the others: cut list, " + w.PageWord("cuts") }

// neighbours say what the sheet meets, on as few lines as there are directions.
func (w speech) neighbours(c *Card) []string {
	say := func(side string, n Neighbour) string {
		switch {
		case n.Sheet != nil:
			return side + ": " + w.SheetNumber(n.Sheet)
		case n.End != "":
			return side + ": " + n.End
		}
		return ""
	}
	left, right := say("left", c.Next.Left), say("right", c.Next.Right)
	under, over := say("under", c.Next.Under), say("over", c.Next.Over)
	var list []string
	for _, pair := range [][2]string{{left, right}, {under, over}} {
		if text := strings.Trim(pair[0]+"   "+pair[1], " "); text != "" {
			list = append(list, text)
		}
	}
	return list
}

// zero names the corner that all figures are measured from.
func (w speech) zero(c *Card) string {
	at := "at the mark"
	switch {
	case c.Level:
		at = seen(c, "at the left end") + " as cut"
	case c.Cut.Below < 0:
		at = w.endOf(c, "foot", "head")
	case c.Cut.Above < 0:
		at = w.endOf(c, "head", "foot")
	}
	words := "figures from 0: " + edge(c) + ", " + at
	if c.Back {
		words += "; left and right as seen from the back"
	}
	return words
}

// endOf names an end of the sheet as it hangs that figures run from: as it is cut, or the raw end that stays there.
func (w speech) endOf(c *Card, end, other string) string {
	switch stays := c.stays(end == "head"); {
	case !stays:
		return "at the " + end + " as cut"
	case c.Sheet.Turned:
		return "at the raw " + other + ", now the " + end
	}
	return "at the raw " + end
}

// seen are words of the cut list as they read on a card: seen from the back, what is left there lies right.
func seen(c *Card, words string) string {
	if !c.Back {
		return words
	}
	return strings.NewReplacer("left edge", "right edge", "left end", "right end").Replace(words)
}

// fromEdge says from which edge of the sheet distances across it run, edge what edge that is.
func fromEdge(c *Card) string { return seen(c, c.Cut.FromEdge()) }
func edge(c *Card) string     { return strings.TrimPrefix(fromEdge(c), "from ") }

// ripped and kept name the side at which a sheet is ripped, and the raw edge at the other.
func (c *Card) ripped() string { return c.side(c.Cut.Rip) }
func (c *Card) kept() string   { return c.side(opposite[c.Cut.Rip]) }

var opposite = map[string]string{"left": "right", "right": "left"}

func (c *Card) side(side string) string {
	if c.Back && !c.Level {
		side = opposite[side]
	}
	return c.Cut.Side(side)
}

// work lists what is done to the sheet, in the order in which it is done.
func (w speech) work(c *Card) []line {
	list := w.ends(c)
	add := func(text string, bold bool) { list = append(list, line{text, bold}) }
	if c.Sheet.Turned {
		add("TURNED: its raw head hangs down", true)
	}
	switch x := c.Cut; {
	case x.Closes:
		add(x.ClosingWords(w.Style, w.Room.Veneer.Overlap, c.ripped()), true)
	case x.Rip != "":
		add("RIP "+strings.ToUpper(c.ripped())+": "+w.Inches(x.Width)+" stays, from raw "+c.kept()+" edge", true)
	}
	for i := range c.Folds {
		add(w.fold(c, &c.Folds[i]), false)
	}
	for _, x := range c.Slits {
		add(seen(c, c.Cut.SlitWords(w.Style, x)), true)
	}
	for i := range c.Holes {
		h := &c.Holes[i]
		name := h.Name
		if h.Hole.Kind.Traits().Box {
			name += " " + string(h.Hole.Kind)
		}
		if len(c.Cut.Walls) > 1 {
			name += " on " + w.Room.Walls[h.Hole.Wall].Name
		}
		add(name+": "+seen(c, c.Cut.HoleWords(w.Style, *h.Hole)), h.Hole.Kind.Traits().NeverCovered)
	}
	for i := range c.Rakes {
		add(w.rake(c, &c.Rakes[i]), false)
	}
	if x := c.Cut; x.Askew != 0 && len(x.Holes) > 0 {
		add("past the fold "+w.Inches(x.Askew.Abs())+" askew: mark what is cut out there on the wall", false)
	}
	return list
}

// ends say where the mark is and what is cut off at the ends.
func (w speech) ends(c *Card) []line {
	var list []line
	add := func(text string, bold bool) { list = append(list, line{text, bold}) }
	if short := c.Short(); short > 0 {
		add("TOO SHORT by "+w.Inches(short)+": the sheet is "+w.Say(w.Room.Veneer.Length)+" long", true)
	}
	switch r := c.Register; {
	case c.Level:
		words := "CUT " + w.Say(c.Sheet.CutLength) + " long"
		if !c.Back {
			words += "; its left end hangs " + c.Cut.EndWords(w.Say, -c.Sheet.Below) + ", measured at the level line"
		}
		add(words, true)
	case r.Foot:
		end, first := "foot", "foot "+w.Inches(max(0, c.Kept.Bottom-c.Raw.Bottom))+" from it; "
		if r.Turned {
			end = "head"
		}
		if c.stays(false) {
			first = "no cut there; "
		}
		add("MEASURE from its raw "+end+", which hangs down: "+first+"CUT "+w.Say(c.Sheet.CutLength)+" long", true)
	case r.Turned:
		add("MARK "+w.Say(r.At)+" from its raw foot, which hangs up, then cut", true)
	default:
		add("MARK "+w.Say(r.At)+" below its raw head, then cut", true)
	}
	add(w.zero(c), false)
	return list
}

// fold says where a fold meets head, level line and foot of the sheet as cut; once, where that is the same.
func (w speech) fold(c *Card, f *Fold) string {
	name := f.Bend.Name
	if c.Back && f.Bend.Of != nil {
		name = f.Bend.Of.Name + " jamb" // which of them is left depends on the side
	}
	if f.Corner != nil {
		name += " " + cornerWord(f)
		if f.Corner.Radius > 0 {
			name += ", round " + w.Inches(f.Corner.Radius)
		}
	}
	from := func(p L) string { return w.Style.Inches(c.fromEdge(p)) }
	head, foot := from(f.Head.X), from(f.Foot.X)
	if head == foot {
		return "fold " + name + ": " + foot + " " + fromEdge(c)
	}
	words := head + " at head, "
	if c.Cut.Marked() {
		words += from(c.across(f.Bend.At)) + " at level, "
	}
	return "fold " + name + ": " + words + foot + " at foot, " + fromEdge(c)
}

// cornerWord is how the wall page calls a corner.
func cornerWord(f *Fold) string {
	if f.Corner.Kind == room.Outside {
		return "out"
	}
	return "in"
}

// fromEdge is how far a place across an upright card is from the left edge of the sheet.
func (c *Card) fromEdge(x L) L {
	if c.Back {
		return c.Kept.Right - x
	}
	return x - c.Kept.Left
}

// across is where on an upright card a place is that lies so far from the left edge of the sheet.
func (c *Card) across(from L) L {
	if c.Back {
		return c.Kept.Right - from
	}
	return c.Kept.Left + from
}

// height says how far a height is from the corner that figures are measured from.
func (w speech) height(c *Card, z L) string {
	switch {
	case c.Cut.Below < 0:
		return w.Say((z - c.Zero.Z).Abs()) + " over its foot"
	case c.Cut.Above < 0:
		return w.Say((z - c.Zero.Z).Abs()) + " under its head"
	}
	return count.UpDown(w.Say, z)
}

// rake says how a head or a foot slopes, at every point where it turns.
func (w speech) rake(c *Card, r *Rake) string {
	name, trim := "FOOT", c.Cut.BottomTrim
	if r.Head {
		name, trim = "HEAD", c.Cut.TopTrim
	}
	var list []string
	for _, p := range r.Points {
		if c.Level {
			list = append(list, w.Inches(p.Z)+" at "+w.Say((p.X-c.Zero.X).Abs())+" "+seen(c, "from left end"))
			continue
		}
		at := c.fromEdge(p.X)
		place := w.Inches(at) + " " + fromEdge(c)
		switch at {
		case 0:
			place = edge(c)
		case c.Cut.Width:
			place = "other edge"
		}
		list = append(list, w.height(c, p.Z)+" at "+place)
	}
	text := name + " SLOPES: " + strings.Join(list, ", ")
	if len(c.Cut.Walls) > 1 {
		text = name + " SLOPES on " + w.Room.Walls[r.Wall].Name + ": " + strings.Join(list, ", ")
	}
	text += bevelWords(r, w.Inches)
	if c.Level {
		return text
	}
	return text + "; trim " + w.Inches(trim) + " past it"
}

// bevelWords say a slope as what a bevel square is set to: how much it rises or falls, going right, over how much of the sheet.
func bevelWords(r *Rake, inches func(L) string) string {
	var list []string
	for _, x := range r.Bevels() {
		way := "up"
		if x.Rise < 0 {
			way = "down"
		}
		list = append(list, inches(x.Rise.Abs())+" "+way+" in "+inches(x.Over))
	}
	if len(list) == 0 {
		return ""
	}
	return "; bevel, to the right, " + strings.Join(list, ", ")
}

// RakeWords say the slopes of a card's head and foot, for a list beside the cards.
func RakeWords(set *folio.TapedSet, c *Card) []string {
	var list []string
	for i := range c.Rakes {
		list = append(list, speech{TapedSet: set}.rake(c, &c.Rakes[i]))
	}
	return list
}
