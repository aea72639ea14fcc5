package job

import (
	"fmt"
	"slices"
	"sync"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// kind is what is known of the rooms of one file: they are alike but for their numbers.
type kind struct {
	err      error
	flitches []room.Flitch // those of the job, with what is too narrow for these rooms
	columns  []column
	need     int // sheets
	hung     []room.Hung
}

// column is the sheets of one place.
type column struct {
	sheets int
	begins bool // a wall begins with it, or a span
}

// Run goes through the rooms in the order of hanging and finds what each may take its sheets from. A room whose sheets cannot be
// told has that in its Err, and so have those after it that would go on where it stops.
func (j *Job) Run(workers int) {
	for _, r := range j.Rooms {
		r.Own = r.Err == nil && (len(j.Flitches) == 0 || r.Flitch == "" && len(r.Laid) == 0 && j.foreign(r))
	}
	kinds := j.kinds(workers)
	l := &ledger{job: j, taken: map[string]map[int]bool{}, last: map[string]int{}, known: len(j.Flitches)}
	for i := range j.Flitches {
		l.taken[j.Flitches[i].Number] = map[int]bool{}
	}
	for _, r := range j.Rooms {
		for _, row := range r.Laid {
			l.take(row.Flitch, row.Numbers, false)
		}
	}
	for _, r := range j.Rooms {
		if k := kinds[r.file.kind]; !r.Own && r.Err == nil && k.err != nil {
			r.Err = k.err
		}
	}
	served := map[*Room]bool{}
	if j.Auto {
		served = j.choose(l, kinds)
	}
	for _, r := range j.Rooms {
		if !r.Own && !served[r] {
			l.serve(r, kinds[r.file.kind])
		}
	}
}

// foreign reports whether a room's file names flitches of which the job has none.
func (j *Job) foreign(r *Room) bool {
	list := r.file.root.Get("flitch").Tables()
	for _, f := range list {
		if j.of(f.Get("number").Text("")) != nil {
			return false
		}
	}
	return len(list) > 0
}

// kinds looks at one room of each file, several at a time.
func (j *Job) kinds(workers int) map[int]*kind {
	out := map[int]*kind{}
	gate := make(chan struct{}, max(1, workers))
	var all sync.WaitGroup
	for _, r := range j.Rooms {
		if r.Own || r.Err != nil || out[r.file.kind] != nil {
			continue
		}
		k := &kind{}
		out[r.file.kind] = k
		all.Go(func() {
			gate <- struct{}{}
			k.look(j, r)
			<-gate
		})
	}
	all.Wait()
	return out
}

// look lays a room out with all flitches, to see how many sheets it takes.
func (k *kind) look(j *Job, r *Room) {
	whole := *r
	whole.Takes = j.Flitches
	decoded, err := room.DecodeText(j.text(&whole))
	if err != nil {
		k.err = err
		return
	}
	k.flitches, k.hung = decoded.Flitches, decoded.Hung
	p, err := layout.LayOwn(decoded)
	if err != nil {
		k.err = err
		return
	}
	k.columns = columns(p)
	for _, c := range k.columns {
		k.need += c.sheets
	}
}

// columns are the places of a plan.
func columns(p *layout.Plan) (list []column) {
	for i := range p.Runs {
		r := &p.Runs[i]
		wall := -1
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if k > 0 && r.Sheets[k-1].Place == s.Place {
				list[len(list)-1].sheets++
				continue
			}
			on := mostOn(s, wall)
			list = append(list, column{1, k == 0 || r.Sheets[k-1].Span != s.Span || on != wall})
			wall = on
		}
	}
	return list
}

// mostOn is the wall on which the greater part of a sheet hangs, another one where it has none.
func mostOn(s *layout.Sheet, other int) int {
	most := -1
	for i := range s.Pieces {
		if most < 0 || s.Pieces[i].Area > s.Pieces[most].Area {
			most = i
		}
	}
	if most < 0 {
		return other
	}
	return s.Pieces[most].Wall
}

// serve finds what one room may take.
func (l *ledger) serve(r *Room, k *kind) {
	if len(r.Laid) > 0 {
		l.hangs(r)
		return
	}
	if r.Flitch != "" {
		l.current = slices.IndexFunc(l.job.Flitches, func(f room.Flitch) bool { return f.Number == r.Flitch })
	}
	if r.Err == nil {
		r.Err = l.find(r, k)
	}
	if r.Err != nil && l.current < l.known {
		l.known, l.bad = l.current, r.Name()
	}
}

// find is serve of a room that can be read.
//
// Errors: what only laying it out shows; or that a room before it cannot be read.
func (l *ledger) find(r *Room, k *kind) error {
	if len(k.hung) > 0 && k.hung[0].Flitch >= 0 {
		return l.begun(r, k)
	}
	if k.need == 0 {
		r.Takes = l.job.Flitches
		return nil
	}
	if i := l.whole(k); i >= 0 {
		l.current = i
		f := &k.flitches[i]
		free := l.free(f)
		r.Takes = []room.Flitch{upTo(l.rest(f, free[0]), free[k.need-1])}
		l.take(f.Number, free[:k.need], true)
		return nil
	}
	if l.known < len(l.job.Flitches) {
		return fmt.Errorf("%s: its sheets follow those of %s, which cannot be laid out", r.Name(), l.bad)
	}
	longest := 0
	for i := range k.flitches {
		f := &k.flitches[i]
		longest = max(longest, len(f.Sheets)-len(f.Damaged)-len(f.Spare))
	}
	r.Split = l.job.Whole == "room" && k.need <= longest
	if l.job.Whole == "wall" {
		l.byWalls(r, k, longest)
	} else {
		for i := l.current; i < len(k.flitches); i++ {
			if free := l.free(&k.flitches[i]); len(free) > 0 {
				part := l.rest(&k.flitches[i], free[0])
				part.UseUp = l.job.Auto // it was reckoned with
				r.Takes = append(r.Takes, part)
			}
		}
	}
	if len(r.Takes) == 0 { // nothing is left: the room says how many it is short
		r.Takes = []room.Flitch{l.nothing()}
	}
	return l.lay(r)
}

