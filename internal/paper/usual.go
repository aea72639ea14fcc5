package paper

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// usual is what a key is where the file does not give it: the one figure is that which Schema documents.
func usual(v source.Value) string {
	k, _ := Schema.Key(v)
	return k.Default
}

// truth is true or false.
func truth(v source.Value) bool { return v.Bool(usual(v) == "true") }

// usualSize is usual of a length in millimetres; 0 where there is none.
func usualSize(v source.Value) float64 {
	text := usual(v)
	if text == "" {
		return 0
	}
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("paper: %s: %v", v.Path(), err))
	}
	return mm
}

// usualScales is usual of a list of whole numbers.
func usualScales(v source.Value) []int64 {
	var list []int64
	for text := range strings.SplitSeq(strings.Trim(usual(v), "[]"), ",") {
		n, err := strconv.ParseInt(strings.TrimSpace(text), 10, 64)
		if err != nil {
			panic(fmt.Sprintf("paper: %s: %v", v.Path(), err))
		}
		list = append(list, n)
	}
	return list
}
