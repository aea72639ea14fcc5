package cli

import (
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// pictures are what the drawings show of files beside the room file.
type pictures struct {
	logo   *scene.Picture
	sheets folio.Photographs // nil where the room asks for none
}

// pictures reads what some sets show: the logo, and the photographs of the sheets where the architect's set is drawn.
func (c *call) pictures(p *layout.Plan, sets []drawnSet, folder string) (with pictures, err error) {
	if with.logo, err = c.logo(p.Room, folder); err != nil {
		return with, err
	}
	if slices.ContainsFunc(sets, func(s drawnSet) bool { return s.word == "submittal" }) {
		with.sheets = c.photographs(p, folder)
	}
	return with, nil
}

// finest is how many pixels a photograph keeps on its longer side: about 300 to the inch on the largest view.
const finest = 1600

// photographs reads the photographs of all sheets that are laid. One that is not there or cannot be read is said, and
// left out.
func (c *call) photographs(p *layout.Plan, folder string) folio.Photographs {
	pattern := p.Room.Veneer.Face
	if pattern == "" {
		return nil
	}
	photos := folio.Photographs{}
	var lost []string
	path := func(name folio.SheetName) string {
		path := photoPath(pattern, name)
		if !filepath.IsAbs(path) {
			path = filepath.Join(folder, path)
		}
		return path
	}
	for _, name := range laid(p) {
		data, err := c.open(path(name))
		if missing(err) {
			lost = append(lost, path(name))
			continue
		}
		if err != nil {
			c.say("photograph %s cannot be read: %v; a plain field stands for it", path(name), plain(err))
			continue
		}
		photo, err := scene.ReadPhotograph(data, finest)
		if err != nil {
			c.say("photograph %s: %v; a plain field stands for it", path(name), err)
			continue
		}
		photos[name] = photo
	}
	switch n := len(lost); {
	case n == 1:
		c.say("photograph %s is not there; a plain field stands for it", lost[0])
	case n > 1:
		c.say("%d photographs are not there, from %s to %s; plain fields stand for them", n, lost[0], lost[n-1])
	}
	return photos
}

// laid are the sheets that are laid with a number, in run order.
func laid(p *layout.Plan) []folio.SheetName {
	var list []folio.SheetName
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if s := &p.Runs[i].Sheets[k]; s.Number > 0 && len(s.Pieces) > 0 {
				list = append(list, folio.SheetName{Flitch: s.Flitch, Number: s.Number})
			}
		}
	}
	return list
}

// photoPath is the file of a sheet's photograph by the pattern of the room file; {flitch} stands for the flitch's number.
func photoPath(pattern string, name folio.SheetName) string {
	path := room.SheetNumber.ReplaceAllStringFunc(pattern, func(place string) string {
		if place[0] == '#' {
			return fmt.Sprintf("%0*d", len(place), name.Number)
		}
		part := room.SheetNumber.FindStringSubmatch(place)
		width, err := strconv.Atoi("0" + part[2])
		if err != nil || width > 9 {
			width = 0
		}
		if part[1] == "" {
			return fmt.Sprintf("%*d", width, name.Number)
		}
		return fmt.Sprintf("%0*d", width, name.Number)
	})
	return strings.ReplaceAll(path, "{flitch}", name.Flitch)
}
