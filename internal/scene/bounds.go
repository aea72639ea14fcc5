package scene

// Bounds returns the box around everything in the group, cut by its clip.
func (g *Group) Bounds() Box {
	var b Box
	for _, it := range g.Items {
		b = b.Union(it.Bounds())
	}
	if g.Clip == nil || b.IsZero() {
		return b
	}
	c := Around(g.Clip...)
	if !b.Meets(c) {
		return Box{}
	}
	return Box{max(b.X0, c.X0), max(b.Y0, c.Y0), min(b.X1, c.X1), min(b.Y1, c.Y1)}
}

// Bounds returns the box around the line's ink.
func (l *Line) Bounds() Box { return Around(l.A, l.B).Inset(-l.Width / 2) }

// Bounds returns the box around the ink; sharp corners can reach a little further.
func (p *Poly) Bounds() Box {
	if len(p.Points) == 0 {
		return Box{}
	}
	return Around(p.Points...).Inset(-p.Width / 2)
}

// Bounds returns the box around the ink.
func (r *Rect) Bounds() Box { return r.Box.Inset(-r.Width / 2) }

// Bounds returns the box around the ink.
func (c *Circle) Bounds() Box {
	return Box{c.Centre.X, c.Centre.Y, c.Centre.X, c.Centre.Y}.Inset(-c.Radius - c.Width/2)
}

// Bounds returns a box around the ink; of curves it holds the control points.
func (p *Path) Bounds() Box {
	var all []Point
	for _, s := range p.Steps {
		switch s.Kind {
		case CurveTo:
			all = append(all, s.C1, s.C2, s.P)
		case MoveTo, LineTo:
			all = append(all, s.P)
		}
	}
	if len(all) == 0 {
		return Box{}
	}
	return Around(all...).Inset(-p.Width / 2)
}

// Bounds returns the picture's box.
func (i *Image) Bounds() Box { return i.Box }

// Bounds returns the zero Box: a link has no ink.
func (l *Link) Bounds() Box { return Box{} }
