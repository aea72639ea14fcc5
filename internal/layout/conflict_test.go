package layout

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

// ruled sets rules of a conflict room.
func ruled(rules string) string { return head + "[rules]\n" + rules }

// named is an opening with its own name.
func named(name, kind string, left, width, sill, height string, rest string) string {
	text := fmt.Sprintf("[[wall.opening]]\nname = %q\nkind = %q\nfrom_left = %q\nwidth = %q\nheight = %q\n%s", name, kind, left, width, height, rest)
	if sill != "" {
		text += fmt.Sprintf("\nsill = %q", sill)
	}
	return text + "\n"
}

// conflicts are rooms in which no layout meets every must, each with one span.
var conflicts = []struct{ name, text string }{
	{"a face too narrow for a seam and too wide for a sheet", narrowFace},
	{"a pilaster too deep for one sheet", head + plain("A", "60", "inside", "") + plain("L", "7", "outside", "") + plain("F", "7", "outside", "") +
		plain("R", "7", "inside", "") + plain("B", "60", "none", "")},
	{"a pier between two wrapped jambs", head + plain("A", "180", "none", named("W1", "window", "40", "45", "30", "50", "reveal = 7\nwrap_reveal = true")+
		named("W2", "window", "92", "45", "30", "50", "reveal = 7\nwrap_reveal = true"))},
	{"a square column of 7", head + "[room]\nclosed = true\n" + round("outside", "7", "7", "7", "7")},
	{"a stretch kept clear that is wider than a sheet", head + plain("A", "120", "none", "[[wall.keep_clear]]\nfrom = \"40\"\nto = \"70\"\nwhy = \"screen\"\n")},
	{"a stretch kept clear at the end of a wall", head + plain("A", "60", "none", "[[wall.keep_clear]]\nfrom = \"36\"\nto = \"56\"\n")},
	{"two windows with a picture under each and a pier of 4 between them", head + plain("A", "46", "none", named("W1", "window", "4", "17", "30", "50", "")+
		named("W2", "window", "25", "17", "30", "50", "")+"[[wall.keep_clear]]\nfrom = \"0\"\nto = \"21\"\n[[wall.keep_clear]]\nfrom = \"25\"\nto = \"46\"\n")},
	{"returns of 12 on a wall of 10", ruled("corner_return = \"12\"\nprefer_return = \"12\"\n") + plain("A", "10", "inside", "") + plain("B", "14", "none", "")},
	{"narrow windows side by side", head + plain("A", "90", "none", named("W1", "window", "20", "3", "30", "50", "")+named("W2", "window", "27", "3", "30", "50", "")+
		named("W3", "window", "34", "3", "30", "50", "")+named("W4", "window", "41", "3", "30", "50", "")+named("W5", "window", "48", "3", "30", "50", ""))},
	{"a leaning corner between two short walls", ruled("corner_return = \"12\"\nprefer_return = \"12\"\n") + plain("A", "26", "inside", "lean = \"1/2\"") +
		plain("B", "25", "none", "")},
	{"a door at the start of a wall", ruled("leg = \"9\"\nprefer_leg = \"9\"\nopening_clear = \"9 1/2\"\n") + plain("A", "30", "inside", named("D1", "door", "6", "18", "", "80", "")) +
		plain("B", "24", "none", "")},
	{"horizontal bands past windows at four heights", head + "grain = \"horizontal\"\n" + plain("A", "120", "none", named("W1", "window", "10", "20", "20", "3", "")+
		named("W2", "window", "40", "20", "27", "3", "")+named("W3", "window", "70", "20", "34", "3", "")+named("W4", "window", "95", "20", "41", "3", ""))},
	{"a closed room with a pilaster too deep for one sheet", head + "[room]\nclosed = true\n" + plain("A", "100", "inside", "") + plain("B", "50", "inside", "") +
		plain("L", "7", "outside", "") + plain("F", "7", "outside", "") + plain("R", "7", "inside", "") + plain("C", "43", "inside", "") + plain("D", "100", "inside", "") +
		plain("E", "100", "inside", "")},
	{"a metric column of 180", strings.Replace(strings.NewReplacer("24 1/2", "620", "\"1\"", "\"25\"", "10'", "3000").Replace(head), "title = \"Test room\"",
		"title = \"Test room\"\nunits = \"mm\"", 1) + "[room]\nclosed = true\n" + strings.ReplaceAll(round("outside", "180", "180", "180", "180"), `"96"`, `"2400"`)},
	{"hung sheets that end before a deep pilaster", flitched(plain("A", "40", "inside", "") + plain("L", "7", "outside", "") + plain("F", "7", "outside", "") +
		plain("R", "7", "inside", "") + plain("B", "60", "none", "") + hang("A", 1, "20"))},
}

