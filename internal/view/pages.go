package view

import (
	"fmt"
	"net/http"
	"slices"
	"sync"

	"flitchlay/internal/layout"
	"flitchlay/internal/page"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// drawnSets keeps the sets of a version that were asked for.
type drawnSets struct {
	sync.Mutex
	of   map[string]*Drawn
	plan map[string]*layout.Plan
}

// setOf draws a set of a room, or gives it as it was drawn.
//
// Errors: there is no such set; or it cannot be drawn.
func (s *Server) setOf(r *http.Request, set string) (*Drawn, string, error) {
	house, _ := s.known.now()
	index := number(r, "room")
	if index < 0 || index >= len(house.Rooms) || !slices.Contains(s.source.Sets, set) {
		return nil, "", fmt.Errorf("there is no such set")
	}
	at := house.Rooms[index]
	plan := at.Plan
	if plan == nil {
		plan = s.known.lastGood(at.Name)
	}
	if plan == nil {
		return nil, "", fmt.Errorf("the room has no layout")
	}
	s.drawn.Lock()
	defer s.drawn.Unlock()
	key := at.Name + "\x00" + set
	if s.drawn.of == nil {
		s.drawn.of, s.drawn.plan = map[string]*Drawn{}, map[string]*layout.Plan{}
	}
	if d := s.drawn.of[key]; d != nil && s.drawn.plan[key] == plan {
		return d, at.Name, nil
	}
	d, err := s.source.Draw(at, plan, set)
	if err != nil {
		return nil, "", err
	}
	s.drawn.of[key], s.drawn.plan[key] = d, plan
	return d, at.Name, nil
}

// listPages lists the pages of a set.
func (s *Server) listPages(w http.ResponseWriter, r *http.Request) {
	d, _, err := s.setOf(r, r.URL.Query().Get("set"))
	if err != nil {
		refuse(w, http.StatusUnprocessableEntity, err.Error())
		return
	}
	type row struct {
		Name   string  `json:"name"`
		Title  string  `json:"title"`
		Width  float64 `json:"width"`
		Height float64 `json:"height"`
	}
	list := []row{}
	for _, p := range d.Document.Pages {
		list = append(list, row{p.Name, p.Title, p.Width, p.Height})
	}
	send(w, http.StatusOK, list)
}

// onePage gives a page as a picture.
func (s *Server) onePage(w http.ResponseWriter, r *http.Request) {
	d, _, err := s.setOf(r, r.URL.Query().Get("set"))
	n := number(r, "n")
	if err != nil || n < 0 || n >= len(d.Document.Pages) {
		http.NotFound(w, r)
		return
	}
	picture(w, d.Document.Pages[n], svg.Options{Set: d.Document.Title})
}

// picture sends a page as SVG. Its letters are outlines: a picture loads no face.
func picture(w http.ResponseWriter, p *scene.Page, o svg.Options) {
	o.Lettering = svg.Outlined
	data, err := svg.Page(p, o)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	w.Write(data)
}

// pdf gives a set to save.
func (s *Server) pdf(w http.ResponseWriter, r *http.Request) {
	set := r.URL.Query().Get("set")
	d, _, err := s.setOf(r, set)
	if err != nil {
		http.Error(w, err.Error(), http.StatusUnprocessableEntity)
		return
	}
	w.Header().Set("Content-Type", "application/pdf")
	w.Header().Set("Content-Disposition", `attachment; filename="`+set+`.pdf"`)
	w.Write(d.PDF)
}

// card gives the card of a sheet as a picture.
func (s *Server) card(w http.ResponseWriter, r *http.Request) {
	d, _, err := s.setOf(r, page.CardSet)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	p, box := page.Card(d.Document, r.URL.Query().Get("key"))
	if p == nil {
		http.NotFound(w, r)
		return
	}
	picture(w, p, svg.Options{Part: box})
}
