package layout

import (
	"math"
	"strconv"
	"strings"

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
	(*builder).judgeLengths,
	(*builder).judgeGaps,
	(*builder).judgeCourses,
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
	b.judgeSpares()
}

// sheetAt says where on its first wall a sheet stands.
func (b *builder) sheetAt(r *Run, s *Sheet) (wall int, x L) {
	st := r.Line.Find(s.Left + (s.Width).HalfDown())
	return st.Wall, r.Line.Round(s.Left+s.Width.HalfDown()) - st.Shift
}

// SheetWords names a sheet in a finding: by the number on its back, and where it has none by its place.
func SheetWords(s *Sheet) string {
	if s.Number > 0 {
		return strconv.Itoa(s.Number)
	}
	return "at place " + strconv.Itoa(s.Place)
}

func (b *builder) judgeWidths(i int) {
	r := &b.plan.Runs[i]
	rules := b.room.Rules
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Hung || s.Course > 1 {
			continue
		}
		wall, x := b.sheetAt(r, s)
		f := finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x, Measured: ptr(s.Width)}
		slots := finding.Slots{"sheet": SheetWords(s), "wall": b.room.Walls[wall].Name}
		span := r.Spans[s.Span]
		whole := span.Right - span.Left
		switch {
		case s.Width < rules.LeastWidth && whole >= rules.LeastWidth:
			f.Required = ptr(rules.LeastWidth)
			b.say(finding.SheetThin, f, slots)
		case s.Width < rules.PreferWidth:
			f.Required = ptr(rules.PreferWidth)
			b.say(finding.SheetSlim, f, slots)
		}
	}
}

func (b *builder) judgeSeams(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Seams {
		s := &r.Seams[k]
		if s.Hung {
			continue
		}
		for _, p := range b.pairs(r.Line, s.At) {
			f := finding.Finding{Place: seamPlace(s), Wall: s.Wall, At: s.X, Measured: ptr(p.d)}
			slots := finding.Slots{"seam": strconv.Itoa(s.Number), "bend": p.what, "opening": p.what, "side": p.side, "box": p.what}
			switch {
			case p.code == finding.KeptClear:
				b.keptClear(f, slots, s, r.Line)
			case p.d < p.must:
				f.Required = ptr(p.must)
				b.say(p.code, f, slots)
			case p.d < p.prefer:
				f.Required = ptr(p.prefer)
				b.say(p.close, f, slots)
			}
		}
	}
}

// keptClear names the stretch that a seam stands in.
func (b *builder) keptClear(f finding.Finding, slots finding.Slots, s *Seam, line *run.Run) {
	for _, st := range line.Walls {
		w := &b.room.Walls[st.Wall]
		for _, k := range w.KeepClear {
			from := line.Round(s.At - st.Shift - k.From)
			if from <= 0 || from >= k.To-k.From || min(from, k.To-k.From-from) != *f.Measured {
				continue
			}
			slots["from"], slots["to"], slots["wall"], slots["why"] = b.style.Words(k.From), b.style.Words(k.To), w.Name, ""
			if k.Why != "" {
				slots["why"] = " (" + k.Why + ")"
			}
			b.say(finding.KeptClear, f, slots)
			return
		}
	}
}

func (b *builder) judgeNarrow(i int) {
	r := &b.plan.Runs[i]
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if !s.Narrow || s.Hung || s.Course > 1 {
			continue
		}
		joint := r.seamAfter(s.Place)
		if joint == nil || joint.Hung {
			continue
		}
		where := ""
		for _, o := range r.Openings {
			if !o.Gap && r.Line.DistanceTo(joint.At, o.Left, o.Right) == 0 {
				where = " over " + b.openingWords(o.Wall, o.Index)
			}
		}
		b.say(finding.NarrowSheet, finding.Finding{Place: "sheet " + SheetWords(s), Wall: joint.Wall, At: joint.X,
			Measured: ptr(s.Width), Required: ptr(b.net)}, finding.Slots{"sheet": SheetWords(s), "lost": b.style.Words(s.Lost),
			"seam": strconv.Itoa(joint.Number), "seen": b.style.Words(joint.Seen), "where": where})
	}
}

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
		b.say(finding.ClosingSeam, finding.Finding{Place: seamPlace(s), Wall: s.Wall, At: s.X, Measured: ptr(s.Seen)}, finding.Slots{
			"last": SheetWords(r.sheet(s.LeftSheet)), "first": SheetWords(r.sheet(s.RightSheet)), "at": b.style.Words(s.X),
			"wall": b.room.Walls[s.Wall].Name})
	}
}

