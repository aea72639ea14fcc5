package layout

import (
	"strconv"

	"flitchlay/internal/room"
)

// distance finds a rule of a room by its key.
func distance(r *room.Room, key string) *L {
	for _, d := range room.Distances() {
		if d.Key == key {
			return d.Of(&r.Rules)
		}
	}
	panic("layout: no distance " + key)
}

// ask marks what is not the hanger's to change.
const ask = " (ask the architect)"

// differences words what a changed room has other than this one, what asks least of others first.
func (b *builder) differences(to *room.Room) []string {
	var kept, moved, bends []string
	for i := range b.room.Walls {
		was, is := &b.room.Walls[i], &to.Walls[i]
		for j, k := range was.KeepClear {
			if x := is.KeepClear[j]; x != k {
				kept = append(kept, "a keep-clear on wall "+was.Name+" from "+b.style.Words(x.From)+" to "+b.style.Words(x.To)+", "+
					b.style.Words(k.To-k.From-x.To+x.From)+" shorter")
			}
		}
		for j := range was.Openings {
			o, x, name := &was.Openings[j], &is.Openings[j], b.openingWords(i, j)
			if by := x.FromLeft - o.FromLeft; by != 0 {
				moved = append(moved, name+" moved "+b.style.Words(by.Abs())+way(by, " to the left", " to the right"))
			}
			if by := x.Head - o.Head; by != 0 {
				moved = append(moved, name+" moved "+b.style.Words(by.Abs())+way(by, " down", " up"))
			}
			if x.WrapReveal != o.WrapReveal {
				bends = append(bends, "the jambs of "+name+" not wrapped"+ask)
			}
		}
		if is.Wrap != was.Wrap {
			text := "corner C" + strconv.Itoa(i+1)
			if b.room.Space.Closed {
				text = "the room closed at " + text + ","
			}
			bends = append(bends, text+" cut in place of wrapped"+ask)
		}
	}
	out := append(kept, moved...)
	for _, rule := range charged {
		if was, is := *distance(b.room, rule.key), *distance(to, rule.key); is != was {
			out = append(out, rule.key+" "+b.style.Words(is)+" in place of "+b.style.Words(was)+ask)
		}
	}
	out = append(out, bends...)
	if was, is := b.room.Veneer.GrossWidth, to.Veneer.GrossWidth; is != was {
		out = append(out, "a gross width of "+b.style.Words(is)+" in place of "+b.style.Words(was))
	}
	return out
}

// way is the word for a length that goes back or on.
func way(by L, back, on string) string {
	if by < 0 {
		return back
	}
	return on
}
