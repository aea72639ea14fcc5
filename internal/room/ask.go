package room

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// asker puts together what a careful colleague would ask of a file without a mistake.
type asker struct {
	*decoder
	answers map[string]bool // what [room] answered holds, and whether it has answered something
	uncased []source.Value  // openings of whose casing nothing is said
	cased   []string        // their names
}

// asks notes every figure and lack that may be meant, but that the file does not say is.
//
// Errors: an entry of answered that is none is a mistake.
func (d *decoder) asks() {
	a := &asker{decoder: d, answers: map[string]bool{}}
	a.readAnswers()
	a.ofRoom()
	a.ofVeneer()
	for i, v := range d.root.Get("wall").Tables() {
		a.ofWall(v, i)
		a.ofEnds(v, i)
		for k, o := range v.Get("opening").Tables() {
			a.ofOpening(o, &d.room.Walls[i], k)
		}
		for k, b := range v.Get("box").Tables() {
			a.ofBox(b, &d.room.Walls[i], k)
		}
		a.ofPins(v, i)
	}
	a.ofFractions()
	a.ofLeans()
	a.ofCasings()
	a.idle()
	slices.SortStableFunc(d.room.Asks, func(x, y finding.Finding) int { return cmp.Compare(x.Line, y.Line) })
}

// ask notes one question: at tells the line of the file, name what it is asked of, "" for the room, mend the key that answers it.
func (a *asker) ask(code finding.Code, at source.Value, name, mend string, f finding.Finding, slots finding.Slots) {
	f.Answer = string(code)
	if name != "" {
		f.Answer += " " + name
	}
	if _, answered := a.answers[f.Answer]; answered {
		a.answers[f.Answer] = true
		return
	}
	if at.Span() != (source.Span{}) { // else what lacks has no place to stand
		text := at.Mistakes().Text
		home, span := text.Home(at.Span())
		if f.Line, _ = home.Place(span.Start); home.Name != text.Name {
			f.File = home.Name
		}
	}
	f.Mend = mend
	a.room.Asks = append(a.room.Asks, finding.Make(length.StyleOf(a.unit()), code, f, slots))
}

// readAnswers reads [room] answered: texts that begin with a code that asks.
func (a *asker) readAnswers() {
	v := a.root.Get("room").Get("answered")
	if !v.Given() {
		return
	}
	const form = `write what check prints, as in answered = ["wall-odd North"]`
	if v.Kind() != source.Array {
		v.Mistake(form, "answered takes a list of texts, not %s", v.Kind())
		return
	}
	var codes []string
	for _, c := range finding.OfFile() {
		codes = append(codes, string(c))
	}
	for _, item := range v.Items() {
		text := item.Text("")
		code, _, _ := strings.Cut(text, " ")
		if _, twice := a.answers[text]; twice {
			item.Mistake("keep one of the two", "answered holds %q twice", text)
		}
		if item.Kind() == source.String && !slices.Contains(codes, code) {
			mend := form
			if near := source.Nearest(code, codes); near != "" {
				mend = "the nearest is " + near
			}
			item.Mistake(mend, "nothing is asked by the word %q", code)
		}
		a.answers[text] = false
	}
}

// idle asks of the entries of answered that answered nothing: what they were for is mended, or they hide what comes up under
// their name.
func (a *asker) idle() {
	var open []string
	for _, f := range a.room.Asks {
		open = append(open, f.Answer)
	}
	for _, item := range a.root.Get("room").Get("answered").Items() {
		text := item.Text("")
		if a.answers[text] {
			continue
		}
		near := ""
		if n := source.Nearest(text, open); n != "" {
			near = ": is " + quote(n) + " meant?"
		}
		a.ask(finding.AnswersNothing, item, text, "take it out", finding.Finding{Place: "room", Wall: -1}, finding.Slots{"entry": quote(text), "near": near})
	}
}
