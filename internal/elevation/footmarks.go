package elevation

import (
	"slices"
	"strings"
)

// endMarks name the terminations at the raw ends of the covering of some views that are not named yet: "inside corner T4".
func endMarks(list []*View, named []string) (ends []string) {
	for _, e := range list {
		for _, r := range e.rawEnds() {
			mark := e.EndMark(r.Kind)
			if mark == "" || r.X < e.From || r.X > e.To || slices.ContainsFunc(slices.Concat(named, ends), func(n string) bool { return strings.HasSuffix(n, " "+mark) }) {
				continue
			}
			ends = append(ends, r.Kind+" "+mark)
		}
	}
	return ends
}

// jambMarks name the terminations at the openings of some views.
func jambMarks(list []*View) (ends []string) {
	wrapped, plain := false, false
	for _, o := range list {
		for i := range o.F.W.Openings {
			w := o.F.Wraps(i)
			wrapped, plain = wrapped || w, plain || !w
		}
	}
	if plain && list[0].EndMark("jamb") != "" {
		ends = append(ends, "openings "+list[0].EndMark("jamb"))
	}
	if wrapped {
		ends = append(ends, "wrapped jambs "+list[0].EndMark("reveal"))
	}
	return ends
}
