package elevation

import (
	"fmt"
	"strings"
)

// cutSheets says which sheets are ripped narrower between two seams, so that the grain jumps, and where and how much of that
// is seen: also of those whose right seam is past a corner.
func (e *View) cutSheets() []string {
	var cut []string
	for _, p := range e.F.Parts {
		s := e.F.Run.Hanging(p.Place)
		if p.To <= e.From || p.From >= e.To {
			continue
		}
		if s.Lost == 0 {
			if s.RipTo > 0 && e.closes(p.Place) {
				cut = append(cut, fmt.Sprintf("Sheet %s, ripped to %s, covers %s and stands at the closing seam.", NumberOf(s), e.Style.Words(s.RipTo), e.Style.Words(s.Width)))
			}
			continue
		}
		where := ""
		if seam := e.F.Run.SeamAfter(p.Place); seam != nil {
			if seam.Wall != e.F.Wall {
				where = ", on " + e.Room.Walls[seam.Wall].Name
			}
			if !s.Narrow {
				where += ", seen for " + e.Style.Words(seam.Seen)
			}
		}
		ripped := ""
		if s.RipTo > 0 {
			ripped = ", ripped to " + e.Style.Words(s.RipTo) + ","
		}
		cut = append(cut, fmt.Sprintf("Sheet %s%s covers %s: the grain jumps %s at its right seam%s.", NumberOf(s), ripped, e.Style.Words(s.Width), e.Style.Words(s.Lost), where))
	}
	return cut
}

// cutEnds are the sheets that are ripped at an end of the covering.
func (e *View) cutEnds() []string {
	var list []string
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			if p.To > e.From && p.From < e.To && s.RipTo > 0 && s.Lost == 0 && !e.closes(p.Place) {
				list = append(list, NumberOf(s))
			}
		}
	}
	return list
}

// endsCut says that sheets are ripped at an end of the covering; nothing where none are.
func endsCut(sheets []string, where, one, several string) string {
	switch len(sheets) {
	case 0:
		return ""
	case 1:
		return where + " sheet " + sheets[0] + " " + one
	}
	n := len(sheets) - 1
	return where + " sheets " + strings.Join(sheets[:n], ", ") + " and " + sheets[n] + " " + several
}

// closes reports whether a place stands between two seams of which one closes the run.
func (e *View) closes(place int) bool {
	closing, seams := false, 0
	for i := range e.F.Run.Seams {
		if x := &e.F.Run.Seams[i]; x.LeftSheet == place || x.RightSheet == place {
			closing, seams = closing || x.Closing, seams+1
		}
	}
	return closing && seams == 2
}
