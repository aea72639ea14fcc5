package page

import (
	"fmt"

	"flitchlay/internal/face"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// Row is a thing that is told, and what it is.
type Row [2]string

// Wall is a wall with what is pointed at on it.
type Wall struct {
	Name     string       `json:"name"`
	Mark     string       `json:"mark"`
	Covered  bool         `json:"covered"`
	Line     int          `json:"line"`
	Up       bool         `json:"up"` // the grain runs level
	Outline  [][2]float64 `json:"outline"`
	Openings []Hole       `json:"openings"`
	Boxes    []Hole       `json:"boxes"`
	Seams    []Seam       `json:"seams"`
	Sheets   []Sheet      `json:"sheets"`
	Pins     []Pin        `json:"pins"`
	Kept     []Stretch    `json:"kept"`
	Musts    []float64    `json:"musts"` // where a rule is broken that must be met
	Level    float64      `json:"level"`
	Starts   []float64    `json:"starts"` // where hanging starts on this wall, in runs with ends
}

// Hole is an opening, or a box.
type Hole struct {
	Name string  `json:"name"`
	X0   float64 `json:"x0"`
	Z0   float64 `json:"z0"`
	X1   float64 `json:"x1"`
	Z1   float64 `json:"z1"`
}

// Seam is a seam where it stands on a wall.
type Seam struct {
	ID      string       `json:"id"`
	Name    string       `json:"name"`
	X       float64      `json:"x"`
	Shown   [][2]float64 `json:"shown"`
	Closing bool         `json:"closing"`
	Hung    bool         `json:"hung"`
	Pin     int          `json:"pin"` // index on its wall, -1 for none
	Must    bool         `json:"must"`
	Rows    []Row        `json:"rows"`
}

// Sheet is a sheet where it hangs on a wall.
type Sheet struct {
	ID      string         `json:"id"`
	Name    string         `json:"name"`
	Number  string         `json:"number"`
	Narrow  bool           `json:"narrow"`
	Hung    bool           `json:"hung"`
	Outline [][][2]float64 `json:"outline"`
	Rows    []Row          `json:"rows"`
	Card    string         `json:"card"`
}

// Pin is a pin of a wall.
type Pin struct {
	X     float64 `json:"x"`
	Put   string  `json:"put"`
	Line  int     `json:"line"`
	Words string  `json:"words"`
}

// Stretch is a stretch without seams.
type Stretch struct {
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Line  int     `json:"line"`
	Words string  `json:"words"`
}

// teller tells of a plan.
type teller struct {
	plan  *layout.Plan
	marks map[int]string
	faces map[int]*face.Face
	must  map[string]bool // seams that a must speaks of, by their names
	plays map[string]map[int]layout.Play
	long  bool
	brief bool // of a wall that is not in view: without what is told on pointing
}

// Facts are the walls of a room with what is on them. What takes long, how far each line may be off, is told where long.
func (d *Drawer) Facts(long bool) []Wall { return d.facts(long, func(int) bool { return true }) }

// Glance are the walls as they are seen for a moment: what is told on pointing is there of one alone.
func (d *Drawer) Glance(wall int) []Wall {
	return d.facts(false, func(i int) bool { return i == wall })
}

func (d *Drawer) facts(long bool, told func(wall int) bool) []Wall {
	t := &teller{plan: d.set.Plan, marks: d.set.Marks, faces: map[int]*face.Face{}, must: d.musts(), plays: map[string]map[int]layout.Play{}, long: long}
	for _, f := range d.set.Faces {
		t.faces[f.Wall] = f
	}
	var list []Wall
	for i := range t.plan.Room.Walls {
		t.brief = !told(i)
		list = append(list, t.wall(i))
	}
	return list
}

func (t *teller) wall(i int) Wall {
	r := t.plan.Room
	w := &r.Walls[i]
	out := Wall{Name: w.Name, Mark: t.marks[i], Line: w.At.Line, Level: r.Space.LevelLine.MM(),
		Outline: [][2]float64{}, Openings: []Hole{}, Boxes: []Hole{}, Seams: []Seam{}, Sheets: []Sheet{}, Pins: []Pin{}, Kept: []Stretch{}, Musts: []float64{}, Starts: []float64{}}
	for _, x := range t.plan.Findings {
		if x.Level == finding.Must && x.Wall == i {
			out.Musts = append(out.Musts, x.At.MM())
		}
	}
	say := t.plan.Style.Measured
	for _, p := range w.Pins {
		key := map[string]string{"seam": "mark_pin_seam", "middle": "mark_pin_mid", "either": "mark_pin_any"}[p.Put]
		out.Pins = append(out.Pins, Pin{p.X.MM(), p.Put, p.Where.Line, Word(key, say(p.X))})
	}
	for _, k := range w.KeepClear {
		words := Word("mark_keep", say(k.From), say(k.To))
		if k.Why != "" {
			words = Word("mark_keep_why", say(k.From), say(k.To), k.Why)
		}
		out.Kept = append(out.Kept, Stretch{k.From.MM(), k.To.MM(), k.Where.Line, words})
	}
	f := t.faces[i]
	if f == nil {
		return out
	}
	out.Covered, out.Up = true, f.Run.Up
	for _, p := range f.Outline(w.Floor, w.Ceiling, f.Left, f.Right) {
		out.Outline = append(out.Outline, [2]float64{p.X.MM(), p.Z.MM()})
	}
	for k := range w.Openings {
		x0, z0, x1, z1 := f.Hole(&w.Openings[k])
		out.Openings = append(out.Openings, Hole{w.Openings[k].Kind.Named(w.Openings[k].Name), x0.MM(), z0.MM(), x1.MM(), z1.MM()})
	}
	for k := range w.Boxes {
		b := &w.Boxes[k]
		out.Boxes = append(out.Boxes, Hole{b.Kind.Named(b.Name), (b.X - b.PlateWidth/2).MM(), (b.Z - b.PlateHigh/2).MM(), (b.X + b.PlateWidth/2).MM(), (b.Z + b.PlateHigh/2).MM()})
	}
	for _, s := range f.Seams {
		if !f.Run.Up {
			out.Seams = append(out.Seams, t.seam(f, s))
		}
	}
	for _, h := range f.Hangs {
		if h.Begins && !h.Opens && !h.Before && !f.Run.Up {
			out.Starts = append(out.Starts, h.From.MM())
		}
	}
	for _, p := range f.Parts {
		if t.brief {
			break
		}
		for _, s := range p.Sheets {
			out.Sheets = append(out.Sheets, t.sheet(f, s))
		}
	}
	return out
}

func (t *teller) seam(f *face.Face, s *layout.Seam) Seam {
	p := t.plan
	out := Seam{ID: fmt.Sprintf("%s-%d", f.Run.Name, s.LeftSheet), Name: Word("seam", p.SeamName(f.Run, s)), X: s.X.MM(), Closing: s.Closing, Hung: s.Hung, Pin: -1, Shown: [][2]float64{}, Rows: []Row{}}
	out.Must = t.must[p.SeamName(f.Run, s)]
	for _, h := range f.Shown(s.X) {
		out.Shown = append(out.Shown, [2]float64{h[0].MM(), h[1].MM()})
	}
	if t.brief {
		return out
	}
	say := p.Style.Words
	row := func(key, value string, args ...string) { out.Rows = append(out.Rows, Row{Word(key, args...), value}) }
	if s.Closing {
		row("closing", "")
	}
	if s.Hung {
		row("hangs", "")
	}
	row("from_left", p.Style.Format(s.X))
	if f.AtLevel() {
		row("at_level", p.Style.Format(f.At(s.X)))
	}
	if s.NearestOpening != nil {
		row("near_opening", say(s.NearestOpening.Distance), s.NearestOpening.Name)
	}
	if s.NearestCorner != nil {
		row("near_bend", say(s.NearestCorner.Distance), s.NearestCorner.Name)
	}
	for i, pin := range f.W.Pins {
		if (pin.X-s.X).Abs() <= p.Room.Rules.Snap && pin.Put != "middle" {
			out.Pin = i
			row("pinned", Word("pinned_at", fmt.Sprint(pin.Where.Line)))
		}
	}
	if t.long && !s.Hung {
		t.play(f, s, row)
	}
	return out
}

// play tells how far a seam may be off, and what then breaks.
func (t *teller) play(f *face.Face, s *layout.Seam, row func(key, value string, args ...string)) {
	if t.plays[f.Run.Name] == nil {
		t.plays[f.Run.Name] = t.plan.Plays(f.Run)
	}
	play, ok := t.plays[f.Run.Name][s.LeftSheet]
	if !ok {
		return
	}
	for _, side := range []struct {
		key string
		l   layout.Limit
	}{{"play_left", play.Left}, {"play_right", play.Right}} {
		why := Word(mustKeys[side.l.Must], side.l.Name, t.plan.PlaceName(f.Run, side.l.Place))
		switch {
		case side.l.Must == layout.NoMust:
			row(side.key, Word("play_free"))
		case side.l.By < t.plan.Style.Least():
			row(side.key, Word("play_none", why))
		default:
			row(side.key, Word("play", t.plan.Style.Words(side.l.By), why))
		}
	}
}

func (t *teller) sheet(f *face.Face, s *layout.Sheet) Sheet {
	p := t.plan
	number := fmt.Sprint(s.Number)
	if s.Number == 0 {
		number = "-"
	}
	out := Sheet{ID: fmt.Sprintf("%s-%d-%d", f.Run.Name, s.Place, s.Course), Name: Word("sheet", number), Number: number, Narrow: s.Narrow, Hung: s.Hung, Outline: [][][2]float64{}, Rows: []Row{}}
	for _, q := range s.Pieces {
		if q.Wall != f.Wall {
			continue
		}
		var line [][2]float64
		for _, pt := range q.Outline {
			line = append(line, [2]float64{pt.X.MM(), pt.Z.MM()})
		}
		out.Outline = append(out.Outline, line)
	}
	row := func(key, value string) { out.Rows = append(out.Rows, Row{Word(key), value}) }
	if s.Flitch != "" {
		row("sheet_of", s.Flitch)
	}
	width := p.Style.Words(s.Width)
	if s.Narrow {
		width += ", " + Word("narrow")
	}
	row("width", width)
	row("cut", p.Style.Words(s.CutLength))
	if s.Ripped != "" {
		row("ripped", f.Run.Side(s.Ripped)+", "+p.Style.Words(s.RipTo))
	}
	for _, c := range s.Corners {
		row("wraps", c)
	}
	if s.Course > 1 {
		row("course", fmt.Sprint(s.Course))
	}
	if s.Hung {
		row("hangs", "")
	} else if s.Number > 0 {
		out.Card = CardKey(f.Run.Name, s.Place, s.Course)
	}
	return out
}

// CardKey names the card of a sheet among those of a room.
func CardKey(run string, place, course int) string {
	return fmt.Sprintf("card-%s-%d-%d", scene.FileName(run), place, course)
}
