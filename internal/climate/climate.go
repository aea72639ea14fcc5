// Package climate holds the site against the wood: what moisture sheets come to in the shop and on the site, how far they
// want to move between, and what of a room's site is not as material and site have to be.
//
// Coordinates and units: degrees F and per cent of relative humidity; movement is an exact length.
//
// Order: findings as package finding sorts them.
//
// Not here: the wood's own figures (package wood), drawings.
package climate

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
	"flitchlay/internal/wood"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Conditions are what air and wood do between shop and site.
type Conditions struct {
	Shop, Site *wood.Climate // nil: not given
	Wall       *float64      // the wall's own temperature in degrees F, nil: not given
	Low, High  float64       // the room's humidity over the year, per cent
	YearGiven  bool          // else it is that of the woodwork standard
	Species    *wood.Species // nil: not given
	Cut        wood.Cut
	Width      L // of a sheet; 0: not given
	Length     L // of a sheet; 0: not given
	Style      length.Style
}

// Of takes what a room says. Where it does not say the year's band it is that of the woodwork standard.
//
// Errors: a species that the table does not have, with the nearest names.
func Of(r *room.Room) (*Conditions, error) {
	c := &Conditions{Low: wood.RoomHumidity.Low, High: wood.RoomHumidity.High, Cut: wood.Cut(r.Veneer.Cut), Width: r.Veneer.GrossWidth,
		Length: r.Veneer.Length, Style: length.StyleOf(r.Project.Units)}
	if r.Site.Given {
		c.Site = &wood.Climate{Temperature: r.Site.Temperature, Humidity: r.Site.Humidity}
	}
	if r.Site.ShopGiven {
		c.Shop = &wood.Climate{Temperature: r.Site.Shop.Temperature, Humidity: r.Site.Shop.Humidity}
	}
	c.Wall = r.Site.Wall
	if y := r.Site.Year; y != nil {
		c.Low, c.High, c.YearGiven = y.Low, y.High, true
	}
	if r.Veneer.Species != "" {
		s, err := FindSpecies(r.Veneer.Species)
		if err != nil {
			return nil, err
		}
		c.Species = s
	}
	return c, nil
}

// FindSpecies finds a species.
//
// Errors: one sentence that names the nearest.
func FindSpecies(name string) (*wood.Species, error) {
	if s, ok := wood.Find(name); ok {
		return &s, nil
	}
	if near := wood.Nearest(name, 3); len(near) > 0 {
		return nil, fmt.Errorf("species %q is not in the table; the nearest: %s; --species takes one of them", name, strings.Join(near, ", "))
	}
	return nil, fmt.Errorf("species %q is not in the table; flitchlay climate --list names those that are", name)
}

// Move is how much wider one sheet gets from one climate to another, free: an upper bound, for paste holds it.
//
// Errors: false where species or width is not given.
func (c *Conditions) Move(from, to wood.Climate) (L, wood.Movement, bool) {
	if c.Species == nil || c.Width == 0 {
		return 0, wood.Movement{}, false
	}
	m := c.Species.Move(1, c.Cut, from.Moisture(), to.Moisture())
	return L(math.Round(m.Change * float64(c.Width))), m, true
}

// Year is the movement of one sheet from the driest to the dampest of the room's year at a temperature.
func (c *Conditions) Year(temperature float64) (dry, damp float64, move L, ok bool) {
	a, b := wood.Climate{Temperature: temperature, Humidity: c.Low}, wood.Climate{Temperature: temperature, Humidity: c.High}
	move, _, ok = c.Move(a, b)
	return a.Moisture(), b.Moisture(), move, ok
}

