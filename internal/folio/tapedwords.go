package folio

import "flitchlay/internal/scene"

// Word letters one line of notes.
func (s *TapedSet) Word(g *scene.Group, at scene.Point, text string, height float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: text, Height: height, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// Blanks letters words with lines to write on behind each, from x to right.
func (s *TapedSet) Blanks(g *scene.Group, x, right, y float64, words []string) {
	u, size := s.Unit, TapedText*s.Unit
	sum := 0.0
	for _, w := range words {
		sum += scene.Width(w, size, false) + 2*u
	}
	each := (right - x - sum) / float64(len(words))
	for _, w := range words {
		s.Word(g, scene.Pt(x, y), w, size, false, scene.Start)
		x += scene.Width(w, size, false) + 1*u
		g.HLine(x, x+each, y+0.8*u, scene.Pen(scene.Frame, 0.25))
		x += each + 1*u
	}
}
