package main

import (
	"go/ast"
	"go/token"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
)

// What stands in a wall is known by its traits and nowhere by its word: so a new kind takes its row and nothing else.
// Only a comparison, a case and the key of a map tell a kind by its word; a text may have it.
func TestKindsAreKnownByTheirTraits(t *testing.T) {
	words := map[string]bool{}
	for _, k := range room.Kinds() {
		words[string(k.Word)] = true
	}
	require.NotEmpty(t, words)
	for _, f := range goFiles(t) {
		if f.test || f.part == "roomtest" || f.path == "internal/room/kind.go" {
			continue
		}
		held := func(e ast.Expr) {
			lit, ok := e.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return
			}
			word, err := strconv.Unquote(lit.Value)
			require.NoError(t, err)
			assert.False(t, words[word], "%s: %s: a kind told by its word; give room.Traits what is asked here", f.set.Position(lit.Pos()), lit.Value)
		}
		ast.Inspect(f.tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				if n.Op == token.EQL || n.Op == token.NEQ {
					held(n.X)
					held(n.Y)
				}
			case *ast.CaseClause:
				for _, e := range n.List {
					held(e)
				}
			case *ast.KeyValueExpr:
				held(n.Key)
			}
			return true
		})
	}
}
