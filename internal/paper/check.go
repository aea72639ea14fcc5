package paper

// StampLeast is the clear space that a stamp needs.
//
// Source: a clear box of 70 x 30 mm is kept for the owner's marks in public shop drawing rules (see also AIA A201-2017
// 3.12.5: the hanger's own approval comes first, so there are two).
var StampLeast = Box{W: 70, H: 30}

// check notes what does not go together.
func (d decoder) check(t *Template) {
	strip := d.table("strip")
	if t.Frame.W < 100 || t.Frame.H < 100 {
		d.root.Get("frame").Mistake("make the margins smaller", "the frame leaves %s x %s mm; a page needs 100 x 100", figure(t.Frame.W), figure(t.Frame.H))
		return
	}
	if at := strip.Get("box"); at.Given() && !t.Frame.holds(t.Strip) {
		at.Mistake("keep it inside x "+figure(t.Frame.X)+" to "+figure(t.Frame.Right())+", y "+figure(t.Frame.Y)+" to "+figure(t.Frame.Foot()),
			"the strip reaches past the frame")
	}
	if strip.Get("box").Given() && t.Field == (Box{}) {
		strip.Get("box").Mistake("make the strip as wide or as high as the frame, or write field = [x, y, width, height]",
			"the strip leaves no clear field for drawings")
	} else if f := strip.Get("field"); f.Given() && (!t.Frame.holds(t.Field) || t.Field.meets(t.Strip)) {
		f.Mistake("keep it inside the frame, clear of the strip", "the field reaches past the frame or under the strip")
	}
	tables := strip.Get("block").Tables()
	title := false
	for i, b := range t.Blocks {
		v := tables[i]
		if !t.Strip.holds(b.Box) {
			v.Get("box").Mistake("keep it inside the strip", "the block reaches past the strip")
		}
		for _, o := range t.Blocks[:i] {
			if b.Box.meets(o.Box) {
				v.Get("box").Mistake("move one of them", "the block lies over another")
			}
		}
		switch b.Kind {
		case Stamp:
			if c := b.Clear(t.Text.Small); c.W < StampLeast.W-0.051 || c.H < StampLeast.H-0.051 {
				v.Get("box").Mistake("make it larger", "a stamp needs %s x %s mm clear, here are %s x %s",
					figure(StampLeast.W), figure(StampLeast.H), figure(c.W), figure(c.H))
			}
		case Revisions:
			sum := 0.0
			for _, c := range b.Columns {
				sum += c
			}
			if len(b.Columns) != 3 || sum > b.Box.W+0.051 {
				at := v.Get("columns")
				at.Mistake("write columns = [9, 43, 20]", "revisions take three columns that fit %s mm together", figure(b.Box.W))
			}
		case Title, Words:
			title = title || b.Kind == Title
			sum := 0.0
			for _, r := range b.Rows {
				sum += r.Height
			}
			if sum > b.Box.H+0.051 {
				v.Get("box").Mistake("make the rows lower", "the rows are %s mm high together, the block is %s", figure(sum), figure(b.Box.H))
			}
		}
	}
	if strip.Get("box").Given() && !title {
		strip.Get("box").Mistake(`write a [[strip.block]] with kind = "title"`, "the strip has no title block")
	}
}

// Clear is what of a block its heading leaves, when the heading is lettered small.
func (b Block) Clear(small float64) Box {
	const edge = 1
	top := float64(edge)
	if b.Heading != "" {
		top = 2.5*small + edge
	}
	return Box{b.Box.X + edge, b.Box.Y + top, b.Box.W - 2*edge, b.Box.H - top - edge}
}
