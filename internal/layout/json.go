package layout

import (
	"bytes"
	"encoding/json"
	"math/big"
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/shape"
)

// JSON writes the plan in the format flitchlay-layout/1.
//
// Units: millimetres as decimals, exact to 1/8 micrometre; areas in square metres; heights above the room's level;
// where there is nothing to say a field is null.
func (p *Plan) JSON() []byte {
	w := &writer{}
	w.open('{')
	w.text("format", "flitchlay-layout/1")
	w.text("unit", "mm")
	w.text("aim", AimWord(p.Aim))
	w.text("title", p.Room.Project.Title)
	w.list("runs", len(p.Runs), func(i int) { p.run(w, &p.Runs[i]) })
	w.list("findings", len(p.Findings), func(i int) {
		f := p.Findings[i]
		w.open('{')
		w.text("code", string(f.Code))
		w.text("level", f.Level.String())
		w.text("place", f.Place)
		w.maybe("measured", f.Measured)
		w.maybe("required", f.Required)
		w.text("message", f.Message)
		w.close('}')
	})
	w.key("totals")
	w.open('{')
	w.whole("sheets", p.Totals.Sheets)
	w.whole("spares", p.Totals.Spares)
	w.raw("net_area", p.Totals.NetArea.Decimal())
	w.raw("gross_area", p.Totals.GrossArea.Decimal())
	w.amount("paste", p.Totals.Paste)
	w.amount("primer", p.Totals.Primer)
	w.close('}')
	w.close('}')
	w.out.WriteByte('\n')
	return w.out.Bytes()
}

func (p *Plan) run(w *writer, r *Run) {
	name := func(wall int) string { return p.Room.Walls[wall].Name }
	w.open('{')
	w.text("name", r.Name)
	w.text("axis", map[bool]string{false: "along", true: "up"}[r.Up])
	w.length("length", r.Length)
	w.flag("closed", r.Closed)
	w.list("walls", len(r.Walls), func(i int) {
		w.open('{')
		w.text("name", name(r.Walls[i].Wall))
		w.length("left", r.Walls[i].Left)
		w.length("right", r.Walls[i].Right)
		w.close('}')
	})
	w.list("corners", len(r.Corners), func(i int) {
		c := r.Corners[i]
		w.open('{')
		w.text("name", c.Name)
		w.text("kind", c.Kind.String())
		w.raw("angle", strconv.FormatFloat(c.Angle, 'f', -1, 64))
		w.length("at", c.At)
		w.length("lean", c.Lean)
		w.length("left_return", c.LeftReturn)
		w.length("right_return", c.RightReturn)
		w.close('}')
	})
	w.list("openings", len(r.Openings), func(i int) {
		o := r.Openings[i]
		w.open('{')
		w.text("name", o.Name)
		w.text("wall", name(o.Wall))
		w.text("kind", o.Kind)
		w.length("left", o.Left)
		w.length("right", o.Right)
		w.length("sill", o.Sill)
		w.length("head", o.Head)
		w.close('}')
	})
	w.list("spans", len(r.Spans), func(i int) {
		s := r.Spans[i]
		w.open('{')
		w.length("left", s.Left)
		w.length("right", s.Right)
		w.key("score")
		w.score(&s)
		w.close('}')
	})
	w.list("seams", len(r.Seams), func(i int) { w.seam(&r.Seams[i], name(r.Seams[i].Wall)) })
	w.list("sheets", len(r.Sheets), func(i int) { w.sheet(r, &r.Sheets[i], name) })
	w.close('}')
}

func (w *writer) seam(s *Seam, wall string) {
	w.open('{')
	w.length("at", s.At)
	w.length("plumb_line", s.PlumbLine)
	w.text("wall", wall)
	w.length("from_wall_left", s.X)
	w.whole("left_sheet", s.LeftSheet)
	w.whole("right_sheet", s.RightSheet)
	w.flag("closing", s.Closing)
	w.length("seen", s.Seen)
	w.near("nearest_opening", s.NearestOpening)
	w.near("nearest_corner", s.NearestCorner)
	w.close('}')
}

func (w *writer) sheet(r *Run, s *Sheet, name func(int) string) {
	w.open('{')
	w.whole("place", s.Place)
	w.textOrNull("flitch", s.Flitch)
	if s.Number > 0 {
		w.whole("number", s.Number)
	} else {
		w.raw("number", "null")
	}
	w.whole("course", s.Course)
	w.flag("turned", s.Turned)
	w.length("left", r.round(s.Left))
	w.length("right", r.round(s.Right))
	w.length("width", s.Width)
	w.flag("narrow", s.Narrow)
	w.textOrNull("ripped", s.Ripped)
	w.length("cut_length", s.CutLength)
	w.length("above", s.Above)
	w.length("below", s.Below)
	w.list("bends", len(s.Bends), func(i int) { w.value(s.Bends[i].Decimal()) })
	w.raw("area", s.Area.Decimal())
	w.list("pieces", len(s.Pieces), func(i int) {
		p := s.Pieces[i]
		w.open('{')
		w.text("wall", name(p.Wall))
		w.list("outline", len(p.Outline), func(k int) { w.point(p.Outline[k]) })
		w.list("holes", len(p.Holes), func(k int) {
			w.open('[')
			for _, q := range p.Holes[k] {
				w.point(q)
			}
			w.close(']')
		})
		w.raw("area", p.Area.Decimal())
		w.close('}')
	})
	w.close('}')
}