// judgeEnds looks at where the covering ends: near a bend, or at an outside edge without a trim.
func (b *builder) judgeEnds(i int) {
	r := &b.plan.Runs[i]
	if r.Up {
		return
	}
	for _, s := range r.Line.Spans {
		if s.Closed {
			continue
		}
		for k, end := range [2]run.End{s.LeftEnd, s.RightEnd} {
			at := s.L - min(0, end.Lean)
			if k == 1 {
				at = s.R - max(0, end.Lean)
			}
			st, _ := r.Line.Of(end.Wall)
			x := r.Line.Round(at - st.Shift)
			if !r.Line.Closed {
				x = at - st.Shift
			}
			if end.Kind == "outside edge" {
				b.say(finding.EdgeBare, finding.Finding{Place: b.wallPlace(end.Wall), Wall: end.Wall, At: x}, finding.Slots{
					"bend": orEnd(end.Name, k), "wall": b.room.Walls[end.Wall].Name, "at": b.style.Words(x)})
			}
			for _, c := range r.Line.Corners {
				d := r.Line.DistanceTo(at, c.From, c.To)
				if !c.Wrapped || d >= b.room.Rules.CornerReturn || !r.faces(s, c) {
					continue
				}
				b.say(finding.EndClose, finding.Finding{Place: "corner " + c.Name, Wall: end.Wall, At: x, Measured: ptr(d),
					Required: ptr(b.room.Rules.CornerReturn)}, finding.Slots{"bend": "corner " + c.Name, "end": end.Words()})
			}
		}
	}
}

// faces reports whether a corner is wrapped by a sheet of the span.
func (r *Run) faces(s run.Span, c run.Corner) bool {
	at := c.At
	if r.Closed && at < s.L {
		at += r.Length
	}
	return s.L < at && at < s.R
}

func orEnd(name string, side int) string {
	if name != "" {
		return name
	}
	return [2]string{"at the left", "at the right"}[side]
}

// judgeCorners adds up the skews inside each sheet.
func (b *builder) judgeCorners(i int) {
	r := &b.plan.Runs[i]
	allowed := b.room.Veneer.Overlap - b.room.Rules.LeastOverlap
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Course > 1 || s.Hung {
			continue
		}
		sum := L(0)
		var askew []string
		for _, c := range r.Corners {
			if c.Sheet == s.Place && c.Skew != 0 {
				sum += c.Skew
				askew = append(askew, c.Name)
			}
		}
		if lean := b.hungSkew(i, s.Place); lean != 0 {
			sum += lean
			askew = append(askew, "the seam hung before it")
		}
		bends := strings.Join(askew, " and ")
		if sum.Abs() <= allowed {
			continue
		}
		wall, x := b.sheetAt(r, s)
		b.say(finding.SkewEatsOverlap, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x, Measured: ptr(sum.Abs()),
			Required: ptr(allowed)}, finding.Slots{"sheet": SheetWords(s), "bends": bends})
	}
}

// hungSkew is how far the seam at the left of a place leans to the right, where it is the last one hung.
func (b *builder) hungSkew(i, place int) L {
	r := &b.plan.Runs[i]
	for k, q := range b.asked[i] {
		if n := len(q.hung); n > 0 && r.Spans[k].FirstSheet+n == place {
			return q.hung[n-1].top - q.hung[n-1].right
		}
	}
	return 0
}

// judgeOpenings looks at jambs that are wrapped and at edges that the room itself puts near a bend.
func (b *builder) judgeOpenings(i int) {
	r := &b.plan.Runs[i]
	if r.Up {
		return
	}
	for _, o := range r.Openings {
		f := finding.Finding{Place: o.Kind + " " + o.Name, Wall: o.Wall, At: b.room.Walls[o.Wall].Openings[o.Index].FromLeft}
		reveal := b.room.Walls[o.Wall].Openings[o.Index].Reveal
		what := b.openingWords(o.Wall, o.Index)
		if o.Wrap {
			b.judgeReveal(o, f, reveal, what)
		}
		if o.Gap {
			continue // its edges are raw ends or hide nothing to wrap
		}
		for k, edge := range [2]L{o.Left, o.Right} {
			for _, c := range r.Line.Corners {
				d := r.Line.DistanceTo(edge, c.From, c.To)
				if !c.Wrapped || d >= b.room.Rules.CornerReturn {
					continue
				}
				f.Measured, f.Required = ptr(d), ptr(b.room.Rules.CornerReturn)
				b.say(finding.RoomMade, f, finding.Slots{"side": [2]string{"left", "right"}[k], "opening": what, "bend": "corner " + c.Name})
			}
		}
	}
}

func (b *builder) judgeReveal(o Opening, f finding.Finding, reveal L, what string) {
	if width := o.Right - o.Left; 2*reveal > width {
		f.Measured, f.Required = ptr(width), ptr(2*reveal)
		b.say(finding.RevealsOverlap, f, finding.Slots{"opening": what})
	}
	if reveal < b.room.Rules.CornerReturn {
		f.Measured, f.Required = ptr(reveal), ptr(b.room.Rules.CornerReturn)
		b.say(finding.RevealShallow, f, finding.Slots{"opening": what})
	}
	rest, need := "the head and the sill", "need"
	if !b.room.Walls[o.Wall].Openings[o.Index].SillGiven {
		rest, need = "the head", "needs"
	}
	f.Measured, f.Required = ptr(reveal), nil
	b.say(finding.HeadAndSill, f, finding.Slots{"opening": what, "rest": rest, "need": need, "wall": b.room.Walls[o.Wall].Name})
}

