package count

import "flitchlay/internal/layout"

// Slit are the level cuts that free the flap of a wrapped jamb, between its fold and the edge of what is cut out.
type Slit struct {
	Name     string // of the opening
	From, To L      // from the sheet's left edge
	At       []L    // over the level line, from below
	Deep     L      // the reveal, into which it is folded
}

// Slits are the slits of a sheet from left to right. Where an opening goes down to the floor, or as far as the end of the sheet,
// the flap is free there.
func (c *Cut) Slits(p *layout.Plan) []Slit {
	var list []Slit
	for i := range c.Bends {
		b := &c.Bends[i]
		if b.Of == nil || c.Level {
			continue
		}
		x := Slit{Name: b.Of.Name, Deep: b.Of.Reveal, From: b.At, To: min(b.At+b.Of.Reveal, c.Width)}
		if b.rightJamb {
			x.From, x.To = max(b.At-b.Of.Reveal, 0), b.At
		}
		level := p.Room.Space.LevelLine
		if z := b.Of.Sill - level; b.Of.SillGiven && z > -c.Below+c.BottomTrim && z < c.Above {
			x.At = append(x.At, z)
		}
		if z := b.Of.Head - level; z < c.Above-c.TopTrim && z > -c.Below {
			x.At = append(x.At, z)
		}
		if x.At != nil && x.From < x.To {
			list = append(list, x)
		}
	}
	return list
}

// SlitWords say where a flap is slit: "slit W1's flap level at 6 down and 40 up, 16 to 19 1/4 from left edge; it
// folds in, 3 1/4 deep".
func (c *Cut) SlitWords(w Speech, x Slit) string {
	var at []string
	for _, z := range x.At {
		switch {
		case c.FromFoot():
			at = append(at, w.Words.Say("height.over_foot", w.Inches(z+c.Below)))
		case c.FromHead():
			at = append(at, w.Words.Say("height.under_head", w.Inches(c.Above-z)))
		default:
			at = append(at, c.OfLine(w, UpDown(w.Words, w.Inches, z-c.Line.By)))
		}
	}
	places := at[0]
	for _, more := range at[1:] {
		places = w.Words.Say("cut.and", places, more)
	}
	return w.Words.Say("cut.slit", x.Name, places, w.Words.Say("cut.span", w.Inches(x.From), w.Inches(x.To))+" "+c.FromEdge(w), w.Inches(x.Deep))
}