// round takes s round in a closed run; its end stays its end where the run is cut there.
func (r *Run) round(s L) L {
	if r.Closed && (s < 0 || s >= r.Length) {
		return r.Line.Round(s)
	}
	return s
}

// writer writes JSON with one field a line at the depth of a person's reading.
type writer struct {
	out   bytes.Buffer
	depth int
	first bool // nothing stands before the next item
	keyed bool // a key does
}

func (w *writer) open(c byte) {
	w.item()
	w.out.WriteByte(c)
	w.depth++
	w.first = true
}

func (w *writer) close(c byte) {
	w.depth--
	w.out.WriteByte(c)
	w.first = false
}

// item parts one item from the one before it, unless a key stands right before.
func (w *writer) item() {
	if w.keyed {
		w.keyed, w.first = false, false
		return
	}
	own := w.depth > 0 && w.depth <= 4 // a line of its own
	if w.depth > 0 && !w.first {
		w.out.WriteByte(',')
		if !own {
			w.out.WriteByte(' ')
		}
	}
	if own {
		w.out.WriteByte('\n')
		w.out.WriteString(strings.Repeat("  ", w.depth))
	}
	w.first = false
}

func (w *writer) key(name string) {
	w.item()
	w.quote(name)
	w.out.WriteString(": ")
	w.keyed = true
}

func (w *writer) quote(s string) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic(err) // a string always encodes
	}
	w.out.Write(bytes.TrimRight(b.Bytes(), "\n"))
}

func (w *writer) text(name, s string) { w.key(name); w.item(); w.quote(s) }

func (w *writer) textOrNull(name, s string) {
	if s == "" {
		w.raw(name, "null")
		return
	}
	w.text(name, s)
}

func (w *writer) raw(name, s string)         { w.key(name); w.value(s) }
func (w *writer) length(name string, l L)    { w.raw(name, l.Decimal()) }
func (w *writer) whole(name string, n int)   { w.raw(name, strconv.Itoa(n)) }
func (w *writer) flag(name string, yes bool) { w.raw(name, strconv.FormatBool(yes)) }
func (w *writer) value(s string)             { w.item(); w.out.WriteString(s) }

func (w *writer) maybe(name string, l *L) {
	if l == nil {
		w.raw(name, "null")
		return
	}
	w.length(name, *l)
}

func (w *writer) list(name string, n int, each func(int)) {
	w.key(name)
	w.open('[')
	for i := 0; i < n; i++ {
		each(i)
	}
	w.close(']')
}

func (w *writer) point(p shape.Point) { w.value("[" + p.X.Decimal() + "," + p.Z.Decimal() + "]") }

func (w *writer) near(name string, n *Near) {
	if n == nil {
		w.raw(name, "null")
		return
	}
	w.key(name)
	w.open('{')
	w.text("name", n.Name)
	w.length("distance", n.Distance)
	w.close('}')
}

func (w *writer) amount(name string, a *Amount) {
	if a == nil {
		w.raw(name, "null")
		return
	}
	w.key(name)
	w.open('{')
	w.raw("amount", strconv.FormatFloat(a.Amount, 'f', -1, 64))
	w.text("unit", a.Unit)
	w.close('}')
}

func (w *writer) score(s *Span) {
	v := s.Score
	w.open('{')
	w.length("bends", L(v.Bends))
	w.length("edges", L(v.Edges))
	w.raw("closing", strconv.FormatInt(v.Closing, 10))
	w.raw("narrow_main", strconv.FormatInt(v.NarrowMain, 10))
	w.raw("narrow", strconv.FormatInt(v.Narrow, 10))
	w.raw("sheets", strconv.FormatInt(v.Sheets, 10))
	w.raw("jump", strconv.FormatInt(v.Jump, 10))
	w.length("should", L(v.Should))
	w.raw("seen", strconv.FormatInt(v.Seen, 10))
	w.length("difference", L(v.Difference))
	sum := new(big.Int).Lsh(new(big.Int).SetUint64(v.Unevenness.Hi), 64)
	sum.Add(sum, new(big.Int).SetUint64(v.Unevenness.Lo))
	w.raw("unevenness", squares(sum))
	w.close('}')
}

// squares prints a sum of squared lengths in square millimetres, rounded to six decimals.
func squares(sum *big.Int) string {
	n := new(big.Int).Mul(sum, big.NewInt(1_000_000))
	den := big.NewInt(int64(length.Millimetre) * int64(length.Millimetre))
	n.Lsh(n, 1).Add(n, den).Quo(n, new(big.Int).Lsh(den, 1))
	return length.Decimals(n.String(), 6)
}
