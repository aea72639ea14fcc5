package source

import (
	"strings"

	"flitchlay/internal/spell"
)

// Nearest is the known word nearest to what was typed, or "" where none is near: with small letters and hyphens as
// underscores the words are equal, or one is made from the other in few steps.
func Nearest(typed string, known []string) string {
	best, least := "", 1+max(1, len([]rune(typed))/3)
	for _, word := range known {
		if d := spell.Distance(fold(typed), fold(word)); d < least {
			best, least = word, d
		}
	}
	return best
}

func fold(s string) string {
	return strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(strings.TrimSpace(s)))
}