// Lines says everything in words, a line each.
func (c *Conditions) Lines() []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	state := func(name string, s *wood.Climate) {
		if s == nil {
			return
		}
		charted := ""
		if !s.Charted() {
			charted = " (outside the handbook's table: a guess)"
		}
		say("%s: %s, %s %% relative humidity: wood comes to %.2f %% moisture%s", name, degrees(s.Temperature), fig(s.Humidity), s.Moisture(), charted)
	}
	state("shop", c.Shop)
	state("site", c.Site)
	if c.Species != nil {
		cut := string(c.Cut)
		if cut == "" {
			cut = "cut not given, reckoned as plain, the worst,"
		}
		say("%s, %s: %s of its width for each 1 %% of moisture (%s)", c.Species.Name(), cut, strconv.FormatFloat(c.Species.Coefficient(c.Cut), 'f', 5, 64),
			c.Species.Status(c.Cut))
	}
	if c.Shop != nil && c.Site != nil {
		if move, m, ok := c.Move(*c.Shop, *c.Site); ok {
			say("one sheet of %s from shop to site: %s %s, equation %s", c.Style.Words(c.Width), signWord(move), fine(move.Abs()), m.Equation)
			if c.Length > 0 {
				long := L(math.Round(wood.AlongGrain(float64(c.Length), c.Shop.Moisture(), c.Site.Moisture())))
				say("along the grain, over %s: %s %s", c.Style.Format(c.Length), signWord(long), fine(long.Abs()))
			}
			switch {
			case move > 0:
				say("at the seams: hung before they have swollen, sheets push against each other, at most by this; a seam can ridge")
			case move < 0:
				say("at the seams: hung before they have shrunk, sheets pull from each other, at most by this; a seam can open")
			}
			say("this is free movement, an upper bound: a pasted sheet is held by the wall; it is no gap to expect")
			say("a pasted sheet swells wet before it dries: cut the seam when the sheet has rested, or it opens")
		}
	}
	if s := c.Site; s != nil {
		dry, damp, move, ok := c.Year(s.Temperature)
		line := fmt.Sprintf("the room's year, %s to %s %% at %s: %.2f to %.2f %% moisture", fig(c.Low), fig(c.High), degrees(s.Temperature), dry, damp)
		if ok {
			line += fmt.Sprintf(", one sheet %s free", fine(move.Abs()))
		}
		out = append(out, line+fmt.Sprintf("; start near the middle, %.2f %%", (dry+damp)/2))
		if dew, ok := s.DewPoint(); ok {
			line := fmt.Sprintf("dew point of the site's air: %s; the wall's own face has to be at %s or more", degrees(dew), degrees(dew+wood.WallOverDewPoint.Low))
			if c.Wall != nil {
				line += fmt.Sprintf("; it is at %s, where the air has %s %%", degrees(*c.Wall), fig(s.HumidityAtWall(*c.Wall)))
			} else {
				line += ": measure it on outside walls"
			}
			out = append(out, line)
		}
	}
	return out
}

func signWord(l L) string {
	switch {
	case l > 0:
		return "grows"
	case l < 0:
		return "shrinks"
	}
	return "stays, within"
}

// fine prints a small length in decimals of an inch and in millimetres, as tables of wood do.
func fine(l L) string {
	inches := float64(l) / float64(length.Inch)
	return strconv.FormatFloat(inches, 'f', 3, 64) + " in (" + strconv.FormatFloat(l.MM(), 'f', 2, 64) + " mm)"
}

// degrees prints a temperature in both scales.
func degrees(f float64) string { return fig(f) + " F (" + fig(wood.Celsius(f)) + " C)" }

// fig prints a figure to one decimal.
func fig(f float64) string {
	text := strings.TrimSuffix(strconv.FormatFloat(f, 'f', 1, 64), ".0")
	if text == "-0" {
		return "0"
	}
	return text
}

// SpeciesTable lists all species with what they move by.
func SpeciesTable() *report.Table {
	t := &report.Table{Name: "species", Title: "Change of width for each 1 % of moisture, by cut; free, an upper bound",
		Columns: []report.Column{{Head: "species"}, {Head: "plain", Right: true}, {Head: "rift", Right: true}, {Head: "quarter", Right: true},
			{Head: "known", Long: true}, {Head: "also", Long: true}}}
	for _, s := range wood.All() {
		cell := func(cut wood.Cut) report.Cell {
			v := strconv.FormatFloat(s.Coefficient(cut), 'f', 5, 64)
			return report.Cell{Text: v, Value: v, Number: true}
		}
		t.Rows = append(t.Rows, []report.Cell{report.Text(s.Name()), cell(wood.Plain), cell(wood.Rift), cell(wood.Quarter), report.Text(s.Status(wood.Rift).String()),
			report.Text(strings.Join(s.Names[1:], ", "))})
	}
	return t
}

// Room is a room that says no more than the climate does, to be held against what site and material have to be like.
func (c *Conditions) Room() *room.Room {
	r := &room.Room{}
	r.Project.Units = c.Style.Unit
	r.Veneer.Cut, r.Veneer.GrossWidth, r.Veneer.Length = string(c.Cut), c.Width, c.Length
	if c.Species != nil {
		r.Veneer.Species = c.Species.Name()
	}
	if c.Site != nil {
		r.Site.Given, r.Site.Temperature, r.Site.Humidity = true, c.Site.Temperature, c.Site.Humidity
	}
	if c.Shop != nil {
		r.Site.ShopGiven, r.Site.Shop = true, room.Climate{Temperature: c.Shop.Temperature, Humidity: c.Shop.Humidity}
	}
	r.Site.Wall = c.Wall
	if c.YearGiven {
		r.Site.Year = &room.Band{Low: c.Low, High: c.High}
	}
	return r
}
