package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
)

// fromLast is a wall of nine sheets, of a flitch that is laid from its high end and another one; text is put after the flitches.
func fromLast(first, second, text string) string {
	return head + "[[flitch]]\nnumber = \"F-1\"\n" + first + "\n" + second + "[[wall]]\nname = \"Long\"\nlength = \"16'\"\nheight = \"8'\"\n" + text
}

func laidNumbers(p *Plan) string {
	var list []string
	for _, s := range p.Runs[0].Sheets {
		list = append(list, fmt.Sprint(s.Flitch, ":", s.Number))
	}
	return strings.ReplaceAll(strings.Join(list, " "), "F-1:", "")
}

// A flitch is laid from its high end: numbers fall with the place, what is damaged is passed over, and kept back is what would have
// been laid last.
func TestFlitchLaidFromItsHighEnd(t *testing.T) {
	second := "[[flitch]]\nnumber = \"F-2\"\nsheets = \"1-20\"\n"
	for _, c := range []struct{ name, first, second, hung, want string }{
		{"from the low end", "sheets = \"1-20\"", "", "", "1 2 3 4 5 6 7 8 9"},
		{"from the high end", "sheets = \"1-20\"\nfrom = \"last\"", "", "", "20 19 18 17 16 15 14 13 12"},
		{"past what is damaged", "sheets = \"1-20\"\ndamaged = [20, 17]\nfrom = \"last\"", "", "", "19 18 16 15 14 13 12 11 10"},
		{"past what was not delivered", "sheets = \"1-10, 14-16\"\nfrom = \"last\"", "", "", "16 15 14 10 9 8 7 6 5"},
		{"spares are those that would come last", "sheets = \"1-11\"\nspare = 2\nfrom = \"last\"", "", "", "11 10 9 8 7 6 5 4 3"},
		{"then the next flitch", "sheets = \"1-4\"\nfrom = \"last\"", second, "", "4 3 2 1 F-2:1 F-2:2 F-2:3 F-2:4 F-2:5"},
		{"then one of that kind", "sheets = \"1-4\"", second + "from = \"last\"\n", "", "1 2 3 4 F-2:20 F-2:19 F-2:18 F-2:17 F-2:16"},
		{"sheets hang", "sheets = \"1-20\"\ndamaged = [18]\nfrom = \"last\"", "", "[[hung]]\nwall = \"Long\"\nsheets = \"20-19\"\nseams = [20, \"43 7/16\"]\n", "20 19 17 16 15 14 13 12 11"},
		{"a list of them", "sheets = \"1-20\"\nfrom = \"last\"", "", "[[hung]]\nwall = \"Long\"\nsheets = [20, 19]\nseams = [20, \"43 7/16\"]\n", "20 19 18 17 16 15 14 13 12"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, laidNumbers(lay(t, fromLast(c.first, c.second, c.hung)))) })
	}
}

// What lacks lacks at the end, and every number is accounted for.
func TestFlitchLaidFromItsHighEndAccounts(t *testing.T) {
	p := lay(t, fromLast("sheets = \"1-7\"\nfrom = \"last\"", "", ""))
	assert.Equal(t, "7 6 5 4 3 2 1 :0 :0", laidNumbers(p))
	assert.Len(t, messages(p, finding.FlitchShort), 1)
	p = lay(t, fromLast("sheets = \"1-12\"\nspare = 1\nfrom = \"last\"", "", ""))
	require.Len(t, p.Left, 1)
	assert.Equal(t, []int{12, 11, 10, 9, 8, 7, 6, 5, 4}, p.Left[0].Laid)
	assert.Equal(t, []int{1}, p.Left[0].Spare)
	assert.Equal(t, []int{2, 3}, p.Left[0].Left)
	assert.Equal(t, "12-4", Numbers(p.Left[0].Laid))
}

func TestNumbersThatFall(t *testing.T) {
	for want, list := range map[string][]int{"1-3": {1, 2, 3}, "3-1": {3, 2, 1}, "2, 1": {2, 1}, "9-7, 4, 5": {9, 8, 7, 4, 5}, "7, 5-3, 1": {7, 5, 4, 3, 1}, "": nil} {
		assert.Equal(t, want, Numbers(list))
	}
}
