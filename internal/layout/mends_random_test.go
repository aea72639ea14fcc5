package layout

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// crowdedRoom is a room of short walls, with windows, doors and kept stretches close together: most such rooms collide, many in
// several places.
func crowdedRoom(rng *rand.Rand) string {
	var b strings.Builder
	if rng.IntN(3) == 0 {
		b.WriteString(flitched(""))
	} else {
		b.WriteString(head)
	}
	horizontal := rng.IntN(8) == 0
	if horizontal && !strings.Contains(b.String(), "flitch") {
		b.WriteString("grain = \"horizontal\"\n")
	} else {
		horizontal = false
	}
	fmt.Fprintf(&b, "[rules]\ncorner_return = \"%d\"\nleg = \"%d\"\nopening_clear = \"%d\"\nleast_width = \"%d\"\n", 4+rng.IntN(5), 3+rng.IntN(5), 2+rng.IntN(4), 5+rng.IntN(8))
	closed := rng.IntN(3) == 0
	fmt.Fprintf(&b, "[room]\nclosed = %v\n", closed)
	n := 2 + rng.IntN(5)
	for i := range n {
		wide := 8 + rng.IntN(24)
		if rng.IntN(2) == 0 {
			wide = 40 + rng.IntN(90)
		}
		fmt.Fprintf(&b, "[[wall]]\nname = \"W%d\"\nlength = \"%d\"\nheight = \"96\"\n", i, wide)
		if i < n-1 || closed {
			fmt.Fprintf(&b, "corner = %q\n", []string{"inside", "outside", "straight", "none"}[min(3, rng.IntN(13)/4)])
		}
		if rng.IntN(4) == 0 && !horizontal {
			fmt.Fprintf(&b, "lean = \"%d/16\"\n", rng.IntN(13)-6)
		}
		keeps := ""
		for at := 2 + rng.IntN(12); at+16 < wide; {
			w := 4 + rng.IntN(12)
			switch rng.IntN(5) {
			case 0, 1:
				wrap := ""
				if rng.IntN(3) == 0 && !horizontal {
					wrap = fmt.Sprintf("reveal = %d\nwrap_reveal = true\n", 1+rng.IntN(5))
				}
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = %d\nwidth = %d\nsill = %d\nheight = %d\n%s", at, w, 20+rng.IntN(20), 10+rng.IntN(25), wrap)
			case 2:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"door\"\nfrom_left = %d\nwidth = %d\nheight = %d\n", at, w, 70+rng.IntN(14))
			case 3:
				w = min(8+rng.IntN(24), wide-at)
				keeps += fmt.Sprintf("[[wall.keep_clear]]\nfrom = \"%d\"\nto = \"%d\"\n", at, at+w)
			}
			at += w + 2 + rng.IntN(8)
		}
		b.WriteString(keeps)
	}
	return b.String()
}

// made makes a proposed change in a room that is read.
func made(t *testing.T, r *room.Room, change string) *room.Room {
	t.Helper()
	of := func(s string) L {
		l, err := length.Parse(s, r.Project.Units)
		require.NoError(t, err)
		return l
	}
	opening := func(kind, name string) *room.Opening {
		for i := range r.Walls {
			for j := range r.Walls[i].Openings {
				if o := &r.Walls[i].Openings[j]; o.Kind.Named(o.Name) == kind+" "+name {
					return o
				}
			}
		}
		require.Fail(t, "no such opening", change)
		return nil
	}
	match := func(p *regexp.Regexp) []string { return p.FindStringSubmatch(change) }
	if m := match(rulePattern); m != nil {
		*map[string]*L{"least_width": &r.Rules.LeastWidth, "corner_return": &r.Rules.CornerReturn, "leg": &r.Rules.Leg,
			"opening_clear": &r.Rules.OpeningClear}[m[1]] = of(m[2])
	} else if m := match(widthPattern); m != nil {
		r.Veneer.GrossWidth = of(m[1])
	} else if m := match(keepPattern); m != nil {
		kept := wallOf(t, r, m[1]).KeepClear
		i := slices.IndexFunc(kept, func(k room.KeepClear) bool {
			return k.From <= of(m[2]) && k.To >= of(m[3]) && k.To-k.From-of(m[3])+of(m[2]) == of(m[4])
		})
		require.GreaterOrEqual(t, i, 0, change)
		kept[i].From, kept[i].To = of(m[2]), of(m[3])
	} else if m := match(cutPattern); m != nil {
		i, _ := strconv.Atoi(m[1])
		r.Walls[i-1].Wrap = false
	} else if m := match(jambPattern); m != nil {
		opening(m[1], m[2]).WrapReveal = false
	} else {
		m := match(movePattern)
		require.NotNil(t, m, "what is proposed can be read: %q", change)
		o, by := opening(m[1], m[2]), of(m[3])
		switch m[4] {
		case "to the left":
			o.FromLeft -= by
		case "to the right":
			o.FromLeft += by
		case "down":
			o.Sill, o.Head = o.Sill-by, o.Head-by
		case "up":
			o.Sill, o.Head = o.Sill+by, o.Head+by
		}
	}
	return r
}

// Over random rooms that collide: every conflict is irreducible, every proposal frees its own and makes no other, what is
// left is as many as it says, and the set that frees all does. All is asked of the solver anew, of the room with the change in it.
func TestMendsOfRandomRooms(t *testing.T) {
	rooms, crowded, offers, joint := 0, 0, map[string]int{}, 0
	for seed := uint64(0); rooms < effort.Of(5, effort.Waited(100, 600)); seed++ {
		text := crowdedRoom(rand.New(rand.NewPCG(seed, 41)))
		r, err := room.Decode("room.toml", []byte(text))
		if err != nil {
			continue
		}
		b, err := askedOf(r)
		if err != nil || len(b.spots()) == 0 {
			continue
		}
		all := saying(t, b)
		assert.Equal(t, met(t, decoded(t, text)), len(all) == 0, "a room that collides has a conflict")
		if len(all) == 0 {
			continue
		}
		rooms++
		if len(all) > 1 {
			crowded++
		}
		gaps := slices.ContainsFunc(r.Walls, func(w room.Wall) bool {
			return slices.ContainsFunc(w.Openings, func(o room.Opening) bool { return w.FullHeight(&o) })
		})
		for i, s := range all {
			if len(r.Flitches) > 0 {
				assert.NotContains(t, s.text, "gross width", "no other sheets can be had")
			}
			if gaps || len(all) > 12 {
				continue // without a gap there are other spans
			}
			irreducible(t, text, s)
			for _, o := range s.changes {
				offers[strings.Fields(o.words)[0]]++
				freed(t, text, all, i, o, func(r *room.Room) *room.Room { return made(t, r, o.words) })
			}
		}
		if last := all[len(all)-1]; len(last.joint) > 0 {
			joint++
			together := decoded(t, text)
			for _, words := range last.joint {
				together = made(t, together, words)
			}
			assert.True(t, met(t, together), last.text)
		}
		if t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, text)
		}
	}
	t.Logf("%d rooms, %d with several conflicts, %d freed together; proposals %v", rooms, crowded, joint, offers)
	assert.Greater(t, crowded, rooms/5)
	assert.GreaterOrEqual(t, joint, crowded*3/4)
}
