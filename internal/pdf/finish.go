package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/md5"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"flitchlay/internal/scene"
)

// finisher adds to a drawn file what leads about in it.
type finisher struct {
	*file
	doc   *scene.Document
	pages []int // object numbers, in page order
}

// finish adds links, viewports, outline, page labels, attachments and the description of the document, and gives the file an identity.
func finish(raw []byte, d *scene.Document, subsets [2]string) ([]byte, error) {
	f, err := parse(raw)
	if err != nil {
		return nil, fmt.Errorf("reading back: %w", err)
	}
	f.pack()
	w := &finisher{file: f, doc: d}
	if err := w.findPages(); err != nil {
		return nil, fmt.Errorf("reading back: %w", err)
	}
	w.nameFonts(subsets)
	for i, p := range d.Pages {
		w.annotate(i, p)
		w.measure(i, p)
	}
	// fpdf's own catalog and description are replaced where they stand, so that nothing is left over.
	catalogs := w.find("<<\n/Type /Catalog")
	infos := w.find("<<\n/Producer")
	if len(catalogs) != 1 || len(infos) != 1 {
		return nil, fmt.Errorf("reading back: %d catalogs, %d descriptions", len(catalogs), len(infos))
	}
	catalog := w.catalog()
	w.objects[catalogs[0]] = []byte(catalog)
	w.objects[infos[0]] = []byte(w.info())
	return w.write(catalogs[0], infos[0]), nil
}

var reference = regexp.MustCompile(`(\d+) 0 R`)

// findPages reads the order of pages from their parent, object 1.
func (w *finisher) findPages() error {
	parent := string(w.objects[1])
	from := strings.Index(parent, "/Kids [")
	if from < 0 {
		return fmt.Errorf("no list of pages")
	}
	kids, _, _ := strings.Cut(parent[from:], "]")
	for _, m := range reference.FindAllStringSubmatch(kids, -1) {
		n, err := strconv.Atoi(m[1])
		if err != nil || n >= len(w.objects) || !bytes.HasPrefix(w.objects[n], []byte("<</Type /Page\n")) {
			return fmt.Errorf("object %s is no page", m[1])
		}
		w.pages = append(w.pages, n)
	}
	if len(w.pages) != len(w.doc.Pages) {
		return fmt.Errorf("%d pages of %d", len(w.pages), len(w.doc.Pages))
	}
	return nil
}

// nameFonts gives the subsets names as ISO 32000-1, 9.6.4 wants them: six letters for the subset, then the font.
func (w *finisher) nameFonts(subsets [2]string) {
	for _, n := range append(w.find("<</Type /Font\n"), w.find("<</Type /FontDescriptor")...) {
		o := strings.ReplaceAll(string(w.objects[n]), "/utf8"+family+"B", "/"+subsets[1]+"+FlitchlaySans-Bold")
		w.objects[n] = []byte(strings.ReplaceAll(o, "/utf8"+family, "/"+subsets[0]+"+FlitchlaySans"))
	}
}

// annotate adds the links of a page.
func (w *finisher) annotate(page int, p *scene.Page) {
	var refs []string
	p.Walk(func(it scene.Item) {
		l, ok := it.(*scene.Link)
		if !ok {
			return
		}
		action := ""
		if l.Page != "" {
			action = "/Dest " + w.place(l.Page, 0)
		} else if uri, ok := l.Target(); ok {
			action = "/A <</S /URI /URI " + phrase(uri) + ">>"
		} else {
			return
		}
		n := w.add("<</Type /Annot /Subtype /Link /Rect %s /Border [0 0 0] /F 4 %s>>", rect(p, l.Box), action)
		refs = append(refs, fmt.Sprintf("%d 0 R", n))
	})
	if len(refs) > 0 {
		w.extend(w.pages[page], "\n/Annots ["+strings.Join(refs, " ")+"]")
	}
}

// place returns the destination of a page: all of it, or from some way down.
func (w *finisher) place(name string, y float64) string {
	for i, p := range w.doc.Pages {
		if p.Name == name {
			if y <= 0 {
				return fmt.Sprintf("[%d 0 R /Fit]", w.pages[i])
			}
			return fmt.Sprintf("[%d 0 R /XYZ 0 %s null]", w.pages[i], number((p.Height-y)*perMM))
		}
	}
	return destination(name) // names are valid by now: another part of the file has it
}

// destination is the name under which a joined file has a page.
func destination(page string) string { return fmt.Sprintf("<%x>", page) }

// rect writes a box in the file's own units, lower left corner first.
func rect(p *scene.Page, b scene.Box) string {
	at := func(v float64) string { return strconv.FormatFloat(v*perMM, 'f', 3, 64) }
	return "[" + at(b.X0) + " " + at(p.Height-b.Y1) + " " + at(b.X1) + " " + at(p.Height-b.Y0) + "]"
}

