package crew

import (
	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Heights in the field where hold points are signed, in mm on letter paper.
const (
	signMost   = 2   // hold points that all have lines of their own
	signFirst  = 5.1 // down to the first of several
	signPitch  = 5.9 // from one of these to the next
	lookUnder  = 5.2 // from what that is to what is done
	signUnder  = 3.9 // from a line to what it is for
	limitPitch = 4.2 // from one small line of limits to the next
)

// signShare is what a name and a signature have of a line, the rest is for date and time.
const signShare = 0.58

// holdField is where the crew signs that a look was had, each hold point on lines of its own. Without one on the page nobody is
// called and nothing is signed; the readings are taken all the same.
func (b *board) holdField(g *scene.Group, box scene.Box, d *wallBoard) {
	u, size, small := b.Unit, folio.TapedText*b.Unit, folio.TapedSmall*b.Unit
	x, right := box.X0+3*u, box.X1-3*u
	far, unit := b.Words.Say("unit.far"), b.Words.Say("unit.fahrenheit")
	if b.Metric() {
		far, unit = b.Words.Say("unit.far_metric"), b.Words.Say("unit.celsius")
	}
	limits := scene.Wrap(b.LimitLine(), small, false, right-x)
	y := box.Y1 - (2.1+limitPitch*float64(len(limits)))*u
	b.Blanks(g, x, right, y, []string{b.Words.Say("blank.air"), b.Words.Say("blank.humidity", unit), b.Words.Say("blank.wall"), b.Words.Say("blank.board", unit)})
	for i, line := range limits {
		b.Word(g, scene.Pt(x, y+(0.2+limitPitch*float64(i+1))*u), line, small, false, scene.Start)
	}
	switch list := d.tasks(); len(list) {
	case 0:
		b.Word(g, scene.Pt(x, box.Y0+6*u), b.Words.Say("foot.no_hold"), size, true, scene.Start)
	case 1:
		b.Word(g, scene.Pt(x, box.Y0+5.6*u), b.HoldWords(list[0]), size, true, scene.Start)
		b.Word(g, scene.Pt(x, box.Y0+11*u), b.Words.Say("foot.look", far), size, false, scene.Start)
		in := g.Part(scene.Tag{Class: "sign", Data: []scene.Datum{folio.Datum("hold", itoa(list[0].HoldNo))}})
		b.signLines(in, x, right, y-(5.2+signUnder)*u)
		b.signWords(in, x, right, y-(5.2+signUnder)*u)
	default:
		b.signEach(g, scene.Box{X0: x, Y0: box.Y0, X1: right, Y1: y - 5.2*u}, list, b.Words.Say("foot.look", far))
	}
}

// signEach gives two hold points their names and lines beside them, and says under these what is done. Of more than two the first has
// lines, and the others are signed with the hanging days alone, where all of them are. Names of many courses would leave no room to
// write: their numbers do then.
func (b *board) signEach(g *scene.Group, box scene.Box, list []*days.Task, look string) {
	u, size, small := b.Unit, folio.TapedText*b.Unit, folio.TapedSmall*b.Unit
	shown := list
	if len(list) > signMost {
		shown = list[:1]
	}
	lines := max((scene.Width(b.Words.Say("sign.name"), small, false)+2*u)/signShare, scene.Width(b.Words.Say("sign.date"), small, false)/(1-signShare)) + 2*u
	wide, named := 0.0, size
	var names []string
	for _, t := range shown {
		name := b.HoldWords(t)
		named = min(named, draft.Squeeze(name, size, small, true, box.W()-lines))
		if scene.Width(name, named, true) > box.W()-lines+1e-6 {
			name = b.Words.Say("wall.hold", t.HoldNo)
		}
		names = append(names, name)
	}
	for _, name := range names {
		wide = max(wide, scene.Width(name, named, true))
	}
	y := box.Y0 + (signFirst-signPitch)*u
	for i, name := range names {
		y += signPitch * u
		in := g.Part(scene.Tag{Class: "sign", Data: []scene.Datum{folio.Datum("hold", itoa(shown[i].HoldNo))}})
		b.Word(in, scene.Pt(box.X0, y), name, named, true, scene.Start)
		b.signLines(in, box.X0+wide+2*u, box.X1, y)
	}
	b.signWords(g, box.X0+wide+2*u, box.X1, y)
	y += signUnder * u
	if rest := list[len(shown):]; len(rest) > 0 {
		y += lookUnder * u
		b.Word(g, scene.Pt(box.X0, y), b.Words.Say("foot.holds_on", rest[0].HoldNo, rest[len(rest)-1].HoldNo, b.HoldsPage(rest)), size, true, scene.Start)
	}
	b.Word(g, scene.Pt(box.X0, y+lookUnder*u), look, size, false, scene.Start)
}

// signLines draws a line for a name and a signature and one for date and time.
func (b *board) signLines(g *scene.Group, x, right, y float64) {
	mid, pen := x+(right-x)*signShare, scene.Pen(scene.Frame, 0.25)
	g.HLine(x, mid-2*b.Unit, y, pen)
	g.HLine(mid, right, y, pen)
}

// signWords say under the last of such lines what they are for.
func (b *board) signWords(g *scene.Group, x, right, y float64) {
	y, small := y+signUnder*b.Unit, folio.TapedSmall*b.Unit
	b.Word(g, scene.Pt(x, y), b.Words.Say("sign.name"), small, false, scene.Start)
	b.Word(g, scene.Pt(x+(right-x)*signShare, y), b.Words.Say("sign.date"), small, false, scene.Start)
}
