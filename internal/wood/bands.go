package wood

import "math"

// Band is a range that a figure of the site or the material has to be in.
type Band struct {
	What      string
	Low, High float64 // High is infinite where there is only a least
	Unit      string  // h, d, F, %, or % moisture
	Source    string  // empty where there is none
	Status    Status
}

// Holds tells whether a figure is in the band.
func (b Band) Holds(figure float64) bool { return b.Low <= figure && figure <= b.High }

var forever = math.Inf(1)

// What material and site have to be like.
var (
	Acclimatise = Band{"sheets lie in the room before they are hung", 72, forever, "h",
		"AWI 200, 3.2.5", Read}
	RoomTemperature = Band{"temperature of the room, from then on", 60, 90, "F",
		"AWI 200, 3.2.6", Read}
	RoomHumidity = Band{"relative humidity of the room, from then on (climate zone 2)", 30, 55, "%",
		"AWI 200, 3.2.4", Restated}
	OutOfHumidity = Band{"humidity out of its band at a stretch", 0, 24, "h",
		"AWI 200, 3.2.6", Read}
	HeatBefore = Band{"heat raised and held before interior wood is laid", 3, forever, "d",
		"Wood Handbook, FPL-GTR-190, chapter 13", Read}
	SummerSite = Band{"temperature of the site while interior wood goes in, in summer", 70, forever, "F",
		"Wood Handbook, FPL-GTR-190, chapter 13", Read}
	WinterSite = Band{"temperature of the site while interior wood goes in, when it freezes outside", 62, forever, "F",
		"Wood Handbook, FPL-GTR-190, chapter 13", Read}
	ShippingMoisture = Band{"moisture of hardwood for furniture and millwork when it ships", 6, 8, "% moisture",
		"Wood Handbook, FPL-GTR-190, chapter 13", Read}
	WallOverDewPoint = Band{"how far the wall is warmer than the dew point", 5, forever, "F",
		"", Practice}
)

// Bands are all of them, in the order of the work.
func Bands() []Band {
	return []Band{ShippingMoisture, HeatBefore, SummerSite, WinterSite, Acclimatise, RoomTemperature, RoomHumidity,
		OutOfHumidity, WallOverDewPoint}
}
