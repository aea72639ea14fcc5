package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strconv"
	"unicode/utf16"
)

// file is a PDF file taken apart into its objects: what fpdf writes is flat, with one table of offsets.
type file struct {
	objects [][]byte // by number, from 1; what stands between "obj" and "endobj"
}

// parse takes apart a file written by fpdf.
//
// Errors: anything that fpdf would not write.
func parse(raw []byte) (*file, error) {
	at := bytes.LastIndex(raw, []byte("startxref\n"))
	if at < 0 {
		return nil, fmt.Errorf("no startxref")
	}
	end := bytes.IndexByte(raw[at+10:], '\n')
	if end < 0 {
		return nil, fmt.Errorf("no end of startxref")
	}
	from, err := strconv.Atoi(string(raw[at+10 : at+10+end]))
	if err != nil || from < 0 || from >= len(raw) {
		return nil, fmt.Errorf("startxref points nowhere")
	}
	var count int
	if _, err := fmt.Sscanf(string(raw[from:min(from+40, len(raw))]), "xref\n0 %d\n", &count); err != nil || count < 1 {
		return nil, fmt.Errorf("no table of objects: %v", err)
	}
	rows := raw[min(from+len(fmt.Sprintf("xref\n0 %d\n", count)), len(raw)):]
	if count > len(raw) {
		return nil, fmt.Errorf("table of objects longer than the file")
	}
	f := &file{objects: make([][]byte, count)}
	for n := 1; n < count; n++ {
		if len(rows) < 20*(n+1) {
			return nil, fmt.Errorf("table of objects ends early")
		}
		offset, err := strconv.Atoi(string(rows[20*n : 20*n+10]))
		head := fmt.Sprintf("%d 0 obj\n", n)
		if err != nil || offset < 0 || offset > len(raw) || !bytes.HasPrefix(raw[offset:], []byte(head)) {
			return nil, fmt.Errorf("object %d is not where the table says", n)
		}
		body := raw[offset+len(head):]
		size, err := extent(body)
		if err != nil {
			return nil, fmt.Errorf("object %d: %w", n, err)
		}
		f.objects[n] = body[:size]
	}
	return f, nil
}

// extent returns how long an object is. A stream is stepped over by its length: any bytes can stand in it.
func extent(body []byte) (int, error) {
	end := bytes.Index(body, []byte("endobj"))
	stream := bytes.Index(body, []byte("stream\n"))
	if end < 0 {
		return 0, fmt.Errorf("no end")
	}
	if stream < 0 || stream > end {
		return end, nil
	}
	at := bytes.LastIndex(body[:stream], []byte("/Length "))
	if at < 0 {
		return 0, fmt.Errorf("a stream without length")
	}
	var length int
	if _, err := fmt.Sscanf(string(body[at:stream]), "/Length %d", &length); err != nil {
		return 0, fmt.Errorf("length of stream: %w", err)
	}
	after := stream + len("stream\n") + length
	if length < 0 || length > len(body) || after > len(body) {
		return 0, fmt.Errorf("a stream longer than the file")
	}
	end = bytes.Index(body[after:], []byte("endobj"))
	if end < 0 {
		return 0, fmt.Errorf("no end after stream")
	}
	return after + end, nil
}

// add appends an object and returns its number.
func (f *file) add(format string, a ...any) int {
	f.objects = append(f.objects, fmt.Appendf(nil, format+"\n", a...))
	return len(f.objects) - 1
}

// extend puts entries at the end of an object's dictionary.
func (f *file) extend(n int, entries string) {
	at := bytes.LastIndex(f.objects[n], []byte(">>"))
	f.objects[n] = append(append(bytes.Clone(f.objects[n][:at]), entries...), f.objects[n][at:]...)
}

// find returns the numbers of the objects that begin so, ascending.
func (f *file) find(prefix string) []int {
	var out []int
	for n, o := range f.objects {
		if bytes.HasPrefix(o, []byte(prefix)) {
			out = append(out, n)
		}
	}
	return out
}

// write puts the file together again.
func (f *file) write(root, info int) []byte {
	var out bytes.Buffer
	// The second line tells programs that the file is not text: ISO 32000-1, 7.5.2.
	out.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	offsets := make([]int, len(f.objects))
	for n := 1; n < len(f.objects); n++ {
		offsets[n] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n", n)
		out.Write(f.objects[n])
		out.WriteString("endobj\n")
	}
	sum := sha256.Sum256(out.Bytes())
	xref := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(f.objects))
	for n := 1; n < len(f.objects); n++ {
		fmt.Fprintf(&out, "%010d 00000 n \n", offsets[n])
	}
	fmt.Fprintf(&out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(f.objects), root, info, sum[:16], sum[:16], xref)
	return out.Bytes()
}

// phrase writes a text string: plain where it is ASCII, else UTF-16 in hexadecimal.
func phrase(s string) string {
	plain := true
	for i := range len(s) {
		plain = plain && s[i] >= ' ' && s[i] <= '~'
	}
	var b bytes.Buffer
	if !plain {
		b.WriteString("<FEFF")
		for _, c := range utf16.Encode([]rune(s)) {
			fmt.Fprintf(&b, "%04X", c)
		}
		b.WriteByte('>')
		return b.String()
	}
	b.WriteByte('(')
	for i := range len(s) {
		if s[i] == '(' || s[i] == ')' || s[i] == '\\' {
			b.WriteByte('\\')
		}
		b.WriteByte(s[i])
	}
	b.WriteByte(')')
	return b.String()
}

// number prints a number of the file: up to ten decimals, no exponent.
func number(v float64) string {
	s := strconv.FormatFloat(v, 'f', 10, 64)
	i := len(s)
	for s[i-1] == '0' {
		i--
	}
	if s[i-1] == '.' {
		i--
	}
	if s = s[:i]; s == "-0" {
		return "0"
	}
	return s
}
