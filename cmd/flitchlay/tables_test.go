package main

import (
	"go/ast"
	"go/token"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	tables "flitchlay/internal/words"
)

// keyed is a key of a table of words as code writes it.
var keyed = regexp.MustCompile(`^[a-z]+\.[a-z0-9_]+$`)

// said visits what a file says by key: the call, the key, and what is given besides.
func (f goFile) said(visit func(call *ast.CallExpr, key string, given int)) {
	ast.Inspect(f.tree, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return true
		}
		by, ok := call.Fun.(*ast.SelectorExpr)
		if !ok || by.Sel.Name != "Say" && by.Sel.Name != "Both" {
			return true
		}
		if key, ok := literal(call.Args[0]); ok && keyed.MatchString(key) {
			visit(call, key, len(call.Args)-1)
		}
		return true
	})
}

// literal is the text of a literal of code.
func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

// Every key that code says stands in the English table, and is given as much as its text has places; every key of the table
// stands in code, or is a word of a section that code asks for words. So no page can lack a text while it is drawn.
func TestWordsOfTables(t *testing.T) {
	table := tables.English()
	used := map[string]bool{}
	sections := map[string]bool{}
	for _, f := range goFiles(t) {
		if f.test || f.part == "words" {
			continue
		}
		f.said(func(call *ast.CallExpr, key string, given int) {
			at := f.set.Position(call.Pos())
			if !assert.True(t, table.Has(key), "%s:%d: no table says %q", f.path, at.Line, key) || call.Ellipsis.IsValid() {
				return
			}
			assert.Equal(t, table.Places(key), given, "%s:%d: places of %q", f.path, at.Line, key)
		})
		ast.Inspect(f.tree, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.BasicLit:
				if text, ok := literal(x); ok && keyed.MatchString(text) {
					used[text] = true
				}
			case *ast.CallExpr:
				if by, ok := x.Fun.(*ast.SelectorExpr); ok && by.Sel.Name == "Of" && len(x.Args) > 1 {
					if section, ok := literal(x.Args[0]); ok {
						sections[section] = true
					}
				}
			}
			return true
		})
	}
	require.NotEmpty(t, used)
	for _, key := range table.Keys() {
		section, _, _ := strings.Cut(key, ".")
		assert.True(t, used[key] || sections[section], "no page says %q", key)
	}
}
