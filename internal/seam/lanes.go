package seam

import "slices"

// lanes lists the lines a sweep goes over, ascending, with what a seam there costs. They are all lines of a span that
// may hold a seam, or those of a stretch that can still be part of a better layout than the best known.
type lanes struct {
	lines []int
	left  []int64  // how far it is to a place right of all, in units
	node  []cost   // what the seam costs
	jump  []uint16 // kind of jump of a narrow sheet that ends here, on the way from right to left; may be nil
	here  []uint16 // the same of a narrow sheet that begins here, on the way back; may be nil
}

// lanes returns the lanes of all lines that may hold a seam.
func (t *table) lanes() *lanes {
	n := 0
	for i := range t.g.size() {
		if !t.seams[i].isNever() {
			n++
		}
	}
	v := &lanes{lines: make([]int, n), left: make([]int64, n), node: make([]cost, n)}
	if t.jumps() {
		v.jump = make([]uint16, n)
	}
	n = 0
	for i := range t.g.size() {
		if x := &t.seams[i]; !x.isNever() {
			v.lines[n], v.left[n], v.node[n] = i, t.leftOf(i), *x
			if v.jump != nil {
				v.jump[n] = t.kind[i]
			}
			n++
		}
	}
	return v
}

// newLanes makes room for lanes.
func newLanes(n int, jump bool) *lanes {
	v := &lanes{lines: make([]int, 0, n), left: make([]int64, 0, n), node: make([]cost, 0, n)}
	if jump {
		v.jump = make([]uint16, 0, n)
	}
	return v
}

// find returns the first lane whose line is at least i.
func (v *lanes) find(i int) int { return search(v.lines, i) }

// part returns the lanes from one to before another.
func (v *lanes) part(low, high int) lanes {
	p := lanes{lines: v.lines[low:high], left: v.left[low:high], node: v.node[low:high]}
	if v.jump != nil {
		p.jump = v.jump[low:high]
	}
	if v.here != nil {
		p.here = v.here[low:high]
	}
	return p
}

// take appends a lane of others.
func (v *lanes) take(from *lanes, lane int) {
	v.lines = append(v.lines, from.lines[lane])
	v.left = append(v.left, from.left[lane])
	v.node = append(v.node, from.node[lane])
	if from.jump != nil {
		v.jump = append(v.jump, from.jump[lane])
	}
}

// reverse returns the lanes as they count from right to left: line i becomes line 2*lines-i.
func (t *table) reverse(v *lanes) *lanes {
	back := &lanes{
		lines: slices.Clone(v.lines), left: slices.Clone(v.left), node: slices.Clone(v.node), here: slices.Clone(v.jump),
	}
	slices.Reverse(back.lines)
	slices.Reverse(back.left)
	slices.Reverse(back.node)
	slices.Reverse(back.here)
	for i := range back.lines {
		back.lines[i] = 2*t.g.lines - back.lines[i]
		back.left[i] = t.far/t.unit - back.left[i]
	}
	return back
}
