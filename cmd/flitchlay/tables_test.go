package main

import (
	"go/ast"
	"go/token"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
	"flitchlay/internal/source"
	tables "flitchlay/internal/words"
)

// keyed is a key of a table of words as code writes it.
var keyed = regexp.MustCompile(`^[a-z_]+\.[a-z0-9_-]+$`)

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
				for _, arg := range x.Args { // of Of itself, or of who passes a section on to it
					if section, ok := literal(arg); ok {
						sections[strings.TrimSuffix(section, ".")] = true
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

// crewCode is the code that draws for the crew: all that it says stands in the tables of words.
var crewCode = []string{"internal/crewday/", "internal/card/", "internal/crew/", "internal/pole/", "internal/folio/taped", "internal/folio/endwords"}

// noWords are the literals with letters in that code that nobody reads on a page, by what they are.
var noWords = map[string]string{
	"the data of a drawing":            "FACE, BACK, none, wall %d piece %d, cut, %s set: %w",
	"keys of pages, and file names":    "start, first sheet, heights, days, site, key, offs, receiving, cuts, cards, notes, roll, pole, install",
	"sets, sections of tables":         "Install, Story pole, set, side, hold, rounding, paste, primer, end, end_label, end_named, kind, look, signed, stock, next, measure, measure_up, hang, hang_end, trim, slopes, card_end, raw_end, tape, wall, register, breaks",
	"words that sections have":         "left, right, lower, upper, head, foot, under, over, first, flitch, lay_out, all, hangs, to_hang, in_a_gap, spare, damaged, refused, not_used, left to right, bottom to top, sliver right, sliver left, witness right, witness left, bare, bare why, free, run, gap, base, crown, behind, short, own, no",
	"ends of words that sections have": " cut, turned, raw, stays, on, raw, piece, kind.",
	"a corner's name":                  "C",
	"a broken invariant":               "card: the last grid takes any card",
}

// No words stand in the code that draws for the crew: a literal with letters is a key of the tables, the class or the data of a
// part, or one of a short list of what is no word.
func TestNoWordsInDrawingCode(t *testing.T) {
	allowed := map[string]bool{}
	for _, list := range noWords {
		for _, word := range strings.Split(list, ", ") {
			allowed[strings.TrimSpace(word)] = true
		}
	}
	letters, verbs := regexp.MustCompile(`\p{L}`), regexp.MustCompile(`%[0-9]*[a-z]`)
	used := map[string]bool{}
	for _, f := range goFiles(t) {
		if f.test || !slices.ContainsFunc(crewCode, func(p string) bool { return strings.HasPrefix(f.path, p) }) {
			continue
		}
		shown := map[ast.Expr]bool{} // literals that are drawn as they are
		ast.Inspect(f.tree, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.KeyValueExpr:
				key, _ := x.Key.(*ast.Ident)
				if key != nil && key.Name == "Class" {
					return false
				}
				if key != nil && slices.Contains([]string{"String", "Title", "Head", "Text"}, key.Name) {
					shown[x.Value] = true
				}
			case *ast.CallExpr:
				if by, ok := x.Fun.(*ast.SelectorExpr); ok && by.Sel.Name == "Datum" {
					return false
				}
			case *ast.BasicLit:
				text, ok := literal(x)
				if !ok || keyed.MatchString(text) || !letters.MatchString(verbs.ReplaceAllString(text, "")) {
					return true
				}
				text = strings.TrimSpace(text)
				used[text] = true
				assert.True(t, allowed[text] && !shown[x], "%s:%d: %q stands in code: say it from the tables of words", f.path, f.set.Position(x.Pos()).Line, text)
			}
			return true
		})
	}
	for word := range allowed {
		assert.True(t, used[word], "%q stands in no such code", word)
	}
}

// Every kind of opening and of end that a room file takes has its word in every table.
func TestKindsHaveTheirWords(t *testing.T) {
	for _, c := range []struct {
		table, key string
		sections   []string
	}{
		{"wall.opening", "kind", []string{"kind"}}, {"wall.box", "kind", []string{"kind"}}, {"wall", "left_end", []string{"end", "end_label"}},
	} {
		of, ok := room.Schema.Table(c.table)
		require.True(t, ok)
		i := slices.IndexFunc(of.Keys, func(k source.Key) bool { return k.Name == c.key })
		require.NotEqual(t, -1, i, "%s.%s", c.table, c.key)
		require.NotEmpty(t, of.Keys[i].Words)
		for _, word := range of.Keys[i].Words {
			for _, section := range c.sections {
				assert.True(t, tables.English().Has(tables.Key(section, word)), "%s of section %s", word, section)
			}
		}
	}
}
