package pages

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// submittal is the list of pages that the architect gets, in their order.
var submittal = []section{
	{kind: general, pages: generalPages},
	{kind: plans, pages: roomKeyPages},
	{kind: elevations, pages: wallPages},
	{kind: enlarged, pages: openingPages},
	{kind: details, pages: detailPages},
	{kind: schedules, pages: schedulePages},
}

// Submittal draws the set for the architect. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Submittal(p *layout.Plan, t *paper.Template, logo *scene.Picture) (*scene.Document, error) {
	return Photographed(p, t, logo, nil)
}
