package roomtest

import (
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// Listed is a part of a table or list as it is drawn on a page.
type Listed struct {
	Title string // its main part, as it is repeated
	Goes  bool   // goes on from another part
	Page  int
	At    scene.Point
	Rows  int       // of a table: the lines under its rows; of a list: the marks before its paragraphs
	Foot  float64   // the lowest of it
	Lines []float64 // of a table, from the upper one on
	Table bool
}

// ListedOver reads back the same of a look, over the foot of a field.
func ListedOver(k draft.Look, foot float64, pages []*scene.Page) []Listed {
	var list []Listed
	for i, p := range pages {
		from := len(list)
		p.Texts(func(x *scene.Text) {
			if x.Height == k.Medium && x.Bold && x.Seat == scene.Hanging && x.Layer == scene.Notes && x.At.Y < foot {
				title, goes := strings.CutSuffix(x.String, " (continued)")
				for _, on := range []string{" (cont.)", ", on"} {
					if !goes {
						title, goes = strings.CutSuffix(title, on)
					}
				}
				title, _, _ = strings.Cut(title, ",")
				list = append(list, Listed{Title: title, Goes: goes, Page: i, At: x.At})
			}
		})
		here := list[from:]
		// under gives the part whose left edge is at x, the nearest over y
		under := func(x, y float64) *Listed {
			var found *Listed
			for j := range here {
				if l := &here[j]; math.Abs(l.At.X-x) < 1e-6 && l.At.Y < y && y < foot && (found == nil || l.At.Y > found.At.Y) {
					found = l
				}
			}
			return found
		}
		p.Walk(func(it scene.Item) {
			if line, ok := it.(*scene.Line); ok && line.A.Y == line.B.Y && line.Layer == scene.Frame {
				if l := under(line.A.X, line.A.Y); l != nil {
					l.Table = true
					l.Rows++
					l.Foot = max(l.Foot, line.A.Y)
					l.Lines = append(l.Lines, line.A.Y)
				}
			}
		})
		p.Texts(func(x *scene.Text) {
			if l := under(x.At.X, x.At.Y); l != nil && !l.Table && x.Height == k.Small {
				l.Rows++
				l.Foot = max(l.Foot, x.At.Y+x.Height)
			}
		})
		for j := range here {
			switch l := &here[j]; {
			case l.Table && headless[l.Title]:
				l.Rows-- // the line over the first row
			case l.Table:
				l.Rows -= 2 // and the one over the head
			}
		}
	}
	return list
}

// headless are the tables whose columns have no heads.
var headless = map[string]bool{"SUBMITTAL": true, "MATERIAL": true, "SHOP AND SITE": true, "QUANTITIES": true, "MOISTURE OVER HUMIDITY": true}
