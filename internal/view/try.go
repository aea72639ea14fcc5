package view

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"

	"flitchlay/internal/edit"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/page"
	"flitchlay/internal/room"
)

// wish is a change as a page asks for it.
type wish struct {
	Do    edit.What  `json:"do"`
	Wall  int        `json:"wall"`
	Item  int        `json:"item"`
	X     float64    `json:"x"`
	To    float64    `json:"to"`
	Put   string     `json:"put"`
	Aim   string     `json:"aim"`
	First int        `json:"first"` // sheets that hang
	Last  int        `json:"last"`
	Left  string     `json:"left"`
	Edges [][]string `json:"edges"` // each at the level line, or at foot and head
}

// trial is what a page asks to be laid out, or written.
type trial struct {
	asked
	Room    int    `json:"room"`
	Base    string `json:"base"`
	Client  string `json:"client"`
	Step    int64  `json:"step"`
	Changes []wish `json:"changes"`
}

// mostChanges is how many changes a trial may have.
const mostChanges = 400

// lane is what is tried from one page, one step after the other.
type lane struct {
	sync.Mutex
	layer *layout.Layer
	last  atomic.Int64
}

// errLate says that a later step has come.
var errLate = errors.New("a later step has come")

// read takes a trial from a request.
func read(r *http.Request) (*trial, error) {
	var t trial
	if err := json.NewDecoder(r.Body).Decode(&t); err != nil {
		return nil, fmt.Errorf("the request cannot be read")
	}
	if len(t.Changes) > mostChanges || len(t.Client) > 64 {
		return nil, fmt.Errorf("that is too much")
	}
	return &t, nil
}

// try lays out what a page asks for. It writes nothing.
func (s *Server) try(w http.ResponseWriter, r *http.Request) {
	t, err := read(r)
	if err != nil {
		refuse(w, http.StatusBadRequest, err.Error())
		return
	}
	house, version := s.known.now()
	at, err := house.roomOf(t.Room, t.Base)
	if err != nil {
		refuse(w, http.StatusConflict, err.Error())
		return
	}
	out, _ := s.about(house, version, t.Room)
	text, err := s.changed(at, t.Changes)
	if err == nil {
		out.Diff = edit.Lines(at.Text, text)
		out.Plan, err = s.lay(r, t, at, text)
	}
	if out.Plan != nil {
		page.Quote(out.Plan.Findings, text)
	}
	switch {
	case errors.Is(err, errLate):
		refuse(w, http.StatusGone, err.Error())
		return
	case err != nil:
		out.Mistakes = page.Mistakes(err)
	}
	out.Good = err == nil
	send(w, http.StatusOK, out)
}

// try lays a text out; one that is short of sheets in a job with those that other rooms would have.
func (l *lane) try(at *Room, text []byte) (p *layout.Plan, err error) {
	for _, more := range []bool{false, true} {
		decoded, err := at.Again(text, more)
		if err != nil {
			return nil, err
		}
		if p, err = l.layer.LayOwn(decoded); err != nil || p.Totals.Short == 0 {
			return p, err
		}
	}
	return p, nil
}

// mostLanes is how many pages may try at a time: more are pages that were loaded again, and left.
const mostLanes = 24

// laneOf is the lane of a page.
func (s *Server) laneOf(client string) *lane {
	found, known := s.lanes.LoadOrStore(client, &lane{layer: layout.NewLayer()})
	if !known && s.pages.Add(1) > mostLanes {
		s.pages.Store(1)
		s.lanes.Range(func(key, _ any) bool {
			if key != client {
				s.lanes.Delete(key)
			}
			return true
		})
	}
	return found.(*lane)
}

// lay lays a changed text out, unless a later step has come meanwhile.
func (s *Server) lay(r *http.Request, t *trial, at *Room, text []byte) (*planned, error) {
	l := s.laneOf(t.Client)
	for last := l.last.Load(); t.Step > last && !l.last.CompareAndSwap(last, t.Step); last = l.last.Load() {
	}
	l.Lock()
	defer l.Unlock()
	if t.Step < l.last.Load() || r.Context().Err() != nil {
		return nil, errLate
	}
	p, err := l.try(at, text)
	if err != nil {
		return nil, err
	}
	if t.Step < l.last.Load() || r.Context().Err() != nil {
		return nil, errLate
	}
	at.Judge(p)
	return show(p, t.asked, !t.Quick)
}

