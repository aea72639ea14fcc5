package count

import (
	_ "embed"
	"io"

	"flitchlay/internal/layout"
	"flitchlay/internal/report"
)

// Schema is the JSON schema of what JSON writes.
//
//go:embed schema.json
var Schema []byte

// Format is the name of the JSON format.
const Format = "flitchlay-count/1"

// JSON writes one object with a list of rooms, the totals, and of a job what only it knows. Rooms are written as they come.
//
// Units: millimetres as decimals, exact to 1/8 micrometre: what pages, tables and CSV print is rounded, a cut length from its two ends (see
// Cut.Long); areas in square metres to nine decimals, rounded so that the
// parts add up to the gross; where there is nothing to say a field is null.
func JSON(w io.Writer) Writer { return &jsonWriter{w: w} }

type jsonWriter struct {
	w     io.Writer
	rooms int
}

func (w *jsonWriter) Room(c *Count) error {
	head := ",\n"
	if w.rooms == 0 {
		head = "{\n  \"format\": \"" + Format + "\",\n  \"unit\": \"mm\",\n  \"rooms\": [\n"
	}
	w.rooms++
	return report.PutJSON(w.w, head+"    ", "    ", c.object())
}

func (w *jsonWriter) Job(j *Job) error {
	head := "\n  ],\n  \"totals\": "
	if w.rooms == 0 {
		head = "{\n  \"format\": \"" + Format + "\",\n  \"unit\": \"mm\",\n  \"rooms\": [],\n  \"totals\": "
	}
	if err := report.PutJSON(w.w, head, "  ", j.object()); err != nil {
		return err
	}
	if j.Beside != nil {
		if err := report.PutJSON(w.w, ",\n  \"job\": ", "  ", j.Beside); err != nil {
			return err
		}
	}
	_, err := io.WriteString(w.w, "\n}\n")
	return err
}

func (c *Count) object() *jsonRoom {
	r := c.room()
	flitch := func(f *Flitch) jsonFlitch {
		return jsonFlitch{report.Null(f.Number), report.List(f.Delivered), report.List(f.Damaged), report.List(f.Spare), report.List(f.Laid), report.List(f.Gaps), report.List(f.Left), f.Short, f.Headers, f.Want}
	}
	out := &jsonRoom{Title: r.Project.Title, Room: report.Null(r.Project.Room), Units: r.Project.Units.String(), Aim: layout.AimWord(c.Plan.Aim),
		Broken: c.Broken, Sheets: c.Sheets, Spares: c.Spares, All: flitch(&c.All), Flitches: report.Each(c.Flitches, flitch)}
	out.Walls = report.Each(c.Walls, func(w *Wall) jsonWall {
		return jsonWall{w.Name, w.Begin, w.Show, w.Seams, report.Metres(w.Twice), report.List(w.Numbers)}
	})
	out.Lengths = report.Each(c.Lengths, func(s *Stock) jsonStock { return jsonStock{report.MM(s.Length), s.Sheets, report.List(s.Numbers)} })
	out.Margins.Shorter = jsonShorter{report.MM(c.Longest.Cut), report.Null(c.Longest.Number), report.MM(c.Longest.Left), report.MM(c.Longest.Figure)}
	if m := c.Margins; m != nil {
		if n := m.Narrower; n != nil {
			out.Margins.Narrower = &jsonNarrower{report.MM(n.Holds), report.MM(n.Margin), n.Next}
		}
		if m.Lost != nil {
			out.Margins.Lost = &jsonLost{m.Lost.Left, m.Lost.Spares}
		}
	}
	out.Nearly = report.Each(c.Plan.Nearly, func(s *layout.Saving) jsonSaving {
		return jsonSaving{report.MM(s.By), s.Change, s.Sheets, s.Courses, s.Narrow, s.Musts, s.Saves}
	})
	out.Registers = report.Each(c.Plan.Registers(), func(r *layout.Register) jsonRegister {
		k := jsonRegister{Flitch: report.Null(r.Flitch), Course: r.Course, Turned: r.Turned, From: r.End(), Need: report.MM(r.Need),
			Highest: report.Null(r.Most[0].Number), Lowest: report.Null(r.Most[1].Number)}
		if at := report.MM(r.At); r.Foot {
			k.Over = &at
		} else {
			k.Mark = &at
		}
		return k
	})
	var whole report.Sum
	areas := make([]report.Sum, len(c.Areas.Of))
	for i, a := range c.Areas.Of {
		areas[i].Plus(a)
		whole.Plus(a)
	}
	out.Areas = jsonAreas{Gross: report.SquareMetres(whole.SquareMetres()), Parts: areaParts(areas), Delivered: report.Metres(c.Areas.Delivered), StockEnds: report.Metres(c.Areas.StockEnds())}
	out.Material = c.Material.object()
	out.Order = report.Each(c.Order, func(l *Line) jsonLine {
		return jsonLine{l.Item, report.Null(l.Quantity), report.Null(l.From), l.Sheets, l.Why}
	})
	out.Kept = report.Each(c.Kept, func(k *Kept) jsonKept {
		return jsonKept{k.What, report.Null(k.Flitch), report.Null(k.Number), report.MM(k.Width), report.MM(k.Length)}
	})
	out.Cuts = report.Each(c.Cuts, func(x *Cut) jsonCut { return x.object() })
	return out
}

