package scene

import (
	"net/url"
	"strings"
)

// Target returns the URI that a link leads to outside the document, and whether there is one. Only web and mail addresses count: a room's
// text must not make a drawing run anything.
func (l *Link) Target() (string, bool) {
	if l.Page != "" {
		return "", false
	}
	u, err := url.Parse(strings.TrimSpace(l.URI))
	if err != nil {
		return "", false
	}
	switch strings.ToLower(u.Scheme) {
	case "http", "https":
		return u.String(), u.Host != ""
	case "mailto":
		return u.String(), u.Opaque != ""
	}
	return "", false
}

// FileName returns the name of a page as a file can be called, without ending: letters, digits, dot, dash and underline are kept.
func FileName(page string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case 'a' <= r && r <= 'z', 'A' <= r && r <= 'Z', '0' <= r && r <= '9', r == '.', r == '-', r == '_':
			return r
		}
		return '-'
	}, page)
	if strings.Trim(name, ".") == "" || name[0] == '.' {
		name = "_" + name
	}
	return name
}

// Texts visits every line of text of the group, in the order drawn.
func (g *Group) Texts(visit func(*Text)) {
	g.Walk(func(it Item) {
		if t, ok := it.(*Text); ok {
			visit(t)
		}
	})
}
