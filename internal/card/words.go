package card

import (
	"strings"

	"flitchlay/internal/count"
	"flitchlay/internal/folio"
	"flitchlay/internal/words"
)

// What a card says is put together here, from the table of words. What is said of a cut-out is the cut list's: see
// count.Cut.HoleWords.

// Which side of a sheet a card shows, as the data of its drawing has it.
const (
	faceSeen = "FACE"
	backSeen = "BACK"
)

// speech says what stands on the cards of a set.
type speech struct {
	*folio.TapedSet
	count *count.Count
}

// cuts says how a card's sheet is cut.
func (w speech) cuts(c *Card) count.Speech {
	return count.Speech{Words: w.Words, Style: w.Style, Back: c.Back}
}

// line is one thing that is done to a sheet, or to know of it.
type line struct {
	text string
	bold bool
}

// caption says what the head of the card is about, over the number.
func (w speech) caption(c *Card) string {
	if c.Back {
		return w.Words.Say("card.back")
	}
	return w.Words.Say("card.sheet")
}

// job says of which job and room a card is, of which issue and of which date: it is cut out, and lies on a sheet.
func (w speech) job() string {
	p, date := w.Room.Project, w.Issued()
	var who []string
	for _, name := range []string{p.Number, p.Room} {
		if name != "" {
			who = append(who, name)
		}
	}
	if len(who) == 0 {
		who = []string{p.Title}
	}
	if date == "" {
		date = w.Words.Say("page.no_date")
	}
	return strings.Join(who, ", ") + ", " + w.Words.Say("card.issue", w.Issue(), date)
}

// where is on which walls a sheet hangs, and which course of its place it is where there are more.
func (w speech) where(c *Card) string {
	words := strings.Join(c.Cut.Walls, ", ")
	switch {
	case c.Courses < 2:
		return words
	case c.Level:
		return w.Words.Say("card.piece", words, c.Sheet.Course)
	}
	return w.Words.Say("card.course", words, c.Sheet.Course)
}

// others says where the rest of a list stands that a card has no room for.
func (w speech) others(c *Card) string {
	return w.Words.Say("card.others", w.PageWord(RowKey(c.Run.Name, c.Sheet.Place, c.Sheet.Course)))
}

// RowKey is what pages find the row of a sheet in the cut list by.
func RowKey(run string, place, course int) string {
	return strings.Join([]string{"cut", run, itoa(place), itoa(course)}, " ")
}

// neighbours say what the sheet meets: left and right of it, under and over it.
func (w speech) neighbours(c *Card) [][2]string {
	say := func(side string, n Neighbour) string {
		switch {
		case n.Sheet != nil:
			return w.Words.Of("next", side, w.SheetNumber(n.Sheet))
		case n.End != nil:
			return w.Words.Of("next", side, w.EndWords(*n.End))
		}
		return ""
	}
	left, right := say("left", c.Next.Left), say("right", c.Next.Right)
	under, over := say("under", c.Next.Under), say("over", c.Next.Over)
	return [][2]string{{left, right}, {under, over}}
}

// zero names the corner that all figures are measured from.
func (w speech) zero(c *Card) string {
	at := w.Words.Say("card.at_mark")
	switch {
	case c.Level && c.Back:
		at = w.Words.Say("card.at_right_end")
	case c.Level:
		at = w.Words.Say("card.at_left_end")
	case c.Cut.FromFoot():
		at = w.endOf(c, false)
	case c.Cut.FromHead():
		at = w.endOf(c, true)
	}
	key := "card.zero"
	if c.Back {
		key = "card.zero_back"
	}
	return w.Words.Say(key, c.Cut.EdgeName(w.cuts(c)), at)
}

