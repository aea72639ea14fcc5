package layout

import (
	"fmt"
	"strings"

	"flitchlay/internal/finding"
)

// What is tried for a whole room, in questions weighed by how much is asked in them, for its conflicts and for what frees them
// all. Tens of conflicts take less; a room of hundreds takes less than half a second of one core to come to the end of it.
const (
	mostTrials      = 2_500_000
	mostJointTrials = 800_000
)

// clash is a room whose musts cannot all be met: its conflicts, and what a change would do about them.
type clash struct {
	*builder
	tries *trials
	spots []spot
	list  []conflict
	whole bool // there are no other conflicts
	// byRule are the conflicts that a change of a rule leaves, by its words.
	byRule map[string][]conflict
}

// newClash looks for the conflicts of all spans.
func newClash(b *builder, tries *trials) *clash {
	k := &clash{builder: b, tries: tries, spots: b.spots(), whole: true, byRule: map[string][]conflict{}}
	for i := range k.spots {
		found, whole := tries.conflicts(&k.spots[i])
		k.list = append(k.list, found...)
		k.whole = k.whole && whole
	}
	return k
}

// judgeMusts says, where a must is broken, which rules cannot all be met: every set from which none can be left out, each
// with what would free it, and at last what would free them all. It waits for the last run, for a rule that is changed
// changes all runs.
func (b *builder) judgeMusts(i int) {
	if i < len(b.plan.Runs)-1 || !b.broken() {
		return
	}
	b.sayConflicts(&trials{left: mostTrials})
}

// sayConflicts says which conflicts there are, each at its own place.
func (b *builder) sayConflicts(tries *trials) {
	k := newClash(b, tries)
	all := make([][]proposal, len(k.list))
	tried := make([]bool, len(k.list))
	for i := range k.list {
		all[i] = k.proposals(&k.list[i])
		tried[i] = k.tries.left > 0
	}
	for i := range k.list {
		c := &k.list[i]
		var names []string
		for _, d := range c.demands {
			names = append(names, k.demandWords(d))
		}
		where, wall, at := k.where(c)
		mend := k.mendWords(all[i], tried[i])
		if i == len(k.list)-1 {
			mend += k.jointWords(all)
		}
		b.say(finding.CannotMeet, finding.Finding{Place: where, Wall: wall, At: at}, finding.Slots{
			"where": where, "rules": strings.Join(names, "; "), "mend": mend})
	}
}

// broken reports whether a span breaks a must of bends or edges.
func (b *builder) broken() bool {
	for i, asked := range b.asked {
		for k, q := range asked {
			if score := b.plan.Runs[i].Spans[k].Score; !q.done && score.Bends+score.Edges > 0 {
				return true
			}
		}
	}
	return false
}

// where names the walls that a conflict stands on, and the middle of what of the first it is about.
func (k *clash) where(c *conflict) (words string, wall int, at L) {
	walls := c.walls()
	wall = walls[0]
	line := c.spot.q.line
	if st, ok := line.Of(wall); ok && !line.Up {
		from, to := c.stretch()
		if line.Closed && from >= st.Right {
			from, to = from-line.Length, to-line.Length
		}
		from, to = max(from, st.Left), min(to, st.Right)
		at = from + (to - from).HalfDown() - st.Shift
		at = max(0, min(at, k.room.Walls[wall].Length))
	}
	first, last := k.room.Walls[wall].Name, k.room.Walls[walls[len(walls)-1]].Name
	switch len(walls) {
	case 1:
		return "wall " + first, wall, at
	case 2:
		return "walls " + first + ", " + last, wall, at
	}
	return "walls " + first + " to " + last, wall, at
}

// mendWords words what frees one conflict. What leaves others than most do says so by itself.
func (k *clash) mendWords(list []proposal, tried bool) string {
	others := len(k.list) - 1
	text := "No single change of a keep-clear, of an opening's place, of a rule or of a corner frees it"
	switch {
	case len(list) == 0 && !tried:
		return "What would free it was not tried, for there are too many"
	case len(list) == 0 && k.deliverable():
		text = "No single change of a keep-clear, of an opening's place, of a rule, of a corner or of the gross width frees it"
	case len(list) > 0:
		grid := ", on the grid of " + k.style.Words(k.room.Rules.Snap)
		text = "One of these would do" + grid
		if others > 0 {
			text = "One of these frees this one" + grid + ", and " + remain(others)
		}
		var words []string
		for _, p := range list {
			word := p.words
			if p.left != others {
				open, _ := strings.CutSuffix(word, ")")
				word = open + map[bool]string{true: ", ", false: " ("}[open != word] + remain(p.left) + ")"
			}
			words = append(words, word)
		}
		text += ": " + strings.Join(words, "; ")
	}
	if len(list) > 0 && !tried {
		text += ". Other changes were not tried"
	}
	return text
}

// remain words how many conflicts are left.
func remain(n int) string {
	switch n {
	case 0:
		return "none remains"
	case 1:
		return "1 other remains"
	}
	return fmt.Sprintf("%d others remain", n)
}

// jointWords words what frees all conflicts of the room.
func (k *clash) jointWords(all [][]proposal) string {
	if len(k.list) == 1 {
		return map[bool]string{false: ". Behind it there may be others"}[k.whole]
	}
	every := fmt.Sprintf("all %d", len(k.list))
	if len(k.list) == 2 {
		every = "both"
	}
	k.tries = &trials{left: mostJointTrials}
	switch words := k.joint(all); {
	case len(words) == 1:
		return ". This frees " + every + ": " + words[0]
	case len(words) > 0:
		return ". Together these free " + every + ": " + strings.Join(words, "; ")
	case k.tries.left <= 0 || !k.whole:
		return ". What frees " + every + " was not looked for to the end; behind them there may be others"
	}
	return ". No set of such changes was found that frees " + every
}
