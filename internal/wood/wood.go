// Package wood tells what moisture does to veneer: how much water wood holds in a climate, how far it moves when that
// changes, and what site and material have to be before sheets are hung.
//
// Units: moisture content and humidity in per cent, temperatures in degrees Fahrenheit (Celsius where a name says so),
// widths and lengths in any one unit.
//
// Order: species in the order of the table, bands in the order of the work.
//
// Not here: rooms, sheets, findings. A sheet pasted to a wall is held by it: every movement here is free movement, an
// upper bound, and never the width of a gap.
package wood

// Status tells how well a figure is known.
type Status int

// From the surest to the least sure.
const (
	Read     Status = iota // read in the source itself
	Restated               // read where another page restates the source
	Computed               // computed from a figure that was read
	Memory                 // from memory, not read again
	Practice               // common practice, no source
)

// String is the status as notes print it.
func (s Status) String() string {
	return [...]string{"read in the source", "as restated elsewhere", "computed", "from memory", "common practice, no source"}[s]
}

// Climate is the air that wood stands in.
type Climate struct {
	Temperature float64 // degrees F
	Humidity    float64 // per cent
}

// Celsius is a temperature in degrees F in degrees C.
func Celsius(fahrenheit float64) float64 { return (fahrenheit - 32) / 1.8 }

// Fahrenheit is a temperature in degrees C in degrees F.
func Fahrenheit(celsius float64) float64 { return 1.8*celsius + 32 }
