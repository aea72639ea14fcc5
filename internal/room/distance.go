package room

import (
	"fmt"

	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// Rules are the room's distances and trims.
type Rules struct {
	CornerReturn, PreferReturn    L
	CurveRadius                   L // from here on an eased corner is a curve and no bend
	Leg, PreferLeg                L
	OpeningClear, PreferClear     L
	BoxClear                      L
	LeastWidth, PreferWidth       L
	ShortSeam                     L
	LeastOverlap                  L
	EdgeTrim, TopTrim, BottomTrim L
	Snap                          L
	Aim                           string // steady, fewest, even
	JointHeight                   *L     // nil: auto
	Upper                         string // auto, turned, upright
	SpareShare                    float64
	SpareShareParts               int64 // SpareShare in millionths, for exact rounding up
}

// Distance is a rule that is a length.
type Distance struct {
	Key, Doc string
	inch, mm int64 // what it is where the file does not give it: in 1/64 in, in mm
	Of       func(*Rules) *L
	Line     CoverLine
	over0    bool // it cannot be 0
}

// CoverLine is where a distance stands among the rules on the cover: the number of its line, in which column, and in the
// first of a line the line's words.
type CoverLine struct {
	At     int
	Better bool // not what must be, but what is better
	Says   string
	Of     Part // what a room has that the line is about
}

// Part is what some rules are about and not every room has.
type Part int

// What rules are about: any sheet, or one past a bend, beside an opening, at the plate of a box.
const (
	AnySheet Part = iota
	Bends
	Openings
	Boxes
)

// distances has the one row of each distance, in the order of the file and of messages.
var distances = []Distance{
	{Key: "corner_return", Doc: "veneer that must wrap past a bend", inch: 4 * 64, mm: 100,
		Of: func(r *Rules) *L { return &r.CornerReturn }, Line: CoverLine{At: 1, Says: "past a bend wraps at least", Of: Bends}},
	{Key: "prefer_return", Doc: "veneer that should wrap past a bend", inch: 6 * 64, mm: 150,
		Of: func(r *Rules) *L { return &r.PreferReturn }, Line: CoverLine{At: 1, Better: true}},
	{Key: "curve_radius", Doc: "from this radius on an eased corner is a curve: seams may stand on it", inch: 6 * 64, mm: 150, over0: true,
		Of: func(r *Rules) *L { return &r.CurveRadius }, Line: CoverLine{At: 10, Says: "an eased corner of this radius is no bend", Of: Bends}},
	{Key: "leg", Doc: "strip that must stand beside an opening", inch: 3 * 64, mm: 75,
		Of: func(r *Rules) *L { return &r.Leg }, Line: CoverLine{At: 2, Says: "leg of a sheet beside an opening", Of: Openings}},
	{Key: "prefer_leg", Doc: "strip that should stand beside an opening", inch: 6 * 64, mm: 150,
		Of: func(r *Rules) *L { return &r.PreferLeg }, Line: CoverLine{At: 2, Better: true}},
	{Key: "opening_clear", Doc: "what a seam over or under an opening must keep from its edge", inch: 2 * 64, mm: 50,
		Of: func(r *Rules) *L { return &r.OpeningClear }, Line: CoverLine{At: 3, Says: "seam over or under an opening, inside its edge", Of: Openings}},
	{Key: "prefer_clear", Doc: "what a seam over or under an opening should keep from its edge", inch: 4 * 64, mm: 100,
		Of: func(r *Rules) *L { return &r.PreferClear }, Line: CoverLine{At: 3, Better: true}},
	{Key: "box_clear", Doc: "what a seam should keep from a plate", inch: 1 * 64, mm: 25,
		Of: func(r *Rules) *L { return &r.BoxClear }, Line: CoverLine{At: 4, Better: true, Says: "seam to the plate of a box", Of: Boxes}},
	{Key: "least_width", Doc: "no sheet is narrower", inch: 6 * 64, mm: 150,
		Of: func(r *Rules) *L { return &r.LeastWidth }, Line: CoverLine{At: 5, Says: "width of a sheet"}},
	{Key: "prefer_width", Doc: "a sheet should be no narrower", inch: 12 * 64, mm: 300,
		Of: func(r *Rules) *L { return &r.PreferWidth }, Line: CoverLine{At: 5, Better: true}},
	{Key: "short_seam", Doc: "a jump that shows no longer makes no narrow sheet", inch: 30 * 64, mm: 750,
		Of: func(r *Rules) *L { return &r.ShortSeam }, Line: CoverLine{At: 8, Says: "a jump seen no longer than this is no narrow sheet"}},
	{Key: "least_overlap", Doc: "what must be left of an overlap where a corner leans askew", inch: 32, mm: 12,
		Of: func(r *Rules) *L { return &r.LeastOverlap }, Line: CoverLine{At: 6, Says: "overlap left where a corner leans askew", Of: Bends}},
	{Key: "edge_trim", Doc: "extra at a raw end of a run", inch: 1 * 64, mm: 25,
		Of: func(r *Rules) *L { return &r.EdgeTrim }, Line: CoverLine{At: 7, Says: "extra at a raw end, at top, at bottom"}},
	{Key: "top_trim", Doc: "extra at the top of a sheet", inch: 2 * 64, mm: 50,
		Of: func(r *Rules) *L { return &r.TopTrim }, Line: CoverLine{At: 7}},
	{Key: "bottom_trim", Doc: "extra at the foot of a sheet", inch: 2 * 64, mm: 50,
		Of: func(r *Rules) *L { return &r.BottomTrim }, Line: CoverLine{At: 7}},
	{Key: "snap", Doc: "grid on which seams fall", inch: 4, mm: 1, over0: true,
		Of: func(r *Rules) *L { return &r.Snap }, Line: CoverLine{At: 9, Says: "seams fall on steps of"}},
}

// Distances are all rules that are lengths.
func Distances() []Distance { return distances }

// Distance is the value of the rule of a key.
func (r *Rules) Distance(key string) L {
	for _, d := range distances {
		if d.Key == key {
			return *d.Of(r)
		}
	}
	panic(fmt.Sprintf("room: no distance %q", key))
}

// NetWidth is what an inner sheet covers.
func (r *Room) NetWidth() L { return r.Net(r.Veneer.GrossWidth) }

// Net is what an inner sheet of a gross width covers: one overlap less, on the grid of snap.
func (r *Room) Net(gross L) L { return (gross - r.Veneer.Overlap) / r.Rules.Snap * r.Rules.Snap }

// RuleOf says which line of the rules on the cover a key of [rules] counts in, "" where it is no distance.
func RuleOf(table, key string) string {
	if table != "rules" {
		return ""
	}
	for _, d := range distances {
		if d.Key != key {
			continue
		}
		says, how := d.Line.Says, "must"
		for _, first := range distances {
			if first.Line.At == d.Line.At && first.Line.Says != "" {
				says = first.Line.Says
			}
		}
		if d.Line.Better {
			how = "better"
		}
		return "counts as: " + says + " (" + how + ")"
	}
	return ""
}

// ruleKeys are the keys of [rules], the distances first.
func ruleKeys() []source.Key {
	var keys []source.Key
	for _, d := range distances {
		keys = append(keys, may(d.Key, "length", sixtyFourths(d.inch)+" ("+itoa(d.mm)+" mm)", d.Doc))
	}
	return append(keys,
		some("aim", "steady", "what counts first in a layout", aimWords),
		may("joint_height", "\"auto\" or a length", "auto", "height of the end match, where a wall takes two courses"),
		some("upper", "auto", "how the upper course hangs: auto is turned for quarter and rift, upright for plain", upperWords),
		may("spare_share", "number", "0.10", "spare sheets to order, as a share of the sheets laid"),
	)
}

// sixtyFourths prints 1/64 in as the room file writes inches.
func sixtyFourths(n int64) string {
	return length.Style{Denominator: 64}.Inches(L(n) * length.Inch / 64)
}
