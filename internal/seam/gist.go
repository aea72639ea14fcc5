package seam

// gist is the leading bits of a cost in one word: all of it where it fits. Gists add up to no more than the gist of the
// sum, so what is found in them is a lower bound, and exact where all fits.
type gist uint64

// gistNever is the gist of what cannot be. It may be added to twice. A sum past gistMost counts as never, and is told.
const (
	gistNever gist = 1 << 62
	gistMost  gist = 1 << 61
)

// gistBits is how many bits the items of a cost may take together in a gist. The rest is for sums along two turns.
const gistBits = 60

// gists holds the costs of a table as gists. Nodes are rounded down; what a width costs counts item by item, and an item
// only where no bit of it is left out: so differences stay exact and what is convex stays convex.
type gists struct {
	shift             uint // bits that are left out
	kinds             []gist
	sheets            [2][]gist
	more              gist // a sheet more
	rampBy, steepBy   gist // what a unit of length lacking of prefer_width and of both widths costs
	fall, drop        gist // what ramps and steeps are taken against
	bendsBy, squareBy gist
	over              bool // a sum has passed gistMost
}

func (t *table) newGists() *gists {
	q := &gists{shift: uint(max(0, t.counted-gistBits))}
	for _, x := range t.kinds {
		q.kinds = append(q.kinds, q.of(x))
	}
	by := func(i item) gist {
		if at := t.at[i]; at >= int(q.shift) {
			return 1 << (uint(at) - q.shift)
		}
		return 0
	}
	q.more, q.bendsBy, q.squareBy = by(itemSheets), by(itemBends), by(itemUnevenness)
	if t.prefer > 0 {
		q.rampBy = by(itemShould)
	}
	q.steepBy = q.bendsBy + q.rampBy
	q.fall = q.rampBy * gist(t.prefer/t.unit)
	q.drop = q.bendsBy*gist(t.least/t.unit) + q.fall
	for cross := range q.sheets {
		q.sheets[cross] = make([]gist, t.g.net+1)
		for k := range q.sheets[cross] {
			q.sheets[cross][k] = t.sheetGist(q, int64(k)*t.s.Snap-int64(cross)*t.g.short)
		}
	}
	return q
}

// sheetGist is sheet in gists.
func (t *table) sheetGist(q *gists, width int64) gist {
	if width <= 0 || t.strict && width < t.least {
		return gistNever
	}
	off := (width - t.mean) / t.unit
	x := q.more + q.squareBy*gist(off*off)
	if width < t.prefer {
		x += q.rampBy * gist((t.prefer-width)/t.unit)
	}
	if width < t.least {
		x += q.bendsBy * gist((t.least-width)/t.unit)
	}
	return x
}

// exact says that nothing is left out of a gist.
func (q *gists) exact() bool { return q.shift == 0 }

// of returns the gist of a cost.
func (q *gists) of(x cost) gist {
	switch {
	case x.isNever():
		return gistNever
	case q.shift == 0:
		return gist(x.c)
	case q.shift < 64:
		return gist(x.b<<(64-q.shift) | x.c>>q.shift)
	case q.shift < 128:
		return gist(x.a<<(128-q.shift) | x.b>>(q.shift-64))
	}
	return gist(x.a >> (q.shift - 128))
}

// least returns the least cost of a gist.
func (q *gists) least(x gist) cost {
	switch {
	case x >= gistNever:
		return never
	case q.shift < 64:
		return cost{b: uint64(x) >> (64 - q.shift), c: uint64(x) << q.shift}
	case q.shift < 128:
		return cost{a: uint64(x) >> (128 - q.shift), b: uint64(x) << (q.shift - 64)}
	}
	return cost{a: uint64(x) << (q.shift - 128)}
}