// endOf names an end of the sheet as it hangs that figures run from: as it is cut, or the raw end that stays there.
func (w speech) endOf(c *Card, head bool) string {
	key := "foot"
	if head {
		key = "head"
	}
	switch {
	case !c.stays(head):
		return w.Words.Of("card_end", key+" cut")
	case c.Sheet.Turned:
		return w.Words.Of("card_end", key+" turned")
	}
	return w.Words.Of("card_end", key+" raw")
}

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
	var list []line
	if c.Sheet.Gross < w.Room.Veneer.GrossWidth {
		list = append(list, line{w.Words.Say("receive.card", w.Inches(c.Sheet.Gross)), true})
	}
	list = append(list, w.ends(c)...)
	add := func(text string, bold bool) { list = append(list, line{text, bold}) }
	switch {
	case c.Level:
		key := "card.lies"
		if c.Back {
			key = "card.lies_back"
		}
		add(w.Words.Say(key), true)
	case c.Sheet.Turned:
		add(w.Words.Say("card.turned"), true)
	}
	switch x := c.Cut; {
	case x.Closes:
		add(x.ClosingWords(w.cuts(c), w.Room.Veneer.Overlap, c.ripped()), true)
	case x.Rip != "":
		add(w.Words.Say("card.rip", strings.ToUpper(w.Words.Of("side", c.ripped())), w.Inches(x.Width), w.Words.Of("side", c.kept())), true)
	}
	for i := range c.Folds {
		add(w.fold(c, &c.Folds[i]), false)
	}
	for _, x := range c.Slits {
		add(c.Cut.SlitWords(w.cuts(c), x), true)
	}
	for i := range c.Holes {
		h := &c.Holes[i]
		name := h.Name
		if h.Hole.Kind.Traits().Box {
			name += " " + w.KindWord(h.Hole.Kind)
		}
		if len(c.Cut.Walls) > 1 {
			name = w.Words.Say("cut.on_wall", name, w.Room.Walls[h.Hole.Wall].Name)
		}
		add(name+": "+c.Cut.HoleWords(w.cuts(c), *h.Hole)+w.goesOn(c, h.Hole), h.Hole.Kind.Traits().NeverCovered)
	}
	for i := range c.Overhangs {
		add(w.overhang(c, &c.Overhangs[i]), false)
	}
	for _, text := range w.parts(c) {
		add(text, true)
	}
	for i := range c.Rakes {
		add(w.rake(c, &c.Rakes[i]), false)
	}
	if x := c.Cut; x.Askew != 0 && len(x.Holes) > 0 {
		add(w.Words.Say("card.askew", w.Inches(x.Askew.Abs())), false)
	}
	return list
}

// ends say where the mark is and what is cut off at the ends.
func (w speech) ends(c *Card) []line {
	var list []line
	add := func(text string, bold bool) { list = append(list, line{text, bold}) }
	if short := c.Short(); short > 0 {
		add(w.Words.Say("card.too_short", w.Inches(short), w.Say(w.Room.Veneer.Length)), true)
	}
	switch r := c.Register; {
	case c.Level:
		if c.Back {
			add(w.Words.Say("card.cut_long", w.Say(c.Cut.Long(c.Sheet, w.Style))), true)
		} else {
			add(w.Words.Say("card.cut_hangs", w.Say(c.Cut.Long(c.Sheet, w.Style)), c.Cut.EndWords(w.Words, w.Say, -c.Sheet.Below)), true)
		}
	case c.Cut.Line.Second() && !c.Cut.Line.Off:
		add(w.markLine(c), true)
		add(c.Cut.LineWords(w.cuts(c)), false)
	case !c.Cut.Marked() && !r.Foot:
		add(w.unmarked(c), true)
	case r.Foot:
		end := "foot"
		if r.Turned {
			end = "head"
		}
		if c.stays(false) {
			add(w.Words.Of("measure", end+" stays", w.Say(c.Cut.Long(c.Sheet, w.Style))), true)
		} else {
			add(w.Words.Of("measure", end+" cut", w.Inches(max(0, c.Kept.Bottom-c.Raw.Bottom)), w.Say(c.Cut.Long(c.Sheet, w.Style))), true)
		}
	case r.Turned:
		add(w.Words.Say("card.mark_turned", w.Say(r.At)), true)
	default:
		add(w.Words.Say("card.mark", w.Say(r.At)), true)
	}
	if line := c.Cut.LineWords(w.cuts(c)); c.Cut.Line.No == 1 && c.Cut.Marked() {
		add(line, false)
	}
	add(w.zero(c), false)
	if !c.Level && c.Cut.Marked() && len(c.stayingAt(c.Cut.Line.By)) == 0 { // else the drawing has it on what stays
		add(w.markStays(c), true)
	}
	if !c.Level && !c.Cut.Marked() {
		add(w.set(c), true)
	}
	return list
}

