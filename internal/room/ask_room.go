package room

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// What is asked about in days, distances and shares.
//
// Source: common practice, no source.
const (
	stale       = 90 // days from the measuring to the drawing
	closesIn    = length.Inch
	manySpares  = 500_000 // millionths of the sheets
	fewestWalls = 4       // of a room that may close
)

// ofRoom asks what the room as a whole leaves open.
func (a *asker) ofRoom() {
	r, whole := a.room, finding.Finding{Place: "room", Wall: -1}
	project := a.root.Get("project").Section()
	measured, drawn := day(r.Project.Measured), day(r.Project.Drawn)
	switch days := int(drawn.Sub(measured).Hours() / 24); {
	case measured.IsZero():
		a.ask(finding.NotMeasured, project.Get("measured"), "", "measured = 2026-04-14 in [project]", whole, nil)
	case !drawn.IsZero() && days > stale:
		a.ask(finding.MeasuredLongAgo, project.Get("measured"), "", "measured, once it was looked at again", whole,
			finding.Slots{"measured_on": r.Project.Measured, "days": strconv.Itoa(days)})
	}
	if p := &r.Project; p.Drawn != "" && p.FirstIssue() == "" {
		a.ask(finding.IssueUndated, project.Get("drawn"), "", "issued in [project]", whole, finding.Slots{"drawn": p.Drawn, "mark": p.olderThanDrawn()})
	}
	site := a.root.Get("site").Section()
	if !r.Site.Given {
		a.ask(finding.SiteUnread, site, "", "temperature and humidity in [site]", whole, nil)
	}
	if b := r.Site.Board; b != nil && b.Reading == nil {
		a.ask(finding.BoardUnread, site.Get("board"), "", "reading", whole, nil)
	}
	space := a.root.Get("room").Section()
	for _, key := range []string{"base", "crown"} {
		if v := space.Get(key); v.Given() {
			a.odd(finding.TrimOdd, v, key, map[string]L{"base": r.Space.Base, "crown": r.Space.Crown}[key], whole, finding.Slots{"key": key})
		}
	}
	if v := space.Get("level_line"); v.Given() {
		a.odd(finding.LevelOdd, v, "", r.Space.LevelLine, whole, finding.Slots{})
	}
	if gap, ok := r.comesBack(); ok && !space.Get("closed").Given() {
		whole.Measured = &gap
		a.ask(finding.ClosedUnsaid, a.root.Get("wall").Tables()[len(r.Walls)-1], "", "closed = true or false in [room]", whole, nil)
	}
}

// day is a date of the file, the zero time where there is none.
func day(text string) time.Time {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return time.Time{}
	}
	return t
}

// comesBack reports how far the end of the last wall of an open room is from where the first begins, and whether that is so near
// that the walls may close.
func (r *Room) comesBack() (L, bool) {
	if r.Space.Closed || len(r.Walls) < fewestWalls {
		return 0, false
	}
	var heading, x, y float64
	for i := range r.Walls {
		w := &r.Walls[i]
		sin, cos := math.Sincos(heading * math.Pi / 180)
		x, y = x+float64(w.Length)*cos, y+float64(w.Length)*sin
		if w.Corner == Outside {
			heading -= w.Angle
		} else {
			heading += w.Angle
		}
		if w.Corner == None && i < len(r.Walls)-1 {
			return 0, false // how the next wall stands to it nobody has said
		}
	}
	gap := L(math.Round(math.Hypot(x, y)))
	return gap, gap <= closesIn
}

// ofVeneer asks about sizes of a sheet, the spares to order, and their order.
func (a *asker) ofVeneer() {
	n, v := &a.room.Veneer, a.root.Get("veneer").Section()
	for _, s := range []struct {
		key string
		is  L
	}{{"gross_width", n.GrossWidth}, {"overlap", n.Overlap}, {"length", n.Length}} {
		a.odd(finding.SheetOdd, v.Get(s.key), s.key, s.is, finding.Finding{Place: "veneer", Wall: -1}, finding.Slots{"key": s.key})
	}
	share := a.root.Get("rules").Get("spare_share")
	if r := &a.room.Rules; r.SpareShareParts > manySpares {
		a.ask(finding.SparesMany, share, "", "spare_share", finding.Finding{Place: "rules", Wall: -1},
			finding.Slots{"share": share.Raw(), "spares": fmt.Sprint(millions(r.SpareShareParts * 100)), "sheets": "100"})
	}
}

// millions rounds up to whole millions, and says how many.
func millions(n int64) int64 { return (n + 999_999) / 1_000_000 }

// ofCasings asks how wide the casings are of which nothing is said.
func (a *asker) ofCasings() {
	if len(a.uncased) > 0 {
		a.ask(finding.CasingUnsaid, a.uncased[0], "", "casing in [room] or of the opening, 0 for none", finding.Finding{Place: "room", Wall: -1},
			finding.Slots{"openings": list(a.cased)})
	}
}

// list puts names into a sentence.
func list(names []string) string {
	if n := len(names) - 1; n > 0 {
		return strings.Join(names[:n], ", ") + " and " + names[n]
	}
	return names[0]
}

// ofLeans asks of the corners at which nothing was said of a lean, where at others it was.
func (a *asker) ofLeans() {
	tables := a.root.Get("wall").Tables()
	var first source.Value
	var silent []string
	given := false
	for i, v := range tables {
		w := &a.room.Walls[i]
		next := &a.room.Walls[(i+1)%len(tables)]
		switch {
		case v.Get("lean").Given():
			given = true
		case !w.Cover || w.Corner != Inside && w.Corner != Outside:
		case next.LeanLeftGiven: // read there
		default:
			if silent = append(silent, w.Name); len(silent) == 1 {
				first = v
			}
		}
	}
	if !given || len(silent) == 0 {
		return
	}
	walls := "is that at the right end of wall " + silent[0]
	if len(silent) > 1 {
		walls = "are those at the right ends of walls " + list(silent)
	}
	a.ask(finding.LeanUnsaid, first, "", "lean = 0", finding.Finding{Place: "room", Wall: -1}, finding.Slots{"walls": walls})
}
