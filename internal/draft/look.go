// Package draft holds drafting parts: dimension chains, marks, leaders, scale bars, tables, hatches, and a space in which
// labels find a free place. Each part draws itself into a group of a scene and takes its place in the space.
//
// Coordinates and units: page space, millimetres on paper; View turns wall space into it.
//
// Order: parts draw in the order called; what is placed first stays, what comes later gives way.
//
// Not here: rooms, plans, and what a page shows (packages submittal, crew, pole, aims).
package draft

// Look is the office's manner: heights of capitals, widths of lines, and the unit that all distances are counted in.
type Look struct {
	Unit                        float64 // 1 where small text is 2.5 high
	Small, Medium, Large, Huge  float64
	Wide, Outline, Seam, Thin   float64
	Dimension, Extension, Grain float64
	On                          [2]string // what follows a title that is repeated, and less where that has no room; "": in English
}

// Office is the look of the page that everything else is proportioned from.
//
// Source: heights 2.5, 3.5, 5, 7 mm of ISO 3098; widths of ISO 128-2, each about 1.4 times the next.
func Office() Look {
	return Look{Unit: 1, Small: 2.5, Medium: 3.5, Large: 5, Huge: 7,
		Wide: 0.7, Outline: 0.5, Seam: 0.35, Thin: 0.25, Dimension: 0.18, Extension: 0.13, Grain: 0.1}
}

// Of is a distance on the office page, brought to this look.
func (k Look) Of(mm float64) float64 { return mm * k.Unit }
