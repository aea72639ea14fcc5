package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// top is the repository, seen from this package.
const top = "../.."

// ours says who may import what of ours: data flows one way, from the room's text to the bytes of a drawing. The names
// stand for internal/NAME, templates for itself.
var ours = map[string]string{
	"length": "", "font": "", "spell": "", "templates": "",
	"source": "spell", "wood": "spell",
	"words":   "source templates",
	"finding": "length", "shape": "length", "seam": "length",
	"scene":  "length font",
	"room":   "length source finding",
	"run":    "length room finding",
	"layout": "length room run seam shape finding",
	"report": "length",
	"count":  "length room layout shape face finding report words",
	"days":   "length room run layout count", "climate": "length room finding wood report",
	"tally":  "length room layout count days job report",
	"assign": "",
	"job":    "assign length source room layout finding",
	"edit":   "source",
	"diff":   "length room layout shape finding report",
	"paper":  "length source templates words",
	"draft":  "length scene",
	// one page of each wall, from what stands above it to what stands under it
	"face":      "length shape room run layout",
	"folio":     "length font finding scene room run layout paper draft face words",
	"elevation": "length finding scene shape room layout draft face folio",
	"detail":    "length scene room run layout draft face folio elevation",
	"submittal": "length wood finding scene room layout climate paper draft face folio elevation detail",
	"crewday":   "length finding scene room layout count days climate paper draft face folio submittal",
	"card":      "length scene shape room run layout count paper draft face folio words",
	"crew":      "length scene shape room layout count days paper draft face folio crewday card words",
	"pole":      "length scene room layout paper draft face folio",
	"form":      "length source scene room layout paper draft folio",
	"aims":      "length scene shape room layout paper draft face folio elevation",
	"svg":       "scene font", "pdf": "scene font",
	"page": "length font source finding scene room layout paper draft face folio elevation svg words",
	"view": "length room layout scene svg edit page",
	"cli":  "length font source wood templates finding shape seam scene room run layout report count days climate diff assign job tally paper draft face folio submittal crew pole aims form svg pdf words view page",
	"cmd":  "cli",
	// only tests: they compute again what the others compute, and take from them only the room as read
	"recheck": "",
	// only tests: rooms and what is read off a page; no row names it
	"roomtest": "length scene room layout paper draft effort",
	// only tests: how much they try
	"effort": "",
}

// recheckMay is what the tests of recheck import.
const recheckMay = "length room source cli effort shape layout count card"

// theirs says which library stands behind which package of ours, so that it can be exchanged in one place.
var theirs = map[string]string{
	"source":   "github.com/BurntSushi/toml",
	"font":     "github.com/go-fonts/dejavu golang.org/x/image",
	"svg":      "github.com/ajstarks/svgo",
	"pdf":      "github.com/go-pdf/fpdf github.com/pdfcpu/pdfcpu",
	"cli":      "github.com/spf13/cobra github.com/schollz/progressbar/v3 golang.org/x/term",
	"roomtest": "github.com/stretchr/testify",
	"report":   "github.com/xuri/excelize/v2",
	"view":     "github.com/fsnotify/fsnotify",
}

// goFile is a Go file of ours.
type goFile struct {
	path string // from the top
	part string // the name by which the tables know its package
	test bool
	tree *ast.File
	set  *token.FileSet
	text string
}

// goFiles are all Go files of ours, read once.
func goFiles(t *testing.T) []goFile {
	out, err := readGo()
	require.NoError(t, err)
	require.Greater(t, len(out), 100, "the Go files of the repository")
	return out
}

var readGo = sync.OnceValues(func() (out []goFile, err error) {
	for _, dir := range []string{"cmd", "internal", "templates"} {
		err = errors.Join(err, filepath.WalkDir(filepath.Join(top, dir), func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() && d.Name() == "testdata" {
				if err == nil {
					err = filepath.SkipDir
				}
				return err
			}
			if d.IsDir() || filepath.Ext(name) != ".go" {
				return nil
			}
			text, err := os.ReadFile(name)
			if err != nil {
				return err
			}
			rel, err := filepath.Rel(top, name)
			if err != nil {
				return err
			}
			f := goFile{path: filepath.ToSlash(rel), set: token.NewFileSet(), text: string(text)}
			f.test = strings.HasSuffix(name, "_test.go")
			parts := strings.Split(f.path, "/")
			f.part = parts[0]
			if f.part == "internal" {
				f.part = parts[1]
			}
			f.tree, err = parser.ParseFile(f.set, name, text, parser.ParseComments)
			out = append(out, f)
			return err
		}))
	}
	return out, err
})