// unmarked says how a sheet is cut whose mark would come off with what is cut away: from the raw end that hangs up.
func (w speech) unmarked(c *Card) string {
	end := "head"
	if c.Sheet.Turned {
		end = "foot"
	}
	if c.stays(true) {
		return w.Words.Of("measure_up", end+" stays", w.Say(c.Cut.Long(c.Sheet, w.Style)))
	}
	return w.Words.Of("measure_up", end+" cut", w.Inches(c.Raw.Top-c.Kept.Top), w.Say(c.Cut.Long(c.Sheet, w.Style)))
}

// set says at which height a sheet is hung that has no mark: how far the end that its heights are from is over its level line, or
// under it.
func (w speech) set(c *Card) string {
	end := "foot"
	if c.Cut.FromHead() {
		end = "head"
	}
	key := "raw"
	at, piece := c.set()
	switch {
	case piece:
		key = "piece"
	case !c.stays(end == "head"):
		key = "cut"
	case c.Sheet.Turned:
		key = "turned"
	}
	line := w.Words.Say("card.the_level")
	if c.Cut.Line.Second() {
		line = w.Words.Say("wall.second", c.Cut.Line.No)
	}
	way := "over"
	if at < 0 {
		at, way = -at, "under"
	}
	return w.Words.Of("hang", way, w.Words.Of("hang_end", end+" "+key), w.Say(at), line)
}

// markLine says where the mark of a second level line is made.
func (w speech) markLine(c *Card) string {
	key := "card.mark_line_up"
	if c.Register.Foot {
		key = "card.mark_line_down"
	}
	return w.Words.Say(key, c.Cut.Line.No, w.Say(c.MarkedAt()))
}

// SetWords say at which height a card's sheet is hung that has no mark.
func SetWords(set *folio.TapedSet, c *Card) string { return speech{TapedSet: set}.set(c) }

// LineWords say in a language from which line the heights of a card's sheet are, where its wall has more than one, and where that is
// marked, for a list beside the cards.
func LineWords(set *folio.TapedSet, t *words.Table, c *Card) string {
	w := speechIn(set, t)
	line := c.Cut.LineWords(w.cuts(c))
	switch {
	case c.Cut.Line.Off:
		return line + "; " + w.set(c)
	case c.Cut.Line.Second():
		return line + "; " + w.markLine(c)
	case c.Cut.Marked():
		return line
	}
	return ""
}

// fold says where a fold meets head, level line and foot of the sheet as cut; once, where that is the same.
func (w speech) fold(c *Card, f *Fold) string {
	name := f.Bend.Called(w.cuts(c))
	if c.Back && f.Bend.Of != nil {
		name = w.Words.Say("card.jamb", f.Bend.Of.Name) // which of them is left depends on the side
	}
	if f.Corner != nil {
		name = w.CornerWord(f.Corner.Kind, name)
		if f.Corner.Radius > 0 {
			name = w.Words.Say("card.round", name, w.Inches(f.Corner.Radius))
		}
	}
	from := func(p L) string { return w.Style.Inches(c.fromEdge(p)) }
	head, foot := from(f.Head.X), from(f.Foot.X)
	if head == foot {
		return w.Words.Say("card.fold", name, foot, c.Cut.FromEdge(w.cuts(c)))
	}
	if c.Cut.Marked() {
		return w.Words.Say("card.fold_level", name, head, from(c.across(f.Bend.At)), foot, c.Cut.FromEdge(w.cuts(c)))
	}
	return w.Words.Say("card.fold_ends", name, head, foot, c.Cut.FromEdge(w.cuts(c)))
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
