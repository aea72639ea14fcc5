package wood_test

import (
	"fmt"

	"flitchlay/internal/wood"
)

// Sheets come from a dry shop to a damp site: what they will want to move before they may be hung.
func Example() {
	shop, site := wood.Climate{Temperature: 70, Humidity: 35}, wood.Climate{Temperature: 68, Humidity: 45}
	oak, _ := wood.Find("Oak, white")
	from, to := shop.Moisture(), site.Moisture()
	moved := oak.Move(24.5, wood.Quarter, from, to)
	dew, _ := site.DewPoint()
	fmt.Printf("moisture %.1f to %.1f %%\n", from, to)
	fmt.Printf("free movement of one sheet %+.3f in (equation %s, %s)\n", moved.Change, moved.Equation, oak.Status(wood.Quarter))
	fmt.Printf("dew point %.0f F\n", dew)
	fmt.Printf("%s: at least %.0f %s (%s)\n", wood.Acclimatise.What, wood.Acclimatise.Low, wood.Acclimatise.Unit, wood.Acclimatise.Source)
	// Output:
	// moisture 6.9 to 8.5 %
	// free movement of one sheet +0.068 in (equation 13-2, read in the source)
	// dew point 46 F
	// sheets lie in the room before they are hung: at least 72 h (AWI 200, 3.2.5)
}
