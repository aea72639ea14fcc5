package count

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// Slit are the level cuts that free the flap of a wrapped jamb, between its fold and the edge of what is cut out.
type Slit struct {
	Name     string // of the opening
	From, To L      // from the sheet's left edge
	At       []L    // over the level line, from below
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
		x := Slit{Name: b.Of.Name, From: b.At, To: min(b.At+b.Of.Reveal, c.Width)}
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

// SlitWords say where a flap is slit: "slit W1's flap level at 6 down and 40 up, 16 to 19 1/4 from left edge".
func (c *Cut) SlitWords(s length.Style, x Slit) string {
	words := ""
	for i, z := range x.At {
		if i > 0 {
			words += " and "
		}
		switch {
		case c.Below < 0:
			words += s.Inches(z+c.Below) + " over its foot"
		case c.Above < 0:
			words += s.Inches(c.Above-z) + " under its head"
		default:
			words += UpDown(s.Inches, z)
		}
	}
	return "slit " + x.Name + "'s flap level at " + words + ", " + s.Inches(x.From) + " to " + s.Inches(x.To) + " " + c.FromEdge()
}
