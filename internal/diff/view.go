package diff

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// View is what two plans are compared by. It comes from a plan, or from a layout that was kept as JSON.
type View struct {
	Title     string
	Aim       string
	Room      *room.Room // nil from JSON
	Walls     []Wall
	Openings  []Opening
	Seams     []Seam
	Sheets    []Sheet
	Total     layout.Totals
	Musts     int
	Revisions []room.Revision
}

// Wall is a covered wall.
type Wall struct {
	Name   string
	Length L // as measured; 0 from JSON
	Along  L // along the run, eased corners taken into account
}

// Opening is an opening, x from the wall's left end.
type Opening struct {
	Name, Wall              string
	Kind                    room.Kind
	Left, Right, Sill, Head L // Left, Right as measured; 0 from JSON
	From, To                L // along the run, from where the wall begins
}

// Seam is a seam, x from the wall's left end.
type Seam struct {
	Number  int
	Wall    string
	X       L
	Closing bool
}

// Sheet is a sheet and where it hangs.
type Sheet struct {
	Flitch        string
	Number        int
	Place, Course int
	Width, Cut    L
	Ripped        string
	Spots         []Spot
	Shape         string // every point of its pieces, to tell whether two are cut alike
}

// Spot is what of a wall a sheet covers.
type Spot struct {
	Wall     string
	From, To L
}

// ViewOf looks at a plan.
func ViewOf(p *layout.Plan) *View {
	r := p.Room
	v := &View{Title: r.Project.Title, Aim: layout.AimWord(p.Aim), Room: r, Total: p.Totals, Revisions: r.Project.Revisions}
	for _, f := range p.Findings {
		if f.Level == finding.Must {
			v.Musts++
		}
	}
	for i := range p.Runs {
		run := &p.Runs[i]
		left := map[int]L{}
		for _, st := range run.Walls {
			v.Walls = append(v.Walls, Wall{r.Walls[st.Wall].Name, r.Walls[st.Wall].Length, st.Right - st.Left})
			left[st.Wall] = st.Left
		}
		for _, o := range run.Openings {
			w := &r.Walls[o.Wall]
			v.Openings = append(v.Openings, Opening{o.Name, w.Name, o.Kind, w.Openings[o.Index].FromLeft, w.Openings[o.Index].Right(), o.Sill, o.Head,
				o.Left - left[o.Wall], o.Right - left[o.Wall]})
		}
		for _, s := range run.Seams {
			v.Seams = append(v.Seams, Seam{s.Number, r.Walls[s.Wall].Name, s.X, s.Closing})
		}
		for k := range run.Sheets {
			s := &run.Sheets[k]
			x := Sheet{Flitch: s.Flitch, Number: s.Number, Place: s.Place, Course: s.Course, Width: s.Width, Cut: s.CutLength, Ripped: run.Side(s.Ripped)}
			for _, piece := range s.Pieces {
				low, high := piece.Outline[0].X, piece.Outline[0].X
				for _, q := range piece.Outline {
					low, high = min(low, q.X), max(high, q.X)
				}
				x.spot(r.Walls[piece.Wall].Name, low, high)
				for _, ring := range append([]shape.Outline{piece.Outline}, piece.Holes...) {
					for _, q := range ring {
						x.point(q.X, q.Z)
					}
				}
			}
			v.Sheets = append(v.Sheets, x)
		}
	}
	return v
}

// spot adds a piece to what a sheet covers.
func (s *Sheet) spot(wall string, from, to L) {
	for i := range s.Spots {
		if s.Spots[i].Wall == wall {
			s.Spots[i].From, s.Spots[i].To = min(s.Spots[i].From, from), max(s.Spots[i].To, to)
			return
		}
	}
	s.Spots = append(s.Spots, Spot{wall, from, to})
}

// point adds a point to the sheet's shape.
func (s *Sheet) point(x, z L) { s.Shape += x.Decimal() + "," + z.Decimal() + " " }

// IsKept reports whether a text is JSON and no room file.
func IsKept(text []byte) bool {
	for _, b := range text {
		switch b {
		case ' ', '\t', '\r', '\n':
			continue
		}
		return b == '{'
	}
	return false
}

// ReadKept looks at a layout kept as JSON.
//
// Errors: it is no layout in the format flitchlay-layout/1.
func ReadKept(text []byte) (*View, error) {
	var k layout.Kept
	if err := json.Unmarshal(text, &k); err != nil {
		return nil, fmt.Errorf("it is no layout: %w", err)
	}
	if k.Format != layout.KeptFormat {
		return nil, fmt.Errorf("it is no layout in the format flitchlay-layout/1, but %q", k.Format)
	}
	v := &View{Title: k.Title, Aim: k.Aim}
	for _, r := range k.Runs {
		left := map[string]layout.MM{}
		for _, w := range r.Walls {
			left[w.Name] = w.Left
			v.Walls = append(v.Walls, Wall{Name: w.Name, Along: L(w.Right - w.Left)})
		}
		for _, o := range r.Openings {
			at := left[o.Wall]
			v.Openings = append(v.Openings, Opening{Name: o.Name, Kind: room.Kind(o.Kind), Wall: o.Wall, Sill: L(o.Sill), Head: L(o.Head), From: L(o.Left - at), To: L(o.Right - at)})
		}
		for _, s := range r.Seams {
			v.Seams = append(v.Seams, Seam{s.LeftSheet, s.Wall, L(s.X), s.Closing})
		}
		for _, s := range r.Sheets {
			if s.Number == nil {
				v.Total.Short++
			}
			v.Sheets = append(v.Sheets, keptSheet(&s))
		}
	}
	for _, f := range k.Findings {
		if f.Level == "must" {
			v.Musts++
		}
	}
	v.Total.Sheets, v.Total.Spares = k.Totals.Sheets, k.Totals.Spares
	v.Total.NetArea, v.Total.GrossArea = length.Area(k.Totals.NetArea), length.Area(k.Totals.GrossArea)
	if p := k.Totals.Paste; p != nil {
		v.Total.Paste = &layout.Amount{Amount: float64(p.Amount), Unit: p.Unit}
	}
	if p := k.Totals.Primer; p != nil {
		v.Total.Primer = &layout.Amount{Amount: float64(p.Amount), Unit: p.Unit}
	}
	return v, nil
}

// keptSheet looks at a sheet kept as JSON.
func keptSheet(s *layout.KeptSheet) Sheet {
	x := Sheet{Flitch: or(s.Flitch), Number: or(s.Number), Place: s.Place, Course: s.Course, Width: L(s.Width), Cut: L(s.CutLength), Ripped: or(s.Ripped)}
	for _, piece := range s.Pieces {
		for _, q := range piece.Outline {
			x.spot(piece.Wall, L(q[0]), L(q[0]))
		}
		for _, ring := range append([][]layout.KeptPoint{piece.Outline}, piece.Holes...) {
			for _, q := range ring {
				x.point(L(q[0]), L(q[1]))
			}
		}
	}
	return x
}

// or is what is kept, or nothing where it is null.
func or[T any](kept *T) (value T) {
	if kept != nil {
		value = *kept
	}
	return value
}

// widest is the widest sheet: what seams are at most apart.
func (v *View) widest() L {
	w := L(1)
	for _, s := range v.Sheets {
		w = max(w, s.Width)
	}
	return w
}

// on lists the seams of a wall from its left end.
func (v *View) on(wall string) []Seam {
	var out []Seam
	for _, s := range v.Seams {
		if s.Wall == wall {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b Seam) int { return cmp.Compare(a.X, b.X) })
	return out
}
