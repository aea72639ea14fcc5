// Package spell tells how far a word as typed is from a word that is known.
//
// Units: steps, each of which puts a letter in, leaves one out, changes one, or exchanges two neighbours.
//
// Order: nothing here sorts.
//
// Not here: which words are known, and from how many steps on one is too far (packages source and wood).
package spell

// longest is the length in letters from which words are not compared: nobody mistypes one, and the work grows with the
// square.
const longest = 100

// Distance is the least number of steps from one word to the other. Where one is longer than 100 letters it is the
// length of the longer, which is never too few.
//
// Source: optimal string alignment, after F. J. Damerau, "A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7 (1964).
func Distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > longest || len(y) > longest {
		return max(len(x), len(y))
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