// imports are the paths that a file imports.
func (f goFile) imports() []string {
	var out []string
	for _, i := range f.tree.Imports {
		p, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			panic(err) // it was parsed
		}
		out = append(out, p)
	}
	return out
}

// part is the name by which the tables know a package of ours, "" for any other.
func part(importPath string) string {
	rest, ok := strings.CutPrefix(importPath, "flitchlay/")
	if !ok {
		return ""
	}
	first, more, _ := strings.Cut(rest, "/")
	if first != "internal" {
		return first
	}
	name, _, _ := strings.Cut(more, "/")
	return name
}

// The table of imports is the shape of the program. Files of tests may import more, but for the package that computes
// the layout's numbers again: it must not ask those who computed them first.
func TestImports(t *testing.T) {
	for _, f := range goFiles(t) {
		row, known := ours[f.part]
		if !assert.True(t, known, "%s: package %s is in no row of the table", f.path, f.part) {
			continue
		}
		allowed := strings.Fields(row)
		if f.part == "recheck" {
			allowed = strings.Fields(recheckMay)
		}
		for _, i := range f.imports() {
			p := part(i)
			if p == "" || p == f.part || f.test && f.part != "recheck" {
				continue
			}
			assert.Contains(t, allowed, p, "%s imports %s", f.path, i)
		}
	}
}

// The table of DEVELOPERS.md is this one, and its tree shows every package.
func TestImportsAreAsWritten(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(top, "DEVELOPERS.md"))
	require.NoError(t, err)
	tree, rest, ok := strings.Cut(string(text), "\n## Who may import what\n")
	require.True(t, ok)
	table := block(t, rest, "")
	written := map[string][]string{}
	for row := range strings.Lines(table) {
		names, may, ok := strings.Cut(row, "  ")
		require.True(t, ok, row)
		may, _, _ = strings.Cut(strings.TrimSpace(may), ";")
		if may == "nothing" {
			may = ""
		}
		for _, name := range strings.Split(names, ", ") {
			written[name] = strings.Fields(strings.ReplaceAll(may, ",", " "))
		}
	}
	assert.Equal(t, []string{"everything"}, written["cli"])
	for name, row := range ours {
		switch name {
		case "cli", "cmd":
			continue
		case "recheck":
			row = recheckMay
		}
		assert.ElementsMatch(t, strings.Fields(row), written[name], "the row of %s in DEVELOPERS.md", name)
		if name != "templates" {
			assert.Regexp(t, `(?m)^  ([a-z]+/ +)?`+name+`/ `, block(t, tree, ""), "the tree of DEVELOPERS.md shows it")
		}
	}
}

// A library of somebody else's is known to one package.
func TestLibraries(t *testing.T) {
	for _, f := range goFiles(t) {
		if f.test || strings.Contains(f.text, "//go:build deps") {
			continue
		}
		for _, i := range f.imports() {
			first, _, _ := strings.Cut(i, "/")
			if part(i) != "" || !strings.Contains(first, ".") {
				continue
			}
			known := slices.ContainsFunc(strings.Fields(theirs[f.part]), func(l string) bool { return i == l || strings.HasPrefix(i, l+"/") })
			assert.True(t, known, "%s imports %s", f.path, i)
		}
	}
}

// Every package says above its clause what it does and what is not in it.
func TestPackageComments(t *testing.T) {
	said := map[string]bool{}
	for _, f := range goFiles(t) {
		dir := path.Dir(f.path)
		if !f.test {
			said[dir] = said[dir] || f.tree.Doc.Text() != ""
		}
	}
	for dir, ok := range said {
		assert.True(t, ok, "%s has no package comment", dir)
	}
}

// told are the packages whose comments tie what they say to tests.
var told = []string{"internal/layout", "internal/room", "internal/seam"}

// named finds the tests that a package comment names, and the package where it is another.
var named = regexp.MustCompile(`\b(Test[A-Z]\w*)(?:\s+in\s+package\s+(\w+))?`)

// A test that a package comment names is a test of that package.
func TestNamedTestsExist(t *testing.T) {
	tests, comments := map[string]bool{}, map[string]string{}
	for _, f := range goFiles(t) {
		dir := path.Dir(f.path)
		if !f.test {
			comments[dir] += f.tree.Doc.Text()
			continue
		}
		for _, d := range f.tree.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil {
				tests[dir+"."+fn.Name.Name] = true
			}
		}
	}
	for _, dir := range told {
		names := named.FindAllStringSubmatch(comments[dir], -1)
		assert.NotEmpty(t, names, "%s ties nothing to a test", dir)
		for _, name := range names {
			of := dir
			if name[2] != "" {
				of = "internal/" + name[2]
			}
			assert.True(t, tests[of+"."+name[1]], "the comment of %s names %s, which is no test of %s", dir, name[1], of)
		}
	}
}

