package svg

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/scene"
)

// Inside a page of a browser a drawing brings neither styles nor faces, its words are text, and no name in it is that of another one.
func TestInside(t *testing.T) {
	p := scene.NewPage("Z-1", `walls <&"`, 100, 50)
	g := p.Part(scene.Tag{Class: "wall", ID: "north"})
	in := g.Clipped(scene.Pt(0, 0), scene.Pt(10, 0), scene.Pt(10, 10))
	in.Line(scene.Pt(0, 0), scene.Pt(10, 10), scene.Pen(scene.Walls, 0.5))
	p.Text(scene.Text{At: scene.Pt(5, 20), String: `<script>alert(1)</script>`, Height: 2.5, Layer: scene.Notes})
	one, err := Page(p, Options{Inside: "a"})
	require.NoError(t, err)
	two, err := Page(p, Options{Inside: "b"})
	require.NoError(t, err)
	text := string(one)
	assert.True(t, strings.HasPrefix(text, "<svg "), text[:40])
	for _, never := range []string{"<style", "@font-face", "<script", "style=", "<use", "<?xml"} {
		assert.NotContains(t, text, never)
	}
	assert.Contains(t, text, `viewBox="0 0 100 50"`)
	assert.Contains(t, text, `aria-label="Z-1 walls &lt;&amp;&#34;"`)
	assert.Contains(t, text, "&lt;script&gt;")
	assert.NotEqual(t, names(t, one), names(t, two))
	assert.NoError(t, xml.Unmarshal(one, new(struct{})), "it is well formed")
}

// names are all ids of a drawing.
func names(t *testing.T, data []byte) (list []string) {
	for rest := string(data); ; {
		_, after, ok := strings.Cut(rest, ` id="`)
		if !ok {
			assert.NotEmpty(t, list)
			return list
		}
		id, next, _ := strings.Cut(after, `"`)
		list, rest = append(list, id), next
	}
}
