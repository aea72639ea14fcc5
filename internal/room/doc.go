// Package room is the room file: its schema, its decoding, and the checks that need no layout.
//
// Coordinates and units: lengths are exact (package length). x runs along a wall from its left end as seen from inside the
// room, z up from the level of the floor at the first wall's left end.
//
// Order: walls, openings, boxes, pins, keep-clears, bare strips, flitches and hung sheets stay in file order.
//
// Not here: runs, spans, seams (package run and after).
//
// What follows is what the file says to its reader. Every table and key with its default stands once, in Schema, which also
// prints them; what is told here is what the rows of a table cannot. A file that holds every key of Schema
// (TestEveryKeyIsThere) is read key by key (TestEveryKeyDecodes), and one that holds only what is required takes every
// default (TestDefaults).
//
// # Writing
//
// The file is TOML. A length is a text or a number; without a unit of its own it is in the units of [project], inches where
// that says nothing (TestBareNumbersAndTextsAgree). Texts take feet, inches with fractions, millimetres, centimetres or
// metres (TestParseForms in package length); what is no whole number of 1/8 micrometre is rounded to the nearest, halves
// away from zero (TestParseRoundsHalvesAwayFromZero in package length). An inch room and a metric room differ in the
// defaults of [rules] and of the level line, which are round figures of their own unit (TestDefaults), and in the unit of
// the drawings.
//
// A mistake is told with its line and column, the text and a way to mend it; all mistakes of a file are told at once, not
// the first alone (TestAllMistakesOfAFile). A key that is not known is one, told with the nearest that is (TestUnknown in
// package source). So are figures that do not go together: a sheet that covers less than least_width, an overlap under
// least_overlap, a grid coarser than the least sheet (TestMistakes).
//
// # Heights
//
// All heights are above one level, wherever the floor goes. height and floor are one figure, two for a slope from the left
// end to the right, or a row of points from one end to the other; two points at one x make a step (TestEveryKeyDecodes).
// base and crown are trim at the floor and at the ceiling: the covering stops at them, but where behind says that it goes
// on behind them (TestSituationsOfHeights in package layout). The level line is not the level: it is a height at which
// marks are struck, and has to cross every covered wall; where its usual height does not, the middle of what they share is
// taken (TestOwnLevelLine).
//
// # Walls
//
// Walls stand in the order in which someone inside the room passes them going to the right. A wall's corner is that at its
// right end; closed says that the last wall meets the first (TestDefaults). Five things end a row of sheets:
//
//   - corner = "none", which is also what the last wall of an open room has (TestDefaults);
//   - cover = false, a wall that stays bare (TestBareWallEndsTheRun in package run);
//   - wrap = false, a corner that is cut (TestClosedRunCut in package run), which is what close_at with a corner means
//     (TestCloseAtCornerCutsIt). It does so too where something else ends the row already: in a row that goes round,
//     numbers then begin at the corner; in one with two ends they begin at its left end as ever
//     (TestCloseAtCornerOfARunThatEndsElsewhere in package run);
//   - [[wall.bare]], a strip from floor to ceiling (TestGapsAndBareStrips in package run);
//   - an opening with no covering over or under it, where its grain is "skip" (TestGapUnderCrown in package run).
//
// "straight" is no bend and asks nothing of a seam, as where a curved wall is measured in facets (TestSituationsAtCorners
// in package layout). angle is how far one turns there, not the angle between the walls; radius eases the corner
// (TestEasedCorner in package run); from curve_radius on it is a curve, as of a round column, and no bend
// (TestJobs in package layout). lean is how far an upright end moves to the right on its way up; a left end that is not
// given leans as the wall before it does at that corner (TestLeansAcrossCorners). left_end and right_end say what the
// covering runs against: at a frame half the trim is left (TestNamedSpans in package layout).
//
// # The plan
//
// Three keys of [room] move no seam and are for the plan alone. Walls of an open room go straight on after a corner = "none", unless
// across says how far the room is open there: then the way goes on across the open end, and the next wall faces the one before, as
// the two sides of a corridor do. One length holds for all open ends; a list has one for each in the order of the walls, with 0 where
// the next wall goes straight on (TestAcross in package run). north says where north is, by how many degrees to the right of the way one looks who
// faces the first wall, which lies at the head of the plan: 0 where that wall stands in the north (TestNorth). name is what the plan
// calls the room.
//
// # What is on a wall
//
// x and from_left are from the wall's left end, openings to the outer edge of their casing. An opening without a sill
// reaches down to the floor, and is a door where no kind is given; with one it is a window. Heads are level: without a sill
// the height is measured up the opening's left edge, from the floor there, however the floor goes on under it
// (TestHeadOverASlopingFloor). What has no name takes one by its kind (TestNamesByKind). wrap_reveal makes its jambs bends
// (TestSituationsAtOpenings in package layout). grain is asked only of an opening with no covering over or under it: with
// "through" sheets count on behind it (TestThroughGapCutsNothing in package run). clearance is what the local code or the listing of a
// fireplace's appliance asks for: it is stated, no seam or edge moves by it (TestAFireboxAsksForItsClearance in package submittal).
//
// A box is told by its centre. Its plate covers its hole and is what seams keep off, the hole is what is cut
// (TestTradeDeviceBox in package layout); the usual sizes go by kind and gang, and a hole is never wider than its plate
// (TestNamesByKind). A bracket or a panel has no usual size (TestMistakes).
//
// A pin is a wish, keep_clear a must (TestPins in package layout). Pins count in the order of their lines in the file,
// close_at with a place among them, so the one that matters more goes first.
//
// # Rules
//
// Those named prefer are what should be, most others what must; what each asks and how it counts is told in package seam. A
// preference under its must asks nothing. least_overlap is what skew must leave (TestTradeLeanEatsOverlap in package
// layout); edge_trim, top_trim and bottom_trim are extra that is cut off once a sheet hangs (TestTradeSheetHeight in
// package layout). snap is the grid of seams. spare_share is rounded up, and never less than two sheets of a flitch.
//
// # Sheets
//
// Flitches are laid in file order, their sheets by number; damaged ones are left out, spare ones kept back
// (TestSituationsOfFlitches in package layout). Without a flitch, sheets count from 1. [[hung]] names each sheet that is on
// the wall already, from its run's first: these are facts, and only the rest is laid out (TestHungSheets in package
// layout). In a closed run the first needs its left side, for nothing else says where it began (TestHungClosed in package
// layout).
//
// A side is told by its raw edge, as it hangs, or by the finished seam. A sheet hangs with its right edge on the plumb line, o/2
// (rounded down) right of where its seam is to be; the next one laps over it by the overlap o, and the double cut goes through
// both in the middle. So the right edge lies under, can be measured until the next sheet hangs, and is gone after the cut; the left
// edge of the first sheet of a closed run lies under the last sheet in the same way. With edge and left_edge as read,
//
//	seam = edge - o/2    left_seam = left_edge + (o - o/2)
//
// and the seam is what is laid out from (TestEveryKeyDecodes). A sheet that came narrower hangs by a line of its own; its seam is
// nearer to its edge by half of what it is short (TestNarrowSheetsReadByTheirRawEdges in package layout). Where both are told the seam holds, and has to lie in the overlap
// (TestMistakes). At a raw end nothing is cut: there the edge reaches the end of the covering, trim and all
// (TestAnEdgeAtARawEnd in package layout). Both are read at the level line, from where the wall's left corner crosses it
// (TestDatumIsWhereTheCornerCrossesTheLevelLine). On a wall's page the figures stand under the same two words
// (TestReadingsGoBackUnderTheirNames in package crew).
//
// # Readings
//
// [[reading]] is what a wall measures when the crew comes to it: its length along the floor, the leans of its ends, and floor and
// ceiling from the level line, as the pages have them to be read. It changes no layout; it is held against it. A figure that reads as
// the drawings print it is as planned. A wall that is longer or shorter is so at its right end, and what stands on it stays where it
// is from the left one. Heights are off by what they were read to be off: evenly between two places, and past the outermost as there
// (TestReadingsChangeWallsWhereTheyWereRead). What comes of it is told there (TestReadingsOnArrival in package layout).
//
// # Asks
//
// What is no mistake but may be one is asked: a figure past what is usual (limits), and what is left unsaid where it counts. An ask
// is answered by the key that it names, or by its code and name in answered of [room]; an entry there that answers nothing is asked
// about in its turn, and one that begins with no code is a mistake (TestEveryAskIsEarnedAndAnswered, TestAnsweredIsRead). Nothing is
// laid out otherwise for it.
//
// # Site, day, paste, paper
//
// Nothing of these moves a seam. Temperatures are degrees F as bare numbers, texts say their unit; humidity is relative, in
// per cent (TestMistakesOfSiteAndDay). The times of [day] are minutes of the whole crew, its defaults those of no crew in
// particular (TestDayDefaults). Coverage of paste and of primer has no default: it is on the pail. [page] names page
// templates, and a picture for the title block (TestEveryKeyDecodes).
package room
