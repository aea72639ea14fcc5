package layout

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/finding"
	"flitchlay/internal/length"
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
			t.Parallel()
			p := lay(t, c.text)
			list := messages(p, finding.CannotMeet)
			require.Len(t, list, 1, codes(p))
			irreducible(t, c.text, list[0])
		})
	}
}

// stated parts a message into the rules it names and the changes it proposes.
func stated(message string) (rules, changes []string) {
	_, rest, _ := strings.Cut(message, ": ")
	head, tail, _ := strings.Cut(rest, ". ")
	rules = strings.Split(head, "; ")
	if list, ok := strings.CutPrefix(tail, "One of these would do: "); ok {
		changes = strings.Split(list, "; ")
	}
	return rules, changes
}

func irreducible(t *testing.T, text, message string) {
	t.Helper()
	rules, _ := stated(message)
	require.NotEmpty(t, rules)
	assert.True(t, collide(t, text, rules), "all of them collide: %s", message)
	for i, left := range rules {
		assert.False(t, collide(t, text, slices.Delete(slices.Clone(rules), i, i+1)), "without %q they are met: %s", left, message)
	}
}

// collide lays the room out with nothing asked but some rules.
func collide(t *testing.T, text string, rules []string) bool {
	t.Helper()
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	style := length.StyleOf(r.Project.Units)
	asked := func(end string) bool {
		return slices.ContainsFunc(rules, func(s string) bool { return strings.HasSuffix(s, end) })
	}
	if !asked("(least_width)") {
		r.Rules.LeastWidth = 4 * r.Rules.Snap
	}
	for i := range r.Walls {
		w := &r.Walls[i]
		w.Pins = nil
		if (w.Corner == room.Inside || w.Corner == room.Outside) && !asked(fmt.Sprintf(" at corner C%d", i+1)) {
			require.Zero(t, w.Radius, "an eased corner made straight has another girth")
			w.Corner = room.Straight
		}
		w.Openings = slices.DeleteFunc(slices.Clone(w.Openings), func(o room.Opening) bool { return !asked(" at " + o.Kind.Named(o.Name)) })
		w.KeepClear = slices.DeleteFunc(slices.Clone(w.KeepClear), func(k room.KeepClear) bool {
			return !asked("no seam from " + style.Words(k.From) + " to " + style.Words(k.To) + " on wall " + w.Name)
		})
	}
	p, err := Lay(r)
	require.NoError(t, err)
	sum := int64(0)
	for _, run := range p.Runs {
		for _, s := range run.Spans {
			sum += s.Score.Bends + s.Score.Edges
		}
	}
	return sum > 0
}

var (
	rulePattern  = regexp.MustCompile(`^(least_width|corner_return|leg|opening_clear) (.+) in place of (.+)$`)
	widthPattern = regexp.MustCompile(`^a gross width of (.+) in place of (.+)$`)
	movePattern  = regexp.MustCompile(`^(?:window|door|built-in|cased opening|fireplace) (\S+) moved (.+) (to the left|to the right|up|down)$`)
)

