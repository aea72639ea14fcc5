package layout

import (
	"strconv"
	"strings"
)

// Numbers prints sheet numbers as people write them: 1-6, 8, 10-24, and 24-10 where they fall.
func Numbers(list []int) string { return Ranges(list, "-") }

// Ranges is Numbers with another word between the ends of a range.
func Ranges(list []int, to string) string {
	var parts []string
	for i := 0; i < len(list); {
		j, step := i, 1
		if i+1 < len(list) && list[i+1] == list[i]-1 {
			step = -1
		}
		for j+1 < len(list) && list[j+1] == list[j]+step {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, strconv.Itoa(list[i]))
		case j == i+1:
			parts = append(parts, strconv.Itoa(list[i]), strconv.Itoa(list[j]))
		default:
			parts = append(parts, strconv.Itoa(list[i])+to+strconv.Itoa(list[j]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}
