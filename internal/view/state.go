package view

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"flitchlay/internal/edit"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/page"
)

// state is all that a page shows of a room.
type state struct {
	Version  int            `json:"version"`
	Title    string         `json:"title"`
	Rooms    []roomName     `json:"rooms"`
	Room     int            `json:"room"`
	File     string         `json:"file"`
	Base     string         `json:"base"` // the text that it is of
	Good     bool           `json:"good"` // it is as the file has it; else the last that could be laid out
	Mistakes []page.Mistake `json:"mistakes"`
	Plan     *planned       `json:"plan"`
	Diff     []edit.Line    `json:"diff,omitempty"`
	Sets     []string       `json:"sets"`
}

// roomName is a room to choose.
type roomName struct {
	Name string `json:"name"`
	Bad  bool   `json:"bad"`
}

// planned is a layout as a page shows it.
type planned struct {
	Title    string         `json:"title"`
	Metric   bool           `json:"metric"`
	Aim      string         `json:"aim"`
	Closed   bool           `json:"closed"`
	Wished   bool           `json:"wished"` // a closing place
	Snap     float64        `json:"snap"`
	Fields   [2]string      `json:"fields"` // for what hangs, at foot and head
	Counts   page.Counts    `json:"counts"`
	Findings []page.Finding `json:"findings"`
	Walls    []page.Wall    `json:"walls"`
	Ribbon   *page.Drawing  `json:"ribbon"`
	Wall     int            `json:"wall"`
	Drawing  *page.Drawing  `json:"drawing"` // of the wall; nil: it is bare
}

// asked is which drawings a page wants: a wall, and how wide and high they may be, in mm.
type asked struct {
	Wall   int     `json:"wall"`
	Wide   float64 `json:"wide"`
	High   float64 `json:"high"`
	Ribbon float64 `json:"ribbon"`
	Quick  bool    `json:"quick"` // for a moment only; then without the ribbon where no width is asked for
}

// bounded brings sizes to what a screen can have.
func (a asked) bounded() asked {
	a.Wide, a.High, a.Ribbon = min(max(a.Wide, 40), 3000), min(max(a.High, 40), 3000), min(max(a.Ribbon, 40), 3000)
	return a
}

func askedOf(q url.Values) asked {
	number := func(key string) float64 {
		v, err := strconv.ParseFloat(q.Get(key), 64)
		if err != nil {
			return 0
		}
		return v
	}
	return asked{Wall: int(number("wall")), Wide: number("wide"), High: number("high"), Ribbon: number("ribbon")}
}

// state tells a page of a room.
func (s *Server) state(w http.ResponseWriter, r *http.Request) {
	house, version := s.known.now()
	out, at := s.about(house, version, number(r, "room"))
	if at == nil {
		send(w, http.StatusOK, out)
		return
	}
	plan := at.Plan
	out.Good = plan != nil
	if plan == nil {
		plan = s.known.lastGood(at.Name)
	}
	if at.Err != nil {
		out.Mistakes = page.Mistakes(at.Err)
	}
	if plan != nil {
		var err error
		if out.Plan, err = show(plan, askedOf(r.URL.Query()), house.Whole); err != nil {
			refuse(w, http.StatusInternalServerError, err.Error())
			return
		}
		if out.Good {
			page.Quote(out.Plan.Findings, at.Text)
		}
	}
	send(w, http.StatusOK, out)
}

// about begins to tell of a room; the room is nil where there are none.
func (s *Server) about(house *House, version, index int) (*state, *Room) {
	out := &state{Version: version, Title: house.Title, Rooms: []roomName{}, Mistakes: []page.Mistake{}, Sets: s.source.Sets}
	if house.Err != nil {
		out.Mistakes = page.Mistakes(house.Err)
	}
	for _, r := range house.Rooms {
		out.Rooms = append(out.Rooms, roomName{r.Name, r.Err != nil})
	}
	if len(house.Rooms) == 0 {
		return out, nil
	}
	out.Room = min(max(index, 0), len(house.Rooms)-1)
	at := house.Rooms[out.Room]
	out.File, out.Base = at.File, sum(at.Text)
	return out, at
}

// number is a number of a request, 0 where it is none.
func number(r *http.Request, key string) int {
	n, err := strconv.Atoi(r.URL.Query().Get(key))
	if err != nil {
		return 0
	}
	return n
}

// show draws a plan for a page; where all is wanted, with how far each line may be off.
func show(p *layout.Plan, a asked, whole bool) (*planned, error) {
	wide := a.Ribbon
	a = a.bounded()
	d, err := page.NewDrawer(p, !a.Quick)
	if err != nil {
		return nil, err
	}
	r := p.Room
	out := &planned{Title: r.Project.Title, Metric: r.Project.Units == length.Millimetres, Aim: layout.AimWord(p.Aim), Closed: r.Space.Closed, Wished: r.Space.CloseAt != nil,
		Snap: r.Rules.Snap.MM(), Counts: d.Counts(), Findings: d.Findings(), Wall: a.Wall}
	if a.Quick {
		out.Walls = d.Glance(a.Wall)
	} else {
		out.Walls = d.Facts(whole)
	}
	if out.Fields, err = page.HungWords(r.Page.Language); err != nil {
		return nil, err
	}
	if wide > 0 || !a.Quick {
		if out.Ribbon, err = d.Ribbon(a.Ribbon); err != nil {
			return nil, err
		}
	}
	if a.Wall < 0 || a.Wall >= len(r.Walls) || !out.Walls[a.Wall].Covered {
		for i, w := range out.Walls {
			if w.Covered {
				out.Wall = i
				break
			}
		}
	}
	out.Drawing, err = d.Wall(out.Wall, a.Wide, a.High)
	return out, err
}

// roomOf is a room of the house as somebody knows it.
//
// Errors: it is not there, or its file has changed since.
func (h *House) roomOf(index int, base string) (*Room, error) {
	if index < 0 || index >= len(h.Rooms) {
		return nil, fmt.Errorf("there is no room %d", index+1)
	}
	if r := h.Rooms[index]; sum(r.Text) == base {
		return r, nil
	}
	return nil, errStale
}

// errStale says that a file is no longer what it was when something was tried on it.
var errStale = errors.New("the file has changed since")