// whole finds the flitch that a room hangs from as a whole: with whole = "room" the first that has enough, else only the one that
// it goes on with.
func (l *ledger) whole(k *kind) int {
	for i := l.current; i < l.known; i++ {
		if n := len(l.free(&k.flitches[i])); n > 0 && n >= k.need {
			return i
		} else if l.job.Whole != "room" && n > 0 {
			return -1
		}
	}
	return -1
}

// nothing is the last flitch with its last sheet alone, damaged: a room that finds no sheet is all short.
func (l *ledger) nothing() room.Flitch {
	f := l.job.Flitches[len(l.job.Flitches)-1]
	last := f.Sheets[len(f.Sheets)-1]
	f.Sheets, f.Damaged, f.Spare = []int{last}, []int{last}, nil
	return f
}

// hangs gives a room the sheets that hang in it, and no other; what was passed over and what is kept back is told with them.
func (l *ledger) hangs(r *Room) {
	for _, row := range r.Laid {
		f := *l.job.of(row.Flitch)
		first, last := row.Numbers[0], row.Numbers[len(row.Numbers)-1]
		hangs := func(n int) bool { return within(row.Numbers, n) }
		f.Damaged = kept(f.Damaged, func(n int) bool { return first < n && n < last && !hangs(n) && !l.taken[row.Flitch][n] })
		f.Spare = kept(f.Spare, func(n int) bool { return !hangs(n) && !l.taken[row.Flitch][n] })
		f.Sheets = kept(f.Sheets, func(n int) bool { return hangs(n) || within(f.Damaged, n) || within(f.Spare, n) })
		f.UseUp = len(r.Laid) > 1
		r.Takes = append(r.Takes, f)
		l.take(row.Flitch, row.Numbers, true)
		l.current = slices.IndexFunc(l.job.Flitches, func(x room.Flitch) bool { return x.Number == row.Flitch })
	}
}

// begun serves a room in which some sheets hang already: it goes on from these, whatever came before.
func (l *ledger) begun(r *Room, k *kind) error {
	first := k.hung[0]
	for i := first.Flitch; i < len(k.flitches); i++ {
		f := &k.flitches[i]
		from := 0
		if i == first.Flitch {
			from = first.Sheet
		} else if free := l.free(f); len(free) > 0 {
			from = free[0]
		} else {
			continue
		}
		r.Takes = append(r.Takes, l.rest(f, from))
	}
	l.current = first.Flitch
	return l.lay(r)
}

// byWalls parts the flitches at walls: of each only so many sheets are taken that the next one begins with a wall, unless the wall is
// longer than any.
func (l *ledger) byWalls(r *Room, k *kind, longest int) {
	at := 0
	for i := l.current; i < len(k.flitches) && at < len(k.columns); i++ {
		f := &k.flitches[i]
		free := l.free(f)
		end, used, good, goodUsed := at, 0, at, 0
		for end < len(k.columns) && used+k.columns[end].sheets <= len(free) {
			used += k.columns[end].sheets
			if end++; end == len(k.columns) || k.columns[end].begins {
				good, goodUsed = end, used
			}
		}
		if good == at && k.wall(at) > longest {
			good, goodUsed = end, used
		}
		if goodUsed == 0 {
			continue
		}
		part := l.rest(f, free[0])
		if good < len(k.columns) {
			part = upTo(part, free[goodUsed-1])
			part.UseUp = true
		}
		r.Takes = append(r.Takes, part)
		at = good
	}
}

// wall is how many sheets the wall takes that a column begins.
func (k *kind) wall(at int) int {
	n := 0
	for i := at; i < len(k.columns) && (i == at || !k.columns[i].begins); i++ {
		n += k.columns[i].sheets
	}
	return n
}

// lay lays a room out whose numbers cannot be counted off, and takes what it lays.
func (l *ledger) lay(r *Room) error {
	decoded, err := room.DecodeText(l.job.text(r))
	if err != nil {
		return err
	}
	p, err := layout.LayOwn(decoded)
	if err != nil {
		return err
	}
	var takes []room.Flitch
	for i, s := range p.Left {
		l.take(s.Flitch, s.Laid, true)
		if len(s.Laid) > 0 {
			takes = append(takes, upTo(r.Takes[i], slices.Max(s.Laid)))
		}
		if len(s.Laid) > 0 {
			l.current = slices.IndexFunc(l.job.Flitches, func(f room.Flitch) bool { return f.Number == s.Flitch })
		}
	}
	if p.Totals.Short > 0 || len(takes) == 0 {
		return nil // it says of all that there is that it is too little
	}
	for i := range takes[:len(takes)-1] {
		takes[i].UseUp = true
	}
	r.Takes = takes
	return nil
}
