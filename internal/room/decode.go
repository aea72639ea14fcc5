package room

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// Decode reads a room file, fills in every default and checks all that needs no layout.
//
// Errors: a *source.Mistakes with everything that is to be mended, in the order of the file.
func Decode(name string, text []byte) (*Room, error) {
	return DecodeText(source.NewText(name, text))
}

// DecodeText is Decode of a text that was put together, as that of a room of a job is.
//
// Errors: as Decode.
func DecodeText(text *source.Text) (*Room, error) {
	root, err := source.ParseText(text)
	if err != nil {
		return nil, err
	}
	d := &decoder{root: root, room: &Room{src: root}}
	Schema.Unknown(root)
	d.project(root.Get("project").Section())
	d.veneer(root.Get("veneer").Section())
	d.rules(root.Get("rules").Section())
	d.sheets(root.Get("veneer").Section(), root.Get("rules").Section())
	d.space(root.Get("room").Section())
	d.walls(root.Get("wall"))
	d.places(root.Get("veneer").Section(), root.Get("rules").Section())
	d.closeAt(root.Get("room").Get("close_at"))
	d.onPlan(root.Get("room").Section())
	d.revisionPlaces(root.Get("project").Get("revision").Tables())
	d.flitches(root.Get("flitch").Tables())
	d.hung(root.Get("hung").Tables())
	d.readArrivals(root.Get("reading").Tables())
	d.site(root.Get("site").Section())
	d.day(root.Get("day").Section())
	d.room.Paste = d.coverage(root.Get("paste").Section())
	d.room.Primer = d.coverage(root.Get("primer").Section())
	d.states()
	d.page(root.Get("page").Section())
	if err := root.Mistakes().Err(); err != nil {
		return nil, err
	}
	d.room.offDatum()
	d.arrived()
	d.asks()
	if err := root.Mistakes().Err(); err != nil {
		return nil, err
	}
	return d.room, nil
}

// decoder fills a room from its file.
type decoder struct {
	root     source.Value
	room     *Room
	sound    []bool         // walls whose outline is sound
	arrivals []source.Value // where the readings stand

	fractions []source.Value // lengths with a fraction that no rule is marked with
}

// unit is the unit of bare numbers.
func (d *decoder) unit() length.Unit { return d.room.Project.Units }

// inches or mm, as the room is, of a default.
func (d *decoder) either(sixtyFourths, mm int64) L {
	if d.unit() == length.Millimetres {
		return L(mm) * length.Millimetre
	}
	return L(sixtyFourths) * length.Inch / 64
}

// fine is the room's style, refined where a ruler prints the lengths exactly: 1/64 in, 1/1000 mm.
func (d *decoder) fine(lengths ...L) length.Style {
	steps := []int64{16, 32, 64}
	if d.unit() == length.Millimetres {
		steps = []int64{2, 10, 100, 1000}
	}
	s := length.Style{Unit: d.unit()}
	for _, s.Denominator = range steps {
		exact := true
		for _, l := range lengths {
			exact = exact && s.Exact(l)
		}
		if exact {
			return s
		}
	}
	return length.StyleOf(d.unit())
}

// words prints a length for a message.
func (d *decoder) words(l L) string { return d.fine(l).Words(l) }

// both prints two lengths that differ so that their figures differ.
func (d *decoder) both(a, b L) (string, string) { return d.fine(a, b).Apart(a, b) }

// place tells where a value's key stands.
func (d *decoder) place(v source.Value) Place {
	line, column := v.Mistakes().Text.Place(v.KeySpan().Start)
	return Place{line, column}
}

// length reads a length, or gives the default and false.
func (d *decoder) length(v source.Value, other L) (L, bool) {
	switch v.Kind() {
	case source.Absent:
		return other, false
	case source.String:
		l, err := length.Parse(v.Text(""), d.unit())
		if err != nil {
			mend := d.example()
			// what was measured is a figure, however near
			if bare := strings.TrimLeft(v.Text(""), "~≈±ca. "); bare != v.Text("") {
				if _, err := length.Parse(bare, d.unit()); err == nil {
					mend = "write " + strconv.Quote(bare)
				}
			}
			v.Mistake(mend, "%s %q is no length: %s", label(v), v.Text(""), err)
			return other, false
		}
		if untaped(v.Text("")) {
			d.fractions = append(d.fractions, v)
		}
		return l, true
	case source.Integer, source.Float:
		if r, ok := v.Exact(); ok {
			if l, ok := length.FromRat(r, d.unit().Of()); ok {
				return l, true
			}
		}
		v.Mistake("the longest length that is read is 370 m", "%s %s is no length to build", label(v), v.Raw())
		return other, false
	}
	v.Mistake(d.example(), "%s takes a length, not %s", label(v), v.Kind())
	return other, false
}

