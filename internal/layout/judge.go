package layout

import (
	"strconv"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// judges is the list of rules that a finished layout is held against. A new rule is one function and one line here.
var judges = []func(*builder, int){
	(*builder).judgeWidths,
	(*builder).judgeSeams,
	(*builder).judgeNarrow,
	(*builder).judgeClosing,
	(*builder).judgeEnds,
	(*builder).judgeCorners,
	(*builder).judgeOpenings,
	(*builder).judgeBoxes,
	(*builder).judgePins,
	(*builder).judgePieces,
	(*builder).judgeLengths,
	(*builder).judgeGaps,
	(*builder).judgeCourses,
	(*builder).judgeLeans,
	(*builder).judgeMusts,
}

// judge holds every run against the rules, then the room as a whole.
func (b *builder) judge() {
	for i := range b.plan.Runs {
		for _, rule := range judges {
			rule(b, i)
		}
	}
	b.judgeClosure()
	b.judgeRegisters()
	b.judgeSpares()
}

// sheetAt says where on its first wall a sheet stands.
func (b *builder) sheetAt(r *Run, s *Sheet) (wall int, x L) {
	st := r.Line.Find(s.Left + (s.Width).HalfDown())
	return st.Wall, r.Line.Round(s.Left+s.Width.HalfDown()) - st.Shift
}

// seamPlace is a seam as the place of a finding.
func (b *builder) seamPlace(r *Run, s *Seam) string { return "seam " + b.plan.SeamName(r, s) }

// SheetWords names a sheet in a finding: by the number on its back, and where it has none by its place.
func SheetWords(s *Sheet) string {
	if s.Number > 0 {
		return strconv.Itoa(s.Number)
	}
	return "at place " + strconv.Itoa(s.Place)
}

func (b *builder) judgeWidths(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Hung || !s.Lowest {
			continue
		}
		wall, x := b.sheetAt(r, s)
		f := finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x}
		slots := finding.Slots{"sheet": SheetWords(s), "wall": b.room.Walls[wall].Name}
		b.sayDue(b.asked[i][s.Span].WidthDue(int64(s.Width)), f, slots)
	}
}

func (b *builder) judgeSeams(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Seams {
		s := &r.Seams[k]
		if s.Hung {
			continue
		}
		for _, d := range b.debts(b.asked[i][s.Span], s.At) {
			slots := finding.Slots{"seam": b.plan.SeamNumbers(r, s), "bend": d.what, "opening": d.what, "side": d.side, "box": d.what, "stands": b.stands(d)}
			if d.Cause == seam.Kept {
				b.keptSlots(d, slots)
			}
			b.sayDue(d.Due, finding.Finding{Place: b.seamPlace(r, s), Wall: s.Wall, At: s.X}, slots)
		}
	}
}

// stands says how a seam stands to a plate: some way from it, or behind it.
func (b *builder) stands(d debt) string {
	if d.D == 0 {
		return "runs behind"
	}
	measured, _ := b.style.Apart(L(d.D), L(d.Prefer))
	return "is " + measured + " from"
}

// keptSlots names the stretch that a seam stands in.
func (b *builder) keptSlots(d debt, slots finding.Slots) {
	w := &b.room.Walls[d.wall]
	k := &w.KeepClear[d.index]
	slots["from"], slots["to"], slots["wall"], slots["why"] = b.style.Words(k.From), b.style.Words(k.To), w.Name, ""
	if k.Why != "" {
		slots["why"] = " (" + k.Why + ")"
	}
}

func (b *builder) judgeNarrow(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Lost == 0 || s.Hung || !s.Lowest {
			continue
		}
		code := finding.NarrowSheet
		joint := r.SeamAfter(s.Place)
		if !s.Narrow {
			code = finding.JumpSeen
		}
		if joint == nil || joint.Hung || !s.Narrow && !b.whole(r, joint) {
			continue
		}
		s = r.Hanging(s.Place)
		ripped := ""
		if s.RipTo > 0 {
			ripped = ", ripped to " + b.style.Words(s.RipTo) + ","
		}
		b.say(code, finding.Finding{Place: "sheet " + SheetWords(s), Wall: joint.Wall, At: joint.X,
			Measured: ptr(s.Width), Required: ptr(b.net)}, finding.Slots{"sheet": SheetWords(s), "lost": b.style.Words(s.Lost), "ripped": ripped,
			"seam": b.plan.SeamNumbers(r, joint), "seen": b.style.Words(joint.Seen), "where": b.stretches(r, joint)})
	}
}

// whole reports whether a seam shows over all the height between base and crown.
func (b *builder) whole(r *Run, s *Seam) bool {
	w := &b.room.Walls[s.Wall]
	return !r.Up && s.Seen > 0 && s.Seen >= room.At(w.Ceiling, s.X)-w.Crown-room.At(w.Floor, s.X)-w.Base
}

// Hanging finds the lowest sheet of a place that is cut, and where none is the lowest.
func (r *Run) Hanging(place int) *Sheet {
	for _, k := range r.column(place) {
		if s := &r.Sheets[k]; !s.InGap {
			return s
		}
	}
	return r.sheet(place)
}

// over names the opening over or under which a seam stands, the last where there are two; empty where there is none.
func (r *Run) over(s *Seam) string {
	name := ""
	for _, o := range r.Openings {
		if !o.Gap && r.Line.DistanceTo(s.At, o.Left, o.Right) == 0 {
			name = o.words()
		}
	}
	return name
}

// words names an opening inside a sentence.
func (o *Opening) words() string { return o.Kind.Named(o.Name) }

