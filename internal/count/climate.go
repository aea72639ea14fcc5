package count

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/wood"
)

// Climate is what air and wood do between shop and site.
type Climate struct {
	Shop, Site *wood.Climate // nil: not given
	Wall       *float64      // the wall's own temperature in degrees F, nil: not given
	Low, High  float64       // the room's humidity over the year, per cent
	Species    *wood.Species // nil: not given
	Cut        wood.Cut
	Width      L // of a sheet; 0: not given
	Length     L // of a sheet; 0: not given
	Style      length.Style
}

// ClimateOf takes what a room says. The year's band is that of the woodwork standard.
//
// Errors: a species that the table does not have, with the nearest names.
func ClimateOf(r *room.Room) (*Climate, error) {
	c := &Climate{Low: wood.RoomHumidity.Low, High: wood.RoomHumidity.High, Cut: wood.Cut(r.Veneer.Cut), Width: r.Veneer.GrossWidth,
		Length: r.Veneer.Length, Style: length.StyleOf(r.Project.Units)}
	if r.Site.Given {
		c.Site = &wood.Climate{Temperature: r.Site.Temperature, Humidity: r.Site.Humidity}
	}
	if r.Site.ShopGiven {
		c.Shop = &wood.Climate{Temperature: r.Site.Shop.Temperature, Humidity: r.Site.Shop.Humidity}
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
func (c *Climate) Move(from, to wood.Climate) (L, wood.Movement, bool) {
	if c.Species == nil || c.Width == 0 {
		return 0, wood.Movement{}, false
	}
	m := c.Species.Move(1, c.Cut, from.Moisture(), to.Moisture())
	return L(math.Round(m.Change * float64(c.Width))), m, true
}

// Year is the movement of one sheet from the driest to the dampest of the room's year at a temperature.
func (c *Climate) Year(temperature float64) (dry, damp float64, move L, ok bool) {
	a, b := wood.Climate{Temperature: temperature, Humidity: c.Low}, wood.Climate{Temperature: temperature, Humidity: c.High}
	move, _, ok = c.Move(a, b)
	return a.Moisture(), b.Moisture(), move, ok
}

// Remark is what is to be said about site and material. Code and wording of those that a check says are the check's own.
type Remark struct {
	Code   string
	Should bool // else a note
	Text   string
	Source string
}

// Codes of remarks.
const (
	SiteTemperature = "site-temperature"
	SiteHumidity    = "site-humidity"
	WallDamp        = "wall-damp"
	ShopApart       = "shop-apart"
	OffCentre       = "off-the-middle"
)

// Remarks holds the site against what material and site have to be like.
func (c *Climate) Remarks() []Remark {
	var out []Remark
	if s := c.Site; s != nil {
		if t := wood.RoomTemperature; !t.Holds(s.Temperature) {
			out = append(out, Remark{SiteTemperature, true, fmt.Sprintf("the site is at %s; hold it from %s to %s while sheets lie, hang and after",
				degrees(s.Temperature), degrees(t.Low), degrees(t.High)), t.Source})
		} else if t := wood.WinterSite; !t.Holds(s.Temperature) {
			out = append(out, Remark{SiteTemperature, true, fmt.Sprintf("the site is at %s; while interior wood goes in hold at least %s when it freezes outside, %s in summer",
				degrees(s.Temperature), degrees(t.Low), degrees(wood.SummerSite.Low)), t.Source})
		}
		if h := wood.RoomHumidity; !h.Holds(s.Humidity) {
			out = append(out, Remark{SiteHumidity, true, fmt.Sprintf("the site has %s %% relative humidity; hold it from %s to %s %%, never longer than %s h out of that",
				fig(s.Humidity), fig(h.Low), fig(h.High), fig(wood.OutOfHumidity.High)), h.Source + ", 3.2.6"})
		}
		if dew, ok := s.DewPoint(); ok && c.Wall != nil {
			over := *c.Wall - dew
			if !wood.WallOverDewPoint.Holds(over) {
				out = append(out, Remark{WallDamp, true, fmt.Sprintf("the wall is at %s, %s over the dew point of %s; it has to be at least %s over it",
					degrees(*c.Wall), spread(over), degrees(dew), spread(wood.WallOverDewPoint.Low)), "common practice, no source"})
			}
		}
	}
	if c.Shop != nil && c.Site != nil {
		from, to := c.Shop.Moisture(), c.Site.Moisture()
		if move, m, ok := c.Move(*c.Shop, *c.Site); ok && move != 0 {
			way := "wider"
			if move < 0 {
				way = "narrower"
			}
			out = append(out, Remark{ShopApart, false, fmt.Sprintf("from shop to site wood goes from %s to %s %% moisture: one sheet wants to get %s %s, free; let sheets lie in the room %s h before they hang",
				fig(from), fig(to), fine(move.Abs()), way, fig(wood.Acclimatise.Low)), "Wood Handbook, FPL-GTR-190, equation " + m.Equation + "; " + wood.Acclimatise.Source})
		}
	}
	if s := c.Site; s != nil {
		dry, damp, _, _ := c.Year(s.Temperature)
		if middle, now := (dry+damp)/2, s.Moisture(); math.Abs(now-middle) > (damp-dry)/4 {
			out = append(out, Remark{OffCentre, false, fmt.Sprintf("the room's year goes from %s to %s %% moisture; today's %s %% is far from the middle, %s %%: start near it",
				fig(dry), fig(damp), fig(now), fig(middle)), "FPL report 1655 (1956)"})
		}
	}
	return out
}

// Lines says everything in words, a line each.
func (c *Climate) Lines() []string {
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

// spread prints a difference of temperatures.
func spread(f float64) string { return fig(f) + " F" }

// fig prints a figure to one decimal.
func fig(f float64) string {
	text := strings.TrimSuffix(strconv.FormatFloat(f, 'f', 1, 64), ".0")
	if text == "-0" {
		return "0"
	}
	return text
}

// SpeciesTable lists all species with what they move by.
func SpeciesTable() *Table {
	t := &Table{Name: "species", Title: "Change of width for each 1 % of moisture, by cut; free, an upper bound",
		Columns: []Column{{Head: "species"}, {Head: "plain", Right: true}, {Head: "rift", Right: true}, {Head: "quarter", Right: true},
			{Head: "known", Long: true}, {Head: "also", Long: true}}}
	for _, s := range wood.All() {
		cell := func(cut wood.Cut) Cell {
			v := strconv.FormatFloat(s.Coefficient(cut), 'f', 5, 64)
			return Cell{Text: v, Value: v, Number: true}
		}
		t.Rows = append(t.Rows, []Cell{text(s.Name()), cell(wood.Plain), cell(wood.Rift), cell(wood.Quarter), text(s.Status(wood.Rift).String()),
			text(strings.Join(s.Names[1:], ", "))})
	}
	return t
}
