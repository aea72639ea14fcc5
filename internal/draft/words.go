package draft

import "flitchlay/internal/scene"

// Paragraph letters text in lines no longer than width, the first hanging from a place.
//
// Shape: the y under the last line.
func Paragraph(g *scene.Group, layer scene.Layer, at scene.Point, text string, height float64, bold bool, width float64) float64 {
	y := at.Y
	for _, line := range scene.Wrap(text, height, bold, width) {
		g.Text(scene.Text{At: scene.Pt(at.X, y), String: line, Height: height, Bold: bold, Seat: scene.Hanging, Layer: layer})
		y += Pitch(height)
	}
	return y
}

// Pitch is the distance from one line of text to the next.
func Pitch(height float64) float64 { return 1.8 * height }

// ParagraphHigh is how high a paragraph comes out.
func ParagraphHigh(text string, height float64, bold bool, width float64) float64 {
	return float64(len(scene.Wrap(text, height, bold, width))) * Pitch(height)
}

// List letters paragraphs with a mark before each, such as a number.
//
// Shape: how many stood in the height, and the y under the last.
func List(g *scene.Group, layer scene.Layer, at scene.Point, items []Item, height, indent, width, most float64) (count int, y float64) {
	y = at.Y
	for _, it := range items {
		h := ParagraphHigh(it.Text, height, it.Bold, width-indent)
		if y+h > at.Y+most {
			return count, y
		}
		if it.Mark != "" {
			g.Text(scene.Text{At: scene.Pt(at.X, y), String: it.Mark, Height: height, Bold: it.Bold, Seat: scene.Hanging, Layer: layer})
		}
		y = Paragraph(g, layer, scene.Pt(at.X+indent, y), it.Text, height, it.Bold, width-indent) + height*0.5
		count++
	}
	return count, y
}

// Item is one paragraph of a list.
type Item struct {
	Mark, Text string
	Bold       bool
}
