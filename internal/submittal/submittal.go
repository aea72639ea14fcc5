package submittal

import (
	"flitchlay/internal/detail"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
)

// Submittal is the list of pages that the architect gets, in their order.
var Submittal = []folio.Section{
	{Kind: folio.General, Pages: generalPages},
	{Kind: folio.Plans, Pages: roomKeyPages},
	{Kind: folio.Elevations, Pages: elevation.Pages},
	{Kind: folio.Elevations, Pages: photographPages},
	{Kind: folio.Enlarged, Pages: openingPages},
	{Kind: folio.Details, Pages: detail.Pages},
	{Kind: folio.Schedules, Pages: schedulePages},
}
