package crewday

// offHeads are the heads of the table; left is down where the grain runs level, and right is up.
func (c *Set) offHeads(level bool) []string {
	left, right := c.Words.Say("off.left"), c.Words.Say("off.right")
	if level {
		left, right = c.Words.Say("off.down"), c.Words.Say("off.up")
	}
	breaks := c.Words.Say("off.breaks")
	return []string{c.Words.Say("off.wall"), c.Words.Say("off.line"), left, breaks, right, breaks}
}

// offTexts say how the table is read and what is done beyond it. Where the grain runs level no sheet that hangs is typed.
func (c *Set) offTexts(level bool) []string {
	read, stop := c.Words.Say("off.read"), c.Words.Say("off.stop")
	if level {
		read, stop = c.Words.Say("off.read_level"), c.Words.Say("off.stop_level")
	}
	return []string{c.Words.Say("off.what"), read, stop, c.Words.Say("off.lap", c.Inches(c.Room.Rules.LeastOverlap)), c.RoundingWords()}
}

// lines names lines one after the other that may be off by the same.
func (c *Set) lines(first, last string) string {
	if first == last {
		return first
	}
	return c.Words.Say("off.lines", first, last)
}

// RoundingKey is where other pages find how figures are rounded.
const RoundingKey = "rounding"

// RoundingWords point to where it says how figures are rounded.
func (c *Set) RoundingWords() string { return c.Words.Say("page.rounding", c.PageWord(RoundingKey)) }
