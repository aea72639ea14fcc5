package main

import (
	"html"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// trace goes through all that MuPDF draws of a PDF file, or of the pages named: the name of each step and its values.
func trace(t *testing.T, file string, do func(step string, at map[string]string), pages ...string) {
	t.Helper()
	text, err := exec.Command(effort.Tool(t, "mutool"), append([]string{"draw", "-F", "trace", file}, pages...)...).Output()
	require.NoError(t, err, file)
	steps := 0
	at := map[string]string{}
	for rest := string(text); ; {
		_, tag, found := strings.Cut(rest, "<")
		if !found {
			break
		}
		tag, rest = cutTag(t, tag)
		if tag[0] == '/' || tag[0] == '?' || tag[0] == '!' {
			continue
		}
		clear(at)
		do(tagValues(t, tag, at), at)
		steps++
	}
	require.Positive(t, steps, "%s: something is drawn", file)
}

// cutTag parts a text after the angle that opens a tag: the tag, and what comes after it. An angle may stand in a value.
func cutTag(t *testing.T, text string) (tag, rest string) {
	var quote byte
	for i := range len(text) {
		switch c := text[i]; {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '>' && i > 0:
			return text[:i], text[i+1:]
		}
	}
	t.Fatalf("a tag has no name or no end: %.60s", text)
	return "", ""
}

// tagValues reads a tag: its name, and its values into a map.
func tagValues(t *testing.T, tag string, into map[string]string) (name string) {
	name, rest, _ := strings.Cut(strings.TrimSuffix(tag, "/"), " ")
	for rest = strings.TrimSpace(rest); rest != ""; rest = strings.TrimSpace(rest) {
		key, value, _ := strings.Cut(rest, "=")
		end := -1
		if len(value) > 1 {
			end = strings.IndexByte(value[1:], value[0])
		}
		if end < 0 { // tags come by the hundred thousand: no call of a library for each
			t.Fatalf("a key has no value: %q", tag)
		}
		into[key], rest = html.UnescapeString(value[1:1+end]), value[end+2:]
	}
	return strings.TrimSpace(name)
}

// The values of a trace are read as they are written, with signs of its own kind in them.
func TestTraceIsRead(t *testing.T) {
	at := map[string]string{}
	tag, rest := cutTag(t, `g unicode="&gt;" glyph='a > "b"' x="1.5"/><next/>`)
	assert.Equal(t, "<next/>", rest)
	assert.Equal(t, "g", tagValues(t, tag, at))
	assert.Equal(t, map[string]string{"unicode": ">", "glyph": `a > "b"`, "x": "1.5"}, at)
	assert.Equal(t, "page", tagValues(t, "page", at))
}
