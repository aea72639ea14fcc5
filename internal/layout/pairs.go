package layout

import (
	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// pair is a seam and one thing it must stand off, as the sums of the score count it.
type pair struct {
	code   finding.Code // where the must is broken
	close  finding.Code // where only the preference is
	what   string       // "corner C2", "window W1"
	side   string       // left, right: the edge of an opening
	d      L
	must   L
	prefer L // 0 where it is less than its must
	wall   int
}

// short words the pair inside a sentence about a broken must.
func (p pair) short(b *builder) string {
	measured, required := b.style.Apart(p.d, p.must)
	what := p.what
	switch p.code {
	case finding.LegThin:
		return measured + " outside " + what + " (" + required + " must stand)"
	case finding.ClearShort, finding.RevealShort:
		return measured + " inside the " + p.side + " edge of " + what + " (" + required + " must be)"
	case finding.KeptClear:
		return measured + " inside " + what
	}
	return measured + " from " + what + " (" + required + " must wrap)"
}

// pairs lists everything that a seam at s must or should stand off.
func (b *builder) pairs(line *run.Run, s L) []pair {
	out := b.cornerPairs(line, s)
	for _, st := range line.Walls {
		w := &b.room.Walls[st.Wall]
		for i := range w.Openings {
			out = append(out, b.openingPairs(line, st, w, i, s)...)
		}
		for i := range w.Boxes {
			from, to := plateStretch(line, st, &w.Boxes[i])
			out = append(out, pair{close: finding.PlateClose, what: w.Boxes[i].Kind.Named(w.Boxes[i].Name), d: line.DistanceTo(s, from, to),
				prefer: b.room.Rules.BoxClear, wall: st.Wall})
		}
		if line.Up {
			continue
		}
		for _, k := range w.KeepClear {
			from, to := st.Shift+k.From, st.Shift+k.To
			if in, out2 := line.Round(s-from), line.Round(to-s); in > 0 && out2 > 0 && in+out2 == to-from {
				d := min(in, out2)
				out = append(out, pair{code: finding.KeptClear, what: "the stretch kept clear", d: d, must: -1, wall: st.Wall})
			}
		}
	}
	return out
}

func (b *builder) cornerPairs(line *run.Run, s L) []pair {
	var out []pair
	for _, c := range line.Corners {
		if !c.Wrapped {
			continue
		}
		out = append(out, pair{code: finding.ReturnShort, close: finding.ReturnClose, what: "corner " + c.Name,
			d: line.DistanceTo(s, c.From, c.To), must: b.room.Rules.CornerReturn,
			prefer: preference(b.room.Rules.PreferReturn, b.room.Rules.CornerReturn), wall: c.LeftWall})
	}
	return out
}

// preference is 0 where it is less than its must.
func preference(prefer, must L) L {
	if prefer < must {
		return 0
	}
	return prefer
}

func (b *builder) openingPairs(line *run.Run, st run.Stretch, w *room.Wall, i int, s L) []pair {
	o, rules := &w.Openings[i], b.room.Rules
	edges := openingQuestion(line, st, w, o)
	left, right := L(edges.A), L(edges.B)
	toLeft, toRight := line.Distance(s, left), line.Distance(s, right)
	inside := line.DistanceTo(s, left, right) == 0
	what := b.openingWords(st.Wall, i)
	names := [2]string{"left", "right"}
	if line.Up {
		names = [2]string{"lower", "upper"}
	}
	ds := [2]L{toLeft, toRight}
	on := toLeft == 0 || toRight == 0
	var out []pair
	switch {
	case inside && edges.Gap && !on:
		return nil
	case edges.Wrap && inside:
		for k := range ds {
			if ds[k] == 0 {
				out = append(out, pair{code: finding.ReturnShort, close: finding.ReturnClose, what: "the " + names[k] + " jamb of " + what,
					side: names[k], must: rules.CornerReturn, prefer: preference(rules.PreferReturn, rules.CornerReturn), wall: st.Wall},
					pair{code: finding.ClearShort, close: finding.ClearClose, what: what, side: names[k], must: rules.OpeningClear,
						prefer: preference(rules.PreferClear, rules.OpeningClear), wall: st.Wall})
				continue
			}
			prefer := preference(rules.PreferClear, rules.OpeningClear)
			if prefer > 0 {
				prefer += o.Reveal
			}
			out = append(out, pair{code: finding.RevealShort, close: finding.ClearClose, what: what, side: names[k], d: ds[k],
				must: o.Reveal + rules.OpeningClear, prefer: prefer, wall: st.Wall})
		}
	case inside:
		for k := range ds {
			out = append(out, pair{code: finding.ClearShort, close: finding.ClearClose, what: what, side: names[k], d: ds[k],
				must: rules.OpeningClear, prefer: preference(rules.PreferClear, rules.OpeningClear), wall: st.Wall})
		}
	default:
		k := 0
		if toRight < toLeft {
			k = 1
		}
		p := pair{code: finding.LegThin, close: finding.LegClose, what: what, side: names[k], d: ds[k], must: rules.Leg,
			prefer: preference(rules.PreferLeg, rules.Leg), wall: st.Wall}
		if edges.Wrap {
			p = pair{code: finding.ReturnShort, close: finding.ReturnClose, what: "the " + names[k] + " jamb of " + what, side: names[k],
				d: ds[k], must: rules.CornerReturn, prefer: preference(rules.PreferReturn, rules.CornerReturn), wall: st.Wall}
		}
		out = append(out, p)
	}
	return out
}