// sheet finds the lowest course of a place.
func (r *Run) sheet(place int) *Sheet {
	if list := r.column(place); len(list) > 0 {
		return &r.Sheets[list[0]]
	}
	return nil
}

func (b *builder) judgeClosing(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Seams {
		s := &r.Seams[k]
		if !s.Closing || s.Hung {
			continue
		}
		b.say(finding.ClosingSeam, finding.Finding{Place: b.seamPlace(r, s), Wall: s.Wall, At: s.X, Measured: ptr(s.Seen)}, finding.Slots{
			"last": SheetWords(r.Hanging(s.LeftSheet)), "first": SheetWords(r.Hanging(s.RightSheet)), "at": b.style.Words(s.X),
			"seam": b.plan.SeamNumbers(r, s), "wall": b.room.Walls[s.Wall].Name, "where": b.summed(r, s)})
	}
}

// judgePins says where a pin that is kept is not met to the last fraction.
func (b *builder) judgePins(i int) {
	r := &b.plan.Runs[i]
	for _, q := range b.asked[i] {
		for _, p := range q.pins {
			at, met, ok := r.meets(p)
			if !ok || met == at {
				continue
			}
			st := r.Line.Find(met)
			b.say(finding.PinToGrid, finding.Finding{Place: b.wallPlace(p.wall), Wall: p.wall, At: p.x, Measured: ptr(r.Line.Distance(met, at))},
				finding.Slots{"put": p.words(), "at": b.style.Words(p.x), "wall": b.room.Walls[p.wall].Name,
					"met": b.style.Words(r.Line.Round(met) - st.Shift)})
		}
	}
}

// meets finds the seam or the sheet's middle within half a snap of a pin.
func (r *Run) meets(p pin) (at, met L, ok bool) {
	at = r.Line.Round(L(p.At))
	half := r.Line.Room.Rules.Snap
	best := L(-1)
	try := func(s L) {
		if d := r.Line.Distance(s, at); 2*d <= half && (best < 0 || d < best) {
			best, met = d, s
		}
	}
	if p.Put != seam.PutMiddle {
		for _, s := range r.Seams {
			if p.Put != seam.PutClose || s.Closing {
				try(s.At)
			}
		}
	}
	if p.Put == seam.PutMiddle || p.Put == seam.PutEither {
		for _, s := range r.Sheets {
			try(r.Line.Round(s.Left + s.Width.HalfDown()))
		}
	}
	return at, met, best >= 0
}

// judgeLengths holds cut lengths against the sheets.
func (b *builder) judgeLengths(i int) {
	r := &b.plan.Runs[i]
	have := b.room.Veneer.Length
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.CutLength == 0 {
			continue
		}
		if s.CutLength > have && !s.Hung {
			wall, x := b.sheetAt(r, s)
			b.say(finding.SheetShort, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x, Measured: ptr(s.CutLength),
				Required: ptr(have)}, finding.Slots{"sheet": SheetWords(s)})
		}
	}
}

func (b *builder) judgeGaps(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if !s.InGap {
			continue
		}
		wall, x := b.sheetAt(r, s)
		what := "a gap"
		for _, o := range r.Openings {
			if r.Line.DistanceTo(s.Left+s.Width.HalfDown(), o.Left, o.Right) == 0 {
				what = o.words()
			}
		}
		b.say(finding.SheetInGap, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x}, finding.Slots{
			"sheet": SheetWords(s), "opening": what, "wall": b.room.Walls[wall].Name, "from": b.style.Words(x - s.Width.HalfDown()),
			"to": b.style.Words(x - s.Width.HalfDown() + s.Width)})
	}
}

// judgeSpares compares what each flitch leaves over with what should be kept.
func (b *builder) judgeSpares() {
	for _, s := range b.plan.Left {
		want := Spares(b.room, len(s.Laid))
		have := len(s.Spare) + len(s.Left)
		if have >= want || len(s.Laid) == 0 {
			continue
		}
		b.say(finding.SparesFew, finding.Finding{Place: "flitch " + s.Flitch, Wall: -1}, finding.Slots{"flitch": s.Flitch,
			"have": strconv.Itoa(have), "laid": strconv.Itoa(len(s.Laid)), "want": strconv.Itoa(want)})
	}
}

// A share of spares is kept in millionths of the sheets laid; there are never fewer spares than leastSpares.
const (
	shareParts  = 1_000_000
	leastSpares = 2
)

// Spares is how many spare sheets n laid ones should have: a share, rounded up, and at least leastSpares.
func Spares(r *room.Room, n int) int {
	parts := r.Rules.SpareShareParts
	return max(leastSpares, int((int64(n)*parts+shareParts-1)/shareParts))
}

// hung lists the sheets of a run that hang already.
func (b *builder) hung(line *run.Run) []room.Hung {
	var out []room.Hung
	for _, h := range b.room.Hung {
		if _, ok := line.Of(h.Wall); ok && !line.Up {
			out = append(out, h)
		}
	}
	return out
}

// total adds up the room.
func (b *builder) total() {
	t := &b.plan.Totals
	var twice length.Area
	for i := range b.plan.Runs {
		for k := range b.plan.Runs[i].Sheets {
			s := &b.plan.Runs[i].Sheets[k]
			t.Sheets++
			t.GrossArea += s.CutLength.Times(s.Gross)
			for _, p := range s.Pieces {
				twice += p.Twice()
			}
		}
	}
	t.NetArea = twice / 2
	if len(b.plan.Left) == 0 {
		t.Spares = Spares(b.room, t.Sheets)
	}
	for _, s := range b.plan.Left {
		if len(s.Laid) > 0 {
			t.Spares += Spares(b.room, len(s.Laid))
		}
	}
	t.Paste, t.Primer = b.paste(), b.primer()
}