// broken are the codes of what bends and edges add up.
var broken = []finding.Code{finding.SheetThin, finding.ReturnShort, finding.LegThin, finding.ClearShort, finding.RevealShort, finding.KeptClear, finding.CannotMeet}

// breaks tells whether a room file's layout breaks a must of bends or edges.
func breaks(t *testing.T, text string) bool {
	t.Helper()
	p := lay(t, text)
	for _, f := range p.Findings {
		if slices.Contains(broken, f.Code) {
			return true
		}
	}
	for _, r := range p.Runs {
		for _, s := range r.Spans {
			if s.Score.Bends+s.Score.Edges > 0 {
				return true
			}
		}
	}
	return false
}

// A conflict names a set of rules from which none can be left out: all of them collide also where nothing else is asked, and
// without any one of them they are met. Left out is what the room file says of it: a corner is made straight, an opening or a
// stretch is taken out, the least width is let go.
func TestConflictsAreIrreducible(t *testing.T) {
	for _, c := range conflicts {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, c.text)
			list := messages(p, finding.CannotMeet)
			require.NotEmpty(t, list, codes(p))
			for _, m := range list {
				irreducible(t, c.text, stated(t, m))
			}
		})
	}
}

func irreducible(t *testing.T, text string, s statement) {
	t.Helper()
	require.NotEmpty(t, s.rules)
	assert.True(t, collide(t, decoded(t, text), s.rules), "all of them collide: %s", s.text)
	for i, left := range s.rules {
		assert.False(t, collide(t, decoded(t, text), slices.Delete(slices.Clone(s.rules), i, i+1)), "without %q they are met: %s", left, s.text)
	}
}

// freed holds one proposed change against the room as it is with it: its conflict is gone, as many others are left as it says,
// and none is there that was not before.
func freed(t *testing.T, text string, all []statement, i int, o offer, change func(*room.Room) *room.Room) {
	t.Helper()
	changed := func() *room.Room { return change(decoded(t, text)) }
	assert.False(t, collide(t, changed(), renamed(t, text, changed(), all[i].rules)), "%q frees its own: %s", o.words, all[i].text)
	b, err := askedOf(changed())
	require.NoError(t, err)
	assert.Len(t, saying(t, b), o.left, "%q leaves what it says: %s", o.words, all[i].text)
	assert.True(t, noneNew(t, text, all, i, changed()), "%q makes no new conflict: %s", o.words, all[i].text)
	if o.left == 0 {
		assert.True(t, met(t, changed()), "%q leaves none: %s", o.words, all[i].text)
	}
}

// noneNew reports whether of a changed room's conflicts each was there before, as it is or with less in it, and none holds all
// of the one that was to be freed.
func noneNew(t *testing.T, text string, all []statement, own int, changed *room.Room) bool {
	t.Helper()
	b, err := askedOf(changed)
	require.NoError(t, err)
	for _, s := range saying(t, b) {
		known := false
		for i, x := range all {
			if holds := holdsObjects(s.rules, renamed(t, text, b.room, x.rules)); holds && i == own {
				return false
			} else if holds {
				known = true
			}
		}
		if !known {
			return false
		}
	}
	return true
}

