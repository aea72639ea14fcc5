package view

import (
	"fmt"
	"net/http"
	"sync"

	"flitchlay/internal/layout"
)

// known is what is known of the rooms: as they were read last, and of each the last layout that could be made.
type known struct {
	sync.Mutex
	house   *House
	version int
	good    map[string]*layout.Plan // by the room's name
	told    map[chan int]bool       // who waits for the next version
}

func newKnown(h *House) *known {
	k := &known{good: map[string]*layout.Plan{}, told: map[chan int]bool{}}
	k.take(h)
	return k
}

// take puts what was read in the place of what was known, and tells everybody.
func (k *known) take(h *House) {
	k.Lock()
	defer k.Unlock()
	k.house = h
	k.version++
	for _, r := range h.Rooms {
		if r.Plan != nil {
			k.good[r.Name] = r.Plan
		}
	}
	for c := range k.told {
		select { // who is behind needs the last version only
		case <-c:
		default:
		}
		c <- k.version
	}
}

// now is what is known.
func (k *known) now() (*House, int) {
	k.Lock()
	defer k.Unlock()
	return k.house, k.version
}

// lastGood is the last layout of a room that could be made, nil where there was none.
func (k *known) lastGood(name string) *layout.Plan {
	k.Lock()
	defer k.Unlock()
	return k.good[name]
}

// listen gives a channel on which every version comes, the present one first.
func (k *known) listen() (c chan int, end func()) {
	k.Lock()
	defer k.Unlock()
	c = make(chan int, 1)
	c <- k.version
	k.told[c] = true
	return c, func() {
		k.Lock()
		defer k.Unlock()
		delete(k.told, c)
	}
}

// events tells a page of every version, as server-sent events.
//
// Source: WHATWG HTML, server-sent events.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	flush, ok := w.(http.Flusher)
	if !ok {
		http.Error(w, "no stream", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/event-stream")
	c, end := s.known.listen()
	defer end()
	for {
		select {
		case <-r.Context().Done():
			return
		case <-s.stop.Done():
			return
		case version := <-c:
			fmt.Fprintf(w, "data: %d\n\n", version)
			flush.Flush()
		}
	}
}
