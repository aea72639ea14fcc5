package layout

// measured gives sheets that came narrower the lines of their own. No seam moves for it: what a sheet is short of its overlaps and
// trims, its two edges share, so that its raw edges stand nearer to its seams and it reaches past both. All courses of a place hang
// by one line, that of the narrowest.
//
//	|<------- as all others ------->|
//	 |<- o/2 ->|  seam  seam |<-->|
//	   |<------ narrower ----->|
func (b *builder) measured() {
	for i := range b.plan.Runs {
		r := &b.plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			s.Gross = b.room.GrossOf(s.Flitch, s.Number)
			if s.Gross < b.room.Veneer.GrossWidth && !s.InGap {
				b.measure(i, s.Place)
			}
		}
		for k := range r.Seams {
			s := &r.Seams[k]
			s.PlumbLine -= r.Hanging(s.LeftSheet).Short.HalfDown()
		}
	}
}

// measure takes the sheets of a place as wide as they came.
func (b *builder) measure(run, place int) {
	r := &b.plan.Runs[run]
	var column []*Sheet
	short := L(0)
	span := &r.Spans[r.sheet(place).Span]
	first, last, closes := place == span.FirstSheet, place == span.LastSheet, span.Closed
	for _, k := range r.column(place) {
		s := &r.Sheets[k]
		s.Gross = b.room.GrossOf(s.Flitch, s.Number)
		if s.InGap {
			continue
		}
		q := b.asked[run][s.Span]
		short = max(short, b.rip(s, q, first && !q.from.Closed, last && !q.from.Closed, first))
		column = append(column, s)
	}
	share := -short.HalfDown()
	if last && !first && !closes { // it hangs by its left edge
		share = short - short.HalfDown()
	}
	for _, s := range column {
		s.Short = short
		s.StartLine, s.RightLine = s.StartLine+share, s.RightLine+share
	}
}
