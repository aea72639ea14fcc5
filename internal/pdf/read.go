package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/md5"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
)

// ErrForeign says that a PDF file is none that this package wrote, or that another program has put it together anew.
var ErrForeign = errors.New("a PDF file, but none as flitchlay writes it")

// ErrNothing says that a file of ours carries no attachment of that name.
var ErrNothing = errors.New("nothing of that name is attached")

// Most is the largest attachment that is read back.
const Most = 64 << 20

// IsPDF reports whether data begins as a PDF file does.
func IsPDF(data []byte) bool { return bytes.HasPrefix(data, []byte("%PDF-")) }

// Attached reads back a file that Write has attached to a document. What another program has appended since, such as a
// reviewer's marks, stays out of account.
//
// Errors: ErrForeign, ErrNothing, or that the attachment is damaged.
func Attached(data []byte, name string) ([]byte, error) {
	if !IsPDF(data) {
		return nil, ErrForeign
	}
	end := []byte("%%EOF")
	// Whoever appends leaves what was there as it is, so our own end is one of the first; compressed bytes can look like one.
	for from, tries := 0, 0; tries < 64; tries++ {
		at := bytes.Index(data[from:], end)
		if at < 0 {
			break
		}
		from += at + len(end)
		f, root, err := reopen(data[:from])
		if err != nil {
			continue
		}
		return f.attachment(root, name)
	}
	return foreign(data, name)
}

var trailer = regexp.MustCompile(`trailer\n<</Size \d+ /Root (\d+) 0 R /Info (\d+) 0 R /ID `)

// reopen takes apart a finished file and gives the number of its root.
func reopen(data []byte) (f *file, root int, err error) {
	all := trailer.FindAllSubmatch(data, -1)
	if len(all) == 0 {
		return nil, 0, ErrForeign
	}
	if f, err = parse(data); err != nil {
		return nil, 0, err
	}
	last := all[len(all)-1]
	root, info := f.object(last[1]), f.object(last[2])
	if root == 0 || info == 0 || !bytes.Contains(f.objects[info], []byte("/Producer (flitchlay)")) {
		return nil, 0, ErrForeign
	}
	return f, root, nil
}

// object is the number of an object that is there, 0 for any other.
func (f *file) object(digits []byte) int {
	n, err := strconv.Atoi(string(digits))
	if err != nil || n < 1 || n >= len(f.objects) {
		return 0
	}
	return n
}

var (
	namesTree  = regexp.MustCompile(`/Names <</EmbeddedFiles (\d+) 0 R(?: /Dests \d+ 0 R)?>>`)
	nameEntry  = regexp.MustCompile(`\(\d{4,6}\) (\d+) 0 R`)
	fileStream = regexp.MustCompile(`/EF <</F (\d+) 0 R`)
	streamHead = regexp.MustCompile(`(?s)^<</Type /EmbeddedFile.*?/Params <</Size (\d+) .*?/CheckSum <([0-9a-f]{32})>>>>>\nstream\n`)
)

// attachment follows the file's own references from the root to the bytes attached under a name.
func (f *file) attachment(root int, name string) ([]byte, error) {
	tree := namesTree.FindSubmatch(f.objects[root])
	if tree == nil {
		return nil, ErrNothing
	}
	for _, entry := range nameEntry.FindAllSubmatch(f.objects[f.object(tree[1])], -1) {
		spec := f.objects[f.object(entry[1])]
		if !bytes.Contains(spec, []byte("/UF "+phrase(name)+" ")) {
			continue
		}
		to := fileStream.FindSubmatch(spec)
		if to == nil {
			return nil, fmt.Errorf("the attachment %s leads nowhere", name)
		}
		data, err := inflate(f.objects[f.object(to[1])])
		if err != nil {
			return nil, fmt.Errorf("the attachment %s is damaged: %w", name, err)
		}
		return data, nil
	}
	return nil, ErrNothing
}

// inflate gives the bytes of an attached file and holds them to their length and sum.
func inflate(stream []byte) ([]byte, error) {
	head := streamHead.FindSubmatchIndex(stream)
	if head == nil {
		return nil, fmt.Errorf("it is no stream")
	}
	size, err := strconv.Atoi(string(stream[head[2]:head[3]]))
	if err != nil || size > Most {
		return nil, fmt.Errorf("it is said to be %s bytes long", stream[head[2]:head[3]])
	}
	z, err := zlib.NewReader(bytes.NewReader(stream[head[1]:]))
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(io.LimitReader(z, int64(size)+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) != size:
		return nil, fmt.Errorf("it is not %d bytes long", size)
	case fmt.Sprintf("%x", md5.Sum(data)) != string(stream[head[4]:head[5]]):
		return nil, fmt.Errorf("its sum is another one")
	}
	return data, nil
}
