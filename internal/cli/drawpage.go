package cli

import (
	"path/filepath"

	"flitchlay/internal/layout"
	"flitchlay/internal/page"
)

// pageName is the file that draw --page writes.
const pageName = "page.html"

// drawPage writes a room as one HTML file, with the crew's pages in it.
func (c *call) drawPage(to string, p *layout.Plan, from string) error {
	sets, err := chosen([]string{page.CardSet})
	if err != nil {
		return err
	}
	t, err := sets[0].template(c, p.Room, from)
	if err != nil {
		return err
	}
	path := filepath.Join(to, pageName)
	crew, err := sets[0].pages(p, t, pictures{})
	if err != nil {
		return &lostError{path, err}
	}
	ofSite(p)
	data, err := page.File(p, crew)
	if err != nil {
		return &lostError{path, err}
	}
	said, err := c.replace(to, []file{{name: pageName, set: "page", data: data}}, map[string]bool{"page": true})
	if err != nil {
		return err
	}
	for _, line := range said {
		c.say("%s", line)
	}
	c.say("wrote %s (%d walls, %d pages)", path, len(p.Room.Walls), len(crew.Pages))
	if c.must {
		c.say("%s", fitForNothing)
	}
	return nil
}

// fitForNothing says what a broken must makes of drawings.
const fitForNothing = "a rule that must be met is broken: every page says NOT FOR HANGING; see flitchlay check"
