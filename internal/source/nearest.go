package source

import "strings"

// Nearest is the known word nearest to what was typed, or "" where none is near: with small letters and hyphens as
// underscores the words are equal, or one is made from the other in few steps.
func Nearest(typed string, known []string) string {
	best, least := "", 1+max(1, len([]rune(typed))/3)
	for _, word := range known {
		if d := distance(fold(typed), fold(word)); d < least {
			best, least = word, d
		}
	}
	return best
}

func fold(s string) string {
	return strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(strings.TrimSpace(s)))
}

// distance is the number of steps from one word to the other: a letter put in, left out, changed, or two neighbours
// exchanged.
//
// Source: optimal string alignment, after F. J. Damerau, "A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7 (1964).
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > 100 || len(y) > 100 {
		return 100
	}
	rows := make([][]int, len(x)+1)
	for i := range rows {
		rows[i] = make([]int, len(y)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			change := 1
			if x[i-1] == y[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(x)][len(y)]
}
