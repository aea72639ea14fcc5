package pdf

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What was attached comes back as it was, whatever stands in it and whatever it is called.
func TestAttachedComesBack(t *testing.T) {
	file := write(t, sample())
	for _, a := range sample().Attachments {
		got, err := Attached(file, a.Name)
		require.NoError(t, err, a.Name)
		assert.Equal(t, a.Data, got, a.Name)
	}
	_, err := Attached(file, "no such file")
	assert.ErrorIs(t, err, ErrNothing)
	bare := sample()
	bare.Attachments = nil
	_, err = Attached(write(t, bare), "room.toml")
	assert.ErrorIs(t, err, ErrNothing)
}

// A reviewer's program appends its marks and leaves what was there: ISO 32000-1, 7.5.6.
func TestAttachedComesBackFromAStampedFile(t *testing.T) {
	file := append(write(t, sample()), "9 0 obj\n<</Type /Annot>>\nendobj\nxref\n0 1\n0000000000 65535 f \ntrailer\n<</Size 10 /Prev 17>>\nstartxref\n99\n%%EOF\n"...)
	got, err := Attached(file, "room.toml")
	require.NoError(t, err)
	assert.Equal(t, sample().Attachments[0].Data, got)
}

// Files of others are refused, also those that another program has made of ours.
func TestForeignFilesAreRefused(t *testing.T) {
	raw, _, err := draw(sample(), true)
	require.NoError(t, err)
	for why, data := range map[string][]byte{
		"no PDF file at all":        []byte("units = \"in\"\n"),
		"a head and nothing else":   []byte("%PDF-1.7\n"),
		"the drawing library alone": raw,
		"cut off":                   write(t, sample())[:9000],
	} {
		_, err := Attached(data, "room.toml")
		assert.ErrorIs(t, err, ErrForeign, why)
	}
}

// A file that another program has saved anew still gives back what was attached: its objects packed into streams, made ready for the
// web, spread out, some of its pages taken.
func TestAttachedComesBackFromAFileSavedAnew(t *testing.T) {
	file := write(t, sample())
	for _, how := range [][]string{{"--object-streams=generate"}, {"--linearize"}, {"--qdf", "--object-streams=disable"}, {"--object-streams=generate", "--recompress-flate"}} {
		out := filepath.Join(t.TempDir(), "anew.pdf")
		run(t, file, "qpdf", append(how, "FILE", out)...)
		anew, err := os.ReadFile(out)
		require.NoError(t, err)
		for _, a := range sample().Attachments {
			got, err := Attached(anew, a.Name)
			require.NoError(t, err, "%v: %s", how, a.Name)
			assert.Equal(t, a.Data, got, how)
		}
		_, err = Attached(anew, "no such file")
		assert.ErrorIs(t, err, ErrNothing)
	}
}

// A byte that was changed within the attachment is noticed.
func TestDamagedAttachmentIsNoticed(t *testing.T) {
	file := write(t, sample())
	at := bytes.Index(file, []byte("/Type /EmbeddedFile"))
	require.Positive(t, at)
	at += bytes.Index(file[at:], []byte("stream\n")) + len("stream\n") + 6
	file[at] ^= 0x10
	_, err := Attached(file, "room.toml")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "damaged")
}

// Whatever is read, the answer is the attachment or an error.
func FuzzAttached(f *testing.F) {
	file, err := Write(sample())
	require.NoError(f, err)
	f.Add(file)
	f.Add([]byte("%PDF-1.7\ntrailer\n<</Size 1 /Root 1 0 R /Info 1 0 R /ID [<> <>]>>\nstartxref\n9\n%%EOF"))
	f.Add([]byte("%PDF-1.7\nxref\n0 2\n0000000000 65535 f \n-000000001 00000 n \nstartxref\n9\n%%EOF"))
	want := sample().Attachments[0].Data
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := Attached(data, "room.toml")
		if err == nil && len(got) > Most {
			t.Errorf("%d bytes", len(got))
		}
		// one byte of a file of ours changed: what comes back is whole, or nothing does
		if len(data) > 8 {
			changed := bytes.Clone(file)
			at := (int(data[0])<<16 | int(data[1])<<8 | int(data[2])) % len(changed)
			changed[at] = data[3]
			if got, err := Attached(changed, "room.toml"); err == nil {
				assert.Equal(t, want, got)
			}
		}
	})
}

// A document without a date gives a file without one, of the whole and of what it carries.
func TestNoDateIsMadeUp(t *testing.T) {
	d := sample()
	require.Contains(t, string(write(t, d)), "/CreationDate (D:20260414")
	d.Date = time.Time{}
	file := write(t, d)
	assert.NotContains(t, string(file), "Date (D:")
	got, err := Attached(file, d.Attachments[0].Name)
	require.NoError(t, err)
	assert.Equal(t, d.Attachments[0].Data, got)
}
