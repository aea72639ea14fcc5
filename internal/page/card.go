package page

import (
	"strconv"

	"flitchlay/internal/scene"
)

// CardSet is the set that has the cards of the sheets.
const CardSet = "install"

// air is what is left round a card that is shown by itself, in mm.
const air = 2.0

// Card is the card of a sheet out of the pages of the crew's set: its page with nothing else on it, and where on it the card is; nil
// where they have none of that key.
func Card(d *scene.Document, key string) (*scene.Page, scene.Box) {
	for _, p := range d.Pages {
		if g := cardIn(p.Items, key); g != nil {
			out := scene.NewPage("", g.Title, p.Width, p.Height)
			out.Items = []scene.Item{g}
			return out, g.Bounds().Inset(-air)
		}
	}
	return nil, scene.Box{}
}

func cardIn(items []scene.Item, key string) *scene.Group {
	for _, it := range items {
		g, ok := it.(*scene.Group)
		switch {
		case !ok:
			continue
		case g.Class == "card" && keyOf(g) == key:
			return g
		}
		if in := cardIn(g.Items, key); in != nil {
			return in
		}
	}
	return nil
}

// keyOf is the key of a card, by what its tag says of it.
func keyOf(g *scene.Group) string {
	said := map[string]string{}
	for _, d := range g.Data {
		said[d.Key] = d.Value
	}
	place, _ := strconv.Atoi(said["place"])
	course, _ := strconv.Atoi(said["course"])
	return CardKey(said["run"], place, course)
}
