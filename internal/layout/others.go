package layout

import (
	"fmt"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// What makes a layout another one that is worth a look, and how many there are to choose from; common practice, no source.
const (
	otherApart   = 4 // a seam that stands further off than this part of the net width is seen to stand elsewhere
	otherSheets  = 1 // sheets more than the best
	otherNarrow  = 1 // narrow sheets more
	otherClosing = 3 // feet of closing seam more that show
	othersListed = 5
	othersLooked = 24 // spans laid otherwise that are looked at
)

// Other is a layout of a room that a person would tell from its best one, and nearly as good.
//
// One span is laid otherwise than the best: it closes, begins or ends more than a quarter of a sheet from there. It breaks no
// must that the best does not, keeps every pin that the best keeps, and takes at most one sheet and one narrow sheet more; its
// closing seam shows for at most three feet more. Under the aim even narrow sheets do not count.
type Other struct {
	AimPlan
	Number    int // what [room] choose takes
	Run, Span int // in Plan.Runs, and in its Spans
	Wall      int // where the span begins
	Shoulds   []finding.Finding
}

// choosing goes through the layouts of a room, the best first.
type choosing struct {
	*builder
	spans  []choice
	looked int
	number int
}

// choice is a span that may be laid otherwise.
type choice struct {
	run, span int
	others    *seam.Others
	next      seam.Layout
	left      bool // there is a next one
}

func (b *builder) choosing() *choosing {
	c := &choosing{builder: b, number: 1}
	for i, asked := range b.asked {
		for k, q := range asked {
			if q.done {
				continue
			}
			one := choice{run: i, span: k, others: seam.NewOthers(q.Span, b.aim, q.found, int64(b.net/otherApart))}
			c.advance(&one)
			c.spans = append(c.spans, one)
		}
	}
	return c
}

// advance finds the next layout of a span that is nearly as good as the best. What shows of the closing seam counts before
// all else that may be worse, so that none follows once that is too much.
func (c *choosing) advance(one *choice) {
	best := c.asked[one.run][one.span].found.Score
	one.left = false
	for c.looked < othersLooked {
		c.looked++
		next, ok := one.others.Next()
		if !ok || next.Score.Closing > best.Closing+otherClosing {
			return
		}
		narrow := next.Score.Narrow <= best.Narrow+otherNarrow || c.aim == seam.Even
		if next.Score.Sheets <= best.Sheets+otherSheets && narrow {
			one.next, one.left = next, true
			return
		}
	}
}

// next lays the room out the next best way, nil where there is no other. Layouts of different spans go in the order of the
// aim for the whole room.
func (c *choosing) next() (*builder, *choice) {
	for {
		best := -1
		for i := range c.spans {
			if c.spans[i].left && (best < 0 || c.score(&c.spans[i]).Compare(c.score(&c.spans[best]), c.aim) < 0) {
				best = i
			}
		}
		if best < 0 {
			return nil, nil
		}
		one := c.spans[best]
		c.advance(&c.spans[best])
		b, err := build(c.room, c.aim, func(run int) []*question { return c.with(run, &one) }, nil)
		if err != nil || !b.plan.nearlyAsGood(c.plan) {
			continue // as where the flitch has no sheet more, or each more takes two courses
		}
		c.number++
		b.plan.Chosen = c.number
		return b, &one
	}
}

// nearlyAsGood holds what only the whole room shows against the best.
func (p *Plan) nearlyAsGood(best *Plan) bool {
	return p.count(finding.Must) <= best.count(finding.Must) && p.Totals.Short <= best.Totals.Short && p.Totals.Sheets <= best.Totals.Sheets+otherSheets
}

// with is a run as the best layout has it, but for the span laid otherwise.
func (c *choosing) with(run int, one *choice) []*question {
	known := slices.Clone(c.asked[run])
	if run == one.run {
		q := *known[one.span]
		q.found = one.next
		known[one.span] = &q
	}
	return known
}

// score is the score of the whole room with one span laid otherwise.
func (c *choosing) score(one *choice) seam.Score {
	sum := one.next.Score
	for i, asked := range c.asked {
		for k, q := range asked {
			if !q.done && (i != one.run || k != one.span) {
				sum = sum.Plus(q.found.Score)
			}
		}
	}
	return sum
}

// others lists what else a room laid out by its best could be.
func (b *builder) others() []Other {
	var list []Other
	c := b.choosing()
	for len(list) < othersListed {
		other, one := c.next()
		if other == nil {
			break
		}
		finding.Sort(other.plan.Findings)
		q := b.asked[one.run][one.span]
		o := Other{AimPlan: other.plan.summary(), Number: other.plan.Chosen, Run: one.run, Span: one.span, Wall: q.line.Find(L(q.L)).Wall}
		for _, f := range other.plan.Findings {
			known := func(g finding.Finding) bool { return f.Code == g.Code && f.Message == g.Message }
			if f.Level == finding.Should && !slices.ContainsFunc(b.plan.Findings, known) {
				o.Shoulds = append(o.Shoulds, f)
			}
		}
		list = append(list, o)
	}
	return list
}

// picks reports whether another layout than the best is to be laid out: a choice is made among those of the room's own aim.
func (b *builder) picks() bool { return b.room.Space.Choose > 1 && b.aim == aims[b.room.Rules.Aim] }

// pick lays out the layout of a number, the best being number one; nil where there is none, with how many there are.
func (b *builder) pick(number int) (*builder, int) {
	c := b.choosing()
	for c.number < min(number, 1+othersListed) {
		other, _ := c.next()
		if other == nil {
			break
		}
		if c.number == number {
			return other, number
		}
	}
	return nil, c.number
}

// chosen makes the plan that the room asks for.
func chosen(r *room.Room, aim seam.Aim, y *Layer) (*builder, error) {
	best, err := build(r, aim, nil, y)
	if err != nil || !best.picks() {
		return best, err
	}
	b, count := best.pick(r.Space.Choose)
	if b == nil {
		mend := fmt.Sprintf("give a number from 1 to %d: flitchlay compare lists them", count)
		if count == 1 {
			mend = "take choose out: another layout nearly as good does not exist"
		}
		return nil, r.Mistake(r.Space.ChooseAt, fmt.Sprintf("choose = %d, but the room has %s to choose from", r.Space.Choose, layouts(count)), mend)
	}
	hung := ""
	if len(r.Hung) > 0 {
		hung = "; while sheets hang these are layouts of what is left"
	}
	b.say(finding.Chosen, finding.Finding{Place: "room", Wall: -1}, finding.Slots{"number": fmt.Sprint(r.Space.Choose), "hung": hung})
	return b, nil
}

func layouts(n int) string {
	if n == 1 {
		return "1 layout"
	}
	return fmt.Sprintf("%d layouts", n)
}
