package seam

import (
	"fmt"
	"math/bits"
)

// cost is a score packed into one number of 192 bits, a the highest word: items that count first stand in higher
// bits, so the lesser number is the better score and adding numbers adds the scores.
type cost struct{ a, b, c uint64 }

// never is the cost of what cannot be. It may be added to itself and to any cost and stays never.
var never = cost{a: 1 << 62}

// costBits is how many bits the items of a cost may take together.
const costBits = 128 + 60

func (x cost) isNever() bool { return x.a >= 1<<62 }

func (x cost) plus(y cost) cost {
	c, carry := bits.Add64(x.c, y.c, 0)
	b, carry := bits.Add64(x.b, y.b, carry)
	return cost{x.a + y.a + carry, b, c}
}

func (x cost) minus(y cost) cost {
	c, borrow := bits.Sub64(x.c, y.c, 0)
	b, borrow := bits.Sub64(x.b, y.b, borrow)
	return cost{x.a - y.a - borrow, b, c}
}

func (x cost) less(y cost) bool {
	_, borrow := bits.Sub64(x.c, y.c, 0)
	_, borrow = bits.Sub64(x.b, y.b, borrow)
	_, borrow = bits.Sub64(x.a, y.a, borrow)
	return borrow != 0
}

// over returns what x is over y, nought where it is less.
func (x cost) over(y cost) cost {
	switch {
	case x.isNever():
		return never
	case x.less(y):
		return cost{}
	}
	return x.minus(y)
}

func (x cost) compare(y cost) int {
	switch {
	case x.less(y):
		return -1
	case y.less(x):
		return 1
	}
	return 0
}

// item names a part of the score that adds up over seams and sheets.
type item int

const (
	itemBends item = iota
	itemEdges
	itemNarrowMain
	itemNarrow
	itemSheets
	itemNarrowJump
	itemSliver
	itemJump
	itemShould
	itemUnevenness
	itemSeen
	itemCount
)

// orders lists the items of each aim, first things first. The closing seam is not among them: closing places are
// tried in the order of their seen height. Difference and far right are settled among the layouts that tie.
var orders = map[Aim][]item{
	Steady: {itemBends, itemEdges, itemNarrowMain, itemNarrow, itemSheets, itemNarrowJump, itemSliver, itemJump, itemShould, itemSeen},
	Fewest: {itemBends, itemEdges, itemSheets, itemNarrowMain, itemNarrow, itemNarrowJump, itemSliver, itemJump, itemShould, itemSeen},
	Even:   {itemBends, itemEdges, itemSheets, itemShould, itemUnevenness, itemSeen},
	musts:  {itemBends, itemEdges},
}

// musts is the order of what no aim may make worse.
const musts Aim = -1

// ledger says at which bit of a cost each item begins; -1 where it does not count.
type ledger struct {
	at   [itemCount]int
	used int // bits of all items together
	// counted is used but for what the first item, where it counts narrow sheets, seldom needs.
	counted int
}

// narrowBits are enough for the narrow sheets of all but the strangest rooms.
const narrowBits = 6

// newLedger makes room for sums up to most, in the order of an aim.
func newLedger(aim Aim, most [itemCount]Square) (ledger, error) {
	var l ledger
	for i := range l.at {
		l.at[i] = -1
	}
	order := orders[aim]
	for i := len(order) - 1; i >= 0; i-- {
		l.at[order[i]] = l.used
		bits := most[order[i]].bits()
		l.used += bits
		if bits > 0 {
			l.counted = l.at[order[i]] + bits
			if order[i] == itemNarrow || order[i] == itemNarrowMain {
				l.counted = l.at[order[i]] + min(bits, narrowBits)
			}
		}
	}
	if l.used > costBits {
		return l, fmt.Errorf("span too long to be scored: %d bits of %d", l.used, costBits)
	}
	return l, nil
}

// bits returns how many binary digits a number has.
func (a Square) bits() int {
	if a.Hi != 0 {
		return 64 + bits.Len64(a.Hi)
	}
	return bits.Len64(a.Lo)
}

// of returns a number as the cost of an item; nought where the item does not count.
func (l *ledger) of(i item, number int64) cost {
	return l.square(i, Square{Lo: uint64(number)})
}

// mustsOf returns the musts of a cost in which nothing else counts.
func (l *ledger) mustsOf(x cost) (bends, edges int64) {
	at := l.at[itemBends] // edges stand below it
	if at >= 64 {         // no sum of lengths takes more than one word
		return int64(x.b>>(at-64) | x.a<<(128-at)), int64(x.c)
	}
	return int64(x.b<<(64-at) | x.c>>at), int64(x.c & (1<<at - 1))
}

func (l *ledger) square(i item, v Square) cost {
	at := l.at[i]
	if at < 0 {
		return cost{}
	}
	x := cost{b: v.Hi, c: v.Lo}
	for ; at >= 64; at -= 64 {
		x = cost{x.b, x.c, 0}
	}
	return cost{x.a<<at | x.b>>(64-at), x.b<<at | x.c>>(64-at), x.c << at}
}
