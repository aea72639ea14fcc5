package edit

import (
	"fmt"
	"strconv"

	"flitchlay/internal/source"
)

// Change is one change of a room file.
//
// Shape: which fields count says Do. Lengths are as they are written in the file, with their quotes.
type Change struct {
	Do       What
	Wall     int    // index of its [[wall]]
	Item     int    // index of the pin or the stretch on that wall; -1: a new one
	At       string // of a pin, of the closing seam
	Put      string // of a pin: seam, middle, either
	From, To string // of a stretch without seams
	Word     string // of an aim; the name of a wall
	Sheets   string // of what hangs
	Left     string // its left edge, where that is asked for
	Edges    string // its edges, a list as it is written
}

// What is what a change does.
type What string

// The changes.
const (
	Pin      What = "pin"    // sets or moves a pin
	Unpin    What = "unpin"  // takes one out
	Keep     What = "keep"   // sets or moves a stretch without seams
	Unkeep   What = "unkeep" // takes one out
	Aim      What = "aim"    // chooses an aim
	Close    What = "close"  // wishes a closing place
	CloseOff What = "close-auto"
	Hung     What = "hung" // notes what hangs
)

// Apply changes a text, all of it or nothing.
//
// Errors: the text cannot be read; a change names what is not there, or its outcome could not be read.
func Apply(name string, body []byte, list []Change) ([]byte, error) {
	out := string(body)
	for _, c := range list {
		t, err := read(name, out)
		if err != nil {
			return nil, err
		}
		if err := t.apply(c); err != nil {
			return nil, err
		}
		out = t.body
	}
	if _, err := read(name, out); err != nil {
		return nil, fmt.Errorf("the change cannot be written into %s: %w", name, err)
	}
	return []byte(out), nil
}

func (t *text) apply(c Change) error {
	switch c.Do {
	case Pin:
		pairs := []pair{{"at", c.At}}
		if c.Put != "" && c.Put != "seam" {
			pairs = append(pairs, pair{"put", strconv.Quote(c.Put)})
		}
		return t.item(c, "pin", pairs, "put")
	case Keep:
		return t.item(c, "keep_clear", []pair{{"from", c.From}, {"to", c.To}}, "")
	case Unpin:
		return t.without(c, "pin")
	case Unkeep:
		return t.without(c, "keep_clear")
	case Aim:
		t.set(t.root.Get("rules"), "rules", pair{"aim", strconv.Quote(c.Word)})
	case Close:
		t.close(c)
	case CloseOff:
		t.unset(t.root.Get("room"), "close_at")
	case Hung:
		pairs := []pair{{"wall", strconv.Quote(c.Word)}, {"sheets", strconv.Quote(c.Sheets)}}
		if c.Left != "" {
			pairs = append(pairs, pair{"left_edge", c.Left})
		}
		t.add(t.root, "hung", "hung", append(pairs, pair{"edges", c.Edges}))
	default:
		return fmt.Errorf("there is no change %q", c.Do)
	}
	return nil
}

// wall is the table of a wall.
func (t *text) wall(i int) (source.Value, error) {
	list := t.root.Get("wall").Items()
	if i < 0 || i >= len(list) {
		return source.Value{}, fmt.Errorf("there is no wall %d", i+1)
	}
	return list[i], nil
}

// item sets or moves one thing of a wall. The key that else falls away is the one that its default stands for.
func (t *text) item(c Change, name string, pairs []pair, other string) error {
	w, err := t.wall(c.Wall)
	if err != nil {
		return err
	}
	if c.Item < 0 {
		t.add(w, name, "wall."+name, pairs)
		return nil
	}
	// each value moves those behind it: the last comes first
	for i := len(pairs) - 1; i >= 0; i-- {
		v, err := t.itemOf(c, name)
		if err != nil {
			return err
		}
		t.set(v, "", pairs[i])
		if err := t.again(); err != nil {
			return err
		}
	}
	if other != "" && len(pairs) == 1 {
		v, err := t.itemOf(c, name)
		if err != nil {
			return err
		}
		t.unset(v, other)
	}
	return nil
}

// again reads the text as it has become.
func (t *text) again() error {
	next, err := read(t.root.Mistakes().Text.Name, t.body)
	if err == nil {
		*t = *next
	}
	return err
}

func (t *text) itemOf(c Change, name string) (source.Value, error) {
	w, err := t.wall(c.Wall)
	if err != nil {
		return w, err
	}
	list := w.Get(name).Items()
	if c.Item < 0 || c.Item >= len(list) {
		return w, fmt.Errorf("there is no %s %d on wall %d", name, c.Item+1, c.Wall+1)
	}
	return list[c.Item], nil
}

func (t *text) without(c Change, name string) error {
	v, err := t.itemOf(c, name)
	if err == nil {
		t.drop(v)
	}
	return err
}

// close wishes a closing place, in brackets or under the header that it has.
func (t *text) close(c Change) {
	room := t.root.Get("room")
	row := "{ wall = " + strconv.Quote(c.Word) + ", at = " + c.At + " }"
	if v := room.Get("close_at"); v.Given() && v.Kind() == source.Table && t.headed(v) && len(v.Fields()) > 0 {
		first := v.Fields()[0]
		last := v.Fields()[len(v.Fields())-1]
		from, _ := t.line(first.KeySpan().Start)
		_, to := t.line(end(last))
		before := t.indent(first.KeySpan().Start)
		t.replace(from, to, before+"wall = "+strconv.Quote(c.Word)+t.newline()+before+"at   = "+c.At)
		return
	}
	t.set(room, "room", pair{"close_at", row})
}
