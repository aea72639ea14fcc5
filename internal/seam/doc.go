// Package seam finds the seams of one span: whole numbers in, seams out.
//
// Coordinates and units: s runs along the run from its left end; every length is a whole number of any one unit (1/8
// micrometre in the program). Heights are lengths; what is scored in feet is a count of Foot.
//
// Order: seams come back ascending; in a closed span as 0 <= s < Period.
//
// Not here: walls, sheets of a flitch, findings, drawings. The package knows no wall and no wood.
//
// It is longer than the others: exact answers in milliseconds take several searches (bounds, sweeps in one word, rows of sheets,
// whole scores), which read the same table of costs, and tests that hold each to the plainest.
//
// What follows is the model that the code keeps to. Each item names the test that holds it. Over all of it stand three that
// compare Solve with plainer programmes: every set of lines tried (TestSolveAgainstBruteForce), a plain sweep over longer
// spans (TestSolveAgainstSweep) and over whole rooms (TestSolveRoomsAgainstSweep); and small cases, one for each rule,
// whose answers are written down (TestVectors).
//
// # Where a seam may be
//
// Lines are a snap apart, for no crew sets out finer. They are counted from L in an open span, from 0 in a closed one; the
// step that comes to the end may be shorter (TestSolveAgainstBruteForce). L and R are raw ends, as far out as a lean
// carries them (TestNamedSpans in package layout), or seams that hang already, where LeftSeam and RightSeam say so
// (TestHungSheets in package layout, TestHungClosed in package layout).
//
// # How wide a sheet may be
//
// A sheet loses half an overlap at each of its seams and a trim at each raw end; what is left it can cover, and what it can
// cover is the one bound that no layout breaks. Where not even that can be had, Solve says so in an error
// (TestSolveWithoutAnyLayout).
//
//   - Between two seams: NetWidth, Gross less Overlap, rounded down to the grid so that a row of whole sheets stays on it
//     (TestTradeOpenWallCounts in package layout).
//   - With one raw end: EndWidth, by that end's own trim (TestNamedSpans in package layout).
//   - With two: Gross less both trims (TestNamedSpans in package layout).
//   - Round a closed span sheets go from the closing seam to itself, all between two seams (TestTradeClosedRoomCounts in
//     package layout). One seam alone makes one sheet as wide as the Period (TestOneSeamColumn in package layout).
//
// # Pins
//
// A pin is a wish that is kept or dropped, never met halfway (TestPins in package layout): PutSeam by a seam no farther off
// than half a snap; PutMiddle by a sheet over the place that is less than one snap under NetWidth, or wider, with its
// middle no farther off than half a snap; PutEither by one of the two; PutClose by the closing seam. A seam that hangs
// there already keeps a pin as well (TestSolveAgainstBruteForce).
//
// Pins are taken in the order in which they come. One is dropped if, with those kept before it, no layout is left, or the
// least of the musts is worse than without pins, bends before edges (TestSolveAgreesWithPlain): a wish may cost sheets or
// looks, but must not break more than the room itself makes break.
//
// # What a layout owes
//
// A must and a preference are distances d that something asks of a seam; what is lacking of them is owed. All that is owed
// is added up, every pair of a seam and an object by itself, so that one seam in two objects' way is the worse for both
// (TestSolveAgainstBruteForce). Charges lists these pairs and all else that a score counts (TestChargesAddUpToTheScore). d goes along the run at floor level, in a closed run the shorter way round (TestVectors).
// The objects of the whole run count, for a span may end beside a corner that is not its own. A preference that is less
// than its must asks nothing (TestVectors), nor does it ask for the Reveal (TestPreferClearUnderItsMust).
//
// Bends are what would break or come loose, and count first:
//
//   - A sheet under LeastWidth owes what it lacks: it cannot be hung straight (TestTradeSliver in package layout). In a
//     span shorter than that no sheet owes it, for none could be wider (TestNamedSpans in package layout).
//   - A seam owes CornerReturn to a wrapped corner: so much veneer has to go on past the bend or it springs back
//     (TestTradeCornerSafeStarts in package layout). d is measured to the strip that a leaning or an eased corner sweeps,
//     and is nought in it (TestTradeOutOfPlumb in package layout). A corner eased so wide that it is a curve is none of
//     these (TestJobs in package layout).
//   - A jamb that is wrapped is a bend. A seam on the pier's side owes CornerReturn to the nearer jamb (TestVectors); one
//     in the opening owes Reveal and OpeningClear to both, for the sheet has to reach that far into it
//     (TestSituationsAtOpenings in package layout); one on a jamb owes that jamb both CornerReturn and OpeningClear, and
//     the other what one in the opening does (TestSolveAgainstBruteForce).
//
// Edges are what looks wrong or cannot be cut cleanly:
//
//   - A seam beside an opening owes Leg to the nearer edge: the strip beside a cut-out must be able to stand
//     (TestSituationsAtOpenings in package layout).
//   - A seam over or under an opening, or on its edge, owes OpeningClear to each edge, since both can be near
//     (TestVectors). Strictly inside a gap it owes them nothing: there is no veneer to cut (TestVectors).
//   - A seam in a stretch kept clear owes the way out of it (TestPins in package layout). On the ends of the stretch that
//     way is nought.
//
// Should is what a careful hanger would rather not do, in one sum: the same pairs by PreferReturn, PreferLeg and
// PreferClear (Reveal and PreferClear inside wrapped jambs); what a sheet lacks of PreferWidth; what a seam lacks of
// BoxClear to a plate, d being nought on it (TestSituationsOfBoxes in package layout).
//
// # The score
//
// The first and the last sheet of a span are end sheets, those beside the closing seam too. They are ripped on their outer
// edge, where no grain goes on anyhow, and so never jump (TestVectors). All others are inner, also the one right of a seam
// that hangs, unless it is the last (TestVectors). An inner sheet a snap or more under NetWidth has lost a strip of its
// figure: the grain jumps at its right seam (TestTradeNarrowedSheet in package layout).
//
// Seen heights are what shows of a seam; they are counted in whole feet (Foot), rounded up, so that an inch more or less of
// a seam seldom decides (TestVectors). The items, the lesser the better, in the order of Steady:
//
//  1. Bends, because they fail (TestTradeSquareColumn in package layout).
//  2. Edges, because they show for good (TestSolveAgainstBruteForce).
//  3. Closing: what shows of the closing seam, where the grain breaks however it is cut; nought without one
//     (TestSituationsOfStartAndEnd in package layout).
//  4. NarrowMain: narrow sheets whose right seam stands on a main wall (TestVectors). An inner sheet under NetWidth is
//     narrow where its jump shows for more than ShortSeam (TestAimsPart in package layout).
//  5. Narrow: all narrow sheets, those on main walls too (TestNarrowChase in package layout).
//  6. Sheets: they are few and cannot be bought again (TestTradeOpenWallCounts in package layout).
//  7. NarrowJump, in a span with a raw end: what shows of the jumps of narrow sheets, so that none moves out from a window
//     to where all of it shows, only to relieve an end. Where no end is raw there is no sliver, and Jump alone decides
//     (TestSolveAgainstBruteForce).
//  8. Sliver: what a sheet between a raw end and a seam lacks of the middle between LeastWidth and PreferWidth, where that
//     seam shows for more than ShortSeam. Everyone sees it, and a rip more over a door is the lesser evil (TestSlivers). It
//     is a length and not a count, or two ends a little under would become one just over and one still less. Nought where
//     PreferWidth asks nothing.
//  9. Jump: what shows of all jumps, short ones too; so a sheet that has to be narrowed is narrowed over a door
//     (TestSituationsAtCorners in package layout).
//  10. Should (TestSituationsOfBoxes in package layout).
//  11. Seen: what shows of all seams; they go where openings or furniture hide them (TestSolveAgainstBruteForce).
//  12. Difference of the first and the last width, where both raw ends are on one wall, so that a wall looks balanced;
//     nought for one sheet, in a closed span and beside a seam that hangs (TestSituationsOfStartAndEnd in package layout).
//  13. Far right: of layouts that are still alike, the one with the larger first seam, then second, and so on; in a closed
//     span with the larger closing seam, then going round from it. It says nothing of looks: it makes the answer one
//     (TestSolveLongRooms, TestTradeClosedRoomCounts in package layout).
//
// Fewest takes Sheets before NarrowMain and Narrow, for a flitch that hardly suffices (TestAimsPart in package layout).
// Even takes Sheets, Should, Unevenness and Seen after the first three, then far right, and knows no narrow sheets, slivers,
// jumps or difference: Unevenness, the sum of the squared widths, makes all sheets as alike as they can be, for wood
// without a figure that runs on (TestAimsPart in package layout, TestAimsOfTheBoardroom in package layout). No aim's layout
// is beaten in its own order by another aim's (TestNoAimIsBeatenByAnotherInItsOwnOrder in package layout).
//
// # Another layout
//
// A layout is another than one that is known where its closing seam, the right edge of its first sheet or, in an open span, the
// left edge of its last one stands further than a given distance from where that of the other does; in a closed span the first
// sheet is the one that begins at the closing seam. Others gives one after another, each the best of all that are another than
// all before it, by the same order, far right included; all keep the pins that the best keeps and break no more musts
// (TestOthersAgainstBruteForce). What is left after each is parted by the one seam that stands elsewhere, and the best of each
// part is what Solve finds where Apart bars those places to that one seam (TestApartAgainstBruteForce); two edges of a sheet that
// is alone count as TestFirstAndLast says.
//
// # How it is found
//
// Nothing is tried by luck: no layout on the grid scores less (TestSolveAgainstGlpsol, by a program that is not ours, where
// it is asked for). But for difference, far right and pins, the score is a sum over seams and over sheets, and what a sheet
// adds depends on its width by a few windows only; so one sweep over the lines finds the best. Lines that break a must are
// left out first and let in only where no layout does without them. In a closed span the closing places are gone through by
// their seen height, many at once, and bounds say which of them need not be tried (TestHuntAgainstEachPlace): they are found
// in the leading bits of the score, as many as one machine word holds, and what they leave is counted in full. Where the
// girth is a little over that of whole sheets, bounds count sheets (TestHuntOnBareRuns). The same span gives the same answer twice
// (TestSolveKeepsToItsSpan), and a Solver, which keeps what it knows of a span while its pins move, the same as Solve
// (TestSolverAgreesWithSolve). A Counter, which asks of narrower and narrower sheets only how many there are, counts those
// of what Solve finds (TestCounterAgreesWithSolve). A Keeper says whether pins are kept and nothing else
// (TestKeeperAgreesWithSolve),
// also with which other pin, or for which corner or opening, one is not (TestKeeperFindsWhatCollides). Where no must is broken both
// know over which lines rows of sheets lead, so that a pin takes a look at its place (TestRowsAgreeWithSweeps). Where each layout
// breaks a must, rows lead over those lines alone that are part of one which breaks the least (TestDueRowsAgreeWithSweeps).
package seam
