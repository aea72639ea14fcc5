package layout

import (
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// Comparison is a room laid out by each aim, and what else its own aim could choose.
type Comparison struct {
	Aims   []AimPlan
	Own    int // the room's own aim, in Aims
	Others []Other
}

// AimPlan is what one aim makes of a room.
type AimPlan struct {
	Plan   *Plan
	Same   string // the aim before it that gives the same seams, or empty
	Narrow []Jump
	Lost   L // grain lost in all
	Close  []Seam
	Ends   []Ends
	Waste  length.Area // gross less net
	Musts  int
}

// Jump is a narrow sheet.
type Jump struct {
	Sheet *Sheet
	Seam  *Seam
	Over  string // the opening it shows over, or empty
}

// Ends are the widths of the first and last sheet of an open span.
type Ends struct {
	Run         string
	First, Last L
}

// Compare lays a room out by the three aims, steady, fewest, even, whatever layout is chosen, and lists the others of the
// room's own aim.
//
// Errors: as Lay.
func Compare(r *room.Room) (*Comparison, error) {
	c := &Comparison{}
	for i, aim := range []seam.Aim{seam.Steady, seam.Fewest, seam.Even} {
		b, err := build(r, aim, nil, nil)
		if err != nil {
			return nil, err
		}
		if aim == aims[r.Rules.Aim] {
			c.Own, c.Others = i, b.others()
		}
		p := b.plan
		finding.Sort(p.Findings)
		a := p.summary()
		for _, other := range c.Aims {
			if other.Same == "" && sameSeams(other.Plan, p) {
				a.Same = AimWord(other.Plan.Aim)
			}
		}
		c.Aims = append(c.Aims, a)
	}
	return c, nil
}

func (p *Plan) summary() AimPlan {
	a := AimPlan{Plan: p, Waste: p.Totals.GrossArea - p.Totals.NetArea, Musts: p.count(finding.Must)}
	for i := range p.Runs {
		r := &p.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if !s.Narrow || !s.Lowest {
				continue
			}
			j := Jump{Sheet: r.Hanging(s.Place), Seam: r.SeamAfter(s.Place)}
			if j.Seam != nil {
				j.Over = r.over(j.Seam)
			}
			a.Narrow = append(a.Narrow, j)
			a.Lost += s.Lost
		}
		for _, s := range r.Seams {
			if s.Closing {
				a.Close = append(a.Close, s)
			}
		}
		for _, span := range r.Spans {
			if !span.Closed {
				a.Ends = append(a.Ends, Ends{r.Name, r.sheet(span.FirstSheet).Width, r.sheet(span.LastSheet).Width})
			}
		}
	}
	return a
}

// count counts the findings of a level.
func (p *Plan) count(level finding.Level) int {
	n := 0
	for _, f := range p.Findings {
		if f.Level == level {
			n++
		}
	}
	return n
}

// sameSeams reports whether two plans of one room put every seam at the same place.
func sameSeams(a, b *Plan) bool {
	return slices.EqualFunc(a.Runs, b.Runs, func(x, y Run) bool {
		return slices.EqualFunc(x.Seams, y.Seams, func(s, t Seam) bool { return s.At == t.At && s.Closing == t.Closing })
	})
}
