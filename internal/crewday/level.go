package crewday

import "flitchlay/internal/room"

// levelWords say how high the level line is struck, and over which place of the floor: over a floor that falls it is at
// another height everywhere else. The first wall is named at whose left end the floor is where heights are counted from;
// where none is, the first whose floor is under the line.
func (c *Set) levelWords() string {
	words := ""
	for _, w := range c.Faces {
		floor := room.AtRight(w.W.Floor, 0)
		if floor == 0 || words == "" && floor < c.Level {
			words = c.Say(c.Level-floor) + " above the floor at the left end of " + w.W.Name
		}
		if floor == 0 {
			break
		}
	}
	for _, w := range c.Faces {
		for _, s := range w.Seconds() {
			side := " over it"
			if s.By < 0 {
				side = " under it"
			}
			words += "; line 2 on " + w.W.Name + ", struck from it: " + c.Say(s.By.Abs()) + side
		}
	}
	return words
}