// edited is a room file with one proposed change made in its text.
func edited(t *testing.T, text, change string) string {
	t.Helper()
	if m := rulePattern.FindStringSubmatch(change); m != nil {
		line := fmt.Sprintf("%s = %s", m[1], quoted(m[2]))
		old := regexp.MustCompile(`(?m)^` + m[1] + ` = .*$`)
		switch {
		case old.MatchString(text):
			return old.ReplaceAllLiteralString(text, line)
		case strings.Contains(text, "[rules]\n"):
			return strings.Replace(text, "[rules]\n", "[rules]\n"+line+"\n", 1)
		}
		return strings.Replace(text, "[[wall]]", "[rules]\n"+line+"\n[[wall]]", 1)
	}
	if m := widthPattern.FindStringSubmatch(change); m != nil {
		return regexp.MustCompile(`(?m)^gross_width = .*$`).ReplaceAllLiteralString(text, "gross_width = "+quoted(m[1]))
	}
	m := movePattern.FindStringSubmatch(change)
	require.NotNil(t, m, "what is proposed can be read: %q", change)
	by, err := length.Parse(m[2], length.Inches)
	require.NoError(t, err)
	key := "from_left"
	switch m[3] {
	case "to the left":
		by = -by
	case "down":
		by, key = -by, "sill"
	case "up":
		key = "sill"
	}
	head, tail, found := strings.Cut(text, "name = \""+m[1]+"\"\n")
	require.True(t, found, m[1])
	old := regexp.MustCompile(key + ` = "(.*)"`).FindStringSubmatch(tail)
	was, err := length.Parse(old[1], length.Inches)
	require.NoError(t, err)
	style := length.StyleOf(length.Inches)
	return head + "name = \"" + m[1] + "\"\n" + strings.Replace(tail, old[0], key+" = "+quoted(style.Inches(was+by)), 1)
}

func quoted(s string) string { return "'''" + s + "'''" }

// more is a proposed rule with a value greater by a snap.
func more(t *testing.T, text string, m []string) string {
	t.Helper()
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	value, err := length.Parse(m[2], r.Project.Units)
	require.NoError(t, err)
	return m[1] + " " + length.StyleOf(r.Project.Units).Words(value+r.Rules.Snap) + " in place of " + m[3]
}

// Every change that a conflict proposes frees the span: made in the room file, no must of bends or edges is broken any more;
// and of a rule no greater value would do.
func TestEveryProposedChangeFrees(t *testing.T) {
	kinds := map[string]int{}
	for _, c := range conflicts {
		t.Run(c.name, func(t *testing.T) {
			require.True(t, breaks(t, c.text))
			_, changes := stated(messages(lay(t, c.text), finding.CannotMeet)[0])
			for _, change := range changes {
				assert.False(t, breaks(t, edited(t, c.text, change)), "%s:\n%s", change, edited(t, c.text, change))
				kinds[strings.Fields(change)[0]]++
				if m := rulePattern.FindStringSubmatch(change); m != nil {
					assert.True(t, breaks(t, edited(t, c.text, more(t, c.text, m))), "a snap more than this does not: %s", change)
				}
			}
		})
	}
	for _, kind := range []string{"corner_return", "leg", "least_width", "opening_clear", "a", "window"} {
		assert.Positive(t, kinds[kind], "some room is freed by %s: %v", kind, kinds)
	}
}

// The same of conflicts in random rooms, under rules that are hard to meet.
func TestConflictsOfRandomRooms(t *testing.T) {
	t.Parallel()
	found := 0
	for seed := range uint64(effort.Of(8, 24)) {
		text := strings.Replace(randomRoom(rand.New(rand.NewPCG(seed, 23))), "[room]\n",
			"[rules]\ncorner_return = \"9\"\nprefer_return = \"9\"\nleg = \"8\"\nopening_clear = \"7\"\nleast_width = \"12\"\n[room]\n", 1)
		r, err := room.Decode("room.toml", []byte(text))
		if err != nil {
			continue
		}
		p, err := Lay(r)
		if err != nil || len(p.Runs) != 1 || len(p.Runs[0].Spans) != 1 || slices.ContainsFunc(p.Runs[0].Openings, func(o Opening) bool { return o.Gap }) {
			continue // with several spans only one is freed
		}
		for _, m := range messages(p, finding.CannotMeet) {
			found++
			irreducible(t, text, m)
			_, changes := stated(m)
			for _, change := range changes {
				if movePattern.MatchString(change) {
					continue // the random text names no opening
				}
				assert.False(t, breaks(t, edited(t, text, change)), "%s", change)
			}
		}
		if t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, text)
		}
	}
	assert.Greater(t, found, effort.Of(0, 2), "conflicts were found")
}
