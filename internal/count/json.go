package count

import (
	_ "embed"
	"encoding/json"
	"io"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// Schema is the JSON schema of what JSON writes.
//
//go:embed schema.json
var Schema []byte

// Format is the name of the JSON format.
const Format = "flitchlay-count/1"

// JSON writes one object with a list of rooms and the totals. Rooms are written as they come.
//
// Units: millimetres as decimals, exact to 1/8 micrometre; areas in square metres to nine decimals, rounded so that the
// parts add up to the gross; where there is nothing to say a field is null.
func JSON(w io.Writer) Writer { return &jsonWriter{w: w} }

type jsonWriter struct {
	w     io.Writer
	rooms int
}

// mm is a length as JSON takes it.
type mm L

// MarshalJSON writes millimetres, exactly.
func (l mm) MarshalJSON() ([]byte, error) { return []byte(L(l).Decimal()), nil }

// squareMetres is an area as JSON takes it.
type squareMetres string

// MarshalJSON writes the number.
func (a squareMetres) MarshalJSON() ([]byte, error) { return []byte(a), nil }

type jsonRoom struct {
	Title    string       `json:"title"`
	Room     *string      `json:"room"`
	Units    string       `json:"units"`
	Aim      string       `json:"aim"`
	Broken   bool         `json:"must_broken"`
	Sheets   int          `json:"sheets"`
	Spares   int          `json:"spares"`
	All      jsonFlitch   `json:"all"`
	Flitches []jsonFlitch `json:"flitches"`
	Walls    []jsonWall   `json:"walls"`
	Lengths  []jsonStock  `json:"lengths"`
	Margins  jsonMargins  `json:"margins"`
	Areas    jsonAreas    `json:"areas"`
	Material jsonMaterial `json:"material"`
	Order    []jsonLine   `json:"order"`
	Kept     []jsonKept   `json:"kept"`
	Cuts     []jsonCut    `json:"cuts"`
}

type jsonFlitch struct {
	Flitch    *string `json:"flitch"`
	Delivered []int   `json:"delivered"`
	Damaged   []int   `json:"damaged"`
	Spare     []int   `json:"spare"`
	Laid      []int   `json:"laid"`
	Gaps      []int   `json:"in_gaps"`
	Left      []int   `json:"left"`
	Short     int     `json:"short"`
	Headers   int     `json:"headers"`
	Want      int     `json:"spares_wanted"`
}

type jsonWall struct {
	Wall    string       `json:"wall"`
	Begin   int          `json:"begin"`
	Show    int          `json:"show"`
	Seams   int          `json:"seams"`
	Area    squareMetres `json:"area"`
	Numbers []int        `json:"numbers"`
}

type jsonStock struct {
	Length  mm    `json:"length"`
	Sheets  int   `json:"sheets"`
	Numbers []int `json:"numbers"`
}

type jsonMargins struct {
	Narrower *jsonNarrower `json:"narrower"`
	Shorter  jsonShorter   `json:"shorter"`
	Lost     *jsonLost     `json:"lost"`
}

type jsonNarrower struct {
	Holds  mm     `json:"holds_down_to"`
	Margin mm     `json:"margin"`
	Next   string `json:"next"`
}

type jsonShorter struct {
	Longest mm   `json:"longest_cut"`
	Sheet   *int `json:"sheet"`
	Margin  mm   `json:"margin"`
	Figure  mm   `json:"figure_margin"`
}

type jsonLost struct {
	Left   int `json:"spares_kept"`
	Spares int `json:"spares_laid"`
}

type jsonAreas struct {
	Gross     squareMetres `json:"gross"`
	Parts     []jsonPart   `json:"parts"`
	Delivered squareMetres `json:"delivered"`
	StockEnds squareMetres `json:"stock_ends"`
}

type jsonPart struct {
	Part string       `json:"part"`
	Area squareMetres `json:"area"`
}

type jsonAmount struct {
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	Pails  []Pail  `json:"pails"`
}

type jsonMaterial struct {
	Paste     *jsonAmount    `json:"paste"`
	PasteOn   squareMetres   `json:"paste_area"`
	Primer    *jsonAmount    `json:"primer"`
	PrimerOn  squareMetres   `json:"primer_area"`
	Ends      []jsonEnd      `json:"ends"`
	Extenders []jsonExtender `json:"extenders"`
	Strip     jsonStrip      `json:"cutting_strip"`
	Blades    jsonBlades     `json:"blades"`
	Alarms    int            `json:"alarms"`
}

type jsonEnd struct {
	Kind    string  `json:"kind"`
	Takes   *string `json:"takes"`
	Count   int     `json:"count"`
	Length  mm      `json:"length"`
	Longest mm      `json:"longest"`
}

type jsonExtender struct {
	Gang  int `json:"gang"`
	Count int `json:"count"`
}

type jsonStrip struct {
	Count  int `json:"count"`
	Length mm  `json:"length"`
}

type jsonBlades struct {
	Seams   int `json:"seams"`
	Matches int `json:"end_matches"`
	Edges   int `json:"opening_edges"`
	Total   int `json:"total"`
}

type jsonLine struct {
	Item     string  `json:"item"`
	Quantity *string `json:"quantity"`
	From     *string `json:"from"`
	Sheets   int     `json:"sheets"`
	Why      string  `json:"why"`
}

type jsonKept struct {
	Part   string  `json:"part"`
	Flitch *string `json:"flitch"`
	Number *int    `json:"number"`
	Width  mm      `json:"width"`
	Length mm      `json:"length"`
}

type jsonCut struct {
	Flitch     *string    `json:"flitch"`
	Number     *int       `json:"number"`
	Place      int        `json:"place"`
	Course     int        `json:"course"`
	Run        string     `json:"run"`
	Walls      []string   `json:"walls"`
	CutLength  mm         `json:"cut_length"`
	Above      mm         `json:"above"`
	Below      mm         `json:"below"`
	TopTrim    mm         `json:"top_trim"`
	BottomTrim mm         `json:"bottom_trim"`
	Net        mm         `json:"net_width"`
	Width      mm         `json:"width"`
	Ripped     *string    `json:"ripped"`
	LeftTrim   mm         `json:"left_trim"`
	RightTrim  mm         `json:"right_trim"`
	Bends      []jsonBend `json:"bends"`
	Holes      []jsonHole `json:"cut_outs"`
	Askew      mm         `json:"askew"`
	Turned     bool       `json:"turned"`
	Hung       bool       `json:"hung"`
	Narrow     bool       `json:"narrow"`
	Level      bool       `json:"grain_level"`
	Over       *string    `json:"over"`
	HeaderOnly bool       `json:"header_only"`
}

type jsonBend struct {
	Name string `json:"name"`
	At   mm     `json:"at"`
}

type jsonHole struct {
	Kind string `json:"kind"`
	Name string `json:"name"`
	From mm     `json:"from"`
	To   mm     `json:"to"`
	Low  mm     `json:"low"`
	High mm     `json:"high"`
}

type jsonJob struct {
	Rooms     int            `json:"rooms"`
	Broken    int            `json:"must_broken"`
	Delivered int            `json:"delivered"`
	Damaged   int            `json:"damaged"`
	Spare     int            `json:"spare"`
	Laid      int            `json:"laid"`
	Headers   int            `json:"headers"`
	Gaps      int            `json:"in_gaps"`
	Left      int            `json:"left"`
	Short     int            `json:"short"`
	Want      int            `json:"spares_wanted"`
	Order     int            `json:"to_order"`
	Lengths   []jsonStock    `json:"lengths"`
	Gross     squareMetres   `json:"gross"`
	Parts     []jsonPart     `json:"parts"`
	PasteOn   squareMetres   `json:"paste_area"`
	PrimerOn  squareMetres   `json:"primer_area"`
	Paste     []jsonAmount   `json:"paste"`
	Primer    []jsonAmount   `json:"primer"`
	Ends      []jsonEnd      `json:"ends"`
	Extenders []jsonExtender `json:"extenders"`
	Strip     jsonStrip      `json:"cutting_strip"`
	Blades    jsonBlades     `json:"blades"`
	Alarms    int            `json:"alarms"`
	Twice     []string       `json:"laid_twice"`
}

func (w *jsonWriter) Room(c *Count) error {
	head := ",\n"
	if w.rooms == 0 {
		head = "{\n  \"format\": \"" + Format + "\",\n  \"unit\": \"mm\",\n  \"rooms\": [\n"
	}
	w.rooms++
	return w.put(head+"    ", "    ", c.object())
}

func (w *jsonWriter) Job(j *Job) error {
	head := "\n  ],\n  \"totals\": "
	if w.rooms == 0 {
		head = "{\n  \"format\": \"" + Format + "\",\n  \"unit\": \"mm\",\n  \"rooms\": [],\n  \"totals\": "
	}
	if err := w.put(head, "  ", j.object()); err != nil {
		return err
	}
	_, err := io.WriteString(w.w, "\n}\n")
	return err
}

// put writes a head and a value.
func (w *jsonWriter) put(head, indent string, value any) error {
	if _, err := io.WriteString(w.w, head); err != nil {
		return err
	}
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent(indent, "  ")
	if err := e.Encode(value); err != nil {
		return err
	}
	_, err := io.WriteString(w.w, strings.TrimRight(b.String(), "\n"))
	return err
}

// none gives null for nothing.
func none[T comparable](v T) *T {
	var zero T
	if v == zero {
		return nil
	}
	return &v
}

// list gives an empty list for none.
func list[T any](v []T) []T {
	if v == nil {
		return []T{}
	}
	return v
}

func each[A, B any](from []A, f func(*A) B) []B {
	out := make([]B, len(from))
	for i := range from {
		out[i] = f(&from[i])
	}
	return out
}

func metres(twice length.Area) squareMetres {
	var s Sum
	s.Plus(twice)
	return squareMetres(s.SquareMetres())
}

func (c *Count) object() *jsonRoom {
	r := c.room()
	flitch := func(f *Flitch) jsonFlitch {
		return jsonFlitch{none(f.Number), list(f.Delivered), list(f.Damaged), list(f.Spare), list(f.Laid), list(f.Gaps), list(f.Left), f.Short, f.Headers, f.Want}
	}
	out := &jsonRoom{Title: r.Project.Title, Room: none(r.Project.Room), Units: r.Project.Units.String(), Aim: layout.AimWord(c.Plan.Aim),
		Broken: c.Broken, Sheets: c.Sheets, Spares: c.Spares, All: flitch(&c.All), Flitches: each(c.Flitches, flitch)}
	out.Walls = each(c.Walls, func(w *Wall) jsonWall {
		return jsonWall{w.Name, w.Begin, w.Show, w.Seams, metres(w.Twice), list(w.Numbers)}
	})
	out.Lengths = each(c.Lengths, func(s *Stock) jsonStock { return jsonStock{mm(s.Length), s.Sheets, list(s.Numbers)} })
	out.Margins.Shorter = jsonShorter{mm(c.Longest.Cut), none(c.Longest.Number), mm(c.Longest.Left), mm(c.Longest.Figure)}
	if m := c.Margins; m != nil {
		if n := m.Narrower; n != nil {
			out.Margins.Narrower = &jsonNarrower{mm(n.Holds), mm(n.Margin), n.Next}
		}
		if m.Lost != nil {
			out.Margins.Lost = &jsonLost{m.Lost.Left, m.Lost.Spares}
		}
	}
	parts, gross := areaParts(c.Areas.Of[:])
	out.Areas = jsonAreas{Gross: gross, Parts: parts, Delivered: metres(c.Areas.Delivered), StockEnds: metres(c.Areas.StockEnds())}
	out.Material = c.Material.object()
	out.Order = each(c.Order, func(l *Line) jsonLine { return jsonLine{l.Item, none(l.Quantity), none(l.From), l.Sheets, l.Why} })
	out.Kept = each(c.Kept, func(k *Kept) jsonKept {
		return jsonKept{k.What, none(k.Flitch), none(k.Number), mm(k.Width), mm(k.Length)}
	})
	out.Cuts = each(c.Cuts, func(x *Cut) jsonCut { return x.object() })
	return out
}

// areaParts rounds parts so that they add up.
func areaParts(twice []length.Area) ([]jsonPart, squareMetres) {
	var whole Sum
	for _, a := range twice {
		whole.Plus(a)
	}
	var out []jsonPart
	for i, r := range shares(twice, decimals(length.Millimetres, 9)) {
		out = append(out, jsonPart{Part(i).String(), plainMetres(r.FloatString(9))})
	}
	return out, squareMetres(whole.SquareMetres())
}

// plainMetres takes zeros off the end of a decimal.
func plainMetres(s string) squareMetres {
	s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		s = "0"
	}
	return squareMetres(s)
}

