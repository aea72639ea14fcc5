package crewday

import "flitchlay/internal/room"

// levelWords say how high the level line is struck, and over which place of the floor: over a floor that falls it is at
// another height everywhere else. The first wall is named at whose left end the floor is where heights are counted from;
// where none is, the first whose floor is under the line.
func (c *Set) levelWords() string {
	words, stairs := "", false
	for _, w := range c.Faces {
		floor := room.AtRight(w.W.Floor, 0)
		if floor == 0 || words == "" && floor < c.Level {
			words = c.Words.Say("start.level_at", c.Say(c.Level-floor), w.W.Name)
		}
		if floor == 0 {
			break
		}
	}
	for _, w := range c.Faces {
		for _, s := range w.Seconds() {
			way := "start.second_over"
			if s.By < 0 {
				way = "start.second_under"
			}
			words += "; " + c.Words.Say(way, w.W.Name, c.Say(s.By.Abs()), s.No)
		}
		stairs = stairs || len(c.stairWords(w)) > 0
	}
	if stairs { // how the tape goes on there
		words += " (" + c.PageWord(heightsKey) + ")"
	}
	return words
}