// label is a key's name inside a message; an item of a list says so.
func label(v source.Value) string {
	if p := v.Path(); p != "" && p[len(p)-1] == ']' {
		return "an item of " + v.Name()
	}
	return v.Name()
}

func (d *decoder) example() string {
	if d.unit() == length.Millimetres {
		return `write millimetres as a number, or "3.81 m", or "12' 6 3/8"`
	}
	return `write "12' 6 3/8", "6 3/8" or "3810 mm", in double quotes, without the mark for inches at the end`
}

// required reads a length that has to be there.
func (d *decoder) required(v source.Value, of string) (L, bool) {
	if !v.Given() {
		missing(v, of)
		return 0, false
	}
	return d.length(v, 0)
}

// missing notes that a required key is not there.
func missing(v source.Value, of string) {
	doc := ""
	if k, ok := Schema.Key(v); ok {
		doc = fmt.Sprintf(": %s (%s)", k.Doc, k.Kind)
	}
	v.Mistake("add "+v.Name()+doc, "%s has no %s", of, v.Name())
}

// positive reads a length over 0; with zero allowed, not under 0.
func (d *decoder) positive(v source.Value, other L, zero bool) (L, bool) {
	l, ok := d.length(v, other)
	if !ok {
		return l, false
	}
	switch {
	case l < 0 && zero:
		v.Mistake("give a length of 0 or more", "%s is less than 0", label(v))
	case l < 0:
		v.Mistake("give a length over 0", "%s is less than 0", label(v))
	case l == 0 && !zero:
		v.Mistake("give a length over 0", "%s is 0", label(v))
	default:
		return l, true
	}
	return other, false
}

func (d *decoder) project(v source.Value) {
	p := &d.room.Project
	if v.Get("units").Word("in", unitWords...) == "mm" {
		p.Units = length.Millimetres
	}
	if title := v.Get("title"); !title.Given() {
		missing(title, "the project")
	} else if p.Title = title.Text(""); p.Title == "" && title.Kind() == source.String {
		title.Mistake("say what the drawings are of", "the title is empty")
	}
	p.Number, p.Room, p.Place = v.Get("number").Text(""), v.Get("room").Text(""), v.Get("place").Text("")
	p.For, p.By = v.Get("for").Text(""), v.Get("by").Text("")
	p.Section, p.Tag = v.Get("section").Text(""), v.Get("tag").Text("")
	p.Drawn, p.Measured = v.Get("drawn").Day(), v.Get("measured").Day()
	p.Issued = v.Get("issued").Day()
	marks := map[string]bool{}
	for i, r := range v.Get("revision").Tables() {
		rev := Revision{Mark: r.Get("mark").Text(letter(i)), Date: r.Get("date").Day(), Note: r.Get("note").Text(""), Wall: -1}
		if marks[rev.Mark] {
			r.Get("mark").Mistake("give every revision a mark of its own", "revision %q stands twice", rev.Mark)
		}
		marks[rev.Mark] = true
		if p.Issued != "" && rev.Date != "" && rev.Date < p.Issued {
			r.Get("date").Mistake("the first issue is the oldest: mend issued in [project], or this date", "revision %s of %s is older than the first issue, %s", rev.Mark, rev.Date, p.Issued)
		}
		p.Revisions = append(p.Revisions, rev)
	}
}

// SheetNumber finds the places of a sheet's number in the name of its photograph: %d, %3d, %03d, or a row of # that gives its
// least number of figures.
var SheetNumber = regexp.MustCompile(`%(0?)(\d*)d|#+`)

