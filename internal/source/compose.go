package source

import (
	"sort"
	"strings"
)

// Piece is a stretch of a text that was put together: as it stands in another text, or words that stand for something in one.
type Piece struct {
	Words string // what is written; "" for what stands at Span itself
	From  *Text  // where a mistake in it is told
	Span  Span   // of From: what is taken, or what the words stand for
}

// origin is a piece, and where it begins in the text that was put together.
type origin struct {
	Piece
	at int
}

// Compose puts a text together from pieces of others. What is wrong in it is told where it comes from: in the file in which it stands,
// with that file's line.
func Compose(name string, pieces []Piece) *Text {
	var b strings.Builder
	var list []origin
	for _, p := range pieces {
		list = append(list, origin{p, b.Len()})
		if p.Words != "" {
			b.WriteString(p.Words)
		} else {
			b.WriteString(p.From.Slice(p.Span))
		}
	}
	t := NewText(name, []byte(b.String()))
	t.origins = list
	return t
}

// Body is the whole text.
func (t *Text) Body() string { return t.body }

// Composed reports whether the text was put together.
func (t *Text) Composed() bool { return len(t.origins) > 0 }

// Home is the text from which a stretch comes, and where it stands there; the text itself where it was not put together.
func (t *Text) Home(s Span) (*Text, Span) {
	if len(t.origins) == 0 {
		return t, s
	}
	i := sort.Search(len(t.origins), func(i int) bool { return t.origins[i].at > s.Start }) - 1
	o := t.origins[max(i, 0)]
	if o.Words != "" {
		return o.From.Home(o.Span)
	}
	in := Span{o.Span.Start + s.Start - o.at, o.Span.Start + s.End - o.at}
	in.End = max(in.Start, min(in.End, o.Span.End))
	return o.From.Home(in)
}
