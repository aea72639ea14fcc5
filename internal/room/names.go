package room

import "flitchlay/internal/source"

// nameAll makes the openings and boxes of all walls with their kinds and names: those that have no name of their own
// get the letter of their kind and the next number through the whole room that no other has.
func (d *decoder) nameAll(tables []source.Value) {
	taken := map[string]bool{}
	for i, v := range tables {
		for _, o := range v.Get("opening").Tables() {
			name := o.Get("name")
			text := name.Text("")
			switch {
			case name.Kind() == source.String && text == "":
				name.Mistake("name the opening, or leave the key out", "the opening's name is empty")
			case text != "" && taken[text]:
				name.Mistake("give every opening of the room a name of its own", "a second opening is named %q", text)
			case text != "":
				taken[text] = true
			}
			kind := withoutSill
			if o.Get("sill").Given() {
				kind = withSill
			}
			kind = Kind(o.Get("kind").Word(string(kind), kindWords(false)...))
			w := &d.room.Walls[i]
			w.Openings = append(w.Openings, Opening{Name: text, Kind: kind, At: d.place(o)})
		}
	}
	next := map[string]int64{}
	number := func(letter string) string {
		for {
			next[letter]++
			if name := letter + itoa(next[letter]); !taken[name] {
				taken[name] = true
				return name
			}
		}
	}
	for i := range d.room.Walls {
		w := &d.room.Walls[i]
		for k := range w.Openings {
			if o := &w.Openings[k]; o.Name == "" {
				o.Name = number(o.Kind.Traits().Letter)
			}
		}
	}
	for i, v := range tables {
		for _, b := range v.Get("box").Tables() {
			kind := Kind(b.Get("kind").Word(string(anyBox), kindWords(true)...))
			w := &d.room.Walls[i]
			w.Boxes = append(w.Boxes, Box{Kind: kind, Name: number(kind.Traits().Letter), At: d.place(b)})
		}
	}
}
