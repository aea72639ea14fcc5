package seam

// bounds holds what pins forbid: for each line how far right a sheet from it may reach.
type bounds struct {
	wishes []wish
	limits []int32 // nil where nothing is pinned
	passes []bool  // a sheet of net steps may pass the limit
}

// wish is one way to keep a pin: no sheet may begin left of line low and end right of line high, but for those named.
type wish struct {
	low, high int
	but       [][2]int
	bar       []int // lines no seam may fall on
}

func (v *wish) allows(a, b int) bool {
	if a >= v.low || b <= v.high {
		return true
	}
	for _, pair := range v.but {
		if pair == [2]int{a, b} {
			return true
		}
	}
	return false
}

// allows says whether the sheet from line a to line b leaves all pins kept.
func (p *bounds) allows(a, b int) bool {
	for i := range p.wishes {
		if !p.wishes[i].allows(a, b) {
			return false
		}
	}
	return true
}

// limit is the line that no sheet from line a may pass, named ones left out.
func (p *bounds) limit(a int) int {
	if p.limits == nil {
		return nowhere
	}
	return int(p.limits[a])
}

// whole says whether a whole sheet from a to b is allowed.
func (p *bounds) whole(a, b int) bool {
	return p.limits == nil || b <= int(p.limits[a]) || p.passes[a]
}

// newBounds spreads wishes over the lines of a grid.
func newBounds(g *grid, wishes []wish) bounds {
	p := bounds{wishes: wishes}
	if len(wishes) == 0 {
		return p
	}
	size := g.size() + g.net + 1
	p.limits = make([]int32, size)
	p.passes = make([]bool, size)
	for i := range p.limits {
		p.limits[i] = int32(size + g.net)
	}
	for _, v := range wishes {
		for a := max(0, v.high-g.net-1); a < min(v.low, size); a++ {
			p.limits[a] = min(p.limits[a], int32(v.high))
		}
		for _, pair := range v.but {
			if a, b := pair[0], pair[1]; 0 <= a && a < size && b-a == g.net && p.allows(a, b) {
				p.passes[a] = true
			}
		}
	}
	return p
}

// reverse returns the bounds of a closed span with its lines counted from right to left.
func (p *bounds) reverse(g *grid) bounds {
	turn := 2 * g.lines
	var wishes []wish
	for _, v := range p.wishes {
		if v.low > v.high+1 || v.low < 0 && v.high > turn {
			continue // nothing but lines that are barred
		}
		back := wish{low: turn - v.high, high: turn - v.low}
		for _, pair := range v.but {
			back.but = append(back.but, [2]int{turn - pair[1], turn - pair[0]})
		}
		wishes = append(wishes, back)
	}
	return newBounds(g, wishes)
}
