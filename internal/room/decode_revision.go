package room

import "flitchlay/internal/source"

// revisionLetters are those that cannot be read for a figure or for another.
//
// Source: NAVFAC drawing practice for revision letters, as restated in public manuals: without I, O, Q, S, X and Z.
const revisionLetters = "ABCDEFGHJKLMNPRTUVWY"

// letter is the mark of the i-th revision: A to Y, then AA.
func letter(i int) string {
	n := len(revisionLetters)
	if i < n {
		return revisionLetters[i : i+1]
	}
	return letter(i/n-1) + letter(i%n)
}

// FirstIssue is the day of the first issue: as the file says it, else that of the drawing while no revision is older; "" where nobody
// knows.
func (p *Project) FirstIssue() string {
	if p.Issued != "" {
		return p.Issued
	}
	if p.olderThanDrawn() != "" {
		return ""
	}
	return p.Drawn
}

// olderThanDrawn is the mark of the first revision that is older than the drawing.
func (p *Project) olderThanDrawn() string {
	for _, r := range p.Revisions {
		if r.Date != "" && r.Date < p.Drawn {
			return r.Mark
		}
	}
	return ""
}

// revisionPlaces reads where the changes are, once the walls are known.
func (d *decoder) revisionPlaces(tables []source.Value) {
	for i, v := range tables {
		r := &d.room.Project.Revisions[i]
		at := v.Get("at")
		if !v.Get("wall").Given() {
			if at.Given() {
				at.Mistake("add wall: the name of the wall that it is measured on", "a change at a place needs its wall")
			}
			continue
		}
		if r.Wall = d.wallNamed(v.Get("wall"), "a revision"); r.Wall < 0 {
			continue
		}
		w := &d.room.Walls[r.Wall]
		r.At = w.Length / 2
		if !at.Given() {
			continue
		}
		if l, ok := d.length(at, 0); ok {
			if r.At = l; w.Length > 0 && (l < 0 || l > w.Length) {
				at.Mistake(d.stand(w), "the change stands outside wall %q (%s)", w.Name, d.words(w.Length))
			}
		}
	}
}
