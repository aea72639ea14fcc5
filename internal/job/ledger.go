package job

import (
	"slices"

	"flitchlay/internal/room"
)

// ledger is which sheets are taken, and by how far each flitch is used.
type ledger struct {
	job     *Job
	taken   map[string]map[int]bool
	last    map[string]int
	current int    // flitch with which the next room goes on
	known   int    // flitches from this one on are taken up by how much nobody knows
	bad     string // the room for which that is so
}

// take marks sheets as taken; those that are taken in order push on where the next room begins.
func (l *ledger) take(flitch string, numbers []int, inOrder bool) {
	for _, n := range numbers {
		l.taken[flitch][n] = true
		if inOrder {
			l.last[flitch] = max(l.last[flitch], n)
		}
	}
}

// free are the sheets of a flitch that a room of a kind may take, from where the rooms before stopped.
func (l *ledger) free(f *room.Flitch) (list []int) {
	for _, n := range f.Sheets {
		if n > l.last[f.Number] && !l.taken[f.Number][n] && !within(f.Damaged, n) && !within(f.Spare, n) {
			list = append(list, n)
		}
	}
	return list
}

func within(ascending []int, n int) bool {
	_, found := slices.BinarySearch(ascending, n)
	return found
}

// rest is a flitch as a room finds it: without what other rooms have, from its first free sheet on, and what is kept back.
func (l *ledger) rest(f *room.Flitch, from int) room.Flitch {
	out := *l.job.of(f.Number)
	spare := func(n int) bool { return within(f.Spare, n) && !l.taken[f.Number][n] }
	out.Sheets = kept(out.Sheets, func(n int) bool { return n >= from && !l.taken[f.Number][n] || spare(n) })
	return share(out)
}

// upTo is what a room takes of a flitch, up to the last sheet that it lays, and what is kept back. It does not have what other rooms
// take after it: its pages stay as they are, whatever becomes of these.
func upTo(f room.Flitch, last int) room.Flitch {
	f.Sheets = kept(f.Sheets, func(n int) bool { return n <= last || within(f.Spare, n) })
	return share(f)
}

// share keeps of the damaged sheets and of those kept back the ones that a flitch still has.
func share(f room.Flitch) room.Flitch {
	mine := func(n int) bool { return within(f.Sheets, n) }
	f.Damaged, f.Spare = kept(f.Damaged, mine), kept(f.Spare, mine)
	return f
}

// kept are the numbers that fit.
func kept(list []int, fits func(int) bool) (out []int) {
	for _, n := range list {
		if fits(n) {
			out = append(out, n)
		}
	}
	return out
}