// judgeBoxes looks at plates that reach into an opening, and at alarm devices.
func (b *builder) judgeBoxes(i int) {
	for _, st := range b.plan.Runs[i].Walls {
		w := &b.room.Walls[st.Wall]
		for k := range w.Boxes {
			box := &w.Boxes[k]
			f := finding.Finding{Place: box.Kind + " " + box.Name, Wall: st.Wall, At: box.X}
			left, low := box.X-box.PlateWidth.HalfDown(), box.Z-box.PlateHigh.HalfDown()
			for j := range w.Openings {
				o := &w.Openings[j]
				sill := o.Sill
				if !o.SillGiven {
					sill = room.At(w.Floor, o.FromLeft)
				}
				across := min(left+box.PlateWidth, o.Right()) - max(left, o.FromLeft)
				up := min(low+box.PlateHigh, o.Head) - max(low, sill)
				if across > 0 && up > 0 {
					f.Measured = ptr(min(across, up))
					b.say(finding.BoxInOpening, f, finding.Slots{"box": boxWords(box), "at": b.style.Words(box.X), "wall": w.Name,
						"opening": b.openingWords(st.Wall, j)})
				}
			}
			if box.Kind == "alarm" {
				f.Measured = nil
				b.say(finding.AlarmStaysBare, f, finding.Slots{"box": boxWords(box), "at": b.style.Words(box.X), "wall": w.Name,
					"height": b.style.Words(box.Z)})
			}
		}
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

// judgeLengths holds cut lengths against the sheets, and the register against one sheet.
func (b *builder) judgeLengths(i int) {
	r := &b.plan.Runs[i]
	have := b.room.Veneer.Length
	type reach struct{ above, below L }
	most := map[int]reach{} // by course
	courses := 0
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.CutLength == 0 {
			continue
		}
		m, ok := most[s.Course]
		if !ok {
			m = reach{s.Above, s.Below}
		}
		most[s.Course] = reach{max(m.above, s.Above), max(m.below, s.Below)}
		courses = max(courses, s.Course)
		if s.CutLength > have && !s.Hung {
			wall, x := b.sheetAt(r, s)
			b.say(finding.SheetShort, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x, Measured: ptr(s.CutLength),
				Required: ptr(have)}, finding.Slots{"sheet": SheetWords(s)})
		}
	}
	for course := 1; course <= courses && !r.Up; course++ {
		m := most[course]
		if m.above+m.below <= have {
			continue
		}
		b.say(finding.FigureSteps, finding.Finding{Place: "run " + r.Name, Wall: r.Walls[0].Wall, Measured: ptr(m.above + m.below),
			Required: ptr(have)}, finding.Slots{"run": r.Name, "above": b.style.Words(m.above), "below": b.style.Words(m.below)})
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
				what = b.openingWords(o.Wall, o.Index)
			}
		}
		b.say(finding.SheetInGap, finding.Finding{Place: "sheet " + SheetWords(s), Wall: wall, At: x}, finding.Slots{
			"sheet": SheetWords(s), "opening": what, "wall": b.room.Walls[wall].Name, "from": b.style.Words(x - s.Width.HalfDown()),
			"to": b.style.Words(x - s.Width.HalfDown() + s.Width)})
	}
}

// judgeClosure looks at how the measured walls of a closed room close.
func (b *builder) judgeClosure() {
	if !b.room.Space.Closed {
		return
	}
	m := run.Traverse(b.room)
	b.plan.Closing = &m
	code, required := finding.ClosesWithin, length.Inch
	// over 1 in per 25 ft of girth
	must := length.MulDiv(m.Girth, length.Inch, 25*length.Foot)
	f := finding.Finding{Place: "room", Wall: -1, Measured: ptr(m.Gap)}
	switch {
	case m.Gap > must:
		code, required = finding.Misclosure, must
	case m.Gap > length.Inch:
		code = finding.ClosesBadly
	}
	if code != finding.ClosesWithin {
		f.Required = ptr(required)
	}
	b.say(code, f, finding.Slots{"direction": Degrees(m.Direction), "wall": b.room.Walls[0].Name, "angles": Degrees(m.AngleSum),
		"girth": b.style.Words(m.Girth)})
}

// Degrees prints an angle to a tenth of a degree.
func Degrees(d float64) string {
	text := strconv.FormatFloat(math.Round(d*10)/10, 'f', 1, 64)
	text = strings.TrimSuffix(text, ".0")
	if text == "-0" {
		return "0"
	}
	return text
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

// Spares is how many spare sheets n laid ones should have: a share, rounded up, and at least 2.
func Spares(r *room.Room, n int) int {
	parts := r.Rules.SpareShareParts
	return max(2, int((int64(n)*parts+999_999)/1_000_000))
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
			t.GrossArea += s.CutLength.Times(b.room.Veneer.GrossWidth)
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
