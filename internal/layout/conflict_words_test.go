package layout

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// statement is a message taken apart.
type statement struct {
	where   string
	rules   []string
	changes []offer
	joint   []string // what frees all
	text    string
}

// offer is one proposed change, with how many other conflicts it is said to leave.
type offer struct {
	words string
	left  int
}

var (
	messagePattern = regexp.MustCompile(`^not all of these can be met on (.+?): (.+?)\. (.+)$`)
	leftPattern    = regexp.MustCompile(`^(.+?)(?: \((?:(ask the architect)(?:, )?)?(?:(none|\d+) (?:others? )?remains?)?\))?$`)
	headPattern    = regexp.MustCompile(`^One of these (?:would do|frees this one), on the grid of (.+?)(?:, and (\d+) others? remains?)?$`)
	jointPattern   = regexp.MustCompile(`^(?:This frees|Together these free) (?:both|all \d+)$`)
)

// stated parts a message into where it is, the rules it names and the changes it proposes.
func stated(t *testing.T, message string) statement {
	t.Helper()
	m := messagePattern.FindStringSubmatch(message)
	require.NotNil(t, m, message)
	out := statement{where: m[1], rules: strings.Split(m[2], "; "), text: message}
	for _, sentence := range strings.Split(m[3], ". ") {
		head, list, _ := strings.Cut(sentence, ": ")
		if h := headPattern.FindStringSubmatch(head); h != nil {
			others, _ := strconv.Atoi(h[2])
			for _, words := range strings.Split(list, "; ") {
				c := leftPattern.FindStringSubmatch(words)
				o := offer{c[1], others}
				if c[3] != "" {
					o.left, _ = strconv.Atoi(c[3]) // none is nought
				}
				out.changes = append(out.changes, o)
			}
		}
		if jointPattern.MatchString(head) {
			for _, words := range strings.Split(list, "; ") {
				out.joint = append(out.joint, leftPattern.FindStringSubmatch(words)[1])
			}
		}
	}
	return out
}

func decoded(t *testing.T, text string) *room.Room {
	t.Helper()
	return roomOf(t, text)
}

func roomOf(t testing.TB, text string) *room.Room {
	t.Helper()
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err, text)
	return r
}

// objectOf is what of a rule stays when its figures change.
func objectOf(rule string) string {
	if at := strings.LastIndex(rule, " at "); at >= 0 {
		return rule[at:]
	}
	if strings.HasSuffix(rule, "(least_width)") {
		return "(least_width)"
	}
	return rule
}

// collide asks the solver for the room with nothing asked but some rules.
func collide(t *testing.T, r *room.Room, rules []string) bool {
	t.Helper()
	style := length.StyleOf(r.Project.Units)
	asked := func(object string) bool {
		return slices.ContainsFunc(rules, func(s string) bool { return objectOf(s) == object })
	}
	if !asked("(least_width)") {
		r.Rules.LeastWidth = 4 * r.Rules.Snap
	}
	for i := range r.Walls {
		w := &r.Walls[i]
		if (w.Corner == room.Inside || w.Corner == room.Outside) && w.Wrap && !asked(fmt.Sprintf(" at corner C%d", i+1)) {
			require.Zero(t, w.Radius, "an eased corner made straight has another girth")
			w.Corner = room.Straight
		}
		w.Openings = slices.DeleteFunc(slices.Clone(w.Openings), func(o room.Opening) bool { return !asked(" at " + o.Kind.Named(o.Name)) })
		w.KeepClear = slices.DeleteFunc(slices.Clone(w.KeepClear), func(k room.KeepClear) bool {
			return !asked("no seam from " + style.Words(k.From) + " to " + style.Words(k.To) + " on wall " + w.Name)
		})
	}
	return !met(t, r)
}

// met asks the solver whether a room's musts can all be met.
func met(t *testing.T, r *room.Room) bool {
	t.Helper()
	b, err := askedOf(r)
	require.NoError(t, err)
	for _, sp := range b.spots() {
		ok, err := seam.Meets(sp.q.Span)
		require.NoError(t, err)
		if !ok {
			return false
		}
	}
	return true
}

// askedOf puts a room's questions without an answer.
func askedOf(r *room.Room) (*builder, error) {
	lines, err := run.Unroll(r)
	if err != nil {
		return nil, err
	}
	b := &builder{room: r, style: length.StyleOf(r.Project.Units), plan: &Plan{}}
	for _, line := range lines {
		b.asked = append(b.asked, b.questions(line))
	}
	return b, nil
}

var (
	rulePattern  = regexp.MustCompile(`^(least_width|corner_return|leg|opening_clear) (.+) in place of (.+)$`)
	widthPattern = regexp.MustCompile(`^a gross width of (.+) in place of (.+)$`)
	movePattern  = regexp.MustCompile(`^(window|door|built-in|cased opening|fireplace) (\S+) moved (.+) (to the left|to the right|up|down)$`)
	keepPattern  = regexp.MustCompile(`^a keep-clear on wall (\S+) from (.+) to (.+), (.+) shorter$`)
	cutPattern   = regexp.MustCompile(`^(?:the room closed at )?corner C(\d+),? cut in place of wrapped$`)
	jambPattern  = regexp.MustCompile(`^the jambs of (\S+) (\S+) not wrapped$`)
)

