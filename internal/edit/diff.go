package edit

import "strings"

// Line is a line that falls away or comes.
type Line struct {
	Number int    `json:"number"` // in the text in which it stands
	Gone   bool   `json:"gone"`
	Text   string `json:"text"`
}

// Lines are the lines in which two texts differ, in their order.
func Lines(before, after []byte) []Line {
	a, b := cut(before), cut(after)
	start := 0
	for start < len(a) && start < len(b) && a[start] == b[start] {
		start++
	}
	last := 0
	for last < len(a)-start && last < len(b)-start && a[len(a)-1-last] == b[len(b)-1-last] {
		last++
	}
	x, y := a[start:len(a)-last], b[start:len(b)-last]
	// common[i][j] is how many lines the rests from i and j have in common
	common := make([][]int, len(x)+1)
	for i := range common {
		common[i] = make([]int, len(y)+1)
	}
	for i := len(x) - 1; i >= 0; i-- {
		for j := len(y) - 1; j >= 0; j-- {
			if common[i][j] = max(common[i+1][j], common[i][j+1]); x[i] == y[j] {
				common[i][j] = common[i+1][j+1] + 1
			}
		}
	}
	list := []Line{}
	for i, j := 0, 0; i < len(x) || j < len(y); {
		switch {
		case i < len(x) && j < len(y) && x[i] == y[j]:
			i, j = i+1, j+1
		case j == len(y) || i < len(x) && common[i+1][j] >= common[i][j+1]:
			list = append(list, Line{start + i + 1, true, x[i]})
			i++
		default:
			list = append(list, Line{start + j + 1, false, y[j]})
			j++
		}
	}
	return list
}

func cut(text []byte) []string {
	return strings.Split(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n")
}