// Every change that a conflict proposes frees it: made in the room file, its rules are met, as many others are left as it
// says, and no other conflict has come. A snap less of the change does not do.
func TestEveryProposedChangeFrees(t *testing.T) {
	kinds := map[string]int{}
	for _, c := range conflicts {
		t.Run(c.name, func(t *testing.T) {
			b, err := askedOf(decoded(t, c.text))
			require.NoError(t, err)
			all := saying(t, b)
			for i, s := range all {
				for _, o := range s.changes {
					text := edited(t, c.text, o.words, 0)
					freed(t, c.text, all, i, o, func(*room.Room) *room.Room { return decoded(t, text) })
					kinds[strings.Fields(o.words)[0]+strings.Fields(o.words)[1][:1]]++
					if cutPattern.MatchString(o.words) || jambPattern.MatchString(o.words) || strings.HasPrefix(o.words, "opening_clear 0 ") {
						continue
					}
					less := edited(t, c.text, o.words, 1)
					gone := !collide(t, decoded(t, less), renamed(t, c.text, decoded(t, less), s.rules))
					assert.False(t, gone && noneNew(t, c.text, all, i, decoded(t, less)), "a snap less does not do: %s", o.words)
				}
			}
		})
	}
	for _, kind := range []string{"corner_return3", "leg2", "least_width4", "opening_clear1", "ag", "ak", "windowW", "cornerC", "thej", "ther"} {
		assert.Positive(t, kinds[kind], "some room is freed by %s: %v", kind, kinds)
	}
}

// What frees all conflicts of a room frees them: with all of it made in the room file, a layout meets every must.
func TestTheJointSetFreesAll(t *testing.T) {
	several := 0
	for _, c := range append(conflicts, crowds...) {
		b, err := askedOf(decoded(t, c.text))
		require.NoError(t, err)
		all := saying(t, b)
		last := all[len(all)-1]
		if len(all) == 1 {
			assert.Empty(t, last.joint, "one conflict has no need of it")
			continue
		}
		several++
		require.NotEmpty(t, last.joint, "%s: %s", c.name, last.text)
		with := func(list []string) string {
			text := c.text
			for _, words := range list {
				text = edited(t, text, words, 0)
			}
			return text
		}
		assert.False(t, breaks(t, with(last.joint)), "%s: %s", c.name, last.text)
		for i := range last.joint {
			assert.False(t, met(t, decoded(t, with(slices.Delete(slices.Clone(last.joint), i, i+1)))), "%s: none of it is idle: %s", c.name, last.text)
		}
		for _, s := range all[:len(all)-1] {
			assert.Empty(t, s.joint, "it is said once")
		}
	}
	assert.GreaterOrEqual(t, several, len(crowds))
}

// crowds are rooms with several conflicts.
var crowds = []struct{ name, text string }{
	{"three screens on one wall, each wider than a sheet", flitched(plain("A", "240", "none", screen("30", "60")+screen("100", "127")+screen("170", "194")))},
	{"a deep pilaster and a wide screen", flitched(plain("A", "120", "inside", screen("30", "60")) + plain("L", "7", "outside", "") + plain("F", "7", "outside", "") +
		plain("R", "7", "inside", "") + plain("B", "60", "none", ""))},
	{"two deep pilasters, one of them deeper", flitched(plain("A", "60", "inside", "") + plain("L", "7", "outside", "") + plain("F", "7", "outside", "") +
		plain("R", "7", "inside", "") + plain("B", "60", "inside", "") + plain("M", "6", "outside", "") + plain("G", "7", "outside", "") + plain("S", "6", "inside", "") +
		plain("D", "60", "none", ""))},
	{"walls apart, each with a screen", flitched(plain("A", "80", "none", screen("20", "50")) + plain("B", "80", "none", screen("20", "46")))},
}

func screen(from, to string) string {
	return fmt.Sprintf("[[wall.keep_clear]]\nfrom = %q\nto = %q\n", from, to)
}

// hard makes rules that are hard to meet of a random room.
func hard(text string) string {
	return strings.Replace(text, "[room]\n",
		"[rules]\ncorner_return = \"9\"\nprefer_return = \"9\"\nleg = \"8\"\nopening_clear = \"7\"\nleast_width = \"12\"\n[room]\n", 1)
}