func (d *decoder) veneer(v source.Value) {
	n := &d.room.Veneer
	n.Species = v.Get("species").Text("")
	n.Cut = v.Get("cut").Word("", cutWords...)
	n.Match = v.Get("match").Word("", matchWords...)
	n.Horizontal = v.Get("grain").Word("vertical", grainWords...) == "horizontal"
	n.Face = v.Get("face").Text("")
	if n.Face != "" && !SheetNumber.MatchString(n.Face) {
		v.Get("face").Mistake(`write %d or # where the number goes, as in "photo-%d.jpg"`, "face %q has no place for the number of a sheet", n.Face)
	}
	n.LeafWidth, _ = d.positive(v.Get("leaf_width"), 0, false)
	n.Thickness, _ = d.positive(v.Get("thickness"), 0, false)
	for _, k := range []struct {
		name string
		at   *L
	}{{"gross_width", &n.GrossWidth}, {"overlap", &n.Overlap}, {"length", &n.Length}} {
		f := v.Get(k.name)
		if !f.Given() {
			missing(f, "the veneer")
			continue
		}
		*k.at, _ = d.positive(f, 0, k.name == "overlap")
	}
}

func (d *decoder) rules(v source.Value) {
	r := &d.room.Rules
	for _, rule := range distances {
		*rule.Of(r), _ = d.positive(v.Get(rule.Key), d.either(rule.inch, rule.mm), !rule.over0)
	}
	r.Aim = v.Get("aim").Word("steady", aimWords...)
	r.Upper = v.Get("upper").Word("auto", upperWords...)
	if j := v.Get("joint_height"); j.Given() && !(j.Kind() == source.String && j.Text("") == "auto") {
		if l, ok := d.positive(j, 0, false); ok {
			r.JointHeight = &l
		}
	}
	r.SpareShare, r.SpareShareParts = 0.10, 100_000
	share := v.Get("spare_share")
	if !share.Given() {
		return
	}
	r.SpareShare = share.Number(0.10)
	if r.SpareShare < 0 || r.SpareShare > 1 {
		share.Mistake("write 0.10 for one sheet in ten", "spare_share %s is no share between 0 and 1", share.Raw())
		return
	}
	if exact, ok := share.Exact(); ok {
		r.SpareShareParts = millionths(exact)
	}
}

// millionths rounds a share up to whole millionths.
func millionths(r *big.Rat) int64 {
	n := new(big.Int).Mul(r.Num(), big.NewInt(1_000_000))
	q, m := new(big.Int).DivMod(n, r.Denom(), new(big.Int))
	if m.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	return q.Int64()
}

func (d *decoder) space(v source.Value) {
	s := &d.room.Space
	closed := v.Get("closed")
	s.Closed = closed.Bool(closed.Given()) // what is neither true nor false was meant to say something
	s.Base, _ = d.positive(v.Get("base"), 0, true)
	s.Crown, _ = d.positive(v.Get("crown"), 0, true)
	s.Casing = d.casing(v.Get("casing"), nil)
	s.Behind = behind(v.Get("behind").Word("none", behindWords...))
	s.LevelLine, _ = d.length(v.Get("level_line"), d.either(48*64, 1200))
	s.Choose = 1
	if choose := v.Get("choose"); choose.Given() {
		s.ChooseAt = d.place(choose)
		if s.Choose = int(choose.Whole(1)); s.Choose < 1 {
			choose.Mistake("give 1 for the best layout, or a number of those that flitchlay compare lists", "choose = %s is no number of a layout", choose.Raw())
		}
	}
}

func behind(word string) Behind {
	return Behind{Base: word == "base" || word == "both", Crown: word == "crown" || word == "both"}
}

func (d *decoder) page(v source.Value) {
	d.room.Page = Page{Submittal: v.Get("submittal").Text(""), Install: v.Get("install").Text(""), Logo: v.Get("logo").Text(""), Language: v.Get("language").Text("")}
}

// Mistake makes an error of something that only a later stage can see, at a place in the room file.
func (r *Room) Mistake(at Place, message, mend string) error {
	if r.src == (source.Value{}) || at == (Place{}) {
		return fmt.Errorf("%s: %s", message, mend)
	}
	text := r.src.Mistakes().Text
	found := &source.Mistakes{Text: text}
	found.Add(r.src.At(text.Offset(at.Line, at.Column)), mend, "%s", message)
	return found
}
