package submittal

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is asked of several things in the same words is asked once, with the others named; what differs otherwise is asked by itself.
func TestTheSameIsAskedOnce(t *testing.T) {
	deep := func(name string, page string) question {
		return question{"wrap", "Window " + name + " has sides 8 in deep: are they covered? (" + page + ")."}
	}
	assert.Equal(t, []string{
		"Window W1 has sides 8 in deep: are they covered? (Z-201). The same of window W2 and W4.",
		"Which tag?",
		"Window W3 has sides 8 in deep: are they covered? (Z-202).",
		"Door D1 has sides 6 in deep: are they covered? (Z-201).",
		"North wall is 42'-0\" long: is it straight? The same of South wall.",
	}, asked([]question{deep("W1", "Z-201"), deep("W2", "Z-201"), {"", "Which tag?"}, deep("W3", "Z-202"), deep("W4", "Z-201"),
		{"wrap", "Door D1 has sides 6 in deep: are they covered? (Z-201)."},
		{"long", "North wall is 42'-0\" long: is it straight?"}, {"long", "South wall is 42'-0\" long: is it straight?"}}))
}
