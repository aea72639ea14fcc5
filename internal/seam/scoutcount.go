package seam

// A way round that ends a little left of where it began can do with a sheet less than any that closes, where the girth is
// a little over that of whole sheets. Its bound then says nothing of all those places. So sheets are counted here: with
// E a length of n sheets right of the leftmost place, n the least that go round, a way on from a line is short if it has
// fewer sheets than go from the line to E. No way that closes is short.
//
//	     cell n             cell 2     cell 1
//	|--------------|  ...  |--------|----------|
//	lowest place                      targets  E
//
// A way is short by one sheet at most, for the targets lie in the last cell. So a short way goes on from each cell to the
// next, and it ceases to be short by a sheet that ends in the cell that it began in.

// shorter says by how little a closing place may lie right of the lowest for its ways to be counted; nought where that is
// of no use.
func (g *grid) shorter() int {
	over := (g.lines-1)%g.net + 1 // of the last sheet
	if g.lines <= g.net || 2*over > g.net {
		return 0
	}
	return g.net - over
}

// count readies a scout, whose last sheets are set, to find ways from places at low or right of it that are not short. It
// returns what short ways cost from each lane.
func (w *scout) count(low int) []gist {
	net, n := w.g.net, len(w.lines)
	short := w.store.gists.take(n)
	last := w.store.gists.take(n)
	copy(last[w.endsFrom:], w.ends[w.endsFrom:])
	from, sheets := w.endsFrom, (w.g.lines+net-1)/net
	for j := range short {
		short[j] = gistNever
	}
	end := low + sheets*net
	right, right2 := n, n // where the cell at hand ends, and the next one
	for cell := 1; cell <= sheets; cell++ {
		begin := w.find(end - cell*net)
		if cell > 1 {
			w.innerReach(begin, right, right, right2, short, short[begin:right])
		}
		for j := begin; j < right; j++ {
			w.ends[j] = gistNever
			switch {
			case j < from:
			case cell == 1:
				w.ends[j] = last[j]
			default:
				short[j] = min(short[j], last[j])
			}
		}
		if cell > 1 {
			for j := begin; j < right; j++ {
				short[j] = w.sum(short[j], w.gist[j])
			}
			w.innerReach(begin, right, begin, right, short, w.ends[begin:right])
		}
		right, right2 = begin, right
	}
	w.endsFrom = 0
	w.store.gists.give(last)
	return short
}

// innerReach finds what goes on from the lanes of one stretch by an inner sheet to those of another.
func (w *scout) innerReach(begin, end, to, past int, on, out []gist) {
	narrow := on[to:past]
	if w.jump != nil {
		narrow = w.store.gists.take(past - to)
		defer w.store.gists.give(narrow)
		for i := range narrow {
			narrow[i] = min(on[to+i]+w.gists.kinds[w.jump[to+i]], gistNever)
		}
	}
	w.reach(w.lines[begin:end], goals{w.lines[to:past], narrow}, out)
	whole := to
	for i, a := range w.lines[begin:end] {
		b := a + w.g.net
		for whole < past && w.lines[whole] < b {
			whole++
		}
		if whole < past && w.lines[whole] == b && w.b.whole(a, b) {
			out[i] = min(out[i], w.across(a, b)+on[whole])
		}
	}
}

// counted bounds closing places of a group as bound does, by ways that are not short alone.
func (w *scout) counted(g *group) []gist {
	turn := w.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	w.load(g.v.part(g.v.find(low+1), g.v.find(high+turn)))
	w.closeOn(g.places, g.pull, g.top)
	short := w.count(low)
	defer w.store.gists.give(short)
	w.run()
	n := w.find(high + w.g.net + 1)
	least := make([]gist, len(g.places))
	w.reach(g.places, goals{w.lines[:n], w.on[:n]}, least)
	n = w.find(low + w.g.net)
	more := make([]gist, len(g.places))
	w.reach(g.places, goals{w.lines[:n], short[:n]}, more)
	for i, x := range more {
		least[i] = min(least[i], x)
	}
	return least
}
