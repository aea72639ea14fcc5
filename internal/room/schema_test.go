package room

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/source"
)

// compiled is the schema of room files as a library of others reads it.
func compiled(t *testing.T) *jsonschema.Schema {
	text, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema.JSON("room", "project", "veneer", "wall")))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("room.json", text))
	s, err := c.Compile("room.json")
	require.NoError(t, err)
	return s
}

// plainJSON is a TOML file as an editor hands it to a schema: dates are texts.
func plainJSON(t *testing.T, text string) (any, bool) {
	var data map[string]any
	if _, err := toml.Decode(text, &data); err != nil {
		return nil, false
	}
	var dates func(v any) any
	dates = func(v any) any {
		switch v := v.(type) {
		case map[string]any:
			for k := range v {
				v[k] = dates(v[k])
			}
		case []map[string]any:
			for i := range v {
				dates(v[i])
			}
		case []any:
			for i := range v {
				v[i] = dates(v[i])
			}
		case time.Time:
			if v.Year() == 0 {
				return v.Format(time.TimeOnly)
			}
			return v.Format(time.DateOnly)
		}
		return v
	}
	text2, err := json.Marshal(dates(data))
	if err != nil {
		return nil, false // infinite, or no number
	}
	out, err := jsonschema.UnmarshalJSON(bytes.NewReader(text2))
	require.NoError(t, err)
	return out, true
}

// Every sample, every starter as it is written, and the file with every key pass the schema.
func TestSchemaPassesWhatIsRead(t *testing.T) {
	s := compiled(t)
	for _, pattern := range []string{"../../samples/*.toml", "../../templates/rooms/*.toml", "testdata/every-key.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			v, ok := plainJSON(t, string(text))
			require.True(t, ok)
			assert.NoError(t, s.Validate(v), f)
		}
	}
	v, _ := plainJSON(t, quiet)
	require.NoError(t, s.Validate(v))
	for _, wrong := range []string{strings.Replace(quiet, "title", "titel", 1), strings.Replace(quiet, `"12'"`, "true", 1), strings.Replace(quiet, `left_end = "trim"`, `left_end = "trimm"`, 1),
		strings.Replace(quiet, "height = \"8'\"\n", "", 1), strings.Replace(quiet, "2026-03-01", `"1 March"`, 1)} {
		v, ok := plainJSON(t, wrong)
		require.True(t, ok)
		assert.Error(t, s.Validate(v), wrong)
		_, err := Decode("r", []byte(wrong))
		assert.Error(t, err)
	}
}

// A starter has every key once, as it is used or as a comment, and every comment of a key can be taken away.
func TestStartersNameEveryKeyOnce(t *testing.T) {
	files, err := filepath.Glob("../../templates/rooms/*.toml")
	require.NoError(t, err)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		whole := Schema.Complete(string(text))
		kept, left := strings.Split(strings.TrimSpace(string(text)), "\n"), strings.Split(whole, "\n")
		for _, line := range left {
			if len(kept) > 0 && line == kept[0] {
				kept = kept[1:]
			} else {
				assert.True(t, line == "" || strings.HasPrefix(line, "#"), "only comments are added: %s", line)
			}
		}
		assert.Empty(t, kept, "every line of the starter stands there, in its order")
		was, err := Decode("r", text)
		require.NoError(t, err)
		is, err := Decode("r", []byte(whole))
		require.NoError(t, err)
		was.src, is.src = source.Value{}, source.Value{}
		assert.Equal(t, len(was.Walls), len(is.Walls))
		assert.Equal(t, was.Rules, is.Rules)
		for _, table := range Schema {
			for _, k := range table.Keys {
				n := strings.Count(whole, "\n# "+k.Name+" = ")
				used := strings.Contains(whole, "\n"+k.Name+" ") || strings.Contains(whole, " "+k.Name+" ")
				assert.True(t, n > 0 || used, "%s: %s of %s", f, k.Name, table.Path)
			}
		}
		for _, line := range strings.Split(whole, "\n") {
			if key, ok := strings.CutPrefix(line, "# "); ok && strings.Contains(key, " = ") && !strings.Contains(strings.SplitN(key, " = ", 2)[0], " ") {
				var one map[string]any
				_, err := toml.Decode(key, &one)
				assert.NoError(t, err, line)
			}
		}
	}
}
