package submittal

import (
	"flitchlay/internal/detail"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// Submittal is the list of pages that the architect gets, in their order.
var Submittal = []folio.Section{
	{Kind: folio.General, Pages: generalPages},
	{Kind: folio.Plans, Pages: roomKeyPages},
	{Kind: folio.Elevations, Pages: wallPages},
	{Kind: folio.Enlarged, Pages: openingPages},
	{Kind: folio.Details, Pages: detail.Pages},
	{Kind: folio.Schedules, Pages: schedulePages},
}

// Draw draws the set for the architect. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Draw(p *layout.Plan, t *paper.Template, logo *scene.Picture) (*scene.Document, error) {
	return Photographed(p, t, logo, nil)
}
