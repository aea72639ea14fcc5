package layout

import (
	"flitchlay/internal/finding"
	"flitchlay/internal/shape"
)

// each makes a list that JSON writes as [] where it is empty.
func each[T, U any](list []T, f func(*T) U) []U {
	out := make([]U, len(list))
	for i := range list {
		out[i] = f(&list[i])
	}
	return out
}

// orNull is nil for a field's empty value.
func orNull[T comparable](x T) *T {
	var none T
	if x == none {
		return nil
	}
	return &x
}

func (p *Plan) kept() *Kept {
	k := &Kept{Format: KeptFormat, Unit: "mm", Aim: AimWord(p.Aim), Title: p.Room.Project.Title, Runs: each(p.Runs, p.keptRun),
		Registers: each(p.Registers(), (*Register).kept)}
	for _, f := range p.Findings {
		k.Findings = append(k.Findings, KeptFinding{string(f.Code), f.Level.String(), f.Place, (*MM)(f.Measured), (*MM)(f.Required), f.Message, f.Line, f.Answer})
	}
	if k.Findings == nil {
		k.Findings = []KeptFinding{}
	}
	t := &p.Totals
	k.Totals = KeptTotals{t.Sheets, t.Spares, SquareMetres(t.NetArea), SquareMetres(t.GrossArea), t.Paste.kept(), t.Primer.kept()}
	k.Readings = each(p.Arrivals, p.keptReading)
	return k
}

func (p *Plan) keptReading(a *Arrival) KeptReading {
	return KeptReading{p.Room.Walls[a.Wall].Name, a.Read, a.Word.String(),
		each(a.Lines, func(x *Struck) KeptStruck { return KeptStruck{x.Sheet, x.Askew, MM(x.Planned), MM(x.Now)} }), MM(a.Cut),
		each(a.Lacks, func(x *Lack) KeptLack { return KeptLack{x.Sheet, x.Side, MM(x.By)} }),
		each(a.Broken, func(f *finding.Finding) string { return f.Message })}
}

func (p *Plan) keptRun(r *Run) KeptRun {
	name := func(wall int) string { return p.Room.Walls[wall].Name }
	axis := "along"
	if r.Up {
		axis = "up"
	}
	plays := p.Plays(r)
	return KeptRun{
		Name: r.Name, Axis: axis, Length: MM(r.Length), Closed: r.Closed,
		Walls: each(r.Walls, func(w *Stretch) KeptWall { return KeptWall{name(w.Wall), MM(w.Left), MM(w.Right)} }),
		Corners: each(r.Corners, func(c *Corner) KeptCorner {
			return KeptCorner{c.Name, c.Kind.String(), Plain(c.Angle), MM(c.At), MM(c.Lean), MM(c.LeftReturn), MM(c.RightReturn)}
		}),
		Openings: each(r.Openings, func(o *Opening) KeptOpening {
			return KeptOpening{o.Name, name(o.Wall), string(o.Kind), MM(o.Left), MM(o.Right), MM(o.Sill), MM(o.Head)}
		}),
		Spans: each(r.Spans, (*Span).kept),
		Seams: each(r.Seams, func(s *Seam) KeptSeam {
			return KeptSeam{MM(s.At), MM(s.PlumbLine), name(s.Wall), MM(s.X), s.LeftSheet, s.RightSheet, s.Closing, MM(s.Seen),
				s.NearestOpening.kept(), s.NearestCorner.kept(), keptPlay(plays, s.LeftSheet)}
		}),
		Sheets: each(r.Sheets, func(s *Sheet) KeptSheet { return r.keptSheet(s, name) }),
	}
}

func (s *Span) kept() KeptSpan {
	v := s.Score
	return KeptSpan{MM(s.Left), MM(s.Right), KeptScore{MM(v.Bends), MM(v.Edges), v.Closing, v.NarrowMain, v.Narrow, v.Sheets,
		v.NarrowJump, MM(v.Sliver), v.Jump, MM(v.Should), v.Seen, MM(v.Difference), squaresOf(v)}}
}

func (r *Run) keptSheet(s *Sheet, name func(int) string) KeptSheet {
	k := KeptSheet{
		Place: s.Place, Flitch: orNull(s.Flitch), Course: s.Course, Turned: s.Turned,
		Left: MM(r.round(s.Left)), Right: MM(r.round(s.Right)), Width: MM(s.Width), Gross: MM(s.Gross), Narrow: s.Narrow, Ripped: orNull(r.Side(s.Ripped)),
		CutLength: MM(s.CutLength), Above: MM(s.Above), Below: MM(s.Below),
		Bends: each(s.Bends, func(l *L) MM { return MM(*l) }), Area: SquareMetres(s.Area),
		Pieces: each(s.Pieces, func(p *Piece) KeptPiece {
			return KeptPiece{name(p.Wall), keptPoints(p.Outline), each(p.Holes, func(h *shape.Outline) []KeptPoint { return keptPoints(*h) }), SquareMetres(p.Area)}
		}),
	}
	if s.Number > 0 {
		k.Number = &s.Number
	}
	return k
}

func (r *Register) kept() KeptRegister {
	k := KeptRegister{Flitch: orNull(r.Flitch), Course: r.Course, Turned: r.Turned, From: r.End(), Need: MM(r.Need),
		Highest: orNull(r.Most[0].Number), Lowest: orNull(r.Most[1].Number)}
	at := MM(r.At)
	if r.Foot {
		k.Over = &at
	} else {
		k.Mark = &at
	}
	return k
}

func keptPlay(plays map[int]Play, place int) *KeptPlay {
	play, ok := plays[place]
	if !ok {
		return nil
	}
	return &KeptPlay{play.Left.kept(), play.Right.kept()}
}

func (l *Limit) kept() *KeptLimit {
	if l.Must == NoMust {
		return nil
	}
	return &KeptLimit{MM(l.By), l.Must.String(), orNull(l.Name), orNull(l.Place)}
}

func (n *Near) kept() *KeptNear {
	if n == nil {
		return nil
	}
	return &KeptNear{n.Name, MM(n.Distance)}
}

func (a *Amount) kept() *KeptAmount {
	if a == nil {
		return nil
	}
	return &KeptAmount{Plain(a.Amount), a.Unit}
}

// round takes s round in a closed run; its end stays its end where the run is cut there.
func (r *Run) round(s L) L {
	if r.Closed && (s < 0 || s >= r.Length) {
		return r.Line.Round(s)
	}
	return s
}
