package room

import "flitchlay/internal/source"

// wallNamed finds a wall by its name, -1 with a mistake where there is none.
func (d *decoder) wallNamed(v source.Value, of string) int {
	if !v.Given() {
		missing(v, of)
		return -1
	}
	name := v.Text("")
	if v.Kind() != source.String {
		return -1
	}
	var names []string
	for i := range d.room.Walls {
		if d.room.Walls[i].Name == name {
			return i
		}
		names = append(names, d.room.Walls[i].Name)
	}
	mend := "write the wall's name as it stands in its [[wall]]"
	if near := source.Nearest(name, names); near != "" {
		mend = "the nearest name is " + quote(near)
	}
	v.Mistake(mend, "no wall is named %q", name)
	return -1
}

// nearWall is the name of a wall, or the nearest to it; the first wall's where none is near.
func (d *decoder) nearWall(name string) string {
	var names []string
	for i := range d.room.Walls {
		names = append(names, d.room.Walls[i].Name)
	}
	if near := source.Nearest(name, names); near != "" || len(names) == 0 {
		return near
	}
	return names[0]
}

// closeAt reads the wished closing place.
func (d *decoder) closeAt(v source.Value) {
	switch v.Kind() {
	case source.Absent:
		return
	case source.String:
		if name := v.Text(""); name != "auto" {
			v.Mistake("write close_at = { corner = "+quote(d.nearWall(name))+" } to cut the corner at that wall's right end, { wall = "+
				quote(d.nearWall(name))+", at = \"3' 2\" } for a place on it, or \"auto\"", "close_at = %s does not say where on a wall", v.Raw())
		}
		return
	case source.Table:
	default:
		v.Mistake(`write "auto", { wall = "South", at = "3' 2" } or { corner = "East" }`, "close_at takes a table, not %s", v.Kind())
		return
	}
	if !d.room.Space.Closed {
		v.Mistake("leave close_at out, or write closed = true", "close_at names a place in an open room, which does not close")
		return
	}
	c := &CloseAt{Wall: -1, Corner: -1, Where: d.place(v)}
	if corner := v.Get("corner"); corner.Given() {
		if v.Get("wall").Given() || v.Get("at").Given() {
			corner.Mistake("keep either corner, or wall and at", "close_at names a corner and a place")
			return
		}
		if c.Corner = d.wallNamed(corner, "close_at"); c.Corner < 0 {
			return
		}
		w := &d.room.Walls[c.Corner]
		next := &d.room.Walls[(c.Corner+1)%len(d.room.Walls)]
		switch {
		case w.Corner != Inside && w.Corner != Outside:
			corner.Mistake("name a wall with an inside or outside corner at its right end", "the corner of wall %q is %q: it cannot be cut", w.Name, w.Corner)
			return
		case !w.Cover || !next.Cover:
			corner.Mistake("name a corner between two covered walls", "the covering does not reach round the corner of wall %q", w.Name)
			return
		}
		w.Wrap = false
		d.room.Space.CloseAt = c
		return
	}
	c.Wall = d.wallNamed(v.Get("wall"), "close_at")
	at, ok := d.required(v.Get("at"), "close_at")
	if c.Wall < 0 || !ok {
		return
	}
	w := &d.room.Walls[c.Wall]
	switch {
	case !w.Cover:
		v.Get("wall").Mistake("name a covered wall", "wall %q is bare: nothing closes on it", w.Name)
	case w.Length > 0 && (at < 0 || at > w.Length):
		v.Get("at").Mistake(d.stand(w), "the closing place stands outside wall %q (%s)", w.Name, d.words(w.Length))
	}
	c.At = at
	d.room.Space.CloseAt = c
}

// closedSpan reports whether the covering goes round the room without an end.
func (d *decoder) closedSpan() bool {
	for i := range d.room.Walls {
		w := &d.room.Walls[i]
		if !w.Cover || w.Corner == None || !w.Wrap || len(w.Bare) > 0 || !d.sound[i] {
			return false
		}
		for k := range w.Openings {
			if o := &w.Openings[k]; o.Grain != "through" && w.FullHeight(o) {
				return false
			}
		}
	}
	return d.room.Space.Closed && !d.room.Veneer.Horizontal
}
