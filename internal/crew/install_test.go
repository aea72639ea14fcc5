package crew

import (
	"testing"

	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// crewGap is what words keep clear of each other and of lines on a page for the crew, in mm.
const crewGap = 0.5

// Clean checks that nothing on any page is in the way of anything else, and that no text is too small.
func Clean(t *testing.T, d *scene.Document) {
	t.Helper()
	for _, p := range d.Pages {
		for _, o := range scene.Overlaps(p, crewGap) {
			t.Errorf("page %s %s: %s", p.Name, p.Title, o)
		}
		p.Texts(func(x *scene.Text) {
			if x.Height < folio.TapedSmall-1e-9 {
				t.Errorf("page %s: %q is only %.2f mm high", p.Name, x.String, x.Height)
			}
		})
	}
}
