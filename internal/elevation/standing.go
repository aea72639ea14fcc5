package elevation

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// What the wall is like before it is covered: which way its ends lean, what of it is hidden, and what hangs on it already. All of it
// is labelled with its figure.

// leans letters at each end of the wall that is not plumb how far and which way it leans, from the floor to its head.
func (e *View) leans() {
	for _, end := range []struct {
		word  string
		lean  L
		shown bool
		right bool
	}{{"left", e.F.W.LeanLeft, e.First(), false}, {"right", e.F.W.LeanRight, e.Last(), true}} {
		key := "lean " + end.word
		if end.lean == 0 || !end.shown || e.elsewhere(key) {
			continue
		}
		x, way := e.F.Left, "right"
		if end.right {
			x = e.F.Right
		}
		if end.lean < 0 {
			way = "left"
		}
		t := scene.Text{String: "leans " + e.Style.Format(end.lean.Abs()) + " " + way + " at the head", Height: e.Look.Small, Angle: 90, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.4}
		y0, y1 := e.V.Y(room.At(e.F.W.Ceiling, x)), e.V.Y(room.At(e.F.W.Floor, x))
		tag := scene.Tag{Class: "lean", Data: []scene.Datum{item(key), folio.Datum("by", folio.Mm(end.lean))}}
		k, slant := e.Look, math.Abs(e.V.MM(end.lean)) // clear of the end as it leans, outside before inside
		out, in := -k.Of(1.8)-slant, k.Of(1.8)+slant+t.Height
		if end.right {
			out, in = in, out
		}
		if !e.tryAlong(&t, e.V.X(x), y0, y1, tag, out, in, out*1.6, in*1.6) {
			e.dropAt(key, e.midAt(x), "%s end leans %s to the %s from the floor to its head", end.word, e.Style.Format(end.lean.Abs()), way)
		}
	}
}

// levelWordShares are the places of a word along a level line or in a band, as shares of the view's length.
var levelWordShares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88}

// hidden letters on the line under which furniture hides the covering how high that is over the level of the room: over the line or
// under it, else half of the words over it and half under it, where the sheets are narrow.
func (e *View) hidden() {
	z := e.F.W.HiddenBelow
	if z <= max(e.F.Low, 0) || z >= e.F.High || e.elsewhere("hidden") {
		return
	}
	k, figure := e.Look, "below "+e.Style.Format(z)
	over, under := -k.Of(2), k.Of(2)+k.Small
	var places []float64 // in the middle of a sheet, else anywhere
	for _, p := range e.F.Parts {
		if x0, x1, shown := e.onPage(p); shown {
			places = append(places, (x0+x1)/2)
		}
	}
	for _, share := range levelWordShares {
		places = append(places, e.V.X(e.From)+(e.V.X(e.To)-e.V.X(e.From))*share)
	}
	for _, lines := range []map[float64]string{{over: "hidden " + figure}, {under: "hidden " + figure}, {over: "hidden", under: figure}} {
		for _, x := range places {
			var texts []scene.Text
			free := true
			for dy, line := range lines {
				t := scene.Text{String: line, Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.4}
				t.At = scene.Pt(x, e.V.Y(z)+dy)
				box := t.Bounds()
				free = free && box.X0 > e.V.X(e.From) && box.X1 < e.V.X(e.To) && e.Space.Free(box, t.Field+k.Of(0.8))
				texts = append(texts, t)
			}
			if !free {
				continue
			}
			slices.SortFunc(texts, func(a, b scene.Text) int { return cmp.Compare(a.At.Y, b.At.Y) })
			in := e.Group.Part(scene.Tag{Class: "hidden", Data: []scene.Datum{item("hidden"), folio.Datum("z", folio.Mm(z))}})
			for _, t := range texts {
				in.Text(t)
				e.Space.Take(t.Bounds().Inset(-t.Field))
			}
			return
		}
	}
	t := scene.Text{String: "hidden " + figure, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes}
	for _, x := range places {
		if e.outside(t, scene.BoxRound(scene.Pt(x, e.V.Y(z)), 0.1, 0.1), "hidden") {
			return
		}
	}
	e.dropAt("hidden", []scene.Point{scene.Pt(places[0], e.V.Y(z)), scene.Pt(e.V.X(e.From), e.V.Y(z)), scene.Pt(e.V.X(e.To), e.V.Y(z))}, "the covering is hidden below %s", e.Style.Format(z))
}

