package climate

import (
	"math"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/wood"
)

// Findings holds what a room says of its site against what material and site have to be like.
func Findings(r *room.Room) []finding.Finding {
	s := &site{room: r, style: length.StyleOf(r.Project.Units)}
	s.Words = WordsOf(s.style)
	s.climate, s.stranger = climateOfSite(r)
	s.air()
	s.wall()
	s.board()
	s.journey()
	s.year()
	s.species()
	finding.Sort(s.out)
	return s.out
}

// climateOfSite is Of, without the species where the table does not have it.
func climateOfSite(r *room.Room) (c *Conditions, stranger string) {
	c, err := Of(r)
	if err != nil {
		stranger = r.Veneer.Species
		plain := *r
		plain.Veneer.Species = ""
		c, _ = Of(&plain) // nothing else of it can fail
	}
	return c, stranger
}

// site is what is being said of a site.
type site struct {
	Words
	room     *room.Room
	style    length.Style
	climate  *Conditions
	stranger string // a species that the table does not have
	out      []finding.Finding
}

func (s *site) say(code finding.Code, slots finding.Slots) {
	s.out = append(s.out, finding.Make(s.style, code, finding.Finding{Place: "site", Wall: -1}, slots))
}

// air judges temperature and humidity.
func (s *site) air() {
	air := s.climate.Site
	if air == nil {
		return
	}
	hold := wood.RoomTemperature
	switch t := air.Temperature; {
	case t < hold.Low:
		s.say(finding.SiteCold, finding.Slots{"now": s.Degrees(t), "least": s.Degrees(hold.Low), "source": hold.Source})
	case t < wood.WinterSite.Low:
		s.say(finding.SiteCold, finding.Slots{"now": s.Degrees(t), "least": s.Degrees(wood.WinterSite.Low), "source": wood.WinterSite.Source})
	case t > hold.High:
		s.say(finding.SiteHot, finding.Slots{"now": s.Degrees(t), "most": s.Degrees(hold.High), "source": hold.Source})
	}
	hold = wood.RoomHumidity
	code := finding.SiteDry
	if air.Humidity > hold.High {
		code = finding.SiteDamp
	}
	if !hold.Holds(air.Humidity) {
		s.say(code, finding.Slots{"now": s.Percent(air.Humidity), "low": s.Percent(hold.Low), "high": s.Percent(hold.High),
			"hours": s.Decimal(wood.OutOfHumidity.High, 1), "source": hold.Source + " and 3.2.6"})
	}
}

// wall judges the wall's own temperature.
func (s *site) wall() {
	air, wall, least := s.climate.Site, s.climate.Wall, wood.WallOverDewPoint
	if air == nil || wall == nil {
		return
	}
	dew, ok := air.DewPoint()
	if !ok || least.Holds(*wall-dew) {
		return
	}
	over := s.Spread(math.Floor((*wall-dew)*10)/10) + " over" // rounded down: never as much as the least
	if *wall < dew {
		over = s.Spread(dew-*wall) + " under"
	}
	s.say(finding.WallCold, finding.Slots{"now": s.Degrees(*wall), "over": over, "dew": s.Degrees(dew), "least": s.Spread(least.Low), "source": least.Status.String()})
}

// board judges what a moisture meter says, on its own scale.
func (s *site) board() {
	b := s.room.Site.Board
	if b == nil || b.Reading == nil || b.Limit == nil || *b.Reading <= *b.Limit {
		return
	}
	s.say(finding.BoardDamp, finding.Slots{"now": s.Decimal(*b.Reading, 3), "meter": b.Meter, "limit": s.Decimal(*b.Limit, 3)})
}

// journey says what sheets do between shop and site.
func (s *site) journey() {
	c := s.climate
	if c.Shop == nil || c.Site == nil {
		return
	}
	move := ""
	if l, _, ok := c.Move(*c.Shop, *c.Site); ok {
		move = ": one sheet of " + s.style.Words(c.Width) + " wants to " + s.Grow(l) + ", free, an upper bound"
	}
	s.say(finding.Acclimatise, finding.Slots{"from": s.Moisture(*c.Shop), "to": s.Moisture(*c.Site), "move": move,
		"hours": s.Decimal(wood.Acclimatise.Low, 1), "source": wood.Acclimatise.Source})
}

// year judges the band that the room keeps to through the year, where it is given.
func (s *site) year() {
	c := s.climate
	if !c.YearGiven {
		return
	}
	if hold := wood.RoomHumidity; !hold.Holds(c.Low) || !hold.Holds(c.High) {
		s.say(finding.YearWide, finding.Slots{"low": s.Percent(c.Low), "high": s.Percent(c.High), "least": s.Percent(hold.Low),
			"most": s.Percent(hold.High), "source": hold.Source})
	}
	at := 70.0 // where the site's temperature is not given: the handbook's indoor one
	if c.Site != nil {
		at = c.Site.Temperature
	}
	dry, damp, l, ok := c.Year(at)
	move := ""
	if ok {
		move = ": one sheet of " + s.style.Words(c.Width) + " moves by up to " + s.Small(l.Abs()) + ", free, an upper bound"
	}
	s.say(finding.YearSwing, finding.Slots{"from": s.Decimal(dry, 1) + " %", "to": s.Decimal(damp, 1) + " %", "move": move})
	if c.Site == nil {
		return
	}
	// Far is more than a quarter of the year's range (common practice, no source).
	if now, middle := c.Site.Moisture(), (dry+damp)/2; math.Abs(now-middle) > (damp-dry)/4 {
		s.say(finding.OffTheMiddle, finding.Slots{"now": s.Decimal(now, 1) + " %", "middle": s.Decimal(middle, 1) + " %", "source": "FPL report 1655"})
	}
}

// species says so where the movement of the wood is not known.
func (s *site) species() {
	if s.stranger == "" || s.climate.Site == nil && s.climate.Shop == nil && !s.climate.YearGiven {
		return
	}
	near := ""
	if list := wood.Nearest(s.stranger, 3); len(list) > 0 {
		near = "; the nearest are " + strings.Join(list, ", ")
	}
	s.say(finding.SpeciesUnknown, finding.Slots{"species": s.stranger, "near": near})
}