// areaParts names the parts of an area, rounded so that they add up.
func areaParts(list []report.Sum) []jsonPart {
	var out []jsonPart
	for i, a := range report.MetreShares(list) {
		out = append(out, jsonPart{Part(i).String(), a})
	}
	return out
}

func amountObject(a *layout.Amount) *jsonAmount {
	if a == nil {
		return nil
	}
	return &jsonAmount{a.Amount, a.Unit, report.List(Pails(*a))}
}

func endObject(e *End) jsonEnd {
	return jsonEnd{e.Kind, report.Null(e.Takes), e.Count, report.MM(e.Length), report.MM(e.Longest)}
}
func extenderObject(e *Extender) jsonExtender { return jsonExtender{e.Gang, e.Count} }

func (b Blades) object() jsonBlades { return jsonBlades{b.Seams, b.Matches, b.Edges, b.Total()} }

func (m *Material) object() jsonMaterial {
	return jsonMaterial{amountObject(m.Paste), report.Metres(m.PasteOn), amountObject(m.Primer), report.Metres(m.PrimerOn), report.Each(m.Ends, endObject),
		report.Each(m.Extenders, extenderObject), jsonStrip{m.Strip.Count, report.MM(m.Strip.Length)}, m.Blades.object(), m.Alarms}
}

func (x *Cut) object() jsonCut {
	return jsonCut{Flitch: report.Null(x.Flitch), Number: report.Null(x.Number), Place: x.Place, Course: x.Course, Run: x.Run, Walls: report.List(x.Walls),
		CutLength: report.MM(x.Length), Above: report.MM(x.Above), Below: report.MM(x.Below), TopTrim: report.MM(x.TopTrim), BottomTrim: report.MM(x.BottomTrim),
		Net: report.MM(x.Net), Width: report.MM(x.Width), Ripped: report.Null(x.Side(x.Rip)), LeftTrim: report.MM(x.LeftTrim), RightTrim: report.MM(x.RightTrim), Edge: x.Edge(),
		Bends: report.Each(x.Bends, func(b *Bend) jsonBend { return jsonBend{b.Name, report.MM(b.At), report.MM(b.Foot), report.MM(b.Head)} }),
		Holes: report.Each(x.Holes, func(h *Hole) jsonHole {
			return jsonHole{string(h.Kind), h.Name, h.What(), report.MM(h.From), report.MM(h.To), report.MM(h.Low), report.MM(h.High)}
		}),
		Askew: report.MM(x.Askew), Turned: x.Turned, Hung: x.Hung, Narrow: x.Narrow, Level: x.Level, Line: report.MM(x.Line.By), Over: report.Null(x.Over), HeaderOnly: x.HeaderOnly}
}

func (j *Job) object() *jsonJob {
	out := &jsonJob{Rooms: j.Rooms, Broken: j.Broken, Delivered: j.Delivered, Damaged: j.Damaged, Spare: j.Spare, Laid: j.Laid, Headers: j.Headers,
		Gaps: j.Gaps, Left: j.Left, Short: j.Short, Want: j.Want, Order: j.Order, PasteOn: report.SquareMetres(j.PasteOn.SquareMetres()),
		PrimerOn: report.SquareMetres(j.PrimerOn.SquareMetres()), Gross: report.SquareMetres(j.Gross.SquareMetres()), Ends: report.Each(j.Ends, endObject),
		Extenders: report.Each(j.Extenders, extenderObject), Strip: jsonStrip{j.Strip.Count, report.MM(j.Strip.Length)}, Blades: j.Blades.object(),
		Alarms: j.Alarms, Twice: report.List(j.Twice)}
	out.Lengths = report.Each(j.Lengths, func(s *Stock) jsonStock { return jsonStock{report.MM(s.Length), s.Sheets, []int{}} })
	wet := func(a *layout.Amount) jsonAmount { return *amountObject(a) }
	out.Paste, out.Primer = report.Each(j.Paste, wet), report.Each(j.Primer, wet)
	out.Parts = areaParts(j.Of[:])
	return out
}
