package font

import (
	"slices"
	"strings"
	"unicode"
)

// Replacement is drawn in place of a rune that the faces cannot letter: a reader sees that something is missing.
const Replacement = '\uFFFD'

// Missing returns the runes of a text that cannot be lettered, each once, ascending. Controls and invisible format runes are not among
// them: Clean takes those out without loss.
func Missing(s string) []rune {
	var out []rune
	for _, r := range s {
		if !covered(r) && !unseen(r) && !unicode.IsSpace(r) && !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	slices.Sort(out)
	return out
}

// Clean returns a text as it is lettered: on one line, without invisible runes, with the replacement mark for every rune that has no
// glyph in both faces or lies above U+FFFF, and for bytes that are no UTF-8.
func Clean(s string) string {
	if plain(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\u00A0' || r == '\u202F':
			return r // keep what must not break; both have a glyph of their own width
		case unicode.IsSpace(r) || unicode.IsControl(r):
			return ' '
		case unseen(r):
			return -1
		case !covered(r):
			return Replacement
		}
		return r
	}, s)
}

// plain is the short way for what nearly all text is.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// covered says whether both faces have a glyph.
func covered(r rune) bool { return Regular.index(r) != 0 && Bold.index(r) != 0 }

// unseen says whether a rune has no ink and only steers how others are set: joiners, direction marks, soft hyphens, selectors.
func unseen(r rune) bool {
	return unicode.Is(unicode.Cf, r) || unicode.IsControl(r) || unicode.Is(unicode.Variation_Selector, r)
}
