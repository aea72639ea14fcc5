package layout

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/seam"
)

// words names what a pin asks for.
func (p pin) words() string {
	switch p.put {
	case "middle":
		return "for the middle of a sheet"
	case "either":
		return "for a seam or the middle of a sheet"
	case "close":
		return "for the closing seam"
	}
	return "for a seam"
}

// dropped says that a pin could not be kept, and what it collides with.
func (b *builder) dropped(p pin, against string) {
	b.say(finding.PinDropped, finding.Finding{Place: b.wallPlace(p.wall), Wall: p.wall, At: p.x}, finding.Slots{
		"put": p.words(), "at": b.style.Words(p.x), "wall": b.room.Walls[p.wall].Name, "against": against})
}

// mostWhy bounds what is asked of a whole room about pins that fall, in lines gone over: half a second or so of one core. Where no must
// is broken a look at a pin's place answers most, and takes next to nothing; where each layout breaks one it is enough for scores
// of corners and openings of a usual closed room, and for hundreds of an open one.
const mostWhy seam.Allowance = 25_000_000

// notToTheEnd says what is left out where more would have to be asked than that.
const notToTheEnd = "what it collides with was not looked for to the end, for too many pins fall"

// why says what the pin with index i of a span collides with. Who only tries a room does not want to know.
func (b *builder) why(q *question, i int) string {
	if b.trial {
		return ""
	}
	known, ok := q.why[i]
	if !ok {
		if known = notToTheEnd; !b.whyLeft.Spent() {
			known = b.collision(q, i, q.found.Dropped)
		}
		if q.why == nil {
			q.why = map[int]string{}
		}
		q.why[i] = known
	}
	return known
}

// collision names what the pin with index i of a span collides with: an earlier pin, or the rules round its place.
func (b *builder) collision(q *question, i int, dropped []int) string {
	// The first of these that holds is the reason, from the nearest to the farthest:
	// 1. an earlier pin: by itself this one could be kept;
	this := q.Span.Pins[i]
	keeper, err := b.keeper(q)
	if err != nil {
		return "no layout is left with it"
	}
	kept, err := keeper.Keeps(this)
	if err != nil {
		return "no layout is left with it"
	}
	if kept {
		if j := q.against(keeper, i, dropped); j >= 0 {
			other := q.pins[j]
			return fmt.Sprintf("it cannot be met together with the pin %s at %s on wall %s", other.words(),
				b.style.Words(other.x), b.room.Walls[other.wall].Name)
		}
		if b.whyLeft.Spent() {
			return notToTheEnd
		}
		return "it cannot be met together with the pins before it"
	}
	// 2. what a seam at the very place would break;
	if near := b.near(q, L(q.Span.Pins[i].At)); q.pins[i].put != "middle" && len(near) > 0 {
		return "a seam there is " + strings.Join(near, " and ")
	}
	// 3. a closing seam asked of a run that has none;
	if q.pins[i].put == "close" && !q.Closed {
		return "the room has no closing seam"
	}
	// 4. the widths: with nothing in the way of seams it cannot be kept either;
	if q.bare == nil {
		free := q.Span
		free.Corners, free.Openings, free.Keep = nil, nil, nil
		if q.bare, err = b.layer.keeper(q, free); err != nil {
			return "no layout is left with it"
		}
		q.bare.From(&b.whyLeft)
	}
	if kept, err = q.bare.Keeps(this); err == nil && !kept {
		return fmt.Sprintf("no row of sheets of at most %s and at least %s can stand so", b.style.Words(b.net),
			b.style.Words(b.room.Rules.LeastWidth))
	}
	// 5. what seams elsewhere would break if it were kept.
	names := b.blame(q, keeper, this)
	if b.whyLeft.Spent() {
		return notToTheEnd
	}
	return "with it, seams elsewhere would come too near to " + strings.Join(names, ", ")
}

// keeper finds whether pins can be kept in a span.
func (b *builder) keeper(q *question) (*seam.Keeper, error) {
	if q.keeper != nil {
		return q.keeper, nil
	}
	var err error
	if q.keeper, err = b.layer.keeper(q, q.Span); err == nil {
		q.keeper.From(&b.whyLeft)
	}
	return q.keeper, err
}

// against returns the first pin before another, of those that are kept, with which that one cannot be kept; -1 where there is none.
func (q *question) against(keeper *seam.Keeper, i int, dropped []int) int {
	var before []int
	var pins []seam.Pin
	for j := range i {
		if !slices.Contains(dropped, j) {
			before, pins = append(before, j), append(pins, q.Span.Pins[j])
		}
	}
	at, err := keeper.Against(q.Span.Pins[i], pins)
	if err != nil || at < 0 {
		return -1
	}
	return before[at]
}

// near lists the must rules that a seam at s breaks.
func (b *builder) near(q *question, s L) []string {
	var out []string
	for _, d := range b.debts(q, s) {
		if d.Adds.Bends+d.Adds.Edges > 0 {
			out = append(out, d.short(b))
		}
	}
	return out
}

// blame names the objects without any one of which the pin could be kept.
func (b *builder) blame(q *question, keeper *seam.Keeper, pin seam.Pin) []string {
	var out []string
	without := func(cause seam.Cause, index int, words func() string) {
		if b.whyLeft.Spent() {
			return
		}
		if kept, err := keeper.Without(pin, cause, index); err == nil && kept {
			out = append(out, words())
		}
	}
	for i := range q.corners {
		without(seam.Return, i, func() string { return "corner " + q.corners[i].Name })
	}
	for i, o := range q.openings {
		without(seam.Leg, i, func() string { return b.openingWords(o.wall, o.index) })
	}
	if len(out) == 0 {
		out = append(out, "corners and openings")
	}
	return out
}

func (b *builder) wallPlace(wall int) string { return "wall " + b.room.Walls[wall].Name }

// openingWords names an opening inside a sentence.
func (b *builder) openingWords(wall, index int) string {
	o := b.room.Walls[wall].Openings[index]
	return o.Kind.Named(o.Name)
}

// say adds a finding.
func (b *builder) say(code finding.Code, f finding.Finding, slots finding.Slots) {
	b.plan.Findings = append(b.plan.Findings, finding.Make(b.style, code, f, slots))
}
