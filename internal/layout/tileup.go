package layout

// tileUp cuts a wall with horizontal grain into bands.
func (b *builder) tileUp(r *Run) {}
