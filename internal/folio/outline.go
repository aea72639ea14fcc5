package folio

import (
	"slices"
	"strings"

	"flitchlay/internal/scene"
)

// Entry is a page as the outline lists it.
type Entry struct {
	Page  *scene.Page
	Title string
	Wall  string // that the page shows, "" for none; of a taped page several, with commas between them
}

// outline lists the set, in it its walls and what belongs to no wall, and under each wall its pages: where the first of
// them stands.
func (s *Set) outline(list []Entry) []scene.Entry {
	if len(list) == 0 {
		return nil
	}
	out := []scene.Entry{{Title: s.Words.Say("page.outline", s.Name), Page: list[0].Page.Name}}
	done := map[string]bool{}
	for _, e := range list {
		switch {
		case e.Wall == "":
			out = append(out, scene.Entry{Title: e.Title, Level: 1, Page: e.Page.Name})
		case !done[e.Wall]:
			done[e.Wall] = true
			out = append(out, scene.Entry{Title: e.Wall, Level: 1, Page: e.Page.Name})
			for _, o := range list {
				if o.Wall == e.Wall {
					out = append(out, scene.Entry{Title: o.Title, Level: 2, Page: o.Page.Name})
				}
			}
		}
	}
	return out
}

// WallOn is the wall that the views of a page show, "" for none or several.
func WallOn(p *scene.Page) string {
	if walls := wallsOn(p); len(walls) == 1 {
		return walls[0]
	}
	return ""
}

// wallsOn are the walls that the views of a page show, in their order.
func wallsOn(p *scene.Page) (walls []string) {
	p.Walk(func(it scene.Item) {
		g, ok := it.(*scene.Group)
		if !ok || g.View == nil {
			return
		}
		for _, d := range g.Data {
			if d.Key == "wall" && !slices.Contains(walls, d.Value) {
				walls = append(walls, d.Value)
			}
		}
	})
	return walls
}

// Describe says what a page is to somebody who hears it read: the set, the project, the page among the others, what its
// views show and at which scale.
func (s *Set) Describe(p *scene.Page, count, of int) {
	parts := []string{s.Words.Say("page.read_out", s.Name, s.Room.Project.Title, count, of)}
	said := map[string]bool{}
	p.Walk(func(it scene.Item) {
		g, ok := it.(*scene.Group)
		if !ok || g.View == nil || g.View.Name == "" {
			return
		}
		text := g.View.Name
		if g.View.Ratio != "" {
			text = s.Words.Say("page.view_at", text, g.View.Ratio)
		}
		if !said[text] {
			said[text] = true
			parts = append(parts, text)
		}
	})
	if s.Unfit() {
		parts = append(parts, s.Words.Say("page.read_not_for_hanging"))
	}
	p.Desc = strings.Join(parts, "; ") + "."
}
