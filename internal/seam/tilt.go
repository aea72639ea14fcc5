package seam

// tilts are pulls that rise by as much for each line, both ways: they hold back a way that ends elsewhere than it began where
// each line that it is longer or shorter by gains it the same. A sheet under prefer_width gains what it lacks, so that is what
// they rise by.
func (t *table) tilts(places []int) [][]cost {
	if t.at[itemShould] < 0 || t.prefer == 0 || len(places) < 2 {
		return nil
	}
	left, right := make([]cost, len(places)), make([]cost, len(places))
	first, last := places[0], places[len(places)-1]
	for i, c := range places {
		left[i] = t.of(itemShould, t.step*int64(last-c))
		right[i] = t.of(itemShould, t.step*int64(c-first))
	}
	return [][]cost{left, right}
}

// lowest returns the least bound of a group.
func (g *group) lowest() cost {
	low := never
	for _, x := range g.least {
		low = lesser(low, x)
	}
	return low
}
