package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// keysHead stands over the keys as Markdown.
const keysHead = `# Every key of a room file

Written by ` + "`flitchlay keys --markdown`" + ` from the list that rooms are read by. Lengths are texts such as "12' 6 3/8", or
numbers in the units of ` + "`[project]`" + `; where two figures stand, the second is that of a metric room.
`

// keys explains the keys of a room file.
func (c *call) keys() *cobra.Command {
	var markdown, page bool
	cmd := &cobra.Command{
		Use:                   "keys [TABLE] [--page] [--markdown]",
		DisableFlagsInUseLine: true,
		Short:                 "Explain every key of a room file, or of a page template",
		Long: `keys says of every key of a room file what it means, what it takes, what holds without it, and how it is
written. With the name of a table, such as wall or wall.opening, it explains the keys of that one. With --page
it explains those of a page template.

Tables: ` + strings.Join(room.Schema.Paths(), ", ") + `.`,
		Example: `  flitchlay keys wall.opening
  flitchlay keys --markdown > keys.md`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return room.Schema.Paths(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			schema, more := room.Schema, room.RuleOf
			if page {
				schema, more = paper.Schema, func(string, string) string { return "" }
			}
			if len(args) == 1 {
				t, err := tableOf(schema, args[0])
				if err != nil {
					return err
				}
				schema = source.Schema{t}
			}
			var out bytes.Buffer
			if markdown {
				if !page {
					out.WriteString(keysHead)
				}
				schema.WriteMarkdown(&out, more)
			} else {
				schema.WriteText(&out, more)
				c.screen().prose("%s", out.String())
				return nil
			}
			c.out.Write(out.Bytes())
			return nil
		},
	}
	cmd.Flags().BoolVar(&markdown, "markdown", false, "as Markdown")
	cmd.Flags().BoolVar(&page, "page", false, "the keys of a page template")
	return cmd
}

// tableOf finds a table by its path, in brackets or without.
//
// Errors: one sentence that names the nearest.
func tableOf(schema source.Schema, name string) (source.KeyTable, error) {
	path := strings.Trim(name, "[] ")
	if t, ok := schema.Table(path); ok && path != "" {
		return t, nil
	}
	if near := source.Nearest(path, schema.Paths()); near != "" {
		return source.KeyTable{}, fmt.Errorf("there is no table %q; the nearest is %s", name, near)
	}
	return source.KeyTable{}, fmt.Errorf("there is no table %q; there are %s", name, strings.Join(schema.Paths(), ", "))
}

// schema prints the schema by which editors complete and check.
func (c *call) schema() *cobra.Command {
	var to string
	cmd := &cobra.Command{
		Use:                   "schema [room | page] [-o FILE]",
		DisableFlagsInUseLine: true,
		Short:                 "Print the JSON Schema by which an editor completes and checks a room file",
		Long: `schema prints a JSON Schema (draft 7) of room files, or of page templates, by which editors of TOML complete
keys, explain them and mark what is wrong. Starters begin with the line that such editors look for: write the
schema beside the room under the name that stands there, ` + schemaNames["room"] + ` or ` + schemaNames["page"] + `.

What an editor lets pass may still be a mistake: check finds all of them.`,
		Example:   `  flitchlay schema -o ` + schemaNames["room"],
		Args:      cobra.MaximumNArgs(1),
		ValidArgs: []string{"room", "page"},
		RunE: func(cmd *cobra.Command, args []string) error {
			what := "room"
			if len(args) == 1 {
				what = args[0]
			}
			var text []byte
			switch what {
			case "room":
				text = room.Schema.JSON("flitchlay room", "project", "veneer", "wall")
			case "page":
				text = paper.Schema.JSON("flitchlay page template", "paper")
			default:
				return fmt.Errorf("there is no schema %q; there are room, page", what)
			}
			if !cmd.Flags().Changed("output") {
				c.out.Write(text)
				return nil
			}
			if err := ending("-o", to, ".json"); err != nil {
				return err
			}
			if err := c.put(filepath.Dir(to), "schema", []file{{name: filepath.Base(to), data: text}}); err != nil {
				return err
			}
			c.say("wrote %s", to)
			return nil
		},
	}
	cmd.Flags().StringVarP(&to, "output", "o", "", "the file to write; without it the schema goes to standard output")
	c.forcing(cmd)
	return cmd
}

// schemaNames are the files by which starters name their schemas.
var schemaNames = map[string]string{"room": "flitchlay-room.json", "page": "flitchlay-page.json"}

// editorLine is the first line of a starter, which tells an editor where the schema stands.
func editorLine(what string) string { return "#:schema " + schemaNames[what] + "\n" }

// version prints the version.
func (c *call) version() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version",
		Long:    "version prints what --version prints: the program's version, and the revision that it was built from.",
		Example: "  flitchlay version > built-with.txt",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			fmt.Fprintf(c.out, "flitchlay %s\n", built())
			return nil
		},
	}
}
