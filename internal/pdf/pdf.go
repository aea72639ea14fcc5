// Package pdf writes a document of a scene as a PDF file.
//
// What it does: one file per set, at true size, with subsets of the two faces, layers, links, an outline, page labels, attachments and
// viewports to measure in. Drawing is fpdf's; what leads from one place of the file to another is added afterwards (finish.go).
//
// Coordinates and units: points of 1/72 in from the upper left corner in what is handed to fpdf, from the lower left in the file. Scenes come in
// millimetres; no transform scales a drawing.
//
// Order: pages and items in the order of the document; layers in the order of scene.Layers.
//
// Not here: what is on the pages. The package knows no room.
package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"slices"
	"time"

	"github.com/go-pdf/fpdf"

	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// perMM is points in a millimetre.
const perMM = 72 / 25.4

// family is what the two faces are called within fpdf.
const family = "flitchlay"

// Write writes the whole document.
//
// Errors: the document holds something that cannot be drawn; see scene.Document.Validate.
func Write(d *scene.Document) (out []byte, err error) {
	if err := d.Validate(); err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	if len(d.Pages) == 0 {
		return nil, fmt.Errorf("pdf: a document without pages")
	}
	// fpdf panics on what it does not expect; whatever still gets through must not take the program down.
	defer func() {
		if r := recover(); r != nil {
			out, err = nil, fmt.Errorf("pdf: %v", r)
		}
	}()
	raw, subsets, err := draw(d, false) // finish compresses: for a page at a time fpdf takes new memory each
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	out, err = finish(raw, d, subsets)
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return out, nil
}

// draw has fpdf write pages, fonts, pictures and layers. subsets are letters that stand for the subsets of the two faces.
func draw(d *scene.Document, compressed bool) (raw []byte, subsets [2]string, err error) {
	first := d.Pages[0]
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: size(first)})
	f.SetCompression(compressed)
	f.SetCatalogSort(true)
	f.SetCreationDate(date(d))
	f.SetModificationDate(date(d))
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	w := &writer{pdf: f, layers: map[scene.Layer]int{}, pictures: map[[32]byte]string{}}
	subsets = w.fonts(d)
	w.name(d)
	for _, p := range d.Pages {
		f.AddPageFormat("P", size(p))
		w.lost()
		w.items(p.Items)
		w.enter("")
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, subsets, err
	}
	return out.Bytes(), subsets, nil
}

// size returns a page's size. Orientation stays "P" whatever the shape: "L" would swap the sides.
func size(p *scene.Page) fpdf.SizeType {
	return fpdf.SizeType{Wd: p.Width * perMM, Ht: p.Height * perMM}
}

// date returns the date that the library is given, which else takes that of the clock. Where the document has none, none is left of it
// in the finished file.
func date(d *scene.Document) time.Time {
	if d.Date.IsZero() {
		return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return d.Date.UTC()
}

// writer is one file being drawn, with what fpdf's page state is known to be.
type writer struct {
	pdf      *fpdf.Fpdf
	layers   map[scene.Layer]int
	layer    scene.Layer
	pictures map[[32]byte]string

	known      bool // of the five below
	width      float64
	stroke     scene.Colour
	fill       scene.Colour
	dash       scene.Dash
	cap        scene.Cap
	join       scene.Join
	lettered   bool // of the two below
	bold       bool
	fontSize   float64
	dashBuffer []float64
}

// lost forgets the page state: after a new page, and after a clip, which restores an older one.
func (w *writer) lost() { w.known, w.lettered = false, false }

// fonts hands fpdf the letters the document needs, and no others. It returns six letters that stand for each subset.
func (w *writer) fonts(d *scene.Document) (subsets [2]string) {
	var texts [2][]string
	for _, p := range d.Pages {
		p.Texts(func(t *scene.Text) {
			i := 0
			if t.Bold {
				i = 1
			}
			texts[i] = append(texts[i], t.Lettered())
		})
	}
	for i, style := range []string{"", "B"} {
		if len(texts[i]) == 0 {
			continue
		}
		subset := font.Of(i == 1).Subset(font.Runes(texts[i]...))
		w.pdf.AddUTF8FontFromBytes(family, style, subset)
		sum := sha256.Sum256(subset)
		for _, b := range sum[:6] {
			subsets[i] += string('A' + rune(b%26))
		}
	}
	return subsets
}

// name declares the layers in use: the named ones in their order, then any others by name.
func (w *writer) name(d *scene.Document) {
	used := map[scene.Layer]bool{}
	for _, p := range d.Pages {
		p.Walk(func(it scene.Item) {
			if l := scene.LayerOf(it); l != "" {
				used[l] = true
			}
		})
	}
	declare := func(l scene.Layer) {
		if used[l] {
			w.layers[l] = w.pdf.AddLayer(font.Clean(string(l)), true)
			delete(used, l)
		}
	}
	for _, l := range scene.Layers {
		declare(l)
	}
	var others []scene.Layer
	for l := range used {
		others = append(others, l)
	}
	slices.Sort(others)
	for _, l := range others {
		declare(l)
	}
}

// enter goes over to a layer; the empty one is none.
func (w *writer) enter(l scene.Layer) {
	if l == w.layer {
		return
	}
	if l == "" {
		w.pdf.EndLayer()
	} else {
		w.pdf.BeginLayer(w.layers[l])
	}
	w.layer = l
}

// picture registers a picture once, however often it is placed.
func (w *writer) picture(i *scene.Image) string {
	sum := sha256.Sum256(i.Data)
	name, ok := w.pictures[sum]
	if !ok {
		name = fmt.Sprintf("picture%d", len(w.pictures)+1)
		w.pictures[sum] = name
		w.pdf.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: i.Kind}, bytes.NewReader(i.Data))
	}
	return name
}
