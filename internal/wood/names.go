package wood

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"flitchlay/internal/spell"
)

// Find is the species with this name: in any case, with its words in any order, however they are joined, so that
// "Oak, white" finds white oak.
func Find(name string) (Species, bool) {
	words := wordsOf(name)
	if len(words) == 0 {
		return Species{}, false
	}
	for _, s := range species {
		for _, other := range s.Names {
			if slices.Equal(words, wordsOf(other)) {
				return s, true
			}
		}
	}
	return Species{}, false
}

// Nearest are the trade names of up to n species that a name not found may have meant, the likeliest first: those that
// share the most words, then those spelled most alike. It is empty where nothing is near.
func Nearest(name string, n int) []string {
	type guess struct {
		name         string
		shared, away int
	}
	words := wordsOf(name)
	spelled := strings.Join(words, " ")
	var guesses []guess
	for _, s := range species {
		best := guess{name: s.Name(), away: math.MaxInt}
		for _, other := range s.Names {
			otherWords := wordsOf(other)
			shared := 0
			for _, word := range words {
				if slices.Contains(otherWords, word) {
					shared++
				}
			}
			best.shared = max(best.shared, shared)
			best.away = min(best.away, spell.Distance(spelled, strings.Join(otherWords, " ")))
		}
		if best.shared > 0 || best.away < (utf8.RuneCountInString(spelled)+1)/2 {
			guesses = append(guesses, best)
		}
	}
	slices.SortStableFunc(guesses, func(a, b guess) int {
		return cmp.Or(cmp.Compare(b.shared, a.shared), cmp.Compare(a.away, b.away))
	})
	var names []string
	for _, g := range guesses[:min(n, len(guesses))] {
		names = append(names, g.name)
	}
	return names
}

// wordsOf are the words of a name, lower case, sorted.
func wordsOf(name string) []string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	slices.Sort(words)
	return words
}
