package count

import (
	"fmt"
	"io"
	"math/rand/v2"
	"runtime"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/report"
	"flitchlay/internal/room"
)

// plainRoom is the text of an ordinary room of a job: four walls, two windows, a door, boxes, one flitch.
func plainRoom(rnd *rand.Rand) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[project]\ntitle = \"Room %d\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = \"1\"\nlength = \"10'\"\n", rnd.IntN(1_000_000))
	fmt.Fprintf(&b, "[[flitch]]\nnumber = \"F-%d\"\nsheets = \"1-60\"\nspare = 2\n[room]\nclosed = true\nbase = \"5 1/2\"\n", rnd.IntN(1_000_000))
	a, c := 120+rnd.IntN(160), 100+rnd.IntN(120)
	for i, long := range []int{a, c, a, c} {
		fmt.Fprintf(&b, "[[wall]]\nlength = \"%d %d/16\"\nheight = \"%d\"\n", long, 4*(i%2)+1, 96+rnd.IntN(12))
		switch i {
		case 0, 2:
			fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = \"%d\"\nwidth = \"%d\"\nsill = \"30\"\nheight = \"50\"\n", 20+rnd.IntN(20), 30+rnd.IntN(30))
		case 1:
			fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"door\"\nfrom_left = \"%d\"\nwidth = \"36\"\nheight = \"82\"\n", 12+rnd.IntN(40))
		}
		fmt.Fprintf(&b, "[[wall.box]]\nkind = \"outlet\"\nx = \"%d\"\nz = \"16\"\n", 6+rnd.IntN(90))
	}
	b.WriteString("[paste]\ncoverage = \"150 sq ft/gal\"\n")
	return b.String()
}

// rooms counts n rooms from their text to their tables, two at a time, as the command does.
func rooms(b *testing.B, n int, solve bool) {
	texts := make(chan string)
	counts := make(chan *Count)
	var workers sync.WaitGroup
	for range 2 {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for text := range texts {
				r, err := room.Decode("room.toml", []byte(text))
				if err != nil {
					b.Error(err)
					continue
				}
				p, err := layout.Lay(r)
				if err != nil {
					b.Error(err)
					continue
				}
				c := Of(p)
				if solve {
					c.Solve()
				}
				counts <- c
			}
		}()
	}
	go func() {
		rnd := rand.New(rand.NewPCG(1, 2))
		for range n {
			texts <- plainRoom(rnd)
		}
		close(texts)
		workers.Wait()
		close(counts)
	}()
	var job Job
	w := Text(io.Discard)
	for c := range counts {
		job.Add(c)
		if err := w.Room(c); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Job(&job); err != nil {
		b.Fatal(err)
	}
	if job.Rooms != n {
		b.Fatalf("%d rooms of %d", job.Rooms, n)
	}
}

// BenchmarkThousandRooms counts 1000 ordinary rooms, margins and all.
func BenchmarkThousandRooms(b *testing.B) {
	for b.Loop() {
		rooms(b, 1000, true)
	}
}

// BenchmarkThousandRoomsQuick counts them without the margins that need laying out again.
func BenchmarkThousandRoomsQuick(b *testing.B) {
	for b.Loop() {
		rooms(b, 1000, false)
	}
}

// BenchmarkOf counts one room that is laid out already.
func BenchmarkOf(b *testing.B) {
	r, err := room.Decode("room.toml", []byte(plainRoom(rand.New(rand.NewPCG(1, 2)))))
	if err != nil {
		b.Fatal(err)
	}
	p, err := layout.Lay(r)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Of(p)
	}
}

// TestJobDoesNotGrow adds rooms to a job and looks at what it holds: the same after a hundred times as many.
func TestJobDoesNotGrow(t *testing.T) {
	list := counts(t, false)
	held := func(times int) uint64 {
		var job Job
		for i := range times {
			for _, c := range list {
				again := *c
				again.Flitches = append([]Flitch(nil), c.Flitches...)
				for k := range again.Flitches {
					again.Flitches[k].Number = fmt.Sprintf("%s-%d", c.Flitches[k].Number, i) // every room has flitches of its own
				}
				job.Add(&again)
			}
		}
		require.Equal(t, times*len(list), job.Rooms)
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		assert.LessOrEqual(t, job.stretches, mostStretches)
		assert.LessOrEqual(t, len(job.laid), mostStretches)
		runtime.KeepAlive(&job)
		return m.HeapAlloc
	}
	first, second := held(8_000), held(32_000) // the ledger of flitches is full in both
	assert.Less(t, second, first+first/10+1<<20)
}

// TestJobAddsUp adds two rooms by hand, a wall of 6 sheets and one of 7, of one flitch that both lay from its first sheet.
func TestJobAddsUp(t *testing.T) {
	text := func(title, long string) string {
		return strings.Replace(veneer("24 1/2", "1", "10'"), "Test room", title, 1) + "[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\nspare = 2\n[[wall]]\nlength = \"" + long +
			"\"\nheight = \"8'\"\n[paste]\ncoverage = \"150 sq ft/gal\"\n"
	}
	a, b := counted(t, text("A", "10'")), counted(t, text("B", "12'"))
	require.Equal(t, 6, a.Sheets)
	require.Equal(t, 7, b.Sheets)
	var job Job
	job.Add(a)
	job.Add(b)
	assert.Equal(t, 2, job.Rooms)
	assert.Equal(t, 13, job.Laid)
	assert.Equal(t, 12, job.Delivered, "one delivery, of which both rooms tell")
	assert.Equal(t, 12-7-2, job.Left)
	var gross report.Sum
	gross.Plus(a.Areas.Gross)
	gross.Plus(b.Areas.Gross)
	assert.Equal(t, gross.SquareMetres(), job.Gross.SquareMetres())
	assert.Equal(t, []Stock{{108 * in, 13, nil}}, job.Lengths, "8 ft and 4 in of trim: 9 ft sheets")
	assert.Equal(t, []layout.Amount{{Amount: a.Material.Paste.Amount + b.Material.Paste.Amount, Unit: "gal"}}, job.Paste)
	assert.Equal(t, []string{"of flitch F, B lays 1-6 again: a room before it lays the same"}, job.Twice)
}

// BenchmarkCountMargins finds the margins of ordinary rooms that are counted already, one after the other, and reports what one
// room takes.
func BenchmarkCountMargins(b *testing.B) {
	const many = 40
	var list []*Count
	rnd := rand.New(rand.NewPCG(1, 2))
	for range many {
		r, err := room.Decode("room.toml", []byte(plainRoom(rnd)))
		if err != nil {
			b.Fatal(err)
		}
		p, err := layout.Lay(r)
		if err != nil {
			b.Fatal(err)
		}
		list = append(list, Of(p))
	}
	for b.Loop() {
		for _, c := range list {
			c.Solve()
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N*many), "ms/room")
}