// ban is something that must not stand in the program's code.
type ban struct {
	pattern string
	why     string
	except  []string // paths that may
}

var bans = []ban{
	{`time\.(Now|Since|After)\(`, "the same input gives the same bytes: dates come from the room file", nil},
	{`"math/rand`, "the same input gives the same bytes", []string{"internal/seam/oracletest/", "internal/roomtest/"}},
	{`os\.(Getenv|LookupEnv|Environ)\(`, "what a run does is said on its command line and in the room file", []string{"internal/effort/", "internal/cli/screen.go"}},
	{`\bfunc init\(`, "nothing happens before a caller asks for it", nil},
	{`os\.Exit\(|"log(/slog)?"`, "only main ends the program, and only the command line speaks", []string{"cmd/flitchlay/main.go"}},
	{`fmt\.Print(f|ln)?\(|os\.Std(out|err)`, "results and messages go through the streams of the command line", []string{"internal/cli/cli.go"}},
	{`\bunsafe\b|"reflect"`, "the code says what it does", nil},
	{`scene\.NewPage\(`, "frame, number, issue and NOT FOR HANGING come with the page: folio makes it", []string{"internal/folio/", "internal/submittal/moisture.go", "internal/elevation/", "internal/page/"}},
	{`(?i)\b(todo|fixme|xxx|hack)\b`, "what is here is finished", nil},
}

// The bans hold for the program's code; tests may use what they need.
func TestBans(t *testing.T) {
	for _, f := range goFiles(t) {
		if f.test {
			continue
		}
		for _, b := range bans {
			if slices.ContainsFunc(b.except, func(p string) bool { return strings.HasPrefix(f.path, p) }) {
				continue
			}
			for _, at := range regexp.MustCompile(b.pattern).FindAllStringIndex(f.text, -1) {
				line := 1 + strings.Count(f.text[:at[0]], "\n")
				assert.Fail(t, "banned", "%s:%d: %q: %s", f.path, line, f.text[at[0]:at[1]], b.why)
			}
		}
	}
}

// The top level stays as it is: what a person needs, and nothing that was built.
func TestTopLevel(t *testing.T) {
	known := []string{".ci", ".git", ".gitignore", "DEVELOPERS.md", "KEYS.md", "LICENSE", "Makefile", "README.md", "bin", "cmd", "go.mod", "go.sum",
		"internal", "out", "samples", "templates"}
	entries, err := os.ReadDir(top)
	require.NoError(t, err)
	require.NotEmpty(t, entries)
	for _, e := range entries {
		assert.Contains(t, known, e.Name(), "an entry that does not belong to the top level")
	}
}

// foreign finds words that do not speak of the project. They are put together here so that this file holds none.
var foreign = regexp.MustCompile(`(?i)` + strings.Join([]string{
	`\bsha` + `red/`, `/wo` + `rk/`, `\bsess` + `ions?\b`, `\b(this|later|next|another) iss` + `ues?\b`, `\biss` + `ues? #?\d`,
	`\b(design|drafting|trade|style|libraries|pages|vectors)\.m` + `d\b`, `\bpro` + `mpts?\b`, `\bclau` + `de\b`, `\bllm\b`, `\bche` + `ckpoint`,
}, "|"))

// Everything in the repository speaks of the project alone.
func TestWords(t *testing.T) {
	seen := 0
	for _, dir := range []string{"cmd", "internal", "templates", "samples", ".ci", "Makefile", "README.md", "DEVELOPERS.md", "LICENSE", "go.mod", ".gitignore"} {
		require.NoError(t, filepath.WalkDir(filepath.Join(top, dir), func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := os.ReadFile(name)
			seen++
			for _, at := range foreign.FindAllIndex(text, -1) {
				line := 1 + strings.Count(string(text[:at[0]]), "\n")
				assert.Fail(t, "a word from elsewhere", "%s:%d: %q", name, line, text[at[0]:at[1]])
			}
			return err
		}))
	}
	require.Greater(t, seen, 150)
}

// Every module that ends up in the program has its notice in LICENSE.
func TestNotices(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", ".").Output()
	require.NoError(t, err)
	text, err := os.ReadFile(filepath.Join(top, "LICENSE"))
	require.NoError(t, err)
	modules := strings.Fields(string(out))
	slices.Sort(modules)
	modules = slices.Compact(modules)
	require.Greater(t, len(modules), 5)
	for _, m := range modules {
		assert.Contains(t, string(text), strings.TrimSuffix(m, "/v2"), "a notice for a module of the program")
	}
}
