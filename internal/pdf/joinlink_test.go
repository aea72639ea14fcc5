package pdf

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/scene"
)

// A link leads to a page of another part of a joined file: every name leads to the page that has it, and the names rise, as readers
// want them.
func TestLinksLeadThroughAJoinedFile(t *testing.T) {
	var out bytes.Buffer
	j := NewJoiner(&out)
	labels := func(room string, d *scene.Document) (list []string) {
		for _, p := range d.Pages {
			list = append(list, room+"."+p.Name)
		}
		return list
	}
	var rooms []string
	for _, room := range []string{"12", "7"} {
		d := sample()
		rooms = append(rooms, labels(room, d)...)
		require.NoError(t, j.Add(write(t, d), labels(room, d), room, false))
	}
	cover := sample()
	cover.Elsewhere = rooms
	cover.Pages[0].Link(scene.BoxAt(1, 1, 10, 10), rooms[len(rooms)-1])
	require.NoError(t, j.Add(write(t, cover), labels("0", cover), "Cover", true))
	require.NoError(t, j.Close(&scene.Document{Title: "All"}))
	f, err := parse(out.Bytes())
	require.NoError(t, err)

	pages := 0
	for n, o := range f.objects {
		head, _, _ := bytes.Cut(o, []byte("stream\n"))
		if n == joinedPages || !bytes.Contains(head, []byte("/Type /Page\n")) {
			continue
		}
		pages++
	}
	assert.Equal(t, 3*len(cover.Pages), pages)
	var names string
	for _, n := range f.find("<</Names [<") {
		names = string(f.objects[n])
	}
	last := -1
	for _, label := range append(append(labels("0", cover), labels("12", cover)...), labels("7", cover)...) {
		at := strings.Index(names, destination(label)+" [")
		require.GreaterOrEqual(t, at, 0, label)
		assert.Greater(t, at, last, "%s rises", label)
		last = at
	}
	found := false
	for _, n := range f.find("<</Type /Annot") {
		found = found || strings.Contains(string(f.objects[n]), "/Dest "+destination(rooms[len(rooms)-1]))
	}
	assert.True(t, found, "the cover leads to it")
	cover.Elsewhere = nil
	_, err = Write(cover)
	assert.Error(t, err, "a link to a page that nobody has")
}