// changed is the text of a room with changes in it.
func (s *Server) changed(at *Room, list []wish) ([]byte, error) {
	plan := at.Plan
	if plan == nil {
		plan = s.known.lastGood(at.Name)
	}
	if plan == nil {
		return nil, fmt.Errorf("there is no layout to change")
	}
	var out []edit.Change
	for _, x := range list {
		c, err := changeOf(plan.Room, x)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return edit.Apply(at.File, at.Text, out)
}

// changeOf is a change as it is written in a room's file.
func changeOf(r *room.Room, x wish) (edit.Change, error) {
	unit := r.Project.Units
	c := edit.Change{Do: x.Do, Wall: x.Wall, Item: x.Item, Word: x.Aim}
	if x.Wall < 0 || x.Wall >= len(r.Walls) {
		return c, fmt.Errorf("there is no wall %d", x.Wall+1)
	}
	wall := &r.Walls[x.Wall]
	on := func(mm float64) string {
		l := L(math.Round(min(max(mm, 0), 1e6) * float64(length.Millimetre)))
		return Raw(min(l, wall.Length), unit)
	}
	switch x.Do {
	case edit.Pin:
		c.At, c.Put = on(x.X), x.Put
	case edit.Keep:
		c.From, c.To = on(min(x.X, x.To)), on(max(x.X, x.To))
	case edit.Close:
		c.Word, c.At = wall.Name, on(x.X)
	case edit.Hung:
		return hung(wall.Name, unit, x)
	}
	return c, nil
}

// L is short for the exact length.
type L = length.Length

// Raw is a length as room files have it: "3' 2 1/2", or a number of millimetres. It is brought to what a rule is marked with.
func Raw(l L, unit length.Unit) string {
	text := length.StyleOf(unit).Format(l)
	if unit == length.Millimetres {
		return strings.ReplaceAll(text, ",", ".")
	}
	return strconv.Quote(strings.TrimSuffix(strings.ReplaceAll(text, "'-", "' "), `"`))
}

// hung is what hangs on a wall, as it was typed.
//
// Errors: a figure that cannot be read.
func hung(wall string, unit length.Unit, x wish) (edit.Change, error) {
	c := edit.Change{Do: edit.Hung, Word: wall}
	figure := func(text string) (string, error) {
		text = strings.TrimSpace(text)
		if _, err := length.Parse(text, unit); err != nil {
			return "", fmt.Errorf("%q: %w", text, err)
		}
		return strconv.Quote(text), nil
	}
	var edges []string
	for _, pair := range x.Edges {
		var raws []string
		for _, text := range pair {
			if strings.TrimSpace(text) == "" {
				continue
			}
			raw, err := figure(text)
			if err != nil {
				return c, err
			}
			raws = append(raws, raw)
		}
		switch len(raws) {
		case 1:
			edges = append(edges, raws[0])
		case 2:
			edges = append(edges, "["+raws[0]+", "+raws[1]+"]")
		default:
			return c, fmt.Errorf("an edge has no figure")
		}
	}
	c.Edges = "[" + strings.Join(edges, ", ") + "]"
	if c.Sheets = strconv.Itoa(x.First); x.Last != x.First {
		c.Sheets += "-" + strconv.Itoa(x.Last)
	}
	if strings.TrimSpace(x.Left) != "" {
		var err error
		if c.Left, err = figure(x.Left); err != nil {
			return c, err
		}
	}
	return c, nil
}

// ErrChanged is what Source.Write says where a file no longer holds what it held.
var ErrChanged = errors.New("the file was changed meanwhile")

// keep writes what was tried into the file, if that is still the one it was tried on and the room can be laid out so.
func (s *Server) keep(w http.ResponseWriter, r *http.Request) {
	t, err := read(r)
	if err != nil {
		refuse(w, http.StatusBadRequest, err.Error())
		return
	}
	house, _ := s.known.now()
	at, err := house.roomOf(t.Room, t.Base)
	if err != nil {
		refuse(w, http.StatusConflict, err.Error())
		return
	}
	text, err := s.changed(at, t.Changes)
	if err == nil {
		_, err = at.Again(text, false)
	}
	if err == nil {
		err = s.source.Write(at.File, at.Text, text)
	}
	switch {
	case errors.Is(err, ErrChanged):
		refuse(w, http.StatusConflict, errStale.Error())
		return
	case err != nil:
		refuse(w, http.StatusUnprocessableEntity, page.Mistakes(err)[0].Message)
		return
	}
	send(w, http.StatusOK, map[string]any{"file": at.File, "diff": edit.Lines(at.Text, text)})
}