// trimNames letters base and crown in their bands, where those are high enough and there is room.
func (e *View) trimNames() {
	k, w := e.Look, e.F.W
	name := func(word string, list []room.Point, from, to L) {
		t := scene.Text{String: word, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes}
		air := k.Of(0.45)
		if bottom, top := e.F.Cover((e.From + e.To) / 2); bottom < room.At(w.Floor, (e.From+e.To)/2)+w.Base || top > room.At(w.Ceiling, (e.From+e.To)/2)-w.Crown {
			t.Field, air = 0.3, k.Of(0.85) // the covering goes on behind it
		}
		if e.V.MM(to-from) < 1.3*k.Small+k.Of(1) {
			return
		}
		for _, share := range levelWordShares {
			x := e.From + L(share*float64(e.To-e.From))
			t.At = e.V.Pt(x, room.At(list, x)+(from+to)/2)
			if box := t.Bounds(); box.X0 > e.V.X(e.From)+k.Of(1) && box.X1 < e.V.X(e.To)-k.Of(1) && e.insideCover(t.At) && !e.onJamb(box.Inset(-k.Of(1.2))) && e.Space.Free(box, t.Field+air) {
				e.Group.Part(scene.Tag{Class: "trim"}).Text(t)
				e.Space.Take(box.Inset(-t.Field))
				return
			}
		}
	}
	name("base", w.Floor, 0, w.Base)
	name("crown", w.Ceiling, -w.Crown, 0)
}

// onJamb reports whether a side of an opening runs through a box.
func (e *View) onJamb(box scene.Box) bool {
	return slices.ContainsFunc(e.F.W.Openings, func(o room.Opening) bool {
		upper, lower := e.V.Y(o.Head), e.V.Y(o.Sill)
		through := func(x L) bool { at := e.V.X(x); return at > box.X0 && at < box.X1 }
		return upper < box.Y1 && lower > box.Y0 && (through(o.FromLeft) || through(o.Right()))
	})
}

// hanging is the stretch of a view on which sheets hang already, and the first and the last of them.
func (e *View) hanging() (from, to L, first, last int) {
	from, to = e.To, e.From
	for _, p := range e.F.Parts {
		if s := p.Sheet(); s.Hung && p.From < e.To && p.To > e.From {
			if from = min(from, max(p.From, e.From)); first == 0 {
				first = s.Number
			}
			to, last = max(to, min(p.To, e.To)), s.Number
		}
	}
	return from, to, first, last
}

// hung marks the stretch of sheets that hang already: a line between two bars. The notes say where the last seam was read.
func (e *View) hung() {
	from, to, _, _ := e.hanging()
	if from >= to || e.elsewhere("hung") {
		return
	}
	in := e.Group.Part(scene.Tag{Class: "hung", Title: e.hungNote(), Data: []scene.Datum{item("hung"), folio.Datum("from", folio.Mm(from)), folio.Datum("to", folio.Mm(to))}})
	bottom, top := e.F.Cover((from + to) / 2)
	at := func(share float64) float64 { return e.V.Y(bottom) + (e.V.Y(top)-e.V.Y(bottom))*share }
	for _, words := range []string{"hung already", "hung"} {
		if e.keepAlong(in, words, "", e.V.X(from), e.V.X(to), at) {
			return
		}
	}
	in.Data = in.Data[1:]
	e.dropAt("hung", e.midAt((from+to)/2), "hung already: %s to %s", e.Style.Format(from), e.Style.Format(to))
}

// hungNote says which sheets hang already, and where the last seam of them was read; nothing where none do.
func (e *View) hungNote() string {
	from, to, first, last := e.hanging()
	if from >= to {
		return ""
	}
	words := "Hung already on " + e.F.W.Name + ": sheet " + Span(first, last)
	if first != last {
		words = "Hung already on " + e.F.W.Name + ": sheets " + Span(first, last)
	}
	for i := range e.Room.Hung {
		if h := &e.Room.Hung[i]; h.Wall == e.F.Wall && h.Sheet == last {
			words += ", seam at " + e.Style.Format(h.Seam)
			if h.Top != h.Seam {
				words += " at the floor, " + e.Style.Format(h.Top) + " at the head"
			}
		}
	}
	return words + "."
}

// floorTier gives where the floor turns, along the wall; how high it is there the marks under it say.
func (e *View) floorTier() draft.Tier {
	var list []L
	for _, p := range e.F.W.Floor {
		if p.X > e.From && p.X < e.To {
			list = append(list, p.X)
		}
	}
	if len(list) == 0 {
		return draft.Tier{}
	}
	return e.chain("FLOOR", list...)
}
