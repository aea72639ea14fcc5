package seam

// plain says that no must is broken and all steps are alike, as mostly: then runPlain does.
func (w *scout) plain() bool { return w.strict && w.short == 0 && w.aim != Even }

// runPlain is run with all that left out which is nothing then. A sheet as wide as least_width or prefer_width costs what
// the windows beside it say.
func (w *scout) runPlain() {
	top := len(w.lines) - 1
	lines, on, node := w.lines, w.on, w.gist[:len(w.lines)]
	net, least, prefer := w.g.net, max(w.leastSteps, 1), max(w.preferSteps, 1)
	kinds, more := w.gists.kinds, w.more
	full := w.gists.sheets[0][net]
	w.wide.reset(top)
	w.slim.reset(top)
	wide, slim := w.wide.key, w.slim.key
	mask := len(wide) - 1
	slope := w.rampBy * gist(w.step) // of a line, for there is no short step
	whole := top
	for j := top; j >= 0; j-- {
		a := lines[j]
		best := gistNever
		if j >= w.endsFrom {
			best = w.ends[j]
		}
		for lines[whole] > a+net {
			whole--
		}
		limit := w.b.limit(a)
		if lines[whole] == a+net && w.b.whole(a, a+net) {
			best = min(best, full+on[whole])
		}
		x := w.wide.least(lines, a+prefer, min(a+net-1, limit))
		if w.prefer > 0 {
			if y := w.slim.least(lines, a+least, min(a+prefer-1, limit)); y < gistNever {
				x = min(x, y+w.gists.fall-slope*gist(w.size-a))
			}
		}
		x += more
		if w.here != nil {
			x += kinds[w.here[j]]
		}
		best = w.sum(min(best, x), node[j])
		on[j] = best
		if w.jump != nil {
			best += kinds[w.jump[j]]
		}
		wide[j&mask] = best
		if w.prefer > 0 {
			if best < gistNever {
				best += slope * gist(w.size-a)
			}
			slim[j&mask] = best
		}
	}
}
