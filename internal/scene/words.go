package scene

import "strings"

// figureWords parts a text at its spaces, but keeps a fraction with what is before it, a plus with its figure, and a size
// such as 2 x 3 and the two numbers of a seam, 6 | 7, in one piece.
func figureWords(text string) []string {
	var words []string
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' || r == '\n' }) {
		n := len(words)
		if n > 0 && (isFraction(w) && endsInDigit(words[n-1]) || strings.HasPrefix(w, "+") || w == "x" || w == "|" || strings.HasSuffix(words[n-1], " x") || strings.HasSuffix(words[n-1], " |")) {
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
