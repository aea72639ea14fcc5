package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// mendsOf is what a room file's conflicts are said to be.
func mendsOf(t *testing.T, text string) []statement {
	t.Helper()
	b, err := askedOf(decoded(t, text))
	require.NoError(t, err)
	return saying(t, b)
}

func wordsOf(s statement) string {
	var out []string
	for _, o := range s.changes {
		out = append(out, o.words)
	}
	return strings.Join(out, "; ")
}

// A conflict stands on the walls between its first demand and its last, and says so in its place and in its words: a face
// between two corners is one wall, a pilaster three, a corner alone the walls on its both sides.
func TestAConflictsPlaceIsThatOfItsWords(t *testing.T) {
	pilaster := plain("A", "60", "inside", "") + plain("L", "7", "outside", "") + plain("F", "7", "outside", "") + plain("R", "7", "inside", "") + plain("B", "60", "none", "")
	for _, c := range []struct {
		name, text, place, wall string
		at                      L
	}{
		{"a face", narrowFace, "wall B", "B", 10 * length.Inch},
		{"a pilaster", head + pilaster, "walls L to R", "L", 7 * length.Inch / 2},
		{"a corner", ruled("corner_return = \"12\"\nprefer_return = \"12\"\n") + plain("A", "10", "inside", "") + plain("B", "14", "none", ""), "walls A, B", "A", 10 * length.Inch},
		{"a screen", head + plain("A", "120", "inside", screen("40", "70")) + plain("B", "60", "none", ""), "wall A", "A", 55 * length.Inch},
		{"a column, round its beginning", head + "[room]\nclosed = true\n" + plain("A", "7", "outside", "") + plain("B", "60", "inside", "") + plain("C", "60", "inside", "") +
			plain("D", "60", "inside", "") + plain("E", "7", "outside", "") + plain("F", "7", "outside", ""), "walls E to A", "E", 7 * length.Inch / 2},
		{"bands", conflictNamed(t, "horizontal bands past windows at four heights"), "wall A", "A", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, c.text)
			var found []finding.Finding
			for _, f := range p.Findings {
				if f.Code == finding.CannotMeet {
					found = append(found, f)
				}
			}
			require.Len(t, found, 1)
			assert.Equal(t, c.place, found[0].Place)
			assert.Equal(t, c.place, stated(t, found[0].Message).where)
			assert.Equal(t, c.wall, p.Room.Walls[found[0].Wall].Name)
			assert.Equal(t, c.at, found[0].At, "the middle of it on its first wall, where the drawings put its number")
		})
	}
}

func conflictNamed(t *testing.T, name string) string {
	t.Helper()
	for _, c := range conflicts {
		if c.name == name {
			return c.text
		}
	}
	require.Fail(t, "no such room", name)
	return ""
}

// Three screens on one wall of 240: 30, 27 and 24 in, over a net width of 23 1/2 by 6 1/2, 3 1/2 and 1/2 in. Each is freed by what it
// is over, and the other two remain; a flitch is given, so that no wider sheet is offered.
func TestEveryConflictHasItsOwnProposals(t *testing.T) {
	all := mendsOf(t, crowds[0].text)
	require.Len(t, all, 3)
	for i, words := range []string{`a keep-clear on wall A from 30 in to 4'-5 1/2", 6 1/2 in shorter`, `a keep-clear on wall A from 8'-4" to 10'-3 1/2", 3 1/2 in shorter`,
		`a keep-clear on wall A from 14'-2" to 16'-1 1/2", 1/2 in shorter`} {
		assert.Equal(t, []offer{{words, 2}}, all[i].changes)
		assert.Contains(t, all[i].text, "One of these frees this one, on the grid of 1/16 in, and 2 others remain: ")
	}
	assert.Contains(t, all[2].text, ". Together these free all 3: ")
	assert.Len(t, all[2].joint, 3)
}

