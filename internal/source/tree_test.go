package source

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

// checkPlaces reads a text and holds every place against the library: the text of a value's span, read on its own, is
// the value; the text of a key's span is the key; nothing has no place.
func checkPlaces(t *testing.T, body string) {
	root, err := Parse("a.toml", []byte(body))
	require.NoError(t, err)
	require.Zero(t, root.file.lost, "values without a place")
	var want map[string]any
	_, err = toml.Decode(body[root.file.Text.lines[0]:], &want)
	require.NoError(t, err)
	checkTable(t, root, want)
}

func checkTable(t *testing.T, v Value, want map[string]any) {
	require.Equal(t, Table, v.Kind(), v.Path())
	require.Len(t, v.Fields(), len(want), v.Path())
	for _, f := range v.Fields() {
		require.Contains(t, want, f.Name())
		key := f.file.Text.Slice(f.KeySpan())
		var names map[string]any
		_, err := toml.Decode(key+" = 0", &names)
		require.NoError(t, err, "key %q of %s", key, f.Path())
		require.Contains(t, names, f.Name())
		checkValue(t, f, want[f.Name()])
	}
}

func checkValue(t *testing.T, v Value, want any) {
	switch w := want.(type) {
	case map[string]any:
		checkTable(t, v, w)
		return
	case []map[string]any:
		require.Len(t, v.Items(), len(w), v.Path())
		for i, item := range v.Items() {
			checkTable(t, item, w[i])
		}
		return
	case []any:
		require.Len(t, v.Items(), len(w), v.Path())
		for i, item := range v.Items() {
			checkValue(t, item, w[i])
		}
	}
	var alone map[string]any
	_, err := toml.Decode("x = "+v.Raw(), &alone)
	require.NoError(t, err, "%s at %v: %q", v.Path(), v.Span(), v.Raw())
	require.True(t, same(alone["x"], want), "%s: %v, not %v", v.Path(), alone["x"], want)
}

// same compares what the library reads: not-a-number is equal to itself.
func same(a, b any) bool {
	if x, ok := a.(float64); ok {
		y, ok := b.(float64)
		return ok && (x == y || math.IsNaN(x) && math.IsNaN(y))
	}
	if x, ok := a.(time.Time); ok {
		y, ok := b.(time.Time)
		return ok && x.Equal(y)
	}
	if _, ok := a.([]any); ok {
		return fmt.Sprint(a) == fmt.Sprint(b)
	}
	return fmt.Sprint(a) == fmt.Sprint(b)
}
