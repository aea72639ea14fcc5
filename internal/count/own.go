package count

import (
	"slices"

	"flitchlay/internal/layout"
)

// Own is how sheets of a register are measured that do not go by its mark.
type Own struct {
	Sheets []*layout.Sheet
	Line   int // the second level line that is marked on them; 0 where no mark stands on them
	At     L   // from the raw end to that mark; without one, what is cut off the raw end that hangs up, 0 where it stays
	set    bool
}

// Owns are the sheets of a register that have to be measured otherwise, by how they are; usual reports whether any goes by its mark.
// Sheets that hang, and that hang nowhere, are left out.
func (c *Count) Owns(r *layout.Register) (list []Own, usual bool) {
	for i := range c.Cuts {
		x := &c.Cuts[i]
		s := x.sheet
		if x.Level || s.Hung || len(s.Pieces) == 0 || s.Flitch != r.Flitch || s.Course != r.Course || s.Turned != r.Turned {
			continue
		}
		own := x.own(r)
		if !own.set {
			usual = true
			continue
		}
		at := slices.IndexFunc(list, func(o Own) bool { return o.Line == own.Line && o.At == own.At })
		if at < 0 {
			at, list = len(list), append(list, own)
		}
		list[at].Sheets = append(list[at].Sheets, s)
	}
	return list, usual
}

// own is how a sheet is measured that does not go by its register.
func (c *Cut) own(r *layout.Register) Own {
	switch {
	case c.Line.Second() && !c.Line.Off:
		return Own{Line: c.Line.No, At: c.RegisterMark(r), set: true}
	case !c.Marked() && !r.Foot && c.RawHead:
		return Own{set: true}
	case !c.Marked() && !r.Foot:
		return Own{At: r.At - c.Above, set: true}
	}
	return Own{}
}

// RegisterMark is how far the mark of a sheet's level line is from the raw end that its register is measured from: under the one that
// hangs up, or over the one that hangs down.
func (c *Cut) RegisterMark(r *layout.Register) L {
	if r.Foot {
		return c.Line.By - r.At
	}
	return r.At - c.Line.By
}
