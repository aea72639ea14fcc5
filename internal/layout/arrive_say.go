package layout

import (
	"strings"

	"flitchlay/internal/finding"
)

// sayArrival says the word for a wall, with its figures.
func (b *builder) sayArrival(a *Arrival) {
	read := " as read"
	if !a.Read {
		read = ", by the readings of other walls"
	}
	slots := finding.Slots{"wall": b.room.Walls[a.Wall].Name, "read": read}
	f := finding.Finding{Place: b.wallPlace(a.Wall), Wall: a.Wall}
	code := [...]finding.Code{finding.HangIt, finding.Restrike, finding.PlanAgain}[a.Word]
	slots["why"] = [...]func(*Arrival) string{b.hangWords, b.strikeWords, b.againWords}[a.Word](a)
	b.say(code, f, slots)
}

// hangWords say what the trims take up.
func (b *builder) hangWords(a *Arrival) string {
	rules, sides := b.room.Rules, [2]string{"at the head", "at the foot"}
	trims := [2]string{" of " + b.style.Words(rules.TopTrim), " of " + b.style.Words(rules.BottomTrim)}
	if b.room.Veneer.Horizontal {
		sides, trims = [2]string{"at the right", "at the left"}, [2]string{}
	}
	var parts []string
	take := func(by L, where, of string) {
		if b.style.Round(by) > 0 {
			parts = append(parts, b.style.Words(by)+of+" "+where)
		}
	}
	take(a.Higher, sides[0], trims[0])
	take(a.Lower, sides[1], trims[1])
	take(a.Out, "at a raw end", "")
	if len(parts) == 0 {
		return ""
	}
	return "; the trims give " + strings.Join(parts, ", ")
}

// strikeWords say which lines are struck by how much elsewhere, and how far off lies what is cut and folded.
func (b *builder) strikeWords(a *Arrival) string {
	var parts []string
	for i := 0; i < len(a.Lines); {
		x := &a.Lines[i]
		names, by := []string{x.Sheet}, x.By(b.style.Round)
		for i++; i < len(a.Lines) && !x.Askew && !a.Lines[i].Askew && a.Lines[i].By(b.style.Round) == by; i++ {
			names = append(names, a.Lines[i].Sheet)
		}
		switch {
		case x.Askew:
			parts = append(parts, "the right edge of sheet "+x.Sheet+" goes "+Leaning(b.style.Words, x.Now)+" from foot to head, not "+Leaning(b.style.Words, x.Planned))
		case len(names) == 1:
			parts = append(parts, "the line of sheet "+x.Sheet+" lies "+further(b.style.Words, by)+", at "+b.style.Words(x.Now))
		default:
			parts = append(parts, "the lines of sheets "+strings.Join(names, ", ")+" lie "+further(b.style.Words, by))
		}
	}
	if a.Cut != 0 {
		parts = append(parts, "what is cut out and folded for it lies "+further(b.style.Words, a.Cut)+" on the sheets")
	}
	return strings.Join(parts, "; ")
}

// By is how much further right the line is struck than planned, as printed; negative: left.
func (x *Struck) By(round func(L) L) L { return round(x.Now) - round(x.Planned) }

// Leaning says how far an edge goes to a side.
func Leaning(say func(L) string, l L) string {
	switch {
	case l < 0:
		return say(-l) + " to the left"
	case l > 0:
		return say(l) + " to the right"
	}
	return "plumb"
}

// further says how much further to a side something lies.
func further(say func(L) string, l L) string {
	if l < 0 {
		return say(-l) + " further left"
	}
	return say(l) + " further right"
}

// againWords say which sheets do not reach, and which musts are broken.
func (b *builder) againWords(a *Arrival) string {
	var parts []string
	for i := 0; i < len(a.Lacks); {
		x := a.Lacks[i]
		names := []string{x.Sheet}
		for i++; i < len(a.Lacks) && a.Lacks[i].Side == x.Side && b.style.Round(a.Lacks[i].By) == b.style.Round(x.By); i++ {
			names = append(names, a.Lacks[i].Sheet)
		}
		parts = append(parts, x.words(b.style.Words, names))
	}
	for _, f := range a.Broken {
		parts = append(parts, f.Message)
	}
	return strings.Join(parts, "; ")
}

// words say where some sheets do not reach, and how far.
func (x *Lack) words(say func(L) string, names []string) string {
	sheet, are, their := "sheet ", "is", "its"
	if len(names) > 1 {
		sheet, are, their = "sheets ", "are", "their"
	}
	sheet += strings.Join(names, ", ")
	switch x.Side {
	case Gap:
		return "the gap that " + sheet + " closes takes " + say(x.By) + " more than a sheet covers"
	case More:
		return "at the place of " + sheet + " a sheet more is needed"
	case Gone:
		return sheet + " would cover nothing"
	}
	return sheet + " as cut " + are + " " + say(x.By) + " short at " + their + " " + x.Side
}