func amountObject(a *layout.Amount) *jsonAmount {
	if a == nil {
		return nil
	}
	return &jsonAmount{a.Amount, a.Unit, list(Pails(*a))}
}

func endObject(e *End) jsonEnd {
	return jsonEnd{e.Kind, none(e.Takes), e.Count, mm(e.Length), mm(e.Longest)}
}
func extenderObject(e *Extender) jsonExtender { return jsonExtender{e.Gang, e.Count} }

func (b Blades) object() jsonBlades { return jsonBlades{b.Seams, b.Matches, b.Edges, b.Total()} }

func (m *Material) object() jsonMaterial {
	return jsonMaterial{amountObject(m.Paste), metres(m.PasteOn), amountObject(m.Primer), metres(m.PrimerOn), each(m.Ends, endObject),
		each(m.Extenders, extenderObject), jsonStrip{m.Strip.Count, mm(m.Strip.Length)}, m.Blades.object(), m.Alarms}
}

func (x *Cut) object() jsonCut {
	return jsonCut{Flitch: none(x.Flitch), Number: none(x.Number), Place: x.Place, Course: x.Course, Run: x.Run, Walls: list(x.Walls),
		CutLength: mm(x.Length), Above: mm(x.Above), Below: mm(x.Below), TopTrim: mm(x.TopTrim), BottomTrim: mm(x.BottomTrim),
		Net: mm(x.Net), Width: mm(x.Width), Ripped: none(x.Rip), LeftTrim: mm(x.LeftTrim), RightTrim: mm(x.RightTrim),
		Bends: each(x.Bends, func(b *Bend) jsonBend { return jsonBend{b.Name, mm(b.At)} }),
		Holes: each(x.Holes, func(h *Hole) jsonHole {
			return jsonHole{h.Kind, h.Name, mm(h.From), mm(h.To), mm(h.Low), mm(h.High)}
		}),
		Askew: mm(x.Askew), Turned: x.Turned, Hung: x.Hung, Narrow: x.Narrow, Level: x.Level, Over: none(x.Over), HeaderOnly: x.HeaderOnly}
}

