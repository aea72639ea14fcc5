package pages

import (
	"strings"

	"flitchlay/internal/scene"
)

// wrapFigures breaks a text into lines no longer than width, but never inside a figure: 4 1/2 read as 4 at the end of one
// line and 1/2 at the beginning of the next costs a sheet.
func wrapFigures(text string, height float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range figureWords(text) {
		switch joined := line + " " + word; {
		case line == "":
			line = word
		case scene.Width(joined, height, bold) <= width:
			line = joined
		default:
			lines = append(lines, line)
			line = word
		}
		if scene.Width(line, height, bold) > width { // one word that is too long for any line
			parts := scene.Wrap(line, height, bold, width)
			lines = append(lines, parts[:len(parts)-1]...)
			line = parts[len(parts)-1]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// figureWords parts a text at its spaces, but keeps a fraction with what is before it, a plus with its figure, and a size
// such as 2 x 3 in one piece.
func figureWords(text string) []string {
	var words []string
	for _, w := range strings.Fields(text) {
		n := len(words)
		if n > 0 && (isFraction(w) && endsInDigit(words[n-1]) || strings.HasPrefix(w, "+") || w == "x" || strings.HasSuffix(words[n-1], " x")) {
			words[n-1] += " " + w
			continue
		}
		words = append(words, w)
	}
	return words
}

// isFraction reports whether a word begins as a fraction does: 1/2, 15/16".
func isFraction(w string) bool {
	i := strings.IndexByte(w, '/')
	return i > 0 && i+1 < len(w) && strings.Trim(w[:i], "0123456789") == "" && w[i+1] >= '0' && w[i+1] <= '9'
}

func endsInDigit(w string) bool { return w != "" && w[len(w)-1] >= '0' && w[len(w)-1] <= '9' }
