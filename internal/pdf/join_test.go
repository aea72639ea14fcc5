package pdf

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/scene"
)

// joinedSample is two documents in one, and one before them.
func joinedSample(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	j := NewJoiner(&out)
	for i, title := range []string{"Second (part", "Third", "First"} {
		d := sample()
		d.Title = title
		var labels []string
		for _, p := range d.Pages {
			labels = append(labels, title[:1]+"."+p.Name)
		}
		require.NoError(t, j.Add(write(t, d), labels, title, i == 2))
	}
	require.NoError(t, j.Close(&scene.Document{Title: "All", Attachments: []scene.Attachment{{Name: "job.toml", Data: []byte("[job]\n")}}}))
	return out.Bytes()
}

// A joined file has the pages, outlines and attachments of its parts, in the order of the parts, and each layer once.
func TestJoinedPartsAreOneFile(t *testing.T) {
	data := joinedSample(t)
	f, err := parse(data)
	require.NoError(t, err)
	pages := len(sample().Pages)
	root := string(f.objects[joinedPages])
	assert.Contains(t, root, "/Count 9"[:7]+string(rune('0'+3*pages)))
	layers := map[string]bool{}
	for _, n := range f.find("<</Type /OCG") {
		assert.False(t, layers[string(f.objects[n])], "each layer once")
		layers[string(f.objects[n])] = true
	}
	for n, o := range f.objects[1:] { // every reference leads somewhere
		head, _, _ := bytes.Cut(o, []byte("stream\n"))
		for _, m := range reference.FindAllSubmatch(head, -1) {
			to := atoi(string(m[1]))
			require.Positive(t, to, "object %d: %s", n+1, head)
			require.Less(t, to, len(f.objects), "object %d", n+1)
			require.NotEmpty(t, f.objects[to])
		}
	}
	catalog := string(f.objects[f.find("<<\n/Type /Catalog")[0]])
	assert.Less(t, strings.Index(catalog, "(F."), strings.Index(catalog, "(S."), "what was put before the others stands before them")
	text, err := Attached(data, "job.toml")
	require.NoError(t, err)
	assert.Equal(t, "[job]\n", string(text))
	assert.Equal(t, data, joinedSample(t), "same input, same bytes")
}

// Another program finds nothing wrong with it, and the pages in their order.
func TestJoinedFileIsSound(t *testing.T) {
	data := joinedSample(t)
	assert.Contains(t, run(t, data, "qpdf", "--check", "FILE"), "No syntax or stream encoding errors")
	assert.Regexp(t, `Pages: +\d+`, run(t, data, "pdfinfo", "FILE"))
}