// catalog writes the document's root, and the objects it needs.
func (w *finisher) catalog() string {
	var b strings.Builder
	b.WriteString("<<\n/Type /Catalog\n/Pages 1 0 R\n/Lang (en)\n/PageLayout /SinglePage\n")
	b.WriteString("/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n")
	// A range for every page: a label such as Z-201 cannot be counted up with its zeros. ISO 32000-1, 12.4.2.
	b.WriteString("/PageLabels <</Nums [")
	for i, p := range w.doc.Pages {
		fmt.Fprintf(&b, "%d <</P %s>> ", i, phrase(p.Name))
	}
	b.WriteString("]>>\n")
	if len(w.doc.Outline) > 0 {
		fmt.Fprintf(&b, "/Outlines %d 0 R\n/PageMode /UseOutlines\n", w.outline())
	}
	if groups := w.find("<</Type /OCG"); len(groups) > 0 {
		refs := make([]string, len(groups))
		for i, n := range groups {
			refs[i] = fmt.Sprintf("%d 0 R", n)
		}
		list := strings.Join(refs, " ")
		fmt.Fprintf(&b, "/OCProperties <</OCGs [%s] /D <</Name (Layers) /BaseState /ON /Order [%s]>>>>\n", list, list)
	}
	if len(w.doc.Attachments) > 0 {
		fmt.Fprintf(&b, "/Names <</EmbeddedFiles %d 0 R>>\n", w.attach())
	}
	b.WriteString(">>\n")
	return b.String()
}

// outline adds the outline and returns the number of its root.
func (w *finisher) outline() int {
	root := w.add("")
	entries := w.doc.Outline
	numbers := make([]int, len(entries))
	for i := range entries {
		numbers[i] = w.add("")
	}
	// parent, siblings and children by level, as Validate has seen to it that levels go down one at a time
	type node struct{ parent, before, after, first, last, below int }
	nodes := make([]node, len(entries))
	top := node{before: -1, after: -1, first: -1, last: -1}
	open := []int{}
	for i, e := range entries {
		open = open[:min(e.Level, len(open))]
		nodes[i] = node{parent: -1, before: -1, after: -1, first: -1, last: -1}
		up := &top
		if len(open) > 0 {
			nodes[i].parent = open[len(open)-1]
			up = &nodes[nodes[i].parent]
		}
		if up.last >= 0 {
			nodes[i].before = up.last
			nodes[up.last].after = i
		} else {
			up.first = i
		}
		up.last = i
		for _, o := range open {
			nodes[o].below++
		}
		top.below++
		open = append(open, i)
	}
	for i, e := range entries {
		n := nodes[i]
		s := "<</Title " + phrase(e.Title)
		ref := func(key string, to int) {
			if to >= 0 {
				s += fmt.Sprintf(" /%s %d 0 R", key, numbers[to])
			}
		}
		if n.parent < 0 {
			s += fmt.Sprintf(" /Parent %d 0 R", root)
		}
		ref("Parent", n.parent)
		ref("Prev", n.before)
		ref("Next", n.after)
		ref("First", n.first)
		ref("Last", n.last)
		if n.below > 0 {
			s += fmt.Sprintf(" /Count %d", n.below)
		}
		w.objects[numbers[i]] = []byte(s + " /Dest " + w.place(e.Page, e.Y) + ">>\n")
	}
	w.objects[root] = fmt.Appendf(nil, "<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>\n", numbers[top.first], numbers[top.last], top.below)
	return root
}

// attach adds the attachments and returns the number of the tree of their names.
func (w *finisher) attach() int {
	var names strings.Builder
	for i, a := range w.doc.Attachments {
		var packed bytes.Buffer
		z := zlib.NewWriter(&packed)
		_, _ = z.Write(a.Data) // into memory
		_ = z.Close()
		kind := ""
		if a.Type != "" {
			kind = " /Subtype /" + name(a.Type)
		}
		stream := w.add("<</Type /EmbeddedFile%s /Filter /FlateDecode /Length %d /Params <</Size %d%s /CheckSum <%x>>>>>\nstream\n%s\nendstream",
			kind, packed.Len(), len(a.Data), w.stamp("ModDate"), md5.Sum(a.Data), packed.Bytes())
		about := ""
		if a.About != "" {
			about = " /Desc " + phrase(a.About)
		}
		spec := w.add("<</Type /Filespec /F %s /UF %s%s /EF <</F %d 0 R /UF %d 0 R>>>>", phrase(scene.FileName(a.Name)), phrase(a.Name), about, stream, stream)
		// The tree wants its keys in order; counted keys are, whatever the names.
		fmt.Fprintf(&names, "(%04d) %d 0 R ", i+1, spec)
	}
	return w.add("<</Names [%s]>>", strings.TrimSpace(names.String()))
}

// name writes a text as a name: ISO 32000-1, 7.3.5.
func name(s string) string {
	var b strings.Builder
	for i := range len(s) {
		c := s[i]
		if c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '-' || c == '.' || c == '+' {
			b.WriteByte(c)
		} else if c != 0 {
			fmt.Fprintf(&b, "#%02X", c)
		}
	}
	return b.String()
}

// info writes the description of the document.
func (w *finisher) info() string {
	var b strings.Builder
	b.WriteString("<<\n")
	for _, e := range []struct{ key, value string }{
		{"Title", w.doc.Title}, {"Author", w.doc.Author}, {"Subject", w.doc.Subject}, {"Creator", "flitchlay"}, {"Producer", "flitchlay"},
	} {
		if e.value != "" {
			fmt.Fprintf(&b, "/%s %s\n", e.key, phrase(e.value))
		}
	}
	for _, key := range []string{"CreationDate", "ModDate"} {
		if s := w.stamp(key); s != "" {
			b.WriteString(strings.TrimSpace(s) + "\n")
		}
	}
	b.WriteString(">>\n")
	return b.String()
}

// stamp writes a key with the document's date and its zone; nothing where the document has none.
func (w *finisher) stamp(key string) string {
	if w.doc.Date.IsZero() {
		return ""
	}
	return " /" + key + date(w.doc).Format(" (D:20060102150405Z)")
}
