package crewday

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// What is done with the readings of a wall when the crew comes to it.

// arrivalMeans are the keys of what each word means.
var arrivalMeans = [...]string{layout.HangIt: "arrival.hang", layout.Restrike: "arrival.restrike", layout.PlanAgain: "arrival.plan_again"}

// arrivalLines are the lines of the words, the first in bold, and how wide the words before the others are.
func (c *Set) arrivalLines(wide float64) (lines [][2]string, indent float64) {
	u, size := c.Unit, folio.TapedText*c.Unit
	for _, line := range scene.Wrap(c.Words.Say("arrival.head", c.PageWord("start")), size, false, wide) {
		lines = append(lines, [2]string{"", line})
	}
	for w := range arrivalMeans {
		indent = max(indent, scene.Width(layout.Word(w).String(), size, true)+3*u)
	}
	for w, means := range arrivalMeans {
		for i, line := range scene.Wrap(c.Words.Say(means), size, false, wide-indent) {
			word := " "
			if i == 0 {
				word = layout.Word(w).String()
			}
			lines = append(lines, [2]string{word, line})
		}
	}
	return lines, indent
}

// arrivalPitch is from one line of the words to the next, in mm on letter paper.
const arrivalPitch = 5.4

// arrivalHigh is what the words take at the foot of a page of heights.
func (c *Set) arrivalHigh(wide float64) float64 {
	lines, _ := c.arrivalLines(wide)
	return (float64(len(lines))*arrivalPitch + 4) * c.Unit
}

// arrivalWords letters them into a box.
func (b *Board) arrivalWords(box scene.Box) {
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "arrival"})
	g.HLine(box.X0, box.X1, box.Y0, scene.Pen(scene.Frame, folio.TapedFine))
	lines, indent := b.arrivalLines(box.W())
	y := box.Y0 + 5.6*u
	for _, line := range lines {
		x := box.X0
		if line[0] != "" {
			if line[0] != " " {
				b.Word(g, scene.Pt(x, y), line[0], size, true, scene.Start)
			}
			x += indent
		}
		b.Word(g, scene.Pt(x, y), line[1], size, false, scene.Start)
		y += arrivalPitch * u
	}
}
