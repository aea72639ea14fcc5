package roomtest

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// Texts are all words of pages, a line each.
func Texts(pages []*scene.Page) string {
	var b strings.Builder
	for _, p := range pages {
		p.Texts(func(x *scene.Text) { b.WriteString(x.String + "\n") })
	}
	return b.String()
}

// visit walks all groups under one, itself first.
func visit(g *scene.Group, do func(*scene.Group)) {
	do(g)
	for _, it := range g.Items {
		if in, ok := it.(*scene.Group); ok {
			visit(in, do)
		}
	}
}

// Classed are all groups of a class.
func Classed(g *scene.Group, class string) []*scene.Group {
	var list []*scene.Group
	visit(g, func(in *scene.Group) {
		if in.Class == class {
			list = append(list, in)
		}
	})
	return list
}

// Fact is a datum of a group, "" where it has none of the key.
func Fact(g *scene.Group, key string) string {
	for _, d := range g.Data {
		if d.Key == key {
			return d.Value
		}
	}
	return ""
}

// Lettering are the words under a group.
func Lettering(g *scene.Group) []string {
	var list []string
	g.Texts(func(t *scene.Text) { list = append(list, t.String) })
	return list
}

// ElevationViews are the views of walls, by page.
func ElevationViews(d *scene.Document) []*scene.Group {
	var list []*scene.Group
	for _, p := range d.Pages {
		for _, v := range Classed(&p.Group, "view") {
			if Fact(v, "wall") != "" && Fact(v, "opening") == "" {
				list = append(list, v)
			}
		}
	}
	return list
}

// drawnPart is what a test reads from a scene: a group of a class with its data.
type drawnPart struct {
	*scene.Group
	Data map[string]string
}

// PartsOf are all groups of a class under one, with their data.
func PartsOf(g *scene.Group, class string) []drawnPart {
	var list []drawnPart
	for _, it := range g.Items {
		in, ok := it.(*scene.Group)
		if !ok {
			continue
		}
		if in.Class == class {
			data := map[string]string{}
			for _, d := range in.Data {
				data[d.Key] = d.Value
			}
			list = append(list, drawnPart{in, data})
		}
		list = append(list, PartsOf(in, class)...)
	}
	return list
}

// Template is a page template that comes with the program.
func Template(t testing.TB, name string) *paper.Template {
	t.Helper()
	tp, err := paper.Named(name)
	require.NoError(t, err)
	return tp
}
