package layout

import (
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/run"
)

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
				if !c.Bends() || d >= b.room.Rules.CornerReturn || !r.faces(s, c) {
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
	at := r.Line.From(c.At, s.L)
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
		if !s.Lowest || s.Hung {
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
		f := finding.Finding{Place: o.Kind.Named(o.Name), Wall: o.Wall, At: b.room.Walls[o.Wall].Openings[o.Index].FromLeft}
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
				if !c.Bends() || d >= b.room.Rules.CornerReturn {
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
			f := finding.Finding{Place: box.Kind.Named(box.Name), Wall: st.Wall, At: box.X}
			left, low := box.X-box.PlateWidth.HalfDown(), box.Z-box.PlateHigh.HalfDown()
			for j := range w.Openings {
				o := &w.Openings[j]
				across := min(left+box.PlateWidth, o.Right()) - max(left, o.FromLeft)
				up := min(low+box.PlateHigh, o.Head) - max(low, foot(w, o))
				if across > 0 && up > 0 {
					f.Measured = ptr(min(across, up))
					b.say(finding.BoxInOpening, f, finding.Slots{"box": box.Kind.Named(box.Name), "at": b.style.Words(box.X), "wall": w.Name,
						"opening": b.openingWords(st.Wall, j)})
				}
			}
			if box.Kind.Traits().NeverCovered {
				f.Measured = nil
				b.say(finding.AlarmStaysBare, f, finding.Slots{"box": box.Kind.Named(box.Name), "at": b.style.Words(box.X), "wall": w.Name,
					"height": b.style.Words(box.Z)})
			}
		}
	}
}

// A closing error up to closesWell is said and no more; over that it should be measured again, and over as much for each
// closesPer of girth it must be.
const (
	closesWell = length.Inch
	closesPer  = 25 * length.Foot
)

// judgeClosure looks at how the measured walls of a closed room close.
func (b *builder) judgeClosure() {
	if !b.room.Space.Closed {
		return
	}
	m := run.Traverse(b.room)
	b.plan.Closing = &m
	code, required := finding.ClosesWithin, closesWell
	must := length.MulDiv(m.Girth, closesWell, closesPer)
	f := finding.Finding{Place: "room", Wall: -1, Measured: ptr(m.Gap)}
	switch {
	case m.Gap > must:
		code, required = finding.Misclosure, must
	case m.Gap > closesWell:
		code = finding.ClosesBadly
	}
	if code != finding.ClosesWithin {
		f.Required = ptr(required)
	}
	b.say(code, f, finding.Slots{"likely": b.misclosed(&m), "angles": Degrees(m.AngleSum),
		"girth": b.style.Words(m.Girth)})
}

// alongside is how far a closing error may point from a wall's own way for the wall to be the one that is measured wrong, in degrees.
const alongside = 10

// misclosed says which walls a closing error is on: those that it points along are too long, those that it points against too short.
// Where it points along none, or the corners do not come round either, it says the way it points.
func (b *builder) misclosed(m *run.Misclosure) string {
	var long, short []string
	for i, side := range run.Sides(b.room) {
		way := math.Atan2(side.Y1-side.Y0, side.X1-side.X0) * 180 / math.Pi
		switch off := math.Abs(math.Mod(m.Direction-way+540, 360) - 180); {
		case off < alongside:
			long = append(long, b.room.Walls[i].Name)
		case off > 180-alongside:
			short = append(short, b.room.Walls[i].Name)
		}
	}
	by := b.style.Words(m.Gap)
	switch {
	case math.Abs(m.AngleSum) > 1 || len(long) == 0 || len(short) == 0:
		return Degrees(m.Direction) + " degrees right of wall " + b.room.Walls[0].Name
	case len(long) == 1 && len(short) == 1:
		return "wall " + short[0] + " is " + by + " shorter than wall " + long[0]
	}
	return eachOf(len(short), "wall ", "walls ") + strings.Join(short, " and ") + " " + eachOf(len(short), "is ", "are ") + by + " shorter than " +
		eachOf(len(long), "wall ", "walls ") + strings.Join(long, " and ")
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
