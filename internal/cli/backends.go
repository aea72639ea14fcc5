package cli

import (
	"slices"

	"flitchlay/internal/pdf"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// backend is one way of putting a set into files: all of it into one, or each page into one of its own.
type backend struct {
	end  string // of the names of its files
	set  func(*scene.Document) ([]byte, error)
	page func(p *scene.Page, title string) ([]byte, error) // where set is nil
}

// backends are all of them, in the order of the files that are written.
var backends = []backend{
	{end: ".pdf", set: pdf.Write},
	{end: ".svg", page: func(p *scene.Page, title string) ([]byte, error) { return svg.Page(p, svg.Options{Set: title}) }},
}

// backendEnds are what the names of files may end in.
func backendEnds() []string {
	var ends []string
	for _, b := range backends {
		ends = append(ends, b.end)
	}
	return ends
}

// backendOf finds a backend by what the names of its files end in.
func backendOf(end string) (backend, bool) {
	i := slices.IndexFunc(backends, func(b backend) bool { return b.end == end })
	if i < 0 {
		return backend{}, false
	}
	return backends[i], true
}

// files writes a set. whole is the name of the one file, page that of the file of a page, both without their ends.
//
// Errors: a page that cannot be drawn, which is a fault of the program.
func (b backend) files(d *scene.Document, whole string, page func(i int) string) ([]file, error) {
	if b.set != nil {
		data, err := b.set(d)
		if err != nil {
			return nil, err
		}
		return []file{{name: whole + b.end, data: data}}, nil
	}
	var files []file
	for i, p := range d.Pages {
		data, err := b.page(p, d.Title)
		if err != nil {
			return nil, err
		}
		files = append(files, file{name: page(i) + b.end, data: data})
	}
	return files, nil
}
