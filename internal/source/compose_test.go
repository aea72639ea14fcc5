package source

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A mistake in a text that was put together is told where it comes from, also through two texts; words that stand for something have
// its place.
func TestComposedTextsTellWhereTheyComeFrom(t *testing.T) {
	a, b := NewText("a.toml", []byte("[one]\nx = 1\ny = 2\n")), NewText("b.toml", []byte("z = 3\n"))
	all := Compose("all.toml", []Piece{{From: a, Span: Span{0, 12}}, {From: b, Span: Span{0, 6}}, {Words: "w = 4\n", From: b, Span: Span{4, 5}}, {From: a, Span: Span{12, 18}}})
	assert.Equal(t, "[one]\nx = 1\nz = 3\nw = 4\ny = 2\n", all.Body())
	again := Compose("again.toml", []Piece{{From: all, Span: Span{0, len(all.Body())}}})
	for _, text := range []*Text{all, again} {
		root, err := ParseText(text)
		require.NoError(t, err)
		one := root.Get("one")
		for key, want := range map[string]string{"x": "a.toml:2:5: bad x\n  x = 1\n      ^", "z": "b.toml:1:5: bad z\n  z = 3\n      ^", "w": "b.toml:1:5: bad w\n  z = 3\n      ^", "y": "a.toml:3:5: bad y\n  y = 2\n      ^"} {
			found := &Mistakes{Text: text}
			found.Add(one.Get(key).Span(), "", "bad %s", key)
			assert.Equal(t, want, found.Error(), key)
		}
	}
	assert.True(t, all.Composed())
	assert.False(t, a.Composed())
}
