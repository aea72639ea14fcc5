package roomtest

import (
	"testing"

	"flitchlay/internal/layout"
)

// SmallRoom has a start, a wrap, a box, an opening that reaches down to the floor, and a rip at both ends.
const SmallRoom = `[project]
title = "Linden Court: bar"
room = "7"
tag = "WD-4"
drawn = 2026-03-03
units = "in"
[[project.revision]]
mark = "B"
date = 2026-03-20
note = "Door moved"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[flitch]]
number = "H-2"
sheets = "4-20"
damaged = [6]
spare = 2
[room]
level_line = "4'"
base = "5 1/2"
[[wall]]
name = "Bar"
length = "9' 4 1/4"
height = "9'"
corner = "inside"
lean = ["1/4", "0"]
left_end = "casing"
[[wall.opening]]
kind = "door"
from_left = "3'"
width = "3'"
height = "7'"
[[wall.box]]
kind = "outlet"
x = "1' 2"
z = "1' 6"
[[wall]]
name = "Return"
length = "3' 1"
height = "9'"
right_end = "trim"
`

// SmallPlan is the small room laid out.
func SmallPlan(t *testing.T) *layout.Plan { return PlanOf(t, "small.toml", []byte(SmallRoom)) }
