package layout

import "slices"

// Register is where the level line is marked on all sheets of one course of a flitch before they are cut, so that what
// hangs side by side is cut from the same height of the figure.
type Register struct {
	Flitch string
	Course int
	Turned bool
	Foot   bool // no level line comes to its sheets: they are measured from the raw end that hangs down
	At     L    // the mark's distance under the raw head; with Foot how high over the level line the raw end hangs
	Need   L    // the length of sheet that takes the longest cut over the register and the longest under it
	Most   [2]*Sheet
}

// End is the raw end of its sheets from which they are measured: the one that hangs up, with Foot the one that hangs down.
func (r *Register) End() string {
	if r.Turned != r.Foot {
		return "foot"
	}
	return "head"
}

// Registers are the registers of a plan whose grain runs up, by flitches and courses as they come.
func (p *Plan) Registers() []Register {
	var list []Register
	reach := [][2]L{} // highest head and lowest foot of each, over the level line
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			s := &p.Runs[i].Sheets[k]
			if p.Runs[i].Up || s.CutLength == 0 {
				continue
			}
			at := slices.IndexFunc(list, func(r Register) bool { return r.Flitch == s.Flitch && r.Course == s.Course && r.Turned == s.Turned })
			if at < 0 {
				at = len(list)
				list = append(list, Register{Flitch: s.Flitch, Course: s.Course, Turned: s.Turned, Most: [2]*Sheet{s, s}})
				reach = append(reach, [2]L{s.Above, -s.Below})
			}
			if s.Above > reach[at][0] {
				reach[at][0], list[at].Most[0] = s.Above, s
			}
			if -s.Below < reach[at][1] {
				reach[at][1], list[at].Most[1] = -s.Below, s
			}
		}
	}
	for i := range list {
		r := &list[i]
		r.Need = reach[i][0] - reach[i][1]
		if r.Foot, r.At = reach[i][1] > 0, reach[i][0]; r.Foot {
			r.At = reach[i][1]
		}
	}
	return list
}

// LeastLong is how long a sheet has to come: as long as it is cut, and from the raw end that its register runs from to the mark and to
// the other end of the cut, which is more where another sheet goes higher, or where the cut ends before the mark.
func (p *Plan) LeastLong(s *Sheet) L {
	long := s.CutLength
	for _, g := range p.Registers() {
		if g.Flitch != s.Flitch || g.Course != s.Course || g.Turned != s.Turned {
			continue
		}
		if g.Foot {
			return max(long, s.Above-g.At)
		}
		return max(long, g.At+max(s.Below, 0))
	}
	return long
}