func quoted(s string) string { return "'''" + s + "'''" }

// edited is a room file with one proposed change made in its text, less by so many snaps of what it takes.
func edited(t *testing.T, text, change string, less L) string {
	t.Helper()
	r := decoded(t, text)
	style := length.StyleOf(r.Project.Units)
	of := func(s string) L {
		l, err := length.Parse(s, r.Project.Units)
		require.NoError(t, err)
		return l
	}
	less *= r.Rules.Snap
	after := func(name, old, with string) string { // in the table that has the name
		head, tail, found := strings.Cut(text, "name = \""+name+"\"\n")
		require.True(t, found, name)
		require.Contains(t, tail, old)
		return head + "name = \"" + name + "\"\n" + strings.Replace(tail, old, with, 1)
	}
	if m := rulePattern.FindStringSubmatch(change); m != nil {
		line := fmt.Sprintf("%s = %s", m[1], quoted(style.Words(of(m[2])+less)))
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
		return regexp.MustCompile(`(?m)^gross_width = .*$`).ReplaceAllLiteralString(text, "gross_width = "+quoted(style.Words(of(m[1])-less)))
	}
	if m := keepPattern.FindStringSubmatch(change); m != nil {
		for _, k := range wallOf(t, r, m[1]).KeepClear {
			from, to := of(m[2]), of(m[3])
			if k.From != from && k.To != to || k.To-k.From-to+from != of(m[4]) {
				continue
			}
			if k.From == from {
				to += less
			} else {
				from -= less
			}
			_, tail, _ := strings.Cut(text, "name = \""+m[1]+"\"\n")
			old := regexp.MustCompile(`from = ["']+` + regexp.QuoteMeta(style.Inches(k.From)) + `["']+\nto = .*`).FindString(tail)
			require.NotEmpty(t, old)
			return after(m[1], old, "from = "+quoted(style.Words(from))+"\nto = "+quoted(style.Words(to)))
		}
		require.Fail(t, "no such stretch", change)
	}
	if m := cutPattern.FindStringSubmatch(change); m != nil {
		i, _ := strconv.Atoi(m[1])
		return after(r.Walls[i-1].Name, "height = ", "wrap = false\nheight = ")
	}
	if m := jambPattern.FindStringSubmatch(change); m != nil {
		return after(m[2], "wrap_reveal = true", "wrap_reveal = false")
	}
	m := movePattern.FindStringSubmatch(change)
	require.NotNil(t, m, "what is proposed can be read: %q", change)
	by, key := of(m[3])-less, "from_left"
	switch m[4] {
	case "to the left":
		by = -by
	case "down":
		by, key = -by, "sill"
	case "up":
		key = "sill"
	}
	_, tail, _ := strings.Cut(text, "name = \""+m[2]+"\"\n")
	old := regexp.MustCompile(key + ` = "(.*)"`).FindStringSubmatch(tail)
	return after(m[2], old[0], key+" = "+quoted(style.Words(of(old[1])+by)))
}

func wallOf(t *testing.T, r *room.Room, name string) *room.Wall {
	t.Helper()
	for i := range r.Walls {
		if r.Walls[i].Name == name {
			return &r.Walls[i]
		}
	}
	require.Fail(t, "no such wall", name)
	return nil
}

// renamed gives kept stretches the figures that they have in a changed room.
func renamed(t *testing.T, text string, to *room.Room, rules []string) []string {
	t.Helper()
	r := decoded(t, text)
	style := length.StyleOf(r.Project.Units)
	out := slices.Clone(rules)
	for i := range r.Walls {
		for j, k := range r.Walls[i].KeepClear {
			name := func(k room.KeepClear) string {
				return "no seam from " + style.Words(k.From) + " to " + style.Words(k.To) + " on wall " + r.Walls[i].Name
			}
			if at := slices.Index(out, name(k)); at >= 0 {
				out[at] = name(to.Walls[i].KeepClear[j])
			}
		}
	}
	return out
}

// holdsObjects reports whether among some rules are all of others.
func holdsObjects(rules, others []string) bool {
	return !slices.ContainsFunc(others, func(x string) bool {
		return !slices.ContainsFunc(rules, func(s string) bool { return objectOf(s) == objectOf(x) })
	})
}

// saying lists what a builder says of its conflicts; the place of each is that of its words.
func saying(t *testing.T, b *builder) []statement {
	t.Helper()
	b.plan.Findings = nil
	b.sayConflicts(&trials{left: mostTrials})
	var out []statement
	for _, f := range b.plan.Findings {
		require.Equal(t, finding.CannotMeet, f.Code)
		s := stated(t, f.Message)
		assert.Equal(t, f.Place, s.where, "place and words speak of the same walls")
		assert.Regexp(t, "^walls? "+regexp.QuoteMeta(b.room.Walls[f.Wall].Name)+"(, | to |$)", f.Place)
		out = append(out, s)
	}
	return out
}
