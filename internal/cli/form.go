package cli

import (
	"cmp"
	"fmt"
	"path/filepath"

	"flitchlay/internal/form"
	"flitchlay/internal/paper"
	"flitchlay/internal/pdf"
	"flitchlay/internal/words"
)

// mostForms is how many walls a form has pages for at most.
const mostForms = 200

// writeForm writes a blank form to measure a room with.
func (c *call) writeForm(args []string, n newAsked) error {
	if len(args) > 0 {
		return fmt.Errorf("new writes a room or a form, not both")
	}
	if n.walls < 1 || n.walls > mostForms {
		return fmt.Errorf("--walls %d: a form has pages for 1 to %d walls", n.walls, mostForms)
	}
	if n.to == "" {
		return fmt.Errorf("--form needs a file to write: -o measure.pdf")
	}
	if err := ending("-o", n.to, ".pdf"); err != nil {
		return err
	}
	t, err := paper.Named(cmp.Or(n.page, drawnSets[1].inch))
	if err != nil {
		return err
	}
	if t.Words, err = words.Named(cmp.Or(n.language, "en")); err != nil {
		return err
	}
	d, err := form.Draw(t, n.walls)
	if err != nil {
		return &lostError{n.to, err}
	}
	data, err := pdf.Write(d)
	if err != nil {
		return &lostError{n.to, err}
	}
	if err := c.put(filepath.Dir(n.to), "form", []file{{name: filepath.Base(n.to), data: data}}); err != nil {
		return err
	}
	c.say("wrote %s; print it, fill it in on site, then type it: flitchlay new -o room.toml", n.to)
	return nil
}