// Without a flitch 31 in of gross width would do: 30 and the overlap. With one, or with a sheet that hangs, nobody sells another.
func TestAWiderSheetIsOfferedWhileNothingIsDelivered(t *testing.T) {
	wall := plain("A", "120", "none", screen("40", "70"))
	assert.Contains(t, wordsOf(mendsOf(t, head+wall)[0]), "a gross width of 31 in in place of 24 1/2 in")
	for _, text := range []string{flitched(wall), head + wall + hang("A", 1, "20")} {
		assert.NotContains(t, mendsOf(t, text)[0].text, "gross width")
	}
}

// What asks least of others stands first: a shorter keep-clear, an opening moved, a rule, a bend, a wider sheet.
func TestProposalsStandInOrder(t *testing.T) {
	all := mendsOf(t, conflictNamed(t, "a pier between two wrapped jambs"))
	assert.Equal(t, "window W1 moved 1 in to the left; window W2 moved 1 in to the right; corner_return 3 1/2 in in place of 4 in; "+
		"opening_clear 1 1/4 in in place of 2 in; the jambs of window W1 not wrapped; the jambs of window W2 not wrapped; a gross width of 26 in in place of 24 1/2 in",
		wordsOf(all[0]), "7 + 2 x (7 + 2) is 25 of 23 1/2: 1 1/2 in too much, or twice 4 is 1 in too much for a seam on the pier")
	assert.Contains(t, all[0].text, "corner_return 3 1/2 in in place of 4 in (ask the architect)")
	all = mendsOf(t, conflictNamed(t, "a stretch kept clear at the end of a wall"))
	assert.Equal(t, "a keep-clear on wall A from 3'-1\" to 4'-8\", 1 in shorter; least_width 4 in in place of 6 in; a gross width of 25 1/2 in in place of 24 1/2 in",
		wordsOf(all[0]), "from 37 the last sheet covers 23, its 24 1/2 less 1 and 1/2 in; from 56 it is 4 in wide")
}

// A change can free its own conflict and show one that was hidden behind it: then it is not enough. Window W1 moved by 1 in
// leaves a seam beside it that window W2 bars.
func TestAProposalMakesNoOtherConflict(t *testing.T) {
	all := mendsOf(t, conflictNamed(t, "two windows with a picture under each and a pier of 4 between them"))
	require.Len(t, all, 2)
	assert.Contains(t, wordsOf(all[0]), "window W1 moved 2 in to the left")
}

// A room of a hundred colliding places is looked at until the trials are used up: the same each time, and it says what it did
// not try.
func TestTheSearchForProposalsIsBounded(t *testing.T) {
	text := ""
	for i := range 100 {
		text += named(fmt.Sprintf("W%d", i+1), "window", fmt.Sprint(20+7*i), "3", "30", "50", "")
	}
	text = head + plain("A", "760", "none", text)
	b, err := askedOf(decoded(t, text))
	require.NoError(t, err)
	b.sayConflicts(&trials{left: mostTrials / 4})
	said := messages(b.plan, finding.CannotMeet)
	require.Len(t, said, 100, "all are listed, whatever is proposed")
	assert.Contains(t, said[0], "One of these frees this one")
	assert.Contains(t, said[98], "What would free it was not tried, for there are too many")
	b, err = askedOf(decoded(t, text))
	require.NoError(t, err)
	b.sayConflicts(&trials{left: mostTrials / 4})
	assert.Equal(t, said, messages(b.plan, finding.CannotMeet))
}

// BenchmarkConflicts says what rooms that collide are told.
func BenchmarkConflicts(b *testing.B) {
	for _, c := range append(conflicts, crowds...) {
		b.Run(strings.ReplaceAll(c.name, " ", "-"), func(b *testing.B) {
			asked, err := askedOf(roomOf(b, c.text))
			require.NoError(b, err)
			for b.Loop() {
				asked.plan.Findings = nil
				asked.sayConflicts(&trials{left: mostTrials})
			}
		})
	}
}
