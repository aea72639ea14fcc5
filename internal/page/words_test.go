package page

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every word of the screen's table is said somewhere, by its key or by the beginning of one that is put together, and no key is said that
// the table lacks.
func TestWordsOfTheScreen(t *testing.T) {
	var code strings.Builder
	for _, root := range []string{".", "../view"} {
		require.NoError(t, filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(name, "_test.go") || filepath.Base(name) == "words.go" {
				return err
			}
			text, err := os.ReadFile(name)
			code.Write(text)
			return err
		}))
	}
	words, err := os.ReadFile("words.go")
	require.NoError(t, err)
	_, after, _ := strings.Cut(string(words), "mustKeys are")
	text := code.String() + after
	for key := range said {
		stem, _, _ := strings.Cut(key, "_")
		used := strings.Contains(text, `"`+key+`"`) || strings.Contains(text, `"`+stem+`_"`) || regexp.MustCompile(`\.Level|say\(f\.level\)`).MatchString(text) && strings.Contains(" must should ask note ", " "+key+" ")
		assert.True(t, used, "nobody says %q", key)
	}
	for _, find := range []string{`\bsay\("([a-z_0-9]+)"`, `\bWord\("([a-z_0-9]+)"`, `\{\{word "([a-z_0-9]+)"`, `\brow\("([a-z_0-9]+)"`, `\bcell\("([a-z_0-9]+)"`} {
		found := regexp.MustCompile(find).FindAllStringSubmatch(text, -1)
		require.NotEmpty(t, found, find)
		for _, m := range found {
			if !strings.HasSuffix(m[1], "_") {
				assert.Contains(t, said, m[1])
			}
		}
	}
}
