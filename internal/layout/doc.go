// Package layout turns a room into a plan: where every seam, sheet and cut goes, and what has to be said about it.
//
// Coordinates and units: s along a run and x, z on a wall, exact lengths.
//
// Order: runs in run order, sheets and seams along a run (in a closed one sheets from the closing seam, seams from the
// first wall's left end), findings as made.
//
// Not here: how a span is solved (package seam), counting (package count), drawing.
//
// It is longer than the others, since what is proposed (mends of conflicts, what a small change saves, other layouts) is each time
// the room laid out once more and judged by the same steps, which are nobody else's: parted, all of them would be public.
//
// The words below mean the same wherever they stand: in the code, in findings, on the drawings.
//
// # Material
//
//   - Sheet: one numbered piece of veneer wallcovering. What is printed on is a page.
//   - Flitch: the sheets of one log section. They are numbered as they were cut and hung in that order, so that the figure
//     goes on (TestSituationsOfFlitches).
//   - Gross width: a sheet as it comes, factory edges and all.
//   - Overlap: what of two neighbours lies double before both are cut through at once (the double cut).
//   - Net width: gross width less one overlap, on the grid: the most that a sheet between two seams covers
//     (TestTradeOpenWallCounts).
//   - Trim: what a sheet has over at a raw end, at its top and at its foot (TestTradeSheetHeight).
//
// # Walls unrolled
//
//   - Run: walls that are covered without a break, laid flat one behind the other. s is the way along it from its left end,
//     at the floor (TestOpenRun in package run); where the grain is horizontal each wall is a run of its own and s goes up
//     (TestHorizontalGrain).
//   - Closed run: its last wall meets the first, and s goes round (TestClosedRun in package run).
//   - Span: as much of a run as the grain goes through unbroken, from raw end to raw end (TestGapsAndBareStrips in package
//     run), or all of a closed run that nothing cuts (TestClosedRun in package run).
//   - Raw end: where a span ends against something that is no sheet. It lies as far out as the wall's end leans
//     (TestNamedSpans).
//   - Corner: where two walls meet; wrapped by one sheet in one piece, or cut, so that the covering ends on both sides
//     (TestClosedRunCut in package run). An eased one is measured along its arc (TestEasedCorner in package run).
//   - Bend: a corner that is wrapped, or a jamb that is.
//   - Return: the veneer past a bend, on either side of it, as far as the nearest seam or raw end; told as the least over
//     the height, for what it bends round may lean (TestTradeOutOfPlumb).
//   - Lean: how far an upright edge goes to the right from floor to ceiling (TestTradeLeanAngle).
//   - Skew: how much more the wall at the left of a corner leans there than the one at its right; the overlap of the next
//     seam has to take it up (TestTradeLeanEatsOverlap).
//
// # On a wall
//
//   - Opening: a hole in the covering. Its leg is the strip of a sheet that stands between its edge and the seam beside it
//     (TestSituationsAtOpenings).
//   - Reveal: the side of an opening, square to the wall. Wrapped, its jambs are bends; head and sill take pieces of their
//     own (TestSituationsAtOpenings).
//   - Gap: an opening that leaves nothing to cover over it nor under it (TestGapUnderCrown in package run). A through gap
//     is one behind which the grain counts on: a sheet wholly in it has its place and number, and goes back to stock whole
//     (TestSituationsAtOpenings).
//   - Box: something set in the wall. Seams keep off its plate, the cut is to its hole (TestTradeDeviceBox).
//   - Pin: the designer's wish for a seam or the middle of a sheet at a place; kept, or dropped with a finding that says
//     what it collides with (TestPins).
//   - Keep-clear: a stretch in which no seam may stand (TestPins).
//
// # Sheets on the wall
//
//   - Place: the count of sheets through the whole room, in run order, from 1. Numbers go up with it, but places leave out
//     none and numbers do, where a sheet is damaged or kept back (TestHungSheets).
//   - Seam: the finished joint, the line of the double cut. It has the number of the place at its left (TestOneSeamColumn).
//   - Plumb line: the line struck for the right edge of a sheet before the double cut, half an overlap right of its seam
//     (TestRooms in package recheck). In a through gap it is told as well, so that the count goes on, but nothing is struck
//     there: such a seam is seen for nought (TestSituationsAtOpenings).
//   - Start line: the same for the left edge of a first sheet.
//   - Closing seam: in a closed span, where the last sheet meets the first and the grain breaks (TestClosedRemainder).
//   - Seen height: how much of a seam shows: from base to crown, less openings and what furniture hides
//     (TestSituationsOfStartAndEnd, TestSituationsAtOpenings). The wall that the seam is on at the floor counts; in the
//     strip that a corner sweeps as it leans to the right, the wall at the corner's left. A straight joint makes no strip:
//     the two walls are one plane (TestStraightJointSweepsNothing).
//   - End sheet: the first or last of a span. All others are inner (TestAimsPart).
//   - Rip: to cut a sheet narrower along its length before it hangs: a first one at its left, all others and a lone one
//     between raw ends at their right (TestSheetsHoldTheirPieces).
//   - Jump: the step of the grain at the right seam of an inner sheet that is ripped, by what the sheet lacks of the net
//     width (TestTradeNarrowedSheet). It is scored by the height to which it shows (TestSituationsAtOpenings).
//   - Narrow sheet: one whose jump shows for more than short_seam (TestAimsPart).
//   - Sliver: an end sheet between a raw end and a seam that shows for more than short_seam, where it is under the middle
//     between least_width and prefer_width (TestSliverAtAnOpenEnd).
//   - Course: one row of sheets where a wall is taller than a sheet. Courses share their seams; the sheets of one place are
//     a column, numbered from its foot up (TestCourses).
//   - Joint: where two courses, or two lengths of a band, meet in an end match; it takes half an overlap and 1/2 in of
//     either in place of a trim (TestTradeTallWall, TestHorizontalGrain).
//   - Turned: hung head down, so that like ends meet at a joint (TestCourses).
//   - Piece: what of a sheet is on one wall, less openings and what is above and below the covering (TestPiecesTile).
//   - Cut length: from the lowest to the highest point that a sheet covers, and its trims (TestTradeCeilingSlope).
//   - Register: one mark at one height on every sheet, hung to the level line; the part of a cut length above that line and
//     the part below it are told apart (TestSheetsHoldTheirPieces).
//   - Hung: on the wall already. Its seam is a fact, and the rest is laid out from it (TestHungSheets).
//
// # What is said
//
//   - Finding: one thing that has to be said, with a code, a level (must, should, note), a place and what was measured
//     (TestEveryCodeIsProvoked).
//   - Conflict: rules that cannot all be met, none of which can be left out of it (TestConflictsAreIrreducible). Each has a
//     finding of its own.
//   - Proposal: one change that frees its conflict and makes no other (TestEveryProposedChangeFrees): the least on the grid of
//     snap, what asks least of others first. All conflicts together get one set of changes (TestTheJointSetFreesAll).
//   - Other layout: one that closes, begins or ends more than a quarter of a sheet from where the best and all before it do, in
//     one span, and is nearly as good: no must more is broken and no pin more dropped, it takes at most one sheet and one narrow
//     sheet more, and its closing seam shows for at most three feet more (TestOthersOfRandomRooms). A quarter of a sheet, and what
//     is nearly as good, is common practice, no source.
//   - Chosen: which of these is laid out, the best being number one; while sheets hang they are layouts of what is left
//     (TestChoiceWhileSheetsHang). Of a room that has changed another layout may have the number.
//   - Drift: how far what hangs already stands from where it was planned (TestReplanOneReading).
//   - Room as read: the room with its walls as they were measured on arrival, laid with the sheets of the plan: each span begins where
//     it is planned to or at the last sheet that hangs, and each sheet hangs against the one before it, as wide as it is cut.
//   - Hang, re-strike, plan again: what is to be done at a wall by the room as read. Plan again where a must is broken that the plan
//     keeps, or a sheet as it is cut does not reach; else re-strike where a line or a cut is printed otherwise; else hang
//     (TestReadingsOnArrival, TestReadingsRoundARoom). What was read as printed always says hang (TestReadAsPrintedSaysHang).
//   - Closing error: how far a closed room's walls, as measured, miss their beginning (TestMisclosureOfAPublishedTraverse).
package layout
