package wood

import "math"

// Cut is how the leaf was sliced from the log.
type Cut string

// The cuts of the room file; of an unknown one the worst is taken.
const (
	Plain   Cut = "plain"
	Quarter Cut = "quarter"
	Rift    Cut = "rift"
	AnyCut  Cut = ""
)

// The moisture contents between which equation 13-2 holds, and the one over which wood moves no more.
//
// Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13: 6 to 14 per cent for equation 13-2; neither over 30 for 13-3.
const (
	straightFrom, straightTo = 6.0, 14.0
	saturated                = 30.0
)

// Change is how much wider wood gets, by a dimensional change coefficient; it is for moisture contents of 6 to 14.
//
// Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2.
func Change(width, coefficient, from, to float64) float64 { return width * coefficient * (to - from) }

// ChangeByShrinkage is how much wider wood gets, by its shrinkage from green to ovendry in per cent; it is for moisture
// contents of which one is outside 6 to 14 and none over 30.
//
// Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-3; its form from memory: from 30 to 0 it gives the
// shrinkage.
func ChangeByShrinkage(width, shrinkage, from, to float64) float64 {
	return width * (to - from) / (saturated*100/shrinkage - saturated + from)
}

// ShrinkageOf is the shrinkage that belongs to a dimensional change coefficient: equation 13-3 at 10 per cent.
func ShrinkageOf(coefficient float64) float64 { return 3000 / (1/coefficient + 20) }

// Movement is how far a free sheet moves, and how that was found.
type Movement struct {
	Change   float64 // of the width, in its unit; positive where it grows
	Equation string  // of the Wood Handbook: 13-2 or 13-3
}

// Move is the free movement of a sheet across its grain from one moisture content to another. A sheet on a wall is
// held by the paste: this is the most that it can want to move.
//
// Shape: by equation 13-2 where both moisture contents are from 6 to 14, else by 13-3 with the larger of the shrinkages
// that the two tables give.
//
// Units: moisture over 30 counts as 30, under 0 as 0.
func (s Species) Move(width float64, cut Cut, from, to float64) Movement {
	from, to = clamp(from, 0, saturated), clamp(to, 0, saturated)
	if straightFrom <= math.Min(from, to) && math.Max(from, to) <= straightTo {
		return Movement{Change(width, s.Coefficient(cut), from, to), "13-2"}
	}
	radial, tangential := s.shrinkage()
	change := across(cut, ChangeByShrinkage(width, radial, from, to), ChangeByShrinkage(width, tangential, from, to))
	return Movement{change, "13-3"}
}

// Coefficient is the dimensional change coefficient across a sheet: tangential where it is plain sliced, radial where
// it is quartered, their mean where it is rift cut. How leaves are matched makes no difference.
//
// Source: rift as the mean is common practice, no source.
func (s Species) Coefficient(cut Cut) float64 {
	return across(cut, s.Radial.Value, s.Tangential.Value)
}

// shrinkage is the shrinkage from green to ovendry in per cent, radial and tangential, the larger of what was measured
// and what belongs to the coefficient.
func (s Species) shrinkage() (radial, tangential float64) {
	return math.Max(s.ShrinksRadial, ShrinkageOf(s.Radial.Value)),
		math.Max(s.ShrinksTangential, ShrinkageOf(s.Tangential.Value))
}

func across(cut Cut, radial, tangential float64) float64 {
	switch cut {
	case Quarter:
		return radial
	case Rift:
		return (radial + tangential) / 2
	}
	return tangential
}

// AlongGrainCoefficient is the dimensional change along the grain for each per cent of moisture.
//
// Source: computed from Wood Handbook, FPL-GTR-282 (2021), chapter 4: 0.1 to 0.2 per cent from green to ovendry in
// normal wood; 0.2 over 30 per cent of moisture.
const AlongGrainCoefficient = 0.00007

// AlongGrain is how much longer a free sheet gets along its grain.
func AlongGrain(length, from, to float64) float64 {
	return length * AlongGrainCoefficient * (clamp(to, 0, saturated) - clamp(from, 0, saturated))
}