func (j *Job) object() *jsonJob {
	out := &jsonJob{Rooms: j.Rooms, Broken: j.Broken, Delivered: j.Delivered, Damaged: j.Damaged, Spare: j.Spare, Laid: j.Laid, Headers: j.Headers,
		Gaps: j.Gaps, Left: j.Left, Short: j.Short, Want: j.Want, Order: j.Order, PasteOn: squareMetres(j.PasteOn.SquareMetres()),
		PrimerOn: squareMetres(j.PrimerOn.SquareMetres()), Gross: squareMetres(j.Gross.SquareMetres()), Ends: each(j.Ends, endObject),
		Extenders: each(j.Extenders, extenderObject), Strip: jsonStrip{j.Strip.Count, mm(j.Strip.Length)}, Blades: j.Blades.object(),
		Alarms: j.Alarms, Twice: list(j.Twice)}
	out.Lengths = each(j.Lengths, func(s *Stock) jsonStock { return jsonStock{mm(s.Length), s.Sheets, []int{}} })
	wet := func(a *layout.Amount) jsonAmount { return *amountObject(a) }
	out.Paste, out.Primer = each(j.Paste, wet), each(j.Primer, wet)
	var sum Sum
	print := decimals(length.Millimetres, 9)
	last := print(&sum)
	for i := range j.Of {
		sum.Add(&sum.Int, &j.Of[i].Int)
		at := print(&sum)
		out.Parts = append(out.Parts, jsonPart{Part(i).String(), plainMetres(last.Sub(at, last).FloatString(9))})
		last = at
	}
	return out
}
