package crew

import (
	"math"
	"slices"

	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Walls unrolled on one page: a letter for each, from which place its figures run, the corners between them as lines along which
// the covering is folded.

// letter is the letter of a wall unrolled: the one that it has on the plan of the room.
func (d *wallBoard) letter() string { return folio.WallMarks(d.Plan)[d.w.Wall] }

// faceWords name a wall unrolled, where its figures begin and how long it is.
func (d *wallBoard) faceWords() string {
	corner := d.Words.Say("tape.left_end")
	if k, _, _ := d.w.Neighbour(false); k != nil {
		corner = d.CornerWord(k.Kind, k.Name)
	}
	key, short := "tape.face", "tape.face_letter"
	if !d.w.AtLevel() {
		key, short = "tape.face_floor", "tape.face_floor_letter"
	}
	name := d.w.W.Name
	say := func() string { return d.Words.Say(key, d.letter(), name, corner, d.at(d.w.End())) }
	if d.Taped == nil { // only counted
		return say()
	}
	if scene.Width(say(), folio.TapedSmall*d.Unit, true) > d.List.W()-3.2*d.Unit { // its letter alone, as on the plan of the room
		return d.Words.Say(short, d.letter(), corner, d.at(d.w.End()))
	}
	return say()
}

// where is a place of a wall; of one unrolled with its letter, since every wall has a datum of its own.
func (d *wallBoard) where(x L) string {
	if !d.unrolled() {
		return d.Along(d.w.Face, x)
	}
	return d.letter() + " " + d.Along(d.w.Face, x)
}

// unrolledWords are what has to be said of walls unrolled: once what holds for all, with its letter what has figures along one.
func (d *wallBoard) unrolledWords() []string {
	var lines []string
	add := func(f *wallBoard, own bool, words []string) {
		for _, line := range words {
			if own {
				line = f.letter() + ": " + line
			}
			if !slices.Contains(lines, line) {
				lines = append(lines, line)
			}
		}
	}
	d.each(func(f *wallBoard) { add(f, false, append(f.jointWords(), f.stockWords()...)) })
	d.each(func(f *wallBoard) { add(f, true, append(f.edgeWords(), f.sliverWords()...)) })
	lines = append(lines, d.Words.Say("tape.seam_left", d.Inches(d.half)))
	d.each(func(f *wallBoard) { add(f, false, f.narrowWords()) })
	d.each(func(f *wallBoard) {
		if f.levelHere() != d.levelHere() {
			add(f, true, []string{d.Words.Say("tape.level_here", d.Say(f.levelHere()))})
		}
		add(f, true, slices.Concat(f.secondWords(), f.slantWords(), f.witnessWords()))
	})
	d.each(func(f *wallBoard) { add(f, true, slices.Concat(f.boxPlaces(), f.lengthWords())) }) // what gives way first: the names of the walls have one of the two
	return lines
}

// foldNames names the corners between walls unrolled over them, each with a line down to its fold.
func (d *wallBoard) foldNames() {
	for i, f := range d.faces[1:] {
		k := d.corner(d.faces[i].w)
		name := d.CornerWord(k.Kind, k.Name)
		g := f.g.Part(scene.Tag{Class: "corner", Data: []scene.Datum{folio.Datum("name", name)}})
		x := f.v.X(f.p.From)
		f.foldName(g, scene.Pt(x, f.roof(x, x)-0.6*d.Unit), name)
	}
}

// foldName letters the name of a fold at the first place that is free and whose line crosses nothing: the lowest rows first.
func (d *wallBoard) foldName(g *scene.Group, target scene.Point, text string) {
	u, size := d.Unit, folio.TapedText*d.Unit
	w := scene.Width(text, size, false)
	lo, hi := d.space.Bounds.X0+0.5*u, d.space.Bounds.X1-0.5*u
	for row := range overRows {
		for _, lean := range leans {
			x0 := math.Max(math.Min(target.X-w/2+lean*w, hi-w), lo)
			y := d.row(math.Min(x0, target.X), math.Max(x0+w, target.X), row)
			box := scene.Box{X0: x0, Y0: y - size*1.1, X1: x0 + w, Y1: y + 0.9*u}
			from := scene.Pt(math.Max(math.Min(target.X, box.X1-0.5*u), box.X0+0.5*u), box.Y1+0.4*u)
			if d.space.Free(box, crewAir*u) && d.space.FreeLine(from, target, 0.3*u) {
				d.Word(g, scene.Pt(x0, y), text, size, false, scene.Start)
				d.line(g, from, target, scene.Pen(scene.Marks, 0.25))
				d.space.Take(box)
				return
			}
		}
	}
	d.aside(d.letter() + ": " + text)
}
