package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"regexp"
	"sync"
)

// plainStream is a stream that fpdf has written as it is: what stands on a page, and the colours of a picture.
var plainStream = regexp.MustCompile(`^<</Length (\d+)>>\nstream\n`)

// packers compress as fpdf would. Each takes more memory than a page does, and so they are used again.
var packers = sync.Pool{New: func() any {
	z, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic(err) // the level is a known one
	}
	return z
}}

// pack compresses every stream that is not.
func (f *file) pack() {
	for n, o := range f.objects {
		m := plainStream.FindSubmatchIndex(o)
		if m == nil {
			continue
		}
		data := o[m[1] : m[1]+atoi(string(o[m[2]:m[3]]))]
		var packed bytes.Buffer
		z := packers.Get().(*zlib.Writer)
		z.Reset(&packed)
		z.Write(data) // into memory: it cannot fail
		z.Close()
		packers.Put(z)
		f.objects[n] = append(fmt.Appendf(nil, "<</Filter /FlateDecode /Length %d>>\nstream\n%s", packed.Len(), packed.Bytes()), o[m[1]+len(data):]...)
	}
}
