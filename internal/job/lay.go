package job

import (
	"slices"
	"sync"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// Laid is a room of a job, laid out.
type Laid struct {
	Index int // in Rooms
	Room  *Room
	Plan  *layout.Plan
	Text  []byte // the room file that it was laid out from, to be carried by its drawings
	Err   error  // in place of a plan
	Made  any    // what was made of it beside the others
}

// Each lays every room out, as many at a time as there are workers, and hands them on in their order. What is made of a room beside
// the others is made by with, which may be nil. Rooms are not kept: memory does not grow with their number.
//
// Errors: that of then, which ends it.
func (j *Job) Each(workers int, with func(*Laid), then func(*Laid) error) error {
	return j.EachOf(j.Part(1, 1), workers, with, then)
}

// Part is every so manieth room, by its index: the part-th and those that follow it by as many as there are parts.
func (j *Job) Part(part, of int) (list []int) {
	for i := part - 1; i < len(j.Rooms); i += of {
		list = append(list, i)
	}
	return list
}

// EachOf is Each of some rooms.
func (j *Job) EachOf(rooms []int, workers int, with func(*Laid), then func(*Laid) error) error {
	waiting := make(chan chan *Laid, max(1, workers)-1)
	stop := make(chan struct{})
	known := newLayers(j, rooms)
	var under sync.WaitGroup
	defer under.Wait()
	defer close(stop)
	go func() {
		defer close(waiting)
		for _, i := range rooms {
			done := make(chan *Laid, 1)
			select {
			case waiting <- done:
			case <-stop:
				return
			}
			under.Go(func() {
				one := j.Lay(i, known)
				if with != nil {
					with(one)
				}
				done <- one
			})
		}
	}()
	for done := range waiting {
		if err := then(<-done); err != nil {
			return err
		}
	}
	return nil
}

// Lay lays one room out; what is known of rooms like it may be nil.
func (j *Job) Lay(i int, known *layers) *Laid {
	r := j.Rooms[i]
	if r.Err != nil {
		return &Laid{Index: i, Room: r, Err: r.Err}
	}
	text := j.text(r)
	out := &Laid{Index: i, Room: r, Text: []byte(text.Body())}
	decoded, err := room.DecodeText(text)
	if err != nil {
		out.Err = err
		return out
	}
	y := known.take(r)
	defer known.give(r, y)
	if out.Plan, out.Err = y.Lay(decoded); out.Err == nil {
		j.unspared(r, out.Plan)
	}
	return out
}

// layers keeps what is known of the spans of rooms of one file, so that equal rooms are solved once.
type layers struct {
	sync.Mutex
	still map[int]int // rooms of a file that are still to come
	idle  map[int][]*layout.Layer
}

func newLayers(j *Job, rooms []int) *layers {
	l := &layers{still: map[int]int{}, idle: map[int][]*layout.Layer{}}
	for _, i := range rooms {
		l.still[j.Rooms[i].file.kind]++
	}
	return l
}

// take gets what is known for a room.
func (l *layers) take(r *Room) *layout.Layer {
	if l == nil {
		return layout.NewLayer()
	}
	l.Lock()
	defer l.Unlock()
	l.still[r.file.kind]--
	list := l.idle[r.file.kind]
	if n := len(list); n > 0 {
		l.idle[r.file.kind] = list[:n-1]
		return list[n-1]
	}
	return layout.NewLayer()
}

// give keeps it for the next room of the file, as long as one is to come.
func (l *layers) give(r *Room, y *layout.Layer) {
	if l == nil {
		return
	}
	l.Lock()
	defer l.Unlock()
	if l.still[r.file.kind] == 0 {
		delete(l.idle, r.file.kind)
		return
	}
	l.idle[r.file.kind] = append(l.idle[r.file.kind], y)
}

// wallOf is the wall on which a sheet hangs, of two the one that shows more of it.
func wallOf(p *layout.Plan, s *layout.Sheet) string {
	if k := mostOn(s, -1); k >= 0 {
		return p.Room.Walls[k].Name
	}
	return ""
}

// LaidRows are the sheets that a plan lays, by flitch, as laid takes them.
func LaidRows(p *layout.Plan) (rows []Row) {
	for _, s := range p.Left {
		if len(s.Laid) > 0 {
			numbers := slices.Clone(s.Laid)
			slices.Sort(numbers)
			rows = append(rows, Row{s.Flitch, slices.Compact(numbers)})
		}
	}
	return rows
}
