package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"hash"
	"io"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/scene"
)

// Joiner writes documents into one file, one after the other. It keeps none of them: memory does not grow with what was added, but
// for a few bytes a page.
//
// Order: pages stand in the order of the parts; a part may be put before those that were added earlier.
type Joiner struct {
	w       io.Writer
	at      int64
	sum     hash.Hash
	offsets []int64
	parts   []joined
	layers  map[string]int
	files   []int // attachments
	failed  error
}

// joined is a part that was written.
type joined struct {
	title          string
	pages, outline int // objects: of its pages, and what its outline hangs from
	first, last    int // of its outline
	below          int
	start          int   // object of its first page
	kids           []int // objects of all of them
	labels         []string
}

// The objects that every joined file begins with.
const (
	joinedPages, joinedOutline = 1, 2
	joinedFirst                = 3
)

// NewJoiner begins a file.
func NewJoiner(w io.Writer) *Joiner {
	j := &Joiner{w: w, sum: sha256.New(), offsets: make([]int64, joinedFirst), layers: map[string]int{}}
	j.put("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	return j
}

func (j *Joiner) put(text string) {
	if j.failed != nil {
		return
	}
	n, err := io.WriteString(io.MultiWriter(j.w, j.sum), text)
	j.at, j.failed = j.at+int64(n), err
}

// object writes an object under its number.
func (j *Joiner) object(n int, body string) {
	j.offsets[n] = j.at
	j.put(fmt.Sprintf("%d 0 obj\n%sendobj\n", n, body))
}

// next is the number of the next object.
func (j *Joiner) next() int {
	j.offsets = append(j.offsets, 0)
	return len(j.offsets) - 1
}

// dictionary entries of what Write writes.
var (
	outlineRoot = regexp.MustCompile(`/Outlines (\d+) 0 R`)
	outlineEnds = regexp.MustCompile(`/First (\d+) 0 R /Last (\d+) 0 R /Count (\d+)`)
)

// Add adds a document that Write has written; labels are the names of its pages, title is what the outline calls it. With before it
// stands before all others.
//
// Errors: what cannot be written, and a part that Write has not written.
func (j *Joiner) Add(part []byte, labels []string, title string, before bool) error {
	f, err := parse(part)
	if err != nil {
		return fmt.Errorf("pdf: a part: %w", err)
	}
	catalogs, infos := f.find("<<\n/Type /Catalog"), f.find("<<\n/Title")
	if len(catalogs) != 1 {
		return fmt.Errorf("pdf: a part with %d catalogs", len(catalogs))
	}
	p := joined{title: title, labels: labels}
	to, skip := j.numbers(f, append(catalogs, infos...))
	root := 0
	if m := outlineRoot.FindSubmatch(f.objects[catalogs[0]]); m != nil {
		root, _ = strconv.Atoi(string(m[1]))
	}
	for n := 1; n < len(f.objects); n++ {
		body := f.objects[n]
		switch {
		case skip[n]:
			continue
		case n == root:
			m := outlineEnds.FindStringSubmatch(string(body))
			if m == nil {
				return fmt.Errorf("pdf: a part with another outline")
			}
			p.outline, p.below = to[n], atoi(m[3])
			p.first, p.last = to[atoi(m[1])], to[atoi(m[2])]
			continue // written in the end, when its neighbours are known
		case n == 1:
			p.pages = to[n]
			kids := reference.FindSubmatch(body[max(0, bytes.Index(body, []byte("/Kids"))):])
			if kids == nil {
				return fmt.Errorf("pdf: a part without pages")
			}
			p.start = to[atoi(string(kids[1]))]
			list, _, _ := bytes.Cut(body[bytes.Index(body, []byte("/Kids")):], []byte("]"))
			for _, kid := range reference.FindAllSubmatch(list, -1) {
				p.kids = append(p.kids, to[atoi(string(kid[1]))])
			}
			body = append([]byte(fmt.Sprintf("<</Parent %d 0 R ", -joinedPages)), bytes.TrimPrefix(body, []byte("<<"))...)
		}
		if bytes.HasPrefix(body, []byte("<</Type /Filespec")) {
			j.files = append(j.files, to[n])
		}
		j.object(to[n], renumbered(body, to))
	}
	if before {
		j.parts = slices.Insert(j.parts, 0, p)
	} else {
		j.parts = append(j.parts, p)
	}
	return j.failed
}

// numbers gives the objects of a part their numbers in the joined file; skipped are those that are not written: some, and layers that
// are there already.
func (j *Joiner) numbers(f *file, some []int) (to []int, skip map[int]bool) {
	to, skip = make([]int, len(f.objects)), map[int]bool{}
	for _, n := range some {
		skip[n] = true
	}
	for n := 1; n < len(f.objects); n++ {
		body := string(f.objects[n])
		if skip[n] {
			continue
		}
		if strings.HasPrefix(body, "<</Type /OCG") { // a layer is one through the file
			if known := j.layers[body]; known > 0 {
				to[n], skip[n] = known, true
				continue
			}
			to[n] = j.next()
			j.layers[body] = to[n]
			continue
		}
		to[n] = j.next()
	}
	return to, skip
}

func atoi(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}

// renumbered gives the references of an object their new numbers. Texts and streams are stepped over; a number under nought is one
// of the joined file itself.
func renumbered(body []byte, to []int) string {
	stream := bytes.Index(body, []byte("stream\n"))
	tail := []byte(nil)
	if stream >= 0 {
		body, tail = body[:stream], body[stream:]
	}
	var out bytes.Buffer
	for i := 0; i < len(body); {
		if body[i] == '(' {
			end := i + 1
			for ; end < len(body) && body[end] != ')'; end++ {
				if body[end] == '\\' {
					end++
				}
			}
			end = min(end+1, len(body))
			out.Write(body[i:end])
			i = end
			continue
		}
		if m := anyReference.FindSubmatchIndex(body[i:]); m != nil && m[0] == 0 && (i == 0 || !digit(body[i-1])) {
			if n := atoi(string(body[i : i+m[3]])); n < 0 {
				fmt.Fprintf(&out, "%d 0 R", -n)
			} else {
				fmt.Fprintf(&out, "%d 0 R", to[n])
			}
			i += m[1]
			continue
		}
		out.WriteByte(body[i])
		i++
	}
	out.Write(tail)
	return out.String()
}

var anyReference = regexp.MustCompile(`^(-?\d+) 0 R`)

func digit(c byte) bool { return c >= '0' && c <= '9' }

// Close writes what leads about in the whole file. d is what it is called; its attachments are carried by it.
func (j *Joiner) Close(d *scene.Document) error {
	count := 0
	var kids []string
	for _, p := range j.parts {
		kids = append(kids, fmt.Sprintf("%d 0 R", p.pages))
		count += len(p.labels)
	}
	j.object(joinedPages, fmt.Sprintf("<</Type /Pages /Kids [%s] /Count %d>>\n", strings.Join(kids, " "), count))
	j.closeOutline()
	w := &finisher{file: &file{}, doc: d}
	w.objects = make([][]byte, len(j.offsets)) // attachments are numbered behind all others
	w.attach()
	tree := len(w.objects) - 1
	for n := len(j.offsets); n < len(w.objects); n++ {
		if bytes.HasPrefix(w.objects[n], []byte("<</Type /Filespec")) {
			j.files = append(j.files, n)
		}
		if n < tree {
			j.object(j.next(), string(w.objects[n]))
		}
	}
	var names, labels, layers strings.Builder
	for i, n := range j.files {
		fmt.Fprintf(&names, "(%06d) %d 0 R ", i+1, n)
	}
	page := 0
	for _, p := range j.parts {
		for _, label := range p.labels {
			fmt.Fprintf(&labels, "%d <</P %s>> ", page, phrase(label))
			page++
		}
	}
	var groups []int
	for _, n := range j.layers {
		groups = append(groups, n)
	}
	slices.Sort(groups)
	for _, n := range groups {
		fmt.Fprintf(&layers, "%d 0 R ", n)
	}
	list := strings.TrimSpace(layers.String())
	files := j.next()
	j.object(files, "<</Names ["+strings.TrimSpace(names.String())+"]>>\n")
	dests := j.next()
	j.object(dests, "<</Names ["+j.destinations()+"]>>\n")
	catalog := j.next()
	j.object(catalog, fmt.Sprintf("<<\n/Type /Catalog\n/Pages %d 0 R\n/Lang (en)\n/PageLayout /SinglePage\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n"+
		"/PageLabels <</Nums [%s]>>\n/Outlines %d 0 R\n/PageMode /UseOutlines\n/OCProperties <</OCGs [%s] /D <</Name (Layers) /BaseState /ON /Order [%s]>>>>\n/Names <</EmbeddedFiles %d 0 R /Dests %d 0 R>>\n>>\n",
		joinedPages, labels.String(), joinedOutline, list, list, files, dests))
	info := j.next()
	j.object(info, w.info())
	id := j.sum.Sum(nil)[:16]
	xref := j.at
	j.put(fmt.Sprintf("xref\n0 %d\n0000000000 65535 f \n", len(j.offsets)))
	for _, offset := range j.offsets[1:] {
		j.put(fmt.Sprintf("%010d 00000 n \n", offset))
	}
	j.put(fmt.Sprintf("trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n", len(j.offsets), catalog, info, id, id, xref))
	return j.failed
}

// destinations are all pages by name, in the order of the names: of two pages of one name the first.
func (j *Joiner) destinations() string {
	pages := map[string]int{}
	for _, p := range j.parts {
		for i, label := range p.labels {
			if _, known := pages[label]; !known && i < len(p.kids) {
				pages[label] = p.kids[i]
			}
		}
	}
	var list []string
	for _, name := range slices.Sorted(maps.Keys(pages)) {
		list = append(list, fmt.Sprintf("%s [%d 0 R /Fit]", destination(name), pages[name]))
	}
	return strings.Join(list, " ")
}

// closeOutline hangs the outlines of all parts under one.
func (j *Joiner) closeOutline() {
	below := 0
	for i, p := range j.parts {
		s := fmt.Sprintf("<</Title %s /Parent %d 0 R", phrase(p.title), joinedOutline)
		if i > 0 {
			s += fmt.Sprintf(" /Prev %d 0 R", j.parts[i-1].outline)
		}
		if i+1 < len(j.parts) {
			s += fmt.Sprintf(" /Next %d 0 R", j.parts[i+1].outline)
		}
		j.object(p.outline, s+fmt.Sprintf(" /First %d 0 R /Last %d 0 R /Count -%d /Dest [%d 0 R /Fit]>>\n", p.first, p.last, p.below, p.start))
		below++
	}
	j.object(joinedOutline, fmt.Sprintf("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>\n", j.parts[0].outline, j.parts[len(j.parts)-1].outline, below))
}
