package source

import "time"

// Kind is what a value is in TOML.
type Kind int

// The kinds of values. Absent is the kind of what is not in the file.
const (
	Absent Kind = iota
	String
	Integer
	Float
	Boolean
	Date // also a time, and both
	Array
	Table
)

// String names a kind as messages do.
func (k Kind) String() string {
	return [...]string{"nothing", "a text", "a whole number", "a decimal number", "true or false", "a date", "a list", "a table"}[k]
}

// node is a table, an array or a value and where it stands.
//
// Shape: of a table opened by a header, key and value are the last name of the header; of an item of an array without
// one both are the item.
type node struct {
	key, value Span
	kind       Kind
	names      []string // of a table's fields, in file order
	fields     map[string]*node
	items      []*node
	data       any
}

func (n *node) set(name string, field *node) {
	if n.fields == nil {
		n.fields = map[string]*node{}
	}
	if n.fields[name] == nil {
		n.names = append(n.names, name)
	}
	n.fields[name] = field
}

// child is the field of that name, made as a table where there is none.
func (n *node) child(p part) *node {
	if f := n.fields[p.name]; f != nil {
		return f
	}
	f := &node{kind: Table, key: p.at, value: p.at}
	n.set(p.name, f)
	return f
}

// last is what a header goes on in: the last item of an array of tables, else the node itself.
func (n *node) last() *node {
	if n.kind == Array && len(n.items) > 0 {
		return n.items[len(n.items)-1]
	}
	return n
}

// attach puts the library's values into the tree of places. It counts values that the scanner found no place for;
// they get the place of what holds them, so that a message is still printed.
func attach(n *node, data any) (lost int) {
	switch v := data.(type) {
	case map[string]any:
		n.kind = Table
		for name, value := range v {
			f := n.fields[name]
			if f == nil {
				lost++
				f = &node{key: n.key, value: n.value}
				n.set(name, f)
			}
			lost += attach(f, value)
		}
	case []map[string]any:
		lost += attachItems(n, len(v), func(i int) any { return v[i] })
	case []any:
		lost += attachItems(n, len(v), func(i int) any { return v[i] })
	case string:
		n.kind, n.data = String, v
	case int64:
		n.kind, n.data = Integer, v
	case float64:
		n.kind, n.data = Float, v
	case bool:
		n.kind, n.data = Boolean, v
	case time.Time:
		n.kind, n.data = Date, v
	}
	return lost
}

func attachItems(n *node, count int, item func(int) any) (lost int) {
	n.kind = Array
	for len(n.items) < count {
		lost++
		n.items = append(n.items, &node{key: n.key, value: n.value})
	}
	for i := range count {
		lost += attach(n.items[i], item(i))
	}
	return lost
}
