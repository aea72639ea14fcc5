package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/finding"
)

// Word is what is to be done at a wall as the crew read it on arrival.
type Word int

// The three words.
const (
	HangIt    Word = iota // what is printed stands: hang
	Restrike              // sheets and cut lengths stand, lines are struck from other figures
	PlanAgain             // with these sheets it cannot be hung so
)

// String gives the word as it is printed.
func (w Word) String() string { return [...]string{"hang", "re-strike", "plan again"}[w] }

// Arrival is what comes of one wall in the room as read.
//
// The room as read is laid with the sheets of the plan: each span begins where it is planned to, or at the last sheet that hangs,
// and every sheet after it hangs against the one before it, as wide as it is cut. Then a wall says
//
//   - plan again, where a must is broken there that the plan keeps, a pin that was met is not, or a sheet as it is cut does not reach
//     over all that it has to cover, or takes more than a sheet for the gap that closes;
//   - re-strike, where that is not so, but the figure of a line or the place of a cut on the sheets is printed otherwise;
//   - hang, where nothing of this is so: trims take up what differs.
type Arrival struct {
	Wall   int  // in Room.Walls
	Read   bool // false: it was not read, and follows from what was read of others
	Word   Word
	Lines  []Struck // that are struck from other figures, in hanging order
	Cut    L        // how much further right on the sheets lies what is cut and folded for this wall, as printed; negative: left
	Lacks  []Lack   // sheets that no longer reach
	Broken []finding.Finding
	Higher L // how much further up the sheets have to reach than planned, at most; negative: less
	Lower  L // the same down
	Out    L // the same at a raw end, past the end as planned
}

// Struck is a line that is struck from another figure than planned. Figures run at the level line, from where the wall's left
// corner crosses it, as on the wall's page.
type Struck struct {
	Sheet        string // the sheets whose right edge hangs on it
	Planned, Now L
	Askew        bool // it is how the edge runs, not where it is: Planned and Now are how far it goes to the right from foot to head
}

// Lack is a sheet that does not reach over all that it covers in the room as read.
type Lack struct {
	Sheet string
	Side  string // head, foot, left, right, or one of those below
	By    L
}

// Sides of a Lack that are no edges.
const (
	Gap  = "gap"  // the sheet closes the room, and the gap takes more than a sheet covers
	More = "more" // at its place one more is needed
	Gone = "gone" // it would cover nothing
)

// arrive compares the room as read with the plan, wall by wall.
func (b *builder) arrive() {
	if len(b.room.Readings) == 0 {
		return
	}
	a := &arrival{builder: b, by: map[int]*Arrival{}}
	for i := range b.room.Readings {
		a.on(b.room.Readings[i].Wall).Read = true
	}
	a.compare()
	for _, one := range a.by {
		b.plan.Arrivals = append(b.plan.Arrivals, *one)
	}
	slices.SortFunc(b.plan.Arrivals, func(x, y Arrival) int { return cmp.Compare(x.Wall, y.Wall) })
	b.plan.Arrivals = slices.DeleteFunc(b.plan.Arrivals, func(x Arrival) bool { return !x.Read && x.Word == HangIt })
	for i := range b.plan.Arrivals {
		b.sayArrival(&b.plan.Arrivals[i])
	}
}

// arrival is a plan held against the room as read.
type arrival struct {
	*builder
	now   *builder         // the room as read, with the sheets of the plan
	by    map[int]*Arrival // by wall
	moved [][]L            // how far right along its run every span's sheets hang of where they are planned to
}

// on is what is said of a wall.
func (a *arrival) on(wall int) *Arrival {
	if a.by[wall] == nil {
		a.by[wall] = &Arrival{Wall: wall}
	}
	return a.by[wall]
}

// compare finds the word for every wall.
func (a *arrival) compare() {
	if why := a.hold(a.room.AsRead()); why != "" {
		for _, one := range a.by {
			one.Word = PlanAgain
			one.Broken = append(one.Broken, finding.Finding{Place: a.wallPlace(one.Wall), Wall: one.Wall, Message: why})
		}
		return
	}
	for i := range a.plan.Runs {
		a.lines(i)
		a.cuts(i)
		a.reach(i)
	}
	a.musts()
	for _, one := range a.by {
		switch {
		case len(one.Lacks)+len(one.Broken) > 0:
			one.Word = PlanAgain
		case len(one.Lines) > 0 || one.Cut != 0:
			one.Word = Restrike
		}
	}
}
